//! Arguments to a command or the window, and to an exit code.

fn main() {}
