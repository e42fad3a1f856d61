//! What a weight on the ground does to the block, as the solver tells it.

use crate::stages::floor::{Floor, footprints};

/// Forces and moments about the base's centre that move the block as a load elsewhere does.
///
/// By reciprocity they are the ground's surface settlement at the place when the block is moved by one unit in each
/// direction; they hold whatever the ground's shear modulus is.
pub trait Influence {
    /// For one newton downward on the ground's surface at a place: x, y, z in newtons, about x, about y, about z in
    /// newton metres, right-handed.
    fn per_newton(&self, x_m: f64, y_m: f64) -> [f64; 6];

    /// The same for one newton towards the east and for one towards the north.
    fn per_newton_sideways(&self, x_m: f64, y_m: f64) -> [[f64; 6]; 2];
}

/// The same for a newton on the floor, by way of the places where the floor stands on the ground.
pub fn through_floor(influence: &dyn Influence, floor: &Floor, x_m: f64, y_m: f64) -> [f64; 6] {
    let mut sum = [0.0; 6];
    for foot in footprints(floor, x_m, y_m) {
        let one = influence.per_newton(foot.x_m, foot.y_m);
        for (total, value) in sum.iter_mut().zip(one) {
            *total += foot.share_ratio * value;
        }
    }
    sum
}

/// The same for a newton towards the east and towards the north on a deck, which is stiff in its own plane and hands it to
/// all its posts alike.
pub fn sideways_through_posts(influence: &dyn Influence, posts: &[[f64; 2]]) -> [[f64; 6]; 2] {
    let share = 1.0 / posts.len().max(1) as f64;
    let mut sum = [[0.0; 6]; 2];
    for &[x, y] in posts {
        for (total, one) in sum.iter_mut().zip(influence.per_newton_sideways(x, y)) {
            for (total, value) in total.iter_mut().zip(one) {
                *total += share * value;
            }
        }
    }
    sum
}
