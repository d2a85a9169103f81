//! What a text was read as, with its values as they are being corrected and ticked.

use crate::app::pasting::{PasteTarget, TakenSet, own_set};
use crate::gearing::{FinalDrive, Ratio};
use crate::import::gears::{
    Behind, FigureKind, Offer, Offered, Pasted, PastedRatio, PastedSet, ResolveError,
};
use crate::import::tables::{OwnSet, OwnTable};
use crate::units::ratio_text;

/// A reading that is being looked over.
#[derive(Debug)]
pub(super) struct Reading {
    pub(super) sets: Vec<SetReading>,
    /// Sets out of one of the program's own tables, which need no correction.
    pub(super) own: Vec<OwnReading>,
    /// What was guessed or left out of such a table.
    pub(super) remarks: Vec<String>,
    pub(super) offers: Vec<OfferReading>,
}

/// One set of a reading.
#[derive(Debug)]
pub(super) struct SetReading {
    pub(super) set: PastedSet,
    pub(super) is_wanted: bool,
    /// Gears, final drives, reverse, stages: what stands in each field.
    pub(super) texts: Vec<String>,
    /// What stood in each field at first.
    read: Vec<String>,
}

/// One set of the program's own table.
#[derive(Debug)]
pub(super) struct OwnReading {
    pub(super) set: OwnSet,
    pub(super) is_wanted: bool,
}

impl OwnReading {
    /// The name, how many gears there are, and the final drives.
    pub(super) fn heading(&self) -> String {
        let gears = counted_gears(self.set.gears.len());
        let finals: Vec<String> = self
            .set
            .final_drives
            .iter()
            .map(FinalDrive::to_string)
            .collect();
        if finals.is_empty() {
            return format!("{}: {gears}", self.set.name);
        }
        format!(
            "{}: {gears}, final drive {}",
            self.set.name,
            finals.join(" and ")
        )
    }
}

fn counted_gears(count: usize) -> String {
    match count {
        1 => "1 gear".to_owned(),
        n => format!("{n} gears"),
    }
}

/// One thing offered beside the sets.
#[derive(Debug)]
pub(super) struct OfferReading {
    pub(super) offer: Offer,
    pub(super) is_wanted: bool,
}

impl Reading {
    /// A reading as it is shown at first: all sets are wanted, and what is offered beside them only
    /// where nothing else was typed yet.
    pub(super) fn of(pasted: Pasted, is_untouched: bool) -> Self {
        let offers = pasted.offers.into_iter().map(|offer| OfferReading {
            offer,
            is_wanted: is_untouched,
        });
        Self {
            sets: pasted.sets.into_iter().map(SetReading::of).collect(),
            own: Vec::new(),
            remarks: Vec::new(),
            offers: offers.collect(),
        }
    }

    /// One of the program's own tables, as it is shown at first.
    pub(super) fn of_own(table: OwnTable, is_untouched: bool) -> Self {
        let offered = [
            table.tyre.map(Offered::Tyre),
            table.redline.map(Offered::Redline),
        ];
        let offers = offered.into_iter().flatten().map(|offered| OfferReading {
            offer: Offer {
                offered,
                words: "in the table".to_owned(),
            },
            is_wanted: is_untouched,
        });
        let own = table.sets.into_iter().map(|set| OwnReading {
            set,
            is_wanted: true,
        });
        Self {
            sets: Vec::new(),
            own: own.collect(),
            remarks: table.remarks,
            offers: offers.collect(),
        }
    }

    /// Whether a set is ticked.
    pub(super) fn is_ticked(&self) -> bool {
        let own = self.own.iter().map(|set| set.is_wanted);
        let mut ticks = self.sets.iter().map(|set| set.is_wanted).chain(own);
        ticks.any(|is_wanted| is_wanted)
    }

    /// How many values were corrected.
    pub(super) fn corrections(&self) -> usize {
        let changed = |set: &SetReading| {
            let pairs = set.texts.iter().zip(&set.read);
            pairs.filter(|(now, before)| now != before).count()
        };
        self.sets.iter().map(changed).sum()
    }

    /// The wanted sets with their corrections, or why one cannot be taken.
    pub(super) fn wanted_sets(&self, target: &PasteTarget<'_>) -> Result<Vec<TakenSet>, String> {
        let behind = self.behind(target);
        let wanted = self.sets.iter().filter(|set| set.is_wanted);
        let foreign = wanted.map(|reading| {
            let set = reading.corrected()?;
            set.resolved(&behind).map_err(|why| why.to_string())?;
            Ok(TakenSet::Foreign(set))
        });
        let own = self.own.iter().filter(|set| set.is_wanted);
        let own = own.map(|reading| {
            own_set(&reading.set, target.before)?;
            Ok(TakenSet::Own(reading.set.clone()))
        });
        foreign.chain(own).collect()
    }

    /// What is wanted of what stands beside the sets.
    pub(super) fn wanted_offers(&self) -> Vec<Offered> {
        let wanted = self.offers.iter().filter(|offer| offer.is_wanted);
        wanted.map(|reading| reading.offer.offered).collect()
    }

