//! Can every line of every diagram be seen, also of sets that step back?
//!
//! A thin line covers no whole pixel, so that its contrast in pixels depends on where it lies. What
//! is measured is the colour that the drawing gives to it, over the paper and over each shade that
//! parts of a plot have. The grid is exempt: all that it says is written at the axes.

use super::{OF_LINES, OF_TEXT, assert_none, contrast};
use crate::support::window::{camper_van, in_both_ranges, three_ten_speeds};
use egui::epaint::{ClippedShape, Shape};
use egui::{Color32, Context, RawInput, Rect, Vec2, pos2, vec2};
use layshaft::analysis::Analysis;
use layshaft::chart::Scene;
use layshaft::draw::diagram::{Look, StepBack, diagram_ui};
use layshaft::draw::palette::{Palette, Theme};
use layshaft::draw::theme;
use layshaft::project::View;
use layshaft::project::{Livery, Project};

const THEMES: [Theme; 2] = [Theme::Light, Theme::Dark];
const DISTANCES: [StepBack; 3] = [StepBack::Not, StepBack::Little, StepBack::Far];

const SIZE: Vec2 = vec2(900.0, 500.0);

/// A line or a mesh of lines, as it was painted.
struct Painted {
    color: Color32,
    width: f32,
}

fn look(palette: &Palette, others: StepBack) -> Look<'_> {
    Look {
        palette,
        forward: None,
        others,
        gear: None,
        text_size: 12.5,
        drops: &[],
        is_alone: true,
        interactive: true,
    }
}

/// What a diagram is made of.
fn shapes(scene: &Scene, look: &Look<'_>) -> Vec<ClippedShape> {
    let ctx = Context::default();
    theme::apply(&ctx);
    let input = RawInput {
        screen_rect: Some(Rect::from_min_size(pos2(0.0, 0.0), SIZE)),
        ..RawInput::default()
    };
    let mut output = ctx.run_ui(input, |ui| {
        diagram_ui(ui, scene, scene.whole(), look);
    });
    let shapes = std::mem::take(&mut output.shapes);
    output.drop_without_applying_deltas();
    shapes
}

fn collect(shape: &Shape, lines: &mut Vec<Painted>) {
    match shape {
        Shape::Vec(shapes) => shapes.iter().for_each(|shape| collect(shape, lines)),
        Shape::LineSegment { stroke, .. } => lines.push(Painted {
            color: stroke.color,
            width: stroke.width,
        }),
        Shape::Path(path) => {
            if let egui::epaint::ColorMode::Solid(color) = path.stroke.color {
                lines.push(Painted {
                    color,
                    width: path.stroke.width,
                });
            }
        }
        Shape::Mesh(mesh) => {
            let vertices = mesh.vertices.iter();
            let inked = vertices.filter(|vertex| vertex.color != Color32::TRANSPARENT);
            lines.extend(inked.map(|vertex| Painted {
                color: vertex.color,
                width: 0.0,
            }));
        }
        _ => {}
    }
}

fn lines(scene: &Scene, look: &Look<'_>) -> Vec<Painted> {
    let mut lines = Vec::new();
    // The samples beside the band are wide in any case, and in no clip of the plot.
    let in_plot = |clipped: &ClippedShape| clipped.clip_rect.width() < SIZE.x;
    for clipped in shapes(scene, look).into_iter().filter(in_plot) {
        collect(&clipped.shape, &mut lines);
    }
    lines.retain(|line| line.color.a() > 0);
    lines
}

fn scenes() -> Vec<(View, Scene)> {
    let of = |project: &Project, view: View| view.scene(&Analysis::from(project));
    let projects = [camper_van(), three_ten_speeds(), in_both_ranges()];
    let views = View::ALL.into_iter();
    views
        .flat_map(|view| {
            projects
                .iter()
                .map(move |project| (view, of(project, view)))
        })
        .collect()
}

