//! Flags of tooth pairs, of wishes and of what was counted.

use crate::cli::flag::Flag;
use crate::cli::flag_row::{FlagRow, Group, of_count, of_pairs, of_wish, row};
use crate::cli::subcommand::Subcommand;

pub(super) const WISHES: [FlagRow; 15] = [
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
];
