// SPDX-License-Identifier: Apache-2.0

use crate::error::Error;
use crate::language::Language;
use crate::record::{c_text, get, json, report, source, written, zeroed};
use crate::{sys, Basis, Clue, Date, Evidence, Family, Observation, Ratio, Result, RuleSet, StrokeClass};
use std::ffi::CStr;
use std::fmt;

const ANSWER: &str = "rodt_limit_answer\0";

/// A service brake chamber, as far as it is known.
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub struct Chamber {
    pub(crate) c: sys::rodt_chamber,
}

form! {
    /// What else is marked on a chamber; an empty text = no mark was read.
    Marks<'a>, "rodt_chamber", {
        /// "standard", "long".
        stroke_class: &'a str = "stroke_class",
        /// Length of 3/4 to 6 in: full travel, not the limit.
        rated_stroke: &'a str = "rated_stroke",
        /// Length: a readjustment limit.
        marked_limit: &'a str = "marked_limit",
    }
}

impl Chamber {
    /// Reads a mark as people write it: "30L", "T30", "24/30 LS", "bolt C", "roto 30".
    pub fn read(mark: &str) -> Result<Chamber> {
        let text = c_text("", mark)?;
        // SAFETY: the text is closed by a zero byte, and the result is ours.
        unsafe {
            let mut made = Chamber { c: zeroed() };
            let mut error = zeroed();
            Error::check(sys::rodt_chamber_parse(text.as_ptr(), &mut made.c, &mut error), &error)?;
            Ok(made)
        }
    }

    /// The chamber with marks more.
    pub fn marked(mut self, marks: &Marks) -> Result<Chamber> {
        // SAFETY: a chamber points to nothing.
        unsafe { marks.put((&mut self.c as *mut sys::rodt_chamber).cast())? };
        Ok(self)
    }

    /// How the housing is built.
    pub fn family(&self) -> Family {
        Family::of(self.c.family)
    }

    /// Standard or long stroke; one that is not known is judged as standard.
    pub fn stroke_class(&self) -> StrokeClass {
        StrokeClass::of(self.c.stroke_class)
    }

    /// The type number "30" or the letter "C"; empty = not known.
    pub fn size(&self) -> &str {
        // SAFETY: a size is closed by a zero byte.
        unsafe { CStr::from_ptr(self.c.size.as_ptr()) }.to_str().unwrap_or("")
    }

    /// The spring brake part of a double mark such as 24/30; empty = none was said.
    pub fn spring_size(&self) -> &str {
        // SAFETY: a size is closed by a zero byte.
        unsafe { CStr::from_ptr(self.c.spring_size.as_ptr()) }.to_str().unwrap_or("")
    }

    /// The full travel marked on the housing, in inches; None = no mark was read.
    pub fn rated_stroke(&self) -> Option<Ratio> {
        Ratio::length(self.c.rated_stroke)
    }

    /// A readjustment limit marked on the housing, in inches.
    pub fn marked_limit(&self) -> Option<Ratio> {
        Ratio::length(self.c.marked_limit)
    }

    /// All of the chamber as JSON.
    pub fn json(&self) -> String {
        // SAFETY: it points to nothing.
        unsafe { json("rodt_chamber\0", (&self.c as *const sys::rodt_chamber).cast()) }
    }
}

impl fmt::Display for Chamber {
    /// What [`Chamber::read`] reads back, "clamp 30 long"; empty if nothing is known.
    fn fmt(&self, to: &mut fmt::Formatter) -> fmt::Result {
        // SAFETY: the chamber is ours.
        let said = written(|text, size, needed| unsafe { sys::rodt_chamber_format(&self.c, text, size, needed) });
        to.pad(&said.unwrap_or_default())
    }
}

impl fmt::Debug for Chamber {
    fn fmt(&self, to: &mut fmt::Formatter) -> fmt::Result {
        write!(to, "Chamber({self})")
    }
}

/// The limit for a chamber on a day, and what it rests on.
#[derive(Clone)]
pub struct LimitAnswer {
    c: sys::rodt_limit_answer,
    _rules: RuleSet,
}

// SAFETY: it points to what its rule set keeps.
unsafe impl Send for LimitAnswer {}
unsafe impl Sync for LimitAnswer {}

impl RuleSet {
    /// Finds the limit for a chamber on a day; None = the newest text. Unknown facts are taken on the strict side. An
    /// answer without a limit is no error.
    pub fn find_limit(&self, chamber: &Chamber, day: Option<Date>) -> Result<LimitAnswer> {
        // SAFETY: all are ours.
        unsafe {
            let mut made = LimitAnswer { c: zeroed(), _rules: self.clone() };
            let mut error = zeroed();
            let status =
                sys::rodt_rules_find_limit(self.c(), &chamber.c, Date::or_none(day), &mut made.c, &mut error);
            Error::check(status, &error)?;
            Ok(made)
        }
    }

    /// Lists the chambers that can be the one that was seen, the best first; day as of [`RuleSet::find_limit`].
    pub fn identify(&self, clues: &Clues, day: Option<Date>) -> Result<Identification> {
        // SAFETY: all are ours; clues point to nothing.
        unsafe {
            let mut c: sys::rodt_clues = zeroed();
            clues.put((&mut c as *mut sys::rodt_clues).cast())?;
            let day = Date::or_none(day);
            let mut made = Identification { c: Box::new(zeroed()), day, rules: self.clone() };
            let mut error = zeroed();
            Error::check(sys::rodt_clues_identify(&c, self.c(), day, &mut *made.c, &mut error), &error)?;
            Ok(made)
        }
    }
}

impl LimitAnswer {
    /// The limit that judges, in inches: the stricter of the law's and a carrier's own; None = none is published.
    pub fn limit(&self) -> Option<Ratio> {
        Ratio::length(self.c.limit)
    }

