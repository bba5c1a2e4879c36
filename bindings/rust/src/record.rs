// SPDX-License-Identifier: Apache-2.0
//! Texts and records, to the library and back.

use crate::error::Error;
use crate::sys;
use crate::{Ratio, Result, Status};
use std::borrow::Cow;
use std::ffi::{CStr, CString};
use std::mem::MaybeUninit;
use std::os::raw::{c_char, c_void};
use std::ptr;

/// A struct of C that is all zero bytes: nothing is given.
///
/// # Safety
/// Zero bytes are a value of the struct, as they are of every record of the library.
pub unsafe fn zeroed<T>() -> T {
    MaybeUninit::zeroed().assume_init()
}

/// A text of the library that lives as long as the program.
///
/// # Safety
/// The pointer is NULL, or that of such a text.
pub unsafe fn constant(text: *const c_char) -> &'static str {
    if text.is_null() {
        return "";
    }
    CStr::from_ptr(text).to_str().unwrap_or("")
}

/// A text that is kept for the time of a call; one with a zero byte is refused.
pub fn c_text(field: &str, text: &str) -> Result<CString> {
    CString::new(text).map_err(|_| Error::own(Status::Argument, field, "a text of the library has no zero character"))
}

/// What a function of the library writes, or its status.
pub fn written(format: impl Fn(*mut c_char, usize, *mut usize) -> u32) -> std::result::Result<String, u32> {
    let mut room = vec![0u8; 512];
    loop {
        let mut needed = 0;
        let status = format(room.as_mut_ptr().cast(), room.len(), &mut needed);
        if status == Status::Ok as u32 {
            room.truncate(needed.saturating_sub(1));
            return Ok(String::from_utf8_lossy(&room).into_owned());
        }
        if status != Status::Space as u32 || needed <= room.len() {
            return Err(status);
        }
        room = vec![0; needed];
    }
}

/// A record by its name in C, which is closed by a zero byte.
pub fn record(name: &'static str) -> *const sys::rodt_record {
    // SAFETY: the name is closed by a zero byte.
    unsafe { sys::rodt_record_find(name.as_ptr().cast()) }
}

/// A value of a form, as a text; an empty one is not given.
pub trait Given {
    /// The text.
    fn given(&self) -> Cow<'_, str>;
}

impl Given for &str {
    fn given(&self) -> Cow<'_, str> {
        Cow::Borrowed(self)
    }
}

impl Given for bool {
    fn given(&self) -> Cow<'_, str> {
        Cow::Borrowed(if *self { "true" } else { "" })
    }
}

impl Given for u32 {
    fn given(&self) -> Cow<'_, str> {
        Cow::Owned(self.to_string())
    }
}

impl<T: ToString> Given for Option<T> {
    fn given(&self) -> Cow<'_, str> {
        Cow::Owned(self.as_ref().map_or_else(String::new, T::to_string))
    }
}

/// Texts that a record points to, for the time of a call.
#[derive(Default)]
pub struct Texts(Vec<CString>);

impl Texts {
    /// Sets a member of a record by the reader of its kind. name and path are closed by a zero byte.
    ///
    /// # Safety
    /// The value is a record of that name, and is not used after the texts.
    pub unsafe fn set(
        &mut self,
        (name, path): (&'static str, &'static str),
        value: *mut c_void,
        field: &str,
        text: &str,
    ) -> Result<()> {
        if text.is_empty() {
            return Ok(());
        }
        let text = c_text(field, text)?;
        let mut error = zeroed();
        let status = sys::rodt_record_set_text(record(name), value, path.as_ptr().cast(), text.as_ptr(), &mut error);
        self.0.push(text);
        Error::check(status, &error).map_err(|error| error.about(field))
    }
}

