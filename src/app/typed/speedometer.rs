//! Typed speedometers: what lies between source and instrument, the meter constant, how far something is
//! off, a rule.

use super::speeds::without;
use super::{Quantity, Reading, told};
use crate::checks::{
    InstrumentDrive, MeterConstant, PulsesPerTurn, ReadingRatio, RuleOffset, RulePercent,
    SpeedometerRule,
};
use crate::gearing::{OutOfRange, ToothPair, parse_decimal};
use crate::units::{SpeedUnit, plain_number, round_to};

/// How a drive is typed.
const DRIVE: &str = "type the teeth of drive and driven gear, as 8 driving 21, or the pulses of a turn, as 4 pulses";

/// A drive as it is typed: `8 driving 21`, `4 pulses`.
pub(in crate::app) fn drive_spelled(drive: InstrumentDrive) -> String {
    match drive {
        InstrumentDrive::Gears(pair) => format!("{} driving {}", pair.driving(), pair.driven()),
        InstrumentDrive::Pulses(pulses) => format!("{} pulses", plain_number(pulses.pulses())),
    }
}

/// Speedometer gears, the drive gear first, or pulses for one turn; none where nothing is typed.
///
/// # Errors
/// When it is neither, or a count cannot be.
pub(in crate::app) fn instrument_drive(text: &str) -> Reading<Option<InstrumentDrive>> {
    let text = text.trim();
    if text.is_empty() {
        return Ok(None);
    }
    if let Some(pulses) = pulses_of(text) {
        let pulses = parse_decimal(pulses.trim()).ok().ok_or(DRIVE)?;
        let pulses = PulsesPerTurn::new(pulses).map_err(told)?;
        return Ok(Some(InstrumentDrive::Pulses(pulses)));
    }
    let counts = text.split(|c: char| !c.is_ascii_digit());
    let counts: Vec<&str> = counts.filter(|count| !count.is_empty()).collect();
    let [drive, driven] = counts[..] else {
        return Err(DRIVE.to_owned());
    };
    // A point would part 8.5 into two counts.
    if text.contains(['.', ',', '-', '−']) {
        return Err(DRIVE.to_owned());
    }
    let teeth = |count: &str| count.parse::<u16>().ok().ok_or(DRIVE);
    let pair = ToothPair::new(teeth(driven)?, teeth(drive)?).map_err(told)?;
    Ok(Some(InstrumentDrive::Gears(pair)))
}

/// The figure before the word that says that pulses are meant.
fn pulses_of(text: &str) -> Option<&str> {
    let lower = text.to_lowercase();
    let words = [
        "pulses per turn",
        "pulses a turn",
        "pulses/turn",
        "pulses",
        "pulse",
    ];
    let word = words.into_iter().find(|word| lower.ends_with(word))?;
    // Lower case may have other lengths: the figure is cut by its own.
    let end = text.len().checked_sub(word.len())?;
    text.get(..end)
}

/// A meter constant as it is typed, per km.
pub(in crate::app) fn meter_spelled(meter: MeterConstant) -> String {
    plain_number(round_to(meter.per_km(), 0.01))
}

/// A meter constant, per km where nothing else is said; what is spelled as the present one is that.
///
/// # Errors
/// When it is no number, or none that can be.
pub(in crate::app) fn meter(
    present: Option<MeterConstant>,
    text: &str,
) -> Reading<Option<MeterConstant>> {
    let text = text.trim();
    let same = present.filter(|meter| meter_spelled(*meter) == text);
    if same.is_some() {
        return Ok(same);
    }
    let per_mile = ["per mile", "a mile", "/mile", "/mi", "per mi", "mile"];
    let figure = without(text, &per_mile);
    if figure.len() < text.len() {
        return PER_MILE.read_large(figure);
    }
    PER_KM.read_large(without(text, &["per km", "a km", "/km"]))
}

const PER_KM: Quantity<MeterConstant> = Quantity {
    new: MeterConstant::from_per_km,
    example: "625",
    unit: "",
};

const PER_MILE: Quantity<MeterConstant> = Quantity {
    new: MeterConstant::from_per_mile,
    example: "1000",
    unit: "",
};

/// How far something is off, in per cent, as it is typed.
pub(in crate::app) fn percent_off_spelled(ratio: ReadingRatio) -> String {
    plain_number(round_to(100.0 * (ratio.ratio() - 1.0), 1e-6))
}

/// What is read over what is true, typed as the per cent that it is off: above 0 where too much is read.
///
/// # Errors
/// When it is no number, or none that can be.
pub(in crate::app) fn percent_off(text: &str) -> Reading<Option<ReadingRatio>> {
    let figure = without(text.trim(), &["%"]);
    PERCENT_OFF.read(figure.strip_prefix('+').unwrap_or(figure))
}

const PERCENT_OFF: Quantity<ReadingRatio> = Quantity {
    // The range is told in what is typed.
    new: |percent| {
        ReadingRatio::new(1.0 + percent / 100.0).map_err(|_of_ratio| OutOfRange {
            what: "an error in per cent",
            bounds: "between -50 and 100",
            value: percent,
        })
    },
    example: "2.5",
    unit: "",
};

