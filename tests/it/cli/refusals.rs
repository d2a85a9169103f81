//! Is every wrong command line answered by its own sentence, exit code 2 and nothing else?

use super::{ONE_SET, about, answer, answer_to_one_set, program_answer, three_sets};
use std::ffi::OsString;

/// Command lines without a file, and what their sentence must speak of.
const WRONG: &[(&[&str], &str)] = &[
    (&["tabel"], "layshaft table"),
    (&["chekc"], "layshaft check"),
    (&["TABLE"], "layshaft table"),
    (&["help"], "layshaft --help"),
    (&["version"], "layshaft --version"),
    (&["nowhere.ron"], "no file \"nowhere.ron\""),
    (&[""], "no file \"\""),
    (&["--bogus"], "no option --bogus"),
    (&["table", "--fnal", "3"], "--final"),
    (&["table", "--ger", "3"], "no option --ger"),
    (&["table", "-x"], "no option -x"),
    (&["table", "-5"], "no option -5"),
    (&["table", "--help=yes"], "--help takes no value"),
    (&["--version=1"], "--version takes no value"),
    (&["--gears", "3"], "does not go with the window"),
    (&["table"], "give a project file"),
    (&["check"], "give a project file"),
    (&["table", "--as", "json"], "give a project file"),
    (&["table", "--gears"], "--gears needs a value"),
    (
        &["table", "--gears", "--final", "4"],
        "\"--final\" follows instead",
    ),
    (&["table", "--gears", "3"], "needs --redline"),
    (
        &["table", "--gears", "3", "--redline", "6000"],
        "needs --tyre SIZE or --circumference",
    ),
    (
        &[
            "table",
            "--gears",
            "3",
            "--redline",
            "6000",
            "--tyre",
            "185/60R14",
        ],
        "needs --final",
    ),
    (&["table", "--final", "3"], "needs --gears"),
    (
        &["table", "--pasted", "-", "--pasted-torque", "-"],
        "--pasted and --pasted-torque cannot both read standard input",
    ),
    (&["table", "--pasted-torque", "a"], "needs --gears"),
    (
        &["table", "a", "--pasted-torque", "b"],
        "--pasted-torque describes",
    ),
    (&["table", "nowhere.ron"], "no such file: nowhere.ron"),
    (&["check", "nowhere.ron"], "no such file: nowhere.ron"),
    (&["table", "/"], "folder"),
    (&["table", "a", "b"], "\"b\" is one too many"),
    (&["table", "a", "--gears", "3"], "not both"),
    (
        &["table", "a", "--name", "x"],
        "--name describes a gear set",
    ),
    (
        &["table", "--units", "kmh", "--units", "mph", "a"],
        "--units is given twice",
    ),
];

