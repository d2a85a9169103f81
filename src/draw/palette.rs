//! Which colour and which dash does each role have?
//!
//! The only place with colours. Sets differ by colour and by dash, so a grey print and a
//! colour-blind reader still tell them apart. Words have a contrast of 4.5 to 1 with whatever they
//! stand on, lines and edges one of 3 to 1: the tests of contrast measure it.

use crate::project::Livery;
use egui::Color32;

/// Light or dark.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Theme {
    /// Dark on light, also for print.
    Light,
    /// Light on dark.
    Dark,
}

impl Theme {
    /// The theme that a context shows.
    pub fn of(ctx: &egui::Context) -> Self {
        match ctx.theme() {
            egui::Theme::Dark => Self::Dark,
            egui::Theme::Light => Self::Light,
        }
    }
}

/// The colours of one theme, by role.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Palette {
    /// Behind everything.
    pub page: Color32,
    /// Behind a diagram or a text field.
    pub paper: Color32,
    /// Text that is read first.
    pub text: Color32,
    /// Text that steps back.
    pub dim_text: Color32,
    /// Grid lines.
    pub grid: Color32,
    /// Marked speeds.
    pub mark: Color32,
    /// Around what can be typed in, ticked or pressed.
    pub edge: Color32,
    /// Redline and everything beyond it.
    pub redline: Color32,
    /// The band above the redline.
    pub band: Color32,
    /// Engine speeds too low to be useful.
    pub labouring: Color32,
    /// The ring around whatever the keys go to.
    pub focus: Color32,
    /// What cannot be read.
    pub error: Color32,
    /// What is valid but strange.
    pub finding: Color32,
    /// What a drawing of the bench is about: its shim, or what is measured.
    pub shim: Color32,
    /// Behind what lies in the band that is wanted.
    pub wanted: Color32,
    /// Shafts and bearings in a drawing of the bench.
    pub metal: Color32,
    sets: [Color32; Livery::ALL.len()],
    quiet_sets: [Color32; Livery::ALL.len()],
}

impl Palette {
    /// The colours of a theme.
    pub fn of(theme: Theme) -> Self {
        match theme {
            Theme::Light => LIGHT,
            Theme::Dark => DARK,
        }
    }

    /// The colours of a printed page: black on white.
    pub fn print() -> Self {
        Self {
            text: Color32::BLACK,
            dim_text: Color32::BLACK,
            ..LIGHT
        }
    }

    /// The colour of the set that has this livery.
    pub fn set(&self, livery: Livery) -> Color32 {
        self.sets[livery as usize]
    }

    /// The colour of a set's lines where they step back: on paper they are still seen.
    pub fn quiet_set(&self, livery: Livery) -> Color32 {
        self.quiet_sets[livery as usize]
    }
}

const LIGHT: Palette = Palette {
    page: Color32::from_rgb(0xF4, 0xF4, 0xF2),
    paper: Color32::from_rgb(0xFF, 0xFF, 0xFF),
    text: Color32::from_rgb(0x1B, 0x1D, 0x20),
    dim_text: Color32::from_rgb(0x5C, 0x61, 0x68),
    grid: Color32::from_rgb(0xE9, 0xEA, 0xEC),
    mark: Color32::from_rgb(0x85, 0x8A, 0x91),
    edge: Color32::from_rgb(0x7C, 0x81, 0x88),
    redline: Color32::from_rgb(0xC6, 0x28, 0x28),
    band: Color32::from_rgb(0xFB, 0xEE, 0xEC),
    labouring: Color32::from_black_alpha(11),
    focus: Color32::from_rgb(0x7B, 0x3F, 0xC4),
    error: Color32::from_rgb(0xB4, 0x1E, 0x1E),
    finding: Color32::from_rgb(0x8A, 0x5A, 0x00),
    shim: Color32::from_rgb(0xC4, 0x1A, 0x1A),
    wanted: Color32::from_rgb(0xE6, 0xF4, 0xEB),
    metal: Color32::from_rgb(0xDD, 0xE2, 0xE8),
    sets: [
        Color32::from_rgb(0x0B, 0x5F, 0xB0),
        Color32::from_rgb(0xA8, 0x4A, 0x00),
        Color32::from_rgb(0x00, 0x70, 0x5A),
    ],
    quiet_sets: [
        Color32::from_rgb(0x4A, 0x89, 0xC5),
        Color32::from_rgb(0xBD, 0x75, 0x3D),
        Color32::from_rgb(0x42, 0x95, 0x85),
    ],
};

const DARK: Palette = Palette {
    page: Color32::from_rgb(0x1B, 0x1D, 0x20),
    paper: Color32::from_rgb(0x12, 0x14, 0x16),
    text: Color32::from_rgb(0xE8, 0xEA, 0xEC),
    dim_text: Color32::from_rgb(0x9A, 0xA1, 0xA9),
    grid: Color32::from_rgb(0x25, 0x29, 0x2D),
    mark: Color32::from_rgb(0x79, 0x80, 0x88),
    edge: Color32::from_rgb(0x72, 0x79, 0x81),
    redline: Color32::from_rgb(0xFF, 0x6B, 0x60),
    band: Color32::from_rgb(0x33, 0x1E, 0x1E),
    labouring: Color32::from_rgba_premultiplied(9, 9, 9, 9),
    focus: Color32::from_rgb(0xC8, 0xA2, 0xFF),
    error: Color32::from_rgb(0xFF, 0x8A, 0x80),
    finding: Color32::from_rgb(0xE8, 0xB9, 0x5A),
    shim: Color32::from_rgb(0xFF, 0x6F, 0x5E),
    wanted: Color32::from_rgb(0x13, 0x28, 0x1E),
    metal: Color32::from_rgb(0x34, 0x3B, 0x43),
    sets: [
        Color32::from_rgb(0x6C, 0xB4, 0xF5),
        Color32::from_rgb(0xF5, 0xA6, 0x4B),
        Color32::from_rgb(0x4F, 0xD0, 0xA8),
    ],
    quiet_sets: [
        Color32::from_rgb(0x46, 0x71, 0x97),
        Color32::from_rgb(0x91, 0x66, 0x34),
        Color32::from_rgb(0x33, 0x7A, 0x65),
    ],
};

/// On and off lengths along a line, in units that grow a little with its width; empty is solid.
pub type Dash = &'static [f32];

/// Falls of the needle.
pub const DROP_DASH: Dash = &[0.9, 2.0];

/// What a set does in other positions than it stands in.
pub const OTHER_DASH: Dash = &[1.0, 3.0];

/// The dash of the set that has this livery.
pub fn dash(livery: Livery) -> Dash {
    match livery {
        Livery::First => &[],
        Livery::Second => &[4.5, 2.5],
        Livery::Third => &[6.0, 2.0, 1.4, 2.0],
    }
}
