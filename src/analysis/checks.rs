//! The road checks of every set: what its tyres, box and shafts are asked for beside what they are rated for,
//! how far its two axles are apart, and where it can be shifted down.

use super::motion::{Motion, SetMotion};
use super::speedometer::knows_signal;
use crate::checks::{
    Axle, Borne, CheckFinding, Checked, Coupling, DownBy, Downshift, HeldByTyres, KnownTopSpeed,
    LoadedAxle, LowestGear, MissedShift, NoReading, RatingFactor, RuledSpeedometer, ShaftTorque,
    SharingShafts, ShownSpeed, SignalSource, TwoAxles, TyresOnAxle, downshifts, input_torque,
    propeller_shaft_speed, worst_missed_shift,
};
use crate::gearing::{Drivetrain, ServiceDescription, Tyre};
use crate::motion::{GRAVITY_M_S2, Grip, Mass, MeasuredAt};
use crate::project::{Candidate, Project};
use crate::units::KMH_PER_M_S;

/// What is checked of one set.
#[derive(Debug, Clone)]
pub struct RoadChecks {
    /// Its ratings and its speedometer, as far as they are known.
    pub checked: Checked,
    /// Every single change down.
    pub downshifts: Vec<Downshift>,
    /// The worst change down by one gear and by two, at the road speeds at which it is changed up.
    pub missed: [Option<MissedShift>; 2],
}

/// All that the checks of a set follow from.
struct Asked<'a> {
    project: &'a Project,
    candidate: &'a Candidate,
    drivetrain: Drivetrain,
    /// None where engine or vehicle are not known.
    motion: Option<(&'a Motion, &'a SetMotion)>,
    shown: Option<ShownSpeed>,
}

impl RoadChecks {
    /// The checks of every set, in their order.
    pub(super) fn of_sets(
        project: &Project,
        motion: Option<&Motion>,
        shown: &[Result<ShownSpeed, NoReading>],
    ) -> Vec<Self> {
        let sets = project.sets.iter().zip(shown).enumerate();
        let sets = sets.map(|(place, (candidate, shown))| {
            Self::of(&Asked::of(project, place, candidate, motion, shown))
        });
        sets.collect()
    }

    fn of(asked: &Asked<'_>) -> Self {
        let redline = asked.project.engine.redline;
        Self {
            checked: asked.checked(),
            downshifts: downshifts(&asked.drivetrain, redline),
            missed: DownBy::BOTH.map(|by| worst_missed_shift(&asked.drivetrain, redline, by)),
        }
    }
}

/// What a set should not be driven with, of every set.
pub(super) fn findings(
    project: &Project,
    motion: Option<&Motion>,
    shown: &[Result<ShownSpeed, NoReading>],
) -> Vec<Vec<CheckFinding>> {
    let sets = project.sets.iter().zip(shown).enumerate();
    let sets = sets.map(|(place, (candidate, shown))| {
        let asked = Asked::of(project, place, candidate, motion, shown);
        asked.checked().findings()
    });
    sets.collect()
}

impl<'a> Asked<'a> {
    fn of(
        project: &'a Project,
        place: usize,
        candidate: &'a Candidate,
        motion: Option<&'a Motion>,
        shown: &Result<ShownSpeed, NoReading>,
    ) -> Self {
        Self {
            project,
            candidate,
            drivetrain: Drivetrain::resolve(&candidate.set, &project.tyre),
            motion: motion.and_then(|motion| Some((motion, motion.sets.get(place)?))),
            shown: shown.ok(),
        }
    }

    fn checked(&self) -> Checked {
        let top = self.top_speed();
        Checked {
            speed_symbol: match self.tyre() {
                Tyre::Size(size) => size.speed_symbol(),
                _ => None,
            },
            top,
            axles: self.axles(),
            input_torque: self.input_torque(),
            axle_shaft: self.axle_shaft(),
            propeller_shaft: self.propeller_shaft(top),
            two_axles: self.two_axles(),
            speedometer: self.speedometer(),
            is_without_signal: self.source() == SignalSource::None,
            speed_unit: self.project.units,
            ..Checked::default()
        }
    }

    fn tyre(&self) -> Tyre {
        self.project.tyre_of(&self.candidate.set)
    }

    fn top_speed(&self) -> Option<KnownTopSpeed> {
        let by_power = self.motion.and_then(|(motion, set)| {
            let top = set.powertrain.top_speed(&set.vehicle, &motion.load);
            top.map(|(_, top)| top.speed_m_s * KMH_PER_M_S)
        });
        let redline_rpm = self.project.engine.redline.rpm();
        let by_redline = self.drivetrain.chain().last();
        let by_redline = by_redline.map(|top| self.drivetrain.speed_kmh(top, redline_rpm));
        KnownTopSpeed::of(
            self.project.technical.limits.top_speed,
            by_power,
            by_redline,
        )
    }

