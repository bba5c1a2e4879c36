/* SPDX-License-Identifier: Apache-2.0 */
/* Parts of the sentences of air checks: each adds clauses, and what they name, to a message. */
#ifndef RODT_AIR_SENTENCE_H
#define RODT_AIR_SENTENCE_H

#include "message/message.h"
#include "rodtravel/aircheck.h"

static inline bool air_is_major(const rodt_air_limit *row)
{
    return row->kind == RODT_AIR_KIND_MAJOR || row->kind == RODT_AIR_KIND_LIMIT_AND_MAJOR;
}

static inline bool air_is_minor(const rodt_air_limit *row) { return row->kind == RODT_AIR_KIND_LIMIT_AND_MINOR; }

/* True if every enumerator of the finding is known, and a result of a row has one. */
bool rodti_air_can_be_said(const rodt_air_finding *finding);

void rodti_air_add_found(rodt_message *out, const rodt_air_finding *finding);    /* {found} */
void rodti_air_add_required(rodt_message *out, const rodt_air_finding *finding); /* {required} */
void rodti_air_add_missing(rodt_message *out, const rodt_air_finding *finding);  /* {missing} */
void rodti_air_add_span(rodt_message *out, const rodt_air_limit *row);           /* {span} */

/* {when}: what is defective, "below 55 psi", "if a leak is heard"; finding may be NULL. The row is no usual figure. */
void rodti_air_add_when(rodt_message *out, const rodt_air_limit *row, const rodt_air_finding *finding);

/* {NAME}: "defective {when}", and all that it needs; also of a usual figure. */
void rodti_air_add_edge(rodt_message *out, const char *name, const rodt_air_finding *finding);

#endif
