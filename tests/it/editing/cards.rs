//! Does every button and menu of the cards do what it says, and is it taken back whole?
#![expect(clippy::float_cmp, reason = "a number comes back as it was typed")]

use crate::support::window::{Opening, Window, camper_van};
use egui::accesskit::Role;
use egui::epaint::Primitive;
use egui::{Key, Rect};
use egui_kittest::kittest::NodeT;
use layshaft::chart::Handle;
use layshaft::draw::palette::{Palette, Theme};
use layshaft::gearing::{ActsOn, GearRole, GearSet, Ratio, Stage};
use layshaft::project::examples::EXAMPLES;
use layshaft::project::{Edit, Livery, Project, SetEdit};

/// Something that is done with a card, and what only the document after it shows.
struct Case {
    what: &'static str,
    act: fn(&mut Window),
    shows: fn(&mut Window) -> bool,
}

/// Does every case on a project of its own, takes it back and brings it back.
fn check(project: fn() -> Project, cases: &[Case]) {
    for case in cases {
        println!("{}", case.what);
        let mut window = Opening::on(project()).open();
        let before = window.project().clone();
        assert!(!(case.shows)(&mut window), "{} was so before", case.what);
        (case.act)(&mut window);
        assert!((case.shows)(&mut window), "{} does not show", case.what);
        assert_eq!(window.undo_steps(), 1, "{}", case.what);
        window.check_step(&before);
    }
}

fn labels(window: &Window, place: usize) -> Vec<String> {
    let gears = window.set(place).set.gears.iter();
    gears.map(|gear| gear.label.to_string()).collect()
}

fn names(window: &Window) -> Vec<String> {
    let sets = window.project().sets.iter();
    sets.map(|candidate| candidate.set.name.to_string())
        .collect()
}

fn stage(window: &Window) -> &Stage {
    window.set(0).set.stages.first().unwrap()
}

#[test]
fn a_set_is_hidden_compared_copied_moved_and_removed() {
    check(
        camper_van,
        &[
            Case {
                what: "hide",
                act: |w| w.click_on(Role::CheckBox, "visible, set 2"),
                shows: |w| !w.set(1).visible,
            },
            Case {
                what: "another baseline",
                act: |w| w.click_on(Role::RadioButton, "baseline, set 3"),
                shows: |w| w.project().sets.baseline_place() == 2,
            },
            Case {
                what: "move down",
                act: |w| w.choose("Set 1 menu", Role::Button, "Move down"),
                shows: |w| names(w)[1] == "Fitted five-speed",
            },
            Case {
                what: "move up",
                act: |w| w.choose("Set 3 menu", Role::Button, "Move up"),
                shows: |w| names(w)[1].starts_with("Six-speed"),
            },
            Case {
                what: "remove",
                act: |w| w.choose("Set 2 menu", Role::Button, "Remove set"),
                shows: |w| w.project().sets.len() == 2 && names(w)[1].starts_with("Six-speed"),
            },
        ],
    );
    check(
        two_sets,
        &[Case {
            what: "copy",
            act: |w| w.choose("Set 1 menu", Role::Button, "Duplicate set"),
            shows: |w| w.project().sets.len() == 3 && w.set(0).set.gears == w.set(1).set.gears,
        }],
    );
}

fn two_sets() -> Project {
    let project = camper_van();
    let last = project.sets.iter().last().unwrap().id;
    Edit::RemoveSet(last).applied_to(&project).unwrap()
}

#[test]
fn a_copy_comes_forward_under_a_name_of_its_own() {
    let mut window = Opening::on(two_sets()).open();
    window.choose("Set 1 menu", Role::Button, "Duplicate set");
    let different: std::collections::BTreeSet<String> = names(&window).into_iter().collect();
    assert_eq!(different.len(), 3, "{different:?}");
    assert!(is_forward(&window, 2));
}

/// A window in which all cards are in view, so that they are painted.
fn tall(project: Project) -> Window {
    Opening::on(project).sized(1280.0, 1200.0).open()
}

