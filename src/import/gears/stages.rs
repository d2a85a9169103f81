//! Further stages that a text names: primary drive, transfer box, hub reduction, overdrive, chain.
//!
//! A stage's numbers stand behind its name, high and low with them or on the lines below. A chain
//! drives the wheel: where the text has no other final drive it is taken for that.

use super::figures::{Figure, figures, opens_product};
use super::phrases::{is_sign, phrase_at, without};
use super::pieces::{Amount, PairOrder, Shape, Tag, checked};
use super::remarks::{LeftOut, Remarks};
use super::tokens::{Kind, Token};
use super::words::{Meaning, meaning};
use super::{PastedPosition, PastedRatio, PastedStage};
use crate::gearing::{GearSet, Position};

/// The further stages of a text.
#[derive(Debug, Default)]
pub(super) struct Stages {
    pub(super) boxes: Vec<PastedStage>,
    /// The teeth of a chain, driven first.
    pub(super) chain: Option<Amount>,
    /// Whether the text calls the final drive a chain, whose numbers stand with that.
    pub(super) is_final_chain: bool,
    pub(super) remarks: Vec<String>,
    pub(super) left_out: Vec<(String, LeftOut)>,
}

/// What a stage is called, and in which words; a transfer box has ranges.
const NAMES: [(&str, &str); 6] = [
    (
        "Primary drive",
        "primary; primary drive; primary ratio; primary reduction; primary gears; primar; primartrieb; \
         primarubersetzung; primary reduction ratio; primary drive ratio; transmission primaire",
    ),
    (
        TRANSFER,
        "transfer; transfer box; transfer case; transfer gear; transfer gears; transfer ratio; \
         transfer ratios; transfer box ratios; transfer case ratios; verteilergetriebe; \
         boite de transfert; reductor; high range; low range",
    ),
    (
        "Hub reduction",
        "hub reduction; hub reductions; portal; portals; portal gears; portal axle; portal axles",
    ),
    ("Drop gears", "drop gear; drop gears"),
    (
        "Overdrive",
        "overdrive unit; overdrive ratio; overdrive box; separate overdrive",
    ),
    (
        CHAIN,
        "chain; chain drive; chain ratio; sprocket; sprockets; chain and sprockets; secondary; \
         secondary drive; secondary reduction; kette; kettenrad; kettentrieb; ritzel und kettenrad",
    ),
];

const TRANSFER: &str = "Transfer box";
const CHAIN: &str = "Chain";

/// How many tokens the numbers of a stage and the words between them take at most.
const MOST_BETWEEN: usize = 24;

/// Words that may stand between a stage's name and its numbers.
const BETWEEN: &str = "ratio; ratios; reduction; is; of; are; the; gear; gears; range; ranges; \
     box; case; drive; with; has; in; and; und; et; or; teeth; tooth; sprocket; sprockets; speed; \
     uses; a; an; on";

/// The tokens without what belongs to a stage, and the stages.
pub(super) fn taken(tokens: &[Token]) -> (Vec<Token>, Stages) {
    let mut finder = Finder {
        tokens,
        is_taken: vec![false; tokens.len()],
        found: Stages::default(),
    };
    finder.front_and_rear();
    for at in 0..tokens.len() {
        if !finder.is_taken[at] {
            finder.look(at);
        }
    }
    let is_taken = finder.is_taken;
    (without(tokens.to_vec(), &is_taken), finder.found)
}

/// High and low as a stage, with what was assumed of high.
pub(super) fn ranges(
    high: Option<Amount>,
    low: Option<Amount>,
    remarks: &mut Vec<String>,
) -> Option<PastedStage> {
    let high = high.unwrap_or_else(|| {
        remarks.push("High range was taken as 1:1; the text gives low range only.".to_owned());
        Amount::new("1:1".to_owned(), Shape::ToOne)
    });
    let high = position("High", high)?;
    let low = low.and_then(|low| position("Low", low));
    Some(PastedStage {
        name: TRANSFER.to_owned(),
        positions: std::iter::once(high).chain(low).collect(),
        present: 0,
    })
}

fn position(name: &str, mut amount: Amount) -> Option<PastedPosition> {
    if amount.order == Some(PairOrder::DrivingFirst) {
        amount.write_driven_first();
    }
    let ratio = PastedRatio {
        ratio: amount.ratio?,
        text: amount.text,
    };
    Some(PastedPosition {
        name: name.to_owned(),
        ratio,
    })
}

struct Finder<'a> {
    tokens: &'a [Token],
    is_taken: Vec<bool>,
    found: Stages,
}

