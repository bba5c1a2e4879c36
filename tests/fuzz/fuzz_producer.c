/* SPDX-License-Identifier: Apache-2.0 */
/* Fuzz target: a producer of texts whose structs may say anything: figures that cannot be, nulls without a bitmap, no
 * format, what was released. What is refused changes nothing; what is taken gives every text as it was written, and
 * each chamber the code that it has by itself. Nothing is released by the reader. */
#include <stdlib.h>
#include <string.h>

#include <rodtravel/rodtravel.h>

#include "source.h"

#define CELLS_MOST 24

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static const char *const texts[] = {"30", "24 long", "", "clamp 36", "xyz", "bolt C", "8-Mar", "a chamber of type 30 on axle 2"};

static struct {
    struct ArrowSchema schema, dictionary_schema;
    struct ArrowArray array, dictionary;
    void *memory[16];
    size_t pieces;
    const void *buffers[2][4];
    const char *cells[CELLS_MOST]; /* of the texts; NULL = missing */
    const char *rows[CELLS_MOST];  /* of the array: the same, or by its dictionary */
    bool is_true;                  /* no struct says more than is there */
} made;

static void *room(size_t size)
{
    void *piece = calloc(1, size);
    demand((piece != NULL || size == 0) && made.pieces < sizeof made.memory / sizeof made.memory[0]);
    made.memory[made.pieces++] = piece;
    return piece;
}

static void release_schema(struct ArrowSchema *schema) { schema->release = NULL; }
static void release_array(struct ArrowArray *array) { array->release = NULL; }

/* --- Texts in a layout -------------------------------------------------------------------------------- */

/* Offsets of 32 or 64 bits. */
static void put_offsets(size_t cells, bool wide, const void **buffers)
{
    size_t used = 0, total = 0;
    for (size_t i = 0; i < cells; i++)
        total += made.cells[i] == NULL ? 0 : strlen(made.cells[i]);
    char *bytes = room(total);
    int32_t *offsets32 = wide ? NULL : room((cells + 1) * sizeof *offsets32);
    int64_t *offsets64 = wide ? room((cells + 1) * sizeof *offsets64) : NULL;
    for (size_t i = 0; i < cells; i++) {
        size_t size = made.cells[i] == NULL ? 0 : strlen(made.cells[i]);
        if (size > 0)
            memcpy(bytes + used, made.cells[i], size);
        used += size;
        if (wide)
            offsets64[i + 1] = (int64_t)used;
        else
            offsets32[i + 1] = (int32_t)used;
    }
    buffers[1] = wide ? (const void *)offsets64 : offsets32;
    buffers[2] = bytes;
}

/* The long texts follow each other in one buffer. */
static void put_views(size_t cells, const void **buffers)
{
    char *views = room(16 * cells), *bytes = room(CELLS_MOST * 40);
    int32_t used = 0;
    for (size_t i = 0; i < cells; i++) {
        const char *text = made.cells[i] == NULL ? "" : made.cells[i];
        const int32_t part[4] = {(int32_t)strlen(text), 0, 0, used};
        memcpy(views + 16 * i, part, sizeof part);
        if (part[0] <= 12)
            memset(views + 16 * i + 4, 0, 12);
        memcpy(views + 16 * i + 4, text, part[0] <= 12 ? (size_t)part[0] : 4);
        memcpy(bytes + used, text, (size_t)part[0]);
        used += part[0];
    }
    buffers[1] = views;
    buffers[2] = bytes;
}

/* The bitmap of cells from 0 to `cells`; NULL = all are there. */
static uint8_t *put_bits(source *from, const char **texts_of, size_t cells)
{
    if (byte(from) % 2 == 0)
        return NULL;
    uint8_t *bits = room((cells + 7) / 8);
    for (size_t i = 0; i < cells; i++) {
        bool there = byte(from) % 4 != 0;
        bits[i / 8] = (uint8_t)(bits[i / 8] | (there ? 1u << i % 8 : 0));
        if (!there)
            texts_of[i] = NULL;
    }
    return bits;
}

/* --- Structs ------------------------------------------------------------------------------------------ */

/* Mostly what is there. */
static int64_t figure(source *from, int64_t there)
{
    static const int64_t corners[] = {-1, INT64_MIN, INT64_MAX, INT64_MAX / 16 + 1, -2, 1000, 0, INT32_MAX};
    uint8_t choice = byte(from);
    if (choice < 240)
        return there;
    made.is_true = made.is_true && corners[choice % 8] == there;
    return corners[choice % 8];
}

static void set_array(source *from, struct ArrowArray *array, const void **buffers, size_t count, size_t offset,
                      size_t length)
{
    uint8_t odd = byte(from);
    array->offset = figure(from, (int64_t)offset);
    array->length = figure(from, (int64_t)length);
    array->n_buffers = figure(from, (int64_t)count);
    array->null_count = figure(from, buffers[0] != NULL ? -1 : 0);
    array->buffers = odd == 255 ? NULL : buffers;
    array->release = odd == 254 ? NULL : release_array;
}

static void set_schema(source *from, struct ArrowSchema *schema, const char *format)
{
    static const char *const others[] = {NULL, "", "+s", "z", "uu", "vz", "i", "u"};
    uint8_t odd = byte(from);
    schema->format = odd < 224 ? format : others[odd % 8];
    made.is_true = made.is_true && odd < 224;
    schema->release = odd == 255 ? NULL : release_schema;
}

