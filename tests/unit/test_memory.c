/* SPDX-License-Identifier: Apache-2.0 */
/* Each allocation of the library fails once: a status, nothing left behind, results untouched; and a cache that cannot
 * grow changes no answer. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "column/cache.h"
#include "rodtravel/rodtravel.h"

/* --- The allocator ----------------------------------------------------------------------------------- */

static size_t succeed = SIZE_MAX; /* allocations before one fails */
static bool once;                 /* only that one */
static size_t alive;
static size_t asked_lines, asked_zeros; /* bytes that were asked for last */
#define GUARD 64

/* The linker gives these names to the functions of the C library, and theirs to these. */
/* NOLINTBEGIN(bugprone-reserved-identifier,cert-dcl37-c,cert-dcl51-cpp,readability-identifier-naming) */
void *__real_malloc(size_t size);
void *__real_calloc(size_t count, size_t size);
void *__real_realloc(void *memory, size_t size);
void *__real_aligned_alloc(size_t line, size_t size);
void __real_free(void *memory);
void *__wrap_malloc(size_t size);
void *__wrap_calloc(size_t count, size_t size);
void *__wrap_realloc(void *memory, size_t size);
void *__wrap_aligned_alloc(size_t line, size_t size);
void __wrap_free(void *memory);

static bool may_allocate(void)
{
    if (succeed == 0) {
        succeed = once ? SIZE_MAX : 0;
        return false;
    }
    succeed--;
    return true;
}

static struct {
    void *memory;
    size_t size;
} blocks[256];

/* After each block are bytes that are nobody's: they mean something to whoever reads them, and stay as they are. */
static void *guarded(void *memory, size_t size)
{
    size_t i = 0;
    assert_non_null(memory);
    while (blocks[i].memory != NULL)
        i++;
    blocks[i].memory = memory;
    blocks[i].size = size;
    alive++;
    memset((char *)memory + size, 0x11, GUARD);
    return memory;
}

static void let_go(const void *memory)
{
    size_t i = 0;
    while (blocks[i].memory != memory)
        i++;
    for (size_t k = 0; k < GUARD; k++)
        assert_int_equal(((const unsigned char *)memory)[blocks[i].size + k], 0x11);
    blocks[i].memory = NULL;
    alive--;
}

void *__wrap_malloc(size_t size) { return may_allocate() ? guarded(__real_malloc(size + GUARD), size) : NULL; }

void *__wrap_calloc(size_t count, size_t size)
{
    asked_zeros = count * size;
    return may_allocate() ? guarded(__real_calloc(1, asked_zeros + GUARD), asked_zeros) : NULL;
}

void *__wrap_aligned_alloc(size_t line, size_t size)
{
    asked_lines = size;
    return may_allocate() ? guarded(__real_aligned_alloc(line, size + GUARD), size) : NULL;
}

void *__wrap_realloc(void *memory, size_t size)
{
    if (!may_allocate())
        return NULL;
    if (memory != NULL)
        let_go(memory);
    return guarded(__real_realloc(memory, size + GUARD), size);
}

void __wrap_free(void *memory)
{
    if (memory != NULL)
        let_go(memory);
    __real_free(memory);
}
/* NOLINTEND(bugprone-reserved-identifier,cert-dcl37-c,cert-dcl51-cpp,readability-identifier-naming) */

/* --- Making something -------------------------------------------------------------------------------- */

static const rodt_rules *us(void) { return rodt_rules_find("us-fmcsr"); }
static const char table[] = "family,size,class,limit\nclamp,30,standard,1 3/4\nclamp,24,long,1 7/8\n";
static size_t no_columns[RODT_FIELD_ROOM];
static rodt_column_plan *plan;

static rodt_status make_rules(void **made, rodt_error *error)
{
    return rodt_rules_load(us(), "yard", table, sizeof table - 1, (rodt_rules **)made, error);
}

static rodt_status make_plan(void **made, rodt_error *error)
{
    return rodt_column_plan_new(us(), NULL, (rodt_column_plan **)made, error);
}

static rodt_status copy_plan(void **made, rodt_error *error)
{
    rodt_status status = rodt_column_plan_copy(plan, (rodt_column_plan **)made);
    if (status != RODT_OK)
        error->status = status; /* a copy has no sentence */
    return status;
}

static rodt_status make_text_plan(void **made, rodt_error *error)
{
    return rodt_text_plan_new(us(), NULL, (rodt_text_plan **)made, error);
}

static rodt_status make_reader(void **made, rodt_error *error)
{
    error->status = rodt_chamber_reader_new(plan, (rodt_chamber_reader **)made);
    return error->status;
}

