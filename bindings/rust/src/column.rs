// SPDX-License-Identifier: Apache-2.0

use crate::error::Error;
use crate::record::zeroed;
use crate::{sys, Chamber, ColumnFlag, Form, Reason, Result, RuleSet, Status, Verdict};
use std::fmt;
use std::ptr;

/// Units of a column of lengths in an inch: 5 nm, which hold what tapes, calipers and gauges show exactly.
pub const PER_INCH: i32 = sys::RODT_COLUMN_PER_INCH as i32;
/// The same in 1/64 in.
pub const PER_64TH: i32 = sys::RODT_COLUMN_PER_64TH as i32;
/// The same in a millimetre.
pub const PER_MM: i32 = sys::RODT_COLUMN_PER_MM as i32;
/// Units of a column of pressures in a psi.
pub const PER_PSI: i32 = sys::RODT_COLUMN_PER_PSI as i32;
/// In a column of strokes: no stroke.
pub const NO_STROKE: i32 = sys::RODT_COLUMN_NO_STROKE as i32;
/// In a column of limits: no limit, or one that is no whole number of units.
pub const NO_LIMIT: i32 = sys::RODT_COLUMN_NO_LIMIT as i32;
/// The code of a missing chamber, which every plan has.
pub const CHAMBER_MISSING: u8 = sys::RODT_COLUMN_CHAMBER_MISSING as u8;
/// The code of an unreadable chamber.
pub const CHAMBER_UNREADABLE: u8 = sys::RODT_COLUMN_CHAMBER_UNREADABLE as u8;

/// All that columns are judged by, worked out beforehand.
pub struct Plan(*mut sys::rodt_column_plan);

// SAFETY: any number of threads may judge with one plan, and adding takes it alone (column.h).
unsafe impl Send for Plan {}
unsafe impl Sync for Plan {}

impl Drop for Plan {
    fn drop(&mut self) {
        // SAFETY: nobody uses it any more.
        unsafe { sys::rodt_column_plan_free(self.0) }
    }
}

/// Columns of many wheel ends, all of one length. They are read where they are, without a copy.
#[derive(Clone, Copy, Debug, Default)]
pub struct Columns<'a> {
    /// In [`PER_INCH`].
    pub released: &'a [i32],
    /// In [`PER_INCH`].
    pub applied: &'a [i32],
    /// Codes of the plan.
    pub chamber: &'a [u8],
    /// In [`PER_PSI`]; None = every row has the pressure of the plan.
    pub psi: Option<&'a [i32]>,
    /// Days since 1970-01-01; None = every row has the day of the plan.
    pub date: Option<&'a [i32]>,
    /// A bitmap as Arrow has it, bit i % 8 of byte i / 8 for row i: 0 = the cell is missing. None = none is.
    pub released_valid: Option<&'a [u8]>,
    /// The same for applied.
    pub applied_valid: Option<&'a [u8]>,
    /// The same for chamber.
    pub chamber_valid: Option<&'a [u8]>,
    /// The same for psi.
    pub psi_valid: Option<&'a [u8]>,
    /// The same for date.
    pub date_valid: Option<&'a [u8]>,
}

/// Columns as long as those that were judged.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Answers {
    /// In [`PER_INCH`], or [`NO_STROKE`].
    pub stroke: Vec<i32>,
    /// Numbers: [`verdict_of`].
    pub verdict: Vec<u8>,
    /// Sets: [`reasons_of`].
    pub reasons: Vec<u64>,
    /// Sets: [`flags_of`].
    pub flags: Vec<u8>,
    /// In [`PER_INCH`], or [`NO_LIMIT`].
    pub limit: Vec<i32>,
}

/// The verdict of a number in a column.
pub fn verdict_of(number: u8) -> Verdict {
    Verdict::of(number.into())
}

/// The reasons of a set in a column.
pub fn reasons_of(set: u64) -> Vec<Reason> {
    Reason::ALL.iter().copied().filter(|reason| set >> *reason as u32 & 1 != 0).collect()
}

/// The flags of a set in a column.
pub fn flags_of(set: u8) -> Vec<ColumnFlag> {
    ColumnFlag::ALL.iter().copied().filter(|flag| u32::from(set) & *flag as u32 != 0).collect()
}

