//! Points that say themselves what is what: `1000:120`, `1000 rpm 120 Nm`, `120 Nm @ 1000-2500 rpm`.

use super::figures::Element;
use super::rows::{Given, Row};
use super::words::{Output, Role};

/// What stands right before a figure.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Sign {
    None,
    At,
    Pair,
    Dash,
    Stroke,
}

/// A figure with what stands before it.
#[derive(Debug, Clone)]
struct Item {
    text: String,
    role: Option<Role>,
    sign: Sign,
}

/// The points of a line, and the figures that belong to none.
#[derive(Debug, Default)]
pub(super) struct Points {
    pub(super) rows: Vec<Row>,
    pub(super) left_out: Vec<String>,
}

/// The points that a line gives by units, labels and signs; none where it says no more than figures.
pub(super) fn points(elements: &[Element]) -> Option<Points> {
    let mut items = items(elements);
    let labels = || elements.iter().filter_map(label);
    let says_roles = items.iter().any(|item| item.role.is_some()) || labels().next().is_some();
    let is_sign = |sign: Sign| !matches!(sign, Sign::None | Sign::Stroke);
    let signs = items.iter().filter(|item| is_sign(item.sign)).count();
    let begins_with_words = elements.iter().take_while(|e| e.figure().is_none());
    let has_words_before = begins_with_words.clone().any(|e| *e == Element::Word);
    // A date with a time has a sign, too.
    if !says_roles && (signs == 0 || (has_words_before && signs < 2)) {
        return None;
    }
    if labels().any(|role| matches!(role, Role::Speed(_))) {
        find_outputs_before_strokes(&mut items);
    }
    find_ranges(&mut items);
    find_pairs(&mut items)?;
    find_the_last(&mut items);
    let unit = labels().find_map(|role| match role {
        Role::Output(output) => output.filter(|output| output.unit().is_some()),
        Role::Speed(_) | Role::Other => None,
    });
    let points = gathered(items, unit);
    (!points.rows.is_empty()).then_some(points)
}

fn label(element: &Element) -> Option<Role> {
    match element {
        Element::Label(role) => Some(*role),
        _ => None,
    }
}

fn items(elements: &[Element]) -> Vec<Item> {
    let mut sign = Sign::None;
    let mut items = Vec::new();
    for element in elements {
        match element {
            Element::Figure(figure) => {
                items.push(Item {
                    text: figure.text.clone(),
                    role: figure.role,
                    sign,
                });
                sign = Sign::None;
            }
            Element::At => sign = Sign::At,
            Element::Pair => sign = Sign::Pair,
            Element::Dash => sign = Sign::Dash,
            Element::Stroke => sign = Sign::Stroke,
            Element::Break | Element::Word | Element::Label(_) => sign = Sign::None,
        }
    }
    items
}

/// Outputs and engine speeds as a label writes them, `Nm/rpm: 320/1750`.
fn find_outputs_before_strokes(items: &mut [Item]) {
    for at in 1..items.len() {
        if items[at].sign == Sign::Stroke && items[at].role.is_none() {
            items[at].role = Some(Role::Speed(None));
            items[at - 1].role.get_or_insert(Role::Output(None));
        }
    }
}

/// Engine speeds behind "at", and both ends of ranges of them: `1750-3000 rpm`.
fn find_ranges(items: &mut [Item]) {
    for at in 0..items.len() {
        let before = at
            .checked_sub(1)
            .and_then(|before| items.get(before))
            .cloned();
        let item = &mut items[at];
        if item.sign == Sign::At && item.role.is_none() {
            item.role = Some(Role::Speed(None));
        }
        let Some(before) = before.filter(|_| item.sign == Sign::Dash) else {
            continue;
        };
        match (before.role, item.role) {
            (None, Some(role @ Role::Speed(_))) => items[at - 1].role = Some(role),
            // Behind "at" the unit stands once, at the end.
            (Some(Role::Speed(None)), Some(role @ Role::Speed(_))) => {
                items[at - 1].role = Some(role);
            }
            (Some(role @ Role::Speed(_)), None)
                if matches!(before.sign, Sign::At | Sign::Stroke) =>
            {
                item.role = Some(role);
            }
            _ => {}
        }
    }
}

