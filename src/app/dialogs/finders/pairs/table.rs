//! The pairs that were found, as a table: sorted by its headings, gone through by pointer and keys, of which
//! only the rows in view are made.

use super::search::{Column, Order, Search};
use crate::app::dialogs::field::reveal;
use crate::app::dialogs::finders::columns::{ColumnCell, paint_cell, places, row_height};
use crate::app::heard::{announce, describe};
use crate::app::input::steps;
use crate::draw::palette::Palette;
use crate::finders::{CentreFit, FoundPair};
use crate::gearing::ToothPair;
use crate::units::{decimals_text, signed};
use egui::{
    Align, Button, Id, Key, Layout, Rect, Response, RichText, Role, ScrollArea, Sense, Stroke,
    StrokeKind, Ui, UiBuilder, WidgetInfo, pos2, vec2,
};

/// How many rows are in view at once.
const ROWS: usize = 7;
/// How many rows Page Up and Page Down go.
const PAGE: isize = 6;

/// The columns, each with its heading, what it says to those who hear it, and its share of the width.
const COLUMNS: [(Column, &str, &str, f32); 9] = [
    (Column::Driven, "driven", "driven teeth", 0.8),
    (Column::Driving, "driving", "driving teeth", 0.8),
    (Column::Ratio, "ratio", "ratio", 0.9),
    (Column::Error, "off, %", "per cent off, whichever way", 0.9),
    (Column::Rpm, "off, rpm", "rpm off at cruise", 0.9),
    (Column::Hunting, "hunting", "hunting", 0.9),
    (Column::Sum, "sum", "teeth together", 0.6),
    (Column::Shift, "x1 + x2", "sum of profile shifts", 0.9),
    (Column::Cut, "can be cut", "whether they can be cut", 1.9),
];

const SHARES: [f32; 9] = {
    let mut shares = [0.0; 9];
    let mut at = 0;
    while at < COLUMNS.len() {
        shares[at] = COLUMNS[at].3;
        at += 1;
    }
    shares
};

/// The identity of the table, which is one place for the keys.
pub(super) fn table_id() -> Id {
    Id::unique("tooth pairs that were found")
}

/// What is looked at in the table, and how.
pub(super) struct PairTable<'a> {
    pub(super) search: &'a Search,
    /// The engine speed in rev/min that the wished ratio makes at cruise, where a speed is typed.
    pub(super) engine_rpm: Option<f64>,
    pub(super) palette: &'a Palette,
}

/// What was done in the table.
#[derive(Default)]
pub(super) struct Done {
    pub(super) order: Option<Order>,
    pub(super) chosen: Option<ToothPair>,
    /// Whether the keys go on to the answers.
    pub(super) is_through: bool,
}

