//! Is a pasted torque curve read as somebody of the trade would read it?
//!
//! All figures are invented. A reading is written as `N·m: 1000=120 2000=170`, the unit that was taken
//! first, with a question mark where it was guessed, then engine speeds and torques in N·m to 0.1.

mod columns;
mod doubtful;
mod given_back;
mod hardened;
mod said;

use super::{Case, check_readings};
use layshaft::import::torque::{PastedCurve, read_torque};
use layshaft::units::plain_number;

fn shown(curve: &PastedCurve) -> String {
    let points = curve.points.iter().map(|point| {
        let torque_nm = (point.torque_nm * 10.0).round() / 10.0;
        let rpm = plain_number(point.engine_speed.rpm());
        format!("{rpm}={}", plain_number(torque_nm))
    });
    let mark = if curve.is_guessed { "?" } else { "" };
    let wheels = if curve.is_at_wheels { "wheels " } else { "" };
    let points = points.collect::<Vec<_>>().join(" ");
    format!("{wheels}{}{mark}: {points}", curve.taken.sign())
}

#[track_caller]
fn check(cases: &[Case]) {
    check_readings(cases, |text| match read_torque(text) {
        Ok(curve) => (shown(&curve), curve.remarks),
        Err(error) => (format!("error: {error}"), Vec::new()),
    });
}
