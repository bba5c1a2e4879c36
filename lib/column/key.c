/* SPDX-License-Identifier: Apache-2.0 */
/* What a cell means for the result of its row. */
#include "column/key.h"

#include <string.h>

#include "column/equivalence.h"
#include "core/always.h"
#include "core/text.h"
#include "judge/reasons.h"

/* Bits that the class numbers of a field have in a key; together 62 at most. */
static const unsigned char bits_of[RODT_READING_FIELDS] = {
    [RODT_FIELD_CHAMBER] = 9,    [RODT_FIELD_RELEASED] = 4,     [RODT_FIELD_APPLIED] = 4, [RODT_FIELD_STROKE_CLASS] = 4,
    [RODT_FIELD_RATED_STROKE] = 8, [RODT_FIELD_MARKED_LIMIT] = 8, [RODT_FIELD_PSI] = 3,   [RODT_FIELD_PSI_AFTER] = 3,
    [RODT_FIELD_DIVISION] = 3,   [RODT_FIELD_DATE] = 7,         [RODT_FIELD_UNIT] = 3,    [RODT_FIELD_ENGINE] = 2,
    [RODT_FIELD_SPRING_BRAKE] = 2, [RODT_FIELD_DRUM] = 2};

static const key_class class_of_nothing = {0, CLASS_NOTHING};
static const key_class class_of_its_own = {0, CLASS_OWN};

/* --- Opening ----------------------------------------------------------------------------------------- */

static bool is_length(rodt_field field)
{
    return key_is_measurement(field) || field == RODT_FIELD_RATED_STROKE ||
           field == RODT_FIELD_MARKED_LIMIT || field == RODT_FIELD_DIVISION;
}

/* Twenty years have thousands of days; evicted again and again, they would make every row a new one. */
static unsigned most_bits(rodt_field field) { return field == RODT_FIELD_DATE ? 15 : 13; }

bool rodti_key_is_blank(const char *text)
{
    size_t size = text != NULL ? strlen(text) : 0;
    if (size > 0)
        rodti_text_trim(&text, &size);
    return size == 0;
}

bool rodti_key_open(key_builder *builder, const rodt_rules *rules, const rodt_form *form, bool is_stream)
{
    unsigned shift = 0;
    bool open = true;
    builder->rules = rodt_rules_ref(rules);
    builder->form = *form;
    builder->is_stream = is_stream;
    fine_fill(&builder->fine);
    for (int i = 0; i < RODT_READING_FIELDS; i++) {
        key_field *field = &builder->field[i];
        field->shift = shift;
        field->tag_mask = is_length((rodt_field)i) ? UINT64_MAX : 0;
        field->classes = 1;
        field->class_at[0] = class_of_nothing;
        shift += bits_of[i];
        open = rodti_cell_cache_open(&field->cells, most_bits((rodt_field)i)) && open;
        if (rodti_key_is_blank(rodt_form_get(form, (rodt_field)i)))
            rodt_form_set(&builder->form, (rodt_field)i, NULL);
    }
    return open;
}

void rodti_key_close(key_builder *builder)
{
    rodt_rules_unref(builder->rules);
    for (int i = 0; i < RODT_READING_FIELDS; i++)
        rodti_cell_cache_close(&builder->field[i].cells);
}

/* --- Classes ----------------------------------------------------------------------------------------- */

/* The class of a cell, and its part of the key. */
typedef struct cell_class {
    key_class class_of;
    uint64_t key_bits; /* beside the number of the class */
    uint32_t value;
} cell_class;

static key_class class_of_value(uint64_t value) { return (key_class){value, CLASS_VALUE}; }

static key_class class_of_reasons(uint64_t reasons)
{
    return reasons != 0 ? (key_class){reasons, CLASS_UNREADABLE} : class_of_nothing;
}

static bool is_given(rodt_length length) { return rodt_length_given(length); }

/* The stroke of a row is the sum of the values of its two measurements. */
static cell_class class_of_measurement(rodt_length length, rodt_unit written, rodt_field field)
{
    int32_t units;
    if (!rodti_equivalence_length(length, &units))
        return (cell_class){class_of_its_own, KEY_UNCACHEABLE, 0};
    return (cell_class){class_of_value((uint64_t)written), 0,
                        field == RODT_FIELD_APPLIED ? (uint32_t)units : 0u - (uint32_t)units};
}

static cell_class class_of_reading(const rodt_reading *reading, rodt_field field)
{
    bool is_applied = field == RODT_FIELD_APPLIED;
    rodt_length length = is_applied ? reading->applied : reading->released;
    const rodt_length *other = is_applied ? reading->other_applied : reading->other_released;
    if (!is_given(length))
        return (cell_class){class_of_reasons(reading->reasons), KEY_NO_STROKE, 0};
    if (is_given(other[0]))
        return (cell_class){class_of_its_own, KEY_UNCACHEABLE, 0};
    return class_of_measurement(length, reading->unit, field);
}

