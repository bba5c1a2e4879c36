// SPDX-License-Identifier: Apache-2.0

use crate::error::Error;
use crate::language::Language;
use crate::record::{exact, get, json, report, zeroed, Texts};
use crate::{sys, Advice, Finding, Outcome, Ratio, Result, RuleSet, Status, Verdict};
use std::fmt;

const NAME: &str = "rodt_vehicle_finding\0";
const END: &str = "rodt_wheel_end\0";

/// One end of an axle with what was found there.
#[derive(Clone, Copy, Debug)]
pub struct WheelEnd<'a> {
    /// "1L" is the left end of the foremost axle; axles are counted through every unit.
    pub position: &'a str,
    /// What was found.
    pub finding: &'a Finding,
    /// "manual", "automatic"; empty = nobody wrote it down.
    pub adjuster: &'a str,
    /// Length of the slack adjuster; empty = not measured.
    pub arm_length: &'a str,
}

/// The judgement of the whole vehicle by the roadside criterion.
#[derive(Clone)]
pub struct Vehicle {
    c: Box<sys::rodt_vehicle_finding>,
    ends: Vec<sys::rodt_wheel_end>,
    findings: Vec<sys::rodt_finding>,
    errors: Vec<sys::rodt_error>,
    advice: Vec<u32>,
    _rules: RuleSet,
}

// SAFETY: it points to what its rule set keeps, and to constants.
unsafe impl Send for Vehicle {}
unsafe impl Sync for Vehicle {}

/// Judges by findings of one rule set. brakes is how many the vehicle or combination has, measured or not; 0 = both ends
/// of every axle up to the last one that has a wheel end. The line of an error is the number of the wheel end, from 1.
pub fn judge_vehicle(ends: &[WheelEnd], brakes: u32) -> Result<Vehicle> {
    let first = ends.first().ok_or_else(|| Error::own(Status::Argument, "ends", "a vehicle has wheel ends"))?;
    // SAFETY: the arrays are as long as the count, and the rule set of the findings is kept.
    unsafe {
        let mut made = Vehicle {
            c: Box::new(zeroed()),
            ends: Vec::with_capacity(ends.len()),
            findings: ends.iter().map(|end| end.finding.c).collect(),
            errors: ends.iter().map(|end| end.finding.row.as_ref().map_or_else(|| zeroed(), |row| **row)).collect(),
            advice: vec![0; ends.len()],
            _rules: first.finding.rules.clone(),
        };
        for (i, end) in ends.iter().enumerate() {
            made.ends.push(end.c().map_err(|error| error.on_line(i + 1))?);
        }
        let mut error = zeroed();
        let status = sys::rodt_vehicle_combine(
            made.ends.as_ptr(),
            ends.len(),
            brakes,
            made.findings.as_ptr(),
            made.advice.as_mut_ptr(),
            &mut *made.c,
            &mut error,
        );
        Error::check(status, &error)?;
        Ok(made)
    }
}

impl WheelEnd<'_> {
    unsafe fn c(&self) -> Result<sys::rodt_wheel_end> {
        let mut made: sys::rodt_wheel_end = zeroed();
        let at = (&mut made as *mut sys::rodt_wheel_end).cast();
        let mut texts = Texts::default();
        texts.set((END, "position\0"), at, "position", self.position)?;
        texts.set((END, "adjuster\0"), at, "adjuster", self.adjuster)?;
        texts.set((END, "arm_length\0"), at, "arm_length", self.arm_length)?;
        Ok(made)
    }
}

impl Vehicle {
    /// The roadside criterion.
    pub fn count(&self) -> Count {
        Count { c: self.c.count }
    }

    /// That of the count.
    pub fn outcome(&self) -> Outcome {
        self.count().outcome()
    }

    /// How many wheel ends have a verdict.
    pub fn with(&self, verdict: Verdict) -> usize {
        self.findings.iter().filter(|finding| finding.verdict == verdict as u32).count()
    }

    /// Axles whose ends differ in what the law wants alike.
    pub fn mismatched_axles(&self) -> u32 {
        self.c.mismatched_axles
    }

    /// What to do next about each wheel end, in their order.
    pub fn advice(&self) -> Vec<Advice> {
        self.advice.iter().map(|each| Advice::of(*each)).collect()
    }

    /// The count in one line, in a language.
    pub fn sentence(&self, language: Language) -> String {
        self.count().sentence(language)
    }

    /// Any member by its path, as a text: "axles\[0\].stroke_difference".
    pub fn get(&self, path: &str) -> Result<String> {
        // SAFETY: it points to nothing.
        unsafe { get(NAME, (&*self.c as *const sys::rodt_vehicle_finding).cast(), path) }
    }

    /// Any exact number by its path: "axles\[0\].al_left".
    pub fn exact(&self, path: &str) -> Result<Option<Ratio>> {
        // SAFETY: it points to nothing.
        unsafe { exact(NAME, (&*self.c as *const sys::rodt_vehicle_finding).cast(), path) }
    }

