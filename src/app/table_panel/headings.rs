//! What stands beneath a heading of the table, told where it is pointed at.

use crate::chart::Table;
use crate::chart::table::ColumnDefinition;
use crate::draw::table::TableDrawn;
use crate::letters::capitalised;
use egui::{Id, Sense, Ui};

/// Tells of the heading that is pointed at.
pub(super) fn headings_ui(ui: &Ui, table: &Table, drawn: &TableDrawn<'_>) {
    for drawn in &drawn.headings {
        let at = drawn.heading.at;
        let column = table.columns.get(at);
        if let Some(holds) = column.and_then(|column| holds(column.definition)) {
            let id = Id::unique(("heading of the table", at));
            let heading = ui.interact(drawn.rect, id, Sense::hover());
            heading.on_hover_ui(|ui| {
                ui.label(capitalised(holds));
            });
        }
    }
}

/// What a column holds, in a sentence without its end mark; where nothing stands in it is told to programs only.
fn holds(column: &ColumnDefinition) -> Option<&'static str> {
    column.meaning?.split(';').next()
}
