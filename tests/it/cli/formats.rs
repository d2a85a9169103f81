//! Do text, Markdown, BBCode and CSV show the table, and stay whole whatever names it holds?

use super::{about, answer, answer_to_one_set, changed_project, is_close, three_sets};
use layshaft::analysis::ProjectResults;
use layshaft::project::format;
use std::path::Path;

fn table(file: &Path, more: &[&str]) -> String {
    answer(about("table", file, more)).printed().to_owned()
}

/// The table of the three sets of which one part is replaced.
fn changed_table(part: &str, replacement: &str, more: &[&str]) -> String {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("a.ron");
    std::fs::write(&file, changed_project(part, replacement)).unwrap();
    table(&file, more)
}

#[test]
fn text_stands_in_aligned_columns_with_numbers_to_the_right() {
    let flags = "table --final 3 --circumference 2000 --redline 6000 --shift 5000 --rpm 3000 \
                 --speed 90 --reverse 4 --gears";
    let answer = answer(flags.split_whitespace().chain(["4 34:17"]));
    let lines: Vec<&str> = answer.printed().lines().collect();
    let row = |gear: &str| {
        let row = lines
            .iter()
            .find(|line| line.starts_with(gear) && !line.starts_with("gear"));
        row.unwrap_or_else(|| panic!("{lines:#?}")).to_string()
    };
    let first: Vec<String> = row("1").split_whitespace().map(str::to_owned).collect();
    assert_eq!(
        first,
        [
            "1", "4.000", "12.000", "2.00", "5000", "2500", "2500", "50.0", "10.0", "30", "60",
            "(9000)"
        ]
    );
    assert!(row("2").contains("34:17 = 2.000"));
    // Digits stand under digits, though the first row is in brackets.
    let end = |row: &str, digits: &str| row.find(digits).unwrap() + digits.len();
    assert_eq!(end(&row("1"), "9000"), end(&row("2"), "4500"));
    assert!(lines.iter().all(|line| !line.ends_with(' ')));
}

#[test]
fn the_crawl_speed_of_every_gear_stands_there_where_idle_is_known() {
    let flags = "table --final 3 --circumference 2000 --redline 6000 --shift 5000 --reverse 4";
    let printed = |more: &str| {
        let flags = flags.split_whitespace().chain(more.split_whitespace());
        answer(flags.chain(["--gears", "4 2"])).printed().to_owned()
    };
    for (format, cells) in [
        ("text", [" 9.0 ", " 18.0 "]),
        ("markdown", ["| 9.0 |", "| 18.0 |"]),
        ("bbcode", [" 9.0 ", " 18.0 "]),
        ("csv", [",9,60,", ",18,120,"]),
    ] {
        // Below the lowest useful engine speed, and in no brackets all the same.
        let with = printed(&format!("--as {format} --idle 900 --lowest-useful 1500"));
        assert!(with.contains("idle"), "{with}");
        for cell in cells {
            assert!(with.contains(cell), "{cell} in {with}");
        }
        let without = printed(&format!("--as {format}"));
        assert!(!without.contains("at idle"), "{without}");
        assert!(
            cells.iter().all(|cell| !without.contains(cell)),
            "{without}"
        );
    }
}

#[test]
fn typed_teeth_stand_before_their_ratio_those_of_a_worm_too() {
    let flags = "table --final 1 --circumference 2000 --redline 6000 --gears";
    let answer = answer(flags.split_whitespace().chain(["40x1 34:17 1.5"]));
    for cell in ["40x1 = 40.000", "34:17 = 2.000", " 1.500"] {
        assert!(answer.printed().contains(cell), "{}", answer.stdout);
    }
    assert!(!answer.printed().contains("1.5 ="), "{}", answer.stdout);
}

#[test]
fn no_line_of_a_text_table_is_wider_than_a_page() {
    for more in [
        &[][..],
        &[
            "--speed",
            "10 20 30 40 50 60 70 80 90 100 110 120 130 140 150",
        ],
    ] {
        let text = table(&three_sets(), more);
        let rows = text.lines().filter(|line| !line.contains("; "));
        let widest = rows.map(|line| line.chars().count()).max().unwrap();
        assert!(widest <= 100, "{widest}\n{text}");
    }
}

