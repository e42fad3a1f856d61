//! A knock's record: every blow fitted by itself, then taken together.

use crate::trace::clean::clipped;
use crate::trace::columns::{Read, Series};
use crate::trace::knocks::{self, Blow};
use crate::trace::noise::Pieces;
use crate::trace::ring::loudest;
use crate::trace::statistics::averaged;
use crate::trace::swing::{self, Swing, Window};
use crate::trace::{FoundMode, Kind, Trace, hum, ring, said};

/// The clock of a telephone or logger, as a share of the frequency: judgement.
const CLOCK: f64 = 2e-4;
/// Blows agree whose frequencies lie within this share of the middle one.
const AGREE: f64 = 0.06;
/// Longest record that is looked at, samples: a longer one is averaged.
const FASTEST_HZ: f64 = 1000.0;
/// Within this time a blow rises, seconds.
const RISEN_S: f64 = 0.15;
/// What one swing beside another, too close to be told, does to what is found: a share of the swing's width in frequency, and
/// of its damping. Counted on made-up records of two swings 0.3 to 3 % apart.
const HIDDEN_HZ: f64 = 0.08;
const HIDDEN_RATIO: f64 = 0.17;

/// Answers a record of knocks.
pub(super) fn answer(read: Read) -> Trace {
    let Read {
        series,
        clock,
        columns,
        mut remarks,
        ..
    } = read;
    let used = columns.iter().find(|column| column.used);
    let direction = used.and_then(|column| column.along?.direction());
    let rate_hz = clock.rate_hz.min(FASTEST_HZ);
    let chosen = series
        .into_iter()
        .next()
        .map(|one| slower(one, clock.rate_hz, &mut remarks));
    let found = match chosen {
        Some(chosen) => of_one(&chosen, rate_hz, &mut remarks),
        None => Err("there is no column to look at".to_owned()),
    };
    let (modes, drift_per_s) = found.unwrap_or_else(|why| {
        remarks.insert(0, format!("No answer: {why}."));
        (Vec::new(), 0.0)
    });
    Trace {
        kind: Kind::Knock,
        modes,
        steps: Vec::new(),
        together: None,
        columns,
        direction,
        drift_per_s,
        remarks,
    }
}

/// Averages neighbouring samples where they come faster than any pier swings.
fn slower(series: Series, rate_hz: f64, remarks: &mut Vec<String>) -> Series {
    let together = (rate_hz / FASTEST_HZ).floor() as usize;
    if together < 2 {
        return series;
    }
    remarks.push(format!(
        "{together} samples each of “{}” are averaged to one.",
        series.name
    ));
    let (t, y) = averaged(&series.t, &series.y, together);
    Series {
        name: series.name,
        t,
        y,
    }
}

type Answer = (Vec<FoundMode>, f64);

