//! Which columns are there? Each is defined here, once, and everything that shows it follows.

use super::definition::{AtTheBench, ColumnDefinition, ForReaders, Holds, Key, Need, SetGear};
use super::measure::Measure;
use super::typed::{Typed, TypedColumn};
use crate::gearing::{ActsOn, EngineSpeed, Factor, GearRole, RoadSpeed, Upshift, stages_text};
use crate::units::{percent_difference_text, rpm_difference_text};
use std::borrow::Cow;

/// Every column, from left to right; the first names the gear.
pub static COLUMNS: &[&ColumnDefinition] = &[
    &ColumnDefinition {
        key: "gear",
        meaning: Some("label of the gear"),
        csv_title: "gear",
        holds: Holds::Label,
        is_forward_only: false,
        readers: Some(ForReaders {
            title: "gear",
            need: Need::Always,
            difference: None,
            bench: Some(AtTheBench {
                title: "gear",
                stands_out: true,
            }),
        }),
    },
    &ColumnDefinition {
        key: "ratio",
        meaning: Some("ratio of the gear: input turns for one output turn"),
        csv_title: "ratio",
        holds: Holds::TypedRatio,
        is_forward_only: false,
        readers: Some(ForReaders {
            title: "ratio",
            need: Need::Always,
            difference: None,
            bench: Some(at_the_bench("teeth or ratio")),
        }),
    },
    &ColumnDefinition {
        key: "final_drive",
        meaning: Some("ratio of the final drive that the gear drives"),
        csv_title: "final drive",
        holds: Holds::Number(Measure::Ratio, |g| Some(g.gear.gear.final_drive)),
        is_forward_only: false,
        // Readers are told once for the whole set.
        readers: None,
    },
    &ColumnDefinition {
        key: "overall_ratio",
        meaning: Some("engine turns for one wheel turn, all stages included"),
        csv_title: "overall ratio",
        holds: Holds::Number(Measure::Ratio, |g| Some(g.gear.gear.overall_ratio)),
        is_forward_only: false,
        readers: Some(ForReaders {
            title: "overall",
            need: Need::Detail(3),
            difference: None,
            bench: Some(AtTheBench {
                title: "overall",
                stands_out: true,
            }),
        }),
    },
    &ColumnDefinition {
        key: "step",
        meaning: Some("overall ratio ÷ that of the next gear; null on top and on a crawler"),
        csv_title: "step",
        holds: Holds::Number(Measure::Step, |g| g.gear.step),
        is_forward_only: true,
        readers: Some(ForReaders {
            title: "step",
            need: Need::Usual(1),
            difference: None,
            bench: None,
        }),
    },
    &ColumnDefinition {
        key: "shift_rpm",
        meaning: Some("engine speed at which the driver changes up; null on top and on a crawler"),
        csv_title: "shift at",
        holds: Holds::Number(Measure::TypedEngineSpeed, |g| {
            of_upshift(g, |up| up.shift_rpm)
        }),
        is_forward_only: true,
        readers: Some(ForReaders {
            title: "shift at",
            need: Need::Usual(3),
            difference: None,
            bench: Some(at_the_bench("shift at")),
        }),
    },
    &ColumnDefinition {
        key: "rpm_after_shift",
        meaning: Some("engine speed after that upshift; null on top and on a crawler"),
        csv_title: "falls to",
        holds: Holds::Number(Measure::EngineSpeed, |g| {
            of_upshift(g, |up| up.rpm_after_shift)
        }),
        is_forward_only: true,
        readers: Some(ForReaders {
            title: "falls to",
            need: Need::Usual(2),
            difference: None,
            bench: Some(at_the_bench("falls to")),
        }),
    },
    &ColumnDefinition {
        key: "rpm_drop",
        meaning: Some("engine speed lost at that upshift; null on top and on a crawler"),
        csv_title: "drop",
        holds: Holds::Number(Measure::EngineSpeed, |g| of_upshift(g, Upshift::rpm_drop)),
        is_forward_only: true,
        readers: Some(ForReaders {
            title: "drop",
            need: Need::Usual(4),
            difference: None,
            bench: None,
        }),
    },
    &ColumnDefinition {
        key: "drop_share",
        // A program divides the drop by the shift speed.
        meaning: None,
        csv_title: "drop",
        holds: Holds::Number(Measure::Share, |g| of_upshift(g, Upshift::drop_share)),
        is_forward_only: true,
        readers: Some(plain("drop", Need::Usual(5))),
    },
    &ColumnDefinition {
        key: "speed_per_1000_rpm_kmh",
        meaning: Some("road speed for every 1000 rpm"),
        csv_title: "per 1000 rpm",
        holds: Holds::Number(Measure::RoadSpeedPer1000Rpm, |g| {
            Some(g.gear.speed_per_1000_rpm_kmh)
        }),
        is_forward_only: false,
        readers: Some(plain("per 1000 rpm", Need::Detail(1))),
    },
    &ColumnDefinition {
        key: "idle_speed_kmh",
        meaning: Some("road speed at idle: crawl speed; null where idle is not known"),
        csv_title: "at idle",
        holds: Holds::AtIdle(Measure::RoadSpeed, |g| g.gear.idle_speed_kmh),
        is_forward_only: false,
        readers: Some(plain("at idle", Need::Detail(2))),
    },
    &ColumnDefinition {
        key: "speeds",
        meaning: Some("road speeds at the engine speeds that were asked for"),
        csv_title: "at",
        holds: Holds::AtEngineSpeeds(
            Measure::RoadSpeed,
            road_speed,
            Key {
                name: "speed_kmh",
                meaning: "road speed at it, also above the redline",
            },
        ),
        is_forward_only: false,
        readers: Some(ForReaders {
            title: "at",
            need: Need::Always,
            difference: None,
            bench: Some(at_the_bench("at")),
        }),
    },
    &ColumnDefinition {
        key: "redline_speed_kmh",
        meaning: Some(
            "road speed at the redline, also the highest for changing down into the gear",
        ),
        csv_title: "at redline",
        holds: Holds::Number(Measure::RoadSpeed, |g| Some(g.gear.redline_speed_kmh)),
        is_forward_only: false,
        readers: Some(ForReaders {
            title: "at redline",
            need: Need::Always,
            difference: None,
            bench: Some(at_the_bench("at redline")),
        }),
    },
    &ColumnDefinition {
        key: "engine_speeds",
        meaning: Some("engine speeds at the road speeds that were asked for"),
        csv_title: "at",
        holds: Holds::AtRoadSpeeds(
            Measure::EngineSpeed,
            engine_speed,
            Key {
                name: "engine_rpm",
                meaning: "engine speed at it, also above the redline",
            },
        ),
        is_forward_only: false,
        readers: Some(ForReaders {
            title: "at",
            need: Need::Always,
            difference: Some(rpm_difference),
            bench: Some(at_the_bench("at")),
        }),
    },
];

