//! Is a pasted gear set read as somebody of the trade would read it?
//!
//! All numbers are invented. A reading is written as `1=3.54 2=1.91 … R=3.30 F=4.06`, a crawler
//! with a star, and `/1` behind what drives the second final drive.

mod blocks;
mod columns;
mod doubtful;
mod forum;
mod further;
mod kinds;
mod labelled;
mod lists;
mod tables;

use super::{Case, check_readings};
use crate::support::gear_sets;
use layshaft::gearing::{ActsOn, GearSet, Label, Position, Ratio, Stage, parse_ratio};
use layshaft::import::gears::{
    Behind, FigureKind, Offered, Pasted, PastedRatio, PastedSet, pasted_parts, read_pasted,
};
use layshaft::units::SpeedUnit;
use proptest::prelude::*;

/// The only set of a text.
fn read_set(text: &str) -> PastedSet {
    let mut pasted = read_pasted(text).unwrap();
    assert_eq!(pasted.sets.len(), 1, "{text}");
    pasted.sets.remove(0)
}

fn shown(set: &PastedSet) -> String {
    let shaft = |at: usize| {
        if at == 0 {
            String::new()
        } else {
            format!("/{at}")
        }
    };
    let mut parts: Vec<String> = Vec::new();
    for gear in &set.gears {
        let star = if gear.is_crawler { "*" } else { "" };
        let shaft = shaft(gear.final_drive);
        parts.push(format!("{}{star}={}{shaft}", gear.label, gear.ratio.text));
    }
    if let Some(reverse) = &set.reverse {
        let shaft = shaft(reverse.final_drive);
        parts.push(format!("R={}{shaft}", reverse.ratio.text));
    }
    for final_drive in &set.final_drives {
        let kind = if final_drive.is_chain { "chain " } else { "" };
        parts.push(format!("F={kind}{}", final_drive.ratio.text));
    }
    for stage in &set.stages {
        let positions: Vec<String> = stage
            .positions
            .iter()
            .map(|p| format!("{} {}", p.name, p.ratio.text))
            .collect();
        parts.push(format!("[{}: {}]", stage.name, positions.join(", ")));
    }
    parts.join(" ")
}

/// All sets and offers of a reading, and the remarks on all of them.
fn all_shown(pasted: Pasted) -> (String, Vec<String>) {
    let mut parts = Vec::new();
    let mut remarks = Vec::new();
    for set in pasted.sets {
        let kind = match set.kind {
            FigureKind::GearRatio => "",
            FigureKind::Overall => "overall ",
            FigureKind::SpeedPer1000(SpeedUnit::Mph) => "mph ",
            FigureKind::SpeedPer1000(SpeedUnit::Kmh) => "km/h ",
        };
        let name = set.name.as_ref().map(|name| format!("{name}> "));
        parts.push(format!("{}{kind}{}", name.unwrap_or_default(), shown(&set)));
        for remark in set.remarks {
            if !remarks.contains(&remark) {
                remarks.push(remark);
            }
        }
    }
    for offer in pasted.offers {
        let value = match offer.offered {
            Offered::Tyre(tyre) => tyre.to_string(),
            Offered::Redline(speed) | Offered::ShiftPoint(speed) => speed.rpm().to_string(),
        };
        parts.push(format!("{} {value}", offer.offered.name()));
    }
    (parts.join("; "), remarks)
}

#[track_caller]
fn check(cases: &[Case]) {
    check_readings(cases, |text| match read_pasted(text) {
        Ok(pasted) => all_shown(pasted),
        Err(error) => (format!("error: {error}"), Vec::new()),
    });
}

const FIVE: &str = "1=3.54 2=1.91 3=1.31 4=1.03 5=0.83 F=4.06";
const FIVE_R: &str = "1=3.54 2=1.91 3=1.31 4=1.03 5=0.83 R=3.30 F=4.06";
const COMMAS: &str = "1=3,54 2=1,91 3=1,31 4=1,03 5=0,83 F=4,06";
const NO_FINAL: &str = "No final drive was found";

#[test]
fn text_without_a_gear_set_is_answered_with_what_to_do() {
    for (text, part) in [
        ("", "no gear ratio was found"),
        (" \n\t ", "no gear ratio was found"),
        ("hello world", "no gear ratio was found"),
        ("in 1998 for € 450", "no gear ratio was found"),
        ("12.03.1998", "no gear ratio was found"),
        ("0 0 0", "no gear ratio was found"),
        ("1st\n2nd\n3rd", "no gear ratio was found"),
        ("axle 4.06", "gives a final drive but no gear"),
        ("R 3.3", "gives reverse but no gear"),
        (
            "Speed in gears: 1st 28 mph, 2nd 52 mph, 3rd 80 mph",
            "gives speeds or overall figures but no gear",
        ),
        (
            "9 8 7.5 7 6.5 6 5.5 5 4.5 4 3.5 3 2.5 2",
            "14 gears were found",
        ),
        (
            "1st 3.5\n2nd 2\nFD 4.1/3.9/3.7/3.5",
            "4 final drives were found",
        ),
        (&"3.54 ".repeat(5000), "the text has 25000 characters"),
    ] {
        let error = read_pasted(text).expect_err(text).to_string();
        assert!(error.contains(part), "{text:?}: {error}");
        assert!(error.chars().count() < 200, "{error}");
    }
}

