// SPDX-License-Identifier: Apache-2.0

//! What the crate refuses: status, field, column and line.

use rodtravel::*;

fn is<T>(wanted: &str, found: Result<T>) {
    let found = match found {
        Ok(_) => "nothing".into(),
        Err(error) => {
            let field = if error.field().is_empty() { "-" } else { error.field() };
            format!("{} {} {} {}", error.status(), field, error.column(), error.line())
        }
    };
    assert_eq!(found, wanted);
}

fn texts() -> Form<'static> {
    Form { chamber: "30L", released: "2 3/4", applied: "5 5/16", psi: "95", ..Form::default() }
}

#[test]
fn forms() {
    let rules = RuleSet::default();
    let applied = |text: &str| rules.judge(&Form { applied: text, ..texts() });
    is("date-cell applied 1 0", applied("2-Jan"));
    is("syntax applied 5 0", applied("4 1/"));
    is("negative applied 1 0", applied(&Ratio::new(-1, 8).unwrap().text()));
    is("empty applied 0 0", applied(""));
    is("argument applied 0 0", applied("4\0"));
    is("implausible applied 1 0", applied("25"));
    is("syntax unit 1 0", rules.judge(&Form { unit: "ells", ..texts() }));
    is("syntax psi 1 0", rules.plan(&Form { psi: "high", ..Form::default() }));
    is("syntax pressure 1 0", rules.judge_air(&AirForm { check: "warning", pressure: "high", ..AirForm::default() }));
    is("empty check 0 0", rules.judge_air(&AirForm::default()));
    is("argument - 0 0", rules.identify(&Clues::default(), None));
    is("syntax tag 1 0", rules.identify(&Clues { tag: "red", ..Clues::default() }, None));
    is("implausible rated_stroke 1 0", Chamber::read("30").unwrap().marked(&Marks { rated_stroke: "30", ..Marks::default() }));
}

#[test]
fn texts_and_numbers() {
    is("syntax - 3 0", read_length("4½¼", Unit::In));
    is("syntax - 2 0", read_length("4\0", Unit::In));
    is("argument - 0 0", read_pressure("9\0"));
    is("unit - 3 0", read_seconds("1 h"));
    is("ambiguous - 0 0", read_date("01/02/2024"));
    is("unknown-chamber - 1 0", Chamber::read("x"));
    is("argument language 0 0", Language::find("xx"));
    is("unknown-rules rules 0 0", RuleSet::find("atlantis"));
    is("argument date 0 0", Date::new(2023, 2, 29));
    is("range date 0 0", Date::from_days(i32::MAX));
    is("argument - 0 0", Ratio::new(1, 0));
    is("range - 0 0", Ratio::new(i64::MIN, -1));
    is("range - 0 0", Ratio::from(i64::MAX).checked_add(Ratio::from(1)));
    is("argument - 0 0", Ratio::from(1).checked_div(Ratio::from(0)));
    is("syntax - 0 0", "sideways".parse::<Verdict>());
}

#[test]
fn rule_sets() {
    let rules = RuleSet::default();
    is("laxer limit 19 2", rules.load("yard", "family,size,class,limit\nclamp,30,standard,3\n", None));
    is("table - 7 1", rules.load("yard", "family\0", None));
    is("argument name 0 0", rules.load("us-cdl", "", None));
    is("argument name 0 0", rules.load("a\0", "", None));
    let yard = rules.load("yard", "family,size,class,limit\nclamp,30,long,2 3/8\n", None).unwrap();
    is("argument - 0 0", yard.load("more", "family,size,class,limit\nclamp,30,long,2 3/8\n", None));
    let finding = rules.judge(&texts()).unwrap();
    is("argument colour 0 0", finding.get("colour"));
    is("argument verdict 0 0", finding.exact("verdict"));
    is("argument path 0 0", finding.get("a\0"));
}

#[test]
fn vehicles() {
    let rules = RuleSet::default();
    let over = rules.judge(&texts()).unwrap();
    let end = WheelEnd { position: "1L", finding: &over, adjuster: "", arm_length: "" };
    is("argument ends 0 0", judge_vehicle(&[], 0));
    is("syntax position 1 2", judge_vehicle(&[end, WheelEnd { position: "left", ..end }], 0));
    is("argument position 0 2", judge_vehicle(&[end, end], 0));
    is("syntax adjuster 1 1", judge_vehicle(&[WheelEnd { adjuster: "bent", ..end }], 0));
    is("argument brakes 0 0", judge_vehicle(&[end, WheelEnd { position: "1R", ..end }], 1));
    is("range brakes 0 0", judge_vehicle(&[end], u32::MAX));
    is("argument tally 0 0", Tally { brakes: 1, full: 2, ..Tally::default() }.judge(0));
    let other = RuleSet::find("ca-on").unwrap().judge(&texts()).unwrap();
    is("argument rules 0 2", judge_vehicle(&[end, WheelEnd { position: "1R", finding: &other, ..end }], 0));
}

#[test]
fn columns() {
    let plan = RuleSet::default().plan(&Form::default()).unwrap();
    let mut out = Answers::default();
    let (three, two) = ([1, 2, 3], [1, 2]);
    let sound = Columns { released: &two, applied: &two, chamber: &[2, 2], ..Columns::default() };
    is("argument applied 0 0", plan.judge(&Columns { applied: &three, ..sound }, &mut out));
    is("argument chamber 0 0", plan.judge(&Columns { chamber: &[], ..sound }, &mut out));
    is("argument psi 0 0", plan.judge(&Columns { psi: Some(&three), ..sound }, &mut out));
    is("argument date 0 0", plan.judge(&Columns { date_valid: Some(&[]), ..sound }, &mut out));
    let mut full = RuleSet::default().plan(&Form::default()).unwrap();
    let chamber = Chamber::read("30").unwrap();
    assert!((0..254).all(|_| full.add(&chamber).is_ok()));
    is("space - 0 0", full.add(&chamber));
}

#[test]
fn an_error() {
    let error = RuleSet::default().judge(&Form { applied: "2-Jan", ..texts() }).unwrap_err();
    assert_eq!(error.to_string(), "applied, column 1: this is a date; a spreadsheet makes dates of fractions");
    assert_ne!(error.say(Language::find("fr").unwrap()), error.text());
    assert_eq!(error.say(Language::ENGLISH), error.text());
    let boxed: Box<dyn std::error::Error + Send + Sync> = error.clone().into();
    assert_eq!(boxed.downcast_ref::<Error>(), Some(&error));
}