static rodt_status make_row_cache(void **made, rodt_error *error)
{
    error->status = rodt_row_cache_new(us(), &(rodt_form){.chamber = NULL}, no_columns, 8, 64, (rodt_row_cache **)made);
    return error->status;
}

static rodt_status make_map(void **made, rodt_error *error)
{
    void *map = rodt_text_map_new(100);
    error->status = map != NULL ? RODT_OK : RODT_E_MEMORY;
    if (map != NULL)
        *made = map;
    return error->status;
}

static void free_rules(void *made) { rodt_rules_unref(made); }
static void free_plan(void *made) { rodt_column_plan_free(made); }
static void free_text_plan(void *made) { rodt_text_plan_free(made); }
static void free_reader(void *made) { rodt_chamber_reader_free(made); }
static void free_row_cache(void *made) { rodt_row_cache_free(made); }
static void free_map(void *made) { rodt_text_map_free(made); }

static void add_chambers(unsigned first, unsigned last)
{
    for (unsigned i = first; i < last; i++) {
        char mark[32];
        rodt_chamber chamber;
        uint32_t code;
        snprintf(mark, sizeof mark, "clamp %u", 1 + i);
        assert_int_equal(rodt_chamber_parse(mark, &chamber, NULL), RODT_OK);
        assert_int_equal(rodt_column_plan_add(plan, &chamber, &code, NULL), RODT_OK);
        assert_int_equal(code, RODT_COLUMN_CHAMBER_UNREADABLE + 1 + i);
    }
}

static int start(void **state)
{
    (void)state;
    memset(no_columns, 0xFF, sizeof no_columns); /* RODT_NO_COLUMN */
    assert_int_equal(rodt_column_plan_new(us(), NULL, &plan, NULL), RODT_OK);
    add_chambers(0, 30);
    return 0;
}

static int stop(void **state)
{
    (void)state;
    rodt_column_plan_free(plan);
    assert_int_equal(alive, 0);
    return 0;
}

static void each_allocation_fails(void **state)
{
    (void)state;
    static const struct {
        rodt_status (*make)(void **made, rodt_error *error);
        void (*free)(void *made);
        size_t allocations; /* at least */
    } cases[] = {{make_rules, free_rules, 1},         {make_plan, free_plan, 5},
                 {copy_plan, free_plan, 9},           {make_text_plan, free_text_plan, 17},
                 {make_reader, free_reader, 2},       {make_row_cache, free_row_cache, 21},
                 {make_map, free_map, 2}};
    for (size_t i = 0; i < 2 * (sizeof cases / sizeof *cases); i++) {
        static char untouched;
        const size_t before = alive;
        void *made = &untouched;
        rodt_status status = RODT_E_MEMORY;
        size_t n = 0;
        for (; status == RODT_E_MEMORY; n++) {
            rodt_error error = {.status = RODT_OK};
            assert_ptr_equal(made, &untouched);
            succeed = n;
            once = i % 2 == 0;
            status = cases[i / 2].make(&made, &error);
            once = false;
            succeed = SIZE_MAX;
            assert_int_equal(error.status, status);
            if (status == RODT_E_MEMORY)
                assert_int_equal(alive, before);
        }
        assert_int_equal(status, RODT_OK);
        assert_true(n > cases[i / 2].allocations);
        cases[i / 2].free(made);
        assert_int_equal(alive, before);
    }
}

/* --- Growing ----------------------------------------------------------------------------------------- */

/* A plan that could not grow has the chambers that it had, and takes the next one when there is memory. */
/* The block is there when its second row is found to be laxer than the law. */
static void a_refused_table_leaves_nothing(void **state)
{
    (void)state;
    static const char laxer[] = "family,size,class,limit\nclamp,30,standard,1 3/4\nclamp,30,long,3\n";
    const size_t before = alive;
    rodt_rules *rules = NULL;
    assert_int_equal(rodt_rules_load(us(), "yard", laxer, sizeof laxer - 1, &rules, NULL), RODT_E_LAXER);
    assert_int_equal(alive, before);
}

static void the_last_user_frees_a_table(void **state)
{
    (void)state;
    const size_t before = alive;
    rodt_rules *rules = NULL;
    assert_int_equal(rodt_rules_load(us(), "yard", table, sizeof table - 1, &rules, NULL), RODT_OK);
    assert_ptr_equal(rodt_rules_ref(rules), rules);
    rodt_rules_unref(rules);
    assert_int_equal(alive, before + 1);
    rodt_rules_unref(rules);
    assert_int_equal(alive, before);
    rodt_text_plan *texts = NULL;
    assert_int_equal(rodt_rules_load(us(), "yard", table, sizeof table - 1, &rules, NULL), RODT_OK);
    assert_int_equal(rodt_text_plan_new(rules, NULL, &texts, NULL), RODT_OK);
    rodt_rules_unref(rules);
    rodt_text_plan_free(texts);
    assert_int_equal(alive, before);
}

