//! Is the picture of the write-up the one that was looked at, and can all of it be read?

mod against_window;
mod bench_page;
mod goldens;
mod job_sheets;
mod table;

use crate::support::projects::any_project;
use crate::support::window::camper_van;
use egui::{Rect, Ui, UiBuilder, pos2, vec2};
use layshaft::analysis::{Analysis, ProjectResults};
use layshaft::chart::Table;
use layshaft::draw::diagram::{Look, StepBack, diagram_ui};
use layshaft::draw::label_placing::overlap;
use layshaft::draw::palette::{Palette, Theme};
use layshaft::draw::table::{
    Arrangement, Content, TableLook, all_columns, column_groups, table_ui,
};
use layshaft::draw::theme;
use layshaft::project::View;
use layshaft::project::examples::EXAMPLES;
use layshaft::project::{PageForm, PictureWidth, Project, format};
use layshaft::sheet::page::{Page, PageError, WIDTH};
use proptest::prelude::*;

/// The largest project there can be, with the widest words.
fn monster() -> Project {
    format::read(include_str!("monster.ron")).unwrap()
}

/// The smallest project there can be.
fn minimal() -> Project {
    format::read(include_str!("minimal.ron")).unwrap()
}

type Labels = Vec<(Rect, String)>;

/// Whether no two of the labels overlap, and none leaves a frame.
fn can_be_read(labels: &[(Rect, String)], frame: Rect) -> Result<(), String> {
    // Half a hair: edges that touch are no overlap, whatever the rounding.
    let labels: Vec<_> = labels
        .iter()
        .map(|(r, text)| (r.shrink(0.3), text))
        .collect();
    for (at, (rect, text)) in labels.iter().enumerate() {
        if rect.is_positive() && !frame.contains_rect(*rect) {
            return Err(format!("{text:?} at {rect} leaves {frame}"));
        }
        for (other, other_text) in &labels[at + 1..] {
            if rect.is_positive() && other.is_positive() && overlap(rect, other) {
                return Err(format!(
                    "{text:?} at {rect} covers {other_text:?} at {other}"
                ));
            }
        }
    }
    Ok(())
}

/// What a piece of user interface says once it has settled.
fn settled(mut ui: impl FnMut(&mut Ui) -> Labels) -> Labels {
    let ctx = egui::Context::default();
    theme::apply(&ctx);
    let mut labels = Vec::new();
    for _ in 0..3 {
        let input = egui::RawInput {
            screen_rect: Some(Rect::from_min_size(pos2(0.0, 0.0), vec2(WIDTH, 100_000.0))),
            ..egui::RawInput::default()
        };
        let output = ctx.run_ui(input, |root| labels = ui(root));
        output.drop_without_applying_deltas();
    }
    labels
}

fn diagram_labels(project: &Project, frame: Rect) -> Labels {
    let scene = View::Speed.scene(&Analysis::from(project));
    let look = Look {
        palette: &Palette::of(Theme::Light),
        forward: None,
        others: StepBack::Not,
        gear: None,
        text_size: 13.0,
        drops: &scene.set_ids(),
        is_alone: true,
        interactive: false,
    };
    settled(|ui| {
        let mut ui = ui.new_child(UiBuilder::new().max_rect(frame));
        diagram_ui(&mut ui, &scene, scene.whole(), &look).labels
    })
}

fn table_labels(project: &Project, frame: Rect) -> Labels {
    let results = ProjectResults::of(project);
    let table = Table::of(project, &results);
    let sets: Vec<_> = table.sets.iter().collect();
    let look = TableLook {
        palette: &Palette::of(Theme::Light),
        text_size: 13.0,
        gear: None,
        arrangement: Arrangement::OneUnderAnother,
        wrap_width: frame.width() - 10.0,
        with_remarks: true,
    };
    settled(|ui| {
        let mut ui = ui.new_child(UiBuilder::new().max_rect(frame));
        let mut labels = Vec::new();
        let all = Content::of_table(&table, &sets, &all_columns(&table));
        for group in column_groups(&ui, &all, &look, frame.width()) {
            let content = Content::of_table(&table, &sets, &group);
            labels.extend(table_ui(&mut ui, &content, &look).labels);
        }
        labels
    })
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(48) })]

    #[test]
    fn labels_of_diagram_and_table_never_overlap_and_are_never_cut(project in any_project()) {
        let page = Rect::from_min_size(pos2(0.0, 0.0), vec2(WIDTH, 440.0));
        let labels = diagram_labels(&project, page.shrink(22.0));
        can_be_read(&labels, page).map_err(TestCaseError::fail)?;
        let page = Rect::from_min_size(pos2(0.0, 0.0), vec2(WIDTH, 100_000.0));
        let labels = table_labels(&project, page.shrink(22.0));
        can_be_read(&labels, page).map_err(TestCaseError::fail)?;
    }

    #[test]
    fn no_text_on_a_page_covers_another_or_is_cut(mut project in any_project()) {
        project.write_up.left_out.clear();
        let sets: Vec<_> = project.sets.iter().map(|c| c.id).collect();
        let page = Page::with_sets(&project, &sets).unwrap();
        match page.texts() {
            Ok(texts) => {
                let size = vec2(WIDTH, page.height().unwrap());
                let frame = Rect::from_min_size(pos2(0.0, 0.0), size);
                can_be_read(&texts, frame).map_err(TestCaseError::fail)?;
            }
            Err(PageError::PageFull { .. }) => {}
            Err(problem) => return Err(TestCaseError::fail(problem.to_string())),
        }
    }
}

