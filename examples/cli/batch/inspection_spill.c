/* SPDX-License-Identifier: Apache-2.0 */
/* The files are of this run alone, so records are written as they are in memory. */
#include "batch/inspection_spill.h"
#include "io/temporary_file.h"

#include <errno.h>
#include <string.h>

/* --- Inspections --------------------------------------------------------------------------------------- */

static bool write_bytes(FILE *file, const void *bytes, size_t size)
{
    return size == 0 || fwrite(bytes, size, 1, file) == 1;
}

/* The folded name follows the name. */
static size_t text_size(const inspection_key *key) { return (size_t)key->name_size + key->folded_size; }

static bool write_inspection(FILE *file, const inspection *one)
{
    return write_bytes(file, one, sizeof *one) && write_bytes(file, one->key.name, text_size(&one->key)) &&
           (one->other == NULL || write_bytes(file, one->other, one->other_size));
}

/* All inspections of a vehicle go to one file. */
static unsigned file_of(const inspection_spill *spill, const inspection *one)
{
    return (unsigned)(one->key.hash >> (64 - SPILL_BITS * (spill->level + 1)) & (SPILL_FILES - 1));
}

bool inspection_spill_table(inspection_spill *spill, const inspection_table *table)
{
    for (size_t i = 0; i < table->count; i++) {
        FILE **file = &spill->file[file_of(spill, &table->items[i])];
        if (*file == NULL)
            *file = temporary_file();
        if (*file == NULL || !write_inspection(*file, &table->items[i]))
            return false;
    }
    return true;
}

void inspection_spill_close(inspection_spill *spill)
{
    for (size_t i = 0; i < SPILL_FILES; i++) {
        if (spill->file[i] != NULL)
            fclose(spill->file[i]);
        spill->file[i] = NULL;
    }
}

static bool read_bytes(FILE *file, void *bytes, size_t size) { return size == 0 || fread(bytes, size, 1, file) == 1; }

spill_status inspection_spill_read(FILE *file, spilled_inspection *to)
{
    inspection *one = &to->one;
    errno = EIO; /* a file that ends too early has no errno of its own */
    size_t got = fread(one, 1, sizeof *one, file);
    if (got == 0 && !ferror(file))
        return SPILL_END;
    bool has_other = one->other != NULL;
    one->key.name = to->name;
    one->other = has_other ? to->other : NULL;
    bool good = got == sizeof *one && read_bytes(file, to->name, text_size(&one->key)) &&
                (!has_other || read_bytes(file, to->other, one->other_size));
    return good ? SPILL_RECORD : SPILL_E_READ;
}

/* --- Lines --------------------------------------------------------------------------------------------- */

typedef struct line_head {
    uint64_t number;
    uint64_t size;
} line_head;

bool spill_write_line(FILE *file, uint64_t number, const char *line, size_t size)
{
    const line_head head = {number, size};
    return write_bytes(file, &head, sizeof head) && write_bytes(file, line, size);
}

spill_status spill_read_number(FILE *file, uint64_t *number, uint32_t *size)
{
    line_head head;
    errno = EIO;
    size_t got = fread(&head, 1, sizeof head, file);
    if (got != sizeof head)
        return got == 0 && !ferror(file) ? SPILL_END : SPILL_E_READ;
    *number = head.number;
    *size = (uint32_t)head.size;
    return SPILL_RECORD;
}

bool spill_read_line(FILE *file, char *line, size_t size)
{
    errno = EIO;
    return read_bytes(file, line, size);
}
