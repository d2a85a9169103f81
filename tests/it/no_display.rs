//! What does the window command say where there is no display?

#![cfg(target_os = "linux")]

use std::process::{Command, Output};

/// The program without arguments and with `variables`, where nothing names a display.
fn started(variables: &[(&str, &str)]) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_layshaft"));
    for name in ["DISPLAY", "WAYLAND_DISPLAY", "WAYLAND_SOCKET"] {
        command.env_remove(name);
    }
    let home = tempfile::tempdir().unwrap();
    command
        .env("HOME", home.path())
        .env_remove("XDG_CONFIG_HOME");
    command.envs(variables.iter().copied()).output().unwrap()
}

#[test]
fn without_a_display_the_window_command_says_so_in_one_sentence() {
    let displays: [&[(&str, &str)]; 4] = [
        &[],
        &[("DISPLAY", "")],
        &[("DISPLAY", ":98765"), ("RUST_BACKTRACE", "1")],
        &[("WAYLAND_DISPLAY", "no-such-display")],
    ];
    for variables in displays {
        let output = started(variables);
        let said = String::from_utf8(output.stderr).unwrap();
        assert_eq!(output.status.code(), Some(2), "{variables:?}: {said}");
        assert!(output.stdout.is_empty(), "{variables:?}");
        assert_eq!(said.lines().count(), 1, "{variables:?}: {said}");
        assert!(said.chars().count() < 300, "{variables:?}: {said}");
        assert!(said.contains("no display"), "{variables:?}: {said}");
        for command in ["table", "chart", "check"] {
            assert!(said.contains(command), "{variables:?}: {said}");
        }
    }
}
