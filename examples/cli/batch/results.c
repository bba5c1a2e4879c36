/* SPDX-License-Identifier: Apache-2.0 */
#include "batch/results.h"

#include <string.h>

const char *const batch_result_names[RESULTS] = {"applied_stroke", "limit", "margin", "verdict", "reasons"};

size_t batch_result_count(const batch_options *options)
{
    return options->decimals < 0 ? RESULTS : (size_t)RESULTS + NUMBERS;
}

const char *batch_result_name(const batch_options *options, size_t at)
{
    static const char *const numbers[][3] = { /* by unit: inches, millimetres, centimetres */
        [NUMBER_STROKE] = {"applied_stroke_in", "applied_stroke_mm", "applied_stroke_cm"},
        [NUMBER_LIMIT] = {"limit_in", "limit_mm", "limit_cm"},
        [NUMBER_MARGIN] = {"margin_in", "margin_mm", "margin_cm"},
        [NUMBER_USED] = {"used_percent", "used_percent", "used_percent"}};
    return at < RESULTS ? batch_result_names[at] : numbers[at - RESULTS][options->style.unit];
}

static size_t add_code(char *text, size_t used, const char *code)
{
    size_t size = strlen(code);
    if (used > 0)
        text[used++] = ' ';
    memcpy(text + used, code, size + 1);
    return used + size;
}

size_t batch_reasons(uint64_t reasons, const char *error, char text[REASONS_TEXT_SIZE])
{
    size_t used = 0;
    text[0] = '\0';
    for (int reason = 0; reason < RODT_REASON_END; reason++) {
        if ((reasons >> reason & 1u) != 0)
            used = add_code(text, used, rodt_reason_name((rodt_reason)reason));
    }
    return error != NULL ? add_code(text, used, error) : used;
}

static rodt_length hundredfold_share(const rodt_finding *finding)
{
    rodt_ratio stroke = {finding->applied_stroke.num, finding->applied_stroke.den}, share;
    rodt_ratio limit = {finding->limit.num, finding->limit.den};
    rodt_length none = {0, 0}, percent;
    if (!rodt_length_given(finding->limit) || !rodt_length_given(finding->applied_stroke) ||
        rodt_ratio_divide(stroke, limit, &share) != RODT_OK ||
        rodt_length_scale((rodt_length){share.num, share.den}, (rodt_ratio){100, 1}, &percent) != RODT_OK)
        return none;
    return percent;
}

size_t batch_number(const batch_options *options, const rodt_finding *finding, int number, char text[NUMBER_TEXT_SIZE])
{
    const rodt_length values[NUMBERS] = {finding->applied_stroke, finding->limit, finding->margin,
                                         hundredfold_share(finding)};
    bool up = number == NUMBER_STROKE || number == NUMBER_USED, negative = values[number].num < 0;
    rodt_unit unit = number == NUMBER_USED ? RODT_UNIT_IN : (rodt_unit)options->style.unit;
    if (!rodt_length_given(values[number]) ||
        rodt_length_format_decimal(values[number], unit, (unsigned)options->decimals,
                                   up != negative ? RODT_ROUNDING_UP : RODT_ROUNDING_DOWN, text, NUMBER_TEXT_SIZE,
                                   NULL) != RODT_OK)
        return 0;
    return strlen(text);
}
