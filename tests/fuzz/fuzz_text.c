/* SPDX-License-Identifier: Apache-2.0 */
/* Fuzz target: columns of texts of any bytes in every layout, with bitmaps and dictionaries whose indices may be out of
 * range. Every row is answered as rodt_form_judge_row answers its texts, when its cells are new and when they are cached.
 * Each part of a column is a piece of memory of its own, so that a checker of memory sees a step over its end. */
#include <stdlib.h>
#include <string.h>

#include "core/text.h"
#include "rodtravel/rodtravel.h"
#include "source.h"

#define ROWS_MOST 48
#define TEXTS 12
#define TEXT_MOST 300 /* more than a cell may have */

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static struct {
    void *memory[RODT_READING_FIELDS * 8 + TEXTS];
    size_t pieces;
    size_t rows;
    rodt_text_span texts[TEXTS];
    rodt_text_span cells[RODT_READING_FIELDS][ROWS_MOST]; /* what each row says; text NULL = nothing */
    rodt_text_columns in;
} made;

static void *room(size_t size)
{
    void *piece = malloc(size);
    demand((piece != NULL || size == 0) && made.pieces < sizeof made.memory / sizeof made.memory[0]);
    made.memory[made.pieces++] = piece;
    return piece;
}

/* --- Texts ------------------------------------------------------------------------------------------- */

/* A cell that people write, of which some bytes may be others; or any bytes. */
static void make_text(source *from, rodt_text_span *out)
{
    static const char *const written[] = {"30",     "24 long", "clamp 36", "2 1/8",      "4 13/16",    "31/8",  "63,5 mm",
                                          "95 psi", "1/16",    "standard", "2021-10-14", "06/05/2024", "in",    "mm",
                                          "on",     "off",     "hot",      "8-Mar",      "n/a",        "1 3/4 in"};
    char text[TEXT_MOST];
    uint8_t choice = byte(from);
    size_t size = choice & 1 ? byte(from) % 24 : strlen(written[choice / 2 % 20]);
    if (choice == 255)
        size = TEXT_MOST - byte(from) % 64;
    for (size_t i = 0; i < size; i++)
        text[i] = choice & 1 ? (char)byte(from) : written[choice / 2 % 20][i];
    if (choice >= 192 && size > 0)
        text[byte(from) % size] = (char)byte(from);
    char *kept = room(size);
    if (size > 0)
        memcpy(kept, text, size);
    *out = (rodt_text_span){kept != NULL ? kept : "", size};
}

/* --- Layouts ----------------------------------------------------------------------------------------- */

/* The bitmap of so many cells; those that are not there are taken out of `texts`. */
static rodt_column_bits make_bits(source *from, rodt_text_span *texts, size_t count)
{
    size_t first = byte(from) % 11;
    uint8_t *bits = room((first + count + 7) / 8);
    for (size_t i = 0; i < (first + count + 7) / 8; i++)
        bits[i] = (uint8_t)(byte(from) | byte(from));
    for (size_t i = 0; i < count; i++) {
        if ((bits[(first + i) / 8] >> (first + i) % 8 & 1) == 0)
            texts[i].text = NULL;
    }
    return (rodt_column_bits){bits, first};
}

static void put_offsets(const rodt_text_span *texts, size_t count, bool wide, rodt_text_cells *out)
{
    size_t used = 0;
    for (size_t i = 0; i < count; i++)
        used += texts[i].size;
    char *bytes = room(used);
    int32_t *offsets32 = wide ? NULL : room((count + 1) * sizeof *offsets32);
    int64_t *offsets64 = wide ? room((count + 1) * sizeof *offsets64) : NULL;
    used = 0;
    for (size_t i = 0; i <= count; i++) {
        if (wide)
            offsets64[i] = (int64_t)used;
        else
            offsets32[i] = (int32_t)used;
        if (i < count && texts[i].size > 0)
            memcpy(bytes + used, texts[i].text, texts[i].size);
        used += i < count ? texts[i].size : 0;
    }
    out->cells = wide ? (const void *)offsets64 : offsets32;
    out->bytes = bytes;
}

