//! Flags of a gear set without a file.

use crate::cli::flag::Flag;
use crate::cli::flag_row::{FlagRow, set};

pub(super) const SETS: [FlagRow; 11] = [
    set(
        (Flag::Gears, "gears"),
        "RATIOS",
        "first to top, parted by blanks; once for each of up to three sets",
    ),
    set(
        (Flag::Pasted, "pasted"),
        "FILE",
        "a copied text with the sets, or - for standard input, instead of --gears",
    ),
    set(
        (Flag::Final, "final"),
        "RATIO",
        "the final drive, or \"chain FRONT/REAR\"; once for all sets or once for each",
    ),
    set(
        (Flag::Tyre, "tyre"),
        "SIZE",
        "as 185/60R14; once for all sets or once for each",
    ),
    set(
        (Flag::Circumference, "circumference"),
        "MM",
        "the measured rolling circumference, instead of --tyre",
    ),
    set(
        (Flag::Redline, "redline"),
        "RPM",
        "the highest permitted engine speed",
    ),
    set(
        (Flag::Shift, "shift"),
        "RPM",
        "one shift point, or one for each change; at the redline without it",
    ),
    set((Flag::Reverse, "reverse"), "RATIO", "the reverse gear"),
    set(
        (Flag::Name, "name"),
        "NAME",
        "the name of a set; once for each",
    ),
    set((Flag::Idle, "idle"), "RPM", "the engine speed at idle"),
    set(
        (Flag::LowestUseful, "lowest-useful"),
        "RPM",
        "the engine speed below which the engine labours",
    ),
];
