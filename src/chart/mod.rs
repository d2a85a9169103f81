//! Diagrams and tables as plain data: what is to be seen, not how it looks.
//!
//! They are built from a project and its results, name roles and never colours, and know no
//! toolkit: the same data goes on the screen, into a picture and into text.

mod at_pointer;
mod axis;
mod charts;
mod chosen;
mod cruise_diagram;
mod distance_diagram;
mod effort_diagram;
mod figures;
mod handle;
mod marks;
mod of_motion;
mod over_time;
mod revs_diagram;
mod run_diagram;
mod scene;
mod shift_words;
mod speed_diagram;
mod speedometer_diagram;
mod speedometer_words;
mod step_diagram;
mod steps;
pub mod table;
mod torque_diagram;
mod try_diagram;
mod view;

pub use at_pointer::{Figure, Readable, Reading};
pub use axis::{Along, Axis, Quantity, Range, round_step};
pub use charts::Charts;
pub use figures::{
    AskedFigures, BUILT_CURVE, FigureCell, FigureColumn, FigurePart, FigureRow, FigureTable,
    FiguresOfSet, sentences,
};
pub use handle::{Handle, HandleLine, Travel};
pub use scene::{
    Above, Area, Curve, GearOfSet, Label, Line, Owner, Place, Point, Role, Rule, Scene, ShownSet,
};
pub use step_diagram::{StepDiagram, StepScale};
pub use table::{Cell, Column, MarkedSpeeds, Row, SetTable, Table};
pub use torque_diagram::{CurvePoint, TorqueDiagram, TorqueScales};
pub use try_diagram::{Tries, TryDiagram, TryScale};
