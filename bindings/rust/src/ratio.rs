// SPDX-License-Identifier: Apache-2.0

use crate::error::Error;
use crate::record::{written, zeroed};
use crate::{sys, Result, Status};
use std::cmp::Ordering;
use std::fmt;

/// An exact number, a fraction in lowest terms. There is none of an f64: 0.1 is not a tenth there.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Ratio {
    num: i64,
    den: i64,
}

/// Most digits after the point that a number is written with; one that needs more is written as a fraction.
const MOST_DIGITS: u32 = 9;

impl Ratio {
    /// num/den in lowest terms. A denominator of zero is an error, and so is what does not fit.
    pub fn new(num: i64, den: i64) -> Result<Ratio> {
        // SAFETY: the result is ours.
        Ratio::made(|out| unsafe { sys::rodt_ratio_make(num, den, out) })
    }

    /// The numerator.
    pub fn num(self) -> i64 {
        self.num
    }

    /// The denominator, above zero.
    pub fn den(self) -> i64 {
        self.den
    }

    /// The exact sum; an error where it does not fit, as of the next three.
    pub fn checked_add(self, other: Ratio) -> Result<Ratio> {
        // SAFETY: the result is ours.
        Ratio::made(|out| unsafe { sys::rodt_ratio_add(self.c(), other.c(), out) })
    }

    /// The exact difference.
    pub fn checked_sub(self, other: Ratio) -> Result<Ratio> {
        // SAFETY: the result is ours.
        Ratio::made(|out| unsafe { sys::rodt_ratio_subtract(self.c(), other.c(), out) })
    }

    /// The exact product.
    pub fn checked_mul(self, other: Ratio) -> Result<Ratio> {
        // SAFETY: the result is ours.
        Ratio::made(|out| unsafe { sys::rodt_ratio_multiply(self.c(), other.c(), out) })
    }

    /// The exact quotient; by zero it is an error.
    pub fn checked_div(self, other: Ratio) -> Result<Ratio> {
        // SAFETY: the result is ours.
        Ratio::made(|out| unsafe { sys::rodt_ratio_divide(self.c(), other.c(), out) })
    }

    /// As a mixed fraction, "1 3/4", "-1/8".
    pub fn mixed(self) -> String {
        // SAFETY: there is room for the size that is given.
        written(|text, size, needed| unsafe { sys::rodt_ratio_format(self.c(), text, size, needed) }).unwrap_or_default()
    }

    /// As the text of a form: a decimal where it is a short one, so that 33/8 is never taken for 3 3/8 with its blank
    /// lost, otherwise a fraction.
    pub fn text(self) -> String {
        for digits in 0..=MOST_DIGITS {
            let scale = 10i128.pow(digits);
            let scaled = i128::from(self.num) * scale;
            if scaled % i128::from(self.den) == 0 {
                let all = scaled / i128::from(self.den);
                let (whole, rest) = (all.abs() / scale, all.abs() % scale);
                let sign = if all < 0 { "-" } else { "" };
                return match digits {
                    0 => format!("{sign}{whole}"),
                    _ => format!("{sign}{whole}.{rest:0width$}", width = digits as usize),
                };
            }
        }
        self.to_string()
    }

    fn made(make: impl FnOnce(*mut sys::rodt_ratio) -> u32) -> Result<Ratio> {
        let mut out = sys::rodt_ratio { num: 0, den: 0 };
        match make(&mut out) {
            0 => Ratio::from_c(out).ok_or_else(|| Error::plain(Status::Internal as u32)),
            status => Err(Error::plain(status)),
        }
    }

    fn c(self) -> sys::rodt_ratio {
        sys::rodt_ratio { num: self.num, den: self.den }
    }

    /// None = it is not given.
    pub(crate) fn from_c(c: sys::rodt_ratio) -> Option<Ratio> {
        Ratio::of(c.num, c.den)
    }

