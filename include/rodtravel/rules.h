/* SPDX-License-Identifier: Apache-2.0 */
/* Rule sets: one authority's adjustment limits, dated, each row with its published source. */
#ifndef RODTRAVEL_RULES_H
#define RODTRAVEL_RULES_H

#include "chamber.h"
#include "date.h"
#include "length.h"
#include "message.h"
#include "pressure.h"
#include "status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* How the figure of a row was checked against its source. Only RODT_EVIDENCE_CHECKED may be shown as law, and only of a
 * row of a law: a carrier's row is none, whatever evidence its table names. Ask the law_evidence of an answer or a
 * finding. */
typedef enum rodt_evidence RODT_ENUM_TYPE {
    RODT_EVIDENCE_NONE = 0,        /* there is no figure, or nobody said how it was checked */
    RODT_EVIDENCE_CHECKED = 1,     /* the words or the table cell were read in the text of the source */
    RODT_EVIDENCE_SECOND_HAND = 2, /* read in somebody else's account of the source; unconfirmed */
    RODT_EVIDENCE_FROM_MEMORY = 3, /* seen in no document; unconfirmed */
    RODT_EVIDENCE_COMMON_PRACTICE = 4 /* common practice of the trade or of an examination; no source exists */
} rodt_evidence;
#define RODT_EVIDENCE_END 5 /* one more than the last; grows in later versions */

/* A published document. Every text is UTF-8 and never NULL; "" = not known. */
typedef struct rodt_source {
    const char *id;       /* as the tables name it */
    const char *body;     /* who published it */
    const char *document; /* "49 CFR Part 393" */
    const char *section;  /* "393.47(e)(1)" */
    const char *edition;  /* edition, amendment or date of the text that was read */
    const char *address;  /* where the body publishes it */
} rodt_source;

/* One chamber as published: its outside diameter, and rated strokes for the record. */
typedef struct rodt_chamber_row {
    RODT_ENUM32(rodt_family) family;   /* how the housing is built */
    const char *size;                  /* type number or letter */
    rodt_length outside_diameter;      /* not given = none published */
    rodt_length outside_diameter_mm;   /* the printed whole millimetres, as a length; rounded by the source */
    rodt_length standard_rated_stroke; /* of the standard stroke class; not given = none published */
    const rodt_source *source;         /* of the diameter */
} rodt_chamber_row;

/* One row of a table of limits. */
typedef struct rodt_limit {
    RODT_ENUM32(rodt_family) family; /* of the chambers that the row is for */
    RODT_ENUM32(rodt_stroke_class) stroke_class; /* RODT_STROKE_CLASS_ANY = the family has one limit for every class */
    const char *size;          /* type number or letter */
    rodt_length rated_stroke;    /* given = the row holds only for this marked rated stroke */
    rodt_length rated_stroke_mm; /* the printed millimetres of that, as a length */
    rodt_length limit;         /* the greatest stroke that is in adjustment */
    const char *published;     /* the figure as printed, "1 3/4" */
    rodt_length printed_mm;    /* the millimetres printed beside it, as a length; not given = none printed */
    rodt_date from;            /* first day; not given = the day of effect was not found */
    rodt_date until;           /* last day; not given = still in force in the text that was read */
    const rodt_source *source; /* never NULL */
    RODT_ENUM32(rodt_evidence) evidence; /* how the figure was checked */
} rodt_limit;

/* The law of one authority, or a carrier's own limits on top of a law. Opaque and constant: any number
 * of threads may use one. Those that are compiled in live as long as the program. */
typedef struct rodt_rules rodt_rules;

/* The rule set that is used when a person names none: "us-fmcsr". */
#define RODT_DEFAULT_RULES "us-fmcsr"

/*
 * Finds a compiled-in rule set by its id: with limits of strokes "us-fmcsr", "us-periodic", "ca-nsc", "ca-on",
 * "rated-80"; with air checks only "us-cdl", "ca-bc" and others (tables/rulesets.csv). A stroke that is judged by one
 * of these has no published limit.
 *
 * Returns NULL if there is none of that id (or id is NULL); never freed by the caller.
 */
RODT_API const rodt_rules *rodt_rules_find(const char *id);

/* The compiled-in rule sets, in the order of the table: from 0 to rodt_rules_count() - 1. NULL beyond. */
RODT_API size_t rodt_rules_count(void);
RODT_API const rodt_rules *rodt_rules_at(size_t index);