/// The set colours in the folded card of a set and in its entry of the legend above the diagram.
fn colors_of(window: &Window, name: &str) -> [Vec<Livery>; 2] {
    let (ctx, output) = (&window.harness.ctx, window.harness.output());
    let painted = ctx.tessellate(output.shapes.clone(), output.pixels_per_point);
    let vertices = painted.iter().flat_map(|part| match &part.primitive {
        Primitive::Mesh(mesh) => mesh.vertices.as_slice(),
        Primitive::Callback(_) => &[],
    });
    let palette = Palette::of(Theme::Light);
    let within = |rect: Rect| {
        let here = vertices.clone().filter(|vertex| rect.contains(vertex.pos));
        let has = |livery: &Livery| {
            here.clone()
                .any(|vertex| vertex.color == palette.set(*livery))
        };
        Livery::ALL.into_iter().filter(has).collect()
    };
    let is_card =
        |card: &str| card.starts_with("Open set ") && card.contains(&format!(", {name},"));
    let cards = window.names(Role::Button);
    let card = cards.iter().find(|card| is_card(card)).unwrap();
    let entry = format!("Bring {name} forward");
    [card, &entry].map(|name| within(window.get(Role::Button, name).rect()))
}

#[test]
fn a_copy_of_the_first_set_leaves_the_other_candidate_in_its_colour() {
    let mut window = tall(two_sets());
    let other = names(&window)[1].clone();
    window.click("Bring set 1 forward");
    let orange = [vec![Livery::Second], vec![Livery::Second]];
    assert_eq!(colors_of(&window, &other), orange);
    window.choose("Set 1 menu", Role::Button, "Duplicate set");
    assert_eq!(colors_of(&window, &other), orange);
    assert_eq!(window.set(1).livery, Livery::Third);
    window.choose("Set 2 menu", Role::Button, "Move up");
    assert_eq!(colors_of(&window, &other), orange);
    // What was copied is folded now, and has its own still.
    let blue = [vec![Livery::First], vec![Livery::First]];
    assert_eq!(colors_of(&window, "Fitted five-speed"), blue);
}

#[test]
fn where_the_first_set_went_the_others_keep_their_colours_and_the_next_takes_what_is_free() {
    let mut window = tall(camper_van());
    let all = names(&window);
    window.choose("Set 1 menu", Role::Button, "Remove set");
    let green = [vec![Livery::Third], vec![Livery::Third]];
    assert_eq!(colors_of(&window, &all[2]), green);
    window.choose("Set 1 menu", Role::Button, "Duplicate set");
    assert_eq!(colors_of(&window, &all[2]), green);
    let orange = [vec![Livery::Second], vec![Livery::Second]];
    assert_eq!(colors_of(&window, &all[1]), orange);
    assert_eq!(window.set(1).livery, Livery::First);
    window.ctrl(Key::Z);
    window.ctrl(Key::Z);
    let blue = [vec![Livery::First], vec![Livery::First]];
    window.click("Bring set 3 forward");
    assert_eq!(colors_of(&window, &all[0]), blue);
}

/// Whether the set of that number is the one that has the handles.
fn is_forward(window: &Window, number: usize) -> bool {
    let name = window.set(number - 1).set.name.to_string();
    let sliders = window.names(Role::Slider);
    let handles = sliders
        .iter()
        .filter(|name| name.starts_with("Shift point"));
    let mut handles = handles.peekable();
    handles.peek().is_some() && handles.all(|handle| handle.ends_with(&format!(", {name}")))
}

#[test]
fn the_button_beneath_the_cards_copies_the_set_that_is_forward_and_shows_its_card() {
    let mut window = Opening::on(two_sets()).sized(1000.0, 640.0).open();
    window.click("Bring set 1 forward");
    window.click("Duplicate set, beneath the cards");
    assert_eq!(names(&window)[1], "Fitted five-speed (copy)");
    assert!(is_forward(&window, 2));
    let name = window.field("Name of set 2").rect();
    assert!(name.top() > 20.0 && name.bottom() < 620.0, "{name:?}");
    let button = window.get(Role::Button, "Duplicate set, beneath the cards");
    assert!(
        button.accesskit_node().is_disabled(),
        "three sets are the most"
    );
    let why = button.accesskit_node().description().unwrap_or_default();
    assert_eq!(why, "Not now: a project has three sets at most");
}

