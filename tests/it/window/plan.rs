//! The plan of what changes: begun, filled in for each candidate, totalled, struck, undone.

use crate::support::window::{Opening, Window, camper_van};
use egui::Key;
use egui::accesskit::Role;
use layshaft::project::{PageForm, SetId};
use layshaft::workshop::{BenchItem, Part, PartSource, Plan, PlanTotals, Price};

/// Wide enough for the columns of all three candidates.
const WIDE: [f32; 2] = [1800.0, 900.0];

/// A window on a plan that has just begun.
fn planned(size: [f32; 2]) -> Window {
    let [width, height] = size;
    let mut window = Opening::on(camper_van()).sized(width, height).open();
    window.ctrl(Key::Num6);
    if window.find(Role::Button, "Plan what changes").is_none() {
        window.click("Jobs");
    }
    window.click("Plan what changes");
    window.pause();
    window
}

fn plan(window: &Window) -> &Plan {
    window.project().workshop.plan.as_ref().unwrap()
}

fn mounts(window: &Window) -> &Part {
    let mut parts = plan(window).parts().iter();
    parts.find(|part| part.name.as_str() == "mounts").unwrap()
}

/// The identities and names of the candidates.
fn sets(window: &Window) -> Vec<(SetId, String)> {
    let sets = window.project().sets.iter();
    sets.map(|set| (set.id, set.set.name.to_string())).collect()
}

fn choose(window: &mut Window, name: &str, option: &str) {
    window.click(name);
    window.click_on(Role::RadioButton, option);
    window.pause();
}

#[test]
fn a_plan_begins_with_the_parts_of_the_trade_and_stands_above_the_jobs() {
    let window = planned(WIDE);
    assert_eq!(*plan(&window), Plan::begun());
    assert!(window.find(Role::Heading, "What changes").is_some());
    assert!(window.find(Role::Button, "What changes").is_some());
    assert!(window.find(Role::Button, "Plan what changes").is_none());
}

#[test]
fn a_plan_that_is_begun_by_its_command_is_typed_on_with() {
    let mut window = Opening::on(camper_van()).open();
    window.ctrl(Key::K);
    window.type_text("plan what changes");
    window.key(Key::Enter);
    window.pause();
    window.type_text("€");
    window.key(Key::Enter);
    window.pause();
    let currency = plan(&window).currency.as_ref().map(ToString::to_string);
    assert_eq!(currency.as_deref(), Some("€"));
}

#[test]
fn what_becomes_of_a_part_is_said_for_each_candidate_and_totalled() {
    let mut window = planned(WIDE);
    let sets = sets(&window);
    let (first, second) = (&sets[1], &sets[2]);
    window.fill("Currency", "€");
    window.fill(&format!("Price of mounts, {}", first.1), "90");
    window.fill(&format!("Price of mounts, {}", second.1), "120,50");
    window.fill(
        &format!("What is to be done with mounts, {}", second.1),
        "weld the bracket",
    );
    choose(
        &mut window,
        &format!("Source of mounts, {}", second.1),
        "from the donor",
    );
    window.click_on(Role::CheckBox, &format!("Altered: mounts, {}", second.1));
    window.click_on(Role::CheckBox, &format!("Done: mounts, {}", first.1));
    window.pause();
    let entry = mounts(&window).of(second.0.into());
    assert_eq!(entry.source, PartSource::Donor);
    assert!(entry.is_altered && !entry.is_done);
    assert_eq!(entry.to_do.as_ref().unwrap().as_str(), "weld the bracket");
    let totals = [first, second].map(|set| PlanTotals::of(plan(&window), set.0.into()));
    assert_eq!(totals[0].price.to_string(), "90");
    assert_eq!(totals[0].open_price.to_string(), "0");
    for told in ["€90 in all", "€0 still open", "€120.50 still open"] {
        assert!(window.says(told), "{told}");
    }
}

#[test]
fn a_price_that_does_not_read_stays_in_its_field_and_the_list_tells_of_it() {
    let mut window = planned(WIDE);
    let sets = sets(&window);
    let name = format!("Price of mounts, {}", sets[1].1);
    window.type_in(&name, "cheap");
    window.pause();
    window.click_on(Role::TextInput, "Currency");
    window.pause();
    assert_eq!(window.text(&name), "cheap");
    assert!(mounts(&window).of(sets[1].0.into()).price.is_none());
    let told = "\"cheap\" is not a price such as 120";
    assert!(window.says(told));
}

