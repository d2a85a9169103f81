//! What is known of an engine in format 2: its torque as points or as a brochure's four figures.

use super::super::shared::values::{
    PlainNumber, Rpm, WrittenNumber, WrittenOutOfRange, file_number,
};
use crate::motion::{
    Brochure, BrochureError, Displacement, FrictionPressure, Fuel, Inertia, MeasuredAt, Power,
    SlopeEfficiency, Strokes, Torque, TorqueCurve, TorqueCurveError, TorquePoint, WillansLine,
};
use crate::project::technical::EngineData;
use serde::{Deserialize, Serialize};

file_number!(TorqueNm, Torque, from_nm, nm);
file_number!(PowerKw, Power, from_kw, kw);
file_number!(InertiaKgm2, Inertia, from_kgm2, kgm2);
file_number!(DisplacementL, Displacement, from_l, l);
file_number!(SlopeShare, SlopeEfficiency, new, share);
file_number!(FrictionBar, FrictionPressure, from_bar, bar);

#[derive(Serialize, Deserialize)]
#[serde(rename = "EngineData", deny_unknown_fields)]
pub(crate) struct EngineDataV2 {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    torque: Option<TorqueEntry>,
    /// Whether the curve was measured at the wheels.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    at_wheels: bool,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    inertia_kgm2: Option<InertiaKgm2>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    displacement_l: Option<DisplacementL>,
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    two_stroke: bool,
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    diesel: bool,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    willans: Option<WillansEntry>,
}

#[derive(Clone, Serialize, Deserialize)]
#[serde(rename = "Torque")]
enum TorqueEntry {
    Points(CurvePoints),
    Brochure(BrochureFigures),
}

/// Points are checked where they stand: each above the one before it.
#[derive(Clone, Serialize, Deserialize)]
#[serde(try_from = "Vec<PointEntry>", into = "Vec<PointEntry>")]
struct CurvePoints(TorqueCurve);

#[derive(Serialize, Deserialize)]
#[serde(rename = "Point", deny_unknown_fields)]
struct PointEntry {
    rpm: Rpm,
    torque_nm: TorqueNm,
}

/// The four figures of a brochure, which are checked together.
#[derive(Clone, Serialize, Deserialize)]
#[serde(try_from = "BrochureParts", into = "BrochureParts")]
struct BrochureFigures {
    figures: Brochure,
    curve: TorqueCurve,
}

#[derive(Serialize, Deserialize)]
#[serde(rename = "Brochure", deny_unknown_fields)]
struct BrochureParts {
    torque_nm: TorqueNm,
    torque_from_rpm: Rpm,
    torque_to_rpm: Rpm,
    power_kw: PowerKw,
    power_rpm: Rpm,
}

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "Willans", deny_unknown_fields)]
struct WillansEntry {
    slope_efficiency: SlopeShare,
    friction_bar: FrictionBar,
}

/// Why four figures are not those of an engine.
#[derive(Debug, thiserror::Error)]
enum BrochureProblem {
    #[error(transparent)]
    Figures(#[from] BrochureError),
    #[error(transparent)]
    Curve(#[from] TorqueCurveError),
}

impl TryFrom<Vec<PointEntry>> for CurvePoints {
    type Error = TorqueCurveError;

    fn try_from(points: Vec<PointEntry>) -> Result<Self, TorqueCurveError> {
        let points = points.into_iter().map(|point| TorquePoint {
            speed: point.rpm.0,
            torque: point.torque_nm.0,
        });
        TorqueCurve::new(points.collect()).map(Self)
    }
}

impl From<CurvePoints> for Vec<PointEntry> {
    fn from(curve: CurvePoints) -> Self {
        let points = curve.0.points().iter();
        points
            .map(|point| PointEntry {
                rpm: Rpm(point.speed),
                torque_nm: TorqueNm(point.torque),
            })
            .collect()
    }
}

impl TryFrom<BrochureParts> for BrochureFigures {
    type Error = BrochureProblem;

    fn try_from(parts: BrochureParts) -> Result<Self, BrochureProblem> {
        let plateau = [parts.torque_from_rpm.0, parts.torque_to_rpm.0];
        let (torque, power) = (parts.torque_nm.0, parts.power_kw.0);
        let figures = Brochure::new(torque, plateau, power, parts.power_rpm.0)?;
        let curve = figures.curve()?;
        Ok(Self { figures, curve })
    }
}

impl From<BrochureFigures> for BrochureParts {
    fn from(BrochureFigures { figures, .. }: BrochureFigures) -> Self {
        let [from, to] = figures.plateau();
        Self {
            torque_nm: TorqueNm(figures.torque()),
            torque_from_rpm: Rpm(from),
            torque_to_rpm: Rpm(to),
            power_kw: PowerKw(figures.power()),
            power_rpm: Rpm(figures.power_speed()),
        }
    }
}

impl From<EngineDataV2> for EngineData {
    fn from(engine: EngineDataV2) -> Self {
        Self {
            curve: engine.torque.map(|torque| match torque {
                TorqueEntry::Points(points) => points.0,
                TorqueEntry::Brochure(brochure) => brochure.curve,
            }),
            measured_at: if engine.at_wheels {
                MeasuredAt::Wheels
            } else {
                MeasuredAt::Crank
            },
            inertia: engine.inertia_kgm2.map(|n| n.0),
            displacement: engine.displacement_l.map(|n| n.0),
            strokes: if engine.two_stroke {
                Strokes::Two
            } else {
                Strokes::Four
            },
            fuel: if engine.diesel {
                Fuel::Diesel
            } else {
                Fuel::Petrol
            },
            willans: engine.willans.map(|line| WillansLine {
                slope_efficiency: line.slope_efficiency.0,
                friction: line.friction_bar.0,
            }),
        }
    }
}

impl From<&EngineData> for EngineDataV2 {
    fn from(engine: &EngineData) -> Self {
        let torque = |curve: &TorqueCurve| match curve.brochure() {
            None => TorqueEntry::Points(CurvePoints(curve.clone())),
            Some(figures) => TorqueEntry::Brochure(BrochureFigures {
                figures: *figures,
                curve: curve.clone(),
            }),
        };
        Self {
            torque: engine.curve.as_ref().map(torque),
            at_wheels: engine.measured_at == MeasuredAt::Wheels,
            inertia_kgm2: engine.inertia.map(InertiaKgm2),
            displacement_l: engine.displacement.map(DisplacementL),
            two_stroke: engine.strokes == Strokes::Two,
            diesel: engine.fuel == Fuel::Diesel,
            willans: engine.willans.map(|line| WillansEntry {
                slope_efficiency: SlopeShare(line.slope_efficiency),
                friction_bar: FrictionBar(line.friction),
            }),
        }
    }
}
