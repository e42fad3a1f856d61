//! Tries as many made-up blocks as one likes against the laws of the half-space and names those that break one.

use stillground_tests::random_blocks::tried;

fn main() {
    let count = std::env::args().nth(1).and_then(|count| count.parse().ok()).unwrap_or(1000);
    let broken = tried(20_261_125, count);
    broken.iter().for_each(|law| println!("{law}"));
    println!("{count} blocks, {} laws broken", broken.len());
    assert!(broken.is_empty(), "a law was broken");
}
