//! The words above the cells of a table: what the engine can, and what is said of a set as a whole.
//!
//! The phrases about a set are those of `chart::table`'s facts, in their order or any other; the words
//! above all sets are those of the text tables' head.

use crate::gearing::{
    ActsOn, EngineSpeed, Factor, FinalDrive, Name, Position, Ratio, RollingCircumference, Stage,
    ToothPair, Tyre, parse_chain, parse_decimal, parse_tyre,
};
use crate::units::ratio_text;

/// What is said of all sets: `redline 6500 rpm; idle 800 rpm; baseline set 1 of 2`.
#[derive(Debug, Clone, Default)]
pub(super) struct Head {
    pub(super) idle: Option<EngineSpeed>,
    pub(super) lowest_useful: Option<EngineSpeed>,
    pub(super) redline: Option<EngineSpeed>,
    /// The number of the set that the others are compared with.
    pub(super) baseline: Option<usize>,
    /// How many sets there were.
    pub(super) sets: Option<usize>,
}

impl Head {
    /// What a line says of all sets; none where any of it is something else.
    pub(super) fn of(line: &str) -> Option<Self> {
        let mut head = Self::default();
        for phrase in line.split("; ") {
            if let Some(numbers) = phrase.strip_prefix("baseline set ") {
                let (number, count) = numbers.split_once(" of ")?;
                head.baseline = Some(number.parse().ok()?);
                head.sets = Some(count.parse().ok()?);
                continue;
            }
            let (what, rpm) = phrase.strip_suffix(" rpm")?.rsplit_once(' ')?;
            let speed = Some(EngineSpeed::from_rpm(parse_decimal(rpm).ok()?).ok()?);
            match what {
                "idle" => head.idle = speed,
                "lowest useful" => head.lowest_useful = speed,
                "redline" => head.redline = speed,
                _ => return None,
            }
        }
        Some(head)
    }
}

/// What is said of a set as a whole.
#[derive(Debug, Default)]
pub(super) struct Facts {
    pub(super) final_drives: Vec<FinalDrive>,
    pub(super) stages: Vec<Stage>,
    pub(super) tyre: Option<Tyre>,
    /// What was not understood.
    pub(super) unread: Vec<String>,
}

/// The most characters of a line about a set: three final drives of eight factors each and four stages
/// with the longest names fall short of it.
const MOST_CHARACTERS: usize = 6000;

const SPREAD: &str = "spread ";
const WIDEST: &str = "widest ";
const FINAL_DRIVE: &str = "final drive ";
const TYRE: &str = "tyre ";

/// What stands before a further position of a stage.
const ALSO: &str = ", also ";

/// Whether a line opens as what is said of a set does.
pub(super) fn says_facts(line: &str) -> bool {
    let mut openings = [SPREAD, WIDEST, FINAL_DRIVE, TYRE].into_iter();
    openings.any(|opening| {
        let rest = line.strip_prefix(opening);
        rest.is_some_and(|rest| rest.starts_with(|c: char| c.is_ascii_alphanumeric()))
    }) && line.contains(|c: char| c.is_ascii_digit())
}

impl Facts {
    /// The phrases of a line, one after another.
    pub(super) fn of(line: &str) -> Self {
        let mut facts = Self::default();
        if line.chars().nth(MOST_CHARACTERS).is_some() {
            facts.unread.push(line.to_owned());
            return facts;
        }
        let mut rest = line.trim();
        while !rest.is_empty() {
            let behind = behind_widest(rest).or_else(|| facts.take_stage(rest));
            rest = behind.unwrap_or_else(|| facts.take_phrase(rest));
        }
        facts
    }