#[test]
fn the_card_of_a_set_that_comes_forward_is_scrolled_into_view() {
    let mut window = Opening::on(camper_van()).sized(1000.0, 640.0).open();
    window.click("Bring Six-speed, two output shafts forward");
    assert!(is_forward(&window, 3));
    let name = window.field("Name of set 3").rect();
    assert!(name.top() > 20.0 && name.bottom() < 620.0, "{name:?}");
    window.ctrl(Key::J);
    let name = window.field("Name of set 1").rect();
    assert!(name.top() > 20.0 && name.bottom() < 620.0, "{name:?}");
}

#[test]
fn no_more_than_three_sets_and_no_fewer_than_one() {
    let mut window = Window::on_camper_van();
    window.click("Set 1 menu");
    assert!(is_dead(&window, "Duplicate set"));
    window.key(Key::Escape);
    for _ in 0..2 {
        window.choose("Set 1 menu", Role::Button, "Remove set");
    }
    assert_eq!(window.project().sets.len(), 1);
    window.click("Set 1 menu");
    for name in ["Remove set", "Move up", "Move down"] {
        assert!(is_dead(&window, name), "{name}");
    }
    window.click("Remove set");
    assert_eq!(window.project().sets.len(), 1);
}

fn is_dead(window: &Window, button: &str) -> bool {
    window
        .get(Role::Button, button)
        .accesskit_node()
        .is_disabled()
}

#[test]
fn the_swatch_brings_a_set_forward_and_is_no_edit() {
    let mut window = Window::on_camper_van();
    for number in [1, 3, 2] {
        window.click(&format!("Bring set {number} forward"));
        assert!(is_forward(&window, number), "{number}");
    }
    assert_eq!(window.undo_steps(), 0);
}

#[test]
fn removing_the_set_that_is_forward_brings_another_forward() {
    let mut window = Window::on_camper_van();
    window.click("Bring set 3 forward");
    window.choose("Set 3 menu", Role::Button, "Remove set");
    assert!((1..=2).any(|number| is_forward(&window, number)));
}

#[test]
fn gears_are_added_moved_taken_out_of_the_chain_and_removed() {
    check(
        camper_van,
        &[
            Case {
                what: "add a gear above top",
                act: |w| w.click("Add gear, set 1"),
                shows: |w| labels(w, 0) == ["1", "2", "3", "4", "5", "6"] && falls(w),
            },
            Case {
                what: "move a gear down",
                act: |w| w.choose("Gear 1 menu, set 1", Role::Button, "Move down"),
                shows: |w| labels(w, 0) == ["2", "1", "3", "4", "5"],
            },
            Case {
                what: "move a gear up",
                act: |w| w.choose("Gear 5 menu, set 1", Role::Button, "Move up"),
                shows: |w| labels(w, 0) == ["1", "2", "3", "5", "4"],
            },
            Case {
                what: "make a crawler",
                act: |w| w.choose("Gear 1 menu, set 1", Role::Button, "Make it a crawler"),
                shows: |w| w.set(0).set.gears[0].role == GearRole::Crawler,
            },
            Case {
                what: "remove a gear",
                act: |w| w.choose("Gear 3 menu, set 1", Role::Button, "Remove gear"),
                shows: |w| labels(w, 0) == ["1", "2", "4", "5"],
            },
            Case {
                what: "remove reverse",
                act: |w| w.click("Remove reverse, set 1"),
                shows: |w| w.set(0).set.reverse.is_none(),
            },
        ],
    );
    check(
        with_a_crawler_and_no_reverse,
        &[
            Case {
                what: "take the crawler into the chain",
                act: |w| {
                    w.choose(
                        "Gear 1 menu, set 1",
                        Role::Button,
                        "Take into the shift chain",
                    );
                },
                shows: |w| w.set(0).set.gears[0].role == GearRole::Shifted,
            },
            Case {
                what: "add reverse",
                act: |w| w.click("Add reverse, set 1"),
                shows: |w| w.set(0).set.reverse.is_some(),
            },
        ],
    );
}

/// Whether the gears of the first set fall from first to top.
fn falls(window: &Window) -> bool {
    window.ratios(0).is_sorted_by(|a, b| a > b)
}

