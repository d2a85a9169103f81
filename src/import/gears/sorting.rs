//! The values sorted by what they are: gears, reverse, final drives, and those without a label.
//!
//! In a list without labels the step sizes tell them apart. Magazines write first to top and the
//! final drive last; some write the final drive first, or top to first. Where the step sizes leave
//! it open, it is said.

use super::labels::Row;
use super::pieces::{Amount, Shape, Tag};
use super::remarks::{LeftOut, Remarks};
use super::stages::{Stages, chain_stage};
use super::{FigureKind, PastedStage};
use crate::gearing::{GearSet, Ratio, TypedRatio, parse_decimal, quoted, read_chain};

/// The values of a text, sorted by what they are.
#[derive(Debug)]
pub(super) struct Sorted {
    /// Forward gears with labels.
    pub(super) gears: Vec<(Tag, Amount)>,
    /// Values without labels, in their order.
    pub(super) loose: Vec<Amount>,
    /// Values without labels that are 0.
    pub(super) zeros: Vec<Amount>,
    /// The reverse gear.
    pub(super) reverse: Option<Amount>,
    /// Final drives, each with the gears in its brackets.
    pub(super) finals: Vec<Amount>,
    /// Whether the first of them is a chain.
    pub(super) is_on_chain: bool,
    /// Further stages.
    pub(super) stages: Vec<PastedStage>,
    /// What the figures of gears are.
    kind: FigureKind,
    /// Whether a gear stood there twice: then a second set follows the first.
    has_second_set: bool,
}

/// Sorts the values of all rows.
pub(super) fn sorted(rows: Vec<Row>, kind: FigureKind, remarks: &mut Remarks) -> Sorted {
    let arrangement = Arrangement::of(&rows);
    let mut sorted = Sorted::new(kind);
    for mut row in rows {
        let tags = distinct(&row.tags);
        match (&tags[..], row.amounts.len()) {
            ([], _) => sorted.loose(row.amounts, remarks),
            ([tag], _) => sorted.labelled(*tag, row.amounts, arrangement, remarks),
            (_, 1) => sorted.shared(&tags, row.amounts.remove(0), remarks),
            (_, _) => sorted.zipped(&tags, row.amounts, remarks),
        }
    }
    sorted
}

/// The tags without repetitions, and a gear with its overdrive as one.
fn distinct(tags: &[Tag]) -> Vec<Tag> {
    if let [Tag::Gear(n), Tag::Overdrive] | [Tag::Overdrive, Tag::Gear(n)] = tags {
        return vec![Tag::Overdriven(*n)];
    }
    let mut distinct: Vec<Tag> = Vec::with_capacity(tags.len());
    for tag in tags {
        if !distinct.contains(tag) {
            distinct.push(*tag);
        }
    }
    distinct
}

/// How the text as a whole is laid out.
#[derive(Debug, Clone, Copy)]
struct Arrangement {
    /// At most one gear has a label, so that a label opens a list.
    is_list: bool,
    /// Gears have values in further columns.
    has_columns: bool,
}

impl Arrangement {
    fn of(rows: &[Row]) -> Self {
        let is_gear = |row: &Row| row.tags.iter().any(|tag| tag.is_forward());
        let (mut labels, mut values, mut has_columns) = (0, 0, false);
        for row in rows {
            if is_gear(row) {
                labels += row.tags.len();
                has_columns |= row.amounts.len() > row.tags.len();
            }
            if is_gear(row) || row.tags.is_empty() {
                values += row.amounts.len();
            }
        }
        let is_list = (labels == 1 && values > 2) || (labels == 0 && values == 0);
        Self {
            is_list,
            has_columns,
        }
    }
}

impl Sorted {
    fn new(kind: FigureKind) -> Self {
        Self {
            gears: Vec::new(),
            loose: Vec::new(),
            zeros: Vec::new(),
            reverse: None,
            finals: Vec::new(),
            is_on_chain: false,
            stages: Vec::new(),
            kind,
            has_second_set: false,
        }
    }

    /// A chain drives the wheel: it is the final drive, or a stage where there is another.
    pub(super) fn take_chain(&mut self, stages: &Stages, remarks: &mut Remarks) {
        self.is_on_chain = stages.is_final_chain && self.finals.len() == 1;
        let Some(teeth) = &stages.chain else {
            return;
        };
        if self.finals.is_empty() {
            let text = quoted(&teeth.text);
            remarks.say(format!("The chain, {text}, was taken as the final drive."));
            self.finals.push(teeth.clone());
            self.is_on_chain = true;
        } else if self.stages.len() < GearSet::MOST_STAGES {
            self.stages.extend(chain_stage(teeth.clone()));
        }
    }