    /// Takes a phrase that ends at the next mark between phrases; what stands behind it.
    fn take_phrase<'a>(&mut self, text: &'a str) -> &'a str {
        let (phrase, behind) = phrase_of(text);
        if self.take(phrase).is_none() {
            self.unread.push(phrase.to_owned());
        }
        behind
    }

    fn take(&mut self, phrase: &str) -> Option<()> {
        if let Some(spread) = phrase.strip_prefix(SPREAD) {
            // It follows from the gears.
            parse_decimal(spread).ok()?;
        } else if let Some(finals) = phrase.strip_prefix(FINAL_DRIVE) {
            let finals: Option<Vec<FinalDrive>> = finals.split(" and ").map(drive).collect();
            self.final_drives = finals?;
        } else {
            self.tyre = Some(tyre(phrase.strip_prefix(TYRE)?)?);
        }
        Some(())
    }

    /// Takes a stage with the position that it stands in, or one that has none but that.
    fn take_stage<'a>(&mut self, text: &'a str) -> Option<&'a str> {
        if says_facts(text) && !text.starts_with(WIDEST) {
            // A stage of such a name stands in quotation marks, but older texts know no widest drop.
            return None;
        }
        self.take_positioned(text).or_else(|| self.take_fixed(text))
    }

    /// Takes a stage that is called by its name alone, `primary drive 1.921` or
    /// `primary drive 73 driven by 38 = 1.921`.
    fn take_fixed<'a>(&mut self, text: &'a str) -> Option<&'a str> {
        let (name, ratio, behind) = if text.starts_with('"') {
            let (name, rest) = name_before(" ", text)?;
            let (ratio, behind) = phrase_of(rest);
            (name, printed(ratio)?, behind)
        } else {
            let (phrase, behind) = phrase_of(text);
            let blanks = phrase.match_indices(' ').map(|(at, _)| at);
            let mut named = blanks.map(|at| (&phrase[..at], &phrase[at + 1..]));
            let (name, ratio) = named.find_map(|(name, ratio)| Some((name, printed(ratio)?)))?;
            (name.to_owned(), ratio, behind)
        };
        self.stages.push(Stage {
            name: Name::new(&name).ok()?,
            positions: vec![Position {
                name: Name::new(Position::FIXED).ok()?,
                ratio,
            }],
            present: 0,
            acts_on: ActsOn::EveryGear,
            shows_others: false,
        });
        Some(behind)
    }

    /// Takes a stage with the position that it stands in, then those that are shown beside it:
    /// `box in high = 1.150, also low = 2.360`.
    fn take_positioned<'a>(&mut self, text: &'a str) -> Option<&'a str> {
        let (name, rest) = name_before(" in ", text)?;
        let (present, mut rest) = position(rest)?;
        let mut positions = vec![present];
        while let Some(further) = rest.strip_prefix(ALSO) {
            let (position, behind) = position(further)?;
            positions.push(position);
            rest = behind;
        }
        let (between, behind) = phrase_of(rest);
        let name = Name::new(&name).ok().filter(|_| between.is_empty())?;
        self.stages.push(Stage {
            name,
            shows_others: positions.len() > 1,
            positions,
            present: 0,
            acts_on: ActsOn::EveryGear,
        });
        Some(behind)
    }
}

/// What stands behind the widest drop, `widest 1→2, 46 %`, where a text opens with it: it follows from the
/// gears.
fn behind_widest(text: &str) -> Option<&str> {
    let (_, rest) = name_before("→", text.strip_prefix(WIDEST)?)?;
    let (_, rest) = name_before(", ", rest)?;
    let (share, rest) = rest.split_once(" %")?;
    parse_decimal(share).ok()?;
    let behind = rest
        .strip_prefix([';', ','])
        .or_else(|| rest.is_empty().then_some(rest));
    behind.map(str::trim_start)
}

/// A position with its ratio, and what stands behind it.
fn position(text: &str) -> Option<(Position, &str)> {
    let (name, rest) = name_before(" = ", text)?;
    let end = rest.find([',', ';']);
    let (ratio, behind) = rest.split_at(end.unwrap_or(rest.len()));
    let position = Position {
        name: Name::new(&name).ok()?,
        ratio: reading(ratio)?,
    };
    Some((position, behind))
}

/// A phrase, and what stands behind the mark that parts it from the next.
fn phrase_of(text: &str) -> (&str, &str) {
    let marks = ["; ", ", spread ", ", widest ", ", final drive ", ", tyre "];
    let ends = marks.iter().filter_map(|mark| text.find(mark));
    match ends.min() {
        Some(end) => (&text[..end], text[end + 1..].trim_start()),
        None => (text, ""),
    }
}

