//! The flags: what they mean, and which subcommands take them.
//!
//! One table serves the reading, the messages and the help.

pub(super) use super::flag::Flag;
use super::flag_row::{
    CHART, FIGURES, FlagRow, Group, MARKED, OF_PROJECT, TABLE, TEXTS, VIEWS, WRITTEN, of_count,
    of_pairs, of_preload, of_shim, of_wish, row, set, technical,
};
use super::subcommand::Subcommand;
use Flag::{
    As, Circumference, Decimal, Drops, Final, Gears, Idle, LowestUseful, Name, NoNote, NoProject,
    NoTable, Page, Pasted, Redline, Reverse, Rpm, Shift, Show, Speed, Theme, Tyre, Units, Width,
};
use Group::Speeds;

/// All flags, in the order of the help.
pub(super) const FLAGS: [FlagRow; 84] = [
    set(
        (Gears, "gears"),
        "RATIOS",
        "first to top, parted by blanks; once for each of up to three sets",
    ),
    set(
        (Pasted, "pasted"),
        "FILE",
        "a copied text with the sets, or - for standard input, instead of --gears",
    ),
    set(
        (Final, "final"),
        "RATIO",
        "the final drive, or \"chain FRONT/REAR\"; once for all sets or once for each",
    ),
    set(
        (Tyre, "tyre"),
        "SIZE",
        "as 185/60R14; once for all sets or once for each",
    ),
    set(
        (Circumference, "circumference"),
        "MM",
        "the measured rolling circumference, instead of --tyre",
    ),
    set(
        (Redline, "redline"),
        "RPM",
        "the highest permitted engine speed",
    ),
    set(
        (Shift, "shift"),
        "RPM",
        "one shift point, or one for each change; at the redline without it",
    ),
    set((Reverse, "reverse"), "RATIO", "the reverse gear"),
    set((Name, "name"), "NAME", "the name of a set; once for each"),
    set((Idle, "idle"), "RPM", "the engine speed at idle"),
    set(
        (LowestUseful, "lowest-useful"),
        "RPM",
        "the engine speed below which the engine labours",
    ),
    technical(
        (Flag::Torque, "torque"),
        "POINTS",
        "full-load torque as rpm:N·m, as \"1000:96 2500:130 5000:110\"",
    ),
    technical(
        (Flag::PastedTorque, "pasted-torque"),
        "FILE",
        "a copied torque curve, or - for standard input, instead of --torque",
    ),
    technical(
        (Flag::Brochure, "brochure"),
        "PEAKS",
        "N·m and kW at their rpm, as \"320@1750-3000 110@3600\", instead of a curve",
    ),
    technical(
        (Flag::MeasuredAt, "measured-at"),
        "PLACE",
        "where torque was measured, crank or wheels; at the crank without it",
    ),
    technical((Flag::Mass, "mass"), "KG", "the mass of the vehicle"),
    technical(
        (Flag::RoadLoad, "road-load"),
        "\"A B C\"",
        "the measured road load in N, N/(m/s), N/(m/s)²",
    ),
    technical(
        (Flag::DragArea, "drag-area"),
        "M2",
        "drag coefficient times frontal area, instead of --road-load",
    ),
    technical(
        (Flag::Rolling, "rolling"),
        "F",
        "the rolling coefficient, beside --drag-area",
    ),
    technical(
        (Flag::AirDensity, "air-density"),
        "KG/M3",
        "the density of the air; 1.2041 without it",
    ),
    technical(
        (Flag::Efficiency, "efficiency"),
        "SHARE",
        "of the power, from crank to wheels; once for all sets or once for each",
    ),
    technical(
        (Flag::EngineInertia, "engine-inertia"),
        "KGM2",
        "the inertia of the engine; 0 where only --wheel-inertia is given",
    ),
    technical(
        (Flag::WheelInertia, "wheel-inertia"),
        "KGM2",
        "the inertia of all wheels together; 0 in the same way",
    ),
    technical(
        (Flag::MassFactor, "mass-factor"),
        "KIND",
        "none, or formula: 1.04 + 0.0025 i²; formula where no inertia is given",
    ),
    technical(
        (Flag::Grade, "grade"),
        "PERCENT",
        "how steep the road is, above 0 uphill",
    ),
    technical(
        (Flag::Driven, "driven"),
        "AXLE",
        "front, rear or all; with --adhesion it limits the grip",
    ),
    technical(
        (Flag::Adhesion, "adhesion"),
        "MU",
        "how well tyres and road hold",
    ),
    technical(
        (Flag::Wheelbase, "wheelbase"),
        "M",
        "the distance between the axles",
    ),
    technical(
        (Flag::CgHeight, "cg-height"),
        "M",
        "the height of the centre of gravity",
    ),
    technical(
        (Flag::FrontShare, "front-share"),
        "SHARE",
        "of the weight on the front axle",
    ),
    technical(
        (Flag::Pause, "pause"),
        "S",
        "how long a change of gear takes; 0 without it",
    ),
    technical(
        (Flag::LaunchRpm, "launch-rpm"),
        "RPM",
        "the engine speed at which the clutch slips",
    ),
    technical(
        (Flag::Displacement, "displacement"),
        "L",
        "the displacement, for the fuel",
    ),
    technical(
        (Flag::Fuel, "fuel"),
        "petrol|diesel",
        "what the engine burns",
    ),
    technical(
        (Flag::Willans, "willans"),
        "\"E P\"",
        "slope efficiency and friction pressure in bar of the Willans line",
    ),
    technical(
        (Flag::Signal, "signal"),
        "output|wheel",
        "where the speedometer's signal is taken; the gearbox output without it",
    ),
    technical(
        (Flag::SignalRatio, "signal-ratio"),
        "FACTOR",
        "shown ÷ true of the baseline's pointer and odometer; 1 without it",
    ),
    row(
        (Flag::Ratio, "ratio"),
        "R",
        Group::Pairs,
        &[Subcommand::Pairs, Subcommand::Preload],
        "driven ÷ driving, as 3.78, or as the teeth of a pair, 34:9",
    ),
    of_pairs(
        (Flag::Within, "within"),
        "PERCENT",
        "how far off a pair may be, either way",
    ),
    of_pairs(
        (Flag::Teeth, "teeth"),
        "FROM-TO",
        "the fewest and the most teeth of a gear, as 9-60",
    ),
    of_pairs(
        (Flag::Sum, "sum"),
        "N",
        "the teeth of both gears together, where that is fixed",
    ),
    of_pairs(
        (Flag::Centre, "centre"),
        "MM",
        "the centre distance, where that is fixed; with --module or --pitch",
    ),
    of_pairs((Flag::Module, "module"), "MM", "the normal module"),
    of_pairs(
        (Flag::Pitch, "pitch"),
        "DP",
        "diametral pitch in place of the module: teeth for an inch",
    ),
    of_pairs(
        (Flag::Helix, "helix"),
        "DEG",
        "the helix angle at the pitch circle; 0, straight teeth, without it",
    ),
    of_pairs(
        (Flag::PressureAngle, "pressure-angle"),
        "DEG",
        "the pressure angle of the cutter; 20 without it",
    ),
    of_wish(
        (Flag::Gear, "gear"),
        "G",
        "the label of the gear, R for reverse",
    ),
    row(
        (Flag::At, "at"),
        "KMH",
        Group::Wish,
        &[Subcommand::Find, Subcommand::Count],
        "the road speed, in km/h or as --units says; --rpm is the engine speed",
    ),
    of_wish(
        (Flag::Set, "set"),
        "N",
        "which set, counted from 1; the baseline without it",
    ),
    of_count(
        (Flag::Input, "input"),
        "TURNS",
        "turns of the engine or the input shaft, and behind it what they may be off",
    ),
    of_count(
        (Flag::Wheel, "wheel"),
        "TURNS",
        "of the wheels, or of the free one",
    ),
    of_count(
        (Flag::OneWheel, "one-wheel"),
        "",
        "one wheel held and the other turned, behind an open differential",
    ),
    of_shim(
        (Flag::Seat, "seat"),
        "behind|under",
        "behind a race or washer, or under a cover or between case halves",
    ),
    of_shim((Flag::Trial, "trial"), "MM", "the one in place, 0 for none"),
    of_shim(
        (Flag::Play, "play"),
        "\"MM …\"",
        "the play with it, read once or more",
    ),
    of_shim(
        (Flag::Setting, "setting"),
        "LOW,HIGH",
        "the wanted setting: clearance above 0, preload below",
    ),
    of_shim(
        (Flag::Sizes, "sizes"),
        "LIST",
        "the sizes that can be had, as \"0.10 0.15\" or \"0.65 to 1.40 by 0.05\"",
    ),
    of_shim(
        (Flag::Most, "most"),
        "N",
        "how many may be stacked; one without it",
    ),
    of_preload(
        (Flag::Pull, "pull"),
        "N",
        "what a scale reads that pulls a cord round a drum, in N",
    ),
    of_preload((Flag::Radius, "radius"), "MM", "drum and half the cord"),
    of_preload((Flag::Reading, "reading"), "NM", "by beam wrench, instead"),
    of_preload((Flag::Wrench, "wrench"), "MM", "the wrench's length"),
    of_preload((Flag::Adapter, "adapter"), "MM", "and the adapter's"),
    of_preload(
        (Flag::Before, "before"),
        "NM",
        "what the place took before the gears were coupled",
    ),
    of_preload(
        (Flag::Seals, "seals"),
        "NM",
        "what the seals of the bearings' shaft take",
    ),
    of_preload((Flag::Band, "band"), "LOW,HIGH", "what the maker wants"),
    row(
        (Rpm, "rpm"),
        "LIST",
        Speeds,
        OF_PROJECT,
        "engine speeds at which road speeds are wanted; find, count: the one",
    ),
    row(
        (Speed, "speed"),
        "LIST",
        Speeds,
        MARKED,
        "road speeds at which engine speeds are wanted, in km/h or as --units says",
    ),
    row(
        (Flag::To, "to"),
        "LIST",
        Speeds,
        TABLE,
        "targets of a run; without it 100 km/h, 60 mph and the marked speeds",
    ),
    row(
        (Flag::From, "from"),
        "SPEED",
        Speeds,
        TABLE,
        "where the times to them begin, in each gear, instead of at rest",
    ),
    row(
        (Flag::Coast, "coast"),
        "FROM:TO",
        Speeds,
        TABLE,
        "times the vehicle rolling in neutral, as 120:60",
    ),
    row(
        (Units, "units"),
        "kmh|mph",
        Speeds,
        OF_PROJECT,
        "the unit of road speeds in everything but JSON",
    ),
    row(
        (Show, "show"),
        "WHAT",
        Group::Output,
        VIEWS,
        "speed, effort, run, cruise, speedometer; chart: also steps, revs, distance",
    ),
    row(
        (As, "as"),
        "FORMAT",
        Group::Output,
        TEXTS,
        "the format: see below",
    ),
    row(
        (Decimal, "decimal"),
        "point|comma",
        Group::Output,
        FIGURES,
        "the decimal mark of CSV; with a comma, semicolons part the cells",
    ),
    row(
        (Flag::Chosen, "sets"),
        "LIST",
        Group::Output,
        CHART,
        "the sets to show, counted from 1, as 1,3",
    ),
    row(
        (Drops, "drops"),
        "all|none|N",
        Group::Output,
        CHART,
        "whose drops are written: every set's, nobody's, or those of set N",
    ),
    row(
        (Width, "width"),
        "PIXELS",
        Group::Output,
        CHART,
        "the width of the picture, 800 to 4000",
    ),
    row(
        (Theme, "theme"),
        "light|dark",
        Group::Output,
        CHART,
        "dark lines on light paper or the other way round",
    ),
    row(
        (Page, "page"),
        "a4|letter",
        Group::Output,
        CHART,
        "a page for the bench instead: large figures, black on white",
    ),
    row(
        (NoTable, "no-table"),
        "",
        Group::Output,
        CHART,
        "without the table beneath the diagram",
    ),
    row(
        (NoNote, "no-note"),
        "",
        Group::Output,
        CHART,
        "without the note",
    ),
    row(
        (NoProject, "no-project"),
        "",
        Group::Output,
        CHART,
        "without the project in the picture, which then cannot be opened",
    ),
    row(
        (Flag::Output, "output"),
        "OUT",
        Group::Output,
        WRITTEN,
        "the file to write, whole or not at all, or a pipe; - is standard output",
    ),
];

