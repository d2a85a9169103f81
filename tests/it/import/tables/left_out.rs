//! Is what is there read, where somebody left out columns or lines, quoted or indented a table?

use super::{Form, farm_in_both_ranges, missing, refused, table};
use layshaft::analysis::Analysis;
use layshaft::chart::MarkedSpeeds;
use layshaft::gearing::{GearRole, RoadSpeed};
use layshaft::import::tables::{OwnTable, TableError, is_own_table, read};
use layshaft::project::examples::EXAMPLES;
use layshaft::project::{Marks, Project};
use layshaft::sheet::json;

fn two_seater() -> Project {
    EXAMPLES[1].project().unwrap()
}

/// The ratios of a set as they are spelled.
fn ratios(table: &OwnTable, set: usize) -> Vec<String> {
    let gears = table.sets[set].gears.iter();
    gears.map(|gear| gear.ratio.to_string()).collect()
}

/// A Markdown table with these of its columns.
fn with_columns(text: &str, kept: &[&str]) -> String {
    let mut at = Vec::new();
    let line = |line: &str| -> String {
        let cells: Vec<&str> = line.trim_matches('|').split('|').map(str::trim).collect();
        if cells[0] == "gear" {
            let is_kept = |at: &usize| kept.contains(&cells[*at]);
            at = (0..cells.len()).filter(is_kept).collect();
        }
        let cells: Vec<&str> = at.iter().map(|at| cells[*at]).collect();
        format!("| {} |", cells.join(" | "))
    };
    let mut line = line;
    let lines = text.lines().map(|text| {
        if text.starts_with('|') {
            line(text)
        } else {
            text.to_owned()
        }
    });
    lines.collect::<Vec<String>>().join("\n")
}

#[test]
fn a_table_may_be_quoted_indented_and_surrounded() {
    for form in Form::ALL {
        let text = form.print(&two_seater());
        let whole = table(&text);
        for before in ["> ", ">> ", "> > ", "    ", "\t", ">"] {
            let quoted: String = text
                .lines()
                .map(|line| format!("{before}{line}").trim_end().to_owned() + "\n")
                .collect();
            assert_eq!(table(&quoted), whole, "{form:?}\n{quoted}");
        }
        let around = |text: &str| match form {
            Form::CsvPoint | Form::CsvComma => text.to_owned(),
            _ => format!("{text}\nWhat do you think?\n"),
        };
        assert_eq!(table(&around(&text)), whole, "{form:?}");
        let crlf = text.replace("\r\n", "\n").replace('\n', "\r\n");
        assert_eq!(table(&crlf), whole, "{form:?}");
        assert_eq!(table(text.trim_end()), whole, "{form:?}");
    }
}

#[test]
fn marks_that_are_spelled_the_same_do_not_part_a_set() {
    let mut project = two_seater();
    let marks = (0..8).map(|n| RoadSpeed::from_kmh(90.0 + f64::from(n) * 1e-6).unwrap());
    project.marked_road_speeds = Marks::new(marks.collect()).unwrap();
    for form in Form::ALL {
        let read = table(&form.print(&project));
        assert_eq!(read.sets, table(&form.print(&two_seater())).sets);
    }
}

#[test]
fn a_text_table_may_stand_in_a_fence_of_code() {
    let text = Form::Text.print(&two_seater());
    let fenced = format!("```\n{text}```\n");
    assert_eq!(table(&fenced).sets, table(&text).sets);
}

#[test]
fn the_lines_above_the_sets_may_be_missing() {
    for form in [Form::Text, Form::Markdown, Form::BbCode] {
        let text = form.print(&two_seater());
        let whole = table(&text);
        let untitled = text.split_once("\n\n").unwrap().1;
        assert_eq!(
            table(untitled),
            OwnTable {
                title: None,
                ..whole.clone()
            }
        );
        let without_head = untitled.split_once("\n\n").unwrap().1;
        let read = table(without_head);
        assert_eq!(read.sets, whole.sets, "{form:?}");
        assert_eq!(read.redline, None);
        let unnamed = without_head.split_once('\n').unwrap().1;
        let read = table(unnamed);
        assert_eq!(read.sets[0].name.as_str(), "Set 1");
        assert_eq!(read.sets[0].final_drives, whole.sets[0].final_drives);
        assert_eq!(read.sets[1..], whole.sets[1..], "{form:?}");
    }
}

#[test]
fn one_set_alone_is_read_and_what_it_was_compared_with_is_not_missed() {
    for (form, mark) in [
        (Form::Text, "Set 2: "),
        (Form::Markdown, "### Set 2: "),
        (Form::BbCode, "[b]Set 2: "),
    ] {
        let text = form.print(&two_seater());
        let from = text.find(mark).unwrap();
        let to = text.find(&mark.replace('2', "3")).unwrap();
        let read = table(&text[from..to]);
        assert_eq!(read.sets, table(&text).sets[1..2], "{form:?}");
        assert_eq!(read.remarks, Vec::<String>::new());
        let read = table(&text[from..]);
        assert_eq!(read.sets.len(), 2);
        assert_eq!(
            read.remarks,
            ["set 1, with which the others were compared, is not in the text"]
        );
    }
}

#[test]
fn with_columns_left_out_what_is_there_is_read() {
    let text = Form::Markdown.print(&two_seater());
    let whole = table(&text);
    let few = with_columns(&text, &["gear", "ratio", "shift at (rpm)"]);
    assert_eq!(table(&few).sets, whole.sets);
    let overall = with_columns(&text, &["gear", "overall", "at redline (mph)"]);
    let read = table(&overall);
    assert_eq!(ratios(&read, 0), ["3.21", "1.93", "1.36", "1"]);
    assert_eq!(read.sets[0].shift, None);
    assert_eq!(read.remarks.len(), 3, "{:?}", read.remarks);
    let set = read.sets[0].gear_set(&missing()).unwrap();
    assert_eq!(set.shift, missing().shift);
}

