/* SPDX-License-Identifier: Apache-2.0 */
/* The English catalogue, and the words of the codes. */
#include "message/english.h"
#include "message/words.h"

/* The word is for programs, the template for people. */
static const rodt_enumerator message_code_rows[] = {
    ENUMERATOR(RODT_MESSAGE_NONE, "none", ""),

    /* How a value is put into a sentence. */
    ENUMERATOR(RODT_MESSAGE_VALUE_ABOUT, "value.about", "about {number}"),
    ENUMERATOR(RODT_MESSAGE_VALUE_INCHES, "value.inches", "{number}"),
    ENUMERATOR(RODT_MESSAGE_VALUE_MM, "value.mm", "{number} mm"),
    ENUMERATOR(RODT_MESSAGE_VALUE_LIMIT_MM, "value.limit-mm", "{number} in ({mm})"),
    ENUMERATOR(RODT_MESSAGE_VALUE_NOT_GIVEN, "value.not-given", "(not measured)"),
    ENUMERATOR(RODT_MESSAGE_VALUE_NOT_READABLE, "value.not-readable", "(not readable)"),
    ENUMERATOR(RODT_MESSAGE_VALUE_PSI, "value.psi", "{number} psi"),
    ENUMERATOR(RODT_MESSAGE_VALUE_KPA, "value.kpa", "{number} kPa"),
    ENUMERATOR(RODT_MESSAGE_VALUE_SECONDS, "value.seconds", "{number} s"),
    ENUMERATOR(RODT_MESSAGE_VALUE_PSI_PER_MINUTE, "value.psi-per-minute", "{number} psi per minute"),
    ENUMERATOR(RODT_MESSAGE_VALUE_KPA_PER_MINUTE, "value.kpa-per-minute", "{number} kPa per minute"),
    ENUMERATOR(RODT_MESSAGE_VALUE_PERCENT, "value.percent", "{number} %"),
    ENUMERATOR(RODT_MESSAGE_VALUE_PERCENT_LEFT, "value.percent-left", "{number} % left"),
    ENUMERATOR(RODT_MESSAGE_VALUE_PERCENT_LOST, "value.percent-lost", "{number} % lost"),

    /* How a figure was checked. */
    ENUMERATOR(RODT_MESSAGE_EVIDENCE_NONE, "evidence.none", "none"),
    ENUMERATOR(RODT_MESSAGE_EVIDENCE_CHECKED, "evidence.checked", ENGLISH_EVIDENCE_CHECKED),
    ENUMERATOR(RODT_MESSAGE_EVIDENCE_SECOND_HAND, "evidence.second-hand", ENGLISH_EVIDENCE_SECOND_HAND),
    ENUMERATOR(RODT_MESSAGE_EVIDENCE_FROM_MEMORY, "evidence.from-memory", ENGLISH_EVIDENCE_FROM_MEMORY),

    /* The comparison of one wheel end in one line. */
    ENUMERATOR(RODT_MESSAGE_LINE_SPARE, "line.spare",
               "{released} to {applied} is {stroke}; limit {limit}; {margin} to spare"),
    ENUMERATOR(RODT_MESSAGE_LINE_OVER, "line.over",
               "{released} to {applied} is {stroke}; limit {limit}; over by {excess}"),
    ENUMERATOR(RODT_MESSAGE_LINE_AT_LIMIT, "line.at-limit",
               "{released} to {applied} is {stroke}; limit {limit}; exactly at the limit"),
    ENUMERATOR(RODT_MESSAGE_LINE_LIMIT, "line.limit", "{released} to {applied} is {stroke}; limit {limit}"),
    ENUMERATOR(RODT_MESSAGE_LINE_NO_LIMIT, "line.no-limit", "{released} to {applied} is {stroke}; no limit known"),
    ENUMERATOR(RODT_MESSAGE_LINE_NO_STROKE, "line.no-stroke",
               "{released} to {applied} gives no stroke; limit {limit}"),
    ENUMERATOR(RODT_MESSAGE_LINE_NOTHING, "line.nothing", "{released} to {applied} gives no stroke; no limit known"),

    /* Reasons of a finding: the word is that of the reason, and of its form. */
    ENUMERATOR(RODT_MESSAGE_STROKE_OVER_LIMIT, "stroke.over-limit", "stroke is over the limit by {excess}"),
    ENUMERATOR(RODT_MESSAGE_STROKE_OVER_OWN_LIMIT, "stroke.over-own-limit", "over the carrier's own limit of {limit}"),
    ENUMERATOR(RODT_MESSAGE_STROKE_OVER_OWN_LIMIT_LAW, "stroke.over-own-limit.law",
               "over the carrier's own limit of {limit}, within the law's {law_limit}"),
    ENUMERATOR(RODT_MESSAGE_STROKE_AT_LIMIT_PASSES, "stroke.at-limit.passes",
               "stroke is exactly at the limit: the rule says not greater than, so it passes, with nothing to spare"),
    ENUMERATOR(RODT_MESSAGE_STROKE_AT_LIMIT_FAILS, "stroke.at-limit.fails",
               "stroke is exactly at the limit: the rule says less than, so it fails"),
    ENUMERATOR(RODT_MESSAGE_STROKE_WITHIN_LIMIT, "stroke.within-limit", "stroke is within the limit by {margin}"),
    ENUMERATOR(RODT_MESSAGE_STROKE_NO_MOVEMENT, "stroke.no-movement", ENGLISH_STROKE_NO_MOVEMENT),
    ENUMERATOR(RODT_MESSAGE_STROKE_READINGS_SWAPPED, "stroke.readings-swapped", ENGLISH_STROKE_READINGS_SWAPPED),
    ENUMERATOR(RODT_MESSAGE_STROKE_BEYOND_RATED, "stroke.beyond-rated-stroke",
               "stroke is longer than the rated stroke of {rated_stroke}, which this housing cannot have: identify the"
               " chamber and read again"),
    ENUMERATOR(RODT_MESSAGE_STROKE_PRESSURE_LOW, "stroke.pressure-low",
               "{pressure} psi is below the {from} to {until} psi of the test: more air would lengthen the stroke, so "
               "a pass proves nothing and a failure stands"),
    ENUMERATOR(RODT_MESSAGE_STROKE_PRESSURE_LOW_AFTER, "stroke.pressure-low.after",
               "{pressure} psi after the application is below the {from} to {until} psi of the test: more air would "
               "lengthen the stroke, so a pass proves nothing and a failure stands"),
    ENUMERATOR(RODT_MESSAGE_STROKE_PRESSURE_LOW_NO_AIR, "stroke.pressure-low.no-air",
               "the recorded pressure is 0: without air no rod moves; build up the air and measure again"),
    ENUMERATOR(RODT_MESSAGE_STROKE_PRESSURE_HIGH, "stroke.pressure-high",
               "{pressure} psi is above the {from} to {until} psi of the test: less air would shorten the stroke, so a"
               " failure proves nothing and a pass stands"),
    ENUMERATOR(RODT_MESSAGE_STROKE_PRESSURE_HIGH_AFTER, "stroke.pressure-high.after",
               "{pressure} psi after the application is above the {from} to {until} psi of the test: less air would "
               "shorten the stroke, so a failure proves nothing and a pass stands"),
    ENUMERATOR(RODT_MESSAGE_STROKE_PRESSURE_NOT_RECORDED, "stroke.pressure-not-recorded",
               "reservoir pressure not recorded; the test asks for {from} to {until} psi"),
    ENUMERATOR(RODT_MESSAGE_STROKE_ENGINE_RUNNING, "stroke.engine-running", ENGLISH_STROKE_ENGINE_RUNNING),
    ENUMERATOR(RODT_MESSAGE_STROKE_SPRING_BRAKE_APPLIED, "stroke.spring-brake-applied",
               ENGLISH_STROKE_SPRING_BRAKE_APPLIED),
    ENUMERATOR(RODT_MESSAGE_STROKE_ASSUMED_STANDARD, "stroke.assumed-standard",
               "stroke class not known: judged as standard"),
    ENUMERATOR(RODT_MESSAGE_STROKE_ASSUMED_STANDARD_LONG, "stroke.assumed-standard.long",
               "stroke class not known: judged as standard; long stroke of this size has the limit {long_limit}"),
    ENUMERATOR(RODT_MESSAGE_STROKE_ASSUMED_STANDARD_WITHIN, "stroke.assumed-standard.within",
               "stroke class not known: judged as standard; long stroke of this size has the limit {long_limit}, so "
               "the stroke is within it either way"),
    ENUMERATOR(RODT_MESSAGE_STROKE_ASSUMED_STANDARD_OVER, "stroke.assumed-standard.over",
               "stroke class not known: judged as standard; long stroke of this size has the limit {long_limit}, so "
               "the stroke is over it either way"),
    ENUMERATOR(RODT_MESSAGE_STROKE_ASSUMED_STANDARD_LOOK, "stroke.assumed-standard.look",
               "stroke class not known: judged as standard; long stroke of this size has the limit {long_limit} and "
               "the stroke is within that: look for a sign (L or LS in the mark, square ports, trapezoid tag)"),
    ENUMERATOR(RODT_MESSAGE_STROKE_ASSUMED_CLAMP_STRICT, "stroke.assumed-clamp.strict",
               "the kind of housing was not said: taken as clamp type, the strict side"),
    ENUMERATOR(RODT_MESSAGE_STROKE_ASSUMED_CLAMP_LOOK, "stroke.assumed-clamp.look",
               "the kind of housing was not said: taken as clamp type; another kind of this size has a smaller limit, "
               "so look at it"),
    ENUMERATOR(RODT_MESSAGE_STROKE_CONFLICTING_MARKS, "stroke.conflicting-marks", ENGLISH_STROKE_CONFLICTING_MARKS),
    ENUMERATOR(RODT_MESSAGE_STROKE_NO_PUBLISHED_LIMIT, "stroke.no-published-limit", ENGLISH_STROKE_NO_PUBLISHED_LIMIT),
    ENUMERATOR(RODT_MESSAGE_STROKE_RULES_NOT_IN_FORCE, "stroke.rules-not-in-force", "{rules} has no text for the day"),
    ENUMERATOR(RODT_MESSAGE_STROKE_RULES_NOT_IN_FORCE_FROM, "stroke.rules-not-in-force.from",
               "{rules} has no text for the day; it starts on {day}"),
    ENUMERATOR(RODT_MESSAGE_STROKE_UNCONFIRMED_SECOND_HAND, "stroke.limit-unconfirmed.second-hand",
               "the limit is unconfirmed (second-hand): it was not read in its source and is not law; look it up "
               "before you rely on it"),
    ENUMERATOR(RODT_MESSAGE_STROKE_UNCONFIRMED_FROM_MEMORY, "stroke.limit-unconfirmed.from-memory",
               "the limit is unconfirmed (from memory): it was not read in its source and is not law; look it up "
               "before you rely on it"),
    ENUMERATOR(RODT_MESSAGE_STROKE_LIMIT_FROM_RATED, "stroke.limit-from-rated",
               "the limit is {share} of the rated stroke of {rated_stroke} marked on the housing"),
    ENUMERATOR(RODT_MESSAGE_STROKE_LIMIT_MARKED, "stroke.limit-marked", ENGLISH_STROKE_LIMIT_MARKED),
    ENUMERATOR(RODT_MESSAGE_STROKE_PRINTED_MM_DIFFERS, "stroke.printed-mm-differs",
               "the printed {printed} would judge otherwise; the inch figure decides: {limit}"),
    ENUMERATOR(RODT_MESSAGE_STROKE_DRUM_HOT, "stroke.drum-hot", ENGLISH_STROKE_DRUM_HOT),
    ENUMERATOR(RODT_MESSAGE_STROKE_CHAMBER_MISSING, "stroke.chamber-missing", ENGLISH_STROKE_CHAMBER_MISSING),
    ENUMERATOR(RODT_MESSAGE_STROKE_RELEASED_MISSING, "stroke.released-missing", ENGLISH_STROKE_RELEASED_MISSING),
    ENUMERATOR(RODT_MESSAGE_STROKE_APPLIED_MISSING, "stroke.applied-missing", ENGLISH_STROKE_APPLIED_MISSING),
    ENUMERATOR(RODT_MESSAGE_STROKE_CHAMBER_UNREADABLE, "stroke.chamber-unreadable", ENGLISH_STROKE_CHAMBER_UNREADABLE),
    ENUMERATOR(RODT_MESSAGE_STROKE_RELEASED_UNREADABLE, "stroke.released-unreadable",
               ENGLISH_STROKE_RELEASED_UNREADABLE),
    ENUMERATOR(RODT_MESSAGE_STROKE_APPLIED_UNREADABLE, "stroke.applied-unreadable", ENGLISH_STROKE_APPLIED_UNREADABLE),
    ENUMERATOR(RODT_MESSAGE_STROKE_OTHER_UNREADABLE, "stroke.other-unreadable", ENGLISH_STROKE_OTHER_UNREADABLE),
    ENUMERATOR(RODT_MESSAGE_STROKE_SPREADSHEET_DATE, "stroke.spreadsheet-date", ENGLISH_STROKE_SPREADSHEET_DATE),
    ENUMERATOR(RODT_MESSAGE_STROKE_DATE_AMBIGUOUS_SAME, "stroke.date-ambiguous.same",
               "the date can mean two days; the limit is the same on both"),
    ENUMERATOR(RODT_MESSAGE_STROKE_DATE_AMBIGUOUS_DEPENDS, "stroke.date-ambiguous.depends",
               "the date can mean two days; the limit depends on which it is"),
    ENUMERATOR(RODT_MESSAGE_STROKE_DATE_UNREADABLE_SAME, "stroke.date-unreadable.same",
               "the date cannot be read; the limit never changed"),
    ENUMERATOR(RODT_MESSAGE_STROKE_DATE_UNREADABLE_SAME_FROM, "stroke.date-unreadable.same-from",
               "the date cannot be read; the limit never changed, but an inspection before {day} is under no text of "
               "the rule set"),
    ENUMERATOR(RODT_MESSAGE_STROKE_DATE_UNREADABLE_DEPENDS, "stroke.date-unreadable.depends",
               "the date cannot be read; the limit depends on it"),
    ENUMERATOR(RODT_MESSAGE_STROKE_DATE_UNREADABLE_DEPENDS_FROM, "stroke.date-unreadable.depends-from",
               "the date cannot be read; the limit depends on it, but an inspection before {day} is under no text of "
               "the rule set"),
    ENUMERATOR(RODT_MESSAGE_STROKE_LOST_BLANK, "stroke.lost-blank",
               "{said}: the verdict depends on which was meant; write it with its blank"),
    ENUMERATOR(RODT_MESSAGE_STROKE_LOST_BLANK_BOTH, "stroke.lost-blank.both",
               "{said}; {said_too}: the verdict depends on which was meant; write it with its blank"),
    ENUMERATOR(RODT_MESSAGE_STROKE_LOST_BLANK_RELEASED, "stroke.lost-blank.released",
               "released was read as {released}, and with a lost blank it is {meant}"),
    ENUMERATOR(RODT_MESSAGE_STROKE_LOST_BLANK_RELEASED_TWO, "stroke.lost-blank.released-two",
               "released was read as {released}, and with a lost blank it is {meant} or {meant_too}"),
    ENUMERATOR(RODT_MESSAGE_STROKE_LOST_BLANK_APPLIED, "stroke.lost-blank.applied",
               "applied was read as {applied}, and with a lost blank it is {meant}"),
    ENUMERATOR(RODT_MESSAGE_STROKE_LOST_BLANK_APPLIED_TWO, "stroke.lost-blank.applied-two",
               "applied was read as {applied}, and with a lost blank it is {meant} or {meant_too}"),

    /* What the tape proves. */
    ENUMERATOR(RODT_MESSAGE_PROOF_WITHIN, "proof.within",
               "proven within: even at its worst the tape, read to {division}, keeps the stroke within the limit"),
    ENUMERATOR(RODT_MESSAGE_PROOF_OVER, "proof.over",
               "proven over: even at its best the tape, read to {division}, puts the stroke over the limit"),
    ENUMERATOR(RODT_MESSAGE_PROOF_AT_BEST, "proof.at-best",
               "not resolved by this tape: read to {division}, the true stroke is at best the limit itself; chance of "
               "being over {chance}"),
    ENUMERATOR(RODT_MESSAGE_PROOF_AT_WORST, "proof.at-worst",
               "not resolved by this tape: read to {division}, the true stroke is at worst the limit itself; chance of"
               " being over {chance}"),
    ENUMERATOR(RODT_MESSAGE_PROOF_EITHER, "proof.either",
               "not resolved by this tape: read to {division}, the true stroke may lie on either side of the limit; "
               "chance of being over {chance}"),
    ENUMERATOR(RODT_MESSAGE_PROOF_NO_CHANCE, "proof.no-chance",
               "not resolved by this tape: read to {division}, the true stroke may lie on either side of the limit"),

    /* What to look at next to identify a chamber. */
    ENUMERATOR(RODT_MESSAGE_OBSERVATION_NOTHING, "observation.nothing", ENGLISH_OBSERVATION_NOTHING),
    ENUMERATOR(RODT_MESSAGE_OBSERVATION_FAMILY, "observation.family", ENGLISH_OBSERVATION_FAMILY),
    ENUMERATOR(RODT_MESSAGE_OBSERVATION_STAMP, "observation.stamp", ENGLISH_OBSERVATION_STAMP),
    ENUMERATOR(RODT_MESSAGE_OBSERVATION_LONG_SIGN, "observation.long-sign", ENGLISH_OBSERVATION_LONG_SIGN),
    ENUMERATOR(RODT_MESSAGE_OBSERVATION_RATED_STROKE, "observation.rated-stroke", ENGLISH_OBSERVATION_RATED_STROKE),
    ENUMERATOR(RODT_MESSAGE_OBSERVATION_DIAMETER, "observation.diameter", ENGLISH_OBSERVATION_DIAMETER),

    /* What to do next about a wheel end. */
    ENUMERATOR(RODT_MESSAGE_ADVICE_ADJUST, "advice.adjust", ENGLISH_ADVICE_ADJUST),
    ENUMERATOR(RODT_MESSAGE_ADVICE_FIND_FAULT, "advice.find-fault", ENGLISH_ADVICE_FIND_FAULT),
    ENUMERATOR(RODT_MESSAGE_ADVICE_FIND_ADJUSTER, "advice.find-adjuster", ENGLISH_ADVICE_FIND_ADJUSTER),
    ENUMERATOR(RODT_MESSAGE_ADVICE_REPAIR, "advice.repair", ENGLISH_ADVICE_REPAIR),
    ENUMERATOR(RODT_MESSAGE_ADVICE_MEASURE, "advice.measure", ENGLISH_ADVICE_MEASURE),
    ENUMERATOR(RODT_MESSAGE_ADVICE_LOOK, "advice.look", ENGLISH_ADVICE_LOOK),

    /* The roadside count of a vehicle. */
    ENUMERATOR(RODT_MESSAGE_COUNT_NONE, "count.none", "no brake was counted"),
    ENUMERATOR(RODT_MESSAGE_COUNT_ALL, "count.all",
               "{defective} of {brakes} {brakes?brake|brakes} defective, {share}: {outcome}"),
    ENUMERATOR(RODT_MESSAGE_COUNT_OPEN, "count.open",
               "{defective} of {brakes} {brakes?brake|brakes} defective, {share}: {outcome}; {open}"),
    ENUMERATOR(RODT_MESSAGE_COUNT_REACHED, "count.reached", "{criterion} is reached"),
    ENUMERATOR(RODT_MESSAGE_COUNT_CHART, "count.chart",
               "{criterion} is reached, but not the {whole} whole {whole?brake|brakes} of the chart"),
    ENUMERATOR(RODT_MESSAGE_COUNT_BELOW, "count.below", "below {criterion}"),
    ENUMERATOR(RODT_MESSAGE_COUNT_UNKNOWN, "count.unknown", "{unknown} {unknown?brake|brakes} not known"),
    ENUMERATOR(RODT_MESSAGE_COUNT_UNKNOWN_WORST, "count.unknown.worst",
               "{unknown} {unknown?brake|brakes} not known, at worst {worst_share} of all"),
    ENUMERATOR(RODT_MESSAGE_COUNT_UNKNOWN_KNOWN, "count.unknown.known",
               "{unknown} {unknown?brake|brakes} not known, of the {known} {known?brake|brakes} known it is "
               "{known_share}"),
    ENUMERATOR(RODT_MESSAGE_COUNT_UNKNOWN_BOTH, "count.unknown.both",
               "{unknown} {unknown?brake|brakes} not known, of the {known} {known?brake|brakes} known it is "
               "{known_share}, at worst {worst_share} of all"),

    /* One axle: the sentence around, and what is said. */
    ENUMERATOR(RODT_MESSAGE_AXLE_SAID, "axle.said", "axle {axle}: {said}"),
    ENUMERATOR(RODT_MESSAGE_AXLE_CITED, "axle.cited", "axle {axle}: {said} ({document}, {section})"),
    ENUMERATOR(RODT_MESSAGE_AXLE_CITED_UNCONFIRMED, "axle.cited.unconfirmed",
               "axle {axle}: {said} ({document}, {section}; {evidence})"),
    ENUMERATOR(RODT_MESSAGE_AXLE_SIZE_DIFFERS, "axle.size-differs", ENGLISH_AXLE_SIZE_DIFFERS),
    ENUMERATOR(RODT_MESSAGE_AXLE_SPRING_DIFFERS, "axle.spring-differs", ENGLISH_AXLE_SPRING_DIFFERS),
    ENUMERATOR(RODT_MESSAGE_AXLE_FAMILY_DIFFERS, "axle.family-differs", ENGLISH_AXLE_FAMILY_DIFFERS),
    ENUMERATOR(RODT_MESSAGE_AXLE_CLASS_DIFFERS, "axle.class-differs", ENGLISH_AXLE_CLASS_DIFFERS),
    ENUMERATOR(RODT_MESSAGE_AXLE_ARM_DIFFERS, "axle.arm-differs", ENGLISH_AXLE_ARM_DIFFERS),
    ENUMERATOR(RODT_MESSAGE_AXLE_STROKES_DIFFER, "axle.strokes-differ",
               "the strokes differ by {difference} in: no law has a figure for it; look for the cause"),
    ENUMERATOR(RODT_MESSAGE_AXLE_TORQUE_DIFFERS, "axle.torque-differs",
               "type number x arm length is {left} left and {right} right: the ends do not brake alike (information)"),
    ENUMERATOR(RODT_MESSAGE_AXLE_LEFT_MISSING, "axle.left-missing",
               "the left end was not given, so nothing is known of it"),
    ENUMERATOR(RODT_MESSAGE_AXLE_RIGHT_MISSING, "axle.right-missing",
               "the right end was not given, so nothing is known of it"),
    ENUMERATOR(RODT_MESSAGE_AXLE_STEERING_DEAD, "axle.steering-dead", ENGLISH_AXLE_STEERING_DEAD),

    /* Air checks: their titles. */
    ENUMERATOR(RODT_MESSAGE_AIR_TITLE_WARNING, "air.title.warning", ENGLISH_AIR_TITLE_WARNING),
    ENUMERATOR(RODT_MESSAGE_AIR_TITLE_BUILD_UP, "air.title.build-up", ENGLISH_AIR_TITLE_BUILD_UP),
    ENUMERATOR(RODT_MESSAGE_AIR_TITLE_CUT_OUT, "air.title.cut-out", ENGLISH_AIR_TITLE_CUT_OUT),
    ENUMERATOR(RODT_MESSAGE_AIR_TITLE_CUT_IN, "air.title.cut-in", ENGLISH_AIR_TITLE_CUT_IN),
    ENUMERATOR(RODT_MESSAGE_AIR_TITLE_LOSS_RELEASED, "air.title.loss-released", ENGLISH_AIR_TITLE_LOSS_RELEASED),
    ENUMERATOR(RODT_MESSAGE_AIR_TITLE_LOSS_APPLIED, "air.title.loss-applied", ENGLISH_AIR_TITLE_LOSS_APPLIED),
    ENUMERATOR(RODT_MESSAGE_AIR_TITLE_RESERVE, "air.title.reserve", ENGLISH_AIR_TITLE_RESERVE),
    ENUMERATOR(RODT_MESSAGE_AIR_TITLE_SPRING_BRAKE, "air.title.spring-brake", ENGLISH_AIR_TITLE_SPRING_BRAKE),
    ENUMERATOR(RODT_MESSAGE_AIR_TITLE_TRACTOR_PROTECTION, "air.title.tractor-protection",
               ENGLISH_AIR_TITLE_TRACTOR_PROTECTION),
    ENUMERATOR(RODT_MESSAGE_AIR_TITLE_SUPPLY_VALVE, "air.title.supply-valve", ENGLISH_AIR_TITLE_SUPPLY_VALVE),
    ENUMERATOR(RODT_MESSAGE_AIR_TITLE_PARKING_VALVE, "air.title.parking-valve", ENGLISH_AIR_TITLE_PARKING_VALVE),
    ENUMERATOR(RODT_MESSAGE_AIR_TITLE_DRAIN, "air.title.drain", "drain valves"),
    ENUMERATOR(RODT_MESSAGE_AIR_TITLE_AUDIBLE_LEAK, "air.title.audible-leak", "audible leak"),
    ENUMERATOR(RODT_MESSAGE_AIR_TITLE_CONTAMINATION, "air.title.contamination", ENGLISH_AIR_TITLE_CONTAMINATION),

    /* The sentence of an air check as a whole. */
    ENUMERATOR(RODT_MESSAGE_AIR_NOT_DONE, "air.not-done", "{title}: not done"),
    ENUMERATOR(RODT_MESSAGE_AIR_UNDETERMINED, "air.undetermined", "{found}: undetermined, {missing}"),
    ENUMERATOR(RODT_MESSAGE_AIR_REQUIRED, "air.required", "{found}; required: {required}: {result}"),
    ENUMERATOR(RODT_MESSAGE_AIR_EDGE_PASSES, "air.edge-passes",
               "{found}; required: {required}, and this is exactly the edge, which passes: {result}"),
    ENUMERATOR(RODT_MESSAGE_AIR_EDGE_FAILS, "air.edge-fails",
               "{found}; required: {required}, and this is exactly the edge, which fails: {result}"),
    ENUMERATOR(RODT_MESSAGE_AIR_RULE, "air.rule", "{found}; the rule: {required}: {result}"),
    ENUMERATOR(RODT_MESSAGE_AIR_USUAL, "air.usual", "{found}; usual: {required}: noted, which is not a limit"),
    ENUMERATOR(RODT_MESSAGE_AIR_UNLESS, "air.unless",
               "{found}; a major defect unless: {required}: noted, smaller defects are not judged"),
    ENUMERATOR(RODT_MESSAGE_AIR_FIGURE_UNCONFIRMED, "air.figure-unconfirmed", "{finding} (figure {evidence})"),
    ENUMERATOR(RODT_MESSAGE_AIR_RULE_UNCONFIRMED, "air.rule-unconfirmed", "{finding} (rule {evidence})"),
    ENUMERATOR(RODT_MESSAGE_AIR_GOOD, "air.good", "good"),
    ENUMERATOR(RODT_MESSAGE_AIR_DEFECTIVE, "air.defective", "defective"),
    ENUMERATOR(RODT_MESSAGE_AIR_DEFECTIVE_MAJOR, "air.defective.major", "defective, a major defect"),
    ENUMERATOR(RODT_MESSAGE_AIR_DEFECTIVE_MINOR, "air.defective.minor", "defective, a minor defect"),

    /* What an air check found. */
    ENUMERATOR(RODT_MESSAGE_AIR_FOUND_WARNING, "air.found.warning", "the low-pressure warning came on at {figure}"),
    ENUMERATOR(RODT_MESSAGE_AIR_FOUND_BUILD_UP, "air.found.build-up", "{span} took {seconds}"),
    ENUMERATOR(RODT_MESSAGE_AIR_FOUND_BUILD_UP_UNTIMED, "air.found.build-up.untimed", "{span} was not timed"),
    ENUMERATOR(RODT_MESSAGE_AIR_FOUND_CUT_OUT, "air.found.cut-out", "the governor cut out at {figure}"),
    ENUMERATOR(RODT_MESSAGE_AIR_FOUND_CUT_IN, "air.found.cut-in", "the governor cut in at {figure}"),
    ENUMERATOR(RODT_MESSAGE_AIR_FOUND_CUT_IN_BELOW, "air.found.cut-in.below",
               "the governor cut in {figure} below its cut-out"),
    ENUMERATOR(RODT_MESSAGE_AIR_FOUND_LOSS_RELEASED, "air.found.loss-released",
               "brakes released, {fall} in {seconds}"),
    ENUMERATOR(RODT_MESSAGE_AIR_FOUND_LOSS_RELEASED_IS, "air.found.loss-released.is",
               "brakes released, {fall} in {seconds} is {figure}"),
    ENUMERATOR(RODT_MESSAGE_AIR_FOUND_LOSS_APPLIED, "air.found.loss-applied", "brakes applied, {fall} in {seconds}"),
    ENUMERATOR(RODT_MESSAGE_AIR_FOUND_LOSS_APPLIED_IS, "air.found.loss-applied.is",
               "brakes applied, {fall} in {seconds} is {figure}"),
    ENUMERATOR(RODT_MESSAGE_AIR_FOUND_RESERVE_IS, "air.found.reserve.is", "{fall} is {figure}"),
    ENUMERATOR(RODT_MESSAGE_AIR_FOUND_TRACTOR_PROTECTION, "air.found.tractor-protection", "the tractor kept {figure}"),
    ENUMERATOR(RODT_MESSAGE_AIR_FOUND_SUPPLY_VALVE, "air.found.supply-valve",
               "the trailer supply valve closed at {figure}"),
    ENUMERATOR(RODT_MESSAGE_AIR_FOUND_PARKING_VALVE, "air.found.parking-valve",
               "the parking valve popped out at {figure}"),
    ENUMERATOR(RODT_MESSAGE_AIR_FOUND_SPRING_BRAKE_YES, "air.found.spring-brake.yes", "the parking brake held"),
    ENUMERATOR(RODT_MESSAGE_AIR_FOUND_SPRING_BRAKE_NO, "air.found.spring-brake.no", "the parking brake did not hold"),
    ENUMERATOR(RODT_MESSAGE_AIR_FOUND_DRAIN_YES, "air.found.drain.yes",
               "the drain valves move freely and the reservoirs emptied"),
    ENUMERATOR(RODT_MESSAGE_AIR_FOUND_DRAIN_NO, "air.found.drain.no",
               "a drain valve is stuck or a reservoir did not empty"),
    ENUMERATOR(RODT_MESSAGE_AIR_FOUND_AUDIBLE_LEAK_YES, "air.found.audible-leak.yes", "a leak was heard"),
    ENUMERATOR(RODT_MESSAGE_AIR_FOUND_AUDIBLE_LEAK_NO, "air.found.audible-leak.no", "no leak was heard"),
    ENUMERATOR(RODT_MESSAGE_AIR_FOUND_CONTAMINATION_YES, "air.found.contamination.yes",
               "oil or sludge came out of a reservoir"),
    ENUMERATOR(RODT_MESSAGE_AIR_FOUND_CONTAMINATION_NO, "air.found.contamination.no", "no oil or sludge came out"),
    ENUMERATOR(RODT_MESSAGE_AIR_FOUND_FALL, "air.found.fall", "{before} to {after}"),
    ENUMERATOR(RODT_MESSAGE_AIR_FOUND_NO_FALL, "air.found.no-fall", "the pressure was not read twice"),

    /* What a build-up is timed over. */
    ENUMERATOR(RODT_MESSAGE_AIR_SPAN_UNKNOWN, "air.span.unknown", "the build-up"),
    ENUMERATOR(RODT_MESSAGE_AIR_SPAN_PRESSURES, "air.span.pressures", "{start} to {stop}"),
    ENUMERATOR(RODT_MESSAGE_AIR_SPAN_PRESSURES_BOTH, "air.span.pressures.both",
               "{start} to {stop} or {start_kpa} to {stop_kpa}"),
    ENUMERATOR(RODT_MESSAGE_AIR_SPAN_WARNING, "air.span.warning", ENGLISH_AIR_SPAN_WARNING),
    ENUMERATOR(RODT_MESSAGE_AIR_SPAN_APPLICATIONS, "air.span.applications", ENGLISH_AIR_SPAN_APPLICATIONS),
    ENUMERATOR(RODT_MESSAGE_AIR_SPAN_RECOVERY, "air.span.recovery",
               "from after a full application back to the pressure before it"),

    /* What an air check asks for. */
    ENUMERATOR(RODT_MESSAGE_AIR_REQUIRED_PUBLISHED, "air.required.published", "{published}"),
    ENUMERATOR(RODT_MESSAGE_AIR_REQUIRED_LESS_THAN, "air.required.less-than", "less than {bound}"),
    ENUMERATOR(RODT_MESSAGE_AIR_REQUIRED_NOT_MORE_THAN, "air.required.not-more-than", "not more than {bound}"),
    ENUMERATOR(RODT_MESSAGE_AIR_REQUIRED_MORE_THAN, "air.required.more-than", "more than {bound}"),
    ENUMERATOR(RODT_MESSAGE_AIR_REQUIRED_NOT_LESS_THAN, "air.required.not-less-than", "not less than {bound}"),
    ENUMERATOR(RODT_MESSAGE_AIR_REQUIRED_BETWEEN, "air.required.between", "{from} to {bound}"),
    ENUMERATOR(RODT_MESSAGE_AIR_REQUIRED_ABOUT, "air.required.about", "about {bound}"),
    ENUMERATOR(RODT_MESSAGE_AIR_REQUIRED_BELOW_CUT_OUT, "air.required.below-cut-out", "{required} below the cut-out"),

    /* What an undetermined air check lacks. */
    ENUMERATOR(RODT_MESSAGE_AIR_MISSING_ROW, "air.missing.row", "{rules} has no figure for this check and vehicle"),
    ENUMERATOR(RODT_MESSAGE_AIR_MISSING_VEHICLE, "air.missing.vehicle", "single vehicle, combination or bus decides"),
    ENUMERATOR(RODT_MESSAGE_AIR_MISSING_TOWED_UNITS, "air.missing.towed-units", "the number of towed units decides"),
    ENUMERATOR(RODT_MESSAGE_AIR_MISSING_BUILT, "air.missing.built", ENGLISH_AIR_MISSING_BUILT),
    ENUMERATOR(RODT_MESSAGE_AIR_MISSING_VOLUME, "air.missing.volume",
               "the actual and the required reservoir volume decide"),
    ENUMERATOR(RODT_MESSAGE_AIR_MISSING_SPAN, "air.missing.span", "the rule times another span, {span}"),
    ENUMERATOR(RODT_MESSAGE_AIR_MISSING_VALUE, "air.missing.value",
               "a pressure, a time or an answer of the check is missing"),
    ENUMERATOR(RODT_MESSAGE_AIR_MISSING_SENSE, "air.missing.sense",
               "the readings contradict each other: read them again"),
    ENUMERATOR(RODT_MESSAGE_AIR_MISSING_CUT_OUT, "air.missing.cut-out", ENGLISH_AIR_MISSING_CUT_OUT),
    ENUMERATOR(RODT_MESSAGE_AIR_MISSING_APPLICATIONS, "air.missing.applications",
               "the rule asks for another number of full applications, {applications}"),
    ENUMERATOR(RODT_MESSAGE_AIR_MISSING_OTHER_WAY, "air.missing.other-way",
               "this way fails, but the rule accepts another way too: check that one"),

    /* What would have been defective. */
    ENUMERATOR(RODT_MESSAGE_AIR_EDGE_DEFECTIVE, "air.edge.defective", "defective {when}"),
    ENUMERATOR(RODT_MESSAGE_AIR_EDGE_EITHER, "air.edge.either", "defective {when}, unless another way passes"),
    ENUMERATOR(RODT_MESSAGE_AIR_EDGE_MAJOR, "air.edge.major", "major defect {when}"),
    ENUMERATOR(RODT_MESSAGE_AIR_EDGE_MINOR, "air.edge.minor", "minor defect {when}"),
    ENUMERATOR(RODT_MESSAGE_AIR_EDGE_USUAL, "air.edge.usual", "nothing is defective by a usual figure: {published}"),
    ENUMERATOR(RODT_MESSAGE_AIR_EDGE_OR_MORE, "air.edge.or-more", "at {bound} or more"),
    ENUMERATOR(RODT_MESSAGE_AIR_EDGE_ABOVE, "air.edge.above", "above {bound}"),
    ENUMERATOR(RODT_MESSAGE_AIR_EDGE_OR_BELOW, "air.edge.or-below", "at {bound} or below"),
    ENUMERATOR(RODT_MESSAGE_AIR_EDGE_BELOW, "air.edge.below", "below {bound}"),
    ENUMERATOR(RODT_MESSAGE_AIR_EDGE_OUTSIDE, "air.edge.outside", "below {bound} or above {upper}"),
    ENUMERATOR(RODT_MESSAGE_AIR_EDGE_BY_VOLUME, "air.edge.by-volume", "{when} x actual / required volume"),
    ENUMERATOR(RODT_MESSAGE_AIR_EDGE_HALF_CUT_OUT, "air.edge.half-cut-out",
               "{when}, or below half of the governor's cut-out if that is less"),
    ENUMERATOR(RODT_MESSAGE_AIR_EDGE_UNDER_CUT_OUT, "air.edge.under-cut-out", "{when} under the cut-out"),
    ENUMERATOR(RODT_MESSAGE_AIR_EDGE_PER_TOWED_UNIT, "air.edge.per-towed-unit",
               "{when}, {more} more for each towed unit after the first"),
    ENUMERATOR(RODT_MESSAGE_AIR_EDGE_SPRING_BRAKE, "air.edge.spring-brake", "if the parking brake does not hold"),
    ENUMERATOR(RODT_MESSAGE_AIR_EDGE_DRAIN, "air.edge.drain",
               "if a drain valve is stuck or a reservoir does not empty"),
    ENUMERATOR(RODT_MESSAGE_AIR_EDGE_AUDIBLE_LEAK, "air.edge.audible-leak", "if a leak is heard"),
    ENUMERATOR(RODT_MESSAGE_AIR_EDGE_CONTAMINATION, "air.edge.contamination", "if oil or sludge comes out"),
};
const rodt_enumeration rodti_words_message_code = {"rodt_message_code", message_code_rows, COUNT_OF(message_code_rows),
                                                   false};
