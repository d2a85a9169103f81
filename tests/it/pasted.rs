//! Is a pasted gear set read as somebody of the trade would read it?
//!
//! All numbers are invented. A reading is written as `1=3.54 2=1.91 … R=3.30 F=4.06`, a crawler
//! with a star, and `/1` behind what drives the second final drive.

use layshaft::gearing::{Label, PastedSet, Ratio, parse_ratio, read_pasted};
use proptest::prelude::*;

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
    for reverse in &set.reverse {
        let shaft = shaft(reverse.final_drive);
        parts.push(format!("R={}{shaft}", reverse.ratio.text));
    }
    for final_drive in &set.final_drives {
        parts.push(format!("F={}", final_drive.ratio.text));
    }
    parts.join(" ")
}

/// A text, its reading, and a part of each remark in any order.
type Case = (&'static str, &'static str, &'static [&'static str]);

fn check(cases: &[Case]) {
    let mut failures = Vec::new();
    for (text, expected, remarks) in cases {
        let (reading, said) = match read_pasted(text) {
            Ok(set) => (shown(&set), set.remarks),
            Err(error) => (format!("error: {error}"), Vec::new()),
        };
        let is_said = |part: &&&str| said.iter().any(|remark| remark.contains(**part));
        let all_said = remarks.iter().filter(is_said).count() == remarks.len();
        if reading != *expected || !all_said || said.len() != remarks.len() {
            failures.push(format!(
                "{text:?}\n  read     {reading}\n  expected {expected}\n  remarks  {said:#?}"
            ));
        }
    }
    assert!(failures.is_empty(), "{}", failures.join("\n\n"));
}

const FIVE: &str = "1=3.54 2=1.91 3=1.31 4=1.03 5=0.83 F=4.06";
const FIVE_R: &str = "1=3.54 2=1.91 3=1.31 4=1.03 5=0.83 R=3.30 F=4.06";
const COMMAS: &str = "1=3,54 2=1,91 3=1,31 4=1,03 5=0,83 F=4,06";
const NO_FINAL: &str = "No final drive was found";

