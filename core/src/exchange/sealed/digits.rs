//! Hexadecimal digits of a fixed number, as names of files have them: small letters, and nothing else.

use std::fmt;
use std::ops::Deref;
use std::str::FromStr;

use rusqlite::ToSql;
use rusqlite::types::{FromSql, FromSqlError, FromSqlResult, ToSqlOutput, ValueRef};

/// Some hexadecimal digits. They compare as their text does.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Digits<const N: usize>([u8; N]);

/// A text is no such digits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NoDigits;

impl<const N: usize> Digits<N> {
    /// The digits of bytes, the first ones.
    ///
    /// `N` is at most twice as many as there are bytes; what lacks is zeros.
    pub(crate) fn of(bytes: &[u8]) -> Digits<N> {
        let mut digits = [b'0'; N];
        for (pair, byte) in digits.chunks_mut(2).zip(bytes) {
            for (digit, half) in pair.iter_mut().zip([byte >> 4, byte & 15]) {
                *digit = b"0123456789abcdef"[usize::from(half)];
            }
        }
        Digits(digits)
    }
}

impl<const N: usize> Deref for Digits<N> {
    type Target = str;

    fn deref(&self) -> &str {
        // Every one of them is a sign of ASCII.
        std::str::from_utf8(&self.0).unwrap_or_default()
    }
}

impl<const N: usize> FromStr for Digits<N> {
    type Err = NoDigits;

    fn from_str(text: &str) -> Result<Digits<N>, NoDigits> {
        let digits: [u8; N] = text.as_bytes().try_into().map_err(|_| NoDigits)?;
        let all = digits.iter().all(|digit| matches!(digit, b'0'..=b'9' | b'a'..=b'f'));
        if all { Ok(Digits(digits)) } else { Err(NoDigits) }
    }
}

impl<const N: usize> fmt::Display for Digits<N> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self)
    }
}

impl<const N: usize> fmt::Debug for Digits<N> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self)
    }
}

impl<const N: usize> ToSql for Digits<N> {
    fn to_sql(&self) -> rusqlite::Result<ToSqlOutput<'_>> {
        Ok(ToSqlOutput::Borrowed(ValueRef::Text(&self.0)))
    }
}

impl<const N: usize> FromSql for Digits<N> {
    fn column_result(value: ValueRef<'_>) -> FromSqlResult<Digits<N>> {
        value.as_str()?.parse().map_err(|NoDigits| FromSqlError::InvalidType)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn they_are_the_digits_of_bytes_and_of_nothing_else() {
        let digits = Digits::<6>::of(&[0x01, 0xfe, 0x90, 0x77]);
        assert_eq!((&*digits, digits.to_string().as_str()), ("01fe90", "01fe90"));
        assert_eq!("01fe90".parse(), Ok(digits));
        assert!(digits < Digits::of(&[0x02]) && Digits::<4>::of(&[1]).starts_with("0100"));
        for odd in ["", "01fe9", "01fe900", "01FE90", "01fe9g", "01fe9ä", "+1fe90"] {
            assert_eq!(odd.parse::<Digits<6>>(), Err(NoDigits), "{odd}");
        }
    }
}
