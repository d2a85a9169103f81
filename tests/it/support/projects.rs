//! Which projects can exist? A strategy over whole ones, as wide as what can be typed.

use crate::support::technical::{technical, with_technical};
use crate::support::workshop::any_workshop;
use crate::support::workshop::plan::renumbered_plan;
use layshaft::gearing::{
    ActsOn, Construction, EngineLimits, EngineSpeed, Factor, FinalDrive, Gear, GearId, GearRole,
    GearSet, GearSetSpec, Label, LoadIndex, Name, OverallDiameter, Position, Ratio, Reverse,
    RevsPerKm, RevsPerMile, RoadSpeed, RollingCircumference, ServiceDescription, SpeedSymbol,
    Sprockets, Stage, ToothPair, Tyre, TyreDiameter, TyreSize,
};
use layshaft::project::{
    Candidate, Candidates, ColumnKey, Drops, KnownFuel, Livery, Marks, Note, PageForm,
    PictureWidth, Project, SetEfficiencies, SetId, SetTechnical, TechnicalData, View, Views,
    WriteUp,
};
use layshaft::units::SpeedUnit;
use proptest::collection::{btree_set, vec};
use proptest::option;
use proptest::prelude::*;
use proptest::sample::{Index, select};
use std::collections::BTreeSet;
use std::ops::RangeInclusive;

/// A number of the range: any, whole, or with two decimals, as people type them; or an end of it.
pub(crate) fn number(range: RangeInclusive<f64>) -> impl Strategy<Value = f64> {
    let (least, most) = (*range.start(), *range.end());
    let typed = move |number: f64| number.clamp(least, most);
    prop_oneof![
        4 => range.clone(),
        2 => range.clone().prop_map(move |n| typed(n.round())),
        2 => range.prop_map(move |n| typed((n * 100.0).round() / 100.0)),
        1 => select(vec![least, most]),
    ]
}

/// An engine speed of 1 to 30000 rpm.
pub(crate) fn engine_speed() -> impl Strategy<Value = EngineSpeed> {
    number(1.0..=30_000.0).prop_map(|rpm| EngineSpeed::from_rpm(rpm).unwrap())
}

pub(crate) fn road_speed() -> impl Strategy<Value = RoadSpeed> {
    number(0.001..=1000.0).prop_map(|kmh| RoadSpeed::from_kmh(kmh).unwrap())
}

/// A pair of tooth counts.
pub(crate) fn tooth_pair() -> impl Strategy<Value = ToothPair> {
    // A single tooth is a worm's, and is spelled differently.
    let teeth = || prop_oneof![6 => 1_u16..=999, 1 => Just(1_u16)];
    (teeth(), teeth()).prop_map(|(a, b)| ToothPair::new(a, b).unwrap())
}

fn factor() -> impl Strategy<Value = Factor> {
    prop_oneof![
        number(0.3..=4.0).prop_map(Factor::Number),
        tooth_pair().prop_map(Factor::Teeth),
    ]
}

/// Any ratio that can be typed: a number, a tooth pair or a product.
pub(crate) fn any_ratio() -> impl Strategy<Value = Ratio> {
    let single = prop_oneof![
        3 => number(0.001..=400.0).prop_map(Factor::Number),
        2 => tooth_pair().prop_map(Factor::Teeth),
    ];
    prop_oneof![
        3 => single.prop_map(|factor| vec![factor]),
        1 => vec(factor(), 2..=8),
    ]
    .prop_filter_map("a ratio out of range", |f| Ratio::from_factors(f).ok())
}

/// Any final drive that can be typed.
fn any_final_drive() -> impl Strategy<Value = FinalDrive> {
    let sprockets = tooth_pair().prop_filter_map("a ratio out of range", |pair| {
        Sprockets::new(pair.driving(), pair.driven()).ok()
    });
    prop_oneof![
        2 => any_ratio().prop_map(FinalDrive::Gears),
        1 => sprockets.prop_map(FinalDrive::Chain),
    ]
}