/// How a rule is typed.
const RULE: &str = "type what may be shown above the true speed, as 10 % + 4";

/// A typed rule: `10 % + 4`, the speed in that unit; empty for another one.
pub(in crate::app) fn rule_spelled(rule: SpeedometerRule, unit: SpeedUnit) -> String {
    match rule {
        SpeedometerRule::R39 | SpeedometerRule::Cfr393 => String::new(),
        SpeedometerRule::Typed { percent, offset } => {
            let speed = plain_number(round_to(unit.from_kmh(offset.kmh()), 1e-6));
            format!("{} % + {speed}", plain_number(percent.percent()))
        }
    }
}

/// The rule that allows so many per cent and so much more above the true speed; none where nothing is typed.
///
/// # Errors
/// When it is not two numbers, or one cannot be.
pub(in crate::app) fn rule(text: &str, unit: SpeedUnit) -> Reading<Option<SpeedometerRule>> {
    let text = text.trim();
    if text.is_empty() {
        return Ok(None);
    }
    let parts = text.split(|c: char| c.is_whitespace() || matches!(c, '%' | '+'));
    let signs = SpeedUnit::ALL.map(SpeedUnit::sign);
    let parts: Vec<&str> = parts
        .filter(|part| !part.is_empty() && !signs.contains(part))
        .collect();
    let [percent, offset] = parts[..] else {
        return Err(RULE.to_owned());
    };
    let [percent, offset] = [percent, offset].map(|part| parse_decimal(part).ok().ok_or(RULE));
    let offset = RuleOffset::from_kmh(unit.to_kmh(offset?)).map_err(told)?;
    let percent = RulePercent::from_percent(percent?).map_err(told)?;
    Ok(Some(SpeedometerRule::Typed { percent, offset }))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn spelled(text: &str) -> String {
        let drive = instrument_drive(text).unwrap_or_else(|why| panic!("{text}: {why}"));
        drive.map(drive_spelled).unwrap_or_default()
    }

    #[test]
    fn a_drive_is_read_as_people_write_it_and_as_it_is_spelled() {
        for text in [
            "8 driving 21",
            "8:21",
            " 8/21 ",
            "8x21",
            "8 teeth driving 21 teeth",
            "8 21",
        ] {
            assert_eq!(spelled(text), "8 driving 21", "{text}");
        }
        for text in [
            "4 pulses",
            "4 Pulses per turn",
            "4pulses",
            "4.0 pulses a turn",
        ] {
            assert_eq!(spelled(text), "4 pulses", "{text}");
        }
        assert_eq!(spelled("  "), "");
    }

    #[test]
    fn what_is_no_drive_is_told_how_to_be_one() {
        for text in ["8", "8.5 21", "gears", "1 2 3", "x pulses", "-8 21"] {
            let why = instrument_drive(text).unwrap_err();
            assert!(why.contains("8 driving 21"), "{text}: {why}");
        }
        assert!(
            instrument_drive("0 pulses")
                .unwrap_err()
                .contains("between")
        );
        assert!(instrument_drive("8 1000").unwrap_err().contains("999"));
    }

    #[test]
    fn a_meter_constant_of_a_mile_stands_per_km_and_stays_what_it_is() {
        let typed = meter(None, "1,000 a mile").unwrap();
        assert_eq!(typed.map(meter_spelled).as_deref(), Some("621.37"));
        assert_eq!(meter(typed, "621.37").unwrap(), typed);
        assert_ne!(meter(None, "621.37").unwrap(), typed);
        assert!(meter(None, "5").unwrap_err().contains("between"));
    }

    #[test]
    fn per_cents_are_read_with_their_sign() {
        for text in ["2.5", "+2.5 %", "2,5%"] {
            let ratio = percent_off(text).unwrap().unwrap();
            assert_eq!(percent_off_spelled(ratio), "2.5", "{text}");
        }
        assert_eq!(
            percent_off_spelled(percent_off("-1").unwrap().unwrap()),
            "-1"
        );
        let why = percent_off("900").unwrap_err();
        assert_eq!(
            why,
            "an error in per cent must be between -50 and 100, not 900"
        );
    }

    #[test]
    fn a_rule_is_per_cent_and_a_speed_in_the_unit_of_the_project() {
        for text in ["10 % + 4", "10 4", "10%+4 km/h"] {
            let read = rule(text, SpeedUnit::Kmh).unwrap().unwrap();
            assert_eq!(rule_spelled(read, SpeedUnit::Kmh), "10 % + 4", "{text}");
        }
        let read = rule("10 % + 2.5", SpeedUnit::Mph).unwrap().unwrap();
        assert_eq!(rule_spelled(read, SpeedUnit::Mph), "10 % + 2.5");
        assert!(
            rule("10", SpeedUnit::Kmh)
                .unwrap_err()
                .contains("as 10 % + 4")
        );
    }
}