#[test]
fn one_gear_a_line_with_labels_is_read() {
    check(&[
        (
            "1st 3.54\n2nd 1.91\n3rd 1.31\n4th 1.03\n5th 0.83\nR 3.30\nFD 4.06",
            FIVE_R,
            &[],
        ),
        (
            "1st gear: 3.545:1\r\n2nd gear: 1.913:1\r\nReverse: 3.3:1\r\nFinal drive: 4.06:1\r\n",
            "1=3.545:1 2=1.913:1 R=3.3:1 F=4.06:1",
            &[],
        ),
        (
            "1. Gang 3,54\n2. Gang 1,91\n3. Gang 1,31\n4. Gang 1,03\n5. Gang 0,83\nHinterachse 4,06",
            COMMAS,
            &[],
        ),
        (
            "1. Gang: 3,54\n2. Gang: 1,91\nRückwärtsgang: 3,30\nHinterachse 3,07:1",
            "1=3,54 2=1,91 R=3,30 F=3,07:1",
            &[],
        ),
        (
            "1re 3,42\n2e 1,81\n3e 1,28\n4e 0,98\nMarche arrière 3,25\nPont 4,21",
            "1=3,42 2=1,81 3=1,28 4=0,98 R=3,25 F=4,21",
            &[],
        ),
        (
            "1ère vitesse : 3,42\n2ème vitesse : 1,81\nM.A. : 3,25\nRapport de pont : 4,21",
            "1=3,42 2=1,81 R=3,25 F=4,21",
            &[],
        ),
        (
            "1ª velocidad 3.5\n2ª velocidad 2.0\nmarcha atrás 3.6\ngrupo 4.1",
            "1=3.5 2=2.0 R=3.6 F=4.1",
            &[],
        ),
        (
            "1ª marcia 3,5\n2ª marcia 2,0\nretromarcia 3,6\nrapporto finale 4,1",
            "1=3,5 2=2,0 R=3,6 F=4,1",
            &[],
        ),
        (
            "I 3.6\nII 2.1\nIII 1.4\nIV 1.0\nR 3.7\naxle 3.9",
            "1=3.6 2=2.1 3=1.4 4=1.0 R=3.7 F=3.9",
            &[],
        ),
        (
            "I. Gang 3,6\nII. Gang 2,1\nAchsantrieb 3,9",
            "1=3,6 2=2,1 F=3,9",
            &[],
        ),
        (
            "First 3.54\nSecond 1.91\nThird 1.31\nTop 1.00\nReverse 3.30\nAxle ratio 4.06:1",
            "1=3.54 2=1.91 3=1.31 4=1.00 R=3.30 F=4.06:1",
            &[],
        ),
        (
            "Gear 1 = 3.54\nGear 2 = 1.91\nGear 3 = 1.31\nFinal = 4.06",
            "1=3.54 2=1.91 3=1.31 F=4.06",
            &[],
        ),
        (
            "1) 3.54\n2) 1.91\n3) 1.31\nR) 3.30\nFD) 4.06",
            "1=3.54 2=1.91 3=1.31 R=3.30 F=4.06",
            &[],
        ),
        (
            "1: 3.54\n2: 1.91\n3: 1.31\nFD: 4.06",
            "1=3.54 2=1.91 3=1.31 F=4.06",
            &[],
        ),
        (
            "1:3.54\n2:1.91\n3:1.31\nFD:4.06",
            "1=3.54 2=1.91 3=1.31 F=4.06",
            &[],
        ),
        (
            "1 3.54\n2 1.91\n3 1.31\n4 1\n5 0.83\nR 3.30\nFD 4.06",
            "1=3.54 2=1.91 3=1.31 4=1 5=0.83 R=3.30 F=4.06",
            &[],
        ),
        (
            "1 - 3.54\n2 – 1.91\n3 — 1.31\ndiff – 4.06",
            "1=3.54 2=1.91 3=1.31 F=4.06",
            &[],
        ),
        (
            "• 1st ..... 3.54\n• 2nd ..... 1.91\n• Rev ..... 3.30\n• Diff ..... 4.06",
            "1=3.54 2=1.91 R=3.30 F=4.06",
            &[],
        ),
        (
            "- 1st: 3.54\n- 2nd: 1.91\n- Final: 4.06",
            "1=3.54 2=1.91 F=4.06",
            &[],
        ),
        (
            "* 1st – 3.54\n* 2nd – 1.91\n**Final** – 4.06",
            "1=3.54 2=1.91 F=4.06",
            &[],
        ),
        (
            "\u{feff}1st\u{a0}3.54\n2nd\u{a0}1.91\nFD\u{a0}4.06",
            "1=3.54 2=1.91 F=4.06",
            &[],
        ),
        (
            "i1 = 3,54\ni2 = 1,91\niR = 3,30\niA = 4,06",
            "1=3,54 2=1,91 R=3,30 F=4,06",
            &[],
        ),
        (
            "1st\n3.54\n2nd\n1.91\nFinal drive\n4.06",
            "1=3.54 2=1.91 F=4.06",
            &[],
        ),
        (
            "1st\n2nd\n3rd\nFinal\n3.54\n1.91\n1.31\n4.06",
            "1=3.54 2=1.91 3=1.31 F=4.06",
            &[],
        ),
        (
            "3.54 first\n1.91 second\n1.31 third\n4.06 final",
            "1=3.54 2=1.91 3=1.31 F=4.06",
            &[],
        ),
        (
            "1:a växeln 3,54\n2:a växeln 1,91\nslutväxel 4,06",
            "1=3,54 2=1,91 F=4,06",
            &[],
        ),
        (
            "1 bieg 3,54\n2 bieg 1,91\nwsteczny 3,30\nprzekładnia główna 4,06",
            "1=3,54 2=1,91 R=3,30 F=4,06",
            &[],
        ),
        (
            "1e versnelling 3,54\n2e versnelling 1,91\nachteruit 3,30\neindreductie 4,06",
            "1=3,54 2=1,91 R=3,30 F=4,06",
            &[],
        ),
    ]);
}

