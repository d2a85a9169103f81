//! Steps for a set: laid out from first, top and the number of gears, even or progressive, and moved by hand in a
//! small diagram.

mod handles;
mod texts;

pub(in crate::app) use texts::FillTexts;

use super::about::About;
use super::choices::choices_ui;
use super::frame::{Opening, Shown, finder_frame_ui};
use super::typed_field::{TypedField, begin_with_field, typed_ui};
use super::whole_set::whole_set_ui;
use super::{FinderAnswer, Taken, set_or_baseline};
use crate::app::desk::Desk;
use crate::app::dialogs::field::reveal;
use crate::app::heard::{announce, describe};
use crate::chart::StepDiagram;
use crate::draw::palette::Palette;
use crate::draw::step_diagram::{StepPlaces, paint};
use crate::finders::{FillWish, StepLayout};
use crate::gearing::{Drivetrain, GearRole, GearSetSpec, steps};
use crate::project::SetId;
use crate::units::step_text;
use egui::{Context, Id, RichText, Role, Sense, TextStyle, Ui, Vec2, WidgetInfo};
use handles::{Handles, Held, handle_id};
use texts::Law;

/// The dialog while it is open.
#[derive(Debug)]
pub(in crate::app) struct FillDialog {
    set: SetId,
    pub(in crate::app) texts: FillTexts,
    held: Option<Held>,
    tallest: f32,
}

const HEADING: &str = "Fill the steps";

/// Its width where the window has room for it, in points.
const WIDTH: f32 = 620.0;
const FIELD_WIDTH: f32 = 80.0;

/// The height of the diagram, in points.
const HEIGHT: f32 = 170.0;

impl FillDialog {
    /// A dialog about the steps of a set.
    pub(in crate::app) fn over(desk: &Desk, set: SetId, texts: FillTexts) -> Self {
        let set = set_or_baseline(desk, set);
        let texts = match About::of(desk, set) {
            Some(about) => texts.for_set(set, about.set),
            None => texts,
        };
        Self {
            set,
            texts,
            held: None,
            tallest: 0.0,
        }
    }
}

/// Shows the dialog; the answer once there is one.
pub(in crate::app) fn fill_dialog_ui(
    ctx: &Context,
    dialog: &mut FillDialog,
    desk: &Desk,
    palette: &Palette,
) -> Option<FinderAnswer> {
    let Some(about) = About::of(desk, dialog.set) else {
        return Some(FinderAnswer::Cancel);
    };
    let words = format!(
        "Which gears lie between first and top, in the set \"{}\"?",
        about.set.name
    );
    let focused = ctx.memory(egui::Memory::focused);
    let most = crate::gearing::GearSet::MOST_GEARS;
    let opening = Opening {
        salt: "steps",
        name: HEADING,
        words: &words,
        width: WIDTH,
        keeps_page_keys: focused.is_some_and(|id| (0..most).any(|at| id == handle_id(at))),
    };
    let mut tallest = dialog.tallest;
    let answer = finder_frame_ui(ctx, &opening, &mut tallest, palette, |ui| {
        dialog.contents_ui(ui, &about, palette)
    });
    dialog.tallest = tallest;
    answer
}

impl FillDialog {
    fn contents_ui(&mut self, ui: &mut Ui, about: &About<'_>, palette: &Palette) -> Shown {
        let laws = Law::ALL.map(|law| (law, law.text().to_owned()));
        if let Some(law) = choices_ui(ui, "Steps", self.texts.typed.law, &laws) {
            self.texts.typed.law = law;
        }
        let is_through = self.fields_ui(ui, palette);
        let wish = self.texts.wish();
        let laid_out = wish.and_then(|wish| {
            let of = (about.set, &about.results.drivetrain);
            let layout = self.texts.layout(&wish, of)?;
            let spec = wish
                .filled(about.set, &layout)
                .map_err(|why| why.to_string())?;
            Ok((wish, layout, spec))
        });
        let taken = match &laid_out {
            Err(why) => {
                announce(&ui.label(RichText::new(why).color(palette.error)));
                ui.allocate_space(Vec2::new(1.0, HEIGHT));
                Err(why.clone())
            }
            Ok(laid_out) => Ok(self.laid_out_ui(ui, about, laid_out, palette)),
        };
        let after = taken.as_ref().ok().and_then(|taken| {
            let project = taken.applied_to(about.project).ok()?;
            let set = &project.sets.get(about.id)?.set;
            Some(Drivetrain::resolve(set, &project.tyre))
        });
        ui.add_space(4.0);
        whole_set_ui(ui, about, after.as_ref(), about.usual_road_speed(), palette);
        Shown {
            taken,
            is_through,
            teeth: None,
        }
    }

