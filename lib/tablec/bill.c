/* SPDX-License-Identifier: Apache-2.0 */
/* The bill of materials, in CycloneDX 1.6: what the library and the command are made of, and the published document
 * behind every figure. The same tables and versions always give the same bytes. */
#include <inttypes.h>
#include <string.h>

#include "tablec/steps.h"

typedef struct material {
    const char *name;
    const char *license;
    const char *scope; /* optional = not in every build; excluded = only used to build and to test */
} material;

static const material materials[] = {
    {"GNU MP", "LGPL-3.0-or-later OR GPL-2.0-or-later", "optional"},
    {"zlib", "Zlib", "optional"},
    {"zstd", "BSD-3-Clause", "optional"},
    {"libxlsxwriter", "BSD-2-Clause", "optional"},
    {"meson", "Apache-2.0", "excluded"},
    {"cmocka", "Apache-2.0", "excluded"},
    {"SWIG", "GPL-3.0-or-later", "excluded"},
    {"jansson", "MIT", "excluded"},
    {"Doxygen", "GPL-2.0-only", "excluded"}};
_Static_assert(COUNT_OF(materials) >= BILL_VERSIONS - 1, "the first of them have versions, after the library's own");

static void write_json_text(FILE *out, const char *text)
{
    fputc('"', out);
    for (; *text != '\0'; text++)
        fprintf(out, *text == '"' || *text == '\\' ? "\\%c" : "%c", *text);
    fputc('"', out);
}

static void write_pair(FILE *out, const char *key, const char *value)
{
    fprintf(out, ", \"%s\": ", key);
    write_json_text(out, value);
}

static void write_material(FILE *out, const material *made_of, const char *version)
{
    fprintf(out, "    {\"type\": \"%s\"", strcmp(made_of->scope, "excluded") == 0 ? "application" : "library");
    write_pair(out, "bom-ref", made_of->name);
    write_pair(out, "name", made_of->name);
    if (version != NULL)
        write_pair(out, "version", version);
    write_pair(out, "scope", made_of->scope);
    fprintf(out, ", \"licenses\": [{\"expression\": \"%s\"}]},\n", made_of->license);
}

/* NULL if the material is not in this build, or if its version makes no difference. */
static const char *version_of(const tables *t, size_t made_of)
{
    const char *version = made_of + 1 < BILL_VERSIONS ? t->versions[made_of + 1] : NULL;
    return version == NULL || strcmp(version, "none") == 0 ? NULL : version;
}

static void write_table(const tables *t, FILE *out, int file)
{
    const char *name = tables_file_name(t, file);
    fprintf(out, "    {\"type\": \"data\", \"bom-ref\": \"table %s\", \"name\": \"tables/%s\"},\n", name, name);
}

static void write_property(FILE *out, bool first, const char *name)
{
    fprintf(out, "%s\n      {\"name\": \"rodtravel:%s\", \"value\": ", first ? "" : ",", name);
}

/* How many figures of each table rest on the document, and how each was checked. */
static void write_figures(const tables *t, FILE *out, const source_row *row)
{
    for (int file = 0; file < FILE_COUNT; file++) {
        for (unsigned evidence = RODT_EVIDENCE_CHECKED; evidence < RODT_EVIDENCE_END; evidence++) {
            if (row->cited[file][evidence] == 0)
                continue;
            write_property(out, false, "figures");
            fprintf(out, "\"%s, %" PRIu32 " %s\"}", tables_file_name(t, file), row->cited[file][evidence],
                    rodt_evidence_name((rodt_evidence)evidence));
        }
    }
}

static void write_document(const tables *t, FILE *out, const source_row *row)
{
    const rodt_source *source = &row->source;
    fprintf(out, "    {\"type\": \"data\", \"bom-ref\": \"source %s\"", source->id);
    write_pair(out, "name", source->document);
    write_pair(out, "version", source->edition);
    write_pair(out, "publisher", source->body);
    if (source->address[0] != '\0') {
        fputs(",\n      \"externalReferences\": [{\"type\": \"documentation\", \"url\": ", out);
        write_json_text(out, source->address);
        fputs("}]", out);
    }
    fputs(",\n      \"properties\": [", out);
    write_property(out, true, "section");
    write_json_text(out, source->section);
    fputc('}', out);
    if (rodt_date_given(row->read_on)) {
        write_property(out, false, "read_on");
        fprintf(out, "\"%04d-%02d-%02d\"}", row->read_on.year, row->read_on.month, row->read_on.day);
    }
    write_figures(t, out, row);
    fputs("]}", out);
}

static bool rests_on(const source_row *row, int file)
{
    uint32_t cited = 0;
    for (unsigned evidence = 0; evidence < RODT_EVIDENCE_END; evidence++)
        cited += row->cited[file][evidence];
    return cited != 0;
}

static void write_dependencies(const tables *t, FILE *out)
{
    fputs("  \"dependencies\": [\n    {\"ref\": \"rodtravel\", \"dependsOn\": [", out);
    for (size_t i = 0; i < COUNT_OF(materials); i++) {
        if (version_of(t, i) != NULL)
            fprintf(out, "\"%s\", ", materials[i].name);
    }
    for (int file = FILE_CHAMBERS; file < FILE_COUNT; file++)
        fprintf(out, "%s\"table %s\"", file == FILE_CHAMBERS ? "" : ", ", tables_file_name(t, file));
    fputs("]}", out);
    for (int file = FILE_CHAMBERS; file < FILE_COUNT; file++) {
        const char *separator = "";
        fprintf(out, ",\n    {\"ref\": \"table %s\", \"dependsOn\": [", tables_file_name(t, file));
        for (size_t i = 0; i < t->source_count; i++) {
            if (!rests_on(&t->sources[i], file))
                continue;
            fprintf(out, "%s\"source %s\"", separator, t->sources[i].source.id);
            separator = ", ";
        }
        fputs("]}", out);
    }
    fputs("\n  ]\n", out);
}

void tables_write_bill(const tables *t, FILE *out)
{
    fprintf(out, "{\n  \"bomFormat\": \"CycloneDX\",\n  \"specVersion\": \"1.6\",\n  \"version\": 1,\n"
                 "  \"metadata\": {\"component\": {\"type\": \"library\", \"bom-ref\": \"rodtravel\",\n"
                 "    \"name\": \"rodtravel\", \"version\": \"%s\",\n"
                 "    \"licenses\": [{\"expression\": \"Apache-2.0\"}]}},\n"
                 "  \"components\": [\n",
            t->versions[0]);
    for (size_t i = 0; i < COUNT_OF(materials); i++) {
        if (version_of(t, i) != NULL || strcmp(materials[i].scope, "excluded") == 0)
            write_material(out, &materials[i], version_of(t, i));
    }
    for (int file = FILE_CHAMBERS; file < FILE_COUNT; file++)
        write_table(t, out, file);
    for (size_t i = 0; i < t->source_count; i++) {
        write_document(t, out, &t->sources[i]);
        fputs(i + 1 < t->source_count ? ",\n" : "\n  ],\n", out);
    }
    write_dependencies(t, out);
    fputs("}\n", out);
}
