//! Are the diagrams of the picture chosen in the window, and do they come out?

use crate::support::window::{Opening, Window, camper_van, without_engine};
use egui::Key;
use egui::accesskit::Role;
use egui_kittest::kittest::NodeT;
use layshaft::analysis::Analysis;
use layshaft::checks::{RatedTorque, SignalSource};
use layshaft::gearing::{Ratio, RoadSpeed, parse_tyre};
use layshaft::import::tables;
use layshaft::motion::Mass;
use layshaft::project::{Edit, Project, SetChecks, View, Views, format, text_in_picture};
use layshaft::sheet::csv::DecimalMark;
use layshaft::sheet::page::{Page, Picture};
use layshaft::sheet::{TextFormat, written};

fn opened(project: Project) -> Window {
    let mut window = Opening::on(project).in_file("van.ron").open();
    window.ctrl(Key::E);
    window
}

fn views(window: &Window) -> &[View] {
    window.project().write_up.views.as_slice()
}

fn tick(window: &mut Window, view: View) {
    window.get(Role::CheckBox, view.name()).click();
    window.settle();
}

fn is_in(view: View, page: &Page, words: &str) -> bool {
    let texts = page.texts().unwrap();
    texts.iter().any(|(_, text)| text.contains(words)) || panic!("{view:?} lacks {words}")
}

#[test]
fn each_diagram_is_a_choice_that_can_be_taken_back() {
    let mut window = opened(camper_van());
    tick(&mut window, View::Cruise);
    tick(&mut window, View::Effort);
    assert_eq!(views(&window), [View::Speed, View::Effort, View::Cruise]);
    tick(&mut window, View::Speed);
    assert_eq!(views(&window), [View::Effort, View::Cruise]);
    assert_eq!(window.undo_steps(), 3);
    for _ in 0..3 {
        window.ctrl(Key::Z);
    }
    assert_eq!(views(&window), [View::Speed]);
}

#[test]
fn the_last_diagram_stays() {
    let mut window = opened(camper_van());
    tick(&mut window, View::Speed);
    assert_eq!(views(&window), [View::Speed]);
    assert_eq!(window.undo_steps(), 0);
}

#[test]
fn without_an_engine_the_others_are_not_offered_and_it_is_said_why() {
    let mut window = opened(without_engine());
    let effort = window.get(Role::CheckBox, "Effort");
    assert!(effort.accesskit_node().is_disabled());
    assert!(window.says("the torque curve of the engine is not known"));
    tick(&mut window, View::Speed);
    assert_eq!(views(&window), [View::Speed]);
}

#[test]
fn every_chosen_diagram_comes_out_with_its_words_or_says_what_is_missing() {
    let of = |mut project: Project, view: View| {
        project.write_up.views = Views::new([view]).unwrap();
        Page::of(&project).unwrap()
    };
    for (view, words) in [
        (View::Effort, "Top speed 146 km/h in 5"),
        (View::Run, "to 100 km/h 20.01 s"),
        (View::Cruise, "at 110 km/h in 5th 10.9 L/100 km"),
    ] {
        assert!(is_in(view, &of(camper_van(), view), words));
        let nothing = "Nothing to show: the torque curve of the engine is not known.";
        assert!(is_in(view, &of(without_engine(), view), nothing));
    }
}

/// What the write-up copies of a project in a format.
fn copied(project: &Project, format: TextFormat) -> String {
    let analysis = Analysis::from(project);
    written(&analysis, &project.write_up.views, format).unwrap()
}

/// The camper van, shown in these views.
fn shown_in(views: &[View]) -> Project {
    let mut project = camper_van();
    project.write_up.views = Views::new(views.iter().copied()).unwrap();
    project
}

#[test]
fn what_is_copied_has_the_table_of_each_view_once() {
    let of_run = [View::Run, View::Revs];
    let all = [
        &[View::Speed],
        &of_run[..],
        &[View::Cruise, View::Speedometer],
    ]
    .concat();
    let all = shown_in(&all);
    for format in [TextFormat::Text, TextFormat::Markdown, TextFormat::BbCode] {
        let text = copied(&all, format);
        for words in ["overall", "From rest", "L/100 km", "Shown speed"] {
            assert!(text.contains(words), "{words} in {text}");
        }
        assert_eq!(text.matches("Camper van: which gears").count(), 1, "{text}");
    }
}

#[test]
fn programs_get_an_object_or_an_array_of_one_for_each_table() {
    let text = copied(&shown_in(&[View::Speed]), TextFormat::Json);
    assert!(
        serde_json::from_str::<serde_json::Value>(&text)
            .unwrap()
            .is_object()
    );
    let text = copied(&shown_in(&[View::Effort, View::Cruise]), TextFormat::Json);
    let value: serde_json::Value = serde_json::from_str(&text).unwrap();
    assert_eq!(value.as_array().unwrap().len(), 2);
}

