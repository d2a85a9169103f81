//! The sorted values come together as one gear set: gears named and in order, each with its final
//! drive.

use super::pieces::{Amount, PairOrder, Shape, Tag};
use super::remarks::{LeftOut, NO_FINAL_DRIVE, Remarks};
use super::sorting::{List, Sorted, told_apart};
use super::stages::ranges;
use super::{
    FigureKind, PasteError, PastedFinal, PastedGear, PastedRatio, PastedReverse, PastedSet,
};
use crate::gearing::{FinalDrive, GearSet, Ratio, quoted};
use crate::import::said::listed;

/// The gear set, if there are gears and not too many.
pub(super) fn assembled(
    mut sorted: Sorted,
    kind: FigureKind,
    mut remarks: Remarks,
) -> Result<PastedSet, PasteError> {
    align_pairs(&mut sorted);
    if sorted.gears.is_empty() {
        read_list(&mut sorted, kind, &mut remarks)?;
    } else {
        place_loose(&mut sorted, kind, &mut remarks);
    }
    check_counts(&sorted, &remarks)?;
    take_ranges(&mut sorted, &mut remarks);
    let gears = in_order(std::mem::take(&mut sorted.gears), &mut remarks);
    let shafts = Shafts::of(&sorted.finals);
    shafts.remark(&gears, &mut remarks);
    if gears.len() == 1 {
        remarks.say("Only one gear was found.".to_owned());
    }
    let mut set = PastedSet {
        name: None,
        kind,
        gears: pasted_gears(&gears, &shafts),
        reverse: sorted.reverse.and_then(|amount| {
            Some(PastedReverse {
                ratio: pasted(amount)?,
                final_drive: shafts.serving(Tag::Reverse),
            })
        }),
        final_drives: sorted
            .finals
            .into_iter()
            .enumerate()
            .filter_map(|(at, amount)| {
                let is_chain = at == 0 && sorted.is_on_chain;
                pasted(amount).map(|ratio| PastedFinal { ratio, is_chain })
            })
            .collect(),
        stages: sorted.stages,
        remarks: remarks.into_sentences(),
    };
    remark_order(&mut set);
    Ok(set)
}

fn pasted(amount: Amount) -> Option<PastedRatio> {
    Some(PastedRatio {
        ratio: amount.ratio?,
        text: amount.text,
    })
}

fn pasted_gears(gears: &[(Tag, Amount)], shafts: &Shafts) -> Vec<PastedGear> {
    let are_crawlers = gears.iter().all(|(tag, _)| *tag == Tag::Crawler);
    gears
        .iter()
        .filter_map(|(tag, amount)| {
            Some(PastedGear {
                label: label(*tag),
                ratio: pasted(amount.clone())?,
                final_drive: shafts.serving(*tag),
                is_crawler: *tag == Tag::Crawler && !are_crawlers,
            })
        })
        .collect()
}

/// Writes pairs driven first where a decimal beside them showed that they stand the other way.
///
/// Who writes one pair driving first writes all of them so.
fn align_pairs(sorted: &mut Sorted) {
    let gears = sorted.gears.iter_mut().map(|(_, amount)| amount);
    let others = sorted.finals.iter_mut().chain(&mut sorted.reverse);
    let mut amounts: Vec<&mut Amount> = gears.chain(&mut sorted.loose).chain(others).collect();
    let shows = |amounts: &[&mut Amount], order| amounts.iter().any(|a| a.order == Some(order));
    let are_all =
        shows(&amounts, PairOrder::DrivingFirst) && !shows(&amounts, PairOrder::DrivenFirst);
    for amount in &mut amounts {
        let is_other = amount.order == Some(PairOrder::DrivingFirst);
        if amount.shape == Shape::Teeth && (is_other || are_all) {
            amount.write_driven_first();
        }
    }
}

