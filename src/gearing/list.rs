//! The items of a typed list: where one figure ends and the next begins.
//!
//! A comma is a decimal mark to one and parts figures to another. Blanks or semicolons part, and a
//! comma between digits then is decimal; without them a comma parts, but before a single digit at the
//! end of an item it is decimal.

/// The items of `text`, each one figure with the unit that is written behind it.
///
/// `50,100` is two items, `90,5` one, `90,5 110` two; a blank before one of the `units` parts nothing.
pub fn list_items(text: &str, units: &[&str]) -> Vec<String> {
    parted(text, units, at_commas)
}

/// The items of a list of engine speeds, in which a mark or a blank may part thousands: `2 500` and
/// `2,500` are one item, `800,900` are two, for no engine turns at 800900 rpm.
pub fn engine_speed_items(text: &str, units: &[&str]) -> Vec<String> {
    let at_every_comma = |item: &str| item.split(',').map(str::to_owned).collect();
    let mut items: Vec<String> = Vec::new();
    for item in parted(text, units, at_every_comma) {
        let before = items.last_mut();
        match before.and_then(|before| Some((joined_thousands(before, &item)?, before))) {
            Some((joined, before)) => *before = joined,
            None => items.push(item),
        }
    }
    items
}

/// The items between blanks or semicolons; where there are none, or where an item holds more than one
/// comma, those that `at_commas` makes of it.
fn parted(text: &str, units: &[&str], at_commas: fn(&str) -> Vec<String>) -> Vec<String> {
    let items = at_blanks(text, units);
    let has_parting = items.len() > 1;
    let pieces = items.into_iter().flat_map(|item| {
        if has_parting && item.matches(',').count() < 2 {
            vec![item]
        } else {
            at_commas(&item)
        }
    });
    pieces.filter(|piece| !piece.trim().is_empty()).collect()
}

/// The items between blanks or semicolons, each with its unit.
fn at_blanks(text: &str, units: &[&str]) -> Vec<String> {
    let is_parting = |c: char| c == ';' || c.is_whitespace();
    let parts = text.split(is_parting).map(|part| part.trim_matches(','));
    let mut items: Vec<String> = Vec::new();
    for part in parts.filter(|part| !part.is_empty()) {
        match items.last_mut() {
            Some(figure) if units.contains(&part) => {
                figure.push(' ');
                figure.push_str(part);
            }
            _ => items.push(part.to_owned()),
        }
    }
    items
}

/// Two items that are one number with parted thousands.
fn joined_thousands(before: &str, item: &str) -> Option<String> {
    let are_digits = |text: &str| text.bytes().all(|byte| byte.is_ascii_digit());
    let digits = item.bytes().take_while(u8::is_ascii_digit).count();
    let is_rest = digits == 3 && !item[digits..].starts_with(['.', ',']);
    let is_short = (1..=2).contains(&before.len()) && are_digits(before);
    (is_rest && is_short).then(|| format!("{before}{item}"))
}

/// The items between commas; a comma before a single digit is decimal.
fn at_commas(text: &str) -> Vec<String> {
    let mut items: Vec<String> = Vec::new();
    let mut can_go_on = false;
    for piece in text.split(',') {
        let digits = piece.chars().take_while(char::is_ascii_digit).count();
        let is_decimal = digits == 1 && !piece[digits..].starts_with('.');
        match items.last_mut() {
            Some(figure) if is_decimal && can_go_on => {
                figure.push(',');
                figure.push_str(piece);
                can_go_on = false;
            }
            _ => {
                items.push(piece.to_owned());
                can_go_on = piece.bytes().all(|byte| byte.is_ascii_digit());
            }
        }
    }
    items
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn thousands_of_engine_speeds_stay_together() {
        for (text, wanted) in [
            ("2 500", &["2500"][..]),
            ("2,500", &["2500"]),
            ("2,500,3,000", &["2500", "3000"]),
            ("2000 2500", &["2000", "2500"]),
            ("2000,5 3000", &["2000,5", "3000"]),
            ("800,900", &["800", "900"]),
            ("2 500 rpm 3000", &["2500 rpm", "3000"]),
        ] {
            assert_eq!(engine_speed_items(text, &["rpm"]), wanted, "{text}");
        }
    }

    #[test]
    fn figures_are_parted_as_people_mean_them() {
        for (text, wanted) in [
            ("110", &["110"][..]),
            ("50,100", &["50", "100"]),
            ("50,90,110", &["50", "90", "110"]),
            ("90,5", &["90,5"]),
            ("90,5,110", &["90,5", "110"]),
            ("90,5 110", &["90,5", "110"]),
            ("90, 110", &["90", "110"]),
            ("90; 110,25", &["90", "110,25"]),
            ("90 ;110", &["90", "110"]),
            ("90.5,110", &["90.5", "110"]),
            ("90,110 km/h", &["90", "110 km/h"]),
            ("90 km/h, 70 mph", &["90 km/h", "70 mph"]),
            ("70mph", &["70mph"]),
            ("1,2,3", &["1,2", "3"]),
            (" , ", &[]),
            ("", &[]),
            ("fast", &["fast"]),
            ("90, fast", &["90", "fast"]),
        ] {
            assert_eq!(list_items(text, &["km/h", "mph"]), wanted, "{text}");
        }
    }
}
