//! Torques, fillets, depths and run-outs of a turned shaft that can exist.

use crate::gearing::quantity;

quantity! {
    /// The torque that a shaft carries: 0 to 100000 N·m.
    ShaftTorque, from_nm, nm, "the torque of a shaft", "between 0 and 100000 N·m",
    |nm| (0.0..=100_000.0).contains(&nm)
}

quantity! {
    /// The radius of a fillet: 0.05 to 50 mm.
    FilletRadius, from_mm, mm, "the radius of a fillet", "between 0.05 and 50 mm",
    |mm| (0.05..=50.0).contains(&mm)
}

quantity! {
    /// How deep a hardened layer reaches: 0 to 10 mm; case-hardened steel has 0.5 to 1.
    CaseDepth, from_mm, mm, "the depth of a hardened layer", "between 0 and 10 mm",
    |mm| (0.0..=10.0).contains(&mm)
}

quantity! {
    /// How long a seat is, from its shoulder: 0.5 to 1000 mm.
    SeatLength, from_mm, mm, "the length of a seat", "between 0.5 and 1000 mm",
    |mm| (0.5..=1000.0).contains(&mm)
}

quantity! {
    /// How much a journal may run out: 0 to 1 mm.
    RunOut, from_mm, mm, "a run-out", "between 0 and 1 mm",
    |mm| (0.0..=1.0).contains(&mm)
}

impl RunOut {
    /// What to ask of a bearing's seat where its maker says nothing: 0.01 mm (common practice, no source).
    pub const USUAL: Self = Self(0.01);
}
