//! What the texts of the dialog mean: a wish of one gear, what fulfils it, and the change of the document that
//! it is.

use super::WishTexts;
use crate::app::dialogs::finders::about::About;
use crate::app::dialogs::finders::{PairSpot, Taken, WantedTeeth};
use crate::app::typed::{self, Engine, Quantity, Reading};
use crate::finders::{
    FoundValue, Part, PartKind, RankedPart, RpmDrop, Sought, SpeedWish, TAKEN_GRAIN, parse_parts,
    ranked,
};
use crate::gearing::{
    DrivenGear, Drivetrain, EngineSpeed, FinalDrive, GearId, GearSet, Ratio, RoadSpeed,
    RollingCircumference, Tyre,
};
use crate::project::{Edit, SetEdit};
use crate::units::{
    decimals_text, mark_text, percent_difference_text, round_to, rpm_text, speed_text,
    typed_rpm_text,
};

/// What is wished.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) enum WishKind {
    /// An engine speed at a road speed.
    #[default]
    Speed,
    /// A road speed at the redline.
    Redline,
    /// How far the needle falls at a change up.
    Drop,
    /// The gearing of what is fitted, on other tyres.
    AsFitted,
}

/// To how many mm a circumference that was reckoned is taken over.
const CIRCUMFERENCE_GRAIN_MM: f64 = 0.1;

/// A wish of one gear of a set.
pub(super) struct Wished {
    /// The gear in which it is to hold.
    pub(super) gear: GearId,
    pub(super) wish: SpeedWish,
    /// The tyre that the set stands on then, where that is another one.
    tyre: Option<Tyre>,
}

/// What fulfils a wish.
pub(super) struct Proposal {
    pub(super) wished: Wished,
    pub(super) sought: Sought,
    pub(super) found: FoundValue,
    /// What can be had, the nearest first.
    pub(super) ranked: Vec<RankedPart>,
}

impl WishKind {
    pub(super) const ALL: [Self; 4] = [Self::Speed, Self::Redline, Self::Drop, Self::AsFitted];

    pub(super) fn text(self) -> &'static str {
        match self {
            Self::Speed => "engine speed",
            Self::Redline => "speed at the redline",
            Self::Drop => "drop at a shift",
            Self::AsFitted => "as fitted, other tyres",
        }
    }

    /// What can be sought for it.
    pub(super) fn seeks(self) -> &'static [Sought] {
        const ALL: [Sought; 3] = [
            Sought::FinalDrive,
            Sought::GearRatio,
            Sought::RollingCircumference,
        ];
        match self {
            Self::Speed | Self::Redline => &ALL,
            // What stands behind both gears of a shift moves both.
            Self::Drop => &[Sought::GearRatio],
            // The tyre is given.
            Self::AsFitted => &ALL[..2],
        }
    }

    /// The gears that it can be about, each with what it is called: a shift goes by the gear before it.
    pub(super) fn gears(self, about: &About<'_>) -> Vec<(GearId, String)> {
        let label = |gear: &DrivenGear| (gear.id, gear.label.clone());
        match self {
            Self::Speed | Self::Redline | Self::AsFitted => {
                let all = about.results.gears.iter().chain(&about.results.reverse);
                all.map(|result| label(&result.gear)).collect()
            }
            Self::Drop => {
                let shifts = about.results.chain().zip(about.results.chain().skip(1));
                let shift = |(from, to): (&DrivenGear, &DrivenGear)| {
                    (from.id, format!("{} → {}", from.label, to.label))
                };
                shifts
                    .map(|(from, to)| shift((&from.gear, &to.gear)))
                    .collect()
            }
        }
    }
}

impl WishTexts {
    /// What is sought for the wish.
    pub(super) fn sought(&self) -> Sought {
        let seeks = self.kind.seeks();
        let holds = seeks.iter().find(|sought| **sought == self.sought);
        *holds.unwrap_or(&seeks[0])
    }

    pub(super) fn engine(&self) -> Reading<Option<EngineSpeed>> {
        typed::optional(&self.rpm, |text| typed::engine_speed(Engine::ANY, text))
    }

    pub(super) fn road(&self) -> Reading<Option<RoadSpeed>> {
        typed::one_road_speed(&self.road, self.units)
    }

    pub(super) fn drop(&self) -> Reading<Option<RpmDrop>> {
        let quantity = Quantity {
            new: RpmDrop::from_rpm,
            example: "1500",
            unit: "rpm",
        };
        quantity.read_large(&self.drop)
    }

    /// The tyres that the set is to stand on.
    pub(super) fn tyre(&self) -> Reading<Option<Tyre>> {
        typed::optional(&self.tyre, typed::tyre)
    }

