//! How do the sorted values come together as one gear set?

use super::amount::{Amount, PairOrder, Shape};
use super::listing::told_apart;
use super::naming::{in_order, label};
use super::remarks::{LeftOut, Remarks};
use super::shafts::Shafts;
use super::sorting::Sorted;
use super::tags::Tag;
use super::{PasteError, PastedFinal, PastedGear, PastedRatio, PastedReverse, PastedSet};
use crate::gearing::GearSet;
use crate::gearing::Ratio;

/// The gear set, if there are gears and not too many.
pub(super) fn assembled(mut sorted: Sorted, mut remarks: Remarks) -> Result<PastedSet, PasteError> {
    align_pairs(&mut sorted);
    if sorted.gears.is_empty() {
        read_list(&mut sorted, &mut remarks)?;
    } else {
        place_loose(&mut sorted, &mut remarks);
    }
    check_counts(&sorted, &remarks)?;
    let gears = in_order(std::mem::take(&mut sorted.gears), &mut remarks);
    let shafts = Shafts::of(&sorted.finals);
    shafts.remark(&gears, &mut remarks);
    if gears.len() == 1 {
        remarks.say("Only one gear was found.".to_owned());
    }
    let mut set = PastedSet {
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
            .filter_map(|amount| pasted(amount).map(|ratio| PastedFinal { ratio }))
            .collect(),
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
fn read_list(sorted: &mut Sorted, remarks: &mut Remarks) -> Result<(), PasteError> {
    let loose = std::mem::take(&mut sorted.loose);
    let (has_final, has_reverse) = (!sorted.finals.is_empty(), sorted.reverse.is_some());
    let list = told_apart(loose, has_final, has_reverse, remarks);
    check_gears(list.gears.len())?;
    let tags = (1..=u8::MAX).map(Tag::Gear);
    sorted.gears = tags.zip(list.gears).collect();
    sorted.finals.extend(list.final_drive);
    sorted.reverse = sorted.reverse.take().or(list.reverse);
    Ok(())
}

fn check_gears(found: usize) -> Result<(), PasteError> {
    let most = GearSet::MOST_GEARS;
    if found > most {
        return Err(PasteError::TooManyGears { found, most });
    }
    Ok(())
}

/// A single value without a label among labelled gears can be the final drive.
fn place_loose(sorted: &mut Sorted, remarks: &mut Remarks) {
    let lowest = sorted.gears.iter().filter_map(|(_, amount)| amount.value());
    let lowest = lowest.fold(f64::INFINITY, f64::min);
    let loose = std::mem::take(&mut sorted.loose);
    let is_final = sorted.finals.is_empty()
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
    let (gears, finals, _) = set.resolved();
    let shifted = set.gears.iter().zip(gears).filter(|(g, _)| !g.is_crawler);
    let overall = |(gear, ratio): (&PastedGear, Ratio)| {
        ratio.value() * finals.get(gear.final_drive).map_or(1.0, Ratio::value)
    };
    let overall: Vec<f64> = shifted.map(overall).collect();
    if overall.windows(2).any(|pair| pair[1] >= pair[0]) {
        let sentence = "The ratios do not fall from gear to gear; check them.";
        set.remarks.insert(0, sentence.to_owned());
    }
}
