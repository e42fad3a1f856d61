//! The view from the south-east and from above, and bodies put into it from front to back.
//!
//! It is an axonometric view after ISO 5456-3: what is parallel stays parallel, and equal lengths the same way are drawn
//! equally long wherever they are.

use crate::drawing::hatch::Hatch;
use crate::drawing::pen::Pen;
use crate::drawing::veil::{Veil, hull};
use crate::drawing::{Line, Point, at};

/// How far the eye stands to the east of south, and above the level, degrees.
const TURNED_DEG: f64 = 39.0;
const RAISED_DEG: f64 = 27.0;
/// Points of a circle.
const ROUND: u32 = 36;

/// A place in the world, metres: east, north, up.
pub type Place = [f64; 3];

/// The view.
#[derive(Debug, Clone, Copy)]
pub struct Axonometry {
    /// Millimetres of paper for a metre across the line of sight.
    pub mm_per_m: f64,
}

impl Axonometry {
    /// The place on paper.
    #[must_use]
    pub fn at(&self, [x, y, z]: Place) -> Point {
        let (sin_turn, cos_turn) = TURNED_DEG.to_radians().sin_cos();
        let (sin_rise, cos_rise) = RAISED_DEG.to_radians().sin_cos();
        let across = x * cos_turn + y * sin_turn;
        let up = z * cos_rise + (y * cos_turn - x * sin_turn) * sin_rise;
        at(across * self.mm_per_m, -up * self.mm_per_m)
    }

    /// A height on paper.
    #[must_use]
    pub fn height(&self, height_m: f64) -> f64 {
        height_m * RAISED_DEG.to_radians().cos() * self.mm_per_m
    }

    /// The two ends of a round bar on paper, the one that is seen whole first.
    pub fn ends(&self, from: Place, to: Place, radius: f64) -> (Vec<Point>, Vec<Point>) {
        let axis = minus(to, from);
        let (a, b) = across(axis);
        let ring = |centre: Place| -> Vec<Point> {
            (0..ROUND)
                .map(|step| {
                    let (sin, cos) =
                        (f64::from(step) * std::f64::consts::TAU / f64::from(ROUND)).sin_cos();
                    let place = [0, 1, 2].map(|i| centre[i] + radius * (cos * a[i] + sin * b[i]));
                    self.at(place)
                })
                .collect()
        };
        let (sin_rise, cos_rise) = RAISED_DEG.to_radians().sin_cos();
        let towards = Axonometry::nearness(axis[0], axis[1]) * cos_rise + axis[2] * sin_rise;
        if towards >= 0.0 {
            (ring(to), ring(from))
        } else {
            (ring(from), ring(to))
        }
    }

    /// How near a place is to the eye, as a level distance.
    #[must_use]
    pub fn nearness(x: f64, y: f64) -> f64 {
        let (sin, cos) = TURNED_DEG.to_radians().sin_cos();
        x * sin - y * cos
    }
}

/// The picture, drawn from front to back.
#[derive(Debug)]
pub struct Scene {
    /// The pen.
    pub pen: Pen,
    /// What stands in front so far.
    pub veil: Veil,
    /// The view.
    pub view: Axonometry,
}

/// A box whose sides lie east, north and up.
#[derive(Debug, Clone, Copy)]
pub struct Solid {
    /// Its least and its greatest x.
    pub x: [f64; 2],
    /// Its least and its greatest y.
    pub y: [f64; 2],
    /// Its least and its greatest z.
    pub z: [f64; 2],
}

impl Scene {
    /// A line, where it is seen.
    pub fn line(&mut self, line: Line, places: &[Place]) {
        let run: Vec<Point> = places.iter().map(|&place| self.view.at(place)).collect();
        self.run(line, &run);
    }

    /// A closed outline, where it is seen.
    pub fn outline(&mut self, line: Line, places: &[Place]) {
        let closed: Vec<Place> = places.iter().chain(places.first()).copied().collect();
        self.line(line, &closed);
    }

    /// A line on paper, where it is seen.
    pub fn run(&mut self, line: Line, run: &[Point]) {
        for piece in self.veil.seen(run) {
            self.pen.line(line, &piece);
        }
    }

    /// A hatch over a flat face, where it is seen.
    pub fn hatch(&mut self, hatch: Hatch, face: &[Place]) {
        let outline = self.face(face);
        self.pen.hatch_behind(hatch, &[outline], &self.veil);
    }

    /// Puts a flat face in front of all that comes after it.
    pub fn cover(&mut self, face: &[Place]) {
        let outline = self.face(face);
        self.veil.cover(&outline);
    }

    fn face(&self, face: &[Place]) -> Vec<Point> {
        face.iter().map(|&place| self.view.at(place)).collect()
    }

    /// A box: its edges that are seen, and all of it in front of what comes after.
    pub fn solid(&mut self, line: Line, solid: Solid) {
        let Solid {
            x: [west, east],
            y: [south, north],
            z: [low, high],
        } = solid;
        self.outline(
            line,
            &[
                [west, south, high],
                [east, south, high],
                [east, north, high],
                [west, north, high],
            ],
        );
        self.line(
            line,
            &[
                [west, south, high],
                [west, south, low],
                [east, south, low],
                [east, north, low],
                [east, north, high],
            ],
        );
        self.line(line, &[[east, south, low], [east, south, high]]);
        self.cover(&[
            [west, south, low],
            [east, south, low],
            [east, north, low],
            [east, north, high],
            [west, north, high],
            [west, south, high],
        ]);
    }

    /// A round bar between two places.
    pub fn cylinder(&mut self, line: Line, from: Place, to: Place, radius: f64) {
        let (near, far) = self.view.ends(from, to, radius);
        let outline = hull(&[near.clone(), far].concat());
        let closed =
            |ring: &[Point]| -> Vec<Point> { ring.iter().chain(ring.first()).copied().collect() };
        self.run(line, &closed(&outline));
        self.run(line, &closed(&near));
        self.veil.cover(&outline);
    }
}

fn minus(a: Place, b: Place) -> Place {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

fn unit(a: Place) -> Place {
    let long = (a[0] * a[0] + a[1] * a[1] + a[2] * a[2]).sqrt().max(1e-12);
    a.map(|part| part / long)
}

fn cross(a: Place, b: Place) -> Place {
    [
        a[1] * b[2] - a[2] * b[1],
        a[2] * b[0] - a[0] * b[2],
        a[0] * b[1] - a[1] * b[0],
    ]
}

/// Two directions square to an axis and to each other.
fn across(axis: Place) -> (Place, Place) {
    let axis = unit(axis);
    let aside = if axis[2].abs() > 0.9 {
        [1.0, 0.0, 0.0]
    } else {
        [0.0, 0.0, 1.0]
    };
    let a = unit(cross(axis, aside));
    (a, cross(axis, a))
}
