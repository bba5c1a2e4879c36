// SPDX-License-Identifier: Apache-2.0
#![doc = include_str!("../README.md")]
#![warn(missing_docs)]

#[macro_use]
mod record;
mod air;
mod chamber;
mod column;
mod error;
mod finding;
mod language;
mod ratio;
mod read;
mod rules;
mod sys;
mod vehicle;
mod words;

pub use air::{AirFinding, AirForm};
pub use chamber::{Candidate, Chamber, Clues, Identification, LimitAnswer, Marks};
pub use column::{flags_of, reasons_of, verdict_of, Answers, Columns, Plan};
pub use column::{CHAMBER_MISSING, CHAMBER_UNREADABLE, NO_LIMIT, NO_STROKE, PER_64TH, PER_INCH, PER_MM, PER_PSI};
pub use error::Error;
pub use finding::{Finding, Form};
pub use language::Language;
pub use ratio::{Date, Ratio};
pub use read::{read_date, read_length, read_pressure, read_seconds, write_length};
pub use rules::RuleSet;
pub use vehicle::{judge_vehicle, Count, Tally, Vehicle, WheelEnd};
pub use words::*;

/// What a call gives, or what it refuses.
pub type Result<T> = std::result::Result<T, Error>;

/// The version of the library inside, "major.minor.patch".
pub fn version() -> &'static str {
    // SAFETY: the text is constant.
    unsafe { record::constant(sys::rodt_version()) }
}

/// The day, "2026-11-24", on which a row of the tables was last changed or read again in its source.
pub fn tables_edition() -> &'static str {
    // SAFETY: the text is constant.
    unsafe { record::constant(sys::rodt_tables_edition()) }
}
