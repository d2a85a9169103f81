//! What becomes of a part for one candidate: source, altered, what is to be done, price, done.

use super::changed;
use super::layout::Widths;
use crate::app::choice::{Offer, choice_button_ui};
use crate::app::drafts::{CellId, PlanCell};
use crate::app::form::{Field, Form, remark, width_to_end};
use crate::project::{Candidate, Edit};
use crate::workshop::{Part, PartEntry, PartSource, Price, ToDo};
use egui::{Checkbox, Label, RichText, Ui, Vec2};

/// The widths of the columns, in points.
const SOURCE: f32 = 84.0;
const ALTERED: f32 = 46.0;
const PRICE: f32 = 62.0;
const DONE: f32 = 36.0;

/// The height of a line of heads, in points.
const HEAD: f32 = 14.0;

/// A part for one candidate.
struct Of<'a> {
    part: &'a Part,
    set: &'a Candidate,
    entry: &'a PartEntry,
}

impl<'a> Of<'a> {
    fn new(part: &'a Part, set: &'a Candidate) -> Self {
        let entry = part.of(set.id.into());
        Self { part, set, entry }
    }

    /// A name for those who hear it: `Price of mounts, Six-speed`.
    fn named(&self, what: &str) -> String {
        format!("{what} {}, {}", self.part.name, self.set.set.name)
    }

    /// The edit after which something else is said.
    fn with(&self, change: impl FnOnce(&mut PartEntry)) -> Edit {
        let mut entry = self.entry.clone();
        change(&mut entry);
        changed(self.part.with(self.set.id.into(), entry))
    }
}

/// The heads of the columns of a candidate, its name above them.
pub(super) fn heads_ui(ui: &mut Ui, set: &Candidate, widths: Widths, form: &Form<'_>) {
    let heads = [
        ("from", SOURCE),
        ("altered", ALTERED),
        ("what is to be done", widths.to_do),
        ("price", PRICE),
        ("done", DONE),
    ];
    let gap = ui.spacing().item_spacing.x;
    let width: f32 = heads.iter().map(|(_, width)| width + gap).sum();
    ui.vertical(|ui| {
        ui.set_width(width - gap);
        let name = RichText::new(set.set.name.as_str()).strong();
        ui.add(Label::new(name).truncate());
        ui.horizontal(|ui| {
            for (head, width) in heads {
                in_column(ui, width, HEAD, |ui| {
                    remark(ui, head, form.palette.dim_text);
                });
            }
        });
    });
}

/// Something in a column of that width.
fn in_column<R>(ui: &mut Ui, width: f32, height: f32, add: impl FnOnce(&mut Ui) -> R) -> R {
    let layout = egui::Layout::left_to_right(egui::Align::Center);
    let column = ui.allocate_ui_with_layout(Vec2::new(width, height), layout, |ui| {
        ui.set_width(width);
        add(ui)
    });
    column.inner
}

/// The columns of a candidate; why something in them does not read.
pub(super) fn entry_ui(
    ui: &mut Ui,
    part: &Part,
    set: &Candidate,
    widths: Widths,
    form: &mut Form<'_>,
) -> [Option<String>; 2] {
    let of = Of::new(part, set);
    let height = ui.spacing().interact_size.y;
    in_column(ui, SOURCE, height, |ui| source_ui(ui, &of, form));
    in_column(ui, ALTERED, height, |ui| altered_ui(ui, &of, "", form));
    let to_do = to_do_ui(ui, &of, widths.to_do, form);
    let price = price_ui(ui, &of, form);
    in_column(ui, DONE, height, |ui| done_ui(ui, &of, "", form));
    [to_do, price]
}

/// The same beneath the name of the part, in two lines.
pub(super) fn stacked_entry_ui(ui: &mut Ui, part: &Part, set: &Candidate, form: &mut Form<'_>) {
    let of = Of::new(part, set);
    ui.horizontal(|ui| {
        source_ui(ui, &of, form);
        altered_ui(ui, &of, "altered", form);
        done_ui(ui, &of, "done", form);
    });
    let problems = ui.horizontal(|ui| {
        let price = price_ui(ui, &of, form);
        let width = width_to_end(ui);
        [price, to_do_ui(ui, &of, width, form)]
    });
    for problem in problems.inner.iter().flatten() {
        form.problem(ui, Some(problem));
    }
}

fn source_ui(ui: &mut Ui, of: &Of<'_>, form: &mut Form<'_>) {
    let id = CellId::Plan(PlanCell::Source(of.part.id, of.set.id));
    let source = of.entry.source;
    let offers = PartSource::ALL.map(|offered| Offer {
        text: offered.words(),
        is_chosen: offered == source,
        edit: of.with(|entry| entry.source = offered),
    });
    let shown = [source.word(), source.words()];
    choice_button_ui(ui, (id, &of.named("Source of")), shown, offers.into(), form);
}

fn altered_ui(ui: &mut Ui, of: &Of<'_>, text: &str, form: &mut Form<'_>) {
    let mut is_altered = of.entry.is_altered;
    let tick = ui.add(Checkbox::new(&mut is_altered, text));
    let tick = tick.accessible_name(of.named("Altered:"));
    if tick.changed() {
        form.edit(of.with(|entry| entry.is_altered = is_altered));
    }
}

fn done_ui(ui: &mut Ui, of: &Of<'_>, text: &str, form: &mut Form<'_>) {
    let mut is_done = of.entry.is_done;
    let tick = ui.add(Checkbox::new(&mut is_done, text));
    let tick = tick.accessible_name(of.named("Done:"));
    if tick.changed() {
        form.edit(of.with(|entry| entry.is_done = is_done));
    }
}

fn to_do_ui(ui: &mut Ui, of: &Of<'_>, width: f32, form: &mut Form<'_>) -> Option<String> {
    let text = of.entry.to_do.as_ref().map(ToDo::to_string);
    let field = Field {
        id: CellId::Plan(PlanCell::ToDo(of.part.id, of.set.id)),
        name: &of.named("What is to be done with"),
        text: &text.unwrap_or_default(),
        hint: "",
    };
    form.cell(ui, &field, width, &|text| {
        let to_do = (!text.trim().is_empty()).then(|| ToDo::new(text));
        let to_do = to_do.transpose().map_err(|error| error.to_string())?;
        Ok(of.with(|entry| entry.to_do = to_do))
    })
}

fn price_ui(ui: &mut Ui, of: &Of<'_>, form: &mut Form<'_>) -> Option<String> {
    let text = of.entry.price.map(|price| price.to_string());
    let field = Field {
        id: CellId::Plan(PlanCell::Price(of.part.id, of.set.id)),
        name: &of.named("Price of"),
        text: &text.unwrap_or_default(),
        hint: "",
    };
    form.cell(ui, &field, PRICE, &|text| {
        let price = Price::parse(text)?;
        Ok(of.with(|entry| entry.price = price))
    })
}
