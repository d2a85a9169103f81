//! The table as text: for a terminal, a forum, a spreadsheet, another program.
//!
//! Text, Markdown and BBCode show the cells of the chart's table, rounded for a reader; CSV and JSON
//! carry the figures themselves.

pub mod bbcode;
pub mod counted;
pub mod csv;
mod csv_of_figures;
pub mod fit;
pub mod found;
mod framed;
mod grid;
pub mod jobs;
pub mod journal;
pub mod json;
pub mod markdown;
#[cfg(test)]
mod new_column;
mod of_views;
pub mod page;
pub mod pairs;
pub mod preload;
pub mod shim;
pub mod text;

pub use of_views::{NotWritten, TextFormat, written};
