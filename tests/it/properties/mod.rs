//! Do the laws hold for every input, not only for those somebody has published?

mod driveline;
mod findings;
mod fits;
mod jobs;
mod layouts;
mod motion;
mod parsing;
mod plan;
mod positions;
mod ratios;
mod speedometer;
mod speeds;
mod steps;
mod targets;
mod tooth_pairs;
mod workshop;
