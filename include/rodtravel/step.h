/* SPDX-License-Identifier: Apache-2.0 */
/* The steps of an inspection as they are said aloud: what one does, what one sees, why it is good, and what would have
 * been defective, with the figures of a rule set. */
#ifndef RODTRAVEL_STEP_H
#define RODTRAVEL_STEP_H

#include "aircheck.h"

#ifdef __cplusplus
extern "C" {
#endif

/* The steps, in the order of an inspection. The words of rodt_step_name are stable. */
typedef enum rodt_step RODT_ENUM_TYPE {
    RODT_STEP_NONE = 0,                /* no step */
    RODT_STEP_SECURE = 1,              /* "secure": the vehicle is secured */
    RODT_STEP_DRAIN = 2,               /* "drain": the reservoirs are drained, and what comes out is looked at */
    RODT_STEP_COMPRESSOR = 3,          /* "compressor": the compressor and its belt are looked at */
    RODT_STEP_WARNING = 4,             /* "warning": the low air warning */
    RODT_STEP_BUILD_UP = 5,            /* "build-up": how soon the compressor builds up the pressure */
    RODT_STEP_CUT_OUT = 6,             /* "cut-out": where the governor stops the compressor */
    RODT_STEP_CUT_IN = 7,              /* "cut-in": where it starts it again */
    RODT_STEP_AUDIBLE_LEAK = 8,        /* "audible-leak": listening for leaks */
    RODT_STEP_LOSS_RELEASED = 9,       /* "loss-released": air loss, brakes released */
    RODT_STEP_LOSS_APPLIED = 10,       /* "loss-applied": air loss, brakes applied */
    RODT_STEP_RESERVE = 11,            /* "reserve": what full applications leave */
    RODT_STEP_TRACTOR_PROTECTION = 12, /* "tractor-protection": the tractor keeps its air */
    RODT_STEP_SUPPLY_VALVE = 13,       /* "supply-valve": a trailer without air stops by itself */
    RODT_STEP_PARKING_VALVE = 14,      /* "parking-valve": the parking valve pops out */
    RODT_STEP_SPRING_BRAKE = 15,       /* "spring-brake": the parking brake holds */
    RODT_STEP_SERVICE_BRAKE = 16,      /* "service-brake": the service brake stops the vehicle */
    RODT_STEP_CHAMBER = 17,            /* "chamber": which chamber it is */
    RODT_STEP_RELEASED = 18,           /* "released": the released reading */
    RODT_STEP_APPLICATION = 19,        /* "application": the full application at the pressure of the test */
    RODT_STEP_APPLIED = 20,            /* "applied": the applied reading */
    RODT_STEP_SUBTRACT = 21,           /* "subtract": the stroke is their difference */
    RODT_STEP_COMPARE = 22,            /* "compare": the stroke and its limit */
    RODT_STEP_VEHICLE = 23             /* "vehicle": the verdict, and what to do */
} rodt_step;
#define RODT_STEP_END 24 /* one more than the last; grows in later versions */

/* The texts of a step. */
typedef enum rodt_step_part RODT_ENUM_TYPE {
    RODT_STEP_PART_TITLE = 0,    /* a few words: "Low air warning" */
    RODT_STEP_PART_DO = 1,       /* a sentence: what I do */
    RODT_STEP_PART_SEE = 2,      /* what I see or hear, of a good vehicle */
    RODT_STEP_PART_GOOD = 3,     /* why that is good */
    RODT_STEP_PART_DEFECTIVE = 4 /* what would have been defective */
} rodt_step_part;
#define RODT_STEP_PART_END 5 /* one more than the last; grows in later versions */

/* The stable word of a step, "build-up"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_step_name(rodt_step step);

/* Finds a step by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_step_find(const char *word, RODT_ENUM32(rodt_step) *out);

/* The stable word of a part, "good"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_step_part_name(rodt_step_part part);

/* Finds a part by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_step_part_find(const char *word, RODT_ENUM32(rodt_step_part) *out);

/*
 * The steps of a rule set for a vehicle, in their order. A single vehicle and a bus have no steps of a trailer; where
 * strokes have no limit, no stroke is measured. RODT_VEHICLE_CLASS_ANY has them all. A rule set of a carrier has the
 * steps of its law. 0 and RODT_STEP_NONE if rules is NULL, and RODT_STEP_NONE beyond the count.
 */
RODT_API size_t rodt_step_count(const rodt_rules *rules, rodt_vehicle_class vehicle);
RODT_API rodt_step rodt_step_at(const rodt_rules *rules, rodt_vehicle_class vehicle, size_t index);

/* The air check that a step is, and the step of an air check: oil and sludge are looked for while one drains. The NONE
 * of each where there is none. */
RODT_API rodt_air_check rodt_step_check(rodt_step step);
RODT_API rodt_step rodt_step_of_check(rodt_air_check check);

/*
 * The rows of a rule set that a step can have on a vehicle, in the order of the table: those that would judge it. What
 * is not said of the vehicle stays open, so there can be several, such as one for each number of towed units. Of a
 * carrier's rule set its own rows come first, then those of its law that are for vehicles without an own row.
 *
 * vehicle  its members vehicle, towed_units and built are read; NULL = nothing is said
 *
 * The row of that index; NULL beyond the last, or if rules is NULL.
 */
RODT_API const rodt_air_limit *rodt_step_row_at(rodt_step step, const rodt_rules *rules,
                                                const rodt_air_reading *vehicle, size_t index);

/*
 * One text of a step, with the figures of a row and of the rule set put into it. A carrier's row is named as such, with
 * what the law says beside it and where.
 *
 * row  NULL = without a figure; otherwise a row of the check of the step (rodt_step_row_at)
 *
 * RODT_OK               *out is the sentence
 * RODT_E_ARGUMENT       out is NULL, step or part is none, or row is one of another check
 * RODT_E_UNKNOWN_RULES  rules is NULL
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_step_message(rodt_step step, rodt_step_part part, const rodt_rules *rules,
                                                       const rodt_air_limit *row, rodt_message *out);

/* The same in English. text, size, needed as in status.h; statuses as above, and RODT_E_SPACE. */
RODT_API rodt_status rodt_step_format(rodt_step step, rodt_step_part part, const rodt_rules *rules,
                                      const rodt_air_limit *row, char *text, size_t size, size_t *needed);

#ifdef __cplusplus
}
#endif
#endif
