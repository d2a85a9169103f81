//! Is format 2 written only where format 1 cannot say it, and told apart from format 1 and slips?

use super::{GOLDEN, broken};
use layshaft::gearing::{LoadIndex, SpeedSymbol, Tyre, TyreSize, parse_tyre};
use layshaft::project::{Edit, Project, SetEdit, SetId, format};

/// A file that uses every key of format 2; it grows with the format until that is released.
pub(super) const GOLDEN_V2: &str = include_str!("golden-v2.ron");

const RATED: &str = "tyre: Rated((size: \"195/65 R 15\", load_index: 91, speed_symbol: \"T\"))";

/// The golden file of format 1 with another tyre.
fn with_tyre(tyre: &str) -> String {
    GOLDEN.replacen("tyre: Size(\"215/65 R 16 C\")", tyre, 1)
}

fn in_format_2(text: &str) -> String {
    text.replacen("format: 1", "format: 2", 1)
}

fn answer(text: &str) -> String {
    let sentence = format::read(text).expect_err(text).to_string();
    broken::assert_is_a_sentence(&sentence);
    sentence
}

fn size_of(project: &Project) -> TyreSize {
    match project.tyre {
        Tyre::Size(size) => size,
        tyre => panic!("{tyre}"),
    }
}

fn is_written_by_hand(text: &str) -> bool {
    format::is_written_by_hand(text, &format::read(text).unwrap()).unwrap()
}

#[test]
fn the_golden_file_of_format_2_is_written_back_byte_for_byte() {
    let project = format::read(GOLDEN_V2).unwrap();
    assert_eq!(format::write(&project).unwrap(), GOLDEN_V2);
}

#[test]
fn the_tyres_of_the_golden_file_of_format_2_mean_what_stands_there() {
    let project = format::read(GOLDEN_V2).unwrap();
    let own = project.sets.iter().map(|c| c.set.tyre);
    let spelled: Vec<String> = [Some(project.tyre)]
        .into_iter()
        .chain(own)
        .flatten()
        .map(|tyre| tyre.to_string())
        .collect();
    assert_eq!(
        spelled,
        [
            "215/65 R 16 C 109/107R",
            "diameter 686.5 mm cross-ply",
            "185/70 HR 13",
            "195/65 R 15 91",
        ]
    );
    let service = size_of(&project).service_description().unwrap();
    let numbers = [Some(service.load_index()), service.dual_load_index()];
    let numbers = numbers.map(|index| index.map(LoadIndex::number));
    assert_eq!(numbers, [Some(109), Some(107)]);
    let symbol = service.speed_symbol().map(SpeedSymbol::as_str);
    assert_eq!(symbol, Some("R"));
}

#[test]
fn a_project_is_of_format_2_only_while_something_in_it_needs_that() {
    let plain = format::read(GOLDEN).unwrap();
    let tyre = |text| parse_tyre(text).unwrap();
    for text in [
        "215/65 R 16 C 109/107R",
        "215/65 R 16 C 109",
        "185/70 HR 13",
    ] {
        let vehicle = Edit::Tyre(tyre(text)).applied_to(&plain).unwrap();
        let id = plain.sets.iter().next().unwrap().id;
        let own = Edit::Set(id, SetEdit::Tyre(Some(tyre(text))));
        for rated in [vehicle, own.applied_to(&plain).unwrap()] {
            let written = format::write(&rated).unwrap();
            assert!(written.starts_with("(\n    format: 2,\n"), "{written}");
            assert_eq!(format::read(&written), Ok(rated));
        }
        let back = Edit::Tyre(plain.tyre).applied_to(&plain).unwrap();
        assert_eq!(format::write(&back).unwrap(), GOLDEN);
    }
}

#[test]
fn a_stage_that_shows_its_other_positions_needs_format_2_for_as_long_as_it_does() {
    let plain = format::read(GOLDEN).unwrap();
    let mut sets = plain.sets.iter();
    let id = sets.find(|c| !c.set.stages.is_empty()).unwrap().id;
    let shows = |shows| Edit::Set(id, SetEdit::StageShowsOthers(0, shows));
    let shown = shows(true).applied_to(&plain).unwrap();
    let written = format::write(&shown).unwrap();
    assert!(written.starts_with("(\n    format: 2,\n"), "{written}");
    assert!(written.contains("acts_on: EveryGear, shows_others: true)"));
    assert_eq!(format::read(&written).as_ref(), Ok(&shown));
    let back = shows(false).applied_to(&shown).unwrap();
    assert_eq!(format::write(&back).unwrap(), GOLDEN);
    let in_format_1 = answer(&written.replacen("format: 2", "format: 1", 1));
    let says = "\"shows_others\" belongs to format 2, but the file says format 1";
    assert!(in_format_1.contains(says), "{in_format_1}");
}

