//! Do the laws of effort, road load and what follows from them hold for every vehicle?

mod curves;
mod extremes;
mod standing;
