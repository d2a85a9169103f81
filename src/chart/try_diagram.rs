//! The small diagram of tries: the turning torque that was measured with each shim, and where the next one comes.

use super::axis::round_step;
use crate::units::{decimals_text, plain_number, round_to};

/// Tries as they are drawn, in the units in which they are shown.
#[derive(Debug, Clone, PartialEq)]
pub struct TryDiagram {
    /// Shim and torque of each try, in the order in which they were made: the last is the newest.
    pub tries: Vec<[f64; 2]>,
    /// The torque that is wanted, from least to most.
    pub wanted: Option<[f64; 2]>,
    /// The line through the two newest tries, from the left end of the diagram to the right; none where there is
    /// only one, or both have the same shim.
    pub line: Option<[[f64; 2]; 2]>,
    /// The estimate of the next shim, and what it would turn at by that line.
    pub next: Option<[f64; 2]>,
    /// The level axis, of shims.
    pub shim: TryScale,
    /// The upright axis, of torques.
    pub torque: TryScale,
    /// All of it in one spoken sentence.
    pub summary: String,
}

/// One axis of such a diagram.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TryScale {
    /// Its least and its greatest value.
    pub range: [f64; 2],
    /// The step of its marks.
    pub mark: f64,
    /// The sign of its unit.
    pub sign: &'static str,
}

/// What tries are drawn of, all of it in the units in which it is shown.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tries<'a> {
    /// Shim and torque of each try, the newest last.
    pub tries: &'a [[f64; 2]],
    /// The torque that is wanted, from least to most.
    pub wanted: Option<[f64; 2]>,
    /// The estimate of the next shim, where there is one.
    pub next_shim: Option<f64>,
    /// The signs of the units of shims and of torques.
    pub signs: [&'static str; 2],
}

/// About how many marks an axis has.
const MARKS: f64 = 5.0;

/// How much room is left on both sides of what an axis holds, as a share of it.
const ROOM: f64 = 0.25;

/// How much an axis holds at least, as a share of its values: one try alone has a width too.
const LEAST_SPAN: f64 = 0.1;

/// How fine figures are told, as a share of the step between two marks.
const TOLD: f64 = 0.01;

impl TryDiagram {
    /// The diagram of tries; none where there is none, or a value is no number.
    pub fn of(of: &Tries<'_>) -> Option<Self> {
        let last = of.tries.last()?;
        let numbers = of.tries.iter().flatten().chain(of.wanted.iter().flatten());
        let are_numbers = numbers.chain(&of.next_shim).all(|value| value.is_finite());
        are_numbers.then_some(())?;
        let through = match of.tries {
            [.., before, last] => slope([*before, *last]),
            _ => None,
        };
        let on_line = |shim: f64| through.map(|slope| [shim, last[1] + slope * (shim - last[0])]);
        let next = of.next_shim.and_then(on_line);
        let places = || of.tries.iter().copied().chain(next);
        let torques = places().map(|[_, torque]| torque);
        let torques = torques.chain(of.wanted.into_iter().flatten());
        let shim = TryScale::holding(places().map(|[shim, _]| shim), of.signs[0]);
        let torque = TryScale::holding(torques, of.signs[1]);
        let line = || Some([on_line(shim.range[0])?, on_line(shim.range[1])?]);
        Some(Self {
            tries: of.tries.to_vec(),
            wanted: of.wanted,
            line: line(),
            next,
            shim,
            torque,
            summary: summary(of, next, [shim, torque]),
        })
    }
}

/// The slope of the line through two tries; none where it stands upright.
fn slope([before, last]: [[f64; 2]; 2]) -> Option<f64> {
    let slope = (last[1] - before[1]) / (last[0] - before[0]);
    slope.is_finite().then_some(slope)
}

impl TryScale {
    /// A scale with room around these values, none of which is below 0.
    fn holding(values: impl Iterator<Item = f64> + Clone, sign: &'static str) -> Self {
        let least = values.clone().fold(f64::INFINITY, f64::min);
        let most = values.fold(f64::NEG_INFINITY, f64::max);
        let span = (most - least).max(LEAST_SPAN * most.abs());
        // With nothing but 0 there is still a scale.
        let span = if span > 0.0 { span } else { 1.0 };
        let short = (span - (most - least)) / 2.0;
        let room = short + ROOM * span;
        let range = [(least - room).max(0.0), most + room];
        Self {
            range,
            mark: round_step((range[1] - range[0]) / MARKS),
            sign,
        }
    }

    /// Its marks, each with its figure.
    pub fn marks(&self) -> impl Iterator<Item = (f64, String)> {
        let [least, most] = self.range;
        let mark = self.mark;
        let first = (least / mark - DUST).ceil();
        let decimals = (-mark.log10().floor()).clamp(0.0, 9.0);
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "from 0 to 9"
        )]
        let decimals = decimals as usize;
        let marks = (0_u8..20).map(move |n| (first + f64::from(n)) * mark);
        marks
            .take_while(move |at| *at <= most + DUST * mark)
            .map(move |at| (at, decimals_text(at, decimals)))
    }

    /// A value with its unit, as fine as the diagram shows it: `1.15 mm`.
    pub fn told(&self, value: f64) -> String {
        let grain = 10_f64.powf((self.mark * TOLD).log10().floor());
        format!("{} {}", plain_number(round_to(value, grain)), self.sign)
    }
}

/// What rounding may leave between a mark and an end of its axis, in steps.
const DUST: f64 = 1e-9;

