//! Diagrams and tables as plain data: what is to be seen, not how it looks.
//!
//! They are built from a project and its results, name roles and never colours, and know no
//! toolkit: the same data goes on the screen, into a picture and into text.

mod speed_diagram;
mod table;

pub use speed_diagram::{GearTrace, Range, SetTrace, ShiftTrace, SpeedDiagram};
pub use table::{Cell, Column, MarkedSpeeds, Row, SetTable, Table};
