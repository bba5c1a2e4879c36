/* SPDX-License-Identifier: Apache-2.0 */
/* The sentences of a program: msgid is their English, and a table is sorted by it. */
#include <stdlib.h>
#include <string.h>

#include "catalogc/emit.h"
#include "catalogc/po.h"

void emit_string(FILE *out, const char *text)
{
    fputc('"', out);
    for (; *text != '\0'; text++) {
        if (*text == '\n')
            fputs("\\n", out);
        else
            fprintf(out, *text == '"' || *text == '\\' ? "\\%c" : "%c", *text);
    }
    fputc('"', out);
}

static int compare(const void *left, const void *right)
{
    const po_entry *a = left, *b = right;
    return strcmp(a->id, b->id);
}

static void write_entry(FILE *out, const po_entry *entry, size_t forms)
{
    fputs("    {", out);
    emit_string(out, entry->id);
    fputs(", {", out);
    for (size_t i = 0; i < forms; i++) {
        fputs(i > 0 ? ", " : "", out);
        emit_string(out, entry->texts[i]);
    }
    fputs("}},\n", out);
}

static size_t form_count(const po_file *po, const po_entry *entry)
{
    return entry->id_plural == NULL || po->plural == RODT_PLURAL_RULE_ALIKE ? 1 : 2;
}

static size_t write_sentences(FILE *out, const po_file *po, size_t number)
{
    size_t written = 0;
    qsort(po->entries, po->count, sizeof *po->entries, compare);
    fprintf(out, "\nstatic const ui_sentence sentences_%zu[] = {\n", number);
    for (size_t i = 0; i < po->count; i++) {
        size_t forms = form_count(po, &po->entries[i]);
        if (!po_is_translated(&po->entries[i], forms))
            continue;
        write_entry(out, &po->entries[i], forms);
        written++;
    }
    fputs("    {\"\\377\", {\"\"}},\n};\n", out); /* no table of C is empty */
    return written;
}

void po_write_program(FILE *out, po_file *files, size_t count)
{
    fputs("#include \"ui/language.h\"\n", out);
    size_t written[16] = {0};
    for (size_t i = 0; i < count && i < COUNT_OF(written); i++)
        written[i] = write_sentences(out, &files[i], i);
    fputs("\nconst ui_catalogue ui_catalogues[] = {\n", out);
    for (size_t i = 0; i < count && i < COUNT_OF(written); i++)
        fprintf(out, "    {\"%s\", sentences_%zu, %zu, %u},\n", files[i].language, i, written[i],
                (unsigned)files[i].plural);
    fprintf(out, "};\nconst size_t ui_catalogue_count = %zu;\n", count);
}
