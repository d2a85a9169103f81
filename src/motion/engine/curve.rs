//! A torque curve: points, a monotone cubic between them, and nothing beyond its ends.

use super::super::cubic::Cubic;
use super::super::quantity::Torque;
use super::brochure::Brochure;
use super::slopes::monotone_slopes;
use crate::gearing::{EngineSpeed, OutOfRange};

/// Full-load torque at one engine speed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TorquePoint {
    /// The engine speed.
    pub speed: EngineSpeed,
    /// The torque there.
    pub torque: Torque,
}

/// Full-load torque over engine speed: 2 to 200 points of rising engine speed.
#[derive(Debug, Clone, PartialEq)]
pub struct TorqueCurve {
    points: Vec<TorquePoint>,
    built_from: Option<Brochure>,
    pieces: Vec<Cubic>,
}

/// Why points do not make a torque curve.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum TorqueCurveError {
    /// Too few points, or too many.
    #[error("a torque curve has {least} to {most} points, not {0}", least = TorqueCurve::LEAST_POINTS,
        most = TorqueCurve::MOST_POINTS)]
    PointCount(usize),
    /// A point that does not lie above the one before it.
    #[error(
        "the engine speeds of a torque curve rise from point to point, but {} rpm follows {} rpm",
        .after.rpm(), .before.rpm()
    )]
    NotRising {
        /// The engine speed before it.
        before: EngineSpeed,
        /// The engine speed that should be above it.
        after: EngineSpeed,
    },
    /// A point that cannot be.
    #[error(transparent)]
    Point(#[from] OutOfRange),
}

impl TorqueCurve {
    /// The fewest points of a curve.
    pub const LEAST_POINTS: usize = 2;
    /// The most points of a curve.
    pub const MOST_POINTS: usize = 200;

    /// The curve through these points.
    ///
    /// # Errors
    /// When there are fewer than 2 or more than 200, or their engine speeds do not rise.
    pub fn new(points: Vec<TorquePoint>) -> Result<Self, TorqueCurveError> {
        if !(Self::LEAST_POINTS..=Self::MOST_POINTS).contains(&points.len()) {
            return Err(TorqueCurveError::PointCount(points.len()));
        }
        let falls = points
            .windows(2)
            .find(|pair| pair[0].speed >= pair[1].speed);
        if let Some([before, after]) = falls {
            return Err(TorqueCurveError::NotRising {
                before: before.speed,
                after: after.speed,
            });
        }
        let pieces = pieces_through(&points);
        Ok(Self {
            points,
            built_from: None,
            pieces,
        })
    }

    /// The curve through its points after a change of them; whatever it was built from, it is one of points
    /// then.
    ///
    /// # Errors
    /// As [`Self::new`].
    pub fn with_points(
        &self,
        change: impl FnOnce(&mut Vec<TorquePoint>),
    ) -> Result<Self, TorqueCurveError> {
        let mut points = self.points.clone();
        change(&mut points);
        Self::new(points)
    }

    /// The same curve, marked as built from the figures of a brochure.
    pub(super) fn built_from(self, brochure: Brochure) -> Self {
        Self {
            built_from: Some(brochure),
            ..self
        }
    }

    /// Its points, of rising engine speed.
    pub fn points(&self) -> &[TorquePoint] {
        &self.points
    }

    /// The figures of a brochure that it was built from; none where its points were measured.
    pub fn brochure(&self) -> Option<&Brochure> {
        self.built_from.as_ref()
    }

    /// The torque in N·m over the engine speed in rev/min, a piece from each point to the next.
    pub fn pieces(&self) -> &[Cubic] {
        &self.pieces
    }

    /// The torque in N·m at an engine speed in rev/min; none beyond the ends of the curve.
    ///
    /// It never lies outside the two points around it.
    ///
    /// # Source
    /// See the slopes: Fritsch and Butland, 1984.
    pub fn torque_nm(&self, engine_rpm: f64) -> Option<f64> {
        let ends = self.points.windows(2).zip(&self.pieces);
        let mut at_or_above = ends.skip_while(|(_, piece)| engine_rpm >= piece.to);
        let Some((ends, piece)) = at_or_above.next() else {
            let last = self.points.last()?;
            return (engine_rpm <= last.speed.rpm()).then(|| last.torque.nm());
        };
        let [one, other] = [0, 1].map(|at: usize| ends[at].torque.nm());
        let torque_nm = piece.at(engine_rpm).clamp(one.min(other), one.max(other));
        (engine_rpm >= piece.from).then_some(torque_nm)
    }
}

fn pieces_through(points: &[TorquePoint]) -> Vec<Cubic> {
    let places: Vec<(f64, f64)> = points
        .iter()
        .map(|point| (point.speed.rpm(), point.torque.nm()))
        .collect();
    let slopes = monotone_slopes(&places);
    let spans = places.windows(2).zip(slopes.windows(2));
    spans
        .map(|(ends, slopes)| {
            let values = [ends[0].1, ends[1].1];
            Cubic::through(ends[0].0, ends[1].0, values, [slopes[0], slopes[1]])
        })
        .collect()
}