#[test]
fn a_set_whose_drops_are_shown_must_be_there() {
    let text = GOLDEN_V2.replacen("drops: Set(1)", "drops: Set(4)", 1);
    let sentence = answer(&text);
    assert!(sentence.contains("the write-up names set 4, which is not there"));
    let text = GOLDEN_V2.replacen("\"overall_ratio\"", "\"Overall ratio\"", 1);
    let sentence = answer(&text);
    assert!(
        sentence.contains("a column is named by 1 to 40 small letters"),
        "{sentence}"
    );
}

#[test]
fn more_combinations_than_can_be_shown_are_told_where_the_stages_stand() {
    let stage = "(name: \"range\", present: 1, positions: [(name: \"a\", ratio: Number(1)), (name: \"b\", \
                 ratio: Number(2)), (name: \"c\", ratio: Number(3))], acts_on: EveryGear, shows_others: \
                 true), ";
    let text = GOLDEN_V2.replacen("stages: [\n", &format!("stages: [{stage}{stage}\n"), 1);
    let sentence = answer(&text);
    assert!(sentence.starts_with("line 214, column 21: "), "{sentence}");
    assert!(sentence.contains("make 18 combinations, and the most are 8"));
}

#[test]
fn a_file_of_format_2_with_nothing_of_it_is_read_and_judged_in_its_own_format() {
    let text = in_format_2(GOLDEN);
    let project = format::read(&text).unwrap();
    assert_eq!(project, format::read(GOLDEN).unwrap());
    assert!(!is_written_by_hand(&text));
    assert!(is_written_by_hand(&format!("// by hand\n{text}")));
    assert_eq!(format::write(&project).unwrap(), GOLDEN);
}

#[test]
fn what_was_written_by_a_program_is_told_from_what_was_by_hand() {
    for text in [GOLDEN, GOLDEN_V2] {
        assert!(!is_written_by_hand(text), "{text}");
        assert!(
            is_written_by_hand(&text.replacen("    ", "  ", 1)),
            "{text}"
        );
    }
}

#[test]
fn a_service_description_by_hand_in_a_size_is_kept_in_either_format() {
    let size = "tyre: Size(\"195/65 R 15 91T\")";
    for text in [with_tyre(size), in_format_2(&with_tyre(size))] {
        let project = format::read(&text).unwrap();
        assert_eq!(project.tyre, parse_tyre("195/65 R 15 91T").unwrap());
        assert!(is_written_by_hand(&text));
        let written = format::write(&project).unwrap();
        assert_eq!(format::read(&written).unwrap().tyre, project.tyre);
        assert!(!is_written_by_hand(&written));
    }
}

#[test]
fn a_word_of_format_2_in_a_file_of_format_1_is_said_to_be_one_with_its_place() {
    let says = "\"Rated\" belongs to format 2, but the file says format 1";
    let sentence = answer(&with_tyre(RATED));
    assert!(sentence.starts_with("line 7, column 11: "), "{sentence}");
    assert!(sentence.contains(says), "{sentence}");
    let project = format::read(&in_format_2(&with_tyre(RATED))).unwrap();
    assert_eq!(project.tyre.to_string(), "195/65 R 15 91T");
    // What is wrong further on comes up when the number is right.
    let worse = with_tyre(&RATED.replace("91", "910"));
    assert!(answer(&worse).contains(says));
    assert!(answer(&in_format_2(&worse)).contains("from 0 to 279, not 910"));
}

#[test]
fn what_no_format_knows_is_a_slip_in_either() {
    for tyre in [
        "tyre: Rates((load_index: 91))",
        "tyre: Size(\"195/65 R 15\"), load_index: 91",
    ] {
        for text in [with_tyre(tyre), in_format_2(&with_tyre(tyre))] {
            let sentence = answer(&text);
            assert!(sentence.starts_with("line 7, column "), "{sentence}");
            assert!(!sentence.contains("belongs to"), "{sentence}");
        }
    }
}

