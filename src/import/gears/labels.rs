//! The labels of gears: what names a gear, and which values belong to it.
//!
//! Gears are named by words and ordinals, by ranges and lists (`1–4`, `5th & 6th`, `5, 6, R`), and
//! by bare whole numbers: `1 3.54` and a row `1 2 3 4 5` above the ratios number gears; the 4 in
//! `4 2.5 1.6 1` does not.
//! Labels stand before their value or behind it, on the line above, or all in a row above a row
//! of values. A row here is one or several labels with the values that follow them.

use super::pieces::{Amount, Line, Piece, Shape, Tag, merged};
use super::tokens::is_whole;

/// The line with its gears drawn together; those behind "for" are put in brackets: `4.12 for 1–4`.
pub(super) fn with_gear_lists(line: Line) -> Line {
    let mut drawn: Line = Vec::with_capacity(line.len());
    for piece in with_ranges(line) {
        match (&drawn[..], piece) {
            ([.., Piece::Amount(_), Piece::For], gears @ (Piece::Gears(_) | Piece::Tag(_))) => {
                drawn.pop();
                drawn.push(Piece::Bracket(vec![gears]));
            }
            (_, piece) => drawn.push(piece),
        }
    }
    drawn
}

/// The line with ranges of gears, and gears joined by "and", drawn together; brackets are not
/// looked into.
fn with_ranges(line: Line) -> Line {
    let mut joined: Line = Vec::with_capacity(line.len());
    for piece in line {
        joined.push(piece);
        if let Some(gears) = range_at_end(&joined).or_else(|| pair_at_end(&joined)) {
            joined.truncate(joined.len() - 3);
            joined.push(Piece::Gears(gears));
        }
    }
    joined
}

/// `1–4` and `1st to 4th`. Of `1-2-3` the first two are no range.
fn range_at_end(line: &[Piece]) -> Option<Vec<Tag>> {
    let [before @ .., first, Piece::Dash | Piece::To, last] = line else {
        return None;
    };
    let is_chain = matches!(before.last(), Some(Piece::Dash));
    match (gear_of(first)?, gear_of(last)?) {
        (from, to) if from < to && !is_chain => Some((from..=to).map(Tag::Gear).collect()),
        _ => None,
    }
}

/// `5th & 6th`, `5–6 and R`.
fn pair_at_end(line: &[Piece]) -> Option<Vec<Tag>> {
    let [.., first, Piece::And, last] = line else {
        return None;
    };
    if !first.is_label() || !last.is_label() {
        return None;
    }
    let mut gears = first.tags().to_vec();
    for tag in last.tags() {
        if !gears.contains(tag) {
            gears.push(*tag);
        }
    }
    let are_shafts = gears.contains(&Tag::Final);
    (!are_shafts).then_some(gears)
}

fn gear_of(piece: &Piece) -> Option<u8> {
    match piece {
        Piece::Tag(Tag::Gear(n)) => Some(*n),
        other => other.whole_gear(),
    }
}

/// The gears that a bracket lists, if it holds nothing but gears, or the one label in it.
pub(super) fn listed(bracket: &[Piece]) -> Option<Vec<Tag>> {
    if let [Piece::Tag(tag)] = bracket {
        return Some(vec![*tag]);
    }
    let mut gears = Vec::new();
    for piece in with_ranges(bracket.to_vec()) {
        match piece {
            Piece::Tag(Tag::Final) => return None,
            Piece::Tag(tag) => gears.push(tag),
            Piece::Gears(more) => gears.extend(more),
            Piece::Amount(amount) => match amount.gear() {
                Some(n) => gears.push(Tag::Gear(n)),
                None => gears.extend(comma_list(&amount.text)?),
            },
            Piece::Break(_) | Piece::And | Piece::Dash | Piece::Unknown => {}
            _ => return None,
        }
    }
    (!gears.is_empty()).then_some(gears)
}

/// `5,6`, which elsewhere is a number, and `5/6`, which elsewhere is a tooth pair.
fn comma_list(text: &str) -> Option<Vec<Tag>> {
    let (first, second) = text.split_once([',', '/'])?;
    let gears = [Tag::gear(first)?, Tag::gear(second)?];
    let follow = is_whole(first) && gears[0].place() + 10 == gears[1].place();
    follow.then(|| gears.to_vec())
}

/// Turns the whole numbers that number gears into labels.
pub(super) fn number_gears(lines: &mut [Line]) {
    settle_to_one(lines);
    number_heads(lines);
    number_lines(lines);
}

/// In `1:3.54` above `2:1.91` the 1 is a gear's number, not "one to".
fn settle_to_one(lines: &mut [Line]) {
    let has = |n: u8| {
        let mut pieces = lines.iter().flatten();
        pieces.any(|p| matches!(p, Piece::Tag(Tag::Gear(gear)) if *gear == n))
    };
    if !has(2) || has(1) {
        return;
    }
    let is_to_one = |p: &Piece| matches!(p, Piece::Amount(a) if a.text.starts_with("1:"));
    for line in lines {
        if let Some(at) = line.iter().position(is_to_one) {
            if at > 0 && line[at - 1].is_label() {
                continue;
            }
            if let Piece::Amount(amount) = &line[at] {
                let shape = Shape::Decimal;
                let rest = Amount::new(amount.text["1:".len()..].to_owned(), shape);
                line[at] = Piece::Amount(rest);
                line.insert(at, Piece::Tag(Tag::Gear(1)));
            }
            return;
        }
    }
}

