//! Is the speed diagram readable whatever is drawn: nothing written over, nothing cut, nothing moving?

mod labels;
mod motion;
mod speedometer;

use crate::support::gear_sets::{gear, name, ratio, rpm, spec};
use crate::support::projects::any_project;
use crate::support::window::{camper_van, in_both_ranges, three_ten_speeds};
use egui::epaint::{ClippedShape, Primitive, Shape};
use egui::{Color32, Context, Pos2, RawInput, Rect, Vec2, vec2};
use layshaft::analysis::{Analysis, ProjectResults};
use layshaft::chart::{Label, Place, Range, Role, Scene};
use layshaft::draw::diagram::{Drawn, Look, StepBack, diagram_ui};
use layshaft::draw::label_placing::overlap;
use layshaft::draw::palette::{Palette, Theme};
use layshaft::draw::theme;
use layshaft::gearing::{GearSet, Ratio};
use layshaft::project::View;
use layshaft::project::{Candidates, Drops, Edit, Project, SetEdit};
use proptest::prelude::*;
use proptest::sample::select;

/// One gear, so no shift and no handle.
fn one_gear() -> Project {
    let one = GearSet::try_from(spec(vec![ratio(1.0)], ratio(4.0))).unwrap();
    with_sets(vec![one])
}

/// Three sets of twelve gears each, the last two close to the first.
fn twelve_gears() -> Project {
    let sets = [3.7, 3.65, 4.1].map(|final_drive| {
        let gears = (0..12).map(|i| ratio(11.0 / 1.28_f64.powi(i))).collect();
        GearSet::try_from(spec(gears, ratio(final_drive))).unwrap()
    });
    with_sets(sets.into())
}

fn with_sets(sets: Vec<GearSet>) -> Project {
    let sets = sets.into_iter().map(|set| (set, true)).collect();
    Project {
        sets: Candidates::new(sets, 0).unwrap(),
        ..camper_van()
    }
}

/// A project and what its diagram is to look like.
#[derive(Debug, Clone)]
struct Picture {
    scene: Scene,
    size: Vec2,
    text_size: f32,
    theme: Theme,
    range: Range,
    drops: Drops,
    is_alone: bool,
}

impl Picture {
    fn of(project: &Project) -> Self {
        Self::of_view(View::Speed, project)
    }

    fn of_view(view: View, project: &Project) -> Self {
        let scene = view.scene(&Analysis::from(project));
        Self {
            range: scene.whole(),
            scene,
            size: vec2(900.0, 500.0),
            text_size: 12.5,
            theme: Theme::Light,
            drops: Drops::Hidden,
            is_alone: true,
        }
    }

    fn outline(&self) -> Rect {
        Rect::from_min_size(Pos2::ZERO, self.size)
    }

    /// What each of the first frames drew.
    fn frames(&self, count: usize) -> Vec<Drawn> {
        let ctx = Context::default();
        theme::apply(&ctx);
        ctx.set_theme(match self.theme {
            Theme::Light => egui::Theme::Light,
            Theme::Dark => egui::Theme::Dark,
        });
        let frames = (0..count).map(|_| self.frame(&ctx));
        frames.collect()
    }

    fn frame(&self, ctx: &Context) -> Drawn {
        self.painted(ctx).0
    }

    /// The shade of a place, where there is one over the ground of the window.
    fn shade_at(&self, place: impl Fn(&Drawn) -> Pos2) -> Option<Color32> {
        let ctx = Context::default();
        theme::apply(&ctx);
        let (drawn, shapes) = self.painted(&ctx);
        let place = place(&drawn);
        let filled = shapes
            .into_iter()
            .filter_map(|clipped| match clipped.shape {
                Shape::Rect(rect) if rect.rect.intersect(clipped.clip_rect).contains(place) => {
                    Some(rect.fill)
                }
                _ => None,
            });
        filled.filter(|fill| fill.a() > 0).last()
    }

