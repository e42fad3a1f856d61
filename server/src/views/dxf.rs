//! The base plate and the drilling jig as a drawing that a workshop's machines read (DXF, release 2000), in millimetres, or in
//! inches where inch parts are sold: the header says which.
//!
//! The plate lies round the origin, north upwards; the jig, a board with holes that guide the drill, lies east of it. The
//! same plan gives the same bytes: what the library takes from the clock and from chance is fixed.

mod fixed;

use dxf::entities::{Circle, Entity, EntityType, Line, LwPolyline, Text};
use dxf::enums::{AcadVersion, DrawingUnits, Units};
use dxf::tables::Layer;
use dxf::{Color, Drawing, LwPolylineVertex, Point};
use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::inches;
use stillground::stock::Stock;
use stillground::units::customary::INCH_MM;
use stillground::units::{Length, millimetre};

/// Layers with their colours by index; the names say what is cut, what is drilled and what is only read.
const LAYERS: [(&str, u8); 8] = [
    ("Plate outline", 7),
    ("Plate holes", 1),
    ("Plate middle hole", 1),
    ("Column outline", 8),
    ("Jig outline", 7),
    ("Jig holes", 1),
    ("North", 5),
    ("Notes", 3),
];
/// How far the jig's board reaches beyond the plate's edge, mm: room to clamp it.
const JIG_ROUND_MM: f64 = 50.0;
/// Room between plate and jig on the drawing, mm.
const APART_MM: f64 = 100.0;
/// Height of the letters, mm.
const LETTER_MM: f64 = 8.0;

/// Why no drawing could be made; a fault of ours.
#[derive(Debug, thiserror::Error)]
#[error("the drawing for the workshop cannot be written: {0}")]
pub struct Fault(String);

/// What the workshop makes, in millimetres or in inches.
struct Shape {
    stock: Stock,
    studs: Vec<(f64, f64)>,
    side: f64,
    thickness: f64,
    plate_hole: f64,
    middle_hole: f64,
    column: f64,
    drill: f64,
}

impl Shape {
    fn of(brief: &Brief, design: &Design) -> Self {
        let stock = brief.stock.value;
        let mm = |length: Length| millimetre::get(length) / stock.either(1.0, INCH_MM);
        let (anchors, pier) = (&design.anchors, &design.pier);
        Self {
            stock,
            studs: anchors
                .studs
                .iter()
                .map(|stud| (mm(stud.x), mm(stud.y)))
                .collect(),
            side: mm(pier.plate_side),
            thickness: mm(pier.plate_thickness),
            plate_hole: mm(brief.anchors.thread().plate_hole),
            middle_hole: mm(design.block.ducts.plate_hole),
            column: mm(pier.outside_diameter),
            drill: mm(anchors.hole_diameter),
        }
    }
}

impl Shape {
    /// Of two sizes the one in the drawing's unit.
    fn sized(&self, millimetres: f64, inches: f64) -> f64 {
        self.stock.either(millimetres, inches)
    }

    /// Height of the letters.
    fn letter(&self) -> f64 {
        self.sized(LETTER_MM, 0.3)
    }

    /// A size with its unit, in plain letters.
    fn said(&self, size: f64) -> String {
        match self.stock {
            Stock::Metric => format!("{} mm", tidy(size)),
            Stock::Inch => inches::plain(size * INCH_MM),
        }
    }

    /// The same where another with its unit follows.
    fn bare(&self, size: f64) -> String {
        match self.stock {
            Stock::Metric => tidy(size),
            Stock::Inch => self.said(size),
        }
    }
}

/// The plate and the jig of a design.
///
/// # Errors
/// When the library refuses to write.
pub fn workshop(brief: &Brief, design: &Design) -> Result<String, Fault> {
    let shape = Shape::of(brief, design);
    let mut drawing = Drawing::new();
    head(&mut drawing, shape.stock);
    plate(&mut drawing, &shape, brief);
    jig(&mut drawing, &shape);
    let mut bytes = Vec::new();
    drawing
        .save(&mut bytes)
        .map_err(|error| Fault(error.to_string()))?;
    let text = String::from_utf8(bytes).map_err(|error| Fault(error.to_string()))?;
    Ok(fixed::moments(&text))
}

fn head(drawing: &mut Drawing, stock: Stock) {
    drawing.header.version = AcadVersion::R2000;
    drawing.header.default_drawing_units = stock.either(Units::Millimeters, Units::Inches);
    drawing.header.drawing_units = stock.either(DrawingUnits::Metric, DrawingUnits::English);
    drawing.header.fingerprint_guid = Default::default();
    drawing.header.version_guid = Default::default();
    for (name, colour) in LAYERS {
        drawing.add_layer(Layer {
            name: name.to_owned(),
            color: Color::from_index(colour),
            ..Layer::default()
        });
    }
}

