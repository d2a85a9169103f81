//! What is left of a shaft that is turned down, in words.

use crate::units::{decimals_text, percent_text, plain_number, round_to};
use crate::workshop::{
    Diameter, FilletRadius, JOURNAL_CAUTIONS, MeantShaft, SHOULDER_SHARES, ShaftTorque,
    TurnedShaft, fillet_factor,
};

/// A shaft that is turned down, and what was asked of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AnsweredJournal {
    /// The shaft as somebody means it.
    pub meant: MeantShaft,
    /// The same as it will be.
    pub turned: TurnedShaft,
    /// The torque that it carries, where that is known.
    pub torque: Option<ShaftTorque>,
    /// The fillet at the shoulder, where it is known.
    pub fillet: Option<FilletRadius>,
    /// The diameter of the shoulder.
    pub shoulder: Diameter,
}

impl AnsweredJournal {
    /// The shear in MPa at the torque, nominal at the new diameter.
    pub fn shear_mpa(&self) -> Option<f64> {
        self.torque.map(|torque| self.turned.shear_mpa(torque))
    }

    /// How deep the hardened layer still is, in mm.
    pub fn case_left_mm(&self) -> Option<f64> {
        let depth = self.meant.case_depth?;
        Some(self.turned.case_left_mm(depth))
    }

    /// The stress factor of the fillet in torsion; none outside the table.
    pub fn stress_factor(&self) -> Option<f64> {
        fillet_factor(self.meant.new, self.shoulder, self.fillet?)
    }
}

/// What is left, what was asked, what stops the job, and what is said beside every shaft that is turned down.
pub fn text(answered: &AnsweredJournal) -> String {
    let meant = &answered.meant;
    let mut lines = vec![format!(
        "from {} to {} mm: {} % of the strength is left there, {} % of the stiffness",
        plain_number(meant.old.mm()),
        plain_number(meant.new.mm()),
        percent_text(answered.turned.strength_share()),
        percent_text(answered.turned.stiffness_share())
    )];
    lines.extend(shear_line(answered));
    lines.extend(case_line(answered));
    lines.extend(answered.fillet.map(|fillet| fillet_line(answered, fillet)));
    lines.extend(meant.stops().iter().map(ToString::to_string));
    lines.extend(JOURNAL_CAUTIONS.map(str::to_owned));
    lines.join("\n") + "\n"
}

fn shear_line(answered: &AnsweredJournal) -> Option<String> {
    let (torque, shear_mpa) = answered.torque.zip(answered.shear_mpa())?;
    let (shear, torque) = (decimals_text(shear_mpa, 1), plain_number(torque.nm()));
    Some(format!(
        "shear {shear} MPa at {torque} N·m, nominal at the new diameter"
    ))
}

fn case_line(answered: &AnsweredJournal) -> Option<String> {
    let (depth, left_mm) = answered.meant.case_depth.zip(answered.case_left_mm())?;
    let (left, depth) = (
        plain_number(round_to(left_mm, 0.001)),
        plain_number(depth.mm()),
    );
    Some(format!(
        "of the hardened layer {left} of {depth} mm are left"
    ))
}

fn fillet_line(answered: &AnsweredJournal, fillet: FilletRadius) -> String {
    let (radius, shoulder) = (fillet.mm(), answered.shoulder.mm());
    let [least, most] = SHOULDER_SHARES;
    let share = shoulder / answered.meant.new.mm();
    let says = match answered.stress_factor() {
        Some(factor) => {
            let factor = decimals_text(factor, 2);
            format!("stress factor {factor} in torsion, from memory")
        }
        None if (least..=most).contains(&share) => {
            "no stress factor, the table has smaller fillets".to_owned()
        }
        None => {
            let [least, most] = SHOULDER_SHARES.map(plain_number);
            format!(
                "no stress factor, the table has shoulders of {least} to {most} times the shaft"
            )
        }
    };
    let [radius, shoulder] = [radius, shoulder].map(plain_number);
    format!("fillet of {radius} mm at a shoulder of {shoulder} mm: {says}")
}
