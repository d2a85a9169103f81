//! What a text calls its gear sets: cells and lines that say nothing of what the values are.

use super::phrases::spelled;
use super::tokens::{Kind, Token};
use super::words::{LONGEST_PHRASE, Meaning, meaning};
use crate::gearing::Name;
use crate::import::plain::folded;

/// How many words, numbers and signs the name of a set has at most.
const LONGEST_NAME: usize = 10;

/// Whether a cell says nothing of what its values are, so that it can be the name of a set.
pub(super) fn is_name(cell: &[Token]) -> bool {
    if cell.len() > LONGEST_NAME {
        return false;
    }
    let known = |at: usize, length: usize| {
        let words = cell.get(at..at + length)?;
        let are_words = words.iter().all(|t| t.kind == Kind::Word);
        are_words.then(|| meaning(&spelled(words))).flatten()
    };
    let has_unknown = (0..cell.len())
        .any(|at| matches!(cell[at].kind, Kind::Word | Kind::Code) && known(at, 1).is_none());
    let phrases = (0..cell.len()).flat_map(|at| (1..=LONGEST_PHRASE).map(move |n| (at, n)));
    let mut meanings = phrases.filter_map(|(at, length)| known(at, length));
    let says_something = meanings.any(|known| match known {
        Meaning::Heading | Meaning::Gear => !has_unknown,
        Meaning::Filler
        | Meaning::And
        | Meaning::For
        | Meaning::To
        | Meaning::Gears
        | Meaning::Speed => false,
        _ => true,
    });
    let has_words = cell
        .iter()
        .any(|t| matches!(t.kind, Kind::Word | Kind::Code));
    let is_ratio = |t: &Token| t.kind == Kind::Number && !t.is_whole();
    let is_gear = |t: &Token| matches!(t.kind, Kind::Ordinal(_));
    has_words && !says_something && !cell.iter().any(|t| is_ratio(t) || is_gear(t))
}

/// The text of a cell as the name of a set, where it can be one.
pub(super) fn name_of(cell: &[Token]) -> Option<String> {
    let text = spelled(cell);
    let short: String = text
        .trim_matches(|c: char| !c.is_alphanumeric())
        .chars()
        .take(Name::MOST_CHARACTERS)
        .collect();
    Name::new(&short).is_ok().then_some(short)
}

/// How many of them the name in a line of its own may be: more is a sentence.
const MOST_WORDS: usize = 6;

/// Words that stand in sentences rather than in names, parted by "; ".
const OF_SENTENCES: &str = "hi; hello; hey; i; i'm; i've; im; we; you; your; it; its; he; she; they; \
     them; here; there; this; these; those; that; what; which; why; how; when; where; am; is; are; \
     was; were; be; been; has; have; had; having; do; does; did; can; could; would; should; will; \
     got; get; gets; run; runs; running; use; used; uses; using; want; wants; need; needs; think; \
     thinking; thought; know; found; find; see; says; said; wrote; quote; quoting; posted; thanks; \
     thank; cheers; please; looking; trying; tried; built; bought; sold; fitted; compare; comparing; \
     anyone; anybody; somebody; everyone; guys; folks; help; me; following; follows; below; above; \
     attached; ich; wir; ihr; hallo; moin; servus; hier; sind; ist; hat; habe; haben; danke; bitte; \
     schrieb; schreibt; folgende; bonjour; salut; voici; je; j'ai; sont; est; merci; ciao; ecco; \
     ho; sono; grazie; hola; aqui; tengo; son; gracias";

/// Words that head the figures of every gearbox, and tell none from another.
const OF_EVERY_BOX: &str = "box; gearbox; gearboxes; transmission; trans; getriebe; boite; cambio; \
     versnellingsbak; vaxellada; skrzynia; manual; automatic; spec; specs; specification; \
     specifications; data; technical; technische; daten; info; information; details; figures; \
     numbers; list; table; tabelle; liste; sheet; my; our; mein; meine; mon; ma; mes; mi; mio; a; \
     an; the; set; sets; full; complete";

/// The name that a line of its own gives to the gear set beneath it.
pub(super) struct NameLine {
    pub(super) name: String,
    /// Whether it tells this set from others: "Gearbox" does not, beside another name it may.
    pub(super) is_telling: bool,
}

