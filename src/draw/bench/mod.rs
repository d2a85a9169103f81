//! The small drawings of the bench: where a shim sits or what is measured, cut through, with the words of the trade.
//!
//! Each brings out one thing in the one strong colour: the shim, or what is read and pulled. Which way a thicker
//! shim moves the setting is said in words, because a wrong sign costs a bearing.

mod axle;
mod board;
mod fits;
mod heat;
mod journal;
mod measured;
mod of_job;
mod parts;
mod polygon;
mod seats;
mod turning;

use super::palette::Palette;
use board::Board;
use egui::{Painter, Rect};

/// Which drawing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum BenchDrawing {
    /// A shim between the case and the cup of a bearing.
    BehindRace,
    /// A shim between the case and the flange of its cover.
    UnderCover,
    /// A cover pressed on a seated bearing, and the gap under its flange.
    FeelerGap,
    /// Depths of a case and of what stands in it.
    DepthGauge,
    /// A shim between the head of a pinion and its bearing.
    PinionDepth,
    /// The shims on both sides of a differential.
    SideBearings,
    /// A cord round a drum, pulled by a scale.
    CordAndScale,
    /// A beam wrench with an adapter in line.
    BeamWrench,
    /// A gap that must lie between two limits.
    LimitsGauge,
    /// What grows with heat, bearings face to face.
    HeatFaceToFace,
    /// What grows with heat, bearings back to back.
    HeatBackToBack,
    /// A ring on a shaft, its seat read at several places.
    FitOnShaft,
    /// A ring in the bore of a case, read at several places.
    FitInBore,
    /// A shaft that is turned down.
    TurnedDown,
}

impl BenchDrawing {
    /// All of them.
    pub const ALL: [Self; 14] = [
        Self::BehindRace,
        Self::UnderCover,
        Self::FeelerGap,
        Self::DepthGauge,
        Self::PinionDepth,
        Self::SideBearings,
        Self::CordAndScale,
        Self::BeamWrench,
        Self::LimitsGauge,
        Self::HeatFaceToFace,
        Self::HeatBackToBack,
        Self::FitOnShaft,
        Self::FitInBore,
        Self::TurnedDown,
    ];

    /// What is to be seen and what the sign hangs on, in one spoken sentence without its stop.
    pub fn summary(self) -> &'static str {
        match self {
            Self::BehindRace => {
                "The shim sits behind a race, between the case and the cup of the bearing: a thicker shim leaves \
                 less play"
            }
            Self::UnderCover => {
                "The shim sits under the cover, between the case and the cover's flange: a thicker shim leaves \
                 more play"
            }
            Self::FeelerGap => {
                "The cover is pressed on the seated bearing without a shim, and a feeler reads the gap g between \
                 case and flange: a shim as thick as the gap leaves no play, a thicker one more"
            }
            Self::DepthGauge => {
                "The case is A deep from its face to the seat, what stands in it is B high, and the gasket lifts the \
                 cover: the shim fills what is left, and a thicker one leaves less play"
            }
            Self::PinionDepth => {
                "The shim sits between the head of the pinion and its bearing; the mounting distance goes from the \
                 axis of the ring gear to the back of the head: a thicker shim brings the pinion nearer to that axis"
            }
            Self::SideBearings => {
                "A shim sits outside the bearing on each side of the differential: a thicker one on the side of the \
                 ring gear, and a thinner one on the other, move the ring gear towards the pinion, which takes \
                 backlash away; thicker ones on both sides give more preload"
            }
            Self::CordAndScale => {
                "A cord is wound round a drum on the shaft and pulled straight off by a scale, which is read while \
                 the shaft turns: the radius is that of the drum and half the cord"
            }
            Self::BeamWrench => {
                "A beam wrench turns the shaft through an adapter in line with it: L goes from the handle to the \
                 square of the wrench, E from the square to the shaft, and the shaft has the reading times L plus E \
                 over L"
            }
            Self::LimitsGauge => {
                "A feeler reads the gap between the synchroniser ring and the teeth of its gear: it must lie between \
                 the least and the most"
            }
            Self::HeatFaceToFace => {
                "Taper bearings face to face, their cups held from outside: a case that grows leaves more play, a \
                 shaft that grows leaves less"
            }
            Self::HeatBackToBack => {
                "Taper bearings back to back, their cones held from outside: a case that grows leaves less play, a \
                 shaft that grows leaves more"
            }
            Self::FitOnShaft => {
                "A bearing's inner ring of width B, solid up to the diameter Di of its raceway, sits on a shaft of the \
                 diameter d, which is read at several places along the seat and at each across: a thicker shaft is \
                 a tighter fit"
            }
            Self::FitInBore => {
                "A bearing's outer ring sits in the bore of a case, whose diameter D is read at several places along \
                 the seat and at each across: a wider bore is a looser fit, and a light-alloy case that warms grows \
                 away from the ring"
            }
            Self::TurnedDown => {
                "A journal is turned down from its diameter now to the one wanted, up to a fillet at its shoulder: half \
                 of what comes off the diameter is taken off the hardened layer"
            }
        }
    }
}

/// Paints a drawing into a rectangle, with letters of that height in points, or less where it is small.
pub fn paint(
    painter: &Painter,
    rect: Rect,
    drawing: BenchDrawing,
    palette: &Palette,
    text_size: f32,
) {
    let board = Board::new(painter, rect, palette, text_size);
    match drawing {
        BenchDrawing::BehindRace => seats::behind_race(&board),
        BenchDrawing::UnderCover => seats::under_cover(&board),
        BenchDrawing::FeelerGap => seats::feeler_gap(&board),
        BenchDrawing::DepthGauge => measured::depth_gauge(&board),
        BenchDrawing::PinionDepth => axle::pinion_depth(&board),
        BenchDrawing::SideBearings => axle::side_bearings(&board),
        BenchDrawing::CordAndScale => turning::cord_and_scale(&board),
        BenchDrawing::BeamWrench => turning::beam_wrench(&board),
        BenchDrawing::LimitsGauge => measured::limits_gauge(&board),
        BenchDrawing::HeatFaceToFace => heat::face_to_face(&board),
        BenchDrawing::HeatBackToBack => heat::back_to_back(&board),
        BenchDrawing::FitOnShaft => fits::on_shaft(&board),
        BenchDrawing::FitInBore => fits::in_bore(&board),
        BenchDrawing::TurnedDown => journal::turned_down(&board),
    }
}