    /// Whether a figure can be a gear's, or the ratio of a final drive.
    fn is_plausible(&self, tag: Option<Tag>, amount: &Amount) -> bool {
        if self.kind == FigureKind::GearRatio || tag == Some(Tag::Final) {
            return amount.is_plausible(tag.is_some());
        }
        let value = amount.value().filter(|_| amount.shape != Shape::Teeth);
        value.is_some_and(|value| (0.1..=400.0).contains(&value))
    }

    fn loose(&mut self, amounts: Vec<Amount>, remarks: &mut Remarks) {
        let is_second_set = starts_anew(&self.loose, &amounts);
        self.has_second_set |= is_second_set;
        for amount in amounts {
            if is_second_set {
                remarks.left_out(&amount.text, LeftOut::Repeated);
            } else if self.is_plausible(None, &amount) {
                self.loose.push(amount);
            } else {
                remarks.left_out(&amount.text, LeftOut::Implausible);
                if parse_decimal(&amount.text).is_ok_and(|value| value == 0.0) {
                    self.zeros.push(amount);
                }
            }
        }
    }

    /// A label with its value; what follows depends on how the text is laid out.
    fn labelled(
        &mut self,
        tag: Tag,
        mut amounts: Vec<Amount>,
        arrangement: Arrangement,
        remarks: &mut Remarks,
    ) {
        if arrangement.is_list && tag.is_forward() {
            return self.loose(amounts, remarks);
        }
        let further = amounts.split_off(amounts.len().min(1));
        for amount in amounts {
            self.single(tag, amount, remarks);
        }
        if arrangement.is_list {
            return self.loose(further, remarks);
        }
        for amount in further {
            let is_shaft = !arrangement.has_columns && amount.shape != Shape::Whole;
            if tag == Tag::Final && (is_shaft || !amount.gears.is_empty()) {
                self.single(tag, amount, remarks);
            } else {
                remarks.left_out(&amount.text, LeftOut::BesideRatio);
            }
        }
    }

    /// Several labels for one value: names of one gear, or the gears of a final drive.
    fn shared(&mut self, tags: &[Tag], mut amount: Amount, remarks: &mut Remarks) {
        if let Some(tag) = one_name(tags) {
            return self.single(tag, amount, remarks);
        }
        let is_final = tags.contains(&Tag::Final);
        let gears = tags.iter().filter(|tag| **tag != Tag::Final);
        if !is_final && amount.value().is_none_or(|value| value < 2.0) {
            // From one gear to the next: a step.
            return remarks.left_out(&amount.text, LeftOut::Measure);
        }
        if !is_final {
            remarks.say(format!(
                "{} stands with several gears and was taken as their final drive.",
                amount.text
            ));
        }
        amount.gears.extend(gears);
        self.single(Tag::Final, amount, remarks);
    }

    /// As many labels as values, if all is well.
    fn zipped(&mut self, tags: &[Tag], amounts: Vec<Amount>, remarks: &mut Remarks) {
        if tags.len() != amounts.len() {
            remarks.say(format!(
                "There are {} labels for {} values; check which belongs to which.",
                tags.len(),
                amounts.len()
            ));
        }
        for (at, amount) in amounts.into_iter().enumerate() {
            match tags.get(at) {
                Some(tag) => self.single(*tag, amount, remarks),
                None => remarks.left_out(&amount.text, LeftOut::BesideRatio),
            }
        }
    }

    fn single(&mut self, tag: Tag, mut amount: Amount, remarks: &mut Remarks) {
        if !self.is_plausible(Some(tag), &amount) {
            return remarks.left_out(&amount.text, LeftOut::Implausible);
        }
        amount.gears.retain(|gear| *gear != Tag::Final);
        let is_same = |other: &Amount| other.text == amount.text;
        let repeated = match tag {
            Tag::Reverse => self.reverse.as_ref().map(is_same),
            Tag::Final => self.repeated_final(&amount),
            _ => {
                let known = self.gears.iter().find(|(known, _)| *known == tag);
                known.map(|(_, known)| is_same(known))
            }
        };
        match (repeated, tag) {
            (Some(true), _) => {}
            (Some(false), _) => {
                self.has_second_set |= tag.is_forward();
                remarks.left_out(&amount.text, LeftOut::Repeated);
            }
            (None, Tag::Reverse) => self.reverse = Some(amount),
            (None, Tag::Final) => self.finals.push(amount),
            (None, _) => self.gears.push((tag, amount)),
        }
    }

