/* SPDX-License-Identifier: Apache-2.0 */
/* The words of evidence, of the basis of a limit, of rows of air checks and of steps. */
#include "rules/words.h"

#include "message/english.h"

WORDS(evidence, ENUMERATOR(RODT_EVIDENCE_NONE, "none", "none"),
      ENUMERATOR(RODT_EVIDENCE_CHECKED, "checked", ENGLISH_EVIDENCE_CHECKED),
      ENUMERATOR(RODT_EVIDENCE_SECOND_HAND, "second-hand", ENGLISH_EVIDENCE_SECOND_HAND),
      ENUMERATOR(RODT_EVIDENCE_FROM_MEMORY, "from-memory", ENGLISH_EVIDENCE_FROM_MEMORY),
      ENUMERATOR(RODT_EVIDENCE_COMMON_PRACTICE, "common-practice", ENGLISH_EVIDENCE_COMMON_PRACTICE))

/* What is no enumerator is never shown as law. */
const char *rodt_evidence_text(rodt_evidence evidence)
{
    const rodt_enumerator *found = rodt_enumerator_of(&rodti_words_evidence, evidence);
    return found != NULL ? found->text : rodti_text_of(&rodti_words_evidence, RODT_EVIDENCE_FROM_MEMORY);
}

WORDS(basis, ENUMERATOR(RODT_BASIS_NONE, "none", "no limit is published"),
      ENUMERATOR(RODT_BASIS_TABLE, "table", "a row of the table of limits"),
      ENUMERATOR(RODT_BASIS_RATED_SHARE, "rated-share", "a part of the rated stroke marked on the chamber"),
      ENUMERATOR(RODT_BASIS_MARKED_LIMIT, "marked-limit", "the limit marked on the chamber"),
      ENUMERATOR(RODT_BASIS_NOT_IN_FORCE, "not-in-force", "the rule set has no text for the day"))

WORDS(air_check, ENUMERATOR(RODT_AIR_CHECK_NONE, "none", ""),
      ENUMERATOR(RODT_AIR_CHECK_WARNING, "warning", ENGLISH_AIR_TITLE_WARNING),
      ENUMERATOR(RODT_AIR_CHECK_BUILD_UP, "build-up", ENGLISH_AIR_TITLE_BUILD_UP),
      ENUMERATOR(RODT_AIR_CHECK_CUT_OUT, "cut-out", ENGLISH_AIR_TITLE_CUT_OUT),
      ENUMERATOR(RODT_AIR_CHECK_CUT_IN, "cut-in", ENGLISH_AIR_TITLE_CUT_IN),
      ENUMERATOR(RODT_AIR_CHECK_LOSS_RELEASED, "loss-released", ENGLISH_AIR_TITLE_LOSS_RELEASED),
      ENUMERATOR(RODT_AIR_CHECK_LOSS_APPLIED, "loss-applied", ENGLISH_AIR_TITLE_LOSS_APPLIED),
      ENUMERATOR(RODT_AIR_CHECK_RESERVE, "reserve", ENGLISH_AIR_TITLE_RESERVE),
      ENUMERATOR(RODT_AIR_CHECK_SPRING_BRAKE, "spring-brake", ENGLISH_AIR_TITLE_SPRING_BRAKE),
      ENUMERATOR(RODT_AIR_CHECK_TRACTOR_PROTECTION, "tractor-protection", ENGLISH_AIR_TITLE_TRACTOR_PROTECTION),
      ENUMERATOR(RODT_AIR_CHECK_SUPPLY_VALVE, "supply-valve", ENGLISH_AIR_TITLE_SUPPLY_VALVE),
      ENUMERATOR(RODT_AIR_CHECK_PARKING_VALVE, "parking-valve", ENGLISH_AIR_TITLE_PARKING_VALVE),
      ENUMERATOR(RODT_AIR_CHECK_DRAIN, "drain", "drain valves"),
      ENUMERATOR(RODT_AIR_CHECK_AUDIBLE_LEAK, "audible-leak", "audible leak"),
      ENUMERATOR(RODT_AIR_CHECK_CONTAMINATION, "contamination", ENGLISH_AIR_TITLE_CONTAMINATION),
      ENUMERATOR(RODT_AIR_CHECK_TRAILER_BRAKES, "trailer-brakes", ENGLISH_AIR_TITLE_TRAILER_BRAKES))

const char *rodt_air_check_title(rodt_air_check check) { return rodti_text_of(&rodti_words_air_check, check); }

