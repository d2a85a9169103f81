//! Do the figures of a drawn table stand whole, once each, under their headings?

use super::{Labels, can_be_read, monster, settled};
use crate::support::projects::any_project;
use crate::support::window::{camper_van, three_ten_speeds};
use egui::{Rect, pos2, vec2};
use layshaft::analysis::{Analysis, ProjectResults};
use layshaft::chart::table::offered_columns;
use layshaft::chart::{FigureTable, GearOfSet, SetTable, Table};
use layshaft::draw::palette::{Palette, Theme};
use layshaft::draw::table::{
    Arrangement, Content, Layout, TableDrawn, TableLook, all_columns, part_of_table,
};
use layshaft::project::examples::EXAMPLES;
use layshaft::project::{ColumnKey, Project, View};
use layshaft::sheet::page::Page;
use proptest::prelude::*;
use proptest::test_runner::TestCaseError;
use std::collections::{BTreeSet, HashMap};
use std::sync::LazyLock;

const BOTH: [Arrangement; 2] = [Arrangement::OneUnderAnother, Arrangement::SideBySide];

/// A look in which words wrap at a width.
fn look(arrangement: Arrangement, width: f32) -> TableLook<'static> {
    static PALETTE: LazyLock<Palette> = LazyLock::new(|| Palette::of(Theme::Light));
    TableLook {
        palette: &PALETTE,
        text_size: 12.5,
        gear: None,
        arrangement,
        wrap_width: width,
        with_remarks: true,
    }
}

/// What `check` finds in a table with all of its columns, whose words wrap at a width.
fn in_table<R: Default>(
    project: &Project,
    (arrangement, width): (Arrangement, f32),
    check: impl Fn(&Table, &TableDrawn<'_>) -> R,
) -> R {
    let table = Table::of(project, &ProjectResults::of(project));
    let sets: Vec<&SetTable> = table.sets.iter().collect();
    let look = look(arrangement, width);
    let content = Content::of_table(&table, &sets, &all_columns(&table));
    let mut found = R::default();
    settled(|ui| {
        let layout = Layout::of(ui, &content, &look);
        let all = Rect::from_min_size(pos2(0.0, 0.0), layout.size());
        ui.set_clip_rect(Rect::EVERYTHING);
        let view = Rect::from_min_size(all.min, all.size().max(vec2(width, 0.0)));
        found = check(&table, &part_of_table(ui, &layout, &look, all, view));
        Labels::new()
    });
    found
}

/// Each figure of each gear is written as often as it is there: once.
fn all_are_there(table: &Table, drawn: &TableDrawn<'_>) -> Result<(), String> {
    let mut seen: HashMap<(Option<GearOfSet>, &str), usize> = HashMap::new();
    let figures = drawn.rows.iter().flat_map(|row| &row.cells);
    for cell in figures.filter(|cell| !cell.cell.text.is_empty()) {
        if cell.written.is_none() {
            return Err(format!("{} is not written", cell.heading.title));
        }
        *seen.entry((cell.of.gear, cell.heading.title)).or_default() += 1;
    }
    for set in &table.sets {
        for row in &set.rows {
            let figures = table.columns.iter().zip(&row.cells).skip(1);
            let mut wanted: HashMap<&str, usize> = HashMap::new();
            for (column, _) in figures.filter(|(_, cell)| !cell.text.is_empty()) {
                *wanted.entry(&column.title).or_default() += 1;
            }
            for (title, count) in wanted {
                let seen = seen.get(&(Some(set.gear(row)), title)).copied();
                if seen != Some(count) {
                    let name = row.name();
                    return Err(format!("{title} of {name} of {}: {seen:?}", set.name));
                }
            }
        }
    }
    Ok(())
}

/// All headings share a baseline, and each stands over figures of its own.
fn headings_stand_over_figures(drawn: &TableDrawn<'_>) -> Result<(), String> {
    let bottom = drawn.headings[0].rect.bottom();
    for heading in &drawn.headings {
        let title = heading.heading.title;
        if (heading.rect.bottom() - bottom).abs() > 0.5 {
            return Err(format!("{title} ends at {}", heading.rect.bottom()));
        }
        let cells = drawn.rows.iter().flat_map(|row| &row.cells);
        let own = cells.filter(|cell| cell.heading == heading.heading);
        let written: Vec<Rect> = own.filter_map(|cell| cell.written).collect();
        let Some(all) = written.into_iter().reduce(Rect::union) else {
            continue;
        };
        if !all.x_range().intersects(heading.rect.x_range()) {
            return Err(format!("{title} at {} is not over {all}", heading.rect));
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(32) })]

    #[test]
    fn every_figure_stands_whole_and_once_under_its_heading_at_every_size(
        project in any_project(),
        width in 700.0_f32..2000.0,
    ) {
        for arrangement in BOTH {
            let found = in_table(&project, (arrangement, width), |table, drawn| {
                let frame = drawn.rect.with_max_x(drawn.rect.right().max(width));
                let checks = [
                    all_are_there(table, drawn),
                    headings_stand_over_figures(drawn),
                    can_be_read(&drawn.labels, frame),
                ];
                checks.into_iter().find_map(Result::err)
            });
            if let Some(problem) = found {
                return Err(TestCaseError::fail(format!("{arrangement:?}: {problem}")));
            }
        }
    }
}

