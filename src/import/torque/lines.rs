//! The lines of a text, and where cells end on each: a tab stands for whatever parts them.

use crate::import::plain::plain;

/// The tags of a forum's markup that say nothing here.
const TAGS: [&str; 16] = [
    "b", "i", "u", "s", "code", "quote", "table", "size", "color", "font", "center", "list", "url",
    "spoiler", "indent", "pre",
];

/// The lines of `text` that are not blank, in one kind of character and without markup.
pub(super) fn lines(text: &str) -> Vec<String> {
    let plain = without_tags(&plain(&text.replace('…', "...")));
    let lines = plain.lines().map(|line| without_number(line.trim()));
    let lines = lines.flat_map(|line| pairs(line).unwrap_or_else(|| vec![line]));
    lines
        .filter(|line| !line.is_empty())
        .map(str::to_owned)
        .collect()
}

/// The points of a line that are parted by commas or semicolons, each of two bare figures at rising engine
/// speeds: `1250 170, 1500 245`. None where it is no such line.
fn pairs(line: &str) -> Option<Vec<&str>> {
    let points: Vec<&str> = line.split([',', ';']).map(str::trim).collect();
    let number = |word: Option<&str>| word.and_then(|word| word.parse::<f64>().ok());
    let speeds = points.iter().map(|point| {
        let mut words = point.split_whitespace();
        let (speed, torque) = (number(words.next())?, number(words.next())?);
        (torque.is_finite() && words.next().is_none()).then_some(speed)
    });
    let speeds: Vec<f64> = speeds.collect::<Option<_>>()?;
    let is_rising = speeds.windows(2).all(|pair| pair[0] < pair[1]);
    (points.len() > 1 && is_rising).then_some(points)
}

/// A line without the number that it has in a list: `1)`, `1.`
fn without_number(line: &str) -> &str {
    let digits = line.bytes().take_while(u8::is_ascii_digit).count();
    let behind = line[digits..].strip_prefix([')', '.']);
    let rest = behind.filter(|rest| (1..=3).contains(&digits) && rest.starts_with(' '));
    rest.map_or(line, str::trim_start)
}

/// `text` with a line for each row of a table in a forum's markup and a pipe behind each cell.
fn without_tags(text: &str) -> String {
    let mut kept = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(begin) = rest.find('[') {
        let (before, from) = rest.split_at(begin);
        kept.push_str(before);
        // A bracket further on belongs to something else.
        let end = from.char_indices().take(40).find(|(_, c)| *c == ']');
        let stands_for = end.and_then(|(end, _)| Some((end, tag(&from[1..end])?)));
        rest = if let Some((end, stands_for)) = stands_for {
            kept.push_str(stands_for);
            &from[end + 1..]
        } else {
            kept.push('[');
            &from[1..]
        };
    }
    kept.push_str(rest);
    kept
}

/// What stands in the place of a tag, where it is one.
fn tag(inside: &str) -> Option<&'static str> {
    let name = inside.strip_prefix('/').unwrap_or(inside);
    let name = name.split(['=', ' ']).next().unwrap_or_default();
    let name = name.to_ascii_lowercase();
    match (name.as_str(), inside.starts_with('/')) {
        ("tr", _) => Some("\n"),
        ("td" | "th", true) => Some("|"),
        ("td" | "th", false) => Some(""),
        (name, _) => TAGS.contains(&name).then_some(""),
    }
}

/// Whether cells of a line are parted by something that parts nothing else.
pub(super) fn has_hard_breaks(line: &str) -> bool {
    line.contains(['|', '\t', ';'])
}

/// The line with a tab wherever a cell ends, and without quotation marks.
///
/// `commas_part` says that the heading is parted by commas, so that those of a row are as well.
pub(super) fn with_breaks(line: &str, commas_part: bool) -> String {
    if has_hard_breaks(line) {
        let line = line.trim_matches(|c: char| c == '|' || c.is_whitespace());
        return line.replace(['|', ';'], "\t").replace(is_quotation, "");
    }
    let characters: Vec<char> = line.chars().collect();
    let runs = runs(&characters);
    let are_pairs = are_pairs(&characters, &runs);
    let is_alone = runs.len() == 1;
    let mut within = runs.iter().peekable();
    let mut parting = Parting::All;
    let mut parted = String::with_capacity(line.len());
    let mut is_quoted = false;
    for (at, c) in characters.iter().copied().enumerate() {
        if let Some(run) = within.next_if(|run| run.begin == at) {
            parting = if are_pairs || commas_part {
                Parting::All
            } else {
                run.parting(&characters, is_alone)
            };
        }
        let is_within = at > 0
            && characters[at - 1].is_ascii_digit()
            && characters.get(at + 1).is_some_and(char::is_ascii_digit);
        match c {
            c if is_quotation(c) => is_quoted = !is_quoted,
            ',' if is_quoted || (is_within && !parting.is_at(at)) => parted.push(','),
            ',' => parted.push('\t'),
            ' ' if are_pairs && parted.ends_with(is_digit) => parted.push('\t'),
            c => parted.push(c),
        }
    }
    parted
}

/// Which commas of a run part cells; the others belong to numbers.
#[derive(Clone, Copy)]
enum Parting {
    None,
    All,
    /// The one at that place of the line.
    At(usize),
}

