//! Technical data in format 2: engine, vehicle, road and driving; absent where nothing is known.

use super::super::outline::Step::{Item, Key};
use super::super::shared::misfit::Misfit;
use super::super::shared::values::{
    Kmh, LabelText, PlainNumber, Rpm, WrittenNumber, WrittenOutOfRange, file_number,
};
use super::engine::EngineDataV2;
use super::limits::{LimitsV2, SecondAxleV2};
use super::speedometer::SpeedometerV2;
use super::vehicle::VehicleDataV2;
use crate::gearing::{GearId, GearSet, Label};
use crate::motion::{
    AddedMass, DragArea, Efficiency, FuelConsumption, Grade, Headwind, ShiftPause, Trailer,
    YearlyDistance,
};
use crate::project::document::{Candidates, Marks, SetId};
use crate::project::technical::{
    DrivingData, EngineData, KnownFuel, RoadData, SetAside, SetEfficiencies, TechnicalData,
    VehicleData, too_many_grades,
};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

file_number!(AddedKg, AddedMass, from_kg, kg);
file_number!(TrailerM2, DragArea, from_m2, m2);
file_number!(HeadwindKmh, Headwind, from_kmh, kmh);
file_number!(GradePercent, Grade, from_percent, percent);
file_number!(PauseS, ShiftPause, from_s, s);
file_number!(YearlyKm, YearlyDistance, from_km, km);
file_number!(LPer100Km, FuelConsumption, from_l_per_100km, l_per_100km);
file_number!(EfficiencyShare, Efficiency, new, share);

#[derive(Serialize, Deserialize)]
#[serde(rename = "Technical", deny_unknown_fields)]
pub(crate) struct TechnicalV2 {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    engine: Option<EngineDataV2>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    vehicle: Option<VehicleDataV2>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    road: Option<RoadV2>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    driving: Option<DrivingV2>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    speedometer: Option<SpeedometerV2>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    limits: Option<LimitsV2>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    second_axle: Option<SecondAxleV2>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    known_fuel: Option<KnownFuelV2>,
}

#[derive(Serialize, Deserialize)]
#[serde(rename = "Road", deny_unknown_fields)]
struct RoadV2 {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    load_kg: Option<AddedKg>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    trailer: Option<TrailerEntry>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    headwind_kmh: Option<HeadwindKmh>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    grade_percent: Option<GradePercent>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    grades_percent: Option<GradesPercent>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    set_aside: Vec<AsideEntry>,
}

/// Roads whose load is shown.
#[derive(Clone, Serialize, Deserialize)]
#[serde(try_from = "Vec<GradePercent>", into = "Vec<GradePercent>")]
struct GradesPercent(Marks<Grade>);

impl TryFrom<Vec<GradePercent>> for GradesPercent {
    type Error = String;

    fn try_from(grades: Vec<GradePercent>) -> Result<Self, String> {
        let grades = Marks::new(grades.into_iter().map(|n| n.0).collect());
        grades.map(Self).map_err(too_many_grades)
    }
}

impl From<GradesPercent> for Vec<GradePercent> {
    fn from(grades: GradesPercent) -> Self {
        grades
            .0
            .as_slice()
            .iter()
            .map(|grade| GradePercent(*grade))
            .collect()
    }
}

/// What of a load case is left out for now.
#[derive(Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename = "SetAside")]
enum AsideEntry {
    Load,
    Trailer,
    Headwind,
}

fn aside(entries: &[AsideEntry]) -> SetAside {
    SetAside {
        load: entries.contains(&AsideEntry::Load),
        trailer: entries.contains(&AsideEntry::Trailer),
        headwind: entries.contains(&AsideEntry::Headwind),
    }
}

fn aside_entries(aside: SetAside) -> Vec<AsideEntry> {
    let entries = [
        (aside.load, AsideEntry::Load),
        (aside.trailer, AsideEntry::Trailer),
        (aside.headwind, AsideEntry::Headwind),
    ];
    let is_aside = entries.into_iter().filter(|(is_aside, _)| *is_aside);
    is_aside.map(|(_, entry)| entry).collect()
}

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "Trailer", deny_unknown_fields)]
struct TrailerEntry {
    mass_kg: AddedKg,
    drag_area_m2: TrailerM2,
}

