/* SPDX-License-Identifier: Apache-2.0 */
/* Identification of a chamber from what a person can see, with what is still open and the strict limit. */
#ifndef RODTRAVEL_IDENTIFY_H
#define RODTRAVEL_IDENTIFY_H

#include "rules.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Shape of the air ports' bosses, or of the embossment on the pressure cap. Square is a sign of long
 * stroke; round is no proof of standard. */
typedef enum rodt_port RODT_ENUM_TYPE {
    RODT_PORT_NOT_SEEN = 0, /* not looked at, or not to be seen */
    RODT_PORT_ROUND = 1,    /* round */
    RODT_PORT_SQUARE = 2    /* square */
} rodt_port;
#define RODT_PORT_END 3 /* one more than the last; grows in later versions */

/* Tag under a clamp bolt. A trapezoid is a sign of long stroke; no tag is no proof, tags fall off. */
typedef enum rodt_tag RODT_ENUM_TYPE {
    RODT_TAG_NOT_SEEN = 0, /* not looked at, or not to be seen */
    RODT_TAG_NONE = 1,     /* there is no tag */
    RODT_TAG_TRAPEZOID = 2 /* a trapezoid tag */
} rodt_tag;
#define RODT_TAG_END 3 /* one more than the last; grows in later versions */

/* What was seen. All zero bytes mean "nothing"; set what there is. */
typedef struct rodt_clues {
    rodt_chamber stamp;              /* what the stamped text says, by rodt_chamber_parse; zero = not legible */
    RODT_ENUM32(rodt_family) family; /* how the housing is built, by looking */
    RODT_ENUM32(rodt_port) port;     /* shape of the ports */
    RODT_ENUM32(rodt_tag) tag;       /* tag under a clamp bolt */
    rodt_length rated_stroke;        /* rated stroke that is marked */
    rodt_length diameter;            /* outside diameter by tape */
    rodt_length diameter_division;   /* graduation it was read to; not given = 1/8 in is taken */
    uint64_t reserved[4];            /* zero */
} rodt_clues;

/* Clues, as bits: which of them support or contradict a candidate, or each other. */
typedef enum rodt_clue RODT_ENUM_TYPE {
    RODT_CLUE_STAMP = 1u << 0,        /* the stamped text */
    RODT_CLUE_FAMILY = 1u << 1,       /* how the housing is built */
    RODT_CLUE_PORT_SHAPE = 1u << 2,         /* shape of the ports */
    RODT_CLUE_TAG = 1u << 3,          /* the tag */
    RODT_CLUE_RATED_STROKE = 1u << 4, /* the marked rated stroke */
    RODT_CLUE_DIAMETER = 1u << 5      /* the outside diameter */
} rodt_clue;

/* The one observation that would distinguish the candidates best. */
typedef enum rodt_observation RODT_ENUM_TYPE {
    RODT_OBSERVATION_NOTHING = 0,      /* nothing is open */
    RODT_OBSERVATION_FAMILY = 1,       /* how the housing is held together */
    RODT_OBSERVATION_STAMP = 2,        /* the stamped type */
    RODT_OBSERVATION_LONG_SIGN = 3,    /* port shape, trapezoid tag or the letters L, LS */
    RODT_OBSERVATION_RATED_STROKE = 4, /* the marked rated stroke */
    RODT_OBSERVATION_DIAMETER = 5      /* the outside diameter, by tape */
} rodt_observation;
#define RODT_OBSERVATION_END 6 /* one more than the last; grows in later versions */

/* One chamber that the clues allow. */
typedef struct rodt_candidate {
    rodt_chamber chamber;          /* family, size, class; rated stroke where it decides the row */
    rodt_length limit;             /* under the rule set; not given = none published */
    rodt_length diameter;          /* published outside diameter; not given = none */
    rodt_length diameter_distance; /* how far the tape reading is from it, never negative; not given = no reading */
    uint32_t clues_for;            /* RODT_CLUE_ bits */
    uint32_t clues_against;        /* RODT_CLUE_ bits; not zero only where the clues contradict each other */
    uint64_t reserved[4];          /* zero */
} rodt_candidate;

/* Candidates of one answer, at most. */
#define RODT_CANDIDATES_MAX 48

/* The answer: candidates with the best first. A plain value, about 10 KB; it points to nothing. */
typedef struct rodt_identification {
    size_t count; /* candidates; 0 = no chamber fits that the tables know */
    rodt_candidate candidates[RODT_CANDIDATES_MAX]; /* the best first */
    rodt_length strict_limit;   /* the smallest limit that rodt_rules_find_limit has for a candidate with the marked
                                   rated stroke; judge by it until one of them is left */
    uint32_t without_limit;     /* candidates that have no limit under the rule set; while there is one, the strict
                                   limit is no safe side */
    uint32_t contradiction;     /* the clues that cannot all be true; 0 = they agree */
    RODT_ENUM32(rodt_observation) next_observation; /* what to look at next */
    uint64_t reserved[4];       /* zero */
} rodt_identification;

/*
 * Lists the chambers that can be the one that was seen. The stroke class stays open without a sign of
 * long stroke; diameters of different families overlap (clamp 30, DD-3 30 and bolt C lie within 1.6 mm),
 * so a tape reading keeps every chamber within half a division and 1/16 in. A stamped size that no table
 * has is listed as it is stamped. When clues contradict each other, `contradiction` names them, and every
 * chamber is listed that a largest set of agreeing clues allows; stamped size, family and diameter go
 * before the signs of stroke class and the rated stroke.
 *
 * rules, day  as rodt_rules_find_limit
 *
 * error       NULL, or gets a sentence and the field: the name of a member, or that of rodt_chamber_check for the stamp
 *
 * RODT_OK               *out is the answer
 * RODT_E_UNKNOWN_RULES  rules is NULL
 * RODT_E_ARGUMENT       another pointer is NULL, there is no clue at all, an enumerator is unknown, a length is zero or
 *                       none that a tape shows, there is no such day, the reserve is not zero, or rodt_chamber_check
 *                       refuses the stamp
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_clues_identify(const rodt_clues *clues, const rodt_rules *rules,
                                                         rodt_date day, rodt_identification *out, rodt_error *error);

/* One sentence that says what to look at and what it would show. Constant, never NULL. */
RODT_API const char *rodt_observation_text(rodt_observation observation);

/* The same as data. RODT_OK; RODT_E_ARGUMENT: out is NULL. */
RODT_API rodt_status rodt_observation_message(rodt_observation observation, rodt_message *out);

/* The stable word of a clue, "port-shape"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_clue_name(rodt_clue clue);

/* Finds a clue by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_clue_find(const char *word, RODT_ENUM32(rodt_clue) *out);

/* The stable word of an observation, "long-sign"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_observation_name(rodt_observation observation);

/* Finds an observation by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is
 * none; RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_observation_find(const char *word, RODT_ENUM32(rodt_observation) *out);

/* The stable word of a shape, "square"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_port_name(rodt_port port);

/* Finds a shape by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_port_find(const char *word, RODT_ENUM32(rodt_port) *out);

/* The stable word of a tag, "trapezoid"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_tag_name(rodt_tag tag);

/* Finds a tag by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_tag_find(const char *word, RODT_ENUM32(rodt_tag) *out);

#ifdef __cplusplus
}
#endif
#endif
