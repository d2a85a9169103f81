//! How do diagrams and tables become shapes and pixels?
//!
//! Knows egui; knows neither files nor the window.

pub mod bench;
pub mod diagram;
mod fonts;
pub mod label_placing;
pub mod palette;
mod raster;
pub mod segment;
mod soft_line;
pub mod step_diagram;
mod stroke;
pub mod table;
pub mod theme;
pub mod torque_diagram;
pub mod try_diagram;

pub use fonts::{bold, definitions, install};
pub use raster::{MAX_SIDE_PX, Raster, picture};
pub use stroke::sample;
