//! The steps of two columns taken together: how far, and which way.

use crate::trace::columns::Series;
use crate::trace::{Asked, Together, said, sides};

/// Two columns closer to each other than this say too little of a direction.
const LEAST_SINE: f64 = 0.5;
/// A step so many times its uncertainty has a direction that can be told.
const TOLD: f64 = 2.0;

/// Towards which bearings the top leans where the columns grow: as was said, or as their names say; empty where neither does.
pub(super) fn towards(series: &[Series], asked: &Asked) -> Vec<f64> {
    if !asked.towards_deg.is_empty() {
        return asked.towards_deg.clone();
    }
    let names = series.iter().take(2);
    names
        .map(|one| sides::bearing(&one.name))
        .collect::<Option<Vec<f64>>>()
        .unwrap_or_default()
}

/// Both steps as one, each with its standard deviation.
pub(super) fn together(
    (x, x_sd): (f64, f64),
    (y, y_sd): (f64, f64),
    towards_deg: &[f64],
    remarks: &mut Vec<String>,
) -> Together {
    let size = x.hypot(y);
    let sd = if size > 0.0 {
        (x * x_sd).hypot(y * y_sd) / size
    } else {
        x_sd.max(y_sd)
    };
    let is_told = size > TOLD * sd;
    // What lies across the step turns it.
    let angle = is_told.then(|| y.atan2(x).to_degrees());
    let angle_sd = is_told.then(|| ((y * x_sd).hypot(x * y_sd) / size.powi(2)).to_degrees());
    let mut found = Together {
        size,
        sd,
        angle_deg: angle,
        angle_sd_deg: angle_sd,
        bearing_deg: None,
    };
    let (Some(angle), Some(angle_sd)) = (angle, angle_sd) else {
        remarks.push(format!(
            "Both together: {} ± {}, too little for its direction to be told.",
            said(size),
            said(sd)
        ));
        return found;
    };
    remarks.push(format!(
        "Both together: {} ± {}, {}° ± {}° from where the first column grows towards where the second does.",
        said(size),
        said(sd),
        said(angle.round()),
        said(angle_sd.ceil())
    ));
    match *towards_deg {
        [first, second] => match on_the_ground(x, y, first, second) {
            Some([size, bearing]) => {
                found.size = size;
                found.bearing_deg = Some(bearing);
                remarks.push(format!(
                    "The top leaned towards {}° from north, with the first column's growth towards {}° and the second's towards {}°.",
                    said(bearing.round()),
                    said(first),
                    said(second)
                ));
            }
            None => remarks.push(
                "The bearings of the two columns are too close to each other to tell where the top leaned.".to_owned(),
            ),
        },
        _ => remarks.push(
            "That is a direction in the table and not on the ground. To have it there, push the pier's top gently to the north and to \
             the east, see which way the star goes, and state towards which bearings the top leans where the columns grow."
                .to_owned(),
        ),
    }
    found
}

/// Size and bearing of what has these parts along two bearings.
fn on_the_ground(x: f64, y: f64, first_deg: f64, second_deg: f64) -> Option<[f64; 2]> {
    let [(first_east, first_north), (second_east, second_north)] =
        [first_deg, second_deg].map(|deg| deg.to_radians().sin_cos());
    let across = first_east * second_north - first_north * second_east;
    if across.abs() < LEAST_SINE {
        return None;
    }
    let east = (x * second_north - y * first_north) / across;
    let north = (y * first_east - x * second_east) / across;
    Some([
        east.hypot(north),
        east.atan2(north).to_degrees().rem_euclid(360.0),
    ])
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Computed by hand: three parts east and four north are five towards 36.87° from north; with columns that grow towards
    /// north and west the same step is (4, −3).
    #[test]
    fn a_step_has_the_same_bearing_however_its_columns_lie() {
        for (x, y, first, second) in [
            (3.0, 4.0, 90.0, 0.0),
            (4.0, -3.0, 0.0, 270.0),
            (-3.0, -4.0, 270.0, 180.0),
        ] {
            let [size, bearing] = on_the_ground(x, y, first, second).unwrap();
            assert!((size - 5.0).abs() < 1e-9, "{size}");
            assert!((bearing - 36.8699).abs() < 1e-3, "{bearing}");
        }
        assert!(on_the_ground(1.0, 1.0, 10.0, 20.0).is_none());
        assert!(on_the_ground(1.0, 1.0, 10.0, 190.0).is_none());
    }

    #[test]
    fn a_step_within_its_noise_has_no_direction() {
        let mut remarks = Vec::new();
        let found = together((0.1, 0.1), (0.05, 0.1), &[90.0, 0.0], &mut remarks);
        assert_eq!((found.angle_deg, found.bearing_deg), (None, None));
        assert!(remarks[0].contains("too little"), "{remarks:?}");
    }
}
