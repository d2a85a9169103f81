//! Do columns and lines that hold a set each become sets of their own?

use super::{Case, NO_FINAL, check, read_set};
use layshaft::gearing::Ratio;
use layshaft::import::gears::Behind;

const SETS: &[Case] = &[
    (
        "gear | stock | close\n1st | 3.42 | 2.92\n2nd | 1.98 | 1.95\n3rd | 1.36 | 1.41\nFD | 3.94 | 4.21",
        "stock> 1=3.42 2=1.98 3=1.36 F=3.94; close> 1=2.92 2=1.95 3=1.41 F=4.21",
        &[],
    ),
    (
        "| | Stock | Close ratio kit |\n|---|---|---|\n| 1st | 3.42 | 2.92 |\n| 2nd | 1.98 | 1.95 |\n| 3rd | 1.36 | 1.41 |\n\nfinal drive 3.94",
        "Stock> 1=3.42 2=1.98 3=1.36 F=3.94; Close ratio kit> 1=2.92 2=1.95 3=1.41 F=3.94",
        &[],
    ),
    (
        "       mine    his\n1st    3.42    2.92\n2nd    1.98    1.95\n3rd    1.36    1.41",
        "mine> 1=3.42 2=1.98 3=1.36; his> 1=2.92 2=1.95 3=1.41",
        &[NO_FINAL],
    ),
    (
        "Gang;Serie;Sport;Rallye\n1;3,42;2,92;2,71\n2;1,98;1,95;1,88\n3;1,36;1,41;1,44\nAchse;3,94;4,21;4,62",
        "Serie> 1=3,42 2=1,98 3=1,36 F=3,94; Sport> 1=2,92 2=1,95 3=1,41 F=4,21; Rallye> 1=2,71 2=1,88 3=1,44 F=4,62",
        &[],
    ),
    (
        "gear,early,late\n1,3.42,3.31\n2,1.98,1.92\n3,1.36,1.29",
        "early> 1=3.42 2=1.98 3=1.36; late> 1=3.31 2=1.92 3=1.29",
        &[NO_FINAL],
    ),
    (
        "stock: 3.42/1.98/1.36/1.02\nclose: 2.92/1.95/1.41/1.12\naxle 3.94",
        "stock> 1=3.42 2=1.98 3=1.36 4=1.02 F=3.94; close> 1=2.92 2=1.95 3=1.41 4=1.12 F=3.94",
        &[],
    ),
    (
        "stock   close\n3.42    2.92\n1.98    1.95\n1.36    1.41\nfinal 3.94",
        "stock> 1=3.42 2=1.98 3=1.36 F=3.94; close> 1=2.92 2=1.95 3=1.41 F=3.94",
        &[],
    ),
    (
        "stock close\n1st 3.42 2.92\n2nd 1.98 1.95\n3rd 1.36 1.41\nfinal drive 3.94 4.21",
        "stock> 1=3.42 2=1.98 3=1.36 F=3.94; close> 1=2.92 2=1.95 3=1.41 F=4.21",
        &[],
    ),
    (
        "Gear stock close\n1st 3.42 2.92\n2nd 1.98 1.95\n3rd 1.36 1.41\n4th - 1.08\nR 3.2 3.2\nfinal drive 3.94",
        "stock> 1=3.42 2=1.98 3=1.36 R=3.2 F=3.94; close> 1=2.92 2=1.95 3=1.41 4=1.08 R=3.2 F=3.94",
        &[],
    ),
    (
        "stock | close kit\n1st 3,42 2,92\n2nd 1,98 1,95\n3rd 1,36 1,41\nAxle: 3,94",
        "stock> 1=3,42 2=1,98 3=1,36 F=3,94; close kit> 1=2,92 2=1,95 3=1,41 F=3,94",
        &[],
    ),
    (
        "my box\n1st 3.42 13.47\n2nd 1.98 7.80\n3rd 1.36 5.36\nFinal 3.94",
        "1=3.42 2=1.98 3=1.36 F=3.94",
        &["Left out: 13.47, 7.80, 5.36 (beside"],
    ),
    (
        "Gear\tRatio\tOverall\n1st\t3.42\t13.47\n2nd\t1.98\t7.80\nFinal\t3.94\t",
        "1=3.42 2=1.98 F=3.94",
        &["Left out: 13.47, 7.80 (a speed"],
    ),
];

