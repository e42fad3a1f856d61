//! From days to what a plan asks for: the mean of the year, the design freezing index, the gust that is exceeded once in
//! fifty years, and the months' means.

use serde::Deserialize;

use super::Failure;

/// Fewest whole winters and years for a figure of a hard winter or a storm.
const FEWEST: usize = 10;
/// Winters of which the three coldest are taken together.
const MANY: usize = 30;
/// Most days that are read.
const MOST_DAYS: usize = 40_000;
/// Days that a year or a winter has to have to count.
const WHOLE: usize = 350;

/// What the past years at a place say.
#[derive(Debug, Clone, PartialEq)]
pub struct Climate {
    /// First and last year.
    pub years: (i16, i16),
    /// Mean of the air over the years, °C.
    pub mean_c: f64,
    /// Means of the months, °C, January first.
    pub months_c: [f64; 12],
    /// Design freezing index, °C·d.
    pub freezing_index_c_days: f64,
    /// Winters that it is from, and how many of the coldest.
    pub winters: (usize, usize),
    /// Gust exceeded once in fifty years, m/s, where the service has gusts in a unit that is known.
    pub gust_m_s: Option<f64>,
}

#[derive(Deserialize)]
struct Answer {
    daily: Daily,
    #[serde(default)]
    daily_units: Units,
}

#[derive(Deserialize)]
struct Daily {
    time: Vec<String>,
    temperature_2m_mean: Vec<Option<f64>>,
    #[serde(default)]
    wind_gusts_10m_max: Vec<Option<f64>>,
}

#[derive(Deserialize, Default)]
struct Units {
    #[serde(default)]
    temperature_2m_mean: String,
    #[serde(default)]
    wind_gusts_10m_max: String,
}

/// A day that has a temperature.
struct Day {
    year: i16,
    month: usize,
    temperature_c: f64,
    gust_m_s: Option<f64>,
}

/// Reads a service's answer.
pub(super) fn read(text: &[u8], latitude_deg: f64) -> Result<Climate, Failure> {
    let answer: Answer =
        serde_json::from_slice(text).map_err(|error| Failure::Unread(error.to_string()))?;
    let days = days(&answer)?;
    let (first, last) = (
        days.first().ok_or(Failure::TooFew)?.year,
        days.last().ok_or(Failure::TooFew)?.year,
    );
    let mean = |of: &mut dyn Iterator<Item = f64>| {
        let (sum, count) = of.fold((0.0, 0.0), |(sum, count), value| (sum + value, count + 1.0));
        if count > 0.0 { Some(sum / count) } else { None }
    };
    let mut months_c = [0.0; 12];
    for (month, slot) in months_c.iter_mut().enumerate() {
        *slot = mean(
            &mut days
                .iter()
                .filter(|day| day.month == month)
                .map(|day| day.temperature_c),
        )
        .ok_or(Failure::TooFew)?;
    }
    let mut winters: Vec<f64> = seasons(&days, latitude_deg)
        .iter()
        .map(|season| freezing_index(season))
        .collect();
    if winters.len() < FEWEST {
        return Err(Failure::TooFew);
    }
    winters.sort_by(|a, b| b.total_cmp(a));
    let coldest = if winters.len() >= MANY { 3 } else { 1 };
    let index = winters.iter().take(coldest).sum::<f64>() / coldest as f64;
    Ok(Climate {
        years: (first, last),
        mean_c: months_c.iter().sum::<f64>() / 12.0,
        months_c,
        freezing_index_c_days: index,
        winters: (winters.len(), coldest),
        gust_m_s: gust(&days),
    })
}

fn days(answer: &Answer) -> Result<Vec<Day>, Failure> {
    let Answer { daily, daily_units } = answer;
    let unread = |said: &str| Failure::Unread(said.to_owned());
    if daily.time.len() != daily.temperature_2m_mean.len() || daily.time.len() > MOST_DAYS {
        return Err(unread("its lists differ in length"));
    }
    if !matches!(daily_units.temperature_2m_mean.as_str(), "" | "°C") {
        return Err(unread("its temperatures are not in degrees Celsius"));
    }
    let to_m_s = match daily_units.wind_gusts_10m_max.as_str() {
        "m/s" => Some(1.0),
        "km/h" => Some(1.0 / 3.6),
        _ => None,
    };
    let mut days = Vec::with_capacity(daily.time.len());
    for (i, (time, temperature)) in daily
        .time
        .iter()
        .zip(&daily.temperature_2m_mean)
        .enumerate()
    {
        let date: jiff::civil::Date = time.parse().map_err(|_| unread("a day is no date"))?;
        let Some(temperature_c) = temperature.filter(|value| (-95.0..=65.0).contains(value)) else {
            continue;
        };
        let gust = daily
            .wind_gusts_10m_max
            .get(i)
            .copied()
            .flatten()
            .zip(to_m_s)
            .map(|(gust, factor)| gust * factor);
        let gust_m_s = gust.filter(|gust| (0.0..=120.0).contains(gust));
        days.push(Day {
            year: date.year(),
            month: usize::from(date.month().unsigned_abs()) - 1,
            temperature_c,
            gust_m_s,
        });
    }
    days.sort_by_key(|day| (day.year, day.month));
    Ok(days)
}