#[test]
fn every_line_of_every_diagram_can_be_seen_however_far_its_set_steps_back() {
    let mut problems = Vec::new();
    for (theme, others) in THEMES.into_iter().flat_map(|t| DISTANCES.map(|d| (t, d))) {
        let palette = Palette::of(theme);
        let grounds = [
            ("paper", palette.paper),
            ("what is too low", palette.paper.blend(palette.labouring)),
            (
                "what is beyond the redline",
                palette.paper.blend(palette.band),
            ),
        ];
        for (view, scene) in scenes() {
            let drops = scene.set_ids();
            let look = Look {
                forward: scene.sets.first().map(|set| set.id),
                drops: &drops,
                ..look(&palette, others)
            };
            let lines = lines(&scene, &look);
            assert!(lines.len() > 10, "{view:?}");
            for line in lines.iter().filter(|line| line.color != palette.grid) {
                for (name, ground) in grounds {
                    let contrast = contrast(ground.blend(line.color), ground);
                    if contrast < OF_LINES {
                        let color = line.color;
                        problems.push(format!(
                            "{theme:?}, {view:?}, {others:?}: {color:?} on {name}: {contrast:.2}"
                        ));
                    }
                }
            }
        }
    }
    problems.sort();
    problems.dedup();
    assert_none(&problems);
}

#[test]
fn the_set_that_comes_forward_has_the_widest_lines_and_a_fan_is_thinner_than_what_is_driven() {
    for theme in THEMES {
        let palette = Palette::of(theme);
        let project = camper_van();
        let scene = View::Speed.scene(&Analysis::from(&project));
        // The first set's lines are solid, and so are painted as lines of their width.
        let widths = |forward: usize, others| {
            let look = Look {
                forward: Some(scene.sets[forward].id),
                ..look(&palette, others)
            };
            let colors = [palette.set(Livery::First), palette.quiet_set(Livery::First)];
            let mut lines = lines(&scene, &look);
            lines.retain(|line| colors.contains(&line.color) && line.width > 0.0);
            let widths = lines.iter().map(|line| line.width);
            (
                widths.clone().fold(f32::INFINITY, f32::min),
                widths.fold(0.0, f32::max),
            )
        };
        let forward = widths(0, StepBack::Far);
        let little = widths(1, StepBack::Little);
        let far = widths(1, StepBack::Far);
        assert!(forward.1 >= 1.5 * little.1 && forward.1 >= 1.5 * far.1);
        for (thin, wide) in [forward, little, far] {
            assert!(thin >= 1.0 && wide >= 2.0 * thin, "{thin} {wide}");
        }
    }
}

#[test]
fn words_of_every_set_can_be_read_on_every_ground_that_a_theme_has() {
    for theme in THEMES {
        let palette = Palette::of(theme);
        let sets = Livery::ALL.map(|livery| palette.set(livery));
        let inks = [
            palette.text,
            palette.dim_text,
            palette.error,
            palette.finding,
        ];
        for ink in inks.into_iter().chain(sets).chain([palette.redline]) {
            for ground in [
                palette.page,
                palette.paper,
                palette.page.blend(palette.band),
            ] {
                let contrast = contrast(ink, ground);
                assert!(
                    contrast >= OF_TEXT,
                    "{theme:?}: {ink:?} on {ground:?}: {contrast:.2}"
                );
            }
        }
    }
}

#[test]
fn the_ring_around_the_focus_can_be_seen_on_every_ground_of_a_theme() {
    for theme in THEMES {
        let palette = Palette::of(theme);
        let ctx = Context::default();
        theme::apply(&ctx);
        ctx.set_theme(match theme {
            Theme::Light => egui::Theme::Light,
            Theme::Dark => egui::Theme::Dark,
        });
        let visuals = ctx.global_style().visuals.clone();
        let grounds = [
            palette.page,
            palette.paper,
            palette.paper.blend(palette.band),
            visuals.window_fill,
            visuals.selection.bg_fill,
            visuals.widgets.hovered.weak_bg_fill,
        ];
        for ground in grounds {
            let contrast = contrast(palette.focus, ground);
            assert!(
                contrast >= OF_LINES,
                "{theme:?} on {ground:?}: {contrast:.2}"
            );
        }
    }
}
