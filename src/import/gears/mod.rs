//! A gear set, read from text that was copied from a data sheet, a road test or a forum.
//!
//! The way through: one kind of character, numbers and words (`words`, `tokens`), what each is good
//! for as a piece of a line (`figures`, `reader`, `pieces`), gears named and numbered and joined
//! with their values (`labels`), values left out for what stands around them (`surroundings`),
//! values sorted by what they are (`sorting`), the set (`assembling`).
//! Whatever was guessed or left out is said (`remarks`): the reading is a proposal.

mod assembling;
mod figures;
mod labels;
mod pieces;
mod posts;
mod reader;
mod remarks;
mod sorting;
mod surroundings;
mod tokens;
mod words;

pub use remarks::PasteError;

use crate::gearing::{
    ActsOn, Gear, GearId, GearRole, GearSet, GearSetSpec, Label, Ratio, RatioError, Reverse,
    TypedRatio, parse_ratio, read_chain, read_reduction,
};

/// The most characters that are read.
const MOST_CHARACTERS: usize = 20_000;

/// A gear set as it was read from text, to be looked over before it is taken.
#[derive(Debug, Clone, PartialEq)]
pub struct PastedSet {
    /// Forward gears, crawlers first, then first to top; 1 to 12 as read.
    pub gears: Vec<PastedGear>,
    /// The reverse gear, if there was one.
    pub reverse: Option<PastedReverse>,
    /// Up to three final drives; none if there was none in the text.
    pub final_drives: Vec<PastedFinal>,
    /// One sentence about each thing that was guessed or left out.
    pub remarks: Vec<String>,
}

/// One forward gear as it was read.
#[derive(Debug, Clone, PartialEq)]
pub struct PastedGear {
    /// What it is called: unlike the others, and fit for [`Label`].
    pub label: String,
    /// Its ratio.
    pub ratio: PastedRatio,
    /// Which final drive it drives, counted from 0; 0 if there is none.
    pub final_drive: usize,
    /// Whether it stands outside the shift chain.
    pub is_crawler: bool,
}

/// The reverse gear as it was read.
#[derive(Debug, Clone, PartialEq)]
pub struct PastedReverse {
    /// Its ratio, without a sign.
    pub ratio: PastedRatio,
    /// Which final drive it drives, counted from 0; 0 if there is none.
    pub final_drive: usize,
}

/// A final drive as it was read.
#[derive(Debug, Clone, PartialEq)]
pub struct PastedFinal {
    /// Its ratio.
    pub ratio: PastedRatio,
}

/// A ratio as it stood in the text.
#[derive(Debug, Clone, PartialEq)]
pub struct PastedRatio {
    /// Its spelling, which [`parse_ratio`] reads.
    pub text: String,
    /// What it was read as.
    pub ratio: TypedRatio,
}

impl PastedRatio {
    /// The ratio that a corrected text spells.
    ///
    /// # Errors
    /// When the text is no ratio.
    pub fn new(text: &str) -> Result<Self, RatioError> {
        Ok(Self {
            text: text.trim().to_owned(),
            ratio: parse_ratio(text)?,
        })
    }
}

impl PastedSet {
    /// The gears, the final drives and reverse, with the order of all tooth pairs decided.
    ///
    /// The shifted gears are one chain, read with the final drives behind them; crawlers, final
    /// drives and reverse are each known to reduce. See [`read_chain`] and [`read_reduction`].
    pub fn resolved(&self) -> (Vec<Ratio>, Vec<Ratio>, Option<Ratio>) {
        let finals = self.final_drives.iter().map(|f| &f.ratio.ratio);
        let finals: Vec<Ratio> = finals.map(read_reduction).collect();
        let shifted = self.gears.iter().filter(|gear| !gear.is_crawler);
        let (typed, behind): (Vec<TypedRatio>, Vec<f64>) = shifted
            .map(|gear| {
                let behind = finals.get(gear.final_drive).map_or(1.0, Ratio::value);
                (gear.ratio.ratio.clone(), behind)
            })
            .unzip();
        let mut chain = read_chain(&typed, &behind).into_iter();
        let mut gears = Vec::with_capacity(self.gears.len());
        for gear in &self.gears {
            let shifted = if gear.is_crawler { None } else { chain.next() };
            gears.push(shifted.unwrap_or_else(|| read_reduction(&gear.ratio.ratio)));
        }
        let reverse = self.reverse.as_ref();
        let reverse = reverse.map(|r| read_reduction(&r.ratio.ratio));
        (gears, finals, reverse)
    }
}

