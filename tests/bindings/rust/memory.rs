// SPDX-License-Identifier: Apache-2.0

//! Calls leave no memory behind. CALLS in the environment is how many.

use rodtravel::*;

/// The memory of the process that is there, in pages; None where the system does not tell.
fn pages() -> Option<i64> {
    let said = std::fs::read_to_string("/proc/self/statm").ok()?;
    said.split(' ').nth(1)?.parse().ok()
}

fn work(calls: usize) {
    let rules = RuleSet::default();
    let sound = Form { chamber: "30L", released: "2 3/4", applied: "5 5/16", psi: "95", ..Form::default() };
    for i in 0..calls {
        if i % 1000 == 0 {
            let yard = rules.load("yard", "family,size,class,limit\nclamp,30,long,2 3/8\n", None).unwrap();
            yard.plan(&sound).unwrap().add(&Chamber::read("30").unwrap()).unwrap();
        }
        assert!(!rules.judge_row(&sound).unwrap().to_string().is_empty());
        assert!(rules.judge(&Form { applied: "2-Jan", ..sound }).is_err());
    }
}

#[test]
fn nothing_is_lost() {
    let calls = std::env::var("CALLS").ok().and_then(|calls| calls.parse().ok()).unwrap_or(10000);
    work(calls / 10);
    if let Some(before) = pages() {
        work(calls);
        assert!(pages().unwrap() - before < 500, "{} pages more", pages().unwrap() - before);
    }
}
