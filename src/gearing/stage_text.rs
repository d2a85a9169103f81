//! The spelling of all further stages of a set on one line, and its reader.
//!
//! `transfer box: (high = 1.21) / [low = 2.42] + chain: [fitted = 43:17]`: each with its positions, in
//! square brackets the one it stands in, in round ones those that are shown beside it. Within a name, a
//! sign that means something here has a `\` before it. Which gears a stage acts on is told elsewhere.

use super::gear_set::{ActsOn, Position, Stage};
use super::ratio::parse_ratio;
use super::text::Name;
use std::iter::Peekable;
use std::str::Chars;

/// What would end a name, and what keeps it from doing so.
const MARKS: [char; 9] = ['\\', ':', '=', '/', '[', ']', '(', ')', '+'];

/// All stages of a set with their positions; empty where there are none.
pub fn stages_text(stages: &[Stage]) -> String {
    let stage = |stage: &Stage| {
        let positions = stage.positions.iter().enumerate();
        let positions: Vec<String> = positions
            .map(|(at, position)| position_text(position, brackets(stage, at)))
            .collect();
        format!("{}: {}", escaped(&stage.name), positions.join(" / "))
    };
    let stages: Vec<String> = stages.iter().map(stage).collect();
    stages.join(" + ")
}

/// What stands around a position.
fn brackets(stage: &Stage, at: usize) -> [&'static str; 2] {
    match (at == stage.present, stage.shows_others) {
        (true, _) => ["[", "]"],
        (false, true) => ["(", ")"],
        (false, false) => ["", ""],
    }
}

fn position_text(position: &Position, [before, behind]: [&str; 2]) -> String {
    let name = escaped(&position.name);
    format!("{before}{name} = {}{behind}", position.ratio)
}

fn escaped(name: &Name) -> String {
    let mut escaped = String::new();
    for c in name.as_str().chars() {
        if MARKS.contains(&c) {
            escaped.push('\\');
        }
        escaped.push(c);
    }
    escaped
}

/// The stages that [`stages_text`] spells, each acting on every gear; `None` where the text is
/// something else.
pub fn parse_stages(text: &str) -> Option<Vec<Stage>> {
    if text.trim().is_empty() {
        return Some(Vec::new());
    }
    let mut reader = Reader(text.chars().peekable());
    let mut stages = vec![reader.stage()?];
    while reader.takes('+') {
        stages.push(reader.stage()?);
    }
    reader.is_at_end().then_some(stages)
}

/// What is still to be read.
struct Reader<'a>(Peekable<Chars<'a>>);

impl Reader<'_> {
    fn stage(&mut self) -> Option<Stage> {
        let name = self.name()?;
        if !self.takes(':') {
            return None;
        }
        let mut positions = Vec::new();
        let mut present = None;
        let mut shows_others = false;
        loop {
            let is_present = self.takes('[');
            let is_shown = !is_present && self.takes('(');
            let name = self.name()?;
            if !self.takes('=') {
                return None;
            }
            let ratio = parse_ratio(&self.until(&['/', ']', ')', '+'])).ok()?;
            if is_present {
                if !self.takes(']') {
                    return None;
                }
                present = Some(positions.len());
            }
            if is_shown && !self.takes(')') {
                return None;
            }
            shows_others |= is_shown;
            positions.push(Position {
                name,
                ratio: ratio.driven_first().clone(),
            });
            if !self.takes('/') {
                break;
            }
        }
        Some(Stage {
            name,
            positions,
            present: present?,
            acts_on: ActsOn::EveryGear,
            shows_others,
        })
    }

    fn name(&mut self) -> Option<Name> {
        Name::new(&self.until(&MARKS[1..])).ok()
    }

    /// What stands before the next of some marks.
    fn until(&mut self, marks: &[char]) -> String {
        let mut text = String::new();
        while let Some(c) = self.0.next_if(|c| !marks.contains(c)) {
            match c {
                '\\' => text.extend(self.0.next()),
                c => text.push(c),
            }
        }
        text
    }

    /// Whether the next mark is that one, which is passed then.
    fn takes(&mut self, mark: char) -> bool {
        self.skip_blanks();
        self.0.next_if_eq(&mark).is_some()
    }

    fn is_at_end(&mut self) -> bool {
        self.skip_blanks();
        self.0.peek().is_none()
    }

    fn skip_blanks(&mut self) {
        while self.0.next_if_eq(&' ').is_some() {}
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn position(name: &str, ratio: &str) -> Position {
        Position {
            name: Name::new(name).unwrap(),
            ratio: parse_ratio(ratio).unwrap().driven_first().clone(),
        }
    }

    fn stages() -> Vec<Stage> {
        let stage = |name: &str, positions: Vec<Position>, shows_others| Stage {
            name: Name::new(name).unwrap(),
            present: positions.len() - 1,
            positions,
            acts_on: ActsOn::EveryGear,
            shows_others,
        };
        let two = |name: &str| vec![position(name, "1.21"), position("low", "2.42")];
        vec![
            stage("transfer box", two("high"), false),
            stage(r"a: b/[c] + d\", vec![position("= 1]", "34:9 × 2")], false),
            stage("range (rear)", two("(high)"), true),
        ]
    }

    #[test]
    fn a_stage_is_spelled_with_all_its_positions() {
        assert_eq!(
            stages_text(&stages()[..1]),
            "transfer box: high = 1.21 / [low = 2.42]"
        );
        assert_eq!(
            stages_text(&stages()[2..]),
            r"range \(rear\): (\(high\) = 1.21) / [low = 2.42]"
        );
    }

    #[test]
    fn whatever_a_stage_is_called_it_is_read_back() {
        assert_eq!(parse_stages(&stages_text(&stages())), Some(stages()));
        assert_eq!(parse_stages(" "), Some(Vec::new()));
    }

    #[test]
    fn what_was_cut_is_no_stage() {
        let whole = stages_text(&stages()[..1]);
        let cuts = (1..whole.len()).map(|end| &whole[..end]);
        for cut in cuts.chain([
            "high = 1",
            "a: b",
            "a: [b = 1",
            "a: b = 1",
            "a: [b = x]",
            "a: (b = 1 / [c = 1]",
        ]) {
            assert_eq!(parse_stages(cut), None, "{cut}");
        }
    }
}
