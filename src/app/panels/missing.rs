//! What does a view lack, and by which links is it given? A sentence instead of an empty diagram.

use crate::analysis::{Needed, NoMotion};
use crate::app::action::Action;
use crate::app::desk::Desk;
use crate::app::drafts::CellId;
use crate::app::technical::TechnicalCell;
use crate::app::view_state::ViewState;
use crate::letters::capitalised;
use crate::project::{Edit, Project, View};
use egui::{Align, Id, Layout, Ui};

/// What a view lacks before it can show anything.
pub(in crate::app) struct Missing {
    sentence: String,
    /// What each link says, and what it does.
    links: Vec<(String, Action)>,
}

impl Missing {
    /// What the diagram lacks; none where there is something to be seen.
    pub(in crate::app) fn of(desk: &Desk, view: &ViewState) -> Option<Self> {
        Self::of_sets(desk, view).or_else(|| {
            let lacks = desk.diagram(view.shown).lacks.is_some();
            lacks.then(|| Self::of_motion(desk.project(), view.shown))
        })
    }

    /// A set that is seen.
    fn of_sets(desk: &Desk, view: &ViewState) -> Option<Self> {
        let sets = &desk.project().sets;
        if sets.iter().any(|candidate| candidate.visible) {
            return None;
        }
        let hidden = sets.get(view.open_card).unwrap_or_else(|| sets.baseline());
        let link = format!("Show {}", hidden.set.name);
        Some(Self {
            sentence: "All sets are hidden, so there is nothing to be drawn.".to_owned(),
            links: vec![(link, Action::Edit(Edit::Visible(hidden.id, true)))],
        })
    }

    /// What engine and vehicle make of the sets.
    fn of_motion(project: &Project, view: View) -> Self {
        let reasons = NoMotion::all(project);
        let of_vehicle = |reason: &NoMotion| match reason {
            NoMotion::Unknown(needed) => *needed != Needed::TorqueCurve,
            _ => false,
        };
        let mut links: Vec<(String, CellId)> = reasons.iter().map(link).collect();
        if project.technical.vehicle.kind.is_none() && reasons.iter().any(of_vehicle) {
            let first = reasons.iter().position(of_vehicle).unwrap_or(0);
            let kind = "The kind of vehicle, which has starting values for all of these";
            links.insert(first, (kind.to_owned(), cell(TechnicalCell::Kind)));
        }
        let what = match view {
            View::Speed | View::Steps | View::Speedometer => "This view",
            View::Effort => "How hard every gear pulls",
            View::Run | View::Revs | View::Distance => "How fast it gains speed",
            View::Cruise => "What a steady speed asks for",
        };
        let links = links.into_iter().map(|(text, field)| {
            let action = Action::Seek(field);
            (text, action)
        });
        Self {
            sentence: format!("{what} follows from engine and vehicle. What is not known yet:"),
            links: links.collect(),
        }
    }

    /// Shows the sentence and the links; returns the widgets of these.
    pub(in crate::app) fn show(self, ui: &mut Ui, actions: &mut Vec<Action>) -> Vec<Id> {
        let room = ui.available_height() * 0.3;
        let mut shown = Vec::new();
        ui.with_layout(Layout::top_down(Align::Center), |ui| {
            ui.add_space(room);
            ui.label(self.sentence);
            for (text, action) in self.links {
                ui.add_space(4.0);
                let link = ui.link(text);
                if link.clicked() {
                    actions.push(action);
                }
                shown.push(link.id);
            }
        });
        shown
    }
}

fn cell(field: TechnicalCell) -> CellId {
    CellId::Technical(field)
}

/// The words for what is not known, and the field that takes it.
fn link(reason: &NoMotion) -> (String, CellId) {
    use TechnicalCell as Cell;
    let field = match reason {
        NoMotion::Unknown(Needed::TorqueCurve) => Cell::TorqueCurve,
        NoMotion::Unknown(Needed::Mass) => Cell::Mass,
        NoMotion::Unknown(Needed::Rolling) => Cell::Rolling,
        NoMotion::Unknown(Needed::Drag) => Cell::DragArea,
        NoMotion::Unknown(Needed::FrontShare) => Cell::FrontShare,
        NoMotion::Formula(_) => Cell::MassFactor,
        NoMotion::NoBand => return (capitalised(&reason.to_string()), CellId::Redline),
        NoMotion::Calibration(_) => Cell::KnownFuel,
        NoMotion::StartingValue(_) => Cell::Kind,
    };
    let words = match reason {
        NoMotion::Unknown(needed) => needed.name().to_owned(),
        other => other.to_string(),
    };
    (capitalised(&words), cell(field))
}