#[derive(Serialize, Deserialize)]
#[serde(rename = "Driving", deny_unknown_fields)]
struct DrivingV2 {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    shift_pause_s: Option<PauseS>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    launch_rpm: Option<Rpm>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    yearly_distance_km: Option<YearlyKm>,
}

#[derive(Serialize, Deserialize)]
#[serde(rename = "KnownFuel", deny_unknown_fields)]
struct KnownFuelV2 {
    /// Counted from 1.
    set: usize,
    gear: LabelText,
    speed_kmh: Kmh,
    l_per_100km: LPer100Km,
}

/// The efficiency of one gear, which is named by its label.
#[derive(Serialize, Deserialize)]
#[serde(rename = "GearEfficiency", deny_unknown_fields)]
pub(crate) struct GearEfficiencyV2 {
    gear: LabelText,
    efficiency: EfficiencyShare,
}

impl TechnicalV2 {
    /// The data as they stand in a file; none where nothing is known.
    pub(super) fn of(data: &TechnicalData, sets: &Candidates) -> Option<Self> {
        let TechnicalData {
            engine,
            vehicle,
            road,
            driving,
            speedometer,
            limits,
            second_axle,
            known_fuel,
        } = data;
        let file = Self {
            engine: (*engine != EngineData::default()).then(|| engine.into()),
            vehicle: (*vehicle != VehicleData::default()).then(|| vehicle.into()),
            road: (*road != RoadData::default()).then(|| road.into()),
            driving: (*driving != DrivingData::default()).then(|| driving.into()),
            speedometer: SpeedometerV2::of(speedometer),
            limits: LimitsV2::of(limits),
            second_axle: SecondAxleV2::of(second_axle),
            known_fuel: known_fuel.and_then(|fuel| KnownFuelV2::of(&fuel, sets)),
        };
        (*data != TechnicalData::default()).then_some(file)
    }

    pub(super) fn into_data(self, sets: &Candidates) -> Result<TechnicalData, Misfit> {
        let known_fuel = self.known_fuel.map(|fuel| fuel.into_fuel(sets));
        Ok(TechnicalData {
            engine: self.engine.map(Into::into).unwrap_or_default(),
            vehicle: self.vehicle.map(Into::into).unwrap_or_default(),
            road: self.road.map(Into::into).unwrap_or_default(),
            driving: self.driving.map(Into::into).unwrap_or_default(),
            speedometer: self.speedometer.map(Into::into).unwrap_or_default(),
            limits: self.limits.map(Into::into).unwrap_or_default(),
            second_axle: self.second_axle.map(Into::into).unwrap_or_default(),
            known_fuel: known_fuel.transpose()?,
        })
    }
}

impl KnownFuelV2 {
    fn of(fuel: &KnownFuel, sets: &Candidates) -> Option<Self> {
        let gear = sets.get(fuel.set)?.set.gear(fuel.gear)?;
        Some(Self {
            set: sets.place(fuel.set)? + 1,
            gear: LabelText(gear.label.clone()),
            speed_kmh: Kmh(fuel.speed),
            l_per_100km: LPer100Km(fuel.consumption),
        })
    }

    fn into_fuel(self, sets: &Candidates) -> Result<KnownFuel, Misfit> {
        let path = |key| [Key("technical"), Key("known_fuel"), Key(key)];
        let place = self.set.checked_sub(1);
        let candidate = place.and_then(|place| sets.iter().nth(place));
        let no_set = || {
            let reason = format!(
                "the known consumption is of set {}, which is not there",
                self.set
            );
            Misfit::new(path("set"), &reason)
        };
        let candidate = candidate.ok_or_else(no_set)?;
        let no_gear = || {
            let label = &self.gear.0;
            let reason =
                format!("the known consumption is of gear \"{label}\", which is not there");
            Misfit::new(path("gear"), &reason)
        };
        let set: SetId = candidate.id;
        Ok(KnownFuel {
            set,
            gear: gear_of(&candidate.set, &self.gear.0).ok_or_else(no_gear)?,
            speed: self.speed_kmh.0,
            consumption: self.l_per_100km.0,
        })
    }
}