#[test]
fn lists_in_one_line_are_read_and_their_last_value_proposed_as_final_drive() {
    const LAST: &[&str] = &["was taken as the final drive: it stands last"];
    check(&[
        ("3.54 1.91 1.31 1.03 0.83 4.06", FIVE, LAST),
        ("3.54/1.91/1.31/1.03/0.83/4.06", FIVE, LAST),
        ("3.54 / 1.91 / 1.31 / 1.03 / 0.83 / 4.06", FIVE, LAST),
        ("3.54, 1.91, 1.31, 1.03, 0.83, 4.06", FIVE, LAST),
        ("3.54,1.91,1.31,1.03,0.83,4.06", FIVE, LAST),
        ("3.54-1.91-1.31-1.03-0.83-4.06", FIVE, LAST),
        ("3.54 - 1.91 - 1.31 - 1.03 - 0.83 - 4.06", FIVE, LAST),
        ("3.54 · 1.91 · 1.31 · 1.03 · 0.83 · 4.06", FIVE, LAST),
        ("3.54\n1.91\n1.31\n1.03\n0.83\n\n4.06", FIVE, LAST),
        ("3,54 1,91 1,31 1,03 0,83 4,06", COMMAS, LAST),
        ("3,54; 1,91; 1,31; 1,03; 0,83; 4,06", COMMAS, LAST),
        ("3,54, 1,91, 1,31, 1,03, 0,83, 4,06", COMMAS, LAST),
        ("3,54/1,91/1,31/1,03/0,83/4,06", COMMAS, LAST),
        (
            "3.54/1.91/1.31/1.03/0.83; 4.06:1 axle",
            "1=3.54 2=1.91 3=1.31 4=1.03 5=0.83 F=4.06:1",
            &[],
        ),
        (
            "3.54/1.91/1.31/1.03/0.83; axle 4.06:1",
            "1=3.54 2=1.91 3=1.31 4=1.03 5=0.83 F=4.06:1",
            &[],
        ),
        ("3.54/1.91/1.31/1.03/0.83 4.06 axle", FIVE, &[]),
        (
            "4.06:1 axle; 3.54/1.91/1.31/1.03/0.83",
            "1=3.54 2=1.91 3=1.31 4=1.03 5=0.83 F=4.06:1",
            &[],
        ),
        ("Final 4.06 Gears 3.54 1.91 1.31 1.03 0.83", FIVE, &[]),
        (
            "Gears: 3.54, 1.91, 1.31, 1.03, 0.83; rev 3.30; final 4.06",
            FIVE_R,
            &[],
        ),
        ("3.54 1.91 1.31 1.03 0.83 R 3.30 FD 4.06", FIVE_R, &[]),
        (
            "3.54:1, 1.91:1, 1.31:1, diff 4.06:1",
            "1=3.54:1 2=1.91:1 3=1.31:1 F=4.06:1",
            &[],
        ),
        (
            "1:3.54 1:1.91 1:1.31 FD 1:4.06",
            "1=1:3.54 2=1:1.91 3=1:1.31 F=1:4.06",
            &[],
        ),
        (
            "1st 3.54, 2nd 1.91, 3rd 1.31, final 4.06",
            "1=3.54 2=1.91 3=1.31 F=4.06",
            &[],
        ),
        (
            "3.54 (1st), 1.91 (2nd), 1.31 (3rd), 4.06 (final)",
            "1=3.54 2=1.91 3=1.31 F=4.06",
            &[],
        ),
        (
            "1 3.54 2 1.91 3 1.31 4 1.03",
            "1=3.54 2=1.91 3=1.31 4=1.03",
            &[NO_FINAL],
        ),
        (
            "1/2/3/4: 3.54/1.91/1.31/1.03",
            "1=3.54 2=1.91 3=1.31 4=1.03",
            &[NO_FINAL],
        ),
        (
            "1st/2nd/3rd: 3.54/1.91/1.31",
            "1=3.54 2=1.91 3=1.31",
            &[NO_FINAL],
        ),
        ("Gears 1-5: 3.54 1.91 1.31 1.03 0.83, FD 4.06", FIVE, &[]),
        ("4 2.5 1.6 1 0.8", "1=4 2=2.5 3=1.6 4=1 5=0.8", &[NO_FINAL]),
        ("4/2.5/1.6/1 axle 3.9", "1=4 2=2.5 3=1.6 4=1 F=3.9", &[]),
        (".96 .83 .72; cwp 3.9", "1=.96 2=.83 3=.72 F=3.9", &[]),
        (
            "The 5-speed gearbox has ratios of 3.54, 1.91, 1.31, 1.03 and 0.83 to 1 with a 4.06 final drive.",
            "1=3.54 2=1.91 3=1.31 4=1.03 5=0.83:1 F=4.06",
            &[],
        ),
        (
            "5-Gang-Getriebe: 3,54 - 1,91 - 1,31 - 1,03 - 0,83, Achse 4,06",
            COMMAS,
            &[],
        ),
        (
            "Five-speed manual (3.54/1.91/1.31/1.03/0.83), 4.06 final",
            FIVE,
            &[],
        ),
    ]);
}

