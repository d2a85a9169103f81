//! Is what is no ratio left out, and what is ambiguous guessed, and is it said?

use super::{Case, FIVE, NO_FINAL, check};

const LEFT_OUT: &[Case] = &[
    (
        "1st 3.54; 2nd 1.91; Final 4.06 (5.8 s 0-60)",
        "1=3.54 2=1.91 F=4.06",
        &["Left out: 5.8 s (a speed", "Left out: 0, 60 (beside"],
    ),
    (
        "9\" axle 4.11, 3.54 1.91 1.31",
        "1=3.54 2=1.91 3=1.31 F=4.11",
        &["Left out: 9 inch (a speed"],
    ),
    (
        "Coupe 5.0 3.35 1.93 1.29 1.00 axle 2.73",
        "1=3.35 2=1.93 3=1.29 4=1.00 F=2.73",
        &["Left out: 5.0 (not likely"],
    ),
    (
        "1.6i from 12.03.1998: 3.54/1.91/1.31; axle 4.06",
        "1=3.54 2=1.91 3=1.31 F=4.06",
        &["Left out: 1.6i, 12.03.1998 (not likely"],
    ),
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
        &["Left out: 1,250.00 (not likely"],
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
        &["Left out: 1.78 (repeated"],
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
    (
        "1st 3.54, 2nd 1.91. Final drive 3.9:1. mph/1000 rpm in top 21.3",
        "1=3.54 2=1.91 F=3.9:1",
        &["Left out: 21.3 (a speed"],
    ),
    (
        "Speed in gears: 1st 28, 2nd 52, 3rd 80. Ratios 3.54, 1.91, 1.31; final 4.06",
        "1=3.54 2=1.91 3=1.31 F=4.06",
        &["Left out: 28, 52, 80 (a speed"],
    ),
    (
        "It has a 1.8 engine and gearbox ratios 3.54 1.91 1.31 with 4.06 diff",
        "1=3.54 2=1.91 3=1.31 F=4.06",
        &["Left out: 1.8 (not likely"],
    ),
    (
        "Gears 3.54 1.91 1.31, FD 4.06, 195/50 R15",
        "1=3.54 2=1.91 3=1.31 F=4.06; tyre 195/50 R 15",
        &[],
    ),
    (
        "Old: 3.54/1.91/1.31/1.03/0.83 FD 4.06\nNew: 3.25/1.78/1.19/0.94/0.76 FD 3.73",
        "Old> 1=3.54 2=1.91 3=1.31 4=1.03 5=0.83 F=4.06; New> 1=3.25 2=1.78 3=1.19 4=0.94 5=0.76 F=3.73",
        &[],
    ),
    (
        "Primary reduction 2.100 (84/40)\nFinal reduction 2.800 (42/15)\n1st 2.846 (37/13)\n2nd 1.947 (37/19)",
        "1=37/13 2=37/19 F=42/15 [Primary drive: Fixed 84/40]",
        &[],
    ),
];

#[test]
fn what_is_no_ratio_is_left_out_and_said() {
    check(LEFT_OUT);
}

const AMBIGUOUS: &[Case] = &[
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
];

#[test]
fn what_is_ambiguous_is_guessed_and_said() {
    check(AMBIGUOUS);
}
