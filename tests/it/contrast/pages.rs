//! Can every word of a page be read, in both themes and on paper?
//!
//! A page is finished pixels. Of each text the colour that most of its letters' place has is the
//! ground, and the commonest of those that stand out from it is the ink: stems cover whole pixels of
//! one colour, while their edges have many. Diagram and table are measured word by word besides,
//! drawn as they are on a page.

use super::{OF_TEXT, PIXELS_PER_POINT, Seen, assert_none, color_at, contrast, pixels};
use crate::support::window::{camper_van, three_ten_speeds};
use egui::{Color32, Context, Rect, Ui, UiBuilder, pos2, vec2};
use image::RgbaImage;
use layshaft::analysis::{Analysis, ProjectResults};
use layshaft::chart::{SetTable, Table};
use layshaft::draw::diagram::{Look, StepBack, diagram_ui};
use layshaft::draw::palette::{Palette, Theme};
use layshaft::draw::table::{Arrangement, Content, TableLook, all_columns, table_ui};
use layshaft::draw::theme;
use layshaft::project::examples::EXAMPLES;
use layshaft::project::{PageForm, PictureWidth, Project, View, Views};
use layshaft::sheet::page::{Page, WIDTH};
use std::collections::HashMap;

/// Ground and ink of the letters in a rectangle.
fn ground_and_ink(picture: &RgbaImage, letters: Rect) -> Option<[Color32; 2]> {
    let mut counts: HashMap<Color32, usize> = HashMap::new();
    for [x, y] in pixels(letters.expand(2.0), picture) {
        *counts.entry(color_at(picture, x, y)).or_default() += 1;
    }
    let commonest = |colors: &HashMap<Color32, usize>| {
        let most = colors
            .iter()
            .max_by_key(|(color, count)| (**count, color.to_array()));
        most.map(|(color, _)| *color)
    };
    let ground = commonest(&counts)?;
    counts.retain(|color, _| contrast(*color, ground) > 1.5);
    Some([ground, commonest(&counts)?])
}

fn problems_on(what: &str, page: &Page) -> Vec<String> {
    let picture = page.picture().unwrap();
    let texts = page.texts().unwrap();
    assert!(texts.len() > 20, "{what}");
    let mut problems = Vec::new();
    for (rect, text) in texts.iter().filter(|(rect, _)| rect.is_positive()) {
        let [ground, ink] = ground_and_ink(&picture, *rect)
            .unwrap_or_else(|| panic!("{what}: no letters of \"{text}\" at {rect}"));
        let contrast = contrast(ground, ink);
        if contrast < OF_TEXT {
            problems.push(format!(
                "{what}: \"{text}\" at {rect}: {ink:?} on {ground:?}: {contrast:.2}"
            ));
        }
    }
    problems
}

#[test]
fn every_word_of_every_page_can_be_read() {
    let mut problems = Vec::new();
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "1600"
    )]
    let width_px = (WIDTH * PIXELS_PER_POINT) as u64;
    let mut check = |what: String, project: &Project, view: View| {
        let mut project = project.clone();
        project.write_up.views = Views::new([view]).unwrap();
        let page = Page::of(&project).unwrap();
        problems.extend(problems_on(&what, &page));
    };
    for (is_dark, view) in [false, true]
        .into_iter()
        .flat_map(|d| View::ALL.map(|v| (d, v)))
    {
        let mut project = camper_van();
        project.write_up.width = PictureWidth::from_px(width_px).unwrap();
        project.write_up.is_dark = is_dark;
        check(format!("{view:?}, dark: {is_dark}"), &project, view);
    }
    // The example with the longest note, and with warnings.
    let mut project = EXAMPLES[3].project().unwrap();
    project.write_up.form = PageForm::A4;
    check(
        "the page for the bench".to_owned(),
        &project,
        View::default(),
    );
    assert_none(&problems);
}

/// A piece of a page, measured word by word.
fn seen(theme: Theme, height: f32, mut show: impl FnMut(&mut Ui)) -> Seen {
    let ctx = Context::default();
    theme::apply(&ctx);
    let size = vec2(WIDTH, height);
    let frame = Rect::from_min_size(pos2(0.0, 0.0), size);
    let mut input = egui::RawInput {
        screen_rect: Some(frame),
        ..egui::RawInput::default()
    };
    let root = input.viewports.entry(egui::ViewportId::ROOT).or_default();
    root.native_pixels_per_point = Some(PIXELS_PER_POINT);
    let mut shapes = Vec::new();
    // Axes know their own width from the second pass on.
    for _ in 0..2 {
        let mut output = ctx.run_ui(input.clone(), |ui| {
            let inner = UiBuilder::new().max_rect(frame.shrink(22.0));
            show(&mut ui.new_child(inner));
        });
        shapes = std::mem::take(&mut output.shapes);
        output.drop_without_applying_deltas();
    }
    Seen::of(&ctx, &shapes, size, Palette::of(theme).paper)
}

#[test]
fn every_word_of_every_diagram_and_table_can_be_read_where_it_stands() {
    let mut problems = Vec::new();
    for theme in [Theme::Light, Theme::Dark] {
        let palette = Palette::of(theme);
        for project in [camper_van(), three_ten_speeds()] {
            let results = ProjectResults::of(&project);
            for view in View::ALL {
                let scene = view.scene(&Analysis::from(&project));
                let look = Look {
                    palette: &palette,
                    forward: None,
                    others: StepBack::Not,
                    gear: scene.lines.iter().find_map(|line| line.of.gear_of_set()),
                    text_size: 13.0,
                    drops: &scene.set_ids(),
                    is_alone: true,
                    interactive: false,
                };
                let seen = seen(theme, 440.0, |ui| {
                    diagram_ui(ui, &scene, scene.whole(), &look);
                });
                assert!(seen.words.len() > 15, "{view:?}");
                problems.extend(seen.too_faint(&format!("{theme:?}, {view:?}"), |_| OF_TEXT));
            }
            let table = Table::of(&project, &results);
            let sets: Vec<&SetTable> = table.sets.iter().collect();
            for set in &sets {
                let look = TableLook {
                    palette: &palette,
                    text_size: 12.0,
                    gear: Some(set.gear(&set.rows[0])),
                    arrangement: Arrangement::OneUnderAnother,
                    wrap_width: WIDTH,
                    with_remarks: true,
                };
                let content = Content::of_table(&table, &sets, &all_columns(&table));
                let seen = seen(theme, 900.0, |ui| {
                    table_ui(ui, &content, &look);
                });
                assert!(seen.words.len() > 100);
                problems.extend(seen.too_faint(&format!("{theme:?}, table"), |_| OF_TEXT));
            }
        }
    }
    assert_none(&problems);
}
