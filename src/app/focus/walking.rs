//! To which stop does a key lead from another?

use super::stops::{Keeps, Pane, Stop, Walk};
use egui::Id;

/// What a key asks of the focus.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Wish {
    /// The next stop of Tab, or the one before.
    Tab {
        back: bool,
    },
    /// The next field that is typed in, or the one before; behind the last one the next part of the
    /// window, where Enter changes nothing.
    Enter {
        back: bool,
    },
    /// The next part of the window, or the one before.
    Pane {
        back: bool,
    },
    Up,
    Down,
    Left,
    Right,
}

/// All stops of a frame with the ways between them.
#[derive(Debug, Clone, Default)]
pub(super) struct Map {
    /// Sorted by row.
    pub(super) stops: Vec<Stop>,
    /// Parts of the window that are not shown just now.
    pub(super) hidden: Vec<Pane>,
}

impl Map {
    pub(super) fn get(&self, id: Id) -> Option<&Stop> {
        self.stops.iter().find(|stop| stop.id == id)
    }

    /// The stop that a wish leads to; none where there is nothing that way.
    ///
    /// `last` tells which stop of a part of the window had the focus last.
    pub(super) fn to(&self, from: Id, wish: Wish, last: &dyn Fn(Pane) -> Option<Id>) -> Option<Id> {
        let from = self.get(from)?;
        let to = match wish {
            Wish::Tab { back } => self.tab(from, back, last),
            Wish::Enter { back } => self
                .typed_next(from, back)
                .or_else(|| self.other_pane(from.pane, back, last)),
            Wish::Pane { back } => self.other_pane(from.pane, back, last),
            Wish::Up => self.upright(from, true),
            Wish::Down => self.upright(from, false),
            Wish::Left => self.level(from, true),
            Wish::Right => self.level(from, false),
        };
        to.map(|stop| stop.id)
    }

    /// Down the column while it goes on in its block, then to the next main stop.
    fn tab(&self, from: &Stop, back: bool, last: &dyn Fn(Pane) -> Option<Id>) -> Option<&Stop> {
        if let Some(next) = self.in_column(from, back) {
            return Some(next);
        }
        let is_past = |stop: &&Stop| {
            let is_elsewhere = match from.block {
                Some((_, Walk::One)) => stop.block != from.block,
                Some((_, Walk::Columns)) => from.is_main || stop.block != from.block,
                None => true,
            };
            is_elsewhere && stop.is_main
        };
        let next = self
            .behind(from, back)
            .find(is_past)
            .or_else(|| self.directed(back).into_iter().find(|stop| stop.is_main))?;
        Some(self.entrance(next, last))
    }

    /// The stop through which a block with one stop for Tab is entered.
    fn entrance<'a>(&'a self, next: &'a Stop, last: &dyn Fn(Pane) -> Option<Id>) -> &'a Stop {
        if !matches!(next.block, Some((_, Walk::One))) {
            return next;
        }
        let of_block = |stop: &&Stop| stop.block == next.block;
        let known = last(next.pane).and_then(|id| self.get(id)).filter(of_block);
        let first = || self.stops.iter().find(of_block);
        known.or_else(first).unwrap_or(next)
    }

    /// The next stop of the same column in the same block.
    fn in_column(&self, from: &Stop, back: bool) -> Option<&Stop> {
        let Some((_, Walk::Columns)) = from.block else {
            return None;
        };
        self.behind(from, back).find(|stop| {
            stop.block == from.block && stop.row != from.row && stop.shares_column(from)
        })
    }

    /// The next field: in the column first, then the main ones.
    fn typed_next(&self, from: &Stop, back: bool) -> Option<&Stop> {
        let column = self.in_column(from, back).filter(|stop| stop.is_field());
        let is_next = |stop: &&Stop| {
            let is_past = from.is_main || from.block.is_none() || stop.block != from.block;
            is_past && stop.is_main && stop.is_field()
        };
        column.or_else(|| self.behind(from, back).find(is_next))
    }

    /// Another part of the window: where it had the focus last, else at its first main stop.
    fn other_pane(
        &self,
        from: Pane,
        back: bool,
        last: &dyn Fn(Pane) -> Option<Id>,
    ) -> Option<&Stop> {
        self.entry(self.next_pane(from, back)?, last)
    }

