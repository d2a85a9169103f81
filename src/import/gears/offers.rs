//! What a text says beside the gears: tyre, redline, shift point; each is offered with its words.

use super::phrases::{is_sign, phrase_at, spelled, without};
use super::remarks::Remarks;
use super::tokens::{Kind, Token};
use super::words::{Meaning, meaning};
use crate::gearing::{EngineSpeed, Tyre, TyreSize, parse_tyre};
use crate::import::plain::folded;

/// Something that a text says of the vehicle.
#[derive(Debug, Clone, PartialEq)]
pub struct Offer {
    /// What it is.
    pub offered: Offered,
    /// The words it came from.
    pub words: String,
}

/// What can be offered, each at most once.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Offered {
    /// The tyre.
    Tyre(Tyre),
    /// The highest permitted engine speed.
    Redline(EngineSpeed),
    /// The engine speed at which is changed up.
    ShiftPoint(EngineSpeed),
}

impl Offered {
    /// What it is called.
    pub fn name(self) -> &'static str {
        match self {
            Self::Tyre(_) => "tyre",
            Self::Redline(_) => "redline",
            Self::ShiftPoint(_) => "shift point",
        }
    }
}

const REDLINE: &str = "redline; red line; redlines at; rev limit; rev limiter; limiter; max rpm; \
     max revs; maximum rpm; maximum revs; maximum engine speed; drehzahlgrenze; hochstdrehzahl; \
     hoechstdrehzahl; max drehzahl; regime maxi; regime max; regime maximum; giri max; \
     toerental max";

const SHIFT: &str = "shift at; shifts at; shifting at; shift point; shift points; shifted at; \
     change up at; changing up at; changes at; upshift at; upshifts at; schalten bei; \
     schaltpunkt; hochschalten bei; passage a";

/// Words that may stand between what is named and its engine speed.
const BETWEEN: &str = "is; at; of; to; the; set; approx; ca; about; around; bei; rpm; engine; \
     speed; limit; limiter; point; a; est; ist; von; it; all";

const TYRE: &str = "tyre; tyres; tire; tires; tyre size; tire size; reifen; pneu; pneus; gomme; \
     pneumatici; neumaticos; banden; rubber; wheels; on";

const CIRCUMFERENCE: &str = "rolling circumference; circumference; tyre circumference; \
     tire circumference; umfang; abrollumfang; rollumfang; rollout; roll out";

/// How many tokens a tyre size may take: `195 / 65 R 15 91 H`.
const MOST_OF_A_SIZE: usize = 8;

/// The tokens without what is offered, and the offers; what looks like a tyre size and is none is
/// said.
pub(super) fn taken(tokens: Vec<Token>, remarks: &mut Remarks) -> (Vec<Token>, Vec<Offer>) {
    let mut finder = Finder {
        tokens: &tokens,
        is_taken: vec![false; tokens.len()],
        offers: Vec::new(),
        remarks,
    };
    for at in 0..tokens.len() {
        if !finder.is_taken[at] {
            finder.look(at);
        }
    }
    let (is_taken, offers) = (finder.is_taken, finder.offers);
    (without(tokens, &is_taken), offers)
}

struct Finder<'a> {
    tokens: &'a [Token],
    is_taken: Vec<bool>,
    offers: Vec<Offer>,
    remarks: &'a mut Remarks,
}

