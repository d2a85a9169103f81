//! Is a table of speedometers left alone, which has rows and figures but no gears?

use layshaft::analysis::Analysis;
use layshaft::import::gears::read_pasted;
use layshaft::import::tables::{TableError, is_own_table, read};
use layshaft::project::examples::EXAMPLES;
use layshaft::project::{Project, View, Views};
use layshaft::sheet::csv::DecimalMark;
use layshaft::sheet::{TextFormat, written};

const FORMATS: [TextFormat; 6] = [
    TextFormat::Text,
    TextFormat::Markdown,
    TextFormat::BbCode,
    TextFormat::Csv(DecimalMark::Point),
    TextFormat::Csv(DecimalMark::Comma),
    TextFormat::Json,
];

fn printed(project: &Project, views: &[View], format: TextFormat) -> String {
    let views = Views::new(views.iter().copied()).unwrap();
    written(&Analysis::from(project), &views, format).unwrap()
}

#[test]
fn it_is_told_apart_and_no_gears_are_looked_for_in_it() {
    for example in EXAMPLES {
        let project = example.project().unwrap();
        for format in FORMATS {
            let text = printed(&project, &[View::Speedometer], format);
            assert!(!is_own_table(&text), "{}, {format:?}", example.name);
            let why = match format {
                TextFormat::Json => TableError::ForPrograms,
                _ => TableError::OfFigures,
            };
            assert_eq!(read(&text), Some(Err(why)), "{}, {format:?}", example.name);
        }
    }
}

#[test]
fn behind_a_table_of_ratios_it_changes_nothing_of_that() {
    for example in EXAMPLES {
        let project = example.project().unwrap();
        for format in &FORMATS[..5] {
            let alone = printed(&project, &[View::Speed], *format);
            let both = printed(&project, &[View::Speed, View::Speedometer], *format);
            assert_ne!(alone, both);
            let sets = |text: &str| read(text).unwrap().unwrap().sets;
            assert_eq!(sets(&both), sets(&alone), "{}, {format:?}", example.name);
        }
    }
}

#[test]
fn cut_anywhere_it_never_ends_the_program() {
    let project = EXAMPLES[0].project().unwrap();
    for format in FORMATS {
        let text = printed(&project, &[View::Speedometer], format);
        let lines: Vec<&str> = text.split_inclusive('\n').collect();
        for from in 0..lines.len() {
            let rest = lines[from..].concat();
            assert!(read(&rest).is_none_or(|read| read.is_err()), "{rest}");
            let _ = read_pasted(&rest);
        }
    }
}
