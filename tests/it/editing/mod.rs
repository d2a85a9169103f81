//! Does everything that can be typed and clicked in the forms and the table do what it says?

mod cards;
mod chains;
mod fields;
mod looks;
mod motion_tables;
mod readout;
mod settings;
mod table;
mod technical;
mod tooth_pairs;
mod typed_figures;
