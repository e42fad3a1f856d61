//! Lines of equal value through a grid of values, by marching squares with the saddle decided by the mean of its corners.

use std::collections::BTreeMap;

/// An edge of the grid: column, row, and whether it runs north.
type Edge = (usize, usize, bool);

/// The lines of one level, each a run of places; a closed one ends where it began. `values` holds a row of the grid for
/// each of `ys`, with a value for each of `xs`.
#[must_use]
pub fn lines(xs: &[f64], ys: &[f64], values: &[Vec<f64>], level: f64) -> Vec<Vec<[f64; 2]>> {
    let is_whole = values.len() == ys.len()
        && values
            .iter()
            .all(|row| row.len() == xs.len() && row.iter().all(|v| v.is_finite()));
    if !is_whole || xs.len() < 2 || ys.len() < 2 {
        return Vec::new();
    }
    let pieces = pieces(xs.len(), ys.len(), values, level);
    let place = |&(i, j, north): &Edge| {
        let (k, l) = if north { (i, j + 1) } else { (i + 1, j) };
        let (a, b) = (values[j][i], values[l][k]);
        let share = if b == a { 0.5 } else { (level - a) / (b - a) };
        [
            xs[i] + (xs[k] - xs[i]) * share,
            ys[j] + (ys[l] - ys[j]) * share,
        ]
    };
    chained(&pieces)
        .into_iter()
        .map(|chain| chain.iter().map(place).collect())
        .collect()
}

/// In each cell, which of its edges a line joins.
fn pieces(columns: usize, rows: usize, values: &[Vec<f64>], level: f64) -> Vec<(Edge, Edge)> {
    let mut pieces = Vec::new();
    for j in 0..rows - 1 {
        for i in 0..columns - 1 {
            let corners = [
                values[j][i],
                values[j][i + 1],
                values[j + 1][i + 1],
                values[j + 1][i],
            ];
            let edges = [
                (i, j, false),
                (i + 1, j, true),
                (i, j + 1, false),
                (i, j, true),
            ];
            let crossed: Vec<Edge> = (0..4)
                .filter(|&k| (corners[k] >= level) != (corners[(k + 1) % 4] >= level))
                .map(|k| edges[k])
                .collect();
            match crossed.as_slice() {
                [a, b] => pieces.push((*a, *b)),
                [a, b, c, d] => {
                    let middle = corners.iter().sum::<f64>() / 4.0;
                    if (middle >= level) == (corners[0] >= level) {
                        pieces.extend([(*a, *b), (*c, *d)]);
                    } else {
                        pieces.extend([(*d, *a), (*b, *c)]);
                    }
                }
                _ => {}
            }
        }
    }
    pieces
}

/// Pieces joined end to end: open lines first, then rings.
fn chained(pieces: &[(Edge, Edge)]) -> Vec<Vec<Edge>> {
    let mut at: BTreeMap<Edge, Vec<usize>> = BTreeMap::new();
    for (n, (a, b)) in pieces.iter().enumerate() {
        at.entry(*a).or_default().push(n);
        at.entry(*b).or_default().push(n);
    }
    let mut used = vec![false; pieces.len()];
    let ends = at
        .iter()
        .filter(|(_, of)| of.len() == 1)
        .map(|(edge, _)| *edge);
    let starts: Vec<Edge> = ends.chain(pieces.iter().map(|(a, _)| *a)).collect();
    let mut chains = Vec::new();
    for start in starts {
        let mut chain = vec![start];
        let mut here = start;
        while let Some(&next) = at.get(&here).and_then(|of| of.iter().find(|&&n| !used[n])) {
            used[next] = true;
            let (a, b) = pieces[next];
            here = if a == here { b } else { a };
            chain.push(here);
        }
        if chain.len() > 1 {
            chains.push(chain);
        }
    }
    chains
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cone() -> (Vec<f64>, Vec<Vec<f64>>) {
        let xs: Vec<f64> = (-20..=20).map(|i| f64::from(i) / 10.0).collect();
        let values = xs
            .iter()
            .map(|y| xs.iter().map(|x| x.hypot(*y)).collect())
            .collect();
        (xs, values)
    }

    #[test]
    fn the_level_of_a_cone_is_one_closed_ring() {
        let (xs, values) = cone();
        let found = lines(&xs, &xs, &values, 1.05);
        assert_eq!(found.len(), 1);
        assert_eq!(found[0].first(), found[0].last());
        assert!(
            found[0]
                .iter()
                .all(|[x, y]| (x.hypot(*y) - 1.05).abs() < 0.01)
        );
    }

    #[test]
    fn a_level_that_leaves_the_grid_is_open_and_one_beyond_it_is_nothing() {
        let (xs, values) = cone();
        assert_eq!(lines(&xs, &xs, &values, 2.4).len(), 4, "four corners");
        assert!(lines(&xs, &xs, &values, 9.0).is_empty());
        assert!(
            lines(&xs, &xs[1..], &values, 1.0).is_empty(),
            "a grid that does not fit its axes"
        );
    }
}