impl RuleSet {
    /// Makes a plan. common is what all rows share: unit, day, pressures and the conditions of the test; readings and a
    /// chamber in it are not used.
    pub fn plan(&self, common: &Form) -> Result<Plan> {
        let common = Form { chamber: "", released: "", applied: "", ..*common };
        if let Some(error) = common.errors().into_iter().find(|error| error.status() != Status::Empty) {
            return Err(error);
        }
        // SAFETY: the form is used before its texts are gone.
        unsafe {
            let mut form: sys::rodt_form = zeroed();
            let _kept = common.put((&mut form as *mut sys::rodt_form).cast())?;
            let (mut reading, mut error) = (zeroed(), zeroed());
            match sys::rodt_form_parse(&form, &mut reading, ptr::null_mut()) {
                0 => (),
                status => return Err(Error::plain(status)),
            }
            let mut made = Plan(ptr::null_mut());
            Error::check(sys::rodt_column_plan_new(self.c(), &reading, &mut made.0, &mut error), &error)?;
            Ok(made)
        }
    }
}

impl Plan {
    /// Gives the code of a chamber in columns that are judged with the plan, of which 254 fit.
    pub fn add(&mut self, chamber: &Chamber) -> Result<u8> {
        // SAFETY: the plan is ours alone.
        unsafe {
            let (mut code, mut error) = (0, zeroed());
            Error::check(sys::rodt_column_plan_add(self.0, &chamber.c, &mut code, &mut error), &error)?;
            u8::try_from(code).map_err(|_| Error::plain(Status::Internal as u32))
        }
    }

    /// Judges every row as [`RuleSet::judge`] would, to the last reason. No cell makes it fail: one that holds no reading,
    /// pressure, day or code makes its row undetermined. out keeps its columns where they have room for the rows.
    pub fn judge(&self, columns: &Columns, out: &mut Answers) -> Result<()> {
        let rows = columns.released.len();
        let c = columns.c(rows)?;
        out.resize(rows);
        if rows == 0 {
            return Ok(());
        }
        // SAFETY: each column is as long as the rows, which c() has looked at, and resize() has made.
        unsafe {
            let mut to: sys::rodt_column_out = zeroed();
            to.stroke = out.stroke.as_mut_ptr();
            to.verdict = out.verdict.as_mut_ptr();
            to.reasons = out.reasons.as_mut_ptr();
            to.flags = out.flags.as_mut_ptr();
            to.limit = out.limit.as_mut_ptr();
            let mut error = zeroed();
            Error::check(sys::rodt_column_plan_judge(self.0, &c, rows, &to, &mut error), &error)
        }
    }
}

impl Answers {
    fn resize(&mut self, rows: usize) {
        self.stroke.resize(rows, 0);
        self.verdict.resize(rows, 0);
        self.reasons.resize(rows, 0);
        self.flags.resize(rows, 0);
        self.limit.resize(rows, 0);
    }
}

fn of_rows<'a, T>(field: &str, column: &'a [T], rows: usize) -> Result<&'a [T]> {
    if column.len() == rows {
        return Ok(column);
    }
    Err(Error::own(Status::Argument, field, &format!("{rows} rows were expected")))
}

fn bits(field: &str, bitmap: Option<&[u8]>, rows: usize) -> Result<sys::rodt_column_bits> {
    let made = match bitmap {
        None => ptr::null(),
        Some(bitmap) if bitmap.len() >= (rows + 7) / 8 => bitmap.as_ptr(),
        Some(_) => return Err(Error::own(Status::Argument, field, "a bitmap has a bit for each row")),
    };
    Ok(sys::rodt_column_bits { bits: made, from: 0 })
}

impl Columns<'_> {
    /// The columns in C; one of another length is refused.
    fn c(&self, rows: usize) -> Result<sys::rodt_column_in> {
        // SAFETY: zero bytes are no columns.
        let mut made: sys::rodt_column_in = unsafe { zeroed() };
        made.released = self.released.as_ptr();
        made.applied = of_rows("applied", self.applied, rows)?.as_ptr();
        made.chamber = of_rows("chamber", self.chamber, rows)?.as_ptr();
        if let Some(psi) = self.psi {
            made.psi = of_rows("psi", psi, rows)?.as_ptr();
        }
        if let Some(date) = self.date {
            made.date = of_rows("date", date, rows)?.as_ptr();
        }
        made.released_valid = bits("released", self.released_valid, rows)?;
        made.applied_valid = bits("applied", self.applied_valid, rows)?;
        made.chamber_valid = bits("chamber", self.chamber_valid, rows)?;
        made.psi_valid = bits("psi", self.psi_valid, rows)?;
        made.date_valid = bits("date", self.date_valid, rows)?;
        Ok(made)
    }
}

impl fmt::Debug for Plan {
    fn fmt(&self, to: &mut fmt::Formatter) -> fmt::Result {
        to.write_str("Plan")
    }
}