/// A name and what stands behind the mark after it; in quotation marks where the name holds the mark.
fn name_before<'a>(mark: &str, text: &'a str) -> Option<(String, &'a str)> {
    let Some(quoted) = text.strip_prefix('"') else {
        let (name, behind) = text.split_once(mark)?;
        // Names end before the next phrase.
        return (!name.contains("; ")).then(|| (name.to_owned(), behind));
    };
    let mut name = String::new();
    let mut letters = quoted.char_indices().peekable();
    while let Some((at, letter)) = letters.next() {
        if letter != '"' {
            name.push(letter);
        } else if letters.next_if(|(_, next)| *next == '"').is_some() {
            name.push('"');
        } else {
            let behind = quoted[at + 1..].strip_prefix(mark)?;
            return Some((name, behind));
        }
    }
    None
}

/// A final drive as it was understood.
fn drive(text: &str) -> Option<FinalDrive> {
    match text.split_once(" = ").unwrap_or((text, "")) {
        (chain, _) if chain.starts_with("chain ") => Some(parse_chain(chain).ok()??.into()),
        _ => reading(text).map(FinalDrive::Gears),
    }
}

/// A ratio as it was understood: `34 driven by 9 × 1.5 = 5.667`, or its number.
fn reading(text: &str) -> Option<Ratio> {
    let Some((factors, _)) = text.split_once(" = ") else {
        return number(text);
    };
    let factors: Option<Vec<Factor>> = factors.split(" × ").map(factor).collect();
    Ratio::from_factors(factors?).ok()
}

/// A ratio that stands there as it is printed. Another's remark may end with a number, though hardly with
/// one that is printed like this.
fn printed(text: &str) -> Option<Ratio> {
    let ratio = reading(text)?;
    let is_number = !text.contains(' ') && ratio_text(ratio.value()) == text;
    (is_number || ratio.reading() == text).then_some(ratio)
}

fn factor(text: &str) -> Option<Factor> {
    match text.split_once(" driven by ") {
        Some((driven, driving)) => {
            let pair = ToothPair::new(driven.parse().ok()?, driving.parse().ok()?);
            Some(Factor::Teeth(pair.ok()?))
        }
        None => parse_decimal(text).ok().map(Factor::Number),
    }
}

/// A ratio from the number that it was rounded to.
fn number(text: &str) -> Option<Ratio> {
    Ratio::from_number(parse_decimal(text).ok()?).ok()
}

