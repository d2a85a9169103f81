//! What stands in the technical data, in a few words and a value each: for histories and comparisons.

use super::{DrivingData, EngineData, KnownFuel, RoadData, SetAside, SetEfficiencies, VehicleData};
use crate::gearing::{EngineSpeed, GearSet};
use crate::motion::{
    DrivenAxle, Fuel, Grade, MassFactor, MeasuredAt, Strokes, TorqueCurve, VehicleKind,
};
use crate::project::document::{Candidates, Marks};

/// Whatever is known, each as a few words and its value.
pub(in super::super) type Words = Vec<(String, String)>;

pub(super) fn known(words: Vec<(&str, Option<String>)>) -> Words {
    let known = words.into_iter();
    known
        .filter_map(|(what, value)| Some((what.to_owned(), value?)))
        .collect()
}

/// The engine in words.
pub(in super::super) fn engine_words(engine: &EngineData) -> Words {
    let at_wheels = (engine.measured_at == MeasuredAt::Wheels).then(|| "at the wheels".to_owned());
    let two_strokes = (engine.strokes == Strokes::Two).then(|| "two".to_owned());
    let diesel = (engine.fuel == Fuel::Diesel).then(|| "diesel".to_owned());
    let willans = engine.willans.map(|line| {
        let (slope, bar) = (line.slope_efficiency.share(), line.friction.bar());
        format!("{slope}, {bar} bar")
    });
    known(vec![
        ("torque curve", engine.curve.as_ref().map(curve_words)),
        ("torque measured", at_wheels),
        (
            "engine inertia",
            engine.inertia.map(|i| format!("{} kg·m²", i.kgm2())),
        ),
        (
            "displacement",
            engine.displacement.map(|d| format!("{} L", d.l())),
        ),
        ("strokes", two_strokes),
        ("fuel", diesel),
        ("Willans line", willans),
    ])
}

fn curve_words(curve: &TorqueCurve) -> String {
    if let Some(brochure) = curve.brochure() {
        let [first, last] = brochure.plateau().map(EngineSpeed::rpm);
        let plateau = if first < last {
            format!("{first}–{last}")
        } else {
            first.to_string()
        };
        let (torque, power) = (brochure.torque().nm(), brochure.power().kw());
        let at = brochure.power_speed().rpm();
        return format!("{torque} N·m at {plateau} rpm, {power} kW at {at} rpm");
    }
    let points = curve.points().iter();
    let points = points.map(|point| format!("{}:{}", point.speed.rpm(), point.torque.nm()));
    points.collect::<Vec<_>>().join(" ")
}

/// The vehicle in words.
pub(in super::super) fn vehicle_words(vehicle: &VehicleData) -> Words {
    let coast_down = vehicle.coast_down.map(|load| {
        let (a, b, c) = (load.constant.n(), load.linear.n_per_m_s(), load.quadratic);
        format!("{a} {b} {}", c.n_per_m2_s2())
    });
    let driven = vehicle.driven.map(|axle| match axle {
        DrivenAxle::Front => "front".to_owned(),
        DrivenAxle::Rear => "rear".to_owned(),
        DrivenAxle::All => "all".to_owned(),
    });
    let factor = vehicle.mass_factor.map(|factor| match factor {
        MassFactor::None => "none".to_owned(),
        MassFactor::Formula => "formula".to_owned(),
    });
    let metres = |m: f64| format!("{m} m");
    let m2 = |m2: f64| format!("{m2} m²");
    known(vec![
        (
            "kind of vehicle",
            vehicle.kind.map(VehicleKind::name).map(str::to_owned),
        ),
        ("mass", vehicle.mass.map(|m| format!("{} kg", m.kg()))),
        ("measured road load", coast_down),
        (
            "rolling coefficient",
            vehicle.rolling.map(|r| r.value().to_string()),
        ),
        ("drag area", vehicle.drag_area.map(|a| m2(a.m2()))),
        (
            "drag coefficient",
            vehicle.drag_coefficient.map(|c| c.value().to_string()),
        ),
        ("frontal area", vehicle.frontal_area.map(|a| m2(a.m2()))),
        (
            "air density",
            vehicle.air_density.map(|d| format!("{} kg/m³", d.kg_m3())),
        ),
        ("driven axle", driven),
        ("adhesion", vehicle.adhesion.map(|a| a.value().to_string())),
        ("wheelbase", vehicle.wheelbase.map(|w| metres(w.m()))),
        (
            "height of the centre of gravity",
            vehicle.height.map(|h| metres(h.m())),
        ),
        (
            "share of the front axle",
            vehicle.front_share.map(|s| s.share().to_string()),
        ),
        ("mass factor", factor),
        (
            "inertia of the wheels",
            vehicle.wheel_inertia.map(|i| format!("{} kg·m²", i.kgm2())),
        ),
    ])
}