/// Characters that no line holds are left out; quotes, escapes and foreign scripts are not.
fn line(most: usize) -> impl Strategy<Value = String> {
    let odd = select(vec!['"', '\\', '\'', ' ', '(', ',', '#', '/', '*', 'é']);
    let character = prop_oneof![
        3 => proptest::char::range('a', 'z'),
        1 => odd,
        1 => any::<char>(),
    ]
    .prop_filter("a control character", |c| !c.is_control());
    vec(character, 1..=most).prop_map(String::from_iter)
}

pub(crate) fn any_name() -> impl Strategy<Value = Name> {
    line(Name::MOST_CHARACTERS).prop_filter_map("blanks", |text| Name::new(&text).ok())
}

fn any_label() -> impl Strategy<Value = Label> {
    let usual = (1..=12).map(|n| n.to_string());
    let usual = usual.chain(["C", "R", "L"].map(str::to_owned));
    let text = prop_oneof![
        2 => select(usual.collect::<Vec<_>>()),
        1 => line(Label::MOST_CHARACTERS),
    ];
    text.prop_filter_map("blanks", |text| Label::new(&text).ok())
}

fn any_note() -> impl Strategy<Value = Note> {
    let lines = vec(prop_oneof![line(60), Just(String::new())], 0..6);
    (lines, select(vec!["\n", "\n\t", "\r\n"]))
        .prop_filter_map("too long", |(lines, end)| Note::new(&lines.join(end)).ok())
}

/// A size as it stands on the wall, in most of the ways in which sizes are written.
fn tyre_size() -> impl Strategy<Value = TyreSize> {
    let rim = (16_u32..=60).prop_map(|half_codes| f64::from(half_codes) / 2.0);
    let mark = select(vec!["R", "HR", "ZR", "D", "B", "VB", "-"]);
    let metric = (50_u32..=600, 20_u32..=100, mark, rim)
        .prop_map(|(width, aspect, mark, rim)| format!("{width}/{aspect} {mark} {rim}"));
    let ends = select(vec![
        ("", ""),
        ("P", ""),
        ("LT", ""),
        ("", " C"),
        ("", " M/C"),
    ]);
    let metric = (metric, ends).prop_map(|(size, (front, back))| format!("{front}{size}{back}"));
    let race = (150_u32..=400, 500_u32..=800).prop_map(|(w, d)| format!("{w}/{d} R 16"));
    let inches = (26_u32..=44, 800_u32..=1500)
        .prop_map(|(d, w)| format!("{d}x{}.{:02} R 15 LT", w / 100, w % 100));
    let size = prop_oneof![6 => metric, 1 => race, 1 => inches];
    (size, option::weighted(0.3, service_description())).prop_filter_map(
        "no tyre",
        |(text, service)| {
            let size: TyreSize = text.parse().ok()?;
            Some(size.with_service_description(service))
        },
    )
}

/// Load and speed as they stand behind a size, from all of their tables.
fn service_description() -> impl Strategy<Value = ServiceDescription> {
    let index = || (0_u16..=279).prop_map(|number| LoadIndex::new(number).unwrap());
    let symbol = select(vec!["A1", "A8", "B", "J", "R", "H", "Y"]);
    let symbol = symbol.prop_map(|text| text.parse::<SpeedSymbol>().unwrap());
    (
        index(),
        option::weighted(0.3, index()),
        option::weighted(0.7, symbol),
    )
        .prop_filter_map("like a rim", |(single, dual, symbol)| {
            ServiceDescription::new(single, dual, symbol).ok()
        })
}

fn tyre_diameter() -> impl Strategy<Value = TyreDiameter> {
    let construction = select(vec![Construction::Radial, Construction::CrossPly]);
    (number(300.0..=4000.0), construction).prop_filter_map(
        "it rolls too far",
        |(mm, construction)| {
            TyreDiameter::new(OverallDiameter::from_mm(mm).unwrap(), construction).ok()
        },
    )
}