/* A buffer for each long text. */
static void put_views(const rodt_text_span *texts, size_t count, rodt_text_cells *out)
{
    char *views = room(16 * count);
    const void **buffers = room(count * sizeof *buffers);
    for (size_t i = 0; i < count; i++) {
        const int32_t part[4] = {(int32_t)texts[i].size, 0, (int32_t)i, 0};
        memcpy(views + 16 * i, part, sizeof part);
        if (texts[i].size <= 12)
            memset(views + 16 * i + 4, 0, 12);
        memcpy(views + 16 * i + 4, texts[i].text, texts[i].size <= 12 ? texts[i].size : 4);
        buffers[i] = texts[i].text;
    }
    out->cells = views;
    out->buffers = buffers;
}

static void put_spans(const rodt_text_span *texts, size_t count, rodt_text_cells *out)
{
    rodt_text_span *spans = room(count * sizeof *spans);
    if (count > 0)
        memcpy(spans, texts, count * sizeof *spans);
    out->cells = spans;
}

/* `texts` in one of the layouts; what a bitmap takes out becomes NULL in it. */
static void make_cells(source *from, rodt_text_span *texts, size_t count, rodt_text_cells *out)
{
    uint8_t choice = byte(from);
    memset(out, 0, sizeof *out);
    out->layout = RODT_TEXT_LAYOUT_OFFSETS32 + choice % 4u;
    out->count = count;
    switch (choice % 4) {
    case 0: put_offsets(texts, count, false, out); break;
    case 1: put_offsets(texts, count, true, out); break;
    case 2: put_views(texts, count, out); break;
    default: put_spans(texts, count, out); break;
    }
    if (choice & 64)
        out->valid = make_bits(from, texts, count);
}

static void put_index(void *index, uint32_t width, size_t i, uint64_t number)
{
    uint8_t number8 = (uint8_t)number;
    uint16_t number16 = (uint16_t)number;
    uint32_t number32 = (uint32_t)number;
    char *at = (char *)index + i * width;
    switch (width) {
    case 1: memcpy(at, &number8, sizeof number8); break;
    case 2: memcpy(at, &number16, sizeof number16); break;
    case 4: memcpy(at, &number32, sizeof number32); break;
    default: memcpy(at, &number, sizeof number); break;
    }
}

/* A dictionary of all texts, and for each row a number, which it may not have. */
static void make_dictionary(source *from, rodt_text_span *cells, rodt_text_cells *out)
{
    rodt_text_span texts[TEXTS];
    memcpy(texts, made.texts, sizeof texts);
    make_cells(from, texts, TEXTS, out);
    uint32_t width = 1u << byte(from) % 4;
    void *index = room(made.rows * width);
    for (size_t i = 0; i < made.rows; i++) {
        uint8_t choice = byte(from);
        uint64_t number = choice < 240 ? choice % TEXTS : UINT64_MAX - choice % 4u * 77u;
        put_index(index, width, i, number);
        cells[i] = number < TEXTS ? texts[number] : (rodt_text_span){NULL, 0};
    }
    out->index = index;
    out->index_width = width;
    if (byte(from) & 1)
        out->index_valid = make_bits(from, cells, made.rows);
}

static void make_column(source *from, int field)
{
    rodt_text_span *cells = made.cells[field];
    uint8_t choice = byte(from);
    if (field >= RODT_FIELD_NEEDED && choice < 128)
        return;
    if (choice & 1) {
        make_dictionary(from, cells, &made.in.field[field]);
        return;
    }
    for (size_t i = 0; i < made.rows; i++)
        cells[i] = made.texts[byte(from) % TEXTS];
    make_cells(from, cells, made.rows, &made.in.field[field]);
}

/* --- The comparison ---------------------------------------------------------------------------------- */

/* A cell as a text of a form. */
static const char *text_of(rodt_text_span cell, char *closed)
{
    rodt_text_span trimmed = cell;
    if (cell.text == NULL)
        return NULL;
    if (cell.size >= TEXT_MOST || (cell.size > 0 && memchr(cell.text, '\0', cell.size) != NULL))
        return "?";
    rodti_text_trim(&trimmed.text, &trimmed.size);
    if (trimmed.size == 0)
        return NULL;
    if (cell.size > 255)
        return "?";
    memcpy(closed, cell.text, cell.size);
    closed[cell.size] = '\0';
    return closed;
}

_Static_assert(RODT_COLUMN_NO_LIMIT == RODT_COLUMN_NO_STROKE, "what units_of says of either");

static int32_t units_of(rodt_length length)
{
    rodt_length units;
    if (!rodt_length_given(length) ||
        rodt_length_scale(length, (rodt_ratio){RODT_COLUMN_PER_INCH, 1}, &units) != RODT_OK || units.den != 1 ||
        units.num > INT32_MAX)
        return RODT_COLUMN_NO_STROKE;
    return (int32_t)units.num;
}

