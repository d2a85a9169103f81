//! Typed engines: a torque curve in whatever form it was copied, a brochure's figures, a Willans line.

use super::{Quantity, Reading, told};
use crate::gearing::{EngineSpeed, parse_decimal, parse_rpm};
use crate::import::torque::read_torque;
use crate::motion::{
    Brochure, FrictionPressure, Power, SlopeEfficiency, Torque, TorqueCurve, TorquePoint,
    WillansLine,
};
use crate::units::{OutputUnit, PowerUnit, TorqueUnit, round_to};

/// A torque curve, and whether the text says that it was measured at the wheels.
///
/// # Errors
/// When the text holds no curve.
pub(in crate::app) fn torque_curve(text: &str) -> Reading<Option<(TorqueCurve, bool)>> {
    if text.trim().is_empty() {
        return Ok(None);
    }
    let read = read_torque(text).map_err(told)?;
    let is_as_typed = read.taken == OutputUnit::Torque(TorqueUnit::NewtonMetre);
    let points = read.points.iter().map(|point| {
        let nm = point.torque_nm;
        let nm = if is_as_typed {
            nm
        } else {
            round_to(nm, CONVERTED)
        };
        Ok(TorquePoint {
            speed: point.engine_speed,
            torque: Torque::from_nm(nm).map_err(told)?,
        })
    });
    let curve = TorqueCurve::new(points.collect::<Reading<Vec<_>>>()?).map_err(told)?;
    Ok(Some((curve, read.is_at_wheels)))
}

/// What was guessed or left out of a text that holds a torque curve.
pub(in crate::app) fn torque_remarks(text: &str) -> Vec<String> {
    read_torque(text).map_or_else(|_| Vec::new(), |read| read.remarks)
}

/// A figure that was converted is told to so much: nobody measured the digits behind.
const CONVERTED: f64 = 0.01;

/// How a brochure's figures are typed.
const BROCHURE: &str = "type peak torque and peak power, as 152 N·m at 4600 rpm, 96 kW at 6180 rpm";

/// The curve that a brochure's figures make: peak torque and peak power with their engine speeds, in
/// either order; the torque may hold from one engine speed to another.
///
/// # Errors
/// When figures are missing, the power has no unit, or no one engine has these figures.
pub(in crate::app) fn brochure(text: &str) -> Reading<Option<TorqueCurve>> {
    if text.trim().is_empty() {
        return Ok(None);
    }
    let mut figures = figures(text);
    figures.retain(|figure| !figure.is_displacement());
    if figures
        .first()
        .is_some_and(|figure| figure.power().is_some())
        && figures.len() >= 2
    {
        figures.rotate_left(2);
    }
    let (torque, plateau, power, at) = match &figures[..] {
        [torque, first, power, at] => (torque, [first, first], power, at),
        [torque, first, last, power, at] => (torque, [first, last], power, at),
        _ => return Err(BROCHURE.to_owned()),
    };
    let unit = power.power();
    let unit = unit.ok_or("write kW, hp or PS behind the power")?;
    let nm = torque.torque_nm()?;
    let kw = hundredths_of(unit, power.number()?);
    let [first, last] = plateau.map(Figure::rpm);
    let figures = Brochure::new(
        Torque::from_nm(nm).map_err(told)?,
        [first?, last?],
        Power::from_kw(kw).map_err(told)?,
        at.rpm()?,
    );
    let curve = figures.map_err(told)?.curve().map_err(told)?;
    Ok(Some(curve))
}

/// A power in kW: as typed, or converted and rounded.
fn hundredths_of(unit: PowerUnit, power: f64) -> f64 {
    match unit {
        PowerUnit::Kilowatt => power,
        PowerUnit::Horsepower | PowerUnit::MetricHorsepower => {
            round_to(unit.to_kw(power), CONVERTED)
        }
    }
}

/// A figure of a brochure, and what stands behind it up to the next.
struct Figure {
    number: String,
    behind: String,
}

impl Figure {
    fn number(&self) -> Reading<f64> {
        parse_decimal(&self.number).map_err(|error| error.about("a figure", "152"))
    }

    fn rpm(&self) -> Reading<EngineSpeed> {
        let rpm = parse_rpm(&self.number);
        let rpm = rpm.map_err(|error| error.about("an engine speed", "4600"))?;
        EngineSpeed::from_rpm(rpm).map_err(told)
    }

    fn torque_nm(&self) -> Reading<f64> {
        let torque = self.number()?;
        Ok(if self.behind.contains("lb") {
            round_to(TorqueUnit::PoundFoot.to_nm(torque), CONVERTED)
        } else if self.behind.contains("kg") {
            round_to(TorqueUnit::KilogramForceMetre.to_nm(torque), CONVERTED)
        } else {
            torque
        })
    }

    /// Whether it is what stands before a brochure's figures: `2.0 litre`, `1998 cc`.
    fn is_displacement(&self) -> bool {
        let word = self.behind.trim_start_matches(['-', ' ']);
        let word = word.split(|c: char| !c.is_alphanumeric()).next();
        let units = [
            "l", "litre", "litres", "liter", "liters", "ltr", "cc", "ccm", "cm³",
        ];
        word.is_some_and(|word| units.contains(&word))
    }

    /// The unit behind it, where that is one of power.
    fn power(&self) -> Option<PowerUnit> {
        let word = self.behind.split_whitespace().next()?;
        let word = word.trim_matches(|c: char| !c.is_alphabetic());
        match word {
            "kw" => Some(PowerUnit::Kilowatt),
            "hp" | "bhp" => Some(PowerUnit::Horsepower),
            "ps" | "cv" | "ch" | "pk" => Some(PowerUnit::MetricHorsepower),
            _ => None,
        }
    }
}