    /// Whether a final drive is one that is already there (true) or that of a second set (false).
    fn repeated_final(&self, amount: &Amount) -> Option<bool> {
        let is_known = |other: &Amount| other.text == amount.text && other.gears == amount.gears;
        if self.finals.iter().any(is_known) {
            return Some(true);
        }
        let is_of_second_set = self.has_second_set && !self.finals.is_empty();
        is_of_second_set.then_some(false)
    }
}

/// Whether a row of a list is another set: it falls as the list before it did, from higher up.
fn starts_anew(before: &[Amount], row: &[Amount]) -> bool {
    let falls =
        |values: &[f64]| values.len() >= 3 && values[2] < values[1] && values[1] < values[0];
    let row = values(row);
    // The last few are enough, and keep the time in proportion to the text.
    let before = || values(&before[before.len().saturating_sub(4)..]);
    falls(&row) && {
        let before = before();
        falls(&before) && before.last().is_some_and(|last| row[0] > 1.2 * last)
    }
}

/// The gear that all labels name, as in "5th, top" or "crawler, low".
fn one_name(tags: &[Tag]) -> Option<Tag> {
    if tags.contains(&Tag::Final) {
        return None;
    }
    let is_nickname = |tag: &&Tag| {
        matches!(
            tag,
            Tag::Top | Tag::High | Tag::Low | Tag::Overdrive | Tag::Crawler
        )
    };
    let mut names = tags.iter().filter(|tag| !is_nickname(tag));
    match (names.next(), names.next()) {
        (Some(name), None) => Some(*name),
        (None, _) if tags.contains(&Tag::Crawler) => Some(Tag::Crawler),
        (None, _) => tags.first().copied(),
        (Some(_), Some(_)) => None,
    }
}

/// How much a value exceeds the one before it to be clearly larger, and not two gears confused.
const CLEARLY_LARGER: f64 = 1.2;

/// The smallest value that is guessed to be a final drive.
const SMALLEST_FINAL: f64 = 1.5;

/// A list, told apart.
#[derive(Debug, Default)]
pub(super) struct List {
    /// First to top.
    pub(super) gears: Vec<Amount>,
    pub(super) reverse: Option<Amount>,
    pub(super) final_drive: Option<Amount>,
}

/// Tells the values of a list apart; `has_final` and `has_reverse` say what is known from labels.
pub(super) fn told_apart(
    amounts: Vec<Amount>,
    has_final: bool,
    has_reverse: bool,
    remarks: &mut Remarks,
) -> List {
    let values = values(&amounts);
    let mut listing = Listing {
        items: values.into_iter().zip(amounts).collect(),
        list: List::default(),
        wants_final: !has_final,
        wants_reverse: !has_reverse,
        remarks,
    };
    listing.drop_foreign_head();
    listing.take_negative();
    listing.turn();
    listing.take_tail();
    listing.take_head();
    listing.finished()
}

/// The ratios of a list, with the order of tooth pairs that makes sense of it.
pub(super) fn values(amounts: &[Amount]) -> Vec<f64> {
    let typed: Vec<TypedRatio> = amounts.iter().filter_map(|a| a.ratio.clone()).collect();
    let read: Vec<f64> = read_chain(&typed, &[]).iter().map(Ratio::value).collect();
    // A list from top to first looks like one with its pairs exchanged; but most gears reduce.
    let product_of = |values: &[f64]| values.iter().map(|v| v.ln()).sum::<f64>();
    let as_written: Vec<f64> = typed.iter().map(|t| t.driven_first().value()).collect();
    if product_of(&as_written) > product_of(&read) {
        as_written
    } else {
        read
    }
}

struct Listing<'a> {
    items: Vec<(f64, Amount)>,
    list: List,
    wants_final: bool,
    wants_reverse: bool,
    remarks: &'a mut Remarks,
}

fn falls(items: &[(f64, Amount)]) -> bool {
    items.windows(2).all(|pair| pair[0].0 >= pair[1].0)
}

fn rises(items: &[(f64, Amount)]) -> bool {
    items.windows(2).all(|pair| pair[0].0 < pair[1].0)
}

