//! The text of `--help`.

use super::flag_row::{FlagRow, Group};
use super::flags::FLAGS;
use super::subcommand::Subcommand;
use crate::letters::capitalised;

/// The name and the version of the program, on one line.
pub(super) fn version() -> String {
    format!("layshaft {}\n", env!("CARGO_PKG_VERSION"))
}

/// The help about a command, or about all.
pub(super) fn text(about: Option<Subcommand>) -> String {
    match about {
        None => overview(),
        Some(command) => about_command(command),
    }
}

fn overview() -> String {
    let mut text = "Layshaft shows what a change of gearing will be like to drive.\n\n\
        layshaft [FILE]           open the window, on a project, a picture that carries one, or the example\n"
        .to_owned();
    for command in Subcommand::ALL {
        let usage = match command {
            Subcommand::Table
            | Subcommand::Chart
            | Subcommand::Check
            | Subcommand::Count
            | Subcommand::Jobs => " FILE",
            Subcommand::Pairs
            | Subcommand::Shim
            | Subcommand::Preload
            | Subcommand::Fit
            | Subcommand::Journal => "",
            Subcommand::Find => " WHAT FILE",
        };
        let usage = format!("layshaft {}{usage}", command.name());
        push_line(&mut text, &usage, command.summary());
    }
    text += "\n\
        Those that take a file, but for jobs, take a gear set without one as well:\n\
        layshaft table --gears \"3.54 1.91 1.31 1.03 0.83\" --final 4.06 \\\n\
        \x20              --tyre 185/60R14 --redline 6500 --shift 6000 --speed 100\n\n\
        layshaft COMMAND --help   all options of a command\n\
        layshaft --version        the version\n\n";
    text + EXIT_CODES
}

const EXIT_CODES: &str = "\
Exit codes: 0 printed, 1 check lists findings, 2 nothing printed but one sentence that says why.\n";

fn about_command(command: Subcommand) -> String {
    let name = command.name();
    let mut text = String::new();
    for usage in command.usages() {
        text.extend(["layshaft ", name, " ", usage, " [options]\n"]);
    }
    text.extend(["\n", &capitalised(command.summary()), ".\n"]);
    let groups = [
        (Group::Sets, "A gear set without a file"),
        (
            Group::Technical,
            "Engine, vehicle and road, beside a gear set without a file",
        ),
        (
            Group::Pairs,
            match command {
                Subcommand::Preload => "Through gears",
                _ => "Tooth pairs",
            },
        ),
        (Group::Wish, "What is wished"),
        (Group::Counted, "What was counted"),
        (
            Group::Bench,
            match command {
                Subcommand::Fit => "Seat and part",
                Subcommand::Journal => "The shaft",
                _ => "What was measured",
            },
        ),
        (
            Group::Speeds,
            match command {
                Subcommand::Find | Subcommand::Count => "Speeds",
                _ => "Speeds; with a file they replace those it marks",
            },
        ),
        (Group::Output, "Output"),
    ];
    for (group, heading) in groups {
        let mut rows = FLAGS
            .iter()
            .filter(|row| row.group == group && row.commands.contains(&command))
            .peekable();
        if rows.peek().is_some() {
            text.extend(["\n", heading, ":\n"]);
        }
        for row in rows {
            push_line(&mut text, &format!("  {}", spelled(row)), row.meaning);
        }
    }
    text += match command {
        Subcommand::Table => TABLE_NOTES,
        Subcommand::Chart => CHART_NOTES,
        Subcommand::Check => CHECK_NOTES,
        Subcommand::Pairs => PAIRS_NOTES,
        Subcommand::Find => FIND_NOTES,
        Subcommand::Count => COUNT_NOTES,
        Subcommand::Jobs => JOBS_NOTES,
        Subcommand::Shim => SHIM_NOTES,
        Subcommand::Preload => PRELOAD_NOTES,
        Subcommand::Fit => FIT_NOTES,
        Subcommand::Journal => JOURNAL_NOTES,
    };
    text + EXIT_CODES
}

