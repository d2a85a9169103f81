//! What is said of a speedometer: its signal, how it reads in the baseline, how far its odometer is off.

use crate::checks::{
    BaselineReading, CorrectionAim, DrivenGearFound, InstrumentDrive, ShownSpeed, SignalSource,
    SpeedSignal,
};
use crate::project::SpeedometerData;
use crate::units::{decimals_text, plain_number, round_to};

/// `Signal taken at the gearbox output, 8 teeth driving 21`.
pub(super) fn signal_words(signal: &SpeedSignal) -> String {
    if signal.source == SignalSource::None {
        return "This box gives the speedometer no signal".to_owned();
    }
    let taken = format!("Signal taken {}", signal.source.words());
    match signal.drive {
        None => taken,
        Some(InstrumentDrive::Gears(pair)) => {
            format!(
                "{taken}, {} teeth driving {}",
                pair.driving(),
                pair.driven()
            )
        }
        Some(InstrumentDrive::Pulses(pulses)) => {
            format!("{taken}, {} pulses a turn", plain_number(pulses.pulses()))
        }
    }
}

/// `Speedometer: in the baseline the odometer counts as true; the needle shows 3 % more than that`.
pub(super) fn instrument_words(data: &SpeedometerData) -> String {
    let BaselineReading {
        signal_ratio,
        needle_ratio,
        meter,
    } = data.reading;
    let odometer = match (signal_ratio, meter) {
        (Some(ratio), _) => format!(
            "in the baseline the odometer counts {}",
            over_true(ratio.ratio())
        ),
        (None, Some(meter)) => {
            let per_km = plain_number(round_to(meter.per_km(), 0.01));
            format!("the odometer is true at {per_km} turns or pulses per km")
        }
        (None, None) => "the odometer of the baseline counts as true".to_owned(),
    };
    let needle = needle_ratio.map(|ratio| {
        let percent = 100.0 * (ratio.ratio() - 1.0);
        let more = if percent < 0.0 { "less" } else { "more" };
        format!(
            "; the needle shows {} % {more} than that",
            plain_number(round_to(percent.abs(), 0.1))
        )
    });
    format!("Speedometer: {odometer}{}", needle.unwrap_or_default())
}

/// `Odometer counts 2.4 % too much`.
pub(super) fn odometer_words(shown: &ShownSpeed) -> String {
    format!("Odometer counts {}", over_true(shown.odometer_ratio()))
}

/// How much a speedometer may differ from that of the baseline before it is told what puts it right.
const SAME: f64 = 0.0005;

/// What puts a speedometer right that does not read as in the baseline: the driven gear, where there is one,
/// and the factor of a corrector.
pub(super) fn correction_words(
    signal: &SpeedSignal,
    shown: &ShownSpeed,
    baseline: &ShownSpeed,
) -> Vec<String> {
    let factor = CorrectionAim::AsBaseline.pulse_factor(shown, baseline);
    if (factor - 1.0).abs() < SAME {
        return Vec::new();
    }
    let gear = match signal.drive {
        Some(InstrumentDrive::Gears(pair)) => DrivenGearFound::in_place_of(pair, shown)
            .filter(|found| found.pair != pair)
            .map(|found| {
                let teeth = found.pair.driven();
                let over = over_true(found.shown.shown_ratio());
                format!(
                    "A driven gear of {teeth} teeth reads nearest without reading low: it shows {over}"
                )
            }),
        Some(InstrumentDrive::Pulses(_)) | None => None,
    };
    let factor = plain_number(round_to(factor, 0.0001));
    let corrector =
        format!("A corrector that makes {factor} turns or pulses of one reads as in the baseline");
    gear.into_iter().chain([corrector]).collect()
}

fn over_true(ratio: f64) -> String {
    let percent = 100.0 * (ratio - 1.0);
    let size = decimals_text(percent.abs(), 1);
    if size == "0.0" {
        "true".to_owned()
    } else if percent > 0.0 {
        format!("{size} % too much")
    } else {
        format!("{size} % too little")
    }
}
