/* SPDX-License-Identifier: Apache-2.0 */
/* Record batches of the Arrow C Data Interface: what is sound is read where it lies, what is not is refused and nothing
 * is written. The structs and their rules are those of the published specification of the interface. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <string.h>

#include "column/plan.h"
#include "column_expect.h"
#include "rodtravel/rodtravel.h"
#include "support.h"

#define ALL_CELLS 131
#define OFFSET 5       /* of each child */
#define BATCH_OFFSET 13
#define ROWS 100

enum { APPLIED, RELEASED, DAY, CHAMBER, PRESSURE, CHILDREN };
static const char *const names[CHILDREN] = {"applied", "released", "date", "chamber", "psi"};

static rodt_column_plan *plan;
static rodt_chamber chambers[COLUMN_CODES];
static const rodt_reading common;

static int64_t applied[ALL_CELLS];
static int32_t released[ALL_CELLS], day[ALL_CELLS], pressure[ALL_CELLS];
static uint8_t chamber[ALL_CELLS], bits[CHILDREN + 1][ALL_CELLS / 8 + 1];

static struct {
    struct ArrowSchema schema, schemas[CHILDREN], *schema_of[CHILDREN];
    struct ArrowArray array, arrays[CHILDREN], *array_of[CHILDREN];
    const void *buffers[CHILDREN][3], *own[2];
} batch;

static int32_t stroke[ROWS];
static uint64_t reasons[ROWS];
static uint8_t verdict[ROWS], flags[ROWS];
static const rodt_column_out answers = {.stroke = stroke, .verdict = verdict, .reasons = reasons, .flags = flags};

/* --- A sound batch ----------------------------------------------------------------------------------- */

static void keep_schema(struct ArrowSchema *schema) { schema->release = NULL; }
static void keep_array(struct ArrowArray *array) { array->release = NULL; }

static void make_cells(void)
{
    uint64_t seed = 11;
    for (size_t i = 0; i < ALL_CELLS; i++) {
        released[i] = (int32_t)(chance(&seed) % 200) * RODT_COLUMN_PER_64TH - RODT_COLUMN_PER_64TH;
        applied[i] = chance(&seed) % 9 == 0 ? chance_number(&seed)
                                            : released[i] + (int64_t)(chance(&seed) % 200) * RODT_COLUMN_PER_64TH;
        day[i] = (int32_t)(chance(&seed) % 30000);
        pressure[i] = (int32_t)(chance(&seed) % 30) * 1000 + 80000;
        chamber[i] = (uint8_t)(chance(&seed) % 6);
    }
    for (size_t k = 0; k <= CHILDREN; k++)
        for (size_t i = 0; i < sizeof bits[k]; i++)
            bits[k][i] = (uint8_t)(chance(&seed) | chance(&seed));
}

static void make_child(int i, const char *name, const char *format, const void *values)
{
    batch.buffers[i][0] = bits[i];
    batch.buffers[i][1] = values;
    batch.schemas[i] = (struct ArrowSchema){.name = name, .format = format, .release = keep_schema};
    batch.arrays[i] = (struct ArrowArray){.length = ALL_CELLS - OFFSET, .offset = OFFSET, .null_count = -1, .n_buffers = 2,
                                          .buffers = batch.buffers[i], .release = keep_array};
    batch.schema_of[i] = &batch.schemas[i];
    batch.array_of[i] = &batch.arrays[i];
}

static void make_batch(void)
{
    make_child(APPLIED, "applied", "l", applied);
    make_child(RELEASED, "released", "i", released);
    make_child(DAY, "date", "tdD", day);
    make_child(CHAMBER, "chamber", "C", chamber);
    make_child(PRESSURE, "psi", "i", pressure);
    batch.own[0] = bits[CHILDREN];
    batch.schema = (struct ArrowSchema){
        .format = "+s", .n_children = CHILDREN, .children = batch.schema_of, .release = keep_schema};
    batch.array = (struct ArrowArray){.length = ROWS, .offset = BATCH_OFFSET, .null_count = -1, .n_buffers = 1,
                                      .n_children = CHILDREN, .buffers = batch.own, .children = batch.array_of,
                                      .release = keep_array};
}

static int make_all(void **state)
{
    static const char *const marks[] = {"30", "24 long", "clamp 36"};
    (void)state;
    assert_int_equal(rodt_column_plan_new(rodt_rules_find("us-fmcsr"), NULL, &plan, NULL), RODT_OK);
    for (size_t i = 0; i < 3; i++) {
        rodt_chamber made;
        uint32_t code;
        assert_int_equal(rodt_chamber_parse(marks[i], &made, NULL), RODT_OK);
        assert_int_equal(rodt_column_plan_add(plan, &made, &code, NULL), RODT_OK);
        chambers[code] = made;
    }
    make_cells();
    return 0;
}