/// What a mark of yes or no says where it says yes.
const YES: Typed<'static> = Typed::Text(Cow::Borrowed("yes"));

/// Every column with something that was typed, behind those of [`COLUMNS`].
pub static TYPED_COLUMNS: &[&TypedColumn] = &[
    &TypedColumn {
        title: "teeth",
        unit: "",
        // They stand before the ratio.
        texts_need_it: |_| false,
        cell: |g| match g.ratio() {
            Some(ratio) if !matches!(ratio.factors(), [Factor::Number(_)]) => Typed::Ratio(ratio),
            _ => Typed::Nothing,
        },
    },
    &TypedColumn {
        title: "crawler",
        unit: "",
        texts_need_it: |set| set.gears.iter().any(|g| g.role == GearRole::Crawler),
        cell: |g| yes_if(g.gear.is_some_and(|gear| gear.role == GearRole::Crawler)),
    },
    &TypedColumn {
        title: "shift point",
        unit: "rpm",
        // Where there is an upshift, it says when.
        texts_need_it: |set| set.chain().count() == 1,
        cell: |g| {
            let shift = g.gear.map(|gear| g.set.shift_of(gear).rpm());
            shift.map_or(Typed::Nothing, Typed::Number)
        },
    },
    &TypedColumn {
        title: "final drives",
        unit: "",
        // Its words stand above the table.
        texts_need_it: |_| false,
        cell: |g| Typed::FinalDrives(&g.set.final_drives),
    },
    &TypedColumn {
        title: "on final drive",
        unit: "",
        texts_need_it: |set| set.final_drives.len() > 1,
        cell: |g| count(g.final_drive_number()),
    },
    &TypedColumn {
        title: "stages",
        unit: "",
        // Their words stand above the table.
        texts_need_it: |_| false,
        cell: |g| text(stages_text(&g.set.stages)),
    },
    &TypedColumn {
        title: "through stage",
        unit: "",
        texts_need_it: |set| set.stages.iter().any(|s| s.acts_on != ActsOn::EveryGear),
        cell: |g| text(g.stage_numbers()),
    },
    &TypedColumn {
        title: "tyre",
        unit: "",
        // Its words stand above the table.
        texts_need_it: |_| false,
        cell: |g| text(g.project.tyre_of(g.set).to_string()),
    },
    &TypedColumn {
        title: "baseline",
        unit: "",
        // What stands above all sets says so, and what the engine can.
        texts_need_it: |_| false,
        cell: |g| yes_if(g.is_baseline),
    },
    &TypedColumn {
        title: "idle",
        unit: "rpm",
        texts_need_it: |_| false,
        cell: |g| rpm(g.project.engine.idle),
    },
    &TypedColumn {
        title: "lowest useful",
        unit: "rpm",
        texts_need_it: |_| false,
        cell: |g| rpm(g.project.engine.lowest_useful),
    },
    &TypedColumn {
        title: "redline",
        unit: "rpm",
        texts_need_it: |_| false,
        cell: |g| rpm(Some(g.project.engine.redline)),
    },
    &TypedColumn {
        title: "position",
        unit: "",
        // It stands behind the label of the gear.
        texts_need_it: |_| false,
        cell: |g| {
            let position = g.position.map(Cow::Borrowed);
            position.map_or(Typed::Nothing, Typed::Text)
        },
    },
];

