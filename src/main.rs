//! The program: everything it can do is a line in [`coquille::cli`].

fn main() {}
