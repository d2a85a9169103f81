//! What a text was read as, with its values as they are being corrected and ticked.

use crate::app::pasting::{PasteTarget, TakenSet, UNNAMED, own_set};
use crate::gearing::{FinalDrive, Name, Ratio};
use crate::import::gears::{
    Behind, FigureKind, Offer, Offered, Pasted, PastedFinal, PastedRatio, PastedSet, ResolveError,
    Resolved,
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
    /// The title of such a table, for a project that has none.
    pub(super) title: Option<TitleReading>,
}

/// A title that is offered.
#[derive(Debug)]
pub(super) struct TitleReading {
    pub(super) title: Name,
    pub(super) is_wanted: bool,
}

/// One set of a reading.
#[derive(Debug)]
pub(super) struct SetReading {
    pub(super) set: PastedSet,
    pub(super) is_wanted: bool,
    /// What stands in the field of its name.
    pub(super) name: String,
    /// What stood there at first.
    name_read: String,
    /// Whether that is the name of the set that it goes into, for the text has none.
    is_name_proposed: bool,
    /// Gears, final drives, reverse, stages: what stands in each field.
    pub(super) texts: Vec<String>,
    /// What stood in each field at first.
    read: Vec<String>,
    /// Where the final drives are from that are proposed because the text names none: `set 2`.
    proposed_from: Option<String>,
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
    ///
    /// A set whose text names no final drive has those of the set that it goes into, to be corrected.
    pub(super) fn of(pasted: Pasted, target: &PasteTarget<'_>, is_untouched: bool) -> Self {
        let offers = pasted.offers.into_iter().map(|offer| OfferReading {
            offer,
            is_wanted: is_untouched,
        });
        let sets = pasted.sets.into_iter().enumerate();
        Self {
            sets: sets
                .map(|(at, set)| SetReading::of(at, set, target))
                .collect(),
            own: Vec::new(),
            remarks: Vec::new(),
            offers: offers.collect(),
            title: None,
        }
    }

    /// One of the program's own tables, as it is shown at first.
    pub(super) fn of_own(table: OwnTable, target: &PasteTarget<'_>, is_untouched: bool) -> Self {
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
        let title = table.title.filter(|_| !target.has_title);
        let own = table.sets.into_iter().map(|set| OwnReading {
            set,
            is_wanted: true,
        });
        Self {
            sets: Vec::new(),
            own: own.collect(),
            remarks: table.remarks,
            offers: offers.collect(),
            title: title.map(|title| TitleReading {
                title,
                is_wanted: is_untouched,
            }),
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
            let values = pairs.filter(|(now, before)| now != before).count();
            values + usize::from(set.name != set.name_read)
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

    /// The title, where it is wanted.
    pub(super) fn wanted_title(&self) -> Option<Name> {
        let title = self.title.as_ref().filter(|title| title.is_wanted)?;
        Some(title.title.clone())
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
    /// The set that stands there in the text, counted from 0.
    fn of(at: usize, mut set: PastedSet, target: &PasteTarget<'_>) -> Self {
        let is_name_proposed = set.name.is_none() && at == 0;
        let name = match &set.name {
            Some(name) => name.clone(),
            None if is_name_proposed => target.before.name.to_string(),
            None => UNNAMED.to_owned(),
        };
        let proposed_from = propose_final_drives(&mut set, target);
        let texts: Vec<String> = ratios(&mut set).map(|ratio| ratio.text.clone()).collect();
        Self {
            is_wanted: true,
            read: texts.clone(),
            texts,
            set,
            proposed_from,
            name_read: name.clone(),
            name,
            is_name_proposed,
        }
    }

    /// The set with the corrections, or why one does not read.
    pub(super) fn corrected(&self) -> Result<PastedSet, String> {
        let (mut set, problems) = self.as_far_as_it_reads();
        if let Some(problem) = problems.into_iter().flatten().next() {
            return Err(problem);
        }
        let name = Name::new(&self.name).map_err(|problem| problem.to_string())?;
        set.name = (!self.keeps_name()).then(|| name.to_string());
        Ok(set)
    }

    /// Whether the set that it goes into keeps its name.
    pub(super) fn keeps_name(&self) -> bool {
        self.is_name_proposed && self.name == self.name_read
    }

    /// The set with the corrections that read, the others as they were at first; and for each field
    /// why it does not read.
    fn as_far_as_it_reads(&self) -> (PastedSet, Vec<Option<String>>) {
        let mut set = self.set.clone();
        let fields = ratios(&mut set).zip(self.texts.iter().zip(&self.read));
        // What was not corrected may be known better than its text says.
        let problems = fields.map(|(ratio, (text, read))| match PastedRatio::new(text) {
            Ok(_) if text == read => None,
            Ok(corrected) => {
                *ratio = corrected;
                None
            }
            Err(problem) => Some(problem.to_string()),
        });
        let problems = problems.collect();
        (set, problems)
    }

    /// The name, how many gears there are, and what their figures are.
    pub(super) fn heading(&self) -> String {
        let gears = counted_gears(self.set.gears.len());
        let kind = match self.set.kind {
            FigureKind::GearRatio => String::new(),
            kind => format!(", {}", kind.text()),
        };
        format!("{}: {gears}{kind}", self.called())
    }

    /// What the text calls it, or what it is.
    pub(super) fn called(&self) -> &str {
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
        let (set, problems) = self.as_far_as_it_reads();
        let told = match set.resolved(behind) {
            Err(problem) => self.all_told(&problem),
            Ok(resolved) => self.told(&resolved).into_iter().map(Ok).collect(),
        };
        // Overall ratios and road speeds come to nothing while what is behind the gears is not known.
        let (gears, finals) = (self.set.gears.len(), self.set.final_drives.len());
        let reverse = usize::from(self.set.reverse.is_some());
        let drives = problems.iter().skip(gears).take(finals);
        let stages = problems.iter().skip(gears + finals + reverse);
        let is_behind_unread = drives.chain(stages).any(Option::is_some);
        let is_waiting = is_behind_unread && self.set.kind != FigureKind::GearRatio;
        let all = told.into_iter().zip(problems);
        all.map(|(told, problem)| match problem {
            Some(problem) => Err(problem),
            None if is_waiting => Ok(String::new()),
            None => told,
        })
        .collect()
    }

    fn told(&self, resolved: &Resolved) -> Vec<String> {
        let first_final = self.set.gears.len();
        let gears = resolved.gears.iter().map(told_ratio);
        let drives = (first_final..).zip(&resolved.final_drives);
        let drives = drives.map(|(at, drive)| match &self.proposed_from {
            Some(set) if self.texts[at] == self.read[at] => {
                format!("{}, from {set}", told_drive(drive))
            }
            _ => told_drive(drive),
        });
        let reverse = resolved.reverse.iter().map(told_ratio);
        let stages = resolved.stages.iter().flat_map(|stage| &stage.positions);
        let stages = stages.map(|position| told_ratio(&position.ratio));
        gears.chain(drives).chain(reverse).chain(stages).collect()
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

/// Gives a set without final drives those of the set that it goes into; which set that is.
fn propose_final_drives(set: &mut PastedSet, target: &PasteTarget<'_>) -> Option<String> {
    if !set.final_drives.is_empty() {
        return None;
    }
    let finals = target.before.final_drives.iter().map(PastedFinal::of);
    set.final_drives = finals.collect::<Result<_, _>>().ok()?;
    Some(format!("set {}", target.number))
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
