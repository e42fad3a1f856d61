//! How much thread has to be engaged, so that a stud breaks before its thread strips.

use crate::rules::threads::Thread;
use crate::source::Source;
use crate::units::{Length, millimetre, square_millimetre};

/// The formula; a published table of its results for inch threads was read.
pub const SOURCE: Source = Source::second_hand(
    "ASME B1.1",
    "2003",
    "Appendix B, length of engagement by the shear area of the outer thread",
);
/// Thread cut into a plate of common steel.
pub const TAPPED: Source = Source::common_practice(
    "one and a half diameters of thread for a stud or bolt that is screwed into steel",
);
/// Diameters of thread in a tapped plate.
const TAPPED_DIAMETERS: f64 = 1.5;

/// Least length of thread in a nut that is as strong as the stud:
/// L_e = 2 A_s/{π K_n [1/2 + 0.577 35 (E_s − K_n)/P]}, K_n the nut's widest minor and E_s the stud's least pitch diameter.
///
/// # Source
/// ASME B1.1-2003, Appendix B; the same in FED-STD-H28/2.
/// # Valid for
/// Nuts at least as strong as the stud; classes 2A with 2B, and 6g with 6H.
pub fn in_a_nut(thread: &Thread) -> Length {
    let inner = millimetre::get(thread.inner_minor);
    let overlap = millimetre::get(thread.outer_pitch) - inner;
    let share = 0.5 + 0.577_35 * overlap / millimetre::get(thread.pitch);
    millimetre::new(
        2.0 * square_millimetre::get(thread.stress_area) / (std::f64::consts::PI * inner * share),
    )
}

/// Thickest bolt for which a plate of common steel may be tapped, d = t/1.5.
///
/// # Source
/// Common practice; two published notes say the same.
pub fn thickest_tapped(plate: Length) -> Length {
    plate / TAPPED_DIAMETERS
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::threads;
    use crate::site_plan::anchors::Size;
    use crate::stock::Stock;

    /// A published table of least engagement, UNC 2A and 2B (read): 0.269, 0.36, 0.45, 0.55, 0.64 and 0.73 in for 3/8-16 to 1-8.
    #[test]
    fn inch_threads_have_the_lengths_of_the_table() {
        let printed = [0.269, 0.36, 0.45, 0.55, 0.64, 0.73];
        let sizes: Vec<Size> = Size::of(Stock::Inch).collect();
        assert_eq!(sizes.len(), printed.len());
        for (size, printed) in sizes.into_iter().zip(printed) {
            let found = millimetre::get(in_a_nut(&threads::thread(size))) / 25.4;
            assert!((found - printed).abs() < 0.0055, "{size:?}: {found}");
        }
    }

    /// A whole standard nut is enough for its own thread, in both families: 0.7 to 0.8 of the diameter, computed apart.
    #[test]
    fn a_standard_nut_is_high_enough() {
        for &size in Size::ALL {
            let thread = threads::thread(size);
            let needed = in_a_nut(&thread);
            let share = (needed / thread.diameter).value;
            assert!((0.70..0.80).contains(&share), "{size:?}: {share}");
            assert!(needed < thread.nut_height, "{size:?}");
        }
    }

    #[test]
    fn a_plate_is_tapped_for_two_thirds_of_its_thickness() {
        let thickest = millimetre::get(thickest_tapped(millimetre::new(15.0)));
        assert!((thickest - 10.0).abs() < 1e-12);
    }
}
