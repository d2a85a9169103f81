//! Is text that was copied from elsewhere read as it was meant?

mod gears;
mod tables;
mod torque;

/// A text, its reading, and a part of each remark in any order.
type Case = (&'static str, &'static str, &'static [&'static str]);

/// Reads every text; what reads otherwise than it should is told all at once.
#[track_caller]
fn check_readings(cases: &[Case], read: impl Fn(&str) -> (String, Vec<String>)) {
    let mut failures = Vec::new();
    for (text, expected, remarks) in cases {
        let (reading, said) = read(text);
        let is_said = |part: &&&str| said.iter().any(|remark| remark.contains(**part));
        let all_said = remarks.iter().filter(is_said).count() == remarks.len();
        if reading != *expected || !all_said || said.len() != remarks.len() {
            failures.push(format!(
                "{text:?}\n  read     {reading}\n  expected {expected}\n  remarks  {said:#?}"
            ));
        }
    }
    assert!(failures.is_empty(), "\n{}", failures.join("\n\n"));
}