#[test]
fn what_is_scrolled_out_of_view_is_not_drawn() {
    let project = camper_van();
    let table = Table::of(&project, &ProjectResults::of(&project));
    let sets: Vec<&SetTable> = table.sets.iter().collect();
    let look = look(Arrangement::SideBySide, 600.0);
    let content = Content::of_table(&table, &sets, &all_columns(&table));
    settled(|ui| {
        let layout = Layout::of(ui, &content, &look);
        let all = Rect::from_min_size(pos2(-900.0, -30.0), layout.size());
        let view = Rect::from_min_size(pos2(0.0, 0.0), vec2(600.0, 140.0));
        let drawn = part_of_table(ui, &layout, &look, all, view);
        let cells = drawn.rows.iter().flat_map(|row| &row.cells);
        let written: Vec<Rect> = cells.filter_map(|cell| cell.written).collect();
        assert!(
            written.len() > 5 && written.len() < 150,
            "{}",
            written.len()
        );
        let gears = drawn.rows.iter().filter_map(|row| row.name.written);
        assert!(gears.into_iter().all(|rect| rect.left().abs() < 0.5));
        assert!(
            drawn
                .headings
                .iter()
                .all(|heading| heading.rect.top() > 0.0)
        );
        Labels::new()
    });
}

#[test]
fn a_page_has_the_columns_that_were_chosen_whether_they_fit_beside_each_other_or_not() {
    let keys = |keys: &[&str]| -> Option<BTreeSet<ColumnKey>> {
        Some(
            keys.iter()
                .map(|key| ColumnKey::new(key).unwrap())
                .collect(),
        )
    };
    let headings = |columns: Option<BTreeSet<ColumnKey>>| -> Vec<String> {
        let mut project = camper_van();
        project.write_up.columns = columns;
        let texts = Page::of(&project).unwrap().texts().unwrap().into_iter();
        texts.map(|(_, text)| text).collect()
    };
    let few = headings(keys(&["overall_ratio", "unknown"]));
    assert!(few.contains(&"overall".to_owned()) && !few.contains(&"step".to_owned()));
    let offered = offered_columns(&camper_van());
    let all: Vec<&str> = offered.iter().map(|column| column.key).collect();
    let all = headings(keys(&all));
    for title in [
        "per 1000 rpm,\nkm/h",
        "drop,\n%",
        "at idle,\nkm/h",
        "at 110 km/h,\nrpm",
    ] {
        assert!(all.contains(&title.to_owned()), "{title}");
    }
    let gears = all.iter().filter(|text| *text == "gear").count();
    assert!(gears > 1, "what does not fit stands in a part of its own");
}

#[test]
fn figures_of_motion_stand_whole_and_once_under_the_headings_of_their_part() {
    let projects = EXAMPLES.iter().map(|example| example.project().unwrap());
    for project in projects.chain([three_ten_speeds(), monster()]) {
        let analysis = Analysis::from(&project);
        for view in View::all_with_tables().skip(1) {
            let Some(table) = FigureTable::of_view(view, &analysis) else {
                continue;
            };
            for (arrangement, width) in BOTH.into_iter().flat_map(|a| [(a, 500.0), (a, 1200.0)]) {
                motion_can_be_read(&table, arrangement, width)
                    .unwrap_or_else(|problem| panic!("{view:?}, {arrangement:?}: {problem}"));
            }
        }
    }
}

fn motion_can_be_read(
    table: &FigureTable,
    arrangement: Arrangement,
    width: f32,
) -> Result<(), String> {
    let content = Content::of_figures(table);
    let look = look(arrangement, width);
    let mut found = Ok(());
    settled(|ui| {
        let layout = Layout::of(ui, &content, &look);
        let all = Rect::from_min_size(pos2(0.0, 0.0), layout.size());
        ui.set_clip_rect(Rect::EVERYTHING);
        let view = Rect::from_min_size(all.min, all.size().max(vec2(width, 0.0)));
        let drawn = part_of_table(ui, &layout, &look, all, view);
        let figures = drawn.rows.iter().flat_map(|row| &row.cells);
        let mut figures = figures.filter(|cell| !cell.cell.text.is_empty());
        let is_lost = figures.find(|cell| cell.written.is_none());
        let is_lost = is_lost.map(|cell| format!("{} is not written", cell.heading.title));
        let written = is_lost.map_or(Ok(()), Err);
        found = written.and_then(|()| can_be_read(&drawn.labels, view));
        Labels::new()
    });
    found
}

#[test]
fn the_head_of_the_part_in_view_stays_until_the_next_pushes_it_away() {
    let table = FigureTable::of_view(View::Run, &Analysis::from(&camper_van())).unwrap();
    let content = Content::of_figures(&table);
    let look = look(Arrangement::SideBySide, 600.0);
    settled(|ui| {
        let layout = Layout::of(ui, &content, &look);
        let view = Rect::from_min_size(pos2(0.0, 0.0), vec2(900.0, 200.0));
        let mut titles: Vec<String> = Vec::new();
        let mut scrolled = 0.0;
        while scrolled < layout.size().y - view.height() {
            let all = Rect::from_min_size(pos2(0.0, -scrolled), layout.size());
            let drawn = part_of_table(ui, &layout, &look, all, view);
            let is_title = |text: &str| table.sets[0].parts.iter().any(|part| part.title == text);
            let heads = drawn.labels.iter().filter(|(_, text)| is_title(text));
            let first = heads.min_by(|(a, _), (b, _)| a.top().total_cmp(&b.top()));
            let (rect, title) = first.unwrap();
            // While it is pushed away, its title may be gone, and that of the next comes at once.
            assert!(rect.top() < drawn.beneath_head + 20.0, "{title} at {rect}");
            for row in &drawn.rows {
                let is_hidden = row.rect.bottom() < drawn.beneath_head - 0.5;
                assert!(!is_hidden || row.cells.iter().all(|cell| cell.written.is_none()));
            }
            if titles.last() != Some(title) {
                titles.push(title.clone());
            }
            scrolled += 3.0;
        }
        assert_eq!(titles[..3], ["From rest", "Over a distance", "In one gear"]);
        Labels::new()
    });
}
