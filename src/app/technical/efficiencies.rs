//! What the gears of a set leave of the power: of all, of a direct one, of single ones.

use super::about::About;
use super::row::shown;
use crate::app::drafts::{CellId, SetCell};
use crate::app::form::{Field, Form};
use crate::app::section::{AtFirst, section_ui};
use crate::app::typed::Quantity;
use crate::gearing::{GearId, GearSet};
use crate::motion::Efficiency;
use crate::project::{Candidate, Edit, Project, SetEfficiencies, SetId};
use crate::units::plain_number;
use egui::Ui;

const EFFICIENCY: Quantity<Efficiency> = Quantity {
    new: Efficiency::new,
    example: "0.95",
    unit: "",
};

/// Of which gears an efficiency is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Of {
    AllGears,
    Direct,
    Gear(GearId),
}

impl Of {
    /// All that a set can have, in reading order.
    fn each(set: &GearSet) -> impl Iterator<Item = Self> {
        let gears = set.gears.iter().map(|gear| Self::Gear(gear.id));
        [Self::AllGears, Self::Direct].into_iter().chain(gears)
    }

    fn cell(self) -> SetCell {
        match self {
            Self::AllGears => SetCell::Efficiency,
            Self::Direct => SetCell::DirectEfficiency,
            Self::Gear(gear) => SetCell::GearEfficiency(gear),
        }
    }

    fn present(self, efficiencies: &SetEfficiencies) -> Option<Efficiency> {
        match self {
            Self::AllGears => efficiencies.of_set,
            Self::Direct => efficiencies.direct,
            Self::Gear(gear) => efficiencies.of_gears.get(&gear).copied(),
        }
    }

    fn put(self, efficiencies: &mut SetEfficiencies, efficiency: Option<Efficiency>) {
        match self {
            Self::AllGears => efficiencies.of_set = efficiency,
            Self::Direct => efficiencies.direct = efficiency,
            Self::Gear(gear) => match efficiency {
                Some(efficiency) => {
                    efficiencies.of_gears.insert(gear, efficiency);
                }
                None => {
                    efficiencies.of_gears.remove(&gear);
                }
            },
        }
    }

    /// What it is called on the card, and by those who hear it.
    fn names(self, set: &GearSet) -> [String; 2] {
        match self {
            Self::AllGears => ["All gears".to_owned(), "Efficiency of all gears".to_owned()],
            Self::Direct => [
                "Direct gear".to_owned(),
                "Efficiency of a direct gear".to_owned(),
            ],
            Self::Gear(id) => {
                let label = set.gear(id).map_or("", |gear| gear.label.as_str());
                [
                    format!("Gear {label}"),
                    format!("Efficiency of gear {label}"),
                ]
            }
        }
    }

    /// What holds where nothing is typed.
    fn hint(self, project: &Project) -> String {
        match (self, usual(project)) {
            (Self::AllGears, Some(usual)) => format!("{usual}, starting value"),
            (Self::AllGears, None) => "no losses".to_owned(),
            (Self::Direct | Self::Gear(_), _) => "as all gears".to_owned(),
        }
    }
}

/// The starting value of the kind of vehicle.
fn usual(project: &Project) -> Option<String> {
    let kind = project.technical.vehicle.kind?;
    let share = kind.starting_values().efficiency().ok()?;
    Some(plain_number(share.share()))
}

/// Whether a field is about an efficiency of a set.
fn is_efficiency(cell: CellId, set: SetId) -> bool {
    let CellId::Set(of, cell) = cell else {
        return false;
    };
    of == set
        && matches!(
            cell,
            SetCell::Efficiency | SetCell::DirectEfficiency | SetCell::GearEfficiency(_)
        )
}

/// The field of the first efficiency in which two documents differ.
pub(in crate::app) fn changed_efficiency(set: SetId, both: [&Project; 2]) -> Option<CellId> {
    let [shown, other] = both.map(|project| project.sets.get(set));
    let (shown, other) = shown.zip(other)?;
    let differs = |of: &Of| {
        let both = [shown, other].map(|candidate| of.present(&candidate.technical.efficiencies));
        both[0] != both[1]
    };
    let changed = Of::each(&shown.set).find(differs)?;
    Some(CellId::Set(set, changed.cell()))
}

/// Shows the fields, folded until one is sought.
pub(super) fn efficiencies_ui(
    ui: &mut Ui,
    about: About<'_>,
    candidate: &Candidate,
    sought: Option<CellId>,
    form: &mut Form<'_>,
) {
    let is_here = |cell: CellId| is_efficiency(cell, candidate.id);
    let needs = form.needs(sought.is_some_and(is_here), is_here);
    section_ui(
        ui,
        ("Efficiency", AtFirst::Closed),
        needs,
        || in_short(about.project, &candidate.technical.efficiencies),
        |ui| {
            for of in Of::each(&candidate.set) {
                field_ui(ui, about, (candidate, of), form);
            }
        },
    );
}

fn field_ui(ui: &mut Ui, about: About<'_>, (candidate, of): (&Candidate, Of), form: &mut Form<'_>) {
    let [name, heard] = of.names(&candidate.set);
    let present = &candidate.technical.efficiencies;
    let field = Field {
        id: CellId::Set(candidate.id, of.cell()),
        name: &about.named(&heard),
        text: &shown(of.present(present).map(Efficiency::share)),
        hint: &of.hint(about.project),
    };
    form.named_field(ui, (&name, &field), &|text| {
        let mut efficiencies = present.clone();
        of.put(&mut efficiencies, EFFICIENCY.read_share(text)?);
        Ok(Edit::Efficiencies(candidate.id, efficiencies))
    });
}

/// What is known, in a few words.
fn in_short(project: &Project, efficiencies: &SetEfficiencies) -> String {
    let own = efficiencies.of_set.map(|share| plain_number(share.share()));
    let all = own
        .or_else(|| usual(project))
        .unwrap_or_else(|| "no losses".to_owned());
    let singles = efficiencies.of_gears.len() + usize::from(efficiencies.direct.is_some());
    match singles {
        0 => all,
        _ => format!("{all}, some gears their own"),
    }
}
