//! The next shim after two tries: by a straight line through what both turned at.

use super::quantity::{ShimThickness, TurningTorque};

/// A shim that was in place, and the torque that was measured with it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ShimTry {
    /// The whole thickness in the place.
    pub shim: ShimThickness,
    /// What the shaft turned at.
    pub torque: TurningTorque,
}

/// The thickness in mm at which the line through two tries has the wanted torque: an estimate, to be measured
/// again. None where both tries have the same torque or the same shim, or no shim is as thick.
///
/// # Example
/// ```
/// use layshaft::workshop::{ShimThickness, ShimTry, TurningTorque, next_shim};
/// let tried = |mm, nmm| ShimTry {
///     shim: ShimThickness::from_mm(mm).unwrap(),
///     torque: TurningTorque::from_nmm(nmm).unwrap(),
/// };
/// let wanted = TurningTorque::from_nmm(1500.0).unwrap();
/// let next = next_shim([tried(1.10, 1000.0), tried(1.20, 2000.0)], wanted).unwrap();
/// assert!((next.mm() - 1.15).abs() < 1e-12);
/// ```
pub fn next_shim(tries: [ShimTry; 2], wanted: TurningTorque) -> Option<ShimThickness> {
    let [first, second] = tries;
    let slope = (second.shim.mm() - first.shim.mm()) / (second.torque.nmm() - first.torque.nmm());
    let mm = first.shim.mm() + slope * (wanted.nmm() - first.torque.nmm());
    (slope.abs() > 0.0).then_some(())?;
    ShimThickness::from_mm(mm).ok()
}