/*
 * Loads a carrier's own limits, based on a law. The text is a table in the format of tables/limits.csv, one of air
 * checks in the format of tables/aircheck.csv, or both one below the other, each from its line of column names on
 * (tables/README.md, installed in share/doc/rodtravel). Every limit must be at least as strict as the law for the same
 * chamber on every day of the row; every air check at least as strict as each row of the law for the same check,
 * vehicle and day of build. Nothing is read but the text. Two files of a carrier, limits and air checks, are joined by
 * the program; lines of errors are counted in the one text. A line has at most 2000 bytes, a table 1000 rows, the text
 * 1 MiB.
 *
 * law         the rule set that the limits are based on; must outlive the result, and be compiled in itself
 * name        what messages call the table, for example a file's name; also the id of the result, cut to
 *             39 bytes. It is not empty, holds no control character, and is not the id of a compiled-in rule set: a
 *             finding would seem to be judged by the law
 * text, size  the table, UTF-8
 * out         the new rule set, with one user: rodt_rules_unref lets go of it
 * error       NULL, or gets line, column and a sentence; field "name" for a name that is refused
 *
 * RODT_OK          *out is the rule set
 * RODT_E_UNKNOWN_RULES  law is NULL
 * RODT_E_TABLE     the table is broken: a column is missing, a cell cannot be read, two rows overlap, no chamber of the
 *                  tables (rodt_chamber_row_at, rodt_volume_row_at) has the size, a limit is above 6 in, a rated stroke
 *                  is none that a chamber is marked with, printed millimetres are no rounding of the inches, a row of
 *                  air checks is about another span or number of applications than the law's
 * RODT_E_LAXER     a row is laxer than the law
 * RODT_E_ARGUMENT  another pointer is NULL, law is not compiled in, or the name is refused
 * RODT_E_MEMORY    no memory
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_rules_load(const rodt_rules *law, const char *name, const char *text,
                                                     size_t size, rodt_rules **out, rodt_error *error);

/* The same with another law for the air checks, as an inspection may name one for each: strokes by "us-fmcsr", air by
 * "us-cdl". air_law must be compiled in; NULL = law. */
RODT_API RODT_MUST_CHECK rodt_status rodt_rules_load_with_air(const rodt_rules *law, const rodt_rules *air_law,
                                                              const char *name, const char *text, size_t size,
                                                              rodt_rules **out, rodt_error *error);

/*
 * A loaded rule set counts its users. rodt_rules_load gives it to one; each further one takes it with rodt_rules_ref,
 * which returns the same pointer; every user lets go of it with rodt_rules_unref, and the last one frees it. So who
 * keeps a finding, whose rows, source and rules point into the rule set, takes finding.rules, and the users may leave
 * in any order and in any thread: both are atomic. What the library makes from a rule set and keeps it in (plans,
 * caches) is a user too. Both leave NULL and compiled-in rule sets alone.
 */
RODT_API const rodt_rules *rodt_rules_ref(const rodt_rules *rules);
RODT_API void rodt_rules_unref(const rodt_rules *rules);

/* What a rule set is. Texts are valid as long as the rule set. Of NULL nothing is known: the functions down to
 * rodt_rules_limit_at give "", NULL, false, zero, RODT_EVIDENCE_NONE or what is not given. */
RODT_API const char *rodt_rules_id(const rodt_rules *rules);
RODT_API const char *rodt_rules_title(const rodt_rules *rules);     /* one line for a list */
RODT_API const char *rodt_rules_authority(const rodt_rules *rules); /* who enforces it, and where */
RODT_API const rodt_source *rodt_rules_source(const rodt_rules *rules);
RODT_API rodt_evidence rodt_rules_evidence(const rodt_rules *rules);

/* First and last day on which the rule set can judge; not given = open. */
RODT_API rodt_date rodt_rules_from(const rodt_rules *rules);
RODT_API rodt_date rodt_rules_until(const rodt_rules *rules);

/* The law that a carrier's own limits are based on, and that of its air checks; NULL for a law. */
RODT_API const rodt_rules *rodt_rules_law(const rodt_rules *rules);
RODT_API const rodt_rules *rodt_rules_air_law(const rodt_rules *rules);

/* True if a stroke exactly at the limit passes ("not greater than"), false if it fails ("less than"). */
RODT_API bool rodt_rules_at_limit_passes(const rodt_rules *rules);

/* The window of reservoir pressure for the stroke test, both ends inside; not given = the rule set has
 * none. Its source can be another document than the limits'; NULL without a window. */
RODT_API rodt_pressure rodt_rules_pressure_from(const rodt_rules *rules);
RODT_API rodt_pressure rodt_rules_pressure_until(const rodt_rules *rules);
RODT_API const rodt_source *rodt_rules_pressure_source(const rodt_rules *rules);
RODT_API rodt_evidence rodt_rules_pressure_evidence(const rodt_rules *rules);

/* The text that calls a brake over its limit, or inoperative, a major defect; NULL = the rule set does not rank it. */
RODT_API const rodt_source *rodt_rules_major_source(const rodt_rules *rules);

/* The part of the marked rated stroke that limits an actuator which is not in the table (4/5); not
 * given = the rule set says nothing of such actuators. */
RODT_API rodt_ratio rodt_rules_rated_share(const rodt_rules *rules);

