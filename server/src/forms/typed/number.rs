//! The figures of a typed quantity: marks for decimals and thousands, fractions, mixed numbers.

/// A figure; `other` is its second reading, with the comma between thousands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Number {
    /// The figure, with a lone comma as decimal mark.
    pub value: f64,
    /// The figure with that comma between thousands, where both are possible.
    pub other: Option<f64>,
}

impl Number {
    fn one(value: f64) -> Self {
        Self { value, other: None }
    }

    /// The same below nought.
    pub fn negated(self) -> Self {
        Self {
            value: -self.value,
            other: self.other.map(|other| -other),
        }
    }
}

/// Takes a number off the front of a text.
pub fn take(text: &str) -> Option<(Number, &str)> {
    if let Some((value, rest)) = fraction(text) {
        return Some((Number::one(value), rest));
    }
    let end = run_end(text);
    let number = separated(text[..end].trim_end())?;
    let rest = &text[end..];
    if let Some((power, rest)) = exponent(rest) {
        return Some((Number::one(number.value * power), rest));
    }
    match fraction(rest.trim_start_matches([' ', '-'])) {
        Some((part, rest)) if number.other.is_none() && number.value.fract() == 0.0 => {
            Some((Number::one(number.value + part), rest))
        }
        _ => Some((number, rest)),
    }
}

/// Where the run of digits and marks ends; a space belongs to it before exactly three digits.
fn run_end(text: &str) -> usize {
    let bytes = text.as_bytes();
    let mut end = 0;
    while end < bytes.len() {
        match bytes[end] {
            b'0'..=b'9' | b'.' | b',' => end += 1,
            b' ' if end > 0
                && group_of_three(&bytes[end + 1..])
                && leads_a_group(&bytes[..end]) =>
            {
                end += 1
            }
            _ => break,
        }
    }
    end
}

fn group_of_three(bytes: &[u8]) -> bool {
    let digits = bytes
        .iter()
        .take_while(|byte| byte.is_ascii_digit())
        .count();
    digits == 3 && bytes.get(3) != Some(&b'/')
}

/// Whether what stands before a space can be the head of a number in groups: one to three digits, or whole groups.
fn leads_a_group(before: &[u8]) -> bool {
    let tail = before
        .iter()
        .rev()
        .take_while(|byte| byte.is_ascii_digit())
        .count();
    (1..=3).contains(&tail)
        && before
            .iter()
            .all(|byte| byte.is_ascii_digit() || *byte == b' ')
}

/// `1/2`
fn fraction(text: &str) -> Option<(f64, &str)> {
    let (above, rest) = whole(text)?;
    let (below, rest) = whole(
        rest.strip_prefix('/')
            .or_else(|| rest.strip_prefix('\u{2044}'))?,
    )?;
    (below > 0.0).then(|| (above / below, rest))
}

fn whole(text: &str) -> Option<(f64, &str)> {
    let digits = text.bytes().take_while(u8::is_ascii_digit).count();
    Some((
        text.get(..digits)
            .filter(|digits| !digits.is_empty())?
            .parse()
            .ok()?,
        &text[digits..],
    ))
}

/// `e5`, `x 10^5`
fn exponent(text: &str) -> Option<(f64, &str)> {
    let trimmed = text.trim_start();
    let rest = match text.strip_prefix('e') {
        Some(rest) => rest,
        None => trimmed
            .strip_prefix('x')
            .or_else(|| trimmed.strip_prefix('\u{d7}'))?
            .trim_start()
            .strip_prefix("10^")?,
    };
    let (negative, rest) = match rest.strip_prefix(['-', '+']) {
        Some(after) => (rest.starts_with('-'), after),
        None => (false, rest),
    };
    let (power, rest) = whole(rest)?;
    let power = power.min(400.0) as i32;
    Some((10f64.powi(if negative { -power } else { power }), rest))
}

/// A run of digits with points, commas and spaces in it.
fn separated(run: &str) -> Option<Number> {
    let run: String = run.chars().filter(|c| *c != ' ').collect();
    let points = run.matches('.').count();
    let commas = run.matches(',').count();
    match (points, commas) {
        (0, 0) | (1, 0) => parse(&run).map(Number::one),
        (0, 1) => comma(&run),
        (0, _) => grouped(&run, ',').map(Number::one),
        (_, 0) => grouped(&run, '.').map(Number::one),
        _ if run.rfind('.') > run.rfind(',') => mixed(&run, ',', '.'),
        _ => mixed(&run, '.', ','),
    }
}

/// One comma: a decimal mark, unless three digits follow one to three others that do not begin with nought.
fn comma(run: &str) -> Option<Number> {
    let (before, after) = run.split_once(',')?;
    let value = parse(&format!("{before}.{after}"))?;
    let doubtful = after.len() == 3 && (1..=3).contains(&before.len()) && !before.starts_with('0');
    let other = if doubtful {
        parse(&format!("{before}{after}"))
    } else {
        None
    };
    Some(Number { value, other })
}

/// Thousands and decimals marked differently.
fn mixed(run: &str, thousands: char, decimal: char) -> Option<Number> {
    let (before, after) = run.split_once(decimal)?;
    if !after.bytes().all(|byte| byte.is_ascii_digit()) {
        return None;
    }
    let before = grouped(before, thousands)?;
    parse(&format!("{before}.{after}")).map(Number::one)
}

/// Groups of three digits.
fn grouped(run: &str, mark: char) -> Option<f64> {
    let mut groups = run.split(mark);
    let first = groups.next()?;
    ((1..=3).contains(&first.len()) && groups.all(|group| group.len() == 3)).then_some(())?;
    parse(&run.replace(mark, ""))
}

fn parse(text: &str) -> Option<f64> {
    text.bytes()
        .any(|byte| byte.is_ascii_digit())
        .then_some(())?;
    text.parse().ok()
}