/// Numbers the gears of a head row, and of a line that holds its own head: `1/2/3: 3.5/2.1/1.4`.
fn number_heads(lines: &mut [Line]) {
    let has_ratios = |line: &Line| line.iter().any(Piece::is_broken_number);
    let last_ratios = lines.iter().rposition(has_ratios);
    for (at, line) in lines.iter_mut().enumerate() {
        let heads = counted_up(line);
        let others = line.iter().filter(|p| p.is_number()).count() - heads;
        let is_head_row = others == 0 && heads >= 2 && last_ratios > Some(at);
        let is_own_head = heads >= 3 && others >= heads;
        if is_head_row || is_own_head {
            label_first(line, heads);
        }
    }
}

/// How many whole numbers open a line and count up by one; labels may stand between.
fn counted_up(line: &[Piece]) -> usize {
    let numbers = line.iter().filter(|piece| piece.is_number());
    let mut last = None;
    let follows = |piece: &&Piece| {
        let next = piece.whole_gear();
        let is_next = match (last, next) {
            (_, None) => false,
            (None, Some(_)) => true,
            (Some(before), Some(now)) => before + 1 == now,
        };
        last = next;
        is_next
    };
    numbers.take_while(follows).count()
}

/// Labels the first `count` whole numbers of a line.
fn label_first(line: &mut Line, count: usize) {
    for piece in line.iter_mut().filter(|p| p.is_number()).take(count) {
        if let Some(n) = piece.whole_gear() {
            *piece = Piece::Tag(Tag::Gear(n));
        }
    }
}

/// Numbers the gears where whole numbers open the lines, or alternate with ratios in one.
fn number_lines(lines: &mut [Line]) {
    for line in lines.iter_mut() {
        for at in alternating(line) {
            if let Some(n) = line[at].whole_gear() {
                line[at] = Piece::Tag(Tag::Gear(n));
            }
        }
    }
    let openings: Vec<(usize, u8)> = lines
        .iter()
        .enumerate()
        .filter_map(|(at, line)| Some((at, opening(line)?)))
        .collect();
    let steps = |by: i16| {
        let follow = |pair: &[(usize, u8)]| i16::from(pair[0].1) + by == i16::from(pair[1].1);
        openings.windows(2).all(follow)
    };
    let are_numbered = match &openings[..] {
        [(at, n)] => *n == 1 || follows_a_label(lines, *at, *n),
        _ => steps(1) || steps(-1),
    };
    if are_numbered {
        for (at, _) in openings {
            label_first(&mut lines[at], 1);
        }
    }
}

/// Whether a line near `at` carries the label of a neighbouring gear.
fn follows_a_label(lines: &[Line], at: usize, number: u8) -> bool {
    let around = lines.iter().take(at + 2).skip(at.saturating_sub(1));
    around
        .flatten()
        .any(|piece| matches!(piece, Piece::Tag(Tag::Gear(n)) if n.abs_diff(number) == 1))
}

/// The whole number that opens a line of one or more further numbers and no labels.
fn opening(line: &[Piece]) -> Option<u8> {
    let mut numbers = line.iter().filter(|p| p.is_number() || p.is_label());
    let number = numbers.next()?.whole_gear()?;
    numbers.next().filter(|p| p.is_number()).map(|_| number)
}

/// Where the numbers stand that have no label before them.
fn unlabelled(line: &[Piece]) -> Vec<usize> {
    let mut has_label = false;
    let mut free = Vec::new();
    for (at, piece) in line.iter().enumerate() {
        if piece.is_number() && !has_label {
            free.push(at);
        }
        if piece.is_number() || piece.is_label() {
            has_label = piece.is_label();
        }
    }
    free
}

/// Where the gear numbers stand in a line that runs gear number, ratio, gear number, ratio, apart
/// from values with labels.
fn alternating(line: &[Piece]) -> Vec<usize> {
    let numbers = unlabelled(line);
    let mut before = None;
    let mut gears = Vec::new();
    for pair in numbers.chunks_exact(2) {
        let gear = line[pair[0]].whole_gear();
        let follows = before.is_none_or(|before: u8| gear == Some(before + 1));
        let is_ratio = line[pair[1]].is_broken_number() || !gears.is_empty();
        if gear.is_none() || !follows || !is_ratio {
            break;
        }
        before = gear;
        gears.push(pair[0]);
    }
    let is_whole_line = numbers.len() == 2 * gears.len();
    if gears.len() >= 3 || (gears.len() == 2 && is_whole_line) {
        gears
    } else {
        Vec::new()
    }
}

