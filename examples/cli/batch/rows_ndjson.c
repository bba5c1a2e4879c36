/* SPDX-License-Identifier: Apache-2.0 */
/* Lines of JSON: each object is written as it came, with its judgement as five more members. */
#include "batch/rows_ndjson.h"
#include "batch/cache.h"
#include "batch/object_shape.h"
#include "batch/results.h"
#include "io/json_object.h"
#include "ui/compiler.h"
#include "ui/utf8.h"

#include <stdio.h>
#include <string.h>

/* An object that was read. */
typedef struct object {
    json_object_reader reader;
    const char *cell[BATCH_FIELDS]; /* in chunk->text; NULL = there is no such member */
    row_error error;                /* ROW_ERRORS = none */
} object;

/* A value as the text that a person would have written into the cell. The decimal separator of JSON is a point. */
static const char *read_value(batch_chunk *chunk, const json_member *found, rodt_field field)
{
    static const char unreadable[] = "\xEF\xBF\xBD";
    char *text = chunk->text[field];
    size_t size = JSON_NO_TEXT;
    if (found->kind == JSON_NULL)
        return NULL;
    if (found->kind == JSON_TEXT)
        size = json_object_text(found->value, text, COLUMN_TEXT_SIZE);
    else if (found->kind == JSON_NUMBER && found->value.size < COLUMN_TEXT_SIZE) {
        size = found->value.size;
        memcpy(text, found->value.bytes, size);
        text[size] = '\0';
        char *point = chunk->run->options->style.decimal_comma ? strchr(text, '.') : NULL;
        if (point != NULL)
            *point = ',';
    }
    if (size == JSON_NO_TEXT || memchr(text, '\0', size) != NULL)
        memcpy(text, unreadable, sizeof unreadable);
    return text;
}

/* A name that cannot be compared (too long, or with a zero byte) is empty. */
static void read_name(const json_member *found, char name[COLUMN_TEXT_SIZE])
{
    size_t size = json_object_text(found->name, name, COLUMN_TEXT_SIZE);
    if (size == JSON_NO_TEXT || strlen(name) != size)
        name[0] = '\0';
}

static bool is_result(const batch_options *options, const char *name)
{
    for (size_t i = 0; i < batch_result_count(options); i++)
        if (strcmp(name, batch_result_name(options, i)) == 0)
            return true;
    return false;
}

/* The meaning of a member's name as one number: two fields, each in a byte, NAME_NO_FIELD for none. */
enum { NAME_FIELD = 0, NAME_MEANT = 8, NAME_IS_RESULT = 1u << 16, NAME_BYTE = 0xFF, NAME_NO_FIELD = RODT_FIELD_END };

static uint32_t byte_of(rodt_field field) { return field != RODT_FIELD_NONE ? (uint32_t)field : NAME_NO_FIELD; }

static uint32_t classify_name(const batch_chunk *chunk, const json_member *found)
{
    char name[COLUMN_TEXT_SIZE];
    read_name(found, name);
    uint32_t result = is_result(chunk->run->options, name) ? NAME_IS_RESULT : 0;
    const column_request *request = &chunk->run->options->columns;
    uint32_t field = byte_of(columns_field(request, name, strlen(name)));
    uint32_t meant = byte_of(columns_meant(request, name, strlen(name)));
    return result | field << NAME_FIELD | meant << NAME_MEANT;
}

/* The names are nearly always those of the object before. */
static uint32_t meaning_of_name(batch_chunk *chunk, const json_member *found)
{
    uint32_t meaning;
    rodt_text_map *names = chunk->cache != NULL ? chunk->cache->names : NULL;
    if (names != NULL && rodt_text_map_get(names, found->name.bytes, found->name.size, &meaning))
        return meaning;
    meaning = classify_name(chunk, found);
    if (names != NULL)
        rodt_text_map_keep(names, found->name.bytes, found->name.size, meaning);
    return meaning;
}

static rodt_field field_of(uint32_t meaning) { return (rodt_field)(meaning >> NAME_FIELD & NAME_BYTE); }

