//! How does each role look: in which colour, width and dash, over what, how much in need of a place?
//!
//! The colours and dashes themselves stand in the palette.

use super::{Look, StepBack};
use crate::chart::{Curve, Label, Line, Owner, Role, Rule};
use crate::draw::bold;
use crate::draw::palette::{DROP_DASH, Dash, OTHER_DASH, Palette, dash};
use egui::{Color32, FontFamily, Stroke};

/// The depth of the lines of sets; what is higher is painted over all of them.
const OF_SETS: u8 = 9;

/// How one role looks. What a set owns has the set's colour instead.
struct Manner {
    /// The colour of a shaded part, of a line, and of words.
    colors: [Color32; 3],
    /// The width of a line that does not step back, steps back a little, and far, in points.
    width: [f32; 3],
    /// From where on a line that steps back has the quiet colour of its set.
    quiet_from: StepBack,
    /// The pattern of a line.
    pattern: Pattern,
    /// What is higher is painted later.
    depth: u8,
    /// The words that are higher are placed earlier.
    priority: u8,
    has_bold_words: bool,
}

/// The pattern of a line.
#[derive(Clone, Copy)]
enum Pattern {
    Solid,
    /// The dash of its set.
    OfSet,
    /// Dots, for falls.
    Dotted,
    /// Dots far apart, for what is beside what it is about.
    Sparse,
}

impl Manner {
    /// A thin line beneath all others.
    fn plain(palette: &Palette) -> Self {
        Self {
            colors: [palette.grid, palette.mark, palette.dim_text],
            width: [1.0; 3],
            quiet_from: StepBack::Far,
            pattern: Pattern::Solid,
            depth: 0,
            priority: 0,
            has_bold_words: false,
        }
    }

    fn of(role: Role, look: &Look<'_>) -> Self {
        let palette = look.palette;
        let plain = Self::plain(palette);
        match role {
            Role::Redline => Self {
                colors: [palette.band, palette.redline, palette.redline],
                // Two whole points: crisp at every width of a picture.
                width: [2.0; 3],
                depth: OF_SETS + 1,
                has_bold_words: true,
                ..plain
            },
            Role::Floor => Self {
                colors: [palette.labouring, palette.mark, palette.dim_text],
                priority: 3,
                ..plain
            },
            Role::Marked => Self {
                priority: 9,
                ..plain
            },
            Role::Fan => Self {
                quiet_from: StepBack::Little,
                pattern: Pattern::OfSet,
                depth: 1,
                ..plain
            },
            Role::Other | Role::Ideal => Self {
                width: [1.2, 1.0, 0.8],
                quiet_from: StepBack::Not,
                pattern: Pattern::Sparse,
                depth: 1,
                ..plain
            },
            Role::ShiftLine => Self {
                quiet_from: StepBack::Little,
                depth: 2,
                priority: 3,
                ..plain
            },
            Role::Drop => Self {
                width: [1.5; 3],
                pattern: Pattern::Dotted,
                depth: 3,
                priority: 5,
                ..plain
            },
            Role::Driven => Self {
                width: [3.0, 2.0, 2.0],
                pattern: Pattern::OfSet,
                depth: 4,
                has_bold_words: true,
                ..plain
            },
            Role::Crossing => Self {
                priority: 7,
                ..plain
            },
            Role::ByGear | Role::FullLoad => Self {
                width: [3.0, 2.0, 2.0],
                pattern: Pattern::OfSet,
                depth: 4,
                priority: 7,
                ..plain
            },
            Role::Grip | Role::Limit => Self {
                colors: [palette.band, palette.redline, palette.redline],
                width: [1.5; 3],
                priority: 4,
                ..plain
            },
            Role::RoadLoad => Self {
                width: [1.5; 3],
                priority: 6,
                ..plain
            },
            Role::BestShift => Self {
                depth: 3,
                priority: 2,
                ..plain
            },
        }
    }

    /// The width of a line of a set.
    fn width(&self, back: StepBack) -> f32 {
        let [not, little, far] = self.width;
        match back {
            StepBack::Not => not,
            StepBack::Little => little,
            StepBack::Far => far,
        }
    }
}

