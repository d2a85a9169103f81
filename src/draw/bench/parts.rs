//! The parts that most bench drawings have: what is turned about an axis, shafts and bearings, cut along it.

use super::board::{At, Board, Fill, Pen};

/// Where the small ends of a taper bearing's rollers are: its cup is thickest there and held from there.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum SmallEnds {
    /// On the left.
    Left,
    /// On the right.
    Right,
}

/// How a solid part ends.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum End {
    /// With a face.
    Face,
    /// Broken off in the drawing: it goes on.
    Broken,
}

/// The room of a bearing: from left to right, from bore to outside as radii.
#[derive(Debug, Clone, Copy)]
pub(super) struct Room {
    /// Its sides.
    pub(super) x: [f32; 2],
    /// Its bore and its outside.
    pub(super) r: [f32; 2],
}

/// A cut along an axis: what is turned about it is seen above and below.
pub(super) struct Cut<'a> {
    board: &'a Board<'a>,
    axis: f32,
}

/// The rings of a taper bearing with rollers that point to the right, as shares of its width and height: the cup, ...
const CUP: [At; 5] = [
    [0.26, 1.0],
    [1.0, 1.0],
    [1.0, 0.54],
    [0.26, 0.821],
    [0.26, 1.0],
];

/// ... the cone with its rib behind the large ends, ...
const CONE: [At; 9] = [
    [0.0, 0.0],
    [0.0, 0.46],
    [0.2, 0.46],
    [0.16, 0.357],
    [0.7, 0.211],
    [0.72, 0.27],
    [0.82, 0.27],
    [0.82, 0.0],
    [0.0, 0.0],
];

/// ... and a roller.
const ROLLER: [At; 5] = [
    [0.16, 0.357],
    [0.33, 0.795],
    [0.86, 0.593],
    [0.7, 0.211],
    [0.16, 0.357],
];

/// The line along which it carries: square to the cup's race, from the cup's outside to below the bore.
const CARRIED: [At; 2] = [[0.79, 1.1], [0.36, -0.05]];

impl<'a> Cut<'a> {
    /// A cut along an axis at that height.
    pub(super) fn along(board: &'a Board<'a>, axis: f32) -> Self {
        Self { board, axis }
    }

    /// What it is drawn on.
    pub(super) fn board(&self) -> &Board<'a> {
        self.board
    }

    /// A place beside the axis: above it where the radius is above 0.
    pub(super) fn at(&self, [x, r]: At) -> At {
        [x, self.axis - r]
    }

    fn both(&self, profile: &[At], paint: impl Fn(&[At])) {
        for half in [1.0, -1.0] {
            let points: Vec<At> = profile
                .iter()
                .map(|[x, r]| self.at([*x, half * r]))
                .collect();
            paint(&points);
        }
    }

    /// A part that runs round the axis, by its outline of places and radii.
    pub(super) fn ring(&self, profile: &[At], fill: Fill) {
        self.both(profile, |points| self.board.part(points, fill));
    }

    /// A plain ring between two places and two radii.
    pub(super) fn plain_ring(&self, [left, right]: [f32; 2], [inner, outer]: [f32; 2], fill: Fill) {
        let profile = [
            [left, inner],
            [left, outer],
            [right, outer],
            [right, inner],
            [left, inner],
        ];
        self.ring(&profile, fill);
    }

    /// A solid part whose outside is a line from left to right, as places and radii, with its two ends.
    pub(super) fn solid(&self, outside: &[At], ends: [End; 2], fill: Fill) {
        let above = outside.iter().map(|[x, r]| self.at([*x, *r]));
        let below = outside.iter().rev().map(|[x, r]| self.at([*x, -r]));
        let mut points: Vec<At> = above.collect();
        if let Some([x, radius]) = outside.last() {
            points.extend(self.end(*x, *radius, ends[1]));
        }
        points.extend(below);
        if let Some([x, radius]) = outside.first() {
            points.extend(self.end(*x, -radius, ends[0]));
        }
        points.extend(points.first().copied());
        self.board.part(&points, fill);
    }

    /// What lies between the corners of an end, from that of the radius on.
    fn end(&self, x: f32, radius: f32, end: End) -> Vec<At> {
        const BOW: [At; 7] = [
            [0.8, -0.7],
            [0.5, -1.0],
            [0.2, -0.7],
            [0.0, 0.0],
            [-0.2, 0.7],
            [-0.5, 1.0],
            [-0.8, 0.7],
        ];
        const BULGE: f32 = 3.0;
        let on_bow = |[up, out]: At| self.at([x + out * BULGE * radius.signum(), up * radius]);
        match end {
            End::Face => Vec::new(),
            End::Broken => BOW.map(on_bow).to_vec(),
        }
    }

    /// The line in the middle.
    pub(super) fn centre_line(&self, [from, to]: [f32; 2]) {
        self.board
            .line(&[[from, self.axis], [to, self.axis]], Pen::Axis);
    }

    /// A taper bearing.
    pub(super) fn taper_bearing(&self, room: Room, ends: SmallEnds) {
        for (shares, fill) in [
            (&CUP[..], Fill::Metal),
            (&CONE[..], Fill::Metal),
            (&ROLLER[..], Fill::Bare),
        ] {
            self.ring(&in_room(room, ends, shares), fill);
        }
    }

    /// The lines along which a taper bearing carries, to the axis.
    pub(super) fn load_lines(&self, room: Room, ends: SmallEnds) {
        let [outside, bore] = CARRIED;
        let slope = (outside[0] - bore[0]) / (outside[1] - bore[1]);
        // On from the bore to where it meets the axis.
        let down = room.r[0] / (room.r[1] - room.r[0]);
        let axis = [bore[0] + slope * (-down - bore[1]), -down];
        let line = in_room(room, ends, &[outside, axis]);
        self.both(&line, |points| self.board.line(points, Pen::Load));
    }

    /// A ball bearing.
    pub(super) fn ball_bearing(&self, room: Room) {
        let Room {
            x: [left, right],
            r: [bore, outside],
        } = room;
        let ring = (outside - bore) * 0.3;
        self.plain_ring(room.x, [outside - ring, outside], Fill::Metal);
        self.plain_ring(room.x, [bore, bore + ring], Fill::Metal);
        let middle = [f32::midpoint(left, right), f32::midpoint(bore, outside)];
        for half in [1.0, -1.0] {
            let at = self.at([middle[0], half * middle[1]]);
            self.board.disc(at, (outside - bore) * 0.29, Fill::Bare);
        }
    }
}

/// Shares of a bearing's room as places and radii.
fn in_room(room: Room, ends: SmallEnds, shares: &[At]) -> Vec<At> {
    let [left, right] = room.x;
    let [bore, outside] = room.r;
    let place = |[along, up]: &At| {
        let x = match ends {
            SmallEnds::Right => left + along * (right - left),
            SmallEnds::Left => right - along * (right - left),
        };
        [x, bore + up * (outside - bore)]
    };
    shares.iter().map(place).collect()
}
