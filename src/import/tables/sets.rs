//! One set, from the cells of its rows and what is said of it as a whole.

use super::OwnSet;
use super::error::TableError;
use super::found::{FoundRow, FoundSet};
use super::headings::Column;
use super::phrases::Facts;
use crate::gearing::{
    ActsOn, EngineSpeed, FinalDrive, Gear, GearId, GearRole, GearSet, Label, Name, REVERSE_LABEL,
    Ratio, Reverse, Stage, Tyre, parse_chain, parse_decimal, parse_ratio, parse_stages, parse_tyre,
    quoted,
};
use crate::units::round_to;
use std::collections::BTreeSet;

/// What reads one set.
pub(super) struct SetReader<'a> {
    /// Its number in the text.
    number: usize,
    set: &'a FoundSet,
}

/// One row as its cells say.
struct ReadRow {
    label: Label,
    ratio: Option<Ratio>,
    overall: Option<f64>,
    is_crawler: bool,
    final_drive: Option<usize>,
    /// Which stages act on it, counted from 1; all where the table does not say.
    stages: Option<Vec<usize>>,
    shift: Option<EngineSpeed>,
}

impl<'a> SetReader<'a> {
    pub(super) fn new(number: usize, set: &'a FoundSet) -> Self {
        Self { number, set }
    }

    /// The set on the tyre that it stands on, whosever that is, with a remark about each thing that was
    /// reckoned.
    ///
    /// # Errors
    /// When a cell is no value of its column, or the gears make no set.
    pub(super) fn read(
        &self,
        facts: Facts,
        remarks: &mut Vec<String>,
    ) -> Result<OwnSet, TableError> {
        let mut rows = Vec::with_capacity(self.set.rows.len());
        for row in &self.set.rows {
            rows.push(self.row(row)?);
        }
        self.tell_crawlers(&mut rows);
        let has_reverse = self.ends_with_reverse(&rows);
        self.ends_with_top(&rows, has_reverse)?;
        let stages = self.stages(facts.stages)?;
        let mut final_drives = self.final_drives(facts.final_drives)?;
        if final_drives.is_empty() {
            final_drives.extend(self.reckoned_final_drive(&rows, &stages, remarks));
        }
        let ratios = self.ratios(&rows, &stages, &final_drives, remarks)?;
        let on = self.on_final_drives(&rows, &ratios, &stages, &final_drives);
        let shifts: Vec<EngineSpeed> = rows.iter().filter_map(|row| row.shift).collect();
        let shift = usual(&shifts);
        let mut gears = Vec::with_capacity(rows.len());
        let mut reverse = None;
        for (at, ((row, ratio), final_drive)) in rows.iter().zip(ratios).zip(on).enumerate() {
            if has_reverse && at + 1 == rows.len() {
                reverse = Some(Reverse { ratio, final_drive });
            } else {
                gears.push(Gear {
                    id: identity(at),
                    label: row.label.clone(),
                    ratio,
                    final_drive,
                    role: if row.is_crawler {
                        GearRole::Crawler
                    } else {
                        GearRole::Shifted
                    },
                    shift: row.shift.filter(|own| Some(*own) != shift),
                });
            }
        }
        let own = OwnSet {
            name: self.name()?,
            gears,
            reverse,
            final_drives,
            stages: acting(stages, &rows, has_reverse),
            tyre: self.tyre(facts.tyre)?,
            shift,
        };
        self.checked(own)
    }

    /// The set itself where its parts fit together.
    fn checked(&self, own: OwnSet) -> Result<OwnSet, TableError> {
        let any_shift = EngineSpeed::from_rpm(1.0);
        let any_final = Ratio::from_number(1.0);
        if let (Ok(shift), Ok(ratio)) = (any_shift, any_final) {
            let missing = super::Missing {
                final_drives: vec![ratio.into()],
                shift,
            };
            let checked = own.gear_set(&missing);
            checked.map_err(|error| TableError::NoSet {
                set: self.number,
                error,
            })?;
        }
        Ok(own)
    }

