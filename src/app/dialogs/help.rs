//! The keys, from the table of commands, and what the figures cannot tell.

use super::modal::{Frame, begin_anew, begin_with};
use crate::app::commands::{Menu, TABLE};
use crate::app::page_keys::Scroll;
use egui::{Grid, RichText, ScrollArea, Ui};

/// What a user must know before trusting a figure; the README says the same.
pub const CAUTIONS: [&str; 4] = [
    "All figures are estimates: they follow from ratios and the tyre's nominal size, and real tyres \
     differ by −2.5 to +1.5 %. Measure the rolling circumference where it matters.",
    "An engine over-revved on a downshift can break. The redline speed of a gear is the highest for \
     changing down into it; stay well below.",
    "A gearbox, shaft or tyre beyond its rating fails. Other gears and tyres also change what the \
     speedometer shows, and reading low is forbidden nearly everywhere.",
    "The maker's data, local law and licensed practice decide what may be built, driven and \
     worked on; this program does not.",
];

/// What stands around the text, in points.
const ROOM_BESIDE_TEXT: f32 = 140.0;

/// Shows keys and cautions; whether they are to be closed.
pub(crate) fn help_ui(ctx: &egui::Context) -> bool {
    let frame = Frame {
        salt: "help",
        name: "Keys and cautions",
        description: "",
        is_question: false,
    };
    let shown = frame.show(ctx, |ui| {
        ui.set_width(520.0);
        let keys = Scroll::taken_with_arrows(ui);
        ScrollArea::vertical()
            .max_height(ctx.content_rect().height() - ROOM_BESIDE_TEXT)
            .show(ui, |ui| {
                keys.apply(ui);
                ui.heading("Cautions");
                for caution in CAUTIONS {
                    ui.label(caution);
                    ui.add_space(2.0);
                }
                ui.add_space(8.0);
                ui.heading("Keys");
                keys_ui(ui);
            });
        ui.add_space(6.0);
        close_ui(ui)
    });
    let is_closed = shown.inner || shown.is_left || shown.is_clicked_beside;
    if is_closed {
        begin_anew(ctx);
    }
    is_closed
}

/// The button of a dialog that is only looked at, which has the focus at first.
pub(super) fn close_ui(ui: &mut Ui) -> bool {
    let close = ui.button("Close");
    begin_with(ui, &close);
    close.clicked()
}

/// Keys that belong to a part of the window rather than to a command.
pub const OTHER_KEYS: [(&str, &str); 5] = [
    ("Up, Down in a field", "Goes to the field above or below"),
    ("Enter or Tab in a field", "Takes what was typed"),
    (
        "Esc in a field or on a handle",
        "Takes back what was typed or moved",
    ),
    (
        "Up, Down on a shift point",
        "Moves it by 10 rpm, with Shift by 100",
    ),
    (
        "Wheel, drag, double click on the diagram",
        "Zooms, moves, shows the whole",
    ),
];

fn keys_ui(ui: &mut Ui) {
    Grid::new("keys")
        .num_columns(2)
        .spacing([16.0, 3.0])
        .show(ui, |ui| {
            for menu in Menu::ALL {
                for entry in TABLE
                    .iter()
                    .filter(|e| e.menu == menu && !e.shortcuts.is_empty())
                {
                    let keys: Vec<String> = entry
                        .shortcuts
                        .iter()
                        .map(|s| ui.format_shortcut(s))
                        .collect();
                    ui.label(RichText::new(keys.join(" or ")).strong());
                    ui.label(entry.tooltip);
                    ui.end_row();
                }
            }
            for (keys, what) in OTHER_KEYS {
                ui.label(RichText::new(keys).strong());
                ui.label(what);
                ui.end_row();
            }
        });
}
