//! What is said where a table was cut or changed, and is the rest read as it was printed?

use super::{Form, farm_in_both_ranges, refused, table};
use crate::support::projects::any_project;
use layshaft::import::tables::{OwnSet, OwnTable, TableError, read};
use layshaft::project::Project;
use layshaft::project::examples::EXAMPLES;
use proptest::prelude::*;
use proptest::sample::Index;

fn two_seater() -> Project {
    EXAMPLES[1].project().unwrap()
}

/// The sets, each on the tyre that it stands on.
fn sets(table: &OwnTable) -> Vec<OwnSet> {
    let sets = table.sets.iter();
    sets.map(|set| OwnSet {
        tyre: set.tyre.or(table.tyre),
        ..set.clone()
    })
    .collect()
}

/// Whether a set is the printed one, of which reverse may be cut away behind the top.
fn is_the_same(cut: &OwnSet, whole: &OwnSet) -> bool {
    let without_reverse = OwnSet {
        reverse: None,
        ..whole.clone()
    };
    *cut == *whole || *cut == without_reverse
}

/// Where a text is cut: between any two characters near its end, before that here and there.
fn cuts(text: &str) -> impl Iterator<Item = &str> {
    let end = text.len().saturating_sub(90);
    let ends = text.char_indices().enumerate();
    let ends = ends.filter(move |(count, (at, _))| count % 19 == 0 || *at > end);
    ends.map(|(_, (at, _))| &text[..at])
}

#[test]
fn wherever_a_table_is_cut_its_sets_are_whole_or_the_cut_is_said() {
    let examples = EXAMPLES.iter().map(|example| example.project().unwrap());
    for project in examples.chain([farm_in_both_ranges()]) {
        for form in Form::ALL {
            let text = form.print(&project);
            let whole = sets(&table(&text));
            let (mut tables, mut sentences) = (0, 0);
            for cut in cuts(&text) {
                match read(cut) {
                    None => {}
                    Some(Err(error)) => {
                        sentences += 1;
                        assert!(error.to_string().len() > 20, "{error}");
                    }
                    Some(Ok(table)) => {
                        tables += 1;
                        for (cut_set, whole_set) in sets(&table).iter().zip(&whole) {
                            assert!(
                                is_the_same(cut_set, whole_set),
                                "{form:?}: {cut_set:#?} from\n{cut}|"
                            );
                        }
                    }
                }
            }
            assert!(
                sentences > 10 * tables.min(1),
                "{form:?} {tables} {sentences}"
            );
        }
    }
}

#[test]
fn the_end_that_is_missing_is_named() {
    let text = Form::Text.print(&two_seater());
    let in_third = text.find("Five-speed").unwrap();
    let row = in_third + text[in_third..].find("\n4  ").unwrap();
    for (end, sentence) in [
        (row + 12, "the table breaks off in line 59"),
        (row, "the table breaks off in line 58"),
        (in_third, "the table breaks off in line 49"),
        (in_third + 100, "the table breaks off in line 50"),
    ] {
        let error = refused(&text[..end]).to_string();
        assert!(error.starts_with(sentence), "{error}\n{}", &text[..end]);
    }
}

#[test]
fn sets_that_are_missing_at_the_end_are_counted() {
    for form in [Form::Text, Form::Markdown, Form::BbCode] {
        let text = form.print(&two_seater());
        let third = text.find("Set 3: ").unwrap();
        let line = text[..third].rfind('\n').unwrap();
        let read = table(&text[..line]);
        assert_eq!(read.sets.len(), 2, "{form:?}");
        assert_eq!(read.remarks, ["only 2 of 3 gear sets are in the text"]);
    }
}

#[test]
fn a_set_that_stops_below_its_top_is_not_taken_for_whole() {
    let text = Form::Markdown.print(&two_seater());
    let end = text.rfind("| 4 | 1.040").unwrap();
    let error = refused(&text[..end]);
    let expected = TableError::MissesGears {
        set: 3,
        gear: "3".to_owned(),
    };
    assert_eq!(error, expected);
}

#[test]
fn a_row_that_was_pushed_out_of_line_is_named() {
    let text = Form::Text.print(&two_seater());
    let pushed = text.replacen("2                     1.930", "2                 1.930", 1);
    assert_ne!(text, pushed);
    assert_eq!(refused(&pushed), TableError::OutOfLine { line: 13 });
    let text = Form::CsvPoint.print(&two_seater());
    let pushed = text.replacen(",1.93,", ",,1.93,", 1);
    assert_eq!(refused(&pushed), TableError::OutOfLine { line: 3 });
}

#[test]
fn a_table_whose_blanks_were_folded_is_told_and_not_guessed_at() {
    for example in EXAMPLES {
        let text = Form::Text.print(&example.project().unwrap());
        let folded: Vec<String> = text
            .lines()
            .map(|line| line.split_whitespace().collect::<Vec<_>>().join(" "))
            .collect();
        assert_eq!(read(&folded.join("\n")), Some(Err(TableError::Folded)));
    }
    for others in [
        "gear ratio\n1 3.45",
        "gear ratio overall\n1 3.45 13.6",
        "gear rpm",
    ] {
        assert_eq!(read(others), None, "{others}");
    }
}

#[test]
fn a_cell_that_is_no_value_is_named_with_its_place() {
    let text = Form::Markdown.print(&two_seater());
    let error = refused(&text.replacen("| 1.930 |", "| 1.9e0 |", 1)).to_string();
    assert_eq!(
        error,
        "set 1, gear 2: \"1.9e0\" is not a value of the column \"ratio\""
    );
}

#[test]
fn too_long_a_text_is_refused_where_it_holds_a_table_and_left_to_others_else() {
    let text = Form::Markdown.print(&two_seater());
    let long = text.clone() + &"x".repeat(5_000_000);
    assert!(matches!(refused(&long), TableError::TooLong { .. }));
    assert_eq!(read(&"x".repeat(5_000_001)), None);
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(48) })]

    #[test]
    fn whatever_is_cut_or_put_into_a_table_it_is_read_or_refused(
        project in any_project(),
        places in proptest::collection::vec((any::<Index>(), "[ |,;\n>0-9a=×:\\[\\]\"'-]{0,3}|\\PC", 0_usize..4), 1..6),
        end in any::<Index>(),
    ) {
        for form in Form::ALL {
            let mut letters: Vec<char> = form.print(&project).chars().collect();
            for (place, put, taken) in &places {
                let at = place.index(letters.len());
                let behind = (at + taken).min(letters.len());
                letters.splice(at..behind, put.chars());
            }
            for letters in [&letters[..], &letters[..end.index(letters.len())]] {
                let text: String = letters.iter().collect();
                match read(&text) {
                    Some(Ok(table)) => prop_assert!(!table.sets.is_empty()),
                    Some(Err(error)) => prop_assert!(error.to_string().chars().count() < 300),
                    None => {}
                }
            }
        }
    }
}
