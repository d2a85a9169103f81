//! How do diagrams and tables become shapes and pixels?
//!
//! Knows egui; knows neither files nor the window.

mod fonts;
mod raster;

pub use fonts::{bold, definitions, install};
pub use raster::{MAX_SIDE_PX, Raster, picture};