    /// The report of the vehicle as JSON: the criterion, every wheel end and axle, with sentences in a language.
    pub fn json(&self, language: Language) -> String {
        // SAFETY: the arrays are as long as the count, and the rule set is alive.
        report(|text, size, needed| unsafe {
            sys::rodt_vehicle_json_format(
                &*self.c,
                self.ends.as_ptr(),
                self.ends.len(),
                self.findings.as_ptr(),
                self.advice.as_ptr(),
                self.errors.as_ptr(),
                language.c(),
                0,
                text,
                size,
                needed,
            )
        })
    }
}

impl PartialEq for Vehicle {
    fn eq(&self, other: &Vehicle) -> bool {
        self.c == other.c && self.ends == other.ends && self.findings == other.findings && self.errors == other.errors
    }
}

impl Eq for Vehicle {}

impl fmt::Display for Vehicle {
    /// The count in one line.
    fn fmt(&self, to: &mut fmt::Formatter) -> fmt::Result {
        self.count().fmt(to)
    }
}

impl fmt::Debug for Vehicle {
    fn fmt(&self, to: &mut fmt::Formatter) -> fmt::Result {
        write!(to, "Vehicle({self})")
    }
}

impl Advice {
    /// The advice as a sentence in a language; empty for none.
    pub fn sentence(self, language: Language) -> String {
        match self {
            Advice::None => String::new(),
            // SAFETY: the message is made of constants.
            _ => unsafe { language.said(|message| sys::rodt_advice_message(self as u32, message)) },
        }
    }
}

form! {
    /// Brakes of one vehicle, counted one by one.
    Tally, "rodt_tally", {
        /// Counted so far.
        brakes: u32 = "brakes",
        /// Counted as one.
        full: u32 = "full",
        /// Counted as half.
        half: u32 = "half",
        /// State not known.
        unknown: u32 = "unknown",
        /// Part of full.
        inoperative: u32 = "inoperative",
    }
}

impl Tally {
    /// Counts a finding in.
    pub fn add(&mut self, finding: &Finding) -> Result<()> {
        // SAFETY: both are ours.
        unsafe {
            let mut c = self.c()?;
            let mut error = zeroed();
            Error::check(sys::rodt_tally_add(&mut c, &finding.c, &mut error), &error)?;
            let sys::rodt_tally { brakes, full, half, unknown, inoperative, .. } = c;
            *self = Tally { brakes, full, half, unknown, inoperative };
        }
        Ok(())
    }

    /// Judges by the roadside criterion; brakes as of [`judge_vehicle`], 0 = as many as were counted.
    pub fn judge(&self, brakes: u32) -> Result<Count> {
        // SAFETY: both are ours.
        unsafe {
            let mut made = Count { c: zeroed() };
            let mut error = zeroed();
            Error::check(sys::rodt_tally_judge(&self.c()?, brakes, &mut made.c, &mut error), &error)?;
            Ok(made)
        }
    }

    unsafe fn c(&self) -> Result<sys::rodt_tally> {
        let mut made: sys::rodt_tally = zeroed();
        self.put((&mut made as *mut sys::rodt_tally).cast())?;
        Ok(made)
    }
}

/// The count of defective brakes, exact.
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub struct Count {
    c: sys::rodt_count,
}

impl Count {
    /// Tells whether the criterion is met.
    pub fn outcome(&self) -> Outcome {
        Outcome::of(self.c.outcome)
    }

    /// Brakes of the vehicle, measured or not.
    pub fn brakes(&self) -> u32 {
        self.c.brakes
    }

    /// How many brakes the chart of whole brakes asks for.
    pub fn whole_needed(&self) -> u32 {
        self.c.whole_needed
    }

    /// Full and half of half, in brakes.
    pub fn defective(&self) -> Option<Ratio> {
        Ratio::from_c(self.c.defective)
    }

    /// Defective of all brakes; None without a brake.
    pub fn share(&self) -> Option<Ratio> {
        Ratio::from_c(self.c.share)
    }

    /// The share if every unknown and unmeasured brake were defective.
    pub fn worst_share(&self) -> Option<Ratio> {
        Ratio::from_c(self.c.worst_share)
    }

    /// Defective of the brakes whose state is known; None if there is none.
    pub fn known_share(&self) -> Option<Ratio> {
        Ratio::from_c(self.c.known_share)
    }

    /// The share from which a vehicle is out of service.
    pub fn criterion(&self) -> Option<Ratio> {
        Ratio::from_c(self.c.criterion)
    }

    /// The count in one line, in a language.
    pub fn sentence(&self, language: Language) -> String {
        // SAFETY: the count is ours.
        unsafe { language.said(|message| sys::rodt_count_message(&self.c, message)) }
    }

    /// All of the count as JSON.
    pub fn json(&self) -> String {
        // SAFETY: it points to nothing.
        unsafe { json("rodt_count\0", (&self.c as *const sys::rodt_count).cast()) }
    }
}

impl fmt::Display for Count {
    fn fmt(&self, to: &mut fmt::Formatter) -> fmt::Result {
        to.pad(&self.sentence(Language::ENGLISH))
    }
}

impl fmt::Debug for Count {
    fn fmt(&self, to: &mut fmt::Formatter) -> fmt::Result {
        write!(to, "Count({self})")
    }
}
