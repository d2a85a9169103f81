//! Which values of a list without labels are gears, and which are the final drive and reverse?
//!
//! Magazines write first to top and the final drive last; some write the final drive first, or
//! top to first. Where the step sizes leave it open, it is said.

use super::amount::Amount;
use super::remarks::{LeftOut, Remarks};
use crate::gearing::quoted;
use crate::gearing::{Ratio, TypedRatio, read_chain};

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
