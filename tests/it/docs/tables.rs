//! The tables that a guide repeats, made of where they come from.

use super::{commands, printed};
use egui::ModifierNames;
use layshaft::app::{Menu, OTHER_KEYS, TABLE};
use layshaft::sheet::json::{
    FIGURE_KEYS, FIT_KEYS, JOB_KEYS, JOURNAL_KEYS, PAIR_KEYS, PRELOAD_KEYS, SHIM_KEYS,
    key_reference,
};

/// A table as guides have it.
pub(super) fn table<const N: usize>(head: [&str; N], rows: &[[String; N]]) -> String {
    let line = |cells: &[String; N]| format!("| {} |\n", cells.join(" | "));
    let head = [head, ["---"; N]].map(|cells| cells.map(str::to_owned));
    head.iter().chain(rows).map(line).collect()
}

/// The keys of the window, menu by menu.
pub(super) fn key_table() -> String {
    let mut rows = Vec::new();
    for menu in Menu::ALL {
        for entry in TABLE.iter().filter(|entry| entry.menu == menu) {
            let keys = entry.shortcuts.iter();
            let keys = keys.map(|key| key.format(&ModifierNames::NAMES, false));
            rows.push([
                menu.text().to_owned(),
                entry.text.to_owned(),
                keys.collect::<Vec<_>>().join(" or "),
                entry.tooltip.to_owned(),
            ]);
        }
    }
    for (keys, what) in OTHER_KEYS {
        rows.push(["", "", keys, what].map(str::to_owned));
    }
    table(["menu", "command", "keys", "what it does"], &rows)
}

/// The keys of the JSON of gear sets.
pub(super) fn json_table() -> String {
    let rows = key_reference().into_iter();
    let rows: Vec<_> = rows.map(|(key, what)| [format!("`{key}`"), what]).collect();
    table(["key", "what it holds"], &rows)
}

/// The keys of the JSON of what moves.
pub(super) fn motion_json_table() -> String {
    let rows = FIGURE_KEYS.iter();
    let rows: Vec<_> = rows
        .map(|(show, key, what)| [format!("`{show}`"), format!("`{key}`"), (*what).to_owned()])
        .collect();
    table(["show", "key", "what it holds"], &rows)
}

/// The keys of the JSON of tooth pairs.
pub(super) fn pairs_json_table() -> String {
    let rows = PAIR_KEYS.iter();
    let rows: Vec<_> = rows
        .map(|(key, what)| [format!("`{key}`"), (*what).to_owned()])
        .collect();
    table(["key", "what it holds"], &rows)
}

/// The keys of several commands, each with its meaning.
type KeysOfCommands = [(&'static str, &'static [(&'static str, &'static str)])];

fn commands_json_table(commands: &KeysOfCommands) -> String {
    let rows = commands.iter().flat_map(|(command, keys)| {
        keys.iter().map(|(key, what)| {
            let key = format!("`{key}`");
            [(*command).to_owned(), key, (*what).to_owned()]
        })
    });
    let rows: Vec<_> = rows.collect();
    table(["command", "key", "what it holds"], &rows)
}

/// The keys of the JSON of what is measured at the bench.
pub(super) fn bench_json_table() -> String {
    commands_json_table(&[
        ("shim", SHIM_KEYS),
        ("preload", PRELOAD_KEYS),
        ("jobs", JOB_KEYS),
    ])
}

/// The keys of the JSON of fits and turned shafts.
pub(super) fn fits_json_table() -> String {
    commands_json_table(&[("fit", FIT_KEYS), ("journal", JOURNAL_KEYS)])
}

/// Every option in the order of the help, with the commands that take it.
pub(super) fn option_table() -> String {
    let mut rows: Vec<[String; 3]> = Vec::new();
    for command in &commands() {
        let help = printed(&[command, "--help"]);
        let mut place = 0;
        for line in help.lines().filter(|line| line.starts_with("  -")) {
            let (option, meaning) = line.trim().split_once("  ").unwrap();
            let option = format!("`{}`", option.replace('|', "` or `"));
            if let Some(at) = rows.iter().position(|row| row[0] == option) {
                place = at + 1;
                rows[at][1].extend([", ", command]);
            } else {
                let row = [option, command.clone(), meaning.trim().to_owned()];
                rows.insert(place, row);
                place += 1;
            }
        }
    }
    table(["option", "goes with", "meaning"], &rows)
}