    fn painted(&self, ctx: &Context) -> (Drawn, Vec<ClippedShape>) {
        let palette = Palette::of(self.theme);
        let drops = self.drops.of_shown(&self.scene.set_ids(), None, None);
        let look = Look {
            palette: &palette,
            forward: self.scene.sets.first().map(|set| set.id),
            others: StepBack::Little,
            gear: None,
            text_size: self.text_size,
            drops: &drops,
            is_alone: self.is_alone,
            interactive: true,
        };
        let input = RawInput {
            screen_rect: Some(self.outline()),
            ..RawInput::default()
        };
        let mut drawn = None;
        let mut output = ctx.run_ui(input, |ui| {
            drawn = Some(diagram_ui(ui, &self.scene, self.range, &look));
        });
        output.textures_delta.set.clear();
        output.textures_delta.free.clear();
        let shapes = output.shapes.clone();
        for primitive in ctx.tessellate(output.shapes, 1.0) {
            if let Primitive::Mesh(mesh) = primitive.primitive {
                let is_finite = |pos: Pos2| pos.x.is_finite() && pos.y.is_finite();
                assert!(mesh.vertices.iter().all(|vertex| is_finite(vertex.pos)));
            }
        }
        (drawn.unwrap(), shapes)
    }

    /// Draws it and looks at every label.
    fn check(&self) -> Result<(), TestCaseError> {
        let drawn = self.frames(1).swap_remove(0);
        for (i, (rect, text)) in drawn.labels.iter().enumerate() {
            prop_assert!(
                self.outline().contains_rect(*rect),
                "\"{text}\" at {rect} is cut"
            );
            for (other, words) in &drawn.labels[i + 1..] {
                prop_assert!(
                    !overlap(rect, other),
                    "\"{text}\" at {rect} lies over \"{words}\" at {other}"
                );
            }
        }
        labels::check(&self.scene, &drawn)
    }
}

fn usual_projects() -> Vec<Project> {
    vec![camper_van(), three_ten_speeds(), one_gear(), twelve_gears()]
}

/// Part of the whole, as far as one can zoom in.
fn part(whole: [f64; 2], width: f64, place: f64) -> [f64; 2] {
    let all = whole[1] - whole[0];
    let width = all * width;
    let from = whole[0] + (all - width) * place;
    [from, from + width]
}

fn scene() -> impl Strategy<Value = Picture> {
    let share = || (0.0..=1.0, 0.0..=1.0);
    let zoom = || (-4.6..=0.0_f64).prop_map(f64::exp);
    (
        select(usual_projects()),
        (600_u16..=2560, 300_u16..=1440),
        10.0..=20.0_f32,
        select(vec![Theme::Light, Theme::Dark]),
        (zoom(), zoom(), share()),
        select(vec![Drops::Usual, Drops::All, Drops::Hidden]),
    )
        .prop_map(|(project, size, text_size, theme, view, drops)| {
            let scene = Picture::of(&project);
            let (wide, high, (x, y)) = view;
            Picture {
                size: vec2(size.0.into(), size.1.into()),
                text_size,
                theme,
                range: Range {
                    x: part(scene.range.x, wide, x),
                    y: part(scene.range.y, high, y),
                },
                drops,
                ..scene
            }
        })
}