    /// The wish; none while something is not typed yet or does not read, which its field says.
    ///
    /// # Errors
    /// A sentence, where nothing that can exist fulfils it.
    pub(super) fn wished(&self, about: &About<'_>, gear: GearId) -> Reading<Option<Wished>> {
        let driven = about.gear(gear).ok_or("that gear is not there any more")?;
        let told = |wish: SpeedWish, gear: GearId| Wished {
            gear,
            wish,
            tyre: None,
        };
        let redline = about.project.engine.redline;
        Ok(match self.kind {
            WishKind::Speed => {
                let both = read(self.engine()).zip(read(self.road()));
                both.map(|(engine, road)| told(SpeedWish { engine, road }, gear))
            }
            WishKind::Redline => read(self.road()).map(|road| {
                let engine = redline;
                told(SpeedWish { engine, road }, gear)
            }),
            WishKind::Drop => match read(self.drop()) {
                None => None,
                Some(drop) => {
                    let drivetrain = &about.results.drivetrain;
                    let wish = SpeedWish::after_drop(drivetrain, &driven.gear, drop);
                    let next = next_gear(about, gear).ok_or("nothing is changed up into")?;
                    Some(told(wish.map_err(|why| why.to_string())?, next))
                }
            },
            WishKind::AsFitted => match read(self.tyre()) {
                None => None,
                Some(tyre) => {
                    let fitted = about.baseline.counterpart(about.results, driven);
                    let fitted = fitted.ok_or("the baseline has no gear like this one")?;
                    let wish = SpeedWish::as_now(&about.baseline.drivetrain, &fitted.gear);
                    let wish = wish.map_err(|why| why.to_string())?;
                    let tyre = Some(tyre).filter(|tyre| tyre != about.tyre());
                    Some(Wished { gear, wish, tyre })
                }
            },
        })
    }

    /// What fulfils the wish, with what can be had of it; none while there is no wish.
    ///
    /// # Errors
    /// As of [`Self::wished`].
    pub(super) fn proposal(&self, about: &About<'_>, gear: GearId) -> Reading<Option<Proposal>> {
        let Some(wished) = self.wished(about, gear)? else {
            return Ok(None);
        };
        let sought = self.sought();
        let set = wished.on_tyre(about.set)?;
        let drivetrain = Drivetrain::resolve(&set, &about.project.tyre);
        let mut gears = drivetrain.gears.iter().chain(&drivetrain.reverse);
        let driven = gears.find(|driven| driven.id == wished.gear);
        let driven = driven.ok_or("that gear is not there any more")?;
        let found = sought.found(&drivetrain, driven, wished.wish);
        let found = found.map_err(|why| format!("nothing gives that: {why}"))?;
        let kind = part_kind(about, sought, wished.gear);
        let parts = parse_parts(kind, self.had())
            .into_iter()
            .filter_map(Result::ok);
        let ranked = ranked(parts, (sought, &found, wished.wish));
        Ok(Some(Proposal {
            wished,
            sought,
            found,
            ranked,
        }))
    }

    /// Why parts of the list do not read, in their order.
    pub(super) fn unread(&self, about: &About<'_>, gear: GearId) -> Vec<String> {
        let kind = part_kind(about, self.sought(), gear);
        let parts = parse_parts(kind, self.had()).into_iter();
        parts
            .filter_map(|part| Some(part.err()?.to_string()))
            .collect()
    }
}

/// A figure that is typed and reads.
fn read<T>(reading: Reading<Option<T>>) -> Option<T> {
    reading.ok().flatten()
}

/// What a list of parts for what is sought holds.
fn part_kind(about: &About<'_>, sought: Sought, gear: GearId) -> PartKind {
    match sought {
        Sought::RollingCircumference => PartKind::Tyres,
        Sought::GearRatio => PartKind::Gears,
        Sought::FinalDrive => {
            let at = about.final_drive_of(gear);
            match at.and_then(|at| about.set.final_drives.get(at)) {
                Some(FinalDrive::Chain(fitted)) => PartKind::Chains(*fitted),
                Some(FinalDrive::Gears(_)) | None => PartKind::FinalDrives,
            }
        }
    }
}

/// The gear that is changed up into from another.
pub(super) fn next_gear(about: &About<'_>, gear: GearId) -> Option<GearId> {
    let mut behind = about
        .results
        .chain()
        .skip_while(|result| result.gear.id != gear);
    behind.nth(1).map(|next| next.gear.id)
}

impl Wished {
    /// The set on the tyres that are wished.
    fn on_tyre(&self, set: &GearSet) -> Reading<GearSet> {
        match self.tyre {
            None => Ok(set.clone()),
            Some(tyre) => {
                let set = SetEdit::Tyre(Some(tyre)).applied_to(set);
                set.map_err(|why| why.to_string())
            }
        }
    }
}

