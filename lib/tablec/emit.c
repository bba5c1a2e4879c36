/* SPDX-License-Identifier: Apache-2.0 */
/* The table compiler's last step: checked rows become C. The same rows always give the same bytes. Enumerators are
 * written as numbers. */
#include <inttypes.h>
#include <string.h>

#include "rules/limit_key.h"
#include "tablec/steps.h"

static void write_string(FILE *out, const char *text)
{
    fputc('"', out);
    for (const unsigned char *at = (const unsigned char *)text; *at != '\0'; at++) {
        bool plain = *at >= ' ' && *at < 0x7F && *at != '"' && *at != '\\' && *at != '?';
        if (plain)
            fputc(*at, out);
        else
            fprintf(out, "\\%03o", *at);
    }
    fputc('"', out);
}

static void write_text(FILE *out, const char *text)
{
    write_string(out, text);
    fputs(", ", out);
}

static void write_fraction(FILE *out, int64_t num, int64_t den)
{
    fprintf(out, "{%" PRId64 ", %" PRId64 "}, ", num, den);
}

static void write_length(FILE *out, rodt_length length) { write_fraction(out, length.num, length.den); }

static void write_date(FILE *out, rodt_date date)
{
    fprintf(out, "{%d, %d, %d}, ", date.year, date.month, date.day);
}

static void write_source_reference(const tables *t, FILE *out, const char *id)
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