    /// What stands behind the gears: of the set that a text goes into, but on the tyre of the text
    /// where that is wanted.
    pub(super) fn behind<'a>(&self, target: &PasteTarget<'a>) -> Behind<'a> {
        let tyre = self.wanted_offers().into_iter().find_map(|o| match o {
            Offered::Tyre(tyre) => Some(tyre),
            _ => None,
        });
        Behind::of(target.before, Some(&tyre.unwrap_or(*target.tyre)))
    }

    /// How many values there are in all sets before the one named.
    pub(super) fn place(&self, set: usize, value: usize) -> usize {
        let before = self.sets.iter().take(set).map(|set| set.texts.len());
        before.sum::<usize>() + value
    }
}

impl SetReading {
    fn of(mut set: PastedSet) -> Self {
        let texts: Vec<String> = ratios(&mut set).map(|ratio| ratio.text.clone()).collect();
        Self {
            is_wanted: true,
            read: texts.clone(),
            texts,
            set,
        }
    }

    /// The set with the corrections, or why one does not read.
    pub(super) fn corrected(&self) -> Result<PastedSet, String> {
        let mut set = self.set.clone();
        for (ratio, text) in ratios(&mut set).zip(&self.texts) {
            *ratio = PastedRatio::new(text).map_err(|problem| problem.to_string())?;
        }
        Ok(set)
    }

    /// The name, how many gears there are, and what their figures are.
    pub(super) fn heading(&self) -> String {
        let gears = counted_gears(self.set.gears.len());
        let kind = match self.set.kind {
            FigureKind::GearRatio => String::new(),
            kind => format!(", {}", kind.text()),
        };
        format!("{}: {gears}{kind}", self.name())
    }

    pub(super) fn name(&self) -> &str {
        self.set.name.as_deref().unwrap_or("Gear set")
    }

    /// What each field holds.
    pub(super) fn names(&self) -> Vec<String> {
        let set = &self.set;
        let several = set.final_drives.len() > 1;
        let shaft = |at: usize| {
            if several {
                format!(" on final drive {}", at + 1)
            } else {
                String::new()
            }
        };
        let gears = set.gears.iter().map(|g| {
            let kind = if g.is_crawler { "crawler" } else { "gear" };
            format!("{kind} {}{}", g.label, shaft(g.final_drive))
        });
        let finals = (1..).zip(&set.final_drives).map(|(n, drive)| {
            let kind = if drive.is_chain {
                "chain"
            } else {
                "final drive"
            };
            if several {
                format!("{kind} {n}")
            } else {
                kind.to_owned()
            }
        });
        let reverse = set.reverse.iter();
        let reverse = reverse.map(|r| format!("reverse{}", shaft(r.final_drive)));
        let stages = set.stages.iter().flat_map(|stage| {
            let several = stage.positions.len() > 1;
            stage.positions.iter().map(move |position| {
                let name = stage.name.to_lowercase();
                if several {
                    format!("{name}, {}", position.name.to_lowercase())
                } else {
                    name
                }
            })
        });
        gears.chain(finals).chain(reverse).chain(stages).collect()
    }

    /// What each value comes to, or why it does not read.
    pub(super) fn values(&self, behind: &Behind<'_>) -> Vec<Result<String, String>> {
        let unread = |text: &String| match PastedRatio::new(text) {
            Ok(_) => Ok(String::new()),
            Err(problem) => Err(problem.to_string()),
        };
        let Ok(set) = self.corrected() else {
            return self.texts.iter().map(unread).collect();
        };
        match set.resolved(behind) {
            Err(problem) => self.all_told(&problem),
            Ok(resolved) => {
                let gears = resolved.gears.iter().map(told_ratio);
                let drives = resolved.final_drives.iter().map(told_drive);
                let reverse = resolved.reverse.iter().map(told_ratio);
                let stages = resolved.stages.iter().flat_map(|stage| &stage.positions);
                let stages = stages.map(|position| told_ratio(&position.ratio));
                let all = gears.chain(drives).chain(reverse).chain(stages);
                all.map(Ok).collect()
            }
        }
    }

    /// One sentence beside the first value, where the figures do not come to gear ratios.
    fn all_told(&self, problem: &ResolveError) -> Vec<Result<String, String>> {
        let told = |at: usize| match at {
            0 => Err(problem.to_string()),
            _ => Ok(String::new()),
        };
        (0..self.texts.len()).map(told).collect()
    }
}

fn told_ratio(ratio: &Ratio) -> String {
    if ratio.has_teeth() {
        ratio.reading()
    } else {
        format!("= {}", ratio_text(ratio.value()))
    }
}

fn told_drive(drive: &FinalDrive) -> String {
    match drive {
        FinalDrive::Gears(ratio) => told_ratio(ratio),
        FinalDrive::Chain(_) => drive.reading(),
    }
}

/// Every ratio of a set: gears, final drives, reverse, stages.
fn ratios(set: &mut PastedSet) -> impl Iterator<Item = &mut PastedRatio> {
    let gears = set.gears.iter_mut().map(|g| &mut g.ratio);
    let finals = set.final_drives.iter_mut().map(|f| &mut f.ratio);
    let reverse = set.reverse.iter_mut().map(|r| &mut r.ratio);
    let stages = set.stages.iter_mut();
    let stages = stages.flat_map(|stage| stage.positions.iter_mut().map(|p| &mut p.ratio));
    gears.chain(finals).chain(reverse).chain(stages)
}