impl PairTable<'_> {
    /// Shows the table; what was done in it.
    pub(super) fn show(&self, ui: &mut Ui, order: Order, chosen: Option<ToothPair>) -> Done {
        let mut done = Done {
            order: self.head_ui(ui, order),
            ..Done::default()
        };
        let has_focus = ui.memory(|memory| memory.has_focus(table_id()));
        let place = chosen.and_then(|chosen| self.search.place_of(chosen));
        let mut to = None;
        if has_focus {
            to = self.gone_to(ui, place);
            let is_entered = ui.input_mut(|i| i.consume_key(egui::Modifiers::NONE, Key::Enter));
            done.is_through = is_entered;
        }
        let shown = to.or(place);
        done.chosen = self.rows_ui(ui, shown, to.is_some());
        if done.chosen.is_none()
            && let Some(pair) = to.and_then(|to| self.search.at(to))
        {
            done.chosen = Some(pair.teeth);
        }
        done
    }

    /// The place that the keys lead to.
    fn gone_to(&self, ui: &Ui, place: Option<usize>) -> Option<usize> {
        let ctx = ui.ctx();
        let last = self.search.len().checked_sub(1)?;
        let by = steps(ctx, Key::ArrowDown, Key::ArrowUp)
            + PAGE * steps(ctx, Key::PageDown, Key::PageUp);
        let ends = steps(ctx, Key::End, Key::Home);
        match (ends, by) {
            (1.., _) => Some(last),
            (..0, _) => Some(0),
            (0, 0) => None,
            (0, by) => {
                let from = place.map_or(0, |place| place.saturating_add_signed(by));
                Some(from.min(last))
            }
        }
    }

    /// The headings; the order that a click on one asks for.
    fn head_ui(&self, ui: &mut Ui, order: Order) -> Option<Order> {
        let size = vec2(ui.available_width(), ui.spacing().interact_size.y);
        let (row, _) = ui.allocate_exact_size(size, Sense::hover());
        let mut clicked = None;
        let has_fit = self.search.wish().centre.is_some();
        for ((column, text, heard, _), place) in COLUMNS.into_iter().zip(places(row, SHARES)) {
            if !has_fit && matches!(column, Column::Shift | Column::Cut) {
                continue;
            }
            let is_own = order.by == column;
            let mark = match (is_own, order.falls) {
                (false, _) => "",
                (true, false) => " ↑",
                (true, true) => " ↓",
            };
            let text = RichText::new(format!("{text}{mark}"))
                .small()
                .color(self.palette.dim_text);
            let button = Button::new(text).truncate().frame_when_inactive(false);
            // Over the ends of its figures.
            let at_end = Layout::right_to_left(Align::Center);
            let own = UiBuilder::new().max_rect(place).layout(at_end);
            let button = ui.new_child(own).add(button);
            reveal(&button);
            let button = button.accessible_name(format!("Sort by {heard}"));
            if is_own {
                describe(&button, if order.falls { "falling" } else { "rising" });
            }
            if button.clicked() {
                clicked = Some(order.clicked(column));
            }
        }
        clicked
    }

    /// The rows in view; the pair of the one that was clicked.
    fn rows_ui(&self, ui: &mut Ui, chosen: Option<usize>, has_moved: bool) -> Option<ToothPair> {
        let height = row_height(ui);
        let size = vec2(ui.available_width(), height * ROWS as f32);
        let (room, _) = ui.allocate_exact_size(size, Sense::hover());
        let list = ui.interact(room, table_id(), Sense::focusable_noninteractive());
        reveal(&list);
        let painter = ui.painter();
        painter.rect_filled(room, 2.0, self.palette.paper);
        let edge = Stroke::new(1.0, self.palette.edge);
        painter.rect_stroke(room, 2.0, edge, StrokeKind::Outside);
        list.widget_info(|| WidgetInfo::labeled(Role::ListBox, true, "Tooth pairs"));
        let mut inner = ui.new_child(
            UiBuilder::new()
                .max_rect(room)
                .accessibility_role(Role::ListBox)
                .accessibility_label("Tooth pairs in view"),
        );
        let mut clicked = None;
        ScrollArea::vertical()
            .id_salt("tooth pairs")
            .auto_shrink(false)
            .max_height(room.height())
            .show_viewport(&mut inner, |ui, view| {
                ui.set_height(height * self.search.len() as f32);
                let origin = ui.max_rect().min;
                let width = ui.available_width();
                let row_at = |place: usize| {
                    let top = origin.y + height * place as f32;
                    Rect::from_min_size(pos2(origin.x, top), vec2(width, height))
                };
                if let Some(chosen) = chosen.filter(|_| has_moved) {
                    ui.scroll_to_rect(row_at(chosen), None);
                }
                for place in in_view(view.y_range(), height, self.search.len()) {
                    if let Some(pair) = self.search.at(place) {
                        let row = self.row_ui(ui, row_at(place), pair, chosen == Some(place));
                        if row.clicked() {
                            clicked = Some(pair.teeth);
                            list.request_focus();
                        }
                    }
                }
            });
        clicked
    }

    fn row_ui(&self, ui: &Ui, row: Rect, pair: &FoundPair, is_chosen: bool) -> Response {
        let id = Id::unique(("tooth pair", pair.teeth.driven(), pair.teeth.driving()));
        let response = ui.interact(row, id, Sense::CLICK);
        let fill = if is_chosen {
            Some(ui.visuals().selection.bg_fill)
        } else {
            response
                .hovered()
                .then(|| ui.visuals().widgets.hovered.weak_bg_fill)
        };
        if let Some(fill) = fill {
            ui.painter().rect_filled(row, 2.0, fill);
        }
        for (place, text) in places(row, SHARES).into_iter().zip(self.texts(pair)) {
            let cell = ColumnCell {
                text,
                color: self.palette.text,
                is_strong: false,
            };
            paint_cell(ui, place, &cell);
        }
        let spoken = self.spoken(pair);
        response
            .widget_info(|| WidgetInfo::selected(Role::ListBoxOption, true, is_chosen, &spoken));
        response
    }

    /// What stands in the columns.
    fn texts(&self, pair: &FoundPair) -> [String; 9] {
        let rpm = self.engine_rpm.map(|rpm| signed(pair.error_rpm(rpm), 0));
        [
            pair.teeth.driven().to_string(),
            pair.teeth.driving().to_string(),
            decimals_text(pair.teeth.ratio(), 4),
            signed(pair.error_percent, 3),
            rpm.unwrap_or_default(),
            pair.hunting.word().to_owned(),
            pair.sum().to_string(),
            pair.profile_shift_sum()
                .map_or_else(String::new, |sum| signed(sum, 3)),
            pair.fit.map_or("", CentreFit::verdict).to_owned(),
        ]
    }

    /// A pair in words.
    pub(super) fn spoken(&self, pair: &FoundPair) -> String {
        let [driven, driving, ratio, error, rpm, hunting, sum, shift, cut] = self.texts(pair);
        let rpm = self.engine_rpm.map(|_| format!(", {rpm} rpm"));
        let fit = pair.fit.map(|_| match shift.as_str() {
            "" => format!(", can be cut: {cut}"),
            shift => format!(", x1 + x2 {shift}, can be cut: {cut}"),
        });
        format!(
            "{driven} driven by {driving} = {ratio}, {error} %{}, hunting {hunting}, {sum} teeth{}",
            rpm.unwrap_or_default(),
            fit.unwrap_or_default()
        )
    }

    /// The chosen pair in words, beneath the table and for those who hear it.
    pub(super) fn chosen_ui(&self, ui: &mut Ui, chosen: Option<ToothPair>) {
        let pair = chosen.and_then(|chosen| self.search.at(self.search.place_of(chosen)?));
        let words = pair.map_or_else(|| "No pair is chosen".to_owned(), |pair| self.spoken(pair));
        announce(&ui.label(RichText::new(words).strong()));
    }
}

/// The places of the rows that lie in a part of all.
fn in_view(view: egui::Rangef, height: f32, count: usize) -> std::ops::Range<usize> {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a count of rows, kept above 0"
    )]
    let [first, last] = [view.min, view.max].map(|at| (at / height).max(0.0) as usize);
    first.min(count)..(last + 1).min(count)
}

#[cfg(test)]
mod tests {
    use super::*;
    use egui::Rangef;

    #[test]
    fn only_rows_in_view_are_made() {
        assert_eq!(in_view(Rangef::new(0.0, 100.0), 20.0, 1000), 0..6);
        assert_eq!(in_view(Rangef::new(50.0, 150.0), 20.0, 1000), 2..8);
        assert_eq!(in_view(Rangef::new(-5.0, 100.0), 20.0, 3), 0..3);
        assert_eq!(in_view(Rangef::new(500.0, 600.0), 20.0, 3), 3..3);
    }
}
