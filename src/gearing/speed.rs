//! The law of road speed: from engine speed and back.

/// The road speed in km/h at an engine speed.
///
/// v = 0.06 · n · U ÷ i, U the rolling circumference in m. Tyre slip is neglected.
///
/// # Units
/// * `engine_rpm`: engine speed in rev/min
/// * `overall_ratio`: engine turns per wheel turn, above 0
/// * `rolling_circumference_mm`: distance per wheel turn under load, in mm
///
/// # Source
/// French arrêté of 27 March 1979, article 2, in metres and rev/min.
///
/// # Example
/// ```
/// let v = layshaft::gearing::speed_from_rpm(1900.0, 0.84 * 1.007 * 4.77, 3185.0);
/// assert!((v - 89.99).abs() < 0.005);
/// ```
pub fn speed_from_rpm(engine_rpm: f64, overall_ratio: f64, rolling_circumference_mm: f64) -> f64 {
    0.06 * engine_rpm * (rolling_circumference_mm / 1000.0) / overall_ratio
}

/// The engine speed in rev/min at a road speed: the inverse of [`speed_from_rpm`].
///
/// # Units
/// * `speed_kmh`: road speed in km/h
/// * `overall_ratio`: engine turns per wheel turn, above 0
/// * `rolling_circumference_mm`: distance per wheel turn under load, in mm, above 0
pub fn rpm_from_speed(speed_kmh: f64, overall_ratio: f64, rolling_circumference_mm: f64) -> f64 {
    speed_kmh * overall_ratio / (0.06 * (rolling_circumference_mm / 1000.0))
}

/// The overall ratio with which an engine speed makes a road speed: [`speed_from_rpm`], solved for it.
///
/// # Units
/// * `engine_rpm`: engine speed in rev/min
/// * `speed_kmh`: road speed in km/h, above 0
/// * `rolling_circumference_mm`: distance per wheel turn under load, in mm
///
/// # Example
/// ```
/// let i = layshaft::gearing::overall_ratio_from_speed(1000.0, 30.0, 2000.0);
/// assert!((i - 4.0).abs() < 1e-12);
/// ```
pub fn overall_ratio_from_speed(
    engine_rpm: f64,
    speed_kmh: f64,
    rolling_circumference_mm: f64,
) -> f64 {
    speed_from_rpm(engine_rpm, 1.0, rolling_circumference_mm) / speed_kmh
}

/// The rolling circumference in mm with which an engine speed makes a road speed: [`speed_from_rpm`], solved
/// for it.
///
/// # Units
/// * `engine_rpm`: engine speed in rev/min, above 0
/// * `speed_kmh`: road speed in km/h
/// * `overall_ratio`: engine turns per wheel turn
///
/// # Example
/// ```
/// let u = layshaft::gearing::rolling_circumference_mm_from_speed(1000.0, 30.0, 4.0);
/// assert!((u - 2000.0).abs() < 1e-9);
/// ```
pub fn rolling_circumference_mm_from_speed(
    engine_rpm: f64,
    speed_kmh: f64,
    overall_ratio: f64,
) -> f64 {
    1000.0 * speed_kmh * overall_ratio / (0.06 * engine_rpm)
}