#[test]
fn sets_are_compared_with_the_baseline_and_told_apart_by_number() {
    let text = table(&three_sets(), &[]);
    for heading in [
        "Set 1: Fitted five-speed\n",
        "Set 2: Same box",
        "against set 1",
    ] {
        assert!(text.contains(heading), "{heading}");
    }
    assert!(text.contains("−290 (−11.4 %)"), "{text}");
    let against_third = changed_table("baseline: 1", "baseline: 3", &[]);
    assert!(against_third.contains("against set 3"));
}

#[test]
fn miles_are_shown_where_they_are_asked_for() {
    let file = three_sets();
    for format in ["text", "markdown", "bbcode", "csv"] {
        let text = table(&file, &["--as", format, "--units", "mph", "--speed", "70"]);
        assert!(text.contains("mph") && !text.contains("km/h"), "{text}");
        assert!(text.contains("70"), "{text}");
    }
    let by_file = changed_table("Kmh", "Mph", &["--as", "csv"]);
    assert!(by_file.contains("per 1000 rpm (mph)"));
    let by_flag = changed_table("Kmh", "Mph", &["--as", "csv", "--units", "kmh"]);
    assert!(by_flag.contains("per 1000 rpm (km/h)"));
}

#[test]
fn road_speeds_on_the_command_line_are_kmh_unless_miles_are_asked_for() {
    let text = changed_table("Kmh", "Mph", &["--as", "csv", "--speed", "80.4672"]);
    assert!(text.contains("at 50 mph (rpm)"), "{text}");
}

#[test]
fn markdown_is_a_pipe_table_for_each_set() {
    let text = table(&three_sets(), &["--as", "markdown"]);
    assert!(text.starts_with("## Camper van: which gears for the long road?\n\nredline 4500 rpm;"));
    assert!(
        text.contains("; baseline set 1 of 3\n\n### Set 1: Fitted"),
        "{text}"
    );
    let mut in_table = 0;
    for block in text.split("\n\n").filter(|block| block.starts_with('|')) {
        let widths: Vec<usize> = block
            .lines()
            .map(|line| line.matches('|').count())
            .collect();
        assert!(widths.iter().all(|width| *width == widths[0]), "{block}");
        assert!(block.lines().nth(1).unwrap().starts_with("| :--- | ---: |"));
        in_table += 1;
    }
    assert_eq!(in_table, 3);
}

#[test]
fn names_cannot_break_markdown_or_bbcode() {
    let name = "a|b [/b] *c*";
    let markdown = changed_table("Fitted five-speed", name, &["--as", "markdown"]);
    assert!(
        markdown.contains("### Set 1: a\\|b \\[/b\\] \\*c\\*"),
        "{markdown}"
    );
    let bbcode = changed_table("Fitted five-speed", name, &["--as", "bbcode"]);
    assert!(bbcode.contains("[b]Set 1: a|b (/b) *c*[/b]\n"), "{bbcode}");
    let label = changed_table("label: \"1\"", "label: \"[/code]\"", &["--as", "bbcode"]);
    assert_eq!(label.matches("[/code]").count(), 3, "{label}");
    assert_eq!(label.matches("[code]").count(), 3);
}

/// The cells of a CSV text after RFC 4180.
fn csv_rows(text: &str, separator: char) -> Vec<Vec<String>> {
    let mut rows = vec![vec![String::new()]];
    let mut is_quoted = false;
    let mut letters = text.chars().peekable();
    while let Some(letter) = letters.next() {
        let row = rows.last_mut().unwrap();
        match letter {
            '"' if is_quoted && letters.peek() == Some(&'"') => {
                letters.next();
                row.last_mut().unwrap().push('"');
            }
            '"' => is_quoted = !is_quoted,
            '\r' if !is_quoted => assert_eq!(letters.peek(), Some(&'\n')),
            '\n' if !is_quoted => rows.push(vec![String::new()]),
            c if c == separator && !is_quoted => row.push(String::new()),
            c => row.last_mut().unwrap().push(c),
        }
    }
    assert_eq!(
        rows.pop(),
        Some(vec![String::new()]),
        "no line break at the end"
    );
    rows
}

