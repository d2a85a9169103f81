//! Do the examples as they came with the program in format 1 still open, and stay in it?

use layshaft::project::{SetTechnical, TechnicalData, format};

/// The examples that were of format 1 until engines and vehicles were added to them.
const FORMER: [&str; 3] = [
    include_str!("former/camper-van.ron"),
    include_str!("former/farm-four-wheel-drive.ron"),
    include_str!("former/open-two-seater.ron"),
];

#[test]
fn an_example_of_format_1_opens_without_technical_data_and_is_written_back_byte_for_byte() {
    for text in FORMER {
        assert!(text.starts_with("(\n    format: 1,\n"), "{text}");
        let project = format::read(text).unwrap_or_else(|error| panic!("{error}: {text}"));
        assert_eq!(project.technical, TechnicalData::default());
        let mut sets = project.sets.iter();
        assert!(sets.all(|set| set.technical == SetTechnical::default()));
        assert!(!format::is_written_by_hand(text, &project).unwrap());
        assert_eq!(format::write(&project).unwrap(), text);
    }
}
