//! What fulfils a wish: which final drive, ratio or tyre makes an engine speed at a road speed, a speed at the
//! redline, a drop, or keeps what is fitted on other tyres. What can be had is ranked beside it.

mod had_ui;
mod wished;

use super::about::About;
use super::choices::choices_ui;
use super::frame::{Opening, Shown, finder_frame_ui};
use super::typed_field::{MOST_CHARACTERS, TypedField, begin_with_field, id_of, typed_ui};
use super::whole_set::whole_set_ui;
use super::{FinderAnswer, WishedAt, set_or_baseline};
use crate::app::desk::Desk;
use crate::app::dialogs::field::{go_to, reveal};
use crate::app::heard::announce;
use crate::app::typed::Reading;
use crate::draw::palette::Palette;
use crate::finders::{Part, Sought};
use crate::gearing::{Drivetrain, GearId};
use crate::project::SetId;
use crate::units::{SpeedUnit, mark_text, rpm_text, typed_rpm_text};
use egui::{Context, RichText, Ui};
use had_ui::had_ui;
use wished::{Proposal, WishKind};

/// What stands in the dialog.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct WishTexts {
    kind: WishKind,
    sought: Sought,
    rpm: String,
    road: String,
    drop: String,
    tyre: String,
    /// What can be had of final drives, ratios and tyres.
    had: [String; 3],
    /// The unit in which road speeds stand here.
    units: SpeedUnit,
}

impl Default for WishTexts {
    fn default() -> Self {
        Self {
            kind: WishKind::default(),
            sought: Sought::FinalDrive,
            rpm: String::new(),
            road: String::new(),
            drop: String::new(),
            tyre: String::new(),
            had: Default::default(),
            units: SpeedUnit::Kmh,
        }
    }
}

impl WishTexts {
    /// What can be had of what is sought.
    fn had(&self) -> &str {
        &self.had[self.place_of_had()]
    }

    fn had_mut(&mut self) -> &mut String {
        let place = self.place_of_had();
        &mut self.had[place]
    }

    fn place_of_had(&self) -> usize {
        match self.sought() {
            Sought::FinalDrive => 0,
            Sought::GearRatio => 1,
            Sought::RollingCircumference => 2,
        }
    }

    /// The same with road speeds in another unit.
    fn in_units(mut self, units: SpeedUnit) -> Self {
        if units != self.units {
            if let Ok(Some(road)) = self.road() {
                self.road = mark_text(road.kmh(), units);
            }
            self.units = units;
        }
        self
    }
}

/// The dialog while it is open.
#[derive(Debug)]
pub(in crate::app) struct WishDialog {
    set: SetId,
    gear: Option<GearId>,
    /// Whether a tyre is taken over as that of the vehicle.
    is_of_vehicle: bool,
    pub(in crate::app) texts: WishTexts,
    /// What is chosen of what can be had; nothing is the exact value.
    chosen: Option<Part>,
    tallest: f32,
}

const HEADING: &str = "Find for a wish";

/// Its width where the window has room for it, in points.
const WIDTH: f32 = 620.0;
const FIELD_WIDTH: f32 = 90.0;
const TYRE_WIDTH: f32 = 220.0;

impl WishDialog {
    /// A dialog about what is wished there.
    pub(in crate::app) fn over(
        desk: &Desk,
        (set, at): (SetId, WishedAt),
        texts: WishTexts,
    ) -> Self {
        let set = set_or_baseline(desk, set);
        let mut dialog = Self {
            set,
            gear: None,
            is_of_vehicle: at == WishedAt::TyreOfVehicle,
            texts: texts.in_units(desk.project().units),
            chosen: None,
            tallest: 0.0,
        };
        if let Some(about) = About::of(desk, set) {
            dialog.begin(&about, at);
        }
        dialog
    }

    /// What was asked for where it was asked for.
    fn begin(&mut self, about: &About<'_>, at: WishedAt) {
        let top = about.results.top().map(|top| top.gear.id);
        let texts = &mut self.texts;
        self.gear = top;
        let sought = match at {
            WishedAt::Set => None,
            WishedAt::FinalDrive(at) => {
                self.gear = about.highest_on(at);
                Some(Sought::FinalDrive)
            }
            WishedAt::Gear(gear) => {
                self.gear = Some(gear);
                Some(Sought::GearRatio)
            }
            WishedAt::Shift(gear) => {
                texts.kind = WishKind::Drop;
                self.gear = gear;
                None
            }
            WishedAt::Tyre | WishedAt::TyreOfVehicle => Some(Sought::RollingCircumference),
        };
        if let Some(sought) = sought {
            texts.sought = sought;
            // A drop is asked for at the gear before it.
            if texts.kind == WishKind::Drop || !texts.kind.seeks().contains(&sought) {
                texts.kind = WishKind::Speed;
            }
        }
        if texts.road.is_empty()
            && let Some(road) = about.usual_road_speed()
        {
            texts.road = mark_text(road.kmh(), texts.units);
        }
        if texts.tyre.is_empty() {
            texts.tyre = about.tyre().to_string();
        }
    }