impl Finder<'_> {
    fn look(&mut self, at: usize) {
        match self.tokens[at].kind {
            Kind::Number | Kind::Code => self.tyre_size(at, at),
            Kind::Word => {
                if let Some((_, used)) = phrase_at(self.tokens, at, REDLINE) {
                    self.engine_speed(at, used, Offered::Redline);
                } else if let Some((_, used)) = phrase_at(self.tokens, at, SHIFT) {
                    self.engine_speed(at, used, Offered::ShiftPoint);
                } else if let Some((_, used)) = phrase_at(self.tokens, at, CIRCUMFERENCE) {
                    self.circumference(at, used);
                } else if let Some((_, used)) = phrase_at(self.tokens, at, TYRE) {
                    let start = self.behind_marks(at + used);
                    self.tyre_size(at, start);
                }
            }
            _ => {}
        }
    }

    /// Offers something that stands in these tokens, unless its like was offered before.
    fn offer(&mut self, from: usize, to: usize, offered: Offered) {
        let words = spelled(&self.tokens[from..to]);
        self.is_taken[from..to].fill(true);
        let is_known = |known: &Offer| known.offered.name() == offered.name();
        if !self.offers.iter().any(is_known) {
            self.offers.push(Offer { offered, words });
        }
    }

    fn behind_marks(&self, mut at: usize) -> usize {
        while [':', '=', '(', '-', '|', '\t']
            .iter()
            .any(|sign| is_sign(self.tokens.get(at), *sign))
        {
            at += 1;
        }
        at
    }

    /// A size from `start` on; without a word for tyres before it, only one that can be nothing
    /// else.
    fn tyre_size(&mut self, from: usize, start: usize) {
        let has_word = from != start;
        let is_free = |before: usize| {
            let joined = self
                .tokens
                .get(before)
                .is_some_and(|t| matches!(t.kind, Kind::Sign('/' | '-' | 'x' | '*' | ':')));
            !joined
        };
        if !has_word && start > 0 && !is_free(start - 1) {
            return;
        }
        let line = self.tokens.iter().skip(start).take(MOST_OF_A_SIZE);
        let line = line.take_while(|t| t.kind != Kind::LineEnd).count();
        for length in (1..=line).rev() {
            let text = spelled(&self.tokens[start..start + length]);
            if !text.starts_with(|c: char| c.is_ascii_digit())
                || !(has_word || is_unmistakable(&text))
            {
                continue;
            }
            if let Ok(size) = text.parse::<TyreSize>() {
                return self.offer(from, start + length, Offered::Tyre(Tyre::Size(size)));
            }
        }
        self.refuse_width_and_rim(from, start);
    }

    /// `165 R 13` names no height; what reads as reverse otherwise is said to be missing.
    fn refuse_width_and_rim(&mut self, from: usize, start: usize) {
        let [width, mark, rim, ..] = self.tokens.get(start..).unwrap_or_default() else {
            return;
        };
        let is_width =
            width.is_whole() && width.text.len() == 3 && width.text.ends_with(['0', '5']);
        let is_rim = rim.is_whole() && rim.text.len() == 2;
        if is_width && is_rim && mark.text == "R" {
            let text = spelled(&self.tokens[start..start + 3]);
            if let Err(problem) = text.parse::<TyreSize>() {
                self.remarks.say(format!("Tyre {text}: {problem}."));
            }
            self.is_taken[from..start + 3].fill(true);
        }
    }

    fn circumference(&mut self, at: usize, used: usize) {
        let start = self.behind_marks(at + used);
        for length in [2, 1] {
            let end = start + length;
            let Some(figure) = self.tokens.get(start..end) else {
                continue;
            };
            let is_length = figure[0].kind == Kind::Number;
            let text = format!("circumference {}", spelled(figure));
            if is_length && let Ok(tyre) = parse_tyre(&text) {
                return self.offer(at, end, Offered::Tyre(tyre));
            }
        }
    }

    /// An engine speed behind the phrase, else right before it: "6500 rpm redline".
    fn engine_speed(&mut self, at: usize, used: usize, offered: fn(EngineSpeed) -> Offered) {
        let mut start = at + used;
        for _ in 0..4 {
            start = self.behind_marks(start);
            start += phrase_at(self.tokens, start, BETWEEN).map_or(0, |(_, used)| used);
        }
        if let Some((speed, end)) = engine_speed_at(self.tokens, start) {
            return self.offer(at, end, offered(speed));
        }
        let unit = at.checked_sub(1).filter(|at| is_rpm(&self.tokens[*at]));
        let before = unit.unwrap_or(at);
        for length in [2, 1] {
            let Some(from) = before.checked_sub(length) else {
                continue;
            };
            if let Some((speed, end)) = engine_speed_at(self.tokens, from)
                && end >= before
                && !self.is_taken[from]
            {
                return self.offer(from, at + used, offered(speed));
            }
        }
    }
}

/// Whether a text can be nothing but a tyre size: it has a radial mark and a width.
fn is_unmistakable(text: &str) -> bool {
    let digits = text.chars().take_while(char::is_ascii_digit).count();
    let has_mark = text.contains(['R', 'r', 'B', 'D']);
    let has_shape = text.contains('/') || digits == 3 || text.contains('x');
    has_mark && has_shape && digits >= 2
}

fn is_rpm(token: &Token) -> bool {
    token.kind == Kind::Word
        && token.text.to_lowercase() != "min"
        && meaning(&folded(&token.text)) == Some(Meaning::Unit)
        && token.text.to_lowercase().contains(['r', 'u', 't'])
}

/// The engine speed that stands at `at`, with its unit, and where it ends: `6500`, `6,500`,
/// `6 500`, `6.5k`.
fn engine_speed_at(tokens: &[Token], at: usize) -> Option<(EngineSpeed, usize)> {
    let token = tokens.get(at)?;
    let next = tokens.get(at + 1).filter(|t| t.is_whole());
    let next = next.filter(|t| t.text.len() == 3 && token.text.len() <= 2 && t.is_apart);
    let (number, mut end) = match token.kind {
        Kind::Number => match next {
            Some(next) => (format!("{}{}", token.text, next.text), at + 2),
            None => (without_thousands_mark(&token.text), at + 1),
        },
        Kind::Code => (thousands(&token.text)?, at + 1),
        _ => return None,
    };
    let rpm: f64 = number.parse().ok()?;
    if !(500.0..=20_000.0).contains(&rpm) {
        return None;
    }
    end += usize::from(tokens.get(end).is_some_and(is_rpm));
    Some((EngineSpeed::from_rpm(rpm).ok()?, end))
}

/// In engine speeds a mark before exactly three digits parts thousands.
fn without_thousands_mark(number: &str) -> String {
    match number.split_once(['.', ',']) {
        Some((thousands, rest)) if rest.len() == 3 && thousands.len() <= 2 => {
            format!("{thousands}{rest}")
        }
        _ => number.replace(',', "."),
    }
}

/// `6.5k` as 6500.
fn thousands(code: &str) -> Option<String> {
    let number = code.strip_suffix(['k', 'K'])?.replace(',', ".");
    let thousands: f64 = number.parse().ok()?;
    Some((thousands * 1000.0).to_string())
}
