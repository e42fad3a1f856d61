//! Moments in the file's head that the library takes from the clock, set to one that is always the same.

/// Variables that hold a moment as a Julian day.
const MOMENTS: [&str; 4] = ["$TDCREATE", "$TDUCREATE", "$TDUPDATE", "$TDUUPDATE"];
/// The beginning of the year 2000.
const SAME_DAY: &str = "2451544.5";

/// The text with its moments fixed. Each variable is a line with its name, one with the kind of its value, one with it.
pub(super) fn moments(text: &str) -> String {
    let mut fixed = String::with_capacity(text.len());
    let mut named_before = [false; 2];
    for line in text.split_inclusive('\n') {
        let bare = line.trim_end_matches(['\r', '\n']);
        match named_before[1] {
            true => {
                fixed.push_str(SAME_DAY);
                fixed.push_str(&line[bare.len()..]);
            }
            false => fixed.push_str(line),
        }
        named_before = [MOMENTS.contains(&bare), named_before[0]];
    }
    fixed
}

#[cfg(test)]
mod tests {
    #[test]
    fn only_moments_change() {
        let text = "  9\r\n$TDCREATE\r\n 40\r\n2461370.79\r\n  9\r\n$LTSCALE\r\n 40\r\n1.5\r\n";
        assert_eq!(
            super::moments(text),
            text.replace("2461370.79", "2451544.5")
        );
    }
}
