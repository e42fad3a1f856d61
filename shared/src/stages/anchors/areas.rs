//! The concrete that comes out with the studs: the cone's area in the block's top, and what breaks off its edge.

use serde::Serialize;

use crate::rules::en_1992_4_2018::{cone, edge};
use crate::stages::anchors::layout::{Group, Stud};
use crate::stages::anchors::situation::{Acting, Situation};
use crate::units::{Area, Length, millimetre, square_millimetre};

/// Sides of the block in words, in the order of [`Group::edges`].
pub const SIDES: [&str; 4] = ["east", "west", "north", "south"];

/// The area that a cone takes of the block's top, overlaps counted once, cut by the edges.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ConeArea {
    /// Numbers of the studs that are pulled.
    pub studs: Vec<usize>,
    /// From a stud to the cone's edge, 1.5 h_ef.
    #[serde(rename = "reach_mm", with = "millimetre")]
    pub reach: Length,
    /// The area.
    #[serde(rename = "area_mm2", with = "square_millimetre")]
    pub area: Area,
    /// That of one stud far from edges.
    #[serde(rename = "single_area_mm2", with = "square_millimetre")]
    pub single: Area,
}

/// What breaks off the block's side.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct EdgeArea {
    /// Which side.
    pub side: &'static str,
    #[serde(skip)]
    pub(super) index: usize,
    /// Numbers of the studs in the row nearest to it, which carry the shear.
    pub studs: Vec<usize>,
    /// From the row to the side, as it counts: less than it is in a narrow, thin block.
    #[serde(rename = "counted_mm", with = "millimetre")]
    pub counted: Length,
    /// From the row to the side as it stands.
    #[serde(rename = "distance_mm", with = "millimetre")]
    pub distance: Length,
    /// Length of the row.
    #[serde(rename = "row_mm", with = "millimetre")]
    pub row: Length,
    /// From the row's ends to the block's corners; along x for a side in y, towards the positive end first.
    #[serde(rename = "corners_mm", with = "millimetre::list")]
    pub corners: [Length; 2],
    /// How deep it breaks: 1.5 times the counted distance, at most the block.
    #[serde(rename = "depth_mm", with = "millimetre")]
    pub depth: Length,
    /// How far it spreads beyond the row's ends, towards either corner.
    #[serde(rename = "spread_mm", with = "millimetre::list")]
    pub spread: [Length; 2],
    /// The area on the side.
    #[serde(rename = "area_mm2", with = "square_millimetre")]
    pub area: Area,
    /// That of one stud far from corners.
    #[serde(rename = "single_area_mm2", with = "square_millimetre")]
    pub single: Area,
}

impl EdgeArea {
    /// The areas' ratio.
    pub fn ratio(&self) -> f64 {
        (self.area / self.single).value
    }

    /// The nearer corner.
    pub fn corner(&self) -> Length {
        if self.corners[0] < self.corners[1] {
            self.corners[0]
        } else {
            self.corners[1]
        }
    }

    /// What breaks off a side (0 east, 1 west, 2 north, 3 south) when the row nearest to it is pushed towards it.
    pub fn of(group: &Group, side: usize) -> Self {
        let side = side % 4;
        let row = group.row(side);
        let edges = row.edges();
        let corners = if side < 2 {
            [edges[2], edges[3]]
        } else {
            [edges[0], edges[1]]
        };
        let thickness = row.concrete.thickness;
        let counted = edge::narrow_edge(edges[side], corners, thickness, row.largest_spacing());
        let reach = counted * 1.5;
        let least = |a: Length, b: Length| if a < b { a } else { b };
        Self {
            side: SIDES[side],
            index: side,
            studs: numbers(group, &row.studs),
            counted,
            distance: edges[side],
            row: row.row_length(side),
            corners,
            depth: least(reach, thickness),
            spread: corners.map(|corner| least(corner, reach)),
            area: edge::row_area(counted, row.row_length(side), corners, thickness),
            single: edge::single_area(counted),
        }
    }
}

/// Numbers of some studs in their group, counted from 1.
fn numbers(group: &Group, some: &[Stud]) -> Vec<usize> {
    group
        .studs
        .iter()
        .enumerate()
        .filter(|(_, stud)| some.contains(stud))
        .map(|(i, _)| i + 1)
        .collect()
}

/// The cone of the studs that are pulled out of a group.
pub fn cone(situation: &Situation, group: &Group, pulled: &Acting) -> ConeArea {
    let full = cone::characteristic_spacing(situation.embedment) / 2.0;
    let embedment = match pulled.group.narrow(full) {
        Some(edge) => {
            cone::narrow_embedment(situation.embedment, edge, pulled.group.largest_spacing())
        }
        None => situation.embedment,
    };
    let spacing = cone::characteristic_spacing(embedment);
    ConeArea {
        studs: numbers(group, &pulled.group.studs),
        reach: spacing / 2.0,
        area: pulled.group.area(spacing / 2.0),
        single: spacing * spacing,
    }
}
