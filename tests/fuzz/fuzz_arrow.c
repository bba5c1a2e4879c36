/* SPDX-License-Identifier: Apache-2.0 */
/* Fuzz target: a record batch whose structs may say anything. What is refused writes nothing; what is taken is read
 * inside its buffers, which are just as long as the structs say, and is answered as rodt_reading_judge answers it. */
#include <stdlib.h>
#include <string.h>

#include "column/plan.h"
#include "column_expect.h"
#include "source.h"

#define CHILDREN 7
#define CELLS_MOST 64 /* of a buffer that is really there */

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static rodt_column_plan *plan;
static rodt_chamber chambers[COLUMN_CODES];
static const rodt_reading common;

static struct {
    struct ArrowSchema schema, schemas[CHILDREN], *schema_of[CHILDREN];
    struct ArrowArray array, arrays[CHILDREN], *array_of[CHILDREN];
    const void *buffers[CHILDREN + 1][3];
    void *memory[2 * CHILDREN + 1];
    size_t pieces;
    bool is_true; /* no struct says more than its buffers hold */
} batch;

static void *room(source *from, size_t size)
{
    uint8_t *piece = malloc(size);
    demand(piece != NULL || size == 0);
    for (size_t i = 0; i < size; i++)
        piece[i] = byte(from);
    batch.memory[batch.pieces++] = piece;
    return piece;
}

static void release_schema(struct ArrowSchema *schema) { schema->release = NULL; }
static void release_array(struct ArrowArray *array) { array->release = NULL; }

/* Mostly what can be. */
static int64_t figure(source *from, int64_t most)
{
    static const int64_t corners[] = {-1, INT64_MIN, INT64_MAX, INT64_MAX - 1, INT64_MIN + 1, 65, INT32_MAX, -2};
    uint8_t choice = byte(from);
    if (choice >= 240)
        batch.is_true = false;
    return choice < 240 ? choice % (most + 1) : corners[choice % 8];
}

static size_t width_of(const char *format)
{
    if (format == NULL)
        return 0;
    return strcmp(format, "l") == 0 ? 8 : strcmp(format, "C") == 0 ? 1 : 4;
}

static void make_array(source *from, const char *format, int64_t usual_buffers, const void **buffers,
                       struct ArrowArray *array)
{
    uint8_t odd = byte(from);
    array->offset = figure(from, CELLS_MOST / 4);
    array->length = figure(from, CELLS_MOST / 2);
    if (odd & 64) { /* a batch that a program would make */
        array->length = usual_buffers == 1 ? 20 : 40;
        array->offset = odd % 4;
    }
    array->null_count = odd & 1 ? -1 : odd & 2 ? byte(from) : 0;
    array->n_buffers = odd >= 224 ? figure(from, 3) : usual_buffers;
    bool real = array->offset >= 0 && array->length >= 0 && array->offset <= CELLS_MOST &&
                array->length <= CELLS_MOST - array->offset;
    size_t cells = real ? (size_t)(array->offset + array->length) : 0;
    buffers[0] = odd & 4 ? room(from, (cells + 7) / 8) : NULL;
    if (usual_buffers == 2)
        buffers[1] = odd & 8 && odd & 16 && odd & 32 ? NULL : room(from, cells * width_of(format));
    array->buffers = odd == 223 ? NULL : buffers;
    array->release = odd == 222 ? NULL : release_array;
    array->dictionary = odd == 221 ? &batch.arrays[0] : NULL;
}

static void make_child(source *from, int i)
{
    static const char *const names[] = {"released", "applied", "chamber", "psi", "date", "house", "", NULL};
    static const char *const formats[] = {"i", "i", "C", "i", "tdD", "l", "u", "+s", "", "ii", NULL, "c"};
    uint8_t odd = byte(from);
    const char *format = formats[odd < 160 ? i % 5 : odd < 200 ? 5 : odd % 12];
    batch.schemas[i] = (struct ArrowSchema){.name = names[odd & 1 && odd > 128 ? byte(from) % 8 : i], .format = format,
                                            .release = odd == 255 ? NULL : release_schema,
                                            .dictionary = odd == 254 ? &batch.schema : NULL};
    batch.arrays[i] = (struct ArrowArray){0};
    make_array(from, format, 2, batch.buffers[i], &batch.arrays[i]);
    batch.schema_of[i] = odd == 253 ? NULL : &batch.schemas[i];
    batch.array_of[i] = odd == 252 ? NULL : &batch.arrays[i];
}

static void make_batch(source *from)
{
    static const char *const formats[] = {"+s", "+l", "i", NULL};
    memset(&batch, 0, sizeof batch);
    batch.is_true = true;
    uint8_t odd = byte(from);
    int64_t count = odd & 1 ? 5 : byte(from) % (CHILDREN + 1);
    for (int i = 0; i < CHILDREN; i++)
        make_child(from, i);
    batch.schema = (struct ArrowSchema){.format = formats[odd >= 240 ? odd % 4 : 0], .n_children = count,
                                        .children = odd == 239 ? NULL : batch.schema_of,
                                        .release = odd == 238 ? NULL : release_schema};
    batch.array = (struct ArrowArray){0};
    make_array(from, NULL, 1, batch.buffers[CHILDREN], &batch.array);
    batch.array.n_children = odd >= 230 && odd < 238 ? figure(from, CHILDREN) : count;
    batch.array.children = odd == 229 ? NULL : batch.array_of;
}

static void start(void)
{
    static const char *const marks[] = {"30", "24 long", "18"};
    demand(rodt_column_plan_new(rodt_rules_find(RODT_DEFAULT_RULES), NULL, &plan, NULL) == RODT_OK);
    for (int i = 0; i < 3; i++) {
        rodt_chamber chamber;
        uint32_t code;
        demand(rodt_chamber_parse(marks[i], &chamber, NULL) == RODT_OK);
        demand(rodt_column_plan_add(plan, &chamber, &code, NULL) == RODT_OK);
        chambers[code] = chamber;
    }
}

static void judge(const rodt_column_in *in, size_t rows)
{
    static int32_t stroke[CELLS_MOST];
    static uint64_t reasons[CELLS_MOST];
    static uint8_t verdict[CELLS_MOST];
    const rodt_column_out out = {.stroke = stroke, .verdict = verdict, .reasons = reasons};
    demand(rodt_column_plan_judge_arrow(plan, &batch.schema, &batch.array, &out, NULL) == RODT_OK);
    for (size_t i = 0; i < rows; i++) {
        column_expected expected;
        demand(column_expect(plan, chambers, &common, in, i, &expected));
        demand(stroke[i] == expected.stroke && verdict[i] == expected.verdict && reasons[i] == expected.reasons);
    }
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    source from = {data, size};
    rodt_column_in in;
    rodt_error error;
    size_t rows = SIZE_MAX;
    memset(&in, 0xA5, sizeof in);
    rodt_column_in before = in;
    if (plan == NULL)
        start();
    make_batch(&from);
    rodt_status status = rodt_column_in_from_arrow(&batch.schema, &batch.array, &in, &rows, &error);
    if (status != RODT_OK)
        demand(status == RODT_E_ARGUMENT && error.status == status && error.text[0] != '\0' && rows == SIZE_MAX && memcmp(&in, &before, sizeof in) == 0);
    else
        demand(rows == (size_t)batch.array.length);
    if (status == RODT_OK && batch.is_true)
        judge(&in, rows);
    for (size_t i = 0; i < batch.pieces; i++)
        free(batch.memory[i]);
    return 0;
}
