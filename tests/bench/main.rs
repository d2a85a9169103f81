//! The speed budget, measured: medians of everything the design sets a limit for.

#[expect(
    clippy::unwrap_used,
    reason = "a bench that cannot start should say so"
)]
mod documents;
#[expect(
    clippy::unwrap_used,
    reason = "a bench that cannot start should say so"
)]
mod finders;
#[expect(
    clippy::unwrap_used,
    reason = "a bench that cannot start should say so"
)]
mod frame;
#[expect(
    clippy::unwrap_used,
    reason = "a bench that cannot start should say so"
)]
mod motion;
mod page;
mod raster;

fn main() {
    divan::main();
}
