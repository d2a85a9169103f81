//! Which letters does the program write with?
//!
//! Its own, on every machine: a picture made here must equal one made elsewhere byte for byte.

use std::sync::Arc;

use egui::{FontData, FontDefinitions, FontFamily};

static REGULAR: &[u8] = include_bytes!("../../assets/fonts/IBMPlexSans-Regular.ttf");
static SEMI_BOLD: &[u8] = include_bytes!("../../assets/fonts/IBMPlexSans-SemiBold.ttf");

/// Makes `ctx` write with the program's fonts from its next pass on.
pub fn install(ctx: &egui::Context) {
    ctx.set_fonts(definitions());
}

/// The program's fonts for all three families: proportional, monospace and [`bold`].
///
/// The monospace family is the proportional font again, because the digits of IBM Plex Sans are
/// all equally wide and nothing but figures is set in columns here.
pub fn definitions() -> FontDefinitions {
    let regular = "IBM Plex Sans Regular";
    let semi_bold = "IBM Plex Sans SemiBold";
    let mut fonts = FontDefinitions::empty();
    for (name, bytes) in [(regular, REGULAR), (semi_bold, SEMI_BOLD)] {
        let data = Arc::new(FontData::from_static(bytes));
        fonts.font_data.insert(name.to_owned(), data);
    }
    for (family, name) in [
        (FontFamily::Proportional, regular),
        (FontFamily::Monospace, regular),
        (bold(), semi_bold),
    ] {
        fonts.families.insert(family, vec![name.to_owned()]);
    }
    fonts
}

/// The family for headings and for what must stand out.
pub fn bold() -> FontFamily {
    FontFamily::Name("bold".into())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_family_names_a_font_that_is_there() {
        let fonts = definitions();
        for family in [FontFamily::Proportional, FontFamily::Monospace, bold()] {
            let names = &fonts.families[&family];
            assert!(!names.is_empty(), "{family} has no font");
            for name in names {
                assert!(fonts.font_data.contains_key(name), "{family} lacks {name}");
            }
        }
    }

    #[test]
    fn the_signs_of_the_trade_have_glyphs() {
        let ctx = egui::Context::default();
        install(&ctx);
        let output = ctx.run_ui(egui::RawInput::default(), |ui| {
            for family in [FontFamily::Proportional, FontFamily::Monospace, bold()] {
                let font = egui::FontId::new(14.0, family);
                let signs = "0123456789.,:+-−×÷=±≤≥≈°²³ΔδµΩ·…–—→äöüéñ";
                let missing: String = signs
                    .chars()
                    .filter(|&sign| !ui.fonts_mut(|fonts| fonts.has_glyph(&font, sign)))
                    .collect();
                assert_eq!(missing, "", "{font:?}");
            }
        });
        output.drop_without_applying_deltas();
    }

    #[test]
    fn the_letters_that_can_be_typed_are_those_that_all_fonts_have() {
        let ctx = egui::Context::default();
        install(&ctx);
        let output = ctx.run_ui(egui::RawInput::default(), |ui| {
            let fonts = [FontFamily::Proportional, bold()].map(|f| egui::FontId::new(14.0, f));
            let has = |c: char| {
                let mut fonts = fonts.iter();
                fonts.all(|font| ui.fonts_mut(|f| f.has_glyph(font, c)))
            };
            let seen = |c: &char| !c.is_control() && !crate::unseen::is_unseen(*c);
            for c in (' '..='\u{ffff}').filter(seen) {
                let is_lacking = crate::letters::first_lacking(&c.to_string()).is_some();
                assert_eq!(is_lacking, !has(c), "{c:?}");
            }
        });
        output.drop_without_applying_deltas();
    }

    #[test]
    fn digits_are_equally_wide_in_every_family() {
        let ctx = egui::Context::default();
        install(&ctx);
        let output = ctx.run_ui(egui::RawInput::default(), |ui| {
            for family in [FontFamily::Proportional, FontFamily::Monospace, bold()] {
                let font = egui::FontId::new(14.0, family);
                let width = |digit| {
                    ui.fonts_mut(|fonts| fonts.glyph_width(&font, digit))
                        .to_bits()
                };
                assert!(
                    ('1'..='9').all(|digit| width(digit) == width('0')),
                    "{font:?}"
                );
            }
        });
        output.drop_without_applying_deltas();
    }
}