    pub(crate) fn of(num: i64, den: i64) -> Option<Ratio> {
        if den == 0 {
            None
        } else {
            Some(Ratio { num, den })
        }
    }

    pub(crate) fn length(c: sys::rodt_length) -> Option<Ratio> {
        Ratio::of(c.num, c.den)
    }

    pub(crate) fn pressure(c: sys::rodt_pressure) -> Option<Ratio> {
        Ratio::of(c.num, c.den)
    }
}

impl From<i64> for Ratio {
    fn from(whole: i64) -> Ratio {
        Ratio { num: whole, den: 1 }
    }
}

impl From<i32> for Ratio {
    fn from(whole: i32) -> Ratio {
        Ratio::from(i64::from(whole))
    }
}

impl Ord for Ratio {
    fn cmp(&self, other: &Ratio) -> Ordering {
        (i128::from(self.num) * i128::from(other.den)).cmp(&(i128::from(other.num) * i128::from(self.den)))
    }
}

impl PartialOrd for Ratio {
    fn partial_cmp(&self, other: &Ratio) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl fmt::Display for Ratio {
    /// "-1/16", or a whole number.
    fn fmt(&self, to: &mut fmt::Formatter) -> fmt::Result {
        match self.den {
            1 => to.pad(&self.num.to_string()),
            _ => to.pad(&format!("{}/{}", self.num, self.den)),
        }
    }
}

/// A day of the Gregorian calendar, 1900 to 2199.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Date {
    year: i16,
    month: i8,
    day: i8,
}

impl Date {
    /// A day; an error where there is none.
    pub fn new(year: i32, month: i32, day: i32) -> Result<Date> {
        // SAFETY: zero bytes are no day, and the result is ours.
        unsafe {
            let mut out = zeroed();
            match sys::rodt_date_make(year, month, day, &mut out) {
                0 => Date::from_c(out).ok_or_else(|| Error::plain(Status::Internal as u32)),
                status => Err(Error::plain(status).about("date")),
            }
        }
    }

    /// The year, 1900 to 2199.
    pub fn year(self) -> i32 {
        self.year.into()
    }

    /// The month, 1 to 12.
    pub fn month(self) -> i32 {
        self.month.into()
    }

    /// The day of the month.
    pub fn day(self) -> i32 {
        self.day.into()
    }

    /// Days since 1970-01-01, as a column has them.
    pub fn days(self) -> i32 {
        let mut days = 0;
        // SAFETY: the result is ours; a day that exists has a number.
        let _ = unsafe { sys::rodt_date_to_days(self.c(), &mut days) };
        days
    }

    /// The day of a number of days since 1970-01-01; an error outside of 1900 to 2199.
    pub fn from_days(days: i32) -> Result<Date> {
        // SAFETY: the result is ours.
        unsafe {
            let mut out = zeroed();
            match sys::rodt_date_from_days(days, &mut out) {
                0 => Date::from_c(out).ok_or_else(|| Error::plain(Status::Internal as u32)),
                status => Err(Error::plain(status).about("date")),
            }
        }
    }

    pub(crate) fn c(self) -> sys::rodt_date {
        sys::rodt_date { year: self.year, month: self.month, day: self.day }
    }

    /// None = it is not given.
    pub(crate) fn from_c(c: sys::rodt_date) -> Option<Date> {
        if c.year == 0 {
            None
        } else {
            Some(Date { year: c.year, month: c.month, day: c.day })
        }
    }

    /// The day in C; None is one that is not given.
    pub(crate) fn or_none(day: Option<Date>) -> sys::rodt_date {
        day.map_or(sys::rodt_date { year: 0, month: 0, day: 0 }, Date::c)
    }
}

impl fmt::Display for Date {
    /// "2021-10-14".
    fn fmt(&self, to: &mut fmt::Formatter) -> fmt::Result {
        to.pad(&format!("{:04}-{:02}-{:02}", self.year, self.month, self.day))
    }
}
