//! Do engine, vehicle and load mean what the guides say of them?

mod engine;
mod fuel;
mod standing;
mod vehicle;