/* A chamber with a spring brake forms a class of its own. What else is marked on it has fields of its own. */
static key_class class_of_chamber(const rodt_chamber *chamber)
{
    uint32_t size;
    memcpy(&size, chamber->size, sizeof size);
    if (chamber->spring_size[0] != '\0')
        return class_of_its_own;
    return class_of_value((uint64_t)chamber->family << 40 | (uint64_t)chamber->stroke_class << 32 | size);
}

static key_class class_of_mark(rodt_length mark)
{
    return (mark.num | mark.den) >> 30 == 0 ? class_of_value((uint64_t)mark.num << 30 | (uint64_t)mark.den)
                                               : class_of_its_own;
}

static key_class class_of_day(const rodt_rules *rules, const rodt_reading *reading)
{
    uint64_t day = rodti_equivalence_day(rules, reading->day);
    if (rodt_date_given(reading->other_day))
        return (key_class){day << 32 | rodti_equivalence_day(rules, reading->other_day), CLASS_TWO_DAYS};
    return class_of_value(day);
}

static key_class class_of_field(const key_builder *builder, rodt_field field, const rodt_reading *reading)
{
    switch ((int)field) {
    case RODT_FIELD_CHAMBER: return class_of_chamber(&reading->chamber);
    case RODT_FIELD_STROKE_CLASS: return class_of_value((uint64_t)reading->chamber.stroke_class);
    case RODT_FIELD_PSI: return class_of_value(rodti_equivalence_pressure(builder->rules, reading->pressure));
    case RODT_FIELD_PSI_AFTER:
        return class_of_value(rodti_equivalence_pressure(builder->rules, reading->pressure_after));
    case RODT_FIELD_DATE: return class_of_day(builder->rules, reading);
    case RODT_FIELD_ENGINE: return class_of_value((uint64_t)reading->engine_running);
    case RODT_FIELD_SPRING_BRAKE: return class_of_value((uint64_t)reading->spring_brake_applied);
    case RODT_FIELD_DRUM: return class_of_value((uint64_t)reading->drum);
    default: return class_of_nothing;
    }
}

/* Lengths that were read count, even beside a unit that cannot be: they name their own. False: none was read. */
static bool class_of_length(rodt_field field, const rodt_reading *reading, key_class *class_of)
{
    bool is_division = field == RODT_FIELD_DIVISION; /* it changes nothing */
    rodt_length length = field == RODT_FIELD_RATED_STROKE    ? reading->chamber.rated_stroke
                         : field == RODT_FIELD_MARKED_LIMIT ? reading->chamber.marked_limit
                                                            : reading->division;
    if (!is_given(length))
        return false;
    *class_of = is_division ? class_of_nothing : class_of_mark(length);
    return true;
}

/* The reading of a row with this cell alone, and the unit it is read in. */
static rodt_reading read_alone(const key_builder *builder, rodt_field field, const char *text, const char *unit)
{
    rodt_reading reading;
    rodt_form row = {.style = builder->form.style, .date_order = builder->form.date_order,
                             .default_day = builder->form.default_day};
    if (is_length(field))
        row.unit = unit;
    rodt_form_set(&row, field, text);
    (void)rodt_form_parse(&row, &reading, NULL);
    return reading;
}

static cell_class class_of_unit(const char *text)
{
    RODT_ENUM32(rodt_unit) unit;
    const key_class unreadable = {0, CLASS_UNREADABLE};
    bool is_read = rodt_unit_parse(text, &unit, NULL) == RODT_OK;
    return (cell_class){is_read ? class_of_value((uint64_t)unit) : unreadable, 0, 0};
}

static cell_class class_of_cell(const key_builder *builder, rodt_field field, const char *text, const char *unit)
{
    if (rodti_key_is_blank(text))
        text = rodt_form_get(&builder->form, field);
    if (text == NULL) {
        bool is_reading = key_is_measurement(field);
        bool is_chamber = field == RODT_FIELD_CHAMBER && builder->is_stream;
        return (cell_class){class_of_nothing, is_reading ? KEY_NO_STROKE : is_chamber ? KEY_UNCACHEABLE : 0, 0};
    }
    if (field == RODT_FIELD_UNIT)
        return class_of_unit(text);
    rodt_reading reading = read_alone(builder, field, text, unit);
    if (key_is_measurement(field))
        return class_of_reading(&reading, field);
    key_class class_of;
    if (is_length(field) && class_of_length(field, &reading, &class_of))
        return (cell_class){class_of, 0, 0};
    if (reading.reasons == 0)
        return (cell_class){class_of_field(builder, field, &reading), 0, 0};
    const bool contradicts =
        field == RODT_FIELD_DATE && rodt_date_contradicts(text, strlen(text), builder->form.date_order);
    return (cell_class){{reading.reasons, contradicts ? CLASS_OTHER_ORDER : CLASS_UNREADABLE},
                        field == RODT_FIELD_CHAMBER && builder->is_stream ? KEY_UNCACHEABLE : 0, 0};
}