    fn axles(&self) -> Vec<LoadedAxle> {
        let limits = &self.project.technical.limits;
        let loaded = |axle: Axle, load: Option<Mass>, tyres: TyresOnAxle| {
            let load = load?;
            let service = service(self.tyre_of(axle));
            Some(LoadedAxle {
                axle,
                load,
                tyres,
                service,
            })
        };
        let front = loaded(Axle::Front, limits.front_axle, TyresOnAxle::Two);
        let rear = loaded(Axle::Rear, limits.rear_axle, limits.rear_tyres);
        front.into_iter().chain(rear).collect()
    }

    /// The tyre of an axle: of a second one that has its own, that.
    fn tyre_of(&self, axle: Axle) -> Tyre {
        let second = &self.project.technical.second_axle;
        let own = second.tyre.filter(|_| second.which() == axle);
        own.unwrap_or_else(|| self.tyre())
    }

    /// The most torque of the engine in N·m; none where its curve is not known, or holds at the wheels.
    fn peak_nm(&self) -> Option<f64> {
        let technical = &self.project.technical;
        let engine = technical.engine_of(&self.candidate.technical);
        let curve = engine.curve.as_ref();
        let curve = curve.filter(|_| engine.measured_at == MeasuredAt::Crank);
        curve?.peaks().map(|[torque, _]| torque.torque_nm)
    }

    fn input_torque(&self) -> Option<Borne> {
        let rated = self.candidate.technical.checks.rated_torque?;
        let factor = self.project.technical.limits.torque_factor;
        let factor = factor.unwrap_or(RatingFactor::ONE);
        Some(input_torque(self.peak_nm()?, rated, factor))
    }

    fn axle_shaft(&self) -> Option<(LowestGear, Borne)> {
        let limits = &self.project.technical.limits;
        let lowest = LowestGear::of(&self.candidate.set)?;
        let driven = self.grip().map(|grip| grip.driven);
        let driven = driven.or(self.project.technical.vehicle.driven);
        let shafts = limits.shafts.or_else(|| driven.map(SharingShafts::of));
        let torque = ShaftTorque::of(
            self.peak_nm()?,
            lowest.overall_ratio,
            shafts.unwrap_or_default(),
            self.held_by_tyres(),
        );
        Some((lowest, torque.against(limits.axle_shaft?)))
    }

    fn grip(&self) -> Option<Grip> {
        self.motion.and_then(|(_, set)| set.vehicle.grip)
    }

    /// What the driven tyres hold of it, at the start.
    fn held_by_tyres(&self) -> Option<HeldByTyres> {
        let (_, set) = self.motion?;
        let grip = self.grip()?;
        let force_n = set.on_road.grip_limit_n(0.0)?;
        let adhesion = grip.adhesion;
        let driven_kg = force_n / (adhesion.value() * GRAVITY_M_S2);
        driven_kg.is_finite().then_some(HeldByTyres {
            adhesion,
            driven_kg,
            rolling_circumference_mm: self.drivetrain.rolling_circumference_mm,
        })
    }

    /// Of a vehicle whose rear axle is driven from a box in front, which alone has such a shaft.
    fn propeller_shaft(&self, top: Option<KnownTopSpeed>) -> Option<Borne> {
        let limit = self.project.technical.limits.propeller_shaft?;
        let final_drive = self.candidate.set.final_drives.first()?.value();
        let circumference_mm = self.drivetrain.rolling_circumference_mm;
        Some(propeller_shaft_speed(
            top?.kmh,
            final_drive,
            circumference_mm,
            limit,
        ))
    }

    fn two_axles(&self) -> Option<(TwoAxles, Option<Coupling>)> {
        let data = &self.project.technical.second_axle;
        let own = self.candidate.technical.checks.second_final_drive.as_ref();
        let second = data.behind(own, self.tyre())?;
        let final_drive = self.candidate.set.final_drives.first()?.value();
        let circumference_mm = self.drivetrain.rolling_circumference_mm;
        let axles = TwoAxles::of(final_drive, circumference_mm, &second);
        Some((axles, Some(data.coupling())))
    }

    /// Where the set takes its signal.
    fn source(&self) -> SignalSource {
        let speedometer = &self.project.technical.speedometer;
        let own = self.candidate.technical.checks.signal;
        speedometer.signal_of(own).source
    }

    /// Of a speedometer of which nothing is known nothing is said: where its signal is taken decides all.
    fn speedometer(&self) -> Option<RuledSpeedometer> {
        let technical = &self.project.technical;
        knows_signal(technical, &self.candidate.technical).then_some(())?;
        Some(RuledSpeedometer {
            rule: technical.speedometer.rule,
            shown: self.shown?,
            top_speed: technical.limits.top_speed,
        })
    }
}

/// What stands behind the size of a tyre.
fn service(tyre: Tyre) -> Option<ServiceDescription> {
    match tyre {
        Tyre::Size(size) => size.service_description(),
        _ => None,
    }
}
