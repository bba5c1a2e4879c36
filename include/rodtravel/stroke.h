/* SPDX-License-Identifier: Apache-2.0 */
/* The judgement of one wheel end: two tape readings in, a finding with its reasons out. */
#ifndef RODTRAVEL_STROKE_H
#define RODTRAVEL_STROKE_H

#include "fields.h"
#include "rules.h"

#ifdef __cplusplus
extern "C" {
#endif

/* The judgement. The words of rodt_verdict_name are stable. */
typedef enum rodt_verdict RODT_ENUM_TYPE {
    RODT_VERDICT_UNDETERMINED = 0,      /* nothing is proven; the reasons say what is missing */
    RODT_VERDICT_IN_ADJUSTMENT = 1,     /* the stroke is not over the limit */
    RODT_VERDICT_OUT_OF_ADJUSTMENT = 2, /* the stroke is over the limit */
    RODT_VERDICT_INOPERATIVE = 3        /* the rod did not move */
} rodt_verdict;
#define RODT_VERDICT_END 4 /* one more than the last; grows in later versions */

/* What the tape's divisions prove, each reading taken as right within half a division. It never changes
 * the verdict, which is the law's comparison of the readings as they stand. */
typedef enum rodt_proof RODT_ENUM_TYPE {
    RODT_PROOF_NOT_ASKED = 0, /* no division was given, or there is no stroke or no limit */
    RODT_PROOF_PROVEN_WITHIN = 1,   /* at worst still within the limit */
    RODT_PROOF_PROVEN_OVER = 2,     /* at best still over it */
    RODT_PROOF_NOT_RESOLVED = 3     /* this tape cannot tell */
} rodt_proof;
#define RODT_PROOF_END 4 /* one more than the last; grows in later versions */

/* Temperature of the brake drum when the stroke was read. A hot drum lengthens the stroke. */
typedef enum rodt_drum RODT_ENUM_TYPE {
    RODT_DRUM_NOT_RECORDED = 0, /* nobody wrote it down */
    RODT_DRUM_COLD = 1,         /* cold */
    RODT_DRUM_WARM = 2,         /* warm */
    RODT_DRUM_HOT = 3           /* hot */
} rodt_drum;
#define RODT_DRUM_END 4 /* one more than the last; grows in later versions */

/* Why a verdict is what it is. A finding holds a set of them; they are listed in this order. The numbers
 * and the words of rodt_reason_name are stable. A later version may fill a gap, so that what belongs together is listed
 * together; a number in a gap has no word, and all are below 64. */
typedef enum rodt_reason RODT_ENUM_TYPE {
    /* The stroke: 0 to 9. */
    RODT_REASON_OVER_LIMIT = 0,             /* stroke is over the law's limit */
    RODT_REASON_OVER_OWN_LIMIT = 1,         /* over the carrier's own limit, within the law's */
    RODT_REASON_AT_LIMIT = 2,               /* stroke is exactly at the limit */
    RODT_REASON_WITHIN_LIMIT = 3,           /* stroke is below the limit */
    RODT_REASON_NO_MOVEMENT = 4,            /* both readings are equal */
    RODT_REASON_READINGS_SWAPPED = 5,       /* applied is below released */
    RODT_REASON_BEYOND_RATED_STROKE = 6,    /* more travel than the housing can have */
    RODT_REASON_HARDLY_MOVED = 7,           /* a doubt about a stroke under 1/2 in (common practice, no source); it
                                               never changes the verdict */

    /* Conditions of the test: 10 to 19. */
    RODT_REASON_PRESSURE_LOW = 10,          /* a pressure below the window was recorded */
    RODT_REASON_PRESSURE_HIGH = 11,         /* a pressure above the window was recorded */
    RODT_REASON_PRESSURE_NOT_RECORDED = 12, /* the verdict holds for a pressure inside the window */
    RODT_REASON_ENGINE_RUNNING = 13,        /* the engine ran during the test */
    RODT_REASON_SPRING_BRAKE_APPLIED = 14,  /* the spring brake was on during the test */

    /* The limit: 20 to 31. */
    RODT_REASON_ASSUMED_STANDARD = 20,      /* stroke class not known */
    RODT_REASON_ASSUMED_CLAMP = 21,         /* family not known */
    RODT_REASON_CONFLICTING_MARKS = 22,     /* two signs of the chamber contradict each other; strict side taken */
    RODT_REASON_NO_PUBLISHED_LIMIT = 23,    /* no row and no mark gives a limit; the rule set may limit no stroke */
    RODT_REASON_RULES_NOT_IN_FORCE = 24,    /* the rule set has no text for the day */
    RODT_REASON_LIMIT_UNCONFIRMED = 25,     /* the limit was not read in its source: not law */
    RODT_REASON_LIMIT_FROM_RATED = 26,      /* unlisted actuator: a part of its rated stroke */
    RODT_REASON_LIMIT_MARKED = 27,          /* unlisted actuator: the limit marked on it */
    RODT_REASON_PRINTED_MM_DIFFERS = 28,    /* the printed millimetres of the limit would judge otherwise */
    RODT_REASON_DRUM_HOT = 29,              /* a hot drum lengthens the stroke */
    RODT_REASON_LIMIT_COMMON_PRACTICE = 30, /* the limit is common practice without a source: not law */
    RODT_REASON_MAJOR_DEFECT = 31,          /* the rule set calls what was found a major defect */

    /* What is missing: 32 to 39. */
    RODT_REASON_CHAMBER_MISSING = 32,       /* no chamber was given */
    RODT_REASON_RELEASED_MISSING = 33,      /* no released reading was given */
    RODT_REASON_APPLIED_MISSING = 34,       /* no applied reading was given */

    /* What cannot be read, or can mean two values: from 40. */
    RODT_REASON_CHAMBER_UNREADABLE = 40,    /* the chamber cannot be read */
    RODT_REASON_RELEASED_UNREADABLE = 41,   /* the released reading cannot be read */
    RODT_REASON_APPLIED_UNREADABLE = 42,    /* the applied reading cannot be read */
    RODT_REASON_OTHER_UNREADABLE = 43,      /* a class, rated stroke, pressure, division, unit or condition */
    RODT_REASON_SPREADSHEET_DATE = 44,      /* ... because a spreadsheet made a date of it */
    RODT_REASON_DATE_AMBIGUOUS = 45,        /* the date can mean two days */
    RODT_REASON_DATE_UNREADABLE = 46,       /* the date cannot be read */
    RODT_REASON_LOST_BLANK = 47             /* a reading such as 31/8 may be 3 1/8, which would judge otherwise */
} rodt_reason;
#define RODT_REASON_END 48 /* one more than the last; grows in later versions */

/* A reason in a set of reasons, which is a uint64_t. */
#define RODT_REASON_BIT(reason) (UINT64_C(1) << (reason))

/*
 * One wheel end as it was measured. All zero bytes mean "nothing recorded"; set what there is:
 *
 *     rodt_reading reading = {0};
 *     if (rodt_chamber_parse("30L", &reading.chamber, &error) != RODT_OK ||
 *         rodt_length_parse_strict("2 1/8", &reading.released, &error) != RODT_OK)
 *         return refuse(&error);
 *
 * It points to nothing.
 */
typedef struct rodt_reading {
    rodt_chamber chamber;        /* as far as it is known */
    rodt_length released;        /* chamber face to clevis pin, brakes released */
    rodt_length applied;         /* the same, full application held */
    RODT_ENUM32(rodt_unit) unit; /* unit the tape was read in; RODT_UNIT_MM also compares the printed mm */
    RODT_ENUM32(rodt_pressure_unit) pressure_unit; /* unit the gauge was read in */
    rodt_length division;        /* smallest graduation that was read; not given = no proof is asked */
    rodt_pressure pressure;      /* reservoir pressure before the application */
    rodt_pressure pressure_after; /* after it */
    rodt_date day;               /* day of the inspection; not given = the newest text of the rule set */
    rodt_date other_day;         /* given = the day may be this one too (an ambiguous date) */
    RODT_ENUM32(rodt_recorded) engine_running; /* during the test */
    RODT_ENUM32(rodt_recorded) spring_brake_applied; /* during the test */
    RODT_ENUM32(rodt_drum) drum; /* temperature of the brake drum */
    rodt_length other_released[2]; /* what the text may mean too: "31/8" is 31/8, or 3 1/8 with its blank lost */
    rodt_length other_applied[2]; /* the same of the applied reading */
    uint64_t reasons;            /* set of RODT_REASON_BIT: what rodt_form_parse could not read, and signs of the
                                    chamber that contradict each other; zero for a reading that was filled by hand */
    uint64_t reserved[4];        /* zero */
} rodt_reading;

/* The judgement of one wheel end. A plain value; its rows, sources and `rules` are valid
 * as long as the rule set that judged. */
typedef struct rodt_finding {
    RODT_ENUM32(rodt_verdict) verdict;   /* the judgement */
    RODT_ENUM32(rodt_proof) proof;       /* what the tape's divisions prove */
    uint64_t reasons;                    /* set of RODT_REASON_BIT */
    rodt_chamber chamber;                /* as it was judged: what was assumed is filled in */
    rodt_length released;                /* as read; not given = missing or unreadable */
    rodt_length applied;                 /* the same, full application held */
    rodt_length applied_stroke;          /* applied - released; not given if a reading is missing or they are swapped */
    rodt_length limit;                   /* the limit that judged: the stricter of the law's and a carrier's own; not
                                            given = none */
    const rodt_source *source;           /* of `limit`; NULL without one */
    RODT_ENUM32(rodt_evidence) evidence; /* of `limit` */
    RODT_ENUM32(rodt_evidence) law_evidence; /* of `law_limit`; only this says whether the law is confirmed */
    rodt_length law_limit;               /* the law's limit. It, its source and its evidence are those of `limit` where
                                            no stricter limit of a carrier judged */
    const rodt_source *law_source;       /* of `law_limit`; NULL without one */
    rodt_length margin;                  /* limit - applied stroke; negative = over; not given = one is missing. Of an
                                            inoperative brake it is the whole limit, and nothing to spare: look at the
                                            verdict first */
    rodt_length long_limit;              /* with RODT_REASON_ASSUMED_STANDARD: the limit of the long-stroke chamber of
                                            this size, as far as one is published; otherwise not given */
    RODT_ENUM32(rodt_basis) law_basis;   /* what the law's limit rests on */
    RODT_ENUM32(rodt_unit) unit;         /* as given: the unit in which sentences speak of lengths */
    RODT_ENUM32(rodt_pressure_unit) pressure_unit; /* as given: the same of pressures */
    rodt_length division;                /* as given */
    rodt_ratio probability_over;         /* exact chance that the true stroke is over the limit, each reading's error
                                            uniform within half a division either way; given with a proof. 0 or 1
                                            with RODT_PROOF_NOT_RESOLVED where the limit itself is the best or the worst
                                            that the tape can mean: no sentence says it as a chance */
    rodt_pressure pressure;              /* as recorded, before and after the application */
    rodt_pressure pressure_after;        /* after the application */
    rodt_date day;                       /* the day whose law judged; not given = the newest text */
    rodt_date other_day;                 /* as given */
    const rodt_limit *law_row;           /* the law's row, or NULL */
    const rodt_limit *own_row;           /* the carrier's row, or NULL */
    const rodt_rules *rules;             /* the rule set that judged */
    rodt_length other_released[2];       /* as given */
    rodt_length other_applied[2];        /* as given */
    uint64_t reserved[8];                /* zero */
} rodt_finding;

/*
 * Tells whether a reading is one that can be judged, that is, one that texts could give: its chamber by
 * rodt_chamber_check; lengths and pressures are all zero bytes, or in lowest terms, not below zero, at most 24 in or
 * 300 psi, and a length is one that a tape shows, in binary fractions, decimals or millimetres; a division is above 0
 * and at most 1/2 in; days exist, between 1900 and 2199; enumerators are known; of the reasons only those that
 * rodt_form_parse sets; reserves are zero. Every function that judges asks it first, so a program calls it only to
 * point at an entry early.
 *
 * error  NULL, or gets a sentence, and as its field the name of the first one that is wrong (fields.h), "reasons" or
 *        "reserved"
 *
 * RODT_OK; RODT_E_ARGUMENT: it cannot, or reading is NULL.
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_reading_check(const rodt_reading *reading, rodt_error *error);

/*
 * Judges one wheel end. What is missing does not make it fail: it makes the verdict undetermined and is
 * named among the reasons, and what can be computed still is.
 *
 * error  NULL, or gets a sentence and the field, as by rodt_reading_check
 *
 * RODT_OK               *out is the finding
 * RODT_E_UNKNOWN_RULES  rules is NULL
 * RODT_E_ARGUMENT       another pointer is NULL, or rodt_reading_check refuses the reading
 * RODT_E_RANGE          the readings are so fine that their difference does not fit in 64-bit parts
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_reading_judge(const rodt_reading *reading, const rodt_rules *rules,
                                                        rodt_finding *out, rodt_error *error);

/*
 * One wheel end as texts of a form or of a row of a file. Every member is zero-terminated
 * UTF-8, or NULL = the form does not have it.
 */
typedef struct rodt_form {
    const char *chamber;                     /* the mark, "30L" */
    const char *released;                    /* length: chamber face to clevis pin, brakes released */
    const char *applied;                     /* length: the same, full application held */
    const char *stroke_class;                /* "standard", "long", "" = unknown */
    const char *rated_stroke;                /* length of 3/4 to 6 in; "21/4" is refused, as its blank may be lost */
    const char *marked_limit;                /* the same */
    const char *psi;                         /* pressure before the application: in style.pressure_unit, or named */
    const char *psi_after;                   /* the same after it */
    const char *division;                    /* length: "1/16", "1 mm" */
    const char *date;                        /* day of the inspection */
    const char *unit;                        /* unit of bare lengths: "in", "mm", "cm"; stronger than style.unit */
    const char *engine;                      /* "off" or "on" during the test */
    const char *spring_brake;                /* "released" or "on" during the test */
    const char *drum;                        /* "cold", "warm" or "hot" */
    const char *reserved[4];                 /* NULL */
    rodt_style style;                        /* units and decimal sign of the form */
    RODT_ENUM32(rodt_date_order) date_order; /* how dates made of numbers are read */
    rodt_date default_day;                   /* day of a row that has no date of its own */
} rodt_form;

/* Errors of one form, of a wheel end or of an air check, at most; grows in no version. */
#define RODT_FORM_ERRORS_MAX 24

/* Gives one text of a reading by its field, and sets it; NULL and nothing for a field that is none of a reading. */
RODT_API const char *rodt_form_get(const rodt_form *text, rodt_field field);
RODT_API void rodt_form_set(rodt_form *text, rodt_field field, const char *value);

/*
 * Reads the texts of a wheel end without judging it. What cannot be read is "not given" in *out, its reason is in
 * out->reasons, and the rest is read all the same: rodt_reading_judge then gives the finding that
 * rodt_form_judge_row would.
 *
 * A date that can be two days is no error: they are day and other_day. One that can be three cannot be read.
 *
 * error  NULL, or gets the first text that could not be read, its field by name (rodt_field_find); if all could, the
 *        first needed text that is absent (RODT_E_EMPTY), or status RODT_OK. The order is: unit, chamber, stroke_class,
 *        rated_stroke, marked_limit, released, applied, psi, psi_after, division, engine, spring_brake, drum, date
 *
 * RODT_OK          *out is the reading
 * RODT_E_ARGUMENT  a pointer is NULL, style.unit (field "unit"), style.pressure_unit ("psi") or date_order ("date") is
 *                  unknown, default_day is no day ("date"), or a reserve is not zero ("reserved")
 */
RODT_API rodt_status rodt_form_parse(const rodt_form *text, rodt_reading *out, rodt_error *error);

/*
 * Finds everything for which rodt_form_judge would refuse the texts, so that a page can mark every field at once: one
 * error for each text that cannot be read, for each needed one that is absent, and for a date that can be two days;
 * each with its field, in the order of fields of rodt_form_parse, absent ones among the others.
 *
 * errors  room for size errors; NULL with size 0 asks for their number. RODT_FORM_ERRORS_MAX are always enough
 * count   NULL, or gets how many there are, on RODT_OK and on RODT_E_SPACE; 0 = the form can be judged
 *
 * RODT_OK          errors holds all of them
 * RODT_E_SPACE     size is too small; errors are untouched
 * RODT_E_ARGUMENT  errors is NULL and size is not 0, or as rodt_form_parse
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_form_errors(const rodt_form *text, rodt_error *errors, size_t size,
                                                      size_t *count);

/*
 * Reads the texts of one wheel end and judges. Refuses as soon as one text cannot be read; an absent or
 * empty released, applied or chamber is refused too, and a date that can be two days (RODT_E_AMBIGUOUS). The error's
 * field names the text, the first one in the order of rodt_form_parse; an ambiguous date comes last.
 *
 *     rodt_form text = {.chamber = "30", .released = "2 1/8", .applied = "4 1/8"};
 *     status = rodt_form_judge(&text, rodt_rules_find("us-fmcsr"), &finding, &error);
 *
 * RODT_OK, RODT_E_ARGUMENT as rodt_form_parse, and the statuses of the readers (length.h, chamber.h, pressure.h,
 * date.h) and of rodt_reading_judge.
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_form_judge(const rodt_form *text, const rodt_rules *rules, rodt_finding *out,
                                                     rodt_error *error);

/*
 * As rodt_form_judge, for rows of files: always gives a finding. A text that cannot be read makes it undetermined,
 * its reason says which, and the rest is still computed. A date that can be two days is judged on both, and matters
 * only where the limit depends on it; one that cannot be read also takes a pass away where the rule set was not
 * always in force. A stroke over its limit stays over it.
 *
 * error  as in rodt_form_parse
 *
 * RODT_OK               *out is the finding
 * RODT_E_UNKNOWN_RULES  rules is NULL
 * RODT_E_ARGUMENT       as rodt_form_parse
 * RODT_E_RANGE          as rodt_reading_judge
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_form_judge_row(const rodt_form *text, const rodt_rules *rules,
                                                         rodt_finding *out, rodt_error *error);

/* True if the finding has the reason. */
RODT_INLINE bool rodt_finding_has(const rodt_finding *finding, rodt_reason reason)
{
    return (unsigned)reason < 64 && (finding->reasons >> reason & 1u) != 0;
}

/* The stable word of a verdict, "in-adjustment"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_verdict_name(rodt_verdict verdict);

/* Finds a verdict by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_verdict_find(const char *word, RODT_ENUM32(rodt_verdict) *out);

/* The stable word of a proof, "proven-within"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_proof_name(rodt_proof proof);

/* Finds a proof by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_proof_find(const char *word, RODT_ENUM32(rodt_proof) *out);

/* The stable word of a reason, "at-limit"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_reason_name(rodt_reason reason);

/* Finds a reason by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_reason_find(const char *word, RODT_ENUM32(rodt_reason) *out);

/* The stable word of a temperature, "not-recorded"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_drum_name(rodt_drum drum);

/* Finds a temperature by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is
 * none; RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_drum_find(const char *word, RODT_ENUM32(rodt_drum) *out);

/* Room for any sentence about a finding, a count, an axle or an air check, and for one of a step, with the closing zero
 * byte, in English and in every language that is compiled in. A carrier's own texts can be longer: then the status is
 * RODT_E_SPACE. */
#define RODT_SENTENCE_SIZE 400

/*
 * Writes the comparison in one line: "3 3/8 to 4 13/16 is 1 7/16; limit 1 3/4; 5/16 to spare". What is
 * missing is named in its place. Statuses as rodt_length_format; RODT_SENTENCE_SIZE bytes are
 * always enough.
 */
RODT_API rodt_status rodt_finding_format(const rodt_finding *finding, char *text, size_t size, size_t *needed);

/*
 * Writes one reason of a finding as a sentence with its figures, what would change the answer included: "stroke class
 * not known: judged as standard; as long stroke the limit would be 2 1/2". Statuses as rodt_finding_format;
 * RODT_E_ARGUMENT also if the finding does not have the reason, or lacks the rule set or the row that the sentence
 * speaks of.
 */
RODT_API rodt_status rodt_finding_reason_format(const rodt_finding *finding, rodt_reason reason, char *text,
                                               size_t size, size_t *needed);

/* Writes what the tape's divisions prove, as a sentence; "" if no proof was asked. Statuses as rodt_finding_format.
 * */
RODT_API rodt_status rodt_finding_proof_format(const rodt_finding *finding, char *text, size_t size, size_t *needed);

/* The same sentences as data (message.h), for another language. *out points to what the finding points to, not to
 * the finding. RODT_OK; RODT_E_ARGUMENT: a pointer is NULL, or, of a reason, as rodt_finding_reason_format. */
RODT_API rodt_status rodt_finding_message(const rodt_finding *finding, rodt_message *out);
RODT_API rodt_status rodt_finding_reason_message(const rodt_finding *finding, rodt_reason reason, rodt_message *out);
RODT_API rodt_status rodt_finding_proof_message(const rodt_finding *finding, rodt_message *out);

/*
 * What a person says aloud after the measurement: "Released 2 1/8, applied 3 7/8: the stroke is 1 3/4. The limit is 2;
 * that is good. Above 2 it would be defective." As data, and in English.
 *
 * text, size, needed as in status.h
 *
 * RODT_OK; RODT_E_ARGUMENT: a pointer is NULL, or the finding is not one of rodt_reading_judge; RODT_E_SPACE.
 */
RODT_API rodt_status rodt_finding_spoken_message(const rodt_finding *finding, rodt_message *out);
RODT_API rodt_status rodt_finding_spoken_format(const rodt_finding *finding, char *text, size_t size, size_t *needed);

#ifdef __cplusplus
}
#endif
#endif
