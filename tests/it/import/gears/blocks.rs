//! Are lists beneath one another sets of their own, and does the name above a list name its set?

use super::{Case, NO_FINAL, check};

const NAMED_ALONE: &[Case] = &[
    (
        "Six-speed candidate\n3.62 2.19 1.52 1.16 0.96 0.80",
        "Six-speed candidate> 1=3.62 2=2.19 3=1.52 4=1.16 5=0.96 6=0.80",
        &[NO_FINAL],
    ),
    (
        "## Six-speed\n\n3.62/2.19/1.52/1.16; axle 4.06",
        "Six-speed> 1=3.62 2=2.19 3=1.52 4=1.16 F=4.06",
        &[],
    ),
    (
        "**Six-speed:**\n1st 3.62\n2nd 2.19\n3rd 1.52\nFinal 4.06",
        "Six-speed> 1=3.62 2=2.19 3=1.52 F=4.06",
        &[],
    ),
    (
        "[b]Six-speed[/b]\nI 3,62\nII 2,19\nIII 1,52\nAchse 4,06",
        "Six-speed> 1=3,62 2=2,19 3=1,52 F=4,06",
        &[],
    ),
    (
        "[size=4][b]Dogbox (1998)[/b]:[/size]\n1st gear: 3.62:1 (helical)\n2nd gear: 2.19:1\nfinal 4.06",
        "Dogbox (1998)> 1=3.62:1 2=2.19:1 F=4.06",
        &[],
    ),
    (
        "Hi all, here are my ratios\n\nGetriebe II\n=========\nGang | Übersetzung\n--- | ---\n1 | 3,62\n2 | 2,19\nAchse | 4,06",
        "Getriebe II> 1=3,62 2=2,19 F=4,06",
        &[],
    ),
    (
        "tyres 185/60R14, redline 6500\n### Five-speed\nfinal drive 4.06\nGear ratios: 3.62, 2.19, 1.52, 1.16, 0.96",
        "Five-speed> 1=3.62 2=2.19 3=1.52 4=1.16 5=0.96 F=4.06; tyre 185/60 R 14; redline 6500",
        &[],
    ),
    (
        "Box 2\n1st\n3.62\n2nd\n2.19\naxle\n4.06",
        "Box 2> 1=3.62 2=2.19 F=4.06",
        &[],
    ),
];

#[test]
fn a_line_of_words_right_above_the_ratios_names_the_set() {
    check(NAMED_ALONE);
}

const NO_NAMES: &[Case] = &[
    (
        "Hi all, here are my ratios\n3.62 2.19 1.52 FD 4.06",
        "1=3.62 2=2.19 3=1.52 F=4.06",
        &[],
    ),
    (
        "What do you think?\n3.62 2.19 1.52 FD 4.06",
        "1=3.62 2=2.19 3=1.52 F=4.06",
        &[],
    ),
    (
        "These are from an old hillclimb car\n3.62 2.19 1.52 FD 4.06",
        "1=3.62 2=2.19 3=1.52 F=4.06",
        &[],
    ),
    (
        "An old hillclimb car.\n3.62 2.19 1.52 FD 4.06",
        "1=3.62 2=2.19 3=1.52 F=4.06",
        &[],
    ),
    (
        "an old box out of some hillclimb car\n3.62 2.19 1.52 FD 4.06",
        "1=3.62 2=2.19 3=1.52 F=4.06",
        &[],
    ),
    (
        "Gearbox:\n3.62 2.19 1.52 FD 4.06",
        "1=3.62 2=2.19 3=1.52 F=4.06",
        &[],
    ),
    (
        "Technische Daten\nGänge\n3,62 2,19 1,52; Achse 4,06",
        "1=3,62 2=2,19 3=1,52 F=4,06",
        &[],
    ),
    (
        "Transmission: dogbox\n3.62 2.19 1.52 FD 4.06",
        "1=3.62 2=2.19 3=1.52 F=4.06",
        &[],
    ),
    (
        "Hillclimb\nbuilt over the winter\n3.62 2.19 1.52 FD 4.06",
        "1=3.62 2=2.19 3=1.52 F=4.06",
        &[],
    ),
    (
        "3.62 2.19 1.52 FD 4.06\nHillclimb",
        "1=3.62 2=2.19 3=1.52 F=4.06",
        &[],
    ),
    (
        "My car runs on 185/60R14\n3.62 2.19 1.52 FD 4.06",
        "1=3.62 2=2.19 3=1.52 F=4.06; tyre 185/60 R 14",
        &[],
    ),
];