/* No error, if and only if the texts can be judged; that of the judge is among them. */
static void check_errors(const rodt_form *text, const rodt_rules *rules)
{
    rodt_error errors[RODT_FORM_ERRORS_MAX], first;
    rodt_finding finding;
    size_t count = 99;
    rodt_status status = rodt_form_errors(text, errors, RODT_FORM_ERRORS_MAX, &count);
    demand(status == RODT_OK || status == RODT_E_ARGUMENT);
    rodt_status judged = rodt_form_judge(text, rules, &finding, &first);
    demand(status != RODT_OK || (count > 0) == (judged != RODT_OK));
    bool found = status != RODT_OK || count == 0;
    for (size_t i = 0; i < count && !found; i++)
        found = strcmp(errors[i].text, first.text) == 0 && strcmp(errors[i].field, first.field) == 0;
    demand(found);
}

static int64_t parts_of(rodt_length length)
{
    if (!rodt_length_given(length) || RODT_COLUMN_PARTS_PER_INCH % length.den != 0)
        return RODT_COLUMN_NO_STROKE;
    return length.num * (RODT_COLUMN_PARTS_PER_INCH / length.den);
}

/* What a row has to be answered with. */
typedef struct expected {
    uint64_t reasons;
    int64_t parts;
    int32_t stroke, limit;
    uint8_t verdict;
} expected;

static expected expect_row(const rodt_form *form, const rodt_rules *rules, size_t row)
{
    static char closed[RODT_READING_FIELDS][256];
    rodt_form text = *form;
    rodt_finding finding;
    for (int i = 0; i < RODT_READING_FIELDS; i++) {
        const char *said = text_of(made.cells[i][row], closed[i]);
        if (said != NULL)
            rodt_form_set(&text, (rodt_field)i, said);
    }
    demand(rodt_form_judge_row(&text, rules, &finding, NULL) == RODT_OK);
    check_errors(&text, rules);
    return (expected){finding.reasons, parts_of(finding.applied_stroke), units_of(finding.applied_stroke),
                      units_of(finding.limit), (uint8_t)finding.verdict};
}

static void judge(const rodt_form *form, const rodt_rules *rules)
{
    static int32_t stroke[ROWS_MOST], limit[ROWS_MOST];
    static int64_t parts[ROWS_MOST];
    static uint64_t reasons[ROWS_MOST];
    static uint8_t verdict[ROWS_MOST], flags[ROWS_MOST];
    const rodt_column_out out = {.stroke = stroke, .verdict = verdict, .reasons = reasons, .flags = flags,
                                 .limit = limit, .stroke_parts = parts};
    expected rows[ROWS_MOST];
    rodt_text_plan *plan = NULL;
    for (size_t i = 0; i < made.rows; i++)
        rows[i] = expect_row(form, rules, i);
    demand(rodt_text_plan_new(rules, form, &plan, NULL) == RODT_OK);
    for (int call = 0; call < 3; call++) { /* cells are cached by the first call, rows by the second */
        demand(rodt_text_plan_judge(plan, &made.in, made.rows, &out, NULL) == RODT_OK);
        for (size_t i = 0; i < made.rows; i++)
            demand(verdict[i] == rows[i].verdict && reasons[i] == rows[i].reasons && stroke[i] == rows[i].stroke &&
                   limit[i] == rows[i].limit && parts[i] == rows[i].parts);
    }
    rodt_text_plan_free(plan);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    source from = {data, size};
    memset(&made, 0, sizeof made);
    const rodt_rules *rules = rodt_rules_at(byte(&from) % rodt_rules_count());
    uint8_t choice = byte(&from);
    const rodt_form form = {.style = {.unit = choice % 3u, .decimal_comma = (choice & 4) != 0},
                            .date_order = choice / 8 % 4u,
                            .psi = choice & 128 ? "95" : NULL};
    uint8_t rows = byte(&from);
    made.rows = rows < 224 ? rows % 6u : rows % (ROWS_MOST + 1u); /* few take less time */
    for (size_t i = 0; i < TEXTS; i++)
        make_text(&from, &made.texts[i]);
    for (int i = 0; i < RODT_READING_FIELDS; i++)
        make_column(&from, i);
    judge(&form, rules);
    for (size_t i = 0; i < made.pieces; i++)
        free(made.memory[i]);
    return 0;
}
