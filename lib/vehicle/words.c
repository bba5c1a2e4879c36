/* SPDX-License-Identifier: Apache-2.0 */
/* The words of sides, adjusters, defects, outcomes, parts of the criterion, mismatches and advice. */
#include "vehicle/words.h"

#include "message/english.h"

WORDS(side, ENUMERATOR(RODT_SIDE_UNKNOWN, "unknown", "the side is not given"),
      ENUMERATOR(RODT_SIDE_LEFT, "left", "the left side"), ENUMERATOR(RODT_SIDE_RIGHT, "right", "the right side"))

WORDS(adjuster, ENUMERATOR(RODT_ADJUSTER_NOT_RECORDED, "not-recorded", "the kind is not recorded"),
      ENUMERATOR(RODT_ADJUSTER_MANUAL, "manual", "manual slack adjuster"),
      ENUMERATOR(RODT_ADJUSTER_AUTOMATIC, "automatic", "automatic slack adjuster"))

WORDS(defect, ENUMERATOR(RODT_DEFECT_NONE, "none", "within the law's limit"),
      ENUMERATOR(RODT_DEFECT_HALF, "half", "over the law's limit by less than 1/4 in"),
      ENUMERATOR(RODT_DEFECT_FULL, "full", "over the law's limit by 1/4 in or more, or inoperative"),
      ENUMERATOR(RODT_DEFECT_UNKNOWN, "unknown", "undetermined, or no law says by how much it is over"))

WORDS(outcome, ENUMERATOR(RODT_OUTCOME_UNDETERMINED, "undetermined", "the brakes that are not known could reach it"),
      ENUMERATOR(RODT_OUTCOME_BELOW_CRITERION, "below-criterion", "the criterion cannot be reached any more"),
      ENUMERATOR(RODT_OUTCOME_AMBIGUOUS, "ambiguous", "the share is reached, the chart of whole brakes is not"),
      ENUMERATOR(RODT_OUTCOME_OUT_OF_SERVICE, "out-of-service", "the criterion is reached"))

WORDS(count_part, ENUMERATOR(RODT_COUNT_PART_SHARE, "share", "the share from which a vehicle is out of service"),
      ENUMERATOR(RODT_COUNT_PART_FULL_FROM, "full-from", "the excess from which a brake counts as one"),
      ENUMERATOR(RODT_COUNT_PART_HALF, "half", "a brake that is over by less counts as half"),
      ENUMERATOR(RODT_COUNT_PART_CHART, "chart", "the chart of whole brakes"),
      ENUMERATOR(RODT_COUNT_PART_STEERING, "steering", "a steering axle by itself"))

BIT_WORDS(axle_mismatch,
          ENUMERATOR(RODT_AXLE_MISMATCH_SIZE_DIFFERS, "size-differs",
                     ENGLISH_AXLE_SIZE_DIFFERS),
          ENUMERATOR(RODT_AXLE_MISMATCH_SPRING_DIFFERS, "spring-differs",
                     ENGLISH_AXLE_SPRING_DIFFERS),
          ENUMERATOR(RODT_AXLE_MISMATCH_FAMILY_DIFFERS, "family-differs",
                     ENGLISH_AXLE_FAMILY_DIFFERS),
          ENUMERATOR(RODT_AXLE_MISMATCH_CLASS_DIFFERS, "class-differs",
                     ENGLISH_AXLE_CLASS_DIFFERS),
          ENUMERATOR(RODT_AXLE_MISMATCH_ARM_DIFFERS, "arm-differs",
                     ENGLISH_AXLE_ARM_DIFFERS),
          ENUMERATOR(RODT_AXLE_MISMATCH_STROKES_DIFFER, "strokes-differ", "the strokes differ by more than 1/2 in"),
          ENUMERATOR(RODT_AXLE_MISMATCH_TORQUE_DIFFERS, "torque-differs", "size times arm length differs"),
          ENUMERATOR(RODT_AXLE_MISMATCH_END_MISSING, "end-missing", "only one end of the axle was given"),
          ENUMERATOR(RODT_AXLE_MISMATCH_STEERING_DEAD, "steering-dead",
                     ENGLISH_AXLE_STEERING_DEAD))

WORDS(advice, ENUMERATOR(RODT_ADVICE_NONE, "none", ""),
      ENUMERATOR(RODT_ADVICE_ADJUST, "adjust", ENGLISH_ADVICE_ADJUST),
      ENUMERATOR(RODT_ADVICE_FIND_FAULT, "find-fault",
                 ENGLISH_ADVICE_FIND_FAULT),
      ENUMERATOR(RODT_ADVICE_FIND_ADJUSTER, "find-adjuster",
                 ENGLISH_ADVICE_FIND_ADJUSTER),
      ENUMERATOR(RODT_ADVICE_REPAIR, "repair",
                 ENGLISH_ADVICE_REPAIR),
      ENUMERATOR(RODT_ADVICE_MEASURE, "measure", ENGLISH_ADVICE_MEASURE),
      ENUMERATOR(RODT_ADVICE_LOOK, "look",
                 ENGLISH_ADVICE_LOOK))

const char *rodt_advice_text(rodt_advice advice) { return rodti_text_of(&rodti_words_advice, advice); }
