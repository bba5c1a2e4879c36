/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The library's answers in a form that judge.py compares with its own. One question a line on standard
 * input, cells between tabs; answers on standard output.
 *
 *   grid  CHAMBER CLASS RATED DAY PSI UNIT DENOMINATOR STEPS RELEASED-STEP
 *         every applied measurement 0..STEPS (in units of 1/DENOMINATOR) for every RELEASED-STEPth released
 *         one; two bytes an answer: verdict in bits 0 and 1, reasons in the order of `reported`
 *   row   CHAMBER CLASS RATED MARKED-LIMIT DAY PSI PSI-AFTER DIVISION RELEASED APPLIED
 *         one line of text: verdict, stroke, limit, margin, proof, chance of being over, reasons
 */
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <rodtravel/rodtravel.h>

#define CELLS_MAX 12

static const rodt_reason reported[] = {
    RODT_REASON_OVER_LIMIT,       RODT_REASON_AT_LIMIT,          RODT_REASON_WITHIN_LIMIT,
    RODT_REASON_NO_MOVEMENT,      RODT_REASON_READINGS_SWAPPED,  RODT_REASON_BEYOND_RATED_STROKE,
    RODT_REASON_PRESSURE_LOW,     RODT_REASON_PRESSURE_HIGH,     RODT_REASON_PRESSURE_NOT_RECORDED,
    RODT_REASON_ASSUMED_STANDARD, RODT_REASON_ASSUMED_CLAMP,     RODT_REASON_NO_PUBLISHED_LIMIT,
    RODT_REASON_PRINTED_MM_DIFFERS, RODT_REASON_CONFLICTING_MARKS};

static void check(rodt_status status, const char *what)
{
    if (status != RODT_OK) {
        fprintf(stderr, "%s: %s\n", what, rodt_status_text(status));
        exit(1);
    }
}

static unsigned answer_bits(const rodt_finding *finding)
{
    unsigned bits = (unsigned)finding->verdict;
    for (size_t i = 0; i < sizeof reported / sizeof reported[0]; i++)
        bits |= (unsigned)rodt_finding_has(finding, reported[i]) << (i + 2);
    return bits;
}

static rodt_length step_length(bool millimetres, int64_t steps, int64_t denominator)
{
    rodt_length length;
    check(millimetres ? rodt_length_from_mm(steps, denominator, &length)
                      : rodt_length_from_inches(steps, denominator, &length), "step");
    return length;
}

/* Cells: chamber, class, rated stroke, day, psi. */
static rodt_reading grid_reading(char **cell, bool millimetres)
{
    rodt_reading reading = {.unit = millimetres ? RODT_UNIT_MM : RODT_UNIT_IN};
    rodt_stroke_class stroke_class;
    check(rodt_chamber_parse(cell[0], &reading.chamber, NULL), cell[0]);
    check(rodt_stroke_class_parse_n(cell[1], strlen(cell[1]), &stroke_class, NULL), cell[1]);
    rodt_chamber_add_class(&reading.chamber, stroke_class);
    if (cell[2][0] != '\0')
        check(rodt_length_parse(cell[2], &reading.chamber.rated_stroke, NULL), cell[2]);
    if (cell[3][0] != '\0')
        check(rodt_date_parse_iso(cell[3], &reading.day, NULL), cell[3]);
    if (cell[4][0] != '\0')
        check(rodt_pressure_parse(cell[4], &reading.pressure, NULL), cell[4]);
    return reading;
}

static void grid(char **cell, const rodt_rules *rules)
{
    bool millimetres = strcmp(cell[5], "mm") == 0;
    rodt_reading reading = grid_reading(cell, millimetres);
    int64_t denominator = strtoll(cell[6], NULL, 10);
    int64_t steps = strtoll(cell[7], NULL, 10);
    int64_t stride = strtoll(cell[8], NULL, 10);
    rodt_length *lengths = calloc((size_t)steps + 1, sizeof *lengths);
    unsigned char *line = malloc(2 * ((size_t)steps + 1));
    if (lengths == NULL || line == NULL)
        check(RODT_E_MEMORY, "grid");
    for (int64_t i = 0; i <= steps; i++)
        lengths[i] = step_length(millimetres, i, denominator);

    for (int64_t released = 0; released <= steps; released += stride) {
        reading.released = lengths[released];
        for (int64_t applied = 0; applied <= steps; applied++) {
            rodt_finding finding;
            reading.applied = lengths[applied];
            check(rodt_reading_judge(&reading, rules, &finding, NULL), "judge");
            unsigned bits = answer_bits(&finding);
            line[2 * applied] = (unsigned char)(bits & 255u);
            line[2 * applied + 1] = (unsigned char)(bits >> 8);
        }
        fwrite(line, 2, (size_t)steps + 1, stdout);
    }
    free(line);
    free(lengths);
}

static void put_parts(int64_t num, int64_t den)
{
    if (den == 0)
        fputs("\t", stdout);
    else
        printf("%" PRId64 "/%" PRId64 "\t", num, den);
}

static void row(char **cell, const rodt_rules *rules)
{
    rodt_form text = {.chamber = cell[0],  .stroke_class = cell[1],   .rated_stroke = cell[2],
                              .marked_limit = cell[3], .date = cell[4],        .psi = cell[5],
                              .psi_after = cell[6], .division = cell[7], .released = cell[8],
                              .applied = cell[9]};
    rodt_finding finding;
    rodt_error error = {0};
    check(rodt_form_judge_row(&text, rules, &finding, &error), "row");
    if (error.status != RODT_OK) {
        printf("unreadable %s: %s\n", error.field, error.text);
        return;
    }
    printf("%s\t", rodt_verdict_name(finding.verdict));
    put_parts(finding.applied_stroke.num, finding.applied_stroke.den);
    put_parts(finding.limit.num, finding.limit.den);
    put_parts(finding.margin.num, finding.margin.den);
    printf("%s\t", finding.proof != RODT_PROOF_NOT_ASKED ? rodt_proof_name(finding.proof) : "");
    put_parts(finding.probability_over.num, finding.probability_over.den);
    for (int reason = 0; reason < RODT_REASON_END; reason++)
        if (rodt_finding_has(&finding, (rodt_reason)reason))
            printf("%s ", rodt_reason_name((rodt_reason)reason));
    putchar('\n');
}

/* Splits a line at its tabs; cells that are not there are empty. */
static void split(char *line, char **cell)
{
    line[strcspn(line, "\n")] = '\0';
    for (int i = 0; i < CELLS_MAX; i++) {
        cell[i] = line;
        line += strcspn(line, "\t");
        if (*line != '\0')
            *line++ = '\0';
    }
}

int main(int argc, char **argv)
{
    const rodt_rules *rules = rodt_rules_find(argc > 1 ? argv[1] : RODT_DEFAULT_RULES);
    char line[1024];
    char *cell[CELLS_MAX];
    while (rules != NULL && fgets(line, sizeof line, stdin) != NULL) {
        split(line, cell);
        if (strcmp(cell[0], "grid") == 0)
            grid(cell + 1, rules);
        else
            row(cell + 1, rules);
    }
    return rules == NULL || fflush(stdout) != 0;
}
