//! What shim a place takes, in words.

use crate::units::{plain_number, round_to};
use crate::workshop::{Band, NoMeasurement, ShimJob, Stack};

/// A shim job with its answer.
#[derive(Debug, Clone, PartialEq)]
pub struct AnsweredShim {
    /// The job.
    pub job: ShimJob,
    /// The mean of what was measured and its spread, in mm.
    pub play_mm: f64,
    /// Their standard deviation, in mm.
    pub spread_mm: f64,
    /// What the place takes, or why it takes nothing.
    pub wanted: Result<Band, NoMeasurement>,
    /// Whether sizes that can be had are listed.
    pub is_stocked: bool,
    /// The stack of what can be had, and the thicknesses next to it; none where nothing is listed, or nothing was
    /// measured.
    pub choice: Option<(Stack, [Option<f64>; 2])>,
}

/// `clearance 0.05 mm`, `preload 0.15 mm`: a setting with the word of its sign.
pub fn setting_words(setting_mm: f64) -> String {
    let mm = plain_number(round_to(setting_mm.abs(), 0.001));
    let word = if setting_mm < 0.0 && mm != "0" {
        "preload"
    } else {
        "clearance"
    };
    format!("{word} {mm} mm")
}

fn length(mm: f64) -> String {
    plain_number(round_to(mm, 0.001))
}

/// What was measured, what is wanted, and what of the stock to take.
pub fn text(answered: &AnsweredShim) -> String {
    let job = &answered.job;
    let mut lines = vec![format!(
        "measured {} mm, spread {} mm; wanted {}",
        length(answered.play_mm),
        length(answered.spread_mm),
        job.setting.words()
    )];
    match answered.wanted {
        Err(no_measurement) => lines.push(no_measurement.to_string()),
        Ok(band) => {
            let (least, most) = (length(band.least_mm), length(band.most_mm));
            lines.push(format!("the place takes {least} to {most} mm"));
        }
    }
    if let Some((stack, neighbours)) = &answered.choice {
        lines.push(stack_line(job, stack));
        let next = neighbours.iter().flatten();
        lines.extend(next.map(|mm| {
            let setting = setting_words(job.setting_mm(*mm));
            format!("with {} mm it would be {setting}", length(*mm))
        }));
    }
    lines.push("The maker's figures decide; seat the bearings and measure again.".to_owned());
    lines.join("\n") + "\n"
}

fn stack_line(job: &ShimJob, stack: &Stack) -> String {
    let shims = stack.shims.iter().map(|shim| length(shim.mm()));
    let shims: Vec<String> = shims.collect();
    let shims = if shims.is_empty() {
        "no shim".to_owned()
    } else {
        shims.join(" + ")
    };
    let setting = setting_words(job.setting_mm(stack.thickness_mm));
    if stack.fits {
        format!("take {shims} mm: {setting}")
    } else {
        format!("none fits; the nearest is {shims} mm: {setting}, outside of what is wanted")
    }
}
