//! Do engine, vehicle and load mean what the guides say of them?

mod best_shifts;
mod engine;
mod findings;
mod fuel;
mod standing;
mod vehicle;