#[test]
fn columns_with_a_heading_become_sets_of_that_name() {
    check(SETS);
}

const OVERALL: &[Case] = &[
    (
        "Overall ratios: 1st 13.47, 2nd 7.80, 3rd 5.36, top 3.94",
        "overall 1=13.47 2=7.80 3=5.36 4=3.94",
        &[NO_FINAL],
    ),
    (
        "1st 13.47\n2nd 7.80\n3rd 5.36\ntop 3.94\nfinal drive 3.94",
        "overall 1=13.47 2=7.80 3=5.36 4=3.94 F=3.94",
        &["were read as overall ratios, final drive included: first gear is 13.47"],
    ),
    (
        "Total ratios (incl. final drive): 13.47 7.80 5.36 4.02\nfinal drive 3.94",
        "overall 1=13.47 2=7.80 3=5.36 4=4.02 F=3.94",
        &[],
    ),
    (
        "Gesamtübersetzung\n1. Gang 13,47\n2. Gang 7,80\n3. Gang 5,36\nHinterachse 3,94",
        "overall 1=13,47 2=7,80 3=5,36 F=3,94",
        &[],
    ),
    (
        "Gear | Overall\n1st | 13.47\n2nd | 7.80\n3rd | 5.36\nFinal | 3.94",
        "overall 1=13.47 2=7.80 3=5.36 F=3.94",
        &[],
    ),
    (
        "14.1 11.7 9.5 7.9 6.5 5.4 4.6 3.8; diffs 3.7",
        "1=14.1 2=11.7 3=9.5 4=7.9 5=6.5 6=5.4 7=4.6 8=3.8 F=3.7",
        &[],
    ),
    (
        "12.8 9.9 7.6 5.9 4.6 3.5 2.7 2.1 1.64 1.27 1.0 0.78; axle 3.4",
        "1=12.8 2=9.9 3=7.6 4=5.9 5=4.6 6=3.5 7=2.7 8=2.1 9=1.64 10=1.27 11=1.0 12=0.78 F=3.4",
        &[],
    ),
];

#[test]
fn overall_ratios_are_read_as_what_they_are() {
    check(OVERALL);
}

const SPEEDS: &[Case] = &[
    (
        "mph per 1000 rpm: 1st 5.1, 2nd 8.8, 3rd 12.8, top 17.4. Final drive 3.94",
        "mph 1=5.1 2=8.8 3=12.8 4=17.4 F=3.94",
        &[],
    ),
    (
        "1st 5.1 mph/1000rpm\n2nd 8.8 mph/1000rpm\n3rd 12.8 mph/1000rpm",
        "mph 1=5.1 2=8.8 3=12.8",
        &[NO_FINAL],
    ),
    (
        "Geschwindigkeit bei 1000 U/min in km/h: I 8,2 II 14,2 III 20,6 IV 28; Achse 3,94",
        "km/h 1=8,2 2=14,2 3=20,6 4=28 F=3,94",
        &[],
    ),
    (
        "km/h per 1,000 rpm 8.2/14.2/20.6/28, diff 3.94",
        "km/h 1=8.2 2=14.2 3=20.6 4=28 F=3.94",
        &[],
    ),
    (
        "Gear | mph/1000\n1st | 5.1\n2nd | 8.8\n3rd | 12.8\nFinal | 3.94",
        "mph 1=5.1 2=8.8 3=12.8 F=3.94",
        &[],
    ),
];

#[test]
fn road_speeds_at_1000_rpm_are_read_as_what_they_are() {
    check(SPEEDS);
}

