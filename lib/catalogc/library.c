/* SPDX-License-Identifier: Apache-2.0 */
/* The sentences of the library: msgctxt is the stable word of a message, msgid its English template. Texts of the
 * tables have the context "table". */
#include <stdlib.h>
#include <string.h>

#include "catalogc/emit.h"
#include "catalogc/po.h"
#include "message/words.h"

/* The texts of the tables: of the context "table", msgid is the text itself. Some are of several rows. */
static const char *const table_texts[] = {
#include "table_texts.h"
};

static bool is_of_tables(const po_entry *entry)
{
    return entry->context != NULL && strcmp(entry->context, "table") == 0;
}

static bool is_table_text(const char *text)
{
    for (size_t i = 0; text != NULL && i < COUNT_OF(table_texts); i++) {
        if (strcmp(table_texts[i], text) == 0)
            return true;
    }
    return false;
}

/* The code of a sentence that can be used; RODT_MESSAGE_NONE: it is said in English. */
static rodt_message_code usable_code(const po_entry *entry)
{
    RODT_ENUM32(rodt_message_code) code = RODT_MESSAGE_NONE;
    const char *word = entry->context != NULL ? entry->context : "";
    bool usable = po_is_translated(entry, 1) && rodt_message_code_find(word, &code) == RODT_OK &&
                  strcmp(rodt_message_template((rodt_message_code)code), entry->id) == 0;
    return usable ? (rodt_message_code)code : RODT_MESSAGE_NONE;
}

static void fill(const po_file *po, const char *templates[RODT_MESSAGE_END])
{
    for (size_t i = 0; i < po->count; i++)
        templates[usable_code(&po->entries[i])] = po->entries[i].texts[0];
    templates[RODT_MESSAGE_NONE] = NULL;
}

static rodt_catalogue catalogue_of(const po_file *po, const char *const *templates)
{
    return (rodt_catalogue){.language = po->language,
                            .templates = templates,
                            .count = RODT_MESSAGE_END,
                            .decimal_sign = po->decimal_sign,
                            .plural = po->plural};
}

static void check_table_texts(po_file *po)
{
    for (size_t i = 0; i < COUNT_OF(table_texts); i++) {
        bool found = false;
        for (size_t j = 0; !found && j < po->count; j++)
            found = is_of_tables(&po->entries[j]) && strcmp(po->entries[j].id, table_texts[i]) == 0;
        if (!found)
            po_fault(po, 0, "there is no translation of a text of the tables: ", table_texts[i]);
    }
}

static bool is_usable(const po_entry *entry)
{
    if (is_of_tables(entry))
        return po_is_translated(entry, 1) && is_table_text(entry->id);
    return usable_code(entry) != RODT_MESSAGE_NONE;
}

void po_check_library(po_file *po)
{
    const char *templates[RODT_MESSAGE_END] = {NULL};
    rodt_error error;
    for (size_t i = 0; i < po->count; i++) {
        if (!is_usable(&po->entries[i]))
            po_fault(po, po->entries[i].line, "not translated, fuzzy, no sentence, or not its English of today: ",
                     is_of_tables(&po->entries[i])       ? po->entries[i].id
                     : po->entries[i].context != NULL ? po->entries[i].context
                                                      : "(no msgctxt)");
    }
    check_table_texts(po);
    fill(po, templates);
    for (int code = RODT_MESSAGE_NONE + 1; code < RODT_MESSAGE_END; code++) {
        if (rodt_message_code_name((rodt_message_code)code)[0] != '\0' && templates[code] == NULL)
            po_fault(po, 0, "there is no translation of ", rodt_message_code_name((rodt_message_code)code));
    }
    rodt_catalogue catalogue = catalogue_of(po, templates);
    size_t missing;
    if (rodt_catalogue_check(&catalogue, &missing, &error) != RODT_OK)
        po_fault(po, 0, error.text, "");
}

