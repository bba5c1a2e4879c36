// SPDX-License-Identifier: Apache-2.0

use crate::error::Error;
use crate::language::Language;
use crate::record::{c_text, report, source, written, zeroed};
use crate::{sys, Date, Evidence, Ratio, Result, Status};
use std::ffi::CStr;
use std::fmt;
use std::os::raw::c_char;
use std::ptr;

/// The law of one authority, or a carrier's own limits on top of a law. It never changes; a clone is one user more of the
/// same.
#[derive(PartialEq, Eq, Hash)]
pub struct RuleSet(*const sys::rodt_rules);

// SAFETY: any number of threads may use one, and users come and go in any thread (rules.h).
unsafe impl Send for RuleSet {}
unsafe impl Sync for RuleSet {}

impl Clone for RuleSet {
    fn clone(&self) -> RuleSet {
        // SAFETY: the rule set is alive.
        RuleSet(unsafe { sys::rodt_rules_ref(self.0) })
    }
}

impl Drop for RuleSet {
    fn drop(&mut self) {
        // SAFETY: this user lets go of it once.
        unsafe { sys::rodt_rules_unref(self.0) }
    }
}

impl Default for RuleSet {
    /// The rule set that is used when a person names none, "us-fmcsr".
    fn default() -> RuleSet {
        // SAFETY: compiled-in rule sets live as long as the program.
        RuleSet(unsafe { sys::rodt_rules_find(sys::RODT_DEFAULT_RULES.as_ptr().cast()) })
    }
}

impl RuleSet {
    /// The compiled-in rule set of an id.
    pub fn find(id: &str) -> Result<RuleSet> {
        let text = c_text("rules", id)?;
        // SAFETY: the text is closed by a zero byte.
        RuleSet::given(unsafe { sys::rodt_rules_find(text.as_ptr()) })
            .ok_or_else(|| Error::plain(Status::UnknownRules as u32).about("rules"))
    }

    /// The compiled-in rule sets, in the order of the table.
    pub fn all() -> Vec<RuleSet> {
        // SAFETY: an index below the count.
        unsafe { (0..sys::rodt_rules_count()).map(|i| RuleSet(sys::rodt_rules_at(i))).collect() }
    }

    /// A carrier's own limits, the text of a table, on top of this law, which is compiled in; of air checks on another
    /// law, if one is given. A row that is laxer than the law is refused, with its line and column.
    ///
    /// name is what sentences call the table, such as the name of a file, and becomes the id.
    pub fn load(&self, name: &str, table: &str, air_law: Option<&RuleSet>) -> Result<RuleSet> {
        let name = c_text("name", name)?;
        let air = air_law.map_or(ptr::null(), RuleSet::c);
        let mut loaded = ptr::null_mut();
        // SAFETY: the table is read for its size; the laws are compiled in, or refused.
        unsafe {
            let mut error = zeroed();
            let text = table.as_ptr().cast();
            let status =
                sys::rodt_rules_load_with_air(self.0, air, name.as_ptr(), text, table.len(), &mut loaded, &mut error);
            Error::check(status, &error)?;
        }
        Ok(RuleSet(loaded))
    }

    /// "us-fmcsr", or the name of a table that was loaded.
    pub fn id(&self) -> &str {
        self.text(|rules| unsafe { sys::rodt_rules_id(rules) })
    }

    /// One line for a list.
    pub fn title(&self) -> &str {
        self.text(|rules| unsafe { sys::rodt_rules_title(rules) })
    }

    /// Who enforces it, and where.
    pub fn authority(&self) -> &str {
        self.text(|rules| unsafe { sys::rodt_rules_authority(rules) })
    }

    /// Where it is published, in one line.
    pub fn source(&self) -> String {
        // SAFETY: the rule set is alive.
        unsafe { source(sys::rodt_rules_source(self.0)) }
    }

    /// How its text was checked.
    pub fn evidence(&self) -> Evidence {
        // SAFETY: the rule set is alive.
        Evidence::of(unsafe { sys::rodt_rules_evidence(self.0) })
    }