#[test]
fn no_label_lies_over_another_or_is_cut_in_the_usual_sizes() {
    let sizes = [
        [600.0, 300.0],
        [640.0, 560.0],
        [920.0, 720.0],
        [1600.0, 500.0],
        [2560.0, 1440.0],
    ];
    for project in usual_projects() {
        for (size, text_size) in sizes.into_iter().zip([10.0, 11.0, 12.5, 16.0, 20.0]) {
            for theme in [Theme::Light, Theme::Dark] {
                let looks = View::ALL.into_iter();
                let looks = looks.flat_map(|v| [(v, Drops::Hidden), (v, Drops::All)]);
                for (view, drops) in looks {
                    let scene = Picture {
                        size: size.into(),
                        text_size,
                        theme,
                        drops,
                        ..Picture::of_view(view, &project)
                    };
                    scene.check().unwrap();
                }
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_label_lies_over_another_or_is_cut_in_any_view(scene in scene()) {
        scene.check()?;
    }

    #[test]
    fn the_first_frame_is_laid_out_like_the_third(scene in scene()) {
        let frames = scene.frames(3);
        prop_assert_eq!(frames[0].transform.frame(), frames[2].transform.frame());
        prop_assert_eq!(frames[0].transform.bounds(), frames[2].transform.bounds());
        prop_assert_eq!(frames[0].band, frames[2].band);
        prop_assert_eq!(&frames[0].labels, &frames[2].labels);
    }

    #[test]
    fn the_view_is_shown_as_wanted(scene in scene()) {
        let drawn = scene.frames(1).swap_remove(0);
        prop_assert_eq!(drawn.range, scene.range);
    }

    #[test]
    fn whatever_can_be_typed_is_drawn_in_finite_numbers(project in any_project()) {
        for view in View::ALL {
            let scene = Picture {
                drops: Drops::All,
                ..Picture::of_view(view, &project)
            };
            for number in scene.range.x.iter().chain(&scene.range.y) {
                prop_assert!(number.is_finite());
            }
            scene.check()?;
        }
    }
}

#[test]
fn important_labels_are_there() {
    let scene = Picture::of(&camper_van());
    let drawn = scene.frames(1).swap_remove(0);
    let texts: Vec<&str> = drawn.labels.iter().map(|(_, text)| text.as_str()).collect();
    for text in [
        "50 km/h",
        "90 km/h",
        "110 km/h",
        "2000 rpm",
        "4500",
        "rpm",
        "km/h",
        "shift at 3600",
        "useful from 1500",
    ] {
        assert!(texts.contains(&text), "{text} is missing in {texts:?}");
    }
    for gear in ["1", "2", "3", "4", "5"] {
        let count = texts.iter().filter(|text| **text == gear).count();
        assert_eq!(count, 3, "gear {gear} of three sets in {texts:?}");
    }
}

#[test]
fn what_the_fields_of_the_window_say_is_not_said_again_beside_them() {
    for is_alone in [true, false] {
        let scene = Picture {
            is_alone,
            ..Picture::of(&camper_van())
        };
        let labels = scene.frames(1).swap_remove(0).labels;
        for words in ["shift at 3600", "useful from 1500"] {
            let found = labels.iter().any(|(_, text)| text == words);
            assert_eq!(found, is_alone, "{words} in {labels:?}");
        }
    }
}

#[test]
fn a_gear_number_stands_above_the_end_of_its_line() {
    for project in [camper_van(), three_ten_speeds()] {
        let picture = Picture::of(&project);
        let drawn = picture.frames(1).swap_remove(0);
        let in_band = |label: &&Label| matches!(label.place, Place::InBand(_));
        let numbers = || picture.scene.labels.iter().filter(in_band);
        assert_eq!(numbers().count(), picture.scene.lines_of(Role::Fan).count());
        for (number, line) in numbers().zip(picture.scene.lines_of(Role::Fan)) {
            assert_eq!(number.of, Some(line.of));
            let end = drawn.place_of(line.points[1]);
            let mut labels = drawn.labels.iter().filter(|(rect, text)| {
                *text == number.text && drawn.band.expand(1.0).contains_rect(*rect)
            });
            let is_above = |(rect, _): &(Rect, String)| (rect.center().x - end.x).abs() < 1.0;
            assert!(labels.any(is_above), "{} of {:?}", number.text, line.of);
        }
    }
}

#[test]
fn another_range_is_a_fan_of_faint_lines_where_it_is_of_use() {
    let project = in_both_ranges();
    let scene = Picture::of(&project).scene;
    let others: Vec<_> = scene.lines_of(Role::Other).collect();
    let fans: Vec<_> = scene.lines_of(Role::Fan).collect();
    assert_eq!((others.len(), fans.len()), (5 + 6, 5 + 5 + 6));
    let engine = &project.engine;
    for line in others {
        let [from, to] = [line.points[0], line.points[1]];
        assert!((from[1] - engine.floor_rpm()).abs() < 1e-9);
        assert!((to[1] - engine.redline.rpm()).abs() < 1e-9);
        let mut same_gear = fans
            .iter()
            .filter(|fan| (fan.of.set, fan.of.gear) == (line.of.set, line.of.gear));
        let fan = same_gear.next().unwrap();
        assert!((to[0] * 2.0 - fan.points[1][0]).abs() < 1e-9);
        assert_eq!((fan.of.other, line.of.other), (None, Some(0)));
    }
    assert!(
        scene
            .summary
            .contains("with 5 gears, and 5 in other positions"),
        "{}",
        scene.summary
    );
}

#[test]
fn another_range_is_read_at_the_pointer_and_told_compared_with_the_same_range() {
    let scene = Picture::of(&in_both_ranges()).scene;
    let reading = scene.reading_at(40.0).unwrap();
    let figures = |set: usize| reading.sets[set].1.clone();
    let of = |set: usize, gear: &str| figures(set).into_iter().find(|figure| figure.name == gear);
    let low = of(0, "4 Low").unwrap();
    assert_eq!((low.text.as_str(), low.difference), ("2880", None));
    assert!(of(0, "2").is_some() && of(1, "4 Low").is_none());
    assert!(of(2, "5 Low").unwrap().difference.is_some());
    let told = scene.read_out().join("\n");
    assert!(told.contains("4 Low 2880"), "{told}");
}

#[test]
fn another_range_takes_no_room_from_the_gears_as_they_stand() {
    let drawn = Picture::of(&in_both_ranges()).frames(1).swap_remove(0);
    let names: Vec<&str> = drawn.labels.iter().map(|(_, text)| text.as_str()).collect();
    for gear in ["1", "2", "3", "4", "5"] {
        assert_eq!(names.iter().filter(|name| **name == gear).count(), 3);
    }
    let others = names.iter().filter(|name| name.ends_with(" Low"));
    assert!(others.count() >= 4, "{names:?}");
}

#[test]
fn the_height_of_the_gear_numbers_band_follows_from_the_number_of_visible_sets() {
    let all = [camper_van(), three_ten_speeds(), twelve_gears()];
    let mut heights = Vec::new();
    for project in all {
        let ids: Vec<_> = project.sets.iter().map(|candidate| candidate.id).collect();
        let hidden = |project: &Project, id| Edit::Visible(id, false).applied_to(project).unwrap();
        let two = hidden(&project, ids[0]);
        let one = hidden(&two, ids[2]);
        let none = hidden(&one, ids[1]);
        heights.push([&project, &two, &one, &none].map(band_heights));
    }
    for of_project in &heights {
        assert_eq!(of_project, &heights[0]);
        let [three, two, one, none] = of_project.clone().map(|heights| heights[0]);
        assert!(three > two && two > one, "{of_project:?}");
        assert!((one - none).abs() < 0.1, "{of_project:?}");
    }
}

#[test]
fn the_band_is_beyond_the_redline_only_where_the_view_reaches_up_to_it() {
    let whole = Picture::of(&camper_van());
    let band = Palette::of(Theme::Light).band;
    let seen = |y: [f64; 2]| Picture {
        range: Range { y, ..whole.range },
        ..whole.clone()
    };
    let in_band = |drawn: &Drawn| drawn.band.center();
    let in_plot = |drawn: &Drawn| drawn.transform.frame().center();
    // The redline is at 4500.
    for (y, is_beyond) in [
        (whole.range.y, true),
        ([1000.0, 4500.0], true),
        ([3000.0, 6000.0], true),
        ([4600.0, 6000.0], true),
        ([1000.0, 4490.0], false),
        ([0.0, 1000.0], false),
    ] {
        let shade = seen(y).shade_at(in_band);
        assert_eq!(shade == Some(band), is_beyond, "{y:?}: {shade:?}");
    }
    assert_eq!(seen([4600.0, 6000.0]).shade_at(in_plot), Some(band));
    assert_ne!(seen([1000.0, 4490.0]).shade_at(in_plot), Some(band));
}

#[test]
fn steps_stand_gear_by_gear_and_are_written_where_they_are() {
    let project = camper_van();
    let results = ProjectResults::of(&project);
    let picture = Picture::of_view(View::Steps, &project);
    let lines: Vec<_> = picture.scene.lines_of(Role::ByGear).collect();
    assert_eq!(lines.len(), 3);
    for (line, set) in lines.iter().zip(&results.sets) {
        let steps: Vec<f64> = line.points.iter().map(|[_, step]| *step).collect();
        let wanted: Vec<f64> = set.chain().filter_map(|gear| gear.step).collect();
        assert_eq!(steps, wanted);
        let places: Vec<f64> = line.points.iter().map(|[x, _]| *x).collect();
        assert_eq!(places, [1.0, 2.0, 3.0, 4.0, 5.0][..places.len()]);
    }
    let drawn = picture.frames(1).swap_remove(0);
    let texts: Vec<&str> = drawn.labels.iter().map(|(_, text)| text.as_str()).collect();
    // The first two sets share their steps, which are written once.
    for text in ["1.87", "1.54", "1.39", "1.26", "1.85", "1.20"] {
        let count = texts.iter().filter(|t| **t == text).count();
        assert_eq!(count, 1, "{text} in {texts:?}");
    }
    let spoken = &picture.scene.summary;
    assert!(
        spoken.contains("Fitted five-speed 1.87, 1.54, 1.39, 1.26"),
        "{spoken}"
    );
}

#[test]
fn without_a_set_or_a_step_the_steps_say_so() {
    let mut project = camper_van();
    for id in project.sets.iter().map(|c| c.id).collect::<Vec<_>>() {
        project = Edit::Visible(id, false).applied_to(&project).unwrap();
    }
    for (project, spoken) in [(project, "no visible set"), (one_gear(), "without a step")] {
        let picture = Picture::of_view(View::Steps, &project);
        assert!(picture.scene.summary.contains(spoken));
        let drawn = picture.frames(1).swap_remove(0);
        assert!(drawn.labels.iter().any(|(_, text)| text == "gear"));
        assert_eq!(picture.scene.x.marks, [(1.0, "no change".to_owned())]);
        picture.check().unwrap();
    }
}

#[test]
fn what_is_read_off_between_gears_is_said_with_its_difference_from_the_baseline() {
    let scene = Picture::of_view(View::Steps, &camper_van()).scene;
    let reading = scene.reading_at(2.0).unwrap();
    assert_eq!(reading.heading, "gear 2");
    let figures: Vec<_> = reading
        .sets
        .iter()
        .map(|(_, figures)| &figures[0])
        .collect();
    let texts: Vec<&str> = figures.iter().map(|f| f.text.as_str()).collect();
    assert_eq!(texts, ["1.54", "1.54", "1.57"]);
    assert_eq!(figures[0].difference, None);
    assert_eq!(figures[1].difference.as_deref(), Some("0.00"));
    let beyond = scene.reading_at(5.0).unwrap();
    assert!(beyond.sets[0].1.is_empty() && beyond.sets[2].1.len() == 1);
}

/// The height of the band in several sizes and views: all the same.
fn band_heights(project: &Project) -> Vec<f32> {
    let whole = Picture::of(project);
    let zoomed = Picture {
        range: Range {
            x: part(whole.range.x, 0.2, 0.4),
            y: part(whole.range.y, 0.1, 0.7),
        },
        ..whole.clone()
    };
    let large = Picture {
        size: vec2(2000.0, 1200.0),
        ..whole.clone()
    };
    let heights = [whole, zoomed, large].map(|scene| scene.frames(1)[0].band.height());
    assert!(
        heights
            .iter()
            .all(|height| (height - heights[0]).abs() < 0.01)
    );
    heights.to_vec()
}

/// A project with the extremes of what can be typed.
fn extreme(redline_rpm: f64, ratios: [f64; 3], final_drive: f64) -> Project {
    let gears = (1..).zip(ratios);
    let mut spec = spec(Vec::new(), Ratio::from_number(final_drive).unwrap());
    spec.gears = gears.map(|(n, r)| gear(n, ratio(r))).collect();
    spec.name = name("extreme");
    spec.shift = rpm(30_000.0);
    let project = with_sets(vec![GearSet::try_from(spec).unwrap()]);
    Edit::Redline(rpm(redline_rpm))
        .applied_to(&project)
        .unwrap()
}

#[test]
fn extremes_are_drawn_in_finite_numbers() {
    for redline_rpm in [1.0, 30_000.0] {
        for ratios in [[400.0, 1.0, 0.001], [0.001, 0.001, 0.001], [400.0; 3]] {
            for final_drive in [0.001, 1.0, 400.0] {
                let project = extreme(redline_rpm, ratios, final_drive);
                let scene = Picture::of(&project);
                for text_size in [10.0, 20.0] {
                    let scene = Picture {
                        text_size,
                        drops: Drops::All,
                        ..scene.clone()
                    };
                    scene.check().unwrap();
                    let drawn = scene.frames(1).swap_remove(0);
                    let frame = *drawn.transform.frame();
                    assert!(frame.is_positive() && frame.is_finite());
                }
            }
        }
    }
}

#[test]
fn shift_points_beyond_the_redline_stay_in_the_picture() {
    let mut project = camper_van();
    let id = project.sets.baseline().id;
    let edit = Edit::Set(id, SetEdit::ShiftAll(rpm(9000.0)));
    project = edit.applied_to(&project).unwrap();
    let scene = Picture::of(&project);
    let drawn = scene.frames(1).swap_remove(0);
    scene.check().unwrap();
    for handle in scene.scene.handles.iter().filter(|h| h.set == id) {
        let at = drawn.place_of(handle.at);
        assert!(drawn.transform.frame().contains(at), "{at}");
    }
}
