//! Blocks made up at random: laws that hold for every shape, contact and Poisson's ratio. The slow tests try a thousand.

use stillground_tests::random_blocks::tried;

#[test]
fn a_few_made_up_blocks_keep_the_laws() {
    let broken = tried(2026, 6);
    assert!(broken.is_empty(), "{broken:#?}");
}
