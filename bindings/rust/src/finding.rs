// SPDX-License-Identifier: Apache-2.0

use crate::error::Error;
use crate::language::Language;
use crate::record::{exact, get, report, source, zeroed};
use crate::{sys, Basis, Chamber, Date, DateOrder, Defect, Evidence, PressureUnit, Proof, Ratio, Reason, Result, RuleSet};
use crate::{Unit, Verdict};
use std::fmt;
use std::hash::{Hash, Hasher};

const NAME: &str = "rodt_finding\0";

form! {
    /// One wheel end as people wrote it. An empty text is one that the form does not have.
    Form<'a>, "rodt_form", {
        /// The mark, "30L".
        chamber: &'a str = "chamber",
        /// Length: chamber face to clevis pin, brakes released.
        released: &'a str = "released",
        /// Length: the same, full application held.
        applied: &'a str = "applied",
        /// "standard", "long"; empty = not known, and judged as standard.
        stroke_class: &'a str = "stroke_class",
        /// Length of 3/4 to 6 in, marked on the housing.
        rated_stroke: &'a str = "rated_stroke",
        /// Length: a readjustment limit marked on the housing.
        marked_limit: &'a str = "marked_limit",
        /// Reservoir pressure before the application.
        psi: &'a str = "psi",
        /// The same after it.
        psi_after: &'a str = "psi_after",
        /// Length: the smallest graduation that was read.
        division: &'a str = "division",
        /// Day of the inspection; empty = the newest text of the law.
        date: &'a str = "date",
        /// Unit of bare lengths of this wheel end, "in", "mm", "cm".
        unit: &'a str = "unit",
        /// "off" or "on" during the test.
        engine: &'a str = "engine",
        /// "released" or "on" during the test.
        spring_brake: &'a str = "spring_brake",
        /// "cold", "warm" or "hot".
        drum: &'a str = "drum",
        /// Unit of a length that names none; None = inches.
        default_unit: Option<Unit> = "style.unit",
        /// Unit of a pressure that names none; None = psi.
        pressure_unit: Option<PressureUnit> = "style.pressure_unit",
        /// "2,125" is 2 1/8.
        decimal_comma: bool = "style.decimal_comma",
        /// How dates made of numbers are read.
        date_order: Option<DateOrder> = "date_order",
        /// Day of a row that has none.
        default_date: Option<Date> = "default_day",
    }
}

impl Form<'_> {
    /// All texts for which [`RuleSet::judge`] would refuse the form, so that a page can mark every field at once.
    pub fn errors(&self) -> Vec<Error> {
        // SAFETY: the form is used before its texts are gone.
        unsafe {
            let mut form: sys::rodt_form = zeroed();
            let kept = self.put((&mut form as *mut sys::rodt_form).cast());
            let mut errors: [sys::rodt_error; sys::RODT_FORM_ERRORS_MAX as usize] = zeroed();
            let mut count = 0;
            if let Err(error) = &kept {
                return vec![error.clone()];
            }
            match sys::rodt_form_errors(&form, errors.as_mut_ptr(), errors.len(), &mut count) {
                0 => errors.iter().take(count).map(|error| Error::of(error.status, error)).collect(),
                status => vec![Error::plain(status)],
            }
        }
    }
}

/// The judgement of one wheel end. It never changes; two of the same readings by the same rule set are equal.
#[derive(Clone)]
pub struct Finding {
    pub(crate) c: sys::rodt_finding,
    pub(crate) rules: RuleSet,
    pub(crate) row: Option<Box<sys::rodt_error>>,
}

// SAFETY: it points to what its rule set keeps, and to constants.
unsafe impl Send for Finding {}
unsafe impl Sync for Finding {}

impl RuleSet {
    /// Judges one wheel end. The first text that cannot be read, or is needed and absent, is the error; a date that can
    /// be two days too.
    pub fn judge(&self, form: &Form) -> Result<Finding> {
        self.judged(form, |form, out, error| unsafe { sys::rodt_form_judge(form, self.c(), out, error) })
    }