/* The rows of limits, in the order of the table, those that a rule set takes over from another by
 * reference included; of a carrier's limits, its own rows only. NULL beyond the count. */
RODT_API size_t rodt_rules_limit_count(const rodt_rules *rules);
RODT_API const rodt_limit *rodt_rules_limit_at(const rodt_rules *rules, size_t index);

/* Every chamber that the tables know, with its diameter; NULL beyond the count. */
RODT_API size_t rodt_chamber_row_count(void);
RODT_API const rodt_chamber_row *rodt_chamber_row_at(size_t index);

/* What the limit of a law rests on. */
typedef enum rodt_basis RODT_ENUM_TYPE {
    RODT_BASIS_NONE = 0,         /* no limit is published: the chamber is in no table and bears no mark */
    RODT_BASIS_TABLE = 1,        /* a row of the table */
    RODT_BASIS_RATED_SHARE = 2,  /* a part of the rated stroke marked on an actuator that is not in the table */
    RODT_BASIS_MARKED_LIMIT = 3, /* the limit marked on such an actuator */
    RODT_BASIS_NOT_IN_FORCE = 4  /* the rule set has no text for the day */
} rodt_basis;
#define RODT_BASIS_END 5 /* one more than the last; grows in later versions */

/* The limit for a chamber on a day, and what it is based on. */
typedef struct rodt_limit_answer {
    RODT_ENUM32(rodt_basis) law_basis; /* what the law's limit rests on */
    rodt_length limit;          /* the limit that judges: the stricter of the law's and the carrier's own */
    const rodt_source *source;  /* of `limit`; NULL without one */
    RODT_ENUM32(rodt_evidence) evidence; /* of `limit` */
    rodt_length law_limit;      /* the law's limit: the same three where no stricter limit of a carrier judges */
    const rodt_source *law_source; /* of `law_limit`; NULL without one */
    RODT_ENUM32(rodt_evidence) law_evidence; /* of `law_limit`; only this says whether the law is confirmed */
    const rodt_limit *law_row;  /* the law's row; NULL without RODT_BASIS_TABLE. Lives as the rule set */
    const rodt_limit *own_row;  /* the carrier's row; NULL = it has none for the chamber */
    bool assumed_clamp;         /* the family was not known; a bare type number is read as clamp */
    bool assumed_standard;      /* the stroke class was not known */
    bool conflicting_marks;     /* the marked rated stroke contradicts the stroke class or the limit; the strict side
                                   is given */
    uint64_t reserved[4];       /* zero */
} rodt_limit_answer;

/*
 * Finds the limit for a chamber on a day. Unknown facts are taken on the strict side and flagged. So are marks that
 * contradict each other: long stroke beside the rated stroke of the standard chamber, or standard beside the 3 in of a
 * long row, is judged as standard; a marked rated stroke that is not above the limit of the table is judged by the rule
 * set's share of it, and has no limit where the rule set has no share. A mark of a row that asks for it (3 in, 76 mm)
 * says long stroke where the class is not known.
 *
 * chamber  needs a size; a family that is not known is taken as clamp
 * day      not given = the newest text of the table
 *
 * error    NULL, or gets a sentence and the field: those of rodt_chamber_check, or "date"
 *
 * RODT_OK               *out is the answer; an answer without a limit is an answer too (law_basis)
 * RODT_E_UNKNOWN_RULES  rules is NULL
 * RODT_E_ARGUMENT       another pointer is NULL, rodt_chamber_check refuses the chamber, it has no size, or there is no
 *                       such day
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_rules_find_limit(const rodt_rules *rules, const rodt_chamber *chamber,
                                                           rodt_date day, rodt_limit_answer *out, rodt_error *error);

/* Writes a source as one line: "49 CFR Part 393, 393.47(e)(1), text as amended by 86 FR 57076". Statuses
 * as rodt_length_format; 400 bytes are always enough for a compiled-in source. */
RODT_API rodt_status rodt_source_format(const rodt_source *source, char *text, size_t size, size_t *needed);
#define RODT_SOURCE_TEXT_SIZE 400

/* The stable word of an evidence, "second-hand"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_evidence_name(rodt_evidence evidence);

/* Finds an evidence by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_evidence_find(const char *word, RODT_ENUM32(rodt_evidence) *out);

/* The stable word of a basis, "rated-share"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_basis_name(rodt_basis basis);

/* Finds a basis by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_basis_find(const char *word, RODT_ENUM32(rodt_basis) *out);

/* "none", "read in the source", "second-hand, unconfirmed" or "from memory, unconfirmed". Constant. */
RODT_API const char *rodt_evidence_text(rodt_evidence evidence);

/* The same as data. RODT_OK; RODT_E_ARGUMENT: out is NULL. */
RODT_API rodt_status rodt_evidence_message(rodt_evidence evidence, rodt_message *out);

#ifdef __cplusplus
}
#endif
#endif
