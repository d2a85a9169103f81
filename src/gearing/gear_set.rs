//! A gear set: its parts, and which combinations of them can exist.
//!
//! A [`GearSetSpec`] is the plain parts; a [`GearSet`] is parts that fit together.

use super::final_drive::FinalDrive;
use super::quantity::EngineSpeed;
use super::ratio::Ratio;
use super::text::{Label, Name};
use super::tyre::Tyre;
use std::collections::BTreeSet;
use std::ops::Deref;

/// Names one gear of a set for as long as the set lives, whatever its place or label.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct GearId(pub u32);

impl GearId {
    /// The reverse gear, of which a set has at most one.
    pub const REVERSE: Self = Self(0);
}

/// Whether the driver shifts through a gear.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GearRole {
    /// One of the shift chain, first to top.
    Shifted,
    /// Below first, for crawling only: outside the chain, like reverse.
    Crawler,
}

/// One forward gear.
#[derive(Debug, Clone, PartialEq)]
pub struct Gear {
    /// Its identity within the set.
    pub id: GearId,
    /// What it is called on the lever.
    pub label: Label,
    /// Input turns for one turn of the gearbox's output.
    pub ratio: Ratio,
    /// Which final drive it drives, counted from 0.
    pub final_drive: usize,
    /// Whether it belongs to the shift chain.
    pub role: GearRole,
    /// Its own shift point; the set's where there is none.
    pub shift: Option<EngineSpeed>,
}

/// The reverse gear.
#[derive(Debug, Clone, PartialEq)]
pub struct Reverse {
    /// Input turns for one turn of the gearbox's output, without a sign.
    pub ratio: Ratio,
    /// Which final drive it drives, counted from 0.
    pub final_drive: usize,
}

/// One selectable ratio of a stage: high, low, direct, overdrive.
#[derive(Debug, Clone, PartialEq)]
pub struct Position {
    /// What it is called.
    pub name: Name,
    /// Its ratio; a high range is often not 1.
    pub ratio: Ratio,
}

impl Position {
    /// What the position of a stage is called that has no other, as long as nobody calls it anything.
    pub const FIXED: &str = "Fixed";
}

/// The gears that a stage acts on.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ActsOn {
    /// Every gear, reverse included.
    EveryGear,
    /// These gears only.
    Only(BTreeSet<GearId>),
}

impl ActsOn {
    /// Whether the gear is among them.
    pub fn includes(&self, gear: GearId) -> bool {
        match self {
            Self::EveryGear => true,
            Self::Only(gears) => gears.contains(&gear),
        }
    }
}

/// A further stage between engine and wheels: transfer box, overdrive, primary drive, chain.
#[derive(Debug, Clone, PartialEq)]
pub struct Stage {
    /// What it is called.
    pub name: Name,
    /// Its positions, one to four.
    pub positions: Vec<Position>,
    /// The position it stands in, counted from 0.
    pub present: usize,
    /// The gears it acts on.
    pub acts_on: ActsOn,
    /// Whether figures of its other positions are shown beside those of the present one.
    pub shows_others: bool,
}

impl Stage {
    /// Whether it is called by its name alone: its one position has no name of its own.
    pub fn is_fixed(&self) -> bool {
        matches!(self.positions.as_slice(), [only] if only.name.as_str() == Position::FIXED)
    }
}

/// The parts of a gear set, not yet checked against each other.
#[derive(Debug, Clone, PartialEq)]
pub struct GearSetSpec {
    /// What the set is called.
    pub name: Name,
    /// Forward gears in typed order, 1 to 12.
    pub gears: Vec<Gear>,
    /// The reverse gear, where it matters.
    pub reverse: Option<Reverse>,
    /// What drives the wheels from one to three output shafts.
    pub final_drives: Vec<FinalDrive>,
    /// Up to four further stages.
    pub stages: Vec<Stage>,
    /// The tyre of this candidate, where it differs from the vehicle's.
    pub tyre: Option<Tyre>,
    /// The shift point of every gear that has none of its own.
    pub shift: EngineSpeed,
}