#[test]
fn a_part_is_struck_taken_in_again_removed_added_and_brought_back() {
    let mut window = planned(WIDE);
    let name = format!("Price of starter, {}", sets(&window)[1].1);
    window.click("Menu of starter");
    window.click("Strike out");
    window.pause();
    assert!(window.find(Role::TextInput, &name).is_none());
    window.click("Menu of starter");
    window.click("Take in again");
    window.pause();
    assert!(window.find(Role::TextInput, &name).is_some());
    window.click("Menu of starter");
    window.click("Remove this part");
    window.pause();
    assert_eq!(plan(&window).parts().len(), 10);
    window.ctrl(Key::Z);
    window.pause();
    assert_eq!(plan(&window).parts().len(), 11);
    window.click("Add a part");
    window.pause();
    window.type_over("seals");
    window.pause();
    assert_eq!(plan(&window).parts()[11].name.as_str(), "seals");
}

#[test]
fn tab_goes_down_a_column_of_the_plan() {
    let mut window = planned(WIDE);
    let name = sets(&window)[1].1.clone();
    window
        .get(Role::TextInput, &format!("Price of mounts, {name}"))
        .focus();
    window.settle();
    window.key(Key::Tab);
    window.type_over("35");
    window.pause();
    let id = sets(&window)[1].0;
    let starter = plan(&window)
        .parts()
        .iter()
        .find(|part| part.name.as_str() == "starter");
    let price = starter.unwrap().of(id.into()).price;
    assert_eq!(price.map(Price::amount), Some(35.0));
}

#[test]
fn where_there_is_no_room_for_all_one_candidate_is_filled_in_and_all_are_totalled() {
    for size in [[1100.0, 700.0], [700.0, 600.0]] {
        let mut window = planned(size);
        let sets = sets(&window);
        let price = |at: usize| format!("Price of mounts, {}", sets[at].1);
        window.click_on(Role::RadioButton, &sets[1].1);
        window.pause();
        assert!(
            window.find(Role::TextInput, &price(2)).is_none(),
            "{size:?}"
        );
        window.fill(&price(1), "90");
        window.click_on(Role::RadioButton, &sets[2].1);
        window.pause();
        window.fill(&price(2), "70");
        for told in ["90 in all", "70 in all"] {
            assert!(window.says(told), "{told}");
        }
        // Undoing shows the set that it is about.
        window.ctrl(Key::Z);
        window.ctrl(Key::Z);
        window.pause();
        assert!(
            window.find(Role::TextInput, &price(1)).is_some(),
            "{size:?}"
        );
        let entry = mounts(&window).of(sets[1].0.into());
        assert!(entry.price.is_none(), "{size:?}");
    }
}

#[test]
fn what_is_fitted_now_has_no_columns_and_two_candidates_stand_side_by_side() {
    let mut window = planned([1280.0, 800.0]);
    let names: Vec<String> = sets(&window).into_iter().map(|(_, name)| name).collect();
    let price = |name: &String| format!("Price of mounts, {name}");
    for (name, is_there) in names.iter().zip([false, true, true]) {
        let field = window.find(Role::TextInput, &price(name));
        assert_eq!(field.is_some(), is_there, "{name}");
    }
    assert!(
        window
            .says("Fitted five-speed is what the others are compared with: nothing changes for it")
    );
    window.fill(&price(&names[2]), "70");
    assert!(window.says("70 in all"));
}

#[test]
fn a_plan_that_is_removed_comes_back_by_undo_with_all_that_it_said() {
    let mut window = planned(WIDE);
    window.fill("Currency", "€");
    let before = plan(&window).clone();
    window.click("Remove this plan");
    window.pause();
    assert!(window.project().workshop.plan.is_none());
    window.ctrl(Key::Z);
    window.pause();
    assert_eq!(*plan(&window), before);
    assert!(window.find(Role::Heading, "What changes").is_some());
}

#[test]
fn the_plan_is_printed_as_a_list_to_tick() {
    let mut window = planned(WIDE);
    window.click("Print a sheet…");
    window.wait_for_picture();
    assert!(window.find(Role::RadioButton, "what changes").is_some());
    assert_eq!(window.app().desk().sheet, Some(BenchItem::Plan));
    assert_eq!(window.app().desk().page_form, PageForm::A4);
}
