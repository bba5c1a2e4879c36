/* SPDX-License-Identifier: Apache-2.0 */
/* Fuzz target: templates of any bytes in a catalogue, and messages that say anything. What the check of a catalogue
 * accepts can be written for every message of its code; nothing else is worse than a status. */
#include <stdlib.h>
#include <string.h>

#include <rodtravel/rodtravel.h>

#include "source.h"

#define TEMPLATE_MOST 512

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static const char *templates[RODT_MESSAGE_END];
static char replaced[TEMPLATE_MOST + 1];

/* The template of one code: the English one with some bytes changed, or any bytes. */
static void make_catalogue(source *from, int code, rodt_catalogue *out)
{
    static int last;
    const char *english = rodt_message_template((rodt_message_code)code);
    uint8_t choice = byte(from);
    size_t size = strlen(english);
    size = size > TEMPLATE_MOST ? TEMPLATE_MOST : size;
    memcpy(replaced, english, size);
    for (uint8_t changes = choice % 4; changes > 0 && size > 0; changes--)
        replaced[byte(from) % size] = (char)byte(from);
    if (choice >= 128)
        for (size = 0; size < TEMPLATE_MOST && from->left > 0; size++)
            replaced[size] = (char)byte(from);
    replaced[size] = '\0';
    templates[last] = NULL; /* the others are said in English */
    templates[code] = replaced;
    last = code;
    *out = (rodt_catalogue){.language = "xx", .templates = templates, .count = RODT_MESSAGE_END, .decimal_sign = ",",
                            .plural = RODT_PLURAL_RULE_ONE_OTHER};
    if (choice == 127) {
        out->plural = byte(from);
        out->count = byte(from);
        out->decimal_sign = "";
    }
}

static rodt_status write(const rodt_message *message, const rodt_catalogue *catalogue)
{
    size_t needed = 0;
    rodt_status status = rodt_message_format(message, catalogue, NULL, 0, &needed);
    if (status != RODT_E_SPACE)
        return status;
    demand(needed > 0);
    char *text = malloc(needed);
    demand(text != NULL);
    demand(needed == 1 || rodt_message_format(message, catalogue, text, needed - 1, NULL) == RODT_E_SPACE);
    demand(rodt_message_format(message, catalogue, text, needed, NULL) == RODT_OK && strlen(text) == needed - 1);
    free(text);
    return RODT_OK;
}

/* --- Messages of a finding --------------------------------------------------------------------------- */

static void make_finding(source *from, rodt_finding *out)
{
    static const char *const chambers[] = {"30", "24 LS", "bolt C", "??", "36", "20L", "18", ""};
    static const char *const lengths[] = {"2", "4 1/8", "31/8", "63.5 mm", "2-Jan", "", "41/8", "3.875"};
    static const char *const others[] = {"", "95", "80", "3", "2 1/2", "1/16", "1 mm", "x"};
    const rodt_form form = {.chamber = chambers[byte(from) % 8],  .released = lengths[byte(from) % 8],
                            .applied = lengths[byte(from) % 8],   .psi = others[byte(from) % 8],
                            .rated_stroke = others[byte(from) % 8], .division = others[byte(from) % 8],
                            .engine = byte(from) & 1 ? "on" : NULL, .drum = byte(from) & 1 ? "hot" : NULL};
    demand(rodt_form_judge_row(&form, rodt_rules_at(byte(from) % rodt_rules_count()), out, NULL) == RODT_OK);
}

static void say_finding(source *from)
{
    rodt_finding finding;
    rodt_message messages[RODT_REASON_END + 2];
    rodt_catalogue catalogue;
    size_t count = 0;
    make_finding(from, &finding);
    for (int i = 0; i < RODT_REASON_END; i++)
        count += rodt_finding_reason_message(&finding, (rodt_reason)i, &messages[count]) == RODT_OK;
    count += rodt_finding_message(&finding, &messages[count]) == RODT_OK;
    demand(count > 0);
    make_catalogue(from, (int)messages[byte(from) % count].code, &catalogue);
    rodt_error error = {0};
    rodt_status checked = rodt_catalogue_check(&catalogue, NULL, &error);
    demand((checked == RODT_OK) == (error.text[0] == '\0'));
    for (size_t i = 0; i < count; i++) {
        rodt_status status = write(&messages[i], &catalogue);
        demand(status == RODT_OK || status == RODT_E_ARGUMENT);
        demand(checked != RODT_OK || status == RODT_OK);
        demand(write(&messages[i], NULL) == RODT_OK);
    }
}

/* --- Messages of nothing ----------------------------------------------------------------------------- */

static int64_t number(source *from)
{
    uint64_t value = 0;
    uint8_t bytes = byte(from) % 9;
    for (; bytes > 0; bytes--)
        value = value << 8 | byte(from);
    return (int64_t)value;
}

static void say_anything(source *from)
{
    static const char *const names[] = {"limit", "stroke", "excess", "chamber", "from", "until", "day", "law", "units", ""};
    static const char *const words[] = {"30", "", "a text", "\xC3\xA9", "\xFF", "{", "}"};
    rodt_message message = {.code = (RODT_ENUM32(rodt_message_code))(byte(from) * 3u)};
    rodt_catalogue catalogue;
    message.count = byte(from) % (RODT_MESSAGE_ARGUMENTS + 3u);
    for (size_t i = 0; i < message.count && i < RODT_MESSAGE_ARGUMENTS; i++) {
        rodt_argument *argument = &message.arguments[i];
        *argument = (rodt_argument){.name = names[byte(from) % 10], .kind = byte(from) % 20u, .code = byte(from) * 2u,
                                    .number = {number(from), number(from)}, .digits = (int16_t)number(from)};
        argument->date = (rodt_date){(int16_t)number(from), (int8_t)byte(from), (int8_t)byte(from)};
        argument->text = words[byte(from) % 7];
    }
    make_catalogue(from, byte(from) * 2 % RODT_MESSAGE_END, &catalogue);
    rodt_status checked = rodt_catalogue_check(&catalogue, NULL, NULL);
    demand(checked == RODT_OK || checked == RODT_E_TABLE || checked == RODT_E_ARGUMENT);
    (void)write(&message, &catalogue);
    (void)write(&message, NULL);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    source from = {data, size};
    if (byte(&from) & 1)
        say_anything(&from);
    else
        say_finding(&from);
    return 0;
}