fn with_a_crawler_and_no_reverse() -> Project {
    let project = camper_van();
    let first = project.sets.iter().next().unwrap();
    let (set, gear) = (first.id, first.set.gears[0].id);
    let crawler = Edit::Set(set, SetEdit::Role(gear, GearRole::Crawler));
    let project = crawler.applied_to(&project).unwrap();
    let no_reverse = Edit::Set(set, SetEdit::Reverse(None));
    no_reverse.applied_to(&project).unwrap()
}

#[test]
fn the_last_gear_stays_and_the_last_of_the_chain_is_no_crawler() {
    let mut window = Window::on_camper_van();
    for gear in [2, 3, 4, 5] {
        let menu = format!("Gear {gear} menu, set 1");
        window.choose(&menu, Role::Button, "Remove gear");
    }
    window.click("Gear 1 menu, set 1");
    assert!(is_dead(&window, "Remove gear"));
    assert!(is_dead(&window, "Make it a crawler"));
    assert!(is_dead(&window, "Move down"));
    window.click("Remove gear");
    assert_eq!(labels(&window, 0), ["1"]);
}

#[test]
fn twelve_gears_are_the_most_and_each_has_a_label_of_its_own() {
    let mut window = Window::on_camper_van();
    for _ in 0..7 {
        window.click("Add gear, set 1");
    }
    assert_eq!(window.set(0).set.gears.len(), GearSet::MOST_GEARS);
    assert!(is_dead(&window, "Add gear, set 1"));
    let different: std::collections::BTreeSet<String> = labels(&window, 0).into_iter().collect();
    assert_eq!(different.len(), 12);
    assert!(falls(&window));
}

#[test]
fn a_label_that_is_free_again_can_be_taken() {
    let mut window = Window::on_camper_van();
    window.choose("Gear 4 menu, set 1", Role::Button, "Remove gear");
    window.fill("Label of gear 5, set 1", "4");
    assert_eq!(labels(&window, 0), ["1", "2", "3", "4"]);
    window.click("Remove reverse, set 1");
    window.fill("Label of gear 4, set 1", "R");
    assert_eq!(labels(&window, 0), ["1", "2", "3", "R"]);
    let before = window.project().clone();
    window.click("Add reverse, set 1");
    assert!(*window.project() == before);
    assert!(window.says("two gears are labelled \"R\""));
}

#[test]
fn final_drives_are_added_assigned_and_removed() {
    check(
        camper_van,
        &[
            Case {
                what: "add",
                act: |w| w.choose("Final drive 1 menu, set 1", Role::Button, "Add final drive"),
                shows: |w| w.set(0).set.final_drives.len() == 2,
            },
            Case {
                what: "assign to a gear",
                act: |w| w.click("Final drive of gear 4, set 3"),
                shows: |w| w.set(2).set.gears[3].final_drive == 1,
            },
            Case {
                what: "back to the first one",
                act: |w| w.click("Final drive of gear 5, set 3"),
                shows: |w| w.set(2).set.gears[4].final_drive == 0,
            },
            Case {
                what: "assign to reverse",
                act: |w| w.click("Final drive of reverse, set 3"),
                shows: |w| w.set(2).set.reverse.as_ref().unwrap().final_drive == 1,
            },
        ],
    );
    check(
        with_a_spare_final_drive,
        &[Case {
            what: "remove",
            act: |w| {
                w.choose(
                    "Final drive 2 menu, set 1",
                    Role::Button,
                    "Remove final drive",
                );
            },
            shows: |w| w.set(0).set.final_drives.len() == 1,
        }],
    );
}

fn with_a_spare_final_drive() -> Project {
    let project = camper_van();
    let first = project.sets.iter().next().unwrap().id;
    let spare = SetEdit::AddFinalDrive(Ratio::from_number(4.0).unwrap().into());
    Edit::Set(first, spare).applied_to(&project).unwrap()
}

#[test]
fn a_final_drive_in_use_stays_and_the_window_says_why() {
    let mut window = Window::on_camper_van();
    let before = window.project().clone();
    window.choose(
        "Final drive 2 menu, set 3",
        Role::Button,
        "Remove final drive",
    );
    assert!(*window.project() == before);
    assert!(window.says("final drive 2 is still used by a gear"));
    window.click("Final drive 1 menu, set 1");
    assert!(is_dead(&window, "Remove final drive"));
    window.key(Key::Escape);
    for _ in 0..2 {
        window.choose("Final drive 1 menu, set 1", Role::Button, "Add final drive");
    }
    window.click("Final drive 1 menu, set 1");
    assert!(is_dead(&window, "Add final drive"));
}