    /// The figures that steps are laid out by; whether Enter was pressed in one.
    fn fields_ui(&mut self, ui: &mut Ui, palette: &Palette) -> bool {
        let is_progressive = self.texts.typed.law == Law::Progressive;
        let problems = [
            self.texts.gears().err(),
            self.texts.first().err(),
            self.texts.top().err(),
            self.texts.progression().err(),
        ];
        let typed = &mut self.texts.typed;
        let fields = [
            ("Gears", &mut typed.gears, true, ""),
            ("First gear", &mut typed.first, true, ""),
            ("Top gear", &mut typed.top, true, ""),
            (
                "Each step over the next",
                &mut typed.progression,
                is_progressive,
                "1 is even, 1.1 usual",
            ),
        ];
        let mut is_through = false;
        for ((name, text, is_shown, now), problem) in fields.into_iter().zip(problems) {
            if !is_shown {
                continue;
            }
            let field = TypedField {
                name,
                width: FIELD_WIDTH,
                now,
            };
            let (response, is_entered) = typed_ui(ui, &field, text, problem.as_deref(), palette);
            if name == "Gears" {
                begin_with_field(ui, &response);
            }
            is_through |= is_entered;
        }
        is_through
    }

    /// The diagram with what is said of it; the set with these steps.
    fn laid_out_ui(
        &mut self,
        ui: &mut Ui,
        about: &About<'_>,
        (wish, layout, spec): &(FillWish, StepLayout, GearSetSpec),
        palette: &Palette,
    ) -> Taken {
        let moved = self.diagram_ui(ui, about, (layout, spec), palette);
        if let Some(moved) = moved.filter(|moved| moved != layout) {
            self.texts.keep_moved(moved);
            ui.ctx().request_repaint();
        }
        ui.horizontal_wrapped(|ui| {
            announce(&ui.label(progression_words(layout)));
            if self.texts.is_moved() {
                let anew = ui.small_button("Lay them anew");
                reveal(&anew);
                if anew.clicked() {
                    self.texts.lay_anew();
                }
            } else if wish.gears > 2 {
                let words = "a step can be dragged; first and top stay";
                ui.label(RichText::new(words).color(palette.dim_text));
            }
        });
        Taken::Parts(about.id, Box::new(spec.clone()), "steps laid out")
    }

    /// The steps against the gears; what a hand has made of them.
    fn diagram_ui(
        &mut self,
        ui: &mut Ui,
        about: &About<'_>,
        (layout, spec): (&StepLayout, &GearSetSpec),
        palette: &Palette,
    ) -> Option<StepLayout> {
        let chain = spec
            .gears
            .iter()
            .filter(|gear| gear.role == GearRole::Shifted);
        let labels: Vec<String> = chain.map(|gear| gear.label.to_string()).collect();
        let present = steps(&about.results.drivetrain);
        let mut diagram = StepDiagram::of(&labels, &present, &layout.steps());
        if let Some(held) = &self.held {
            diagram.scale = held.scale;
        }
        let text_size = TextStyle::Small.resolve(ui.style()).size;
        let size = Vec2::new(ui.available_width(), HEIGHT);
        let (room, _) = ui.allocate_exact_size(size, Sense::hover());
        let places = StepPlaces::in_room(room, &diagram, text_size);
        let livery = about
            .project
            .sets
            .get(about.id)
            .map(|candidate| candidate.livery);
        let color = livery.map_or(palette.text, |livery| palette.set(livery));
        paint(ui.painter(), &diagram, &places, (palette, color), text_size);
        let image = ui.interact(
            places.frame,
            Id::unique("steps against the gears"),
            Sense::hover(),
        );
        let name = "Step of each gear over the next";
        image.widget_info(|| WidgetInfo::labeled(Role::Image, true, name));
        describe(&image, &diagram.summary);
        let handles = Handles {
            diagram: &diagram,
            places: &places,
            layout,
            held: &mut self.held,
            color,
            palette,
        };
        handles.show(ui)
    }
}

/// How much wider each step is than the next, in words.
fn progression_words(layout: &StepLayout) -> String {
    let steps = layout.steps();
    let over: Vec<String> = steps
        .windows(2)
        .map(|two| step_text(two[0] / two[1]))
        .collect();
    match over.as_slice() {
        [] => "One step.".to_owned(),
        over => format!("Each step over the next: {}", over.join(", ")),
    }
}