/// Any tyre that can be given.
pub(crate) fn any_tyre() -> impl Strategy<Value = Tyre> {
    let circumference = number(900.0..=13_000.0).prop_map(RollingCircumference::from_mm);
    let per_km = number(76.93..=1111.1).prop_map(RevsPerKm::new);
    let per_mile = number(123.8..=1788.1).prop_map(RevsPerMile::new);
    prop_oneof![
        3 => tyre_size().prop_map(Tyre::Size),
        1 => tyre_diameter().prop_map(Tyre::OverallDiameter),
        1 => circumference.prop_map(|c| Tyre::RollingCircumference(c.unwrap())),
        1 => per_km.prop_map(|revs| Tyre::RevsPerKm(revs.unwrap())),
        1 => per_mile.prop_map(|revs| Tyre::RevsPerMile(revs.unwrap())),
    ]
    // On the heap: whole projects hold several, and the stack of a test is small.
    .boxed()
}

/// Gears of distinct labels and identities, the identities in no order.
fn any_gears(count: usize, final_drives: usize) -> impl Strategy<Value = Vec<Gear>> {
    let labels = btree_set(any_label(), count)
        .prop_map(Vec::from_iter)
        .prop_shuffle();
    let ids = btree_set(1_u32..10_000, count)
        .prop_map(Vec::from_iter)
        .prop_shuffle();
    let crawler = proptest::bool::weighted(0.1);
    let parts = (
        any_ratio(),
        0..final_drives,
        crawler,
        option::weighted(0.3, engine_speed()),
    );
    (labels, ids, vec(parts, count)).prop_map(|(labels, ids, parts)| {
        let named = labels.into_iter().zip(ids).zip(parts);
        let gear = |((label, id), (ratio, final_drive, is_crawler, shift))| Gear {
            id: GearId(id),
            label,
            ratio,
            final_drive,
            role: if is_crawler {
                GearRole::Crawler
            } else {
                GearRole::Shifted
            },
            shift,
        };
        named.map(gear).collect()
    })
}

/// The parts of a stage, with the gears it acts on still as places: the place behind the last
/// gear is reverse.
type StageParts = (Name, Vec<(Name, Ratio)>, Index, Option<Vec<Index>>, bool);

fn stage_parts() -> impl Strategy<Value = StageParts> {
    let fixed = any_ratio().prop_map(|ratio| vec![(Name::new(Position::FIXED).unwrap(), ratio)]);
    let positions = prop_oneof![
        3 => vec((any_name(), any_ratio()), 1..=4),
        1 => fixed,
    ];
    let places = option::of(vec(any::<Index>(), 0..5));
    let shows_others = proptest::bool::weighted(0.4);
    (
        stage_name(),
        positions,
        any::<Index>(),
        places,
        shows_others,
    )
}

/// Any name, or one with words that mean something in what is said of a set.
fn stage_name() -> impl Strategy<Value = Name> {
    let like_phrases = [
        "tyre 3",
        "spread",
        "\"box\"",
        "box in low = 2",
        "drive in front;",
        "box, final drive",
    ];
    let like_phrases = select(like_phrases.to_vec()).prop_map(|name| Name::new(name).unwrap());
    prop_oneof![5 => any_name(), 1 => like_phrases]
}

fn stage(parts: StageParts, gears: &[Gear], has_reverse: bool) -> Stage {
    let (name, positions, present, places, shows_others) = parts;
    let reverse = has_reverse.then_some(GearId::REVERSE);
    let ids: Vec<GearId> = gears.iter().map(|g| g.id).chain(reverse).collect();
    Stage {
        name,
        present: present.index(positions.len()),
        positions: positions
            .into_iter()
            .map(|(name, ratio)| Position { name, ratio })
            .collect(),
        acts_on: places.map_or(ActsOn::EveryGear, |places| {
            ActsOn::Only(places.iter().map(|place| *place.get(&ids)).collect())
        }),
        shows_others,
    }
}