#[test]
fn tooth_pairs_are_resolved_with_the_final_drives_behind_the_gears() {
    let set = read_set("1st 9/34\n2nd 17/38\n3rd 33/33\nC 7/51\nR 10/33\nFD 9/37");
    let resolved = set.resolved(&Behind::default()).unwrap();
    let texts: Vec<String> = resolved.gears.iter().map(Ratio::to_string).collect();
    assert_eq!(texts, ["51:7", "34:9", "38:17", "33:33"]);
    assert_eq!(resolved.final_drives[0].to_string(), "37:9");
    assert_eq!(resolved.reverse.unwrap().to_string(), "33:10");
}

#[test]
fn a_corrected_value_is_resolved_anew() {
    let mut set = read_set("9/34 17/38 33/33; axle 9/37");
    set.gears[1].ratio = PastedRatio::new(" 2.3 ").unwrap();
    set.gears[2].final_drive = 7;
    let resolved = set.resolved(&Behind::default()).unwrap();
    let texts: Vec<String> = resolved.gears.iter().map(Ratio::to_string).collect();
    assert_eq!(texts, ["34:9", "2.3", "33:33"]);
}

#[test]
fn what_a_text_does_not_say_stays_with_the_set_that_it_goes_into() {
    let mut parts = gear_sets::spec(vec![gear_sets::ratio(4.0)], gear_sets::ratio(3.5));
    let acts_on = ActsOn::Only([parts.gears[0].id].into());
    let positions = vec![Position {
        name: gear_sets::name("High"),
        ratio: gear_sets::ratio(1.0),
    }];
    parts.stages = vec![Stage {
        name: gear_sets::name("Transfer box"),
        positions,
        present: 0,
        acts_on,
        shows_others: false,
    }];
    let before = GearSet::try_from(parts).unwrap();

    let without_final = pasted_parts(&before, &read_set("3.54/1.91/1.31"), None).unwrap();
    assert_eq!(without_final.final_drives, before.final_drives);
    assert_eq!(without_final.name, before.name);
    assert_eq!(without_final.shift, before.shift);
    // The gears that the stage named are gone.
    assert_eq!(without_final.stages[0].acts_on, ActsOn::EveryGear);
    assert_eq!(without_final.gears.len(), 3);

    let with_final = pasted_parts(&before, &read_set("3.54/1.91/1.31/4.06"), None).unwrap();
    assert_eq!(with_final.final_drives, [gear_sets::ratio(4.06).into()]);
    for parts in [without_final, with_final] {
        assert!(GearSet::try_from(parts).is_ok());
    }
}

/// Texts of the longest length that take the most steps, each a part repeated.
#[test]
fn the_longest_texts_are_read_or_refused() {
    for part in [
        "1 3.54\n",
        "3.54/",
        "(",
        ")",
        "(1)",
        "a.b.",
        "1st/",
        "R&",
        "1-",
        "x1",
        "\t1",
        "FD 4.",
        ",",
        "mph,",
        "34/9 (3.5) ",
        "1*",
        "top a ",
        "C(R",
        "1,2,",
        "I II ",
        "= 1",
        "final drive ",
        "1:",
        "- 1 to ",
        "€",
        "1st 2nd\n",
        "a | b\n",
        "a | b | c\n1 | 2\n",
        "a: 1 2 3\n",
        "sprocket ",
        "front 16 ",
        "transfer high ",
        "low\n",
        "redline at ",
        "tyre 185/",
        "mph 1000 ",
        "#1 ",
        "3·",
        "chain 16 ",
        "overall incl ",
        "stock\n1 3.5\n2 2\n3 1.4\n",
        "1 3.5\n2 2\n3 1.4\n\n",
        "[b",
        "name\n",
    ] {
        let text: String = part.chars().cycle().take(20_000).collect();
        if let Ok(pasted) = read_pasted(&text) {
            assert!((1..=3).contains(&pasted.sets.len()));
            pasted.sets.iter().for_each(is_sound);
        }
    }
}

