//! The finite elements' answers of `engineering/reference/halfspace_block.json`, taken to infinitely fine cells and an
//! infinitely far boundary.

use serde_json::Value;
use stillground::halfspace::Shape;

/// Boxes whose boundaries give the limit, and meshes in the smaller box that give the other; coarsest first.
const FAR: [&str; 2] = ["4 cells, 6 rows", "4 cells, 8 rows"];
/// The mesh on which one ground is held against another.
const COMPARED: &str = "3 cells, 8 rows";
const ORDERS: std::ops::Range<f64> = 0.7..6.0;

/// One case: a shape, its ground, and each contact's answers.
pub struct Case(Value);

/// All cases.
pub struct Reference(Value);

impl Reference {
    /// As they stand in the repository.
    ///
    /// # Panics
    /// When the file is no JSON.
    #[must_use]
    #[allow(clippy::expect_used, reason = "a test fails by panicking")]
    pub fn read() -> Self {
        Self(
            serde_json::from_str(include_str!(
                "../engineering/reference/halfspace_block.json"
            ))
            .expect("the reference is JSON"),
        )
    }

    /// A case by its name.
    #[must_use]
    pub fn case(&self, name: &str) -> Case {
        Case(self.0[name].clone())
    }
}

/// What one answer is asked for.
#[derive(Clone, Copy)]
pub enum Asked {
    /// An entry of the stiffness.
    Entry(usize, usize),
    /// The lean about y under a newton at one of the places on the x axis.
    Lean(usize),
}

/// A figure of the elements on its way to the limit.
#[derive(Debug, Clone, Copy)]
pub struct Figure {
    /// On four cells in the smaller box.
    pub near: f64,
    /// The same in the larger box.
    pub far: f64,
    /// On the finest cells, the boundary at infinity.
    pub finest: f64,
    /// On infinitely fine cells, the boundary at infinity.
    pub limit: f64,
}

impl Case {
    /// The block, with one of its contacts.
    #[must_use]
    pub fn shape(&self, contact: &str) -> Shape {
        let half = [number(&self.0["half"][0]), number(&self.0["half"][1])];
        let [from, to] = [0, 1].map(|i| number(&self.0["contacts"][contact][i]));
        Shape {
            length_m: 2.0 * half[0],
            width_m: 2.0 * half[1],
            depth_m: number(&self.0["depth"]),
            contact_from_m: from,
            contact_to_m: to,
            poisson_ratio: number(&self.0["nu"]),
        }
    }

    /// The contacts that were solved, most of it first.
    #[must_use]
    pub fn contacts(&self) -> Vec<&'static str> {
        ["full", "half", "none"]
            .into_iter()
            .filter(|contact| self.0["answers"].get(contact).is_some())
            .collect()
    }

    /// Width of the gap between block and hole.
    #[must_use]
    pub fn gap_m(&self) -> f64 {
        number(&self.0["gap"])
    }

    /// Places on the x axis at which leans are known.
    #[must_use]
    pub fn places(&self) -> Vec<f64> {
        self.0["places"]
            .as_array()
            .map(|places| places.iter().map(number).collect())
            .unwrap_or_default()
    }

    /// Whether a place lies off the block and its hole.
    #[must_use]
    pub fn outside(&self, place_m: f64) -> bool {
        place_m > number(&self.0["half"][0]) + self.gap_m() + 0.1
    }

    /// A figure with its limits, from two boxes and from three meshes.
    #[must_use]
    pub fn figure(&self, contact: &str, asked: Asked) -> Figure {
        let [near, far] = FAR.map(|mesh| self.on(contact, mesh, asked));
        let [r, s] = FAR.map(|mesh| number(&self.0["answers"][contact][mesh]["reach"]));
        let infinite = (s * far - r * near) / (s - r);
        let (finest, limit) = self.cells(contact, asked);
        Figure {
            near,
            far,
            finest: infinite + finest - near,
            limit: infinite + limit - near,
        }
    }

    /// A figure in the larger box, without limits: to hold one ground against another on the same mesh.
    #[must_use]
    pub fn same_mesh(&self, contact: &str, asked: Asked) -> f64 {
        self.on(contact, COMPARED, asked)
    }

    /// The limit of infinitely fine cells in the smaller box: to hold one hole against another.
    #[must_use]
    pub fn same_box(&self, contact: &str, asked: Asked) -> f64 {
        self.cells(contact, asked).1
    }

    /// Seconds of one core that all the answers for a contact took.
    #[must_use]
    pub fn seconds(&self, contact: &str) -> f64 {
        self.0["answers"][contact]
            .as_object()
            .map_or(0.0, |meshes| {
                meshes.values().map(|mesh| number(&mesh["seconds"])).sum()
            })
    }

    /// The finest mesh's figure in the smaller box, and the limit of the three.
    fn cells(&self, contact: &str, asked: Asked) -> (f64, f64) {
        let mut meshes = self.meshes(contact, asked);
        meshes.sort_by(|a, b| a.0.total_cmp(&b.0));
        match meshes.as_slice() {
            [a, b, c] => (c.1, fine_limit([*a, *b, *c])),
            [.., c] => (c.1, c.1),
            [] => (f64::NAN, f64::NAN),
        }
    }

    fn meshes(&self, contact: &str, asked: Asked) -> Vec<(f64, f64)> {
        let meshes = self.0["answers"][contact].as_object();
        let names = meshes
            .into_iter()
            .flat_map(|meshes| meshes.keys())
            .filter(|name| name.ends_with(" 6 rows"));
        names
            .map(|name| {
                (
                    number(&self.0["answers"][contact][name]["cells"]),
                    self.on(contact, name, asked),
                )
            })
            .collect()
    }

    fn on(&self, contact: &str, mesh: &str, asked: Asked) -> f64 {
        let answer = &self.0["answers"][contact][mesh];
        let entry = |i: usize, j: usize| number(&answer["stiffness"][i][j]);
        match asked {
            Asked::Entry(i, j) => entry(i, j),
            Asked::Lean(place) => {
                // Betti: the surface's movement under a unit of each motion is the load that a unit force there amounts to.
                let [x, ry] = ["x", "ry"].map(|motion| number(&answer["surface"][motion][place]));
                (entry(0, 0) * ry - entry(0, 4) * x)
                    / (entry(0, 0) * entry(4, 4) - entry(0, 4) * entry(0, 4))
            }
        }
    }
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap_or(f64::NAN)
}

/// The limit `L` of `L + C n^−p` through three meshes of `n` cells; the finest value where they follow no such law.
fn fine_limit([(n1, k1), (n2, k2), (n3, k3)]: [(f64, f64); 3]) -> f64 {
    let asked = (k1 - k2) / (k2 - k3);
    let ratio = |p: f64| (n1.powf(-p) - n2.powf(-p)) / (n2.powf(-p) - n3.powf(-p));
    let (mut low, mut high) = (ORDERS.start, ORDERS.end);
    if !(asked.is_finite() && asked > ratio(low)) {
        return k3;
    }
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if ratio(middle) < asked {
            low = middle;
        } else {
            high = middle;
        }
    }
    let c = (k2 - k3) / (n2.powf(-low) - n3.powf(-low));
    k3 - c * n3.powf(-low)
}
