/* SPDX-License-Identifier: Apache-2.0 */
/* The table compiler's last step for the tables of air checks and of volumes. */
#include <string.h>

#include "tablec/model.h"

/* Enumerations are written as numbers: their names say nothing to a compiler. */
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
    fprintf(out, "%d, %s, %s, %s, ", row->applications, row->by_volume ? "true" : "false",
            row->half_cut_out ? "true" : "false", row->below_cut_out ? "true" : "false");
    write_date(out, row->built_from);
    write_date(out, row->built_until);
    write_text(out, row->published);
    write_text(out, row->setup);
    write_source_reference(t, out, air->source);
    fprintf(out, "%d},\n", (int)row->evidence);
}

void tables_write_air(const tables *t, FILE *out)
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
    fprintf(out, "const volume_multiple table_multiple_%s = {", name);
    write_fraction(out, t->volumes[i].row.volume.num, t->volumes[i].row.volume.den);
    write_source_reference(t, out, t->volumes[i].source);
    fputs("};\n", out);
}

void tables_write_volumes(const tables *t, FILE *out)
{
    size_t count = 0;
    fputs("\nconst rodt_volume_row table_volumes[] = {\n", out);
    for (size_t i = 0; i < t->volume_count; i++) {
        const volume_line *line = &t->volumes[i];
        if (line->what != VOLUME_CHAMBER)
            continue;
        fputs("    {", out);
        write_text(out, line->row.size);
        write_fraction(out, line->row.stroke_from.num, line->row.stroke_from.den);
        write_fraction(out, line->row.stroke_until.num, line->row.stroke_until.den);
        write_fraction(out, line->row.volume.num, line->row.volume.den);
        write_source_reference(t, out, line->source);
        fputs("},\n", out);
        count++;
    }
    fprintf(out, "};\nconst size_t table_volumes_count = %zu;\n", count);
    write_multiple(t, out, VOLUME_TRUCK, "truck");
    write_multiple(t, out, VOLUME_TRAILER, "trailer");
}
