//! The speed budget, measured: medians of everything the design sets a limit for.

fn main() {
    divan::main();
}