#[test]
fn a_service_description_that_cannot_be_is_pointed_at() {
    for (from, to, says) in [
        (
            "load_index: 91",
            "load_index: 280",
            "from 0 to 279, not 280",
        ),
        ("load_index: 91", "load_index: -1", ""),
        ("load_index: 91, ", "", "load_index"),
        ("\"T\"", "\"X\"", "\"X\" is not a speed symbol"),
        ("\"T\"", "\"t\"", "\"t\" is not a speed symbol"),
        (
            "91, speed_symbol: \"T\"",
            "20",
            "stands its speed symbol, as in 20J",
        ),
        ("R 15\"", "R 15 95V\"", "the size says 95V already"),
        ("R 15\"", "R\"", "has no rim"),
    ] {
        assert!(RATED.contains(from), "{from}");
        let sentence = answer(&in_format_2(&with_tyre(&RATED.replacen(from, to, 1))));
        assert!(sentence.starts_with("line 7, column "), "{to}: {sentence}");
        assert!(sentence.contains(says), "{to}: {sentence}");
    }
}

/// Until a description was kept, whatever stood behind a size was passed over.
#[test]
fn a_size_with_what_is_no_description_still_opens_without_it() {
    for size in ["195/65 R 15 91X", "195/65 R 15 91I", "195/65 R 15 104/102A"] {
        let project = format::read(&with_tyre(&format!("tyre: Size(\"{size}\")"))).unwrap();
        assert_eq!(project.tyre.to_string(), "195/65 R 15", "{size}");
        assert!(parse_tyre(size).is_err(), "typed, {size} is refused");
    }
}

const CHAIN: &str = "Chain(front: 16, rear: 46)";

/// The golden file of format 1 with a chain as the final drive of its second set.
fn with_chain(chain: &str) -> String {
    let text = GOLDEN.replacen("Number(400)", chain, 1);
    assert_ne!(text, GOLDEN);
    text
}

#[test]
fn a_chain_makes_a_project_one_of_format_2_and_says_which_sprocket_is_which() {
    let text = in_format_2(&with_chain(CHAIN));
    let project = format::read(&text).unwrap();
    let drives: Vec<String> = project
        .sets
        .iter()
        .flat_map(|c| c.set.final_drives.iter().map(ToString::to_string))
        .collect();
    assert!(drives.contains(&"chain 16/46".to_owned()), "{drives:?}");
    assert_eq!(format::write(&project).unwrap(), text);
}

#[test]
fn a_chain_in_a_file_of_format_1_is_said_to_be_of_format_2() {
    let says = "\"Chain\" belongs to format 2, but the file says format 1";
    assert!(answer(&with_chain(CHAIN)).contains(says));
}

#[test]
fn a_chain_that_cannot_be_is_pointed_at() {
    for (chain, says) in [
        (
            "Chain(front: 0, rear: 46)",
            "teeth are whole numbers from 1 to 999, not 0",
        ),
        (
            "Chain(front: 1, rear: 999)",
            "between 0.001 and 400, not 999",
        ),
        ("Chain(front: 16)", "rear"),
        ("Chain(front: 16, back: 46)", "back"),
    ] {
        let sentence = answer(&in_format_2(&with_chain(chain)));
        assert!(sentence.starts_with("line "), "{chain}: {sentence}");
        assert!(sentence.contains(says), "{chain}: {sentence}");
    }
}

fn liveries(project: &Project) -> Vec<usize> {
    let sets = project.sets.iter();
    sets.map(|candidate| candidate.livery.number()).collect()
}

/// The golden file of format 2 with other liveries of its first and third set; empty for none.
fn with_liveries([first, third]: [&str; 2]) -> String {
    let line = |livery: &str| match livery {
        "" => String::new(),
        livery => format!("            livery: {livery},\n"),
    };
    let text = GOLDEN_V2.replacen("            livery: 1,\n", &line(third), 1);
    text.replacen("            livery: 3,\n", &line(first), 1)
}

