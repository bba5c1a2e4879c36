/* SPDX-License-Identifier: Apache-2.0 */
/* One wheel end from text to finding, beside a plain copy of the same bytes in the same run, in processor time. */
#include <stdio.h>
#include <string.h>
#include <time.h>

#include <rodtravel/rodtravel.h>

#define ROUNDS 20000
#define REPEATS 21

static const rodt_form texts[] = {
    {.chamber = "30", .stroke_class = "standard", .released = "2 1/8", .applied = "4 1/4", .psi = "95"},
    {.chamber = "24/30 LS", .released = "2-1/16 in", .applied = "4 3/8 in", .psi = "95 psi"},
    {.chamber = "roto 30", .released = "50.8 mm", .applied = "101.6 mm", .division = "1 mm"},
    {.chamber = "bolt C", .released = "1½", .applied = "3.125", .date = "2019-06-05"},
};
#define TEXTS (sizeof texts / sizeof texts[0])

static double seconds(void)
{
    struct timespec now;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return (double)now.tv_sec + (double)now.tv_nsec * 1e-9;
}

static double judge_all(const rodt_rules *rules, unsigned *sum)
{
    double start = seconds();
    for (size_t i = 0; i < ROUNDS; i++) {
        rodt_finding finding;
        if (rodt_form_judge(&texts[i % TEXTS], rules, &finding, NULL) == RODT_OK)
            *sum += (unsigned)finding.verdict;
    }
    return (seconds() - start) / ROUNDS;
}

static double copy_all(unsigned *sum)
{
    double start = seconds();
    for (size_t i = 0; i < ROUNDS; i++) {
        char row[128];
        const rodt_form *text = &texts[i % TEXTS];
        size_t used = strlen(text->chamber) + 1;
        memcpy(row, text->chamber, used);
        memcpy(row + used, text->released, strlen(text->released) + 1);
        used += strlen(text->released) + 1;
        memcpy(row + used, text->applied, strlen(text->applied) + 1);
        __asm__ volatile("" : : "r"(row) : "memory");
        *sum += (unsigned)row[0];
    }
    return (seconds() - start) / ROUNDS;
}

/* The best of several runs: what disturbs a run only ever makes it slower. */
int main(void)
{
    const rodt_rules *rules = rodt_rules_find(RODT_DEFAULT_RULES);
    double judged = 1;
    double copied = 1;
    unsigned sum = 0;
    for (int i = 0; rules != NULL && i < REPEATS; i++) {
        double one = judge_all(rules, &sum);
        double other = copy_all(&sum);
        judged = one < judged ? one : judged;
        copied = other < copied ? other : copied;
    }
    printf("text to finding %.0f ns, copy of the texts %.0f ns, ratio %.1f (sum %u)\n", judged * 1e9, copied * 1e9,
           judged / copied, sum);
    return rules == NULL;
}
