//! Diameters, deviations and clearances of a fit that can exist.

use crate::gearing::quantity;

quantity! {
    /// The diameter of a shaft, a bore or a ring: 0.5 to 1000 mm.
    Diameter, from_mm, mm, "a diameter", "between 0.5 and 1000 mm",
    |mm| (0.5..=1000.0).contains(&mm)
}

quantity! {
    /// How far a size may lie above its nominal one, below 0 where it lies below: −1000 to 1000 µm.
    Deviation, from_um, um, "a deviation", "between -1000 and 1000 µm",
    |um| (-1000.0..=1000.0).contains(&um)
}

quantity! {
    /// The width of a ring on its seat: 1 to 500 mm.
    RingWidth, from_mm, mm, "the width of a ring", "between 1 and 500 mm",
    |mm| (1.0..=500.0).contains(&mm)
}

quantity! {
    /// What a warmed part is to be wider than its seat, so that it slips on: 0 to 1000 µm.
    SlipClearance, from_um, um, "a slip clearance", "between 0 and 1000 µm",
    |um| (0.0..=1000.0).contains(&um)
}

quantity! {
    /// The temperature of the room: −30 to 60 °C.
    RoomTemperature, from_c, c, "the temperature of the room", "between -30 and 60 °C",
    |c| (-30.0..=60.0).contains(&c)
}