WORDS(step, ENUMERATOR(RODT_STEP_NONE, "none", "no step"),
      ENUMERATOR(RODT_STEP_SECURE, "secure", "the vehicle is secured"),
      ENUMERATOR(RODT_STEP_DRAIN, "drain", "the reservoirs are drained"),
      ENUMERATOR(RODT_STEP_COMPRESSOR, "compressor", "the compressor and its belt are looked at"),
      ENUMERATOR(RODT_STEP_WARNING, "warning", "the low air warning comes on"),
      ENUMERATOR(RODT_STEP_BUILD_UP, "build-up", "the compressor builds up the pressure"),
      ENUMERATOR(RODT_STEP_CUT_OUT, "cut-out", "the governor stops the compressor"),
      ENUMERATOR(RODT_STEP_CUT_IN, "cut-in", "the governor starts it again"),
      ENUMERATOR(RODT_STEP_AUDIBLE_LEAK, "audible-leak", "one listens for leaks"),
      ENUMERATOR(RODT_STEP_LOSS_RELEASED, "loss-released", "the air loss is timed, brakes released"),
      ENUMERATOR(RODT_STEP_LOSS_APPLIED, "loss-applied", "the air loss is timed, brakes applied"),
      ENUMERATOR(RODT_STEP_RESERVE, "reserve", "the reserve after full applications is read"),
      ENUMERATOR(RODT_STEP_TRACTOR_PROTECTION, "tractor-protection", "the tractor keeps its air"),
      ENUMERATOR(RODT_STEP_SUPPLY_VALVE, "supply-valve", "the trailer stops by itself without air"),
      ENUMERATOR(RODT_STEP_PARKING_VALVE, "parking-valve", "the parking valve pops out"),
      ENUMERATOR(RODT_STEP_SPRING_BRAKE, "spring-brake", "the parking brake holds"),
      ENUMERATOR(RODT_STEP_SERVICE_BRAKE, "service-brake", "the service brake stops the vehicle"),
      ENUMERATOR(RODT_STEP_CHAMBER, "chamber", "the chamber is identified"),
      ENUMERATOR(RODT_STEP_RELEASED, "released", "the released position is measured"),
      ENUMERATOR(RODT_STEP_APPLICATION, "application", "the pedal is held down at the pressure of the test"),
      ENUMERATOR(RODT_STEP_APPLIED, "applied", "the applied position is measured"),
      ENUMERATOR(RODT_STEP_SUBTRACT, "subtract", "the stroke is computed"),
      ENUMERATOR(RODT_STEP_COMPARE, "compare", "the stroke is compared with its limit"),
      ENUMERATOR(RODT_STEP_VEHICLE, "vehicle", "the whole vehicle is judged"))

WORDS(step_part, ENUMERATOR(RODT_STEP_PART_TITLE, "title", "what the step is called"),
      ENUMERATOR(RODT_STEP_PART_DO, "do", "what one does"), ENUMERATOR(RODT_STEP_PART_SEE, "see", "what one sees"),
      ENUMERATOR(RODT_STEP_PART_GOOD, "good", "why it is good"),
      ENUMERATOR(RODT_STEP_PART_DEFECTIVE, "defective", "what would have been defective"))

WORDS(vehicle_class, ENUMERATOR(RODT_VEHICLE_CLASS_ANY, "any", "any vehicle; of a reading: not said"),
      ENUMERATOR(RODT_VEHICLE_CLASS_SINGLE, "single", "one unit"),
      ENUMERATOR(RODT_VEHICLE_CLASS_COMBINATION, "combination", "a towing unit and one towed unit or more"),
      ENUMERATOR(RODT_VEHICLE_CLASS_BUS, "bus", "one unit that carries passengers"))

WORDS(comparison, ENUMERATOR(RODT_COMPARISON_LESS_THAN, "less-than", "below the figure"),
      ENUMERATOR(RODT_COMPARISON_NOT_MORE_THAN, "not-more-than", "at the figure or below"),
      ENUMERATOR(RODT_COMPARISON_MORE_THAN, "more-than", "above the figure"),
      ENUMERATOR(RODT_COMPARISON_NOT_LESS_THAN, "not-less-than", "at the figure or above"),
      ENUMERATOR(RODT_COMPARISON_BETWEEN, "between", "between two figures, both ends good"),
      ENUMERATOR(RODT_COMPARISON_MUST_BE_YES, "must-be-yes", "the answer must be yes"),
      ENUMERATOR(RODT_COMPARISON_MUST_BE_NO, "must-be-no", "the answer must be no"))

WORDS(air_measure, ENUMERATOR(RODT_AIR_MEASURE_PSI, "psi", "pressure in psi"),
      ENUMERATOR(RODT_AIR_MEASURE_KPA, "kPa", "pressure in kPa"),
      ENUMERATOR(RODT_AIR_MEASURE_SECONDS, "seconds", "time in seconds"),
      ENUMERATOR(RODT_AIR_MEASURE_PSI_PER_MINUTE, "psi-per-minute", "pressure lost in one minute, psi"),
      ENUMERATOR(RODT_AIR_MEASURE_KPA_PER_MINUTE, "kPa-per-minute", "pressure lost in one minute, kPa"),
      ENUMERATOR(RODT_AIR_MEASURE_PERCENT_LEFT, "percent-left", "pressure after over pressure before"),
      ENUMERATOR(RODT_AIR_MEASURE_PERCENT_LOST, "percent-lost", "pressure lost over pressure before"),
      ENUMERATOR(RODT_AIR_MEASURE_YES_NO, "yes-no", "a question that is answered yes or no"))

WORDS(air_kind, ENUMERATOR(RODT_AIR_KIND_LIMIT, "limit", "a limit"),
      ENUMERATOR(RODT_AIR_KIND_MAJOR, "major", "the bound of a major defect; nothing is said of what is before it"),
      ENUMERATOR(RODT_AIR_KIND_USUAL, "usual", "a usual figure, not a limit"),
      ENUMERATOR(RODT_AIR_KIND_LIMIT_AND_MAJOR, "limit-and-major", "a limit; what is beyond it is a major defect"),
      ENUMERATOR(RODT_AIR_KIND_LIMIT_AND_MINOR, "limit-and-minor", "a limit; what is beyond it is a minor defect"),
      ENUMERATOR(RODT_AIR_KIND_EITHER, "either", "one of several ways to check the same; one that is good is enough"))

WORDS(air_span, ENUMERATOR(RODT_AIR_SPAN_PRESSURES, "pressures", "from one pressure to another"),
      ENUMERATOR(RODT_AIR_SPAN_WARNING, "warning", ENGLISH_AIR_SPAN_WARNING),
      ENUMERATOR(RODT_AIR_SPAN_APPLICATIONS, "applications",
                 ENGLISH_AIR_SPAN_APPLICATIONS),
      ENUMERATOR(RODT_AIR_SPAN_RECOVERY, "recovery",
                 "from after one full application back to the pressure before it"))
