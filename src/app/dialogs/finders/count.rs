//! What a vehicle has: turns that are counted on the lift, or an engine speed read at a measured road speed, and
//! the gear that it is among those of all sets.

use super::choices::choices_ui;
use super::typed_field::{TypedField, begin_with_field, typed_ui};
use crate::app::desk::Desk;
use crate::app::dialogs::modal::{Frame, begin_anew, set_width};
use crate::app::heard::{announce, heading_ui};
use crate::app::input::Scroll;
use crate::app::typed::{self, Reading};
use crate::checks::{Counted, EngineSpeedError, Measured, RoadSpeedError, Turns, TurnsError};
use crate::draw::palette::Palette;
use crate::gearing::{OutOfRange, RollingCircumference, parse_decimal, parse_rpm};
use crate::letters::capitalised;
use crate::project::Project;
use crate::sheet::counted::CountedRatio;
use crate::units::{SpeedUnit, percent_difference_text, ratio_text};
use egui::{Context, Id, RichText, ScrollArea, Ui};

/// How it is measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
enum Way {
    /// One wheel held behind an open differential.
    #[default]
    OneWheel,
    /// Both wheels turned together.
    BothWheels,
    /// On the road.
    Driven,
}

impl Way {
    const ALL: [Self; 3] = [Self::OneWheel, Self::BothWheels, Self::Driven];

    fn text(self) -> &'static str {
        match self {
            Self::OneWheel => "one wheel held",
            Self::BothWheels => "both wheels turned",
            Self::Driven => "driven",
        }
    }

    /// What both readings are called.
    fn names(self, units: SpeedUnit) -> [String; 2] {
        let turns = "Turns of the engine".to_owned();
        match self {
            Self::OneWheel => [turns, "Turns of the free wheel".to_owned()],
            Self::BothWheels => [turns, "Turns of both wheels".to_owned()],
            Self::Driven => [
                "Engine speed, rpm".to_owned(),
                format!("Road speed, {}", units.sign()),
            ],
        }
    }
}

/// What is typed, for as long as the window looks at the document.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(in crate::app) struct CountTexts {
    way: Way,
    counted: [String; 2],
    driven: [String; 2],
}

/// The dialog while it is open.
#[derive(Debug)]
pub(in crate::app) struct CountDialog {
    pub(in crate::app) texts: CountTexts,
}

const HEADING: &str = "What is fitted";

/// What is asked, and how to stay whole.
const WORDS: &str = "Which gear is it? Count turns with a gear engaged, or drive at a speed that a satellite \
    receiver measures. Behind a figure stands what it may be off, as 41.1 ± 0.1 or 41.1 0.1; without it the figure counts as exact. Lift and chock as the maker \
    says; keep clear of what turns.";

/// Its width where the window has room for it, in points.
const WIDTH: f32 = 560.0;
const FIELD_WIDTH: f32 = 110.0;

/// What stands around what scrolls, in points.
const ROOM_BESIDE_CONTENTS: f32 = 130.0;

/// How many gears are listed.
const LISTED: usize = 5;

/// Shows the dialog; whether it is to be closed.
pub(in crate::app) fn count_dialog_ui(
    ctx: &Context,
    dialog: &mut CountDialog,
    desk: &Desk,
    palette: &Palette,
) -> bool {
    let frame = Frame {
        salt: "count",
        name: HEADING,
        description: WORDS,
        is_question: false,
    };
    let shown = frame.show(ctx, |ui| {
        set_width(ui, WIDTH);
        let keys = Scroll::taken_by_page(ctx);
        let room = ctx.content_rect().height() - ROOM_BESIDE_CONTENTS;
        let area = ScrollArea::vertical().max_height(room);
        let is_through = area.min_scrolled_height(room).show(ui, |ui| {
            keys.apply(ui);
            ui.set_width(ui.available_width());
            heading_ui(ui, HEADING);
            ui.label(RichText::new(WORDS).color(palette.dim_text));
            dialog.contents_ui(ui, desk.project(), palette)
        });
        ui.add_space(6.0);
        let close = ui.button("Close");
        if is_through.inner {
            close.request_focus();
        }
        close.clicked()
    });
    let is_closed = shown.inner || shown.is_left;
    if is_closed {
        begin_anew(ctx);
    }
    is_closed
}

