/* SPDX-License-Identifier: Apache-2.0 */
/* Lines of JSON for `rodtravel batch`: one object a line, passed through with its judgement as five members more. */
#include "batch/rows_ndjson.h"
#include "batch/cache.h"
#include "io/json_object.h"
#include "ui/compiler.h"
#include "ui/utf8.h"

#include <stdio.h>
#include <string.h>

static const char *const result_names[] = {"applied_stroke", "limit", "margin", "verdict", "reasons"};

/* What was found in an object. */
typedef struct object {
    members walk;
    const char *cell[BATCH_FIELDS]; /* in part->text; NULL = there is no such member */
    row_error flaw;              /* BATCH_FLAWS = none */
} object;

/* A value as the text that a person would have written into the cell. The decimal sign of JSON is always a point. */
static const char *take_value(batch_part *part, const member *found, rodt_field field)
{
    static const char unreadable[] = "\xEF\xBF\xBD";
    char *text = part->text[field];
    size_t size = MEMBERS_NO_TEXT;
    if (found->kind == MEMBERS_NULL)
        return NULL;
    if (found->kind == MEMBERS_TEXT)
        size = json_object_text(found->value, text, COLUMN_TEXT_SIZE);
    else if (found->kind == MEMBERS_NUMBER && found->value.size < COLUMN_TEXT_SIZE) {
        size = found->value.size;
        memcpy(text, found->value.bytes, size);
        text[size] = '\0';
        char *point = part->run->options->style.decimal_comma ? strchr(text, '.') : NULL;
        if (point != NULL)
            *point = ',';
    }
    if (size == MEMBERS_NO_TEXT || memchr(text, '\0', size) != NULL)
        memcpy(text, unreadable, sizeof unreadable);
    return text;
}

/* A name that cannot be compared (too long, or with a zero byte) is none that anybody asks for. */
static void read_name(const member *found, char name[COLUMN_TEXT_SIZE])
{
    size_t size = json_object_text(found->name, name, COLUMN_TEXT_SIZE);
    if (size == MEMBERS_NO_TEXT || strlen(name) != size)
        name[0] = '\0';
}

static bool is_result(const char *name)
{
    for (size_t i = 0; i < COUNT_OF(result_names); i++)
        if (strcmp(name, result_names[i]) == 0)
            return true;
    return false;
}

/* What the name of a member means, as one number. */
enum { NAME_FIELD = 0, NAME_MEANT = 8, NAME_IS_RESULT = 1u << 16, NAME_BYTE = 0xFF };

static uint32_t look_at_name(const batch_part *part, const member *found)
{
    char name[COLUMN_TEXT_SIZE];
    read_name(found, name);
    uint32_t result = is_result(name) ? NAME_IS_RESULT : 0;
    const column_request *request = &part->run->options->columns;
    uint32_t field = columns_field(request, name, strlen(name));
    uint32_t meant = columns_meant(request, name, strlen(name));
    return result | field << NAME_FIELD | meant << NAME_MEANT;
}

/* The same for every object of a file, as a rule. */
static uint32_t meaning_of_name(batch_part *part, const member *found)
{
    uint32_t meaning;
    rodt_text_map *names = part->cache != NULL ? part->cache->names : NULL;
    if (names != NULL && rodt_text_map_find(names, found->name.bytes, found->name.size, &meaning))
        return meaning;
    meaning = look_at_name(part, found);
    if (names != NULL)
        rodt_text_map_keep(names, found->name.bytes, found->name.size, meaning);
    return meaning;
}

static bool stop_at_result(batch_part *part, const csv_record *record, const member *found)
{
    char name[COLUMN_TEXT_SIZE];
    read_name(found, name);
    return batch_part_stop(part, record->line, "there is a member \"%.20s\" already: was this file judged before?",
                           name);
}

/* False: the run must stop, because no reader could tell two members of one name apart. */
static bool read_object(batch_part *part, const csv_record *record, object *out)
{
    member found;
    members_status status;
    uint32_t seen = 0;
    *out = (object){.flaw = BATCH_FLAWS};
    json_object_open(&out->walk, record->bytes, record->size);
    while ((status = json_object_next(&out->walk, &found)) == MEMBERS_MEMBER) {
        uint32_t meaning = meaning_of_name(part, &found);
        rodt_field field = (rodt_field)(meaning >> NAME_FIELD & NAME_BYTE);
        if ((meaning & NAME_IS_RESULT) != 0)
            return stop_at_result(part, record, &found);
        if (field == RODT_FIELD_END) {
            part->passed.unread |= FIELD_BIT(meaning >> NAME_MEANT & NAME_BYTE);
            continue;
        }
        if ((seen & FIELD_BIT(field)) != 0)
            out->flaw = BATCH_TWICE;
        seen |= FIELD_BIT(field);
        out->cell[field] = take_value(part, &found, field);
        if (field == RODT_FIELD_UNIT && part->run->unit_is_vehicle)
            out->cell[field] = NULL;
    }
    part->passed.met |= seen;
    if (status == MEMBERS_BAD)
        out->flaw = BATCH_BAD_OBJECT;
    return true;
}

void batch_object_check_first(batch_part *part, const csv_record *record)
{
    const column_request *request = &part->run->options->columns;
    members walk;
    member found;
    char name[COLUMN_TEXT_SIZE];
    json_object_open(&walk, record->bytes, record->size);
    while (json_object_next(&walk, &found) == MEMBERS_MEMBER) {
        read_name(&found, name);
        rodt_field field = columns_field(request, name, strlen(name));
        if (field != RODT_FIELD_END && !columns_check_first(request, field, take_value(part, &found, field)))
            part->run->unit_is_vehicle = true;
    }
}