    /// The part of the window behind one or before it, shown or not.
    fn next_pane(&self, from: Pane, back: bool) -> Option<Pane> {
        let shown = self.stops.iter().map(|stop| stop.pane);
        let mut panes: Vec<Pane> = shown.chain(self.hidden.iter().copied()).collect();
        panes.sort_unstable();
        panes.dedup();
        let at = panes.iter().position(|pane| *pane == from);
        let count = panes.len();
        let step = if back { count.checked_sub(1)? } else { 1 };
        panes.get((at? + step) % count).copied()
    }

    /// The part of the window that a wish leads to, where it is not shown just now.
    pub(super) fn hidden_behind(&self, from: Id, wish: Wish) -> Option<Pane> {
        let Wish::Pane { back } = wish else {
            return None;
        };
        let next = self.next_pane(self.get(from)?.pane, back)?;
        self.hidden.contains(&next).then_some(next)
    }

    /// The first part of the window behind the menus.
    pub(super) fn first_pane(&self) -> Option<Pane> {
        let panes = self.stops.iter().map(|stop| stop.pane);
        panes.filter(|pane| *pane != Pane::Menu).min()
    }

    /// Where a part of the window is entered.
    pub(super) fn entry(&self, pane: Pane, last: &dyn Fn(Pane) -> Option<Id>) -> Option<&Stop> {
        let known = last(pane).and_then(|id| self.get(id));
        let of_pane = || self.stops.iter().filter(|stop| stop.pane == pane);
        known
            .filter(|stop| stop.pane == pane)
            .or_else(|| of_pane().find(|stop| stop.is_entry))
            .or_else(|| of_pane().find(|stop| stop.is_main))
    }

    /// The stop of the row above or below that is nearest, in the same part of the window.
    ///
    /// From a field one comes to a field only.
    fn upright(&self, from: &Stop, back: bool) -> Option<&Stop> {
        let mut rows = self.behind(from, back).filter(|stop| {
            stop.pane == from.pane && stop.row != from.row && (!from.is_field() || stop.is_field())
        });
        if from.is_field() {
            return rows.find(|stop| stop.shares_column(from));
        }
        let first = rows.next()?;
        let of_row = self.stops.iter().filter(|stop| stop.row == first.row);
        let away = |stop: &&Stop| (stop.rect.center().x - from.rect.center().x).abs();
        of_row.min_by(|a, b| away(a).total_cmp(&away(b)))
    }

    /// The neighbour in the row; what is alone has those before and behind it for neighbours.
    fn level(&self, from: &Stop, back: bool) -> Option<&Stop> {
        let next = self.behind(from, back).next()?;
        let are_alone = from.is_alone && next.is_alone && from.pane == next.pane;
        (next.row == from.row || are_alone).then_some(next)
    }

    /// The stops behind one; going back, those before it, the nearest first.
    fn behind(&self, from: &Stop, back: bool) -> impl Iterator<Item = &Stop> {
        let all = self.directed(back);
        let id = from.id;
        all.into_iter()
            .skip_while(move |stop| stop.id != id)
            .skip(1)
    }

    /// All stops, from the first or from the last.
    fn directed(&self, back: bool) -> Vec<&Stop> {
        let mut all: Vec<&Stop> = self.stops.iter().collect();
        if back {
            all.reverse();
        }
        all
    }

    /// What stands where something that is gone has stood: the same row of the same part, else its end.
    pub(super) fn in_place_of(&self, gone: &Stop) -> Option<&Stop> {
        let of_pane = || self.stops.iter().filter(|stop| stop.pane == gone.pane);
        let at = |stop: &&Stop| stop.rect.bottom() > gone.rect.top();
        let mains = || of_pane().filter(|stop| stop.is_main);
        mains().find(at).or_else(|| mains().next_back())
    }

    /// The field of the row in which a stop stands.
    pub(super) fn field_beside(&self, id: Id) -> Option<&Stop> {
        let of = self.get(id)?;
        let row = self.stops.iter().filter(|stop| stop.row == of.row);
        let fields = row.filter(|stop| stop.keeps == Keeps::Line);
        fields.min_by_key(|stop| !stop.is_main)
    }
}
