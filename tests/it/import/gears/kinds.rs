//! Are teeth, reverse, several final drives and uncommon gears told apart?

use super::{Case, FIVE_R, NO_FINAL, check};

const TEETH: &[Case] = &[
    (
        "1st 34 teeth / 9 teeth, 2nd 38 teeth / 17 teeth, axle 9/37",
        "1=34/9 2=38/17 F=9/37",
        &[],
    ),
    (
        "1st 11/38 or 3.4545\n2nd 17/34 or 2.0\ndiff 15/38",
        "1=38:11 2=34:17 F=38:15",
        &[],
    ),
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
];

#[test]
fn teeth_are_preferred_to_the_decimal_beside_them() {
    check(TEETH);
}

const REVERSE: &[Case] = &[
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
        &["Left out: 1.8 (repeated"],
    ),
];

#[test]
fn reverse_is_read_with_and_without_a_minus() {
    check(REVERSE);
}

const SIX: &str = "1=3.46 2=2.05 3=1.30 4=0.90 5=0.91/1 6=0.76/1 R=3.99/1 F=4.12 F=3.04";

const TWO_FINALS: &[Case] = &[
    (
        "1st 3.46, 2nd 2.05, 3rd 1.30, 4th 0.90, 5th 0.91, 6th 0.76, R 3.99.\nFinal drive 4.12 for 1-4, 3.04 for 5-6 and R.",
        SIX,
        &[],
    ),
    (
        "1st-4th FD 4.12\n5th-6th and R FD 3.04\n1 3.46\n2 2.05\n3 1.30\n4 0.90\n5 0.91\n6 0.76\nR 3.99",
        SIX,
        &[],
    ),
    (
        "3.46 2.05 1.30 0.90 0.91 0.76 R 3.99\nfinal drive 4.12 (1-4), 3.04 (5, 6, R)",
        SIX,
        &[],
    ),
    (
        "1st 3.46 2nd 2.05 3rd 1.30 4th 0.90 5th 0.91 6th 0.76 reverse 3.99\nFD1 4.12 (1st–4th) FD2 3.04 (5th, 6th & reverse)",
        SIX,
        &[],
    ),
    (
        "1st 3.46\n2nd 2.05\n3rd 1.30\n4th 0.90\n5th 0.91\n6th 0.76\nR 3.99\nFinal drive (1-4): 4.12\nFinal drive (5,6,R): 3.04",
        SIX,
        &[],
    ),
    (
        "1st 3.46\n2nd 2.05\n3rd 1.30\n4th 0.90\n5th 0.91\n6th 0.76\nR 3.99\nFinal drive 1st to 4th 4.12\nFinal drive 5th, 6th and R 3.04",
        SIX,
        &[],
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
];

#[test]
fn two_final_drives_keep_their_gears() {
    check(TWO_FINALS);
}

const UNCOMMON: &[Case] = &[
    (
        "First: 3.54 to 1\nSecond: 1.91 to 1\nTop: direct\nREAR AXLE\nRatio: 4.06 to 1",
        "1=3.54:1 2=1.91:1 3=1:1 F=4.06:1",
        &["\"Direct\" was read as 1:1"],
    ),
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
        "1=3.7 2=2.2 3=1.4 4=1.0 F=3.5 [Transfer box: High 1.15, Low 3.32]",
        &[],
    ),
    (
        "Primary 1.74\n1st 2.8\n2nd 2.0\n3rd 1.6\nFinal 42/15",
        "1=2.8 2=2.0 3=1.6 F=42/15 [Primary drive: Fixed 1.74]",
        &[],
    ),
];

#[test]
fn crawlers_overdrives_and_halves_are_gears_of_their_own() {
    check(UNCOMMON);
}