    /// Judges a row of a file, which no text stops: what cannot be read makes the finding undetermined, is among its
    /// reasons, and is its [`Finding::error`]. An error is a mistake of the program alone.
    pub fn judge_row(&self, form: &Form) -> Result<Finding> {
        let mut row = None;
        let mut found = self.judged(form, |form, out, error| unsafe {
            let status = sys::rodt_form_judge_row(form, self.c(), out, error);
            if status == 0 && (*error).status != 0 {
                row = Some(Box::new(*error));
            }
            status
        })?;
        found.row = row;
        Ok(found)
    }

    fn judged(
        &self,
        form: &Form,
        by: impl FnOnce(*const sys::rodt_form, *mut sys::rodt_finding, *mut sys::rodt_error) -> u32,
    ) -> Result<Finding> {
        // SAFETY: the form is used before its texts are gone.
        unsafe {
            let mut c: sys::rodt_form = zeroed();
            let _kept = form.put((&mut c as *mut sys::rodt_form).cast())?;
            let mut found = Finding { c: zeroed(), rules: self.clone(), row: None };
            let mut error = zeroed();
            Error::check(by(&c, &mut found.c, &mut error), &error)?;
            Ok(found)
        }
    }
}

impl Finding {
    /// The judgement.
    pub fn verdict(&self) -> Verdict {
        Verdict::of(self.c.verdict)
    }

    /// What the divisions of the tape prove; it never changes the verdict.
    pub fn proof(&self) -> Proof {
        Proof::of(self.c.proof)
    }

    /// Why the verdict is what it is, in their order.
    pub fn reasons(&self) -> Vec<Reason> {
        crate::column::reasons_of(self.c.reasons)
    }

    /// Tells whether the finding has the reason.
    pub fn has(&self, reason: Reason) -> bool {
        // SAFETY: the finding is ours.
        unsafe { sys::rodt_finding_has(&self.c, reason as u32) }
    }

    /// The chamber as it was judged: what was assumed is filled in.
    pub fn chamber(&self) -> Chamber {
        Chamber { c: self.c.chamber }
    }

    /// The released reading in inches; None = missing or unreadable.
    pub fn released(&self) -> Option<Ratio> {
        Ratio::length(self.c.released)
    }

    /// The applied reading in inches.
    pub fn applied(&self) -> Option<Ratio> {
        Ratio::length(self.c.applied)
    }

    /// Applied less released, in inches; None if a reading is missing or they are swapped.
    pub fn applied_stroke(&self) -> Option<Ratio> {
        Ratio::length(self.c.applied_stroke)
    }

    /// The limit that judged, in inches: the stricter of the law's and a carrier's own. None = there is none.
    pub fn limit(&self) -> Option<Ratio> {
        Ratio::length(self.c.limit)
    }

    /// The law's limit, in inches.
    pub fn law_limit(&self) -> Option<Ratio> {
        Ratio::length(self.c.law_limit)
    }

    /// The limit of the long-stroke chamber of this size, where standard was assumed and one is published.
    pub fn long_limit(&self) -> Option<Ratio> {
        Ratio::length(self.c.long_limit)
    }

    /// The limit less the stroke, in inches, below zero where the stroke is over. Of an inoperative brake it is the whole
    /// limit, and nothing to spare: look at the verdict first.
    pub fn margin(&self) -> Option<Ratio> {
        Ratio::length(self.c.margin)
    }

    /// The smallest graduation, as given.
    pub fn division(&self) -> Option<Ratio> {
        Ratio::length(self.c.division)
    }

    /// The exact chance that the true stroke is over the limit; None without a proof.
    pub fn probability_over(&self) -> Option<Ratio> {
        Ratio::from_c(self.c.probability_over)
    }

    /// Pressure in psi before the application; None = not recorded.
    pub fn pressure(&self) -> Option<Ratio> {
        Ratio::pressure(self.c.pressure)
    }

    /// Pressure in psi after it.
    pub fn pressure_after(&self) -> Option<Ratio> {
        Ratio::pressure(self.c.pressure_after)
    }