fn of_one(series: &Series, rate_hz: f64, remarks: &mut Vec<String>) -> Result<Answer, String> {
    let (blows, pieces) = knocks::find(&series.t, &series.y, rate_hz)?;
    let first_hz = rough(series, &pieces, &blows[0], rate_hz);
    let cut = clipped(&series.y, (rate_hz / (8.0 * first_hz)).ceil() as usize);
    if !cut.is_empty() {
        let many = cut.iter().filter(|cut| **cut).count();
        remarks.push(format!(
            "The sensor's range was exceeded: {many} samples at its ends and beside them are left out (clipped)."
        ));
    }
    let steady = quiet_lines(series, &blows, &pieces, rate_hz);
    if !steady.is_empty() {
        let lines: Vec<String> = steady
            .iter()
            .map(|hz| said((hz * 100.0).round() / 100.0))
            .collect();
        remarks.push(format!(
            "A steady hum of the mains is seen at {} Hz and fitted beside the swing.",
            lines.join(" and ")
        ));
    }
    let noise = pieces.noise();
    let mut fitted = Vec::new();
    let mut refusals: Vec<String> = Vec::new();
    for blow in &blows {
        let window = Window {
            series,
            blow: *blow,
            cut: &cut,
            steady: &steady,
            noise,
            before: before(&pieces, blow, rate_hz),
            rate_hz,
        };
        match swing::find(&window) {
            Ok(swing) => fitted.push(swing),
            Err(why) => refusals.push(why),
        }
    }
    let found = format!(
        "{} {} found",
        blows.len(),
        if blows.len() == 1 { "knock" } else { "knocks" }
    );
    if fitted.is_empty() {
        remarks.push(format!("{found}, none of which can be answered."));
        return Err(refusals
            .into_iter()
            .next()
            .unwrap_or_else(|| "no knock can be answered".to_owned()));
    }
    if refusals.len() >= 2 * fitted.len() {
        remarks.push(format!("{found}; {} cannot be answered.", refusals.len()));
        return Err(format!(
            "most of what looks like a knock is none, so that the rest is not trusted either: {}",
            refusals[0]
        ));
    }
    if !refusals.is_empty() {
        remarks.push(format!(
            "{found}; {} left out ({}).",
            refusals.len(),
            refusals[0]
        ));
    } else {
        remarks.push(format!("{found}."));
    }
    together(fitted, rate_hz, remarks)
}

/// How loud the record was in the second before a blow, as the amplitude of a swing; none where the record begins with it.
fn before(pieces: &Pieces, blow: &Blow, rate_hz: f64) -> Option<f64> {
    let to = blow.at.checked_sub((RISEN_S * rate_hz) as usize)?;
    let from = to.saturating_sub(rate_hz as usize);
    let swing = &pieces.swing[from..to];
    if swing.len() < pieces.samples {
        return None;
    }
    let square = swing.iter().map(|y| y * y).sum::<f64>() / swing.len() as f64;
    Some((2.0 * square).sqrt())
}

/// The loudest frequency after a blow, roughly.
fn rough(series: &Series, pieces: &Pieces, blow: &Blow, rate_hz: f64) -> f64 {
    let to = (blow.at + (3.0 * rate_hz) as usize)
        .min(blow.end)
        .max(blow.at + 8)
        .min(series.t.len());
    let step = 0.25 * rate_hz / (to - blow.at).max(1) as f64;
    let lines = ring::spectrum(
        &series.t[blow.at..to],
        &pieces.swing[blow.at..to],
        0.8,
        0.45 * rate_hz,
        step,
    );
    loudest(&lines).unwrap_or(10.0).max(0.5)
}

/// Steady lines in the stretch before the first blow, or in the quietest second.
fn quiet_lines(series: &Series, blows: &[Blow], pieces: &Pieces, rate_hz: f64) -> Vec<f64> {
    let long = (8.0 * rate_hz) as usize;
    let before = blows[0].at.saturating_sub(2 * pieces.samples);
    let (from, to) = if before as f64 >= rate_hz {
        (before.saturating_sub(long), before)
    } else {
        let wanted =
            ((1.5 * rate_hz / pieces.samples as f64) as usize).clamp(1, pieces.loud.len().max(1));
        let quietest = (0..=pieces.loud.len().saturating_sub(wanted)).min_by(|a, b| {
            let sum = |from: usize| {
                pieces.loud[from..from + wanted]
                    .iter()
                    .map(|l| l * l)
                    .sum::<f64>()
            };
            sum(*a).total_cmp(&sum(*b))
        });
        let from = quietest.unwrap_or(0) * pieces.samples;
        (from, (from + wanted * pieces.samples).min(series.t.len()))
    };
    hum::find(&series.t[from..to], &pieces.swing[from..to], rate_hz)
}

