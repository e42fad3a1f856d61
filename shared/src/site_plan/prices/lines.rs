//! Every line that a list of materials may have: its name for prices and ticks, and the unit in which it is ordered.
//!
//! A name and its unit never change afterwards, since stored plans and records speak of them; a new line gets a new name.

use crate::figure::Unit;

/// A line of the materials, or a stock length in which one of them can be had.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Line {
    /// Its name, the same in every plan.
    pub id: &'static str,
    /// Unit in which it is ordered.
    pub unit: Unit,
    /// What it is, without sizes.
    pub what: &'static str,
}

/// A line with this name.
#[must_use]
pub fn line(id: &str) -> Option<&'static Line> {
    LINES.iter().find(|line| line.id == id)
}

const fn of(id: &'static str, unit: Unit, what: &'static str) -> Line {
    Line { id, unit, what }
}

/// All of them, in the order of the work.
pub const LINES: &[Line] = &[
    of("pegs", Unit::Count, "Setting-out pegs"),
    of("line", Unit::Metre, "Mason's line"),
    of("marking", Unit::Count, "Marking paint or lime"),
    of("digger", Unit::Day, "Mini digger"),
    of("spades", Unit::Count, "Spade, shovel and digging bar"),
    of("breaker", Unit::Day, "Breaker"),
    of("shoring", Unit::Count, "Shoring or a trench box"),
    of("ladder", Unit::Count, "Ladder"),
    of("barrow", Unit::Count, "Wheelbarrow"),
    of("run-boards", Unit::Count, "Scaffold boards"),
    of("spoil-sheet", Unit::SquareMetre, "Sheet under the spoil"),
    of("skip", Unit::Count, "Skip"),
    of("pump", Unit::Day, "Sump pump"),
    of("geotextile", Unit::SquareMetre, "Geotextile"),
    of("blinding", Unit::CubicMetre, "Blinding"),
    of("rammer", Unit::Day, "Trench rammer"),
    of(
        "frost-boards",
        Unit::SquareMetre,
        "Insulation boards for the ground",
    ),
    of(
        "frost-sheet",
        Unit::SquareMetre,
        "Smooth plastic sheet for a sleeve",
    ),
    of("frost-grease", Unit::Kilogram, "Grease for the sleeve"),
    of(
        "frost-gravel",
        Unit::CubicMetre,
        "Clean gravel against frost",
    ),
    of("fence", Unit::Count, "Fence panels"),
    of("pit-cover", Unit::Count, "Plywood over the pit"),
    of("form-plywood", Unit::Count, "Plywood for the form"),
    of("form-timber", Unit::Count, "Timber for the form"),
    of("form-board", Unit::Count, "Board for the form"),
    of("form-fixings", Unit::Count, "Stakes, screws and form oil"),
    of("rebar", Unit::Count, "Reinforcing bar"),
    of("rebar-3m", Unit::Count, "Reinforcing bar in lengths of 3 m"),
    of(
        "rebar-12m",
        Unit::Count,
        "Reinforcing bar in lengths of 12 m",
    ),
    of(
        "rebar-10ft",
        Unit::Count,
        "Reinforcing bar in lengths of 10 ft",
    ),
    of(
        "rebar-40ft",
        Unit::Count,
        "Reinforcing bar in lengths of 40 ft",
    ),
    of("bar-spacers", Unit::Count, "Bar spacers or chairs"),
    of("tying-wire", Unit::Kilogram, "Tying wire"),
    of("duct", Unit::Count, "Duct"),
    of("duct-bend", Unit::Count, "Sweep bend"),
    of("draw-cord", Unit::Metre, "Draw cord"),
    of("duct-caps", Unit::Count, "Duct tape and end caps"),
    of(
        "drain-gravel",
        Unit::CubicMetre,
        "Clean gravel for the drain",
    ),
    of("concrete-ready", Unit::CubicMetre, "Ready-mixed concrete"),
    of("concrete-bagged", Unit::Count, "Dry concrete in bags"),
    of("water", Unit::Litre, "Clean water"),
    of("mixer", Unit::Day, "Concrete mixer"),
    of("cement", Unit::Count, "Cement in bags"),
    of("sand", Unit::Kilogram, "Sharp sand"),
    of("gravel", Unit::Kilogram, "Gravel"),
    of("polythene", Unit::SquareMetre, "Polythene sheet"),
    of("hessian", Unit::SquareMetre, "Hessian"),
    of(
        "blanket",
        Unit::SquareMetre,
        "Insulating blanket or foam boards",
    ),
    of("tube", Unit::Metre, "Steel tube"),
    of("tube-3m", Unit::Count, "Steel tube in lengths of 3 m"),
    of("tube-6m", Unit::Count, "Steel tube in lengths of 6 m"),
    of("tube-10ft", Unit::Count, "Steel tube in lengths of 10 ft"),
    of("tube-20ft", Unit::Count, "Steel tube in lengths of 20 ft"),
    of("base-plate", Unit::Count, "Base plate"),
    of("top-plate", Unit::Count, "Top plate"),
    of("ribs", Unit::Count, "Stiffening ribs"),
    of("welding", Unit::Count, "Welding of column and plates"),
    of(
        "mount-bolts",
        Unit::Count,
        "Bolts, nuts and washers for the mount",
    ),
    of("fill-sand", Unit::Kilogram, "Kiln-dried sand"),
    of(
        "fill-concrete",
        Unit::CubicMetre,
        "Flowing concrete or grout in the column",
    ),
    of("coating", Unit::Litre, "Galvanising, or paint"),
    of("hoist", Unit::Day, "Engine crane, gantry or hoist"),
    of("slings", Unit::Count, "Lifting slings"),
    of("stud", Unit::Count, "Studs, cut"),
    of("stud-rod-1m", Unit::Count, "Threaded rod in lengths of 1 m"),
    of("stud-rod-2m", Unit::Count, "Threaded rod in lengths of 2 m"),
    of("stud-rod-3m", Unit::Count, "Threaded rod in lengths of 3 m"),
    of(
        "stud-rod-3ft",
        Unit::Count,
        "Threaded rod in lengths of 3 ft",
    ),
    of(
        "stud-rod-6ft",
        Unit::Count,
        "Threaded rod in lengths of 6 ft",
    ),
    of(
        "stud-rod-12ft",
        Unit::Count,
        "Threaded rod in lengths of 12 ft",
    ),
    of("nut", Unit::Count, "Nuts"),
    of("washer", Unit::Count, "Washers"),
    of("paste", Unit::Count, "Assembly paste"),
    of("resin-cartridge", Unit::Count, "Injection resin"),
    of("resin-nozzle", Unit::Count, "Mixer nozzles"),
    of("resin-gun", Unit::Count, "Cartridge gun"),
    of("shim", Unit::Count, "Brass or steel shim"),
    of("grout", Unit::Count, "Non-shrink grout"),
    of("grout-shims", Unit::Count, "Steel shims"),
    of("grout-dam", Unit::Metre, "Foam strip or timber for a dam"),
    of("drill-bit", Unit::Count, "Hammer-drill bit"),
    of("hole-brush", Unit::Count, "Wire brush"),
    of("hole-pump", Unit::Count, "Blow-out pump"),
    of("floor-gravel", Unit::CubicMetre, "Gravel or bark"),
    of("slab-concrete", Unit::CubicMetre, "Concrete for the slab"),
    of(
        "slab-stone",
        Unit::CubicMetre,
        "Crushed stone under the slab",
    ),
    of("slab-foam", Unit::Metre, "Foam strip round the block"),
    of("joists", Unit::Count, "Joists"),
    of("deck-boards", Unit::SquareMetre, "Deck boards"),
    of("posts", Unit::Count, "Post, pad and bracket"),
    of("deck-screws", Unit::Count, "Deck screws and joist hangers"),
    of("gap-seal", Unit::Metre, "Brush or soft rubber strip"),
    of("earth-rod", Unit::Count, "Earthing rod"),
    of("earth-cable", Unit::Metre, "Earthing cable"),
    of("earth-lug", Unit::Count, "Earthing lug"),
    of("marker-tape", Unit::Metre, "Marker tape"),
    of("grommet", Unit::Count, "Rubber grommet"),
    of("socket", Unit::Count, "Outdoor socket"),
    of("tape", Unit::Count, "Tape and folding rule"),
    of("level", Unit::Count, "Spirit levels"),
    of("compass", Unit::Count, "Compass"),
    of("template-board", Unit::Count, "Template board"),
    of("template-print", Unit::Count, "Printed template"),
    of("vibrator", Unit::Day, "Poker vibrator"),
    of("float", Unit::Count, "Straight-edge, float, bucket, hose"),
    of("hammer", Unit::Day, "Rotary hammer"),
    of("extractor", Unit::Day, "Dust extractor"),
    of("torque-wrench", Unit::Count, "Torque wrench"),
    of("spanners", Unit::Count, "Spanners"),
    of("feelers", Unit::Count, "Feeler gauges"),
    of("marker", Unit::Count, "Paint marker"),
    of("gloves-cement", Unit::Count, "Gloves against cement"),
    of("gloves-nitrile", Unit::Count, "Gloves, nitrile"),
    of("goggles", Unit::Count, "Goggles"),
    of("masks", Unit::Count, "Dust masks"),
    of("ear-defenders", Unit::Count, "Ear defenders"),
    of("boots", Unit::Count, "Boots"),
    of("helmets", Unit::Count, "Helmet"),
    of("first-aid", Unit::Count, "First-aid kit"),
    of("locator", Unit::Count, "Service locator"),
];
