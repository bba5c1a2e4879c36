/* SPDX-License-Identifier: Apache-2.0 */
/* The words of fields, verdicts, proofs and reasons. */
#include "judge/words.h"

ENUMERATION(field, false, ENUMERATOR(RODT_FIELD_CHAMBER, "chamber", "the mark of the chamber"),
            ENUMERATOR(RODT_FIELD_RELEASED, "released", "chamber face to clevis pin, brakes released"),
            ENUMERATOR(RODT_FIELD_APPLIED, "applied", "the same, full application held"),
            ENUMERATOR(RODT_FIELD_STROKE_CLASS, "stroke_class", "standard or long"),
            ENUMERATOR(RODT_FIELD_RATED_STROKE, "rated_stroke", "full travel marked on the housing"),
            ENUMERATOR(RODT_FIELD_MARKED_LIMIT, "marked_limit", "readjustment limit marked on the housing"),
            ENUMERATOR(RODT_FIELD_PSI, "psi", "pressure before the application"),
            ENUMERATOR(RODT_FIELD_PSI_AFTER, "psi_after", "pressure after the application"),
            ENUMERATOR(RODT_FIELD_DIVISION, "division", "smallest graduation that was read"),
            ENUMERATOR(RODT_FIELD_DATE, "date", "day of the inspection"),
            ENUMERATOR(RODT_FIELD_UNIT, "unit", "unit of lengths that name none"),
            ENUMERATOR(RODT_FIELD_ENGINE, "engine", "engine during the test: on or off"),
            ENUMERATOR(RODT_FIELD_SPRING_BRAKE, "spring_brake", "spring brake during the test: on or released"),
            ENUMERATOR(RODT_FIELD_DRUM, "drum", "temperature of the drum"),
            ENUMERATOR(RODT_FIELD_POSITION, "position", "axle and side, 1L"),
            ENUMERATOR(RODT_FIELD_ARM_LENGTH, "arm_length", "effective length of the slack adjuster"),
            ENUMERATOR(RODT_FIELD_ADJUSTER, "adjuster", "manual or automatic slack adjuster"))
ENUMERATION_NAME(field) /* rodt_field_find compares headings: fields.c */

WORDS(verdict, ENUMERATOR(RODT_VERDICT_UNDETERMINED, "undetermined", "nothing is proven"),
      ENUMERATOR(RODT_VERDICT_IN_ADJUSTMENT, "in-adjustment", "the stroke is within its limit"),
      ENUMERATOR(RODT_VERDICT_OUT_OF_ADJUSTMENT, "out-of-adjustment", "the stroke is over its limit"),
      ENUMERATOR(RODT_VERDICT_INOPERATIVE, "inoperative", "the rod did not move"))

WORDS(proof, ENUMERATOR(RODT_PROOF_NOT_ASKED, "not-asked", "no division was given, or there is no stroke or no limit"),
      ENUMERATOR(RODT_PROOF_WITHIN, "proven-within", "at worst still within the limit"),
      ENUMERATOR(RODT_PROOF_OVER, "proven-over", "at best still over the limit"),
      ENUMERATOR(RODT_PROOF_NOT_RESOLVED, "not-resolved", "this tape cannot tell"))

WORDS(drum, ENUMERATOR(RODT_DRUM_NOT_RECORDED, "not-recorded", "the temperature of the drum was not recorded"),
      ENUMERATOR(RODT_DRUM_COLD, "cold", "the drum was cold"), ENUMERATOR(RODT_DRUM_WARM, "warm", "the drum was warm"),
      ENUMERATOR(RODT_DRUM_HOT, "hot", "the drum was hot"))