/// The name that `line` is, if it says nothing else; a sentence is none.
pub(super) fn name_line(line: &[Token]) -> Option<NameLine> {
    let line = without_markup(line);
    let is_short = line.len() <= LONGEST_NAME;
    let words = line.iter().filter(|t| !matches!(t.kind, Kind::Sign(_)));
    let numbers = line.iter().filter(|t| t.kind == Kind::Number);
    if !is_short || words.count() > MOST_WORDS || numbers.count() > 1 {
        return None;
    }
    let unmarked = without_mark(line);
    let is_name = is_name(line) || is_name(unmarked);
    if !is_name || !unmarked.iter().all(is_part_of_name) {
        return None;
    }
    let name = spelled(line);
    Name::new(&name).ok()?;
    let is_telling = unmarked.len() < line.len() || is_telling(line);
    Some(NameLine { name, is_telling })
}

/// The line without what makes it a heading or bold, and without the colon at its end.
fn without_markup(line: &[Token]) -> &[Token] {
    let is_blank = |t: &Token| matches!(t.kind, Kind::LineEnd | Kind::Sign('\t'));
    let opens = |t: &Token| is_blank(t) || matches!(t.kind, Kind::Sign('#' | '*' | '-'));
    let closes = |t: &Token| is_blank(t) || matches!(t.kind, Kind::Sign('#' | '*' | ':'));
    let mut line = line;
    loop {
        let length = line.len();
        while let [first, rest @ ..] = line
            && opens(first)
        {
            line = rest;
        }
        while let [rest @ .., last] = line
            && closes(last)
        {
            line = rest;
        }
        line = within_tags(line).unwrap_or(line);
        if line.len() == length {
            return line;
        }
    }
}

/// What stands between `[b]` and `[/b]`, `[size=4]` and `[/size]`.
fn within_tags(line: &[Token]) -> Option<&[Token]> {
    const LONGEST_TAG: usize = 5;
    let is_sign = |t: &Token, sign| t.kind == Kind::Sign(sign);
    line.first().filter(|t| is_sign(t, '['))?;
    let head = line.iter().take(LONGEST_TAG);
    let start = head.take_while(|t| !is_sign(t, ']')).count() + 1;
    let [.., open, slash, _, close] = line.get(start..)? else {
        return None;
    };
    let closes = is_sign(open, '[') && is_sign(slash, '/') && is_sign(close, ']');
    let opens = line.get(start - 1).is_some_and(|t| is_sign(t, ']'));
    (opens && closes).then(|| &line[start..line.len() - 4])
}

/// The line without the letter or numeral that counts boxes at its end: "Box C", "Getriebe II".
///
/// By themselves some of them would name a gear.
fn without_mark(line: &[Token]) -> &[Token] {
    let is_capital = |c: char| c.is_uppercase();
    let is_mark = |t: &Token| {
        t.kind == Kind::Word
            && (t.text.chars().count() == 1 || matches!(meaning(&t.text), Some(Meaning::Tag(_))))
            && t.text.chars().count() <= 4
            && t.text.chars().all(is_capital)
    };
    match line {
        [rest @ .., last] if is_mark(last) && !rest.is_empty() => rest,
        line => line,
    }
}

fn is_part_of_name(token: &Token) -> bool {
    match token.kind {
        Kind::Word => !is_one_of(&token.text, OF_SENTENCES),
        Kind::Code => token.text.contains(char::is_alphabetic),
        Kind::Number => true,
        Kind::Sign(sign) => matches!(sign, '-' | '/' | '&' | '+' | '#' | '(' | ')'),
        Kind::Ordinal(_) | Kind::LineEnd => false,
    }
}

fn is_one_of(word: &str, list: &str) -> bool {
    let word = folded(word).replace('’', "'");
    list.split("; ").any(|known| known == word)
}

/// Whether a name has a word that not every gearbox has: "stock", "six-speed", "box 2".
fn is_telling(name: &[Token]) -> bool {
    let is_of_every_box = |t: &Token| is_one_of(&t.text, OF_EVERY_BOX);
    let has_number = name.iter().any(|t| t.kind == Kind::Number);
    let tells = |t: &Token| match (t.kind, meaning(&t.text)) {
        (Kind::Code, _) => true,
        (Kind::Word, None) => !is_of_every_box(t),
        (Kind::Word, Some(Meaning::Speed)) => has_number,
        (Kind::Word, Some(Meaning::Filler)) => {
            is_one_of(&t.text, "standard; optional; option; early; late")
        }
        _ => false,
    };
    let is_counted_box = has_number && name.iter().any(is_of_every_box);
    name.iter().any(tells) || is_counted_box
}
