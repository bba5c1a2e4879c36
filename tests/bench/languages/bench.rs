// SPDX-License-Identifier: Apache-2.0

//! What languages.py asks of Rust: bench call|lists|column COUNT. Rows are judged one by one.

use rodtravel::*;

fn main() {
    let given: Vec<String> = std::env::args().collect();
    let count: usize = given[2].parse().expect("a count");
    let rules = RuleSet::default();
    let form = Form { chamber: "30L", released: "2 3/4", applied: "5 5/16", psi: "95", ..Form::default() };
    if given[1] == "call" {
        for _ in 0..count {
            let found = rules.judge(&form).expect("a finding");
            assert_eq!(found.verdict(), Verdict::OutOfAdjustment);
        }
        return;
    }
    let applied: Vec<String> = (0..count).map(|i| format!("{} {}/16", 4 + i % 2, 1 + 2 * (i % 8))).collect();
    if given[1] == "column" {
        let judge = |text: &String| rules.judge_row(&Form { applied: text, ..form }).expect("a finding").verdict();
        assert_eq!(applied.iter().map(judge).collect::<Vec<Verdict>>().len(), count);
    }
}
