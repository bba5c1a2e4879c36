/* SPDX-License-Identifier: Apache-2.0 */
/* The vehicle as a whole: positions, axles that do not match, and the roadside out-of-service criterion. */
#ifndef RODTRAVEL_VEHICLE_H
#define RODTRAVEL_VEHICLE_H

#include "stroke.h"

#ifdef __cplusplus
extern "C" {
#endif

/* The side of the vehicle. */
typedef enum rodt_side RODT_ENUM_TYPE {
    RODT_SIDE_UNKNOWN = 0, /* not given */
    RODT_SIDE_LEFT = 1,    /* left, seen in the direction of travel */
    RODT_SIDE_RIGHT = 2    /* right */
} rodt_side;
#define RODT_SIDE_END 3 /* one more than the last; grows in later versions */

/* The stable word of a side, "left"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_side_name(rodt_side side);

/* Finds a side by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_side_find(const char *word, RODT_ENUM32(rodt_side) *out);

/* The greatest number of an axle. */
#define RODT_AXLE_NUMBER_MAX 99

/* One wheel end of the vehicle or combination: "1L" is the left end of the foremost axle; axles are counted
 * from the front through every unit. All zero bytes mean "not given". */
typedef struct rodt_position {
    int16_t axle;                /* 1 to RODT_AXLE_NUMBER_MAX */
    RODT_ENUM32(rodt_side) side; /* of the axle */
} rodt_position;

/* Room for any position with its closing zero byte. */
#define RODT_POSITION_TEXT_SIZE 8

/* Reads "1L", "2 R", "3-left", "axle 4 right", "1LH", in any case; "G"/"gauche" and "D"/"droite" are left and right,
 * "essieu" is axle. Always the axle first.
 * RODT_OK; RODT_E_EMPTY; RODT_E_SYNTAX (column set); RODT_E_IMPLAUSIBLE: axle 0 or above 99; RODT_E_ARGUMENT. */
RODT_API RODT_MUST_CHECK rodt_status rodt_position_parse(const char *text, rodt_position *out, rodt_error *error);

/* As rodt_position_parse, for size bytes that need not be closed by a zero byte. */
RODT_API RODT_MUST_CHECK rodt_status rodt_position_parse_n(const char *text, size_t size, rodt_position *out,
                                                           rodt_error *error);

/* Writes "1L". Statuses as rodt_length_format; RODT_POSITION_TEXT_SIZE bytes are always enough. */
RODT_API rodt_status rodt_position_format(rodt_position position, char *text, size_t size, size_t *needed);

/* Kind of slack adjuster. It does not change a verdict; it changes what to do about it. */
typedef enum rodt_adjuster RODT_ENUM_TYPE {
    RODT_ADJUSTER_NOT_RECORDED = 0, /* nobody wrote it down */
    RODT_ADJUSTER_MANUAL = 1,       /* adjusted by hand */
    RODT_ADJUSTER_AUTOMATIC = 2     /* adjusts itself */
} rodt_adjuster;
#define RODT_ADJUSTER_END 3 /* one more than the last; grows in later versions */

/* The stable word of a kind of adjuster, "automatic"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_adjuster_name(rodt_adjuster adjuster);

/* Finds a kind of adjuster by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there
 * is none; RODT_E_ARGUMENT: a pointer is NULL. rodt_adjuster_parse reads what people write in a form. */
RODT_API RODT_MUST_CHECK rodt_status rodt_adjuster_find(const char *word, RODT_ENUM32(rodt_adjuster) *out);

/* Reads a kind of adjuster as written in a form: its word, "auto"; "" and "unknown" give RODT_ADJUSTER_NOT_RECORDED.
 * RODT_OK; RODT_E_SYNTAX: none of these; RODT_E_ARGUMENT. */
RODT_API RODT_MUST_CHECK rodt_status rodt_adjuster_parse(const char *text, RODT_ENUM32(rodt_adjuster) *out,
                                                         rodt_error *error);

/* As rodt_adjuster_parse, for size bytes that need not be closed by a zero byte. */
RODT_API RODT_MUST_CHECK rodt_status rodt_adjuster_parse_n(const char *text, size_t size,
                                                           RODT_ENUM32(rodt_adjuster) *out, rodt_error *error);

/* --- Counting brakes (the roadside criterion) -------------------------------------------------------- */

/* How one finding counts among the defective brakes. */
typedef enum rodt_defect RODT_ENUM_TYPE {
    RODT_DEFECT_NONE = 0,    /* within the law's limit */
    RODT_DEFECT_HALF = 1,    /* over the law's limit by less than 1/4 in */
    RODT_DEFECT_FULL = 2,    /* over by 1/4 in or more, or inoperative */
    RODT_DEFECT_UNKNOWN = 3  /* undetermined, or out by its marks alone: no law says by how much */
} rodt_defect;
#define RODT_DEFECT_END 4 /* one more than the last; grows in later versions */

/* The stable word of a class, "half"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_defect_name(rodt_defect defect);

/* Finds a class by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_defect_find(const char *word, RODT_ENUM32(rodt_defect) *out);

/* The class of a finding; RODT_DEFECT_UNKNOWN for NULL. The carrier's own stricter limit never counts here. */
RODT_API rodt_defect rodt_finding_defect(const rodt_finding *finding);

/* Brakes of one vehicle, counted one by one; zero = none yet. A plain value: a file of any length needs one
 * for each vehicle that is open. */
typedef struct rodt_tally {
    uint32_t brakes;      /* counted so far */
    uint32_t full;        /* counted as one */
    uint32_t half;        /* counted as half */
    uint32_t unknown;     /* state not known */
    uint32_t inoperative; /* part of full */
    uint32_t reserved[3]; /* zero */
} rodt_tally;

/* More brakes than any file of one vehicle has. */
#define RODT_BRAKES_MAX 1000000000u

/* Counts one finding in. error: NULL, or gets a sentence and the field: "verdict" or "brakes". RODT_OK;
 * RODT_E_ARGUMENT: tally or finding is NULL, or there is no such verdict; RODT_E_RANGE: RODT_BRAKES_MAX are counted. */
RODT_API RODT_MUST_CHECK rodt_status rodt_tally_add(rodt_tally *tally, const rodt_finding *finding, rodt_error *error);

/* Whether the roadside criterion is met. The words of rodt_outcome_name are stable. */
typedef enum rodt_outcome RODT_ENUM_TYPE {
    RODT_OUTCOME_UNDETERMINED = 0,  /* not reached by what is known, but the unknown brakes could reach it */
    RODT_OUTCOME_BELOW_CRITERION = 1,         /* cannot be reached any more */
    RODT_OUTCOME_AMBIGUOUS = 2,     /* the percentage is reached, the chart of whole brakes is not; both are shown */
    RODT_OUTCOME_OUT_OF_SERVICE = 3 /* the criterion is met */
} rodt_outcome;
#define RODT_OUTCOME_END 4 /* one more than the last; grows in later versions */

/* The count, exact. */
typedef struct rodt_count {
    RODT_ENUM32(rodt_outcome) outcome; /* whether the criterion is met */
    uint32_t brakes;       /* the denominator: brakes of the vehicle, measured or not */
    uint32_t unmeasured;   /* brakes that are there and have no finding */
    rodt_tally tally;      /* the brakes that were counted */
    rodt_ratio defective;  /* full + half/2, in brakes */
    rodt_ratio share;      /* defective / brakes; not given without a brake, like the next three */
    rodt_ratio worst_share; /* if every unknown and unmeasured brake were a full defect */
    rodt_ratio known_share; /* defective / brakes whose state is known; not given if there is none */
    rodt_ratio criterion;  /* 1/5 */
    uint32_t whole_needed; /* brakes that the chart of whole brakes asks for: criterion x brakes, rounded up */
    uint64_t reserved[4];  /* zero */
} rodt_count;

/*
 * Judges a tally by the roadside criterion.
 *
 * brakes  how many brakes the vehicle or combination has; 0 = as many as were counted; never less
 *
 * error   NULL, or gets a sentence and the field: "brakes", "tally" or "reserved"
 *
 * RODT_OK          *out is the count; without any brake the outcome is undetermined
 * RODT_E_ARGUMENT  tally or out is NULL, brakes is above zero and below the brakes counted, the tally counts more
 *                  defects than brakes, or its reserve is not zero
 * RODT_E_RANGE     more than RODT_BRAKES_MAX brakes
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_tally_judge(const rodt_tally *tally, uint32_t brakes, rodt_count *out,
                                                      rodt_error *error);

/* The stable word of an outcome, "out-of-service"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_outcome_name(rodt_outcome outcome);

/* Finds an outcome by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_outcome_find(const char *word, RODT_ENUM32(rodt_outcome) *out);

/* Writes the count in one line: "1 1/2 of 6 brakes defective, 25 %: 20 % is reached, but not the 2 whole brakes of
 * the chart". Statuses as rodt_finding_format. */
RODT_API rodt_status rodt_count_format(const rodt_count *count, char *text, size_t size, size_t *needed);

/* The same as data. Statuses as rodt_finding_message. */
RODT_API rodt_status rodt_count_message(const rodt_count *count, rodt_message *out);

/* The parts of the criterion, each with its source. */
typedef enum rodt_count_part RODT_ENUM_TYPE {
    RODT_COUNT_PART_SHARE = 0,     /* the share of defective brakes from which a vehicle is out of service */
    RODT_COUNT_PART_FULL_FROM = 1, /* the excess from which a brake counts as one */
    RODT_COUNT_PART_HALF = 2,      /* a brake that is over by less counts as half */
    RODT_COUNT_PART_CHART = 3,     /* the chart of whole brakes */
    RODT_COUNT_PART_STEERING = 4   /* a steering axle by itself */
} rodt_count_part;
#define RODT_COUNT_PART_END 5 /* one more than the last; grows in later versions */

/* The stable word of a part, "full-from"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_count_part_name(rodt_count_part part);

/* Finds a part by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_count_part_find(const char *word, RODT_ENUM32(rodt_count_part) *out);

/* Where a part comes from; NULL for a number that is none. evidence, if not NULL, gets how it was checked. */
RODT_API const rodt_source *rodt_count_part_source(rodt_count_part part, RODT_ENUM32(rodt_evidence) *evidence);

/* What the source says of a part, in few words; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_count_part_text(rodt_count_part part);

/* --- The vehicle ------------------------------------------------------------------------------------- */

/* One wheel end as it was found. All zero bytes mean "nothing recorded". */
typedef struct rodt_wheel_end {
    rodt_position position;              /* which one it is */
    RODT_ENUM32(rodt_adjuster) adjuster; /* kind of slack adjuster */
    rodt_reading reading;                /* as it was measured */
    rodt_length arm_length;              /* effective length of the slack adjuster; not given = not measured */
    uint64_t reserved[4];                /* zero */
} rodt_wheel_end;

/* What does not match on an axle, or needs a look, as bits. */
typedef enum rodt_axle_mismatch RODT_ENUM_TYPE {
    RODT_AXLE_MISMATCH_SIZE_DIFFERS = 1u << 0,   /* 49 CFR 393.47(b) */
    RODT_AXLE_MISMATCH_SPRING_DIFFERS = 1u << 1, /* 49 CFR 393.47(b) */
    RODT_AXLE_MISMATCH_FAMILY_DIFFERS = 1u << 2, /* no figure of law: unlike housings of one size */
    RODT_AXLE_MISMATCH_CLASS_DIFFERS = 1u << 3,  /* no figure of law: judged by limits of unlike stroke classes */
    RODT_AXLE_MISMATCH_ARM_DIFFERS = 1u << 4,    /* 49 CFR 393.47(c) */
    RODT_AXLE_MISMATCH_STROKES_DIFFER = 1u << 5, /* information: by more than 1/2 in (a choice of this library) */
    RODT_AXLE_MISMATCH_TORQUE_DIFFERS = 1u << 6, /* information: size x arm length is not alike */
    RODT_AXLE_MISMATCH_END_MISSING = 1u << 7,    /* only one end of the axle was given */
    RODT_AXLE_MISMATCH_STEERING_DEAD = 1u << 8   /* a brake of axle 1 is inoperative: if that axle steers, the vehicle
                                                    is out of service whatever the count says */
} rodt_axle_mismatch;
#define RODT_AXLE_MISMATCH_LAW \
    (RODT_AXLE_MISMATCH_SIZE_DIFFERS | RODT_AXLE_MISMATCH_SPRING_DIFFERS | RODT_AXLE_MISMATCH_ARM_DIFFERS)

/* The stable word of a mismatch, "size-differs"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_axle_mismatch_name(rodt_axle_mismatch mismatch);

/* Finds a mismatch by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_axle_mismatch_find(const char *word, RODT_ENUM32(rodt_axle_mismatch) *out);

/* What was found on one axle. */
typedef struct rodt_axle_finding {
    int16_t axle;                  /* number, from the front */
    int16_t reserved_1;            /* zero */
    uint32_t mismatches;           /* RODT_AXLE_MISMATCH_ bits */
    size_t left;                   /* index of the wheel end; SIZE_MAX = none */
    size_t right;                  /* the same of the right end */
    rodt_length stroke_difference; /* longer less shorter; not given = one is missing */
    rodt_ratio al_left;            /* type number x arm length, in3; not given = one is missing */
    rodt_ratio al_right;           /* the same of the right end */
    uint64_t reserved[2];          /* zero */
} rodt_axle_finding;

/* Axles of a vehicle or combination, at most. */
#define RODT_AXLES_MAX 40

/* What to do next about one wheel end. */
typedef enum rodt_advice RODT_ENUM_TYPE {
    RODT_ADVICE_NONE = 0,          /* nothing to do */
    RODT_ADVICE_ADJUST = 1,        /* manual adjuster, over: adjust, measure again */
    RODT_ADVICE_FIND_FAULT = 2,    /* automatic adjuster, over: find the fault, never turn it back by hand */
    RODT_ADVICE_FIND_ADJUSTER = 3, /* over, kind of adjuster not recorded: find out which it is first */
    RODT_ADVICE_REPAIR = 4,        /* the rod did not move */
    RODT_ADVICE_MEASURE = 5,       /* undetermined: measure (again), the reasons say how */
    RODT_ADVICE_LOOK = 6           /* in adjustment, but much shorter than its partner that is so too: too tight,
                                      or dragging? Not of a rod that hardly moved, RODT_REASON_HARDLY_MOVED */
} rodt_advice;
#define RODT_ADVICE_END 7 /* one more than the last; grows in later versions */

/* The stable word of an advice, "find-fault"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_advice_name(rodt_advice advice);

/* Finds an advice by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_advice_find(const char *word, RODT_ENUM32(rodt_advice) *out);

/* The judgement of the whole vehicle. A plain value; it points to nothing. */
typedef struct rodt_vehicle_finding {
    rodt_count count;                        /* the roadside criterion */
    uint32_t in_adjustment;                  /* wheel ends with that verdict */
    uint32_t out_of_adjustment;              /* wheel ends with that verdict */
    uint32_t inoperative;                    /* wheel ends with that verdict */
    uint32_t undetermined;                   /* wheel ends with that verdict */
    uint32_t mismatched_axles;               /* axles with a RODT_AXLE_MISMATCH_LAW bit */
    uint32_t mixed_days;                     /* wheel ends judged by another day than the first */
    size_t axle_count;                       /* axles in `axles` */
    rodt_axle_finding axles[RODT_AXLES_MAX]; /* from the front */
    uint64_t reserved[8];                    /* zero */
} rodt_vehicle_finding;

/*
 * Judges every wheel end and the vehicle.
 *
 * ends, count  the wheel ends, in any order; positions must be given and differ
 * brakes       brakes of the vehicle or combination, measured or not; 0 = both ends of every axle up to the last
 *              one that has a wheel end: axles are counted through every unit, so one that is left out is there
 * findings     gets one finding for each wheel end, in the same order
 * advice       NULL, or gets one advice for each
 *
 * error        NULL, or gets a sentence, as its line the number of the wheel end, counted from 1 (0 = none of them),
 *              and the field (fields.h), "brakes", or "count" for no wheel end at all
 *
 * RODT_OK               done
 * RODT_E_UNKNOWN_RULES  rules is NULL
 * RODT_E_ARGUMENT       another pointer is NULL, count is 0, a position is not given or is there twice, an adjuster is
 *                       unknown, an arm is no length that a tape shows, a reserve is not zero, brakes is above zero and
 *                       below count, or rodt_reading_check refuses a reading
 * RODT_E_RANGE          more than RODT_AXLES_MAX axles, or a figure does not fit
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_vehicle_judge(const rodt_wheel_end *ends, size_t count, uint32_t brakes,
                                                        const rodt_rules *rules, rodt_finding *findings,
                                                        rodt_advice *advice, rodt_vehicle_finding *out,
                                                        rodt_error *error);

/*
 * As rodt_vehicle_judge, from findings that are there already, one for each wheel end: those of rodt_form_judge_row
 * know what could not be read. The readings of the wheel ends are not looked at.
 *
 * error  as of rodt_vehicle_judge; its field also "rules" or "reserved" for a finding, with the line of its wheel end
 *
 * RODT_OK          done
 * RODT_E_ARGUMENT  a pointer but advice or error is NULL, count is 0, a position is not given or is there twice, an
 *                  adjuster is unknown, an arm is no length that a tape shows, a finding has no rule set or another
 *                  than the first, or an unknown verdict, a reserve of a wheel end or a finding is not zero, or brakes
 *                  is above zero and below count
 * RODT_E_RANGE     more than RODT_AXLES_MAX axles or RODT_BRAKES_MAX brakes, or a figure does not fit
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_vehicle_combine(const rodt_wheel_end *ends, size_t count, uint32_t brakes,
                                                          const rodt_finding *findings, rodt_advice *advice,
                                                          rodt_vehicle_finding *out, rodt_error *error);

/* One sentence on one mismatch of an axle, with its source where there is one. Statuses as
 * rodt_finding_format; RODT_E_ARGUMENT also if the axle does not have it. */
RODT_API rodt_status rodt_axle_mismatch_format(const rodt_axle_finding *axle, rodt_axle_mismatch mismatch,
                                               char *text, size_t size, size_t *needed);

/* The same as data. Statuses as rodt_finding_message; RODT_E_ARGUMENT also if the axle does not have it. */
RODT_API rodt_status rodt_axle_mismatch_message(const rodt_axle_finding *axle, rodt_axle_mismatch mismatch,
                                                rodt_message *out);

/* The source of a mismatch, or NULL if there is none; evidence, if not NULL, gets how it was checked. */
RODT_API const rodt_source *rodt_axle_mismatch_source(rodt_axle_mismatch mismatch,
                                                       RODT_ENUM32(rodt_evidence) *evidence);

/* One sentence of advice; "" for RODT_ADVICE_NONE. Constant, never NULL. */
RODT_API const char *rodt_advice_text(rodt_advice advice);

/* The same as data. RODT_OK; RODT_E_ARGUMENT: out is NULL. */
RODT_API rodt_status rodt_advice_message(rodt_advice advice, rodt_message *out);

/* The source of an advice, or NULL if there is none; evidence, if not NULL, gets how it was checked. */
RODT_API const rodt_source *rodt_advice_source(rodt_advice advice, RODT_ENUM32(rodt_evidence) *evidence);

/* --- Force, as information --------------------------------------------------------------------------- */

/* Ideal pushrod force in pound-force: type number (nominal area in square inches) x pressure. Information only: it
 * leaves out springs and friction, and says nothing beyond the limit, where the force falls off.
 * RODT_OK; RODT_E_ARGUMENT: NULL, a pressure that is not given, or a size that is no number; RODT_E_RANGE. */
RODT_API RODT_MUST_CHECK rodt_status rodt_chamber_pushrod_force(const rodt_chamber *chamber, rodt_pressure pressure,
                                                                rodt_ratio *pounds);

/* AL factor: type number x effective arm length, in cubic inches. Statuses as rodt_chamber_pushrod_force. */
RODT_API RODT_MUST_CHECK rodt_status rodt_chamber_al_factor(const rodt_chamber *chamber, rodt_length arm_length,
                                                            rodt_ratio *factor);

#ifdef __cplusplus
}
#endif
#endif