#[test]
fn counted_teeth_are_swapped_by_their_reading() {
    check(
        camper_van,
        &[
            Case {
                what: "a final drive",
                act: |w| w.click("73 driven by 15 = 4.867, swap, final drive, set 1"),
                shows: |w| w.text("Final drive, set 1") == "15:73",
            },
            Case {
                what: "a gear",
                act: |w| w.click("47 driven by 21 = 2.238, swap, gear 2, set 3"),
                shows: |w| w.text("Ratio of gear 2, set 3") == "21:47",
            },
        ],
    );
}

#[test]
fn the_reading_of_counted_teeth_follows_the_typing() {
    let mut window = Window::on_camper_van();
    window.type_in("Ratio of gear 1, set 1", "34:9");
    assert!(
        window
            .find(Role::Button, "34 driven by 9 = 3.778, swap, gear 1, set 1")
            .is_some()
    );
    window.key(Key::Escape);
    assert!(
        window
            .find(Role::Button, "34 driven by 9 = 3.778, swap, gear 1, set 1")
            .is_none()
    );
}

#[test]
fn every_usual_stage_can_be_added() {
    let kinds = [("Transfer box", 2), ("Overdrive", 2), ("Primary drive", 1)];
    for (kind, positions) in kinds {
        let mut window = Window::on_camper_van();
        let before = window.project().clone();
        window.choose("Add stage, set 1", Role::Button, kind);
        assert_eq!(stage(&window).name.as_str(), kind);
        assert_eq!(stage(&window).positions.len(), positions);
        assert_eq!(window.text("Name of stage 1, set 1"), kind);
        window.check_step(&before);
    }
}

#[test]
fn a_stage_with_one_position_is_a_name_and_a_ratio_until_somebody_names_the_position() {
    let mut window = Window::on_camper_van();
    window.choose("Add stage, set 1", Role::Button, "Primary drive");
    let name = "Name of position 1 of stage 1, set 1";
    let put = "Put in position 1 of stage 1, set 1";
    assert!(window.find(Role::TextInput, name).is_none());
    assert!(window.find(Role::RadioButton, put).is_none());
    window.fill("Ratio of position 1 of stage 1, set 1", "73:38");
    let words = &window.app().desk().table().sets[0].facts;
    assert!(
        words
            .iter()
            .any(|fact| fact.words == "Primary drive 73 driven by 38 = 1.921")
    );
    window.click("Add position to stage 1, set 1");
    window.fill(name, "short");
    window.click("Remove position 2 of stage 1, set 1");
    assert_eq!(window.text(name), "short");
    assert!(window.find(Role::RadioButton, put).is_none());
    // The row stays while letters pass through the usual name.
    window.type_in(name, "Fixed");
    assert_eq!(window.text(name), "Fixed");
    window.key(Key::Enter);
    assert!(window.find(Role::TextInput, name).is_none());
}

#[test]
fn the_teeth_of_a_fixed_stage_reduce_in_either_order_and_can_be_swapped() {
    let mut window = Window::on_camper_van();
    window.choose("Add stage, set 1", Role::Button, "Primary drive");
    let ratio = "Ratio of position 1 of stage 1, set 1";
    for text in ["40:76", "76:40"] {
        window.fill(ratio, text);
        assert_eq!(window.text(ratio), "76:40", "{text}");
    }
    window.click("76 driven by 40 = 1.900, swap, position 1 of stage 1, set 1");
    assert_eq!(window.text(ratio), "40:76");
}

#[test]
fn of_several_positions_counted_teeth_are_read_as_typed_and_said() {
    let mut window = Window::on_camper_van();
    window.choose("Add stage, set 1", Role::Button, "Overdrive");
    window.fill("Ratio of position 2 of stage 1, set 1", "28:36");
    window.click("28 driven by 36 = 0.778, swap, position 2 of stage 1, set 1");
    let stage = &window.set(0).set.stages[0];
    assert_eq!(stage.positions[1].ratio.to_string(), "36:28");
}