static void a_plan_that_cannot_grow_stays(void **state)
{
    (void)state;
    rodt_chamber chamber;
    rodt_error error;
    uint32_t code = 77;
    assert_int_equal(rodt_chamber_parse("roto 30", &chamber, NULL), RODT_OK);
    for (size_t n = 0; n < 4; n++) {
        succeed = n;
        assert_int_equal(rodt_column_plan_add(plan, &chamber, &code, &error), RODT_E_MEMORY);
        succeed = SIZE_MAX;
        assert_int_equal(error.status, RODT_E_MEMORY);
        assert_int_equal(code, 77);
    }
    add_chambers(30, 33);
}

/* A table has its slots and those of the last probes, in whole lines of the processor's cache: no less, and no more. */
static void tables_have_room_for_their_slots(void **state)
{
    static const size_t lines[] = {320, 320, 384, 512, 768, 1280, 2304, 4352, 8448, 8448};
    (void)state;
    for (unsigned bits = 0; bits < sizeof lines / sizeof *lines; bits++) {
        cell_cache cells;
        assert_true(rodti_cell_cache_open(&cells, bits));
        assert_int_equal(asked_lines, lines[bits]);
        rodti_cell_cache_keep(&cells, "inspection of the day", 21, 0, (cell_meaning){.value = 1});
        assert_int_equal(asked_lines, lines[bits]);
        assert_int_equal(asked_zeros, (((size_t)1 << cells.bits) + CACHE_PROBES) * sizeof *cells.rest);
        rodti_cell_cache_close(&cells);
    }
    for (uint32_t most = 1, bits = 6; most < 32; most++) { /* an eighth of the slots is enough */
        rodt_text_map *map = rodt_text_map_new(most);
        bits += most == 8 || most == 16;
        assert_int_equal(asked_lines, lines[bits]);
        rodt_text_map_free(map);
    }
    result_cache results;
    assert_true(rodti_result_cache_open(&results, 100, 1024));
    assert_int_equal(asked_lines, (16 + 1) * 192); /* the first has no key */
    assert_int_equal(asked_zeros, (256 + CACHE_PROBES) * sizeof *results.slots);
    rodti_result_cache_close(&results);
}

/* Every row begins and ends on days of its own: there is room for each of them, beside a law of many rows and of none. */
static void a_plan_of_many_days_has_room(void **state)
{
    static const char *const laws[] = {"us-fmcsr", "rated-80"};
    static char text[4096] = "family,size,class,limit,from,until\n";
    (void)state;
    for (int year = 1990; year < 2050; year++) {
        const size_t used = strlen(text);
        snprintf(text + used, sizeof text - used, "clamp,30,standard,1 3/4,%d-02-01,%d-06-30\n", year, year);
        for (size_t i = 0; i < 2; i++) {
            rodt_rules *own;
            rodt_column_plan *made;
            assert_int_equal(rodt_rules_load(rodt_rules_find(laws[i]), "own", text, strlen(text), &own, NULL), RODT_OK);
            assert_int_equal(rodt_column_plan_new(own, NULL, &made, NULL), RODT_OK);
            rodt_column_plan_free(made);
            rodt_rules_unref(own);
        }
    }
}

/* What is after a table is neither read as an entry, nor written. */
static void tables_end_where_they_end(void **state)
{
    cell_cache cells;
    result_cache results;
    (void)state;
    assert_true(rodti_cell_cache_open(&cells, 9));
    assert_true(rodti_result_cache_open(&results, 100, 1024));
    for (uint32_t i = 0; i < 60; i++) {
        char text[16];
        size_t size = (size_t)snprintf(text, sizeof text, "%u", i);
        rodti_cell_cache_keep(&cells, text, size, 0, (cell_meaning){.value = i});
        assert_int_equal(cells.used, i + 1);
        assert_non_null(rodti_result_cache_keep(&results, (row_key){i, i}));
        assert_int_equal(results.used, i + 1);
    }
    assert_int_equal(cells.bits, 9);
    assert_int_equal(results.bits, 10);
    rodti_cell_cache_close(&cells);
    rodti_result_cache_close(&results);
}

#define ROWS 3000

static const char *const fields[] = {"chamber", "released", "applied"};
static char cells[3][ROWS][40];
static rodt_text_span spans[3][ROWS];

