//! Which commands are there, what are they called, and by which key are they reached?
//!
//! Each stands once in one table: menus, shortcuts, the help window and the README's list come
//! from it.

use super::drafts::KeptKeys;
use egui::{Key, KeyboardShortcut, Modifiers};

/// Something a user can invoke by name.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Command {
    /// An empty project of a car.
    New,
    /// An empty project of a truck or tractor.
    NewWithRanges,
    /// An empty project of a motorcycle.
    NewMotorcycle,
    /// A project from a file.
    Open,
    /// The project into its file.
    Save,
    /// The project into another file.
    SaveAs,
    /// Ends the program.
    Quit,
    /// Takes the last step back.
    Undo,
    /// Brings the last undone step back.
    Redo,
    /// The selected set once more.
    CopySet,
    /// The selected set is changed up where that is best.
    BestShifts,
    /// What fulfils a wish is found for the selected set.
    FindWish,
    /// A tooth pair is found for the selected set.
    FindPair,
    /// The selected set is filled with steps.
    FillSteps,
    /// What is fitted is counted.
    CountFitted,
    /// The selected set goes.
    RemoveSet,
    /// Gears are typed as their own ratios.
    TypeRatios,
    /// Gears are typed as overall ratios.
    TypeOverall,
    /// Gears are typed as road speeds.
    TypeSpeeds,
    /// A gear set from text.
    PasteSet,
    /// The picture and the tables for others to read.
    WriteUp,
    /// The table as text to the clipboard.
    CopyTable,
    /// The sets in the table one under another.
    OneUnderAnother,
    /// The sets in the table side by side.
    SideBySide,
    /// The menu in which the columns of the table are ticked.
    Columns,
    /// The page of the bench.
    ShowWorkshop,
    /// The diagram of engine speeds.
    ShowSpeed,
    /// The diagram of tractive effort.
    ShowEffort,
    /// The diagram of the run from rest.
    ShowRun,
    /// The diagram of steady speeds.
    ShowCruise,
    /// The diagram of speedometers.
    ShowSpeedometer,
    /// The whole diagram.
    Fit,
    /// The next set comes forward.
    NextSet,
    /// Road speeds in the other unit.
    SwitchUnits,
    /// Light, dark or as the system.
    ThemeLight,
    /// Dark looks.
    ThemeDark,
    /// The looks that the system has.
    ThemeSystem,
    /// Everything larger.
    ZoomIn,
    /// Everything smaller.
    ZoomOut,
    /// Ordinary size.
    ZoomReset,
    /// What is valid but strange, as a list.
    Findings,
    /// Any command, example, set or recent file by a part of its words.
    FindCommand,
    /// The shortcuts and cautions.
    Help,
}

/// The menu a command stands in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Menu {
    /// Documents and files.
    File,
    /// Changes.
    Edit,
    /// What is seen.
    View,
    /// What helps.
    Help,
}

impl Menu {
    /// All menus, from left to right.
    pub const ALL: [Self; 4] = [Self::File, Self::Edit, Self::View, Self::Help];

    /// The menu's heading.
    pub fn text(self) -> &'static str {
        match self {
            Self::File => "File",
            Self::Edit => "Edit",
            Self::View => "View",
            Self::Help => "Help",
        }
    }

    /// The letter that opens the menu, together with Alt: its first.
    pub fn key(self) -> Option<Key> {
        Key::from_name(&self.text()[..1])
    }
}

/// One row of the table.
#[derive(Debug, Clone, Copy)]
pub struct Entry {
    /// The command.
    pub command: Command,
    /// Where it stands.
    pub menu: Menu,
    /// What the menu says.
    pub text: &'static str,
    /// What it does, in one sentence.
    pub tooltip: &'static str,
    /// Its keys, the first of which is shown.
    pub shortcuts: &'static [KeyboardShortcut],
}

const fn ctrl(key: Key) -> KeyboardShortcut {
    KeyboardShortcut::new(Modifiers::COMMAND, key)
}

const fn ctrl_shift(key: Key) -> KeyboardShortcut {
    KeyboardShortcut::new(Modifiers::COMMAND.plus(Modifiers::SHIFT), key)
}

const fn plain(key: Key) -> KeyboardShortcut {
    KeyboardShortcut::new(Modifiers::NONE, key)
}

macro_rules! entries {
    ($($command:ident, $menu:ident, $text:literal, $tooltip:literal, [$($shortcut:expr),*];)*) => {
        &[$(Entry {
            command: Command::$command,
            menu: Menu::$menu,
            text: $text,
            tooltip: $tooltip,
            shortcuts: &[$($shortcut),*],
        }),*]
    };
}