ENUMERATION_NAME(message_code)
ENUMERATION_FIND(message_code)

const char *rodt_message_template(rodt_message_code code) { return rodti_text_of(&rodti_words_message_code, code); }

const char *rodti_template_of(const rodt_catalogue **catalogue, uint32_t code)
{
    const rodt_catalogue *from = *catalogue;
    if (from != NULL && code > 0 && code < from->count && from->templates[code] != NULL)
        return from->templates[code];
    const rodt_enumerator *english = rodt_enumerator_of(&rodti_words_message_code, code);
    *catalogue = NULL;
    return english != NULL ? english->text : NULL;
}

WORDS(argument_kind, ENUMERATOR(RODT_ARGUMENT_NONE, "none", "nothing"),
      ENUMERATOR(RODT_ARGUMENT_CLAUSE, "clause", "a message inside this one"),
      ENUMERATOR(RODT_ARGUMENT_LENGTH, "length", "a length that was measured"),
      ENUMERATOR(RODT_ARGUMENT_LIMIT, "limit", "a length of law"),
      ENUMERATOR(RODT_ARGUMENT_NUMBER, "number", "an exact number, as a mixed fraction"),
      ENUMERATOR(RODT_ARGUMENT_FIGURE, "figure", "what a gauge or a watch shows"),
      ENUMERATOR(RODT_ARGUMENT_FRACTION, "fraction", "a fraction of one"),
      ENUMERATOR(RODT_ARGUMENT_DATE, "date", "a day"), ENUMERATOR(RODT_ARGUMENT_TEXT, "text", "a text as it stands"))

WORDS(plural_rule, ENUMERATOR(RODT_PLURAL_ALIKE, "alike", "one form for every number"),
      ENUMERATOR(RODT_PLURAL_ONE_OTHER, "one-other", "1, and everything else"),
      ENUMERATOR(RODT_PLURAL_BELOW_TWO, "below-two", "below 2, and everything else"),
      ENUMERATOR(RODT_PLURAL_ONE_FEW_MANY, "one-few-many", "1, 21 ...; 2 to 4, 22 ...; everything else"))