static int free_plan(void **state)
{
    (void)state;
    rodt_column_plan_free(plan);
    return 0;
}

static int make_anew(void **state)
{
    (void)state;
    make_batch();
    return 0;
}

/* --- What is taken ----------------------------------------------------------------------------------- */

static void expect_rows(const rodt_column_in *in, size_t rows)
{
    for (size_t i = 0; i < rows; i++) {
        column_expected expected;
        assert_true(column_expect(plan, chambers, &common, in, i, &expected));
        assert_int_equal(stroke[i], expected.stroke);
        assert_int_equal(verdict[i], expected.verdict);
        assert_int_equal(reasons[i], expected.reasons);
        assert_int_equal(flags[i], expected.flags);
    }
}

static void judge_alike(void)
{
    rodt_column_in in;
    size_t rows;
    assert_int_equal(rodt_column_plan_judge_arrow(plan, &batch.schema, &batch.array, &answers, NULL), RODT_OK);
    assert_int_equal(rodt_column_in_from_arrow(&batch.schema, &batch.array, &in, &rows, NULL), RODT_OK);
    assert_int_equal(rows, ROWS);
    expect_rows(&in, rows);
}

static void a_batch_is_judged_alike(void **state)
{
    (void)state;
    judge_alike();
    assert_non_null(batch.schema.release); /* nothing is released */
    assert_non_null(batch.array.release);
    assert_non_null(batch.arrays[0].release);
}

static void nothing_is_copied_and_both_offsets_count(void **state)
{
    (void)state;
    rodt_column_in in;
    size_t rows;
    for (int turn = 0; turn < 2; turn++) {
        assert_int_equal(rodt_column_in_from_arrow(&batch.schema, &batch.array, &in, &rows, NULL), RODT_OK);
        assert_ptr_equal(in.released, released + OFFSET + BATCH_OFFSET);
        assert_ptr_equal(in.applied64, applied + OFFSET + BATCH_OFFSET);
        assert_null(in.released64);
        assert_null(in.applied);
        assert_ptr_equal(in.chamber, chamber + OFFSET + BATCH_OFFSET);
        assert_ptr_equal(in.psi, pressure + OFFSET + BATCH_OFFSET);
        assert_ptr_equal(in.date, day + OFFSET + BATCH_OFFSET);
        const rodt_column_bits *valid[CHILDREN] = {&in.applied_valid, &in.released_valid, &in.date_valid, &in.chamber_valid,
                                                   &in.psi_valid};
        for (int i = 0; i < CHILDREN; i++) {
            assert_ptr_equal(valid[i]->bits, bits[i]);
            assert_int_equal(valid[i]->from, OFFSET + BATCH_OFFSET);
            batch.schema_of[i] = &batch.schemas[CHILDREN - 1 - i]; /* then the other way round */
            batch.array_of[i] = &batch.arrays[CHILDREN - 1 - i];
        }
        assert_ptr_equal(in.row_valid.bits, bits[CHILDREN]);
        assert_int_equal(in.row_valid.from, BATCH_OFFSET);
    }
}

static void readings_are_of_either_width(void **state)
{
    (void)state;
    rodt_column_in in;
    size_t rows;
    make_child(RELEASED, "released", "l", applied);
    make_child(APPLIED, "applied", "i", released);
    assert_int_equal(rodt_column_in_from_arrow(&batch.schema, &batch.array, &in, &rows, NULL), RODT_OK);
    assert_ptr_equal(in.released64, applied + OFFSET + BATCH_OFFSET);
    assert_ptr_equal(in.applied, released + OFFSET + BATCH_OFFSET);
    assert_null(in.released);
    assert_null(in.applied64);
}

static void no_more_cells_and_columns_are_needed(void **state)
{
    (void)state;
    for (int i = 0; i < CHILDREN; i++)
        batch.arrays[i].length = ROWS + BATCH_OFFSET;
    batch.schemas[DAY].name = batch.schemas[PRESSURE].name = "house";
    judge_alike();
}

static void bitmaps_may_be_absent(void **state)
{
    (void)state;
    for (int i = 0; i < CHILDREN; i++) {
        batch.buffers[i][0] = NULL;
        batch.arrays[i].null_count = i % 2 - 1;
    }
    batch.own[0] = NULL;
    judge_alike();
}