#[test]
fn tables_are_read_by_rows_and_by_columns() {
    check(&[
        (
            "| Gear | Ratio |\n|------|------:|\n| 1st | 3.54 |\n| 2nd | 1.91 |\n| R | 3.30 |\n| Final | 4.06 |",
            "1=3.54 2=1.91 R=3.30 F=4.06",
            &[],
        ),
        (
            "| 1st | 2nd | 3rd | R | FD |\n|---|---|---|---|---|\n| 3.54 | 1.91 | 1.31 | 3.30 | 4.06 |",
            "1=3.54 2=1.91 3=1.31 R=3.30 F=4.06",
            &[],
        ),
        (
            "Gear\t1\t2\t3\t4\tR\tFD\nRatio\t3.54\t1.91\t1.31\t1.03\t3.30\t4.06",
            "1=3.54 2=1.91 3=1.31 4=1.03 R=3.30 F=4.06",
            &[],
        ),
        (
            "1 2 3 4\n3.54 1.91 1.31 1.03",
            "1=3.54 2=1.91 3=1.31 4=1.03",
            &[NO_FINAL],
        ),
        (
            "1,2,3,4\n3.54,1.91,1.31,1.03",
            "1=3.54 2=1.91 3=1.31 4=1.03",
            &[NO_FINAL],
        ),
        (
            "Gang;Übersetzung\n1;3,54\n2;1,91\n3;1,31\nR;3,30\nAchse;4,06",
            "1=3,54 2=1,91 3=1,31 R=3,30 F=4,06",
            &[],
        ),
        (
            "gear,ratio\n1,3.54\n2,1.91\n3,1.31\nfinal,4.06",
            "1=3.54 2=1.91 3=1.31 F=4.06",
            &[],
        ),
        (
            "3.54 | 1st\n1.91 | 2nd\n4.06 | final",
            "1=3.54 2=1.91 F=4.06",
            &[],
        ),
        (
            "Gear\tRatio\tmph/1000\n1st\t3.54\t4.9\n2nd\t1.91\t9.1\nFinal\t4.06\t",
            "1=3.54 2=1.91 F=4.06",
            &["Left out: 4.9, 9.1 (a speed"],
        ),
        (
            "Gear | Speed | Ratio\n1st | 28.4 | 3.54\n2nd | 52.6 | 1.91\nfinal | | 4.06",
            "1=3.54 2=1.91 F=4.06",
            &["Left out: 28.4, 52.6 (a speed"],
        ),
        (
            "1st  3.54  14.37\n2nd  1.91  7.75\n3rd  1.31  5.32\nFinal  4.06",
            "1=3.54 2=1.91 3=1.31 F=4.06",
            &["Left out: 14.37, 7.75, 5.32 (beside"],
        ),
        (
            "1st\t34\t9\t3.778\n2nd\t38\t17\t2.235\nFD\t37\t9\t4.111",
            "1=34:9 2=38:17 F=37:9",
            &[],
        ),
        (
            "       1st   2nd   3rd   Final\nOld    3.54  1.91  1.31  4.06\nNew    3.25  1.78  1.19  3.73",
            "1=3.54 2=1.91 3=1.31 F=4.06",
            &["Left out: 3.25, 1.78, 1.19, 3.73 (without a label"],
        ),
        (
            "Ratios: 3.54 1.91 1.31 1.03; axle 4.06\nSpeed per 1000 rpm: 4.9 9.1 13.2 16.8",
            "1=3.54 2=1.91 3=1.31 4=1.03 F=4.06",
            &["Left out: 4.9, 9.1, 13.2, 16.8 (a speed"],
        ),
    ]);
}

