/* SPDX-License-Identifier: Apache-2.0 */
/* The table compiler's last step: checked rows become C. The same rows always give the same bytes. */
#include <inttypes.h>
#include <string.h>

#include "tablec/model.h"

void write_text(FILE *out, const char *text)
{
    fputc('"', out);
    for (const unsigned char *at = (const unsigned char *)text; *at != '\0'; at++) {
        bool plain = *at >= ' ' && *at < 0x7F && *at != '"' && *at != '\\' && *at != '?';
        if (plain)
            fputc(*at, out);
        else
            fprintf(out, "\\%03o", *at);
    }
    fputs("\", ", out);
}

void write_fraction(FILE *out, int64_t num, int64_t den)
{
    fprintf(out, "{%" PRId64 ", %" PRId64 "}, ", num, den);
}

static void write_length(FILE *out, rodt_length length) { write_fraction(out, length.num, length.den); }

void write_date(FILE *out, rodt_date date)
{
    fprintf(out, "{%d, %d, %d}, ", date.year, date.month, date.day);
}

void write_source_reference(const tables *t, FILE *out, const char *id)
{
    if (id == NULL) {
        fputs("NULL, ", out);
        return;
    }
    size_t i = 0;
    while (strcmp(t->sources[i].source.id, id) != 0)
        i++;
    fprintf(out, "&sources[%zu], ", i);
}

static const char *family_word(rodt_family family)
{
    static const char *const words[] = {"RODT_FAMILY_UNKNOWN", "RODT_FAMILY_CLAMP", "RODT_FAMILY_BOLT",
                                        "RODT_FAMILY_ROTOCHAMBER", "RODT_FAMILY_DD3"};
    return words[family];
}

static const char *class_word(rodt_stroke_class stroke_class)
{
    static const char *const words[] = {"RODT_CLASS_UNKNOWN", "RODT_CLASS_STANDARD", "RODT_CLASS_LONG"};
    return words[stroke_class];
}

static const char *format_evidence(rodt_evidence evidence)
{
    static const char *const words[] = {"RODT_CHECKED", "RODT_SECOND_HAND", "RODT_FROM_MEMORY"};
    return words[evidence];
}

static rodt_date edition(const tables *t)
{
    rodt_date newest = {0};
    for (size_t i = 0; i < t->source_count; i++) {
        if (rodt_date_compare(t->sources[i].read_on, newest) > 0)
            newest = t->sources[i].read_on;
    }
    return newest;
}

static const char *file_name(const char *path)
{
    const char *slash = strrchr(path, '/');
    return slash == NULL ? path : slash + 1;
}

static void write_head(const tables *t, FILE *out)
{
    rodt_date day = edition(t);
    fputs("/* SPDX-License-Identifier: Apache-2.0 */\n/* Written by tablec from", out);
    for (int file = 0; file < FILE_COUNT; file++)
        fprintf(out, "%s %s", file == 0 ? "" : ",", file_name(t->paths[file]));
    fprintf(out, ", edition %04d-%02d-%02d.\n * To change a figure, change the tables. */\n", day.year, day.month,
            day.day);
    fputs("#include \"rules/tables.h\"\n\n", out);
    fprintf(out, "const char table_edition[] = \"%04d-%02d-%02d\";\n", day.year, day.month, day.day);
}

static void write_sources(const tables *t, FILE *out)
{
    fputs("\nstatic const rodt_source sources[] = {\n", out);
    for (size_t i = 0; i < t->source_count; i++) {
        const rodt_source *source = &t->sources[i].source;
        fputs("    {", out);
        write_text(out, source->id);
        write_text(out, source->body);
        write_text(out, source->document);
        write_text(out, source->section);
        write_text(out, source->edition);
        write_text(out, source->address);
        fputs("},\n", out);
    }
    fputs("};\n", out);
}

static void write_chambers(const tables *t, FILE *out)
{
    fputs("\nconst rodt_chamber_row table_chambers[] = {\n", out);
    for (size_t i = 0; i < t->chamber_count; i++) {
        const rodt_chamber_row *row = &t->chambers[i].row;
        fprintf(out, "    {%s, ", family_word(row->family));
        write_text(out, row->size);
        write_length(out, row->outside_diameter);
        write_length(out, row->outside_diameter_mm);
        write_length(out, row->standard_rated_stroke);
        write_source_reference(t, out, t->chambers[i].diameter_source);
        fputs("},\n", out);
    }
    fprintf(out, "};\nconst size_t table_chambers_count = %zu;\n", t->chamber_count);
}

