// SPDX-License-Identifier: Apache-2.0

//! What the crate finds.

use rodtravel::*;
use std::collections::HashMap;
use std::thread;

const TEXTS: Form = Form {
    chamber: "30L",
    released: "2 3/4",
    applied: "5 5/16",
    psi: "95",
    stroke_class: "",
    rated_stroke: "",
    marked_limit: "",
    psi_after: "",
    division: "",
    date: "",
    unit: "",
    engine: "",
    spring_brake: "",
    drum: "",
    default_unit: None,
    pressure_unit: None,
    decimal_comma: false,
    date_order: None,
    default_date: None,
};

fn applied(text: &str) -> Form<'_> {
    Form { applied: text, ..TEXTS }
}

fn judged(form: &Form) -> Finding {
    RuleSet::default().judge(form).unwrap()
}

fn ratio(num: i64, den: i64) -> Option<Ratio> {
    Some(Ratio::new(num, den).unwrap())
}

fn language(tag: &str) -> Language {
    Language::find(tag).unwrap()
}

#[test]
fn a_finding() {
    let over = judged(&TEXTS);
    assert_eq!(over.verdict(), Verdict::OutOfAdjustment);
    assert_eq!(over.margin(), ratio(-1, 16));
    assert_eq!((over.applied_stroke(), over.limit()), (ratio(41, 16), ratio(5, 2)));
    assert_eq!(over.reasons(), [Reason::OverLimit]);
    assert!(over.has(Reason::OverLimit) && !over.has(Reason::AtLimit));
    assert_eq!(over.to_string(), "2 3/4 to 5 5/16 is 2 9/16; limit 2 1/2; over by 1/16");
    assert_eq!((over.long_limit(), over.date(), over.error()), (None, None, None));
    assert_eq!(over.defect(), Defect::Half);
    assert_eq!((over.released(), over.applied()), (ratio(11, 4), ratio(85, 16)));
    assert_eq!((over.pressure(), over.pressure_after()), (ratio(95, 1), None));
    assert_eq!((over.evidence(), over.law_evidence()), (Evidence::Checked, Evidence::Checked));
    assert_eq!((over.law_basis(), over.law_limit()), (Basis::Table, ratio(5, 2)));
    assert_eq!((over.chamber().to_string(), over.rules().id()), ("clamp 30 long".into(), "us-fmcsr"));
    assert!(over.source().starts_with("49 CFR Part 393, 393.47"));
    assert_eq!(over.get("law_row.published").unwrap(), "2 1/2");
    assert_eq!(over.exact("law_row.limit").unwrap(), ratio(5, 2));
    assert!(over.reason_sentence(Reason::OverLimit, language("fr-CA")).contains("dépasse la limite"));
    assert_eq!(over.reason_sentence(Reason::AtLimit, Language::ENGLISH), "");
    assert!(over.sentence(language("es_MX.UTF-8")).contains("límite"));
    assert!(over.spoken(Language::default()).starts_with("Released 2 3/4"));
    let proof = judged(&Form { division: "1/8", ..TEXTS });
    assert_eq!((proof.proof(), proof.division()), (Proof::NotResolved, ratio(1, 8)));
    assert!(proof.probability_over().is_some() && !proof.proof_sentence(language("fr")).is_empty());
    assert_eq!(over.proof_sentence(Language::ENGLISH), "");
}

