//! One row of a job: a field or a choice, made of what the job says of it.

use super::changed;
use crate::app::choice::{Offer, choice_ui};
use crate::app::drafts::CellId;
use crate::app::form::{Field, Form};
use crate::units::BenchUnits;
use crate::workshop::{Job, Row, RowAnswer};
use egui::Ui;

/// Shows the row; those who hear it are told of which item it is.
pub(super) fn row_ui(ui: &mut Ui, job: &Job, row: &Row, units: BenchUnits, form: &mut Form<'_>) {
    let id = CellId::Job(job.id, row.key);
    let heard = match (row.key.item, job.data.item_name()) {
        (Some(at), Some(item)) => format!("{}, {item} {}", row.name, at + 1),
        _ => row.name.clone(),
    };
    match &row.answer {
        RowAnswer::Typed(text) => {
            let field = Field {
                id,
                name: &heard,
                text,
                hint: row.hint,
            };
            form.named_field(ui, (&row.name, &field), &|text| {
                job.with(row.key, text, units).map(changed)
            });
        }
        RowAnswer::Chosen { chosen, options } => {
            let offers = options.iter().enumerate().filter_map(|(at, text)| {
                Some(Offer {
                    text,
                    is_chosen: at == *chosen,
                    edit: changed(job.choosing(row.key, at)?),
                })
            });
            let offers = offers.collect();
            choice_ui(
                ui,
                (id, [&row.name, &heard]),
                row.answer.text(),
                offers,
                form,
            );
        }
    }
}
