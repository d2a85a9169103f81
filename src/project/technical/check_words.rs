//! What stands in the data of the road checks, in a few words and a value each: for histories and comparisons.

use super::words::{Words, known};
use super::{LimitsData, SecondAxleData, SetChecks, SignalData, SpeedometerData};
use crate::checks::{
    Axle, Coupling, InstrumentDrive, MeterConstant, SpeedometerRule, TakenOff, TyresOnAxle,
};

/// The speedometer in words.
pub(in super::super) fn speedometer_words(data: &SpeedometerData) -> Words {
    let reading = data.reading;
    let meter = reading.meter.map(MeterConstant::per_km);
    let mut words = signal_words(data.signal);
    words.extend(known(vec![
        (
            "odometer over true",
            reading.signal_ratio.map(|ratio| ratio.ratio().to_string()),
        ),
        (
            "needle over odometer",
            reading.needle_ratio.map(|ratio| ratio.ratio().to_string()),
        ),
        (
            "meter constant",
            meter.map(|per_km| format!("{per_km} per km")),
        ),
        ("speedometer rule", rule_words(data.rule)),
    ]));
    words
}

/// A rule in words; none of that which is meant where nothing is said.
fn rule_words(rule: SpeedometerRule) -> Option<String> {
    match rule {
        SpeedometerRule::R39 => None,
        SpeedometerRule::Cfr393 => Some("49 CFR 393.82".to_owned()),
        SpeedometerRule::Typed { percent, offset } => {
            Some(format!("{} % + {} km/h", percent.percent(), offset.kmh()))
        }
    }
}

fn signal_words(signal: SignalData) -> Words {
    let drive = signal.drive.map(|drive| match drive {
        InstrumentDrive::Gears(pair) => {
            format!("{} drive {} driven", pair.driving(), pair.driven())
        }
        InstrumentDrive::Pulses(pulses) => format!("{} pulses per turn", pulses.pulses()),
    });
    known(vec![
        (
            "speed signal taken",
            signal.source.map(|source| source.words().to_owned()),
        ),
        ("speedometer drive", drive),
    ])
}

/// Limits in words.
pub(in super::super) fn limits_words(limits: &LimitsData) -> Words {
    let kg = |mass: crate::motion::Mass| format!("{} kg", mass.kg());
    let twin = (limits.rear_tyres == TyresOnAxle::Four).then(|| "four".to_owned());
    known(vec![
        (
            "top speed of the papers",
            limits
                .top_speed
                .map(|speed| format!("{} km/h", speed.kmh())),
        ),
        ("front axle load", limits.front_axle.map(kg)),
        ("rear axle load", limits.rear_axle.map(kg)),
        ("rear tyres", twin),
        (
            "factor of rated torques",
            limits
                .torque_factor
                .map(|factor| factor.factor().to_string()),
        ),
        (
            "limit of an axle shaft",
            limits
                .axle_shaft
                .map(|torque| format!("{} N·m", torque.nm())),
        ),
        (
            "axle shafts that share",
            limits.shafts.map(|shafts| shafts.count().to_string()),
        ),
        (
            "limit of the propeller shaft",
            limits
                .propeller_shaft
                .map(|speed| format!("{} rpm", speed.rpm())),
        ),
    ])
}

/// A second driven axle in words.
pub(in super::super) fn second_axle_words(second: &SecondAxleData) -> Words {
    let behind = (second.taken_off == TakenOff::BehindFinalDrive)
        .then(|| "behind the final drive".to_owned());
    known(vec![
        (
            "final drive of the second axle",
            second.final_drive.as_ref().map(ToString::to_string),
        ),
        (
            "second axle",
            second.axle.map(Axle::word).map(str::to_owned),
        ),
        (
            "angle drive",
            second.angle_drive.map(|angle| angle.ratio().to_string()),
        ),
        ("drive of the second axle taken off", behind),
        (
            "tyre of the second axle",
            second.tyre.map(|tyre| tyre.to_string()),
        ),
        (
            "coupling of the axles",
            second.coupling.map(Coupling::word).map(str::to_owned),
        ),
    ])
}

/// What is a set's own of it, in words.
pub(in super::super) fn set_checks_words(checks: &SetChecks) -> Words {
    let mut words = signal_words(checks.signal);
    words.extend(known(vec![
        (
            "rated torque",
            checks
                .rated_torque
                .map(|torque| format!("{} N·m", torque.nm())),
        ),
        (
            "own final drive of the second axle",
            checks.second_final_drive.as_ref().map(ToString::to_string),
        ),
    ]));
    words
}
