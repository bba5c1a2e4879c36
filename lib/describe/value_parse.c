/* SPDX-License-Identifier: Apache-2.0 */
/* Values from text, each by the reader of its kind. */
#include "describe/value.h"

#include "air/built.h"
#include "core/always.h"
#include "core/exact.h"
#include "core/number_parse.h"
#include "quantity/lost_blank.h"

#include <stdio.h>
#include <string.h>

/* What a text is read into, before it goes to its place. */
typedef union value {
    rodt_length length;
    rodt_pressure pressure;
    rodt_ratio ratio;
    rodt_date date;
    rodt_position position;
    rodt_chamber chamber;
    char bytes[sizeof(rodt_error)]; /* a text inside of a record */
} value;

/* A text is closed by a zero byte; `size` is its length. */

/* --- Exact numbers ----------------------------------------------------------------------------------- */

/* The value of the digits here, 0 if there are none. False: of those that fit, and more follow. */
static bool read_digits(const char **at, int64_t *out)
{
    for (*out = 0; **at >= '0' && **at <= '9'; ++*at) {
        int64_t digit = **at - '0';
        if (*out > (INT64_MAX - digit) / 10)
            return false;
        *out = *out * 10 + digit;
    }
    return true;
}

/* The sign and the digits after it, if it is there. */
static void read_part(const char **at, char sign, int64_t *out)
{
    if (**at == sign) {
        ++*at;
        (void)read_digits(at, out);
    }
}

/* What the library writes, "-1 3/4", and nothing else: the value is the one whose text this is, so that any text can be
 * taken apart. */
static bool read_exact(const char *text, rodt_ratio *out)
{
    const bool below = *text == '-';
    const char *at = text + below;
    char line[RODT_RATIO_TEXT_SIZE] = "";
    int64_t whole, num = 0, den = 1;
    rodt_ratio part, sum;
    (void)read_digits(&at, &whole);
    if (*at == '/') {
        num = whole;
        whole = 0;
    }
    read_part(&at, ' ', &num);
    read_part(&at, '/', &den);
    if (!rodti_exact_make(num, den, &part) || !rodti_exact_add((rodt_ratio){whole, 1}, part, &sum))
        return false;
    sum.num = below ? -sum.num : sum.num;
    (void)rodt_ratio_format(sum, line, sizeof line, NULL);
    if (strcmp(line, text) != 0)
        return false;
    *out = sum;
    return true;
}

static rodt_status read_ratio(const char *text, size_t size, rodt_ratio *out, rodt_error *error)
{
    text_cursor cursor;
    number_text read;
    number_problem problem;
    if (read_exact(text, out))
        return RODT_OK;
    rodti_number_parse_start(&cursor, text, size);
    if (!rodti_number_parse(&cursor, false, &read, &problem))
        return rodti_number_explain_error(text, size, false, &problem, error);
    if (read.is_too_large)
        return rodti_error(error, RODT_E_RANGE, 1, RODT_MESSAGE_ERROR_DIGITS);
    if (cursor.code != TEXT_END)
        return rodti_text_error(error, RODT_E_SYNTAX, cursor.column, "only a number was expected here");
    *out = read.value;
    return RODT_OK;
}

/* --- Words and integers ------------------------------------------------------------------------------ */

static rodt_status no_word(rodt_error *error, const rodt_enumeration *enumeration)
{
    static const char start[] = "expected one of: ", more[] = ", …";
    size_t room = RODT_ERROR_TEXT_SIZE - sizeof start - sizeof more;
    text_writer list;
    rodti_text_begin(&list);
    for (size_t i = 0; i < enumeration->count; i++) {
        const char *word = enumeration->list[i].word;
        if (list.used + strlen(word) + 2 > room) {
            rodti_text_put(&list, more);
            break;
        }
        rodti_text_putf(&list, "%s%s", i > 0 ? ", " : "", word);
    }
    return rodti_text_error(error, RODT_E_SYNTAX, 1, "%s%s", start, list.buffer);
}

static rodt_status read_set(const rodt_enumeration *enumeration, const char *text, size_t size, uint64_t *out,
                            rodt_error *error)
{
    const char *end = text + size;
    uint64_t set = 0;
    while (text < end) {
        const char *comma = memchr(text, ',', (size_t)(end - text));
        const char *stop = comma != NULL ? comma : end;
        const rodt_enumerator *row = rodt_enumerator_find_n(enumeration, text, (size_t)(stop - text));
        if (row == NULL)
            return no_word(error, enumeration);
        set |= rodti_set_bit(enumeration, row);
        text = comma != NULL ? comma + 1 : end;
    }
    *out = set;
    return RODT_OK;
}