impl Proposal {
    /// The change of the document: what was found to the digits that are shown, or the part that was chosen.
    ///
    /// # Errors
    /// A sentence, where a part cannot be.
    pub(super) fn taken(
        &self,
        about: &About<'_>,
        chosen: Option<&Part>,
        is_of_vehicle: bool,
    ) -> Reading<Taken> {
        let part = match chosen {
            Some(part) => part.clone(),
            None => self.exact().map_err(|why| why.to_string())?,
        };
        let gear = self.wished.gear;
        let edit = match part {
            Part::FinalDrive(drive) => {
                let at = about.final_drive_of(gear);
                SetEdit::FinalDrive(at.ok_or("that gear is not there any more")?, drive)
            }
            Part::Gear(ratio) => SetEdit::Ratio(gear, ratio),
            Part::Tyre(tyre) if is_of_vehicle => return Ok(Taken::Part(Edit::Tyre(tyre))),
            Part::Tyre(tyre) => SetEdit::Tyre(Some(tyre)),
        };
        if self.wished.tyre.is_none() {
            return Ok(Taken::Part(Edit::Set(about.id, edit)));
        }
        let set = edit.applied_to(&self.wished.on_tyre(about.set)?);
        let spec = set.map_err(|why| why.to_string())?.to_spec();
        Ok(Taken::Parts(
            about.id,
            Box::new(spec),
            "other tyres and what they ask for",
        ))
    }

    /// What was found, in a sentence.
    pub(super) fn words(&self) -> String {
        let found = &self.found;
        let (what, decimals, unit) = match self.sought {
            Sought::FinalDrive => ("Final drive", 4, ""),
            Sought::GearRatio => ("Ratio", 4, ""),
            Sought::RollingCircumference => ("Rolling circumference", 1, " mm"),
        };
        let [value, present] = [found.value, found.present].map(|of| decimals_text(of, decimals));
        let difference = percent_difference_text(found.difference_share());
        format!("{what} {value}{unit} instead of {present}{unit} ({difference})")
    }

    /// What was found as a ratio that teeth can be found for; none where it is none of gears, or goes together
    /// with other tyres.
    pub(super) fn teeth(&self, about: &About<'_>) -> Option<WantedTeeth> {
        let gear = self.wished.gear;
        let spot = match self.sought {
            Sought::RollingCircumference => None,
            Sought::GearRatio => Some(PairSpot::Gear(gear)),
            Sought::FinalDrive => match part_kind(about, self.sought, gear) {
                PartKind::FinalDrives => about.final_drive_of(gear).map(PairSpot::FinalDrive),
                PartKind::Chains(_) | PartKind::Gears | PartKind::Tyres => None,
            },
        };
        let ratio = Ratio::from_number(round_to(self.found.value, TAKEN_GRAIN)).ok()?;
        Some(WantedTeeth {
            set: about.id,
            spot: spot.filter(|_| self.wished.tyre.is_none())?,
            ratio,
            road: self.wished.wish.road,
        })
    }

    /// What was found, as a part.
    fn exact(&self) -> Result<Part, Box<dyn std::error::Error>> {
        let ratio = || Ratio::from_number(round_to(self.found.value, TAKEN_GRAIN));
        Ok(match self.sought {
            Sought::FinalDrive => Part::FinalDrive(ratio()?.into()),
            Sought::GearRatio => Part::Gear(ratio()?),
            Sought::RollingCircumference => {
                let mm = round_to(self.found.value, CIRCUMFERENCE_GRAIN_MM);
                Part::Tyre(Tyre::RollingCircumference(RollingCircumference::from_mm(
                    mm,
                )?))
            }
        })
    }

    /// What the wish comes to in the words of its kind, with that engine speed at its road speed in the place
    /// of the wished one.
    pub(super) fn outcome(&self, about: &About<'_>, kind: WishKind, engine_rpm: f64) -> String {
        let wish = self.wished.wish;
        let unit = about.units();
        match kind {
            WishKind::Speed | WishKind::AsFitted => {
                let at = mark_text(wish.road.kmh(), unit);
                format!("{} rpm at {at} {}", rpm_text(engine_rpm), unit.sign())
            }
            WishKind::Redline => {
                let kmh = wish.road.kmh() * wish.engine.rpm() / engine_rpm;
                format!("{} {} at the redline", speed_text(kmh, unit), unit.sign())
            }
            WishKind::Drop => {
                let shift_rpm = about.results.chain().find_map(|result| {
                    let is_before = next_gear(about, result.gear.id) == Some(self.wished.gear);
                    result.gear.shift.filter(|_| is_before)
                });
                let shift_rpm = shift_rpm.map_or(0.0, EngineSpeed::rpm);
                let falls = rpm_text(shift_rpm - engine_rpm);
                let from = typed_rpm_text(shift_rpm);
                format!("falls {falls} to {} from {from} rpm", rpm_text(engine_rpm))
            }
        }
    }
}