impl CountDialog {
    /// The readings and what they come to; whether the keys go on to the button.
    fn contents_ui(&mut self, ui: &mut Ui, project: &Project, palette: &Palette) -> bool {
        let ways = Way::ALL.map(|way| (way, way.text().to_owned()));
        if let Some(way) = choices_ui(ui, "Measured", self.texts.way, &ways) {
            self.texts.way = way;
        }
        let is_through = self.fields_ui(ui, project.units, palette);
        ui.add_space(4.0);
        let measured = self.texts.measured(project);
        match measured {
            Ok(None) => {
                ui.label(RichText::new("Type both figures.").color(palette.dim_text));
            }
            // Why it does not read stands beside the field.
            Err(_) => {}
            Ok(Some(measured)) => {
                let counted = CountedRatio::among(measured.overall_ratio(), project);
                counted_ui(ui, &counted, palette);
            }
        }
        is_through
    }

    /// Both fields; whether Enter was pressed in the last.
    fn fields_ui(&mut self, ui: &mut Ui, units: SpeedUnit, palette: &Palette) -> bool {
        let problems = self.texts.problems(units);
        let names = self.texts.way.names(units);
        let ids: Vec<Id> = names
            .iter()
            .map(|name| super::typed_field::id_of(name))
            .collect();
        let mut is_through = false;
        for (at, (name, problem)) in names.iter().zip(problems).enumerate() {
            let field = TypedField {
                name,
                width: FIELD_WIDTH,
                now: "",
            };
            let text = &mut self.texts.texts_mut()[at];
            let (response, is_entered) = typed_ui(ui, &field, text, problem.as_deref(), palette);
            if at == 0 {
                begin_with_field(ui, &response);
            }
            match ids.get(at + 1) {
                Some(next) if is_entered => ui.memory_mut(|memory| memory.request_focus(*next)),
                _ => is_through |= is_entered,
            }
        }
        is_through
    }
}

/// The ratio, what it says of the gears, and the nearest of them.
fn counted_ui(ui: &mut Ui, counted: &CountedRatio, palette: &Palette) {
    let ratio = format!("Overall ratio {}", counted.ratio_words());
    announce(&ui.label(RichText::new(ratio).strong()));
    if let Some(verdict) = counted.verdict() {
        announce(&ui.label(capitalised(&verdict)));
    }
    for (at, gear) in counted.gears.iter().take(LISTED).enumerate() {
        let off = percent_difference_text(counted.difference_share(gear));
        let ratio = ratio_text(gear.overall_ratio);
        let words = format!(
            "{} ({}): {ratio}, {off}",
            capitalised(&gear.words()),
            gear.set
        );
        let color = if counted.is_within(at) {
            palette.text
        } else {
            palette.dim_text
        };
        ui.label(RichText::new(words).color(color));
    }
}

/// A reading, and what it may be off.
type WithError<T, E> = (T, E);

impl CountTexts {
    fn texts_mut(&mut self) -> &mut [String; 2] {
        match self.way {
            Way::OneWheel | Way::BothWheels => &mut self.counted,
            Way::Driven => &mut self.driven,
        }
    }

    /// What was measured; none while something is not typed.
    fn measured(&self, project: &Project) -> Reading<Option<Measured>> {
        match self.way {
            Way::OneWheel | Way::BothWheels => {
                let [input, wheels] = self.counted.each_ref().map(|text| turns(text));
                let both = input?.zip(wheels?);
                Ok(both.map(|(input, wheels)| match self.way {
                    Way::OneWheel => Measured::OneWheelHeld {
                        input,
                        free_wheel: wheels,
                    },
                    Way::BothWheels | Way::Driven => Measured::BothWheels { input, wheels },
                }))
            }
            Way::Driven => self.driven(project),
        }
    }