#[test]
fn a_finding_is_a_value() {
    fn anywhere<T: Send + Sync + Clone + 'static>(_: &T) {}
    let (over, again) = (judged(&TEXTS), judged(&TEXTS));
    anywhere(&over);
    anywhere(over.rules());
    anywhere(&language("fr"));
    assert!(over == again && over.clone() == over && over != judged(&applied("5")));
    assert_eq!(HashMap::from([(over.clone(), 1)])[&again], 1);
    assert!(over.json(Language::ENGLISH).contains(r#""limit": "2 1/2""#));
    assert!(format!("{over:?} {:?} {:?}", over.rules(), over.chamber()).contains("over by"));
}

#[test]
fn a_row() {
    let rules = RuleSet::default();
    let row = rules.judge_row(&applied("2-Jan")).unwrap();
    let error = row.error().unwrap();
    assert_eq!((row.verdict(), error.status(), error.field()), (Verdict::Undetermined, Status::DateCell, "applied"));
    assert_eq!(rules.judge_row(&TEXTS).unwrap(), judged(&TEXTS));
    let day = Date::new(2024, 5, 6).unwrap();
    assert_eq!(judged(&Form { date: &day.to_string(), ..TEXTS }).date(), Some(day));
    assert_eq!(judged(&Form { default_date: Some(day), ..TEXTS }).date(), Some(day));
    let metric = Form {
        chamber: "30",
        released: "50,8",
        applied: "104,8",
        default_unit: Some(Unit::Mm),
        decimal_comma: true,
        ..Form::default()
    };
    assert_eq!(judged(&metric).verdict(), Verdict::OutOfAdjustment);
    assert_eq!(Form { chamber: "x", released: "2-Jan", ..Form::default() }.errors().len(), 3);
    assert!(TEXTS.errors().is_empty());
}

#[test]
fn numbers() {
    let number = Ratio::new(33, 8).unwrap();
    for text in ["4 1/8", "4.125", "4⅛", &number.text()] {
        let form = Form { chamber: "30", released: "2 1/8", applied: text, ..Form::default() };
        assert_eq!(judged(&form).applied_stroke(), ratio(2, 1));
    }
    let texts = [number, Ratio::from(4), Ratio::new(-1, 3).unwrap(), Ratio::new(-33, 8).unwrap(), Ratio::new(1, 16).unwrap()];
    assert_eq!(texts.map(Ratio::text), ["4.125", "4", "-1/3", "-4.125", "0.0625"]);
    assert_eq!(Ratio::new(-7, 4).unwrap().mixed(), "-1 3/4");
    let (a, b) = (Ratio::new(1, 2).unwrap(), Ratio::new(-1, 3).unwrap());
    assert_eq!(a.checked_add(b), Ratio::new(1, 6));
    assert_eq!(a.checked_sub(b), Ratio::new(5, 6));
    assert_eq!(a.checked_mul(b), Ratio::new(-1, 6));
    assert_eq!(a.checked_div(b), Ratio::new(-3, 2));
    assert!(b < a && a <= Ratio::from(1) && (a.num(), a.den()) == (1, 2));
    assert_eq!(read_length("44.45 mm", Unit::In).ok(), ratio(7, 4));
    assert_eq!(read_length("44.45", Unit::Mm).ok(), ratio(7, 4));
    assert_eq!((read_pressure("95").ok(), read_seconds("1:30").ok()), (ratio(95, 1), ratio(90, 1)));
    let day = read_date("14-OCT-21").unwrap();
    assert_eq!((day.to_string().as_str(), day.days(), Date::from_days(18914)), ("2021-10-14", 18914, Ok(day)));
    assert_eq!((day.year(), day.month(), day.day()), (2021, 10, 14));
    assert_eq!(write_length(Ratio::new(7, 4).unwrap()).unwrap(), "1 3/4");
    assert_eq!("Out-Of-Adjustment ".parse::<Verdict>(), Ok(Verdict::OutOfAdjustment));
    assert_eq!((Verdict::ALL.len(), format!("{:>5}", Unit::Mm)), (4, "   mm".into()));
    assert!(version() == env!("CARGO_PKG_VERSION") && tables_edition() > "2026");
}

#[test]
fn a_vehicle() {
    let (over, within) = (judged(&TEXTS), judged(&applied("5")));
    let left = WheelEnd { position: "1L", finding: &over, adjuster: "automatic", arm_length: "6" };
    let right = WheelEnd { position: "1R", finding: &within, adjuster: "", arm_length: "" };
    let vehicle = judge_vehicle(&[left, right], 0).unwrap();
    assert_eq!((vehicle.outcome(), vehicle.count().share(), vehicle.count().brakes()), (Outcome::Ambiguous, ratio(1, 4), 2));
    assert_eq!(vehicle.with(Verdict::OutOfAdjustment) + vehicle.with(Verdict::InAdjustment), 2);
    assert_eq!(vehicle.advice(), [Advice::FindFault, Advice::None]);
    assert!(!Advice::FindFault.sentence(language("fr")).is_empty() && Advice::None.sentence(language("fr")).is_empty());
    assert_eq!(vehicle.mismatched_axles(), 0);
    assert_eq!(vehicle.exact("axles[0].stroke_difference").unwrap(), ratio(5, 16));
    assert_eq!(vehicle.get("out_of_adjustment").unwrap(), "1");
    assert!(vehicle.json(language("fr")).contains(r#""find-fault""#) && vehicle.to_string().contains("of 2 brakes"));
    assert_eq!(vehicle, judge_vehicle(&[left, right], 0).unwrap());
    assert_eq!(judge_vehicle(&[left], 10).unwrap().outcome(), Outcome::Undetermined);
    let count = Tally { brakes: 6, full: 1, half: 1, ..Tally::default() }.judge(0).unwrap();
    assert_eq!((count.outcome(), count.whole_needed()), (Outcome::Ambiguous, 2));
    assert_eq!((count.defective(), count.criterion()), (ratio(3, 2), ratio(1, 5)));
    assert!(count.worst_share() == ratio(1, 4) && count.known_share().is_some() && count.json().contains("share"));
    let mut tally = Tally::default();
    tally.add(&over).unwrap();
    tally.add(&within).unwrap();
    assert_eq!(tally, Tally { brakes: 2, half: 1, ..Tally::default() });
}

#[test]
fn an_air_check() {
    let driver = RuleSet::find("us-cdl").unwrap();
    let good = driver.judge_air(&AirForm { check: "warning", pressure: "62", ..AirForm::default() }).unwrap();
    assert_eq!((good.result(), good.law_result(), good.missing()), (AirResult::Good, AirResult::Good, AirMissing::Nothing));
    assert!(!good.is_at_limit() && !good.is_major() && !good.is_minor());
    assert!(good.measured() == ratio(62, 1) && good.allowed().is_some() && good.exact("row.value").unwrap().is_some());
    assert!(good.sentence(language("es")).contains("62 psi") && good.json(language("fr")).contains("62 psi"));
    assert!(good.spoken(Language::ENGLISH).contains("62 psi") && !good.edge(Language::ENGLISH).is_empty());
    assert!(good.note(Language::ENGLISH).is_empty() && !good.get("row.published").unwrap().is_empty());
    assert_eq!(good.clone(), good);
    let open = driver.judge_air(&AirForm { check: "warning", ..AirForm::default() }).unwrap();
    assert_eq!(open.result(), AirResult::NotDone);
}

#[test]
fn chambers() {
    let rules = RuleSet::default();
    let which = rules.identify(&Clues { stamp: "24", ..Clues::default() }, None).unwrap();
    assert_eq!((which.strict_limit(), which.next_observation()), (ratio(7, 4), Observation::LongSign));
    assert_eq!((which.without_limit(), which.contradiction()), (0, vec![]));
    let first = &which.candidates()[0];
    assert_eq!((first.chamber.size(), &first.clues_for[..]), ("24", &[Clue::Stamp][..]));
    assert!(which.candidates().len() > 2 && which.json(language("fr")).len() > 500);
    assert!(!which.next_observation().sentence(Language::ENGLISH).is_empty());
    let mark = Chamber::read("24/30 LS").unwrap();
    assert_eq!((mark.family(), mark.size(), mark.spring_size()), (Family::Clamp, "24", "30"));
    assert_eq!((mark.stroke_class(), mark.to_string()), (StrokeClass::Long, "clamp 24/30 long".into()));
    let limit = rules.find_limit(&Chamber::read("36").unwrap(), Date::new(2021, 10, 13).ok()).unwrap();
    assert_eq!((limit.limit(), limit.law_basis()), (ratio(9, 4), Basis::Table));
    assert!(limit.assumed_clamp() && limit.assumed_standard() && !limit.conflicting_marks());
    let marks = Marks { rated_stroke: "3", ..Marks::default() };
    let marked = Chamber::read("24").unwrap().marked(&marks).unwrap();
    let limit = rules.find_limit(&marked, None).unwrap();
    assert_eq!((limit.limit(), limit.law_limit(), marked.rated_stroke()), (ratio(5, 2), ratio(5, 2), ratio(3, 1)));
    assert!(marked.marked_limit().is_none() && marked.json().contains("24") && !limit.source().is_empty());
    assert!(limit.json().contains("law_row") && limit.get("law_row.published").is_ok());
    assert_eq!((limit.evidence(), limit.law_evidence()), (Evidence::Checked, Evidence::Checked));
}

#[test]
fn rules() {
    let rules = RuleSet::default();
    assert_eq!((rules.id(), rules.at_limit_passes()), ("us-fmcsr", true));
    assert_eq!(rules.pressures(), ratio(90, 1).zip(ratio(100, 1)));
    assert!(RuleSet::all().len() > 5 && !rules.title().is_empty() && !rules.authority().is_empty());
    assert!(!rules.source().is_empty() && !rules.pressure_source().is_empty() && rules.rated_share().is_some());
    assert!(rules.limits_json(None).unwrap().len() > 1000 && rules.json().contains("us-fmcsr"));
    assert!(rules.dates().1.is_none() && rules.law().is_none() && rules.evidence() != Evidence::None);
    let driver = RuleSet::find("us-cdl").unwrap();
    assert!(driver.air_limits_json(language("fr")).len() > 3);
    let kept = {
        let yard = rules.load("yard", "family,size,class,limit\nclamp,30,long,2 3/8\n", Some(&driver)).unwrap();
        assert_eq!((yard.law(), yard.air_law(), yard.id()), (Some(rules), Some(driver), "yard"));
        yard.judge(&applied("5 1/4")).unwrap()
    };
    assert_eq!((kept.limit(), kept.law_limit(), kept.rules().id()), (ratio(19, 8), ratio(5, 2), "yard"));
    assert!(kept.has(Reason::OverOwnLimit) && kept.get("own_row.published").unwrap() == "2 3/8");
}

#[test]
fn columns() {
    let mut plan = RuleSet::default().plan(&Form { psi: "95", ..Form::default() }).unwrap();
    let code = plan.add(&Chamber::read("30L").unwrap()).unwrap();
    let sixteenth = 4 * PER_64TH;
    let columns = Columns {
        released: &[44 * sixteenth, 44 * sixteenth, -5, 44 * sixteenth],
        applied: &[85 * sixteenth, 80 * sixteenth, 1, 85 * sixteenth],
        chamber: &[code; 4],
        applied_valid: Some(&[7]),
        ..Columns::default()
    };
    let mut out = Answers::default();
    plan.judge(&columns, &mut out).unwrap();
    for (row, text) in ["5 5/16", "5"].into_iter().enumerate() {
        let one = judged(&applied(text));
        assert_eq!((verdict_of(out.verdict[row]), reasons_of(out.reasons[row])), (one.verdict(), one.reasons()));
        assert_eq!(ratio(out.stroke[row].into(), PER_INCH.into()), one.applied_stroke());
        assert_eq!(ratio(out.limit[row].into(), PER_INCH.into()), one.limit());
    }
    assert_eq!((flags_of(out.flags[2]), out.stroke[2]), (vec![ColumnFlag::Invalid], NO_STROKE));
    assert_eq!(flags_of(out.flags[3]), [ColumnFlag::Missing]);
    let first = out.stroke.as_ptr();
    plan.judge(&columns, &mut out).unwrap();
    assert_eq!(out.stroke.as_ptr(), first);
    plan.judge(&Columns::default(), &mut out).unwrap();
    assert_eq!(out, Answers::default());
}

#[test]
fn threads() {
    let rules = RuleSet::default();
    let yard = rules.load("yard", "family,size,class,limit\nclamp,30,long,2 3/8\n", None).unwrap();
    let plan = rules.plan(&TEXTS).unwrap();
    thread::scope(|all| {
        for _ in 0..4 {
            all.spawn(|| {
                for _ in 0..200 {
                    assert_eq!(yard.clone().judge(&TEXTS).unwrap().margin(), ratio(-3, 16));
                    assert_eq!(rules.judge(&applied("2-Jan")).unwrap_err().status(), Status::DateCell);
                    let columns = Columns { released: &[1], applied: &[2], chamber: &[0], ..Columns::default() };
                    plan.judge(&columns, &mut Answers::default()).unwrap();
                }
            });
        }
    });
}