/// The parts of `before` with the gears, final drives and reverse of a pasted set.
///
/// Name, tyre, stages and the common shift point stay; a stage acts on every gear again, because
/// the gears it named are gone. Final drives stay where the text had none.
pub fn pasted_parts(before: &GearSet, pasted: &PastedSet) -> GearSetSpec {
    let (ratios, finals, reverse) = pasted.resolved();
    let mut spec = before.to_spec();
    if !finals.is_empty() {
        spec.final_drives = finals;
    }
    let most = spec.final_drives.len() - 1;
    spec.gears = (1..)
        .zip(pasted.gears.iter().zip(ratios))
        .filter_map(|(id, (gear, ratio))| {
            Some(Gear {
                id: GearId(id),
                label: Label::new(&gear.label).ok()?,
                ratio,
                final_drive: gear.final_drive.min(most),
                role: if gear.is_crawler {
                    GearRole::Crawler
                } else {
                    GearRole::Shifted
                },
                shift: None,
            })
        })
        .collect();
    spec.reverse = reverse.map(|ratio| Reverse {
        ratio,
        final_drive: pasted
            .reverse
            .as_ref()
            .map_or(0, |r| r.final_drive.min(most)),
    });
    for stage in &mut spec.stages {
        stage.acts_on = ActsOn::EveryGear;
    }
    spec
}

/// The gear set in `text`: lines or columns with labels, or a list.
///
/// Labels in several languages, points or commas, `:1`, teeth, Markdown tables; the last value of
/// a list, where it is clearly larger, is proposed as the final drive. What is no ratio is left
/// out with a remark. Reads up to 20000 characters; the time grows with their number.
///
/// # Errors
/// When the text is too long, holds no gears, or more than a gear set can have.
///
/// # Example
/// ```
/// let set = layshaft::import::gears::read_pasted("3.54/1.91/1.31/1.03/0.83; 4.06:1 axle")?;
/// assert_eq!(set.gears.len(), 5);
/// assert_eq!(set.final_drives[0].ratio.text, "4.06:1");
/// # Ok::<(), layshaft::import::gears::PasteError>(())
/// ```
pub fn read_pasted(text: &str) -> Result<PastedSet, PasteError> {
    let characters = text.chars().count();
    if characters > MOST_CHARACTERS {
        return Err(PasteError::TooLong {
            characters,
            most: MOST_CHARACTERS,
        });
    }
    let mut remarks = remarks::Remarks::default();
    let tokens = tokens::tokens(&words::plain(text), &mut remarks);
    let tokens = posts::without_posts(tokens);
    let mut lines: Vec<pieces::Line> = reader::lines(&tokens, &mut remarks)
        .into_iter()
        .map(|line| labels::with_gear_lists(surroundings::with_brackets_opened(line)))
        .collect();
    surroundings::leave_out_columns(&mut lines, &mut remarks);
    labels::number_gears(&mut lines);
    for line in &mut lines {
        *line = surroundings::without_brackets(std::mem::take(line), &mut remarks);
        surroundings::leave_out_in_line(line, &mut remarks);
    }
    surroundings::name_final_behind_reverse(&mut lines, &mut remarks);
    let sorted = sorting::sorted(labels::rows(lines), &mut remarks);
    assembling::assembled(sorted, remarks)
}
