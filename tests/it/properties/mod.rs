//! Do the laws hold for every input, not only for those somebody has published?

mod findings;
mod layouts;
mod motion;
mod parsing;
mod positions;
mod ratios;
mod speeds;
mod steps;
mod targets;
mod tooth_pairs;