/// A form: a struct whose fields set members of a record.
macro_rules! form {
    ($(#[$doc:meta])* $name:ident $(<$life:lifetime>)?, $c:literal, {
        $($(#[$each:meta])* $field:ident: $kind:ty = $path:literal,)*
    }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
        pub struct $name $(<$life>)? {
            $($(#[$each])* pub $field: $kind,)*
        }

        impl $(<$life>)? $name $(<$life>)? {
            /// Sets the members of the record, which is used before the texts are gone.
            pub(crate) unsafe fn put(&self, value: *mut std::os::raw::c_void) -> crate::Result<crate::record::Texts> {
                use crate::record::Given;
                let mut texts = crate::record::Texts::default();
                $(texts.set(
                    (concat!($c, "\0"), concat!($path, "\0")), value, stringify!($field), &self.$field.given(),
                )?;)*
                Ok(texts)
            }
        }
    };
}

/// A member by its path, as a text.
///
/// # Safety
/// The value is a record of that name.
pub unsafe fn get(name: &'static str, value: *const c_void, path: &str) -> Result<String> {
    let at = c_text("path", path)?;
    written(|text, size, needed| sys::rodt_record_text_format(record(name), value, at.as_ptr(), text, size, needed))
        .map_err(|_| Error::own(Status::Argument, path, "no text has this path"))
}

/// An exact number by its path; None = it is not given.
///
/// # Safety
/// The value is a record of that name.
pub unsafe fn exact(name: &'static str, value: *const c_void, path: &str) -> Result<Option<Ratio>> {
    const LENGTH: u32 = 0; // RODT_MEMBER_KIND_LENGTH, and the two after it: a numerator and a denominator
    const RATIO: u32 = 2;
    let name_of = c_text("path", path)?;
    let mut at = ptr::null();
    let member = sys::rodt_record_locate(record(name), value, name_of.as_ptr(), &mut at);
    if member.is_null() || !(LENGTH..=RATIO).contains(&(*member).kind) {
        return Err(Error::own(Status::Argument, path, "no exact number has this path"));
    }
    Ok(Ratio::from_c(*at.cast::<sys::rodt_ratio>()))
}

/// All of a record as JSON.
///
/// # Safety
/// The value is a record of that name.
pub unsafe fn json(name: &'static str, value: *const c_void) -> String {
    report(|text, size, needed| sys::rodt_record_json_format(record(name), value, 0, text, size, needed))
}

/// A report as JSON; null where there is nothing to report.
pub fn report(format: impl Fn(*mut c_char, usize, *mut usize) -> u32) -> String {
    written(format).unwrap_or_else(|_| "null".into())
}

/// A source in one line; empty without one.
///
/// # Safety
/// The pointer is NULL, or that of a source whose rule set is alive.
pub unsafe fn source(of: *const sys::rodt_source) -> String {
    if of.is_null() {
        return String::new();
    }
    written(|text, size, needed| sys::rodt_source_format(of, text, size, needed)).unwrap_or_default()
}

/// An enumeration by its name in C, which is closed by a zero byte.
pub fn enumeration(name: &'static str) -> *const sys::rodt_enumeration {
    // SAFETY: the name is closed by a zero byte.
    unsafe { sys::rodt_enumeration_find(name.as_ptr().cast()) }
}

/// The stable word of a number.
pub fn word(name: &'static str, number: i64) -> &'static str {
    // SAFETY: rows live as long as the program.
    unsafe {
        let row = sys::rodt_enumerator_of(enumeration(name), number);
        if row.is_null() {
            ""
        } else {
            constant((*row).word)
        }
    }
}

/// The number of a word.
pub fn number(name: &'static str, word: &str) -> Option<i64> {
    // SAFETY: the word is read for its size, and rows live as long as the program.
    unsafe {
        let row = sys::rodt_enumerator_find_n(enumeration(name), word.as_ptr().cast(), word.len());
        if row.is_null() {
            None
        } else {
            Some((*row).number)
        }
    }
}

/// An enumeration of stable words.
macro_rules! words {
    ($(#[$doc:meta])* $name:ident, $c:literal, { $($(#[$each:meta])* $variant:ident = $number:literal,)* }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        #[non_exhaustive]
        pub enum $name {
            $($(#[$each])* $variant = $number,)*
        }

        impl $name {
            /// All of them, in the order of their numbers.
            pub const ALL: &'static [$name] = &[$($name::$variant,)*];

            /// The stable word.
            pub fn name(self) -> &'static str {
                crate::record::word(concat!($c, "\0"), self as i64)
            }

            // The library is linked with the words that it has itself, so each number is one of them.
            #[allow(dead_code)]
            pub(crate) fn of(number: u32) -> $name {
                Self::ALL.iter().copied().find(|each| *each as u32 == number).unwrap_or(Self::ALL[0])
            }
        }

        impl std::fmt::Display for $name {
            fn fmt(&self, to: &mut std::fmt::Formatter) -> std::fmt::Result {
                to.pad(self.name())
            }
        }

        impl std::str::FromStr for $name {
            type Err = crate::Error;

            /// Finds a word, whatever its capitals and the blanks around it.
            fn from_str(word: &str) -> crate::Result<$name> {
                let number = crate::record::number(concat!($c, "\0"), word);
                Self::ALL.iter().copied().find(|each| Some(*each as i64) == number).ok_or_else(|| {
                    crate::Error::own(crate::Status::Syntax, "", "no word of the library is called so")
                })
            }
        }
    };
}

#[cfg(test)]
mod tests {
    use crate::sys;

    // The declarations are those of the library: each member of its description is there, and in its place.
    #[test]
    fn layouts() {
        let mut compared = 0;
        for (name, size, members) in sys::layouts() {
            let c = super::c_text("", name).unwrap();
            unsafe {
                let record = sys::rodt_record_find(c.as_ptr());
                if record.is_null() {
                    assert!(name.starts_with("Arrow"), "{name}");
                    continue;
                }
                assert_eq!(sys::rodt_record_size(record), size, "{name}");
                assert_eq!(sys::rodt_member_count(record), members.len(), "{name}");
                for (i, (member, place)) in members.iter().enumerate() {
                    let said = &*sys::rodt_member_at(record, i);
                    assert_eq!((super::constant(said.name), said.offset as usize), (*member, *place), "{name}");
                    compared += 1;
                }
            }
        }
        assert!(compared > 200);
    }
}
