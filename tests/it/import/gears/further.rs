//! Do further stages, chains, tyre, redline and shift point of a text come with its gears?

use super::{Case, check};
use layshaft::import::gears::read_pasted;

const STAGES: &[Case] = &[
    (
        "Primary drive 71/34\n1st 2.62\n2nd 1.83\n3rd 1.42\n4th 1.17\nsprockets 15/43",
        "1=2.62 2=1.83 3=1.42 4=1.17 F=chain 43:15 [Primary drive: Fixed 71/34]",
        &["The chain, 43:15, was taken as the final drive"],
    ),
    (
        "primary ratio: 2.088 (71:34), gears 2.62 1.83 1.42 1.17, front 15 rear 43",
        "1=2.62 2=1.83 3=1.42 4=1.17 F=chain 43:15 [Primary drive: Fixed 71:34]",
        &["The chain, 43:15"],
    ),
    (
        "I run a 15T front and 43T rear sprocket.\n1st 2.62\n2nd 1.83\n3rd 1.42",
        "1=2.62 2=1.83 3=1.42 F=chain 43:15",
        &["The chain, 43:15"],
    ),
    (
        "1st 2.62\n2nd 1.83\n3rd 1.42\nfinal drive (chain) 43/15",
        "1=2.62 2=1.83 3=1.42 F=chain 43/15",
        &[],
    ),
    (
        "Motorrad: Primär 76/36, Gänge 36/14 32/18 29/21 27/24, Kette 16/45",
        "1=36/14 2=32/18 3=29/21 4=27/24 F=chain 45:16 [Primary drive: Fixed 76/36]",
        &["The chain, 45:16"],
    ),
    (
        "Transfer: 1.222 high / 3.32 low. Gears 3.69 2.18 1.40 1.00, R 3.9, diffs 3.54",
        "1=3.69 2=2.18 3=1.40 4=1.00 R=3.9 F=3.54 [Transfer box: High 1.222, Low 3.32]",
        &[],
    ),
    (
        "chain 520, 15/43. primary 2.0; gears 2.62 1.83 1.42 1.17",
        "1=2.62 2=1.83 3=1.42 4=1.17 F=chain 43:15 [Primary drive: Fixed 2.0]",
        &["The chain, 43:15"],
    ),
    (
        "kart: 1st 2.62 2nd 1.83 3rd 1.42, bevel final 1.21, chain 15/43",
        "1=2.62 2=1.83 3=1.42 F=1.21 [Chain: Fixed 43:15]",
        &[],
    ),
    (
        "1st 4.1\n2nd 2.3\n3rd 1.45\n4th 1.00\naxle 4.7\nTransfer box\nHigh 1.19\nLow 2.36",
        "1=4.1 2=2.3 3=1.45 4=1.00 F=4.7 [Transfer box: High 1.19, Low 2.36]",
        &[],
    ),
    (
        "4.1/2.3/1.45/1.00, diff 4.7, transfer case 1.19/2.36",
        "1=4.1 2=2.3 3=1.45 4=1.00 F=4.7 [Transfer box: High 1.19, Low 2.36]",
        &[],
    ),
    (
        "1st 4.1\n2nd 2.3\n3rd 1.45\nhigh range 1.19:1\nlow range 2.36:1\ndiff 4.7",
        "1=4.1 2=2.3 3=1.45 F=4.7 [Transfer box: High 1.19:1, Low 2.36:1]",
        &[],
    ),
    (
        "1st 4.1\n2nd 2.3\n3rd 1.45\nlow range 2.36\ndiff 4.7",
        "1=4.1 2=2.3 3=1.45 F=4.7 [Transfer box: High 1:1, Low 2.36]",
        &["High range was taken as 1:1"],
    ),
    (
        "1st 6.2\n2nd 3.4\n3rd 1.9\n4th 1.0\naxle 4.1, hub reduction 1.54",
        "1=6.2 2=3.4 3=1.9 4=1.0 F=4.1 [Hub reduction: Fixed 1.54]",
        &[],
    ),
    (
        "1st 3.4\n2nd 2.1\n3rd 1.4\n4th 1.0\naxle 3.7\noverdrive unit 0.79",
        "1=3.4 2=2.1 3=1.4 4=1.0 F=3.7 [Overdrive: Direct 1:1, Overdrive 0.79]",
        &[],
    ),
];

#[test]
fn a_stage_that_a_text_names_comes_with_the_set() {
    check(STAGES);
}

const OFFERS: &[Case] = &[
    (
        "1st 3.42\n2nd 1.98\n3rd 1.36\nFD 3.94\ntyres 185/70 R 13, redline 6,500, shift at 6000",
        "1=3.42 2=1.98 3=1.36 F=3.94; tyre 185/70 R 13; redline 6500; shift point 6000",
        &[],
    ),
    (
        "1st 3.42 2nd 1.98 3rd 1.36 diff 3.94, rev limit is 7200 rpm on 205/50R16s",
        "1=3.42 2=1.98 3=1.36 F=3.94; redline 7200; tyre 205/50 R 16",
        &[],
    ),
    (
        "7000 rpm redline, 195/60R14 tyres\n3.42/1.98/1.36/1.02 diff 3.94",
        "1=3.42 2=1.98 3=1.36 4=1.02 F=3.94; redline 7000; tyre 195/60 R 14",
        &[],
    ),
    (
        "Max rpm: 6.200\nReifen: 165 R 13\n1. Gang 3,42\n2. Gang 1,98\nAchse 3,94",
        "1=3,42 2=1,98 F=3,94; redline 6200",
        &["Tyre 165 R 13: "],
    ),
    (
        "rolling circumference 1915 mm, change up at 5 500 rpm\n3.42/1.98/1.36/1.02 diff 3.94",
        "1=3.42 2=1.98 3=1.36 4=1.02 F=3.94; tyre circumference 1915 mm; shift point 5500",
        &[],
    ),
    (
        "rev limiter 6.5k, 3.42/1.98/1.36/1.02 diff 3.94",
        "1=3.42 2=1.98 3=1.36 4=1.02 F=3.94; redline 6500",
        &[],
    ),
];

#[test]
fn tyre_redline_and_shift_point_are_offered() {
    check(OFFERS);
}

#[test]
fn an_offer_says_the_words_it_came_from() {
    let pasted = read_pasted("3.42/1.98/1.36, redline is 6,500 rpm, shift at 6000").unwrap();
    let words: Vec<&str> = pasted.offers.iter().map(|o| o.words.as_str()).collect();
    assert_eq!(words, ["redline is 6,500 rpm", "shift at 6000"]);
}
