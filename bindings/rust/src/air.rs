// SPDX-License-Identifier: Apache-2.0

use crate::error::Error;
use crate::language::Language;
use crate::record::{exact, get, report, zeroed};
use crate::{sys, AirMissing, AirResult, DateOrder, PressureUnit, Ratio, Result, RuleSet};
use std::fmt;

const NAME: &str = "rodt_air_finding\0";

form! {
    /// One check of the air system as people wrote it. An empty text is one that the form does not have.
    AirForm<'a>, "rodt_air_form", {
        /// "warning", "loss-applied": a word of AirCheck; needed.
        check: &'a str = "check",
        /// "single", "combination", "bus".
        vehicle: &'a str = "vehicle",
        /// Whole number, 0 to 99.
        towed_units: &'a str = "towed_units",
        /// A day, or a year by itself.
        built: &'a str = "built",
        /// In psi: warning, cut-out, cut-in, valves; or "never".
        pressure: &'a str = "pressure",
        /// In psi: loss, reserve, build-up: at the start.
        before: &'a str = "before",
        /// In psi: at the end.
        after: &'a str = "after",
        /// In psi: the governor's cut-out.
        cut_out: &'a str = "cut_out",
        /// In psi: the governor's cut-in.
        cut_in: &'a str = "cut_in",
        /// "45", "1:30"; of a build-up also "never".
        seconds: &'a str = "seconds",
        /// "pressures", "warning", "applications", "recovery".
        span: &'a str = "span",
        /// Full applications, 0 to 99.
        applications: &'a str = "applications",
        /// Cubic inches.
        actual_volume: &'a str = "actual_volume",
        /// Cubic inches.
        required_volume: &'a str = "required_volume",
        /// "yes", "no", "never" where it may be said.
        answer: &'a str = "answer",
        /// Unit of a pressure that names none; None = psi.
        pressure_unit: Option<PressureUnit> = "style.pressure_unit",
        /// "31,5" is 31 1/2.
        decimal_comma: bool = "style.decimal_comma",
        /// How a day of build made of numbers is read.
        date_order: Option<DateOrder> = "date_order",
    }
}

/// The judgement of an air check. It never changes.
#[derive(Clone)]
pub struct AirFinding {
    c: sys::rodt_air_finding,
    _rules: RuleSet,
}

// SAFETY: it points to what its rule set keeps.
unsafe impl Send for AirFinding {}
unsafe impl Sync for AirFinding {}

impl RuleSet {
    /// Judges a check by every row that is for it. What is missing makes it undetermined, and is no error.
    pub fn judge_air(&self, form: &AirForm) -> Result<AirFinding> {
        // SAFETY: the form is used before its texts are gone.
        unsafe {
            let mut c: sys::rodt_air_form = zeroed();
            let _kept = form.put((&mut c as *mut sys::rodt_air_form).cast())?;
            let mut found = AirFinding { c: zeroed(), _rules: self.clone() };
            let mut error = zeroed();
            Error::check(sys::rodt_air_form_judge(&c, self.c(), &mut found.c, &mut error), &error)?;
            Ok(found)
        }
    }
}

impl AirFinding {
    /// The judgement.
    pub fn result(&self) -> AirResult {
        AirResult::of(self.c.result)
    }

    /// What the law alone says; a carrier's figure can only be stricter.
    pub fn law_result(&self) -> AirResult {
        AirResult::of(self.c.law_result)
    }

    /// What decides, of an undetermined one.
    pub fn missing(&self) -> AirMissing {
        AirMissing::of(self.c.missing)
    }

    /// A major defect by the rule set's own ranking.
    pub fn is_major(&self) -> bool {
        self.c.major
    }

    /// A minor one; neither = the rule set does not rank it.
    pub fn is_minor(&self) -> bool {
        self.c.minor
    }

    /// Measured is exactly the bound.
    pub fn is_at_limit(&self) -> bool {
        self.c.at_limit
    }

    /// What was measured, in the row's measure; None = nothing.
    pub fn measured(&self) -> Option<Ratio> {
        Ratio::from_c(self.c.measured)
    }

    /// The bound that judged, in the row's measure; None = yes or no.
    pub fn allowed(&self) -> Option<Ratio> {
        Ratio::from_c(self.c.allowed)
    }

    /// "the low-pressure warning came on at 62 psi; required: not less than 60 psi: good", in a language.
    pub fn sentence(&self, language: Language) -> String {
        // SAFETY: the rule set is alive.
        unsafe { language.said(|message| sys::rodt_air_finding_message(&self.c, message)) }
    }

    /// What a person says aloud after the check.
    pub fn spoken(&self, language: Language) -> String {
        // SAFETY: the rule set is alive.
        unsafe { language.said(|message| sys::rodt_air_finding_spoken_message(&self.c, message)) }
    }

    /// What would have been defective; empty without a row.
    pub fn edge(&self, language: Language) -> String {
        // SAFETY: the rule set is alive.
        unsafe { language.said(|message| sys::rodt_air_finding_edge_message(&self.c, message)) }
    }

    /// What is to be known beside the finding; empty where there is nothing to say.
    pub fn note(&self, language: Language) -> String {
        // SAFETY: the rule set is alive.
        unsafe { language.said(|message| sys::rodt_air_finding_note_message(&self.c, message)) }
    }

    /// Any member by its path, as a text: "row.published", "row.source.document".
    pub fn get(&self, path: &str) -> Result<String> {
        // SAFETY: the rule set is alive.
        unsafe { get(NAME, (&self.c as *const sys::rodt_air_finding).cast(), path) }
    }

    /// Any exact number by its path: "row.value".
    pub fn exact(&self, path: &str) -> Result<Option<Ratio>> {
        // SAFETY: the rule set is alive.
        unsafe { exact(NAME, (&self.c as *const sys::rodt_air_finding).cast(), path) }
    }

    /// The report of the check as JSON, with sentences in a language.
    pub fn json(&self, language: Language) -> String {
        // SAFETY: the rule set is alive.
        report(|text, size, needed| unsafe {
            sys::rodt_air_finding_json_format(&self.c, language.c(), 0, text, size, needed)
        })
    }
}

impl PartialEq for AirFinding {
    fn eq(&self, other: &AirFinding) -> bool {
        self.c == other.c
    }
}

impl Eq for AirFinding {}

impl std::hash::Hash for AirFinding {
    fn hash<H: std::hash::Hasher>(&self, state: &mut H) {
        self.c.hash(state);
    }
}

impl fmt::Display for AirFinding {
    fn fmt(&self, to: &mut fmt::Formatter) -> fmt::Result {
        to.pad(&self.sentence(Language::ENGLISH))
    }
}

impl fmt::Debug for AirFinding {
    fn fmt(&self, to: &mut fmt::Formatter) -> fmt::Result {
        write!(to, "AirFinding({self})")
    }
}