#[test]
fn a_set_that_was_removed_is_named_with_the_way_back() {
    let mut window = Window::on_camper_van();
    window.choose("Set 2 menu", Role::Button, "Remove set");
    let words = "removed set 2: Same box, taller final drive; Undo brings it back";
    assert!(window.says(words));
}

fn with_a_transfer_box() -> Project {
    let mut window = Window::on_camper_van();
    window.choose("Add stage, set 1", Role::Button, "Transfer box");
    window.project().clone()
}

#[test]
fn a_stage_is_put_in_its_positions_and_changed_in_all_its_parts() {
    check(
        with_a_transfer_box,
        &[
            Case {
                what: "low range",
                act: |w| w.click_on(Role::RadioButton, "Put in position 2 of stage 1, set 1"),
                shows: |w| stage(w).present == 1,
            },
            Case {
                what: "both ranges at once",
                act: |w| w.click_on(Role::CheckBox, "Show all positions of stage 1, set 1"),
                shows: |w| stage(w).shows_others,
            },
            Case {
                what: "its name",
                act: |w| w.fill("Name of stage 1, set 1", "Splitter"),
                shows: |w| stage(w).name.as_str() == "Splitter",
            },
            Case {
                what: "a position's name",
                act: |w| w.fill("Name of position 2 of stage 1, set 1", "Crawl"),
                shows: |w| stage(w).positions[1].name.as_str() == "Crawl",
            },
            Case {
                what: "a position's ratio",
                act: |w| w.fill("Ratio of position 2 of stage 1, set 1", "2,72"),
                shows: |w| stage(w).positions[1].ratio.value() == 2.72,
            },
            Case {
                what: "a position's counted teeth, which may speed up",
                act: |w| w.fill("Ratio of position 1 of stage 1, set 1", "38:44"),
                shows: |w| w.text("Ratio of position 1 of stage 1, set 1") == "38:44",
            },
            Case {
                what: "a further position",
                act: |w| w.click("Add position to stage 1, set 1"),
                shows: |w| stage(w).positions.len() == 3,
            },
            Case {
                what: "one position fewer",
                act: |w| w.click("Remove position 2 of stage 1, set 1"),
                shows: |w| stage(w).positions.len() == 1,
            },
            Case {
                what: "the stage itself",
                act: |w| w.click("Remove stage 1, set 1"),
                shows: |w| w.set(0).set.stages.is_empty(),
            },
            Case {
                what: "the gears that it acts on",
                act: |w| w.choose("Gears of stage 1, set 1", Role::CheckBox, "gear 1"),
                shows: |w| matches!(&stage(w).acts_on, ActsOn::Only(gears) if gears.len() == 4),
            },
        ],
    );
}

#[test]
fn several_gears_are_taken_from_a_stage_without_opening_its_menu_again() {
    let mut window = Opening::on(with_a_transfer_box()).open();
    window.click("Gears of stage 1, set 1");
    for gear in ["gear 1", "gear 3"] {
        window.click_on(Role::CheckBox, gear);
    }
    assert!(matches!(&stage(&window).acts_on, ActsOn::Only(gears) if gears.len() == 3));
    window.click_on(Role::RadioButton, "every gear");
    assert_eq!(stage(&window).acts_on, ActsOn::EveryGear);
}

#[test]
fn the_present_position_changes_the_figures() {
    let mut window = Opening::on(with_a_transfer_box()).open();
    let first = |window: &Window| {
        let results = &window.app().desk().results().sets[0];
        results.gears[0].gear.overall_ratio
    };
    let high = first(&window);
    window.click_on(Role::RadioButton, "Put in position 2 of stage 1, set 1");
    assert!((first(&window) / high - 2.5).abs() < 1e-9);
}

#[test]
fn a_stage_has_one_to_four_positions_and_a_set_a_few_stages() {
    let mut window = Opening::on(with_a_transfer_box()).open();
    for _ in 0..2 {
        window.click("Add position to stage 1, set 1");
    }
    assert!(
        window
            .find(Role::Button, "Add position to stage 1, set 1")
            .is_none()
    );
    for _ in 0..3 {
        window.click("Remove position 1 of stage 1, set 1");
    }
    assert_eq!(stage(&window).positions.len(), 1);
    let remove = "Remove position 1 of stage 1, set 1";
    assert!(window.find(Role::Button, remove).is_none());
    while window.find(Role::Button, "Add stage, set 1").is_some() {
        window.choose("Add stage, set 1", Role::Button, "Primary drive");
    }
    assert_eq!(window.set(0).set.stages.len(), GearSet::MOST_STAGES);
}

