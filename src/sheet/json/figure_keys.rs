//! The reference of the JSON keys of effort, runs, steady speeds and speedometers: every key with its meaning and its unit.

/// What each of them holds beside `format`, `title`, the name of a set, the label of a gear and the findings:
/// the word behind `--show`, path, meaning.
pub const FIGURE_KEYS: &[(&str, &str, &str)] = &[
    (
        "effort",
        "sets[].top_speed_kmh",
        "top speed on a level road without wind and grip limit; null where no gear holds a speed (km/h)",
    ),
    (
        "effort",
        "sets[].top_speed_limit",
        "what limits it: `power`, or `redline`, also where the torque curve ends",
    ),
    (
        "effort",
        "sets[].start_gradient_percent",
        "steepest grade on which the set starts (%)",
    ),
    (
        "effort",
        "sets[].gears[].points",
        "from the lowest to the highest speed that the gear covers, and at every speed that was asked for between",
    ),
    (
        "effort",
        "sets[].gears[].points[].speed_kmh",
        "road speed (km/h)",
    ),
    (
        "effort",
        "sets[].gears[].points[].tractive_effort_n",
        "tractive effort after losses, without the grip limit (N)",
    ),
    (
        "effort",
        "sets[].gears[].points[].road_load_n",
        "what air, tyres and grade take (N)",
    ),
    (
        "effort",
        "sets[].gears[].points[].grip_limit_n",
        "what the driven wheels can put down; null where nothing limits it (N)",
    ),
    (
        "effort",
        "sets[].gears[].acceleration",
        "at the speeds of `points`",
    ),
    (
        "effort",
        "sets[].gears[].acceleration[].speed_kmh",
        "road speed (km/h)",
    ),
    (
        "effort",
        "sets[].gears[].acceleration[].acceleration_m_s2",
        "acceleration at full load, rotating masses and grip limit included (m/s²)",
    ),
    (
        "effort",
        "sets[].gears[].gradient_percent",
        "at the speeds that were asked for",
    ),
    (
        "effort",
        "sets[].gears[].gradient_percent[].speed_kmh",
        "road speed (km/h)",
    ),
    (
        "effort",
        "sets[].gears[].gradient_percent[].gradient_percent",
        "steepest grade on which the gear holds it, below 0 a fall; null where it does not (%)",
    ),
    (
        "run",
        "sets[].shift_rpm",
        "engine speeds at which the set is changed up, one for each change (rpm)",
    ),
    (
        "run",
        "sets[].best_shift_rpm",
        "those that leave the shortest time to any higher speed (rpm)",
    ),
    (
        "run",
        "sets[].times",
        "from rest to every target, then gear by gear; what is not reached is left out",
    ),
    (
        "run",
        "sets[].times[].from_kmh",
        "where the time begins, 0 at rest (km/h)",
    ),
    ("run", "sets[].times[].to_kmh", "where it ends (km/h)"),
    (
        "run",
        "sets[].times[].gear",
        "label of the gear that is driven; null where every change is made",
    ),
    (
        "run",
        "sets[].times[].time_s",
        "time from true standstill, or from the lower speed (s)",
    ),
    ("run", "sets[].times[].distance_m", "way in that time (m)"),
    (
        "run",
        "sets[].times_best",
        "from rest with the best shift points, with the keys of `times`",
    ),
    (
        "run",
        "sets[].times_staying",
        "from rest without the last change, where that is sooner, with the keys of `times`",
    ),
    (
        "run",
        "sets[].distances",
        "from rest over 400 m and a quarter of a mile",
    ),
    ("run", "sets[].distances[].distance_m", "way (m)"),
    ("run", "sets[].distances[].time_s", "time (s)"),
    (
        "run",
        "sets[].distances[].speed_kmh",
        "road speed at its end (km/h)",
    ),
    (
        "run",
        "sets[].rollout_s",
        "time for the first foot; null where the vehicle does not move (s)",
    ),
    (
        "run",
        "sets[].coast",
        "rolling in neutral, with `--coast`; null where it does not get that slow",
    ),
    ("run", "sets[].coast.from_kmh", "where it begins (km/h)"),
    ("run", "sets[].coast.to_kmh", "where it ends (km/h)"),
    ("run", "sets[].coast.time_s", "time (s)"),
    ("run", "sets[].coast.distance_m", "way (m)"),
    (
        "cruise",
        "sets[].idle_fuel_l_per_h",
        "fuel at idle, an estimate; null where idle or displacement are not known (L/h)",
    ),
    (
        "cruise",
        "sets[].fuel_uncertainty_percent",
        "how far an estimate may be off either way; null where there is none (%)",
    ),
    (
        "cruise",
        "sets[].gears[].cruise",
        "at the speeds that were asked for; null is what the gear cannot hold",
    ),
    (
        "cruise",
        "sets[].gears[].cruise[].speed_kmh",
        "road speed (km/h)",
    ),
    (
        "cruise",
        "sets[].gears[].cruise[].engine_rpm",
        "engine speed at it, also outside the gear (rpm)",
    ),
    (
        "cruise",
        "sets[].gears[].cruise[].load_percent",
        "share of full torque at that engine speed (%)",
    ),
    (
        "cruise",
        "sets[].gears[].cruise[].power_kw",
        "power at the crank (kW)",
    ),
    (
        "cruise",
        "sets[].gears[].cruise[].reserve_kw",
        "what is left of full power there (kW)",
    ),
    (
        "cruise",
        "sets[].gears[].cruise[].fuel_l_per_100km",
        "fuel, an estimate; null also where the displacement is not known (L/100 km)",
    ),
    (
        "speedometer",
        "sets[].speedometer",
        "at 40, 80 and 120 km/h and at every speed that was asked for",
    ),
    (
        "speedometer",
        "sets[].speedometer[].true_kmh",
        "true road speed (km/h)",
    ),
    (
        "speedometer",
        "sets[].speedometer[].shown_kmh",
        "what the speedometer shows there; null where that is not known (km/h)",
    ),
    (
        "speedometer",
        "sets[].speedometer[].limit_kmh",
        "the most that UN R39 in its original series lets it show (km/h)",
    ),
    (
        "speedometer",
        "sets[].speedometer[].within_r39",
        "whether that is kept, and no less than the true speed is shown; null where that is not known",
    ),
    (
        "speedometer",
        "sets[].odometer_error_percent",
        "how much too far the odometer counts, below 0 too little; null where that is not known (%)",
    ),
    (
        "speedometer",
        "sets[].verdict",
        "how the rule of the project judges the speedometer, or why nothing can be said of it",
    ),
];
