/* SPDX-License-Identifier: Apache-2.0 */
/* Inspections on disk: what a full table held goes to files by the hash of the vehicle, so that each file is counted by
 * itself later; and lines that wait for their place. */
#ifndef BATCH_INSPECTION_SPILL_H
#define BATCH_INSPECTION_SPILL_H

#include "batch/inspection.h"

#include <stdio.h>

#define SPILL_BITS 5u
#define SPILL_FILES (1u << SPILL_BITS)
/* The hash has bits for so many levels: a file with too many inspections is split again. */
#define SPILL_LEVELS 12u

typedef struct inspection_spill {
    FILE *file[SPILL_FILES]; /* NULL = not opened yet */
    unsigned level;
} inspection_spill;

/* Appends the inspections of a table, each to the file of its vehicle, in their order. False: errno says why. */
bool inspection_spill_table(inspection_spill *spill, const inspection_table *table);
void inspection_spill_close(inspection_spill *spill);

/* Buffers of what is read. */
typedef struct spilled_inspection {
    inspection one;
    char name[NAME_SIZE_MAX + FOLDED_SIZE_MAX], other[NAME_SIZE_MAX];
} spilled_inspection;

typedef enum spill_status { SPILL_RECORD, SPILL_END, SPILL_E_READ /* errno says why */ } spill_status;

/* Reads the next one; the file was rewound before the first. */
spill_status inspection_spill_read(FILE *file, spilled_inspection *to);

/* Lines, each with the number of the row that it waits for; the number is read first. False: errno says why. */
bool spill_write_line(FILE *file, uint64_t number, const char *line, size_t size);
spill_status spill_read_number(FILE *file, uint64_t *number, uint32_t *size);
bool spill_read_line(FILE *file, char *line, size_t size);

#endif