#[test]
fn all_of_the_monster_can_be_read_in_every_form() {
    for form in PageForm::ALL {
        let mut project = monster();
        project.write_up.form = form;
        let page = Page::of(&project).unwrap();
        let size = vec2(WIDTH, page.height().unwrap());
        can_be_read(
            &page.texts().unwrap(),
            Rect::from_min_size(pos2(0.0, 0.0), size),
        )
        .unwrap();
    }
}

#[test]
fn the_picture_is_as_wide_as_it_was_wanted_and_its_words_do_not_move() {
    let mut project = camper_van();
    let mut places = Vec::new();
    for width_px in [800, 1600, 4000] {
        project.write_up.width = PictureWidth::from_px(width_px).unwrap();
        let page = Page::of(&project).unwrap();
        let picture = page.picture().unwrap();
        assert_eq!(u64::from(picture.width()), width_px);
        let shape = f64::from(picture.height()) / f64::from(picture.width());
        assert!((shape * 800.0 - f64::from(page.height().unwrap())).abs() < 1.1);
        assert!(picture.pixels().all(|pixel| pixel.0[3] == 255));
        places.push(page.texts().unwrap());
    }
    for other in &places[1..] {
        for ((a, text), (b, other_text)) in places[0].iter().zip(other) {
            assert_eq!(text, other_text);
            assert!((a.center() - b.center()).length() < 6.0, "{text}: {a} {b}");
        }
    }
}

#[test]
fn paper_has_its_proportions_and_is_white_in_every_theme() {
    let mut project = camper_van();
    project.write_up.is_dark = true;
    for (form, [width_mm, height_mm]) in [
        (PageForm::A4, [210.0, 297.0]),
        (PageForm::Letter, [215.9, 279.4]),
    ] {
        project.write_up.form = form;
        let picture = Page::of(&project).unwrap().picture().unwrap();
        let [width, height] = [picture.width(), picture.height()].map(f64::from);
        assert!(
            (height - width * height_mm / width_mm).abs() <= 1.0,
            "{form:?}"
        );
        assert_eq!(picture.get_pixel(0, 0).0, [255; 4]);
    }
}

#[test]
fn the_same_page_gives_the_same_bytes_twice() {
    let made = || {
        let page = Page::of(&camper_van()).unwrap();
        page.png(&page.picture().unwrap()).unwrap()
    };
    let bytes = made();
    assert!(bytes == made());
    assert!(bytes.len() < 1_000_000, "{} bytes", bytes.len());
    let decoded = image::load_from_memory(&bytes).unwrap().into_rgba8();
    assert!(decoded == Page::of(&camper_van()).unwrap().picture().unwrap());
}

#[test]
fn a_crawler_is_called_one_on_every_page_that_has_one() {
    let farm = EXAMPLES
        .iter()
        .find(|example| example.name.contains("Farm"));
    let farm = farm.unwrap().project().unwrap();
    for (form, words) in [(PageForm::Picture, "crawler"), (PageForm::A4, "C crawler")] {
        let said = |project: &Project| {
            let mut project = project.clone();
            project.write_up.form = form;
            let texts = Page::of(&project).unwrap().texts().unwrap();
            texts.iter().filter(|(_, text)| text == words).count()
        };
        assert_eq!(said(&farm), farm.sets.len(), "{form:?}");
        assert_eq!(said(&camper_van()), 0);
    }
}

#[test]
fn a_page_without_sets_is_refused() {
    let project = camper_van();
    let refused = Page::with_sets(&project, &[]).unwrap_err();
    assert_eq!(refused, PageError::NoSet);
}

#[test]
fn what_paper_cannot_hold_is_told() {
    let mut project = monster();
    let note = "A long story.\n".repeat(270);
    project.note = layshaft::project::Note::new(note.trim()).unwrap();
    project.write_up.form = PageForm::A4;
    let refused = Page::of(&project).unwrap().picture().unwrap_err();
    assert_eq!(
        refused.to_string(),
        "a page of A4 cannot hold all of it in letters that can be read; leave out the note or a set"
    );
    project.write_up.with_note = false;
    assert!(Page::of(&project).unwrap().picture().is_ok());
}
