//! Which values are gears, which reverse, which final drives, and which have no label?

use super::amount::{Amount, Shape};
use super::listing::values;
use super::remarks::{LeftOut, Remarks};
use super::rows::Row;
use super::tags::Tag;

/// The values of a text, sorted by what they are.
#[derive(Debug, Default)]
pub(super) struct Sorted {
    /// Forward gears with labels.
    pub(super) gears: Vec<(Tag, Amount)>,
    /// Values without labels, in their order.
    pub(super) loose: Vec<Amount>,
    /// The reverse gear.
    pub(super) reverse: Option<Amount>,
    /// Final drives, each with the gears in its brackets.
    pub(super) finals: Vec<Amount>,
    /// Whether a gear stood there twice: then a second set follows the first.
    has_second_set: bool,
}

/// Sorts the values of all rows.
pub(super) fn sorted(rows: Vec<Row>, remarks: &mut Remarks) -> Sorted {
    let layout = Layout::of(&rows);
    let mut sorted = Sorted::default();
    for mut row in rows {
        let tags = distinct(&row.tags);
        match (&tags[..], row.amounts.len()) {
            ([], _) => sorted.loose(row.amounts, remarks),
            ([tag], _) => sorted.labelled(*tag, row.amounts, layout, remarks),
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
struct Layout {
    /// At most one gear has a label, so that a label opens a list.
    is_list: bool,
    /// Gears have values in further columns.
    has_columns: bool,
}

impl Layout {
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
    fn loose(&mut self, amounts: Vec<Amount>, remarks: &mut Remarks) {
        let is_second_set = starts_anew(&self.loose, &amounts);
        self.has_second_set |= is_second_set;
        for amount in amounts {
            if is_second_set {
                remarks.left_out(&amount.text, LeftOut::Repeated);
            } else if amount.is_plausible(false) {
                self.loose.push(amount);
            } else {
                remarks.left_out(&amount.text, LeftOut::Implausible);
            }
        }
    }

    /// A label with its value; what follows depends on how the text is laid out.
    fn labelled(
        &mut self,
        tag: Tag,
        mut amounts: Vec<Amount>,
        layout: Layout,
        remarks: &mut Remarks,
    ) {
        if layout.is_list && tag.is_forward() {
            return self.loose(amounts, remarks);
        }
        let further = amounts.split_off(amounts.len().min(1));
        for amount in amounts {
            self.single(tag, amount, remarks);
        }
        if layout.is_list {
            return self.loose(further, remarks);
        }
        for amount in further {
            let is_shaft = !layout.has_columns && amount.shape != Shape::Whole;
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
        if !amount.is_plausible(true) {
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
