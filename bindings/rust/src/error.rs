// SPDX-License-Identifier: Apache-2.0

use crate::language::Language;
use crate::record::{constant, word};
use crate::{sys, Result, Status};
use std::fmt;

/// What was refused, and where.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Error {
    status: Status,
    field: String,
    column: u32,
    line: u32,
    text: String,
    c: Option<Box<Kept>>,
}

// What the sentence in other languages is made of; it points to constants alone.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Kept(sys::rodt_error);

// SAFETY: the pointers in it are those of constants.
unsafe impl Send for Kept {}
unsafe impl Sync for Kept {}

impl Error {
    /// Why, as a stable word.
    pub fn status(&self) -> Status {
        self.status
    }

    /// Which text: "applied", "chamber", the column of a table; empty if there is one only.
    pub fn field(&self) -> &str {
        &self.field
    }

    /// The character, from 1; 0 = the whole text.
    pub fn column(&self) -> u32 {
        self.column
    }

    /// The line of a table or the number of a wheel end, from 1; 0 = neither.
    pub fn line(&self) -> u32 {
        self.line
    }

    /// One English sentence.
    pub fn text(&self) -> &str {
        &self.text
    }

    /// The sentence in a language; English where the library has no other.
    pub fn say(&self, language: Language) -> String {
        let said = self.c.as_ref().map(|kept| {
            // SAFETY: the error lives as long as the message.
            unsafe { language.said(|message| sys::rodt_error_message(&kept.0, message)) }
        });
        said.filter(|said| !said.is_empty()).unwrap_or_else(|| self.text.clone())
    }

    /// An error of this crate, for what the library is never asked.
    pub(crate) fn own(status: Status, field: &str, text: &str) -> Error {
        Error { status, field: field.into(), column: 0, line: 0, text: text.into(), c: None }
    }

    /// The error of a call; Ok where there is none.
    pub(crate) fn check(status: u32, error: &sys::rodt_error) -> Result<()> {
        if status == Status::Ok as u32 {
            return Ok(());
        }
        Err(Error::of(status, error))
    }

    pub(crate) fn of(status: u32, error: &sys::rodt_error) -> Error {
        if error.status == Status::Ok as u32 {
            return Error::plain(status);
        }
        // SAFETY: texts of an error are closed by a zero byte.
        let (field, text) = unsafe { (text_of(&error.field), text_of(&error.text)) };
        let text = if text.is_empty() { Error::plain(status).text } else { text };
        let c = Some(Box::new(Kept(*error)));
        Error { status: Status::of(status), field, column: error.column, line: error.line, text, c }
    }

    /// The error of a status that says no more.
    pub(crate) fn plain(status: u32) -> Error {
        debug_assert!(!word("rodt_status\0", status.into()).is_empty());
        // SAFETY: the text is constant.
        Error::own(Status::of(status), "", unsafe { constant(sys::rodt_status_text(status)) })
    }

    pub(crate) fn about(mut self, field: &str) -> Error {
        self.field = field.into();
        self
    }

    pub(crate) fn on_line(mut self, line: usize) -> Error {
        self.line = u32::try_from(line).unwrap_or(u32::MAX);
        self
    }
}

unsafe fn text_of(text: &[std::os::raw::c_char]) -> String {
    std::ffi::CStr::from_ptr(text.as_ptr()).to_string_lossy().into_owned()
}

impl fmt::Display for Error {
    /// The place and the sentence: "applied, column 1: this is a date".
    fn fmt(&self, to: &mut fmt::Formatter) -> fmt::Result {
        let mut between = "";
        if !self.field.is_empty() {
            write!(to, "{}", self.field)?;
            between = ", ";
        }
        for (name, number) in [("line", self.line), ("column", self.column)] {
            if number > 0 {
                write!(to, "{between}{name} {number}")?;
                between = ", ";
            }
        }
        write!(to, "{}{}", if between.is_empty() { "" } else { ": " }, self.text)
    }
}

impl std::error::Error for Error {}
