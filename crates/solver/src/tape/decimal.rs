//! Exact decimals as text.

/// A whole number with the decimal point moved so many places to the left, without trailing zeros.
pub(super) fn decimal_of(number: i128, places: u32) -> String {
    let sign = if number < 0 { "-" } else { "" };
    let one = 10_u128.pow(places);
    let (whole, rest) = (number.unsigned_abs() / one, number.unsigned_abs() % one);
    if rest == 0 {
        return format!("{sign}{whole}");
    }
    let rest = format!("{rest:0width$}", width = places as usize);
    format!("{sign}{whole}.{}", rest.trim_end_matches('0'))
}

#[cfg(test)]
mod tests {
    use super::decimal_of;

    #[test]
    fn the_point_moves_and_no_zero_trails() {
        assert_eq!(decimal_of(1_231_900_000, 6), "1231.9");
        assert_eq!(decimal_of(-1, 6), "-0.000001");
        assert_eq!(decimal_of(0, 6), "0");
        assert_eq!(decimal_of(-48_000, 3), "-48");
    }
}