impl Flag {
    /// Its row in the table.
    pub(super) fn row(self) -> &'static FlagRow {
        &FLAGS[self as usize]
    }

    /// Its name with its dashes, as it stands in a sentence.
    pub(super) fn name(self) -> String {
        match self.row() {
            FlagRow {
                short: Some(letter),
                ..
            } => format!("-{letter}"),
            row => format!("--{}", row.long),
        }
    }
}

/// The flag of that name, given without dashes.
pub(super) fn long(name: &str) -> Option<&'static FlagRow> {
    FLAGS.iter().find(|row| row.long == name)
}

/// The flag of that letter.
pub(super) fn short(letter: char) -> Option<&'static FlagRow> {
    FLAGS.iter().find(|row| row.short == Some(letter))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::View;

    #[test]
    fn every_view_stands_in_the_help() {
        let meaning = Show.row().meaning;
        assert!(View::ALL.iter().all(|view| meaning.contains(view.word())));
    }

    #[test]
    fn every_flag_stands_at_its_place_in_the_table() {
        for (place, row) in FLAGS.iter().enumerate() {
            assert_eq!(row.flag as usize, place, "{}", row.long);
            assert_eq!(long(row.long).map(|row| row.flag), Some(row.flag));
        }
        assert_eq!(Flag::Output as usize + 1, FLAGS.len());
    }
}