/// What is added to a complete set, and what the sentence must speak of.
const WRONG_BESIDE_A_SET: &[(&[&str], &str)] = &[
    (&["a"], "not both"),
    (
        &["--as", "xml"],
        "--as is text, markdown, bbcode, csv or json",
    ),
    (&["--as", "JSON"], "not \"JSON\""),
    (&["--show", "effort,run"], "shows one at a time"),
    (
        &["--show", "power"],
        "--show is speed, effort, run, cruise or speedometer, not",
    ),
    (
        &["--show", "steps"],
        "--show is speed, effort, run, cruise or speedometer, not",
    ),
    (&["--units", "knots"], "--units is kmh or mph"),
    (&["--decimal", "comma"], "--as csv"),
    (
        &["--as", "csv", "--decimal", "dot"],
        "--decimal is point or comma",
    ),
    (&["--redline", "6000"], "--redline is given twice"),
    (&["--rpm", "1", "--rpm", "2"], "--rpm is given twice"),
    (&["-o", "a", "-o", "b"], "-o is given twice"),
    (&["--circumference", "2000"], "not both"),
    (
        &["--tyre", "195/65R15"],
        "--tyre is given 2 times for one gear set",
    ),
    (&["--final", "3"], "--final is given 2 times"),
    (&["--shift", "3000"], "--shift is given 2 times"),
    (
        &["--reverse", "3", "--reverse", "4"],
        "--reverse is given 2 times",
    ),
    (&["--name", "a", "--name", "b"], "--name is given 2 times"),
    (&["--name", ""], "--name: a name must not be empty"),
    (&["--name", "a\nb"], "line break"),
    (&["--rpm", ""], "--rpm has an empty item"),
    (&["--rpm", "1000,,2000"], "empty item in \"1000,,2000\""),
    (&["--rpm", "1000,"], "empty item"),
    (&["--speed", ",50"], "--speed has an empty item"),
    (&["--rpm", "-500"], "\"-500\""),
    (&["--rpm", "1e3"], "\"1e3\""),
    (&["--rpm", "NaN"], "\"NaN\""),
    (&["--rpm", "inf"], "\"inf\""),
    (&["--rpm", "0"], "between 1 and 30000 rpm"),
    (&["--rpm", "30001"], "\"30001\""),
    (&["--speed", "0"], "between 0.001 and 1000 km/h"),
    (&["--speed", "0.0009"], "not \"0.0009\""),
    (
        &["--speed", "0.0006", "--units", "mph"],
        "between 0.001 and 1000 km/h",
    ),
    (&["--speed", "1001"], "1000 km/h"),
    (&["--speed", "1000", "--units", "mph"], "1000 km/h"),
    (&["--idle", "abc"], "--idle"),
    (&["--lowest-useful", "0"], "--lowest-useful"),
    (&["--reverse", "abc"], "--reverse: \"abc\" is not a ratio"),
    (
        &["--pasted-torque", "nowhere.txt"],
        "no such file: nowhere.txt",
    ),
    (&["--pasted-torque", "/"], "folder"),
    (&["--pasted-torque", ""], "no such file"),
    (
        &["--pasted-torque", "a", "--pasted-torque", "b"],
        "--pasted-torque is given twice",
    ),
    (
        &["--torque", "1000:90 2000:100", "--pasted-torque", "a"],
        "--torque and --pasted-torque each give the torque curve",
    ),
    (
        &[
            "--brochure",
            "150@4000 80@6000",
            "--torque",
            "1000:90 2000:100",
        ],
        "--torque and --brochure each give the torque curve",
    ),
    (
        &["--brochure", "150@4000 80@6000", "--pasted-torque", "a"],
        "--pasted-torque and --brochure each give the torque curve",
    ),
    (
        &["--brochure", "150@4000"],
        "each at its rpm, as \"150@4000 80@6000\", not \"150@4000\"",
    ),
    (&["--brochure", ""], "not \"\""),
    (
        &["--brochure", "150 4000 80 6000"],
        "not \"150 4000 80 6000\"",
    ),
    (
        &["--brochure", "150@4000 80@6000 90@7000"],
        "--brochure is peak torque in N·m and peak power in kW",
    ),
    (&["--brochure", "150@4000/80@6000"], "--brochure is peak"),
    (
        &["--brochure", "150Nm@4000 80@6000"],
        "--brochure: \"150Nm\" is not a torque in N·m such as 320",
    ),
    (
        &["--brochure", "150@4000 109hp@6000"],
        "\"109hp\" is not a power in kW such as 110",
    ),
    (
        &["--brochure", "150@4000rpm 80@6000"],
        "\"4000rpm\" is not an engine speed such as 3600",
    ),
    (
        &["--brochure", "@4000 80@6000"],
        "type a torque in N·m such as 320",
    ),
    (
        &["--brochure", "320@1750-3000 110@3500-4000"],
        "power second, at one engine speed, not at \"3500-4000\"",
    ),
    (
        &["--brochure", "320@3000-1750 110@3600"],
        "the engine speeds of the peak torque rise",
    ),
    (
        &["--brochure", "80@6000 150@4000"],
        "the peak power lies at a higher engine speed than the peak torque; torque comes first",
    ),
    (
        &["--brochure", "150@4000 109@6000"],
        "the peak power takes more torque",
    ),
    (
        &["--brochure", "150@4000 60@6000"],
        "the peak torque gives more power",
    ),
    (&["--brochure", "0@4000 80@6000"], "above 0 are needed"),
    (
        &["--brochure", "90000@4000 80@6000"],
        "--brochure: a torque must be between 0 and 20000 N·m, not \"90000\"",
    ),
    (
        &["--brochure", "150@40000 80@60000"],
        "between 1 and 30000 rpm, not \"40000\"",
    ),
    (
        &["--measured-at", "hub"],
        "--measured-at is crank or wheels, not \"hub\"",
    ),
    (&["-o", "/"], "folder"),
    (&["-o", "/no/such/folder/a.txt"], "no such folder"),
    (&["-o", ""], "no file name"),
];

