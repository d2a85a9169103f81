//! Lists beneath one another, each with a name of its own above it or beginning anew at first gear.

use super::line_kinds::{LineKind, kind_of};
use super::names::{NameLine, name_line};
use super::one_set;
use super::remarks::Remarks;
use super::splitting::Part;
use super::tokens::Token;
use super::{MOST_SETS, PastedSet};

/// Fewer gears are no list of their own.
const FEWEST_GEARS: usize = 3;

/// How far the first gears of two boxes lie apart at most, as a quotient: beyond it, the further
/// list holds overall ratios or speeds of the same box.
const FURTHEST_APART: f64 = 3.0;

/// How far two ratios lie apart at most, as a part, that are the same one in teeth and in decimals.
const SAME_WITHIN: f64 = 0.01;

/// Where a list begins.
struct Head {
    /// The line of its name, or else its first.
    at: usize,
    name: Option<NameLine>,
}

/// The parts of a text that holds two or three lists beneath one another, or a single one under its
/// name.
pub(super) fn parted(lines: &[&[Token]]) -> Option<Vec<Part>> {
    let kinds: Vec<LineKind> = lines.iter().map(|line| kind_of(line)).collect();
    let heads = heads(lines, &kinds);
    let first = heads.first()?;
    if kinds[..first.at].iter().any(|kind| kind.is_gears()) {
        return None;
    }
    match heads.len() {
        1 => named_alone(lines, first).map(|part| vec![part]),
        2..=MOST_SETS => several(lines, &kinds, &heads),
        _ => None,
    }
}

/// Every name right above gears, and every paragraph without a name that begins at first gear.
fn heads(lines: &[&[Token]], kinds: &[LineKind]) -> Vec<Head> {
    let gears_behind = |from: usize, skips: fn(LineKind) -> bool| {
        let rest = kinds.get(from..).unwrap_or_default();
        rest.iter().find(|kind| !skips(**kind)).copied()
    };
    let mut heads: Vec<Head> = Vec::new();
    let mut is_named = false;
    for (at, kind) in kinds.iter().enumerate() {
        let is_start = at == 0 || kinds[at - 1] == LineKind::Blank;
        match kind {
            LineKind::Other => {
                let skips = |kind: LineKind| kind == LineKind::Blank || kind.goes_with_gears();
                let is_above = gears_behind(at + 1, skips).is_some_and(LineKind::is_gears);
                let name = name_line(lines[at]).filter(|_| is_above);
                is_named = name.is_some();
                heads.extend(name.map(|name| Head {
                    at,
                    name: Some(name),
                }));
            }
            LineKind::Attendant | LineKind::FinalDrive | LineKind::Gears { .. }
                if is_start && !is_named =>
            {
                let begins = gears_behind(at, LineKind::goes_with_gears);
                if begins
                    == Some(LineKind::Gears {
                        is_from_first: true,
                    })
                {
                    heads.push(Head { at, name: None });
                }
            }
            LineKind::Attendant
            | LineKind::FinalDrive
            | LineKind::Blank
            | LineKind::Gears { .. } => {}
        }
        is_named &= !kind.is_gears();
    }
    heads
}

/// The whole text under the name that stands above its only list.
fn named_alone(lines: &[&[Token]], head: &Head) -> Option<Part> {
    let name = head.name.as_ref().filter(|name| name.is_telling)?;
    Some(Part {
        name: Some(name.name.clone()),
        tokens: [&lines[..head.at], &lines[head.at + 1..]].concat().concat(),
    })
}

