//! Does Tab go through every dialog and the write-up, once around, without leaving them?

use crate::support::window::{KINDS, Opening, Window, camper_van};
use egui::{Key, Modifiers};
use std::collections::BTreeSet;

const SIZES: [[f32; 2]; 2] = [[667.0, 427.0], [1280.0, 800.0]];

/// Walks once around and the other way too; every stop.
fn around(window: &mut Window, what: &str) -> BTreeSet<u64> {
    let stops = window.tab_stops(what);
    let there: BTreeSet<u64> = stops.iter().map(|(id, _)| id.value()).collect();
    assert_eq!(
        there.len(),
        stops.len(),
        "{what}: Tab goes in a circle within"
    );
    let mut back = Vec::new();
    for _ in 0..stops.len() {
        window.key_with(Modifiers::SHIFT, Key::Tab);
        back.push(window.check_stop(what));
    }
    back.reverse();
    // It began on the first one and has come back to it.
    let forward: Vec<u64> = stops.iter().map(|(id, _)| id.value()).collect();
    assert_eq!(back, forward, "{what}: the way back is another");
    there
}

#[test]
fn tab_goes_through_all_of_a_dialog_and_stays_inside() {
    for kind in KINDS {
        for size in SIZES {
            let what = format!("{} at {size:?}", kind.file);
            let mut window = kind.window(size);
            let reached = around(&mut window, &what);
            // All behind it is out of reach, so that what is left is the dialog.
            let missed: Vec<u64> = window.focusable().difference(&reached).copied().collect();
            assert!(missed.is_empty(), "{what}: {}", window.told(&missed));
            let strange: Vec<u64> = reached.difference(&window.focusable()).copied().collect();
            assert!(strange.is_empty(), "{what}: {}", window.told(&strange));
            kind.node(&window);
        }
    }
}

#[test]
fn tab_goes_through_the_lines_of_a_pasted_set_too() {
    for size in SIZES {
        let [width, height] = size;
        let mut window = Opening::on(camper_van()).sized(width, height).open();
        window.ctrl_shift(Key::V);
        let text = "1st 34/9\n2nd 2.1\n3rd 1.3\n4th 1\nreverse 3.1\nfinal drive 4.06";
        window.event(egui::Event::Paste(text.to_owned()));
        window.settle();
        let reached = around(&mut window, &format!("a pasted set at {size:?}"));
        assert_eq!(reached, window.focusable());
        assert!(reached.len() > 7, "{}", reached.len());
    }
}

#[test]
fn tab_goes_through_all_of_the_write_up_without_a_break() {
    for size in SIZES {
        let [width, height] = size;
        let mut window = Opening::on(camper_van()).sized(width, height).open();
        let before = window.focusable();
        window.ctrl(Key::E);
        let what = format!("the write-up at {size:?}");
        let reached = window.reached(&what);
        let there: BTreeSet<u64> = window.focusable().difference(&before).copied().collect();
        assert!(there.len() > 14, "{what}: {}", there.len());
        let missed: Vec<u64> = there.difference(&reached).copied().collect();
        assert!(missed.is_empty(), "{what}: {}", window.told(&missed));
        let stops = window.tab_stops(&what);
        let is_inside = stops.iter().map(|(id, _)| there.contains(&id.value()));
        let mut is_inside: Vec<bool> = is_inside.collect();
        is_inside.dedup();
        if is_inside.first() == is_inside.last() {
            is_inside.pop();
        }
        assert_eq!(is_inside.len(), 2, "{what}: it is left and entered once");
    }
}