impl Parting {
    fn is_at(self, place: usize) -> bool {
        match self {
            Self::None => false,
            Self::All => true,
            Self::At(at) => at == place,
        }
    }
}

fn is_digit(c: char) -> bool {
    c.is_ascii_digit()
}

fn is_quotation(c: char) -> bool {
    matches!(c, '"' | '“' | '”' | '„')
}

/// Digits and marks that hang together.
struct Run {
    begin: usize,
    end: usize,
    text: String,
}

/// The runs of a line in which a comma stands between digits, and those that are whole numbers.
fn runs(characters: &[char]) -> Vec<Run> {
    let belongs = |c: char| c.is_ascii_digit() || matches!(c, '.' | ',');
    let mut runs: Vec<Run> = Vec::new();
    for (at, c) in characters.iter().copied().enumerate() {
        let next_is_digit = characters.get(at + 1).is_some_and(char::is_ascii_digit);
        match runs.last_mut().filter(|run| run.end == at) {
            Some(run) if belongs(c) && (c.is_ascii_digit() || next_is_digit) => {
                run.text.push(c);
                run.end += 1;
            }
            _ if c.is_ascii_digit() => runs.push(Run {
                begin: at,
                end: at + 1,
                text: c.to_string(),
            }),
            _ => {}
        }
    }
    runs
}

/// Whether each run of a line is an engine speed and an output: `1000,120 1500,130`.
fn are_pairs(characters: &[char], runs: &[Run]) -> bool {
    let speeds: Option<Vec<u32>> = runs
        .iter()
        .map(|run| match run.text.split_once(',')? {
            (speed, output) if !output.contains(',') => speed.parse().ok(),
            _ => None,
        })
        .collect();
    let is_bare = characters.iter().all(|c| !c.is_alphabetic() && *c != ':');
    is_bare
        && speeds.is_some_and(|speeds| {
            speeds.len() > 1 && speeds[0] >= 100 && speeds.windows(2).all(|pair| pair[0] < pair[1])
        })
}

impl Run {
    fn parting(&self, line: &[char], is_alone: bool) -> Parting {
        let is_colon = |at: Option<usize>| at.and_then(|at| line.get(at)) == Some(&':');
        let Some(last) = self.text.rfind(',') else {
            return Parting::None;
        };
        let has_one = self.text.find(',') == Some(last);
        if is_colon(self.begin.checked_sub(1)) && is_colon(Some(self.end)) {
            // Before a colon stands the engine speed of the next point.
            return Parting::At(self.begin + last);
        }
        let could_part = is_alone || self.text.contains('.');
        let is_number = is_grouped(&self.text) || is_german(&self.text);
        if has_one && (is_number || !could_part) {
            Parting::None
        } else {
            Parting::All
        }
    }
}

/// Whether a comma parts the thousands of an engine speed or of a torque: `6,500`, `1,120.5`.
fn is_grouped(run: &str) -> bool {
    let Some((thousands, rest)) = run.split_once(',') else {
        return false;
    };
    let whole = rest.split('.').next().unwrap_or_default();
    // No engine turns faster than 30000.
    (1..=2).contains(&thousands.len()) && whole.len() == 3 && !thousands.contains('.')
}

/// Whether a point parts thousands and a comma decimals: `1.250,5`.
fn is_german(run: &str) -> bool {
    let whole = run.split(',').next().unwrap_or_default();
    whole
        .split_once('.')
        .is_some_and(|(thousands, rest)| (1..=2).contains(&thousands.len()) && rest.len() == 3)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cells_end_where_people_part_them() {
        for (line, commas_part, wanted) in [
            ("| 1000 | 120 |", false, "1000 \t 120"),
            ("1000;120,5", false, "1000\t120,5"),
            ("1000,120", false, "1000\t120"),
            ("1000,120.5", false, "1000\t120.5"),
            ("900,120.5,12", false, "900\t120.5\t12"),
            ("1000, 120", false, "1000\t 120"),
            ("1000 120,5", false, "1000 120,5"),
            ("6,500 120", false, "6,500 120"),
            ("6,500", false, "6,500"),
            ("1000,120 1500,130", false, "1000\t120\t1500\t130"),
            ("3000,5 120,4", false, "3000,5 120,4"),
            ("1000:120,2000:170", false, "1000:120\t2000:170"),
            ("1000:120,5 2000:170,2", false, "1000:120,5 2000:170,2"),
            ("1,000:120", false, "1,000:120"),
            ("900,120", true, "900\t120"),
            ("\"6,500\",120", true, "6,500\t120"),
            ("1.250,5 33", false, "1.250,5 33"),
        ] {
            assert_eq!(with_breaks(line, commas_part), wanted, "{line}");
        }
    }

    #[test]
    fn a_table_in_a_forums_markup_has_its_rows_and_cells() {
        let text = "[table][tr][th]rpm[/th][th][b]Nm[/b][/th][/tr]\n[TR][td]1000[/td][td]120[/td][/TR][/table]";
        assert_eq!(lines(text), ["rpm|Nm|", "1000|120|"]);
        assert_eq!(lines("n [1/min]; M [Nm]"), ["n [1/min]; M [Nm]"]);
        assert_eq!(lines("[[[[b]"), ["[[["]);
        assert_eq!(lines("1) 1000 120\n2. 2000 170"), ["1000 120", "2000 170"]);
    }
}