static rodt_status read_boolean(const char *text, size_t size, uint64_t *out, rodt_error *error)
{
    bool yes = rodti_text_is_word(text, size, "true") || rodti_text_is_word(text, size, "yes");
    if (!yes && !rodti_text_is_word(text, size, "false") && !rodti_text_is_word(text, size, "no"))
        return rodti_text_error(error, RODT_E_SYNTAX, 1, "expected true or false");
    *out = yes;
    return RODT_OK;
}

static rodt_status read_integer(const rodt_member *member, const char *text, size_t size, uint64_t *out,
                                rodt_error *error)
{
    const char *end = text + size;
    bool can_be_below = member->kind == RODT_MEMBER_KIND_INTEGER;
    bool below = *text == '-';
    int64_t most = member->size < 8 ? (INT64_C(1) << (8 * member->size - can_be_below)) - 1 : INT64_MAX;
    int64_t number;
    const char *first = text + below;
    const char *at = first;
    bool fits = read_digits(&at, &number);
    while (*at >= '0' && *at <= '9')
        at++;
    if (at == first || at != end)
        return rodti_text_error(error, RODT_E_SYNTAX, 1, "a whole number was expected here");
    if (below && !can_be_below && number != 0)
        return rodti_error(error, RODT_E_NEGATIVE, 1, RODT_MESSAGE_STATUS_NEGATIVE);
    if (!fits || number > most)
        return rodti_text_error(error, RODT_E_RANGE, 1, "this number does not fit");
    *out = below ? 0 - (uint64_t)number : (uint64_t)number;
    return RODT_OK;
}

/* --- Texts ------------------------------------------------------------------------------------------- */

static rodt_status read_inline(const rodt_member *member, const char *text, size_t size, value *out,
                               rodt_error *error)
{
    text_cursor cursor;
    for (rodti_text_start(&cursor, text, size); cursor.code != TEXT_END; rodti_text_next(&cursor))
        if (cursor.code == TEXT_BAD)
            return rodti_text_error(error, RODT_E_SYNTAX, cursor.column, "this is not UTF-8");
    if (size >= member->size || NEVER(member->size > sizeof out->bytes)) /* an error has the longest texts */
        return rodti_text_error(error, RODT_E_SPACE, 0, "at most %u bytes fit here", (unsigned)(member->size - 1));
    memcpy(out->bytes, text, size);
    return RODT_OK;
}

/* --- By kind ----------------------------------------------------------------------------------------- */

/* A number in so many bytes. */
static void *store_number(void *at, size_t size, uint64_t number)
{
    const uint8_t one = (uint8_t)number;
    const uint16_t two = (uint16_t)number;
    const uint32_t four = (uint32_t)number;
    switch (size) {
    case sizeof one: return memcpy(at, &one, sizeof one);
    case sizeof two: return memcpy(at, &two, sizeof two);
    case sizeof four: return memcpy(at, &four, sizeof four);
    default: return memcpy(at, &number, sizeof number);
    }
}

static rodt_status read_number(const rodt_member *member, const char *text, size_t size, value *out, rodt_error *error)
{
    uint64_t number = 0;
    rodt_status status;
    if (member->kind == RODT_MEMBER_KIND_ENUMERATOR) {
        const rodt_enumerator *row = rodt_enumerator_find_n(member->enumeration, text, size);
        status = row == NULL ? no_word(error, member->enumeration) : RODT_OK;
        number = row == NULL ? 0 : (uint64_t)row->number;
    } else if (member->kind == RODT_MEMBER_KIND_SET) {
        status = read_set(member->enumeration, text, size, &number, error);
    } else if (member->kind == RODT_MEMBER_KIND_BOOLEAN) {
        status = read_boolean(text, size, &number, error);
    } else {
        status = read_integer(member, text, size, &number, error);
    }
    (void)store_number(out->bytes, member->size, number);
    return status;
}

/* Where a reading keeps what the text of a member may mean too, from its start; 0 = the member has no such place. */
static size_t second_offset(const value_place *place)
{
    if (place->owner != &rodti_record_reading)
        return 0;
    switch (place->member->offset) {
    case offsetof(rodt_reading, released): return offsetof(rodt_reading, other_released);
    case offsetof(rodt_reading, applied): return offsetof(rodt_reading, other_applied);
    default: return 0;
    }
}