#[test]
fn an_own_tyre_begins_as_the_vehicles_and_goes_again() {
    check(
        camper_van,
        &[Case {
            what: "on",
            act: |w| w.click_on(Role::CheckBox, "own tyre, set 1"),
            shows: |w| w.set(0).set.tyre == Some(w.project().tyre),
        }],
    );
    let mut window = Window::on_camper_van();
    window.click_on(Role::CheckBox, "own tyre, set 1");
    window.fill("Tyre of set 1", "225/75 R 16");
    let before = window.project().clone();
    assert_ne!(window.set(0).set.tyre, Some(before.tyre));
    window.click_on(Role::CheckBox, "own tyre, set 1");
    assert_eq!(window.set(0).set.tyre, None);
    window.check_step(&before);
}

#[test]
fn a_bad_tyre_of_a_set_says_why() {
    let mut window = Window::on_camper_van();
    window.click_on(Role::CheckBox, "own tyre, set 2");
    let before = window.project().clone();
    window.type_in("Tyre of set 2", "185 R 14 C");
    window.pause();
    assert!(window.says("has no aspect ratio"));
    assert!(*window.project() == before);
}

#[test]
fn one_shift_point_for_all_becomes_one_for_each_change_and_back() {
    check(
        camper_van,
        &[Case {
            what: "one for each",
            act: |w| w.click_on(Role::CheckBox, "one for each change, set 1"),
            shows: |w| w.set(0).set.gears.iter().all(|gear| gear.shift.is_some()),
        }],
    );
    let mut window = Window::on_camper_van();
    window.click_on(Role::CheckBox, "one for each change, set 1");
    window.enter_field("Shift point of gear 1, set 1");
    for text in ["4200", "4100", "4000", "3900"] {
        window.type_text(text);
        window.key(Key::Enter);
    }
    let scene = window.app().diagram();
    let handles = scene.handles.iter().filter(|h| h.set == scene.sets[0].id);
    let shifts: Vec<f64> = handles.map(Handle::shift_rpm).collect();
    assert_eq!(shifts, [4200.0, 4100.0, 4000.0, 3900.0]);
    let top = window.find(Role::TextInput, "Shift point of gear 5, set 1");
    assert!(top.is_none(), "nothing is shifted into from top");

    let before = window.project().clone();
    window.click_on(Role::CheckBox, "one for each change, set 1");
    assert!(
        window
            .set(0)
            .set
            .gears
            .iter()
            .all(|gear| gear.shift.is_none())
    );
    window.check_step(&before);
}

#[test]
fn overall_ratios_can_be_typed_instead() {
    let mut window = Window::on_camper_van();
    window.choose("Set 1 menu", Role::RadioButton, "overall ratios");
    assert_eq!(window.undo_steps(), 0, "a way of typing is no edit");
    assert_eq!(window.text("Ratio of gear 5, set 1"), "3.601");
    let before = window.project().clone();
    window.fill("Ratio of gear 5, set 1", "3,65");
    assert_eq!(window.text("Ratio of gear 5, set 1"), "3.65");
    assert!((window.ratios(0)[4] - 3.65 * 15.0 / 73.0).abs() < 1e-9);
    window.check_step(&before);
    window.type_in("Ratio of gear 5, set 1", "34:9");
    window.pause();
    assert!(window.says("is not an overall ratio such as 15.2"));
}

#[test]
fn reverse_is_typed_in_the_same_form_as_the_gears() {
    let mut window = Window::on_camper_van();
    window.choose("Set 1 menu", Role::RadioButton, "overall ratios");
    assert_eq!(window.text("Ratio of reverse, set 1"), "16.79");
    let before = window.project().clone();
    window.fill("Ratio of reverse, set 1", "17");
    let reverse = window.set(0).set.reverse.as_ref().unwrap();
    assert!((reverse.ratio.value() - 17.0 * 15.0 / 73.0).abs() < 1e-9);
    window.check_step(&before);
}

