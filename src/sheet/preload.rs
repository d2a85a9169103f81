//! The torque that keeps a shaft turning, beside the maker's band, in words.

use crate::units::{NMM_PER_NM, decimals_text, round_to};
use crate::workshop::{TorqueBand, TorqueVerdict};

/// The torque of the bearings, and what it is beside the band.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AnsweredTorque {
    /// The torque in N·mm.
    pub torque_nmm: f64,
    /// The maker's band, where it is given.
    pub band: Option<TorqueBand>,
}

impl AnsweredTorque {
    /// What it is beside the band.
    pub fn verdict(&self) -> Option<TorqueVerdict> {
        self.band.map(|band| band.verdict(self.torque_nmm))
    }
}

/// The torque, the verdict, and what the trade says of it.
pub fn text(answered: &AnsweredTorque) -> String {
    let nm = |nmm: f64| decimals_text(round_to(nmm / NMM_PER_NM, 0.001), 3);
    let torque = format!("turning torque {} N·m", nm(answered.torque_nmm));
    let verdict = answered.band.map(|band| {
        let [low, high] = band.ends().map(|end| nm(end.nmm()));
        let word = match band.verdict(answered.torque_nmm) {
            TorqueVerdict::Within => "within",
            TorqueVerdict::TooLoose => "too loose for",
            TorqueVerdict::TooTight => "too tight for",
        };
        format!(", {word} {low} to {high} N·m")
    });
    format!(
        "{torque}{}\nRead it while the shaft turns, not at the start; the maker's figures decide.\n",
        verdict.unwrap_or_default()
    )
}
