//! Tools.

use crate::figure::Unit;
use crate::site_plan::anchors::Tool;
use crate::units::{millimetre, newton_metre};

use super::{Group, Job, List, pieces};

pub(super) fn list(job: &Job) -> List {
    let mut list = List::of(Group::Tools);
    measuring(job, &mut list);
    pouring(&mut list);
    drilling(&mut list);
    tightening(job, &mut list);
    list
}

fn measuring(job: &Job, list: &mut List) {
    list.have("Tape of 8 m, and a folding rule", pieces(1.0), "setting out", "diagonals equal means square");
    list.have(
        "Spirit level, 1.2 m, and a machinist's level, 0.02 mm/m",
        pieces(1.0),
        "form, block and plate",
        "one of each; turn them end for end and believe the mean",
    );
    list.have("Compass corrected for declination, or a noon shadow", pieces(1.0), "turning the studs to north", "");
    let side = job.say(millimetre::get(job.pier.plate_side) + 100.0, Unit::Millimetre);
    list.buy(
        format!("Template board, plywood 12 mm, {side} square"),
        pieces(1.0),
        "guiding the drill",
        "with the printed template glued on; north and the ducts marked",
    );
    list.buy("Printed template, 1 : 1", pieces(1.0), "stud positions", "measure its check lines with a steel rule before use");
}

fn pouring(list: &mut List) {
    list.hire("Poker vibrator", (1.0, Unit::Day), "driving out the air", "25 to 40 mm; or rod each layer of 300 mm by hand");
    list.have(
        "Straight-edge, wooden float, bucket, hose",
        pieces(1.0),
        "levelling and finishing",
        "one set; the top under the plate as flat as you can",
    );
}

fn drilling(list: &mut List) {
    list.hire("Rotary hammer with depth stop", (1.0, Unit::Day), "drilling the holes", "with a stand or a square held beside it");
    list.hire("Dust extractor, class M or better", (1.0, Unit::Day), "taking the silica dust where it arises", "with a hood for the bit");
}

fn tightening(job: &Job, list: &mut List) {
    let size = job.brief.anchors.size.value.key();
    let torque = job.say(newton_metre::get(job.anchors.torque.used), Unit::NewtonMetre);
    if job.brief.anchors.tool.value == Tool::TorqueWrench {
        list.have(
            "Torque wrench, calibrated",
            pieces(1.0),
            "tightening the nuts",
            format!("its range holds {torque} well inside; check the unit on its scale"),
        );
    } else {
        list.have(
            "Torque wrench, calibrated",
            pieces(1.0),
            "tightening the nuts",
            format!("the plan says by feel; a borrowed wrench, set to {torque}, makes the preload far surer"),
        );
    }
    list.have(format!("Open-ended spanners for {size}"), pieces(2.0), "holding one nut while the other turns", "");
    list.have("Feeler gauges", pieces(1.0), "gaps under the plate", "from 0.05 mm");
    list.have("Paint marker", pieces(1.0), "a line over nut, stud and plate", "shows at a glance whether a nut has turned");
}
