//! Do the diagrams of effort, runs and steady speeds show what the laws say, and say what they lack?

use crate::support::close::assert_close;
use crate::support::window::{camper_van, without_engine};
use layshaft::analysis::{Analysis, Needed, NoMotion, RunQuestions};
use layshaft::chart::{Role, Scene};
use layshaft::gearing::EngineSpeed;
use layshaft::project::{Edit, EngineData, Project, SetEdit, TechnicalData, View};
use layshaft::units::KMH_PER_M_S;

const OF_MOTION: [View; 3] = [View::Effort, View::Run, View::Cruise];

fn scene(project: &Project, view: View) -> Scene {
    view.scene(&Analysis::from(project))
}

/// The words beside the dots of a scene's set, from left to right.
fn crossings(scene: &Scene, place: usize) -> Vec<&str> {
    let labels = scene.labels.iter();
    let of_set = labels.filter(|l| l.role == Role::Crossing && l.of.unwrap().place == place);
    of_set.map(|label| label.text.as_str()).collect()
}

#[test]
fn what_is_not_known_is_said_and_nothing_is_drawn() {
    for view in OF_MOTION {
        let scene = scene(&without_engine(), view);
        let torque = NoMotion::Unknown(Needed::TorqueCurve);
        assert_eq!(scene.lacks, Some(torque), "{view:?}");
        assert!(scene.lines.is_empty() && scene.sets.is_empty(), "{view:?}");
        let says = "Nothing to show: the torque curve of the engine is not known";
        assert_eq!(scene.summary, says);
    }
    for view in [View::Speed, View::Steps] {
        assert_eq!(scene(&without_engine(), view).lacks, None);
    }
}

#[test]
fn every_gear_pulls_along_a_line_of_its_own_and_the_top_speed_is_where_it_meets_the_load() {
    let project = camper_van();
    let analysis = Analysis::from(&project);
    let motion = analysis.motion().unwrap();
    let scene = View::Effort.scene(&analysis);
    for (place, set) in motion.sets.iter().enumerate() {
        let mut lines = scene.lines.iter();
        let of_gear =
            |id| move |l: &&layshaft::chart::Line| l.of.place == place && l.of.gear == Some(id);
        for gear in &set.powertrain.gears {
            let line = lines.find(of_gear(gear.gear.id)).unwrap();
            for [kmh, effort_n] in &line.points {
                let is = gear.effort_n(kmh / KMH_PER_M_S).unwrap();
                assert_close(*effort_n, is, 1e-9, "effort");
            }
        }
        let dots = scene.points.iter();
        let mut dots = dots.filter(|dot| dot.role == Role::Crossing && dot.of.place == place);
        let [kmh, effort_n] = dots.next().unwrap().at;
        let load_n = set.on_road.road_load_n(kmh / KMH_PER_M_S);
        assert_close(
            effort_n,
            load_n,
            1e-6,
            "the top speed of a van is limited by power",
        );
    }
    let curves = |role| scene.curves.iter().filter(move |curve| curve.role == role);
    assert_eq!(
        curves(Role::RoadLoad).count(),
        5,
        "level, 5, 10, 20 and 30 %"
    );
    assert_eq!(curves(Role::Grip).count(), 1);
}

#[test]
fn a_handle_on_the_line_of_effort_stands_for_its_shift_point_and_moves_it() {
    let project = camper_van();
    let scene = scene(&project, View::Effort);
    let changes: usize = project.sets.iter().map(|c| c.set.chain().count() - 1).sum();
    assert_eq!(scene.handles.len(), changes);
    for handle in &scene.handles {
        let set = &project.sets.get(handle.set).unwrap().set;
        let shift_rpm = set.shift_of(set.gear(handle.gear).unwrap()).rpm();
        assert_close(handle.shift_rpm(), shift_rpm, 1e-9, "where it stands");
        let [x, y] = handle.at;
        let farther = handle.rpm_at([1.1 * x, y]);
        assert_close(farther, 1.1 * shift_rpm, 1e-9, "under a hand farther right");
        let moved = EngineSpeed::from_rpm(farther).unwrap();
        let edit = Edit::Set(handle.set, SetEdit::Shift(handle.gear, moved));
        assert_eq!(handle.moved_to(farther), Some(edit));
    }
}

#[test]
fn the_times_beside_a_run_are_those_of_the_run_with_what_they_differ_from_the_baseline() {
    let project = camper_van();
    let analysis = Analysis::from(&project);
    let scene = View::Run.scene(&analysis);
    let questions = RunQuestions::usual(project.marked_road_speeds.as_slice());
    let runs = analysis.motion().unwrap().runs(&questions);
    for dot in scene.points.iter().filter(|dot| dot.role == Role::Crossing) {
        let [time_s, kmh] = dot.at;
        let moment = runs[dot.of.place].run.at_time(time_s).unwrap();
        assert_close(kmh, moment.speed_m_s * KMH_PER_M_S, 1e-6, "on its run");
    }
    assert_eq!(crossings(&scene, 0)[0], "6.0 s", "to 50 km/h");
    assert_eq!(crossings(&scene, 1)[0], "5.5 s −0.6");
    assert!(
        scene.summary.contains("100 km/h after 20.0 s"),
        "{}",
        scene.summary
    );
}

#[test]
fn fuel_is_read_off_in_top_gear_and_load_where_nobody_knows_the_displacement() {
    let project = camper_van();
    let fuel = scene(&project, View::Cruise);
    assert_eq!(fuel.y.quantity.sign(), "L/100 km");
    assert_eq!(crossings(&fuel, 0), ["(5.5 L)", "8.7 L", "10.9 L"]);
    assert_eq!(crossings(&fuel, 2)[..2], ["(5.1 L)", "8.3 L −4.1 %"]);
    let unknown = Project {
        technical: TechnicalData {
            engine: EngineData {
                displacement: None,
                ..project.technical.engine.clone()
            },
            known_fuel: None,
            ..project.technical.clone()
        },
        ..project
    };
    let load = scene(&unknown, View::Cruise);
    assert_eq!(load.y.quantity.sign(), "%");
    assert!(
        crossings(&load, 0)[1].ends_with(" %"),
        "{:?}",
        crossings(&load, 0)
    );
    assert!(load.summary.starts_with("Load at steady road speeds"));
}