fn summary(of: &Tries<'_>, next: Option<[f64; 2]>, [shim, torque]: [TryScale; 2]) -> String {
    let told =
        |[at, measured]: &[f64; 2]| format!("{} at {}", torque.told(*measured), shim.told(*at));
    let tries: Vec<String> = of.tries.iter().map(told).collect();
    let wanted = of.wanted.map(|ends| {
        let [least, most] = ends.map(|end| torque.told(end));
        format!("; wanted {least} to {most}")
    });
    let next = next.map(|[next, _]| {
        let next = shim.told(next);
        format!("; by the line through the last two the next shim is about {next}, an estimate")
    });
    let of_tries = tries.join(", ");
    format!(
        "Turning torque against shim, the newest last: {of_tries}{}{}",
        wanted.unwrap_or_default(),
        next.unwrap_or_default()
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const SIGNS: [&str; 2] = ["mm", "N·m"];

    fn diagram(tries: &[[f64; 2]], next_shim: Option<f64>) -> TryDiagram {
        let wanted = Some([1.4, 1.6]);
        let signs = SIGNS;
        TryDiagram::of(&Tries {
            tries,
            wanted,
            next_shim,
            signs,
        })
        .unwrap()
    }

    #[test]
    fn the_line_goes_through_the_two_newest_tries_and_the_estimate_stands_on_it() {
        let tries = [[0.9, 3.0], [1.1, 1.0], [1.2, 2.0]];
        let diagram = diagram(&tries, Some(1.15));
        let [from, to] = diagram.line.unwrap();
        let at = |shim: f64| from[1] + (to[1] - from[1]) * (shim - from[0]) / (to[0] - from[0]);
        for [shim, torque] in &tries[1..] {
            assert!((at(*shim) - torque).abs() < 1e-9);
        }
        let next = diagram.next.unwrap();
        assert!((next[0] - 1.15).abs() < 1e-12 && (next[1] - 1.5).abs() < 1e-9);
        let [least, most] = diagram.shim.range;
        assert!((from[0] - least).abs() < 1e-12 && (to[0] - most).abs() < 1e-12);
        assert_eq!(
            diagram.summary,
            "Turning torque against shim, the newest last: 3 N·m at 0.9 mm, 1 N·m at 1.1 mm, 2 N·m at 1.2 mm; \
             wanted 1.4 N·m to 1.6 N·m; by the line through the last two the next shim is about 1.15 mm, an estimate"
        );
    }

    #[test]
    fn one_try_has_a_place_but_no_line_and_no_estimate() {
        let diagram = diagram(&[[1.1, 1.0]], Some(1.15));
        assert_eq!([diagram.line.is_none(), diagram.next.is_none()], [true; 2]);
        let figures: Vec<String> = diagram.shim.marks().map(|(_, figure)| figure).collect();
        assert_eq!(figures, ["1.05", "1.10", "1.15"]);
        assert!(!diagram.summary.contains("next"), "{}", diagram.summary);
    }

    #[test]
    fn two_tries_with_the_same_shim_have_no_line() {
        let diagram = diagram(&[[1.1, 1.0], [1.1, 1.2]], None);
        assert_eq!(diagram.line, None);
    }

    #[test]
    fn without_a_try_or_with_what_is_no_number_there_is_no_diagram() {
        let of = |tries: &[[f64; 2]]| {
            TryDiagram::of(&Tries {
                tries,
                wanted: None,
                next_shim: None,
                signs: SIGNS,
            })
        };
        assert_eq!(of(&[]), None);
        assert_eq!(of(&[[1.0, f64::NAN]]), None);
        assert!(of(&[[0.0, 0.0]]).is_some());
    }

    #[test]
    fn inches_are_told_as_finely_as_they_are_typed() {
        let tries = [[0.0435, 9.0], [0.0472, 18.0]];
        let diagram = TryDiagram::of(&Tries {
            tries: &tries,
            wanted: Some([12.0, 15.0]),
            next_shim: Some(0.0454),
            signs: ["in", "lbf·in"],
        })
        .unwrap();
        let said = [
            "9 lbf·in at 0.0435 in",
            "18 lbf·in at 0.0472 in",
            "about 0.0454 in",
        ];
        assert!(
            said.iter().all(|said| diagram.summary.contains(said)),
            "{}",
            diagram.summary
        );
    }

    proptest! {
        #[test]
        fn everything_lies_within_the_axes_which_have_some_round_marks(
            tries in proptest::collection::vec([0.0..50.0, 0.0..1000.0], 1..6),
            wanted in 0.0..1000.0,
        ) {
            let diagram = TryDiagram::of(&Tries {
                tries: &tries,
                wanted: Some([wanted, wanted + 10.0]),
                next_shim: None,
                signs: SIGNS,
            })
            .unwrap();
            let is_in = |scale: &TryScale, value: f64| (scale.range[0]..=scale.range[1]).contains(&value);
            for [shim, torque] in &diagram.tries {
                prop_assert!(is_in(&diagram.shim, *shim) && is_in(&diagram.torque, *torque));
            }
            prop_assert!(is_in(&diagram.torque, wanted) && is_in(&diagram.torque, wanted + 10.0));
            for scale in [diagram.shim, diagram.torque] {
                let marks: Vec<(f64, String)> = scale.marks().collect();
                prop_assert!((2..=6).contains(&marks.len()), "{:?}", marks);
                for (at, figure) in marks {
                    let read: f64 = figure.parse().unwrap();
                    prop_assert!((read - at).abs() < 1e-9 * scale.mark.max(1.0), "{} {}", at, figure);
                }
            }
        }
    }
}