/// Parts that fit together: every gear names a final drive that is there, labels are unique, at
/// least one gear is shifted.
#[derive(Debug, Clone, PartialEq)]
pub struct GearSet(GearSetSpec);

// Every number in it is finite, so a set equals itself, and one that is shared need not be compared.
impl Eq for GearSet {}

/// Why parts do not make a gear set.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum GearSetError {
    /// No forward gear, or too many.
    #[error("a gear set has 1 to 12 forward gears, not {0}")]
    GearCount(usize),
    /// Crawlers only.
    #[error("a gear set needs one gear that is no crawler")]
    NoShiftedGear,
    /// Two gears of the same label.
    #[error("two gears are labelled \"{0}\"; give each a label of its own")]
    SameLabel(Label),
    /// Two gears of the same identity.
    #[error("two gears share one identity; each needs its own")]
    SameIdentity,
    /// No final drive, or too many.
    #[error("a gear set has 1 to 3 final drives, not {0}")]
    FinalDriveCount(usize),
    /// A gear on an output shaft that is not there.
    #[error("gear {gear} names final drive {wanted}, but there are only {present}")]
    NoSuchFinalDrive {
        /// The gear's label.
        gear: String,
        /// The final drive that it names, counted from 1.
        wanted: usize,
        /// How many there are.
        present: usize,
    },
    /// Too many stages.
    #[error("a gear set has at most 4 further stages, not {0}")]
    StageCount(usize),
    /// A stage without positions, with too many, or standing in one that is not there.
    #[error("stage \"{0}\" needs 1 to 4 positions and stands in one of them")]
    Positions(Name),
    /// More combinations of positions to be shown than anybody could compare.
    #[error(
        "the positions that are shown at once make {0} combinations, and the most are {most}; show \
         those of fewer stages",
        most = GearSet::MOST_COMBINATIONS
    )]
    Combinations(usize),
    /// A stage that acts on a gear that is not there.
    #[error("stage \"{0}\" acts on a gear that is not there")]
    NoSuchGear(Name),
}

/// The label of reverse; no forward gear may carry it while there is a reverse gear.
pub const REVERSE_LABEL: &str = "R";

impl GearSet {
    /// The most forward gears, final drives and stages a set can have.
    pub const MOST_GEARS: usize = 12;
    /// The most output shafts a gearbox can have.
    pub const MOST_FINAL_DRIVES: usize = 3;
    /// The most further stages.
    pub const MOST_STAGES: usize = 4;
    /// The most combinations of positions that are shown at once, the present one among them: those of
    /// a range, a splitter and a transfer box.
    pub const MOST_COMBINATIONS: usize = 8;

    /// The parts, to be changed and checked again.
    pub fn to_spec(&self) -> GearSetSpec {
        self.0.clone()
    }

    /// The gears of the shift chain, first to top; there is at least one.
    pub fn chain(&self) -> impl Iterator<Item = &Gear> {
        self.gears.iter().filter(|g| g.role == GearRole::Shifted)
    }

    /// The engine speed at which the driver changes up from `gear`.
    pub fn shift_of(&self, gear: &Gear) -> EngineSpeed {
        gear.shift.unwrap_or(self.shift)
    }

    /// The gear of that identity.
    pub fn gear(&self, id: GearId) -> Option<&Gear> {
        self.gears.iter().find(|g| g.id == id)
    }

    /// The ratio of a gear, forward or reverse; none where it is not there.
    pub fn ratio_of(&self, id: GearId) -> Option<&Ratio> {
        match id {
            GearId::REVERSE => self.reverse.as_ref().map(|reverse| &reverse.ratio),
            forward => self.gear(forward).map(|gear| &gear.ratio),
        }
    }
}

impl GearSetSpec {
    /// An identity that no gear of the set has or could be confused with.
    pub fn unused_id(&self) -> GearId {
        let highest = self.gears.iter().map(|g| g.id.0).max().unwrap_or(0);
        GearId(highest + 1)
    }