static void other_children_may_be_of_any_kind(void **state)
{
    (void)state;
    batch.schemas[DAY] = (struct ArrowSchema){.name = "house", .format = "u", .release = keep_schema};
    batch.arrays[DAY].n_buffers = 3;
    judge_alike();
    batch.schemas[DAY].name = NULL;
    batch.schemas[DAY].format = NULL;
    judge_alike();
    batch.schemas[DAY].name = "";
    batch.arrays[DAY].length = -1;
    judge_alike();
    batch.array_of[DAY] = NULL;
    judge_alike();
}

static void an_empty_batch_needs_no_cells(void **state)
{
    (void)state;
    batch.array.length = 0;
    for (int i = 0; i < CHILDREN; i++)
        batch.buffers[i][1] = NULL;
    stroke[0] = 77;
    for (int64_t children = CHILDREN; children > 0; children--) { /* nor all columns */
        batch.schema.n_children = batch.array.n_children = children;
        assert_int_equal(rodt_column_plan_judge_arrow(plan, &batch.schema, &batch.array, &answers, NULL), RODT_OK);
    }
    assert_int_equal(stroke[0], 77);
}

/* --- What is refused --------------------------------------------------------------------------------- */

/* Refused, nothing written; then all is sound again, so that the next fault stands alone. */
static void refused_at(const char *field)
{
    rodt_error error = {.status = RODT_OK};
    rodt_column_in in;
    size_t rows = 42;
    memset(&in, 0x5A, sizeof in);
    rodt_column_in before = in;
    stroke[0] = 77;
    assert_int_equal(rodt_column_in_from_arrow(&batch.schema, &batch.array, &in, &rows, &error), RODT_E_ARGUMENT);
    assert_int_equal(rodt_column_plan_judge_arrow(plan, &batch.schema, &batch.array, &answers, NULL), RODT_E_ARGUMENT);
    assert_string_equal(error.field, field);
    assert_true(strlen(error.text) > 10);
    assert_memory_equal(&in, &before, sizeof in);
    assert_int_equal(rows, 42);
    assert_int_equal(stroke[0], 77);
    make_batch();
}

static void refused(void) { refused_at(""); }

static void wrong_formats_are_refused(void **state)
{
    (void)state;
    static const char *const wrong[CHILDREN][6] = {
        [APPLIED] = {"g", "L", "", "ll", "l ", "tdD"}, [RELEASED] = {"I", "f", "", "ii", "s", "C"},
        [DAY] = {"i", "tdm", "", "tdDD", "td", "ttm"}, [CHAMBER] = {"c", "i", "", "CC", "S", "u"},
        [PRESSURE] = {"l", "I", "", "i:", "f", "d:9,3"}};
    for (int i = 0; i < CHILDREN; i++) {
        for (int k = 0; k < 6; k++) {
            batch.schemas[i].format = wrong[i][k];
            refused_at(names[i]);
        }
        batch.schemas[i].format = NULL;
        refused_at(names[i]);
    }
}

static void a_wrong_batch_is_refused(void **state)
{
    (void)state;
    static const char *const wrong[] = {"+l", "+s ", "s", "", "+", "+m", "+ud:0"};
    for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++) {
        batch.schema.format = wrong[i];
        refused();
    }
    batch.schema.format = NULL;
    refused();
    batch.schema.release = NULL;
    refused();
    batch.array.release = NULL;
    refused();
    batch.schema.children = NULL;
    refused();
    batch.array.children = NULL;
    refused();
    batch.schema.dictionary = &batch.schemas[0];
    refused();
    batch.array.dictionary = &batch.arrays[0];
    refused();
    rodt_column_in in;
    size_t rows;
    make_batch();
    assert_int_equal(rodt_column_in_from_arrow(&batch.schema, &batch.array, &in, &rows, NULL), RODT_OK);
    for (int i = 0; i < 4; i++) {
        rodt_error error = {.status = RODT_OK};
        assert_int_equal(rodt_column_in_from_arrow(i == 0 ? NULL : &batch.schema, i == 1 ? NULL : &batch.array,
                                                   i == 2 ? NULL : &in, i == 3 ? NULL : &rows, &error), RODT_E_ARGUMENT);
        assert_string_equal(error.field, "");
        assert_string_equal(error.text, "a schema, an array and room for the columns are needed");
    }
    for (int i = 0; i < 2; i++) {
        rodt_error error = {.status = RODT_OK};
        assert_int_equal(rodt_column_plan_judge_arrow(i == 0 ? NULL : plan, &batch.schema, &batch.array,
                                                      i == 1 ? NULL : &answers, &error), RODT_E_ARGUMENT);
        assert_string_equal(error.field, "");
        assert_string_equal(error.text, "a plan and room for the answers are needed");
    }
}