/// Several blows as one answer: weighted means of frequency and of the damping's logarithm.
fn together(
    mut fitted: Vec<Swing>,
    rate_hz: f64,
    remarks: &mut Vec<String>,
) -> Result<Answer, String> {
    let middle = crate::trace::statistics::median(
        &fitted
            .iter()
            .map(|swing| swing.modes[0].hz)
            .collect::<Vec<_>>(),
    );
    let all = fitted.len();
    fitted.retain(|swing| (swing.modes[0].hz / middle - 1.0).abs() <= AGREE);
    if fitted.len() * 2 <= all {
        return Err("the knocks do not agree on a frequency".to_owned());
    }
    if fitted.len() < all {
        remarks.push(format!(
            "{} knocks rang at another frequency and are left out.",
            all - fitted.len()
        ));
    }
    for said in fitted.iter().flat_map(|swing| &swing.remarks) {
        if !remarks.contains(said) {
            remarks.push(said.clone());
        }
    }
    let drift = fitted[0].drift_per_s;
    let mut modes: Vec<FoundMode> = Vec::new();
    let leader = fitted
        .iter()
        .max_by_key(|swing| swing.modes.len())
        .map(|swing| swing.modes.clone())
        .unwrap_or_default();
    for (n, wanted) in leader.iter().enumerate() {
        let alike: Vec<swing::Heard> = fitted
            .iter()
            .filter_map(|swing| {
                if n == 0 {
                    return swing.modes.first().copied();
                }
                swing.modes.iter().copied().find(|mode| {
                    (mode.hz - wanted.hz).abs() < (4.0 * mode.hz_sd).max(0.01 * wanted.hz)
                })
            })
            .collect();
        // What is heard beside the first is told where two knocks in three have it.
        if n > 0 && alike.len() * 3 < fitted.len() * 2 {
            continue;
        }
        let (hz, hz_sd) = weighted(alike.iter().map(|mode| (mode.hz, mode.hz_sd)));
        let (ln, ln_sd) = weighted(alike.iter().map(|mode| (mode.ratio.ln(), mode.ln_ratio_sd)));
        let damping_ratio = ln.exp();
        // What two swings do to one that is fitted is the same for all knocks, and not averaged away.
        let (hz_sd, ln_sd) = if n == 0 && fitted.iter().any(|swing| swing.perhaps_two) {
            (
                hz_sd.max(0.5 * damping_ratio * hz),
                ln_sd.max(swing::OF_TWO),
            )
        } else {
            (hz_sd, ln_sd)
        };
        modes.push(FoundMode {
            frequency_hz: hz,
            frequency_sd_hz: hz_sd
                .hypot(CLOCK * hz)
                .hypot(HIDDEN_HZ * damping_ratio * hz),
            damping_ratio,
            damping_sd: damping_ratio * ln_sd.hypot(HIDDEN_RATIO),
        });
    }
    if modes[0].frequency_hz > 0.4 * rate_hz {
        return Err(format!(
            "the loudest swing, {} Hz, is too fast for {} samples a second",
            said(modes[0].frequency_hz),
            said(rate_hz)
        ));
    }
    if modes.iter().any(|mode| {
        !(mode.frequency_hz.is_finite()
            && mode.damping_ratio.is_finite()
            && mode.damping_sd.is_finite()
            && mode.frequency_sd_hz.is_finite())
    }) {
        return Err("the fit found no figures".to_owned());
    }
    if modes.len() > 1 {
        remarks.push(format!(
            "{} swings are told apart; the one that is heard stands first.",
            modes.len()
        ));
    }
    Ok((modes, drift))
}

/// Weighted mean, its width grown where the values differ by more than their widths.
fn weighted(values: impl Iterator<Item = (f64, f64)> + Clone) -> (f64, f64) {
    let weights: f64 = values.clone().map(|(_, sd)| sd.powi(-2)).sum();
    let mean = values
        .clone()
        .map(|(value, sd)| value * sd.powi(-2))
        .sum::<f64>()
        / weights;
    let count = values.clone().count();
    let scatter: f64 = values
        .map(|(value, sd)| ((value - mean) / sd).powi(2))
        .sum();
    let grown = if count > 1 {
        (scatter / (count - 1) as f64).sqrt().max(1.0)
    } else {
        1.0
    };
    (mean, grown / weights.sqrt())
}