const HEADED_SPEEDS: &[Case] = &[
    (
        "km/h per 1000 rpm\n1st 7.5\n2nd 13.6\n3rd 20.1\n4th 27.5",
        "km/h 1=7.5 2=13.6 3=20.1 4=27.5",
        &[NO_FINAL],
    ),
    (
        "Five-speed of 1968\nAxle 3.94\nmph per 1000 rpm:\n1st: 5.1\n2nd: 8.8\ntop: 12.8\nReverse: 4.9",
        "mph 1=5.1 2=8.8 3=12.8 R=4.9 F=3.94",
        &["Left out: 1968"],
    ),
    (
        "gear km/h per 1000 rpm\n1 7.5\n2 13.6\n3 20.1\nfinal drive 4.1",
        "km/h 1=7.5 2=13.6 3=20.1 F=4.1",
        &[],
    ),
    (
        "Road speed at 1000 rpm (mph)\n5.1\n8.8\n12.8\n17.4",
        "mph 1=5.1 2=8.8 3=12.8 4=17.4",
        &[NO_FINAL],
    ),
    (
        "Speeds in km/h/1000 rpm\nI 7,5\nII 13,6\nIII 20,1\nAchse 4,1",
        "km/h 1=7,5 2=13,6 3=20,1 F=4,1",
        &[],
    ),
    (
        "1st 3.54\n2nd 1.91\nFD 4.06\nkm/h per 1000 rpm\n1st 7.5\n2nd 13.6",
        "1=3.54 2=1.91 F=4.06",
        &["Left out: 7.5, 13.6 (repeated"],
    ),
    (
        "mph per 1000 rpm are not known\n1st 3.54\n2nd 1.91\nFD 4.06",
        "1=3.54 2=1.91 F=4.06",
        &[],
    ),
];

#[test]
fn a_heading_says_that_the_figures_beneath_it_are_road_speeds() {
    check(HEADED_SPEEDS);
}

fn values(ratios: &[Ratio]) -> Vec<String> {
    ratios.iter().map(|r| format!("{:.3}", r.value())).collect()
}

#[test]
fn overall_ratios_become_gear_ratios_behind_the_final_drive_and_the_stages() {
    let set = read_set("Overall: 1st 16.0, 2nd 8.0, R 12.0; axle 4.0");
    let resolved = set.resolved(&Behind::default()).unwrap();
    assert_eq!(values(&resolved.gears), ["4.000", "2.000"]);
    assert_eq!(values(resolved.reverse.as_slice()), ["3.000"]);

    let set = read_set("Overall: 1st 16.0, 2nd 8.0, R 12.0; axle 4.0\nprimary 2.0");
    let resolved = set.resolved(&Behind::default()).unwrap();
    assert_eq!(values(&resolved.gears), ["2.000", "1.000"]);

    let set = read_set("Overall: 1st 16.0, 2nd 8.0");
    let missing = set.resolved(&Behind::default()).unwrap_err().to_string();
    assert!(missing.contains("only with a final drive"), "{missing}");
    let final_drives = [Ratio::from_number(4.0).unwrap().into()];
    let behind = Behind {
        final_drives: &final_drives,
        stages_ratio: 1.25,
        ..Behind::default()
    };
    let resolved = set.resolved(&behind).unwrap();
    assert_eq!(values(&resolved.gears), ["3.200", "1.600"]);
}

#[test]
fn road_speeds_become_gear_ratios_once_a_tyre_is_known() {
    let set = read_set("km/h per 1000 rpm: 1st 7.5, 2nd 15, 3rd 30; axle 4.0");
    let missing = set.resolved(&Behind::default()).unwrap_err().to_string();
    assert!(missing.contains("only with a tyre"), "{missing}");
    let behind = Behind {
        rolling_circumference_mm: Some(2000.0),
        ..Behind::default()
    };
    // 1000 turns of 2 m a minute are 120 km/h.
    let resolved = set.resolved(&behind).unwrap();
    assert_eq!(values(&resolved.gears), ["4.000", "2.000", "1.000"]);

    let set = read_set("mph per 1000 rpm: 1st 7.5, 2nd 15, 3rd 30; axle 4.0");
    let resolved = set.resolved(&behind).unwrap();
    assert_eq!(values(&resolved.gears), ["2.485", "1.243", "0.621"]);
}