    /// The gear that the wish is about.
    fn gear(&self, about: &About<'_>) -> Option<GearId> {
        let gears = self.texts.kind.gears(about);
        let holds = gears.iter().find(|(id, _)| Some(*id) == self.gear);
        let last_shifted = || {
            let top = about.results.top().map(|top| top.gear.id);
            let mut upwards = gears.iter().rev();
            upwards
                .find(|(id, _)| Some(*id) == top)
                .or_else(|| gears.last())
        };
        holds.or_else(last_shifted).map(|(id, _)| *id)
    }
}

/// Shows the dialog; the answer once there is one.
pub(in crate::app) fn wish_dialog_ui(
    ctx: &Context,
    dialog: &mut WishDialog,
    desk: &Desk,
    palette: &Palette,
) -> Option<FinderAnswer> {
    let Some(about) = About::of(desk, dialog.set) else {
        return Some(FinderAnswer::Cancel);
    };
    let words = format!("What would give it, in the set \"{}\"?", about.set.name);
    let opening = Opening {
        salt: "wish",
        name: HEADING,
        words: &words,
        width: WIDTH,
        keeps_page_keys: false,
    };
    let mut tallest = dialog.tallest;
    let answer = finder_frame_ui(ctx, &opening, &mut tallest, palette, |ui| {
        dialog.contents_ui(ui, &about, palette)
    });
    dialog.tallest = tallest;
    answer
}

impl WishDialog {
    fn contents_ui(&mut self, ui: &mut Ui, about: &About<'_>, palette: &Palette) -> Shown {
        let before = (self.texts.sought(), self.gear(about));
        self.choices_ui(ui, about);
        let Some(gear) = self.gear(about) else {
            let why = "a set of one gear has no change up".to_owned();
            ui.label(RichText::new(&why).color(palette.error));
            return Shown {
                taken: Err(why),
                is_through: false,
                teeth: None,
            };
        };
        if before != (self.texts.sought(), Some(gear)) {
            self.chosen = None;
        }
        let is_through = self.fields_ui(ui, about, gear, palette);
        let proposal = self.texts.proposal(about, gear);
        let wants_teeth = found_ui(ui, about, &proposal, palette);
        let proposal = proposal.and_then(|found| found.ok_or_else(|| NOT_YET.to_owned()));
        had_ui(ui, self, about, gear, &proposal, palette);
        let taken = proposal
            .as_ref()
            .map_err(String::clone)
            .and_then(|proposal| proposal.taken(about, self.chosen.as_ref(), self.is_of_vehicle));
        let after = taken.as_ref().ok().and_then(|taken| {
            let project = taken.applied_to(about.project).ok()?;
            let set = &project.sets.get(about.id)?.set;
            Some(Drivetrain::resolve(set, &project.tyre))
        });
        let road = match &proposal {
            Ok(proposal) => Some(proposal.wished.wish.road),
            Err(_) => about.usual_road_speed(),
        };
        ui.add_space(4.0);
        whole_set_ui(ui, about, after.as_ref(), road, palette);
        let teeth = proposal.ok().filter(|_| wants_teeth);
        Shown {
            taken,
            is_through,
            teeth: teeth.and_then(|proposal| proposal.teeth(about)),
        }
    }

    fn choices_ui(&mut self, ui: &mut Ui, about: &About<'_>) {
        let kinds = WishKind::ALL.map(|kind| (kind, kind.text().to_owned()));
        if let Some(kind) = choices_ui(ui, "Wished", self.texts.kind, &kinds) {
            self.texts.kind = kind;
        }
        let gears = self.texts.kind.gears(about);
        let holds = self.gear(about);
        let named = if self.texts.kind == WishKind::Drop {
            "At"
        } else {
            "In gear"
        };
        let choices: Vec<_> = gears
            .into_iter()
            .map(|(id, text)| (Some(id), text))
            .collect();
        if let Some(gear) = choices_ui(ui, named, holds, &choices) {
            self.gear = gear;
        }
        let seeks = self.texts.kind.seeks().iter();
        let seeks: Vec<_> = seeks
            .map(|sought| (*sought, self.what(*sought, about)))
            .collect();
        if let Some(sought) = choices_ui(ui, "Find", self.texts.sought(), &seeks) {
            self.texts.sought = sought;
        }
    }

    /// What is sought, in words.
    fn what(&self, sought: Sought, about: &About<'_>) -> String {
        let gear = self.gear(about);
        match sought {
            Sought::FinalDrive => {
                let several = about.set.final_drives.len() > 1;
                let at = gear.and_then(|gear| about.final_drive_of(gear));
                let number = at.filter(|_| several).map(|at| format!(" {}", at + 1));
                format!("final drive{}", number.unwrap_or_default())
            }
            Sought::GearRatio => {
                let gear = match self.texts.kind {
                    WishKind::Drop => gear.and_then(|gear| wished::next_gear(about, gear)),
                    WishKind::Speed | WishKind::Redline | WishKind::AsFitted => gear,
                };
                let result = gear.and_then(|gear| about.gear(gear));
                let label = result.map_or("", |result| &result.gear.label);
                format!("ratio of gear {label}")
            }
            Sought::RollingCircumference if self.is_of_vehicle => "tyre of the vehicle".to_owned(),
            Sought::RollingCircumference => "tyre of the set".to_owned(),
        }
    }