/* Short cells and long ones, most of them new. */
static rodt_text_columns rows(void)
{
    rodt_text_columns in = {.field = {{.layout = RODT_TEXT_LAYOUT_ABSENT}}};
    for (size_t i = 0; i < ROWS; i++) {
        snprintf(cells[0][i], sizeof cells[0][i], i % 3 == 0 ? "clamp %zu long stroke" : "%zu", 6 + i % 31);
        snprintf(cells[1][i], sizeof cells[1][i], i % 5 == 0 ? "1.%04zu inches measured" : "1.%04zu", i % 1500);
        snprintf(cells[2][i], sizeof cells[2][i], "3.%04zu", i % 100);
        for (size_t k = 0; k < 3; k++)
            spans[k][i] = (rodt_text_span){cells[k][i], strlen(cells[k][i])};
    }
    for (size_t k = 0; k < 3; k++)
        in.field[k] = (rodt_text_cells){.layout = RODT_TEXT_LAYOUT_SPANS, .cells = spans[k], .count = ROWS};
    assert_string_equal(rodt_field_name((rodt_field)2), fields[2]);
    return in;
}

typedef struct answers {
    int32_t stroke[ROWS];
    uint8_t verdict[ROWS];
    uint64_t reasons[ROWS];
} answers;

static void judge(rodt_text_plan *texts, answers *out)
{
    const rodt_text_columns in = rows();
    const rodt_column_out columns = {.stroke = out->stroke, .verdict = out->verdict, .reasons = out->reasons};
    memset(out, 0, sizeof *out);
    for (int call = 0; call < 2; call++) /* cells are cached by the first, rows by the second */
        assert_int_equal(rodt_text_plan_judge(texts, &in, ROWS, &columns, NULL), RODT_OK);
}

static void a_plan_of_texts_without_memory_judges_alike(void **state)
{
    (void)state;
    static answers with, without;
    rodt_text_plan *texts;
    for (size_t n = 0; n < 8; n++) {
        assert_int_equal(rodt_text_plan_new(us(), NULL, &texts, NULL), RODT_OK);
        judge(texts, &with);
        rodt_text_plan_free(texts);
        assert_int_equal(rodt_text_plan_new(us(), NULL, &texts, NULL), RODT_OK);
        succeed = n;
        judge(texts, &without);
        succeed = SIZE_MAX;
        rodt_text_plan_free(texts);
        assert_memory_equal(&with, &without, sizeof with);
    }
}

/* What is cached in a cache that cannot grow is found, or it is not there. */
static void a_cache_of_rows_without_memory_is_right(void **state)
{
    (void)state;
    size_t column[RODT_FIELD_ROOM];
    rodt_row_cache *cache;
    unsigned found = 0;
    memcpy(column, no_columns, sizeof column);
    for (size_t i = 0; i < 3; i++)
        column[i] = i;
    assert_int_equal(rodt_row_cache_new(us(), &(rodt_form){.chamber = NULL}, column, sizeof(uint32_t), 4096, &cache),
                     RODT_OK);
    (void)rows();
    succeed = 0;
    for (uint32_t pass = 0; pass < 2; pass++)
        for (uint32_t i = 0; i < ROWS; i++) {
            const rodt_form text = {.chamber = cells[0][i], .released = cells[1][i], .applied = cells[2][i]};
            const rodt_text_span row[RODT_FIELD_ROOM] = {spans[0][i], spans[1][i], spans[2][i]};
            uint32_t *result = rodt_row_cache_read(cache, row, &text);
            if (result != NULL) {
                rodt_finding finding, other;
                const rodt_form same = {.chamber = cells[0][*result], .released = cells[1][*result],
                                        .applied = cells[2][*result]};
                assert_int_equal(rodt_form_judge_row(&text, us(), &finding, NULL), RODT_OK);
                assert_int_equal(rodt_form_judge_row(&same, us(), &other, NULL), RODT_OK);
                assert_int_equal(finding.verdict, other.verdict);
                assert_true(finding.reasons == other.reasons);
                found++;
            } else if ((result = rodt_row_cache_keep(cache)) != NULL) {
                *result = i;
            }
        }
    succeed = SIZE_MAX;
    assert_true(found > 0);
    rodt_row_cache_free(cache);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(each_allocation_fails),
                                       cmocka_unit_test(a_refused_table_leaves_nothing),
                                       cmocka_unit_test(the_last_user_frees_a_table),
                                       cmocka_unit_test(a_plan_that_cannot_grow_stays),
                                       cmocka_unit_test(tables_have_room_for_their_slots),
                                       cmocka_unit_test(tables_end_where_they_end),
                                       cmocka_unit_test(a_plan_of_many_days_has_room),
                                       cmocka_unit_test(a_plan_of_texts_without_memory_judges_alike),
                                       cmocka_unit_test(a_cache_of_rows_without_memory_is_right)};
    return cmocka_run_group_tests_name("memory", tests, start, stop);
}
