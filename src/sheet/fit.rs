//! A seat, a part, and the interference of both, in words.

use crate::units::plain_number;
use crate::workshop::{
    Diameter, FIT_CAUTIONS, Interference, MAKER_DECIDES, SeatClass, SeatFinish, SeatSide,
    SizeLimits,
};

/// A fit that was asked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AnsweredFit {
    /// The nominal diameter.
    pub diameter: Diameter,
    /// The class of the seat.
    pub class: SeatClass,
    /// Its limits there.
    pub seat: SizeLimits,
    /// The limits of the part.
    pub part: SizeLimits,
    /// Whether they were given; else they are those of a bearing of the Normal class.
    pub is_part_given: bool,
}

impl AnsweredFit {
    /// How much the part is tighter than the seat.
    pub fn interference(&self) -> Interference {
        self.class.side().interference(self.seat, self.part)
    }
}

/// The limits, the interference, what of it works on a shaft, and what is said beside every fit.
pub fn text(answered: &AnsweredFit) -> String {
    let at = answered.diameter;
    let limits = |limits: SizeLimits| format!("{} ({})", limits.size_words(at), limits.words());
    let interference = answered.interference();
    let class = answered.class;
    let seat = format!("{} {class}", class.side().word());
    let mut lines = vec![
        format!(
            "{seat} of {} mm: {}",
            plain_number(at.mm()),
            limits(answered.seat)
        ),
        format!("{}: {}", part_words(answered), limits(answered.part)),
        interference.words(),
    ];
    lines.extend(working_line(answered));
    lines.extend(interference.tightness(at).sentence(at));
    lines.extend(FIT_CAUTIONS.map(str::to_owned));
    lines.push(MAKER_DECIDES.to_owned());
    lines.join("\n") + "\n"
}

fn part_words(answered: &AnsweredFit) -> &'static str {
    if answered.is_part_given {
        "part as given"
    } else {
        answered.class.side().normal_bearing_words()
    }
}

/// What works of the most of it, where there is interference at all: makers say it of shafts.
fn working_line(answered: &AnsweredFit) -> Option<String> {
    let interference = answered.interference();
    let is_shaft = answered.class.side() == SeatSide::Shaft;
    let working = |finish| interference.working(finish, answered.diameter).words();
    (is_shaft && interference.most_um > 0.0).then(|| {
        format!(
            "what works of it: {} on a ground seat, {} on a turned one",
            working(SeatFinish::Ground),
            working(SeatFinish::Turned)
        )
    })
}
