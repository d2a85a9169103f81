//! The figures of a line with what is known of each, and what stands between them.

use super::tokens::Token;
use super::words::{Role, Scale};

/// A number with what it is, where its unit or a label says so.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Figure {
    pub(super) text: String,
    pub(super) role: Option<Role>,
}

/// A part of a line.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Element {
    Figure(Figure),
    /// A unit or a word that names what a figure is, by itself.
    Label(Role),
    /// "at", before a figure.
    At,
    /// A colon or an arrow between two figures.
    Pair,
    /// A dash between two figures.
    Dash,
    /// A stroke between two figures.
    Stroke,
    /// The end of a cell.
    Break,
    /// Anything else.
    Word,
}

impl Element {
    pub(super) fn figure(&self) -> Option<&Figure> {
        match self {
            Self::Figure(figure) => Some(figure),
            _ => None,
        }
    }
}

/// The elements of a line, with units and labels given to the figures that they belong to.
pub(super) fn elements(tokens: &[Token]) -> Vec<Element> {
    let bound = bound(tokens, is_label_first(tokens));
    let mut before_figure = vec![false; bound.len()];
    for at in (0..bound.len().saturating_sub(1)).rev() {
        before_figure[at] = match &bound[at + 1] {
            Element::Figure(_) => true,
            Element::Pair | Element::Dash | Element::Stroke => before_figure[at + 1],
            Element::At | Element::Label(_) | Element::Break | Element::Word => false,
        };
    }
    let mut elements: Vec<Element> = Vec::with_capacity(bound.len());
    for (element, is_before_figure) in bound.iter().zip(before_figure) {
        match (element, elements.last()) {
            (Element::At, _) if !is_before_figure => elements.push(Element::Word),
            // Of an arrow the dash says nothing.
            (Element::Pair, Some(Element::Dash)) if is_before_figure => {
                elements.pop();
                elements.push(Element::Pair);
            }
            (Element::Pair | Element::Dash | Element::Stroke, Some(Element::Figure(_)))
                if is_before_figure =>
            {
                elements.push(element.clone());
            }
            (Element::Pair | Element::Dash | Element::Stroke, _) => {}
            _ => elements.push(element.clone()),
        }
    }
    elements
}

/// Whether what a figure is stands before it on this line: `rpm 1000, Nm 120`.
pub(super) fn is_label_first(tokens: &[Token]) -> bool {
    let is_label = |token: &Token| matches!(token, Token::Unit(_) | Token::Quantity(_));
    let is_number = |token: &Token| matches!(token, Token::Number(_));
    let mut said = tokens
        .iter()
        .filter(|token| is_label(token) || is_number(token));
    let begins = said.next().is_some_and(is_label);
    let ends = said.next_back().is_some_and(is_number);
    let has_pair = tokens.windows(3).any(|three| {
        let is_sign = matches!(three[1], Token::Pair | Token::Stroke);
        is_number(&three[0]) && is_sign && is_number(&three[2])
    });
    begins && ends && !has_pair
}

/// The elements with all signs, each figure with its unit.
fn bound(tokens: &[Token], label_first: bool) -> Vec<Element> {
    let mut elements = Vec::with_capacity(tokens.len());
    let mut rest = tokens;
    while let Some((token, mut behind)) = rest.split_first() {
        // "55/75 kW/PS" is 55 kW and 75 PS.
        if let [
            Token::Number(a),
            Token::Stroke,
            Token::Number(b),
            Token::Unit(first),
            Token::Stroke,
            Token::Unit(second),
            behind @ ..,
        ] = rest
        {
            for (text, role) in [(a, first), (b, second)] {
                elements.push(Element::Figure(Figure {
                    text: text.clone(),
                    role: Some(*role),
                }));
            }
            rest = behind;
            continue;
        }
        let element = match token {
            Token::Number(text) => {
                let mut role = None;
                if label_first {
                    if let Some(Element::Label(label)) = elements.last() {
                        role = Some(*label);
                        elements.pop();
                    }
                } else {
                    (role, behind) = unit_behind(behind);
                }
                Element::Figure(Figure {
                    text: text.clone(),
                    role,
                })
            }
            Token::Unit(role) | Token::Quantity(role) => Element::Label(*role),
            Token::At => Element::At,
            // Between a label and its figure a colon says nothing.
            Token::Pair if label_first => {
                rest = behind;
                continue;
            }
            Token::Pair => Element::Pair,
            Token::Dash => Element::Dash,
            Token::Stroke => Element::Stroke,
            Token::Break => Element::Break,
            Token::Thousand | Token::Word(_) => Element::Word,
        };
        elements.push(element);
        rest = behind;
    }
    joined(elements)
}

/// The unit right behind a number, and what follows it.
fn unit_behind(tokens: &[Token]) -> (Option<Role>, &[Token]) {
    let thousands = Some(Role::Speed(Some(Scale::ThousandsPerMinute)));
    match tokens {
        [Token::Thousand, Token::Unit(Role::Speed(_)), rest @ ..]
        | [Token::Unit(Role::Speed(_)), Token::Thousand, rest @ ..]
        | [Token::Thousand, rest @ ..] => (thousands, rest),
        [Token::Unit(role), rest @ ..] => (Some(*role), rest),
        _ => (None, tokens),
    }
}

/// The elements in which a number before a figure with a unit is its thousands: `4 500 rpm`.
fn joined(elements: Vec<Element>) -> Vec<Element> {
    let mut kept: Vec<Element> = Vec::with_capacity(elements.len());
    for element in elements {
        let whole = match (kept.last(), &element) {
            (Some(Element::Figure(before)), Element::Figure(figure))
                if before.role.is_none() && figure.role.is_some() =>
            {
                super::numbers::joined_thousands(&before.text, &figure.text)
            }
            _ => None,
        };
        match (whole, element) {
            (Some(text), Element::Figure(figure)) => {
                kept.pop();
                kept.push(Element::Figure(Figure { text, ..figure }));
            }
            (_, element) => kept.push(element),
        }
    }
    kept
}