/// The numbers behind a stage's name.
#[derive(Default)]
struct Numbers {
    /// Each with high or low, if that stands with it.
    amounts: Vec<(Option<Tag>, Amount)>,
    /// Where the last of them ends.
    end: usize,
}

impl Finder<'_> {
    fn look(&mut self, at: usize) {
        let named = NAMES
            .iter()
            .filter_map(|(name, phrases)| Some((*name, phrase_at(self.tokens, at, phrases)?)));
        let Some((name, (phrase, used))) = named.max_by_key(|(_, (_, used))| *used) else {
            return;
        };
        if name == CHAIN && self.is_final_before(at) {
            self.found.is_final_chain = true;
            return self.is_taken[at..at + used].fill(true);
        }
        let range = match phrase.as_str() {
            "high range" => Some(Tag::High),
            "low range" => Some(Tag::Low),
            _ => None,
        };
        let most = match name {
            CHAIN => 3,
            TRANSFER => 2,
            _ => 1,
        };
        let numbers = self.numbers(at + used, range, most);
        let end = numbers.end;
        let is_stage = match name {
            CHAIN => self.be_chain(numbers),
            _ => self.be_stage(name, numbers),
        };
        if is_stage {
            self.is_taken[at..end].fill(true);
        }
    }

    /// Whether the words before say that the chain is the final drive, whose numbers then follow.
    fn is_final_before(&self, at: usize) -> bool {
        let before = &self.tokens[at.saturating_sub(4)..at];
        let line = before.rsplit(|t| t.kind == Kind::LineEnd).next();
        let words = line.unwrap_or_default().iter().rev();
        let mut words = words.filter(|t| !matches!(t.kind, Kind::Sign(':' | '=' | '(')));
        words.next().is_some_and(|last| {
            let is_drive = last.text.eq_ignore_ascii_case("drive");
            let last = if is_drive { words.next() } else { Some(last) };
            last.is_some_and(|t| meaning(&t.text) == Some(Meaning::Tag(Tag::Final)))
        })
    }

    /// Reads on from `at`, over the words that may stand between, up to `most` numbers.
    fn numbers(&self, mut at: usize, mut range: Option<Tag>, most: usize) -> Numbers {
        let mut numbers = Numbers {
            end: at,
            ..Numbers::default()
        };
        let mut is_behind_amount = false;
        let last = at + MOST_BETWEEN;
        while let Some(token) = self
            .tokens
            .get(at)
            .filter(|_| at < last && !self.is_taken[at])
        {
            if token.kind == Kind::Number || opens_product(self.tokens, at) {
                let (amount, used) = self.amount(at);
                let Some(amount) = amount else {
                    break;
                };
                let is_checked = is_behind_amount && numbers.check(&amount);
                if !is_checked {
                    if numbers.amounts.len() == most {
                        break;
                    }
                    numbers.amounts.push((range.take(), amount));
                }
                at += used;
                is_behind_amount = true;
                numbers.end = at + usize::from(is_sign(self.tokens.get(at), ')'));
            } else if let Some((tag, used)) = self.range(at) {
                let last = numbers.amounts.last_mut().filter(|_| is_behind_amount);
                match last {
                    Some((free @ None, _)) => {
                        *free = Some(tag);
                        numbers.end =
                            at + used + usize::from(is_sign(self.tokens.get(at + used), ')'));
                    }
                    _ => range = Some(tag),
                }
                at += used;
                is_behind_amount = false;
            } else if let Some(used) = self.between(at, &numbers) {
                // A comma parts what stands behind a value from it.
                is_behind_amount &= !matches!(token.kind, Kind::Sign(',' | ';' | '/'));
                at += used;
            } else {
                break;
            }
        }
        numbers
    }

    /// The number at `at`, and how many tokens it takes; the teeth of a list stay numbers.
    fn amount(&self, at: usize) -> (Option<Amount>, usize) {
        let (figures, used) = figures(self.tokens, at);
        match &figures[..] {
            [Figure::Amount(amount)] if amount.ratio.is_some() || amount.shape == Shape::Whole => {
                (Some(amount.clone()), used)
            }
            // `1.15/3.32`: the first, and the rest is looked at on its own.
            [Figure::Amount(amount), ..] if amount.ratio.is_some() => {
                let shape = amount.shape;
                let is_single = matches!(shape, Shape::Whole | Shape::Decimal);
                (is_single.then(|| amount.clone()), 1)
            }
            _ => (None, used),
        }
    }

    /// High or low, and how many tokens say so.
    fn range(&self, at: usize) -> Option<(Tag, usize)> {
        let used = |phrases| phrase_at(self.tokens, at, phrases).map(|(_, used)| used);
        let is_letter = |letter| self.tokens[at].text == letter;
        if let Some(used) = used("high; hi; high range; high ratio; strasse") {
            return Some((Tag::High, used));
        }
        if let Some(used) = used("low; lo; low range; low ratio; gelande") {
            return Some((Tag::Low, used));
        }
        if is_letter("H") {
            return Some((Tag::High, 1));
        }
        is_letter("L").then_some((Tag::Low, 1))
    }

    /// How many tokens here say nothing of their own: words between, signs, and the end of a line
    /// below which high or low or the first number follows.
    fn between(&self, at: usize, numbers: &Numbers) -> Option<usize> {
        match self.tokens[at].kind {
            Kind::Word => phrase_at(self.tokens, at, BETWEEN).map(|(_, used)| used),
            Kind::Sign('.') => numbers.amounts.is_empty().then_some(1),
            Kind::Sign(_) => Some(1),
            Kind::LineEnd => {
                let marks = self.tokens.iter().skip(at + 1);
                let marks = marks
                    .take_while(|t| matches!(t.kind, Kind::Sign(_)))
                    .count();
                let next = at + 1 + marks;
                let goes_on = next < self.tokens.len() && self.range(next).is_some();
                goes_on.then_some(1 + marks)
            }
            _ => None,
        }
    }

    fn be_stage(&mut self, name: &str, numbers: Numbers) -> bool {
        let mut amounts = numbers.amounts.into_iter();
        let amount = |amount: Option<(Option<Tag>, Amount)>| amount.map(|(_, amount)| amount);
        let stage = match (amounts.next(), amounts.next()) {
            (None, _) => return false,
            (Some((Some(Tag::Low), low)), high) => {
                ranges(amount(high), Some(low), &mut self.found.remarks)
            }
            (Some((Some(_), high)), low) => {
                ranges(Some(high), amount(low), &mut self.found.remarks)
            }
            (Some((None, first)), Some((tag, second))) => {
                let is_low_first = tag == Some(Tag::High) || first.value() > second.value();
                let (high, low) = if is_low_first {
                    (second, first)
                } else {
                    (first, second)
                };
                ranges(Some(high), Some(low), &mut self.found.remarks)
            }
            (Some((None, only)), None) => single(name, only),
        };
        match stage {
            Some(stage) => self.add(stage),
            None => return false,
        }
        true
    }

    /// Adds a stage; the ranges of one box may be named in two places.
    fn add(&mut self, stage: PastedStage) {
        let has_room = self.found.boxes.len() < GearSet::MOST_STAGES;
        let known = self.found.boxes.iter_mut().find(|s| s.name == stage.name);
        let is_low = |p: &PastedPosition| p.name == "Low";
        match known {
            Some(known) if known.positions.iter().any(is_low) && stage.positions.len() == 1 => {
                known.positions[0] = stage.positions[0].clone();
                self.found.remarks.retain(|r| !r.starts_with("High range"));
            }
            Some(known) if known.positions.len() == 1 && stage.positions.len() == 2 => {
                known
                    .positions
                    .extend(stage.positions.into_iter().filter(is_low));
                self.found.remarks.retain(|r| !r.starts_with("High range"));
            }
            Some(_) => {
                let texts = stage.positions.into_iter().map(|p| p.ratio.text);
                let left_out = texts.map(|text| (text, LeftOut::Repeated));
                self.found.left_out.extend(left_out);
            }
            None if has_room => self.found.boxes.push(stage),
            None => {}
        }
    }

    fn be_chain(&mut self, numbers: Numbers) -> bool {
        // "chain 520, 16/46": the first is the chain's own size.
        let is_size = |a: &Amount| a.shape == Shape::Whole && a.value().is_none_or(|n| n >= 100.0);
        let amounts = numbers.amounts.into_iter().map(|(_, a)| a);
        let amounts: Vec<Amount> = amounts.filter(|a| !is_size(a)).collect();
        let teeth = match &amounts[..] {
            [first, second] if [first.shape, second.shape] == [Shape::Whole; 2] => {
                chain_teeth(first, second)
            }
            [only] => only.clone(),
            _ => return false,
        };
        self.chain(teeth)
    }

    fn chain(&mut self, mut teeth: Amount) -> bool {
        if teeth.shape == Shape::Whole || !teeth.is_plausible(true) {
            return false;
        }
        // The wheel has the more teeth.
        if teeth.value() < Some(1.0) {
            teeth.write_driven_first();
        }
        let is_first = self.found.chain.is_none();
        if is_first {
            self.found.chain = Some(teeth);
        }
        is_first
    }

    /// "front 16, rear 46" and "16 front / 46 rear", with or without "sprocket".
    fn front_and_rear(&mut self) {
        for at in 0..self.tokens.len() {
            if let Some((front, rear, end)) = self.pair_of_sprockets(at) {
                let text = format!("{rear}:{front}");
                let teeth = Amount::new(text, Shape::Teeth);
                self.chain(teeth);
                return self.is_taken[at..end].fill(true);
            }
        }
    }

    fn pair_of_sprockets(&self, at: usize) -> Option<(u16, u16, usize)> {
        let side = |at: usize, words: &str| phrase_at(self.tokens, at, words).map(|(_, used)| used);
        let front = "front; front sprocket; gearbox sprocket; drive sprocket";
        let rear = "rear; rear sprocket; wheel sprocket; back";
        if let Some(used) = side(at, front) {
            let (n, end) = self.teeth(at + used)?;
            let start = self.skip(end, true);
            let (m, end) = self.teeth(start + side(start, rear)?)?;
            return is_chain(n, m).then_some((n, m, end));
        }
        let starts_with_count = self.tokens.get(at).is_some_and(Token::is_whole);
        let (n, end) = starts_with_count.then(|| self.teeth(at)).flatten()?;
        let end = self.skip(end, false);
        let start = self.skip(end + side(end, front)?, true);
        let (m, end) = self.teeth(start)?;
        let end = self.skip(end, false);
        let end = end + side(end, rear)?;
        is_chain(n, m).then_some((n, m, end))
    }

    /// Steps over marks and words that say no more than a count.
    fn skip(&self, mut at: usize, over_lines: bool) -> usize {
        while let Some(token) = self.tokens.get(at) {
            let words = phrase_at(
                self.tokens,
                at,
                "sprocket; teeth; tooth; t; and; with; the; a; is",
            );
            match (token.kind, words) {
                (_, Some((_, used))) => at += used,
                (Kind::Sign(':' | '=' | ',' | ';' | '/' | '-' | '&' | '+' | '|' | '\t'), _) => {
                    at += 1;
                }
                (Kind::LineEnd, _) if over_lines => at += 1,
                _ => break,
            }
        }
        at
    }

    fn teeth(&self, at: usize) -> Option<(u16, usize)> {
        let at = self.skip(at, false);
        let token = self.tokens.get(at).filter(|t| t.is_whole())?;
        Some((token.text.parse().ok()?, self.skip(at + 1, false)))
    }
}

