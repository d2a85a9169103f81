//! What is said beside work of the bench, for the hands that do it.
//!
//! Common practice of workshops, no source.

const NO_FLAME: &str =
    "Warm a part in oil, in an oven or on an induction heater, never over an open flame.";
const HARDENED: &str =
    "A hardened shaft is ground by a competent workshop and tested for cracks afterwards.";
const AT_THE_LATHE: &str = "At the lathe: no gloves, no loose sleeves, goggles on, the key out of the chuck before it turns.";

/// What is said of every sheet, whatever is on it.
pub const SHEET_CAUTION: &str = "The maker's figures decide, and local law and licensed practice. A gearbox is heavy: lift it with \
                                 help. Presses and bearings splinter: wear glasses, keep hands away. Check every setting on the \
                                 assembled box, by measuring; do not \"run it in\".";

/// What is said where no sheet says it.
pub const MAKER_DECIDES: &str = "The maker's figures and the local law decide.";

/// What is said beside every fit, for the hands that press and warm.
pub const FIT_CAUTIONS: [&str; 4] = [
    NO_FLAME,
    "A bearing bears 120 °C at most; wear gloves against the heat.",
    "A press splits a ring that stands askew: press the ring that is tight, squarely, behind a guard.",
    "A light-alloy case wants a tighter fit than an iron one, and loosens hot.",
];

/// What is said beside every shaft that is turned down, for the hands at the lathe.
pub const JOURNAL_CAUTIONS: [&str; 3] = [
    "Never turn down splines, needle tracks or synchroniser cones.",
    HARDENED,
    AT_THE_LATHE,
];

/// What is said beside a list of parts, some of which are warmed, pressed or turned.
pub const PLAN_CAUTIONS: [&str; 3] = [NO_FLAME, HARDENED, AT_THE_LATHE];
