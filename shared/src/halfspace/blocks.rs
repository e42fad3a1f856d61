//! Linear systems solved block by block: most of the work is then products of matrices, which run several times as fast
//! as elimination column by column.

use nalgebra::DMatrix;

/// Columns eliminated at once.
const BLOCK: usize = 16;

/// A block's first column, its width, and the first column after it.
fn blocks(n: usize) -> impl DoubleEndedIterator<Item = (usize, usize, usize)> + Clone {
    (0..n.div_ceil(BLOCK)).map(move |i| {
        (
            i * BLOCK,
            BLOCK.min(n - i * BLOCK),
            (i * BLOCK + BLOCK).min(n),
        )
    })
}

/// Solves `A X = B` with `A` symmetric and positive definite, of which the lower half is read: Cholesky's factors.
/// None where it is not positive definite.
pub fn symmetric(mut a: DMatrix<f64>, mut b: DMatrix<f64>) -> Option<DMatrix<f64>> {
    let n = a.nrows();
    for (start, width, after) in blocks(n) {
        let rest = n - after;
        let corner = a
            .view((start, start), (width, width))
            .clone_owned()
            .cholesky()?
            .unpack();
        let inverse = corner.solve_lower_triangular(&DMatrix::identity(width, width))?;
        let across = &inverse * a.view((after, start), (rest, width)).transpose();
        let own = &inverse * b.rows(start, width);
        let down = across.transpose();
        for (next, wide, _) in blocks(rest) {
            let mut column = a.view_mut((after + next, after + next), (rest - next, wide));
            column.gemm(
                -1.0,
                &down.rows(next, rest - next),
                &across.columns(next, wide),
                1.0,
            );
        }
        b.rows_mut(after, rest).gemm(-1.0, &down, &own, 1.0);
        b.rows_mut(start, width).copy_from(&own);
        a.view_mut((start, start), (width, width))
            .copy_from(&corner);
        a.view_mut((after, start), (rest, width)).copy_from(&down);
    }
    for (start, width, after) in blocks(n).rev() {
        let known = b.rows(after, n - after).clone_owned();
        let mut own = b.rows_mut(start, width);
        own.gemm_tr(
            -1.0,
            &a.view((after, start), (n - after, width)),
            &known,
            1.0,
        );
        a.view((start, start), (width, width))
            .tr_solve_lower_triangular_mut(&mut own)
            .then_some(())?;
    }
    Some(b)
}

/// Solves `A X = B`: Gauss's elimination with rows changed round so that the largest of a column leads. None where no
/// row can lead.
pub fn general(mut a: DMatrix<f64>, mut b: DMatrix<f64>) -> Option<DMatrix<f64>> {
    let n = a.nrows();
    for (start, width, after) in blocks(n) {
        let rest = n - after;
        let (order, lower, upper) = a
            .view((start, start), (n - start, width))
            .clone_owned()
            .lu()
            .unpack();
        order.permute_rows(&mut a.view_mut((start, after), (n - start, rest)));
        order.permute_rows(&mut b.rows_mut(start, n - start));
        let inverse = lower
            .rows(0, width)
            .solve_lower_triangular(&DMatrix::identity(width, width))?;
        let across = &inverse * a.view((start, after), (width, rest));
        let own = &inverse * b.rows(start, width);
        let down = lower.rows(width, rest);
        a.view_mut((after, after), (rest, rest))
            .gemm(-1.0, &down, &across, 1.0);
        b.rows_mut(after, rest).gemm(-1.0, &down, &own, 1.0);
        b.rows_mut(start, width).copy_from(&own);
        a.view_mut((start, start), (width, width)).copy_from(&upper);
        a.view_mut((start, after), (width, rest)).copy_from(&across);
    }
    for (start, width, after) in blocks(n).rev() {
        let known = b.rows(after, n - after).clone_owned();
        let mut own = b.rows_mut(start, width);
        own.gemm(
            -1.0,
            &a.view((start, after), (width, n - after)),
            &known,
            1.0,
        );
        a.view((start, start), (width, width))
            .solve_upper_triangular_mut(&mut own)
            .then_some(())?;
    }
    Some(b)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
mod tests {
    use super::*;

    /// Numbers between −1 and 1 without order.
    fn matrix(rows: usize, columns: usize) -> DMatrix<f64> {
        let mut state = 1u32;
        DMatrix::from_fn(rows, columns, |_, _| {
            state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            2.0 * f64::from(state) / f64::from(u32::MAX) - 1.0
        })
    }

    #[test]
    fn answers_are_those_of_elimination_column_by_column() {
        for n in [1, 5, 23, 24, 25, 48, 130] {
            let (a, b) = (matrix(n, n), matrix(n, 2));
            let expected = a.clone().lu().solve(&b).unwrap();
            assert!(
                (general(a.clone(), b.clone()).unwrap() - &expected).amax()
                    < 1e-10 * expected.amax(),
                "{n}"
            );
            let definite = &a * a.transpose() + DMatrix::identity(n, n);
            let expected = definite.clone().cholesky().unwrap().solve(&b);
            assert!(
                (symmetric(definite, b).unwrap() - &expected).amax() < 1e-10 * expected.amax(),
                "{n}"
            );
        }
    }

    #[test]
    fn what_has_no_answer_gets_none() {
        assert!(general(DMatrix::zeros(30, 30), matrix(30, 1)).is_none());
        assert!(symmetric(-DMatrix::identity(30, 30), matrix(30, 1)).is_none());
    }
}
