/* SPDX-License-Identifier: Apache-2.0 */
/* The sentences of the library: msgctxt is the stable word of a message, msgid its English template. */
#include <string.h>

#include "catalogc/emit.h"
#include "catalogc/po.h"
#include "message/words.h"

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

void po_check_library(po_file *po)
{
    const char *templates[RODT_MESSAGE_END] = {NULL};
    rodt_error error;
    for (size_t i = 0; i < po->count; i++) {
        if (usable_code(&po->entries[i]) == RODT_MESSAGE_NONE)
            po_fault(po, po->entries[i].line, "not translated, fuzzy, no sentence, or not its English of today: ",
                     po->entries[i].context != NULL ? po->entries[i].context : "(no msgctxt)");
    }
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

void po_write_library(FILE *out, po_file *files, size_t count)
{
    fputs("#include \"message/catalogues.h\"\n", out);
    for (size_t i = 0; i < count; i++)
        write_templates(out, &files[i], i);
    fputs("\nconst rodt_catalogue rodti_catalogues[] = {\n", out);
    for (size_t i = 0; i < count; i++)
        fprintf(out, "    {\"%s\", templates_%zu, RODT_MESSAGE_END, \"%s\", %u, 0},\n", files[i].language, i,
                files[i].decimal_sign, (unsigned)files[i].plural);
    fprintf(out, "};\nconst size_t rodti_catalogue_count = %zu;\n", count);
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
        fputs("\nmsgctxt ", out);
        emit_string(out, row->word);
        fputs("\nmsgid ", out);
        emit_string(out, row->text);
        fputs("\nmsgstr \"\"\n", out);
    }
}
