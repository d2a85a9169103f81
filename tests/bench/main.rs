//! The speed budget, measured: medians of everything the design sets a limit for.

mod raster;

fn main() {
    divan::main();
}
