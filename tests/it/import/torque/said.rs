//! Are points read that say themselves what is what?

use super::{Case, check};

pub(super) const POINTS: &[Case] = &[
    (
        "1000:120 2000:170 4500:155",
        "N·m?: 1000=120 2000=170 4500=155",
        &["120 was taken for 120 N·m"],
    ),
    (
        "1000:120, 2000:170,5; 4500:155",
        "N·m?: 1000=120 2000=170.5 4500=155",
        &["120 was taken"],
    ),
    (
        "1000:120,2000:170,4500:155",
        "N·m?: 1000=120 2000=170 4500=155",
        &["120 was taken"],
    ),
    ("Nm: 1000:120 2000:170", "N·m: 1000=120 2000=170", &[]),
    (
        "1000 rpm 120 Nm\n2000 rpm 170 Nm\n4500 rpm 155 Nm",
        "N·m: 1000=120 2000=170 4500=155",
        &[],
    ),
    (
        "120 Nm @ 1000\n170 Nm @ 2000\n155 Nm @ 4,500",
        "N·m: 1000=120 2000=170 4500=155",
        &[],
    ),
    (
        "120 N·m at 1000 rpm, 170 N·m at 2 000 rpm and 155 N·m at 4500 rpm",
        "N·m: 1000=120 2000=170 4500=155",
        &[],
    ),
    (
        "Max. Drehmoment 320 Nm bei 1750–3000 U/min, max. Leistung 110 kW (150 PS) bei 4000 U/min",
        "N·m: 1750=320 3000=320 4000=262.6",
        &[],
    ),
    (
        "Peak torque: 295 lb-ft @ 3,000 rpm\nPeak power: 240 bhp @ 4,800 rpm",
        "lb·ft: 3000=400 4800=356",
        &[],
    ),
    (
        "rpm 1000, Nm 120\nrpm 2000, Nm 170",
        "N·m: 1000=120 2000=170",
        &[],
    ),
    (
        "1000 → 120 Nm\n2000 → 170 Nm",
        "N·m: 1000=120 2000=170",
        &[],
    ),
    (
        "2.5k rpm = 168 Nm\n4k rpm = 160 Nm",
        "N·m: 2500=168 4000=160",
        &[],
    ),
    (
        "55 kW à 5500 tr/min, 12,3 mkg à 3000 tr/min",
        "kgf·m: 3000=120.6 5500=95.5",
        &["fall from row to row"],
    ),
    (
        "Max. torque (Nm/rpm): 320/1750-3000\nMax. power (kW/rpm): 110/4000",
        "N·m: 1750=320 3000=320 4000=262.6",
        &[],
    ),
    (
        "320 Nm/1750...3000 rpm\n110/150 kW/PS at 4000 rpm",
        "N·m: 1750=320 3000=320 4000=262.6",
        &[],
    ),
    (
        "* 1000 to 1500 rpm: 120 Nm\n* 2000 rpm: 170 Nm",
        "N·m: 1000=120 1500=120 2000=170",
        &[],
    ),
    (
        "n=1000 M=120\nn=2000 M=170",
        "N·m?: 1000=120 2000=170",
        &["120 was taken"],
    ),
    (
        "idle 850 rpm, redline 7100 rpm, 120 Nm at 3000 rpm, 100 Nm at 5000 rpm",
        "N·m: 3000=120 5000=100",
        &["Left out: \"850\", \"7100\" (not known"],
    ),
    (
        "at 1000 rpm 120 Nm and 12.6 kW, at 2000 rpm 170 Nm and 35.6 kW",
        "N·m: 1000=120 2000=170",
        &[],
    ),
];

#[test]
fn points_that_say_what_is_what_are_read() {
    check(POINTS);
}
