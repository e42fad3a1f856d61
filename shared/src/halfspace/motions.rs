//! The block's six rigid motions about the centre of its base, and where each belongs.

/// Classes of symmetry and the motions in them, as places in the order x, y, z, about x, about y, about z.
pub const MOTIONS: [&[usize]; 4] = [&[2], &[0, 4], &[1, 3], &[5]];

/// Movement of a place on the block under a unit of a motion, along x, y and depth. Motions are right-handed with z up;
/// a turn about x therefore carries what is above the base towards −y.
pub fn movement(motion: usize, at: [f64; 3], base_depth: f64) -> [f64; 3] {
    let above = base_depth - at[2];
    match motion {
        0 => [1.0, 0.0, 0.0],
        1 => [0.0, 1.0, 0.0],
        2 => [0.0, 0.0, -1.0],
        3 => [0.0, -above, -at[1]],
        4 => [above, 0.0, at[0]],
        _ => [-at[1], at[0], 0.0],
    }
}
