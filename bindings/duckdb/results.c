/* SPDX-License-Identifier: Apache-2.0 */
/* Vectors of texts that are filled. Words that live as long as the program are not copied. */
#include "extension.h"

#include <stdatomic.h>
#include <stdlib.h>
#include <string.h>

#define MOST_SHOWN 40

int shown_bytes(const char *text, size_t size)
{
    size_t shown = size < MOST_SHOWN ? size : MOST_SHOWN;
    while (shown < size && shown > 0 && ((unsigned char)text[shown] & 0xC0) == 0x80)
        shown--;
    return (int)shown;
}

result_texts open_texts(duckdb_vector vector)
{
    duckdb_vector_ensure_validity_writable(vector);
    return (result_texts){vector, duckdb_vector_get_data(vector), duckdb_vector_get_validity(vector)};
}

void put_null(const result_texts *to, idx_t row) { to->validity[row / 64] &= ~(UINT64_C(1) << row % 64); }

/* Texts of up to 12 bytes lie in the vector itself. */
static duckdb_string_t inline_text(const char *text, size_t size)
{
    duckdb_string_t made;
    memset(&made, 0, sizeof made);
    made.value.inlined.length = (uint32_t)size;
    memcpy(made.value.inlined.inlined, text, size);
    return made;
}

#define INLINE_SIZE sizeof((duckdb_string_t *)NULL)->value.inlined.inlined

void put_text(const result_texts *to, idx_t row, const char *text, size_t size)
{
    if (size == 0)
        put_null(to, row);
    else if (size <= INLINE_SIZE)
        to->data[row] = inline_text(text, size);
    else
        duckdb_vector_assign_string_element_len(to->vector, row, text, size);
}

/* DuckDB only reads through the pointer. */
static duckdb_string_t long_text(const char *text, size_t size)
{
    duckdb_string_t made;
    made.value.pointer.length = (uint32_t)size;
    memcpy(made.value.pointer.prefix, text, sizeof made.value.pointer.prefix);
    memcpy(&made.value.pointer.ptr, &text, sizeof made.value.pointer.ptr);
    return made;
}

static duckdb_string_t constant_text(const char *text)
{
    const size_t size = strlen(text);
    return size <= INLINE_SIZE ? inline_text(text, size) : long_text(text, size);
}

static void put_made(const result_texts *to, idx_t row, duckdb_string_t text)
{
    if (text.value.inlined.length == 0)
        put_null(to, row);
    else
        to->data[row] = text;
}

void put_constant(const result_texts *to, idx_t row, const char *text) { put_made(to, row, constant_text(text)); }

/* --- Exact numbers ------------------------------------------------------------------------------------- */

void put_exact(const result_texts *to, idx_t row, int64_t num, int64_t den)
{
    char text[SQL_EXACT_SIZE];
    put_text(to, row, text, sql_exact_write(num, den, text));
}

void put_units(worker *of, const result_texts *to, idx_t row, int32_t units)
{
    kept_text *kept = &of->texts[((uint32_t)units * UINT32_C(2654435761)) >> 20];
    if (kept->text.value.inlined.length != 0 && kept->units == units) {
        to->data[row] = kept->text;
        return;
    }
    rodt_ratio exact;
    char text[SQL_EXACT_SIZE];
    if (rodt_ratio_make(units, RODT_COLUMN_PER_INCH, &exact) != RODT_OK) {
        put_null(to, row);
        return;
    }
    const size_t size = sql_exact_write(exact.num, exact.den, text);
    put_text(to, row, text, size);
    if (size <= INLINE_SIZE)
        *kept = (kept_text){units, to->data[row]};
}

void put_parts(const result_texts *to, idx_t row, int64_t parts)
{
    rodt_ratio exact;
    if (rodt_ratio_make(parts, RODT_COLUMN_PARTS_PER_INCH, &exact) == RODT_OK)
        put_exact(to, row, exact.num, exact.den);
    else
        put_null(to, row);
}

_Static_assert(TEXTS_KEPT == 1 << 12, "32 - 20 bits number the texts that are kept");

/* --- Reasons ------------------------------------------------------------------------------------------- */

/* The words of a set of reasons. Once written they are never changed, and kept until the program ends: files have few
 * sets. */
typedef struct reason_words {
    uint64_t reasons;
    duckdb_string_t made; /* points to the text; empty where there are no reasons */
    char text[];
} reason_words;

#define SETS_KEPT 1024
#define SETS_TRIED 8
static _Atomic(reason_words *) sets[SETS_KEPT];

static reason_words *new_words(uint64_t reasons, const char *text, size_t size)
{
    reason_words *made = malloc(sizeof *made + size + 1);
    if (made == NULL)
        return NULL;
    made->reasons = reasons;
    memcpy(made->text, text, size + 1);
    made->made = constant_text(made->text);
    return made;
}

/* Puts words where none are yet. Another thread may have been faster, with this set or with another. */
static const reason_words *keep_words(_Atomic(reason_words *) *place, uint64_t reasons)
{
    char text[SQL_REASONS_SIZE];
    reason_words *found = NULL;
    const size_t size = sql_reasons_write(reasons, text);
    reason_words *made = new_words(reasons, text, size);
    if (made == NULL || atomic_compare_exchange_strong(place, &found, made))
        return made;
    free(made);
    return found;
}

static const reason_words *words_of(uint64_t reasons)
{
    const size_t first = (size_t)((reasons * UINT64_C(0x9E3779B97F4A7C15)) >> 54);
    for (size_t i = 0; i < SETS_TRIED; i++) {
        _Atomic(reason_words *) *place = &sets[(first + i) % SETS_KEPT];
        const reason_words *found = atomic_load(place);
        if (found == NULL)
            found = keep_words(place, reasons);
        if (found != NULL && found->reasons == reasons)
            return found;
    }
    return NULL;
}

void put_reasons(const result_texts *to, idx_t row, uint64_t reasons)
{
    const reason_words *kept = words_of(reasons);
    char text[SQL_REASONS_SIZE];
    if (kept != NULL)
        put_made(to, row, kept->made);
    else
        put_text(to, row, text, sql_reasons_write(reasons, text));
}