/* The number of a class. False: there are too many. */
static bool number_class(key_field *field, unsigned bits, key_class class_of, uint32_t *number)
{
    for (*number = 0; class_of.kind != CLASS_OWN && *number < field->classes; ++*number)
        if (field->class_at[*number].kind == class_of.kind && field->class_at[*number].value == class_of.value)
            return true;
    *number = field->classes;
    if (field->classes >= 1u << bits)
        return false;
    field->class_at[field->classes++] = class_of;
    return true;
}

static cell_meaning meaning_of(key_field *field, unsigned bits, cell_class found)
{
    uint32_t number;
    if ((found.key_bits & KEY_UNCACHEABLE) != 0 || !number_class(field, bits, found.class_of, &number))
        return (cell_meaning){.key_bits = KEY_UNCACHEABLE};
    return (cell_meaning){.key_bits = (uint64_t)number << field->shift | found.key_bits, .value = found.value};
}

/* The tag of a row is the number of its unit's class. */
static bool find_unit(const key_builder *builder, unsigned tag, RODT_ENUM32(rodt_unit) *unit)
{
    key_class class_of = builder->field[RODT_FIELD_UNIT].class_at[tag];
    *unit = class_of.kind == CLASS_NOTHING ? builder->form.style.unit : (rodt_unit)class_of.value;
    return class_of.kind != CLASS_UNREADABLE;
}

/* The key bits of a measurement that is read in this unit. */
static uint64_t bits_of_unit(key_field *to, rodt_field field, rodt_unit unit)
{
    uint32_t number;
    const bool numbered = number_class(to, bits_of[field], class_of_value((uint64_t)unit), &number);
    if (NEVER(!numbered)) /* a measurement has a class for each unit, and few for what is wrong with it */
        return KEY_UNCACHEABLE;
    return (uint64_t)number << to->shift;
}

void rodti_key_units(key_builder *builder, rodt_field field, key_unit units[KEY_TAGS])
{
    for (unsigned tag = 0; tag < KEY_TAGS; tag++) {
        RODT_ENUM32(rodt_unit) unit;
        units[tag] = (key_unit){.most = -1};
        if (tag >= builder->field[RODT_FIELD_UNIT].classes || !find_unit(builder, tag, &unit))
            continue;
        units[tag].bits = bits_of_unit(&builder->field[field], field, unit);
        units[tag].most = RODT_LENGTH_MAX_INCHES * FINE_PER_INCH;
        memcpy(units[tag].parts, builder->fine.parts[unit], sizeof builder->fine.parts[unit]);
    }
}

bool rodti_key_read_plain(key_builder *builder, rodt_field field, rodt_text_span cell, unsigned tag, key_part *out)
{
    plain_length length;
    rodt_style style = {.decimal_comma = builder->form.style.decimal_comma};
    if (!find_unit(builder, tag, &style.unit) || cell.size >= KEY_TEXT_SIZE ||
        !rodti_length_plain_parts(cell.text, cell.text + cell.size, &style, &length))
        return false;
    const int64_t fine = fine_of_length(&length, &builder->fine);
    *out = (key_part){bits_of_unit(&builder->field[field], field, length.unit),
                      field == RODT_FIELD_APPLIED ? fine : -fine};
    return true;
}

/* The same as it is cached. */
static bool read_plain_cell(key_builder *builder, rodt_field field, rodt_text_span cell, unsigned tag,
                            cell_meaning *meaning)
{
    key_part part;
    if (!rodti_key_read_plain(builder, field, cell, tag, &part))
        return false;
    const bool is_whole = part.fine % FINE_PER_UNIT == 0;
    *meaning = (cell_meaning){.key_bits = part.bits,
                              .value = is_whole ? (uint32_t)(part.fine / FINE_PER_UNIT) : KEY_VALUE_FINE};
    return true;
}

cell_meaning rodti_key_read_cell(key_builder *builder, rodt_field field, rodt_text_span cell, const char *text,
                           const char *unit, unsigned tag)
{
    key_field *to = &builder->field[field];
    cell_meaning meaning;
    to->reads++;
    if (text == NULL || !key_is_measurement(field) ||
        !read_plain_cell(builder, field, (rodt_text_span){text, strlen(text)}, tag, &meaning))
        meaning = meaning_of(to, bits_of[field], class_of_cell(builder, field, text, unit));
    rodti_cell_cache_keep(&to->cells, cell.text, cell.size, tag, meaning);
    return meaning;
}
