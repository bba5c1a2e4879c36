/* SPDX-License-Identifier: Apache-2.0 */
/* Consistency checks of the table of steps: every step is there, and each sentence has the figures that it can have
 * and none that is typed. */
#include <string.h>

#include "tablec/steps.h"

/* What may be in the braces of a part: of every step with an air check, or of one step. */
static const struct step_slot {
    const char *name;
    rodt_step_part part;
    rodt_step step; /* RODT_STEP_NONE = any that is an air check */
} slots[] = {{"how", RODT_STEP_PART_DO, RODT_STEP_NONE},
             {"required", RODT_STEP_PART_GOOD, RODT_STEP_NONE},
             {"limit", RODT_STEP_PART_DEFECTIVE, RODT_STEP_NONE},
             {"rank", RODT_STEP_PART_DEFECTIVE, RODT_STEP_NONE},
             {"span", RODT_STEP_PART_SEE, RODT_STEP_BUILD_UP},
             {"window", RODT_STEP_PART_DO, RODT_STEP_APPLICATION},
             {"at_limit", RODT_STEP_PART_GOOD, RODT_STEP_COMPARE},
             {"rank", RODT_STEP_PART_DEFECTIVE, RODT_STEP_COMPARE},
             {"action", RODT_STEP_PART_DEFECTIVE, RODT_STEP_VEHICLE}};

static bool has_slot(const step_row *row, rodt_step_part part, const char *name, size_t size)
{
    for (size_t i = 0; i < COUNT_OF(slots); i++) {
        bool of_step = slots[i].step == RODT_STEP_NONE ? row->check != RODT_AIR_CHECK_NONE : row->step == slots[i].step;
        if (slots[i].part == part && of_step && strlen(slots[i].name) == size &&
            memcmp(slots[i].name, name, size) == 0)
            return true;
    }
    return false;
}

static void check_braces(tables *t, const step_row *row, rodt_step_part part)
{
    const char *column = rodt_step_part_name(part);
    const char *at = row->texts[part];
    while ((at = strpbrk(at, "{}")) != NULL) {
        size_t size = strcspn(at + 1, "{}");
        if (*at == '}' || at[1 + size] != '}') {
            tables_fault(t, FILE_STEPS, row->line, "%s: a brace is not closed, or not opened", column);
            return;
        }
        if (!has_slot(row, part, at + 1, size))
            tables_fault(t, FILE_STEPS, row->line, "%s: {%.*s} is nothing that can be put in here", column, (int)size,
                         at + 1);
        at += size + 2;
    }
}

static void check_text(tables *t, const step_row *row, rodt_step_part part)
{
    const char *text = row->texts[part], *column = rodt_step_part_name(part);
    char last = text[strlen(text) - 1];
    bool is_sentence = last == '.' || last == '}';
    if (strpbrk(text, "0123456789") != NULL)
        tables_fault(t, FILE_STEPS, row->line, "%s: a figure is typed; figures are in the table of air checks", column);
    if (is_sentence != (part != RODT_STEP_PART_TITLE))
        tables_fault(t, FILE_STEPS, row->line, "%s: %s", column,
                     is_sentence ? "a title has no full stop" : "a sentence ends with a full stop");
    check_braces(t, row, part);
}

/* A row of the air table has its figure in the sentences of its step, and so a rank. */
static void check_figures(tables *t, const step_row *row)
{
    bool figure = false, any = false;
    for (size_t i = 0; i < t->air_count; i++) {
        const rodt_air_limit *air = &t->air[i].row;
        any = any || air->check == row->check;
        figure = figure || (air->check == row->check && air->measure != RODT_AIR_MEASURE_YES_NO);
    }
    const char *good = row->texts[RODT_STEP_PART_GOOD], *defective = row->texts[RODT_STEP_PART_DEFECTIVE];
    if (figure && (strstr(good, "{required}") == NULL || strstr(defective, "{limit}") == NULL))
        tables_fault(t, FILE_STEPS, row->line, "the check has a figure, and {required} or {limit} is missing");
    if (any && strstr(defective, "{rank}") == NULL)
        tables_fault(t, FILE_STEPS, row->line, "the check can have a rank, and {rank} is missing");
}

static void check_row(tables *t, const step_row *row, size_t index)
{
    if (row->step != index + 1)
        tables_fault(t, FILE_STEPS, row->line, "step \"%s\" is out of its order, or there twice",
                     rodt_step_name(row->step));
    if (row->when == STEP_WITH_ROW && row->check == RODT_AIR_CHECK_NONE)
        tables_fault(t, FILE_STEPS, row->line, "a step that goes with a row is an air check");
    for (int part = 0; part < RODT_STEP_PART_END; part++)
        check_text(t, row, (rodt_step_part)part);
    if (row->check != RODT_AIR_CHECK_NONE)
        check_figures(t, row);
    for (size_t i = 0; i < index; i++) {
        if (row->check != RODT_AIR_CHECK_NONE && t->steps[i].check == row->check)
            tables_fault(t, FILE_STEPS, row->line, "the check is in line %u already", (unsigned)t->steps[i].line);
    }
}

void tables_check_steps(tables *t)
{
    for (size_t i = 0; i < t->step_count; i++)
        check_row(t, &t->steps[i], i);
    for (size_t step = t->step_count + 1; step < RODT_STEP_END; step++)
        tables_fault(t, FILE_STEPS, 0, "step \"%s\" is missing", rodt_step_name((rodt_step)step));
}
