//! Do the teeth give the decimal that stands beside them?

use super::amount::{Amount, PairOrder, Shape};
use super::remarks::Remarks;
use crate::gearing::quoted;

/// Merges teeth with the decimal next to them where the two agree, in `34/9 3.778` as in the
/// columns `34 9 3.778`.
pub(super) fn merged(amounts: Vec<Amount>) -> Vec<Amount> {
    let mut merged: Vec<Amount> = Vec::with_capacity(amounts.len());
    for amount in amounts {
        if let Some(pair) = columns_of_teeth(&merged, &amount) {
            merged.truncate(merged.len() - 2);
            merged.push(pair);
        } else if let Some(both) = merged.last().and_then(|last| agreeing(last, &amount)) {
            merged.pop();
            merged.push(both);
        } else {
            merged.push(amount);
        }
    }
    merged
}

/// The ratio from `first` and what stands in brackets behind it, if those are teeth and a number.
///
/// Where they disagree the teeth are taken and it is said.
pub(super) fn checked(first: &Amount, second: &Amount, remarks: &mut Remarks) -> Option<Amount> {
    let (teeth, number) = teeth_and_number(first, second)?;
    let agreed = agreeing(first, second);
    if agreed.is_none() {
        remarks.say(format!(
            "The teeth {} do not give {}; the teeth were taken.",
            quoted(&teeth.text),
            quoted(&number.text)
        ));
    }
    Some(agreed.unwrap_or_else(|| teeth.clone()))
}

fn teeth_and_number<'a>(a: &'a Amount, b: &'a Amount) -> Option<(&'a Amount, &'a Amount)> {
    let is_number = |amount: &Amount| matches!(amount.shape, Shape::Decimal | Shape::ToOne);
    match (a.shape, b.shape) {
        (Shape::Teeth, _) if is_number(b) => Some((a, b)),
        (_, Shape::Teeth) if is_number(a) => Some((b, a)),
        _ => None,
    }
}

fn agreeing(a: &Amount, b: &Amount) -> Option<Amount> {
    let (teeth, number) = teeth_and_number(a, b)?;
    let mut both = teeth.clone();
    both.order = Some(order_that_gives(teeth, number)?);
    both.is_negative = a.is_negative || b.is_negative;
    both.is_after_unknown = a.is_after_unknown;
    both.gears.extend(&a.gears);
    Some(both)
}

/// The order of the pairs in which they come to the number, within its last digit.
///
/// Data sheets round and cut off: one unit of the last digit is allowed either way.
fn order_that_gives(teeth: &Amount, number: &Amount) -> Option<PairOrder> {
    let target = number.value()?;
    let unit = 0.1_f64.powi(i32::try_from(number.decimals().min(9)).unwrap_or(9));
    let gives = |value: f64| (value - target).abs() < unit * 1.000_001;
    let ratio = teeth.ratio.as_ref()?;
    if gives(ratio.driven_first().value()) {
        Some(PairOrder::DrivenFirst)
    } else if ratio.driving_first().is_some_and(|r| gives(r.value())) {
        Some(PairOrder::DrivingFirst)
    } else {
        None
    }
}

/// The pair, if the two before `number` are counts in columns of their own.
fn columns_of_teeth(before: &[Amount], number: &Amount) -> Option<Amount> {
    let [.., first, second] = before else {
        return None;
    };
    if [first.shape, second.shape] != [Shape::Whole; 2] || number.shape != Shape::Decimal {
        return None;
    }
    let pair = Amount::new(format!("{}:{}", first.text, second.text), Shape::Teeth);
    agreeing(&pair, number)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn texts(amounts: &[(&str, Shape)]) -> Vec<String> {
        let amounts = amounts
            .iter()
            .map(|(text, shape)| Amount::new((*text).to_owned(), *shape))
            .collect();
        merged(amounts).into_iter().map(|a| a.text).collect()
    }

    #[test]
    fn a_decimal_that_agrees_is_one_with_its_teeth() {
        use Shape::{Decimal, Teeth, Whole};
        assert_eq!(texts(&[("34/9", Teeth), ("3.778", Decimal)]), ["34/9"]);
        assert_eq!(texts(&[("3.77", Decimal), ("34/9", Teeth)]), ["34/9"]);
        assert_eq!(texts(&[("9/34", Teeth), ("3.8", Decimal)]), ["9/34"]);
        assert_eq!(
            texts(&[("34", Whole), ("9", Whole), ("3.778", Decimal)]),
            ["34:9"]
        );
    }

    #[test]
    fn a_decimal_that_does_not_agree_is_another_ratio() {
        let texts = texts(&[("34/9", Shape::Teeth), ("2.235", Shape::Decimal)]);
        assert_eq!(texts, ["34/9", "2.235"]);
    }

    #[test]
    fn in_brackets_a_disagreement_is_said_and_the_teeth_are_taken() {
        let mut remarks = Remarks::default();
        let number = Amount::new("3.87".to_owned(), Shape::Decimal);
        let teeth = Amount::new("34:9".to_owned(), Shape::Teeth);
        let taken = checked(&number, &teeth, &mut remarks).unwrap();
        assert_eq!(taken.text, "34:9");
        assert!(remarks.into_sentences()[0].contains("34:9 do not give 3.87"));
    }
}