#[test]
fn without_its_words_a_set_has_the_final_drive_that_overall_ratios_tell() {
    let text = Form::Markdown.print(&two_seater());
    let wordless: String = text
        .split_inclusive('\n')
        .filter(|line| !line.starts_with("spread"))
        .collect();
    let read = table(&wordless);
    assert_eq!(read.sets[0].final_drives[0].to_string(), "4.111");
    assert_eq!(read.tyre, None);
    assert_eq!(read.remarks.len(), 3, "{:?}", read.remarks);
    let bare = with_columns(&wordless, &["gear", "ratio", "shift at (rpm)"]);
    let read = table(&bare);
    assert_eq!(read.sets[0].final_drives, []);
    let set = read.sets[0].gear_set(&missing()).unwrap();
    assert_eq!(set.final_drives, missing().final_drives);
}

#[test]
fn overall_ratios_alone_are_read_as_what_they_are() {
    let text = "| gear | overall | at redline (mph) |\n| :--- | ---: | ---: |\n\
                | 1 | 13.197 | 33 |\n| 2 | 7.934 | 55 |\n";
    let read = table(text);
    assert_eq!(ratios(&read, 0), ["13.197", "7.934"]);
    assert!(read.remarks[0].contains("overall"), "{:?}", read.remarks);
}

#[test]
fn the_rows_of_other_positions_may_be_left_out_or_all_that_tells_them() {
    let text = Form::Markdown.print(&farm_in_both_ranges());
    let whole = table(&text);
    let without = |is_out: fn(&str) -> bool| -> String {
        let lines = text.split_inclusive('\n');
        lines.filter(|line| !is_out(line)).collect()
    };
    let own_rows = without(|line| line.contains(" Low |"));
    assert_eq!(table(&own_rows).sets, whole.sets);
    let wordless = without(|line| line.starts_with("spread"));
    let labels = |table: &OwnTable| -> Vec<String> {
        let gears = table.sets.iter().flat_map(|set| &set.gears);
        gears.map(|gear| gear.label.to_string()).collect()
    };
    assert_eq!(labels(&table(&wordless)), labels(&whole));
}

#[test]
fn a_table_from_before_there_were_typed_columns_is_read() {
    let mut examples = EXAMPLES.iter().map(|example| example.project().unwrap());
    let farm = examples.find(|project| {
        let mut gears = project.sets.iter().flat_map(|c| &c.set.gears);
        gears.any(|gear| gear.role == GearRole::Crawler)
    });
    let text = Form::Text.print(&farm.unwrap());
    let old = text.replace("  crawler\n", "\n").replace("  yes\n", "\n");
    assert_ne!(old, text);
    assert_eq!(table(&old).sets, table(&text).sets);
}

#[test]
fn a_csv_without_the_columns_at_its_end_and_one_from_a_spreadsheet_are_read() {
    let text = Form::CsvPoint.print(&two_seater());
    let whole = table(&text);
    let plainly_named = text.replace("\"Close-ratio, teeth counted\"", "Close-ratio");
    let figures = plainly_named.lines().map(|line| {
        let cells: Vec<&str> = line.split(',').collect();
        cells[..18].join(",") + "\r\n"
    });
    let read = table(&figures.collect::<String>());
    assert_eq!(ratios(&read, 0), ratios(&whole, 0));
    assert_eq!(read.sets[2].final_drives[0].to_string(), "4.1");
    assert_eq!(read.sets[2].reverse, whole.sets[2].reverse);
    assert_eq!(read.redline, None);
    let tabs: String = Form::CsvComma.print(&two_seater()).replace(';', "\t");
    assert_eq!(table(&tabs), whole);
}

#[test]
fn a_column_of_somebody_else_is_told_and_left_out() {
    let text = "| gear | ratio | noise (dB) | step | shift at (rpm) |\n\
                | --- | --- | --- | --- | --- |\n\
                | 1 | 3.210 | 82 | 1.61 | 6000 |\n\
                | 2 | 2.000 | 80 |  |  |\n";
    let read = table(text);
    assert_eq!(ratios(&read, 0), ["3.21", "2"]);
    assert_eq!(read.remarks, ["left out: the columns \"noise (dB)\""]);
}

#[test]
fn the_program_s_json_is_told_to_be_for_programs() {
    let project = EXAMPLES[0].project().unwrap();
    let marked = MarkedSpeeds::of(&project);
    let json = json::table(&Analysis::from(&project), &marked).unwrap();
    for text in [json.clone(), format!("\n  {json}")] {
        assert_eq!(refused(&text), TableError::ForPrograms);
    }
    let sentence = TableError::ForPrograms.to_string();
    assert!(sentence.contains("copy it as text, Markdown, BBCode or CSV"));
}

#[test]
fn what_is_not_a_table_of_the_program_is_left_to_others() {
    for text in [
        "",
        "3.54/1.91/1.31/1.03/0.83; 4.06:1",
        "gear ratio\n1 3.54\n2 1.91",
        "gear  ratio\n1  3.54\n2  1.91",
        "| gear | ratio |\n| --- | --- |\n| 1 | 3.54 |",
        "| Gear | Ratio | mph/1000 |\n| --- | --- | --- |\n| 1 | 3.54 | 5.1 |",
        "gear,ratio\n1,3.54\n2,1.91",
        "gear;ratio;final drive\n1;3,54;4,06",
        "set,name\n1,2",
    ] {
        assert!(!is_own_table(text), "{text}");
        assert_eq!(read(text), None, "{text}");
    }
}
