//! The speed budget, measured: medians of everything the design sets a limit for.

mod page;
mod raster;

fn main() {
    divan::main();
}
