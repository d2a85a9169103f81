//! The fields of the technical data.

/// Which field of the technical data.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum TechnicalCell {
    /// The kind of vehicle, a choice.
    Kind,
    /// Its mass.
    Mass,
    /// Its drag area.
    DragArea,
    /// What its tyres take.
    Rolling,
    /// The driven axle, a choice.
    Driven,
    /// The drag coefficient.
    DragCoefficient,
    /// The frontal area.
    FrontalArea,
    /// The measured road load: A, B and C.
    RoadLoad,
    /// The density of the air.
    AirDensity,
    /// How well tyres and road hold.
    Adhesion,
    /// The distance between the axles.
    Wheelbase,
    /// The height of the centre of gravity.
    Height,
    /// The share of the weight on the front axle.
    FrontShare,
    /// The mass factor, a choice.
    MassFactor,
    /// The inertia of all wheels.
    WheelInertia,
    /// What is carried.
    Load,
    /// The mass of what is pulled.
    TrailerMass,
    /// Its drag area.
    TrailerDragArea,
    /// Wind from ahead.
    Headwind,
    /// How steep the road is.
    Grade,
    /// The other roads whose load is shown.
    Grades,
    /// How long a change of gear takes.
    ShiftPause,
    /// The engine speed at the start.
    Launch,
    /// What is driven in a year.
    YearlyDistance,
    /// The torque curve, point by point.
    TorqueCurve,
    /// The engine speed of a point of it, counted from 0.
    PointSpeed(usize),
    /// The torque of a point of it.
    PointTorque(usize),
    /// A brochure's figures, which make a curve.
    Brochure,
    /// The volume that the pistons sweep.
    Displacement,
    /// What is burnt, a choice.
    Fuel,
    /// Two or four strokes, a choice.
    Strokes,
    /// What turns with the crank.
    EngineInertia,
    /// Where the curve was measured, a choice.
    MeasuredAt,
    /// The Willans line.
    Willans,
    /// A consumption that is known.
    KnownFuel,
    /// Where the speedometer's signal is taken, a choice.
    SignalSource,
    /// What lies between there and the instrument.
    SignalDrive,
    /// How far the odometer of the baseline is off.
    OdometerError,
    /// How much more the needle shows.
    NeedleError,
    /// The turns or pulses at which the odometer is true.
    MeterConstant,
    /// The rule that a speedometer is judged by, a choice.
    SpeedRule,
    /// A rule that is typed.
    OwnRule,
    /// The top speed of the registration paper.
    TopSpeed,
    /// The permitted load of the front axle.
    FrontAxle,
    /// The permitted load of the rear axle.
    RearAxle,
    /// Two tyres or four on the rear axle, a choice.
    RearTyres,
    /// What ratings of gearboxes are multiplied by.
    TorqueFactor,
    /// What each axle shaft may bear.
    AxleShaft,
    /// How many axle shafts share the torque, a choice.
    SharingShafts,
    /// The highest speed of the propeller shaft.
    PropellerShaft,
    /// The final drive of the second driven axle.
    SecondFinalDrive,
    /// Which axle the second one is, a choice.
    SecondAxle,
    /// Where its drive is taken off, a choice.
    TakenOff,
    /// The angle drive on the way to it.
    AngleDrive,
    /// Its tyre.
    SecondTyre,
    /// What couples both axles, a choice.
    Coupling,
    /// The input torque that a box is rated for.
    RatedTorque,
}

impl TechnicalCell {
    /// Whether it is a set's own of what is checked, where it is a set's.
    pub(in crate::app) fn is_of_checks(self) -> bool {
        matches!(
            self,
            Self::SignalSource | Self::SignalDrive | Self::RatedTorque | Self::SecondFinalDrive
        )
    }
}
