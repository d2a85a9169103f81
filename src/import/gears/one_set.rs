//! One gear set, read from the tokens of a text or of a part of it.

use super::kinds::{self, Declared};
use super::remarks::Remarks;
use super::stages::{self, Stages};
use super::tokens::Token;
use super::{FigureKind, PasteError, PastedSet};
use super::{assembling, labels, pieces, reader, sorting, surroundings};

/// The set in `tokens`: its figures are gear ratios, or what the text says that they are where it
/// gives no gear ratios.
pub(super) fn read(
    name: Option<String>,
    tokens: &[Token],
    remarks: &Remarks,
) -> Result<PastedSet, PasteError> {
    let (tokens, stages) = stages::taken(tokens);
    let declared = Declared::of(&tokens);
    let read_as = |tokens: &[Token], kind| read_as(tokens, kind, &stages, remarks.clone());
    let as_ratios = read_as(&tokens, FigureKind::GearRatio);
    let has_gears = as_ratios.as_ref().is_ok_and(|set| set.gears.len() > 1);
    let is_settled = has_gears || !is_without_gears(&as_ratios);
    let otherwise = declared.readings(&tokens).into_iter();
    let otherwise = otherwise
        .filter_map(|(kind, tokens)| read_as(&tokens, kind).ok())
        .filter(|set| !is_settled || declared.is_headed(set))
        .find(|set| set.gears.len() > 1);
    let mut set = match otherwise {
        Some(set) => set,
        None => kinds::recognised(as_ratios?, &declared),
    };
    set.name = name;
    Ok(set)
}

/// Whether no gear, or a single one that may be something else, was found.
fn is_without_gears(reading: &Result<PastedSet, PasteError>) -> bool {
    match reading {
        Ok(set) => set.gears.len() < 2,
        Err(PasteError::NoGears | PasteError::NoForwardGears { .. }) => true,
        Err(_) => false,
    }
}

fn read_as(
    tokens: &[Token],
    kind: FigureKind,
    stages: &Stages,
    mut remarks: Remarks,
) -> Result<PastedSet, PasteError> {
    for (text, why) in &stages.left_out {
        remarks.left_out(text, *why);
    }
    for sentence in &stages.remarks {
        remarks.say(sentence.clone());
    }
    let mut lines: Vec<pieces::Line> = reader::lines(tokens, &mut remarks)
        .into_iter()
        .map(|line| labels::with_gear_lists(surroundings::with_brackets_opened(line)))
        .collect();
    surroundings::leave_out_columns(&mut lines, &mut remarks);
    labels::number_gears(&mut lines);
    for line in &mut lines {
        *line = surroundings::without_brackets(std::mem::take(line), &mut remarks);
        surroundings::leave_out_in_line(line, &mut remarks);
    }
    surroundings::name_final_behind_reverse(&mut lines, &mut remarks);
    let mut sorted = sorting::sorted(labels::rows(lines), kind, &mut remarks);
    sorted.stages.clone_from(&stages.boxes);
    sorted.take_chain(stages, &mut remarks);
    assembling::assembled(sorted, kind, remarks)
}