/// Values without any labelled gear are a list.
fn read_list(
    sorted: &mut Sorted,
    kind: FigureKind,
    remarks: &mut Remarks,
) -> Result<(), PasteError> {
    let loose = std::mem::take(&mut sorted.loose);
    check_signs(&loose, &sorted.zeros)?;
    let (has_final, has_reverse) = (!sorted.finals.is_empty(), sorted.reverse.is_some());
    let list = match kind {
        FigureKind::GearRatio => told_apart(loose, has_final, has_reverse, remarks),
        _ => first_to_top(loose, kind),
    };
    check_gears(list.gears.len())?;
    let tags = (1..=u8::MAX).map(Tag::Gear);
    sorted.gears = tags.zip(list.gears).collect();
    sorted.finals.extend(list.final_drive);
    sorted.reverse = sorted.reverse.take().or(list.reverse);
    Ok(())
}

/// A list of overall ratios or road speeds, which holds gears only; one with a minus is reverse.
fn first_to_top(amounts: Vec<Amount>, kind: FigureKind) -> List {
    let (mut reverse, mut gears): (Vec<Amount>, Vec<Amount>) =
        amounts.into_iter().partition(|amount| amount.is_negative);
    let rises = gears.first().and_then(Amount::value) < gears.last().and_then(Amount::value);
    if rises == (kind == FigureKind::Overall) {
        gears.reverse();
    }
    List {
        gears,
        reverse: reverse.pop(),
        final_drive: None,
    }
}

/// Several numbers of 0 or less make a list of something else.
fn check_signs(loose: &[Amount], zeros: &[Amount]) -> Result<(), PasteError> {
    let negative = || loose.iter().filter(|amount| amount.is_negative);
    if loose.is_empty() || negative().count() + zeros.len() < 2 {
        return Ok(());
    }
    let sign = |amount: &Amount| if amount.is_negative { "-" } else { "" };
    let mut numbers: Vec<String> = Vec::new();
    for amount in zeros.iter().chain(negative()) {
        let number = format!("{}{}", sign(amount), quoted(&amount.text));
        if !numbers.contains(&number) {
            numbers.push(number);
        }
    }
    let count = numbers.len();
    Err(PasteError::NoRatios {
        numbers: listed(numbers, count),
    })
}

fn check_gears(found: usize) -> Result<(), PasteError> {
    let most = GearSet::MOST_GEARS;
    if found > most {
        return Err(PasteError::TooManyGears { found, most });
    }
    Ok(())
}

/// A single value without a label among labelled gears can be the final drive.
fn place_loose(sorted: &mut Sorted, kind: FigureKind, remarks: &mut Remarks) {
    let lowest = sorted.gears.iter().filter_map(|(_, amount)| amount.value());
    let lowest = lowest.fold(f64::INFINITY, f64::min);
    let loose = std::mem::take(&mut sorted.loose);
    let is_final = kind == FigureKind::GearRatio
        && sorted.finals.is_empty()
        && loose.len() == 1
        && loose
            .iter()
            .all(|a| a.value() > Some(1.2 * lowest.max(1.25)));
    for amount in loose {
        if is_final {
            remarks.say(format!(
                "{} was taken as the final drive: it has no label and is clearly larger than top gear.",
                amount.text
            ));
            sorted.finals.push(amount);
        } else {
            remarks.left_out(&amount.text, LeftOut::Unlabelled);
        }
    }
}

fn check_counts(sorted: &Sorted, remarks: &Remarks) -> Result<(), PasteError> {
    let (gears, finals) = (sorted.gears.len(), sorted.finals.len());
    if gears == 0 {
        return Err(match (finals, &sorted.reverse) {
            (0, None) if remarks.has_left_out(LeftOut::Measure) => PasteError::NoForwardGears {
                found: "speeds or overall figures",
            },
            (0, None) => PasteError::NoGears,
            (0, Some(_)) => PasteError::NoForwardGears { found: "reverse" },
            _ => PasteError::NoForwardGears {
                found: "a final drive",
            },
        });
    }
    check_gears(gears)?;
    if finals > GearSet::MOST_FINAL_DRIVES {
        return Err(PasteError::TooManyFinalDrives {
            found: finals,
            most: GearSet::MOST_FINAL_DRIVES,
        });
    }
    Ok(())
}

