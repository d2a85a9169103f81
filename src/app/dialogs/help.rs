//! The keys, from the table of commands, and what the figures cannot tell.

use super::looked_at::looked_at_ui;
use super::modal::Frame;
use crate::app::commands::{Menu, TABLE};
use crate::app::heard::heading_ui;
use crate::project::View;
use egui::{Align, Layout, RichText, Ui, vec2};

/// What a user must know before trusting a figure; the README says the same.
pub const CAUTIONS: [&str; 6] = [
    "All figures are estimates: they follow from ratios and the tyre's nominal size, and real tyres \
     differ by −2.5 to +1.5 %. Measure the rolling circumference where it matters.",
    "Pull, times, top speeds and fuel follow from figures that are guessed in part: they tell sets \
     apart better than they tell the truth about one. Whoever times a run needs a closed road.",
    "An engine over-revved on a downshift can break. The redline speed of a gear is the highest for \
     changing down into it; stay well below.",
    "A gearbox is heavy: lift it with help. Presses and bearings splinter; wear glasses, and keep hands \
     away. A sign or a sleeve turned round costs a bearing: check every setting on the assembled box, \
     by measuring, and do not let it run itself in.",
    "A gearbox, shaft or tyre beyond its rating fails. Other gears and tyres also change what the \
     speedometer shows, and reading low is forbidden nearly everywhere.",
    "The maker's data, local law and licensed practice decide what may be built, driven and \
     worked on; this program does not.",
];

/// Shows keys and cautions; whether they are to be closed.
pub(crate) fn help_ui(ctx: &egui::Context) -> bool {
    let frame = Frame {
        salt: "help",
        name: "Keys and cautions",
        description: "",
        is_question: false,
    };
    looked_at_ui(
        ctx,
        frame,
        |_| {},
        |ui| {
            heading_ui(ui, "Cautions");
            for caution in CAUTIONS {
                ui.label(caution);
                ui.add_space(2.0);
            }
            ui.add_space(8.0);
            heading_ui(ui, "Diagrams");
            for view in View::ALL {
                key_ui(ui, view.name(), view.meaning());
            }
            ui.add_space(8.0);
            heading_ui(ui, "Keys");
            keys_ui(ui);
        },
    )
}

/// Keys that belong to a part of the window rather than to a command.
pub const OTHER_KEYS: [(&str, &str); 18] = [
    (
        "F6, Shift+F6",
        "Goes to the next part of the window, or the one before, where it was last",
    ),
    ("Tab, Shift+Tab", "Goes down a column, then from row to row"),
    (
        "Left, Right",
        "Goes along a row, from a field at the ends of its text; from shift point to shift point",
    ),
    (
        "Alt with F, E, V or H; F10",
        "Opens that menu, or the first; Left and Right go to the others",
    ),
    (
        "Menu key or Shift+F10",
        "Opens what a right click opens: on a row of the table, on a point of a torque curve, on a \
         field for which something can be found",
    ),
    (
        "Page Up, Page Down, Home, End",
        "Scrolls the part that has the focus, the help, or the preview of the write-up",
    ),
    (
        "+, −, Shift with Page Up, Page Down in the write-up",
        "Shows the preview larger or smaller, goes to its left or right",
    ),
    (
        "Left, Right in a question",
        "Goes from answer to answer; Enter takes the one with the focus",
    ),
    (
        "Esc in a dialog, a menu or the write-up",
        "Closes it; the focus goes back to where it was",
    ),
    (
        "Up, Down where a command is found",
        "Chooses a line; Enter runs it",
    ),
    (
        "Up, Down",
        "Goes to the field, button or row above or below; moves the bar between two parts",
    ),
    (
        "Enter or Tab in a field",
        "Takes what was typed and goes to the next field",
    ),
    (
        "Esc in a field or on a handle",
        "Takes back what was typed or moved",
    ),
    (
        "Up, Down on a shift point",
        "Moves it by 10 rpm, with Shift or as Page Up, Page Down by 100; Left, Right on the \
         diagram of effort",
    ),
    (
        "Arrows, Delete on a point of a torque curve",
        "Moves it by 1 N·m or 10 rpm, with Shift ten times as far; removes it",
    ),
    (
        "Up, Down on a step that is laid out",
        "Moves it by 0.01, with Shift or as Page Up, Page Down by 0.1; Esc puts it back",
    ),
    (
        "Up, Down in the table of tooth pairs",
        "Chooses a pair, as Page Up, Page Down, Home and End do; Enter goes on to the answers",
    ),
    (
        "Wheel, drag, double click on the diagram",
        "Zooms, moves, shows the whole",
    ),
];

/// What the keys take before what they do, in points.
const KEYS_WIDTH: f32 = 180.0;

fn keys_ui(ui: &mut Ui) {
    for menu in Menu::ALL {
        let entries = TABLE.iter().filter(|entry| entry.menu == menu);
        for entry in entries.filter(|entry| !entry.shortcuts.is_empty()) {
            let keys = entry.shortcuts.iter().map(|key| ui.format_shortcut(key));
            let keys: Vec<String> = keys.collect();
            key_ui(ui, &keys.join(" or "), entry.tooltip);
        }
    }
    for (keys, what) in OTHER_KEYS {
        key_ui(ui, keys, what);
    }
}

/// Keys, and beside them what they do.
fn key_ui(ui: &mut Ui, keys: &str, what: &str) {
    ui.horizontal_top(|ui| {
        let column = Layout::top_down(Align::Min);
        ui.allocate_ui_with_layout(vec2(KEYS_WIDTH, 0.0), column, |ui| {
            ui.set_width(KEYS_WIDTH);
            ui.label(RichText::new(keys).strong());
        });
        let rest = vec2(ui.available_width(), 0.0);
        ui.allocate_ui_with_layout(rest, column, |ui| ui.label(what));
    });
}
