/* SPDX-License-Identifier: Apache-2.0 */
/* Sentences as data: what is said is a stable code with named arguments, how it is said is a template of a catalogue.
 * Another language of people is a catalogue, and no code. */
#ifndef RODTRAVEL_MESSAGE_H
#define RODTRAVEL_MESSAGE_H

#include <stdbool.h>

#include "date.h"
#include "ratio.h"

#ifdef __cplusplus
extern "C" {
#endif

/*
 * What can be said, one code for each form of a sentence: clauses are put together, words never are. The numbers and
 * the words of rodt_message_code_name are stable; a later version adds codes to the end of a group, and groups at the
 * end. The English template of a code names its arguments (rodt_message_template).
 */
typedef enum rodt_message_code RODT_ENUM_TYPE {
    RODT_MESSAGE_NONE = 0,             /* nothing is to be said; written as "" */

    /* How a value is put into a sentence. */
    RODT_MESSAGE_VALUE_ABOUT = 1,
    RODT_MESSAGE_VALUE_INCHES = 2,
    RODT_MESSAGE_VALUE_MM = 3,
    RODT_MESSAGE_VALUE_LIMIT_MM = 4,
    RODT_MESSAGE_VALUE_NOT_GIVEN = 5,
    RODT_MESSAGE_VALUE_NOT_READABLE = 6,
    RODT_MESSAGE_VALUE_PSI = 7,
    RODT_MESSAGE_VALUE_KPA = 8,
    RODT_MESSAGE_VALUE_SECONDS = 9,
    RODT_MESSAGE_VALUE_PSI_PER_MINUTE = 10,
    RODT_MESSAGE_VALUE_KPA_PER_MINUTE = 11,
    RODT_MESSAGE_VALUE_PERCENT = 12,
    RODT_MESSAGE_VALUE_PERCENT_LEFT = 13,
    RODT_MESSAGE_VALUE_PERCENT_LOST = 14,

    /* How a figure was checked. */
    RODT_MESSAGE_EVIDENCE_NONE = 30,
    RODT_MESSAGE_EVIDENCE_CHECKED = 31,
    RODT_MESSAGE_EVIDENCE_SECOND_HAND = 32,
    RODT_MESSAGE_EVIDENCE_FROM_MEMORY = 33,

    /* The comparison of one wheel end in one line. */
    RODT_MESSAGE_LINE_SPARE = 40,
    RODT_MESSAGE_LINE_OVER = 41,
    RODT_MESSAGE_LINE_AT_LIMIT = 42,
    RODT_MESSAGE_LINE_LIMIT = 43,
    RODT_MESSAGE_LINE_NO_LIMIT = 44,
    RODT_MESSAGE_LINE_NO_STROKE = 45,
    RODT_MESSAGE_LINE_NOTHING = 46,

    /* Reasons of a finding: the word is that of the reason, and of its form. */
    RODT_MESSAGE_STROKE_OVER_LIMIT = 60,
    RODT_MESSAGE_STROKE_OVER_OWN_LIMIT = 61,
    RODT_MESSAGE_STROKE_OVER_OWN_LIMIT_LAW = 62,
    RODT_MESSAGE_STROKE_AT_LIMIT_PASSES = 63,
    RODT_MESSAGE_STROKE_AT_LIMIT_FAILS = 64,
    RODT_MESSAGE_STROKE_WITHIN_LIMIT = 65,
    RODT_MESSAGE_STROKE_NO_MOVEMENT = 66,
    RODT_MESSAGE_STROKE_READINGS_SWAPPED = 67,
    RODT_MESSAGE_STROKE_BEYOND_RATED_STROKE = 68,
    RODT_MESSAGE_STROKE_PRESSURE_LOW = 69,
    RODT_MESSAGE_STROKE_PRESSURE_LOW_AFTER = 70,
    RODT_MESSAGE_STROKE_PRESSURE_LOW_NO_AIR = 71,
    RODT_MESSAGE_STROKE_PRESSURE_HIGH = 72,
    RODT_MESSAGE_STROKE_PRESSURE_HIGH_AFTER = 73,
    RODT_MESSAGE_STROKE_PRESSURE_NOT_RECORDED = 74,
    RODT_MESSAGE_STROKE_ENGINE_RUNNING = 75,
    RODT_MESSAGE_STROKE_SPRING_BRAKE_APPLIED = 76,
    RODT_MESSAGE_STROKE_ASSUMED_STANDARD = 77,
    RODT_MESSAGE_STROKE_ASSUMED_STANDARD_LONG = 78,
    RODT_MESSAGE_STROKE_ASSUMED_STANDARD_WITHIN = 79,
    RODT_MESSAGE_STROKE_ASSUMED_STANDARD_OVER = 80,
    RODT_MESSAGE_STROKE_ASSUMED_STANDARD_LOOK = 81,
    RODT_MESSAGE_STROKE_ASSUMED_CLAMP_STRICT = 82,
    RODT_MESSAGE_STROKE_ASSUMED_CLAMP_LOOK = 83,
    RODT_MESSAGE_STROKE_CONFLICTING_MARKS = 84,
    RODT_MESSAGE_STROKE_NO_PUBLISHED_LIMIT = 85,
    RODT_MESSAGE_STROKE_RULES_NOT_IN_FORCE = 86,
    RODT_MESSAGE_STROKE_RULES_NOT_IN_FORCE_FROM = 87,
    RODT_MESSAGE_STROKE_LIMIT_UNCONFIRMED_SECOND_HAND = 88,
    RODT_MESSAGE_STROKE_LIMIT_UNCONFIRMED_FROM_MEMORY = 89,
    RODT_MESSAGE_STROKE_LIMIT_FROM_RATED = 90,
    RODT_MESSAGE_STROKE_LIMIT_MARKED = 91,
    RODT_MESSAGE_STROKE_PRINTED_MM_DIFFERS = 92,
    RODT_MESSAGE_STROKE_DRUM_HOT = 93,
    RODT_MESSAGE_STROKE_CHAMBER_MISSING = 94,
    RODT_MESSAGE_STROKE_RELEASED_MISSING = 95,
    RODT_MESSAGE_STROKE_APPLIED_MISSING = 96,
    RODT_MESSAGE_STROKE_CHAMBER_UNREADABLE = 97,
    RODT_MESSAGE_STROKE_RELEASED_UNREADABLE = 98,
    RODT_MESSAGE_STROKE_APPLIED_UNREADABLE = 99,
    RODT_MESSAGE_STROKE_OTHER_UNREADABLE = 100,
    RODT_MESSAGE_STROKE_SPREADSHEET_DATE = 101,
    RODT_MESSAGE_STROKE_DATE_AMBIGUOUS_SAME = 102,
    RODT_MESSAGE_STROKE_DATE_AMBIGUOUS_DEPENDS = 103,
    RODT_MESSAGE_STROKE_DATE_UNREADABLE_SAME = 104,
    RODT_MESSAGE_STROKE_DATE_UNREADABLE_SAME_FROM = 105,
    RODT_MESSAGE_STROKE_DATE_UNREADABLE_DEPENDS = 106,
    RODT_MESSAGE_STROKE_DATE_UNREADABLE_DEPENDS_FROM = 107,
    RODT_MESSAGE_STROKE_LOST_BLANK = 108,
    RODT_MESSAGE_STROKE_LOST_BLANK_BOTH = 109,
    RODT_MESSAGE_STROKE_LOST_BLANK_RELEASED = 110,
    RODT_MESSAGE_STROKE_LOST_BLANK_RELEASED_TWO = 111,
    RODT_MESSAGE_STROKE_LOST_BLANK_APPLIED = 112,
    RODT_MESSAGE_STROKE_LOST_BLANK_APPLIED_TWO = 113,

    /* What the tape proves. */
    RODT_MESSAGE_PROOF_WITHIN = 130,
    RODT_MESSAGE_PROOF_OVER = 131,
    RODT_MESSAGE_PROOF_AT_BEST = 132,
    RODT_MESSAGE_PROOF_AT_WORST = 133,
    RODT_MESSAGE_PROOF_EITHER = 134,
    RODT_MESSAGE_PROOF_NO_CHANCE = 135,

    /* What to look at next to identify a chamber. */
    RODT_MESSAGE_OBSERVATION_NOTHING = 140,
    RODT_MESSAGE_OBSERVATION_FAMILY = 141,
    RODT_MESSAGE_OBSERVATION_STAMP = 142,
    RODT_MESSAGE_OBSERVATION_LONG_SIGN = 143,
    RODT_MESSAGE_OBSERVATION_RATED_STROKE = 144,
    RODT_MESSAGE_OBSERVATION_DIAMETER = 145,

    /* What to do next about a wheel end. */
    RODT_MESSAGE_ADVICE_ADJUST = 150,
    RODT_MESSAGE_ADVICE_FIND_FAULT = 151,
    RODT_MESSAGE_ADVICE_FIND_ADJUSTER = 152,
    RODT_MESSAGE_ADVICE_REPAIR = 153,
    RODT_MESSAGE_ADVICE_MEASURE = 154,
    RODT_MESSAGE_ADVICE_LOOK = 155,

    /* The roadside count of a vehicle. */
    RODT_MESSAGE_COUNT_NONE = 160,
    RODT_MESSAGE_COUNT_ALL = 161,
    RODT_MESSAGE_COUNT_OPEN = 162,
    RODT_MESSAGE_COUNT_REACHED = 163,
    RODT_MESSAGE_COUNT_CHART = 164,
    RODT_MESSAGE_COUNT_BELOW = 165,
    RODT_MESSAGE_COUNT_UNKNOWN = 166,
    RODT_MESSAGE_COUNT_UNKNOWN_WORST = 167,
    RODT_MESSAGE_COUNT_UNKNOWN_KNOWN = 168,
    RODT_MESSAGE_COUNT_UNKNOWN_BOTH = 169,

    /* One axle: the sentence around, and what is said. */
    RODT_MESSAGE_AXLE_SAID = 180,
    RODT_MESSAGE_AXLE_CITED = 181,
    RODT_MESSAGE_AXLE_CITED_UNCONFIRMED = 182,
    RODT_MESSAGE_AXLE_SIZE_DIFFERS = 183,
    RODT_MESSAGE_AXLE_SPRING_DIFFERS = 184,
    RODT_MESSAGE_AXLE_FAMILY_DIFFERS = 185,
    RODT_MESSAGE_AXLE_CLASS_DIFFERS = 186,
    RODT_MESSAGE_AXLE_ARM_DIFFERS = 187,
    RODT_MESSAGE_AXLE_STROKES_DIFFER = 188,
    RODT_MESSAGE_AXLE_TORQUE_DIFFERS = 189,
    RODT_MESSAGE_AXLE_LEFT_MISSING = 190,
    RODT_MESSAGE_AXLE_RIGHT_MISSING = 191,
    RODT_MESSAGE_AXLE_STEERING_DEAD = 192,

    /* Air checks: their titles. */
    RODT_MESSAGE_AIR_TITLE_WARNING = 200,
    RODT_MESSAGE_AIR_TITLE_BUILD_UP = 201,
    RODT_MESSAGE_AIR_TITLE_CUT_OUT = 202,
    RODT_MESSAGE_AIR_TITLE_CUT_IN = 203,
    RODT_MESSAGE_AIR_TITLE_LOSS_RELEASED = 204,
    RODT_MESSAGE_AIR_TITLE_LOSS_APPLIED = 205,
    RODT_MESSAGE_AIR_TITLE_RESERVE = 206,
    RODT_MESSAGE_AIR_TITLE_SPRING_BRAKE = 207,
    RODT_MESSAGE_AIR_TITLE_TRACTOR_PROTECTION = 208,
    RODT_MESSAGE_AIR_TITLE_SUPPLY_VALVE = 209,
    RODT_MESSAGE_AIR_TITLE_PARKING_VALVE = 210,
    RODT_MESSAGE_AIR_TITLE_DRAIN = 211,
    RODT_MESSAGE_AIR_TITLE_AUDIBLE_LEAK = 212,
    RODT_MESSAGE_AIR_TITLE_CONTAMINATION = 213,

    /* The sentence of an air check as a whole. */
    RODT_MESSAGE_AIR_NOT_DONE = 220,
    RODT_MESSAGE_AIR_UNDETERMINED = 221,
    RODT_MESSAGE_AIR_REQUIRED = 222,
    RODT_MESSAGE_AIR_EDGE_PASSES = 223,
    RODT_MESSAGE_AIR_EDGE_FAILS = 224,
    RODT_MESSAGE_AIR_RULE = 225,
    RODT_MESSAGE_AIR_USUAL = 226,
    RODT_MESSAGE_AIR_UNLESS = 227,
    RODT_MESSAGE_AIR_FIGURE_UNCONFIRMED = 228,
    RODT_MESSAGE_AIR_RULE_UNCONFIRMED = 229,
    RODT_MESSAGE_AIR_GOOD = 230,
    RODT_MESSAGE_AIR_DEFECTIVE = 231,
    RODT_MESSAGE_AIR_DEFECTIVE_MAJOR = 232,
    RODT_MESSAGE_AIR_DEFECTIVE_MINOR = 233,
    RODT_MESSAGE_AIR_FIGURE_OWN = 234, /* a carrier's own figure, where the law has none */
    RODT_MESSAGE_AIR_RULE_OWN = 235,
    RODT_MESSAGE_AIR_FIGURE_OWN_BESIDE_LAW = 236,
    RODT_MESSAGE_AIR_RULE_OWN_BESIDE_LAW = 237,
    RODT_MESSAGE_AIR_LAW_NOTED = 238,  /* what the law says then, beside RODT_MESSAGE_AIR_GOOD */
    RODT_MESSAGE_AIR_LAW_UNDETERMINED = 239,

    /* What an air check found. */
    RODT_MESSAGE_AIR_FOUND_WARNING = 240,
    RODT_MESSAGE_AIR_FOUND_BUILD_UP = 241,
    RODT_MESSAGE_AIR_FOUND_BUILD_UP_UNTIMED = 242,
    RODT_MESSAGE_AIR_FOUND_CUT_OUT = 243,
    RODT_MESSAGE_AIR_FOUND_CUT_IN = 244,
    RODT_MESSAGE_AIR_FOUND_CUT_IN_BELOW = 245,
    RODT_MESSAGE_AIR_FOUND_LOSS_RELEASED = 246,
    RODT_MESSAGE_AIR_FOUND_LOSS_RELEASED_IS = 247,
    RODT_MESSAGE_AIR_FOUND_LOSS_APPLIED = 248,
    RODT_MESSAGE_AIR_FOUND_LOSS_APPLIED_IS = 249,
    RODT_MESSAGE_AIR_FOUND_RESERVE_IS = 250,
    RODT_MESSAGE_AIR_FOUND_TRACTOR_PROTECTION = 251,
    RODT_MESSAGE_AIR_FOUND_SUPPLY_VALVE = 252,
    RODT_MESSAGE_AIR_FOUND_PARKING_VALVE = 253,
    RODT_MESSAGE_AIR_FOUND_SPRING_BRAKE_YES = 254,
    RODT_MESSAGE_AIR_FOUND_SPRING_BRAKE_NO = 255,
    RODT_MESSAGE_AIR_FOUND_DRAIN_YES = 256,
    RODT_MESSAGE_AIR_FOUND_DRAIN_NO = 257,
    RODT_MESSAGE_AIR_FOUND_AUDIBLE_LEAK_YES = 258,
    RODT_MESSAGE_AIR_FOUND_AUDIBLE_LEAK_NO = 259,
    RODT_MESSAGE_AIR_FOUND_CONTAMINATION_YES = 260,
    RODT_MESSAGE_AIR_FOUND_CONTAMINATION_NO = 261,
    RODT_MESSAGE_AIR_FOUND_FALL = 262,
    RODT_MESSAGE_AIR_FOUND_NO_FALL = 263,

    /* What a build-up is timed over. */
    RODT_MESSAGE_AIR_SPAN_UNKNOWN = 270,
    RODT_MESSAGE_AIR_SPAN_PRESSURES = 271,
    RODT_MESSAGE_AIR_SPAN_PRESSURES_BOTH = 272,
    RODT_MESSAGE_AIR_SPAN_WARNING = 273,
    RODT_MESSAGE_AIR_SPAN_APPLICATIONS = 274,
    RODT_MESSAGE_AIR_SPAN_RECOVERY = 275,

    /* What an air check asks for. */
    RODT_MESSAGE_AIR_REQUIRED_PUBLISHED = 280,
    RODT_MESSAGE_AIR_REQUIRED_LESS_THAN = 281,
    RODT_MESSAGE_AIR_REQUIRED_NOT_MORE_THAN = 282,
    RODT_MESSAGE_AIR_REQUIRED_MORE_THAN = 283,
    RODT_MESSAGE_AIR_REQUIRED_NOT_LESS_THAN = 284,
    RODT_MESSAGE_AIR_REQUIRED_BETWEEN = 285,
    RODT_MESSAGE_AIR_REQUIRED_ABOUT = 286,
    RODT_MESSAGE_AIR_REQUIRED_BELOW_CUT_OUT = 287,

    /* What an undetermined air check lacks. */
    RODT_MESSAGE_AIR_MISSING_ROW = 290,
    RODT_MESSAGE_AIR_MISSING_VEHICLE = 291,
    RODT_MESSAGE_AIR_MISSING_TOWED_UNITS = 292,
    RODT_MESSAGE_AIR_MISSING_BUILT = 293,
    RODT_MESSAGE_AIR_MISSING_VOLUME = 294,
    RODT_MESSAGE_AIR_MISSING_SPAN = 295,
    RODT_MESSAGE_AIR_MISSING_VALUE = 296,
    RODT_MESSAGE_AIR_MISSING_SENSE = 297,
    RODT_MESSAGE_AIR_MISSING_CUT_OUT = 298,
    RODT_MESSAGE_AIR_MISSING_APPLICATIONS = 299,
    RODT_MESSAGE_AIR_MISSING_OTHER_WAY = 300,

    /* What would have been defective. */
    RODT_MESSAGE_AIR_EDGE_DEFECTIVE = 310,
    RODT_MESSAGE_AIR_EDGE_EITHER = 311,
    RODT_MESSAGE_AIR_EDGE_MAJOR = 312,
    RODT_MESSAGE_AIR_EDGE_MINOR = 313,
    RODT_MESSAGE_AIR_EDGE_USUAL = 314,
    RODT_MESSAGE_AIR_EDGE_OR_MORE = 315,
    RODT_MESSAGE_AIR_EDGE_ABOVE = 316,
    RODT_MESSAGE_AIR_EDGE_OR_BELOW = 317,
    RODT_MESSAGE_AIR_EDGE_BELOW = 318,
    RODT_MESSAGE_AIR_EDGE_OUTSIDE = 319,
    RODT_MESSAGE_AIR_EDGE_BY_VOLUME = 320,
    RODT_MESSAGE_AIR_EDGE_HALF_CUT_OUT = 321,
    RODT_MESSAGE_AIR_EDGE_UNDER_CUT_OUT = 322,
    RODT_MESSAGE_AIR_EDGE_PER_TOWED_UNIT = 323,
    RODT_MESSAGE_AIR_EDGE_SPRING_BRAKE = 324,
    RODT_MESSAGE_AIR_EDGE_DRAIN = 325,
    RODT_MESSAGE_AIR_EDGE_AUDIBLE_LEAK = 326,
    RODT_MESSAGE_AIR_EDGE_CONTAMINATION = 327,

    /* What an air check waited for and never came. */
    RODT_MESSAGE_AIR_NEVER = 330, /* of a check with no more than a usual figure */
    RODT_MESSAGE_AIR_NEVER_WARNING = 331,
    RODT_MESSAGE_AIR_NEVER_BUILD_UP = 332,
    RODT_MESSAGE_AIR_NEVER_CUT_OUT = 333,
    RODT_MESSAGE_AIR_NEVER_CUT_IN = 334,
    RODT_MESSAGE_AIR_NEVER_TRACTOR_PROTECTION = 335,
    RODT_MESSAGE_AIR_NEVER_SUPPLY_VALVE = 336,
    RODT_MESSAGE_AIR_NEVER_PARKING_VALVE = 337,
    RODT_MESSAGE_AIR_NEVER_EDGE = 338, /* of a check with no more than a usual figure */

    /* Readings of an air check that cannot be. */
    RODT_MESSAGE_AIR_DOUBT_CUT_IN_ABOVE_CUT_OUT = 340,
    RODT_MESSAGE_AIR_DOUBT_WARNING_ABOVE_CUT_IN = 341,
    RODT_MESSAGE_AIR_DOUBT_TOO_HIGH = 342,
    RODT_MESSAGE_AIR_DOUBT_CUT_OUT_LOW = 343,
    RODT_MESSAGE_AIR_DOUBT_CUT_IN_LOW = 344,
    RODT_MESSAGE_AIR_DOUBT_NO_TIME = 345
} rodt_message_code;
#define RODT_MESSAGE_END 346 /* one more than the last; grows in later versions */

/* What an argument holds, and how it is written. */
typedef enum rodt_argument_kind RODT_ENUM_TYPE {
    RODT_ARGUMENT_KIND_NONE = 0,     /* no argument */
    RODT_ARGUMENT_KIND_CLAUSE = 1,   /* `code`: a message whose arguments follow this one */
    RODT_ARGUMENT_KIND_LENGTH = 2,   /* `number`: inches, said in the unit of `code`, RODT_MESSAGE_VALUE_INCHES or _MM:
                                        a fraction of a tape as a fraction, others as decimals. {0, 0} = not
                                        measured */
    RODT_ARGUMENT_KIND_LIMIT = 3,    /* the same for a figure of law: inches, with millimetres beside them for _MM */
    RODT_ARGUMENT_KIND_NUMBER = 4,   /* `number`, as a mixed fraction, in the unit phrase `code`, if that is not 0 */
    RODT_ARGUMENT_KIND_FIGURE = 5,   /* the same for what a gauge or a watch shows: fractions that it has not as
                                        decimals, rounded to `digits` digits where more than three would be needed */
    RODT_ARGUMENT_KIND_FRACTION = 6, /* `number`, as 3/4, 1/1 or 0/1 */
    RODT_ARGUMENT_KIND_DATE = 7,     /* `date`, as YYYY-MM-DD */
    RODT_ARGUMENT_KIND_TEXT = 8      /* `text`, as it stands: the name of a rule set, the words of a source */
} rodt_argument_kind;
#define RODT_ARGUMENT_KIND_END 9 /* one more than the last; grows in later versions */

/* One argument of a message. */
typedef struct rodt_argument {
    const char *name;                     /* "limit"; constant */
    RODT_ENUM32(rodt_argument_kind) kind; /* what it holds, and how it is written */
    RODT_ENUM32(rodt_message_code) code;  /* of a clause, or the unit phrase that a number is put into; 0 = none */
    rodt_ratio number;                    /* {0, 0} = not given */
    rodt_date date;                       /* of a date */
    int16_t digits;                       /* of a figure: digits after the point, at most */
    const char *text;                     /* constant, or as long as the rule set that judged */
} rodt_argument;

/* Arguments of one message, at most. */
#define RODT_MESSAGE_ARGUMENTS 20

/* One sentence as data. A plain value; it points to constants and to the rule set that judged. The functions that make
 * one are beside what they speak of: rodt_finding_reason_message and others. */
typedef struct rodt_message {
    RODT_ENUM32(rodt_message_code) code;             /* what is said */
    uint32_t count;                                  /* arguments that are used */
    rodt_argument arguments[RODT_MESSAGE_ARGUMENTS]; /* the figures and clauses that it is said with */
} rodt_message;

/* The stable word of a code, "stroke.over-limit"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_message_code_name(rodt_message_code code);

/* Finds a code by its word, whatever its capitals and the blanks around it. False: there is none, and *out is
 * untouched. */
RODT_API bool rodt_message_code_find(const char *word, size_t size, RODT_ENUM32(rodt_message_code) *out);

/* The English template of a code; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_message_template(rodt_message_code code);

/* The stable word of a kind, "limit"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_argument_kind_name(rodt_argument_kind kind);

/* Finds a kind by its word, whatever its capitals and the blanks around it. False: there is none, and *out is
 * untouched. */
RODT_API bool rodt_argument_kind_find(const char *word, size_t size, RODT_ENUM32(rodt_argument_kind) *out);

/* The first argument of that name, or NULL. */
RODT_API const rodt_argument *rodt_message_argument(const rodt_message *message, const char *name);

/* Which form of a word stands beside a number. */
typedef enum rodt_plural_rule RODT_ENUM_TYPE {
    RODT_PLURAL_RULE_ALIKE = 0,       /* one form */
    RODT_PLURAL_RULE_ONE_OTHER = 1,   /* two: 1, and everything else, as in English and Spanish */
    RODT_PLURAL_RULE_BELOW_TWO = 2,   /* two: below 2, and everything else, as in French */
    RODT_PLURAL_RULE_ONE_FEW_MANY = 3 /* three: 1, 21 ...; 2 to 4, 22 ... and fractions; everything else, as in
                                         Ukrainian */
} rodt_plural_rule;
#define RODT_PLURAL_RULE_END 4 /* one more than the last; grows in later versions */

/* The stable word of a rule, "one-other"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_plural_rule_name(rodt_plural_rule rule);

/* Finds a rule by its word, whatever its capitals and the blanks around it. False: there is none, and *out is
 * untouched. */
RODT_API bool rodt_plural_rule_find(const char *word, size_t size, RODT_ENUM32(rodt_plural_rule) *out);

/*
 * The sentences of a language. In a template {limit} is the argument of that name, {brakes?brake|brakes} the form of a
 * word for the number `brakes`, and {{ and }} are braces. The arguments of a code are those that its English template
 * names, in any order, each as often as the language needs it, and none left out.
 *
 *     static const char *const templates[RODT_MESSAGE_END] = {
 *         [RODT_MESSAGE_STROKE_OVER_LIMIT] = "la course dépasse la limite de {excess}", ...
 *
 * C++ has no such initializers: there a program fills an array without const by assignments,
 * `templates[RODT_MESSAGE_STROKE_OVER_LIMIT] = "…";`, before its first use.
 */
typedef struct rodt_catalogue {
    const char *language;                 /* a tag of BCP 47, "fr-CA" */
    const char *const *templates;         /* by rodt_message_code, UTF-8; NULL = not translated, written in English */
    size_t count;                         /* templates; fewer than there are codes in a program with an older header */
    const char *decimal_sign;             /* "." or "," */
    RODT_ENUM32(rodt_plural_rule) plural; /* which form of a word stands beside a number */
    uint32_t reserved;                    /* zero */
} rodt_catalogue;

/*
 * Writes a message in the language of a catalogue; NULL = the built-in English one. text, size, needed as in status.h.
 *
 * RODT_OK          text holds it
 * RODT_E_ARGUMENT  a pointer is NULL, a code or kind is unknown, or a template is broken or asks for an argument that
 *                  the message does not have (rodt_catalogue_check says where)
 * RODT_E_SPACE     size is too small
 */
RODT_API rodt_status rodt_message_format(const rodt_message *message, const rodt_catalogue *catalogue, char *text,
                                         size_t size, size_t *needed);

/*
 * Checks a catalogue as a whole: every code has a template, with its own arguments and no others, each plural has as
 * many forms as the rule, and no brace is left open. A program does so in its tests.
 *
 * error  NULL, or gets the code's word and what is wrong in the sentence, and in `column` the place in the template
 *
 * RODT_OK          the catalogue is complete
 * RODT_E_ARGUMENT  a pointer is NULL, the plural rule is unknown, or `reserved` is not zero
 * RODT_E_TABLE     a template is missing or wrong
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_catalogue_check(const rodt_catalogue *catalogue, rodt_error *error);

#ifdef __cplusplus
}
#endif
#endif
