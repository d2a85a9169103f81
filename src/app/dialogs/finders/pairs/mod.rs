//! Tooth pairs for a ratio: all that come near, sorted as one likes, those that can be cut at first where the
//! shafts stand.

mod search;
mod table;
mod texts;

pub(in crate::app) use texts::PairTexts;

use super::about::About;
use super::choices::choices_ui;
use super::frame::{Opening, Shown, finder_frame_ui};
use super::typed_field::{TypedField, begin_with_field, in_columns_ui};
use super::whole_set::whole_set_ui;
use super::{FinderAnswer, Taken, WantedTeeth, set_or_baseline};
use crate::app::desk::Desk;
use crate::app::dialogs::field::{problem_ui, reveal};
use crate::app::heard::tell_why_not;
use crate::app::typed::Reading;
use crate::draw::palette::Palette;
use crate::gearing::{Drivetrain, Factor, FinalDrive, GearId, Ratio, ToothPair};
use crate::project::{Edit, SetEdit, SetId};
use crate::units::{SpeedUnit, mark_text, plain_number, round_to};
use egui::{Checkbox, Context, RichText, Ui, vec2};
use search::{Order, Search};
use table::{PairTable, table_id};
use texts::PairField;

/// What a pair is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PairSpot {
    /// A gear, forward or reverse.
    Gear(GearId),
    /// The final drive at that place, counted from 0.
    FinalDrive(usize),
}

/// The usual teeth of gears of a box.
const GEAR_TEETH: &str = "15-45";

/// Those of a final drive: its pinion has few, its wheel many.
const FINAL_DRIVE_TEETH: &str = "8-80";

impl PairSpot {
    fn usual_teeth(self) -> &'static str {
        match self {
            Self::Gear(_) => GEAR_TEETH,
            Self::FinalDrive(_) => FINAL_DRIVE_TEETH,
        }
    }
}

/// The dialog while it is open.
#[derive(Debug)]
pub(in crate::app) struct PairDialog {
    set: SetId,
    spot: PairSpot,
    pub(in crate::app) texts: PairTexts,
    order: Order,
    search: Option<Search>,
    chosen: Option<ToothPair>,
    tallest: f32,
    /// How high what was found stood last, in points.
    found_height: f32,
}

const HEADING: &str = "Find a tooth pair";

/// Its width where the window has room for it, in points.
const WIDTH: f32 = 700.0;
const FIELD_WIDTH: f32 = 110.0;

/// What is to be said of every pair.
const CAUTION: &str = "A gear maker decides what can be cut. Both gears of a pair change together, and all pairs \
                       between two shafts share one centre distance.";

impl PairDialog {
    /// A dialog about the pair there; top gear's, where nothing is said.
    pub(in crate::app) fn over(
        desk: &Desk,
        (set, spot): (SetId, Option<PairSpot>),
        texts: PairTexts,
    ) -> Self {
        let set = set_or_baseline(desk, set);
        let mut dialog = Self {
            set,
            spot: spot.unwrap_or(PairSpot::FinalDrive(0)),
            texts,
            order: Order::default(),
            search: None,
            chosen: None,
            tallest: 0.0,
            found_height: 0.0,
        };
        if let Some(about) = About::of(desk, set) {
            let top = about.results.top().map(|top| PairSpot::Gear(top.gear.id));
            dialog.spot = spot.or(top).unwrap_or(dialog.spot);
            dialog.begin(&about);
        }
        dialog
    }

    /// A dialog about the teeth of a ratio that was found for a wish.
    pub(in crate::app) fn for_teeth(desk: &Desk, teeth: &WantedTeeth, texts: PairTexts) -> Self {
        let mut dialog = Self::over(desk, (teeth.set, Some(teeth.spot)), texts);
        let units = dialog.texts.units;
        let ratio = plain_number(teeth.ratio.value());
        *dialog.texts.text_mut(PairField::Ratio) = ratio;
        *dialog.texts.text_mut(PairField::Road) = mark_text(teeth.road.kmh(), units);
        dialog
    }

    /// The ratio that is there, to be come near to.
    fn begin(&mut self, about: &About<'_>) {
        let units = about.units();
        self.texts.follow_units(units);
        if let Some(road) = about.usual_road_speed()
            && self.texts.text_mut(PairField::Road).is_empty()
        {
            *self.texts.text_mut(PairField::Road) = mark_text(road.kmh(), units);
        }
        let of = self
            .spot
            .ratio(about)
            .map(|ratio| (self.set, self.spot, ratio.clone()));
        if self.texts.of == of {
            // What was typed for it stands.
            return;
        }
        self.texts.of = of;
        if let Some(present) = self.spot.ratio(about) {
            let ratio = plain_number(round_to(present.value(), 1e-4));
            *self.texts.text_mut(PairField::Ratio) = ratio;
            let head = match present.factors() {
                [head, _, ..] => Ratio::from_factors(vec![*head]).ok(),
                _ => None,
            };
            *self.texts.text_mut(PairField::Head) =
                head.map_or_else(String::new, |head| head.to_string());
        }
        let usual = self.spot.usual_teeth();
        let teeth = self.texts.text_mut(PairField::Teeth);
        // What somebody has typed stands.
        if [GEAR_TEETH, FINAL_DRIVE_TEETH].contains(&teeth.as_str()) {
            usual.clone_into(teeth);
        }
        self.chosen = None;
    }
}

