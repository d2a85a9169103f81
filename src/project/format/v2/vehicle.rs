//! What is known of a vehicle in format 2; absent where it is not known.

use super::super::shared::values::{PlainNumber, WrittenNumber, WrittenOutOfRange, file_number};
use super::engine::InertiaKgm2;
use crate::motion::{
    Adhesion, AirDensity, CentreOfGravityHeight, ConstantLoad, DragArea, DragCoefficient,
    DrivenAxle, FrontShare, FrontalArea, LinearLoad, Mass, MassFactor, QuadraticLoad,
    RollingCoefficient, VehicleKind, Wheelbase,
};
use crate::project::technical::{CoastDown, VehicleData};
use serde::{Deserialize, Serialize};

file_number!(MassKg, Mass, from_kg, kg);
file_number!(RollingNumber, RollingCoefficient, new, value);
file_number!(DragAreaM2, DragArea, from_m2, m2);
file_number!(DragNumber, DragCoefficient, new, value);
file_number!(FrontalAreaM2, FrontalArea, from_m2, m2);
file_number!(DensityKgM3, AirDensity, from_kg_m3, kg_m3);
file_number!(AdhesionNumber, Adhesion, new, value);
file_number!(WheelbaseM, Wheelbase, from_m, m);
file_number!(HeightM, CentreOfGravityHeight, from_m, m);
file_number!(FrontShareNumber, FrontShare, new, share);
file_number!(ConstantN, ConstantLoad, from_n, n);
file_number!(LinearNPerMS, LinearLoad, from_n_per_m_s, n_per_m_s);
file_number!(
    QuadraticNPerM2S2,
    QuadraticLoad,
    from_n_per_m2_s2,
    n_per_m2_s2
);

#[derive(Serialize, Deserialize)]
#[serde(rename = "VehicleData", deny_unknown_fields)]
pub(crate) struct VehicleDataV2 {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    kind: Option<KindEntry>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    mass_kg: Option<MassKg>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    coast_down: Option<CoastDownEntry>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    rolling_coefficient: Option<RollingNumber>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    drag_area_m2: Option<DragAreaM2>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    drag_coefficient: Option<DragNumber>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    frontal_area_m2: Option<FrontalAreaM2>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    air_density_kg_m3: Option<DensityKgM3>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    driven: Option<DrivenEntry>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    adhesion: Option<AdhesionNumber>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    wheelbase_m: Option<WheelbaseM>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    cg_height_m: Option<HeightM>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    front_share: Option<FrontShareNumber>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    mass_factor: Option<FactorEntry>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    wheel_inertia_kgm2: Option<InertiaKgm2>,
}

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "CoastDown", deny_unknown_fields)]
struct CoastDownEntry {
    constant_n: ConstantN,
    linear_n_per_m_s: LinearNPerMS,
    quadratic_n_per_m2_s2: QuadraticNPerM2S2,
}

/// Words of a file for the variants of an enum.
macro_rules! file_words {
    ($Name:ident, $Domain:ident, $key:literal, [$($Variant:ident),+ $(,)?]) => {
        #[derive(Clone, Copy, Serialize, Deserialize)]
        #[serde(rename = $key)]
        enum $Name {
            $($Variant,)+
        }

        impl From<$Name> for $Domain {
            fn from(word: $Name) -> Self {
                match word {
                    $($Name::$Variant => Self::$Variant,)+
                }
            }
        }

        impl From<$Domain> for $Name {
            fn from(value: $Domain) -> Self {
                match value {
                    $($Domain::$Variant => Self::$Variant,)+
                }
            }
        }
    };
}

file_words!(
    KindEntry,
    VehicleKind,
    "Kind",
    [
        SmallCar, Car, SportsCar, OffRoader, Van, CamperVan, Lorry, Motorcycle
    ]
);
file_words!(DrivenEntry, DrivenAxle, "Driven", [Front, Rear, All]);

/// What the wheels and the engine add to the mass. There is no word `None` in a file.
#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "MassFactor")]
enum FactorEntry {
    Inertias,
    Formula,
}

impl From<FactorEntry> for MassFactor {
    fn from(word: FactorEntry) -> Self {
        match word {
            FactorEntry::Inertias => Self::None,
            FactorEntry::Formula => Self::Formula,
        }
    }
}

impl From<MassFactor> for FactorEntry {
    fn from(factor: MassFactor) -> Self {
        match factor {
            MassFactor::None => Self::Inertias,
            MassFactor::Formula => Self::Formula,
        }
    }
}

impl From<CoastDownEntry> for CoastDown {
    fn from(load: CoastDownEntry) -> Self {
        Self {
            constant: load.constant_n.0,
            linear: load.linear_n_per_m_s.0,
            quadratic: load.quadratic_n_per_m2_s2.0,
        }
    }
}

impl From<CoastDown> for CoastDownEntry {
    fn from(load: CoastDown) -> Self {
        Self {
            constant_n: ConstantN(load.constant),
            linear_n_per_m_s: LinearNPerMS(load.linear),
            quadratic_n_per_m2_s2: QuadraticNPerM2S2(load.quadratic),
        }
    }
}

impl From<VehicleDataV2> for VehicleData {
    fn from(vehicle: VehicleDataV2) -> Self {
        Self {
            kind: vehicle.kind.map(Into::into),
            mass: vehicle.mass_kg.map(|n| n.0),
            coast_down: vehicle.coast_down.map(Into::into),
            rolling: vehicle.rolling_coefficient.map(|n| n.0),
            drag_area: vehicle.drag_area_m2.map(|n| n.0),
            drag_coefficient: vehicle.drag_coefficient.map(|n| n.0),
            frontal_area: vehicle.frontal_area_m2.map(|n| n.0),
            air_density: vehicle.air_density_kg_m3.map(|n| n.0),
            driven: vehicle.driven.map(Into::into),
            adhesion: vehicle.adhesion.map(|n| n.0),
            wheelbase: vehicle.wheelbase_m.map(|n| n.0),
            height: vehicle.cg_height_m.map(|n| n.0),
            front_share: vehicle.front_share.map(|n| n.0),
            mass_factor: vehicle.mass_factor.map(Into::into),
            wheel_inertia: vehicle.wheel_inertia_kgm2.map(|n| n.0),
        }
    }
}

impl From<&VehicleData> for VehicleDataV2 {
    fn from(vehicle: &VehicleData) -> Self {
        Self {
            kind: vehicle.kind.map(Into::into),
            mass_kg: vehicle.mass.map(MassKg),
            coast_down: vehicle.coast_down.map(Into::into),
            rolling_coefficient: vehicle.rolling.map(RollingNumber),
            drag_area_m2: vehicle.drag_area.map(DragAreaM2),
            drag_coefficient: vehicle.drag_coefficient.map(DragNumber),
            frontal_area_m2: vehicle.frontal_area.map(FrontalAreaM2),
            air_density_kg_m3: vehicle.air_density.map(DensityKgM3),
            driven: vehicle.driven.map(Into::into),
            adhesion: vehicle.adhesion.map(AdhesionNumber),
            wheelbase_m: vehicle.wheelbase.map(WheelbaseM),
            cg_height_m: vehicle.height.map(HeightM),
            front_share: vehicle.front_share.map(FrontShareNumber),
            mass_factor: vehicle.mass_factor.map(Into::into),
            wheel_inertia_kgm2: vehicle.wheel_inertia.map(InertiaKgm2),
        }
    }
}