/// Complete sets of which one part is wrong.
const WRONG_SETS: &[(&str, &str, &str, &str, &str)] = &[
    ("", "4", "185/60R14", "6000", "1 to 12 forward gears"),
    (
        "3 2 1 3 2 1 3 2 1 3 2 1 3",
        "4",
        "185/60R14",
        "6000",
        "1 to 12 forward gears",
    ),
    ("3.5,2.1,1", "4", "185/60R14", "6000", "not by commas"),
    ("3.5, 2.1", "4", "185/60R14", "6000", "not by commas"),
    ("abc", "4", "185/60R14", "6000", "\"abc\" is not a ratio"),
    ("3 *", "4", "185/60R14", "6000", "--gears"),
    ("-3", "4", "185/60R14", "6000", "\"-3\" is not a ratio"),
    ("500", "4", "185/60R14", "6000", "between 0.001 and 400"),
    ("34:0", "4", "185/60R14", "6000", "teeth"),
    ("3 2", "4 3", "185/60R14", "6000", "--final"),
    ("3 2", "0", "185/60R14", "6000", "--final"),
    (
        "3 2",
        "chain 46",
        "185/60R14",
        "6000",
        "--final: \"chain 46\" is not a chain; type front and rear",
    ),
    (
        "3 2",
        "chain 0/46",
        "185/60R14",
        "6000",
        "--final: teeth are whole numbers from 1 to 999, not 0",
    ),
    ("3 2", "4", "155R13", "6000", "--tyre"),
    ("3 2", "4", "", "6000", "--tyre"),
    ("3 2", "4", "185/60R14", "-1", "--redline"),
    ("3 2", "4", "185/60R14", "", "--redline"),
    ("3 2", "4", "185/60R14", "40000", "between 1 and 30000 rpm"),
];

#[test]
fn every_wrong_command_line_has_its_own_sentence() {
    for (arguments, told) in WRONG {
        let answer = answer(*arguments);
        let sentence = answer.sentence();
        assert!(sentence.contains(told), "{arguments:?}: {sentence}");
    }
    for (more, told) in WRONG_BESIDE_A_SET {
        let answer = answer_to_one_set("table", more);
        let sentence = answer.sentence();
        assert!(sentence.contains(told), "{more:?}: {sentence}");
    }
    for (gears, final_drive, tyre, redline, told) in WRONG_SETS {
        let set = [
            "table",
            "--gears",
            gears,
            "--final",
            final_drive,
            "--tyre",
            tyre,
        ];
        let answer = answer([&set[..], &["--redline", redline]].concat());
        let sentence = answer.sentence();
        assert!(
            sentence.contains(told),
            "{gears} {final_drive} {tyre} {redline}: {sentence}"
        );
    }
}

#[test]
fn the_program_itself_answers_as_the_library_does() {
    let wrong = WRONG.iter().map(|(arguments, _)| arguments.to_vec());
    let beside = WRONG_BESIDE_A_SET.iter();
    let beside = beside.map(|(more, _)| [&["table"], &ONE_SET[..], more].concat());
    for arguments in wrong.chain(beside) {
        let output = program_answer(&arguments);
        assert_eq!(output.status.code(), Some(2), "{arguments:?}");
        assert!(output.stdout.is_empty(), "{arguments:?}");
        let expected = answer(&arguments).stderr;
        assert_eq!(
            String::from_utf8(output.stderr).unwrap(),
            expected,
            "{arguments:?}"
        );
    }
}