#[test]
fn the_speed_per_1000_rpm_can_be_typed_instead() {
    let mut window = Window::on_camper_van();
    window.choose("Set 1 menu", Role::RadioButton, "km/h per 1000 rpm");
    let before = window.project().clone();
    window.fill("Ratio of gear 5, set 1", "40");
    let results = &window.app().desk().results().sets[0];
    assert!((results.gears[4].speed_per_1000_rpm_kmh - 40.0).abs() < 1e-9);
    window.check_step(&before);

    window.ctrl(Key::U);
    window.choose("Set 1 menu", Role::RadioButton, "mph per 1000 rpm");
    window.fill("Ratio of gear 5, set 1", "30");
    let results = &window.app().desk().results().sets[0];
    assert!((results.gears[4].speed_per_1000_rpm_kmh - 30.0 * 1.609_344).abs() < 1e-9);
    for text in ["0", "", "fast", "0.00001"] {
        let before = window.project().clone();
        window.type_in("Ratio of gear 5, set 1", text);
        assert!(*window.project() == before, "{text}");
        window.key(Key::Escape);
    }
}

#[test]
fn changing_the_form_of_typing_forgets_what_does_not_read() {
    let mut window = Window::on_camper_van();
    window.type_in("Ratio of gear 5, set 1", "five");
    window.choose("Set 1 menu", Role::RadioButton, "overall ratios");
    assert_eq!(window.text("Ratio of gear 5, set 1"), "3.601");
    window.choose("Set 1 menu", Role::RadioButton, "gear ratios");
    assert_eq!(window.text("Ratio of gear 5, set 1"), "0.74");
}

#[test]
fn findings_stand_on_their_card() {
    let mut window = Window::on_camper_van();
    window.fill("Ratio of gear 3, set 1", "0.5");
    let findings = &window.app().desk().results().sets[0].findings;
    assert!(!findings.is_empty());
    for finding in findings {
        assert!(window.says(&finding.to_string()));
    }
}

#[test]
fn every_example_can_be_copied_changed_and_taken_back_card_by_card() {
    for example in &EXAMPLES {
        let project = example.project().unwrap();
        let mut window = Opening::on(project).open();
        let before = window.project().clone();
        let sets = window.project().sets.len();
        for number in 1..=sets {
            window.click(&format!("Add gear, set {number}"));
            window.click_on(Role::CheckBox, &format!("own tyre, set {number}"));
            window.click_on(Role::CheckBox, &format!("visible, set {number}"));
        }
        assert!(window.undo_steps() >= 2 * sets);
        while window.undo_steps() > 0 {
            window.ctrl(Key::Z);
        }
        assert!(*window.project() == before, "{}", example.name);
    }
}

#[test]
fn a_gear_is_inserted_where_it_is_wanted_and_the_others_are_counted_anew() {
    let mut window = Window::on_camper_van();
    let before = window.project().clone();
    window.choose("Gear 3 menu, set 2", Role::Button, "Insert gear here");
    assert_eq!(labels(&window, 1), ["1", "2", "3", "4", "5", "6"]);
    let ratios = window.ratios(1);
    assert!(ratios[2] < ratios[1] && ratios[2] > ratios[3], "{ratios:?}");
    assert_eq!(window.focused(), "Ratio of gear 3, set 2");
    window.check_step(&before);
    window.click("Undo");
    window.fill("Label of gear 5, set 2", "OD");
    window.choose("Gear 1 menu, set 2", Role::Button, "Insert gear here");
    assert_eq!(
        labels(&window, 1)[1..],
        ["1", "2", "3", "4", "OD"],
        "names stay"
    );
    assert!(window.ratios(1)[0] > window.ratios(1)[1]);
}

#[test]
fn the_form_of_typing_begins_anew_with_every_project() {
    let mut window = Window::on_camper_van();
    window.choose("Set 2 menu", Role::RadioButton, "overall ratios");
    assert!(window.says("overall ratio"));
    window.ctrl(Key::N);
    assert_eq!(window.text("Ratio of gear 1, set 1"), "3.5");
    assert!(!window.says("overall ratio"));
}
