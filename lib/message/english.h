/* SPDX-License-Identifier: Apache-2.0 */
/* English sentences that are the text of an enumerator too. */
#ifndef RODT_ENGLISH_H
#define RODT_ENGLISH_H

#define ENGLISH_EVIDENCE_CHECKED "read in the source"
#define ENGLISH_EVIDENCE_SECOND_HAND "second-hand, unconfirmed"
#define ENGLISH_EVIDENCE_FROM_MEMORY "from memory, unconfirmed"
#define ENGLISH_EVIDENCE_COMMON_PRACTICE "common practice, no source"

#define ENGLISH_STROKE_NO_MOVEMENT "the rod did not move: look for a broken or seized part, or no air"
#define ENGLISH_STROKE_READINGS_SWAPPED \
    "applied is less than released: the readings are swapped, or one is wrong, or one was taken from a mark and" \
    " not from the chamber face; measure again"
#define ENGLISH_STROKE_ENGINE_RUNNING "the engine was running: the stroke is measured with it off"
#define ENGLISH_STROKE_SPRING_BRAKE_APPLIED \
    "the spring brake was applied: it holds the rod out, so the reading is no applied stroke; release it and " \
    "measure again"
#define ENGLISH_STROKE_CONFLICTING_MARKS \
    "the marks of the chamber contradict each other: judged on the strict side; identify it again"
#define ENGLISH_STROKE_NO_PUBLISHED_LIMIT \
    "no limit is published for this chamber, and no rated stroke or limit marked on it was given"
#define ENGLISH_STROKE_LIMIT_MARKED "this chamber is in no table: the limit is the one marked on it"
#define ENGLISH_STROKE_DRUM_HOT \
    "the drum was hot, which lengthens the stroke: judged as found; measure again when it is cold"
#define ENGLISH_STROKE_CHAMBER_MISSING "the chamber was not given"
#define ENGLISH_STROKE_RELEASED_MISSING "the released position was not measured"
#define ENGLISH_STROKE_APPLIED_MISSING "the applied position was not measured"
#define ENGLISH_STROKE_CHAMBER_UNREADABLE "the chamber cannot be read"
#define ENGLISH_STROKE_RELEASED_UNREADABLE "the released position cannot be read"
#define ENGLISH_STROKE_APPLIED_UNREADABLE "the applied position cannot be read"
#define ENGLISH_STROKE_OTHER_UNREADABLE "another entry of this wheel end cannot be read"
#define ENGLISH_STROKE_SPREADSHEET_DATE "a spreadsheet turned the entry into a date; write it as text, or as a decimal"

#define ENGLISH_OBSERVATION_NOTHING "nothing is open"
#define ENGLISH_OBSERVATION_FAMILY \
    "look how the housing is held together: a clamp band, a flange with bolts, a rolling diaphragm, or three " \
    "air lines (DD-3)"
#define ENGLISH_OBSERVATION_STAMP \
    "clean the housing and read the stamped type: a number such as 30, or a letter on a bolt type"
#define ENGLISH_OBSERVATION_LONG_SIGN \
    "look for a sign of long stroke: square ports, a trapezoid tag, or the letters L or LS; without one it is " \
    "judged as standard"
#define ENGLISH_OBSERVATION_RATED_STROKE "read the rated stroke marked on the housing: 3 in has a limit of its own"
#define ENGLISH_OBSERVATION_DIAMETER "measure the outside diameter of the housing with a tape"

#define ENGLISH_ADVICE_ADJUST "adjust it, measure again, and look at lining and drum"
#define ENGLISH_ADVICE_FIND_FAULT \
    "automatic adjuster: do not adjust it by hand to make it pass; find the cause (adjuster, its fitting, bushings, " \
    "cam, drum, chamber) and repair it"
#define ENGLISH_ADVICE_FIND_ADJUSTER \
    "find out which adjuster it is: adjust a manual one and measure again; do not adjust an automatic one by hand " \
    "to make it pass, find the cause and repair it"
#define ENGLISH_ADVICE_REPAIR "it does not brake: look for a broken or seized part, or no air; repair it"
#define ENGLISH_ADVICE_MEASURE "not checked: fix what is named, measure again"
#define ENGLISH_ADVICE_LOOK "in adjustment, but much shorter than its partner: look whether it is too tight or drags"

#define ENGLISH_AXLE_SIZE_DIFFERS "the chambers differ in size; both ends of an axle must have the same"
#define ENGLISH_AXLE_SPRING_DIFFERS "the spring brake chambers differ in size; both ends of an axle must have the same"
#define ENGLISH_AXLE_FAMILY_DIFFERS "the housings are of different kinds: look whether one was identified wrongly"
#define ENGLISH_AXLE_CLASS_DIFFERS "one chamber is judged as long stroke and one as standard: look at the marks of both"
#define ENGLISH_AXLE_ARM_DIFFERS \
    "the arms of the slack adjusters differ in length; both ends of an axle must have the same"
#define ENGLISH_AXLE_STEERING_DEAD \
    "a brake does not work: if this axle steers, the vehicle is out of service by that alone"

#define ENGLISH_AIR_TITLE_WARNING "low-pressure warning"
#define ENGLISH_AIR_TITLE_BUILD_UP "pressure build-up"
#define ENGLISH_AIR_TITLE_CUT_OUT "governor cut-out"
#define ENGLISH_AIR_TITLE_CUT_IN "governor cut-in"
#define ENGLISH_AIR_TITLE_LOSS_RELEASED "pressure loss, brakes released"
#define ENGLISH_AIR_TITLE_LOSS_APPLIED "pressure loss, brakes applied"
#define ENGLISH_AIR_TITLE_RESERVE "reserve after full applications"
#define ENGLISH_AIR_TITLE_SPRING_BRAKE "parking brake hold"
#define ENGLISH_AIR_TITLE_TRACTOR_PROTECTION "tractor protection"
#define ENGLISH_AIR_TITLE_SUPPLY_VALVE "trailer supply valve"
#define ENGLISH_AIR_TITLE_PARKING_VALVE "parking valve"
#define ENGLISH_AIR_TITLE_CONTAMINATION "moisture, oil or sludge in the reservoirs"
#define ENGLISH_AIR_TITLE_TRAILER_BRAKES "trailer spring brakes on loss of supply"
#define ENGLISH_AIR_SPAN_WARNING "from where the warning stops to the greatest pressure"
#define ENGLISH_AIR_SPAN_APPLICATIONS "from after five full applications to the greatest pressure"
#define ENGLISH_AIR_MISSING_BUILT "the day of build decides"
#define ENGLISH_AIR_MISSING_CUT_OUT "the governor's cut-out decides"

#endif
