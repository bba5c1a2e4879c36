/* SPDX-License-Identifier: Apache-2.0 */
/* The chambers of the tables, each held against the clues. */
#ifndef RODT_CANDIDATES_H
#define RODT_CANDIDATES_H

#include "core/common.h"
#include "rodtravel/identify.h"

/* The stamp's letters for the class, and a rated stroke in it, are a clue of their own inside; outside they are
 * the stamp. */
#define STAMPED_CLASS (1u << 6)
#define CLUE_SETS (1u << 7)

/* What the clues are held against, and how. */
typedef struct match_query {
    const rodt_clues *clues;
    const rodt_rules *rules;
    const rodt_rules *law; /* the same, or what a carrier's own limits are based on */
    rodt_date day;
    rodt_length tolerance; /* of the diameter */
} match_query;

/* A chamber of the tables in one stroke class, held against the clues. A doubt is what speaks against it by a figure
 * that was not read in its source: it may not rule a chamber out, but is named when none fits without it. */
typedef struct candidate_match {
    rodt_candidate candidate;
    uint32_t doubts; /* RODT_CLUE_ bits and STAMPED_CLASS, like those of the candidate */
    rodt_length strict_limit; /* the limit, or a smaller one that a contradicting rated stroke asks for */
} candidate_match;

/* True if the limit is given and below the other one, or the other one is not given. */
bool rodti_limit_is_lower(rodt_length limit, rodt_length other);

typedef void match_visitor(void *state, const candidate_match *matched);

/* Tries every chamber in every stroke class that the rule set knows, in the order of the tables, and the stamped one
 * if no table has it. The clues were checked. */
void rodti_match_every_chamber(const match_query *query, match_visitor *visit, void *state);

#endif
