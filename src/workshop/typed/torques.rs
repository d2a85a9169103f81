//! Turning torques and pulls as they are typed: `1.5`, `15 lbf·in`, `20 kgf cm`, `7 lb`.

use super::words::ending;
use super::{BenchValue, number, told};
use crate::units::{
    BenchUnits, N_PER_KILOGRAM_FORCE, N_PER_POUND_FORCE, NMM_PER_NM, TurningUnit, plain_number,
    round_to,
};
use crate::workshop::journal::ShaftTorque;
use crate::workshop::quantity::{PullForce, TurningTorque};

/// What stands behind a torque, and how mechanics spell it; of two that end alike the longer is first.
const UNITS: &[(&str, TurningUnit)] = {
    use TurningUnit::{
        KilogramForceCentimetre, NewtonCentimetre, NewtonMetre, PoundFoot, PoundInch,
    };
    &[
        ("N·cm", NewtonCentimetre),
        ("N cm", NewtonCentimetre),
        ("Ncm", NewtonCentimetre),
        ("N·m", NewtonMetre),
        ("N m", NewtonMetre),
        ("Nm", NewtonMetre),
        ("lbf·in", PoundInch),
        ("lbf in", PoundInch),
        ("lbf-in", PoundInch),
        ("lb·in", PoundInch),
        ("lb in", PoundInch),
        ("lb-in", PoundInch),
        ("in·lb", PoundInch),
        ("in lb", PoundInch),
        ("in-lb", PoundInch),
        ("in-lbs", PoundInch),
        ("in lbs", PoundInch),
        ("lbf·ft", PoundFoot),
        ("lbf ft", PoundFoot),
        ("lbf-ft", PoundFoot),
        ("lb·ft", PoundFoot),
        ("lb ft", PoundFoot),
        ("lb-ft", PoundFoot),
        ("ft·lb", PoundFoot),
        ("ft lb", PoundFoot),
        ("ft-lb", PoundFoot),
        ("ft-lbs", PoundFoot),
        ("ft lbs", PoundFoot),
        ("kgf·cm", KilogramForceCentimetre),
        ("kgf cm", KilogramForceCentimetre),
        ("kgfcm", KilogramForceCentimetre),
        ("kg·cm", KilogramForceCentimetre),
        ("kg cm", KilogramForceCentimetre),
        ("kgcm", KilogramForceCentimetre),
    ]
};

/// A figure with its unit, where one stands behind it.
pub(super) fn torque_unit_of(text: &str) -> Option<(String, TurningUnit)> {
    ending(text, UNITS)
}

/// A torque in N·mm.
///
/// # Errors
/// A sentence, where it is none.
pub(super) fn torque(text: &str, unit: TurningUnit) -> Result<f64, String> {
    let (figure, unit) = torque_unit_of(text).unwrap_or_else(|| (text.to_owned(), unit));
    let figure = number(&figure, "a torque", "1.5, 15 lbf·in or 20 N·cm")?;
    Ok(unit.to_nmm(figure))
}

/// What stands behind a pull, in N; a scale that shows kilograms or pounds shows their weight.
const PULLS: &[(&str, f64)] = &[
    ("kgf", N_PER_KILOGRAM_FORCE),
    ("kg", N_PER_KILOGRAM_FORCE),
    ("lbf", N_PER_POUND_FORCE),
    ("lbs", N_PER_POUND_FORCE),
    ("lb", N_PER_POUND_FORCE),
    ("N", 1.0),
];

/// What the scale of somebody shows who reckons torques in a unit: its sign, and its size in N.
fn scale_of(unit: TurningUnit) -> (&'static str, f64) {
    match unit {
        TurningUnit::NewtonMetre | TurningUnit::NewtonCentimetre => ("N", 1.0),
        TurningUnit::PoundInch | TurningUnit::PoundFoot => ("lbf", N_PER_POUND_FORCE),
        TurningUnit::KilogramForceCentimetre => ("kgf", N_PER_KILOGRAM_FORCE),
    }
}

impl BenchValue for TurningTorque {
    fn spelled(&self, units: BenchUnits) -> String {
        units.torque.figure(self.nmm())
    }

    fn read(text: &str, units: BenchUnits) -> Result<Self, String> {
        Self::from_nmm(torque(text, units.torque)?).map_err(told)
    }
}

impl BenchValue for ShaftTorque {
    fn spelled(&self, units: BenchUnits) -> String {
        units.torque.figure(self.nm() * NMM_PER_NM)
    }

    fn read(text: &str, units: BenchUnits) -> Result<Self, String> {
        Self::from_nm(torque(text, units.torque)? / NMM_PER_NM).map_err(told)
    }
}

impl BenchValue for PullForce {
    fn spelled(&self, units: BenchUnits) -> String {
        let (sign, size_n) = scale_of(units.torque);
        format!(
            "{} {sign}",
            plain_number(round_to(self.n() / size_n, 0.001))
        )
    }

    fn read(text: &str, units: BenchUnits) -> Result<Self, String> {
        let own = || (text.to_owned(), scale_of(units.torque).1);
        let (figure, size_n) = ending(text, PULLS).unwrap_or_else(own);
        let figure = number(&figure, "a pull", "30, 3 kg or 7 lb")?;
        Self::from_n(figure * size_n).map_err(told)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn torques_are_read_as_mechanics_write_them() {
        let nmm = |text| TurningTorque::read(text, BenchUnits::default()).map(TurningTorque::nmm);
        assert_eq!(nmm("1,5"), Ok(1500.0));
        assert_eq!(nmm("150 N·cm"), Ok(1500.0));
        assert_eq!(nmm("1.5 Nm"), Ok(1500.0));
        for text in ["15 lbf·in", "15 in-lb", "15 IN LBS", "15 lb-in"] {
            assert!((nmm(text).unwrap() - 1694.77).abs() < 0.01, "{text}");
        }
        assert!((nmm("10 kg·cm").unwrap() - 980.665).abs() < 1e-9);
        assert!(nmm("-1").is_err() && nmm("stiff").is_err());
    }

    #[test]
    fn a_scale_shows_newtons_kilograms_or_pounds() {
        let n = |text| PullForce::read(text, BenchUnits::default()).map(PullForce::n);
        assert_eq!(n("30"), Ok(30.0));
        assert_eq!(n("3 kg"), Ok(3.0 * 9.806_65));
        assert!((n("7 lb").unwrap() - 31.137_55).abs() < 1e-5);
        let pounds = BenchUnits {
            torque: TurningUnit::PoundInch,
            ..BenchUnits::default()
        };
        let pull = PullForce::read("7", pounds).unwrap();
        assert_eq!(pull.spelled(pounds), "7 lbf");
        assert_eq!(pull.spelled(BenchUnits::default()), "31.138 N");
    }
}