static void write_citation(const tables *t, FILE *out, const citation *cited)
{
    write_source_reference(t, out, cited->source);
    fprintf(out, "%d, ", (int)cited->evidence);
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

static void write_head(const tables *t, FILE *out)
{
    rodt_date day = edition(t);
    fputs("/* SPDX-License-Identifier: Apache-2.0 */\n/* Written by tablec from", out);
    for (int file = 0; file < FILE_COUNT; file++)
        fprintf(out, "%s %s", file == 0 ? "" : ",", tables_file_name(t, file));
    fprintf(out, ", edition %04d-%02d-%02d.\n * To change a figure, change the tables. */\n", day.year, day.month,
            day.day);
    fputs("#include \"rules/tables.h\"\n\n", out);
    fprintf(out, "const char rodti_table_edition[] = \"%04d-%02d-%02d\";\n", day.year, day.month, day.day);
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
    fputs("\nconst rodt_chamber_row rodti_table_chambers[] = {\n", out);
    for (size_t i = 0; i < t->chamber_count; i++) {
        const rodt_chamber_row *row = &t->chambers[i].row;
        fprintf(out, "    {%d, ", (int)row->family);
        write_text(out, row->size);
        write_length(out, row->outside_diameter);
        write_length(out, row->outside_diameter_mm);
        write_length(out, row->standard_rated_stroke);
        write_source_reference(t, out, t->chambers[i].diameter.source);
        fputs("},\n", out);
    }
    fprintf(out, "};\nconst size_t rodti_table_chambers_count = %zu;\n", t->chamber_count);
}

static void write_limit(const tables *t, FILE *out, const limit_row *limit)
{
    const rodt_limit *row = &limit->row;
    fprintf(out, "    {%d, %d, ", (int)row->family, (int)row->stroke_class);
    write_text(out, row->size);
    write_length(out, row->rated_stroke);
    write_length(out, row->rated_stroke_mm);
    write_length(out, row->limit);
    write_text(out, row->published);
    write_length(out, row->printed_mm);
    write_date(out, row->from);
    write_date(out, row->until);
    write_citation(t, out, &limit->cited);
    fputs("},\n", out);
}

static size_t count_limits(const tables *t, const rules_row *rules)
{
    size_t count = 0;
    for (size_t i = 0; i < t->limit_count; i++)
        count += tables_limit_holds(t, rules, &t->limits[i]);
    return count;
}

/* A rule set that refers to another and replaces none of its rows points to that one's array: each figure is there
 * once. */
static const rules_row *owner_of_limits(const tables *t, const rules_row *rules)
{
    bool own = rules->limits_of == NULL;
    for (size_t i = 0; i < t->limit_count; i++)
        own = own || strcmp(t->limits[i].rules, rules->id) == 0;
    for (size_t r = 0; r < t->rules_count && !own; r++) {
        if (strcmp(t->rules[r].id, rules->limits_of) == 0)
            return &t->rules[r];
    }
    return rules;
}

static void write_limits(const tables *t, FILE *out)
{
    for (size_t r = 0; r < t->rules_count; r++) {
        const rules_row *rules = &t->rules[r];
        if (owner_of_limits(t, rules) != rules || count_limits(t, rules) == 0)
            continue;
        fprintf(out, "\n/* %s */\nstatic const rodt_limit limits_%zu[] = {\n", rules->id, r);
        for (size_t i = 0; i < t->limit_count; i++) {
            if (tables_limit_holds(t, rules, &t->limits[i]))
                write_limit(t, out, &t->limits[i]);
        }
        fprintf(out, "};\nstatic const uint32_t limit_keys_%zu[] = {", r);
        for (size_t i = 0; i < t->limit_count; i++) {
            if (tables_limit_holds(t, rules, &t->limits[i]))
                fprintf(out, "%u, ", (unsigned)limit_key(t->limits[i].row.family, t->limits[i].row.size));
        }
        fputs("};\n", out);
    }
}

static void write_limits_reference(const tables *t, FILE *out, const rules_row *row)
{
    const rules_row *owner = owner_of_limits(t, row);
    size_t count = count_limits(t, owner);
    if (count == 0)
        fputs("NULL, NULL, 0, ", out);
    else
        fprintf(out, "limits_%zu, limit_keys_%zu, %zu, ", (size_t)(owner - t->rules), (size_t)(owner - t->rules),
                count);
}

static void write_air_reference(const tables *t, FILE *out, const rules_row *row)
{
    size_t count = 0;
    for (size_t i = 0; i < t->air_count; i++)
        count += strcmp(t->air[i].rules, row->id) == 0;
    if (count == 0)
        fputs("NULL, 0, NULL, ", out);
    else
        fprintf(out, "air_%zu, %zu, NULL, ", (size_t)(row - t->rules), count);
}

static void write_rules_row(const tables *t, FILE *out, const rules_row *row)
{
    fputs("    {", out);
    write_text(out, row->id);
    write_text(out, row->title);
    write_text(out, row->authority);
    write_citation(t, out, &row->cited);
    write_date(out, row->from);
    write_date(out, row->until);
    fprintf(out, "%s, ", row->at_limit == AT_LIMIT_PASSES ? "true" : "false");
    write_fraction(out, row->pressure_from.num, row->pressure_from.den);
    write_fraction(out, row->pressure_until.num, row->pressure_until.den);
    write_citation(t, out, &row->pressure);
    write_fraction(out, row->rated_share.num, row->rated_share.den);
    write_citation(t, out, &row->share);
    write_source_reference(t, out, row->major.source);
    write_limits_reference(t, out, row);
    write_air_reference(t, out, row);
    fputs("NULL, NULL},\n", out);
}

/* In the order of the parts, each of which is there once. */
static void write_vehicle(const tables *t, FILE *out)
{
    fputs("\nconst vehicle_figure rodti_table_vehicle[VEHICLE_PARTS] = {\n", out);
    for (size_t part = 0; part < VEHICLE_PARTS; part++) {
        size_t i = 0;
        while (t->vehicle[i].part != part)
            i++;
        const vehicle_row *row = &t->vehicle[i];
        fputs("    {", out);
        write_fraction(out, row->value.num, row->value.den);
        write_text(out, row->wording);
        write_citation(t, out, &row->cited);
        fputs("},\n", out);
    }
    fputs("};\n", out);
}

static void write_air_row(const tables *t, FILE *out, const air_row *air)
{
    const rodt_air_limit *row = &air->row;
    fprintf(out, "    {%d, %d, %d, %d, %s, %d, %d, ", (int)row->check, (int)row->kind, (int)row->vehicle,
            row->towed_units, row->towed_or_more ? "true" : "false", (int)row->comparison, (int)row->measure);
    write_fraction(out, row->value.num, row->value.den);
    write_fraction(out, row->upper.num, row->upper.den);
    write_fraction(out, row->per_towed_unit.num, row->per_towed_unit.den);
    fprintf(out, "%d, ", (int)row->span);
    write_fraction(out, row->start.num, row->start.den);
    write_fraction(out, row->stop.num, row->stop.den);
    write_fraction(out, row->start_kpa.num, row->start_kpa.den);
    write_fraction(out, row->stop_kpa.num, row->stop_kpa.den);
    fprintf(out, "%d, %d, %d, %d, ", row->applications, row->by_volume, row->half_cut_out, row->below_cut_out);
    write_date(out, row->built_from);
    write_date(out, row->built_until);
    write_text(out, row->published);
    write_text(out, row->setup);
    write_citation(t, out, &air->cited);
    fputs("},\n", out);
}

static void write_air(const tables *t, FILE *out)
{
    for (size_t r = 0; r < t->rules_count; r++) {
        if (!tables_has_air(t, t->rules[r].id))
            continue;
        fprintf(out, "\n/* %s */\nstatic const rodt_air_limit air_%zu[] = {\n", t->rules[r].id, r);
        for (size_t i = 0; i < t->air_count; i++) {
            if (strcmp(t->air[i].rules, t->rules[r].id) == 0)
                write_air_row(t, out, &t->air[i]);
        }
        fputs("};\n", out);
    }
}

static void write_multiple(const tables *t, FILE *out, volume_what what, const char *name)
{
    size_t i = 0;
    while (t->volumes[i].what != (unsigned)what)
        i++;
    fprintf(out, "const volume_multiple rodti_table_multiple_%s = {", name);
    write_fraction(out, t->volumes[i].row.volume.num, t->volumes[i].row.volume.den);
    write_source_reference(t, out, t->volumes[i].cited.source);
    fputs("};\n", out);
}

static void write_volumes(const tables *t, FILE *out)
{
    size_t count = 0;
    fputs("\nconst rodt_volume_row rodti_table_volumes[] = {\n", out);
    for (size_t i = 0; i < t->volume_count; i++) {
        const volume_line *line = &t->volumes[i];
        if (line->what != VOLUME_CHAMBER)
            continue;
        fputs("    {", out);
        write_text(out, line->row.size);
        write_fraction(out, line->row.stroke_from.num, line->row.stroke_from.den);
        write_fraction(out, line->row.stroke_until.num, line->row.stroke_until.den);
        write_fraction(out, line->row.volume.num, line->row.volume.den);
        write_source_reference(t, out, line->cited.source);
        fputs("},\n", out);
        count++;
    }
    fprintf(out, "};\nconst size_t rodti_table_volumes_count = %zu;\n", count);
    write_multiple(t, out, VOLUME_TRUCK, "truck");
    write_multiple(t, out, VOLUME_TRAILER, "trailer");
}

static void write_steps(const tables *t, FILE *out)
{
    fputs("\nconst step_use rodti_table_steps[] = {\n    {0, 0},\n", out);
    for (size_t i = 0; i < t->step_count; i++)
        fprintf(out, "    {%d, %u},\n", (int)t->steps[i].check, t->steps[i].when);
    fputs("};\n", out);
}

/* "build-up" as it is in the name of an enumerator. */
static void write_symbol(FILE *out, const char *word)
{
    for (; *word != '\0'; word++)
        fputc(*word == '-' ? '_' : *word >= 'a' && *word <= 'z' ? *word - 'a' + 'A' : *word, out);
}

void tables_write_sentences(const tables *t, FILE *out)
{
    fputs("/* SPDX-License-Identifier: Apache-2.0 */\n/* Written by tablec: to change a sentence, change the table. */"
          "\n", out);
    for (size_t i = 0; i < t->step_count; i++) {
        const char *word = rodt_step_name(t->steps[i].step);
        for (int part = 0; part < RODT_STEP_PART_END; part++) {
            const char *name = rodt_step_part_name((rodt_step_part)part);
            fputs("ENUMERATOR(RODT_MESSAGE_STEP_", out);
            write_symbol(out, word);
            fputc('_', out);
            write_symbol(out, name);
            fprintf(out, ", \"step.%s.%s\", ", word, name);
            write_string(out, t->steps[i].texts[part]);
            fputs("),\n", out);
        }
    }
}

void tables_write_texts(const tables *t, FILE *out)
{
    fputs("/* SPDX-License-Identifier: Apache-2.0 */\n/* Written by tablec: texts of the table of air checks. */\n",
          out);
    for (size_t i = 0; i < t->air_count; i++) {
        const char *const texts[] = {t->air[i].row.published, t->air[i].row.setup};
        for (size_t j = 0; j < COUNT_OF(texts); j++) {
            if (texts[j] == NULL || texts[j][0] == '\0')
                continue;
            write_string(out, texts[j]);
            fputs(",\n", out);
        }
    }
}

void tables_write(const tables *t, FILE *out)
{
    write_head(t, out);
    write_sources(t, out);
    write_chambers(t, out);
    write_limits(t, out);
    write_air(t, out);
    fputs("\nconst rodt_rules rodti_table_rules[] = {\n", out);
    for (size_t r = 0; r < t->rules_count; r++)
        write_rules_row(t, out, &t->rules[r]);
    fprintf(out, "};\nconst size_t rodti_table_rules_count = %zu;\n", t->rules_count);
    write_vehicle(t, out);
    write_volumes(t, out);
    write_steps(t, out);
}
