//! What is said where a table was cut or pushed about, and is the rest read as it was printed?

use super::{Form, refused, table};
use crate::support::projects::any_project;
use layshaft::import::tables::{OwnTable, TableError, read};
use layshaft::project::Project;
use layshaft::project::examples::EXAMPLES;
use proptest::prelude::*;
use proptest::sample::Index;

fn two_seater() -> Project {
    EXAMPLES[1].project().unwrap()
}
