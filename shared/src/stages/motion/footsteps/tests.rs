use super::*;
use crate::brief::{Brief, resolve};
use crate::site_plan::SitePlan;
use crate::site_plan::floor::FloorKind;
use crate::stages::floor::Floor;
use crate::stages::motion::history;
use crate::stages::motion::system::{self, Mounted, System};

fn found(kind: FloorKind) -> (Brief, Floor, System, Trodden) {
    let mut plan = SitePlan::unknown();
    plan.floor.kind = Some(kind);
    plan.floor.walk = Some(vec![[-2.0, -1.0], [1.0, -1.0], [1.0, 2.0]]);
    let brief = resolve(&plan).unwrap();
    let design = crate::design::design(&brief, &crate::halfspace::NoShelf);
    let mounted = Mounted::Rigidly;
    let system = system::find(
        &brief,
        &design.ground,
        &design.block,
        &design.ground_stiffness,
        &design.pier,
        mounted,
    );
    let influence = design.ground_stiffness.influence().unwrap();
    let trodden = Trodden::take(&brief, &design.floor, influence).unwrap();
    (brief, design.floor, system.unwrap(), trodden)
}

/// Foot by foot it is what the whole force makes of every mode, sample by sample: computed by the other way.
#[test]
fn feet_add_up_to_the_walk() {
    for kind in [FloorKind::Slab, FloorKind::Deck] {
        let (_, _, system, trodden) = found(kind);
        let pace = Pace {
            hertz: 1.83,
            row: 4,
        };
        let whole = history::run(&system.typical, &trodden.forces(pace));
        let steps = Steps::at(&trodden, pace, Detail::WHOLE);
        let added = Held::by(&system.typical, &trodden, Detail::WHOLE).follow(&steps);
        let peak = whole.peak_arcsec();
        assert!(peak > 0.0 && added.turns.len() == whole.turns.len());
        for (one, other) in added.turns.iter().zip(&whole.turns) {
            let apart = (one[0] - other[0]).hypot(one[1] - other[1]);
            assert!(apart < 1e-9 * peak, "{kind:?}: {apart} of {peak}");
        }
    }
}

/// Three modes of each plane and every second sample tell its size to a hundredth.
#[test]
fn a_coarser_walk_is_as_large() {
    for kind in [FloorKind::Slab, FloorKind::Deck] {
        let (_, _, system, trodden) = found(kind);
        let pace = Pace { hertz: 1.7, row: 2 };
        let walk = |detail| {
            let steps = Steps::at(&trodden, pace, detail);
            Held::by(&system.low, &trodden, detail).follow(&steps)
        };
        let (whole, coarse) = (walk(Detail::WHOLE), walk(Detail::COARSE));
        let peaks = coarse.peak_arcsec() / whole.peak_arcsec();
        let rms = coarse.rms_arcsec() / whole.rms_arcsec();
        assert!((peaks - 1.0).abs() < 0.03, "{kind:?}: {peaks}");
        assert!((rms - 1.0).abs() < 0.01, "{kind:?}: {rms}");
    }
}