#[test]
fn sentences_and_headings_of_every_gearbox_are_no_names() {
    check(NO_NAMES);
}

const NAMED: &[Case] = &[
    (
        "Stock box\n1st 3.62\n2nd 2.19\n3rd 1.5\n\nNew box\n1st 3.2\n2nd 2.0\n3rd 1.4",
        "Stock box> 1=3.62 2=2.19 3=1.5; New box> 1=3.2 2=2.0 3=1.4",
        &[NO_FINAL],
    ),
    (
        "Stock box\n3.62\n2.19\n1.5\n\nNew box\n3.2\n2.0\n1.4",
        "Stock box> 1=3.62 2=2.19 3=1.5; New box> 1=3.2 2=2.0 3=1.4",
        &[NO_FINAL],
    ),
    (
        "stock\n1 3.62\n2 2.19\n3 1.5\n\ncandidate\n1 3.2\n2 2.0\n3 1.4",
        "stock> 1=3.62 2=2.19 3=1.5; candidate> 1=3.2 2=2.0 3=1.4",
        &[NO_FINAL],
    ),
    (
        "Stock:\n3.62 2.19 1.5 1.1\nNew:\n3.2 2.0 1.4 1.0",
        "Stock> 1=3.62 2=2.19 3=1.5 4=1.1; New> 1=3.2 2=2.0 3=1.4 4=1.0",
        &[NO_FINAL],
    ),
    (
        "My box\n1. Gang 3,62\n2. Gang 2,19\n3. Gang 1,5\nHis box\n1. Gang 3,2\n2. Gang 2,0\n3. Gang 1,4\nBox C\n1. Gang 2,9\n2. Gang 1,9\n3. Gang 1,4\nAchse 4,06",
        "My box> 1=3,62 2=2,19 3=1,5 F=4,06; His box> 1=3,2 2=2,0 3=1,4 F=4,06; Box C> 1=2,9 2=1,9 3=1,4 F=4,06",
        &[],
    ),
    (
        "## Box I\n\n- 1st: 34/9\n- 2nd: 38/17\n- 3rd: 33/25\n\n## Box II\n\n- 1st: 33/10\n- 2nd: 37/18\n- 3rd: 34/26",
        "Box I> 1=34/9 2=38/17 3=33/25; Box II> 1=33/10 2=37/18 3=34/26",
        &[NO_FINAL],
    ),
];

#[test]
fn lists_with_a_name_above_each_are_sets_of_that_name() {
    check(NAMED);
}

