//! The rows of what is a set's own of the road checks: its speed signal, what its box is rated for, and its
//! final drive of the second axle.

use super::super::about::{About, Whose};
use super::super::cells::TechnicalCell;
use super::super::row::{Answer, Row, shown};
use super::axle_rows::second_final_drive;
use super::speedometer_rows::{self, OF_SIGNAL};
use crate::app::typed::Quantity;
use crate::checks::RatedTorque;
use crate::project::{Candidate, Edit, SetChecks};
use crate::units::plain_number;

/// All of them, in reading order.
pub(super) const OF_SET: [&[Row]; 2] = [&OF_SIGNAL, &OWN];

const OWN: [Row; 2] = [
    Row {
        cell: TechnicalCell::RatedTorque,
        name: "Rated, N·m",
        text: |about| shown(of(about).rated_torque.map(RatedTorque::nm)),
        answer: Answer::Typed("at the input, by its maker", |about, text| {
            let read = RATED.read_large(text)?;
            Ok(own_with(about, |checks| checks.rated_torque = read))
        }),
    },
    Row {
        cell: TechnicalCell::SecondFinalDrive,
        name: "Second axle",
        text: |about| {
            let own = of(about).second_final_drive;
            own.map_or_else(String::new, |ratio| ratio.to_string())
        },
        answer: Answer::Typed("as the vehicle's", |about, text| {
            let read = second_final_drive(text)?;
            Ok(own_with(about, |checks| checks.second_final_drive = read))
        }),
    },
];

/// A torque that something is rated for.
pub(super) const RATED: Quantity<RatedTorque> = Quantity {
    new: RatedTorque::from_nm,
    example: "250",
    unit: "N·m",
};

/// What is a candidate's own.
pub(super) fn own(candidate: &Candidate) -> &SetChecks {
    &candidate.technical.checks
}

/// What is the own of the set that a row is about.
pub(super) fn of(about: About<'_>) -> SetChecks {
    let candidate = match about.whose {
        Whose::Vehicles => None,
        Whose::Sets(set) => about.project.sets.get(set),
    };
    candidate.map_or_else(SetChecks::default, |candidate| own(candidate).clone())
}

/// The edit that changes what is the own of the set that a row is about; of the baseline, where it is about
/// none.
pub(super) fn own_with(about: About<'_>, change: impl FnOnce(&mut SetChecks)) -> Edit {
    let mut checks = Box::new(of(about));
    change(&mut checks);
    let set = match about.whose {
        Whose::Vehicles => about.project.sets.baseline().id,
        Whose::Sets(set) => set,
    };
    Edit::SetChecks(set, checks)
}

/// What is known, in a few words.
pub(super) fn in_short(about: About<'_>, candidate: &Candidate) -> String {
    let checks = own(candidate);
    let rated = checks
        .rated_torque
        .map(|torque| format!("{} N·m", plain_number(torque.nm())));
    let signal = checks
        .signal
        .source
        .map(|_| speedometer_rows::in_short(about));
    let parts: Vec<String> = rated.into_iter().chain(signal).collect();
    if parts.is_empty() {
        return if *checks == SetChecks::default() {
            "as the vehicle's"
        } else {
            "in part"
        }
        .to_owned();
    }
    parts.join(", ")
}
