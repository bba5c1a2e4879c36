// SPDX-License-Identifier: Apache-2.0

//! From a file of recorded strokes to one line a unit: how many wheel ends have each verdict, and the least to spare.
//!
//!     fleet FLEET.csv
//!
//! Judges each row by the law of its day. A row that cannot be read stops nothing.

use rodtravel::{write_length, Finding, Form, Ratio, RuleSet, Verdict};
use std::collections::{BTreeMap, HashMap};
use std::error::Error;

/// The records of a file of CSV: cells, some between quotes.
fn records(text: &str) -> Vec<Vec<String>> {
    let (mut found, mut record, mut cell) = (Vec::new(), Vec::new(), String::new());
    let (mut quoted, mut signs) = (false, text.trim_start_matches('\u{feff}').chars().peekable());
    while let Some(sign) = signs.next() {
        match sign {
            '"' if quoted && signs.peek() == Some(&'"') => cell.extend(signs.next()),
            '"' => quoted = !quoted,
            ',' if !quoted => record.push(std::mem::take(&mut cell)),
            '\r' if !quoted => (),
            '\n' if !quoted => {
                record.push(std::mem::take(&mut cell));
                found.push(std::mem::take(&mut record));
            }
            _ => cell.push(sign),
        }
    }
    if !cell.is_empty() || !record.is_empty() {
        record.push(cell);
        found.push(record);
    }
    found
}

/// An empty record, or the heading once more, is no wheel end.
fn is_wheel_end(row: &HashMap<&str, &str>) -> bool {
    !["", "chamber"].contains(&row["chamber"]) || !row["released"].trim_matches(|sign| "releasd".contains(sign)).is_empty()
}

fn judge(rules: &RuleSet, row: &HashMap<&str, &str>) -> rodtravel::Result<Finding> {
    rules.judge_row(&Form {
        chamber: row["chamber"],
        stroke_class: row["stroke_class"],
        rated_stroke: row["rated_stroke"],
        released: row["released"],
        applied: row["applied"],
        psi: row["psi"],
        division: row["division"],
        date: row["date"],
        ..Form::default()
    })
}

fn main() -> Result<(), Box<dyn Error>> {
    let path = std::env::args().nth(1).ok_or("usage: fleet FLEET.csv")?;
    let records = records(&std::fs::read_to_string(path)?);
    let (headings, rows) = records.split_first().ok_or("the file has no headings")?;
    let rules = RuleSet::default();
    let mut units: BTreeMap<&str, Vec<Finding>> = BTreeMap::new();
    for record in rows {
        let cells = record.iter().map(String::as_str).chain(std::iter::repeat(""));
        let row: HashMap<&str, &str> = headings.iter().map(String::as_str).zip(cells).collect();
        if is_wheel_end(&row) {
            units.entry(row["unit_no"]).or_default().push(judge(&rules, &row)?);
        }
    }
    println!("{:<8}{:>5}{:>5}{:>6}{:>6}   least to spare", "unit", "in", "out", "dead", "open");
    for (unit, findings) in units {
        let count = |verdict| findings.iter().filter(|finding| finding.verdict() == verdict).count();
        let least: Option<Ratio> = findings.iter().filter_map(Finding::margin).min();
        let spare = least.map(write_length).transpose()?.map_or("not known".into(), |least| format!("{least} in"));
        println!(
            "{unit:<8}{:>5}{:>5}{:>6}{:>6}   {spare}",
            count(Verdict::InAdjustment),
            count(Verdict::OutOfAdjustment),
            count(Verdict::Inoperative),
            count(Verdict::Undetermined)
        );
    }
    Ok(())
}