/// Whether a number is what was reckoned, without the digits that are the dust of it.
fn is_reckoned(printed: Option<f64>, reckoned: Option<f64>) -> bool {
    match (printed, reckoned) {
        (Some(printed), Some(reckoned)) => (printed / reckoned - 1.0).abs() <= 5e-15,
        (printed, reckoned) => printed.is_none() && reckoned.is_none(),
    }
}

#[test]
fn csv_holds_the_figures_of_gearing_to_fifteen_digits() {
    let text = std::fs::read_to_string(three_sets()).unwrap();
    let project = format::read(&text).unwrap();
    let results = ProjectResults::of(&project);
    for (mark, separator) in [("point", ','), ("comma", ';')] {
        let csv = table(&three_sets(), &["--as", "csv", "--decimal", mark]);
        let rows = csv_rows(&csv, separator);
        assert_eq!(rows.len(), 1 + 6 + 6 + 7);
        assert!(rows.iter().all(|row| row.len() == rows[0].len()));
        assert!(!csv.contains("99999999"), "dust in {csv}");
        let column = |title: &str| rows[0].iter().position(|t| t == title).unwrap();
        let mut at = 1;
        for (number, (candidate, set)) in (1..).zip(project.sets.iter().zip(&results.sets)) {
            for result in set.gears.iter().chain(&set.reverse) {
                let row = &rows[at];
                let number_in = |title: &str| row[column(title)].replace(',', ".").parse::<f64>();
                assert_eq!(row[0], number.to_string());
                assert_eq!(row[1], candidate.set.name.as_str());
                assert_eq!(row[2], result.gear.label);
                let overall = result.gear.overall_ratio;
                assert!(is_reckoned(number_in("overall ratio").ok(), Some(overall)));
                assert!(is_reckoned(number_in("step").ok(), result.step));
                let drop = result.upshift.map(|up| up.rpm_drop());
                assert!(is_reckoned(number_in("drop (rpm)").ok(), drop));
                let speed = result.redline_speed_kmh;
                assert!(is_reckoned(
                    number_in("at redline (km/h)").ok(),
                    Some(speed)
                ));
                let rpm = set.drivetrain.engine_rpm(&result.gear, 90.0);
                assert!(is_close(number_in("at 90 km/h (rpm)").unwrap(), rpm));
                at += 1;
            }
        }
    }
}

#[test]
fn names_in_csv_stand_in_quotation_marks_and_are_no_formulas() {
    for (name, expected) in [
        ("a, b; \\\"c\\\"", "a, b; \"c\""),
        ("=1+1", "'=1+1"),
        ("@SUM(A1)", "'@SUM(A1)"),
        ("-1", "'-1"),
        ("+1", "'+1"),
        ("a;=1+1", "a;'=1+1"),
        ("a, \\\"@A1", "a, \"'@A1"),
    ] {
        for (mark, separator) in [("point", ','), ("comma", ';')] {
            let more = ["--as", "csv", "--decimal", mark];
            let csv = changed_table("Fitted five-speed", name, &more);
            assert_eq!(csv_rows(&csv, separator)[1][1], expected, "{name}");
        }
    }
}

#[test]
fn a_single_set_is_compared_with_nothing() {
    for format in ["text", "markdown", "bbcode"] {
        let answer = answer_to_one_set("table", &["--as", format, "--speed", "100"]);
        assert!(!answer.printed().contains("against"), "{}", answer.stdout);
    }
}

#[test]
fn text_is_what_is_printed_without_a_format() {
    let file = three_sets();
    assert_eq!(
        table(&file, &["--as", "text", "--show", "speed"]),
        table(&file, &[])
    );
}
