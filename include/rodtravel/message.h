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
    RODT_ARGUMENT_KIND_TEXT = 8      /* `text`, in the words of the catalogue if it is one of its `texts`, otherwise as
                                        it stands: the name of a rule set, the words of a source */
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
    uint64_t reserved[2];                 /* zero */
} rodt_argument;

/* Arguments of one message, at most. */
#define RODT_MESSAGE_ARGUMENTS 20

/* One sentence as data. A plain value; it points to constants and to the rule set that judged. The functions that make
 * one are beside what they speak of: rodt_finding_reason_message and others. */
typedef struct rodt_message {
    RODT_ENUM32(rodt_message_code) code;             /* what is said */
    uint32_t count;                                  /* arguments that are used */
    rodt_argument arguments[RODT_MESSAGE_ARGUMENTS]; /* the figures and clauses that it is said with */
    uint64_t reserved[4];                            /* zero */
} rodt_message;

/* The stable word of a code, "stroke.over-limit"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_message_code_name(rodt_message_code code);

/* Finds a code by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_message_code_find(const char *word, RODT_ENUM32(rodt_message_code) *out);

/* The English template of a code; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_message_template(rodt_message_code code);

/* The stable word of a kind, "limit"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_argument_kind_name(rodt_argument_kind kind);

/* Finds a kind by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_argument_kind_find(const char *word, RODT_ENUM32(rodt_argument_kind) *out);

/* The first argument of that name, or NULL. */
RODT_API const rodt_argument *rodt_message_argument(const rodt_message *message, const char *name);

/*
 * The sentence of an error as data, for another language: its code and arguments. Of an error without a code it is
 * RODT_MESSAGE_ERROR_ENGLISH with the text as it stands; a program can then say the status instead
 * (rodt_status_message). *out points to the error, which must live as long.
 *
 * RODT_OK; RODT_E_ARGUMENT: a pointer is NULL, or the error was filled by hand and holds what no error has.
 */
RODT_API rodt_status rodt_error_message(const rodt_error *error, rodt_message *out);

/* The sentence of a status as data. RODT_OK; RODT_E_ARGUMENT: out is NULL, or there is no such status or it is
 * RODT_OK. */
RODT_API rodt_status rodt_status_message(rodt_status status, rodt_message *out);

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

/* Finds a rule by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_plural_rule_find(const char *word, RODT_ENUM32(rodt_plural_rule) *out);

/* A text of the tables, such as how a check is set up, and the same in a language. */
typedef struct rodt_table_text {
    const char *english; /* as the table has it */
    const char *said;    /* UTF-8 */
} rodt_table_text;

/*
 * The sentences of a language. In a template {limit} is the argument of that name, {^limit} the same with a capital,
 * {brakes?brake|brakes} the form of a word for the number `brakes`, and {{ and }} are braces. The arguments of a code
 * are those that its English template names, in any order, each as often as the language needs it, and none left out.
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
    const rodt_table_text *texts;         /* sorted by their English, byte by byte; NULL = texts of the tables are said
                                             in English */
    size_t text_count;                    /* texts */
    const char *decimal_sign;             /* "." or "," */
    RODT_ENUM32(rodt_plural_rule) plural; /* which form of a word stands beside a number */
    uint32_t reserved;                    /* zero */
} rodt_catalogue;

/* The catalogues of the library, each complete, from 0 to rodt_catalogue_count() - 1. NULL beyond. English is not among
 * them: it is the built-in one. */
RODT_API size_t rodt_catalogue_count(void);
RODT_API const rodt_catalogue *rodt_catalogue_at(size_t index);

/* The catalogue of a language, by a tag of BCP 47 or the name of a locale: "fr", "fr-CA", "es_MX.UTF-8". Its first part
 * decides, capitals or not. NULL: the library has none, language is NULL, or it is English; rodt_message_format then
 * writes English. */
RODT_API const rodt_catalogue *rodt_catalogue_find(const char *language);

/* A text of the tables in a language: `published` and `setup` of a row of air checks, which messages have as arguments
 * too. The text itself where the catalogue has none, or is NULL; NULL for NULL. */
RODT_API const char *rodt_catalogue_text(const rodt_catalogue *catalogue, const char *english);

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
 * Checks a catalogue as a whole: each template has the arguments of its code and no others, each plural has as many
 * forms as the rule, no brace is left open, and texts of the tables are sorted. A program does so in its tests.
 *
 * missing  NULL: every code must have a template. Otherwise the catalogue may be partial, and *missing gets how many
 *          codes have none; they are said in English
 * error    NULL, or gets the code's word and what is wrong in the sentence, and in `column` the place in the template
 *
 * RODT_OK          the catalogue is sound, and complete unless *missing says otherwise
 * RODT_E_ARGUMENT  catalogue or a pointer in it is NULL, the plural rule is unknown, or `reserved` is not zero
 * RODT_E_TABLE     a template is wrong, or one is missing and `missing` is NULL; or a text of the tables is not sorted
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_catalogue_check(const rodt_catalogue *catalogue, size_t *missing,
                                                          rodt_error *error);

#ifdef __cplusplus
}
#endif
#endif