static void put_length(output *to, const char *name, rodt_length length)
{
    char text[RODT_LENGTH_TEXT_SIZE];
    bool given = rodt_length_given(length) && rodt_length_format(length, text, sizeof text) == RODT_OK;
    output_text(to, "\"");
    output_text(to, name);
    output_text(to, given ? "\": \"" : "\": null, ");
    if (!given)
        return;
    output_text(to, text);
    output_text(to, "\", ");
}

static void put_results(output *to, const rodt_finding *finding, const char *flaw)
{
    const char *between = "\"";
    put_length(to, result_names[0], finding->applied_stroke);
    put_length(to, result_names[1], finding->limit);
    put_length(to, result_names[2], finding->margin);
    output_text(to, "\"verdict\": \"");
    output_text(to, rodt_verdict_name(finding->verdict));
    output_text(to, "\", \"reasons\": [");
    for (int reason = 0; reason < RODT_REASON_END; reason++) {
        if (!rodt_finding_has(finding, (rodt_reason)reason))
            continue;
        output_text(to, between);
        output_text(to, rodt_reason_code((rodt_reason)reason));
        between = "\", \"";
    }
    if (flaw != NULL) {
        output_text(to, between);
        output_text(to, flaw);
        between = "\", \"";
    }
    output_text(to, between[1] != '\0' ? "\"]}" : "]}");
}

/* Any bytes as a JSON text; those that are no UTF-8 are replaced by the sign for that. */
static void put_text(output *to, const char *bytes, size_t size)
{
    char escape[8];
    output_text(to, "\"");
    for (size_t at = 0; at < size;) {
        size_t count = utf8_bytes(bytes + at, size - at);
        unsigned char sign = (unsigned char)bytes[at];
        if (count == 0)
            output_text(to, "\\ufffd");
        else if (sign < 0x20 || sign == 0x7F || sign == '"' || sign == '\\') {
            snprintf(escape, sizeof escape, "\\u%04x", sign);
            output_text(to, escape);
        } else
            output_bytes(to, bytes + at, count);
        at += count == 0 ? 1 : count;
    }
    output_text(to, "\"");
}

/* A line that is no object has no members to pass through, so it becomes one. */
static void put_bad_line(batch_part *part, const csv_record *record)
{
    output_text(&part->out, "{\"line\": ");
    put_text(&part->out, record->bytes, record->size);
    output_text(&part->out, ", ");
}

static void put_object(batch_part *part, const csv_record *record, const object *from)
{
    output_bytes(&part->out, record->bytes, (size_t)(from->walk.close - record->bytes));
    output_text(&part->out, from->walk.any ? ", " : "");
}

static bool is_blank_line(const csv_record *record)
{
    size_t at = 0;
    while (at < record->size && (record->bytes[at] == ' ' || record->bytes[at] == '\t' || record->bytes[at] == '\r'))
        at++;
    return at == record->size;
}

/* The result of an object that is cached. Its members are looked up by what they say. */
static const cached_row *find_cached(batch_part *part, const object *from, const rodt_reading_text *text)
{
    rodt_text_span cells[RODT_READING_FIELDS] = {{NULL, 0}};
    if (!batch_cache_is_active(part) || from->flaw != BATCH_FLAWS)
        return NULL;
    for (int field = 0; field < RODT_READING_FIELDS; field++)
        if (from->cell[field] != NULL)
            cells[field] = (rodt_text_span){from->cell[field], strlen(from->cell[field])};
    return rodt_row_cache_read(part->cache->rows, cells, text);
}

static void write_cached(batch_part *part, const csv_record *record, const object *from, const cached_row *cached)
{
    put_object(part, record, from);
    output_bytes(&part->out, cached->bytes, cached->size);
    output_bytes(&part->out, record->line_end, record->line_end_size);
}

/* Counts and writes an object that was judged. */
static bool write_judged(batch_part *part, const csv_record *record, const object *from, const rodt_finding *finding,
                         bool undated)
{
    batch_tally tally = batch_tally_of(finding, undated, part->run->options->summary);
    if (!batch_count_row(part, &tally))
        return false;
    if (from->flaw == BATCH_BAD_OBJECT)
        put_bad_line(part, record);
    else
        put_object(part, record, from);
    size_t at = part->out.used;
    put_results(&part->out, finding, from->flaw != BATCH_FLAWS ? batch_flaw_code(from->flaw) : NULL);
    if (from->flaw == BATCH_FLAWS)
        batch_cache_keep(part, &tally, part->out.buffer + at, part->out.used - at);
    output_bytes(&part->out, record->line_end, record->line_end_size);
    return true;
}

bool batch_object(batch_part *part, const csv_record *record)
{
    object found;
    rodt_finding finding = {.verdict = RODT_UNDETERMINED};
    if (is_blank_line(record)) {
        part->passed.empty_lines++;
        output_bytes(&part->out, record->bytes, record->size + record->line_end_size);
        return true;
    }
    if (!read_object(part, record, &found))
        return false;
    const rodt_reading_text text = batch_text(part->run, found.cell);
    const cached_row *cached = find_cached(part, &found, &text);
    if (cached != NULL) {
        write_cached(part, record, &found, cached);
        return true;
    }
    if (found.flaw != BATCH_FLAWS) {
        batch_part_flaw(part, found.flaw, record);
        return write_judged(part, record, &found, &finding, false);
    }
    rodt_status status = rodt_judge_row(&text, part->run->setting.rules, &finding, NULL);
    if (status != RODT_OK)
        return batch_part_stop(part, record->line, "%s", rodt_status_text(status));
    return write_judged(part, record, &found, &finding, batch_is_undated(&text));
}