/// All commands, in the order of their menus.
pub const TABLE: &[Entry] = entries! {
    New, File, "New", "Starts an empty project with a car's gearbox and final drive", [ctrl(Key::N)];
    NewWithRanges, File, "New truck or tractor", "Starts an empty project with ranges, high and low, and a crawler", [];
    NewMotorcycle, File, "New motorcycle", "Starts an empty project with a primary drive and a chain", [];
    Open, File, "Open…", "Opens a project from a file", [ctrl(Key::O)];
    Save, File, "Save", "Saves the project in its file", [ctrl(Key::S)];
    SaveAs, File, "Save as…", "Saves the project in another file", [ctrl_shift(Key::S)];
    WriteUp, File, "Write-up…", "Makes a picture and tables for others to read", [ctrl(Key::E)];
    Quit, File, "Quit", "Ends the program", [ctrl(Key::Q)];
    Undo, Edit, "Undo", "Takes the last change back", [ctrl(Key::Z)];
    Redo, Edit, "Redo", "Brings back what was undone", [ctrl_shift(Key::Z), ctrl(Key::Y)];
    CopySet, Edit, "Duplicate set", "Adds a copy of the selected set, to be changed and compared", [ctrl(Key::D)];
    PasteSet, Edit, "Paste gears…", "Reads a whole gear set from text", [ctrl_shift(Key::V)];
    CopyTable, Edit, "Copy table", "Copies the table with all its columns as text", [ctrl_shift(Key::C)];
    TypeRatios, Edit, "Type gears as gear ratios", "The fields of the gears take the gearbox's own ratios or teeth", [];
    TypeOverall, Edit, "Type gears as overall ratios", "The fields of the gears take engine turns for a turn of the wheel", [];
    TypeSpeeds, Edit, "Type gears as speeds per 1000 rpm", "The fields of the gears take road speeds at 1000 rpm", [];
    BestShifts, Edit, "Take the best shift points", "Changes the selected set up where that is fastest; its card says what that gains", [];
    FindWish, Edit, "Find for a wish…", "Finds the final drive, ratio or tyre of the selected set that gives what is wished", [];
    FindPair, Edit, "Find a tooth pair…", "Finds the teeth that come near a ratio of the selected set", [];
    FillSteps, Edit, "Fill the steps…", "Lays out the gears of the selected set between first and top", [];
    CountFitted, Edit, "What is fitted…", "Counts turns, and says which gear of the sets that is", [];
    RemoveSet, Edit, "Remove set", "Removes the selected set", [];
    ShowSpeed, View, "Diagram: speed", "Shows engine speed against road speed", [ctrl(Key::Num1)];
    ShowEffort, View, "Diagram: effort", "Shows how hard every gear pulls, against road speed", [ctrl(Key::Num2)];
    ShowRun, View, "Diagram: run", "Shows road speed against time, from rest", [ctrl(Key::Num3)];
    ShowCruise, View, "Diagram: cruise", "Shows what steady road speeds ask for", [ctrl(Key::Num4)];
    ShowSpeedometer, View, "Diagram: speedometer", "Shows what the speedometer will read, above the true speed", [ctrl(Key::Num5)];
    ShowWorkshop, View, "Workshop", "Shows the jobs of the bench: shims, preload, backlash", [ctrl(Key::Num6)];
    Fit, View, "Whole diagram", "Shows the whole diagram again", [plain(Key::Home)];
    NextSet, View, "Next set", "Brings the next set forward", [ctrl(Key::J)];
    SwitchUnits, View, "Switch km/h and mph", "Shows road speeds in the other unit", [ctrl(Key::U)];
    OneUnderAnother, View, "Table: one under another", "Shows each set with rows of its own", [];
    SideBySide, View, "Table: side by side", "Shows every figure of all sets in one row", [];
    Columns, View, "Table: columns…", "Chooses the columns of the table of ratios", [];
    ZoomIn, View, "Larger", "Shows everything larger", [ctrl(Key::Plus), ctrl(Key::Equals)];
    ZoomOut, View, "Smaller", "Shows everything smaller", [ctrl(Key::Minus)];
    ZoomReset, View, "Ordinary size", "Shows everything in its ordinary size", [ctrl(Key::Num0)];
    Findings, View, "Findings…", "Lists what is possible but strange", [];
    ThemeLight, View, "Light", "Dark lines on light paper", [];
    ThemeDark, View, "Dark", "Light lines on dark paper", [];
    ThemeSystem, View, "Like the system", "Light or dark as the system is", [];
    FindCommand, Help, "Find a command…", "Finds commands, examples, sets and recent files by a part of their words", [ctrl(Key::K)];
    Help, Help, "Keys and cautions", "Lists the keys, and what the figures cannot tell", [plain(Key::F1)];
};