const FINALS: &[Case] = &[
    (
        "Stock\nFinal 4.06\n1st 3.62\n2nd 2.19\n3rd 1.5\n\nNew\n1st 3.2\n2nd 2.0\n3rd 1.4\nR 3.3\nFinal 4.3",
        "Stock> 1=3.62 2=2.19 3=1.5 F=4.06; New> 1=3.2 2=2.0 3=1.4 R=3.3 F=4.3",
        &[],
    ),
    (
        "Stock\n3.62 2.19 1.5 1.1\nNew\n3.2 2.0 1.4 1.0\nfinal drive 4.06\ntyres 185/60R14",
        "Stock> 1=3.62 2=2.19 3=1.5 4=1.1 F=4.06; New> 1=3.2 2=2.0 3=1.4 4=1.0 F=4.06; tyre 185/60 R 14",
        &[],
    ),
    (
        "Stock\n3.62 2.19 1.5 1.1\n\nNew\n3.2 2.0 1.4 1.0\n\nBoth with a final drive of 4.06",
        "Stock> 1=3.62 2=2.19 3=1.5 4=1.1 F=4.06; New> 1=3.2 2=2.0 3=1.4 4=1.0 F=4.06",
        &[],
    ),
    (
        "Stock\n3.62 2.19 1.5 1.1\n\nNew\n3.2 2.0 1.4 1.0\nfinal 4.06",
        "Stock> 1=3.62 2=2.19 3=1.5 4=1.1; New> 1=3.2 2=2.0 3=1.4 4=1.0 F=4.06",
        &[NO_FINAL],
    ),
    (
        "final 4.06\n\nStock\n3.62 2.19 1.5 1.1\n\nNew\n3.2 2.0 1.4 1.0\nfinal 4.3",
        "Stock> 1=3.62 2=2.19 3=1.5 4=1.1 F=4.06; New> 1=3.2 2=2.0 3=1.4 4=1.0 F=4.3",
        &[],
    ),
];

#[test]
fn a_final_drive_belongs_to_its_list_or_to_all() {
    check(FINALS);
}

const ANEW: &[Case] = &[
    (
        "1st 3.62\n2nd 2.19\n3rd 1.5\n\n1st 3.2\n2nd 2.0\n3rd 1.4\n\nfinal 4.06",
        "1=3.62 2=2.19 3=1.5 F=4.06; 1=3.2 2=2.0 3=1.4 F=4.06",
        &[],
    ),
    (
        "1 3.62\n2 2.19\n3 1.5\nfinal 4.06\n\n1 3.2\n2 2.0\n3 1.4\nfinal 4.3",
        "1=3.62 2=2.19 3=1.5 F=4.06; 1=3.2 2=2.0 3=1.4 F=4.3",
        &[],
    ),
    (
        "1st 3.62\n2nd 2.19\n3rd 1.5\n\nNew box\n1st 3.2\n2nd 2.0\n3rd 1.4",
        "1=3.62 2=2.19 3=1.5; New box> 1=3.2 2=2.0 3=1.4",
        &[NO_FINAL],
    ),
];

#[test]
fn a_list_that_begins_anew_at_first_gear_is_a_further_set() {
    check(ANEW);
}

const ONE_BOX: &[Case] = &[
    (
        "1st 3.62\n2nd 2.19\n3rd 1.5\n\n1st 3.2\n2nd 2.0",
        "1=3.62 2=2.19 3=1.5",
        &[NO_FINAL, "Left out: 3.2, 2.0 (repeated"],
    ),
    (
        "Hillclimb car\n1st 3.62\n2nd 2.19\n3rd 1.5\n\nWith axle included\n1st 14.70\n2nd 8.89\n3rd 6.09\n\naxle 4.06",
        "Hillclimb car> 1=3.62 2=2.19 3=1.5 F=4.06",
        &["Left out: 14.70, 8.89, 6.09 (repeated"],
    ),
    (
        "1st 3.62\n2nd 2.19\n3rd 1.5\n\n1st 4.9\n2nd 8.1\n3rd 11.8\n\naxle 4.06",
        "1=3.62 2=2.19 3=1.5 F=4.06",
        &["Left out: 4.9, 8.1, 11.8 (repeated"],
    ),
    (
        "1st 3.778\n2nd 2.235\n3rd 1.320\n\n1st 34/9\n2nd 38/17\n3rd 33/25\n\naxle 4.06",
        "1=3.778 2=2.235 3=1.320 F=4.06",
        &["Left out: 34/9, 38/17, 33/25 (repeated"],
    ),
];

#[test]
fn further_figures_of_the_same_gears_are_no_further_set() {
    check(ONE_BOX);
}