static void write_limit(const tables *t, FILE *out, const limit_row *limit)
{
    const rodt_limit *row = &limit->row;
    fprintf(out, "    {%s, %s, ", family_word(row->family), class_word(row->stroke_class));
    write_text(out, row->size);
    write_length(out, row->rated_stroke);
    write_length(out, row->rated_stroke_mm);
    write_length(out, row->limit);
    write_text(out, row->published);
    write_length(out, row->printed_mm);
    write_date(out, row->from);
    write_date(out, row->until);
    write_source_reference(t, out, limit->source);
    fprintf(out, "%s},\n", format_evidence(row->evidence));
}

static size_t count_limits(const tables *t, const char *rules)
{
    size_t count = 0;
    for (size_t i = 0; i < t->limit_count; i++)
        count += strcmp(t->limits[i].rules, rules) == 0;
    return count;
}

static void write_limits(const tables *t, FILE *out)
{
    for (size_t r = 0; r < t->rules_count; r++) {
        if (count_limits(t, t->rules[r].id) == 0)
            continue;
        fprintf(out, "\n/* %s */\nstatic const rodt_limit limits_%zu[] = {\n", t->rules[r].id, r);
        for (size_t i = 0; i < t->limit_count; i++) {
            if (strcmp(t->limits[i].rules, t->rules[r].id) == 0)
                write_limit(t, out, &t->limits[i]);
        }
        fputs("};\n", out);
    }
}

/* A rule set that refers to another points to that one's array: one copy of each figure. */
static void write_limits_reference(const tables *t, FILE *out, const rules_row *row)
{
    const char *owner = row->limits_of != NULL ? row->limits_of : row->id;
    size_t count = count_limits(t, owner);
    if (count == 0) {
        fputs("NULL, 0, ", out);
        return;
    }
    size_t r = 0;
    while (strcmp(t->rules[r].id, owner) != 0)
        r++;
    fprintf(out, "limits_%zu, %zu, ", r, count);
}

static void write_air_reference(const tables *t, FILE *out, const rules_row *row)
{
    size_t count = 0;
    for (size_t i = 0; i < t->air_count; i++)
        count += strcmp(t->air[i].rules, row->id) == 0;
    if (count == 0)
        fputs("NULL, 0, ", out);
    else
        fprintf(out, "air_%zu, %zu, ", (size_t)(row - t->rules), count);
}

static void write_rules_row(const tables *t, FILE *out, const rules_row *row)
{
    fputs("    {", out);
    write_text(out, row->id);
    write_text(out, row->title);
    write_text(out, row->authority);
    write_source_reference(t, out, row->source);
    fprintf(out, "%s, ", format_evidence(row->evidence));
    write_date(out, row->from);
    write_date(out, row->until);
    fprintf(out, "%s, ", row->at_limit_passes ? "true" : "false");
    write_fraction(out, row->pressure_from.num, row->pressure_from.den);
    write_fraction(out, row->pressure_until.num, row->pressure_until.den);
    write_source_reference(t, out, row->pressure_source);
    fprintf(out, "%s, ", format_evidence(row->pressure_evidence));
    write_fraction(out, row->rated_share.num, row->rated_share.den);
    write_source_reference(t, out, row->rated_share_source);
    fprintf(out, "%s, ", format_evidence(row->rated_share_evidence));
    write_limits_reference(t, out, row);
    write_air_reference(t, out, row);
    fputs("NULL, NULL},\n", out);
}

/* In the order of the parts, each of which is there once. */
static void write_vehicle(const tables *t, FILE *out)
{
    fputs("\nconst vehicle_figure table_vehicle[VEHICLE_PARTS] = {\n", out);
    for (size_t part = 0; part < VEHICLE_PARTS; part++) {
        size_t i = 0;
        while (t->vehicle[i].part != part)
            i++;
        const vehicle_row *row = &t->vehicle[i];
        fputs("    {", out);
        write_fraction(out, row->value.num, row->value.den);
        write_text(out, row->wording);
        write_source_reference(t, out, row->source);
        fprintf(out, "%s},\n", format_evidence(row->evidence));
    }
    fputs("};\n", out);
}

void tables_write(const tables *t, FILE *out)
{
    write_head(t, out);
    write_sources(t, out);
    write_chambers(t, out);
    write_limits(t, out);
    tables_write_air(t, out);
    fputs("\nconst rodt_rules table_rules[] = {\n", out);
    for (size_t r = 0; r < t->rules_count; r++)
        write_rules_row(t, out, &t->rules[r]);
    fprintf(out, "};\nconst size_t table_rules_count = %zu;\n", t->rules_count);
    write_vehicle(t, out);
    tables_write_volumes(t, out);
}
