//! What several tests lean on.

pub(crate) mod any_vehicle;
pub(crate) mod bench;
pub(crate) mod close;
pub(crate) mod gear_sets;
pub(crate) mod memory_disk;
pub(crate) mod per_pixel;
pub(crate) mod plain_vehicle;
pub(crate) mod projects;
pub(crate) mod screen;
pub(crate) mod scripted_picker;
pub(crate) mod technical;
pub(crate) mod test_renderer;
pub(crate) mod variants;
pub(crate) mod vehicles;
pub(crate) mod window;
pub(crate) mod workshop;
