//! The program's own tables, read back from text, Markdown, BBCode and CSV.
//!
//! What the program writes, it reads: to the printed digits, and with whatever columns and lines
//! somebody has left of it. The way through: the lines without the marks of whoever quoted them
//! (`lines`), a block of cells beneath its headings (`headings`; `aligned` with blanks, `pipes` in
//! Markdown, `records` in CSV), the words around it (`page`, `phrases`), and the sets
//! (`assembling`). A table is known by its headings, so another program's is left to
//! [`read_pasted`](super::gears::read_pasted).

mod aligned;
mod assembling;
mod error;
mod first_of_several;
mod folded;
mod found;
mod headings;
mod lines;
mod of_figures;
mod page;
mod phrases;
mod pipes;
mod positions;
mod records;
mod sets;

pub use error::TableError;

use crate::gearing::{
    EngineSpeed, FinalDrive, Gear, GearSet, GearSetError, GearSetSpec, Name, Reverse, RoadSpeed,
    Stage, Tyre,
};
use crate::units::SpeedUnit;
use first_of_several::first_of_several;
use of_figures::is_of_figures;

/// The most characters that are read: the widest names in all positions that can be shown fall short of it.
const MOST_CHARACTERS: usize = 5_000_000;

/// What a table of the program gives back.
#[derive(Debug, Clone, PartialEq)]
pub struct OwnTable {
    /// The title of the project, where it stands above the sets.
    pub title: Option<Name>,
    /// The unit of road speeds, where any are printed.
    pub units: Option<SpeedUnit>,
    /// The vehicle's tyre: the one that most sets stand on.
    pub tyre: Option<Tyre>,
    /// Engine speed at idle.
    pub idle: Option<EngineSpeed>,
    /// The engine speed below which the engine labours.
    pub lowest_useful: Option<EngineSpeed>,
    /// The highest permitted engine speed.
    pub redline: Option<EngineSpeed>,
    /// Engine speeds that have a column, in their order.
    pub marked_engine_speeds: Vec<EngineSpeed>,
    /// Road speeds that have a column, in their order.
    pub marked_road_speeds: Vec<RoadSpeed>,
    /// The gear sets in their order; at least one, and more than a project has if there were more.
    pub sets: Vec<OwnSet>,
    /// The place of the set that the others are compared with; the first where the table is silent.
    pub baseline: usize,
    /// One sentence about each thing that was guessed or left out.
    pub remarks: Vec<String>,
}

/// A gear set as a table gives it back.
#[derive(Debug, Clone, PartialEq)]
pub struct OwnSet {
    /// Its name; its number where the table has none.
    pub name: Name,
    /// Forward gears in their order, with identities from 1.
    pub gears: Vec<Gear>,
    /// The reverse gear.
    pub reverse: Option<Reverse>,
    /// Its final drives; none where nothing tells any.
    pub final_drives: Vec<FinalDrive>,
    /// Its further stages: in full from CSV; from a text each with the positions that are shown, the
    /// present one first.
    pub stages: Vec<Stage>,
    /// Its own tyre, where it is not the vehicle's.
    pub tyre: Option<Tyre>,
    /// The shift point of most gears; none where no shift point is printed.
    pub shift: Option<EngineSpeed>,
}

/// What stands in for what a table left out.
#[derive(Debug, Clone, PartialEq)]
pub struct Missing {
    /// The final drives of a set that has none; there is at least one.
    pub final_drives: Vec<FinalDrive>,
    /// The shift point of a set that has none.
    pub shift: EngineSpeed,
}

impl OwnSet {
    /// The gear set, with what it lacks from elsewhere.
    ///
    /// # Errors
    /// When its parts do not fit together.
    pub fn gear_set(&self, missing: &Missing) -> Result<GearSet, GearSetError> {
        let mut spec = GearSetSpec {
            name: self.name.clone(),
            gears: self.gears.clone(),
            reverse: self.reverse.clone(),
            final_drives: self.final_drives.clone(),
            stages: self.stages.clone(),
            tyre: self.tyre,
            shift: self.shift.unwrap_or(missing.shift),
        };
        if spec.final_drives.is_empty() {
            spec.final_drives.clone_from(&missing.final_drives);
        }
        GearSet::try_from(spec)
    }
}

impl OwnTable {
    /// All gear sets in their order, with what they lack from elsewhere.
    ///
    /// # Errors
    /// When the parts of one do not fit together.
    pub fn gear_sets(&self, missing: &Missing) -> Result<Vec<GearSet>, GearSetError> {
        self.sets.iter().map(|set| set.gear_set(missing)).collect()
    }
}

/// Whether the text holds a table of the program, whole or not.
pub fn is_own_table(text: &str) -> bool {
    let text = first_of_several(text);
    text.chars().nth(MOST_CHARACTERS).is_none() && Form::of(text).is_some()
}

/// The table of the program that stands in the text; `None` where there is none, and another reader
/// may try.
///
/// # Errors
/// When the table is JSON or tells no ratios, was cut in the middle, its columns were pushed out of line, its blanks were folded,
/// or its gears make no set.
///
/// # Example
/// ```
/// let text = "| gear | ratio | overall | shift at (rpm) |\n\
///             | :--- | ---: | ---: | ---: |\n\
///             | 1 | 34:9 = 3.778 | 15.111 | 6000 |\n\
///             | 2 | 2.000 | 8.000 |  |\n";
/// let table = layshaft::import::tables::read(text).ok_or("another's")??;
/// assert_eq!(table.sets[0].gears[0].ratio.to_string(), "34:9");
/// assert_eq!(table.sets[0].final_drives[0].to_string(), "4");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn read(text: &str) -> Option<Result<OwnTable, TableError>> {
    if is_for_programs(text) {
        return Some(Err(TableError::ForPrograms));
    }
    let text = first_of_several(text);
    let characters = text.chars().take(MOST_CHARACTERS + 1).count();
    let Some(form) = Form::of(text) else {
        if is_of_figures(text) {
            return Some(Err(TableError::OfFigures));
        }
        return folded::is_folded(text).then_some(Err(TableError::Folded));
    };
    if characters > MOST_CHARACTERS {
        return Some(Err(TableError::TooLong {
            most: MOST_CHARACTERS,
        }));
    }
    let found = match form {
        Form::Page(lines) => page::found(&lines),
        Form::Records(records) => records.found(),
    };
    Some(found.and_then(assembling::assembled))
}

/// Whether the text is the program's JSON, by the keys that it opens with and holds.
fn is_for_programs(text: &str) -> bool {
    let is_object = text.trim_start().starts_with('{');
    let has = |key: &str| text.contains(key);
    is_object && has("\"sets\"") && (has("\"gears\"") || has("\"speedometer\""))
}

/// The two ways in which tables are written.
enum Form<'a> {
    /// Blocks of cells with words between them.
    Page(lines::Lines<'a>),
    /// CSV.
    Records(records::Records<'a>),
}

impl<'a> Form<'a> {
    fn of(text: &'a str) -> Option<Self> {
        let page = page::lines(text).map(Form::Page);
        page.or_else(|| records::Records::of(text).map(Form::Records))
    }
}
