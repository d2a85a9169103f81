//! How is a run of pixels in one row painted when colour or texture change along it?
//!
//! Ramps are whole numbers: colours in 1/65536 of a level, places in [`SUBTEXELS`] to a texel.

use super::blend::{Pixel, fill, over};
use super::edge::nearest;
use super::textures::{SUBTEXELS, Texture};

/// Steps of a [`ColourRamp`] in a level of 0 to 255.
const STEPS: f64 = 65_536.0;

/// A colour that changes evenly from pixel to pixel.
#[derive(Clone, Copy)]
pub(super) struct ColourRamp {
    now: [i32; 4],
    step: [i32; 4],
}

impl ColourRamp {
    /// Starts at `levels` and changes by `per_column`, which [`Self::steps`] returned.
    pub(super) fn new(levels: [f64; 4], per_column: [i32; 4]) -> Self {
        // A pixel centre on the very edge of a triangle may come out a hair beyond its corners.
        let now = levels.map(|level| whole_steps(between(0.0, level, 255.0)));
        Self {
            now,
            step: per_column,
        }
    }

    /// Stays at `colour`.
    pub(super) fn level(colour: Pixel) -> Self {
        Self {
            now: colour.map(|level| i32::from(level) << 16),
            step: [0; 4],
        }
    }

    /// The colour's change per column, in a ramp's steps.
    pub(super) fn steps(per_column: [f64; 4]) -> [i32; 4] {
        // Within a triangle no two pixels differ by more than the whole range.
        per_column.map(|levels| whole_steps(between(-255.0, levels, 255.0)))
    }

    fn pixel(&self) -> Pixel {
        self.now.map(|level| byte(level.wrapping_add(0x8000) >> 16))
    }

    /// With eight fractional bits: 255.0 is 65 280.
    fn fine(&self) -> [u32; 4] {
        self.now
            .map(|level| u32::try_from(level.clamp(0, 255 << 16) >> 8).unwrap_or(0))
    }

    fn advance(&mut self) {
        for (now, step) in self.now.iter_mut().zip(self.step) {
            *now = now.wrapping_add(step);
        }
    }
}

/// `value` or the nearer end; the lower one for what is no number.
///
/// Written so that it becomes two instructions, which `f64::clamp` does not.
fn between(low: f64, value: f64, high: f64) -> f64 {
    let above = if value > low { value } else { low };
    if above < high { above } else { high }
}

/// The whole number of steps nearest to `levels`, at most ±255.
///
/// Adding 1.5 · 2^52 leaves the number in the lowest bits, without the checks of a cast.
#[expect(
    clippy::cast_possible_truncation,
    reason = "the number is in the lower 32 bits"
)]
fn whole_steps(levels: f64) -> i32 {
    const SHIFT: f64 = 6_755_399_441_055_744.0;
    (levels * STEPS + SHIFT).to_bits().cast_signed() as i32
}

#[expect(clippy::cast_sign_loss, reason = "clamped to a byte")]
fn byte(level: i32) -> u8 {
    level.clamp(0, 255) as u8
}

/// Paints an untextured run.
pub(super) fn paint_gradient(run: &mut [Pixel], mut ramp: ColourRamp) {
    // The soft upper and lower edges of upright rectangles.
    if ramp.step == [0; 4] {
        fill(run, ramp.pixel());
        return;
    }
    for below in run {
        *below = over(*below, ramp.pixel());
        ramp.advance();
    }
}

/// A place in a texture that moves evenly from pixel to pixel.
#[derive(Clone, Copy)]
pub(super) struct TexelRamp {
    now: [i64; 2],
    step: [i64; 2],
}

impl TexelRamp {
    /// Starts at `texels` from the texture's top left corner and moves by `per_column`.
    pub(super) fn new(texels: [f64; 2], per_column: [f64; 2]) -> Self {
        Self {
            now: texels.map(subtexels),
            step: per_column.map(subtexels),
        }
    }
}

/// `texels` in a ramp's steps; what lies far outside any texture is brought nearer.
pub(super) fn subtexels(texels: f64) -> i64 {
    let farthest = (1_i64 << 20) as f64;
    nearest(texels.clamp(-farthest, farthest) * SUBTEXELS as f64)
}

/// Paints a run with a texture.
pub(super) fn paint_textured(
    run: &mut [Pixel],
    mut colour: ColourRamp,
    mut place: TexelRamp,
    texture: &Texture,
) {
    for below in run {
        let texel = texture.sample(place.now);
        let colours = colour.fine();
        let source = std::array::from_fn(|i| fine_product(colours[i], texel[i]));
        *below = over(*below, source);
        colour.advance();
        place.now[0] += place.step[0];
        place.now[1] += place.step[1];
    }
}

/// `colour` multiplied with a sampled texel.
pub(super) fn tinted(colour: Pixel, texel: [u32; 4]) -> Pixel {
    std::array::from_fn(|i| fine_product(u32::from(colour[i]) << 8, texel[i]))
}

/// `a · b / 255` of two levels with eight fractional bits, rounded to a whole level.
fn fine_product(a: u32, b: u32) -> u8 {
    const LEVEL: u32 = 255 << 16;
    u8::try_from((a * b + LEVEL / 2) / LEVEL).unwrap_or(u8::MAX)
}