static void make_texts(source *from, struct ArrowSchema *schema, struct ArrowArray *array, size_t length)
{
    static const char *const formats[] = {"u", "U", "vu"};
    size_t offset = byte(from) % 4, kind = byte(from) % 3, cells = offset + length;
    for (size_t i = 0; i < cells; i++)
        made.cells[i] = texts[byte(from) % 8];
    const void **buffers = made.buffers[0];
    buffers[0] = put_bits(from, made.cells, cells);
    if (kind == 2)
        put_views(cells, buffers);
    else
        put_offsets(cells, kind == 1, buffers);
    set_schema(from, schema, formats[kind]);
    set_array(from, array, buffers, 3, offset, length);
    memmove(made.cells, made.cells + offset, length * sizeof *made.cells);
}

/* Numbers of one to eight bytes; some are of no cell. */
static void make_dictionary(source *from, size_t cells)
{
    static const char *const formats[] = {"C", "S", "I", "L"};
    size_t offset = byte(from) % 4, length = byte(from) % (CELLS_MOST - 4), width = byte(from) % 4;
    uint8_t *numbers = room((offset + length) << width);
    const char *named[CELLS_MOST];
    for (size_t i = 0; i < offset + length; i++) {
        uint8_t number = byte(from) % (CELLS_MOST + 2);
        for (size_t k = 0; k < (size_t)1 << width; k++) /* as this machine has it */
            numbers[(i << width) + k] = 0;
        uint64_t value = number;
        memcpy(numbers + (i << width), (char *)&value + (*(const char *)&(const uint16_t){1} ? 0 : 8 - (1u << width)),
               (size_t)1 << width);
        named[i] = number < cells ? made.cells[number] : NULL;
    }
    const void **buffers = made.buffers[1];
    buffers[0] = put_bits(from, named, offset + length);
    buffers[1] = numbers;
    set_schema(from, &made.schema, formats[width]);
    set_array(from, &made.array, buffers, 2, offset, length);
    memcpy(made.rows, named + offset, length * sizeof *named);
    made.schema.dictionary = &made.dictionary_schema;
    made.array.dictionary = byte(from) == 255 ? NULL : &made.dictionary;
}

static void make_column(source *from)
{
    memset(&made, 0, sizeof made);
    made.is_true = true;
    bool named = byte(from) % 2 != 0;
    size_t length = byte(from) % (CELLS_MOST - 4);
    make_texts(from, named ? &made.dictionary_schema : &made.schema, named ? &made.dictionary : &made.array, length);
    if (named)
        make_dictionary(from, length);
    else
        memcpy(made.rows, made.cells, sizeof made.rows);
}

/* --- What is read ------------------------------------------------------------------------------------- */

/* The code of what is missing or unreadable; the least code of a chamber. */
static uint8_t kind_of(const char *text)
{
    rodt_chamber chamber;
    rodt_status status = text == NULL ? RODT_E_EMPTY : rodt_chamber_parse(text, &chamber, NULL);
    return status == RODT_OK        ? RODT_COLUMN_CHAMBER_UNREADABLE + 1
           : status == RODT_E_EMPTY ? RODT_COLUMN_CHAMBER_MISSING
                                    : RODT_COLUMN_CHAMBER_UNREADABLE;
}

/* Alike texts have alike codes; the other way round each chamber has one code alone. */
static void check_codes(const rodt_text_cells *cells, size_t rows)
{
    static rodt_column_plan *plan;
    rodt_chamber_reader *reader = NULL;
    uint8_t codes[CELLS_MOST];
    if (plan == NULL) /* making one takes far longer than reading by it */
        demand(rodt_column_plan_new(rodt_rules_find(RODT_DEFAULT_RULES), NULL, &plan, NULL) == RODT_OK);
    demand(rodt_chamber_reader_new(plan, &reader) == RODT_OK);
    demand(rodt_chamber_reader_read(reader, cells, rows, codes, NULL) == RODT_OK);
    for (size_t i = 0; i < rows; i++) {
        uint8_t own = kind_of(made.rows[i]);
        demand(own > RODT_COLUMN_CHAMBER_UNREADABLE ? codes[i] >= own : codes[i] == own);
        for (size_t k = 0; k < i; k++)
            demand(made.rows[k] != made.rows[i] || codes[k] == codes[i]);
    }
    rodt_chamber_reader_free(reader);
}

static void check_cells(const rodt_text_cells *cells, size_t rows)
{
    for (size_t i = 0; i < rows; i++) {
        rodt_text_span found = rodt_text_cells_at(cells, i);
        demand((found.text == NULL) == (made.rows[i] == NULL));
        demand(found.text == NULL || (found.size == strlen(made.rows[i]) && memcmp(found.text, made.rows[i], found.size) == 0));
    }
    check_codes(cells, rows);
}

static bool lacks_bitmap(const struct ArrowArray *array)
{
    return array->null_count > 0 && (array->buffers == NULL || array->buffers[0] == NULL);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    source from = {data, size};
    rodt_text_cells cells, untouched;
    rodt_error error = {0};
    make_column(&from);
    struct ArrowArray before = made.array;
    memset(&cells, 0xA5, sizeof cells);
    untouched = cells;
    rodt_status status = rodt_text_cells_from_arrow(&made.schema, &made.array, &cells, &error);
    demand(memcmp(&before, &made.array, sizeof before) == 0);
    if (status == RODT_OK) {
        demand(!lacks_bitmap(&made.array) && (made.array.dictionary == NULL || !lacks_bitmap(made.array.dictionary)));
        if (made.is_true)
            check_cells(&cells, (size_t)made.array.length);
    } else {
        demand(status == RODT_E_ARGUMENT && error.status == status && error.text[0] != '\0');
        demand(memcmp(&cells, &untouched, sizeof cells) == 0);
    }
    for (size_t i = 0; i < made.pieces; i++)
        free(made.memory[i]);
    return 0;
}
