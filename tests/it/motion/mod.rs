//! Do engine, vehicle and load mean what the guides say of them?

mod engine;
mod findings;
mod fuel;
mod standing;
mod vehicle;