impl PairTexts {
    /// From now on road speeds are in another unit.
    fn follow_units(&mut self, units: SpeedUnit) {
        if units != self.units {
            if let Ok(Some(road)) = self.road() {
                *self.text_mut(PairField::Road) = mark_text(road.kmh(), units);
            }
            self.units = units;
        }
    }
}

impl PairSpot {
    /// The ratio that stands there; none where it is gone, or a chain.
    fn ratio<'a>(self, about: &About<'a>) -> Option<&'a Ratio> {
        match self {
            Self::Gear(gear) => about.set.ratio_of(gear),
            Self::FinalDrive(at) => match about.set.final_drives.get(at)? {
                FinalDrive::Gears(ratio) => Some(ratio),
                FinalDrive::Chain(_) => None,
            },
        }
    }

    /// All that a pair can be for, each with what it is called.
    fn all(about: &About<'_>) -> Vec<(Self, String)> {
        let gears = about.results.gears.iter().chain(&about.results.reverse);
        let gears = gears.map(|result| {
            let gear = &result.gear;
            (Self::Gear(gear.id), format!("gear {}", gear.label))
        });
        let drives = about.set.final_drives.iter().enumerate();
        let several = about.set.final_drives.len() > 1;
        let drives = drives.filter(|(_, drive)| matches!(drive, FinalDrive::Gears(_)));
        let drives = drives.map(|(at, _)| {
            let number = if several {
                format!(" {}", at + 1)
            } else {
                String::new()
            };
            (Self::FinalDrive(at), format!("final drive{number}"))
        });
        gears.chain(drives).collect()
    }

    /// The gear whose engine speed tells how far off a pair is.
    fn told_in(self, about: &About<'_>) -> Option<GearId> {
        match self {
            Self::Gear(gear) => Some(gear),
            Self::FinalDrive(at) => about.highest_on(at),
        }
    }
}

/// Shows the dialog; the answer once there is one.
pub(in crate::app) fn pair_dialog_ui(
    ctx: &Context,
    dialog: &mut PairDialog,
    desk: &Desk,
    palette: &Palette,
) -> Option<FinderAnswer> {
    let Some(about) = About::of(desk, dialog.set) else {
        return Some(FinderAnswer::Cancel);
    };
    let words = format!(
        "Which teeth come near a ratio, in the set \"{}\"?",
        about.set.name
    );
    let opening = Opening {
        salt: "tooth pair",
        name: HEADING,
        words: &words,
        width: WIDTH,
        keeps_page_keys: ctx.memory(|memory| memory.has_focus(table_id())),
    };
    let mut tallest = dialog.tallest;
    let answer = finder_frame_ui(ctx, &opening, &mut tallest, palette, |ui| {
        dialog.contents_ui(ui, &about, palette)
    });
    dialog.tallest = tallest;
    answer
}

impl PairDialog {
    fn contents_ui(&mut self, ui: &mut Ui, about: &About<'_>, palette: &Palette) -> Shown {
        if let Some(spot) = choices_ui(ui, "For", self.spot, &PairSpot::all(about)) {
            self.spot = spot;
            self.begin(about);
        }
        let goes_to_table = self.fields_ui(ui, palette);
        let wish = self.texts.wish();
        let with_uncut = self.texts.shows_uncut || !self.texts.has_centre();
        let search =
            wish.map(|wish| Search::after(self.search.take(), wish, (self.order, with_uncut)));
        let (taken, is_through) = match &search {
            Ok(search) => {
                let found = ui.vertical(|ui| self.found_ui(ui, about, search, palette));
                self.found_height = found.response.rect.height();
                found.inner
            }
            Err(why) => {
                // What stands beneath keeps its place while something is typed.
                ui.allocate_space(vec2(1.0, self.found_height));
                (Err(why.clone()), false)
            }
        };
        if goes_to_table && search.is_ok() {
            ui.memory_mut(|memory| memory.request_focus(table_id()));
            // What gets the focus like this is not told that it has.
            if let Some(table) = ui.ctx().read_response(table_id()) {
                ui.scroll_to_rect(table.rect, None);
            }
        }
        self.search = search.ok();
        let after = taken.as_ref().ok().and_then(|taken| {
            let project = taken.applied_to(about.project).ok()?;
            let set = &project.sets.get(about.id)?.set;
            Some(Drivetrain::resolve(set, &project.tyre))
        });
        let road = self.texts.road().ok().flatten();
        let road = road.or_else(|| about.usual_road_speed());
        ui.add_space(4.0);
        whole_set_ui(ui, about, after.as_ref(), road, palette);
        ui.label(RichText::new(CAUTION).small().color(palette.dim_text));
        Shown {
            taken,
            is_through,
            teeth: None,
        }
    }