static bool stop_at_result(batch_chunk *chunk, const csv_record *record, const json_member *found)
{
    char name[COLUMN_TEXT_SIZE];
    read_name(found, name);
    return batch_chunk_stop(chunk, record->line, "there is a member \"%.20s\" already: was this file judged before?",
                           name);
}

/* Keeps the names of the members that probably mean these fields. */
static void note_meant(batch_chunk *chunk, const csv_record *record, uint32_t fields)
{
    passthrough_counts *passed = &chunk->passed;
    json_object_reader reader;
    json_member found;
    char name[COLUMN_TEXT_SIZE];
    json_object_open(&reader, record->bytes, record->size);
    while (json_object_next(&reader, &found) == JSON_MEMBER) {
        uint32_t field = meaning_of_name(chunk, &found) >> NAME_MEANT & NAME_BYTE;
        if (field >= RODT_READING_FIELDS || (fields & ~passed->fields_meant & FIELD_BIT(field)) == 0)
            continue;
        read_name(&found, name);
        snprintf(passed->name_meant[field], sizeof passed->name_meant[field], "%.39s", name);
        passed->fields_meant |= FIELD_BIT(field);
    }
}

/* False: the run must stop, because no reader could tell two members of one name apart. */
static bool read_object(batch_chunk *chunk, const csv_record *record, object *out)
{
    json_member found;
    json_status status;
    uint32_t seen = 0;
    uint32_t meant = 0;
    *out = (object){.error = ROW_ERRORS};
    json_object_open(&out->reader, record->bytes, record->size);
    while ((status = json_object_next(&out->reader, &found)) == JSON_MEMBER) {
        uint32_t meaning = meaning_of_name(chunk, &found);
        rodt_field field = field_of(meaning);
        if ((meaning & NAME_IS_RESULT) != 0)
            return stop_at_result(chunk, record, &found);
        if (field == (rodt_field)NAME_NO_FIELD) {
            meant |= FIELD_BIT(meaning >> NAME_MEANT & NAME_BYTE);
            continue;
        }
        if ((seen & FIELD_BIT(field)) != 0)
            out->error = ROW_MEMBER_TWICE;
        seen |= FIELD_BIT(field);
        out->cell[field] = read_value(chunk, &found, field);
        if (field == RODT_FIELD_UNIT && chunk->run->unit_is_vehicle)
            out->cell[field] = NULL;
    }
    chunk->passed.fields_found |= seen;
    if ((meant & ~seen & ~chunk->passed.fields_meant & FIELDS_OF_READING) != 0)
        note_meant(chunk, record, meant & ~seen);
    if (status == JSON_BAD)
        out->error = ROW_BAD_OBJECT;
    return true;
}

/* The field that the value of a good member is of, or none. */
static rodt_field field_of_value(batch_chunk *chunk, const json_member *found)
{
    rodt_field field = field_of(meaning_of_name(chunk, found));
    bool is_read = field != (rodt_field)NAME_NO_FIELD && !(field == RODT_FIELD_UNIT && chunk->run->unit_is_vehicle);
    return is_read ? field : RODT_FIELD_NONE;
}

/* Learns the shape of a good object, for those that follow. The decimal separator of a number is a point. */
static void learn_shape(batch_chunk *chunk, const csv_record *record)
{
    object_shape *shape = chunk->cache != NULL ? object_shapes_room(chunk->cache->shapes) : NULL;
    json_object_reader reader;
    json_member found;
    const char *before = record->bytes;
    if (shape == NULL)
        return;
    object_shape_begin(shape, !chunk->run->options->style.decimal_comma);
    json_object_open(&reader, record->bytes, record->size);
    while (json_object_next(&reader, &found) == JSON_MEMBER) {
        const size_t quote = found.kind == JSON_TEXT;
        const char *value = found.value.bytes - quote;
        object_shape_add(shape, before, (size_t)(value - before), field_of_value(chunk, &found));
        before = value + found.value.size + 2 * quote;
    }
    object_shape_end(shape, before, (size_t)(reader.close + 1 - before));
}