#[test]
fn a_set_has_the_livery_that_stands_in_the_file_else_that_of_its_place_else_a_free_one() {
    for (written, read) in [
        (["3", "1"], [3, 2, 1]),
        (["", ""], [1, 2, 3]),
        (["1", ""], [1, 2, 3]),
        // What stands there goes before what does not.
        (["", "1"], [3, 2, 1]),
        (["2", ""], [2, 1, 3]),
        (["", "2"], [1, 3, 2]),
    ] {
        let project = format::read(&with_liveries(written)).unwrap();
        assert_eq!(liveries(&project), read, "{written:?}");
        let again = format::read(&format::write(&project).unwrap());
        assert_eq!(again, Ok(project), "{written:?}");
    }
}

#[test]
fn liveries_need_format_2_only_where_they_are_out_of_the_order_of_the_sets() {
    let plain = format::read(GOLDEN).unwrap();
    assert_eq!(liveries(&plain), [1, 2, 3]);
    let first = plain.sets.iter().next().unwrap().id;
    let moved = Edit::MoveSet(first, 1).applied_to(&plain).unwrap();
    let written = format::write(&moved).unwrap();
    assert!(written.starts_with("(\n    format: 2,\n"), "{written}");
    assert_eq!(liveries(&format::read(&written).unwrap()), [2, 1, 3]);
    let in_format_1 = answer(&written.replacen("format: 2", "format: 1", 1));
    let says = "\"livery\" belongs to format 2, but the file says format 1";
    assert!(in_format_1.contains(says), "{in_format_1}");
    let back = Edit::MoveSet(first, 0).applied_to(&moved).unwrap();
    assert_eq!(format::write(&back).unwrap(), GOLDEN);
}

#[test]
fn while_every_set_has_the_livery_of_its_place_a_project_stays_in_format_1() {
    let plain = format::read(GOLDEN).unwrap();
    let ids: Vec<SetId> = plain.sets.iter().map(|c| c.id).collect();
    let [first, second, third] = ids[..] else {
        panic!("three sets")
    };
    let copy = |id: SetId| Box::new((*plain.sets.get(id).unwrap().set).clone());
    let replaced = SetEdit::Replace(Box::new(copy(first).to_spec()));
    let (hide, compare) = (Edit::Visible(first, false), Edit::Baseline(second));
    let (last_goes, first_goes) = (Edit::RemoveSet(third), Edit::RemoveSet(first));
    let next = |behind: SetId| Edit::AddSet(behind, copy(first));
    for (edits, number) in [
        (vec![hide, compare, Edit::Set(third, replaced)], 1),
        (vec![last_goes.clone()], 1),
        (vec![last_goes.clone(), next(second)], 1),
        (vec![last_goes, next(first)], 2),
        (vec![first_goes.clone()], 2),
        (vec![first_goes.clone(), next(third)], 2),
        // What comes takes the place and with it the livery of what went.
        (vec![first_goes, next(third), Edit::MoveSet(SetId(4), 0)], 1),
    ] {
        let mut project = plain.clone();
        for edit in &edits {
            project = edit.applied_to(&project).unwrap();
        }
        let text = format::write(&project).unwrap();
        let begins = format!("(\n    format: {number},\n");
        assert!(text.starts_with(&begins), "{edits:?}: {text}");
        let read = format::read(&text).unwrap();
        assert_eq!(liveries(&read), liveries(&project), "{edits:?}");
    }
}

#[test]
fn a_livery_that_cannot_be_or_that_two_sets_have_is_pointed_at() {
    let place = |text: &str, key: &str| {
        let (before, _) = text.rsplit_once(key).unwrap();
        let column = before.rsplit('\n').next().unwrap().len() + key.len() + 1;
        format!(
            "line {}, column {column}: ",
            1 + before.matches('\n').count()
        )
    };
    for (written, says) in [
        (["3", "3"], "set 3 has the livery 3 of a set before it"),
        (["3", "0"], "is 1, 2 or 3, not 0"),
        (["3", "4"], "is 1, 2 or 3, not 4"),
    ] {
        let text = with_liveries(written);
        let sentence = answer(&text);
        assert!(sentence.contains(says), "{sentence}");
        assert!(
            sentence.starts_with(&place(&text, "livery: ")),
            "{sentence}"
        );
    }
    for unlike in ["-1", "2.5", "green", "70000000000000000000000"] {
        answer(&with_liveries(["3", unlike]));
    }
}

#[test]
fn a_livery_that_goes_without_saying_was_written_by_hand() {
    assert!(is_written_by_hand(&with_liveries(["1", "3"])));
    assert!(!is_written_by_hand(&with_liveries(["3", "1"])));
}