/// A tyre with how far it rolls: by its name, else by that.
fn tyre(text: &str) -> Option<Tyre> {
    let Some((name, rolls)) = text.rsplit_once(", rolls ") else {
        return parse_tyre(text).ok();
    };
    parse_tyre(name).ok().or_else(|| {
        let mm = parse_decimal(rolls.strip_suffix(" mm a turn")?).ok()?;
        let circumference = RollingCircumference::from_mm(mm).ok()?;
        Some(Tyre::RollingCircumference(circumference))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_phrases_are_read_in_any_order_and_with_commas_between() {
        let facts =
            Facts::of("final drive 73 driven by 15 = 4.867, tyre 215/65 R 16 C, spread 5.03");
        assert_eq!(facts.final_drives[0].to_string(), "73:15");
        assert_eq!(facts.tyre.unwrap().to_string(), "215/65 R 16 C");
        assert_eq!(facts.unread, Vec::<String>::new());
    }

    #[test]
    fn a_stage_is_told_from_the_other_phrases_whatever_it_is_called() {
        let facts = Facts::of(
            "spread 3.21; final drive 4.100 and 3.900; box in low = 2.420; \
             \"tyre in \"\"x\"\"; y\" in \"a; b\" = 1.000; tyre 165/70 R 14, rolls 1793 mm a turn",
        );
        let names: Vec<&str> = facts.stages.iter().map(|s| s.name.as_str()).collect();
        assert_eq!(names, ["box", "tyre in \"x\"; y"]);
        assert_eq!(facts.stages[1].positions[0].name.as_str(), "a; b");
        assert_eq!(facts.final_drives.len(), 2);
        assert!(facts.tyre.is_some() && facts.unread.is_empty());
    }

    #[test]
    fn the_positions_that_are_shown_follow_the_present_one() {
        let facts = Facts::of(
            "box in high = 1.150, also \"a = b\" = 2.360, also c, also d = 1.000; \
             tyre 165/70 R 14, rolls 1793 mm a turn",
        );
        let stage = &facts.stages[0];
        let names: Vec<&str> = stage.positions.iter().map(|p| p.name.as_str()).collect();
        assert_eq!(names, ["high", "a = b", "c, also d"]);
        assert!(stage.shows_others && facts.unread.is_empty());
    }

    #[test]
    fn a_stage_without_positions_is_known_by_its_name_and_ratio() {
        let facts = Facts::of(
            "spread 2.36; Primary drive 1.921; \"box in the \"\"tunnel\"\"\" 0.800; chain 2.500, tyre \
             165/70 R 14",
        );
        let said = |stage: &Stage| {
            assert!(stage.is_fixed());
            format!("{} {}", stage.name, stage.positions[0].ratio)
        };
        let said: Vec<String> = facts.stages.iter().map(said).collect();
        let tunnel = "box in the \"tunnel\" 0.8";
        assert_eq!(said, ["Primary drive 1.921", tunnel, "chain 2.5"]);
        assert!(facts.tyre.is_some() && facts.unread.is_empty());
        for phrase in ["weighs 900", "drop 0.5", "Primary drive", "1.921"] {
            assert_eq!(Facts::of(phrase).unread, [phrase]);
        }
    }

    #[test]
    fn the_teeth_of_a_stage_are_read_whatever_it_is_called() {
        let facts = Facts::of(
            "spread 2.36; Primary drive 73 driven by 38 = 1.921; Mark 2 44 driven by 29 × 1.5 = 2.276; \
             \"a 1 ×\" 73 driven by 38 = 1.921; box in High = 1.150, also Low = 59 driven by 25 = 2.360; \
             tyre 165/70 R 14",
        );
        let said = facts.stages.iter().map(|stage| {
            let ratios = stage.positions.iter().map(|p| p.ratio.to_string());
            format!("{}: {}", stage.name, ratios.collect::<Vec<_>>().join(", "))
        });
        let said: Vec<String> = said.collect();
        let expected = [
            "Primary drive: 73:38",
            "Mark 2: 44:29 × 1.5",
            "a 1 ×: 73:38",
            "box: 1.15, 59:25",
        ];
        assert_eq!(said, expected);
        assert!(facts.tyre.is_some() && facts.unread.is_empty());
        assert_eq!(Facts::of("wheel 73 driven by 38 = 2").unread.len(), 1);
    }

    #[test]
    fn the_widest_drop_is_passed_over_whatever_the_gears_are_called() {
        for widest in [
            "widest 1→2, 46 %",
            "widest Ⅰ→Ⅱ, 0 %",
            "widest \"→ \"\", \"→\"; 5 %\", 100 %",
        ] {
            for text in [
                format!("spread 3.21; {widest}; widest gear 1.921; tyre 165/70 R 14"),
                format!("{widest}, tyre 165/70 R 14; widest gear 1.921"),
                format!("tyre 165/70 R 14, spread 3.21; widest gear 1.921; {widest}"),
            ] {
                let facts = Facts::of(&text);
                assert_eq!(facts.unread, Vec::<String>::new(), "{text}");
                assert!(facts.tyre.is_some(), "{text}");
                assert_eq!(facts.stages[0].name.as_str(), "widest gear", "{text}");
            }
        }
    }

    #[test]
    fn what_is_no_phrase_is_told() {
        let facts = Facts::of("spread 3.21; painted red; final drive x");
        assert_eq!(facts.unread, ["painted red", "final drive x"]);
    }

    #[test]
    fn the_head_is_read_whole_or_not_at_all() {
        let head = Head::of("redline 6500 rpm; idle 800 rpm; baseline set 2 of 3").unwrap();
        assert_eq!(head.redline.unwrap().rpm().to_bits(), 6500_f64.to_bits());
        assert_eq!((head.baseline, head.sets), (Some(2), Some(3)));
        for line in [
            "redline",
            "redline 6500",
            "limit 6500 rpm",
            "redline 0 rpm",
            "",
        ] {
            assert!(Head::of(line).is_none(), "{line}");
        }
    }
}
