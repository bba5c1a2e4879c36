/* SPDX-License-Identifier: Apache-2.0 */
/* Two threads at once: one plan is read by both, and texts are judged beside it. Built with a checker of threads (task
 * tsan of run.sh) it also proves that nothing is shared that one of them writes. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <pthread.h>
#include <stdbool.h>
#include <string.h>

#include "rodtravel/rodtravel.h"

#define ROWS 5000
#define THREADS 2

static rodt_column_plan *plan;
static int32_t released[ROWS], applied[ROWS], pressure[ROWS], day[ROWS];
static uint8_t chamber[ROWS], valid[ROWS / 8 + 1];

/* Columns of answers. */
typedef struct answers {
    int32_t stroke[ROWS];
    uint64_t reasons[ROWS];
    uint8_t verdict[ROWS], flags[ROWS];
} answers;

typedef struct work {
    pthread_t thread;
    answers plain;
    answers with_others; /* pressure, day and missing cells */
    const rodt_rules *rules; /* loaded; each thread lets go of it */
    rodt_status status;
    rodt_finding finding;
    char sentence[400];
} work;

static work works[THREADS + 1]; /* the last is no thread: what one alone answers */

static void judge_columns(work *own, bool with_others)
{
    answers *to = with_others ? &own->with_others : &own->plain;
    rodt_column_in in = {.released = released, .applied = applied, .chamber = chamber};
    const rodt_column_out out = {.stroke = to->stroke, .verdict = to->verdict, .reasons = to->reasons, .flags = to->flags};
    if (with_others) {
        in.psi = pressure;
        in.date = day;
        in.applied_valid = (rodt_column_bits){valid, 3};
    }
    rodt_status status = rodt_column_plan_judge(plan, &in, ROWS, &out, NULL);
    if (own->status == RODT_OK)
        own->status = status;
}

static void judge_text(work *own)
{
    const rodt_form text = {
        .chamber = "30L", .released = "2 3/4", .applied = "5 5/16", .psi = "95", .division = "1/16"};
    rodt_error error;
    rodt_status status = rodt_form_judge(&text, rodt_rules_ref(own->rules), &own->finding, &error);
    rodt_rules_unref(own->finding.rules);
    if (own->status == RODT_OK)
        own->status = status;
    rodt_finding_format(&own->finding, own->sentence, sizeof own->sentence, NULL);
}

static void *run(void *given)
{
    work *own = given;
    for (int round = 0; round < 20; round++) {
        judge_columns(own, false);
        judge_columns(own, true);
        judge_text(own);
    }
    rodt_rules_unref(own->rules);
    return NULL;
}

static void start(void)
{
    rodt_chamber made;
    uint32_t code;
    assert_int_equal(rodt_column_plan_new(rodt_rules_find("us-fmcsr"), NULL, &plan, NULL), RODT_OK);
    assert_int_equal(rodt_chamber_parse("clamp 36", &made, NULL), RODT_OK);
    assert_int_equal(rodt_column_plan_add(plan, &made, &code, NULL), RODT_OK);
    memset(valid, 0xE7, sizeof valid);
    for (int i = 0; i < ROWS; i++) {
        released[i] = RODT_COLUMN_PER_INCH;
        applied[i] = RODT_COLUMN_PER_INCH + i % 300 * RODT_COLUMN_PER_64TH;
        chamber[i] = (uint8_t)(i % 3 == 0 ? 0 : code);
        pressure[i] = 80000 + i % 30 * 1000;
        day[i] = 15000 + i;
    }
}

static void expect_same(const answers *found, const answers *alone)
{
    assert_memory_equal(found->stroke, alone->stroke, sizeof alone->stroke);
    assert_memory_equal(found->reasons, alone->reasons, sizeof alone->reasons);
    assert_memory_equal(found->verdict, alone->verdict, sizeof alone->verdict);
    assert_memory_equal(found->flags, alone->flags, sizeof alone->flags);
}

static void two_threads_answer_as_one(void **state)
{
    (void)state;
    static const char table[] = "family,size,class,limit\nclamp,24,long,2\n";
    work *alone = &works[THREADS];
    rodt_rules *loaded;
    start();
    assert_int_equal(rodt_rules_load(rodt_rules_find("us-fmcsr"), "own", table, strlen(table), &loaded, NULL),
                     RODT_OK);
    for (int i = 0; i <= THREADS; i++)
        works[i].rules = rodt_rules_ref(loaded);
    rodt_rules_unref(loaded); /* the last thread frees it */
    for (int i = 0; i < THREADS; i++)
        assert_int_equal(pthread_create(&works[i].thread, NULL, run, &works[i]), 0);
    for (int i = 0; i < THREADS; i++)
        assert_int_equal(pthread_join(works[i].thread, NULL), 0);
    run(alone);
    assert_int_equal(alone->status, RODT_OK);
    for (int i = 0; i < THREADS; i++) {
        assert_int_equal(works[i].status, RODT_OK);
        expect_same(&works[i].plain, &alone->plain);
        expect_same(&works[i].with_others, &alone->with_others);
        assert_int_equal(works[i].finding.verdict, RODT_VERDICT_OUT_OF_ADJUSTMENT);
        assert_string_equal(works[i].sentence, alone->sentence);
    }
    rodt_column_plan_free(plan);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(two_threads_answer_as_one)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