static void set_second_values(const value_place *place, void *record, const char *text, size_t size)
{
    rodt_length other[LOST_BLANK_MAX] = {{0, 0}, {0, 0}};
    if (second_offset(place) == 0)
        return;
    if (text != NULL)
        (void)rodti_lost_blank_values(text, size, RODT_UNIT_IN, other);
    memcpy((char *)record + second_offset(place), other, sizeof other);
}

/* The unit that a pressure was written in is kept beside it, as a form keeps it. */
static void set_pressure_unit(const value_place *place, char *record, const char *text, size_t size)
{
    const rodt_member *unit = rodt_member_find(place->owner, "pressure_unit");
    RODT_ENUM32(rodt_pressure_unit) written;
    rodt_pressure pressure;
    if (place->member->kind == RODT_MEMBER_KIND_PRESSURE && unit != NULL &&
        rodt_pressure_parse_n(text, size, NULL, &pressure, &written, NULL) == RODT_OK &&
        written != RODT_PRESSURE_UNIT_PSI)
        memcpy(record + unit->offset, &written, sizeof written);
}

static rodt_status read_length(const value_place *place, const char *text, size_t size, value *out, rodt_error *error)
{
    if (!place->owner->input && read_exact(text, &out->ratio))
        return RODT_OK;
    return second_offset(place) != 0 ? rodt_length_parse_n(text, size, NULL, &out->length, NULL, error)
                                     : rodt_length_parse_strict_n(text, size, NULL, &out->length, NULL, error);
}

static rodt_status read_value(const value_place *place, const char *text, size_t size, value *out, rodt_error *error)
{
    bool result = !place->owner->input;
    switch ((int)place->member->kind) {
    case RODT_MEMBER_KIND_LENGTH: return read_length(place, text, size, out, error);
    case RODT_MEMBER_KIND_PRESSURE:
        return result && read_exact(text, &out->ratio)
                   ? RODT_OK
                   : rodt_pressure_parse_n(text, size, NULL, &out->pressure, NULL, error);
    case RODT_MEMBER_KIND_RATIO: return read_ratio(text, size, &out->ratio, error);
    case RODT_MEMBER_KIND_DATE:
        return can_be_year(place->member)
                   ? rodti_built_parse_n(text, size, RODT_DATE_ORDER_UNKNOWN, &out->date, error)
                   : rodt_date_parse_n(text, size, RODT_DATE_ORDER_UNKNOWN, &out->date, error);
    case RODT_MEMBER_KIND_POSITION: return rodt_position_parse_n(text, size, &out->position, error);
    case RODT_MEMBER_KIND_RECORD: return rodt_chamber_parse_n(text, size, &out->chamber, error);
    case RODT_MEMBER_KIND_TEXT: return read_inline(place->member, text, size, out, error);
    default: return read_number(place->member, text, size, out, error);
    }
}

static bool can_be_set(const value_place *place)
{
    if (place->pointed)
        return false;
    switch ((int)place->member->kind) {
    case RODT_MEMBER_KIND_RECORD: return place->member->record == &rodti_record_chamber;
    case RODT_MEMBER_KIND_TEXT_POINTER: return place->owner->input;
    case RODT_MEMBER_KIND_RECORD_POINTER:
    case RODT_MEMBER_KIND_RULES:
    case RODT_MEMBER_KIND_POINTER:
    case RODT_MEMBER_KIND_RESERVE: return false;
    default: return true;
    }
}

rodt_status rodt_record_set_text(const rodt_record *record, void *value_of_record, const char *path, const char *text,
                                 rodt_error *error)
{
    value_place place;
    value read = {.bytes = {0}};
    if (!rodti_value_locate(record, value_of_record, path, &place) || !can_be_set(&place))
        return rodti_text_error(error, RODT_E_ARGUMENT, 0, "there is no member to be set at this path");
    char *at = (char *)value_of_record + (place.at - (const char *)value_of_record);
    if (place.member->kind == RODT_MEMBER_KIND_TEXT_POINTER) {
        memcpy(at, &text, sizeof text);
        return RODT_OK;
    }
    size_t size = text != NULL ? strlen(text) : 0;
    if (place.member->kind == RODT_MEMBER_KIND_INDEX)
        memset(read.bytes, 0xFF, sizeof(size_t)); /* no index */
    rodt_status status = size > 0 ? read_value(&place, text, size, &read, error) : RODT_OK;
    if (status != RODT_OK) {
        if (error != NULL)
            snprintf(error->field, sizeof error->field, "%s", place.member->name);
        return status;
    }
    memcpy(at, read.bytes, place.member->size);
    set_second_values(&place, at - place.member->offset, text, size);
    set_pressure_unit(&place, at - place.member->offset, text, size);
    return RODT_OK;
}
