//! How do widgets look: which text sizes, spacings and colours?

use super::palette::{Palette, Theme};
use crate::project::Livery;
use egui::{
    Color32, Context, CornerRadius, FontFamily, FontId, Stroke, Style, TextStyle, Ui, Visuals,
};

/// How opaque what is disabled is: it need not be read, but can be.
pub const DISABLED_ALPHA: f32 = 0.7;

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

/// Gives boxes and fields in a menu the edges that menus take from everything in them.
pub fn with_edges(ui: &mut Ui) {
    let palette = Palette::of(Theme::of(ui.ctx()));
    ui.visuals_mut().widgets.inactive.bg_stroke = edge(&palette);
}

/// The edge of what can be typed in, ticked or pressed, while nothing is done to it.
fn edge(palette: &Palette) -> Stroke {
    Stroke::new(1.0, palette.edge)
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
    visuals.weak_text_color = Some(palette.dim_text);
    visuals.hyperlink_color = palette.set(Livery::First);
    visuals.disabled_alpha = DISABLED_ALPHA;
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
    if theme == Theme::Dark {
        // Keys stand on these in the dim colour of text.
        for (widget, [r, g, b]) in [
            (&mut widgets.inactive, [0x29, 0x2D, 0x31]),
            (&mut widgets.hovered, [0x31, 0x36, 0x3B]),
        ] {
            widget.bg_fill = Color32::from_rgb(r, g, b);
            widget.weak_bg_fill = widget.bg_fill;
        }
    }
    // What has the focus looks as under the pointer: darker, an empty box would seem ticked.
    widgets.active.bg_fill = widgets.hovered.bg_fill;
    widgets.active.weak_bg_fill = widgets.hovered.weak_bg_fill;
    // Takes no room: the margin within is narrower by as much.
    widgets.inactive.bg_stroke = edge(&palette);
    widgets.open.bg_stroke = edge(&palette);
    visuals.selection.bg_fill = match theme {
        Theme::Light => Color32::from_rgb(0xCB, 0xE0, 0xF6),
        Theme::Dark => Color32::from_rgb(0x1E, 0x40, 0x60),
    };
    visuals.selection.stroke = Stroke::new(1.0, palette.text);
    visuals.text_cursor.stroke.color = palette.text;
    // A window at rest draws nothing: a blinking cursor would have it paint twice a second.
    visuals.text_cursor.blink = false;
    visuals
}
