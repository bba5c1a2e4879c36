/* SPDX-License-Identifier: Apache-2.0 */
/* The table of records. */
#ifndef RODT_RECORDS_H
#define RODT_RECORDS_H

#include "core/words.h"
#include "rodtravel/describe.h"
#include "rodtravel/rodtravel.h"

struct rodt_record {
    const char *name;
    const rodt_member *members;
    size_t count;
    size_t size;
    bool input; /* a caller fills it */
};

/* The records whose values have a text of their own, or members with readers of their own. */
extern const rodt_record rodti_record_chamber, rodti_record_form, rodti_record_reading, rodti_record_finding;

/* True for a reading and a finding: their members hold the fields of a wheel end, some in its chamber. */
bool rodti_is_of_wheel_end(const rodt_record *record);

extern const rodt_record *const rodti_records[]; /* closed by NULL */
extern const size_t rodti_record_total;

#endif