/// Labels and the values behind them; without labels, values of a list.
#[derive(Debug, Clone, Default)]
pub(super) struct Row {
    pub(super) tags: Vec<Tag>,
    pub(super) amounts: Vec<Amount>,
}

/// The rows of all lines. Lines hold no brackets any more.
pub(super) fn rows(lines: Vec<Line>) -> Vec<Row> {
    let mut gatherer = Gatherer::default();
    for line in lines {
        gatherer.line(forward(line));
    }
    gatherer.rows
}

#[derive(Default)]
struct Gatherer {
    rows: Vec<Row>,
    /// Labels of lines that hold nothing else, still without values.
    pending: Vec<Tag>,
}

impl Gatherer {
    fn line(&mut self, line: Line) {
        let has_labels = line.iter().any(Piece::is_label);
        let has_numbers = line.iter().any(Piece::is_number);
        if has_labels && !has_numbers {
            self.pending.extend(line.iter().flat_map(Piece::tags));
            return;
        }
        let mut rows = rows_of(line);
        if has_labels {
            self.pending.clear();
        } else if let [row] = &mut rows[..] {
            self.label_from_above(row);
        }
        self.rows.extend(rows.into_iter().flat_map(promoted));
    }

    /// Gives the values of a line without labels those of the lines above.
    fn label_from_above(&mut self, row: &mut Row) {
        let values = row.amounts.len();
        if values == self.pending.len() || (values < self.pending.len() && values == 1) {
            row.tags = self.pending.drain(..values).collect();
        } else if values > 0 {
            self.pending.clear();
        }
    }
}

/// The rows of one line, in which labels come first.
fn rows_of(line: Line) -> Vec<Row> {
    let mut rows = Vec::new();
    let mut row = Row::default();
    let mut is_answered = false;
    for piece in line {
        if is_answered && matches!(piece, Piece::Heading) {
            rows.push(std::mem::take(&mut row));
            is_answered = false;
        } else if piece.is_label() {
            if is_answered {
                rows.push(std::mem::take(&mut row));
                is_answered = false;
            }
            row.tags.extend(piece.tags());
        } else if piece.is_number() {
            is_answered = true;
            if let Piece::Amount(amount) = piece {
                row.amounts.push(amount);
            }
        }
    }
    rows.push(row);
    for row in &mut rows {
        row.amounts = merged(std::mem::take(&mut row.amounts));
    }
    rows.retain(|row| !row.amounts.is_empty());
    rows
}

/// A row without labels whose values have their gears in brackets becomes labelled rows.
fn promoted(row: Row) -> Vec<Row> {
    let has_gears = row.amounts.iter().any(|a| !a.gears.is_empty());
    if !row.tags.is_empty() || !has_gears {
        return vec![row];
    }
    let labelled = |mut amount: Amount| Row {
        tags: std::mem::take(&mut amount.gears),
        amounts: vec![amount],
    };
    row.amounts.into_iter().map(labelled).collect()
}

/// The line with labels that stand behind their value put before it.
fn forward(line: Line) -> Line {
    let line = with_final_before_its_value(line);
    let is_break = |p: &Piece| matches!(p, Piece::Break(_));
    let has_both = |clause: &[Piece]| {
        clause.iter().any(Piece::is_label) && clause.iter().any(Piece::is_number)
    };
    if !line.split(is_break).any(has_both) {
        return if is_backward(&line) {
            swapped(line)
        } else {
            line
        };
    }
    let mut forward = Vec::with_capacity(line.len());
    for clause in line.split_inclusive(is_break) {
        let clause = clause.to_vec();
        forward.extend(if is_backward(&clause) {
            swapped(clause)
        } else {
            clause
        });
    }
    forward
}

/// "3rd 1.36 and a 3.94 diff": behind two values, the last of which has no label of its own, a
/// final drive that ends the line names that one.
fn with_final_before_its_value(mut line: Line) -> Line {
    let telling = (0..line.len()).filter(|at| line[*at].is_number() || line[*at].is_label());
    let telling: Vec<usize> = telling.collect();
    if let [.., first, value, label] = telling[..]
        && matches!(line[label], Piece::Tag(Tag::Final))
        && line[first].is_number()
        && line[value].is_number()
    {
        let label = line.remove(label);
        line.insert(value, label);
    }
    line
}

/// Whether a clause opens with a value and closes with the label of one.
fn is_backward(clause: &[Piece]) -> bool {
    let mut telling = clause.iter().filter(|p| p.is_number() || p.is_label());
    let opens = telling.next().is_some_and(Piece::is_number);
    opens && telling.next_back().is_some_and(Piece::is_label)
}

/// Every label that stands behind a value changes places with it.
fn swapped(clause: Line) -> Line {
    let mut swapped: Line = Vec::with_capacity(clause.len());
    let mut free = None;
    for piece in clause {
        match free {
            Some(at) if piece.is_label() => {
                swapped.insert(at, piece);
                free = None;
            }
            _ => {
                if piece.is_number() {
                    free = Some(swapped.len());
                }
                swapped.push(piece);
            }
        }
    }
    swapped
}