const TABLE_NOTES: &str = "
Formats: text (without --as), markdown, bbcode, csv, json. JSON is metric and in full precision; in
CSV a name that a spreadsheet would take for a formula gets an apostrophe before it.
Ratios are numbers (3.78), teeth driven:driving (34:9) or products (44/29 * 49/12); a chain is
\"chain 16/46\", front before rear, or \"rear 46 front 16\". Lists of speeds are parted by commas or
blanks. Findings follow on standard error.
";

const CHART_NOTES: &str = "
With a file, what is not given is as the project's write-up has it. The same project and options
give the same bytes; no display is needed. Ratios are numbers (3.78), teeth driven:driving (34:9) or
products (44/29 * 49/12); a chain is \"chain 16/46\", front before rear, or \"rear 46 front 16\".
";

const CHECK_NOTES: &str = "
Formats: text (without --as), json.
Ratios are numbers (3.78), teeth driven:driving (34:9) or products (44/29 * 49/12); a chain is
\"chain 16/46\", front before rear, or \"rear 46 front 16\". Speeds change no finding.
";

const PAIRS_NOTES: &str = "
Formats: text (without --as), csv, json. The nearest pair comes first, of equally near ones that of
fewer teeth. With a centre distance every pair has the sum of profile shifts x1 + x2 that it needs
there: −0.5 to +1.0 is usual, up to +1.3 possible, nothing else can be cut. All pairs between two
shafts share one centre distance, both gears of a pair change together, and a gear maker decides.
";

const FIND_NOTES: &str = "
Formats: text (without --as), json. WHAT is final, tyre or ratio: the final drive that the gear
drives, the rolling circumference in mm, or the ratio of the gear itself. All the rest of the set
stays as it is, its stages in the positions that they stand in.
";

const COUNT_NOTES: &str = "
Formats: text (without --as), json. Count --input and --wheel on the lift, or read --rpm at --at, a
road speed that a satellite receiver measures, on the baseline's tyre. What a reading may be off
stands behind it: --input \"41.1 0.1\". Gears of all sets are compared, their stages as they stand.
Lift and chock as the maker says; keep clear of what turns.
";

const JOBS_NOTES: &str = "
Formats: text (without --as), json. Each job with its state, what is typed of it, and what it comes
to, in the units of the project's bench. A sheet to be printed and written on is made by
layshaft chart FILE --job N -o OUT.png, of the plan --job plan. The maker's figures decide.
";

const SHIM_NOTES: &str = "
Formats: text (without --as), json. A setting is signed, clearance above 0 and preload below, lower
number first: a preload of 0.15 to 0.20 mm is -0.20,-0.15. Each size may be used as often as wanted.
Seat tapered rollers by turning them both ways before a reading counts. The maker's figures decide;
check on the assembled box, and do not let it run itself in.
";

const PRELOAD_NOTES: &str = "
Formats: text (without --as), json. The torque of the bearings is (reading − before) × ratio −
seals. Read it while the shaft turns, not at the start. Preload itself does not follow from it with
any useful certainty: the maker's torque band decides, and which bearings and seals it is meant for.
";

const FIT_NOTES: &str = "
Formats: text (without --as), json. Shafts: h6, j6, js6, k5, k6, m5, m6, n6, p6, over 10 to 120 mm;
bores: H7, J7, K7, M7, N7, P7, over 18 to 120 mm. Tapered roller bearings have a table of their own:
give their limits by --part. The maker's figures decide; warm parts without an open flame.
";

const JOURNAL_NOTES: &str = "
Formats: text (without --as), json. The stress factor is from memory; outside its table there is
none. Never turn down splines, needle tracks or synchroniser cones. The maker's figures decide, and
hardened shafts are ground by a competent workshop and tested for cracks.
";

fn spelled(row: &FlagRow) -> String {
    match row.short {
        Some(short) => format!("-{short}, --{} {}", row.long, row.value),
        None => format!("--{} {}", row.long, row.value)
            .trim_end()
            .to_owned(),
    }
}

/// A word and what it means, on one line where the word leaves room.
fn push_line(text: &mut String, word: &str, meaning: &str) {
    text.extend([&format!("{word:<26}"), meaning, "\n"]);
}
