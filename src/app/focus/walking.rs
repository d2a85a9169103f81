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
    /// The next field that is typed in, or the one before; behind the last one what comes next on the
    /// same page, and at its end nothing: whoever types is not led away to the menus.
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
            Wish::Enter { back: true } => self.typed_next(from, true),
            Wish::Enter { back: false } => self
                .typed_next(from, false)
                .or_else(|| self.behind_last_field(from, last)),
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
        let next = self
            .next_main(from, back)
            .or_else(|| self.directed(back).into_iter().find(|stop| stop.is_main))?;
        Some(self.entrance(next, last))
    }

    /// The next main stop, past the block that a stop is in where one walks through it in another way.
    fn next_main(&self, from: &Stop, back: bool) -> Option<&Stop> {
        let is_past = |stop: &&Stop| {
            let is_elsewhere = match from.block {
                Some((_, Walk::One)) => stop.block != from.block,
                Some((_, Walk::Columns)) => from.is_main || stop.block != from.block,
                None => true,
            };
            is_elsewhere && stop.is_main
        };
        self.behind(from, back).find(is_past)
    }

    /// What is no field and stands behind the last one: of a page whose next part is seen beside this one
    /// or instead of it, that part, where Enter changes nothing; else what is next in the same part.
    fn behind_last_field(&self, from: &Stop, last: &dyn Fn(Pane) -> Option<Id>) -> Option<&Stop> {
        let next = self.next_pane(from.pane, false);
        if let Some(pane) = next.filter(|pane| *pane > from.pane && pane.is_of_page()) {
            return self.entry(pane, last);
        }
        let next = self.in_column(from, false);
        let next = next.or_else(|| self.next_main(from, false));
        next.filter(|stop| stop.pane == from.pane)
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

    /// What stands first in a part of the window.
    pub(super) fn first_of(&self, pane: Pane) -> Option<&Stop> {
        self.stops.iter().find(|stop| stop.pane == pane)
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

#[cfg(test)]
mod tests {
    use super::super::stops::{Announced, Shown, Sketch, Span, in_rows};
    use super::*;
    use egui::{LayerId, Rect, pos2, vec2};

    /// A map of stops given as column, row and what each keeps; `block` is that of all.
    fn map(stops: &[(u8, u8, Keeps)], block: Option<Walk>) -> Map {
        let layer = LayerId::background();
        let places = 0..stops.len();
        let mut sketch = Sketch {
            panes: vec![Span {
                of: Pane::Sets,
                layer,
                places: places.clone(),
            }],
            ..Sketch::default()
        };
        sketch.blocks = block
            .map(|of| Span { of, layer, places })
            .into_iter()
            .collect();
        let mut shown = Vec::new();
        for (place, (column, row, keeps)) in stops.iter().enumerate() {
            let id = id(*column, *row);
            let at = pos2(f32::from(*column) * 50.0, f32::from(*row) * 20.0);
            shown.push(Shown {
                id,
                rect: Rect::from_min_size(at, vec2(40.0, 18.0)),
                layer,
                place,
            });
            if *keeps != Keeps::Nothing {
                sketch.announced.push(Announced {
                    id,
                    keeps: *keeps,
                    characters: 3,
                    is_alone: *keeps == Keeps::Upright,
                });
            }
            if *column == 1 && *keeps == Keeps::Line {
                sketch.preferred.push(id);
            }
        }
        Map {
            stops: in_rows(&sketch, &shown),
            hidden: Vec::new(),
        }
    }

    fn id(column: u8, row: u8) -> Id {
        Id::unique((column, row))
    }

    fn no_memory(_: Pane) -> Option<Id> {
        None
    }

    /// Label, ratio and menu of three gears, the last of which has no menu.
    fn gears() -> Map {
        use Keeps::{Line, Nothing};
        let stops = [
            (0, 0, Line),
            (1, 0, Line),
            (2, 0, Nothing),
            (0, 1, Line),
            (1, 1, Line),
            (2, 1, Nothing),
            (0, 2, Line),
            (1, 2, Line),
        ];
        map(&stops, Some(Walk::Columns))
    }

    #[test]
    fn tab_and_enter_go_down_the_column_they_are_in() {
        let map = gears();
        for wish in [Wish::Tab { back: false }, Wish::Enter { back: false }] {
            assert_eq!(map.to(id(1, 0), wish, &no_memory), Some(id(1, 1)));
            assert_eq!(map.to(id(0, 1), wish, &no_memory), Some(id(0, 2)));
        }
        let back = Wish::Tab { back: true };
        assert_eq!(map.to(id(1, 2), back, &no_memory), Some(id(1, 1)));
    }

    #[test]
    fn left_and_right_stay_in_the_row() {
        let map = gears();
        let to = |from, wish| map.to(from, wish, &no_memory);
        assert_eq!(to(id(1, 1), Wish::Left), Some(id(0, 1)));
        assert_eq!(to(id(1, 1), Wish::Right), Some(id(2, 1)));
        assert_eq!(to(id(2, 1), Wish::Right), None);
        assert_eq!(to(id(0, 1), Wish::Left), None);
    }

    #[test]
    fn up_and_down_go_from_field_to_field_and_from_button_to_the_nearest() {
        let map = gears();
        let to = |from, wish| map.to(from, wish, &no_memory);
        assert_eq!(to(id(0, 0), Wish::Down), Some(id(0, 1)));
        assert_eq!(to(id(0, 2), Wish::Down), None);
        assert_eq!(to(id(2, 1), Wish::Up), Some(id(2, 0)));
        assert_eq!(to(id(2, 1), Wish::Down), Some(id(1, 2)));
    }

    #[test]
    fn tab_goes_once_around() {
        let map = gears();
        let tab = Wish::Tab { back: false };
        let end = map.to(id(1, 2), tab, &no_memory);
        assert_eq!(end, Some(id(1, 0)));
    }

    #[test]
    fn a_list_with_one_stop_for_tab_is_entered_where_it_was_left() {
        let rows: Vec<_> = (0..5).map(|row| (0, row, Keeps::Nothing)).collect();
        let mut map = map(&rows, Some(Walk::One));
        for stop in &mut map.stops[..1] {
            // A button above the list.
            stop.block = None;
        }
        let remembered = |_| Some(id(0, 3));
        let tab = Wish::Tab { back: false };
        assert_eq!(map.to(id(0, 0), tab, &remembered), Some(id(0, 3)));
        assert_eq!(map.to(id(0, 0), tab, &no_memory), Some(id(0, 1)));
        assert_eq!(map.to(id(0, 3), tab, &remembered), Some(id(0, 0)));
        let down = map.to(id(0, 3), Wish::Down, &remembered);
        assert_eq!(down, Some(id(0, 4)));
    }

    #[test]
    fn handles_at_one_height_are_neighbours_and_each_is_a_stop_of_tab() {
        let handles: Vec<_> = (0..4).map(|at| (at, 0, Keeps::Upright)).collect();
        let map = map(&handles, None);
        let tab = Wish::Tab { back: false };
        for at in 0..3 {
            let (from, next) = (id(at, 0), id(at + 1, 0));
            assert_eq!(map.to(from, tab, &no_memory), Some(next));
            assert_eq!(map.to(from, Wish::Right, &no_memory), Some(next));
        }
    }

    #[test]
    fn what_is_gone_is_followed_by_what_stands_in_its_place() {
        let before = gears();
        let gone = before.get(id(1, 2)).unwrap();
        let mut after = before.clone();
        after.stops.retain(|stop| stop.row < gone.row);
        assert_eq!(after.in_place_of(gone).unwrap().id, id(1, 1));
        let gone = before.get(id(1, 0)).unwrap();
        let mut after = before.clone();
        after.stops.retain(|stop| stop.row > gone.row);
        assert_eq!(after.in_place_of(gone).unwrap().id, id(1, 1));
    }
}