/* A template with a fault in it does not become C. */
static void write_templates(FILE *out, po_file *po, size_t number)
{
    const char *templates[RODT_MESSAGE_END] = {NULL};
    rodt_error error;
    size_t missing;
    fill(po, templates);
    rodt_catalogue catalogue = catalogue_of(po, templates);
    if (rodt_catalogue_check(&catalogue, &missing, &error) != RODT_OK)
        po_fault(po, 0, error.text, "");
    fprintf(out, "\nstatic const char *const templates_%zu[RODT_MESSAGE_END] = {\n", number);
    for (int code = 0; code < RODT_MESSAGE_END; code++) {
        if (templates[code] == NULL)
            continue;
        fprintf(out, "    [%d] = ", code);
        emit_string(out, templates[code]);
        fputs(",\n", out);
    }
    fputs("};\n", out);
}

static int compare_texts(const void *left, const void *right)
{
    const po_entry *a = left, *b = right;
    return strcmp(a->id, b->id);
}

/* Sorted by their English. Returns how many there are. */
static size_t write_texts(FILE *out, const po_file *po, size_t number)
{
    size_t count = 0;
    qsort(po->entries, po->count, sizeof *po->entries, compare_texts);
    fprintf(out, "\nstatic const rodt_table_text texts_%zu[] = {\n", number);
    for (size_t i = 0; i < po->count; i++) {
        if (!is_of_tables(&po->entries[i]) || !is_usable(&po->entries[i]))
            continue;
        fputs("    {", out);
        emit_string(out, po->entries[i].id);
        fputs(", ", out);
        emit_string(out, po->entries[i].texts[0]);
        fputs("},\n", out);
        count++;
    }
    fputs("    {NULL, NULL},\n};\n", out); /* no table of C is empty */
    return count;
}

void po_write_library(FILE *out, po_file *files, size_t count)
{
    fputs("#include \"message/catalogues.h\"\n", out);
    size_t texts[LANGUAGES] = {0};
    for (size_t i = 0; i < count; i++) {
        write_templates(out, &files[i], i);
        texts[i] = write_texts(out, &files[i], i);
    }
    fputs("\nconst rodt_catalogue rodti_catalogues[] = {\n", out);
    for (size_t i = 0; i < count; i++)
        fprintf(out, "    {\"%s\", templates_%zu, RODT_MESSAGE_END, texts_%zu, %zu, \"%s\", %u, 0},\n",
                files[i].language, i, i, texts[i], files[i].decimal_sign, (unsigned)files[i].plural);
    fprintf(out, "};\nconst size_t rodti_catalogue_count = %zu;\n", count);
}

static void write_start_of(FILE *out, const char *context, const char *english)
{
    fputs("\nmsgctxt ", out);
    emit_string(out, context);
    fputs("\nmsgid ", out);
    emit_string(out, english);
    fputs("\nmsgstr \"\"\n", out);
}

void po_write_start(FILE *out)
{
    fputs("msgid \"\"\nmsgstr \"\"\n\"Language: \\n\"\n\"MIME-Version: 1.0\\n\"\n"
          "\"Content-Type: text/plain; charset=UTF-8\\n\"\n\"Content-Transfer-Encoding: 8bit\\n\"\n"
          "\"Plural-Forms: nplurals=2; plural=(n != 1);\\n\"\n\"X-Decimal-Sign: .\\n\"\n", out);
    for (size_t i = 0; i < rodt_enumerator_count(&rodti_words_message_code); i++) {
        const rodt_enumerator *row = rodt_enumerator_at(&rodti_words_message_code, i);
        if (row->number == RODT_MESSAGE_NONE)
            continue;
        write_start_of(out, row->word, row->text);
    }
    for (size_t i = 0; i < COUNT_OF(table_texts); i++) {
        size_t before = 0;
        while (strcmp(table_texts[before], table_texts[i]) != 0)
            before++;
        if (before == i)
            write_start_of(out, "table", table_texts[i]);
    }
}