    /// The number by which the next gear of the shift chain is called: counted on, unless a gear is called so
    /// already. None where a hundred gears are called by numbers.
    pub fn unused_label(&self) -> Option<Label> {
        let chain = self.gears.iter().filter(|g| g.role == GearRole::Shifted);
        let mut labels = (chain.count() + 1..=99).map(|n| n.to_string());
        let free = labels.find(|label| self.gears.iter().all(|g| g.label.as_str() != label))?;
        Label::new(&free).ok()
    }

    /// Lets every stage forget a gear that is gone.
    pub fn forget_in_stages(&mut self, gear: GearId) {
        for stage in &mut self.stages {
            if let ActsOn::Only(gears) = &mut stage.acts_on {
                gears.remove(&gear);
            }
        }
    }
}

impl Deref for GearSet {
    type Target = GearSetSpec;

    fn deref(&self) -> &GearSetSpec {
        &self.0
    }
}

impl TryFrom<GearSetSpec> for GearSet {
    type Error = GearSetError;

    /// The set, if its parts fit together.
    fn try_from(spec: GearSetSpec) -> Result<Self, GearSetError> {
        check_gears(&spec)?;
        check_final_drives(&spec)?;
        check_stages(&spec)?;
        Ok(Self(spec))
    }
}

fn check_gears(spec: &GearSetSpec) -> Result<(), GearSetError> {
    if !(1..=GearSet::MOST_GEARS).contains(&spec.gears.len()) {
        return Err(GearSetError::GearCount(spec.gears.len()));
    }
    if spec.gears.iter().all(|g| g.role == GearRole::Crawler) {
        return Err(GearSetError::NoShiftedGear);
    }
    let mut labels = BTreeSet::new();
    let mut ids = BTreeSet::from([GearId::REVERSE]);
    for gear in &spec.gears {
        let is_reverse = spec.reverse.is_some() && gear.label.as_str() == REVERSE_LABEL;
        if !labels.insert(&gear.label) || is_reverse {
            return Err(GearSetError::SameLabel(gear.label.clone()));
        }
        if !ids.insert(gear.id) {
            return Err(GearSetError::SameIdentity);
        }
    }
    Ok(())
}

fn check_final_drives(spec: &GearSetSpec) -> Result<(), GearSetError> {
    let present = spec.final_drives.len();
    if !(1..=GearSet::MOST_FINAL_DRIVES).contains(&present) {
        return Err(GearSetError::FinalDriveCount(present));
    }
    let forward = spec.gears.iter().map(|g| (g.label.as_str(), g.final_drive));
    let reverse = spec.reverse.iter().map(|r| (REVERSE_LABEL, r.final_drive));
    match forward
        .chain(reverse)
        .find(|(_, wanted)| *wanted >= present)
    {
        None => Ok(()),
        Some((gear, wanted)) => Err(GearSetError::NoSuchFinalDrive {
            gear: gear.to_owned(),
            wanted: wanted + 1,
            present,
        }),
    }
}

fn check_stages(spec: &GearSetSpec) -> Result<(), GearSetError> {
    if spec.stages.len() > GearSet::MOST_STAGES {
        return Err(GearSetError::StageCount(spec.stages.len()));
    }
    let is_there = |id: &GearId| match *id {
        GearId::REVERSE => spec.reverse.is_some(),
        id => spec.gears.iter().any(|g| g.id == id),
    };
    for stage in &spec.stages {
        let count = stage.positions.len();
        if !(1..=4).contains(&count) || stage.present >= count {
            return Err(GearSetError::Positions(stage.name.clone()));
        }
        if let ActsOn::Only(gears) = &stage.acts_on
            && !gears.iter().all(is_there)
        {
            return Err(GearSetError::NoSuchGear(stage.name.clone()));
        }
    }
    let shown = spec.stages.iter().filter(|stage| stage.shows_others);
    match shown.map(|stage| stage.positions.len()).product() {
        ..=GearSet::MOST_COMBINATIONS => Ok(()),
        count => Err(GearSetError::Combinations(count)),
    }
}