#[test]
fn teeth_are_preferred_to_the_decimal_beside_them() {
    check(&[
        (
            "34/9 38/17 33/25 37/9",
            "1=34/9 2=38/17 3=33/25 F=37/9",
            &["it stands last"],
        ),
        (
            "34/9 (3.778)\n38/17 (2.235)\nFD 37/9 (4.111)",
            "1=34/9 2=38/17 F=37/9",
            &[],
        ),
        (
            "1st 3.778 (34:9)\n2nd 2.235 [38:17]\nFD 4.11 (37:9)",
            "1=34:9 2=38:17 F=37:9",
            &[],
        ),
        (
            "1st 34/9 = 3.778\n2nd 38/17 = 2.235",
            "1=34/9 2=38/17",
            &[NO_FINAL],
        ),
        (
            "1st 34T/9T\n2nd 38T/17T\nFD 8x33",
            "1=34/9 2=38/17 F=8x33",
            &[],
        ),
        (
            "1st 9:34 (3.778)\n2nd 17:38 (2.24)\nFD 9:37 (4.1)",
            "1=34:9 2=38:17 F=37:9",
            &[],
        ),
        (
            "1st 9:34 (3.778)\n2nd 17:38\n3rd 25:33",
            "1=34:9 2=38:17 3=33:25",
            &[NO_FINAL],
        ),
        (
            "1st 34/9 (3.545)\n2nd 38/17 (2.235)\nFD 4.06",
            "1=34/9 2=38/17 F=4.06",
            &["The teeth 34/9 do not give 3.545"],
        ),
        (
            "1st 44/29 * 49/12\n2nd 44/29 × 38/19\n3rd (44/29) x (30/24)\nfinal 37 / 9",
            "1=44/29 * 49/12 2=44/29 × 38/19 3=44/29 × 30/24 F=37/9",
            &[],
        ),
        (
            "1st 44/29 * 49/12 (6.195)\n2nd 44/29 * 38/19 = 3.034\nfinal 9 × 37",
            "1=44/29 * 49/12 2=44/29 * 38/19 F=9x37",
            &[],
        ),
        (
            "crown wheel and pinion 41:11\n1st 3.54\n2nd 1.91",
            "1=3.54 2=1.91 F=41:11",
            &[],
        ),
        (
            "4th 31:37\n3rd 33:33\n2nd 38:17\n1st 34:9\nFD 4",
            "1=34:9 2=38:17 3=33:33 4=31:37 F=4",
            &["put in order"],
        ),
    ]);
}

#[test]
fn reverse_is_read_with_and_without_a_minus() {
    check(&[
        (
            "1st 3.54\n2nd 1.91\nR -3.3\nFD 4.06",
            "1=3.54 2=1.91 R=3.3 F=4.06",
            &[],
        ),
        (
            "1. 3,54\n2. 1,91\nR −3,30\nAchse 4,06",
            "1=3,54 2=1,91 R=3,30 F=4,06",
            &[],
        ),
        (
            "1st 3.54 2nd 1.91 Rev: - 3.30 FD 4.06",
            "1=3.54 2=1.91 R=3.30 F=4.06",
            &[],
        ),
        (
            "3.54 1.91 1.31 1.03 0.83 -3.30 4.06",
            FIVE_R,
            &[
                "3.30 was taken as reverse: it has a minus",
                "4.06 was taken as the final",
            ],
        ),
        (
            "3.54 1.91 1.31 1.03 0.83 3.30 4.06",
            FIVE_R,
            &["3.30 was taken as reverse", "4.06 was taken as the final"],
        ),
        (
            "3.54 1.91 1.31 1.03 0.83 3.30, axle 4.06",
            FIVE_R,
            &["3.30 was taken as reverse"],
        ),
        (
            "1st 3.54\n2nd 1.91\nR1 3.3\nR2 1.8\nFD 4.06",
            "1=3.54 2=1.91 R=3.3 F=4.06",
            &["Left out: 1.8 (that gear already"],
        ),
    ]);
}