void batch_check_first_object(batch_chunk *chunk, const csv_record *record)
{
    const column_request *request = &chunk->run->options->columns;
    json_object_reader reader;
    json_member found;
    char name[COLUMN_TEXT_SIZE];
    json_object_open(&reader, record->bytes, record->size);
    while (json_object_next(&reader, &found) == JSON_MEMBER) {
        read_name(&found, name);
        rodt_field field = columns_field(request, name, strlen(name));
        if (field != RODT_FIELD_NONE && !columns_check_first(request, field, read_value(chunk, &found, field)))
            chunk->run->unit_is_vehicle = true;
    }
}

static text_place write_length(output *to, const char *name, rodt_length length)
{
    char text[RODT_LENGTH_TEXT_SIZE];
    bool given = rodt_length_given(length) && rodt_length_format(length, text, sizeof text, NULL) == RODT_OK;
    output_text(to, "\"");
    output_text(to, name);
    output_text(to, given ? "\": \"" : "\": null, ");
    text_place place = {to->used, to->used};
    if (!given)
        return place;
    output_text(to, text);
    place.end = to->used;
    output_text(to, "\", ");
    return place;
}

static void write_numbers(output *to, const batch_options *options, const rodt_finding *finding)
{
    char text[NUMBER_TEXT_SIZE];
    for (int i = 0; i < NUMBERS && options->decimals >= 0; i++) {
        size_t size = batch_number(options, finding, i, text);
        output_text(to, ", \"");
        output_text(to, batch_result_name(options, RESULTS + (size_t)i));
        output_text(to, "\": ");
        output_bytes(to, size > 0 ? text : "null", size > 0 ? size : 4);
    }
}

static void write_results(batch_chunk *chunk, const rodt_finding *finding, const char *error)
{
    const char *between = "\"";
    output *to = &chunk->out;
    chunk->own[OWN_STROKE] = write_length(to, batch_result_names[RESULT_STROKE], finding->applied_stroke);
    (void)write_length(to, batch_result_names[RESULT_LIMIT], finding->limit);
    chunk->own[OWN_MARGIN] = write_length(to, batch_result_names[RESULT_MARGIN], finding->margin);
    output_text(to, "\"verdict\": \"");
    output_text(to, rodt_verdict_name(finding->verdict));
    output_text(to, "\", \"reasons\": [");
    for (int reason = 0; reason < RODT_REASON_END; reason++) {
        if (!rodt_finding_has(finding, (rodt_reason)reason))
            continue;
        output_text(to, between);
        output_text(to, rodt_reason_name((rodt_reason)reason));
        between = "\", \"";
    }
    if (error != NULL) {
        output_text(to, between);
        output_text(to, error);
        between = "\", \"";
    }
    output_text(to, between[1] != '\0' ? "\"]" : "]");
    write_numbers(to, chunk->run->options, finding);
    output_text(to, "}");
}

/* Any bytes as a JSON text; those that are no UTF-8 become U+FFFD. */
static void write_text(output *to, const char *bytes, size_t size)
{
    char escape[8];
    output_text(to, "\"");
    for (size_t at = 0; at < size;) {
        size_t count = utf8_bytes(bytes + at, size - at);
        unsigned char byte = (unsigned char)bytes[at];
        if (count == 0)
            output_text(to, "\\ufffd");
        else if (byte < 0x20 || byte == 0x7F || byte == '"' || byte == '\\') {
            snprintf(escape, sizeof escape, "\\u%04x", byte);
            output_text(to, escape);
        } else
            output_bytes(to, bytes + at, count);
        at += count == 0 ? 1 : count;
    }
    output_text(to, "\"");
}

/* A line that is no object has no members to pass through, so it becomes one. */
static void write_bad_line(batch_chunk *chunk, const csv_record *record)
{
    output_text(&chunk->out, "{\"line\": ");
    write_text(&chunk->out, record->bytes, record->size);
    output_text(&chunk->out, ", ");
}

static void write_object(batch_chunk *chunk, const csv_record *record, const object *from)
{
    output_bytes(&chunk->out, record->bytes, (size_t)(from->reader.close - record->bytes));
    output_text(&chunk->out, from->reader.any ? ", " : "");
}

static bool is_blank_line(const csv_record *record)
{
    size_t at = 0;
    while (at < record->size && (record->bytes[at] == ' ' || record->bytes[at] == '\t' || record->bytes[at] == '\r'))
        at++;
    return at == record->size;
}

