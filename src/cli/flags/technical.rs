//! Flags of engine, vehicle and road.

use crate::cli::flag::Flag;
use crate::cli::flag_row::{FlagRow, technical};

pub(super) const TECHNICAL: [FlagRow; 26] = [
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
];