    fn row(&self, row: &FoundRow) -> Result<ReadRow, TableError> {
        let label = Label::new(&row.label);
        let label = label
            .ok()
            .ok_or_else(|| self.not_a_value(row, Column::Gear))?;
        let stages = self.read_cell(row, Column::ThroughStage, |text| match text {
            "none" => Some(Vec::new()),
            text => text.split(" and ").map(|n| n.trim().parse().ok()).collect(),
        })?;
        let final_drive = self.read_cell(row, Column::OnFinalDrive, |text| {
            let number: usize = text.trim().parse().ok()?;
            number
                .checked_sub(1)
                .filter(|at| *at < GearSet::MOST_FINAL_DRIVES)
        })?;
        let shift = match self.engine_speed(row, Column::ShiftPoint)? {
            None => self.engine_speed(row, Column::ShiftAt)?,
            shift => shift,
        };
        Ok(ReadRow {
            label,
            ratio: self.ratio(row)?,
            overall: self.read_cell(row, Column::Overall, |text| parse_decimal(text).ok())?,
            is_crawler: self
                .read_cell(row, Column::Crawler, |text| (text == "yes").then_some(()))?
                .is_some(),
            final_drive,
            stages,
            shift,
        })
    }

    /// The ratio of a gear: from its teeth where they are printed.
    fn ratio(&self, row: &FoundRow) -> Result<Option<Ratio>, TableError> {
        if let Some(teeth) = self.read_cell(row, Column::Teeth, ratio)? {
            return Ok(Some(teeth));
        }
        self.read_cell(row, Column::Ratio, |text| {
            // Teeth stand before the number that they make.
            ratio(text.split_once(" = ").map_or(text, |(teeth, _)| teeth))
        })
    }

    /// An engine speed in a column.
    pub(super) fn engine_speed(
        &self,
        row: &FoundRow,
        column: Column,
    ) -> Result<Option<EngineSpeed>, TableError> {
        self.read_cell(row, column, |text| {
            EngineSpeed::from_rpm(parse_decimal(text).ok()?).ok()
        })
    }

    fn read_cell<T>(
        &self,
        row: &FoundRow,
        column: Column,
        read: impl Fn(&str) -> Option<T>,
    ) -> Result<Option<T>, TableError> {
        let Some(text) = self.set.cell(row, column) else {
            return Ok(None);
        };
        let value = read(text).ok_or_else(|| self.not_a_value(row, column))?;
        Ok(Some(value))
    }

    /// What is said where a cell holds something else than its heading says.
    pub(super) fn not_a_value(&self, row: &FoundRow, column: Column) -> TableError {
        let heading = self.set.headings.iter().find(|h| h.column == column);
        let text = match column {
            Column::Gear => row.label.as_str(),
            column => self.set.cell(row, column).unwrap_or_default(),
        };
        TableError::NotAValue {
            set: self.number,
            gear: quoted(&row.label),
            column: heading.map_or_else(|| "gear".to_owned(), |h| quoted(&h.words)),
            text: quoted(text),
        }
    }

    /// Tells crawlers where no column does: a gear with no step amid gears with one.
    fn tell_crawlers(&self, rows: &mut [ReadRow]) {
        if self.set.has(Column::Crawler) || !self.set.has(Column::Step) {
            return;
        }
        let last_shifted = (0..rows.len()).rev().find(|at| self.goes_up_from(*at));
        for (at, row) in rows.iter_mut().enumerate().take(last_shifted.unwrap_or(0)) {
            row.is_crawler = !self.goes_up_from(at);
        }
    }

    /// Whether the last row is reverse: it is labelled so, and the gear before it is the top.
    fn ends_with_reverse(&self, rows: &[ReadRow]) -> bool {
        let Some((last, before)) = rows.split_last() else {
            return false;
        };
        if last.label.as_str() != REVERSE_LABEL || last.is_crawler {
            return false;
        }
        if self.set.has(Column::ShiftPoint) {
            // Every forward gear has one.
            return last.shift.is_none();
        }
        let top = before.iter().rposition(|row| !row.is_crawler);
        top.is_some_and(|top| !self.goes_up_from(top))
    }

    /// Whether a gear has an upshift, to a gear behind it.
    fn goes_up_from(&self, at: usize) -> bool {
        let row = &self.set.rows[at];
        let has = |column| self.set.cell(row, column).is_some();
        has(Column::Step) || has(Column::ShiftAt)
    }

