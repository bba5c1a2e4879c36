/* SPDX-License-Identifier: Apache-2.0 */
/* Is a catalogue complete? The English one says which arguments a sentence has. */
#include "message/message.h"

#include "core/always.h"
#include "core/text.h"
#include "message/words.h"

#include <string.h>

/* True if a part of the template is the argument `wanted`. */
static bool names(const char *at, const template_part *wanted)
{
    for (;;) {
        template_part part = rodti_template_next(&at);
        /* English is whole, and a translation was checked part by part before it is searched. */
        if (part.kind == TEMPLATE_END || NEVER(part.kind == TEMPLATE_BROKEN))
            return false;
        if (part.kind != TEMPLATE_TEXT && part.size == wanted->size &&
            memcmp(part.text, wanted->text, part.size) == 0)
            return true;
    }
}

static size_t count_forms(const template_part *part)
{
    size_t count = 0, size;
    while (rodti_template_form(part, count, &size) != NULL)
        count++;
    return count;
}

/* A place in a catalogue, for the error. */
typedef struct catalogue_place {
    const rodt_catalogue *catalogue;
    rodt_message_code code;
    rodt_error *error;
} catalogue_place;

static bool refuse(const catalogue_place *place, size_t column, const char *what, const template_part *part)
{
    int size = part != NULL ? (int)(part->size > 40 ? 40 : part->size) : 0;
    rodti_text_error(place->error, RODT_E_TABLE, (uint32_t)column, "%s: %s%.*s",
                     rodt_message_code_name(place->code), what, size, part != NULL ? part->text : "");
    return false;
}

static bool check_part(const catalogue_place *place, const template_part *part, size_t column)
{
    if (part->kind == TEMPLATE_BROKEN)
        return refuse(place, column, "a brace is not closed, not opened, or has no name in it", NULL);
    if (part->kind == TEMPLATE_TEXT)
        return true;
    if (!names(rodt_message_template(place->code), part))
        return refuse(place, column, "it has no argument of the name ", part);
    if (part->kind == TEMPLATE_PLURAL && count_forms(part) != rodti_plural_forms(place->catalogue->plural))
        return refuse(place, column, "another number of plural forms than the rule has, for ", part);
    return true;
}

static size_t count_characters(const char *start, const char *end)
{
    size_t count = 0;
    for (; start < end; start++)
        count += ((unsigned char)*start & 0xC0) != 0x80;
    return count;
}

/* Every part of the one is known to English, and every argument of English is somewhere in the one. */
static bool check_template(const catalogue_place *place, const char *template)
{
    const char *at = template;
    for (;;) {
        size_t column = count_characters(template, at) + 1;
        template_part part = rodti_template_next(&at);
        if (part.kind == TEMPLATE_END)
            break;
        if (!check_part(place, &part, column))
            return false;
    }
    at = rodt_message_template(place->code);
    for (template_part part = rodti_template_next(&at); part.kind != TEMPLATE_END; part = rodti_template_next(&at)) {
        if (part.kind != TEMPLATE_TEXT && !names(template, &part))
            return refuse(place, 0, "it leaves out the argument ", &part);
    }
    return true;
}

static bool is_catalogue(const rodt_catalogue *catalogue)
{
    return catalogue != NULL && catalogue->templates != NULL && catalogue->language != NULL &&
           catalogue->decimal_sign != NULL && rodti_plural_forms(catalogue->plural) > 0 && catalogue->reserved == 0;
}

/* A search needs them sorted, and each once. */
static bool check_texts(const rodt_catalogue *catalogue, rodt_error *error)
{
    for (size_t i = 0; catalogue->texts != NULL && i < catalogue->text_count; i++) {
        const rodt_table_text *text = &catalogue->texts[i];
        bool whole = text->english != NULL && text->said != NULL;
        if (!whole || (i > 0 && strcmp(text[-1].english, text->english) >= 0)) {
            rodti_text_error(error, RODT_E_TABLE, 0, "text %u of the tables %s", (unsigned)i,
                             whole ? "is not sorted by its English, or there twice" : "is not said");
            return false;
        }
    }
    return true;
}

rodt_status rodt_catalogue_check(const rodt_catalogue *catalogue, size_t *missing, rodt_error *error)
{
    size_t absent = 0;
    if (!is_catalogue(catalogue))
        return rodti_text_error(error, RODT_E_ARGUMENT, 0,
                                "a catalogue needs a language, templates, a decimal sign and a plural rule");
    for (size_t i = 0; i < rodt_enumerator_count(&rodti_words_message_code); i++) {
        rodt_message_code code = (rodt_message_code)rodt_enumerator_at(&rodti_words_message_code, i)->number;
        const catalogue_place place = {catalogue, code, error};
        const char *template = (size_t)code < catalogue->count ? catalogue->templates[code] : NULL;
        if (code == RODT_MESSAGE_NONE)
            continue;
        absent += template == NULL;
        if (template == NULL && missing == NULL)
            refuse(&place, 0, "there is no template", NULL);
        if (template == NULL ? missing == NULL : !check_template(&place, template))
            return RODT_E_TABLE;
    }
    if (!check_texts(catalogue, error))
        return RODT_E_TABLE;
    if (missing != NULL)
        *missing = absent;
    return RODT_OK;
}
