//! Do effort, road load and what follows from them come out as others print them?

mod by_scipy;
pub(crate) mod checked;
mod closed_runs;
mod effort;
mod standing;
mod torque_curve;
mod worked_car;
mod worked_run;

/// The vehicle that was worked through by two methods.
const WORKED: &str =
    "a worked example, computed by quadrature over speed and by steps in time, which agree to 1e-8";