#[test]
fn no_sentence_quotes_more_than_40_characters() {
    let long = "z".repeat(500);
    let flags = [
        "--gears",
        "--final",
        "--tyre",
        "--redline",
        "--shift",
        "--rpm",
        "--speed",
        "--units",
        "--as",
        "--show",
        "--circumference",
        "--idle",
        "--lowest-useful",
        "--reverse",
        "--name",
        "--torque",
        "--pasted-torque",
        "--brochure",
        "--measured-at",
    ];
    let mut command_lines: Vec<Vec<&str>> = flags
        .iter()
        .map(|flag| [&["table"], &ONE_SET[..], &[flag, &long]].concat())
        .collect();
    for place in (2..=ONE_SET.len()).step_by(2) {
        let mut arguments = [&["table"], &ONE_SET[..]].concat();
        arguments[place] = &long;
        command_lines.push(arguments);
    }
    let option = format!("--{long}");
    command_lines.extend([vec![&*long], vec!["table", &long], vec!["table", &option]]);
    command_lines.push(vec!["table", "a", &long]);
    for arguments in command_lines {
        let answer = answer(&arguments);
        let sentence = answer.sentence();
        assert!(!sentence.contains(&"z".repeat(41)), "{sentence}");
    }
}

#[test]
fn numbers_of_hundreds_of_digits_are_quoted_in_part() {
    let long = "9".repeat(250);
    for flag in ["--rpm", "--speed", "--idle", "--reverse", "--circumference"] {
        let answer = answer_to_one_set("table", &[flag, &long]);
        assert!(!answer.sentence().contains(&"9".repeat(41)));
    }
}

#[test]
fn a_number_too_large_or_too_small_to_be_held_is_quoted_as_it_was_typed() {
    let large = format!("1{}", "0".repeat(400));
    let small = format!("0.{}5", "0".repeat(323));
    let flags = [
        "--rpm",
        "--speed",
        "--idle",
        "--reverse",
        "--final",
        "--gears",
        "--circumference",
    ];
    for flag in flags {
        for number in ["1e400", &large, &small] {
            let mut arguments = [&["table"], &ONE_SET[..]].concat();
            match arguments.iter().position(|word| *word == flag) {
                Some(at) => arguments[at + 1] = number,
                None if flag == "--circumference" => {
                    arguments[5..=6].copy_from_slice(&[flag, number]);
                }
                None => arguments.extend([flag, number]),
            }
            let answer = answer(&arguments);
            let sentence = answer.sentence();
            let begin: String = number.chars().take(39).collect();
            assert!(sentence.contains(&begin), "{flag}: {sentence}");
            assert!(!sentence.contains("inf"), "{flag}: {sentence}");
        }
    }
}

#[test]
fn a_command_behind_the_file_is_told_its_place() {
    let file = three_sets();
    let answer = answer([file.as_os_str(), "table".as_ref()]);
    assert!(answer.sentence().contains("layshaft table FILE"));
}

#[test]
fn a_mistyped_command_before_a_file_is_told_as_such() {
    let answer = answer(about("tabel", &three_sets(), &["--as", "json"]));
    assert!(answer.sentence().contains("layshaft table"));
}

#[test]
fn flags_of_the_table_alone_are_refused_by_check() {
    for more in [
        ["-o", "x"],
        ["--show", "speed"],
        ["--decimal", "comma"],
        ["--pasted-torque", "x"],
    ] {
        let answer = answer_to_one_set("check", &more);
        assert!(
            answer
                .sentence()
                .contains("does not go with layshaft check")
        );
    }
    let answer = answer_to_one_set("check", &["--as", "csv"]);
    assert!(answer.sentence().contains("--as is text or json"));
}

#[cfg(unix)]
#[test]
fn arguments_that_are_no_unicode_are_answered_too() {
    use std::os::unix::ffi::OsStringExt;
    let broken = || OsString::from_vec(vec![b'a', 0xff, b'\n']);
    let value = answer([OsString::from("table"), "--gears".into(), broken()]);
    assert!(value.sentence().contains("not valid Unicode"));
    answer([broken()]).sentence();
    answer([OsString::from("table"), broken()]).sentence();
    let flag = OsString::from_vec(vec![b'-', b'-', 0xff]);
    answer([OsString::from("table"), flag]).sentence();
}