impl Command {
    /// The command's row in the table.
    pub fn entry(self) -> Option<&'static Entry> {
        TABLE.iter().find(|entry| entry.command == self)
    }
}

/// The commands whose keys were pressed in this frame, in that order; the keys are used up.
///
/// A slow frame may bring several: what was undone and then saved must not be saved first.
/// `kept` says what the field keeps for its text that has the focus, if it is one of a form;
/// `is_scrolling` that Home scrolls the part of the window that has it.
pub(super) fn pressed(
    ctx: &egui::Context,
    kept: Option<KeptKeys>,
    is_scrolling: bool,
) -> Vec<Command> {
    let is_typing = ctx.text_edit_focused();
    let is_own = |shortcut: KeyboardShortcut, command: Command| {
        (is_typing && belongs_to_text(shortcut, command, kept))
            || (is_scrolling && shortcut == plain(Key::Home))
    };
    let mut commands = Vec::new();
    ctx.input_mut(|input| {
        input.events.retain(|event| {
            let command = command_of(event, &is_own);
            commands.extend(command);
            command.is_none()
        });
    });
    commands
}

/// The command that a key press asks for, unless a text field keeps it as its own.
///
/// Of several, the one with the most modifiers: a shorter shortcut would take it too.
fn command_of(
    event: &egui::Event,
    is_own: &dyn Fn(KeyboardShortcut, Command) -> bool,
) -> Option<Command> {
    let (key, modifiers) = super::input::pressed(event)?;
    let shortcuts = TABLE
        .iter()
        .flat_map(|entry| entry.shortcuts.iter().map(|s| (*s, entry.command)));
    shortcuts
        .filter(|(s, _)| s.logical_key == key && modifiers.matches_logically(s.modifiers))
        .filter(|(s, command)| !is_own(*s, *command))
        .max_by_key(|(s, _)| modifier_count(s.modifiers))
        .map(|(_, command)| command)
}

/// Whether a text field that is being typed in keeps a key for itself; what is no field of a form has
/// its own ways.
fn belongs_to_text(shortcut: KeyboardShortcut, command: Command, kept: Option<KeptKeys>) -> bool {
    let is_kept = match command {
        Command::Undo => kept.is_none_or(|kept| kept.undo),
        Command::Redo => kept.is_none_or(|kept| kept.redo),
        _ => false,
    };
    is_kept || (shortcut.modifiers == Modifiers::NONE && shortcut.logical_key != Key::F1)
}

fn modifier_count(modifiers: Modifiers) -> u32 {
    [
        modifiers.alt,
        modifiers.shift,
        modifiers.command || modifiers.ctrl,
    ]
    .into_iter()
    .map(u32::from)
    .sum()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::input::press as key;

    #[test]
    fn no_two_commands_share_a_key() {
        let mut seen = Vec::new();
        for entry in TABLE {
            for shortcut in entry.shortcuts {
                assert!(!seen.contains(shortcut), "{:?} is taken", entry.command);
                seen.push(*shortcut);
            }
        }
    }

    #[test]
    fn every_menu_has_a_letter_of_its_own() {
        for menu in Menu::ALL {
            assert!(menu.key().is_some(), "{menu:?}");
            let with_it = Menu::ALL.into_iter().filter(|m| m.key() == menu.key());
            assert_eq!(with_it.count(), 1, "{menu:?}");
        }
    }

    #[test]
    fn keys_of_one_frame_are_answered_in_their_order() {
        let ctrl = Modifiers::CTRL | Modifiers::COMMAND;
        let ctx = egui::Context::default();
        let input = egui::RawInput {
            events: vec![
                key(Key::Z, ctrl),
                key(Key::S, ctrl),
                key(Key::Z, ctrl | Modifiers::SHIFT),
                key(Key::X, ctrl),
            ],
            ..egui::RawInput::default()
        };
        let mut commands = Vec::new();
        let mut left = usize::MAX;
        let output = ctx.run_ui(input, |ui| {
            commands = pressed(ui.ctx(), None, false);
            left = ui.input(|i| i.events.len());
        });
        output.drop_without_applying_deltas();
        assert_eq!(commands, [Command::Undo, Command::Save, Command::Redo]);
        assert_eq!(left, 1, "the key that no command has is left to others");
    }

    #[test]
    fn every_command_stands_in_the_table_once() {
        for entry in TABLE {
            let rows = TABLE.iter().filter(|e| e.command == entry.command);
            assert_eq!(rows.count(), 1, "{:?}", entry.command);
            assert!(entry.command.entry().is_some());
        }
    }
}