    /// The law's limit, in inches.
    pub fn law_limit(&self) -> Option<Ratio> {
        Ratio::length(self.c.law_limit)
    }

    /// What the law's limit rests on.
    pub fn law_basis(&self) -> Basis {
        Basis::of(self.c.law_basis)
    }

    /// How the figure of the limit was checked in its source.
    pub fn evidence(&self) -> Evidence {
        Evidence::of(self.c.evidence)
    }

    /// The same of the law's limit; only this says whether the law is confirmed.
    pub fn law_evidence(&self) -> Evidence {
        Evidence::of(self.c.law_evidence)
    }

    /// Where the limit is published, in one line; empty without one.
    pub fn source(&self) -> String {
        // SAFETY: the rule set is alive.
        unsafe { source(self.c.source) }
    }

    /// The family was not known.
    pub fn assumed_clamp(&self) -> bool {
        self.c.assumed_clamp
    }

    /// The stroke class was not known.
    pub fn assumed_standard(&self) -> bool {
        self.c.assumed_standard
    }

    /// Marks contradict each other; the strict side is given.
    pub fn conflicting_marks(&self) -> bool {
        self.c.conflicting_marks
    }

    /// Any member by its path, as a text: "law_row.published".
    pub fn get(&self, path: &str) -> Result<String> {
        // SAFETY: the rule set is alive.
        unsafe { get(ANSWER, (&self.c as *const sys::rodt_limit_answer).cast(), path) }
    }

    /// All of the answer as JSON.
    pub fn json(&self) -> String {
        // SAFETY: the rule set is alive.
        unsafe { json(ANSWER, (&self.c as *const sys::rodt_limit_answer).cast()) }
    }
}

impl fmt::Debug for LimitAnswer {
    fn fmt(&self, to: &mut fmt::Formatter) -> fmt::Result {
        write!(to, "LimitAnswer({})", self.json())
    }
}

form! {
    /// What a person can see of a chamber; an empty text = not looked at.
    Clues<'a>, "rodt_clues", {
        /// What the stamped text says, as a mark.
        stamp: &'a str = "stamp",
        /// How the housing is built, by looking: "clamp", "bolt".
        family: &'a str = "family",
        /// Shape of the ports: "round", "square".
        port: &'a str = "port",
        /// Tag under a clamp bolt: "none", "trapezoid".
        tag: &'a str = "tag",
        /// Length: the rated stroke that is marked.
        rated_stroke: &'a str = "rated_stroke",
        /// Length: outside diameter by tape.
        diameter: &'a str = "diameter",
        /// Length: graduation it was read to; empty = 1/8 in.
        diameter_division: &'a str = "diameter_division",
    }
}

/// One chamber that the clues allow.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Candidate {
    /// Family, size, class; rated stroke where it decides.
    pub chamber: Chamber,
    /// In inches, under the rule set; None = none is published.
    pub limit: Option<Ratio>,
    /// In inches, as published; None = none.
    pub diameter: Option<Ratio>,
    /// How far the tape reading is from it; None = no reading.
    pub diameter_distance: Option<Ratio>,
    /// Clues that support it.
    pub clues_for: Vec<Clue>,
    /// Clues that contradict it.
    pub clues_against: Vec<Clue>,
}

/// The answer to [`RuleSet::identify`].
#[derive(Clone)]
pub struct Identification {
    c: Box<sys::rodt_identification>,
    day: sys::rodt_date,
    rules: RuleSet,
}

fn clues_of(set: u32) -> Vec<Clue> {
    Clue::ALL.iter().copied().filter(|clue| set & *clue as u32 != 0).collect()
}

impl Identification {
    /// The best first; none = no chamber fits that the tables know.
    pub fn candidates(&self) -> Vec<Candidate> {
        let found = self.c.candidates.iter().take(self.c.count);
        found
            .map(|of| Candidate {
                chamber: Chamber { c: of.chamber },
                limit: Ratio::length(of.limit),
                diameter: Ratio::length(of.diameter),
                diameter_distance: Ratio::length(of.diameter_distance),
                clues_for: clues_of(of.clues_for),
                clues_against: clues_of(of.clues_against),
            })
            .collect()
    }

    /// The smallest limit of a candidate, in inches: judge by it until one of them is left. While a candidate is
    /// [`without_limit`](Identification::without_limit), it is no safe side.
    pub fn strict_limit(&self) -> Option<Ratio> {
        Ratio::length(self.c.strict_limit)
    }

    /// How many candidates have no limit under the rule set.
    pub fn without_limit(&self) -> u32 {
        self.c.without_limit
    }

    /// Clues that cannot all be true; none = they agree.
    pub fn contradiction(&self) -> Vec<Clue> {
        clues_of(self.c.contradiction)
    }

    /// What to look at next.
    pub fn next_observation(&self) -> Observation {
        Observation::of(self.c.next_observation)
    }

    /// The report as JSON, with sentences in a language.
    pub fn json(&self, language: Language) -> String {
        // SAFETY: the rule set is alive.
        report(|text, size, needed| unsafe {
            let (rules, catalogue) = (self.rules.c(), language.c());
            sys::rodt_identification_json_format(&*self.c, rules, self.day, catalogue, 0, text, size, needed)
        })
    }
}

impl fmt::Debug for Identification {
    fn fmt(&self, to: &mut fmt::Formatter) -> fmt::Result {
        write!(to, "Identification({:?})", self.candidates())
    }
}

impl Observation {
    /// What to look at and what it would show, in a language.
    pub fn sentence(self, language: Language) -> String {
        // SAFETY: the message is made of constants.
        unsafe { language.said(|message| sys::rodt_observation_message(self as u32, message)) }
    }
}
