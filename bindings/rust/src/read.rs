// SPDX-License-Identifier: Apache-2.0

use crate::error::Error;
use crate::record::{c_text, written, zeroed};
use crate::{sys, Date, Ratio, Result, Status, Unit};
use std::os::raw::c_char;
use std::ptr;

/// Reads one length as a person writes it, "1 3/4", "2-1/8 in", "44.45 mm", as inches from 0 to 24. unit is that of a
/// bare number. A blank that was lost is not noticed here: texts that are judged go into a [`Form`](crate::Form).
pub fn read_length(text: &str, unit: Unit) -> Result<Ratio> {
    // SAFETY: the text is read for its size, and the results are ours.
    unsafe {
        let mut style: sys::rodt_style = zeroed();
        style.unit = unit as u32;
        let (mut made, mut error) = (zeroed(), zeroed());
        let at = text.as_ptr().cast();
        let status =
            sys::rodt_length_parse_n(at, text.len(), &style, &mut made, ptr::null_mut(), &mut error);
        given(status, &error, || Ratio::length(made))
    }
}

/// Reads a gauge pressure, "95", "92.5 psi", "655 kPa", as psi from 0 to 300.
pub fn read_pressure(text: &str) -> Result<Ratio> {
    let mut made = sys::rodt_pressure { num: 0, den: 0 };
    // SAFETY: the text is closed by a zero byte, and the results are ours.
    let (status, error) = read(text, |at, error| unsafe { sys::rodt_pressure_parse(at, &mut made, error) })?;
    given(status, &error, || Ratio::pressure(made))
}

/// Reads a time, "45", "31.5 s", "1:30", as seconds of a day at most.
pub fn read_seconds(text: &str) -> Result<Ratio> {
    let mut made = sys::rodt_ratio { num: 0, den: 0 };
    // SAFETY: the text is closed by a zero byte, and the results are ours.
    let (status, error) = read(text, |at, error| unsafe { sys::rodt_seconds_parse(at, &mut made, error) })?;
    given(status, &error, || Ratio::from_c(made))
}

/// Reads a day from a form, "2021-10-14", "14-OCT-21". One that can be two days is an error.
pub fn read_date(text: &str) -> Result<Date> {
    let mut made = Date::or_none(None);
    // SAFETY: the text is closed by a zero byte, and the results are ours.
    let (status, error) = read(text, |at, error| unsafe { sys::rodt_date_parse(at, &mut made, error) })?;
    given(status, &error, || Date::from_c(made))
}

/// Writes inches as a mixed fraction, "1 3/4", "-1/8".
pub fn write_length(inches: Ratio) -> Result<String> {
    let length = sys::rodt_length { num: inches.num(), den: inches.den() };
    // SAFETY: there is room for the size that is given.
    written(|text, size, needed| unsafe { sys::rodt_length_format(length, text, size, needed) })
        .map_err(|status| Error::plain(status).about("length"))
}

fn read(
    text: &str,
    by: impl FnOnce(*const c_char, *mut sys::rodt_error) -> u32,
) -> Result<(u32, sys::rodt_error)> {
    let text = c_text("", text)?;
    // SAFETY: zero bytes are no error.
    let mut error = unsafe { zeroed() };
    Ok((by(text.as_ptr(), &mut error), error))
}

fn given<T>(status: u32, error: &sys::rodt_error, made: impl FnOnce() -> Option<T>) -> Result<T> {
    Error::check(status, error)?;
    made().ok_or_else(|| Error::plain(Status::Internal as u32))
}