/// Whether overall ratios do not fall from gear to gear, with the final drives behind them.
fn remark_order(set: &mut PastedSet) {
    let (gears, finals, _) = set.figures();
    let kind = set.kind;
    let shifted = set.gears.iter().zip(gears).filter(|(g, _)| !g.is_crawler);
    let overall = |(gear, ratio): (&PastedGear, Ratio)| match kind {
        FigureKind::GearRatio => {
            ratio.value() * finals.get(gear.final_drive).map_or(1.0, FinalDrive::value)
        }
        FigureKind::Overall => ratio.value(),
        FigureKind::SpeedPer1000(_) => 1.0 / ratio.value(),
    };
    let overall: Vec<f64> = shifted.map(overall).collect();
    if overall.windows(2).any(|pair| pair[1] >= pair[0]) {
        let sentence = match kind {
            FigureKind::SpeedPer1000(_) => "The speeds do not rise from gear to gear; check them.",
            _ => "The ratios do not fall from gear to gear; check them.",
        };
        set.remarks.insert(0, sentence.to_owned());
    }
}

/// The gears in order, each under the one name that it has.
fn in_order(mut gears: Vec<(Tag, Amount)>, remarks: &mut Remarks) -> Vec<(Tag, Amount)> {
    name_low(&mut gears);
    name_overdriven(&mut gears);
    name_top(&mut gears);
    keep_first_of_each(&mut gears, remarks);
    let is_ordered = gears
        .windows(2)
        .all(|pair| pair[0].0.place() <= pair[1].0.place());
    if !is_ordered {
        gears.sort_by_key(|(tag, _)| tag.place());
        remarks.say("The gears were put in order from first to top.".to_owned());
    }
    name_missing(&gears, remarks);
    gears
}

/// What a gear is called on the lever.
fn label(tag: Tag) -> String {
    match tag {
        Tag::Gear(n) => n.to_string(),
        Tag::Half(n, half) => format!("{n}{half}"),
        Tag::Overdriven(n) => format!("{n} OD"),
        Tag::Overdrive => "OD".to_owned(),
        Tag::Top | Tag::High => "Top".to_owned(),
        Tag::Low | Tag::Crawler => "C".to_owned(),
        // Never a forward gear's tag.
        Tag::Reverse | Tag::Final => "?".to_owned(),
    }
}

fn has(gears: &[(Tag, Amount)], wanted: Tag) -> bool {
    gears.iter().any(|(tag, _)| *tag == wanted)
}

/// High and low beside numbered gears are a transfer box.
fn take_ranges(sorted: &mut Sorted, remarks: &mut Remarks) {
    let gears = &mut sorted.gears;
    let numbered = [1, 2, 3].map(Tag::Gear).iter().all(|tag| has(gears, *tag));
    let is_range = |tag: Tag| matches!(tag, Tag::High | Tag::Low);
    let first = gears.iter().find(|(tag, _)| *tag == Tag::Gear(1));
    let first = first.and_then(|(_, amount)| amount.value());
    let both = has(gears, Tag::High) && has(gears, Tag::Low);
    let mut taken: Vec<(Tag, Amount)> = Vec::new();
    gears.retain(|(tag, amount)| {
        let is_crawler = *tag == Tag::Low && !both && amount.value() > first;
        let is_stage = numbered && is_range(*tag) && !is_crawler && (both || *tag == Tag::Low);
        if is_stage {
            taken.push((*tag, amount.clone()));
        }
        !is_stage
    });
    let named = |wanted| taken.iter().find(|(tag, _)| *tag == wanted);
    let [high, low] = [Tag::High, Tag::Low].map(|tag| named(tag).map(|(_, a)| a.clone()));
    let mut said = Vec::new();
    if let (Some(low), true) = (low, sorted.stages.len() < GearSet::MOST_STAGES) {
        sorted.stages.extend(ranges(high, Some(low), &mut said));
    }
    for sentence in said {
        remarks.say(sentence);
    }
}

/// Low is first gear where no other is; otherwise a crawler.
fn name_low(gears: &mut [(Tag, Amount)]) {
    let has_first = has(gears, Tag::Gear(1));
    for (tag, _) in gears.iter_mut().filter(|(tag, _)| *tag == Tag::Low) {
        *tag = if has_first {
            Tag::Crawler
        } else {
            Tag::Gear(1)
        };
    }
}

