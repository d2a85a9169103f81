//! The units of what an engine puts out: torque and power.
//!
//! Inside the program torques are N·m and powers kW. Every factor is exact, made of the definitions of
//! pound, foot and standard gravity.

/// Newtons in a pound-force, exactly: 0.45359237 kg under standard gravity (definition).
pub const N_PER_POUND_FORCE: f64 = 4.448_221_615_260_5;

/// Newtons in a kilogram-force, exactly: standard gravity (General Conference on Weights and Measures,
/// 1901).
pub const N_PER_KILOGRAM_FORCE: f64 = 9.806_65;

/// Metres in a foot, exactly (international foot, 1959; definition).
const M_PER_FOOT: f64 = 0.304_8;

/// N·m in a pound-foot: 1.3558179483314004.
pub(super) const NM_PER_POUND_FOOT: f64 = N_PER_POUND_FORCE * M_PER_FOOT;

/// kW in a horsepower, which is 550 foot-pounds a second: 0.7456998715822702.
const KW_PER_HORSEPOWER: f64 = 550.0 * NM_PER_POUND_FOOT / 1000.0;

/// kW in a metric horsepower, exactly: 75 kilogram-force metres a second (definition).
const KW_PER_METRIC_HORSEPOWER: f64 = 0.735_498_75;

/// The unit in which a torque is shown and typed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum TorqueUnit {
    /// Newton metres.
    #[default]
    NewtonMetre,
    /// Pound-feet, which are foot-pounds too.
    PoundFoot,
    /// Kilogram-force metres.
    KilogramForceMetre,
}

impl TorqueUnit {
    /// All units, the usual first.
    pub const ALL: [Self; 3] = [Self::NewtonMetre, Self::PoundFoot, Self::KilogramForceMetre];

    /// The unit's sign, as it stands behind a number.
    pub fn sign(self) -> &'static str {
        match self {
            Self::NewtonMetre => "N·m",
            Self::PoundFoot => "lb·ft",
            Self::KilogramForceMetre => "kgf·m",
        }
    }

    /// A torque in N·m, from this unit.
    pub fn to_nm(self, torque: f64) -> f64 {
        torque * self.size_nm()
    }

    /// A torque in this unit, from N·m.
    pub fn from_nm(self, torque_nm: f64) -> f64 {
        torque_nm / self.size_nm()
    }

    fn size_nm(self) -> f64 {
        match self {
            Self::NewtonMetre => 1.0,
            Self::PoundFoot => NM_PER_POUND_FOOT,
            Self::KilogramForceMetre => N_PER_KILOGRAM_FORCE,
        }
    }
}

/// The unit in which a power is shown and typed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum PowerUnit {
    /// Kilowatts.
    #[default]
    Kilowatt,
    /// Horsepower of 550 foot-pounds a second; brake horsepower is the same.
    Horsepower,
    /// Metric horsepower, PS: 75 kilogram-force metres a second.
    MetricHorsepower,
}

impl PowerUnit {
    /// All units, the usual first.
    pub const ALL: [Self; 3] = [Self::Kilowatt, Self::Horsepower, Self::MetricHorsepower];

    /// The unit's sign, as it stands behind a number.
    pub fn sign(self) -> &'static str {
        match self {
            Self::Kilowatt => "kW",
            Self::Horsepower => "hp",
            Self::MetricHorsepower => "PS",
        }
    }

    /// A power in kW, from this unit.
    pub fn to_kw(self, power: f64) -> f64 {
        power * self.size_kw()
    }

    /// A power in this unit, from kW.
    pub fn from_kw(self, power_kw: f64) -> f64 {
        power_kw / self.size_kw()
    }

    fn size_kw(self) -> f64 {
        match self {
            Self::Kilowatt => 1.0,
            Self::Horsepower => KW_PER_HORSEPOWER,
            Self::MetricHorsepower => KW_PER_METRIC_HORSEPOWER,
        }
    }
}

/// The unit of what an engine puts out at an engine speed, be it torque or power.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OutputUnit {
    /// A torque.
    Torque(TorqueUnit),
    /// A power.
    Power(PowerUnit),
}

impl OutputUnit {
    /// All units, torques first.
    pub const ALL: [Self; 6] = [
        Self::Torque(TorqueUnit::NewtonMetre),
        Self::Torque(TorqueUnit::PoundFoot),
        Self::Torque(TorqueUnit::KilogramForceMetre),
        Self::Power(PowerUnit::Kilowatt),
        Self::Power(PowerUnit::Horsepower),
        Self::Power(PowerUnit::MetricHorsepower),
    ];

    /// The unit's sign, as it stands behind a number.
    pub fn sign(self) -> &'static str {
        match self {
            Self::Torque(unit) => unit.sign(),
            Self::Power(unit) => unit.sign(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_unit_is_there_once_and_has_a_sign_of_its_own() {
        let torques = TorqueUnit::ALL.map(OutputUnit::Torque);
        let powers = PowerUnit::ALL.map(OutputUnit::Power);
        assert_eq!(OutputUnit::ALL.to_vec(), [torques, powers].concat());
        for (at, unit) in OutputUnit::ALL.iter().enumerate() {
            let same = OutputUnit::ALL.iter().position(|u| u.sign() == unit.sign());
            assert_eq!(same, Some(at), "{unit:?}");
        }
    }

    #[test]
    fn what_was_typed_comes_back() {
        for number in [0.0, 0.1, 131.5, 20_000.0] {
            for unit in TorqueUnit::ALL {
                let back = unit.from_nm(unit.to_nm(number));
                assert!((back - number).abs() <= 1e-15 * number, "{unit:?} {back}");
            }
            for unit in PowerUnit::ALL {
                let back = unit.from_kw(unit.to_kw(number));
                assert!((back - number).abs() <= 1e-15 * number, "{unit:?} {back}");
            }
        }
    }
}
