/* SPDX-License-Identifier: Apache-2.0 */
/* Columns of texts, and the same rows as a stream through the cache of rows: CPU time of one thread, medians. The
 * difference between the last two lines and `rodtravel batch --jobs 1` on the same rows is reading, splitting, copying
 * and writing. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include <rodtravel/rodtravel.h>

#define REPEATS 11
#define FIELDS 6
#define CELL_SIZE 24

/* The columns of a plain file, in the order of its cells. */
static const rodt_field fields[FIELDS] = {RODT_FIELD_CHAMBER, RODT_FIELD_RELEASED, RODT_FIELD_APPLIED,
                                          RODT_FIELD_STROKE_CLASS, RODT_FIELD_PSI, RODT_FIELD_DATE};

typedef enum kind { TAPE_VALUES, TWENTY_YEARS, TENTHS_OF_MM, THOUSANDTHS, FOUR_DECIMALS, SIX_DECIMALS, KINDS } kind;

static const char *const kind_names[KINDS] = {"tape values", "tape values, days of 20 years", "0.1 mm, unit in each cell",
                                              "0.001 in", "4 decimals of an inch", "6 decimals of an inch"};

static struct {
    size_t rows;
    char (*cells[FIELDS])[CELL_SIZE];
    int32_t *offsets[FIELDS];
    char *bytes[FIELDS];
    rodt_text_span *spans[FIELDS];
    char *lines;           /* the cells of a row, each with a separator after it */
    uint32_t (*ends)[FIELDS + 1];
    size_t *starts;        /* of the lines */
    int32_t *stroke;
    uint64_t *reasons;
    uint8_t *verdict;
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

static void *room(size_t count, size_t size)
{
    void *bytes = calloc(count, size);
    if (bytes == NULL)
        exit(2);
    return bytes;
}

static uint32_t draw(uint32_t count)
{
    static uint64_t state = UINT64_C(88172645463325252);
    state ^= state << 13;
    state ^= state >> 7;
    state ^= state << 17;
    return (uint32_t)((state >> 11) % count);
}

static void write_reading(char *cell, kind of, uint32_t sixteenths)
{
    rodt_length length;
    if (of == TENTHS_OF_MM)
        snprintf(cell, CELL_SIZE, "%u.%u mm", sixteenths * 254 / 160, draw(10));
    else if (of >= THOUSANDTHS)
        snprintf(cell, CELL_SIZE, "%u.%0*u", sixteenths / 16, of == SIX_DECIMALS ? 6 : of == FOUR_DECIMALS ? 4 : 3,
                 draw(of == SIX_DECIMALS ? 1000000 : of == FOUR_DECIMALS ? 10000 : 1000));
    else if (rodt_length_from_inches(sixteenths, 16, &length) != RODT_OK ||
             rodt_length_format(length, cell, CELL_SIZE, NULL) != RODT_OK)
        exit(2);
}

static void fill_row(size_t row, kind of)
{
    static const char *const chambers[] = {"30", "24", "20", "30 long", "24L", "16", "36", "20 long"};
    static const char *const pressures[] = {"90", "95", "100", "98", "93", ""};
    const uint32_t released = 16 + draw(24);
    snprintf(data.cells[0][row], CELL_SIZE, "%s", chambers[draw(8)]);
    write_reading(data.cells[1][row], of, released);
    write_reading(data.cells[2][row], of, released + 17 + draw(20));
    snprintf(data.cells[3][row], CELL_SIZE, "%s", draw(3) != 0 ? "" : "standard");
    snprintf(data.cells[4][row], CELL_SIZE, "%s", pressures[draw(6)]);
    snprintf(data.cells[5][row], CELL_SIZE, "%u-%02u-%02u", of == TWENTY_YEARS ? 2006 + draw(20) : 2024,
             1 + draw(of == TWENTY_YEARS ? 12 : 1), 1 + draw(28));
}

/* The same cells as Arrow columns, as spans and as lines. */
static void lay_out(void)
{
    size_t at = 0;
    int32_t used[FIELDS] = {0};
    for (size_t row = 0; row < data.rows; row++) {
        data.starts[row] = at;
        data.ends[row][0] = UINT32_MAX;
        for (size_t i = 0; i < FIELDS; i++) {
            const size_t size = strlen(data.cells[i][row]);
            memcpy(data.bytes[i] + used[i], data.cells[i][row], size);
            memcpy(data.lines + at, data.cells[i][row], size);
            used[i] += (int32_t)size;
            at += size;
            data.offsets[i][row + 1] = used[i];
            data.spans[i][row] = (rodt_text_span){data.cells[i][row], size};
            data.ends[row][i + 1] = (uint32_t)(at - data.starts[row]);
            data.lines[at++] = ',';
        }
    }
}

static void make(size_t rows)
{
    data.rows = rows;
    for (size_t i = 0; i < FIELDS; i++) {
        data.cells[i] = room(rows, CELL_SIZE);
        data.bytes[i] = room(rows, CELL_SIZE);
        data.offsets[i] = room(rows + 1, sizeof *data.offsets[i]);
        data.spans[i] = room(rows, sizeof *data.spans[i]);
    }
    data.lines = room(rows + 1, (CELL_SIZE + 1) * FIELDS);
    data.ends = room(rows, sizeof *data.ends);
    data.starts = room(rows, sizeof *data.starts);
    data.stroke = room(rows, sizeof *data.stroke);
    data.reasons = room(rows, sizeof *data.reasons);
    data.verdict = room(rows, 1);
}

/* A new plan each time: what is read for the first time counts, too. */
static void judge_columns(bool as_spans)
{
    const rodt_column_out out = {.stroke = data.stroke, .verdict = data.verdict, .reasons = data.reasons};
    rodt_text_columns in;
    rodt_text_plan *plan;
    memset(&in, 0, sizeof in);
    for (size_t i = 0; i < FIELDS; i++)
        in.field[fields[i]] = as_spans ? (rodt_text_cells){.layout = RODT_TEXT_LAYOUT_SPANS, .cells = data.spans[i]}
                                       : (rodt_text_cells){.layout = RODT_TEXT_LAYOUT_OFFSETS32, .cells = data.offsets[i],
                                                           .bytes = data.bytes[i]};
    if (rodt_text_plan_new(rodt_rules_find(RODT_DEFAULT_RULES), NULL, &plan, NULL) != RODT_OK ||
        rodt_text_plan_judge(plan, &in, data.rows, &out, NULL) != RODT_OK)
        exit(2);
    rodt_text_plan_free(plan);
}

static void judge_arrow(void) { judge_columns(false); }
static void judge_spans(void) { judge_columns(true); }

#define CHUNK_ROWS 4096

/* What batch does with a row that is new, but for its output. The cache is NULL while it is backed off. */
static void judge_new_row(rodt_row_cache *cache, size_t row)
{
    rodt_form text = {.chamber = NULL};
    rodt_text_span cells[RODT_FIELD_ROOM] = {{NULL, 0}};
    rodt_finding finding;
    for (size_t i = 0; i < FIELDS; i++) {
        cells[fields[i]] = data.spans[i][row];
        rodt_form_set(&text, fields[i], data.cells[i][row]);
    }
    if (cache != NULL && rodt_row_cache_read(cache, cells, &text) != NULL)
        return;
    if (rodt_form_judge_row(&text, rodt_rules_find(RODT_DEFAULT_RULES), &finding, NULL) != RODT_OK)
        exit(2);
    uint8_t *verdict = cache != NULL ? rodt_row_cache_keep(cache) : NULL;
    if (verdict != NULL)
        *verdict = (uint8_t)finding.verdict;
}

static bool take_rows(void *context, const void *bytes, uint64_t rows)
{
    uint64_t *sum = context;
    (void)bytes;
    *sum += rows;
    return true;
}

static void judge_stream(void)
{
    const rodt_form form = {.style = {.unit = RODT_UNIT_IN}};
    size_t column[RODT_FIELD_ROOM];
    rodt_row_cache *cache;
    uint64_t sum = 0;
    bool is_active = true;
    for (size_t i = 0; i < RODT_FIELD_ROOM; i++)
        column[i] = RODT_NO_COLUMN;
    for (size_t i = 0; i < FIELDS; i++)
        column[fields[i]] = i;
    if (rodt_row_cache_new(rodt_rules_find(RODT_DEFAULT_RULES), &form, column, 200, 32768, &cache) != RODT_OK)
        exit(2);
    for (size_t row = 0; row < data.rows; row++) {
        if (row % CHUNK_ROWS == 0)
            is_active = rodt_row_cache_begin_chunk(cache);
        if (is_active && rodt_row_cache_find(cache, data.lines + data.starts[row], data.ends[row]) != NULL)
            continue;
        (void)rodt_row_cache_flush(cache, take_rows, &sum);
        judge_new_row(is_active ? cache : NULL, row);
    }
    rodt_row_cache_free(cache);
}

static void run(const char *name, kind of, void (*job)(void))
{
    double times[REPEATS];
    for (size_t i = 0; i < REPEATS; i++) {
        double begin = seconds();
        job();
        times[i] = seconds() - begin;
    }
    qsort(times, REPEATS, sizeof *times, compare);
    printf("%-32s %-24s %9zu %8.1f\n", kind_names[of], name, data.rows, times[REPEATS / 2] / (double)data.rows * 1e9);
}

int main(int count, char **words)
{
    const size_t rows = count > 1 ? strtoul(words[1], NULL, 10) : 400000;
    if (rows == 0)
        return 2;
    make(rows);
    printf("%-32s %-24s %9s %8s\n", "texts", "as", "rows", "ns a row");
    for (int of = 0; of < KINDS; of++) {
        for (size_t row = 0; row < rows; row++)
            fill_row(row, (kind)of);
        lay_out();
        run("Arrow columns", (kind)of, judge_arrow);
        run("columns of spans", (kind)of, judge_spans);
        run("stream of rows", (kind)of, judge_stream);
    }
    return 0;
}