impl Listing<'_> {
    /// Leaves out a number that belongs to a word before the list: "Saloon 2.0 3.65 1.97 …".
    fn drop_foreign_head(&mut self) {
        let [(head, amount), rest @ ..] = &self.items[..] else {
            return;
        };
        let [(first, _), (second, _), ..] = rest else {
            return;
        };
        // "5.0" before ratios of two decimals and more is an engine's size too.
        let is_coarse = amount.decimals() <= 1 && rest.iter().all(|(_, a)| a.decimals() >= 2);
        if amount.is_after_unknown && (is_coarse || (head < first && first > second)) {
            self.remarks.left_out(&amount.text, LeftOut::Implausible);
            self.items.remove(0);
        }
    }

    /// The only value with a minus is reverse.
    fn take_negative(&mut self) {
        let mut negative = (0..self.items.len()).filter(|at| self.items[*at].1.is_negative);
        if let (Some(at), None) = (negative.next(), negative.next())
            && self.wants_reverse
            && self.items.len() > 1
        {
            let (_, amount) = self.items.remove(at);
            self.be_reverse(amount, "it has a minus");
        }
    }

    /// Turns round a list that rises from top gear to first, with a final drive at either end.
    fn turn(&mut self) {
        let count = self.items.len();
        if count >= 5 && self.wants_final {
            let (front, back) = (&self.items[1..], &self.items[..count - 1]);
            let is_final = |at: usize| self.items[at].0 >= SMALLEST_FINAL;
            if rises(front) && !rises(&self.items) && is_final(0) {
                let (_, amount) = self.items.remove(0);
                self.be_final(amount, "it stands before a list that rises");
            } else if rises(back) && !rises(&self.items) && is_final(count - 1) {
                let (_, amount) = self.items.remove(count - 1);
                self.be_final(amount, "it stands behind a list that rises");
            }
        }
        if self.items.len() >= 3 && rises(&self.items) {
            self.items.reverse();
            self.remarks
                .say("The list rises, so it was read from top gear to first.".to_owned());
        }
    }

    /// Takes reverse and the final drive from behind the falling ratios.
    fn take_tail(&mut self) {
        let rise = self.items.windows(2).position(|pair| pair[1].0 > pair[0].0);
        let Some(end) = rise.map(|at| at + 1) else {
            return;
        };
        if end == 1 && self.items.len() > 2 {
            return;
        }
        let is_clear =
            self.items.len() == 2 || self.items[end].0 >= CLEARLY_LARGER * self.items[end - 1].0;
        match (self.items.len() - end, self.wants_final, self.wants_reverse) {
            (1, true, _) if is_clear && self.items[end].0 >= SMALLEST_FINAL => {
                let (_, amount) = self.items.remove(end);
                self.be_final(
                    amount,
                    "it stands last and is clearly larger than the one before",
                );
            }
            (1, false, true) if is_clear => {
                let (_, amount) = self.items.remove(end);
                self.be_reverse(
                    amount,
                    "it stands last and is clearly larger than the one before",
                );
            }
            (2, true, true) if is_clear => {
                let (_, last) = self.items.remove(end + 1);
                let (_, reverse) = self.items.remove(end);
                self.be_reverse(
                    reverse,
                    "it stands behind top gear and before the final drive",
                );
                self.be_final(last, "it stands last");
            }
            _ => {}
        }
    }

    /// Takes a final drive from before the gears: larger or smaller than first gear, but too near
    /// to it for a gear of its own. Steps between gears seldom widen from first to third.
    fn take_head(&mut self) {
        let [(head, _), (first, _), (second, _), ..] = self.items[..] else {
            return;
        };
        let is_narrow = head / first < 1.45 && head / first < 0.8 * first / second;
        let is_uneven = head < first || (is_narrow && self.items.len() > 3);
        if self.wants_final && is_uneven && falls(&self.items[1..]) && head >= SMALLEST_FINAL {
            let (_, amount) = self.items.remove(0);
            let first = quoted(&self.items[0].1.text);
            let why = format!("it stands first and too near to {first} for a gear of its own");
            self.be_final(amount, &why);
        }
    }

    fn be_final(&mut self, amount: Amount, why: &str) {
        let text = quoted(&amount.text);
        self.remarks
            .say(format!("{text} was taken as the final drive: {why}."));
        self.list.final_drive = Some(amount);
        self.wants_final = false;
    }

    fn be_reverse(&mut self, amount: Amount, why: &str) {
        let text = quoted(&amount.text);
        self.remarks
            .say(format!("{text} was taken as reverse: {why}."));
        self.list.reverse = Some(amount);
        self.wants_reverse = false;
    }

    fn finished(mut self) -> List {
        self.list.gears = self.items.into_iter().map(|(_, amount)| amount).collect();
        self.list
    }
}
