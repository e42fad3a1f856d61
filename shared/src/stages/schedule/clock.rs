//! Working hours: eight from the start of each day; a wait runs day and night.

/// Hours of a working day.
pub(super) const DAY_H: f64 = 8.0;
/// Hours of a day.
const TURN_H: f64 = 24.0;
/// Rounding dust, h.
const DUST_H: f64 = 1e-9;

/// When work that is ready at an hour starts and is done. What fits into a day is not begun when the day has too little
/// left of it: nobody leaves a pour or a pot of resin overnight.
pub(super) fn work(ready_h: f64, lasts_h: f64) -> (f64, f64) {
    let start = start(ready_h, lasts_h.min(DAY_H));
    let in_day = start % TURN_H;
    let whole_days = ((in_day + lasts_h - DUST_H) / DAY_H).floor().max(0.0);
    let done = start - in_day + whole_days * TURN_H + (in_day + lasts_h - whole_days * DAY_H);
    (start, done)
}

fn start(ready_h: f64, needs_h: f64) -> f64 {
    let in_day = ready_h % TURN_H;
    if in_day + needs_h <= DAY_H + DUST_H {
        ready_h
    } else {
        ready_h - in_day + TURN_H
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn work_is_done_in_working_hours() {
        assert_eq!(work(0.0, 3.0), (0.0, 3.0));
        assert_eq!(work(3.0, 5.0), (3.0, 8.0));
        assert_eq!(work(3.0, 6.0), (24.0, 30.0));
        assert_eq!(work(0.0, 20.0), (0.0, 52.0));
        assert_eq!(work(30.0, 1.0), (30.0, 31.0));
        assert_eq!(work(9.5, 0.5), (24.0, 24.5));
        assert_eq!(work(24.0, 8.0), (24.0, 32.0));
    }
}