    /// The day whose law judged; None = the newest text.
    pub fn date(&self) -> Option<Date> {
        Date::from_c(self.c.day)
    }

    /// How the figure of the limit was checked in its source.
    pub fn evidence(&self) -> Evidence {
        Evidence::of(self.c.evidence)
    }

    /// The same of the law's limit; only this says whether the law is confirmed.
    pub fn law_evidence(&self) -> Evidence {
        Evidence::of(self.c.law_evidence)
    }

    /// What the law's limit rests on.
    pub fn law_basis(&self) -> Basis {
        Basis::of(self.c.law_basis)
    }

    /// Where the limit is published, in one line; empty without a limit.
    pub fn source(&self) -> String {
        // SAFETY: the rule set is alive.
        unsafe { source(self.c.source) }
    }

    /// The rule set that judged.
    pub fn rules(&self) -> &RuleSet {
        &self.rules
    }

    /// How the finding counts among the defective brakes of a vehicle.
    pub fn defect(&self) -> Defect {
        // SAFETY: the finding is ours.
        Defect::of(unsafe { sys::rodt_finding_defect(&self.c) })
    }

    /// The first text that [`RuleSet::judge_row`] could not read, or needs and did not find; None = all could be read.
    pub fn error(&self) -> Option<Error> {
        self.row.as_ref().map(|row| Error::of(row.status, row))
    }

    /// The comparison in one line, in a language.
    pub fn sentence(&self, language: Language) -> String {
        // SAFETY: the rule set is alive.
        unsafe { language.said(|message| sys::rodt_finding_message(&self.c, message)) }
    }

    /// What a person says aloud after the measurement.
    pub fn spoken(&self, language: Language) -> String {
        // SAFETY: the rule set is alive.
        unsafe { language.said(|message| sys::rodt_finding_spoken_message(&self.c, message)) }
    }

    /// What the divisions of the tape prove, as a sentence; empty if no proof was asked.
    pub fn proof_sentence(&self, language: Language) -> String {
        // SAFETY: the rule set is alive.
        unsafe { language.said(|message| sys::rodt_finding_proof_message(&self.c, message)) }
    }

    /// A reason with its figures; empty if the finding does not have it.
    pub fn reason_sentence(&self, reason: Reason, language: Language) -> String {
        // SAFETY: the rule set is alive.
        unsafe { language.said(|message| sys::rodt_finding_reason_message(&self.c, reason as u32, message)) }
    }

    /// Any member by its path, as a text: "law_row.published", "chamber.size".
    pub fn get(&self, path: &str) -> Result<String> {
        // SAFETY: the rule set is alive.
        unsafe { get(NAME, (&self.c as *const sys::rodt_finding).cast(), path) }
    }

    /// Any exact number by its path: "law_row.limit".
    pub fn exact(&self, path: &str) -> Result<Option<Ratio>> {
        // SAFETY: the rule set is alive.
        unsafe { exact(NAME, (&self.c as *const sys::rodt_finding).cast(), path) }
    }

    /// The report of the wheel end as JSON, with sentences in a language.
    pub fn json(&self, language: Language) -> String {
        // SAFETY: the rule set is alive.
        report(|text, size, needed| unsafe {
            sys::rodt_finding_json_format(&self.c, language.c(), 0, text, size, needed)
        })
    }
}

impl PartialEq for Finding {
    fn eq(&self, other: &Finding) -> bool {
        self.c == other.c && self.row == other.row
    }
}

impl Eq for Finding {}

impl Hash for Finding {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.c.hash(state);
    }
}

impl fmt::Display for Finding {
    /// "3 3/8 to 4 13/16 is 1 7/16; limit 1 3/4; 5/16 to spare".
    fn fmt(&self, to: &mut fmt::Formatter) -> fmt::Result {
        to.pad(&self.sentence(Language::ENGLISH))
    }
}

impl fmt::Debug for Finding {
    fn fmt(&self, to: &mut fmt::Formatter) -> fmt::Result {
        write!(to, "Finding({self})")
    }
}
