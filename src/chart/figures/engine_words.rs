//! Which engine is it? A few words, for readers who see what it makes of a set.

use crate::motion::{Displacement, Fuel, MeasuredAt, TorqueCurve};
use crate::project::EngineData;
use crate::units::{plain_number, rpm_text};

/// `2 L diesel, 305 N·m at 1750, 96 kW at 3720 rpm`; none without a torque curve.
pub(super) fn of(engine: &EngineData) -> Option<String> {
    let [torque, power] = engine.curve.as_ref().and_then(TorqueCurve::peaks)?;
    let size = engine.displacement.map(Displacement::l).map(plain_number);
    let size = size.map(|litres| match engine.fuel {
        Fuel::Petrol => format!("{litres} L petrol, "),
        Fuel::Diesel => format!("{litres} L diesel, "),
    });
    let place = match engine.measured_at {
        MeasuredAt::Crank => "",
        MeasuredAt::Wheels => ", measured at the wheels",
    };
    Some(format!(
        "{}{:.0} N·m at {}, {:.0} kW at {} rpm{place}",
        size.unwrap_or_default(),
        torque.torque_nm,
        rpm_text(torque.engine_rpm),
        power.power_w / 1000.0,
        rpm_text(power.engine_rpm),
    ))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::examples::EXAMPLES;

    #[test]
    fn an_engine_is_told_by_its_size_and_its_peaks() {
        let engine = EXAMPLES[0].project().unwrap().technical.engine;
        let told = "2 L diesel, 305 N·m at 1750, 96 kW at 3720 rpm";
        assert_eq!(of(&engine).as_deref(), Some(told));
        let unknown = EngineData {
            displacement: None,
            measured_at: MeasuredAt::Wheels,
            ..engine
        };
        let told = "305 N·m at 1750, 96 kW at 3720 rpm, measured at the wheels";
        assert_eq!(of(&unknown).as_deref(), Some(told));
        assert_eq!(of(&EngineData::default()), None);
    }
}