static void wrong_children_are_refused(void **state)
{
    (void)state;
    for (int i = 0; i < CHILDREN; i++) {
        batch.array_of[i] = NULL;
        refused_at(names[i]);
        batch.schema_of[i] = NULL;
        refused();
        batch.arrays[i].release = NULL;
        refused_at(names[i]);
        batch.schemas[i].release = NULL;
        refused();
        batch.arrays[i].dictionary = &batch.arrays[0];
        refused_at(names[i]);
        batch.schemas[i].dictionary = &batch.schemas[0];
        refused_at(names[i]);
        batch.arrays[i].buffers = NULL;
        refused_at(names[i]);
        batch.buffers[i][1] = NULL;
        refused_at(names[i]);
        batch.buffers[i][0] = NULL; /* and yet one cell is missing */
        batch.arrays[i].null_count = 1;
        refused_at(names[i]);
    }
}

static void missing_and_double_columns_are_refused(void **state)
{
    (void)state;
    static const int needed[] = {APPLIED, RELEASED, CHAMBER};
    for (int i = 0; i < 3; i++) {
        batch.schemas[needed[i]].name = "house";
        refused_at(names[needed[i]]);
        batch.schemas[needed[i]].name = "Released"; /* names are to the letter */
        refused_at(names[needed[i]]);
        batch.schemas[needed[i]].name = "house";
        batch.array.length = 1;
        refused_at(names[needed[i]]);
    }
    batch.schemas[PRESSURE].name = "released";
    refused_at("released");
    batch.schemas[APPLIED].name = "released";
    refused_at("released");
    batch.schemas[DAY] = batch.schemas[CHAMBER];
    batch.arrays[DAY] = batch.arrays[CHAMBER];
    refused_at("chamber");
    batch.schemas[RELEASED] = batch.schemas[APPLIED];
    batch.arrays[RELEASED] = batch.arrays[APPLIED];
    refused_at("applied");
}

/* Sums of lengths and offsets that would run over are refused, not worked out. */
static void wrong_figures_are_refused(void **state)
{
    (void)state;
    static const int64_t wrong[] = {-1, INT64_MIN, INT64_MIN + 1, INT64_MAX, INT64_MAX - OFFSET, INT64_MAX / 2};
    for (size_t k = 0; k < sizeof wrong / sizeof wrong[0]; k++) {
        batch.array.offset = wrong[k];
        refused();
        batch.array.length = wrong[k];
        refused();
        batch.array.n_children = wrong[k];
        refused();
        batch.array.n_buffers = wrong[k];
        refused();
        for (int i = 0; i < CHILDREN; i++) {
            batch.arrays[i].offset = wrong[k];
            refused_at(names[i]);
            batch.arrays[i].length = wrong[k];
            refused_at(names[i]);
            batch.arrays[i].n_buffers = wrong[k];
            refused_at(names[i]);
            batch.array.n_children = batch.schema.n_children = wrong[k] < 0 ? wrong[k] : 0;
            refused();
        }
    }
    for (int i = 0; i < CHILDREN; i++) {
        batch.arrays[i].length = ROWS + BATCH_OFFSET - 1;
        refused_at(names[i]);
        batch.arrays[i].n_buffers = 1;
        refused_at(names[i]);
        batch.arrays[i].n_buffers = 3;
        refused_at(names[i]);
        batch.arrays[i].null_count = -2;
        refused_at(names[i]);
    }
    batch.array.n_buffers = 2;
    refused();
    batch.array.null_count = INT64_MIN;
    refused();
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup(a_batch_is_judged_alike, make_anew),
        cmocka_unit_test_setup(nothing_is_copied_and_both_offsets_count, make_anew),
        cmocka_unit_test_setup(readings_are_of_either_width, make_anew),
        cmocka_unit_test_setup(no_more_cells_and_columns_are_needed, make_anew),
        cmocka_unit_test_setup(bitmaps_may_be_absent, make_anew),
        cmocka_unit_test_setup(other_children_may_be_of_any_kind, make_anew),
        cmocka_unit_test_setup(an_empty_batch_needs_no_cells, make_anew),
        cmocka_unit_test_setup(wrong_formats_are_refused, make_anew),
        cmocka_unit_test_setup(a_wrong_batch_is_refused, make_anew),
        cmocka_unit_test_setup(wrong_children_are_refused, make_anew),
        cmocka_unit_test_setup(missing_and_double_columns_are_refused, make_anew),
        cmocka_unit_test_setup(wrong_figures_are_refused, make_anew),
    };
    return cmocka_run_group_tests(tests, make_all, free_plan);
}