fn is_chain(front: u16, rear: u16) -> bool {
    (8..=40).contains(&front) && (15..=99).contains(&rear) && front < rear
}

fn chain_teeth(first: &Amount, second: &Amount) -> Amount {
    let (driven, driving) = if first.value() > second.value() {
        (first, second)
    } else {
        (second, first)
    };
    Amount::new(format!("{}:{}", driven.text, driving.text), Shape::Teeth)
}

fn single(name: &str, mut amount: Amount) -> Option<PastedStage> {
    if amount.shape == Shape::Whole || !amount.is_plausible(true) {
        return None;
    }
    let is_taller = name == "Overdrive";
    if amount.order.is_none() && !is_taller && amount.value() < Some(1.0) {
        amount.write_driven_first();
    }
    let positions = if is_taller {
        let direct = Amount::new("1:1".to_owned(), Shape::ToOne);
        vec![position("Direct", direct)?, position("Overdrive", amount)?]
    } else {
        vec![position(Position::FIXED, amount)?]
    };
    Some(PastedStage {
        name: name.to_owned(),
        positions,
        present: 0,
    })
}

impl Numbers {
    /// Whether a number checks the one before it, as teeth and their decimal do.
    fn check(&mut self, amount: &Amount) -> bool {
        let last = self.amounts.last_mut();
        let checked = last
            .as_ref()
            .and_then(|(_, last)| checked(last, amount, &mut Remarks::default()));
        match (last, checked) {
            (Some((_, last)), Some(both)) => {
                *last = both;
                true
            }
            _ => false,
        }
    }
}

/// A chain behind a final drive that the text names besides.
pub(super) fn chain_stage(teeth: Amount) -> Option<PastedStage> {
    single(CHAIN, teeth)
}
