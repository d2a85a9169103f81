//! Does everything that can be typed and clicked in the forms and the table do what it says?

mod best_shifts;
mod cards;
mod chains;
mod fields;
mod figure_tables;
mod looks;
mod of_set;
mod readout;
mod road_checks;
mod settings;
mod table;
mod technical;
mod tooth_pairs;
mod torque_curve;
mod typed_figures;