    /// The fields, two in a row; whether Enter was pressed in one.
    fn fields_ui(&mut self, ui: &mut Ui, palette: &Palette) -> bool {
        let mut is_entered = false;
        for pair in PairField::ALL.chunks(2) {
            let mut problems = Vec::new();
            ui.horizontal(|ui| {
                for field in pair {
                    let (name, hint) = (self.texts.name(*field), self.texts.hint(*field));
                    let shown = TypedField {
                        name: &name,
                        width: FIELD_WIDTH,
                        now: hint,
                    };
                    let (response, entered) =
                        in_columns_ui(ui, &shown, self.texts.text_mut(*field));
                    if *field == PairField::Ratio {
                        begin_with_field(ui, &response);
                    }
                    is_entered |= entered;
                    if let Some(problem) = self.texts.problem(*field) {
                        problems.push((response, problem));
                    }
                    if *field == PairField::Size {
                        self.size_ui(ui);
                    }
                }
            });
            for (response, problem) in problems {
                problem_ui(ui, &response, &problem, palette);
            }
        }
        is_entered
    }

    /// Whether teeth are sized by module or by pitch.
    fn size_ui(&mut self, ui: &mut Ui) {
        let text = if self.texts.is_pitch {
            "as module"
        } else {
            "as pitch"
        };
        let button = ui.small_button(text);
        reveal(&button);
        let spoken = if self.texts.is_pitch {
            "Give the size of teeth as a module"
        } else {
            "Give the size of teeth as a diametral pitch"
        };
        if button.accessible_name(spoken).clicked() {
            self.texts.is_pitch = !self.texts.is_pitch;
        }
    }

    /// What was found; what can be taken of it, and whether the keys go on to the answers.
    fn found_ui(
        &mut self,
        ui: &mut Ui,
        about: &About<'_>,
        search: &Search,
        palette: &Palette,
    ) -> (Reading<Taken>, bool) {
        self.counts_ui(ui, search);
        let is_shown = |chosen: &ToothPair| search.place_of(*chosen).is_some();
        if !self.chosen.as_ref().is_some_and(is_shown) {
            self.chosen = search.at(0).map(|nearest| nearest.teeth);
        }
        let table = PairTable {
            search,
            engine_rpm: self.engine_rpm(about),
            palette,
        };
        let done = table.show(ui, self.order, self.chosen);
        if let Some(order) = done.order {
            self.order = order;
            ui.ctx().request_repaint();
        }
        self.chosen = done.chosen.or(self.chosen);
        table.chosen_ui(ui, self.chosen);
        let taken = match self.chosen {
            None => Err("no pair comes near enough".to_owned()),
            Some(pair) => self.taken(about, pair),
        };
        (taken, done.is_through)
    }

    /// How many there are, and whether those that cannot be cut are shown too.
    fn counts_ui(&mut self, ui: &mut Ui, search: &Search) {
        let [all, can_be_cut] = search.counts();
        let counted = |count: usize| match count {
            0 => "no pair".to_owned(),
            1 => "one pair".to_owned(),
            count => format!("{count} pairs"),
        };
        ui.add_space(2.0);
        ui.horizontal_wrapped(|ui| {
            if search.wish().centre.is_none() {
                ui.label(counted(all));
                return;
            }
            ui.label(format!("{}, {can_be_cut} of them can be cut", counted(all)));
            let hides = all > can_be_cut;
            let tick = Checkbox::new(&mut self.texts.shows_uncut, "those that cannot, too");
            let tick = ui.add_enabled(hides, tick);
            if tick.clicked() {
                // A click alone leaves the focus nowhere, and it would begin anew.
                tick.request_focus();
            }
            reveal(&tick);
            tell_why_not(tick, "all of them can be cut");
        });
    }

    /// The engine speed in rev/min at cruise with just the ratio that is wished.
    fn engine_rpm(&self, about: &About<'_>) -> Option<f64> {
        let road = self.texts.road().ok()??;
        let gear = &about.gear(self.spot.told_in(about)?)?.gear;
        let present = self.spot.ratio(about)?.value();
        let wished = self.texts.ratio().ok()?.value();
        let rpm = about.results.drivetrain.engine_rpm(gear, road.kmh());
        Some(rpm * wished / present)
    }

    /// The ratio with a pair in its place, behind the head-gear pair where there is one.
    fn taken(&self, about: &About<'_>, pair: ToothPair) -> Reading<Taken> {
        let head = self.texts.head()?;
        let head = head.iter().flat_map(|head| head.factors().iter().copied());
        let factors = head.chain([Factor::Teeth(pair)]).collect();
        let ratio = Ratio::from_factors(factors).map_err(|why| why.to_string())?;
        let edit = match self.spot {
            PairSpot::Gear(gear) => SetEdit::Ratio(gear, ratio),
            PairSpot::FinalDrive(at) => SetEdit::FinalDrive(at, ratio.into()),
        };
        Ok(Taken::Part(Edit::Set(about.id, edit)))
    }
}
