//! The tree that a screen reader is given, as text: role, name, value, state, description.

use crate::support::window::Window;
use egui::accesskit::{Live, Role, Toggled};
use egui_kittest::Node;
use egui_kittest::kittest::{AccessKitNode, NodeT};
use std::collections::BTreeSet;

/// How much of a window is told.
#[derive(Clone, Copy)]
pub(super) enum Seen {
    Whole,
    /// What has come over the window.
    What,
}

/// What tells a thing from all others.
pub(super) fn id(node: &AccessKitNode<'_>) -> u64 {
    let (id, _) = node.locate();
    id.0
}

/// Everything in a window.
pub(super) fn all(window: &Window) -> BTreeSet<u64> {
    window
        .nodes()
        .map(|node| id(&node.accesskit_node()))
        .collect()
}

/// Something with all that is in it.
pub(super) fn within(node: Node<'_>) -> BTreeSet<u64> {
    let inside = node.children_recursive();
    let ids = inside.map(|node| id(&node.accesskit_node()));
    ids.chain([id(&node.accesskit_node())]).collect()
}

/// The tree of a window but for what was there before.
pub(super) fn tree(window: &Window, before: &BTreeSet<u64>) -> String {
    let mut lines = String::new();
    tell(window.harness.root(), 0, before, &mut lines);
    lines
}

fn tell(node: Node<'_>, depth: usize, before: &BTreeSet<u64>, lines: &mut String) {
    let of = node.accesskit_node();
    let is_told =
        !before.contains(&id(&of)) && !matches!(of.role(), Role::GenericContainer | Role::TextRun);
    if is_told {
        lines.push_str(&"  ".repeat(depth));
        lines.push_str(&line(&of));
        lines.push('\n');
    }
    for child in node.children() {
        tell(child, depth + usize::from(is_told), before, lines);
    }
}

fn line(node: &AccessKitNode<'_>) -> String {
    let mut line = format!("{:?}", node.role());
    let mut add = |text: String| {
        line.push(' ');
        line.push_str(&text);
    };
    if let Some(label) = node.label() {
        add(format!("{label:?}"));
    }
    if let Some(value) = node.value() {
        add(format!("= {:?}", without_size(&value)));
    }
    if let Some(value) = node.numeric_value() {
        add(format!("= {value}"));
    }
    if let Some(toggled) = node.toggled() {
        let word = match toggled {
            Toggled::True => "on",
            Toggled::False => "off",
            Toggled::Mixed => "mixed",
        };
        add(format!("({word})"));
    }
    for (is_so, word) in [
        (node.is_selected() == Some(true), "(selected)"),
        (node.is_disabled(), "(disabled)"),
        (node.is_modal(), "(modal)"),
        (node.live() == Live::Polite, "(announced)"),
    ] {
        if is_so {
            add(word.to_owned());
        }
    }
    if let Some(description) = node.data().description().filter(|text| !text.is_empty()) {
        add(format!("-- {description:?}"));
    }
    line
}

/// A picture's size in kilobytes follows from every pixel of it; that is not what is read through.
fn without_size(text: &str) -> String {
    let size = text.strip_suffix(" kB");
    let rest = size.and_then(|size| size.rsplit_once(' '));
    rest.map_or_else(|| text.to_owned(), |(rest, _)| format!("{rest} … kB"))
}
