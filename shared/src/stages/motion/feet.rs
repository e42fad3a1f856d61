//! Feet: where they fall along the drawn path, and when.

use crate::source::Source;

/// Longest part of a walk that is followed, in seconds at the middle pace: the part nearest to the pier.
pub const LONGEST_S: f64 = 40.0;
/// Half the distance between the tracks of left and right foot, m.
const HALF_TRACK_M: f64 = 0.05;
/// How uneven the time between two steps is, as a standard deviation over its mean.
const UNEVEN_RATIO: f64 = 0.03;
/// Where the unevenness comes from.
pub const UNEVEN_SOURCE: Source =
    Source::judgement("times between steps differ by 3 %; nobody keeps his pace better");

/// A footfall: where, which way its walker goes, and on which side of the way it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Foot {
    /// Place.
    pub place: [f64; 2],
    /// Unit vector along the way.
    pub along: [f64; 2],
    /// Unit vector away from the other foot's track.
    pub outward: [f64; 2],
}

/// Feet along the path a stride apart, left and right of it in turn; of a long walk the part nearest to the pier.
pub fn feet(path: &[[f64; 2]], stride: f64, most: usize) -> Vec<Foot> {
    let mut all: Vec<Foot> = Vec::new();
    let mut ahead = 0.0;
    for leg in path.windows(2) {
        let [from, to] = [leg[0], leg[1]];
        let length = (to[0] - from[0]).hypot(to[1] - from[1]);
        while ahead <= length && length > 0.0 && all.len() < 100_000 {
            let [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
            let side = if all.len().is_multiple_of(2) {
                1.0
            } else {
                -1.0
            };
            let outward = [-uy * side, ux * side];
            all.push(Foot {
                place: [
                    from[0] + ux * ahead + outward[0] * HALF_TRACK_M,
                    from[1] + uy * ahead + outward[1] * HALF_TRACK_M,
                ],
                along: [ux, uy],
                outward,
            });
            ahead += stride;
        }
        ahead -= length;
    }
    nearest(all, most)
}

fn nearest(all: Vec<Foot>, most: usize) -> Vec<Foot> {
    if all.len() <= most {
        return all;
    }
    let distance = |foot: &Foot| foot.place[0].hypot(foot.place[1]);
    let closest = all
        .iter()
        .enumerate()
        .min_by(|(_, a), (_, b)| distance(a).total_cmp(&distance(b)))
        .map_or(0, |(i, _)| i);
    let first = closest.saturating_sub(most / 2).min(all.len() - most);
    all[first..first + most].to_vec()
}

/// When each of so many feet falls, at a pace in hertz: as uneven as people are, in one row of chance or another, the same
/// every time that it is asked.
pub fn times_s(count: usize, pace_hz: f64, row: u8) -> Vec<f64> {
    let mut at = 0.0;
    (0..count)
        .map(|i| {
            let now = at;
            at += (1.0 + UNEVEN_RATIO * deviate((u64::from(row) << 32) + i as u64)) / pace_hz;
            now
        })
        .collect()
}

/// A fixed row of numbers that looks like chance, mean nought and standard deviation one, evenly within ± √3.
///
/// The engine has no randomness: the numbers are a mixing of the index alone (Steele and others 2014, from memory).
fn deviate(index: u64) -> f64 {
    let mut z = index.wrapping_add(1).wrapping_mul(0x9e37_79b9_7f4a_7c15);
    z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    z ^= z >> 31;
    let even = (z >> 11) as f64 / (1u64 << 53) as f64;
    (2.0 * even - 1.0) * 3f64.sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn feet_fall_a_stride_apart_round_corners() {
        let feet = feet(&[[0.0, 0.0], [1.0, 0.0], [1.0, 1.0]], 0.5, 80);
        assert_eq!(feet.len(), 5);
        assert!((feet[3].place[1] - 0.5).abs() < 1e-9 && (feet[3].place[0] - 1.0).abs() < 0.051);
        assert_eq!(feet[3].along, [0.0, 1.0]);
        assert!(feet[0].outward[1] > 0.0 && feet[1].outward[1] < 0.0);
    }

    #[test]
    fn of_a_very_long_walk_the_nearest_part_is_followed() {
        let all = feet(&[[-50.0, 1.0], [50.0, 1.0]], 0.25, 80);
        assert_eq!(all.len(), 80);
        assert!(all.iter().any(|f| f.place[0].abs() < 0.2));
        assert!(
            feet(&[[1.0, 1.0]], 0.5, 80).is_empty()
                && feet(&[[1.0, 1.0], [1.0, 1.0]], 0.5, 80).is_empty()
        );
    }

    #[test]
    fn steps_are_three_per_cent_uneven_and_keep_their_pace() {
        let times = times_s(4001, 2.0, 3);
        let gaps: Vec<f64> = times.windows(2).map(|pair| pair[1] - pair[0]).collect();
        let mean = gaps.iter().sum::<f64>() / gaps.len() as f64;
        let spread = (gaps
            .iter()
            .map(|gap| (gap / mean - 1.0).powi(2))
            .sum::<f64>()
            / gaps.len() as f64)
            .sqrt();
        assert!((mean * 2.0 - 1.0).abs() < 2e-3 && (spread - 0.03).abs() < 1e-3);
        assert_eq!(times, times_s(4001, 2.0, 3));
    }
}
