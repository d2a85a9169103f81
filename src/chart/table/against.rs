//! What is a gear compared with, where that is a gear of another label?

use super::definition::SetGear;

/// Top against a top of another label says so, in the trade's words: the difference of a 6 that is compared
/// with a 5 ends ` against 5th`. Empty where both labels are the same.
pub(in crate::chart) fn other_label(gear: SetGear<'_>, like: SetGear<'_>) -> String {
    let other = &like.gear.gear.label;
    if *other == gear.gear.gear.label {
        String::new()
    } else {
        format!(" against {}", spoken(other))
    }
}

/// A gear as people name it: `5th`, and `gear II` where the label is no count.
pub(in crate::chart) fn spoken(label: &str) -> String {
    match label {
        "1" => "1st".to_owned(),
        "2" => "2nd".to_owned(),
        "3" => "3rd".to_owned(),
        "4" | "5" | "6" | "7" | "8" | "9" | "10" | "11" | "12" => format!("{label}th"),
        other => format!("gear {other}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_count_is_named_in_order_and_any_other_label_as_it_stands() {
        let cases = [
            ("1", "1st"),
            ("2", "2nd"),
            ("3", "3rd"),
            ("5", "5th"),
            ("12", "12th"),
            ("II", "gear II"),
            ("05", "gear 05"),
            ("0", "gear 0"),
        ];
        for (label, expected) in cases {
            assert_eq!(spoken(label), expected);
        }
    }
}
