use super::*;

fn pattern(plate: f64) -> Pattern {
    Pattern {
        holes: vec![(113.137, 113.137), (-113.137, -113.137)],
        hole: 18.0,
        plate,
        column: 219.1,
    }
}

#[test]
fn tiles_cover_the_pattern_and_share_a_strip() {
    for plate in [120.0, 400.0, 900.0, 1600.0] {
        let grid = Grid::over(&pattern(plate), 166.0, 226.0);
        let tiles = grid.tiles(&pattern(plate));
        let (first, last) = (&tiles[0], &tiles[tiles.len() - 1]);
        assert!(
            first.west <= -plate / 2.0 - ROUND + 1e-9 && first.north >= plate / 2.0 + ROUND - 1e-9
        );
        assert!(last.west + 166.0 >= plate / 2.0 + ROUND - 1e-9);
        if grid.columns > 1 {
            assert!((tiles[0].west + 166.0 - tiles[1].west - OVERLAP).abs() < 1e-9);
        }
    }
}

#[test]
fn every_register_mark_is_whole_on_at_least_two_tiles() {
    let grid = Grid::over(&pattern(400.0), 166.0, 226.0);
    let tiles = grid.tiles(&pattern(400.0));
    assert!(!grid.registers(&tiles).is_empty());
    for (x, north) in grid.registers(&tiles) {
        let seen = tiles.iter().filter(|tile| {
            let window = grid.window(tile).with_margin(-4.0);
            x >= window.left && x <= window.right && -north >= window.top && -north <= window.bottom
        });
        assert!(seen.count() >= 2, "{x} {north}");
    }
}

#[test]
fn a_register_mark_keeps_clear_of_holes_and_lines() {
    let pattern = Pattern {
        holes: vec![(113.137, 113.137), (113.137, -113.137)],
        hole: 18.0,
        plate: 400.0,
        column: 219.1,
    };
    for (width, height) in [(166.0, 226.0), (171.9, 208.4)] {
        let grid = Grid::over(&pattern, width, height);
        let marks = grid.registers(&grid.tiles(&pattern));
        for (x, north) in &marks {
            let near =
                |&(hx, hy): &(f64, f64)| (x - hx).hypot(north - hy) < pattern.hole / 2.0 + ARM;
            assert!(!pattern.holes.iter().any(near), "{x} {north}");
        }
    }
}

#[test]
fn only_tiles_with_something_on_them_are_printed_and_each_can_be_laid_to_the_others() {
    let plate = Pattern {
        holes: vec![(410.0, 0.0), (0.0, 410.0), (-290.0, 290.0), (60.0, -40.0)],
        hole: 22.0,
        plate: 900.0,
        column: 500.0,
    };
    let grid = Grid::over(&plate, 166.0, 226.0);
    let tiles = grid.tiles(&plate);
    assert!(
        tiles.len() < grid.count(),
        "{} of {}",
        tiles.len(),
        grid.count()
    );
    for &(x, north) in &plate.holes {
        let whole = |tile: &Tile| {
            let window = grid.window(tile).with_margin(-12.0);
            x >= window.left && x <= window.right && -north >= window.top && -north <= window.bottom
        };
        assert!(tiles.iter().any(whole), "the hole at {x}, {north}");
    }
    let kept: Vec<bool> = grid.all().iter().map(|tile| tiles.contains(tile)).collect();
    assert_eq!(grid.reached(&kept), kept);
    for tile in &tiles {
        let window = grid.window(tile).with_margin(-4.0);
        let marks = grid.registers(&tiles);
        let on = marks.iter().filter(|(x, north)| {
            *x >= window.left
                && *x <= window.right
                && -north >= window.top
                && -north <= window.bottom
        });
        assert!(on.count() >= 2, "{}", tile.name);
    }
}