/// Any gear set that can exist.
pub(crate) fn any_gear_set() -> impl Strategy<Value = GearSet> {
    (1_usize..=12, 1_usize..=3)
        .prop_flat_map(|(gears, final_drives)| {
            let reverse = option::of((any_ratio(), 0..final_drives));
            let stages =
                prop_oneof![3 => vec(stage_parts(), 0..=1), 1 => vec(stage_parts(), 2..=4)];
            (
                any_name(),
                any_gears(gears, final_drives),
                reverse,
                vec(any_final_drive(), final_drives),
                stages,
                option::weighted(0.3, any_tyre()),
                engine_speed(),
            )
        })
        .prop_filter_map("labels clash or no gear is shifted", |parts| {
            let (name, gears, reverse, final_drives, stages, tyre, shift) = parts;
            let reverse = reverse.map(|(ratio, final_drive)| Reverse { ratio, final_drive });
            let stage = |parts| stage(parts, &gears, reverse.is_some());
            let mut stages: Vec<Stage> = stages.into_iter().map(stage).collect();
            let shown = stages.iter().filter(|stage| stage.shows_others);
            let combinations: usize = shown.map(|stage| stage.positions.len()).product();
            if combinations > GearSet::MOST_COMBINATIONS {
                stages[0].shows_others = false;
            }
            let spec = GearSetSpec {
                name,
                gears,
                reverse,
                final_drives,
                stages,
                tyre,
                shift,
            };
            GearSet::try_from(spec).ok()
        })
}

/// Any idle, lowest useful engine speed and redline.
pub(crate) fn any_limits() -> impl Strategy<Value = EngineLimits> {
    let known = || option::of(engine_speed());
    (known(), known(), engine_speed()).prop_map(|(idle, lowest_useful, redline)| EngineLimits {
        idle,
        lowest_useful,
        redline,
    })
}

/// Any choices for the write-up, of up to three sets.
fn any_write_up() -> impl Strategy<Value = WriteUp> {
    let left_out = vec((1u32..=3).prop_map(SetId), 0..=2);
    let choices = (any::<bool>(), any::<bool>(), any::<bool>());
    let form = select(PageForm::ALL.to_vec());
    let drops = prop_oneof![
        Just(Drops::Usual),
        Just(Drops::All),
        Just(Drops::Hidden),
        (1u32..=3).prop_map(|id| Drops::Of(SetId(id))),
    ];
    let key = "[a-z_]{1,12}".prop_map(|text| ColumnKey::new(&text).unwrap());
    let columns = option::of(vec(key, 0..4).prop_map(BTreeSet::from_iter));
    let views = vec(select(View::ALL.to_vec()), 1..4);
    let views = views.prop_map(|views| Views::new(views).unwrap());
    let further = (drops, columns, any::<bool>(), views);
    (800u64..=4000, choices, form, left_out, further).prop_map(
        |(width, (is_dark, with_table, with_note), form, left_out, further)| WriteUp {
            width: PictureWidth::from_px(width).unwrap(),
            is_dark,
            left_out: left_out.into_iter().collect(),
            with_table,
            with_note,
            form,
            drops: further.0,
            columns: further.1,
            carries_project: further.2,
            views: further.3,
        },
    )
}