#[test]
fn where_a_view_knows_too_little_there_is_the_table_of_ratios() {
    let mut project = without_engine();
    project.write_up.views = Views::new([View::Run]).unwrap();
    let ratios = shown_in(&[View::Speed]);
    let ratios = Project {
        technical: project.technical.clone(),
        ..ratios
    };
    let of_run = copied(&project, TextFormat::Markdown);
    assert_eq!(of_run, copied(&ratios, TextFormat::Markdown));
}

#[test]
fn a_text_of_several_tables_gives_its_sets_back() {
    let all = shown_in(&[View::Speed, View::Run, View::Cruise, View::Speedometer]);
    let sets = |text: &str| tables::read(text).unwrap().unwrap().sets.len();
    for format in [
        TextFormat::Text,
        TextFormat::Markdown,
        TextFormat::BbCode,
        TextFormat::Csv(DecimalMark::Point),
        TextFormat::Csv(DecimalMark::Comma),
    ] {
        assert_eq!(sets(&copied(&all, format)), 3, "{format:?}");
    }
}

/// The camper van with something of every road check, on a tyre with its service description.
fn checked() -> Project {
    let mut project = camper_van();
    project.tyre = parse_tyre("215/65R16C 109/107R").unwrap();
    let technical = &mut project.technical;
    technical.speedometer.signal.source = Some(SignalSource::Differential);
    technical.limits.top_speed = RoadSpeed::from_kmh(180.0).ok();
    technical.limits.front_axle = Mass::from_kg(1450.0).ok();
    technical.second_axle.final_drive = Ratio::from_number(4.1).ok();
    let second = project.sets.iter().nth(1).unwrap();
    let mut checks = second.technical.checks.clone();
    checks.rated_torque = RatedTorque::from_nm(250.0).ok();
    let edit = Edit::SetChecks(second.id, Box::new(checks));
    edit.applied_to(&project).unwrap()
}

/// The project, shown in these views.
fn shown(project: &Project, views: &[View]) -> Project {
    let mut project = project.clone();
    project.write_up.views = Views::new(views.iter().copied()).unwrap();
    project
}

#[test]
fn the_road_checks_come_out_where_their_view_is_ticked_and_nowhere_else() {
    let words = [
        "speed symbol R stands for 170 km/h",
        "the gearbox gets at its input 305 N·m of 250 N·m",
        "Keeps UN R39 in its original series",
        "the front tyres want to roll",
        "What the law of the place says decides",
    ];
    let with = shown(&checked(), &[View::Speed, View::Speedometer]);
    let without = shown(&checked(), &[View::Speed]);
    for format in [TextFormat::Text, TextFormat::Markdown, TextFormat::BbCode] {
        let told = |project: &Project| copied(project, format).to_lowercase();
        let (with, without) = (told(&with), told(&without));
        for words in words {
            let words = words.to_lowercase();
            assert!(with.contains(&words), "{words} in {with}");
        }
        assert!(!without.contains("un r39") && !without.contains("what the law"));
    }
    let page = Page::of(&with).unwrap();
    is_in(View::Speedometer, &page, "reckoned from turns and teeth");
    is_in(View::Speedometer, &page, "most by UN R39");
    let mut window = opened(without_engine());
    tick(&mut window, View::Speedometer);
    assert_eq!(views(&window), [View::Speed, View::Speedometer]);
}

#[test]
fn a_picture_carries_what_is_checked_only_where_it_shows_it() {
    let of = |views: &[View]| {
        let page = Page::of(&shown(&checked(), views)).unwrap();
        let file = page.png(&Picture::new(1, 1)).unwrap();
        format::read(&text_in_picture(&file).unwrap()).unwrap()
    };
    let own = |project: &Project, place: usize| {
        let set = project.sets.iter().nth(place).unwrap();
        set.technical.checks.clone()
    };
    let (shown, hidden) = (of(&[View::Speedometer]), of(&[View::Speed, View::Effort]));
    let all = checked();
    for (carried, whole) in [(&shown, &all), (&hidden, &without_engine())] {
        let (carried, whole) = (&carried.technical, &whole.technical);
        assert_eq!(carried.speedometer, whole.speedometer);
        assert_eq!(carried.limits, whole.limits);
        assert_eq!(carried.second_axle, whole.second_axle);
    }
    assert_eq!(own(&shown, 1), own(&all, 1));
    assert_eq!(own(&hidden, 1), SetChecks::default());
    assert_ne!(own(&all, 1), SetChecks::default());
}