#[test]
fn two_final_drives_keep_their_gears() {
    const SIX: &str = "1=3.46 2=2.05 3=1.30 4=0.90 5=0.91/1 6=0.76/1 R=3.99/1 F=4.12 F=3.04";
    check(&[
        (
            "3.46 2.05 1.30 0.90 0.91 0.76 R 3.99\nfinal drive 4.12 (1-4), 3.04 (5, 6, R)",
            SIX,
            &["do not fall"],
        ),
        (
            "1st 3.46 2nd 2.05 3rd 1.30 4th 0.90 5th 0.91 6th 0.76 reverse 3.99\nFD1 4.12 (1st–4th) FD2 3.04 (5th, 6th & reverse)",
            SIX,
            &["do not fall"],
        ),
        (
            "1st 3.46\n2nd 2.05\n3rd 1.30\n4th 0.90\n5th 0.91\n6th 0.76\nR 3.99\nFinal drive (1-4): 4.12\nFinal drive (5,6,R): 3.04",
            SIX,
            &["do not fall"],
        ),
        (
            "1st 3.46\n2nd 2.05\n3rd 1.30\n4th 0.90\n5th 0.91\n6th 0.76\nR 3.99\nFinal drive 1st to 4th 4.12\nFinal drive 5th, 6th and R 3.04",
            SIX,
            &["do not fall"],
        ),
        (
            "1st 3.46\n2nd 2.05\n3rd 1.30\nFinal 4.12/3.04",
            "1=3.46 2=2.05 3=1.30 F=4.12 F=3.04",
            &["all gears were given the first"],
        ),
        (
            "1st 3.46\n2nd 2.05\n3rd 1.30\nAxle 4.12 or 3.73 or 3.42",
            "1=3.46 2=2.05 3=1.30 F=4.12 F=3.73 F=3.42",
            &["all gears were given the first"],
        ),
        (
            "1st 3.46\n2nd 2.05\n3rd 1.30\nFD 4.12 (1, 2) FD 3.04 (4)",
            "1=3.46 2=2.05 3=1.30 F=4.12 F=3.04",
            &["No final drive names gear 3"],
        ),
    ]);
}

#[test]
fn crawlers_overdrives_and_halves_are_gears_of_their_own() {
    check(&[
        (
            "Crawler 6.9\n1st 4.1\n2nd 2.2\n3rd 1.4\nFD 4.9",
            "C*=6.9 1=4.1 2=2.2 3=1.4 F=4.9",
            &[],
        ),
        (
            "C 6.9\n1 4.1\n2 2.2\n3 1.4\nR 6.1\nFD 4.9",
            "C*=6.9 1=4.1 2=2.2 3=1.4 R=6.1 F=4.9",
            &[],
        ),
        (
            "Low 6.9\n1st 4.1\n2nd 2.2\n3rd 1.4\nFD 4.9",
            "C*=6.9 1=4.1 2=2.2 3=1.4 F=4.9",
            &[],
        ),
        (
            "Low 2.9\nSecond 1.6\nHigh 1.00\naxle 4.1",
            "1=2.9 2=1.6 3=1.00 F=4.1",
            &[],
        ),
        (
            "Kriechgang 6,9\n1. Gang 4,1\n2. Gang 2,2\nAchse 4,9",
            "C*=6,9 1=4,1 2=2,2 F=4,9",
            &[],
        ),
        (
            "1st 3.54\n2nd 2.1\n3rd 1.38\n3rd O/D 1.08\n4th 1.00\n4th O/D 0.78\nFD 3.9",
            "1=3.54 2=2.1 3=1.38 3 OD=1.08 4=1.00 4 OD=0.78 F=3.9",
            &[],
        ),
        (
            "1st 3.54, 2nd 2.1, 3rd 1.38, 4th 1.00, O/D 0.78, FD 3.9",
            "1=3.54 2=2.1 3=1.38 4=1.00 OD=0.78 F=3.9",
            &[],
        ),
        (
            "1L 9.5\n1H 8.0\n2L 6.7\n2H 5.6\naxle 3.7",
            "1L=9.5 1H=8.0 2L=6.7 2H=5.6 F=3.7",
            &[],
        ),
        (
            "1st 3.7\n2nd 2.2\n3rd 1.4\n4th 1.0\nTransfer box: high 1.15, low 3.32\nFD 3.5",
            "1=3.7 2=2.2 3=1.4 4=1.0 F=3.5",
            &["Left out: 1.15, 3.32 (a further stage"],
        ),
        (
            "Primary 1.74\n1st 2.8\n2nd 2.0\n3rd 1.6\nFinal 42/15",
            "1=2.8 2=2.0 3=1.6 F=42/15",
            &["Left out: 1.74 (a further stage"],
        ),
    ]);
}