/// Load case and road in words.
pub(in super::super) fn road_words(road: &RoadData) -> Words {
    let trailer = road.trailer.map(|trailer| {
        let (kg, m2) = (trailer.mass.kg(), trailer.drag_area.m2());
        format!("{kg} kg, {m2} m²")
    });
    known(vec![
        ("load", road.load.map(|load| format!("{} kg", load.kg()))),
        ("trailer", trailer),
        (
            "headwind",
            road.headwind.map(|wind| format!("{} km/h", wind.kmh())),
        ),
        (
            "grade",
            road.grade.map(|grade| format!("{} %", grade.percent())),
        ),
        ("shown grades", road.grades.as_ref().map(grades_text)),
        ("set aside", aside_text(road.aside)),
    ])
}

/// `4, 8 %`.
fn grades_text(grades: &Marks<Grade>) -> String {
    let grades = grades.as_slice().iter();
    let percents: Vec<String> = grades.map(|grade| grade.percent().to_string()).collect();
    format!("{} %", percents.join(", "))
}

/// `load, headwind`; none where all of it counts.
fn aside_text(aside: SetAside) -> Option<String> {
    let parts = [
        (aside.load, "load"),
        (aside.trailer, "trailer"),
        (aside.headwind, "headwind"),
    ];
    let aside = parts.into_iter().filter(|(is_aside, _)| *is_aside);
    let names: Vec<&str> = aside.map(|(_, name)| name).collect();
    (!names.is_empty()).then(|| names.join(", "))
}

/// The driving in words.
pub(in super::super) fn driving_words(driving: &DrivingData) -> Words {
    let year = driving.yearly_distance;
    known(vec![
        (
            "shift pause",
            driving.shift_pause.map(|pause| format!("{} s", pause.s())),
        ),
        (
            "launch engine speed",
            driving.launch.map(|speed| format!("{} rpm", speed.rpm())),
        ),
        (
            "distance in a year",
            year.map(|distance| format!("{} km", distance.km())),
        ),
    ])
}

/// A known consumption in words.
pub(in super::super) fn known_fuel_words(fuel: Option<KnownFuel>, sets: &Candidates) -> Words {
    let told = fuel.map(|fuel| {
        let set = sets.get(fuel.set).map(|candidate| &candidate.set);
        let gear = set.and_then(|set| set.gear(fuel.gear));
        let label = gear.map_or_else(String::new, |gear| gear.label.to_string());
        let place = sets.place(fuel.set).map_or(0, |place| place + 1);
        let (litres, kmh) = (fuel.consumption.l_per_100km(), fuel.speed.kmh());
        format!("{litres} L/100 km at {kmh} km/h in {label} of set {place}")
    });
    known(vec![("known consumption", told)])
}

/// Efficiencies in words, the gears in their order in the set.
pub(in super::super) fn efficiency_words(of: &SetEfficiencies, set: &GearSet) -> Words {
    let mut words = known(vec![
        ("efficiency", of.of_set.map(|e| e.share().to_string())),
        (
            "efficiency of a direct gear",
            of.direct.map(|e| e.share().to_string()),
        ),
    ]);
    words.extend(set.gears.iter().filter_map(|gear| {
        let own = of.of_gears.get(&gear.id)?;
        let what = format!("efficiency of gear {}", gear.label);
        Some((what, own.share().to_string()))
    }));
    words
}