/// The colour of a shaded part of the plot.
pub(super) fn shade(role: Role, look: &Look<'_>) -> Color32 {
    Manner::of(role, look).colors[0]
}

/// How a line through the whole plot is painted.
pub(super) fn rule_stroke(rule: &Rule, look: &Look<'_>) -> Stroke {
    let manner = Manner::of(rule.role, look);
    Stroke::new(manner.width(StepBack::Not), manner.colors[1])
}

/// How a line of the vehicle is painted.
pub(super) fn curve_stroke(curve: &Curve, look: &Look<'_>) -> Stroke {
    let manner = Manner::of(curve.role, look);
    Stroke::new(manner.width(StepBack::Not), manner.colors[1])
}

/// Whether a line through the whole plot is painted over the lines of sets.
pub(super) fn is_over_sets(rule: &Rule, look: &Look<'_>) -> bool {
    Manner::of(rule.role, look).depth > OF_SETS
}

/// Whether something belongs to the gear that is brought out.
pub(super) fn is_brought_out(of: Owner, look: &Look<'_>) -> bool {
    look.gear.is_some() && look.gear == of.gear_of_set()
}

/// How a line of a set is painted.
pub(super) fn line_stroke(line: &Line, look: &Look<'_>) -> (Stroke, Dash) {
    let manner = Manner::of(line.role, look);
    let steps_back = look.forward.is_some_and(|forward| forward != line.of.set);
    let back = if steps_back {
        look.others
    } else {
        StepBack::Not
    };
    let color = if back >= manner.quiet_from {
        look.palette.quiet_set(line.of.livery)
    } else {
        look.palette.set(line.of.livery)
    };
    let is_thin = matches!(line.role, Role::Fan | Role::Other);
    let width = if is_thin && is_brought_out(line.of, look) {
        2.0
    } else {
        manner.width(back)
    };
    let dash = match manner.pattern {
        Pattern::Solid => &[],
        Pattern::OfSet => dash(line.of.livery),
        Pattern::Dotted => DROP_DASH,
        Pattern::Sparse => OTHER_DASH,
    };
    (Stroke::new(width, color), dash)
}

/// From which width on a line is thick, in points: no label covers it.
const THICK: f32 = 3.0;

/// How far a thick line is painted to either side, in points; none for the thin ones.
///
/// A set that steps back keeps its room: labels must not move with the pointer.
pub(super) fn thick_half_width(role: Role, look: &Look<'_>) -> Option<f32> {
    let width = Manner::of(role, look).width(StepBack::Not);
    (width >= THICK).then_some(width / 2.0)
}

/// In which order lines are painted: the set that comes forward last, and of a set what is read
/// first.
pub(super) fn depth(line: &Line, look: &Look<'_>) -> (bool, usize, u8) {
    let is_forward = look.forward == Some(line.of.set);
    let depth = Manner::of(line.role, look).depth;
    (is_forward, line.of.place, depth)
}

/// The colour of words and dots: their set's, else that of their role.
pub(super) fn word_color(role: Role, of: Option<Owner>, look: &Look<'_>) -> Color32 {
    match of {
        Some(of) => look.palette.set(of.livery),
        None => Manner::of(role, look).colors[2],
    }
}

/// The letters of words; a gear that is brought out has an outline instead of bold ones.
pub(super) fn word_family(label: &Label, look: &Look<'_>) -> FontFamily {
    let is_out = label.of.is_some_and(|of| is_brought_out(of, look));
    if Manner::of(label.role, look).has_bold_words && !is_out {
        bold()
    } else {
        FontFamily::Proportional
    }
}

/// How much words need their place: higher is placed earlier.
pub(super) fn priority(role: Role, look: &Look<'_>) -> u8 {
    Manner::of(role, look).priority
}

/// Whether what words say stands in the fields beside a diagram that is not alone.
pub(super) fn stands_beside(role: Role) -> bool {
    match role {
        Role::Floor | Role::ShiftLine => true,
        Role::Redline
        | Role::Marked
        | Role::Fan
        | Role::Other
        | Role::Driven
        | Role::Drop
        | Role::Crossing
        | Role::ByGear
        | Role::FullLoad
        | Role::Ideal
        | Role::Grip
        | Role::RoadLoad
        | Role::Limit
        | Role::BestShift => false,
    }
}