/// The figures of a text, in their order.
fn figures(text: &str) -> Vec<Figure> {
    // Units that hold a digit are no figures.
    let mut text = text.to_lowercase().replace("cm3", "ccm");
    for unit in ["min-1", "min^-1", "1/min"] {
        text = text.replace(unit, "rpm");
    }
    let mut figures: Vec<Figure> = Vec::new();
    let mut is_in_number = false;
    for c in text.chars() {
        let is_mark = is_in_number && matches!(c, '.' | ',');
        if c.is_ascii_digit() || is_mark {
            if !is_in_number {
                figures.push(Figure {
                    number: String::new(),
                    behind: String::new(),
                });
            }
            is_in_number = true;
        } else {
            is_in_number = false;
        }
        if let Some(last) = figures.last_mut() {
            let part = if is_in_number {
                &mut last.number
            } else {
                &mut last.behind
            };
            part.push(c);
        }
    }
    for figure in &mut figures {
        // A comma behind a figure parts it from the next.
        let bare = figure.number.trim_end_matches(['.', ',']).len();
        figure.number.truncate(bare);
    }
    figures
}

/// A Willans line: slope efficiency and friction pressure in bar.
///
/// # Errors
/// When there are not two numbers, or one is outside its range.
pub(in crate::app) fn willans(text: &str) -> Reading<Option<WillansLine>> {
    let parts = text.split(|c: char| c.is_whitespace() || c == ';');
    let parts: Vec<&str> = parts.filter(|part| !part.is_empty()).collect();
    let [slope, bar] = match parts[..] {
        [] => return Ok(None),
        [slope, bar] | [slope, bar, "bar"] => [slope, bar],
        _ => {
            return Err("type slope efficiency and friction pressure, as 0.4 1.6 bar".to_owned());
        }
    };
    let slope = Quantity {
        new: SlopeEfficiency::new,
        example: "0.4",
        unit: "",
    }
    .read(slope)?;
    let friction = Quantity {
        new: FrictionPressure::from_bar,
        example: "1.6",
        unit: "bar",
    }
    .read(bar)?;
    Ok(slope
        .zip(friction)
        .map(|(slope_efficiency, friction)| WillansLine {
            slope_efficiency,
            friction,
        }))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn figures_of(text: &str) -> String {
        let curve = brochure(text).unwrap().unwrap();
        let of = curve.brochure().unwrap();
        let [first, last] = of.plateau().map(EngineSpeed::rpm);
        let (nm, kw, at) = (of.torque().nm(), of.power().kw(), of.power_speed().rpm());
        format!("{nm} {first} {last} {kw} {at}")
    }

    #[test]
    fn a_brochure_is_read_as_it_is_printed() {
        let plain = "152 4600 4600 96 6180";
        for text in [
            "152 N·m at 4600 rpm, 96 kW at 6180 rpm",
            "152 Nm @ 4600, 96 kW @ 6180",
            "96 kW at 6,180 rpm; 152 Nm at 4,600 rpm",
            "152 Nm bei 4600 1/min, 96 kW bei 6180 min-1",
            "2.0 litre petrol, 152 Nm at 4600 rpm, 96 kW at 6180 rpm",
            "1998 cm3: 152 Nm at 4600 rpm, 96 kW at 6180 rpm",
        ] {
            assert_eq!(figures_of(text), plain, "{text}");
        }
        let plateau = figures_of("320 Nm at 1750–3000 rpm, 110 kW at 3600");
        assert_eq!(plateau, "320 1750 3000 110 3600");
        let converted = figures_of("112 lb-ft at 4600, 130 PS at 6180");
        assert_eq!(converted, "151.85 4600 4600 95.61 6180");
    }

    #[test]
    fn what_is_no_brochure_and_no_engine_is_refused() {
        for (text, says) in [
            ("152 Nm", "type peak torque and peak power"),
            ("152 at 4600, 96 at 6180", "write kW, hp or PS"),
            ("152 Nm at 4600, 196 kW at 6180", "takes more torque"),
            ("0 Nm at 4600, 0 kW at 6180", "above 0 are needed"),
        ] {
            let problem = brochure(text).unwrap_err();
            assert!(problem.contains(says), "{text}: {problem}");
        }
    }

    #[test]
    fn a_curve_is_read_as_it_was_copied() {
        let points = |text: &str| {
            let (curve, is_at_wheels) = torque_curve(text).unwrap().unwrap();
            let points = curve.points().iter();
            let points: Vec<_> = points.map(|p| (p.speed.rpm(), p.torque.nm())).collect();
            (points, is_at_wheels)
        };
        let both = vec![(1000.0, 96.0), (2500.0, 130.0)];
        assert_eq!(points("1000:96 2500:130"), (both.clone(), false));
        assert_eq!(points("rpm\tNm\n1000\t96\n2500\t130"), (both, false));
        let (converted, _) = points("rpm lb-ft\n1000 100\n2500 120");
        assert_eq!(converted, [(1000.0, 135.58), (2500.0, 162.7)]);
        assert_eq!(torque_curve(" "), Ok(None));
        assert!(
            torque_curve("strong")
                .unwrap_err()
                .contains("no torque curve")
        );
    }

    #[test]
    fn a_willans_line_is_two_numbers() {
        let line = willans("0,4 1.6 bar").unwrap().unwrap();
        assert!((line.slope_efficiency.share() - 0.4).abs() < 1e-12);
        assert!((line.friction.bar() - 1.6).abs() < 1e-12);
        for text in ["0.4", "1 2 3", "0.4 1.6 psi"] {
            assert!(willans(text).unwrap_err().contains("as 0.4 1.6 bar"));
        }
        assert!(willans("0.4 20").unwrap_err().contains("between 0 and 10"));
    }
}
