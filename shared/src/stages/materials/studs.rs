//! Studs, resin and the plate's bed.

use crate::figure::{Millilitre, Unit};
use crate::rules::threads;
use crate::site_plan::anchors::LowerNuts;
use crate::stages::anchors::Seat;
use crate::units::{metre, millilitre, millimetre};

use super::lengths::Offer;
use super::{Group, Job, List, pieces, up};

/// Grout, kg/m³ of dry product.
const GROUT_KG_M3: f64 = 2000.0;

/// Whole lengths in which threaded rod is sold.
const ROD_LENGTHS: Offer = Offer {
    metric: &[
        ("stud-rod-1m", 1.0),
        ("stud-rod-2m", 2.0),
        ("stud-rod-3m", 3.0),
    ],
    inch: &[
        ("stud-rod-3ft", 3.0),
        ("stud-rod-6ft", 6.0),
        ("stud-rod-12ft", 12.0),
    ],
};

pub(super) fn list(job: &Job) -> List {
    let mut list = List::of(Group::Studs);
    steel(job, &mut list);
    resin(job, &mut list);
    bed(job, &mut list);
    holes(job, &mut list);
    list
}

fn steel(job: &Job, list: &mut List) {
    let anchors = &job.brief.anchors;
    let count = anchors.count.value;
    let size = anchors.size.value.said();
    let class = anchors.strength_class.value.said();
    let [nut, washer] = threads::nut_and_washer(anchors.strength_class.value);
    let length = job.mm(millimetre::get(anchors.length.value));
    let coating = anchors.coating.value.key();
    let steel = threads::steel(anchors.strength_class.value, anchors.size.value);
    let finish = if steel.stainless {
        "stainless".to_owned()
    } else {
        coating.to_owned()
    };
    list.buy(
        "stud",
        format!("Stud {size} × {length}, {class}, {finish}"),
        pieces(count + 1.0),
        "holding the base plate",
        "one to spare; threaded rod with cut, chamfered ends. Cut from a longer rod, it has to be of this class and finish, with zinc paint \
         on the cut ends where it is galvanised",
    );
    list.or_in_lengths(ROD_LENGTHS.of(
        job.stock(),
        job.units,
        &[(metre::get(anchors.length.value), count + 1.0)],
    ));
    let per_stud = if anchors.lower_nuts.value == LowerNuts::None {
        2.0
    } else {
        3.0
    };
    let why = if per_stud > 2.0 {
        "levelling nut below, nut and locking nut above"
    } else {
        "nut and locking nut above"
    };
    list.buy(
        "nut",
        format!("Nut {size}, {nut}"),
        pieces(count * per_stud + 2.0),
        "levelling and holding the plate",
        format!("{per_stud} on each stud ({why}), two to spare"),
    );
    list.buy(
        "washer",
        format!("Washer {size}, {washer}"),
        pieces(count * (per_stud - 1.0) + 2.0),
        "above and below the plate",
        "two to spare",
    );
    list.buy(
        "paste",
        "Assembly paste",
        pieces(1.0),
        "an even friction in the thread",
        "so that the torque means what it says; stainless seizes without it",
    );
}

fn resin(job: &Job, list: &mut List) {
    let setting = &job.anchors.setting;
    let each = millilitre::get(job.brief.anchors.product.cartridge.value);
    list.buy(
        "resin-cartridge",
        format!("Injection resin, cartridge of {}", job.cartridge(each)),
        pieces(f64::from(setting.cartridges)),
        "bonding the studs",
        format!(
            "{} for all holes with waste; an approved product for threaded rod, {} hole, this temperature and a damp or dry hole as it is; mind the date on it",
            job.say( job.anchors.resin_volume, Millilitre),
            job.mm(millimetre::get(job.anchors.hole_diameter))
        ),
    );
    list.buy(
        "resin-nozzle",
        "Mixer nozzles",
        pieces(f64::from(setting.nozzles)),
        "mixing the resin",
        "one for each cartridge and each pause, and one to spare: a nozzle sets whenever work stops",
    );
    list.have(
        "resin-gun",
        "Cartridge gun",
        pieces(1.0),
        "pressing the resin",
        "the one that fits the cartridge",
    );
}

fn bed(job: &Job, list: &mut List) {
    let gap = metre::get(job.pier.gap);
    let side = metre::get(job.pier.plate_side);
    if !Seat::wants_grout(job.brief) {
        list.buy(
            "shim",
            "Brass or steel shim, assorted",
            pieces(1.0),
            job.units.either(
                "the last hundredths of a millimetre under a nut",
                "the last thousandths of an inch under a nut",
            ),
            "one set",
        );
        return;
    }
    let volume = (side + 2.0 * gap).powi(2) * gap * 1.2;
    list.buy(
        "grout",
        format!(
            "Non-shrink flowing grout in bags of {}",
            job.sold("grout-bag")
        ),
        pieces(volume * GROUT_KG_M3 / job.good("grout-bag")),
        "the bed under the plate",
        format!(
            "{} with a fifth for waste; at least as strong as the block",
            job.say(volume * 1000.0, Unit::Litre)
        ),
    );
    list.buy(
        "grout-shims",
        "Steel shims, stacks of assorted thickness",
        pieces(4.0),
        "carrying the plate while the grout sets",
        "levelled first; taken out, or left below the surface",
    );
    list.buy(
        "grout-dam",
        "Foam strip or timber for a dam",
        (up(4.0 * (side + 4.0 * gap), 0.5), Unit::Metre),
        "holding the grout",
        "with a head on one side to pour from",
    );
}

fn holes(job: &Job, list: &mut List) {
    let diameter = millimetre::get(job.anchors.hole_diameter);
    let depth = job.mm(millimetre::get(job.anchors.hole_depth));
    let said = job.mm(diameter);
    let bits = if job.brief.anchors.count.value > 6.0 {
        2.0
    } else {
        1.0
    };
    list.buy(
        "drill-bit",
        format!("Hammer-drill bit {said}, working length {depth} or more"),
        pieces(bits),
        "the holes",
        "new, with its test mark; four cutters ride over steel better; measure it before the first hole",
    );
    let brush = job.mm(millimetre::get(job.anchors.setting.brush));
    list.buy(
        "hole-brush",
        format!("Wire brush {brush} with extension"),
        pieces(1.0),
        "cleaning the holes",
        "the resin's own system brush where it names one",
    );
    list.buy(
        "hole-pump",
        "Blow-out pump with a tube to the bottom",
        pieces(1.0),
        "cleaning the holes",
        "or oil-free compressed air; blow, brush, blow, as the resin's sheet counts it",
    );
}