/* The members of an object by field; they are looked up by what they say. */
static void take_cells(const object *from, rodt_text_span cells[RODT_FIELD_ROOM])
{
    for (int field = 0; field < RODT_READING_FIELDS; field++) {
        const char *text = from->cell[field];
        cells[field] = (rodt_text_span){text, text != NULL ? strlen(text) : 0};
    }
}

static bool write_cached(batch_chunk *chunk, const csv_record *record, const object *from, const cached_row *cached)
{
    write_object(chunk, record, from);
    output_bytes(&chunk->out, cached->bytes, cached->size);
    output_bytes(&chunk->out, record->line_end, record->line_end_size);
    return true;
}

/* Finds an object that differs in its stroke alone, and writes this one like it. */
static bool write_alike(batch_chunk *chunk, const csv_record *record, const object *from,
                        const rodt_text_span cells[RODT_FIELD_ROOM])
{
    rodt_length own[OWN_TEXTS];
    if (!chunk->cache->has_alike || !output_room(&chunk->out, record->size + ALIKE_ROOM))
        return false;
    const cached_row *alike =
        rodt_row_cache_find_alike_cells(chunk->cache->rows, cells, &own[OWN_STROKE], &own[OWN_MARGIN]);
    if (alike == NULL)
        return false;
    write_object(chunk, record, from);
    batch_cache_write_alike(chunk, alike, own);
    output_bytes(&chunk->out, record->line_end, record->line_end_size);
    return true;
}

/* Counts and writes an object that was judged. */
static bool write_judged(batch_chunk *chunk, const csv_record *record, const object *from, const rodt_form *text,
                         const rodt_finding *finding, const batch_tally *tally)
{
    if (!batch_chunk_count_row(chunk, tally))
        return false;
    if (from->error == ROW_BAD_OBJECT)
        write_bad_line(chunk, record);
    else
        write_object(chunk, record, from);
    size_t at = chunk->out.used;
    const char *error = from->error != ROW_ERRORS ? row_error_code(from->error) : NULL;
    write_results(chunk, finding, error);
    if (from->error == ROW_ERRORS)
        batch_cache_keep(chunk, text, tally, chunk->out.buffer + at, chunk->out.used - at);
    output_bytes(&chunk->out, record->line_end, record->line_end_size);
    return true;
}

bool batch_write_object(batch_chunk *chunk, const csv_record *record)
{
    object found;
    rodt_finding finding = {.verdict = RODT_VERDICT_UNDETERMINED};
    if (is_blank_line(record)) {
        chunk->passed.empty_lines++;
        output_bytes(&chunk->out, record->bytes, record->size + record->line_end_size);
        return true;
    }
    if (!read_object(chunk, record, &found))
        return false;
    if (found.error != ROW_ERRORS) {
        batch_tally none = batch_tally_of(&finding, chunk->run->options->summary);
        batch_chunk_add_error(chunk, found.error, record);
        return write_judged(chunk, record, &found, NULL, &finding, &none);
    }
    learn_shape(chunk, record);
    rodt_text_span cells[RODT_FIELD_ROOM];
    const bool is_active = batch_cache_is_active(chunk);
    take_cells(&found, cells);
    const cached_row *cached = is_active ? rodt_row_cache_find_cells(chunk->cache->rows, cells) : NULL;
    if (cached != NULL)
        return write_cached(chunk, record, &found, cached);
    if (is_active && write_alike(chunk, record, &found, cells))
        return true;
    const rodt_form text = batch_text(chunk->run, found.cell);
    if (is_active)
        cached = rodt_row_cache_read(chunk->cache->rows, cells, &text);
    if (cached != NULL)
        return write_cached(chunk, record, &found, cached);
    rodt_status status = rodt_form_judge_row(&text, chunk->run->context.rules, &finding, NULL);
    if (status != RODT_OK)
        return batch_chunk_stop_by_status(chunk, record->line, status);
    batch_tally tally = batch_chunk_tally(chunk, &text, &finding, record);
    return write_judged(chunk, record, &found, &text, &finding, &tally);
}