/// Any project that can exist.
pub(crate) fn any_project() -> impl Strategy<Value = Project> {
    let texts = (option::of(any_name()), option::of(any_name()), any_note());
    let marks = (vec(engine_speed(), 0..=8), vec(road_speed(), 0..=8));
    let liveries = Just(Livery::ALL.to_vec()).prop_shuffle();
    let sets = (
        vec((any_gear_set(), any::<bool>()), 1..=3),
        liveries,
        any::<Index>(),
    );
    let vehicle = (select(SpeedUnit::ALL.to_vec()), any_tyre(), any_limits());
    let shown = (any_write_up(), technical(), any_workshop());
    (texts, vehicle, marks, sets, shown).prop_map(
        |(
            (title, date, note),
            (units, tyre, engine),
            (rpms, speeds),
            (sets, liveries, baseline),
            (write_up, technical, mut workshop),
        )| {
            let baseline = baseline.index(sets.len());
            let present = |id: &SetId| id.0 as usize <= sets.len();
            let plan = workshop.plan.take();
            workshop.plan = plan.map(|plan| plan.among(|id| present(&SetId(id.0))));
            let left_out = write_up.left_out.iter().copied().filter(present).collect();
            let drops = match write_up.drops {
                Drops::Of(id) if !present(&id) => Drops::Usual,
                drops => drops,
            };
            let sets = Candidates::with_liveries(worn(sets, liveries), baseline).unwrap();
            let (technical, sets) = with_technical(technical, sets);
            Project {
                title,
                date,
                note,
                units,
                tyre,
                engine,
                marked_engine_speeds: Marks::new(rpms).unwrap(),
                marked_road_speeds: Marks::new(speeds).unwrap(),
                write_up: WriteUp {
                    left_out,
                    drops,
                    ..write_up
                },
                technical,
                workshop,
                sets,
            }
        },
    )
}

/// Sets with these liveries.
fn worn(sets: Vec<(GearSet, bool)>, liveries: Vec<Livery>) -> Vec<(GearSet, bool, Option<Livery>)> {
    let sets = sets.into_iter().zip(liveries);
    sets.map(|((set, visible), livery)| (set, visible, Some(livery)))
        .collect()
}

/// The same project with the identities that reading a file gives: 1, 2, 3 … in their order.
pub(crate) fn renumbered(project: &Project) -> Project {
    let sets = project.sets.iter().map(renumbered_set).collect();
    let sets = Candidates::with_liveries(sets, project.sets.baseline_place()).unwrap();
    let technical = project.sets.iter().map(renumbered_technical).collect();
    let mut workshop = project.workshop.clone();
    workshop.plan = workshop.plan.map(|plan| renumbered_plan(&plan, project));
    let known_fuel = project.technical.known_fuel.map(|fuel| {
        let place = project.sets.place(fuel.set).unwrap();
        KnownFuel {
            set: SetId(u32::try_from(place).unwrap() + 1),
            gear: fresh(project.sets.get(fuel.set).unwrap(), fuel.gear),
            ..fuel
        }
    });
    Project {
        technical: TechnicalData {
            known_fuel,
            ..project.technical.clone()
        },
        sets: sets.with_technical(technical),
        workshop,
        ..project.clone()
    }
}

fn renumbered_set(candidate: &Candidate) -> (GearSet, bool, Option<Livery>) {
    let mut spec = candidate.set.to_spec();
    let old: Vec<GearId> = spec.gears.iter().map(|g| g.id).collect();
    let fresh = |id: &GearId| {
        let place = (1..).zip(&old).find(|(_, old)| *old == id);
        place.map_or(GearId::REVERSE, |(number, _)| GearId(number))
    };
    for gear in &mut spec.gears {
        gear.id = fresh(&gear.id);
    }
    for stage in &mut spec.stages {
        if let ActsOn::Only(ids) = &mut stage.acts_on {
            *ids = ids.iter().map(fresh).collect::<BTreeSet<_>>();
        }
    }
    let set = GearSet::try_from(spec).unwrap();
    (set, candidate.visible, Some(candidate.livery))
}

/// The identity that reading a file gives a gear.
fn fresh(candidate: &Candidate, id: GearId) -> GearId {
    let place = candidate.set.gears.iter().position(|gear| gear.id == id);
    GearId(u32::try_from(place.unwrap()).unwrap() + 1)
}

fn renumbered_technical(candidate: &Candidate) -> SetTechnical {
    let efficiencies = &candidate.technical.efficiencies;
    let own = efficiencies.of_gears.iter();
    SetTechnical {
        efficiencies: SetEfficiencies {
            of_gears: own.map(|(id, e)| (fresh(candidate, *id), *e)).collect(),
            ..efficiencies.clone()
        },
        ..candidate.technical.clone()
    }
}
