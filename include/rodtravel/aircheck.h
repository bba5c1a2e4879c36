/* SPDX-License-Identifier: Apache-2.0 */
/* The air-system checks done in the cab, each by the published edge of its rule set. */
#ifndef RODTRAVEL_AIRCHECK_H
#define RODTRAVEL_AIRCHECK_H

#include "rules.h"

#ifdef __cplusplus
extern "C" {
#endif

/* What is checked. The words of rodt_air_check_name are stable. */
typedef enum rodt_air_check RODT_ENUM_TYPE {
    RODT_AIR_CHECK_NONE = 0,               /* no check */
    RODT_AIR_CHECK_WARNING = 1,            /* "warning": low-pressure warning, pressure at which it came on */
    RODT_AIR_CHECK_BUILD_UP = 2,           /* "build-up": time from one pressure to another */
    RODT_AIR_CHECK_CUT_OUT = 3,            /* "cut-out": governor, pressure at which the compressor stops pumping */
    RODT_AIR_CHECK_CUT_IN = 4,             /* "cut-in": governor, pressure at which it starts again */
    RODT_AIR_CHECK_LOSS_RELEASED = 5,      /* "loss-released": pressure lost, brakes released */
    RODT_AIR_CHECK_LOSS_APPLIED = 6,       /* "loss-applied": pressure lost, full application held */
    RODT_AIR_CHECK_RESERVE = 7,            /* "reserve": pressure before and after full applications, engine off */
    RODT_AIR_CHECK_SPRING_BRAKE = 8,       /* "spring-brake": does the parking brake hold against a gentle pull */
    RODT_AIR_CHECK_TRACTOR_PROTECTION = 9, /* "tractor-protection": pressure kept in the tractor; or, yes or no, did it
                                              hold: no air escaped from the service line */
    RODT_AIR_CHECK_SUPPLY_VALVE = 10,      /* "supply-valve": pressure at which the trailer supply valve closes */
    RODT_AIR_CHECK_PARKING_VALVE = 11,     /* "parking-valve": pressure at which the parking valve pops out */
    RODT_AIR_CHECK_DRAIN = 12,             /* "drain": do the drain valves move freely and let the reservoirs empty */
    RODT_AIR_CHECK_AUDIBLE_LEAK = 13,      /* "audible-leak": is a leak heard */
    RODT_AIR_CHECK_CONTAMINATION = 14, /* "contamination": did much moisture, oil or sludge come out */
    RODT_AIR_CHECK_TRAILER_BRAKES = 15 /* "trailer-brakes": do the trailer's spring brakes apply on loss of supply */
} rodt_air_check;
#define RODT_AIR_CHECK_END 16 /* one more than the last; grows in later versions */

/* Which vehicles a row is for. */
typedef enum rodt_vehicle_class RODT_ENUM_TYPE {
    RODT_VEHICLE_CLASS_ANY = 0,         /* in a reading: not said */
    RODT_VEHICLE_CLASS_SINGLE = 1,      /* one unit */
    RODT_VEHICLE_CLASS_COMBINATION = 2, /* towing unit and one towed unit or more, by towed_units */
    RODT_VEHICLE_CLASS_BUS = 3          /* one unit that carries passengers */
} rodt_vehicle_class;
#define RODT_VEHICLE_CLASS_END 4 /* one more than the last; grows in later versions */

/* How a figure is compared with the value of a row: what is good. */
typedef enum rodt_comparison RODT_ENUM_TYPE {
    RODT_COMPARISON_LESS_THAN = 0,     /* good below the value */
    RODT_COMPARISON_NOT_MORE_THAN = 1, /* good at the value and below */
    RODT_COMPARISON_MORE_THAN = 2,     /* good above the value */
    RODT_COMPARISON_NOT_LESS_THAN = 3, /* good at the value and above */
    RODT_COMPARISON_BETWEEN = 4,       /* both ends good */
    RODT_COMPARISON_MUST_BE_YES = 5,   /* good if the answer is yes */
    RODT_COMPARISON_MUST_BE_NO = 6     /* good if the answer is no */
} rodt_comparison;
#define RODT_COMPARISON_END 7 /* one more than the last; grows in later versions */

/* What a row's figures are measured in. */
typedef enum rodt_air_measure RODT_ENUM_TYPE {
    RODT_AIR_MEASURE_PSI = 0,            /* gauge pressure in psi */
    RODT_AIR_MEASURE_KPA = 1,            /* gauge pressure in kPa */
    RODT_AIR_MEASURE_SECONDS = 2,        /* seconds */
    RODT_AIR_MEASURE_PSI_PER_MINUTE = 3, /* loss in psi a minute */
    RODT_AIR_MEASURE_KPA_PER_MINUTE = 4, /* loss in kPa a minute */
    RODT_AIR_MEASURE_PERCENT_LEFT = 5,   /* pressure after over pressure before */
    RODT_AIR_MEASURE_PERCENT_LOST = 6,   /* loss over pressure before */
    RODT_AIR_MEASURE_YES_NO = 7          /* an answer, no figure */
} rodt_air_measure;
#define RODT_AIR_MEASURE_END 8 /* one more than the last; grows in later versions */

/* How a rule set ranks a row. */
typedef enum rodt_air_kind RODT_ENUM_TYPE {
    RODT_AIR_KIND_LIMIT = 0,       /* a limit; beyond it is a defect */
    RODT_AIR_KIND_MAJOR = 1,       /* beyond it the defect is a major one; what lies before it is not judged */
    RODT_AIR_KIND_USUAL = 2,       /* a usual figure, not a limit: only a note, never a defect */
    RODT_AIR_KIND_LIMIT_AND_MAJOR = 3, /* a limit, and what is beyond it is a major defect */
    RODT_AIR_KIND_LIMIT_AND_MINOR = 4, /* a limit, and what is beyond it is a minor defect */
    RODT_AIR_KIND_EITHER = 5       /* one of several ways to check the same: one that is good is enough */
} rodt_air_kind;
#define RODT_AIR_KIND_END 6 /* one more than the last; grows in later versions */

/* What a build-up is timed over. */
typedef enum rodt_air_span RODT_ENUM_TYPE {
    RODT_AIR_SPAN_PRESSURES = 0,         /* from one pressure to another */
    RODT_AIR_SPAN_WARNING = 1,      /* from where the low-pressure warning stops to the greatest pressure */
    RODT_AIR_SPAN_APPLICATIONS = 2, /* from after five full applications to the greatest pressure */
    RODT_AIR_SPAN_RECOVERY = 3           /* from after one full application back to the pressure before it */
} rodt_air_span;
#define RODT_AIR_SPAN_END 4 /* one more than the last; grows in later versions */

/* One row of the table of air checks. States the acceptable condition. */
typedef struct rodt_air_limit {
    RODT_ENUM32(rodt_air_check) check; /* what is checked */
    RODT_ENUM32(rodt_air_kind) kind; /* how the rule set ranks it */
    RODT_ENUM32(rodt_vehicle_class) vehicle; /* which vehicles it is for */
    int16_t towed_units;        /* -1 = any number; otherwise the row is for just this many ... */
    bool towed_or_more;         /* ... or for this many and more */
    RODT_ENUM32(rodt_comparison) comparison; /* what is good */
    RODT_ENUM32(rodt_air_measure) measure; /* what the figures are measured in */
    rodt_ratio value;           /* in `measure`; the lower end of RODT_COMPARISON_BETWEEN; not given for yes/no and
                                   for half of the cut-out alone */
    rodt_ratio upper;           /* of RODT_COMPARISON_BETWEEN */
    rodt_ratio per_towed_unit;  /* added to value for each towed unit after the first; not given = none */
    RODT_ENUM32(rodt_air_span) span; /* build-up: what is timed */
    rodt_pressure start;        /* ... of RODT_AIR_SPAN_PRESSURES; not given otherwise */
    rodt_pressure stop;         /* the pressure at which the time stops */
    rodt_pressure start_kpa;    /* the kPa printed beside them, rounded by the source; not given = none printed */
    rodt_pressure stop_kpa;     /* the kPa printed beside `stop` */
    int16_t applications;       /* reserve: full applications between the two readings; 0 otherwise */
    bool by_volume;             /* build-up: value x actual / required reservoir volume (49 CFR 571.121 S5.1.1) */
    bool half_cut_out;          /* warning: or half of the governor's cut-out, whichever is less; alone without value */
    bool below_cut_out;         /* cut-in: measured is how far it lies below the governor's cut-out */
    rodt_date built_from;       /* vehicles built from / until, both inside; not given = any */
    rodt_date built_until;      /* the last day of build */
    const char *published;      /* the figure and its edge as worded, "not more than 3 psi" */
    const char *setup;          /* how the check is set up: "engine off, full application, first drop ignored" */
    const rodt_source *source;  /* never NULL */
    RODT_ENUM32(rodt_evidence) evidence; /* how the figure was checked */
} rodt_air_limit;

/* The rows of a rule set, in the order of the table; of a carrier's limits, its own rows only (rodt_rules_air_law has
 * the others). NULL beyond the count. */
RODT_API size_t rodt_rules_air_count(const rodt_rules *rules);
RODT_API const rodt_air_limit *rodt_rules_air_at(const rodt_rules *rules, size_t index);

/* One check as it was done. All zero bytes mean "nothing recorded"; set what there is. */
typedef struct rodt_air_reading {
    RODT_ENUM32(rodt_air_check) check; /* what was checked */
    RODT_ENUM32(rodt_vehicle_class) vehicle; /* what it is; any = not said */
    RODT_ENUM32(rodt_air_span) span; /* build-up: what was timed; before and after only matter for pressures */
    RODT_ENUM32(rodt_recorded) answer; /* yes/no checks: did it hold, was it heard ... Warning, build-up, governor and
                                          valves: no = what was waited for never came, a defect without a figure */
    int16_t towed_units;        /* above 0 says a combination; 0 of a combination = not said */
    int16_t applications;       /* reserve: full applications made; 0 = as many as the rule set asks for */
    rodt_date built;            /* day of build; month and day may be 0, then it is the year; not given = unknown */
    RODT_ENUM32(rodt_pressure_unit) pressure_unit; /* unit that the gauge was read in */
    rodt_pressure pressure;     /* warning, cut-out, cut-in, tractor protection, valves: where it happened */
    rodt_pressure before;       /* loss, reserve, build-up: at the start */
    rodt_pressure after;        /* ... at the end */
    rodt_pressure cut_out;      /* cut-in, warning: the governor's cut-out, which is above them; a row may ask for it */
    rodt_pressure cut_in;       /* warning, cut-out: the governor's cut-in, which is between them */
    rodt_ratio seconds;         /* build-up: time; loss: length of the test; not given for loss = one minute */
    rodt_ratio actual_volume;   /* build-up by volume: reservoirs, in3 */
    rodt_ratio required_volume; /* ... as required; rodt_reservoir_required_volume */
    uint64_t reserved[4];       /* zero */
} rodt_air_reading;

/* Bounds of plausibility, no figures of law: above them a decimal point is lost, or the unit is another one. */
#define RODT_SECONDS_MAX 86400
#define RODT_VOLUME_MAX_CUBIC_INCHES 1000000
#define RODT_AIR_COUNT_MAX 99 /* towed units, full applications */
#define RODT_CUT_OUT_LEAST_PSI 80 /* at or below it no governor cuts out: the least that any law has for a cut-in */
#define RODT_CUT_IN_LEAST_PSI 60  /* at or below it the warning is on before the compressor starts */
#define RODT_WARNING_MOST_PSI 100 /* at or above it a warning or a valve works in a full system */

/*
 * Tells whether a reading can be judged: the check and all enumerators are known; the day of build exists; every figure
 * is all zero bytes, or in lowest terms, not below zero and within its bound; a single vehicle or a bus has no towed
 * units; the reserve is zero. rodt_air_reading_judge asks it first.
 *
 * error  NULL, or gets a sentence, and the name of the member as its field: "towed_units", "before"
 *
 * RODT_OK; RODT_E_ARGUMENT: it cannot, or reading is NULL.
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_air_reading_check(const rodt_air_reading *reading, rodt_error *error);

/*
 * Reads a time in seconds: "45", "31.5 s", "45 sec", "1:30", "0:31.5", "1 min 30 s", "1 min 30", "2 minutes".
 * Without a unit the number is seconds. Never guesses: a text that could mean two times is an error.
 *
 * text   zero-terminated UTF-8
 * out    seconds, 0 to RODT_SECONDS_MAX
 * error  NULL, or gets status, column and a sentence
 *
 * RODT_OK             *out is the time
 * RODT_E_EMPTY        nothing but blanks, a dash, "n/a"
 * RODT_E_SYNTAX       not a time: 1:5, 1:75, 1 min 90 s
 * RODT_E_AMBIGUOUS    more than one meaning: 1:30:00, 1.5 min 30 s, "40 to 50", "<45"
 * RODT_E_UNIT         hours, or another unit
 * RODT_E_DATE_CELL, RODT_E_NEGATIVE, RODT_E_RANGE  as rodt_length_parse
 * RODT_E_IMPLAUSIBLE  more than a day
 * RODT_E_ARGUMENT     text or out is NULL
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_seconds_parse(const char *text, rodt_ratio *out, rodt_error *error);

/* As rodt_seconds_parse, for size bytes that need not be closed by a zero byte, with the style of the form (NULL: a
 * decimal point). RODT_E_ARGUMENT also for a style with an unknown unit or a reserve. */
RODT_API RODT_MUST_CHECK rodt_status rodt_seconds_parse_n(const char *text, size_t size, const rodt_style *style,
                                                          rodt_ratio *out, rodt_error *error);

/* The judgement of a check. */
typedef enum rodt_air_result RODT_ENUM_TYPE {
    RODT_AIR_RESULT_NOT_DONE = 0, /* nothing was recorded */
    RODT_AIR_RESULT_GOOD = 1,     /* inside of the published bound */
    RODT_AIR_RESULT_DEFECTIVE = 2, /* beyond it */
    RODT_AIR_RESULT_UNDETERMINED = 3, /* recorded, but a fact that the row needs is missing, or no row is for it */
    RODT_AIR_RESULT_NOTED = 4  /* no limit was passed or failed: the rule set gives a usual figure only, or only the
                                  bound of a major defect, which was kept */
} rodt_air_result;
#define RODT_AIR_RESULT_END 5 /* one more than the last; grows in later versions */

/* What was missing for RODT_AIR_RESULT_UNDETERMINED. */
typedef enum rodt_air_missing RODT_ENUM_TYPE {
    RODT_AIR_MISSING_NOTHING = 0,      /* nothing was missing */
    RODT_AIR_MISSING_ROW = 1,          /* the rule set has no figure for this check and vehicle */
    RODT_AIR_MISSING_VEHICLE = 2,      /* single, bus or combination decides, or the number of its towed units */
    RODT_AIR_MISSING_BUILT = 3,        /* the day of build decides */
    RODT_AIR_MISSING_VOLUME = 4,       /* the actual or required volume of the reservoirs */
    RODT_AIR_MISSING_SPAN = 5,         /* the timed span is another one than the rule's, so its time says nothing */
    RODT_AIR_MISSING_VALUE = 6,        /* a pressure or time of the check itself */
    RODT_AIR_MISSING_SENSE = 7,        /* the readings contradict each other or cannot be: pressure rose in a loss test,
                                          a cut-in not below the cut-out, a build-up without any time */
    RODT_AIR_MISSING_CUT_OUT = 8,      /* the governor's cut-out decides */
    RODT_AIR_MISSING_APPLICATIONS = 9, /* the rule set asks for another number of full applications */
    RODT_AIR_MISSING_OTHER_WAY = 10    /* this way failed; the rule set accepts another one, which was not done */
} rodt_air_missing;
#define RODT_AIR_MISSING_END 11 /* one more than the last; grows in later versions */

/* The judgement of one check. A plain value; `row` and `rules` are valid as long as the rule set that judged. */
typedef struct rodt_air_finding {
    RODT_ENUM32(rodt_air_result) result; /* the judgement */
    RODT_ENUM32(rodt_air_missing) missing; /* what decides, of an undetermined one */
    bool major;                   /* a major defect by the rule set's own ranking */
    bool minor;                   /* a minor one by that ranking; neither = the rule set does not rank it */
    bool at_limit;                /* measured is exactly the bound */
    rodt_air_reading reading;     /* as given */
    rodt_ratio measured;          /* in the row's measure; not given = none */
    rodt_ratio
        allowed; /* the bound that judged, in the row's measure; not given = yes/no. Of RODT_COMPARISON_BETWEEN
                                     the upper end when measured lies beyond it or at it, else the lower */
    const rodt_air_limit *row;    /* the row that judged, one of the two below; NULL = none. Lives as the rule set */
    const rodt_air_limit *law_row; /* the law's row; NULL = none */
    const rodt_air_limit *own_row; /* the carrier's row; NULL = it has none */
    RODT_ENUM32(rodt_air_result) law_result; /* what the law alone says: a carrier's figure can only be stricter */
    const rodt_rules *rules;      /* the rule set that judged */
    uint64_t reserved[4];         /* zero */
} rodt_air_finding;

/* Towed units that are thought of where their number is not said: the longest road trains. */
#define RODT_TOWED_UNITS_MAX 4

/*
 * Judges one check by every row that is for it: the most exact ones for the vehicle, its towed units and its day of
 * build. What is not said of the vehicle stays open: if every vehicle it can be gets the same result, that is the
 * result; otherwise the finding is undetermined and says what decides. A build-up between pressures may be timed by the
 * psi or by the kPa that the source prints beside them.
 *
 * What was waited for and never came (answer no) is defective wherever the rule set has the check, also by a usual
 * figure. A reading that cannot be is never good or noted: it is undetermined with RODT_AIR_MISSING_SENSE, as a cut-in
 * that is not below the cut-out, a warning that is not below the cut-in, a figure beyond the bounds of plausibility.
 *
 * A carrier's own rows judge on top of those of its law, and the stricter answer is the result: what the law finds
 * defective or leaves open stays so.
 *
 * error  NULL, or gets what was wrong, as in rodt_air_reading_check
 *
 * RODT_OK               *out is the finding; missing facts make it undetermined, never an error
 * RODT_E_ARGUMENT       reading or out is NULL, or rodt_air_reading_check refuses the reading
 * RODT_E_UNKNOWN_RULES  rules is NULL
 * RODT_E_RANGE          a figure does not fit
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_air_reading_judge(const rodt_air_reading *reading, const rodt_rules *rules,
                                                            rodt_air_finding *out, rodt_error *error);

/*
 * One air check as texts of a form. Every member is zero-terminated UTF-8, or NULL = the form does not have it; a text
 * of blanks says the same, and so does "not done" for a pressure, a time, a volume and the answer.
 *
 * The answer is "yes" or "no" to the question of its check (rodt_air_check): did it hold, is a leak heard. Where
 * something is waited for, warning, build-up, cut-out, cut-in and the valves, "no" says that it never came. Only these
 * and tractor-protection also take "never".
 */
typedef struct rodt_air_form {
    const char *check;           /* "warning", "loss-applied": the words of rodt_air_check_name; needed */
    const char *vehicle;         /* "single", "combination", "bus" */
    const char *towed_units;     /* whole number, 0 to 99 */
    const char *built;           /* a day, or a year by itself */
    /* Pressures are in style.pressure_unit, or with their unit. */
    const char *pressure;        /* named as in rodt_air_reading; or "never" */
    const char *before;          /* a pressure */
    const char *after;           /* a pressure */
    const char *cut_out;         /* a pressure */
    const char *cut_in;          /* a pressure */
    const char *seconds;         /* rodt_seconds_parse; of a build-up also "never" */
    const char *span;            /* "pressures", "warning", "applications", "recovery" */
    const char *applications;    /* whole number, 0 to 99 */
    const char *actual_volume;   /* cubic inches */
    const char *required_volume; /* cubic inches */
    const char *answer;          /* "yes", "no", "never" where it may be said; in French too */
    const char *reserved[4];     /* NULL */
    rodt_style style;            /* units and decimal sign of the form */
    RODT_ENUM32(rodt_date_order) date_order; /* how a day of build made of numbers is read */
} rodt_air_form;

/*
 * Tells whether a text says that what was waited for did not come: "never", "no", "did not", "none came on", "jamais".
 * "none", a dash and "not done" say that nothing was measured, and are no such text; the form reads them so in the
 * place of a figure. text may be NULL.
 */
RODT_API bool rodt_air_says_never(const char *text, size_t size);

/*
 * Reads the texts of an air check without judging it. Refuses the form as soon as one text cannot be read.
 *
 * error  NULL, or gets the first text that could not be read; its field is the name of the member. The order is: check,
 *        vehicle, span, towed_units, applications, built, pressure, seconds, before, after, cut_out, cut_in,
 *        actual_volume, required_volume, answer, reserved
 *
 * RODT_OK          *out is the reading
 * RODT_E_EMPTY     nothing is written for check
 * RODT_E_SYNTAX    a word that is none of those above; a number that is not whole
 * RODT_E_ARGUMENT  a pointer is NULL, the reserve is not, or rodt_air_reading_check refuses the reading
 * and the statuses of the readers (pressure.h, date.h, rodt_seconds_parse)
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_air_form_parse(const rodt_air_form *form, rodt_air_reading *out,
                                                         rodt_error *error);

/*
 * Finds everything for which rodt_air_form_parse would refuse the form, in its order, one error for each text, so that
 * a page can mark every field at once. Where all texts can be read, what rodt_air_reading_check says of them together.
 *
 * errors  room for size errors; NULL with size 0 asks for their number. 24 are always enough (RODT_FORM_ERRORS_MAX of
 *         stroke.h)
 * count   NULL, or gets how many there are, on RODT_OK and on RODT_E_SPACE; 0 = the form can be judged
 *
 * RODT_OK          errors holds all of them
 * RODT_E_SPACE     size is too small; errors are untouched
 * RODT_E_ARGUMENT  form is NULL, or errors is NULL and size is not 0
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_air_form_errors(const rodt_air_form *form, rodt_error *errors, size_t size,
                                                          size_t *count);

/* Reads the texts and judges. Statuses as above, and as rodt_air_reading_judge. */
RODT_API RODT_MUST_CHECK rodt_status rodt_air_form_judge(const rodt_air_form *form, const rodt_rules *rules,
                                                         rodt_air_finding *out, rodt_error *error);

/* The sentence for a form: "the low-pressure warning came on at 62 psi; required: not less than 60 psi: good". A figure
 * of the carrier is named as such, with what the law says.
 * Statuses as rodt_finding_format. */
RODT_API rodt_status rodt_air_finding_format(const rodt_air_finding *finding, char *text, size_t size, size_t *needed);

/* What would have been defective: "defective below 60 psi". Statuses as rodt_finding_format; "" without a row. */
RODT_API rodt_status rodt_air_finding_edge_format(const rodt_air_finding *finding, char *text, size_t size,
                                                  size_t *needed);

/* What is to be known beside a finding: in whole kPa the reading is at the edge, but the source prints psi and kPa, and
 * one of them is rounded; or the time was judged by the volumes of Table V. Statuses as rodt_finding_format; "" where
 * there is nothing to say. */
RODT_API rodt_status rodt_air_finding_note_format(const rodt_air_finding *finding, char *text, size_t size,
                                                  size_t *needed);

/* What a row calls defective, without a finding: the bound of one towed unit, "x actual / required volume" for a
 * formula. Statuses as rodt_finding_format. */
RODT_API rodt_status rodt_air_limit_edge_format(const rodt_air_limit *row, char *text, size_t size, size_t *needed);

/* The same sentences as data, and the title of a check. RODT_OK; RODT_E_ARGUMENT: a pointer is NULL, or an enumerator
 * is unknown. */
RODT_API rodt_status rodt_air_finding_message(const rodt_air_finding *finding, rodt_message *out);
RODT_API rodt_status rodt_air_finding_edge_message(const rodt_air_finding *finding, rodt_message *out);
RODT_API rodt_status rodt_air_finding_note_message(const rodt_air_finding *finding, rodt_message *out);
RODT_API rodt_status rodt_air_limit_edge_message(const rodt_air_limit *row, rodt_message *out);
RODT_API rodt_status rodt_air_check_message(rodt_air_check check, rodt_message *out);

/*
 * What a person says aloud after the check: what was found, whether it is good, and what would have been defective.
 * "The low-pressure warning came on at 62 psi; that is good. Below 55 psi it would be a major defect." As data, and in
 * English. A figure of the law that was not read in its source is named as such.
 *
 * text, size, needed as in status.h
 *
 * RODT_OK; RODT_E_ARGUMENT: a pointer is NULL, or an enumerator is unknown; RODT_E_SPACE: size is too small.
 */
RODT_API rodt_status rodt_air_finding_spoken_message(const rodt_air_finding *finding, rodt_message *out);
RODT_API rodt_status rodt_air_finding_spoken_format(const rodt_air_finding *finding, char *text, size_t size,
                                                    size_t *needed);

/* The stable word of a check, "cut-out"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_air_check_name(rodt_air_check check);

/* Finds a check by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_air_check_find(const char *word, RODT_ENUM32(rodt_air_check) *out);

/* A few words for people, "governor cut-out"; "" for RODT_AIR_CHECK_NONE and a number that is none. Constant. */
RODT_API const char *rodt_air_check_title(rodt_air_check check);

/* The stable word of a result, "not-done"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_air_result_name(rodt_air_result of);

/* Finds a result by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_air_result_find(const char *word, RODT_ENUM32(rodt_air_result) *out);

/* The stable word of what was missing, "vehicle"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_air_missing_name(rodt_air_missing missing);

/* Finds what was missing by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is
 * none; RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_air_missing_find(const char *word, RODT_ENUM32(rodt_air_missing) *out);

/* The stable word of a measure, "psi-per-minute"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_air_measure_name(rodt_air_measure measure);

/* Finds a measure by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_air_measure_find(const char *word, RODT_ENUM32(rodt_air_measure) *out);

/* The stable word of a kind, "usual"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_air_kind_name(rodt_air_kind kind);

/* Finds a kind by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_air_kind_find(const char *word, RODT_ENUM32(rodt_air_kind) *out);

/* The stable word of a span, "recovery"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_air_span_name(rodt_air_span span);

/* Finds a span by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_air_span_find(const char *word, RODT_ENUM32(rodt_air_span) *out);

/* The stable word of a class, "combination"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_vehicle_class_name(rodt_vehicle_class vehicle);

/* Finds a class by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_vehicle_class_find(const char *word, RODT_ENUM32(rodt_vehicle_class) *out);

/* The stable word of a comparison, "not-more-than"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_comparison_name(rodt_comparison comparison);

/* Finds a comparison by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is
 * none; RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_comparison_find(const char *word, RODT_ENUM32(rodt_comparison) *out);

/* --- Reservoirs -------------------------------------------------------------------------------------- */

/* Rated volume of a service chamber, 49 CFR 571.121, Table V. */
typedef struct rodt_volume_row {
    const char *size;          /* clamp-type number */
    rodt_length stroke_from;   /* full stroke, both ends inside */
    rodt_length stroke_until;  /* ... and the end of it */
    rodt_ratio volume;         /* in3 */
    const rodt_source *source; /* never NULL */
} rodt_volume_row;

/* Every row of Table V; NULL beyond the count. */
RODT_API size_t rodt_volume_row_count(void);
RODT_API const rodt_volume_row *rodt_volume_row_at(size_t index);

/*
 * Rated volume of a chamber in cubic inches. With a marked rated stroke the row must hold it; without one the
 * row of the size is taken.
 *
 * RODT_OK; RODT_E_UNKNOWN_CHAMBER: Table V has no row (bolt-type, a size or full stroke outside it): its actual
 * volume counts; RODT_E_ARGUMENT.
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_chamber_rated_volume(const rodt_chamber *chamber, rodt_ratio *cubic_inches);

/* Required reservoir volume for chambers of so many cubic inches in all: x 12 for a truck or bus (S5.1.2.1), x 8 for
 * a trailer (S5.2.1.1). RODT_OK; RODT_E_ARGUMENT: a volume is not given or not above zero, or a pointer is NULL;
 * RODT_E_RANGE: the result does not fit. */
RODT_API RODT_MUST_CHECK rodt_status rodt_reservoir_required_volume(rodt_ratio chambers, bool trailer,
                                                                    rodt_ratio *cubic_inches);

/* Time allowed for 85 to 100 psi: 25 s x actual / required (S5.1.1). Statuses as rodt_reservoir_required_volume. */
RODT_API RODT_MUST_CHECK rodt_status rodt_reservoir_build_up_seconds(rodt_ratio actual, rodt_ratio required,
                                                                     rodt_ratio *seconds);

/*
 * An ESTIMATE, no figure of law: gauge pressure of a reservoir after one full application, engine off. Isothermal, the
 * chambers filled from the reservoir and vented afterwards: (p + 14.7) x V / (V + v x fill) - 14.7, exactly.
 *
 * pressure  gauge pressure before
 * reservoir V, in3; chambers v, in3, all chambers that it serves, at rated volume
 * fill      part of the rated volume that an application fills: 1 for the worst case, about 3/5 for brakes in
 *           adjustment (a choice, no source)
 *
 * RODT_OK; RODT_E_ARGUMENT: not given, or fill outside 0 to 1; RODT_E_RANGE: no fit
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_reservoir_estimate_application(rodt_pressure pressure, rodt_ratio reservoir,
                                                                         rodt_ratio chambers, rodt_ratio fill,
                                                                         rodt_pressure *after);

/*
 * An ESTIMATE: how many full applications keep the reservoir at `least` or above, starting at `pressure`; at most 99.
 * Exact, also where the pressure itself would not fit after so many. Statuses as rodt_reservoir_estimate_application.
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_reservoir_estimate_applications(rodt_pressure pressure, rodt_pressure least,
                                                                          rodt_ratio reservoir, rodt_ratio chambers,
                                                                          rodt_ratio fill, unsigned *count);

#ifdef __cplusplus
}
#endif
#endif
