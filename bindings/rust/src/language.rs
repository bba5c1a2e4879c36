// SPDX-License-Identifier: Apache-2.0

use crate::error::Error;
use crate::record::{c_text, constant, written, zeroed};
use crate::{sys, Result, Status};
use std::fmt;
use std::ptr;

/// A language of sentences.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Language(*const sys::rodt_catalogue);

// SAFETY: it points to a constant.
unsafe impl Send for Language {}
unsafe impl Sync for Language {}

impl Language {
    /// The language that is built in.
    pub const ENGLISH: Language = Language(ptr::null());

    /// Those that the library has beside English.
    pub fn all() -> Vec<Language> {
        // SAFETY: an index below the count.
        unsafe { (0..sys::rodt_catalogue_count()).map(|i| Language(sys::rodt_catalogue_at(i))).collect() }
    }

    /// Takes a tag or the name of a locale, "fr", "es_MX.UTF-8"; its first part decides. A language that the library
    /// does not speak is an error.
    pub fn find(tag: &str) -> Result<Language> {
        let text = c_text("language", tag)?;
        // SAFETY: the text is closed by a zero byte.
        let found = Language(unsafe { sys::rodt_catalogue_find(text.as_ptr()) });
        let english = tag.is_empty() || tag.get(..2).map_or(false, |first| first.eq_ignore_ascii_case("en"));
        if found == Language::ENGLISH && !english {
            return Err(Error::own(Status::Argument, "language", "the library does not speak this language"));
        }
        Ok(found)
    }

    pub(crate) fn c(self) -> *const sys::rodt_catalogue {
        self.0
    }

    /// A message in the language; empty where there is none to say.
    ///
    /// # Safety
    /// What the message points to is alive.
    pub(crate) unsafe fn said(self, make: impl FnOnce(*mut sys::rodt_message) -> u32) -> String {
        let mut message = zeroed();
        if make(&mut message) != Status::Ok as u32 {
            return String::new();
        }
        written(|text, size, needed| sys::rodt_message_format(&message, self.0, text, size, needed))
            .unwrap_or_default()
    }
}

impl Default for Language {
    fn default() -> Language {
        Language::ENGLISH
    }
}

impl fmt::Display for Language {
    /// The tag, "fr".
    fn fmt(&self, to: &mut fmt::Formatter) -> fmt::Result {
        // SAFETY: NULL, or a catalogue of the library.
        to.pad(if self.0.is_null() { "en" } else { unsafe { constant((*self.0).language) } })
    }
}
