/* SPDX-License-Identifier: Apache-2.0 */
/* One row of a table of limits as text, and when two rows contradict each other. */
#include "rules/limit_row.h"

#include "chamber/chamber_check.h"
#include "chamber/words.h"
#include "core/always.h"
#include "rules/words.h"

#include <string.h>

bool rodti_table_family(table_reader *reader, size_t column, RODT_ENUM32(rodt_family) *out)
{
    return rodti_table_name(reader, column, &rodti_words_family, RODT_FAMILY_CLAMP, out);
}

bool rodti_table_size(table_reader *reader, size_t column, rodt_family family)
{
    const table_cell *cell = &reader->cells[column];
    if (family == RODT_FAMILY_BOLT ? rodti_is_bolt_letter(cell->text) : rodti_is_type_number(cell->text))
        return true;
    rodti_table_fault(reader, column, 1, RODT_E_TABLE,
                family == RODT_FAMILY_BOLT ? "expected the letter of a bolt-type chamber, A to G"
                                           : "expected a type number, 1 to 99");
    return false;
}

static bool table_class(table_reader *reader, RODT_ENUM32(rodt_stroke_class) *out)
{
    return rodti_table_name(reader, LIMIT_CLASS, &rodti_words_stroke_class, RODT_STROKE_CLASS_STANDARD, out);
}

bool rodti_table_evidence(table_reader *reader, size_t column, RODT_ENUM32(rodt_evidence) *out)
{
    return rodti_table_name(reader, column, &rodti_words_evidence, RODT_EVIDENCE_CHECKED, out);
}

bool rodti_table_span(table_reader *reader, size_t until_column, rodt_date from, rodt_date until)
{
    if (!rodt_date_given(until) || rodt_date_compare(from, until) <= 0)
        return true;
    rodti_table_fault(reader, until_column, 1, RODT_E_TABLE, "the last day is before the first");
    return false;
}

static bool table_positive(table_reader *reader, size_t column, rodt_length length)
{
    if (!rodt_length_given(length) || length.num > 0)
        return true;
    rodti_table_fault(reader, column, 1, RODT_E_TABLE, "the figure must be above zero");
    return false;
}

/* Millimetres are printed beside inches, never alone. */
static bool table_beside(table_reader *reader, size_t inch_column, size_t mm_column)
{
    if (table_empty(reader, mm_column) || !table_empty(reader, inch_column))
        return true;
    rodti_table_fault(reader, mm_column, 1, RODT_E_TABLE, "millimetres without inches");
    return false;
}

/* They are the same figure, rounded to whole ones or finer: otherwise one of the two is a slip. */
static bool table_alike(table_reader *reader, size_t mm_column, rodt_length inches, rodt_length mm)
{
    static const rodt_length half = {5, 254}; /* of a millimetre, in inches */
    rodt_length distance;
    if (!rodt_length_given(inches) || !rodt_length_given(mm))
        return true;
    rodt_status status = rodt_length_compare(inches, mm) < 0 ? rodt_length_subtract(mm, inches, &distance)
                                                             : rodt_length_subtract(inches, mm, &distance);
    /* Denominators that are read have no other primes than 2, 5 and 127, so the difference fits. */
    bool within = ALWAYS(status == RODT_OK) && rodt_length_compare(distance, half) <= 0;
    if (!within)
        rodti_table_fault(reader, mm_column, 1, RODT_E_TABLE, "the printed millimetres are no rounding of the inches");
    return within;
}

/* No chamber has another mark, so the row would be for none. */
static bool table_mark(table_reader *reader, rodt_length rated)
{
    if (!rodt_length_given(rated) || rodti_is_mark(rated))
        return true;
    rodti_table_fault(reader, LIMIT_RATED_STROKE, 1, RODT_E_TABLE, "a chamber is marked with 3/4 to 6 in");
    return false;
}

static bool table_figures(table_reader *reader, rodt_limit *row)
{
    bool good = rodti_table_length(reader, LIMIT_RATED_STROKE, RODT_UNIT_IN, &row->rated_stroke);
    good &= rodti_table_length(reader, LIMIT_RATED_MM, RODT_UNIT_MM, &row->rated_stroke_mm);
    good &= rodti_table_length(reader, LIMIT_LIMIT, RODT_UNIT_IN, &row->limit);
    good &= rodti_table_length(reader, LIMIT_LIMIT_MM, RODT_UNIT_MM, &row->printed_mm);
    good &= table_beside(reader, LIMIT_RATED_STROKE, LIMIT_RATED_MM);
    good = good && table_mark(reader, row->rated_stroke);
    good &= table_positive(reader, LIMIT_LIMIT, row->limit);
    good = good && table_alike(reader, LIMIT_RATED_MM, row->rated_stroke, row->rated_stroke_mm);
    good = good && table_alike(reader, LIMIT_LIMIT_MM, row->limit, row->printed_mm);
    if (good && rodt_length_given(row->rated_stroke) &&
        rodt_length_compare(row->limit, row->rated_stroke) >= 0) {
        rodti_table_fault(reader, LIMIT_LIMIT, 1, RODT_E_TABLE, "a limit must be below the rated stroke");
        good = false;
    }
    return good;
}

static bool table_days(table_reader *reader, rodt_limit *row)
{
    bool good = rodti_table_date(reader, LIMIT_FROM, &row->from);
    good &= rodti_table_date(reader, LIMIT_UNTIL, &row->until);
    return good && rodti_table_span(reader, LIMIT_UNTIL, row->from, row->until);
}

bool rodti_table_limit(table_reader *reader, rodt_limit *out)
{
    rodt_limit row = {.size = reader->cells[LIMIT_SIZE].text, .published = reader->cells[LIMIT_LIMIT].text};
    bool good = rodti_table_family(reader, LIMIT_FAMILY, &row.family);
    good = good && rodti_table_size(reader, LIMIT_SIZE, row.family);
    good &= table_class(reader, &row.stroke_class);
    good &= table_figures(reader, &row);
    good &= table_days(reader, &row);
    good &= rodti_table_evidence(reader, LIMIT_EVIDENCE, &row.evidence);
    if (good)
        *out = row;
    return good;
}

bool rodti_days_overlap(rodt_date a_from, rodt_date a_until, rodt_date b_from, rodt_date b_until)
{
    return (!rodt_date_given(a_until) || rodt_date_compare(a_until, b_from) >= 0) &&
           (!rodt_date_given(b_until) || rodt_date_compare(b_until, a_from) >= 0);
}

bool rodti_limits_clash(const rodt_limit *a, const rodt_limit *b)
{
    bool one_class = a->stroke_class == b->stroke_class || a->stroke_class == RODT_STROKE_CLASS_ANY ||
                     b->stroke_class == RODT_STROKE_CLASS_ANY;
    return a->family == b->family && strcmp(a->size, b->size) == 0 && one_class &&
           rodt_length_compare(a->rated_stroke, b->rated_stroke) == 0 &&
           rodti_days_overlap(a->from, a->until, b->from, b->until);
}