fn several(lines: &[&[Token]], kinds: &[LineKind], heads: &[Head]) -> Option<Vec<Part>> {
    let ends = heads.iter().skip(1).map(|head| head.at);
    let mut blocks: Vec<(usize, usize)> = heads
        .iter()
        .zip(ends.chain([lines.len()]))
        .map(|(head, end)| (head.at + usize::from(head.name.is_some()), end))
        .collect();
    let common_from = common_from(kinds, &blocks);
    if let Some((_, end)) = blocks.last_mut() {
        *end = common_from;
    }
    let outside: Vec<usize> = (0..heads[0].at).chain(common_from..lines.len()).collect();
    let has_final = |(from, to): &(usize, usize)| kinds[*from..*to].contains(&LineKind::FinalDrive);
    let have_all = blocks.iter().all(has_final);
    let parts = heads.iter().zip(&blocks).map(|(head, block)| {
        // The final drive for all of them is that of those that say none.
        let is_own = has_final(block) && !have_all;
        let is_kept = |at: &&usize| !(is_own && kinds[**at] == LineKind::FinalDrive);
        let (before, behind): (Vec<usize>, Vec<usize>) = outside
            .iter()
            .filter(is_kept)
            .partition(|at| **at < block.0);
        let order = before.into_iter().chain(block.0..block.1).chain(behind);
        Part {
            name: head.name.as_ref().map(|name| name.name.clone()),
            tokens: order.flat_map(|at| lines[at].iter().cloned()).collect(),
        }
    });
    let parts: Vec<Part> = parts.collect();
    are_of_their_own(&parts).then_some(parts)
}

/// Where what stands behind the last list begins, if it is said of all lists.
fn common_from(kinds: &[LineKind], blocks: &[(usize, usize)]) -> usize {
    let end = kinds.len();
    let Some(((from, _), others)) = blocks.split_last() else {
        return end;
    };
    let last_gear = kinds.iter().rposition(|kind| kind.is_gears());
    let behind = last_gear.map_or(end, |at| at + 1).max(*from);
    let is_blank = |kind: &LineKind| *kind == LineKind::Blank;
    let have_finals = others
        .iter()
        .any(|(from, to)| kinds[*from..*to].contains(&LineKind::FinalDrive));
    if have_finals {
        return end;
    }
    // Without a blank line between the lists, what ends the text stands as near to each of them.
    let are_parted = others
        .iter()
        .any(|(from, to)| kinds[*from..*to].iter().any(is_blank));
    let blank = kinds[behind..].iter().position(is_blank);
    match (are_parted, blank) {
        (true, blank) => blank.map_or(end, |at| behind + at),
        (false, _) => behind,
    }
}

/// Whether every part is a gear set, and not the first one again in other figures.
fn are_of_their_own(parts: &[Part]) -> bool {
    let read = |part: &Part| one_set::read(None, &part.tokens, &Remarks::default()).ok();
    let Some(sets) = parts.iter().map(read).collect::<Option<Vec<PastedSet>>>() else {
        return false;
    };
    let figures: Vec<Vec<f64>> = sets.iter().map(figures).collect();
    let are_named = parts.iter().any(|part| part.name.is_some());
    let is_like_first = |(set, values): (&PastedSet, &Vec<f64>)| {
        let quotient = |at: usize| Some(values.get(at)? / figures[0].get(at)?);
        let is_near =
            quotient(0).is_some_and(|q| (1.0 / FURTHEST_APART..=FURTHEST_APART).contains(&q));
        set.kind == sets[0].kind
            && is_near
            && values.len() >= FEWEST_GEARS
            && (values.first() > values.last()) == (figures[0].first() > figures[0].last())
    };
    let is_again = |values: &Vec<f64>| {
        let mut pairs = values.iter().zip(&figures[0]);
        pairs.all(|(value, first)| (value / first - 1.0).abs() < SAME_WITHIN)
    };
    sets.iter().zip(&figures).all(is_like_first)
        && (are_named || !figures.iter().skip(1).any(is_again))
}

/// What a set says of its gears, without crawlers.
fn figures(set: &PastedSet) -> Vec<f64> {
    let (figures, _, _) = set.figures();
    let gears = set.gears.iter().zip(figures);
    let shifted = gears.filter(|(gear, _)| !gear.is_crawler);
    shifted.map(|(_, figure)| figure.value()).collect()
}