WORDS(reason, ENUMERATOR(RODT_REASON_OVER_LIMIT, "over-limit", "the stroke is over the law's limit"),
      ENUMERATOR(RODT_REASON_OVER_OWN_LIMIT, "over-own-limit",
                 "the stroke is over the carrier's own limit and within the law's"),
      ENUMERATOR(RODT_REASON_AT_LIMIT, "at-limit", "the stroke is exactly at the limit"),
      ENUMERATOR(RODT_REASON_WITHIN_LIMIT, "within-limit", "the stroke is within the limit"),
      ENUMERATOR(RODT_REASON_NO_MOVEMENT, "no-movement",
                 "the rod did not move: look for a broken or seized part, or no air"),
      ENUMERATOR(RODT_REASON_READINGS_SWAPPED, "readings-swapped",
                 "applied is less than released: the readings are swapped, or one is wrong, or one was "
                 "taken from a mark and not from the chamber face; measure again"),
      ENUMERATOR(RODT_REASON_BEYOND_RATED_STROKE, "beyond-rated-stroke", "more travel than the housing can have"),
      ENUMERATOR(RODT_REASON_PRESSURE_LOW, "pressure-low", "the pressure was below the window of the rule set"),
      ENUMERATOR(RODT_REASON_PRESSURE_HIGH, "pressure-high", "the pressure was above the window of the rule set"),
      ENUMERATOR(RODT_REASON_PRESSURE_NOT_RECORDED, "pressure-not-recorded", "no pressure was recorded"),
      ENUMERATOR(RODT_REASON_ENGINE_RUNNING, "engine-running",
                 "the engine was running: the stroke is measured with it off"),
      ENUMERATOR(RODT_REASON_SPRING_BRAKE_APPLIED, "spring-brake-applied",
                 "the spring brake was applied: it holds the rod out, so the reading is no applied "
                 "stroke; release it and measure again"),
      ENUMERATOR(RODT_REASON_ASSUMED_STANDARD, "assumed-standard", "the stroke class is not known"),
      ENUMERATOR(RODT_REASON_ASSUMED_CLAMP, "assumed-clamp", "the family is not known"),
      ENUMERATOR(RODT_REASON_CONFLICTING_MARKS, "conflicting-marks",
                 "the marks of the chamber contradict each other: judged on the strict side; identify it "
                 "again"),
      ENUMERATOR(RODT_REASON_NO_PUBLISHED_LIMIT, "no-published-limit",
                 "no limit is published for this chamber, and no rated stroke or limit marked on it was "
                 "given"),
      ENUMERATOR(RODT_REASON_RULES_NOT_IN_FORCE, "rules-not-in-force", "the rule set has no text for the day"),
      ENUMERATOR(RODT_REASON_LIMIT_UNCONFIRMED, "limit-unconfirmed", "the limit was not read in its source"),
      ENUMERATOR(RODT_REASON_LIMIT_FROM_RATED, "limit-from-rated", "the limit is a part of the marked rated stroke"),
      ENUMERATOR(RODT_REASON_LIMIT_MARKED, "limit-marked",
                 "this chamber is in no table: the limit is the one marked on it"),
      ENUMERATOR(RODT_REASON_PRINTED_MM_DIFFERS, "printed-mm-differs",
                 "the printed millimetres of the limit would judge otherwise"),
      ENUMERATOR(RODT_REASON_DRUM_HOT, "drum-hot",
                 "the drum was hot, which lengthens the stroke: judged as found; measure again when it is "
                 "cold"),
      ENUMERATOR(RODT_REASON_CHAMBER_MISSING, "chamber-missing", "the chamber was not given"),
      ENUMERATOR(RODT_REASON_RELEASED_MISSING, "released-missing", "the released position was not measured"),
      ENUMERATOR(RODT_REASON_APPLIED_MISSING, "applied-missing", "the applied position was not measured"),
      ENUMERATOR(RODT_REASON_CHAMBER_UNREADABLE, "chamber-unreadable", "the chamber cannot be read"),
      ENUMERATOR(RODT_REASON_RELEASED_UNREADABLE, "released-unreadable",
                 "the released position cannot be read"),
      ENUMERATOR(RODT_REASON_APPLIED_UNREADABLE, "applied-unreadable", "the applied position cannot be read"),
      ENUMERATOR(RODT_REASON_OTHER_UNREADABLE, "other-unreadable",
                 "another entry of this wheel end cannot be read"),
      ENUMERATOR(RODT_REASON_SPREADSHEET_DATE, "spreadsheet-date",
                 "a spreadsheet turned the entry into a date; write it as text, or as a decimal"),
      ENUMERATOR(RODT_REASON_DATE_AMBIGUOUS, "date-ambiguous", "the date can mean two days"),
      ENUMERATOR(RODT_REASON_DATE_UNREADABLE, "date-unreadable", "the date cannot be read"),
      ENUMERATOR(RODT_REASON_LOST_BLANK, "lost-blank",
                 "a blank may be lost in a reading, and the other value would be judged otherwise"))
