//! Tools.

use crate::figure::{NewtonMetre, Unit};
use crate::site_plan::anchors::Tool;
use crate::units::millimetre;

use super::{Group, Job, List, pieces};

pub(super) fn list(job: &Job) -> List {
    let mut list = List::of(Group::Tools);
    measuring(job, &mut list);
    pouring(job, &mut list);
    drilling(job, &mut list);
    tightening(job, &mut list);
    list
}

fn measuring(job: &Job, list: &mut List) {
    list.have(
        "tape",
        format!("Tape of {}, and a folding rule", job.about_m(8.0)),
        pieces(1.0),
        "setting out",
        "diagonals equal means square",
    );
    list.have(
        "level",
        format!("Spirit level of {}, and a machinist's level", job.about_m(1.2)),
        pieces(1.0),
        "form, block and plate",
        job.units.either(
            "one of each, the finer one to 0.02\u{a0}mm in a metre; turn them end for end and believe the mean",
            "one of each, the finer one to 0.0005\u{a0}in to the foot; turn them end for end and believe the mean",
        ),
    );
    list.have(
        "compass",
        "Compass corrected for declination, or a noon shadow",
        pieces(1.0),
        "turning the studs to north",
        "",
    );
    let side = job.mm(millimetre::get(job.pier.plate_side) + job.stock().either(100.0, 101.6));
    list.buy(
        "template-board",
        format!(
            "Template board, plywood {}, {side} square",
            job.about_mm(12.0)
        ),
        pieces(1.0),
        "guiding the drill",
        "with the printed template glued on; north and the ducts marked",
    );
    list.buy(
        "template-print",
        "Printed template, 1 : 1",
        pieces(1.0),
        "stud positions",
        "measure its check lines with a steel rule before use",
    );
}

fn pouring(job: &Job, list: &mut List) {
    list.hire(
        "vibrator",
        job.stock().either("Poker vibrator", "Concrete vibrator"),
        (1.0, Unit::Day),
        "driving out the air",
        format!(
            "{} to {} thick; or rod each layer of {} by hand",
            job.about_mm(25.0),
            job.about_mm(40.0),
            job.about_mm(300.0)
        ),
    );
    list.have(
        "float",
        "Straight-edge, wooden float, bucket, hose",
        pieces(1.0),
        "levelling and finishing",
        "one set; the top under the plate as flat as you can",
    );
}

fn drilling(job: &Job, list: &mut List) {
    list.hire(
        "hammer",
        "Rotary hammer with depth stop",
        (1.0, Unit::Day),
        "drilling the holes",
        "with a stand or a square held beside it",
    );
    list.hire(
        "extractor",
        job.stock().either(
            "Dust extractor, class M or better",
            "Dust extractor with a HEPA filter",
        ),
        (1.0, Unit::Day),
        "taking the silica dust where it arises",
        "with a hood for the bit",
    );
}

fn tightening(job: &Job, list: &mut List) {
    let size = job.brief.anchors.size.value.said();
    let torque = job.say(job.anchors.torque.set, NewtonMetre);
    if job.brief.anchors.tool.value == Tool::TorqueWrench {
        list.have(
            "torque-wrench",
            "Torque wrench, calibrated",
            pieces(1.0),
            "tightening the nuts",
            format!("its range holds {torque} well inside; check the unit on its scale"),
        );
    } else {
        list.have(
            "torque-wrench",
            "Torque wrench, calibrated",
            pieces(1.0),
            "tightening the nuts",
            format!("the plan says by feel; a borrowed wrench, set to {torque}, makes the preload far surer"),
        );
    }
    list.have(
        "spanners",
        format!(
            "{} for {size}",
            job.stock()
                .either("Open-ended spanners", "Open-end wrenches")
        ),
        pieces(2.0),
        "holding one nut while the other turns",
        "",
    );
    list.have(
        "feelers",
        "Feeler gauges",
        pieces(1.0),
        "gaps under the plate",
        job.units.either(
            "from a twentieth of a millimetre",
            "from two thousandths of an inch",
        ),
    );
    list.have(
        "marker",
        "Paint marker",
        pieces(1.0),
        "a line over nut, stud and plate",
        "shows at a glance whether a nut has turned",
    );
}
