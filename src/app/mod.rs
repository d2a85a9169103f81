//! The window: panels, commands, dialogs and files around one document.
//!
//! Panels are free functions over small borrowed views that return actions; [`App`] alone changes
//! things, after the frame.

mod action;
mod arrangement;
mod background;
mod cell;
mod choice;
mod commands;
mod completion;
mod copies;
mod desk;
mod diagram_panel;
mod dialogs;
mod drafts;
mod enabled;
mod example_row;
mod exporting;
mod file_picker;
mod files;
mod find_command;
mod finding;
mod focus;
mod folder_look;
mod form;
mod handle;
mod heard;
mod input;
mod lifecycle;
mod load_row;
mod menus;
mod note_field;
#[cfg(test)]
mod on_a_failing_disk;
mod page;
mod panels;
mod pasting;
mod performing;
mod place;
mod recovery;
mod section;
mod set_card;
mod settings;
#[cfg(test)]
#[expect(dead_code, reason = "other tests use the rest of it")]
#[path = "../../tests/it/files/simulated.rs"]
mod simulated;
mod startup;
mod status_bar;
mod table_panel;
mod technical;
mod text_history;
mod typed;
mod typed_as;
mod undoing;
mod unread;
mod vehicle_panel;
mod view_state;
mod views_row;
mod window;
mod workshop;
mod write_up;

pub use action::Action;
pub use arrangement::{Part, Share};

pub use background::Wake;
pub use commands::{Command, Entry, Menu, TABLE};
pub use desk::Desk;
pub use dialogs::{CAUTIONS, OTHER_KEYS};
pub use drafts::{CellId, PlanCell, SetCell};
pub use file_picker::{Answer, FilePicker, Purpose, SystemPicker};
pub use handle::handle_rect;
pub use lifecycle::Surroundings;
pub use page::AppPage;
pub use recovery::Pace;
pub use startup::{StartError, run};
pub use unread::Unread;
pub use window::App;
