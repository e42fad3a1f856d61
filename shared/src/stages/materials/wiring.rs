//! Power, data and earth.

use crate::figure::Unit;

use super::{Group, Job, List, pieces};

pub(super) fn list(job: &Job) -> List {
    let mut list = List::of(Group::Wiring);
    let note = "chosen and connected by a licensed electrician";
    list.buy(
        "earth-rod",
        job.stock().either(
            "Earthing rod with clamp and inspection cover",
            "Ground rod with clamp and inspection cover",
        ),
        pieces(1.0),
        "an earth for the column",
        note,
    );
    list.buy(
        "earth-cable",
        job.stock()
            .either("Earthing cable, green and yellow", "Ground wire, green"),
        (job.about(5.0), Unit::Metre),
        "from the column's lug to the rod",
        format!(
            "{} of copper unless the electrician says otherwise; {} is assumed",
            job.stock().either("16 mm² (4 AWG)", "4 AWG (21 mm²)"),
            job.about_m(5.0)
        ),
    );
    list.buy(
        "earth-lug",
        job.stock().either(
            "Earthing lug M10 with bolt and serrated washers",
            "Ground lug 3/8\u{2033} with bolt and serrated washers",
        ),
        pieces(1.0),
        "on the column, a hand above the plate",
        "bare metal under it, then paint over it",
    );
    if job.block.ducts.count > 0 {
        list.buy(
            "marker-tape",
            "Marker tape",
            (job.about(10.0), Unit::Metre),
            "over the ducts in their trench",
            format!(
                "{} is assumed; measure the trench to the house",
                job.about_m(10.0)
            ),
        );
        list.buy(
            "grommet",
            "Rubber grommet for the plate's middle hole",
            pieces(1.0),
            "no cable on a sharp edge",
            "",
        );
        list.buy(
            "socket",
            job.stock().either(
                "Outdoor socket, IP66, behind a residual-current device",
                "Outdoor receptacle, weatherproof in use, behind a ground-fault interrupter",
            ),
            pieces(1.0),
            "power at the pier",
            note,
        );
    }
    list
}