    /// The first and the last day on which it can judge; None = open.
    pub fn dates(&self) -> (Option<Date>, Option<Date>) {
        // SAFETY: the rule set is alive.
        unsafe { (Date::from_c(sys::rodt_rules_from(self.0)), Date::from_c(sys::rodt_rules_until(self.0))) }
    }

    /// The law that a carrier's own limits are based on; None of a law.
    pub fn law(&self) -> Option<RuleSet> {
        // SAFETY: the rule set is alive, and its law is compiled in.
        RuleSet::given(unsafe { sys::rodt_rules_law(self.0) })
    }

    /// The law of its air checks; None of a law.
    pub fn air_law(&self) -> Option<RuleSet> {
        // SAFETY: the rule set is alive, and its law is compiled in.
        RuleSet::given(unsafe { sys::rodt_rules_air_law(self.0) })
    }

    /// Tells whether a stroke exactly at the limit passes.
    pub fn at_limit_passes(&self) -> bool {
        // SAFETY: the rule set is alive.
        unsafe { sys::rodt_rules_at_limit_passes(self.0) }
    }

    /// The window of reservoir pressure for the stroke test in psi, both ends inside; None = it has none.
    pub fn pressures(&self) -> Option<(Ratio, Ratio)> {
        // SAFETY: the rule set is alive.
        let (from, until) =
            unsafe { (sys::rodt_rules_pressure_from(self.0), sys::rodt_rules_pressure_until(self.0)) };
        Ratio::pressure(from).zip(Ratio::pressure(until))
    }

    /// Where the window is published, in one line; empty without one.
    pub fn pressure_source(&self) -> String {
        // SAFETY: the rule set is alive.
        unsafe { source(sys::rodt_rules_pressure_source(self.0)) }
    }

    /// The part of the marked rated stroke that limits an actuator which is not in the table; None = it says nothing of
    /// such.
    pub fn rated_share(&self) -> Option<Ratio> {
        // SAFETY: the rule set is alive.
        Ratio::from_c(unsafe { sys::rodt_rules_rated_share(self.0) })
    }

    /// What the rule set is, as JSON.
    pub fn json(&self) -> String {
        // SAFETY: the rule set is alive.
        report(|text, size, needed| unsafe { sys::rodt_rules_json_format(self.0, 0, text, size, needed) })
    }

    /// The rows of limits that are in force on a day as JSON, as `rodtravel limits --json` lists them; None = the newest.
    pub fn limits_json(&self, day: Option<Date>) -> Result<String> {
        // SAFETY: the rule set is alive.
        written(|text, size, needed| unsafe {
            sys::rodt_limits_json_format(self.0, Date::or_none(day), ptr::null(), 0, text, size, needed)
        })
        .map_err(Error::plain)
    }

    /// The rows of air checks, an object of JSON each, with sentences in a language.
    pub fn air_limits_json(&self, language: Language) -> Vec<String> {
        // SAFETY: the rule set is alive, and an index below the count.
        unsafe {
            let rows = (0..sys::rodt_rules_air_count(self.0)).map(|i| sys::rodt_rules_air_at(self.0, i));
            rows.map(|row| {
                report(|text, size, needed| {
                    sys::rodt_air_limit_json_format(row, language.c(), 0, text, size, needed)
                })
            })
            .collect()
        }
    }

    fn given(c: *const sys::rodt_rules) -> Option<RuleSet> {
        if c.is_null() {
            None
        } else {
            Some(RuleSet(c))
        }
    }

    fn text(&self, of: impl FnOnce(*const sys::rodt_rules) -> *const c_char) -> &str {
        let said = of(self.0);
        if said.is_null() {
            return "";
        }
        // SAFETY: the text lives as long as the rule set.
        unsafe { CStr::from_ptr(said) }.to_str().unwrap_or("")
    }

    pub(crate) fn c(&self) -> *const sys::rodt_rules {
        self.0
    }
}

impl fmt::Display for RuleSet {
    /// The id.
    fn fmt(&self, to: &mut fmt::Formatter) -> fmt::Result {
        to.pad(self.id())
    }
}

impl fmt::Debug for RuleSet {
    fn fmt(&self, to: &mut fmt::Formatter) -> fmt::Result {
        write!(to, "RuleSet({self})")
    }
}
