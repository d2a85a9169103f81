//! A whole set, gear by gear, with what was found beside what there is: ratio, overall ratio, and engine speed
//! at a road speed, in brackets where the gear is of no use there.

use super::about::About;
use super::columns::{ColumnCell, paint_cell, places, row_height};
use crate::draw::palette::Palette;
use crate::gearing::{DrivenGear, Drivetrain, EngineLimits, RoadSpeed};
use crate::units::{decimals_text, mark_text, rpm_text};
use egui::{Id, Role, Sense, Ui, UiBuilder, WidgetInfo, vec2};

/// What stands where a gear is not there.
const NONE: &str = "–";

/// The columns of what there is and what was found, each with its share of the width.
const SHARES: [f32; 7] = [0.6, 1.0, 1.0, 1.0, 1.0, 1.45, 1.0];

/// Shows the set that it is about, and as it would be with what was found.
pub(super) fn whole_set_ui(
    ui: &mut Ui,
    about: &About<'_>,
    after: Option<&Drivetrain>,
    road: Option<RoadSpeed>,
    palette: &Palette,
) {
    let unit = about.units();
    let at = road.map(|road| format!("{} {}", mark_text(road.kmh(), unit), unit.sign()));
    let rpm = at
        .as_ref()
        .map_or_else(String::new, |at| format!("rpm at {at}"));
    let found = |text: &str| if text.is_empty() { "" } else { "found" };
    let heads = [
        "gear",
        "ratio",
        "found",
        "overall",
        "found",
        &rpm,
        found(&rpm),
    ];
    let heads = heads.map(|text| ColumnCell {
        text: text.to_owned(),
        color: palette.dim_text,
        is_strong: false,
    });
    row_ui(ui, &heads);
    let before = &about.results.drivetrain;
    let limits = &about.project.engine;
    let list = UiBuilder::new()
        .accessibility_role(Role::List)
        .accessibility_label("The whole set");
    ui.scope_builder(list, |ui| {
        for (row, (label, pair)) in rows(before, after).into_iter().enumerate() {
            let figures = pair.map(|gear| gear.map(|gear| Figures::of(gear, road, limits)));
            let spoken = spoken(&label, &figures, at.as_deref());
            let response = row_ui(ui, &cells(label, &figures, palette));
            let id = Id::unique(("row of the whole set", row));
            let heard = ui.interact(response.rect, id, Sense::hover());
            heard.widget_info(|| WidgetInfo::labeled(Role::ListItem, true, &spoken));
        }
    });
}

/// A gear with the set that it belongs to.
type OfSet<'a> = Option<(&'a DrivenGear, &'a Drivetrain)>;

/// Every gear of the one or the other, as it is and as it would be, reverse last.
fn rows<'a>(
    before: &'a Drivetrain,
    after: Option<&'a Drivetrain>,
) -> Vec<(String, [OfSet<'a>; 2])> {
    let all = |of: &'a Drivetrain| {
        let gears = of.gears.iter().chain(&of.reverse);
        gears.map(move |gear| (gear, of))
    };
    let same = |gear: &DrivenGear, of: Option<&'a Drivetrain>| {
        all(of?).find(|(other, _)| other.id == gear.id)
    };
    let latest = after.unwrap_or(before);
    let mut rows: Vec<(String, [OfSet<'a>; 2])> = Vec::new();
    let mut gone = all(before)
        .filter(|(gear, _)| same(gear, Some(latest)).is_none())
        .peekable();
    for (gear, of) in all(latest) {
        if gear.role.is_none() {
            rows.extend(
                gone.by_ref()
                    .map(|gone| (gone.0.label.clone(), [Some(gone), None])),
            );
        }
        let found = after.map(|_| (gear, of));
        rows.push((gear.label.clone(), [same(gear, Some(before)), found]));
    }
    rows.extend(gone.map(|gone| (gone.0.label.clone(), [Some(gone), None])));
    rows
}

/// What is told of a gear.
#[derive(PartialEq)]
struct Figures([String; 3]);

impl Figures {
    fn of(
        (gear, of): (&DrivenGear, &Drivetrain),
        road: Option<RoadSpeed>,
        limits: &EngineLimits,
    ) -> Self {
        let rpm = road.map(|road| {
            let rpm = of.engine_rpm(gear, road.kmh());
            let text = rpm_text(rpm);
            if limits.allow(rpm) {
                text
            } else {
                format!("({text})")
            }
        });
        Self([
            decimals_text(gear.ratio, 3),
            decimals_text(gear.overall_ratio, 3),
            rpm.unwrap_or_default(),
        ])
    }
}

fn cells(label: String, figures: &[Option<Figures>; 2], palette: &Palette) -> [ColumnCell; 7] {
    let [before, after] = figures;
    let cell = |of: &Option<Figures>, other: &Option<Figures>, at: usize, is_found: bool| {
        let text = |of: &Option<Figures>| of.as_ref().map(|figures| figures.0[at].clone());
        let (own, other) = (text(of), text(other));
        let is_new = is_found && own.is_some() && own != other;
        ColumnCell {
            text: own.unwrap_or_else(|| {
                if is_found && after.is_none() {
                    String::new()
                } else {
                    NONE.to_owned()
                }
            }),
            color: if is_found && !is_new {
                palette.dim_text
            } else {
                palette.text
            },
            is_strong: is_new,
        }
    };
    let both = |at: usize| {
        [
            cell(before, after, at, false),
            cell(after, before, at, true),
        ]
    };
    let [ratio, ratio_found] = both(0);
    let [overall, overall_found] = both(1);
    let [rpm, rpm_found] = both(2);
    let label = ColumnCell {
        text: label,
        color: palette.text,
        is_strong: false,
    };
    [
        label,
        ratio,
        ratio_found,
        overall,
        overall_found,
        rpm,
        rpm_found,
    ]
}

fn spoken(label: &str, [before, after]: &[Option<Figures>; 2], at: Option<&str>) -> String {
    let told = |figures: &Figures| {
        let Figures([ratio, overall, rpm]) = figures;
        let rpm = at
            .map(|at| format!(", {rpm} rpm at {at}"))
            .unwrap_or_default();
        format!("ratio {ratio}, overall {overall}{rpm}")
    };
    let found = after.as_ref().map(|found| {
        if before.as_ref() == Some(found) {
            "; it stays".to_owned()
        } else {
            format!("; found: {}", told(found))
        }
    });
    let before = before.as_ref().map_or_else(|| "not there".to_owned(), told);
    format!("gear {label}: {before}{}", found.unwrap_or_default())
}

fn row_ui(ui: &mut Ui, cells: &[ColumnCell; 7]) -> egui::Response {
    let size = vec2(ui.available_width(), row_height(ui));
    let (row, response) = ui.allocate_exact_size(size, Sense::hover());
    if ui.is_rect_visible(row) {
        for (place, cell) in places(row, SHARES).into_iter().zip(cells) {
            paint_cell(ui, place, cell);
        }
    }
    response
}