    /// The figures of the wish; whether Enter was pressed in the last of them.
    fn fields_ui(
        &mut self,
        ui: &mut Ui,
        about: &About<'_>,
        gear: GearId,
        palette: &Palette,
    ) -> bool {
        let kind = self.texts.kind;
        let unit = self.texts.units;
        let speed_name = match kind {
            WishKind::Speed => format!("at, {}", unit.sign()),
            WishKind::Redline | WishKind::Drop | WishKind::AsFitted => {
                format!("Road speed, {}", unit.sign())
            }
        };
        let now = self.now(about, gear);
        let field = |name, width| TypedField {
            name,
            width,
            now: &now,
        };
        let (last, is_through) = match kind {
            WishKind::Speed => {
                let problem = self.texts.engine().err();
                let (field, text) = (field("Engine speed, rpm", FIELD_WIDTH), &mut self.texts.rpm);
                let (first, is_entered) = typed_ui(ui, &field, text, problem.as_deref(), palette);
                begin_with_field(ui, &first);
                if is_entered {
                    go_to(ui, id_of(&speed_name), MOST_CHARACTERS);
                }
                let problem = self.texts.road().err();
                let field = TypedField {
                    name: &speed_name,
                    width: FIELD_WIDTH,
                    now: "",
                };
                typed_ui(
                    ui,
                    &field,
                    &mut self.texts.road,
                    problem.as_deref(),
                    palette,
                )
            }
            WishKind::Redline => {
                let problem = self.texts.road().err();
                let (field, text) = (field(&speed_name, FIELD_WIDTH), &mut self.texts.road);
                typed_ui(ui, &field, text, problem.as_deref(), palette)
            }
            WishKind::Drop => {
                let problem = self.texts.drop().err();
                let (field, text) = (field("Drop, rpm", FIELD_WIDTH), &mut self.texts.drop);
                typed_ui(ui, &field, text, problem.as_deref(), palette)
            }
            WishKind::AsFitted => {
                let problem = self.texts.tyre().err();
                let (field, text) = (field("Other tyres", TYRE_WIDTH), &mut self.texts.tyre);
                typed_ui(ui, &field, text, problem.as_deref(), palette)
            }
        };
        begin_with_field(ui, &last);
        is_through
    }

    /// What the set does now of what is wished, in words.
    fn now(&self, about: &About<'_>, gear: GearId) -> String {
        let Some(result) = about.gear(gear) else {
            return String::new();
        };
        let unit = self.texts.units;
        match self.texts.kind {
            WishKind::Speed => match self.texts.road() {
                Ok(Some(road)) => {
                    let rpm = about
                        .results
                        .drivetrain
                        .engine_rpm(&result.gear, road.kmh());
                    format!("now {}", rpm_text(rpm))
                }
                Ok(None) | Err(_) => String::new(),
            },
            WishKind::Redline => {
                let redline = typed_rpm_text(about.project.engine.redline.rpm());
                let now = mark_text(result.redline_speed_kmh, unit);
                format!("now {now}, at {redline} rpm")
            }
            WishKind::Drop => result.upshift.map_or_else(String::new, |upshift| {
                let from = typed_rpm_text(upshift.shift_rpm);
                format!("now {}, from {from} rpm", rpm_text(upshift.rpm_drop()))
            }),
            WishKind::AsFitted if about.is_baseline => format!("now on {}", about.tyre()),
            WishKind::AsFitted => "geared as the baseline is".to_owned(),
        }
    }
}

/// Why there is nothing to take over while the wish is not whole.
const NOT_YET: &str = "the wish is not whole yet";

/// What was found, in a sentence, or why nothing was; whether teeth are wanted for it.
fn found_ui(
    ui: &mut Ui,
    about: &About<'_>,
    proposal: &Reading<Option<Proposal>>,
    palette: &Palette,
) -> bool {
    let (words, color) = match proposal {
        Ok(None) => ("Type what is wished.".to_owned(), palette.dim_text),
        Err(why) => (why.clone(), palette.error),
        Ok(Some(proposal)) => (proposal.words(), palette.text),
    };
    let can_have_teeth = match proposal {
        Ok(Some(proposal)) => proposal.teeth(about).is_some(),
        Ok(None) | Err(_) => false,
    };
    ui.add_space(2.0);
    ui.horizontal_wrapped(|ui| {
        announce(&ui.label(RichText::new(words).strong().color(color)));
        can_have_teeth && {
            let button = ui.small_button("Teeth for it…");
            reveal(&button);
            let hint = "Finds the tooth pairs that come near it";
            button.on_hover_text(hint).clicked()
        }
    })
    .inner
}
