//! Turns the Fluent files in `messages` into code: see the crate `catalogue`.

fn main() {
    catalogue::build::script();
}
