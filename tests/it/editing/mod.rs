//! Does everything that can be typed and clicked in the forms and the table do what it says?

mod best_shifts;
mod cards;
mod chains;
mod fields;
mod looks;
mod motion_tables;
mod of_set;
mod readout;
mod settings;
mod table;
mod technical;
mod tooth_pairs;
mod torque_curve;
mod typed_figures;