/// Efficiencies of a set as they stand in a file: of the set, of a direct gear, of single gears.
pub(super) type EfficienciesInFile = (
    Option<EfficiencyShare>,
    Option<EfficiencyShare>,
    Vec<GearEfficiencyV2>,
);

/// The efficiencies of a set as they stand in a file.
pub(super) fn in_file(of: &SetEfficiencies, set: &GearSet) -> EfficienciesInFile {
    let own = set.gears.iter().filter_map(|gear| {
        let efficiency = of.of_gears.get(&gear.id)?;
        Some(GearEfficiencyV2 {
            gear: LabelText(gear.label.clone()),
            efficiency: EfficiencyShare(*efficiency),
        })
    });
    let (of_set, direct) = (of.of_set, of.direct);
    (
        of_set.map(EfficiencyShare),
        direct.map(EfficiencyShare),
        own.collect(),
    )
}

/// The efficiencies that a file has of a set.
pub(super) fn from_file(
    (of_set, direct, of_gears): EfficienciesInFile,
    set: &GearSet,
) -> Result<SetEfficiencies, Misfit> {
    let mut own = BTreeMap::new();
    for (place, entry) in (0..).zip(of_gears) {
        let label = entry.gear.0;
        let told = |why: &str| {
            let path = [Key("gear_efficiencies"), Item(place), Key("gear")];
            Misfit::new(
                path,
                &format!("an efficiency is of gear \"{label}\", {why}"),
            )
        };
        let id = gear_of(set, &label).ok_or_else(|| told("which is not there"))?;
        if own.insert(id, entry.efficiency.0).is_some() {
            return Err(told("which has one already"));
        }
    }
    Ok(SetEfficiencies {
        of_set: of_set.map(|n| n.0),
        direct: direct.map(|n| n.0),
        of_gears: own,
    })
}

fn gear_of(set: &GearSet, label: &Label) -> Option<GearId> {
    let mut gears = set.gears.iter();
    gears.find(|gear| gear.label == *label).map(|gear| gear.id)
}

impl From<RoadV2> for RoadData {
    fn from(road: RoadV2) -> Self {
        Self {
            load: road.load_kg.map(|n| n.0),
            trailer: road.trailer.map(|trailer| Trailer {
                mass: trailer.mass_kg.0,
                drag_area: trailer.drag_area_m2.0,
            }),
            headwind: road.headwind_kmh.map(|n| n.0),
            grade: road.grade_percent.map(|n| n.0),
            grades: road.grades_percent.map(|n| n.0),
            aside: aside(&road.set_aside),
        }
    }
}

impl From<&RoadData> for RoadV2 {
    fn from(road: &RoadData) -> Self {
        Self {
            load_kg: road.load.map(AddedKg),
            trailer: road.trailer.map(|trailer| TrailerEntry {
                mass_kg: AddedKg(trailer.mass),
                drag_area_m2: TrailerM2(trailer.drag_area),
            }),
            headwind_kmh: road.headwind.map(HeadwindKmh),
            grade_percent: road.grade.map(GradePercent),
            grades_percent: road.grades.clone().map(GradesPercent),
            set_aside: aside_entries(road.aside),
        }
    }
}

impl From<DrivingV2> for DrivingData {
    fn from(driving: DrivingV2) -> Self {
        Self {
            shift_pause: driving.shift_pause_s.map(|n| n.0),
            launch: driving.launch_rpm.map(|n| n.0),
            yearly_distance: driving.yearly_distance_km.map(|n| n.0),
        }
    }
}

impl From<&DrivingData> for DrivingV2 {
    fn from(driving: &DrivingData) -> Self {
        Self {
            shift_pause_s: driving.shift_pause.map(PauseS),
            launch_rpm: driving.launch.map(Rpm),
            yearly_distance_km: driving.yearly_distance.map(YearlyKm),
        }
    }
}