    /// Refuses rows that stop where another gear must follow: an upshift leads to it, or there would be
    /// one gear alone, whose shift point is printed for want of an upshift.
    fn ends_with_top(&self, rows: &[ReadRow], has_reverse: bool) -> Result<(), TableError> {
        let forward = rows.len() - usize::from(has_reverse);
        let mut shifted = (0..forward).rev().filter(|at| !rows[*at].is_crawler);
        let Some(last) = shifted.next() else {
            return Ok(());
        };
        let is_alone = shifted.next().is_none();
        let tells_upshifts = self.set.has(Column::Step) && self.set.has(Column::ShiftAt);
        let misses = is_alone && tells_upshifts && !self.set.has(Column::ShiftPoint);
        if misses || self.goes_up_from(last) {
            return Err(TableError::MissesGears {
                set: self.number,
                gear: quoted(&self.set.rows[last].label),
            });
        }
        Ok(())
    }

    fn stages(&self, said: Vec<Stage>) -> Result<Vec<Stage>, TableError> {
        let of_first = match self.set.rows.first() {
            Some(row) => self.read_cell(row, Column::Stages, |text| {
                parse_stages(&crate::formula::as_typed(text))
            })?,
            None => None,
        };
        Ok(of_first.unwrap_or(said))
    }

    fn final_drives(&self, said: Vec<FinalDrive>) -> Result<Vec<FinalDrive>, TableError> {
        let all = |text: &str| {
            text.split(" and ")
                .map(drive)
                .collect::<Option<Vec<FinalDrive>>>()
        };
        let Some(first) = self.set.rows.first() else {
            return Ok(said);
        };
        if let Some(all) = self.read_cell(first, Column::FinalDrives, all)? {
            return Ok(all);
        }
        if !said.is_empty() {
            return Ok(said);
        }
        // Each gear with its own, of which most are the same.
        let mut each: Vec<FinalDrive> = Vec::new();
        for row in &self.set.rows {
            let own = self.read_cell(row, Column::FinalDrive, drive)?;
            if let Some(own) = own.filter(|own| !each.contains(own)) {
                each.push(own);
            }
        }
        Ok(each)
    }

    /// The final drive that overall ratios tell, by the gear that tells it best.
    fn reckoned_final_drive(
        &self,
        rows: &[ReadRow],
        stages: &[Stage],
        remarks: &mut Vec<String>,
    ) -> Option<FinalDrive> {
        let told = rows.iter().filter_map(|row| {
            let ratio = row.ratio.as_ref()?.value();
            Some((ratio, row.overall? / (ratio * through(row, stages))))
        });
        let (_, number) = told.max_by(|a, b| a.0.total_cmp(&b.0))?;
        let ratio = Ratio::from_number(round_to(number, 0.001)).ok()?;
        remarks.push(format!(
            "set {}: the final drive {ratio} was reckoned from overall ratios",
            self.number
        ));
        Some(ratio.into())
    }

    /// The ratios of all gears: as they stand there, else what overall ratios leave of them.
    fn ratios(
        &self,
        rows: &[ReadRow],
        stages: &[Stage],
        final_drives: &[FinalDrive],
        remarks: &mut Vec<String>,
    ) -> Result<Vec<Ratio>, TableError> {
        let mut ratios = Vec::with_capacity(rows.len());
        let mut is_reckoned = false;
        for (row, found) in rows.iter().zip(&self.set.rows) {
            if let Some(ratio) = &row.ratio {
                ratios.push(ratio.clone());
                continue;
            }
            let overall = row
                .overall
                .ok_or(TableError::NoRatios { set: self.number })?;
            let final_drive = final_drives.get(row.final_drive.unwrap_or(0));
            let behind = final_drive.map_or(1.0, FinalDrive::value) * through(row, stages);
            let ratio = Ratio::from_number(round_to(overall / behind, 0.001));
            let ratio = ratio.ok();
            ratios.push(ratio.ok_or_else(|| self.not_a_value(found, Column::Overall))?);
            is_reckoned = true;
        }
        if is_reckoned {
            let what = if final_drives.is_empty() {
                "overall ratios were taken for those of the gears"
            } else {
                "the ratios were reckoned from overall ratios"
            };
            remarks.push(format!("set {}: {what}", self.number));
        }
        Ok(ratios)
    }