/// Of two figures with a sign between them the first is the engine speed, unless one says otherwise.
///
/// None where three or more hang together, as in a time or a date.
fn find_pairs(items: &mut [Item]) -> Option<()> {
    for at in 1..items.len() {
        let is_joined = |item: &Item| matches!(item.sign, Sign::Pair | Sign::Dash);
        if !is_joined(&items[at]) {
            continue;
        }
        let is_bare = items[at].role.is_none() || items[at - 1].role.is_none();
        if is_bare && (is_joined(&items[at - 1]) || items.get(at + 1).is_some_and(is_joined)) {
            return None;
        }
        let (first, second) = match (items[at - 1].role, items[at].role) {
            (None, None) => (Role::Speed(None), Role::Output(None)),
            (None, Some(role @ Role::Output(_))) => (Role::Speed(None), role),
            (None, Some(role @ Role::Speed(_))) => (Role::Output(None), role),
            (Some(role @ Role::Output(_)), None) => (role, Role::Speed(None)),
            (Some(role @ Role::Speed(_)), None) => (role, Role::Output(None)),
            (Some(Role::Other), _) | (_, Some(Role::Other)) | (Some(_), Some(_)) => continue,
        };
        items[at - 1].role = Some(first);
        items[at].role = Some(second);
    }
    Some(())
}

/// The one figure without a role where an engine speed or an output is missing.
fn find_the_last(items: &mut [Item]) {
    let has_speed = items.iter().any(|i| matches!(i.role, Some(Role::Speed(_))));
    let has_output = items
        .iter()
        .any(|i| matches!(i.role, Some(Role::Output(_))));
    let missing = match (has_speed, has_output) {
        (true, false) => Role::Output(None),
        (false, true) => Role::Speed(None),
        (true, true) | (false, false) => return,
    };
    let mut bare = items.iter_mut().filter(|item| item.role.is_none());
    if let (Some(item), None) = (bare.next(), bare.next()) {
        item.role = Some(missing);
    }
}

/// Engine speeds and outputs gathered to points, in the order that the line begins with.
fn gathered(items: Vec<Item>, unit: Option<Output>) -> Points {
    let is_speed = |item: &Item| matches!(item.role, Some(Role::Speed(_)));
    let is_output = |item: &Item| matches!(item.role, Some(Role::Output(_)));
    let ends_with_speed = items
        .windows(2)
        .any(|two| is_output(&two[0]) && is_speed(&two[1]) && two[1].sign == Sign::At);
    let first = items.iter().find(|item| is_speed(item) || is_output(item));
    let begins_with_at = first.is_some_and(|item| item.sign == Sign::At);
    let speed_first = first.is_some_and(is_speed) && (begins_with_at || !ends_with_speed);
    let mut points = Points::default();
    let (mut speeds, mut outputs): (Vec<Item>, Vec<Item>) = (Vec::new(), Vec::new());
    for item in items {
        let is_range = item.sign == Sign::Dash && !speeds.is_empty();
        if is_speed(&item) {
            let begins = speed_first && !is_range;
            let is_second = !speed_first && !speeds.is_empty() && !is_range;
            if begins || is_second {
                points.flush(&mut speeds, &mut outputs, unit);
            }
            speeds.push(item);
        } else if is_output(&item) {
            if !speed_first && !speeds.is_empty() {
                points.flush(&mut speeds, &mut outputs, unit);
            }
            outputs.push(item);
        } else {
            points.left_out.push(item.text);
        }
    }
    points.flush(&mut speeds, &mut outputs, unit);
    points
}

impl Points {
    /// Makes a row of each engine speed with all outputs.
    fn flush(&mut self, speeds: &mut Vec<Item>, outputs: &mut Vec<Item>, unit: Option<Output>) {
        let given: Vec<Given> = outputs.iter().map(|item| item.given(unit)).collect();
        if speeds.is_empty() || given.is_empty() {
            self.left_out.extend(speeds.drain(..).map(|item| item.text));
            self.left_out
                .extend(outputs.drain(..).map(|item| item.text));
            return;
        }
        outputs.clear();
        for speed in speeds.drain(..) {
            let scale = match speed.role {
                Some(Role::Speed(scale)) => scale,
                Some(Role::Output(_) | Role::Other) | None => None,
            };
            self.rows.push(Row {
                speed: speed.text,
                scale,
                outputs: given.clone(),
            });
        }
    }
}

impl Item {
    /// The output, in the unit of the line where it has none.
    fn given(&self, unit: Option<Output>) -> Given {
        let own = match self.role {
            Some(Role::Output(output)) => output,
            Some(Role::Speed(_) | Role::Other) | None => None,
        };
        let output = match (own, unit) {
            (Some(own), Some(unit)) if own.unit().is_none() && own.is_as(unit) => Some(unit),
            (None, unit) => unit,
            (own, _) => own,
        };
        Given {
            text: self.text.clone(),
            output,
        }
    }
}
