/* SPDX-License-Identifier: Apache-2.0 */
/* Fuzz target: the texts of an air check, judged by a law and by a carrier's own figures on top of it. What is read can
 * be judged and said, and the carrier's figures never make a result more favourable. */
#include <stdlib.h>
#include <string.h>

#include <rodtravel/rodtravel.h>

#include "source.h"

#define TEXT_MOST 48

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static char texts[16][TEXT_MOST];
static size_t used;

/* Written as people write it, with a byte of another kind now and then; or any bytes. */
static const char *make_text(source *from)
{
    static const char *const written[] = {
        "warning", "build-up", "cut-out",  "cut-in",   "loss-released", "loss-applied", "reserve", "spring-brake",
        "drain",   "60",       "95 psi",   "655 kPa",  "100",           "3 psi",        "2:05",    "1 min 30 s",
        "45",      "31,5 s",   "1998",     "1975-03-01", "03/04/1975",  "single",       "combination", "bus",
        "2",       "5",        "yes",      "no",       "recovery",      "applications", "6000",    "oui"};
    uint8_t choice = byte(from);
    char *text = texts[used++];
    if (choice < 48)
        return NULL;
    size_t size = choice % 4 == 0 ? byte(from) % (TEXT_MOST - 1u) : 0;
    for (size_t i = 0; i < size; i++)
        text[i] = (char)byte(from);
    text[size] = '\0';
    if (choice % 4 != 0)
        strcpy(text, written[byte(from) % (sizeof written / sizeof written[0])]);
    if (choice >= 224 && text[0] != '\0')
        text[byte(from) % strlen(text)] = (char)byte(from);
    return text;
}

static void make_form(source *from, rodt_air_form *form)
{
    uint8_t choice = byte(from);
    const char **const members[] = {&form->vehicle,  &form->towed_units,   &form->built,           &form->pressure,
                                    &form->before,   &form->after,         &form->cut_out,         &form->seconds,
                                    &form->span,     &form->applications,  &form->actual_volume,   &form->required_volume,
                                    &form->answer};
    used = 0;
    *form = (rodt_air_form){.style = {.pressure_unit = choice / 8 % 2, .decimal_comma = (choice & 1) != 0},
                            .date_order = choice / 2 % RODT_DATE_ORDER_END};
    form->check = choice >= 32 ? rodt_air_check_name(1 + choice % (RODT_AIR_CHECK_END - 1u)) : make_text(from);
    for (size_t i = 0; i < sizeof members / sizeof members[0]; i++)
        *members[i] = make_text(from);
}

/* A carrier's rows: figures of the input under the headings of the table. */
static rodt_rules *load_own(source *from, const rodt_rules *law)
{
    static const char *const rows[] = {"warning,any,,,,not-less-than,%,psi,,", "warning,any,,1998-01-01,,not-less-than,%,psi,,",
                                       "loss-released,single,,,,not-more-than,%,psi-per-minute,,",
                                       "loss-applied,combination,1+,,,less-than,%,psi-per-minute,,",
                                       "cut-in,any,,,,not-less-than,%,psi,,", "cut-out,any,,,,not-more-than,1%,psi,,",
                                       "build-up,any,,,,not-more-than,%,seconds,85 psi,100 psi",
                                       "tractor-protection,combination,,,,not-less-than,%,psi,,"};
    static const char head[] = "check,vehicle,towed,built_from,built_until,comparison,value,measure,start,stop\n";
    char table[1024];
    rodt_rules *own = NULL;
    size_t length = sizeof head - 1;
    memcpy(table, head, length);
    for (uint8_t count = byte(from) % 3; count > 0; count--) {
        const char *row = rows[byte(from) % 8];
        uint8_t figure = byte(from);
        for (; *row != '\0'; row++) {
            if (*row != '%') {
                table[length++] = *row;
                continue;
            }
            table[length++] = (char)('0' + figure / 10 % 10);
            table[length++] = (char)('0' + figure % 10);
        }
        table[length++] = '\n';
    }
    rodt_status status = rodt_rules_load_with_air(law, law, "own", table, length, &own, NULL);
    demand((status == RODT_OK) == (own != NULL));
    return own;
}

static void say(const rodt_air_finding *finding)
{
    char text[RODT_SENTENCE_SIZE];
    rodt_message message;
    demand(rodt_air_finding_format(finding, text, sizeof text, NULL) == RODT_OK);
    demand(rodt_air_finding_edge_format(finding, text, sizeof text, NULL) == RODT_OK);
    demand(rodt_air_finding_message(finding, &message) == RODT_OK);
    demand(message.count <= RODT_MESSAGE_ARGUMENTS);
}

static void compare(const rodt_air_form *form, const rodt_air_finding *law, const rodt_rules *own)
{
    rodt_air_finding finding;
    rodt_status status = rodt_air_form_judge(form, own, &finding, NULL);
    demand(status == RODT_OK || status == RODT_E_RANGE);
    if (status != RODT_OK)
        return;
    say(&finding);
    demand(finding.law_result == law->result);
    if (law->result == RODT_AIR_RESULT_DEFECTIVE)
        demand(finding.result == RODT_AIR_RESULT_DEFECTIVE);
    if (law->result == RODT_AIR_RESULT_UNDETERMINED && law->row != NULL)
        demand(finding.result != RODT_AIR_RESULT_GOOD);
}

/* No error, if and only if the form can be read; the first one is that of the reader. */
static void check_errors(const rodt_air_form *form, rodt_status status, const rodt_error *error)
{
    rodt_error errors[24];
    size_t count = 99, again;
    demand(rodt_air_form_errors(form, errors, sizeof errors / sizeof errors[0], &count) == RODT_OK);
    demand((count > 0) == (status != RODT_OK));
    demand(count == 0 || strcmp(errors[0].text, error->text) == 0);
    demand(count == 0 || (rodt_air_form_errors(form, errors, count - 1, &again) == RODT_E_SPACE && again == count));
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    source from = {data, size};
    rodt_air_form form;
    rodt_air_reading reading, untouched;
    rodt_air_finding finding;
    rodt_error error = {0};
    const rodt_rules *law = rodt_rules_at(byte(&from) % rodt_rules_count());
    rodt_rules *own = load_own(&from, law);
    make_form(&from, &form);
    memset(&reading, 0x5A, sizeof reading);
    untouched = reading;
    rodt_status status = rodt_air_form_parse(&form, &reading, &error);
    check_errors(&form, status, &error);
    if (status == RODT_OK) {
        demand(rodt_air_reading_check(&reading, NULL) == RODT_OK);
        rodt_status judged = rodt_air_form_judge(&form, law, &finding, NULL);
        demand(judged == RODT_OK || judged == RODT_E_RANGE);
        if (judged == RODT_OK)
            say(&finding);
        if (judged == RODT_OK && own != NULL)
            compare(&form, &finding, own);
    } else {
        demand(error.status == status && error.text[0] != '\0' && memchr(error.text, '\0', sizeof error.text) != NULL);
        demand(memcmp(&reading, &untouched, sizeof reading) == 0);
    }
    rodt_rules_unref(own);
    return 0;
}