fn yes_if(is_so: bool) -> Typed<'static> {
    if is_so { YES } else { Typed::Nothing }
}

fn text(text: String) -> Typed<'static> {
    Typed::Text(Cow::Owned(text))
}

fn count(number: Option<usize>) -> Typed<'static> {
    number.map_or(Typed::Nothing, |number| text(number.to_string()))
}

fn rpm(speed: Option<EngineSpeed>) -> Typed<'static> {
    speed.map_or(Typed::Nothing, |speed| Typed::Number(speed.rpm()))
}

/// A column without differences, which the bench does without.
const fn plain(title: &'static str, need: Need) -> ForReaders {
    ForReaders {
        title,
        need,
        difference: None,
        bench: None,
    }
}

/// A column that stands on the page for the bench and is not brought out there.
const fn at_the_bench(title: &'static str) -> AtTheBench {
    AtTheBench {
        title,
        stands_out: false,
    }
}

fn of_upshift(gear: &SetGear<'_>, number: fn(&Upshift) -> f64) -> Option<f64> {
    gear.gear.upshift.as_ref().map(number)
}

fn road_speed(gear: &SetGear<'_>, rpm: EngineSpeed) -> f64 {
    gear.speed_kmh(rpm)
}

fn engine_speed(gear: &SetGear<'_>, speed: RoadSpeed) -> f64 {
    gear.engine_rpm(speed)
}

/// `−360 (−11.4 %)`: engine speed against engine speed.
fn rpm_difference(rpm: f64, before_rpm: f64) -> String {
    let difference = rpm_difference_text(rpm - before_rpm);
    let share = rpm / before_rpm - 1.0;
    if share.is_finite() {
        format!("{difference} ({})", percent_difference_text(share))
    } else {
        // Marked so slow in a file that there is nothing to divide by.
        difference
    }
}