fn plate(drawing: &mut Drawing, shape: &Shape, brief: &Brief) {
    square(drawing, "Plate outline", (0.0, 0.0), shape.side);
    for &centre in &shape.studs {
        circle(drawing, "Plate holes", centre, shape.plate_hole);
    }
    if shape.middle_hole > 0.0 {
        circle(drawing, "Plate middle hole", (0.0, 0.0), shape.middle_hole);
    }
    circle(drawing, "Column outline", (0.0, 0.0), shape.column);
    north(drawing, shape, (0.0, 0.0), shape.side);
    let steel = brief.pier.steel.value.of_plate();
    let mut lines = vec![
        format!(
            "Base plate {} x {} x {}, {steel}",
            shape.bare(shape.side),
            shape.bare(shape.side),
            shape.said(shape.thickness)
        ),
        format!(
            "{} holes of {} for studs {}",
            shape.studs.len(),
            shape.said(shape.plate_hole),
            brief.anchors.size.value.key()
        ),
    ];
    if shape.middle_hole > 0.0 {
        lines.push(format!(
            "Middle hole {} for the ducts",
            shape.said(shape.middle_hole)
        ));
    }
    lines.push(format!(
        "Column of {}, outline only",
        shape.said(shape.column)
    ));
    notes(
        drawing,
        shape,
        (-shape.side / 2.0, -shape.side / 2.0),
        &lines,
    );
}

fn jig(drawing: &mut Drawing, shape: &Shape) {
    let side = shape.side + 2.0 * shape.sized(JIG_ROUND_MM, 2.0);
    let east = shape.side / 2.0 + shape.sized(APART_MM, 4.0) + side / 2.0;
    square(drawing, "Jig outline", (east, 0.0), side);
    for (x, y) in &shape.studs {
        circle(drawing, "Jig holes", (east + x, *y), shape.drill);
    }
    north(drawing, shape, (east, 0.0), side);
    let lines = [
        format!(
            "Drilling jig {} x {}, upper face",
            shape.bare(side),
            shape.said(side)
        ),
        format!(
            "{} holes of {} to guide the drill",
            shape.studs.len(),
            shape.said(shape.drill)
        ),
        "Check all distances against the plan's table before drilling".to_owned(),
    ];
    notes(drawing, shape, (east - side / 2.0, -side / 2.0), &lines);
}

/// An arrow to true north that ends inside the edge, and its letter.
fn north(drawing: &mut Drawing, shape: &Shape, (x, y): (f64, f64), side: f64) {
    let (tip, tail) = (y + 0.46 * side, y + 0.36 * side);
    let barb = 0.02 * side;
    for (a, b) in [
        ((x, tail), (x, tip)),
        ((x, tip), (x - barb, tip - 2.0 * barb)),
        ((x, tip), (x + barb, tip - 2.0 * barb)),
    ] {
        put(
            drawing,
            "North",
            EntityType::Line(Line::new(
                Point::new(a.0, a.1, 0.0),
                Point::new(b.0, b.1, 0.0),
            )),
        );
    }
    letter(drawing, shape, "North", (x + barb, tail), "N true north");
}

fn square(drawing: &mut Drawing, layer: &str, (x, y): (f64, f64), side: f64) {
    let half = side / 2.0;
    let corner = |(east, up): (f64, f64)| LwPolylineVertex {
        x: x + east * half,
        y: y + up * half,
        ..LwPolylineVertex::default()
    };
    let mut outline = LwPolyline {
        vertices: [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)]
            .map(corner)
            .to_vec(),
        ..LwPolyline::default()
    };
    outline.set_is_closed(true);
    put(drawing, layer, EntityType::LwPolyline(outline));
}

fn circle(drawing: &mut Drawing, layer: &str, (x, y): (f64, f64), diameter: f64) {
    put(
        drawing,
        layer,
        EntityType::Circle(Circle::new(Point::new(x, y, 0.0), diameter / 2.0)),
    );
}

/// Lines of text below a corner.
fn notes(drawing: &mut Drawing, shape: &Shape, (x, y): (f64, f64), lines: &[String]) {
    for (i, line) in lines.iter().enumerate() {
        letter(
            drawing,
            shape,
            "Notes",
            (x, y - shape.letter() * (2.0 + 1.8 * i as f64)),
            line,
        );
    }
}

fn letter(drawing: &mut Drawing, shape: &Shape, layer: &str, (x, y): (f64, f64), text: &str) {
    let text = Text {
        location: Point::new(x, y, 0.0),
        text_height: shape.letter(),
        value: text.to_owned(),
        ..Text::default()
    };
    put(drawing, layer, EntityType::Text(text));
}

fn put(drawing: &mut Drawing, layer: &str, shape: EntityType) {
    let mut entity = Entity::new(shape);
    entity.common.layer = layer.to_owned();
    drawing.add_entity(entity);
}

/// Digits of a size in millimetres, to a hundredth, in plain letters.
fn tidy(mm: f64) -> String {
    stillground::figure::digits((mm * 100.0).round() / 100.0)
}

#[cfg(test)]
mod tests;