    /// Which final drive each gear drives: as the table says, else the one that makes its overall ratio.
    fn on_final_drives(
        &self,
        rows: &[ReadRow],
        ratios: &[Ratio],
        stages: &[Stage],
        final_drives: &[FinalDrive],
    ) -> Vec<usize> {
        let of_row = |at: usize, row: &ReadRow| -> Option<usize> {
            if final_drives.len() < 2 {
                return None;
            }
            if row.final_drive.is_some() {
                return row.final_drive;
            }
            let own = self.set.cell(&self.set.rows[at], Column::FinalDrive);
            let own = own.and_then(ratio).map(|ratio| ratio.value());
            let reckoned = || Some(row.overall? / (ratios[at].value() * through(row, stages)));
            let wanted = own.or_else(reckoned)?;
            let off = |drive: &FinalDrive| (drive.value() / wanted).ln().abs();
            let nearest = final_drives.iter().enumerate();
            let nearest = nearest.min_by(|a, b| off(a.1).total_cmp(&off(b.1)));
            nearest.map(|(place, _)| place)
        };
        let rows = rows.iter().enumerate();
        rows.map(|(at, row)| of_row(at, row).unwrap_or(0)).collect()
    }

    fn tyre(&self, said: Option<Tyre>) -> Result<Option<Tyre>, TableError> {
        let Some(first) = self.set.rows.first() else {
            return Ok(said);
        };
        let own = self.read_cell(first, Column::Tyre, |text| parse_tyre(text).ok())?;
        Ok(own.or(said))
    }

    fn name(&self) -> Result<Name, TableError> {
        let number = self.set.number.unwrap_or(self.number);
        let name = match &self.set.name {
            Some(name) => Name::new(name),
            None => Name::new(&format!("Set {number}")),
        };
        name.map_err(|error| TableError::NoName {
            set: self.number,
            error,
        })
    }
}

/// The final drive that a text spells: a chain, or a ratio with its teeth driven first.
fn drive(text: &str) -> Option<FinalDrive> {
    match parse_chain(text).ok()? {
        Some(sprockets) => Some(sprockets.into()),
        None => ratio(text).map(FinalDrive::Gears),
    }
}

/// The ratio that a text spells, its teeth driven first.
fn ratio(text: &str) -> Option<Ratio> {
    Some(parse_ratio(text).ok()?.driven_first().clone())
}

/// What the stages that act on a gear multiply its ratio by.
fn through(row: &ReadRow, stages: &[Stage]) -> f64 {
    let acts = |number: &usize| row.stages.as_ref().is_none_or(|all| all.contains(number));
    let acting = (1..).zip(stages).filter(|(number, _)| acts(number));
    let present = acting.filter_map(|(_, stage)| stage.positions.get(stage.present));
    present.map(|position| position.ratio.value()).product()
}

/// The identity of the gear in a row.
fn identity(at: usize) -> GearId {
    GearId(u32::try_from(at + 1).unwrap_or(u32::MAX))
}

/// The stages with the gears that they act on.
fn acting(stages: Vec<Stage>, rows: &[ReadRow], has_reverse: bool) -> Vec<Stage> {
    let ids = |number: usize| -> BTreeSet<GearId> {
        let acts = |row: &ReadRow| row.stages.as_ref().is_none_or(|all| all.contains(&number));
        let acted = rows.iter().enumerate().filter(|(_, row)| acts(row));
        let is_reverse = |at: usize| has_reverse && at + 1 == rows.len();
        acted
            .map(|(at, _)| {
                if is_reverse(at) {
                    GearId::REVERSE
                } else {
                    identity(at)
                }
            })
            .collect()
    };
    let numbered = (1..).zip(stages);
    numbered
        .map(|(number, stage)| {
            let ids = ids(number);
            Stage {
                acts_on: if ids.len() == rows.len() {
                    ActsOn::EveryGear
                } else {
                    ActsOn::Only(ids)
                },
                ..stage
            }
        })
        .collect()
}

/// The shift point of most gears, the first of those where they are even.
fn usual(shifts: &[EngineSpeed]) -> Option<EngineSpeed> {
    let count = |shift: &EngineSpeed| shifts.iter().filter(|other| *other == shift).count();
    let most = shifts.iter().map(count).max()?;
    shifts.iter().find(|shift| count(shift) == most).copied()
}
