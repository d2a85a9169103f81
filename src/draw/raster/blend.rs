//! What colour results when one is laid over another?
//!
//! Colours are premultiplied and stay in gamma space: `source + below · (255 - alpha) / 255`,
//! rounded. A colour with alpha 0 therefore adds its light, and where light runs over it stays
//! at 255.

/// Red, green, blue, alpha: premultiplied, gamma space.
pub(super) type Pixel = [u8; 4];

/// Opaque white: leaves what it is multiplied with unchanged.
pub(super) const WHITE: Pixel = [255; 4];

/// Adds nothing and covers nothing.
pub(super) const CLEAR: Pixel = [0; 4];

/// `a · b / 255`, rounded: the product of two shares of 255.
pub(super) fn multiply(a: u8, b: u8) -> u8 {
    // Exact for every product of two bytes, and three cheap steps in place of a division.
    let product = u16::from(a) * u16::from(b) + 128;
    high_byte(product + (product >> 8))
}

/// `source` laid over `below`.
pub(super) fn over(below: Pixel, source: Pixel) -> Pixel {
    let through = 255 - source[3];
    std::array::from_fn(|i| source[i].saturating_add(multiply(below[i], through)))
}

/// The product of a vertex colour and a texel, channel by channel.
pub(super) fn modulate(colour: Pixel, texel: Pixel) -> Pixel {
    std::array::from_fn(|i| multiply(colour[i], texel[i]))
}

/// Lays one colour over a whole run of pixels.
pub(super) fn fill(run: &mut [Pixel], colour: Pixel) {
    if colour[3] == 255 {
        run.fill(colour);
        return;
    }
    if colour == CLEAR {
        return;
    }
    // Four pixels at a time, byte by byte without regard to channels, become vector instructions.
    let through = 255 - colour[3];
    let sources = [colour; 4];
    let (blocks, rest) = run.as_chunks_mut::<4>();
    for block in blocks {
        for (below, source) in block
            .as_flattened_mut()
            .iter_mut()
            .zip(sources.as_flattened())
        {
            *below = source.saturating_add(multiply(*below, through));
        }
    }
    for below in rest {
        *below = over(*below, colour);
    }
}

fn high_byte(word: u16) -> u8 {
    (word >> 8) as u8
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_product_is_rounded_to_the_nearest_for_all_bytes() {
        for a in 0..=255_u8 {
            for b in 0..=255_u8 {
                let exact = f64::from(a) * f64::from(b) / 255.0;
                let error = (f64::from(multiply(a, b)) - exact).abs();
                assert!(error < 0.5, "{a} · {b}");
            }
        }
    }

    #[test]
    fn filling_a_run_equals_laying_over_each_pixel() {
        let below: Vec<Pixel> = (0..23_u8).map(|i| [i * 11, 255 - i, 7 * i, 255]).collect();
        for colour in [
            [10, 20, 30, 40],
            [200, 100, 50, 0],
            [0, 0, 0, 255],
            [0, 0, 0, 90],
            CLEAR,
        ] {
            for length in 0..below.len() {
                let mut run = below[..length].to_vec();
                fill(&mut run, colour);
                let one_by_one: Vec<Pixel> = below[..length]
                    .iter()
                    .map(|&pixel| over(pixel, colour))
                    .collect();
                assert_eq!(run, one_by_one, "{colour:?}");
            }
        }
    }

    #[test]
    fn a_colour_without_alpha_adds_its_light() {
        assert_eq!(
            over([100, 100, 250, 255], [20, 0, 20, 0]),
            [120, 100, 255, 255]
        );
    }
}