#[test]
fn what_is_no_ratio_is_left_out_and_said() {
    check(&[
        (
            "1st 3.54 (7.2 mph/1000)\n2nd 1.91 (13.3 mph/1000)\nFD 4.06",
            "1=3.54 2=1.91 F=4.06",
            &["Left out: 7.2 mph, 13.3 mph (a speed"],
        ),
        (
            "1st 3.54 7.2 mph per 1000 rpm\n2nd 1.91 13.3 mph per 1000 rpm\nFD 4.06",
            "1=3.54 2=1.91 F=4.06",
            &["Left out: 7.2 mph, 13.3 mph (a speed"],
        ),
        (
            "1. Gang 3,54 (11,6 km/h bei 1.000 U/min)\n2. Gang 1,91 (54 %)\nAchse 4,06",
            "1=3,54 2=1,91 F=4,06",
            &["Left out: 11,6 km/h, 54 % (a speed"],
        ),
        (
            "1st 3.54 (14.4)\n2nd 1.91 (7.8)\nFD 4.06",
            "1=3.54 2=1.91 F=4.06",
            &["Left out: 14.4, 7.8 (beside"],
        ),
        (
            "1998 model, 3.54/1.91/1.31/1.03, FD 4.06",
            "1=3.54 2=1.91 3=1.31 4=1.03 F=4.06",
            &["Left out: 1998 (not likely"],
        ),
        (
            "Gearbox € 450: 3.54 1.91 1.31 1.03 FD 4.06",
            "1=3.54 2=1.91 3=1.31 4=1.03 F=4.06",
            &["Left out: 450 (not likely"],
        ),
        (
            "3.54 1.91 1.31 1.03 FD 4.06, price 1,250.00 GBP",
            "1=3.54 2=1.91 3=1.31 4=1.03 F=4.06",
            &[],
        ),
        (
            "Saloon 2.0 3.65 1.97 1.37 1.00 FD 3.9",
            "1=3.65 2=1.97 3=1.37 4=1.00 F=3.9",
            &["Left out: 2.0 (not likely"],
        ),
        (
            "Type 265 S5-18/3 2.0l 5-speed: 3.65 1.97 1.37 1.00 FD 3.9",
            "1=3.65 2=1.97 3=1.37 4=1.00 F=3.9",
            &["Left out: 2.0 l (", "Left out: 265 ("],
        ),
        (
            "3.54 1.91 1.31 1.03 FD 4.06 spread 3.44",
            "1=3.54 2=1.91 3=1.31 4=1.03 F=4.06",
            &["Left out: 3.44 (a speed"],
        ),
        (
            "1st 3.54\n2nd 1.91\n1-2 1.85\nFD 4.06",
            "1=3.54 2=1.91 F=4.06",
            &["Left out: 1.85 (a speed"],
        ),
        (
            "1st 3.54\n2nd 1.91\ntop speed 120 mph\nFD 4.06",
            "1=3.54 2=1.91 F=4.06",
            &["Left out: 120 mph (a speed"],
        ),
        (
            "1st 3.54\n2nd 1.91\n2nd 1.78\nFD 4.06",
            "1=3.54 2=1.91 F=4.06",
            &["Left out: 1.78 (that gear already"],
        ),
        (
            "1st 3.54\n2nd 1.91\n2nd 1.91\nFD 4.06\nFD 4.06",
            "1=3.54 2=1.91 F=4.06",
            &[],
        ),
        (
            "1st 3.54\n2nd 401\n3rd 1.31\nFD 4.06",
            "1=3.54 3=1.31 F=4.06",
            &["Left out: 401 (not likely", "for gear 2"],
        ),
    ]);
}