    fn driven(&self, project: &Project) -> Reading<Option<Measured>> {
        let [rpm, speed] = &self.driven;
        let engine = engine_speed(rpm)?;
        let road = road_speed(speed, project.units)?;
        let tyre = project.tyre_of(&project.sets.baseline().set);
        let circumference = RollingCircumference::from_mm(tyre.rolling_circumference_mm());
        let circumference = circumference.map_err(told)?;
        let both = engine.zip(road);
        Ok(both.map(
            |((engine, engine_error), (road, road_error))| Measured::Driven {
                engine,
                engine_error,
                road,
                road_error,
                circumference,
            },
        ))
    }

    /// Why each field does not read; none where it does.
    fn problems(&self, units: SpeedUnit) -> [Option<String>; 2] {
        match self.way {
            Way::OneWheel | Way::BothWheels => {
                self.counted.each_ref().map(|text| turns(text).err())
            }
            Way::Driven => {
                let [rpm, speed] = &self.driven;
                [engine_speed(rpm).err(), road_speed(speed, units).err()]
            }
        }
    }
}

fn told(error: OutOfRange) -> String {
    error.to_string()
}

/// How a reading with its error is typed.
const WITH_ERROR: &str = "type a figure, or a figure and what it may be off, as 41.1 ± 0.1";

/// A figure and the one behind it, which is what it may be off; none where nothing is typed.
fn parted(text: &str) -> Reading<Option<(&str, Option<&str>)>> {
    // Many keyboards have no ±.
    let items = text.split(|c: char| c.is_whitespace() || matches!(c, '±' | '+' | '/' | '-'));
    let items: Vec<&str> = items.filter(|item| !item.is_empty()).collect();
    match items[..] {
        [] => Ok(None),
        [figure] => Ok(Some((figure, None))),
        [figure, off] => Ok(Some((figure, Some(off)))),
        _ => Err(WITH_ERROR.to_owned()),
    }
}

fn number(text: Option<&str>) -> Reading<f64> {
    let Some(text) = text else {
        return Ok(0.0);
    };
    Ok(parse_decimal(text).ok().ok_or(WITH_ERROR)?)
}

fn turns(text: &str) -> Reading<Option<Counted>> {
    let Some((turns, off)) = parted(text)? else {
        return Ok(None);
    };
    Ok(Some(Counted {
        turns: Turns::new(number(Some(turns))?).map_err(told)?,
        error: TurnsError::new(number(off)?).map_err(told)?,
    }))
}

fn engine_speed(
    text: &str,
) -> Reading<Option<WithError<crate::gearing::EngineSpeed, EngineSpeedError>>> {
    let Some((rpm, off)) = parted(text)? else {
        return Ok(None);
    };
    let off = off
        .map(|off| parse_rpm(off).ok().ok_or(WITH_ERROR))
        .transpose()?;
    let error = EngineSpeedError::from_rpm(off.unwrap_or(0.0)).map_err(told)?;
    Ok(Some((typed::engine_speed(typed::Engine::ANY, rpm)?, error)))
}

fn road_speed(
    text: &str,
    units: SpeedUnit,
) -> Reading<Option<WithError<crate::gearing::RoadSpeed, RoadSpeedError>>> {
    let Some((speed, off)) = parted(text)? else {
        return Ok(None);
    };
    let error = RoadSpeedError::from_kmh(units.to_kmh(number(off)?)).map_err(told)?;
    let speed = typed::one_road_speed(speed, units)?;
    Ok(speed.map(|speed| (speed, error)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_reading_is_typed_with_what_it_may_be_off() {
        let read =
            |text| turns(text).map(|counted| counted.map(|c| (c.turns.turns(), c.error.turns())));
        for text in [
            "41.1 ± 0.1",
            "41.1±0.1",
            "41,1 0,1",
            "41.1 +- 0.1",
            "41.1+/-0.1",
        ] {
            assert_eq!(read(text), Ok(Some((41.1, 0.1))), "{text}");
        }
        assert_eq!(read("41"), Ok(Some((41.0, 0.0))));
        assert_eq!(read("  "), Ok(None));
        for text in ["x", "1 2 3", "41 x"] {
            assert_eq!(read(text), Err(WITH_ERROR.to_owned()), "{text}");
        }
        assert!(read("0").unwrap_err().contains("between"));
    }
}