/// The whole winters: from July to June in the north, the calendar's years in the south.
fn seasons(days: &[Day], latitude_deg: f64) -> Vec<Vec<f64>> {
    let season = |day: &Day| {
        if latitude_deg >= 0.0 && day.month >= 6 {
            day.year + 1
        } else {
            day.year
        }
    };
    let mut found: Vec<(i16, Vec<f64>)> = Vec::new();
    for day in days {
        match found.last_mut() {
            Some((name, values)) if *name == season(day) => values.push(day.temperature_c),
            _ => found.push((season(day), vec![day.temperature_c])),
        }
    }
    found
        .into_iter()
        .map(|(_, values)| values)
        .filter(|values| values.len() >= WHOLE)
        .collect()
}

/// Freezing index of a season, °C·d: the greatest fall of the running sum of the days' means from its highest point.
///
/// # Source
/// UFC 3-130-06 (2004), definitions: the number of degree-days between the highest and the lowest point of the curve of
/// cumulative degree-days over a freezing season.
fn freezing_index(days_c: &[f64]) -> f64 {
    let (mut sum, mut highest, mut greatest) = (0.0_f64, 0.0_f64, 0.0_f64);
    for day in days_c {
        sum += day;
        highest = highest.max(sum);
        greatest = greatest.max(highest - sum);
    }
    greatest
}

/// Gust exceeded once in fifty years, m/s, from the yearly greatest: mean and 2.592 standard deviations.
///
/// # Source
/// Method of moments for the Gumbel distribution: K = −(√6/π)(0.5772 + ln ln (T/(T − 1))) with T = 50.
fn gust(days: &[Day]) -> Option<f64> {
    let mut years: Vec<(i16, usize, f64)> = Vec::new();
    for day in days {
        let Some(gust) = day.gust_m_s else { continue };
        match years.last_mut() {
            Some((year, count, greatest)) if *year == day.year => {
                (*count, *greatest) = (*count + 1, greatest.max(gust))
            }
            _ => years.push((day.year, 1, gust)),
        }
    }
    let greatest: Vec<f64> = years
        .iter()
        .filter(|(_, count, _)| *count >= WHOLE)
        .map(|(.., greatest)| *greatest)
        .collect();
    if greatest.len() < FEWEST {
        return None;
    }
    let count = greatest.len() as f64;
    let mean = greatest.iter().sum::<f64>() / count;
    let variance = greatest
        .iter()
        .map(|gust| (gust - mean).powi(2))
        .sum::<f64>()
        / (count - 1.0);
    Some(mean + 2.592 * variance.sqrt())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_season_freezes_by_the_greatest_fall_of_its_running_sum() {
        assert!(
            (freezing_index(&[5.0, 5.0, -3.0, -4.0, 1.0, -2.0, 9.0]) - 8.0).abs() < 1e-12,
            "a thaw of one degree-day in between"
        );
        assert!(freezing_index(&[5.0, 1.0, 9.0]).abs() < 1e-12);
    }

    /// Ten years whose greatest gusts are 20 to 29 m/s: mean 24.5, standard deviation 3.0277 (of a sample).
    #[test]
    fn the_fifty_year_gust_is_mean_and_two_and_a_half_deviations() {
        let day = |year: i16, gust: f64| Day {
            year,
            month: 0,
            temperature_c: 5.0,
            gust_m_s: Some(gust),
        };
        let days: Vec<Day> = (0..10)
            .flat_map(|n| {
                (0..360).map(move |d| day(2000 + n, if d == 7 { 20.0 + f64::from(n) } else { 5.0 }))
            })
            .collect();
        assert!(gust(&days).is_some_and(|gust| (gust - (24.5 + 2.592 * 3.027_65)).abs() < 1e-3));
        assert_eq!(gust(&days[..3240]), None, "nine years are too few");
    }
}
