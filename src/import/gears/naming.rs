//! What are the gears called, and in which order do they stand?

use super::amount::Amount;
use super::remarks::{LeftOut, Remarks};
use super::tags::Tag;

/// The gears in order, each under the one name that it has.
pub(super) fn in_order(mut gears: Vec<(Tag, Amount)>, remarks: &mut Remarks) -> Vec<(Tag, Amount)> {
    drop_transfer_box(&mut gears, remarks);
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
pub(super) fn label(tag: Tag) -> String {
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
fn drop_transfer_box(gears: &mut Vec<(Tag, Amount)>, remarks: &mut Remarks) {
    let numbered = [1, 2, 3].map(Tag::Gear).iter().all(|tag| has(gears, *tag));
    let is_range = |tag: Tag| matches!(tag, Tag::High | Tag::Low);
    let first = gears.iter().find(|(tag, _)| *tag == Tag::Gear(1));
    let first = first.and_then(|(_, amount)| amount.value());
    let both = has(gears, Tag::High) && has(gears, Tag::Low);
    gears.retain(|(tag, amount)| {
        let is_crawler = *tag == Tag::Low && !both && amount.value() > first;
        let is_stage = numbered && is_range(*tag) && !is_crawler && (both || *tag == Tag::Low);
        if is_stage {
            remarks.left_out(&amount.text, LeftOut::Stage);
        }
        !is_stage
    });
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
