//! Are pastes from forums read in spite of what stands around the ratios?

use super::{Case, NO_FINAL, check};
use layshaft::import::gears::read_pasted;

const POSTS: &[Case] = &[
    (
        "Post 13:\n1st 3.42\n2nd 1.98\n3rd 1.36\nFD 3.94",
        "1=3.42 2=1.98 3=1.36 F=3.94",
        &[],
    ),
    (
        "Post 2: 1st 3.42, 2nd 1.98, 3rd 1.36, final 3.94",
        "1=3.42 2=1.98 3=1.36 F=3.94",
        &[],
    ),
    (
        "#7\nmy box has first 3.42 second 1.98 third 1.36 and a 3.94 diff",
        "1=3.42 2=1.98 3=1.36 F=3.94",
        &[],
    ),
    (
        "reply 4: gear 1 3.42, gear 2 1.98, gear 3 1.36; axle 3.94",
        "1=3.42 2=1.98 3=1.36 F=3.94",
        &[],
    ),
    (
        "Beitrag #3\n1. Gang 3,42\n2. Gang 1,98\nAchse 3,94",
        "1=3,42 2=1,98 F=3,94",
        &[],
    ),
    (
        "#1 3.42\n#2 1.98\n#3 1.36",
        "1=3.42 2=1.98 3=1.36",
        &[NO_FINAL],
    ),
    (
        "gear #1 3.42\ngear #2 1.98\nfinal 3.94",
        "1=3.42 2=1.98 F=3.94",
        &[],
    ),
];

#[test]
fn labels_of_gears_win_over_the_numbers_of_posts() {
    check(POSTS);
}

const MIDDLE_POINTS: &[Case] = &[
    (
        "1st 3·42\n2nd 1·98\n3rd 1·36\ntop 1·00\naxle 3·90",
        "1=3.42 2=1.98 3=1.36 4=1.00 F=3.90",
        &[],
    ),
    (
        "3·42/1·98/1·36, final drive 3·90:1",
        "1=3.42 2=1.98 3=1.36 F=3.90:1",
        &[],
    ),
    (
        "1st 42/31·44/13\n2nd 42/31·35/20\nfinal 3·9",
        "1=42/31 × 44/13 2=42/31 × 35/20 F=3.9",
        &[],
    ),
];

#[test]
fn a_decimal_point_may_stand_in_the_middle_of_the_line() {
    check(MIDDLE_POINTS);
}

const BEHIND_REVERSE: &[Case] = &[
    (
        "3,455/1,944/1,286/0,969/0,800 R-3,167/3,938",
        "1=3,455 2=1,944 3=1,286 4=0,969 5=0,800 R=3,167 F=3,938",
        &["3,938 was taken as the final drive: it stands behind reverse"],
    ),
    (
        "3.42/1.98/1.36/1.02 R 3.31/3.94",
        "1=3.42 2=1.98 3=1.36 4=1.02 R=3.31 F=3.94",
        &["3.94 was taken as the final drive: it stands behind reverse"],
    ),
    (
        "FD 4.11\n3.42/1.98/1.36/1.02 R 3.31/3.94",
        "1=3.42 2=1.98 3=1.36 4=1.02 R=3.31 F=4.11",
        &["Left out: 3.94 (beside"],
    ),
];

#[test]
fn what_follows_reverse_behind_a_slash_is_the_final_drive() {
    check(BEHIND_REVERSE);
}

#[test]
fn numbers_that_can_be_no_ratios_are_no_gear_set() {
    for (text, named) in [
        ("0 0 0 -1 -2", "0, -1, -2"),
        ("3 -1 -2 -3", "-1, -2, -3"),
        ("5 0 0 2", "0"),
        ("0 -1 -2 -3 -4 -5", "0, -1, -2, -3 and 2 more"),
    ] {
        let error = read_pasted(text).expect_err(text).to_string();
        let said = format!("{named} are no gear ratios");
        assert!(error.starts_with(&said), "{text:?}: {error}");
    }
}
