/* SPDX-License-Identifier: Apache-2.0 */
/* Columns beside a plain copy of as many bytes, read and written, in the same run: medians of repeats as a table. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include <rodtravel/rodtravel.h>

#define REPEATS 21
#define SCALAR_ROWS 200000
#define MARKS 8

static rodt_column_plan *plan;
static rodt_reading readings[MARKS]; /* by code - 2 */

static struct {
    int32_t *released, *applied, *pressure, *day, *stroke;
    int64_t *released64, *applied64;
    uint64_t *reasons;
    uint8_t *chamber, *verdict, *valid;
    char *from, *to;
} data;

static double seconds(void)
{
    struct timespec now;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return (double)now.tv_sec + (double)now.tv_nsec * 1e-9;
}

static int compare(const void *a, const void *b)
{
    double first = *(const double *)a;
    double second = *(const double *)b;
    return (first > second) - (first < second);
}

static double median(double *times)
{
    qsort(times, REPEATS, sizeof *times, compare);
    return times[REPEATS / 2];
}

static void *room(size_t size)
{
    void *bytes = malloc(size);
    if (bytes == NULL)
        exit(2);
    memset(bytes, 1, size);
    return bytes;
}

static void fill(size_t rows)
{
    uint32_t seed = 1;
    for (size_t i = 0; i < rows; i++) {
        seed = seed * 1664525u + 1013904223u;
        data.released[i] = (int32_t)(96 + seed % 64) * RODT_COLUMN_PER_64TH;
        data.applied[i] = data.released[i] + (int32_t)(64 + seed / 64 % 128) * RODT_COLUMN_PER_64TH;
        data.chamber[i] = (uint8_t)(2 + (seed >> 16) % MARKS);
        data.pressure[i] = (int32_t)(85 + (seed >> 24) % 20) * RODT_COLUMN_PER_PSI;
        data.day[i] = (int32_t)(15000 + (seed >> 12) % 5000);
        data.released64[i] = data.released[i];
        data.applied64[i] = data.applied[i];
        data.valid[i / 8] = 0xFE;
    }
}

static void make(size_t rows)
{
    data.released = room(rows * 4);
    data.applied = room(rows * 4);
    data.pressure = room(rows * 4);
    data.day = room(rows * 4);
    data.stroke = room(rows * 4);
    data.released64 = room(rows * 8);
    data.applied64 = room(rows * 8);
    data.reasons = room(rows * 8);
    data.chamber = room(rows);
    data.verdict = room(rows);
    data.valid = room(rows / 8 + 1);
    data.from = room(rows * 13);
    data.to = room(rows * 13);
    fill(rows);
}

static bool start(bool marked)
{
    static const char *const marks[MARKS] = {"30 standard", "30 long", "24 standard", "24 long",
                                             "20 standard", "16 long", "36 standard", "bolt C"};
    rodt_reading common = {0};
    uint32_t code;
    rodt_column_plan_free(plan);
    if (rodt_pressure_from_psi(95, 1, &common.pressure) != RODT_OK ||
        rodt_column_plan_new(rodt_rules_find(RODT_DEFAULT_RULES), &common, &plan, NULL) != RODT_OK)
        return false;
    for (size_t i = 0; i < MARKS; i++) {
        rodt_reading reading = common;
        if (rodt_chamber_parse(marks[i], &reading.chamber, NULL) != RODT_OK ||
            (marked && rodt_length_from_inches(7, 2, &reading.chamber.rated_stroke) != RODT_OK) ||
            rodt_column_plan_add(plan, &reading.chamber, &code, NULL) != RODT_OK)
            return false;
        readings[i] = reading;
    }
    return true;
}

/* Half of the bytes are read and half are written, as by the kernel. */
static void run(const char *name, const rodt_column_in *in, size_t rows, double bytes)
{
    const rodt_column_out out = {.stroke = data.stroke, .verdict = data.verdict, .reasons = data.reasons};
    double judged[REPEATS];
    double copied[REPEATS];
    for (int i = 0; i < REPEATS; i++) {
        double begin = seconds();
        if (rodt_column_plan_judge(plan, in, rows, &out, NULL) != RODT_OK)
            exit(2);
        double middle = seconds();
        memcpy(data.to, data.from, (size_t)(bytes / 2 * (double)rows));
        __asm__ volatile("" : : "r"(data.to) : "memory");
        double end = seconds();
        judged[i] = middle - begin;
        copied[i] = end - middle;
    }
    double judge = median(judged);
    double copy = median(copied);
    printf("%-34s %9zu %8.0f %8.1f %8.1f %7.2f\n", name, rows, (double)rows / judge * 1e-6,
           bytes * (double)rows / judge * 1e-9, bytes * (double)rows / copy * 1e-9, copy / judge);
}

static void run_scalar(size_t rows)
{
    const rodt_rules *rules = rodt_rules_find(RODT_DEFAULT_RULES);
    unsigned sum = 0;
    double times[REPEATS];
    for (int k = 0; k < REPEATS; k++) {
        double begin = seconds();
        for (size_t i = 0; i < rows; i++) {
            rodt_finding finding;
            rodt_reading *reading = &readings[data.chamber[i] - 2];
            if (rodt_length_from_inches(data.released[i], RODT_COLUMN_PER_INCH, &reading->released) == RODT_OK &&
                rodt_length_from_inches(data.applied[i], RODT_COLUMN_PER_INCH, &reading->applied) == RODT_OK &&
                rodt_reading_judge(reading, rules, &finding, NULL) == RODT_OK)
                sum += (unsigned)finding.verdict;
        }
        times[k] = seconds() - begin;
    }
    double time = median(times);
    printf("%-34s %9zu %8.1f   (%.0f ns a row, sum %u)\n", "rodt_reading_judge row by row", rows, (double)rows / time * 1e-6,
           time / (double)rows * 1e9, sum);
}

static void run_all(size_t rows)
{
    rodt_column_in in = {.released = data.released, .applied = data.applied, .chamber = data.chamber};
    start(false);
    run("readings and chamber", &in, rows, 22);
    start(true);
    run("with marked rated strokes", &in, rows, 22);
    start(false);
    in.psi = data.pressure;
    in.date = data.day;
    run("with pressure and day", &in, rows, 30);
    in.released_valid = in.applied_valid = (rodt_column_bits){data.valid, 0};
    run("with pressure, day, missing cells", &in, rows, 30);
    in = (rodt_column_in){.released64 = data.released64, .applied64 = data.applied64, .chamber = data.chamber};
    run("64-bit readings and chamber", &in, rows, 30);
}

int main(int count, char **words)
{
    size_t rows = count > 1 ? strtoul(words[1], NULL, 10) : 4000000;
    if (rows < SCALAR_ROWS || !start(false))
        return 2;
    make(rows);
    printf("%-34s %9s %8s %8s %8s %7s\n", "columns", "rows", "Mrows/s", "GB/s", "memcpy", "ratio");
    run_all(rows);
    run_all(10000);
    run_scalar(SCALAR_ROWS);
    rodt_column_plan_free(plan);
    return 0;
}