#[test]
fn what_is_ambiguous_is_guessed_and_said() {
    check(&[
        (
            "4.06 3.54 1.91 1.31 1.03 0.83",
            FIVE,
            &["4.06 was taken as the final drive: it stands first"],
        ),
        (
            "3.07 3.54 1.91 1.31 1.03 0.83",
            "1=3.54 2=1.91 3=1.31 4=1.03 5=0.83 F=3.07",
            &["3.07 was taken as the final drive: it stands first"],
        ),
        (
            "0.83 1.03 1.31 1.91 3.54",
            "1=3.54 2=1.91 3=1.31 4=1.03 5=0.83",
            &["The list rises", NO_FINAL],
        ),
        (
            "0.83 1.03 1.31 1.91 3.54 4.06",
            FIVE,
            &["The list rises", "4.06 was taken as the final drive"],
        ),
        (
            "0.83 1.03 1.31 1.91 3.54 3.07",
            "1=3.54 2=1.91 3=1.31 4=1.03 5=0.83 F=3.07",
            &["The list rises", "3.07 was taken as the final drive"],
        ),
        (
            "4.06 0.83 1.03 1.31 1.91 3.54",
            FIVE,
            &["The list rises", "4.06 was taken as the final drive"],
        ),
        (
            "5th 0.83\n4th 1.03\n3rd 1.31\n2nd 1.91\n1st 3.54\nFD 4.06",
            FIVE,
            &["put in order"],
        ),
        (
            "31/37 33/33 38/17 34/9",
            "1=34/9 2=38/17 3=33/33 4=31/37",
            &["The list rises", NO_FINAL],
        ),
        (
            "9/34 17/38 33/33 37/31",
            "1=9/34 2=17/38 3=33/33 4=37/31",
            &[NO_FINAL],
        ),
        (
            "1st 3.54\n2nd 1.91\n3rd 1.31\n4.06",
            "1=3.54 2=1.91 3=1.31 F=4.06",
            &["4.06 was taken as the final drive: it has no label"],
        ),
        (
            "3,54,1,91,1,31,4,06",
            "1=3,54 2=1,91 3=1,31 F=4,06",
            &["every second comma", "4,06 was taken as the final"],
        ),
        ("3.54/", "1=3.54", &["Only one gear", NO_FINAL]),
        (
            "3.54 4.06",
            "1=3.54 F=4.06",
            &["Only one gear", "4.06 was taken"],
        ),
        (
            "1st 3.54\n2nd 1.91\n4th 1.03\nFD 4.06",
            "1=3.54 2=1.91 4=1.03 F=4.06",
            &["No ratio was found for gear 3"],
        ),
        (
            "3.54 1.91 1.91 1.03 FD 4.06",
            "1=3.54 2=1.91 3=1.91 4=1.03 F=4.06",
            &["do not fall"],
        ),
        (
            "1st 2nd 3rd: 3.54 1.91",
            "1=3.54 2=1.91",
            &["3 labels for 2 values", NO_FINAL],
        ),
        (
            "4.12 (1-2), 3.04 (3-4)\n3.46 2.05 1.30 0.90",
            "1=3.46 2=2.05 3=1.30/1 4=0.90/1 F=4.12 F=3.04",
            &["4.12 stands with several", "3.04 stands with several"],
        ),
    ]);
}

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
        ("axle 4.06", "only a final drive was found"),
        ("R 3.3", "only reverse was found"),
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
    let set = read_pasted("1st 9/34\n2nd 17/38\n3rd 33/33\nC 7/51\nR 10/33\nFD 9/37").unwrap();
    let (gears, finals, reverse) = set.resolved();
    let texts: Vec<String> = gears.iter().map(Ratio::to_string).collect();
    assert_eq!(texts, ["51:7", "34:9", "38:17", "33:33"]);
    assert_eq!(finals[0].to_string(), "37:9");
    assert_eq!(reverse.unwrap().to_string(), "33:10");
}

#[test]
fn a_corrected_value_is_resolved_anew() {
    let mut set = read_pasted("9/34 17/38 33/33; axle 9/37").unwrap();
    set.gears[1].ratio = layshaft::gearing::PastedRatio::new(" 2.3 ").unwrap();
    set.gears[2].final_drive = 7;
    let texts: Vec<String> = set.resolved().0.iter().map(Ratio::to_string).collect();
    assert_eq!(texts, ["34:9", "2.3", "33:33"]);
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
    let (gears, finals, _) = set.resolved();
    assert_eq!(
        (gears.len(), finals.len()),
        (set.gears.len(), set.final_drives.len())
    );
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
        "",
    ]);
    let end = prop::sample::select(vec!["\n", " ", "; ", "\r\n", ") ", " | ", "/"]);
    prop::collection::vec((label, between, value, end), 0..20).prop_map(|parts| {
        parts
            .iter()
            .map(|(l, b, v, e)| format!("{l}{b}{v}{e}"))
            .collect()
    })
}

proptest! {
    #[test]
    fn no_text_makes_the_reader_panic(text in any::<String>()) {
        if let Ok(set) = read_pasted(&text) {
            is_sound(&set);
        }
    }

    #[test]
    fn whatever_is_read_from_a_sheet_is_sound(text in sheet()) {
        if let Ok(set) = read_pasted(&text) {
            is_sound(&set);
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
        let set = read_pasted(&format!("{list}; axle 4.06")).unwrap();
        let read: Vec<&str> = set.gears.iter().map(|g| g.ratio.text.as_str()).collect();
        prop_assert_eq!(read, texts);
        prop_assert!(set.remarks.is_empty(), "{:?}", set.remarks);
    }
}
