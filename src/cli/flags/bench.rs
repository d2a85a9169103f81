//! Flags of what was measured on the bench, or is meant there.

use crate::cli::flag::Flag;
use crate::cli::flag_row::{FlagRow, of_fit, of_journal, of_preload, of_shim};

pub(super) const BENCH: [FlagRow; 25] = [
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
    of_fit(
        (Flag::Diameter, "diameter"),
        "MM",
        "the nominal diameter of seat and part",
    ),
    of_fit((Flag::ShaftClass, "shaft"), "CLASS", "a shaft, as k6"),
    of_fit((Flag::BoreClass, "bore"), "CLASS", "or a bore, as K7"),
    of_fit(
        (Flag::Part, "part"),
        "\"UPPER LOWER\"",
        "its limits in µm; without it those of a bearing of the Normal class",
    ),
    of_journal((Flag::OldDiameter, "from"), "MM", "the diameter as it is"),
    of_journal((Flag::NewDiameter, "to"), "MM", "the diameter to come"),
    of_journal((Flag::HollowBore, "bore"), "MM", "of a hollow shaft"),
    of_journal(
        (Flag::ShaftTorque, "torque"),
        "NM",
        "what the shaft carries",
    ),
    of_journal(
        (Flag::CaseDepth, "case-depth"),
        "MM",
        "how deep the shaft is hardened",
    ),
    of_journal(
        (Flag::Fillet, "fillet"),
        "MM",
        "the radius of the fillet at the shoulder",
    ),
    of_journal(
        (Flag::Shoulder, "shoulder"),
        "MM",
        "the diameter of the shoulder; that of --from without it",
    ),
];
