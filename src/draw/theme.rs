//! How do widgets look: which text sizes, spacings and colours?

use super::palette::{Palette, Theme};
use egui::{Color32, Context, CornerRadius, FontFamily, FontId, Stroke, Style, TextStyle, Visuals};

/// The height of ordinary text, in points.
pub const TEXT_SIZE: f32 = 13.5;

/// The height of text that explains, in points.
pub const SMALL_SIZE: f32 = 12.0;

/// Gives a context the program's fonts and the looks of both themes.
pub fn apply(ctx: &Context) {
    super::install(ctx);
    ctx.options_mut(|options| {
        // The program's own commands do these, so that menus and keys agree.
        options.zoom_with_keyboard = false;
        options.quit_shortcuts.clear();
        // Where the system does not say: paper is white.
        options.fallback_theme = egui::Theme::Light;
    });
    for (theme, of) in [
        (egui::Theme::Light, Theme::Light),
        (egui::Theme::Dark, Theme::Dark),
    ] {
        ctx.set_style_of(theme, style(of));
    }
}

fn style(theme: Theme) -> Style {
    let mut style = Style {
        visuals: visuals(theme),
        ..Style::default()
    };
    let bold = super::bold();
    style.text_styles = [
        (
            TextStyle::Small,
            FontId::new(SMALL_SIZE, FontFamily::Proportional),
        ),
        (
            TextStyle::Body,
            FontId::new(TEXT_SIZE, FontFamily::Proportional),
        ),
        (
            TextStyle::Button,
            FontId::new(TEXT_SIZE, FontFamily::Proportional),
        ),
        (
            TextStyle::Monospace,
            FontId::new(TEXT_SIZE, FontFamily::Monospace),
        ),
        (TextStyle::Heading, FontId::new(16.0, bold)),
    ]
    .into();
    style.spacing.item_spacing = egui::vec2(6.0, 4.0);
    style.spacing.button_padding = egui::vec2(6.0, 2.0);
    style.interaction.selectable_labels = false;
    style
}

fn visuals(theme: Theme) -> Visuals {
    let palette = Palette::of(theme);
    let mut visuals = match theme {
        Theme::Light => Visuals::light(),
        Theme::Dark => Visuals::dark(),
    };
    visuals.panel_fill = palette.page;
    visuals.window_fill = palette.page;
    visuals.extreme_bg_color = palette.paper;
    visuals.override_text_color = None;
    visuals.error_fg_color = palette.error;
    visuals.warn_fg_color = palette.finding;
    let widgets = &mut visuals.widgets;
    widgets.noninteractive.fg_stroke = Stroke::new(1.0, palette.text);
    for widget in [
        &mut widgets.inactive,
        &mut widgets.hovered,
        &mut widgets.active,
        &mut widgets.open,
    ] {
        widget.fg_stroke.color = palette.text;
        widget.corner_radius = CornerRadius::same(3);
    }
    visuals.selection.bg_fill = match theme {
        Theme::Light => Color32::from_rgb(0xCB, 0xE0, 0xF6),
        Theme::Dark => Color32::from_rgb(0x22, 0x4A, 0x70),
    };
    visuals.selection.stroke = Stroke::new(1.0, palette.text);
    visuals.text_cursor.stroke.color = palette.text;
    visuals
}
