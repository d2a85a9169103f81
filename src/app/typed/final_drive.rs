//! Final drives as they are typed: gears in one field, a chain in two.

use super::{Reading, told};
use crate::gearing::{
    FinalDrive, Sprocket, Sprockets, parse_chain, parse_final_drive, sprocket_teeth,
};
use crate::project::SetEdit;

/// A final drive of gears, which reduces; a chain has fields of its own.
pub(in crate::app) fn final_drive(text: &str) -> Reading<FinalDrive> {
    match parse_final_drive(text).map_err(told)? {
        FinalDrive::Chain(_) => Err(
            "a chain has a field for each sprocket: \"Chain instead\" in this row's menu"
                .to_owned(),
        ),
        gears @ FinalDrive::Gears(_) => Ok(gears),
    }
}

/// What a text in the field of a sprocket means for the final drive at that place, whose sprockets
/// are `present`: its teeth, or those of both sprockets in the front one's field.
///
/// Both together are known to reduce, so `46:16` is the same chain as `16/46`.
pub(in crate::app) fn sprocket(
    (at, of): (usize, Sprocket),
    present: Sprockets,
    text: &str,
) -> Reading<SetEdit> {
    if of == Sprocket::Front
        && let Some(both) = both(text)?
    {
        return Ok(SetEdit::FinalDrive(at, both.into()));
    }
    let teeth = sprocket_teeth(text).map_err(told)?;
    present.with(of, teeth).map_err(told)?;
    Ok(SetEdit::Sprocket(at, of, teeth))
}

/// Both sprockets, where the text holds two counts.
fn both(text: &str) -> Reading<Option<Sprockets>> {
    if let Some(chain) = parse_chain(text).map_err(told)? {
        return Ok(Some(chain));
    }
    let Some((first, second)) = text.split_once(['/', ':']) else {
        return Ok(None);
    };
    if [first, second].iter().any(|count| count.trim().is_empty()) {
        return Err("type the front sprocket's teeth, or both as 16/46".to_owned());
    }
    let [first, second] = [first, second].map(|count| sprocket_teeth(count).map_err(told));
    let (first, second) = (first?, second?);
    let both = Sprockets::new(first.min(second), first.max(second));
    both.map(Some).map_err(told)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(of: Sprocket, text: &str) -> Reading<SetEdit> {
        sprocket((0, of), Sprockets::new(15, 45).unwrap(), text)
    }

    #[test]
    fn one_count_is_that_sprocket_s_and_two_in_the_front_field_are_both() {
        for of in Sprocket::BOTH {
            assert_eq!(read(of, " 17 "), Ok(SetEdit::Sprocket(0, of, 17)));
        }
        let chain = Sprockets::new(16, 46).unwrap();
        for text in ["16/46", "16:46", "46:16", "front 16 rear 46"] {
            let both = SetEdit::FinalDrive(0, chain.into());
            assert_eq!(read(Sprocket::Front, text), Ok(both), "{text}");
        }
    }

    #[test]
    fn what_is_no_sprocket_is_answered_with_a_sentence() {
        for (of, text, says) in [
            (
                Sprocket::Front,
                "0",
                "teeth are whole numbers from 1 to 999, not 0",
            ),
            (
                Sprocket::Rear,
                "16/46",
                "teeth are whole numbers from 1 to 999, not 16/46",
            ),
            (
                Sprocket::Front,
                "16/",
                "type the front sprocket's teeth, or both as 16/46",
            ),
            (
                Sprocket::Front,
                "2.9:1",
                "teeth are whole numbers from 1 to 999, not 2.9",
            ),
        ] {
            assert_eq!(read(of, text).unwrap_err(), says);
        }
    }

    #[test]
    fn a_chain_in_the_field_of_gears_is_sent_to_its_own() {
        assert!(
            final_drive("chain 16/46")
                .unwrap_err()
                .contains("Chain instead")
        );
        assert_eq!(final_drive("9:37").unwrap().to_string(), "37:9");
    }
}