/// "5th overdrive" is just fifth where there is no other fifth.
fn name_overdriven(gears: &mut [(Tag, Amount)]) {
    for at in 0..gears.len() {
        if let Tag::Overdriven(n) = gears[at].0
            && !has(gears, Tag::Gear(n))
        {
            gears[at].0 = Tag::Gear(n);
        }
    }
}

/// Top gets the number behind the highest, if the numbers run up to it without a gap.
fn name_top(gears: &mut Vec<(Tag, Amount)>) {
    let count = (1..=12)
        .take_while(|n| has(gears, Tag::Gear(*n)))
        .fold(0, |_, n| n);
    let is_last = |tag: &Tag| matches!(tag, Tag::Gear(n) if *n > count);
    let is_whole = !gears.iter().any(|(tag, _)| is_last(tag));
    let highest = gears.iter().find(|(tag, _)| *tag == Tag::Gear(count));
    let highest = highest.map(|(_, amount)| amount.text.clone());
    let is_top = |tag: Tag| matches!(tag, Tag::Top | Tag::High);
    // Top under both its names, in two places, is one gear.
    gears.retain(|(tag, amount)| !is_top(*tag) || Some(&amount.text) != highest.as_ref());
    if let Some((tag, _)) = gears.iter_mut().find(|(tag, _)| is_top(*tag))
        && is_whole
        && (1..12).contains(&count)
    {
        *tag = Tag::Gear(count + 1);
    }
}

fn keep_first_of_each(gears: &mut Vec<(Tag, Amount)>, remarks: &mut Remarks) {
    let mut labels: Vec<String> = Vec::with_capacity(gears.len());
    gears.retain(|(tag, amount)| {
        let label = label(*tag);
        let is_new = !labels.contains(&label);
        if is_new {
            labels.push(label);
        } else {
            remarks.left_out(&amount.text, LeftOut::Repeated);
        }
        is_new
    });
}

fn name_missing(gears: &[(Tag, Amount)], remarks: &mut Remarks) {
    let numbers = gears.iter().filter_map(|(tag, _)| match tag {
        Tag::Gear(n) | Tag::Half(n, _) | Tag::Overdriven(n) => Some(*n),
        _ => None,
    });
    let numbers: Vec<u8> = numbers.collect();
    let highest = numbers.iter().copied().max().unwrap_or(0);
    let missing: Vec<String> = (1..highest)
        .filter(|n| !numbers.contains(n))
        .map(|n| n.to_string())
        .collect();
    if !missing.is_empty() {
        remarks.say(format!(
            "No ratio was found for gear {}.",
            missing.join(", ")
        ));
    }
}

/// The final drives, as far as gears are concerned.
struct Shafts {
    /// The gears in the brackets of each final drive.
    listed: Vec<Vec<Tag>>,
}

impl Shafts {
    fn of(finals: &[Amount]) -> Self {
        Self {
            listed: finals.iter().map(|amount| amount.gears.clone()).collect(),
        }
    }

    /// The final drive that lists the gear, or else the first that lists none, or else the first.
    fn serving(&self, gear: Tag) -> usize {
        let lists = self.listed.iter().position(|gears| gears.contains(&gear));
        let is_free = |gears: &Vec<Tag>| gears.is_empty();
        lists
            .or_else(|| self.listed.iter().position(is_free))
            .unwrap_or(0)
    }

    fn remark(&self, gears: &[(Tag, Amount)], remarks: &mut Remarks) {
        let is_unlisted = |tag: Tag| !self.listed.iter().any(|gears| gears.contains(&tag));
        let unlisted = gears.iter().filter(|(tag, _)| is_unlisted(*tag));
        let unlisted: Vec<String> = unlisted.map(|(tag, _)| label(*tag)).collect();
        if self.listed.is_empty() {
            remarks.say(NO_FINAL_DRIVE.to_owned());
        } else if self.listed.len() > 1 && unlisted.len() == gears.len() {
            remarks.say(
                "Several final drives were found, but not for which gears; all gears were given the first."
                    .to_owned(),
            );
        } else if self.listed.len() > 1 && !unlisted.is_empty() {
            remarks.say(format!(
                "No final drive names gear {}; check which one it uses.",
                unlisted.join(", ")
            ));
        }
    }
}
