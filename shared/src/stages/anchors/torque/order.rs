//! Three passes over the studs, crosswise.

use serde::Serialize;

use crate::units::{Moment, newton_metre};

/// Shares of the torque, pass by pass.
const SHARES: [f64; 3] = [0.3, 0.7, 1.0];

/// One pass over all studs.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Pass {
    /// Torque of the pass.
    #[serde(rename = "torque_n_m", with = "newton_metre")]
    pub torque: Moment,
    /// What to do.
    pub says: &'static str,
}

/// The three passes.
pub(super) fn passes(torque: Moment) -> Vec<Pass> {
    let says = [
        "Crosswise, until every nut is just at this torque; check the level.",
        "Crosswise again; check the level, and that no gap has opened under a nut.",
        "Crosswise to the full torque, then once round in order without a nut turning any more.",
    ];
    SHARES
        .into_iter()
        .zip(says)
        .map(|(share, says)| Pass {
            torque: torque * share,
            says,
        })
        .collect()
}

/// Order of the studs: each time about half way round, so that neighbours never follow each other.
pub(super) fn star(count: usize) -> Vec<usize> {
    let half = count.div_ceil(2);
    let spread = (0..half).step_by(2).chain((1..half).step_by(2));
    let mut order = Vec::with_capacity(count);
    for first in spread {
        order.push(first + 1);
        if first + half < count {
            order.push(first + half + 1);
        }
    }
    order
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_stud_has_its_turn_and_opposite_ones_follow() {
        for count in 3..=12 {
            let mut order = star(count);
            order.sort_unstable();
            assert_eq!(order, (1..=count).collect::<Vec<_>>());
        }
        assert_eq!(star(4), [1, 3, 2, 4]);
        assert_eq!(star(6), [1, 4, 3, 6, 2, 5]);
        let torques: Vec<f64> = passes(newton_metre::new(100.0))
            .iter()
            .map(|pass| newton_metre::get(pass.torque))
            .collect();
        assert_eq!(torques, [30.0, 70.0, 100.0]);
    }
}