fn is_sound(set: &PastedSet) {
    assert!((1..=12).contains(&set.gears.len()));
    assert!(set.final_drives.len() <= 3);
    assert!(set.gears.iter().any(|gear| !gear.is_crawler));
    let mut labels: Vec<&str> = Vec::new();
    let shafts = set.final_drives.len().max(1);
    for gear in &set.gears {
        assert!(Label::new(&gear.label).is_ok() && gear.label != "R");
        assert!(!labels.contains(&gear.label.as_str()));
        labels.push(&gear.label);
        assert!(gear.final_drive < shafts);
    }
    let reverse = set.reverse.iter().map(|r| &r.ratio);
    let finals = set.final_drives.iter().map(|f| &f.ratio);
    for ratio in set
        .gears
        .iter()
        .map(|g| &g.ratio)
        .chain(reverse)
        .chain(finals)
    {
        assert_eq!(parse_ratio(&ratio.text).as_ref(), Ok(&ratio.ratio));
    }
    for remark in &set.remarks {
        assert!(
            remark.ends_with('.') && remark.chars().count() < 400,
            "{remark}"
        );
    }
    let final_drives = [gear_sets::ratio(4.0).into()];
    let behind = Behind {
        final_drives: &final_drives,
        stages_ratio: 1.0,
        rolling_circumference_mm: Some(2000.0),
    };
    if let Ok(resolved) = set.resolved(&behind) {
        assert_eq!(
            (resolved.gears.len(), resolved.final_drives.len()),
            (set.gears.len(), set.final_drives.len())
        );
        assert_eq!(resolved.stages.len(), set.stages.len());
    } else {
        assert_ne!(set.kind, FigureKind::GearRatio);
    }
}

/// Lines in the shapes that people paste, put together at random.
fn sheet() -> impl Strategy<Value = String> {
    let label = prop::sample::select(vec![
        "1st",
        "2.",
        "3",
        "IV",
        "5e",
        "R",
        "FD",
        "final drive",
        "Low",
        "Top",
        "C",
        "O/D",
        "gear",
        "speed",
        "transfer",
        "1-4",
        "",
        "mph",
        "1L",
        "Post 13:",
        "#7",
        "overall",
        "mph/1000 rpm",
        "stock | close",
        "\nStock box\n",
        "\n\n## New:\n1st",
        "primary",
        "sprockets",
        "front",
        "rear",
        "redline",
        "shift at",
        "tyres",
    ]);
    let between = prop::sample::select(vec![
        " ", ": ", "\t", " | ", ";", ", ", " = ", "-", " - ", "/", " (", " * ", "x",
    ]);
    let value = prop::sample::select(vec![
        "3.54",
        "1,91",
        "34/9",
        "34:9",
        "1:4.3",
        "8x33",
        "-3.3",
        ".83",
        "4",
        "1998",
        "3,54,1,91",
        "(5, 6, R)",
        "7.2 mph",
        "44/29*49/12",
        "1",
        "(1st)",
        "€ 450",
        "6,500",
        "185/60 R 14",
        "3·90",
        "0 -1 -2",
        "14.4",
        "",
    ]);
    let end = prop::sample::select(vec!["\n", " ", "; ", "\r\n", ") ", " | ", "/"]);
    prop::collection::vec((label, between, value, end), 0..20).prop_map(|parts| {
        let text = |(l, b, v, e): &(&str, &str, &str, &str)| format!("{l}{b}{v}{e}");
        let parts: Vec<String> = parts.iter().map(text).collect();
        parts.concat()
    })
}

proptest! {
    #[test]
    fn no_text_makes_the_reader_panic(text in any::<String>()) {
        if let Ok(pasted) = read_pasted(&text) {
            assert!((1..=3).contains(&pasted.sets.len()));
            pasted.sets.iter().for_each(is_sound);
        }
    }

    #[test]
    fn whatever_is_read_from_a_sheet_is_sound(text in sheet()) {
        if let Ok(pasted) = read_pasted(&text) {
            assert!((1..=3).contains(&pasted.sets.len()));
            pasted.sets.iter().for_each(is_sound);
        }
    }

    #[test]
    fn a_plain_list_is_read_as_it_stands(
        steps in prop::collection::vec(1.15..1.6_f64, 1..6),
        comma in any::<bool>(),
        separator in prop::sample::select(vec![" ", "/", "; ", ", ", " / ", "\n", "\t"]),
    ) {
        let mut ratios = vec![0.83_f64];
        for step in steps {
            ratios.push(ratios[ratios.len() - 1] * step);
        }
        ratios.reverse();
        let mut texts: Vec<String> = ratios.iter().map(|r| format!("{r:.3}")).collect();
        if comma {
            texts = texts.iter().map(|t| t.replace('.', ",")).collect();
        }
        let list = texts.join(separator);
        let set = read_set(&format!("{list}; axle 4.06"));
        let read: Vec<&str> = set.gears.iter().map(|g| g.ratio.text.as_str()).collect();
        prop_assert_eq!(read, texts);
        prop_assert!(set.remarks.is_empty(), "{:?}", set.remarks);
    }
}
