//! Tries as many made-up blocks as one likes against the laws of the half-space and names those that break one. The first
//! argument is how many, the second the seed that they are made up from.

use stillground_tests::random_blocks::tried;

fn main() {
    let number = |at: usize| {
        std::env::args()
            .nth(at)
            .and_then(|number| number.parse::<u64>().ok())
    };
    let (count, seed) = (number(1).unwrap_or(1000), number(2).unwrap_or(20_261_125));
    let broken = tried(seed, count as usize);
    broken.iter().for_each(|law| println!("{law}"));
    println!(
        "{count} blocks from seed {seed}, {} laws broken",
        broken.len()
    );
    assert!(broken.is_empty(), "a law was broken");
}
