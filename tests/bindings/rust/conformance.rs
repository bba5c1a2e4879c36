// SPDX-License-Identifier: Apache-2.0

//! Rust's judge of the conformance kit (tests/conformance): a question a line on standard input, an answer a line on
//! standard output.

use rodtravel::*;
use std::collections::HashMap;
use std::io::{self, BufRead, BufWriter, Write};

type Asked = HashMap<String, String>;

/// Reads an object of JSON that has texts alone, as questions are.
fn question(line: &str) -> Option<Asked> {
    let mut rest = line.trim().strip_prefix('{')?.chars();
    let (mut found, mut name) = (Asked::new(), None);
    loop {
        match rest.next()? {
            '}' => return Some(found),
            '"' => {
                let text = text(&mut rest)?;
                match name.take() {
                    None => name = Some(text),
                    Some(name) => drop(found.insert(name, text)),
                }
            }
            ',' | ':' | ' ' => (),
            _ => return None,
        }
    }
}

/// The rest of a text of JSON.
fn text(rest: &mut std::str::Chars) -> Option<String> {
    let mut units: Vec<u16> = Vec::new();
    let mut room = [0; 2];
    loop {
        let sign = match rest.next()? {
            '"' => return String::from_utf16(&units).ok(),
            '\\' => match rest.next()? {
                'b' => '\u{8}',
                'f' => '\u{c}',
                'n' => '\n',
                'r' => '\r',
                't' => '\t',
                'u' => {
                    let digits: String = rest.by_ref().take(4).collect();
                    units.push(u16::from_str_radix(&digits, 16).ok()?);
                    continue;
                }
                other => other,
            },
            other => other,
        };
        units.extend_from_slice(sign.encode_utf16(&mut room));
    }
}

/// A word or a number between quotes: nothing in it would have to be escaped.
fn quoted(of: impl ToString) -> String {
    format!("\"{}\"", of.to_string())
}

fn number(of: Option<Ratio>) -> String {
    of.map_or("null".into(), quoted)
}

fn error_of(error: Option<Error>) -> String {
    error.map_or("null".into(), |error| {
        let (status, field) = (error.status(), error.field());
        format!(r#"{{"status":"{status}","field":"{field}","column":{}}}"#, error.column())
    })
}

macro_rules! form {
    ($form:ident, $asked:expr, $($field:ident)*) => {
        $form { $($field: $asked.get(stringify!($field)).map_or("", |text| text),)* ..$form::default() }
    };
}

fn wheel_end(rules: &RuleSet, of: &Asked) -> Result<String> {
    let form = form!(Form, of, chamber released applied stroke_class rated_stroke marked_limit psi psi_after division date
                     unit engine spring_brake drum);
    let found = rules.judge_row(&form)?;
    let reasons: Vec<_> = found.reasons().into_iter().map(quoted).collect();
    let members = [
        ("verdict", quoted(found.verdict())),
        ("stroke", number(found.applied_stroke())),
        ("limit", number(found.limit())),
        ("margin", number(found.margin())),
        ("proof", quoted(found.proof())),
        ("probability_over", number(found.probability_over())),
        ("reasons", format!("[{}]", reasons.join(","))),
        ("error", error_of(found.error())),
    ];
    Ok(members.map(|(name, value)| format!("\"{name}\":{value}")).join(","))
}

fn chamber(of: &Asked) -> Result<String> {
    let read = Chamber::read(&of["text"])?;
    Ok(format!(
        r#""family":"{}","size":"{}","spring_size":"{}","stroke_class":"{}","error":null"#,
        read.family(),
        read.size(),
        read.spring_size(),
        read.stroke_class()
    ))
}

fn count(of: &Asked) -> Result<String> {
    let number_of = |name: &str| of[name].parse().expect("a number of brakes");
    let tally = Tally { brakes: number_of("brakes"), full: number_of("full"), half: number_of("half"), ..Tally::default() };
    let found = tally.judge(0)?;
    Ok(format!(r#""outcome":"{}","share":{},"error":null"#, found.outcome(), number(found.share())))
}

fn air(rules: &RuleSet, of: &Asked) -> Result<String> {
    let form = form!(AirForm, of, check vehicle towed_units built pressure before after cut_out cut_in seconds span
                     applications actual_volume required_volume answer);
    let found = rules.judge_air(&form)?;
    let at_limit = if found.is_at_limit() { "yes" } else { "no" };
    Ok(format!(r#""result":"{}","at_limit":"{at_limit}","error":null"#, found.result()))
}

fn main() -> io::Result<()> {
    let mut out = BufWriter::new(io::stdout().lock());
    for line in io::stdin().lock().lines() {
        let asked = question(&line?).expect("a question of texts");
        let rules = asked.get("rules").map_or_else(RuleSet::default, |id| RuleSet::find(id).expect("a rule set"));
        let answer = match asked["ask"].as_str() {
            "wheel-end" => wheel_end(&rules, &asked),
            "length" => read_length(&asked["text"], Unit::In).map(|value| format!(r#""value":"{value}","error":null"#)),
            "chamber" => chamber(&asked),
            "count" => count(&asked),
            "air" => air(&rules, &asked),
            other => panic!("nothing answers {other}"),
        };
        let members = answer.unwrap_or_else(|error| format!(r#""error":{}"#, error_of(Some(error))));
        writeln!(out, r#"{{"id":"{}",{members}}}"#, asked["id"])?;
    }
    out.flush()
}
