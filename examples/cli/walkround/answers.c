/* SPDX-License-Identifier: Apache-2.0 */
/* Reads an answer by the readers of the library, and says what was understood. What is kept is the text itself. */
#include "walkround/walkround.h"
#include "input/air_words.h"
#include "input/numbers.h"
#include "ui/compiler.h"
#include "ui/format.h"
#include "ui/language.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

static rodt_status set_error(rodt_error *error, uint32_t column, const char *format, ...) PRINTF_LIKE(3, 4);
static rodt_status set_error(rodt_error *error, uint32_t column, const char *format, ...)
{
    va_list arguments;
    *error = (rodt_error){.status = RODT_E_SYNTAX, .column = column};
    va_start(arguments, format);
    vsnprintf(error->text, sizeof error->text, format, arguments);
    va_end(arguments);
    return RODT_E_SYNTAX;
}

static char lower(char byte) { return byte >= 'A' && byte <= 'Z' ? (char)(byte + ('a' - 'A')) : byte; }

static rodt_unit bare_unit(const inspection_record *record)
{
    RODT_ENUM32(rodt_unit) unit;
    (void)record_length_unit(record, &unit);
    return unit;
}

static bool is_measured(const walk_item *item) { return item->id == ASK_END_RELEASED || item->id == ASK_END_APPLIED; }

/* A text that the record would refuse is refused here. */
static rodt_status check_field(const inspection_record *record, const walk_item *item, const char *text,
                               rodt_error *error)
{
    const walk_question *question = &walk_questions[item->id];
    bool end = question->location == WALK_END || question->location == WALK_ALL_ENDS;
    rodt_form alone = {.style = {.unit = bare_unit(record)}};
    rodt_reading reading;
    if (!end || question->words != NULL)
        return RODT_OK;
    rodt_form_set(&alone, record_end_keys[question->key].field, text);
    rodt_status status = rodt_form_parse(&alone, &reading, error);
    return status != RODT_OK || error->status == RODT_E_EMPTY ? status : error->status;
}

/* --- One reader for each kind. Each gives *value the text or number for the record. -------------------- */

static rodt_status read_word(const walk_word *words, const char *text, record_value *value, char said[WALK_SAID_SIZE],
                             rodt_error *error)
{
    char list[160] = "";
    const walk_word *found = walk_find_word(words, text);
    if (found != NULL) {
        value->text = found->meaning;
        snprintf(said, WALK_SAID_SIZE, "%s", walk_say_answer(words, found->meaning));
        return RODT_OK;
    }
    for (size_t i = 0; words[i].spellings != NULL; i++) {
        size_t used = strlen(list);
        snprintf(list + used, sizeof list - used, "%s%s", used > 0 ? ", " : "", say(words[i].spellings));
    }
    const bool yes = strcmp(words[0].meaning, "yes") == 0;
    if (yes && (is_listed(WORDS_NO, text) || is_listed(WORDS_NEVER, text)))
        return set_error(error, 1, words[1].spellings != NULL
                                       ? say("n says that it did not happen; skip, that it was not done")
                                       : say("yes is expected once it is done; quit stops here"));
    return set_error(error, 1, say("one of these is expected: %s"), list);
}

static rodt_status read_class(const walk_word *words, const char *text, record_value *value, char said[WALK_SAID_SIZE],
                              rodt_error *error)
{
    RODT_ENUM32(rodt_stroke_class) class;
    if (read_word(words, text, value, said, error) == RODT_OK)
        return RODT_OK;
    if (rodt_stroke_class_parse_n(text, strlen(text), &class, NULL) != RODT_OK)
        return set_error(error, 1, say("s, l or u is expected, or what was seen: square, trapezoid"));
    value->text = rodt_stroke_class_name(class);
    snprintf(said, WALK_SAID_SIZE, "%s", walk_say_answer(words, value->text));
    return RODT_OK;
}

static rodt_status read_towed(const char *text, record_value *value, char said[WALK_SAID_SIZE], rodt_error *error)
{
    const int most = record_head_keys[HEAD_TOWED].most;
    rodt_ratio count;
    if (!read_ratio(text, false, &count) || count.den != 1 || count.num < 1 || count.num > most)
        return set_error(error, 1, say("a whole number from 1 to %d is expected"), most);
    value->number = (int)count.num;
    snprintf(said, WALK_SAID_SIZE, say_number("%d towed unit", "%d towed units", (unsigned long)count.num),
             value->number);
    return RODT_OK;
}

/* "3 2" or "3+2", with d in front of the axles of a dolly; a single number leaves the units open. */
static bool read_units(const char *text, walk_units *out)
{
    out->count = 0;
    while (*(text += strspn(text, " \t+,")) != '\0') {
        size_t at = out->count;
        if (at == RECORD_UNITS_MAX)
            return false;
        bool dolly = at > 0 && lower(*text) == 'd';
        text += dolly;
        size_t digits = strspn(text, "0123456789");
        if (digits == 0 || digits > 2)
            return false;
        out->units[at].dolly = dolly;
        out->units[at].axles = text[0] - '0';
        if (digits == 2)
            out->units[at].axles = out->units[at].axles * 10 + text[1] - '0';
        if (out->units[at].axles == 0)
            return false;
        out->count++;
        text += digits;
    }
    return out->count > 0;
}

static rodt_status read_axles(const inspection_record *record, const char *text, walk_units *units,
                              record_value *value, char said[WALK_SAID_SIZE], rodt_error *error)
{
    const char *vehicle = record->head[HEAD_VEHICLE].text;
    bool combination = vehicle == NULL || strcmp(vehicle, "combination") == 0;
    bool read = read_units(text, units);
    if (!read && combination)
        return set_error(error, 1, say("a whole number is expected, or one for each unit: 3 2"));
    for (size_t i = 0; i < units->count; i++)
        value->number += units->units[i].axles;
    if (!read || value->number > RODT_AXLES_MAX || (units->count > 1 && !combination))
        return set_error(error, 1, say("a whole number from 1 to %d is expected"), RODT_AXLES_MAX);
    size_t used = (size_t)snprintf(said, WALK_SAID_SIZE,
                                   say_number("%d axle", "%d axles", (unsigned long)value->number), value->number);
    for (size_t i = 0; units->count > 1 && i < units->count && used < WALK_SAID_SIZE; i++)
        used += (size_t)snprintf(said + used, WALK_SAID_SIZE - used, "%s%s %d", i == 0 ? say(": ") : ", ",
                                 say(i == 0 ? UNIT_TRACTOR : units->units[i].dolly ? UNIT_DOLLY : UNIT_TRAILER),
                                 units->units[i].axles);
    return RODT_OK;
}

static rodt_status set_axles(walk *of, inspection_record *record, const char *text, char said[WALK_SAID_SIZE],
                             rodt_error *error)
{
    walk_units units;
    record_value value = {NULL, 0};
    rodt_status status = read_axles(record, text, &units, &value, said, error);
    if (status != RODT_OK)
        return status;
    if (units.count > 1)
        walk_set_units(record, &units);
    else
        record->unit_count = 0;
    return walk_set_axles(of, record, value.number) ? RODT_OK : RODT_E_MEMORY;
}

static rodt_status set_plates(walk *of, inspection_record *record, const char *text, char said[WALK_SAID_SIZE],
                              rodt_error *error)
{
    if (!walk_set_plates(of, record, text))
        return set_error(error, 1, say("there are more plates than units"));
    walk_format_plates(record, said, WALK_SAID_SIZE);
    return walk_set_step(of, record, walk_questions[ASK_PLATES].name, NULL) ? RODT_OK : RODT_E_MEMORY;
}

static int find_end(const inspection_record *record, const char *text, size_t size)
{
    rodt_position position, other;
    if (rodt_position_parse_n(text, size, &position, NULL) != RODT_OK)
        return WALK_NONE;
    for (size_t i = 0; i < record->end_count; i++) {
        other = walk_position(record, (int)i);
        if (other.axle == position.axle && other.side == position.side)
            return (int)i;
    }
    return WALK_NONE;
}

/* "yes", or the wheel ends that changed: those are asked for once more. */
static rodt_status set_kept(walk *of, inspection_record *record, const char *text, char said[WALK_SAID_SIZE],
                            rodt_error *error)
{
    const char *at = text;
    bool all = is_listed(WORDS_YES, text);
    char stored[WALK_SAID_SIZE];
    for (size_t size; !all && *(at += strspn(at, " \t,")) != '\0'; at += size) {
        size = strcspn(at, " \t,");
        int end = find_end(record, at, size);
        if (end == WALK_NONE)
            return set_error(error, (uint32_t)(at - text) + 1, say("yes is expected, or wheel ends such as 2L 3R"));
        walk_forget_description(of, record, end);
    }
    snprintf(stored, sizeof stored, "%s%.380s", all ? "yes" : STEP_CHANGED, all ? "" : text);
    (void)walk_say_step(stored, said);
    return walk_set_step(of, record, walk_questions[ASK_KEPT].name, stored) ? RODT_OK : RODT_E_MEMORY;
}

static rodt_status read_built(const char *text, record_value *value, char said[WALK_SAID_SIZE], rodt_error *error)
{
    rodt_date built;
    char word[WORD_SIZE];
    if (read_built_day(text, &built, error) != RODT_OK)
        return set_error(error, error->column, say("a year or a day is expected, such as 2016 or 2016-03-01"));
    snprintf(said, WALK_SAID_SIZE, say("built %s"), built.month == 0 ? text : format_date(built, word));
    value->text = text;
    return RODT_OK;
}

/* A measurement that may have lost its blank is warned of, and its finding names both values; nothing else has two. */
static rodt_status read_length(rodt_unit unit, bool measured, const char *text, record_value *value,
                               char said[WALK_SAID_SIZE], rodt_error *error)
{
    const rodt_style style = {.unit = unit};
    rodt_length length;
    RODT_ENUM32(rodt_unit) written;
    char inches[WORD_SIZE], mm[WORD_SIZE];
    rodt_status status =
        measured ? rodt_length_parse_n(text, strlen(text), &style, &length, &written, error)
                 : rodt_length_parse_strict_n(text, strlen(text), &style, &length, &written, error);
    if (status != RODT_OK)
        return status;
    if (written == RODT_UNIT_IN)
        snprintf(said, WALK_SAID_SIZE, say("%s in"), format_length(length, inches));
    else
        snprintf(said, WALK_SAID_SIZE, "%s mm", format_mm(length, mm));
    value->text = text;
    return RODT_OK;
}

static rodt_status read_pressure(const char *text, record_value *value, char said[WALK_SAID_SIZE], rodt_error *error)
{
    rodt_pressure pressure;
    char word[WORD_SIZE];
    rodt_status status = rodt_pressure_parse(text, &pressure, error);
    if (status != RODT_OK)
        return status;
    if (pressure.den <= 1000)
        snprintf(said, WALK_SAID_SIZE, say("%s psi"), format_pressure(pressure, word));
    else
        snprintf(said, WALK_SAID_SIZE, "%s", text);
    value->text = text;
    return RODT_OK;
}

static rodt_status read_chamber(const char *text, record_value *value, char said[WALK_SAID_SIZE], rodt_error *error)
{
    rodt_chamber chamber;
    char word[RODT_CHAMBER_TEXT_SIZE];
    rodt_status status = rodt_chamber_parse(text, &chamber, error);
    if (status != RODT_OK)
        return status;
    snprintf(said, WALK_SAID_SIZE, say("chamber %s"), format_chamber(&chamber, word));
    value->text = text;
    return RODT_OK;
}

/* A chamber that cannot be read is told by its diameter. */
static rodt_status hint_diameter(const char *text, rodt_error *error)
{
    rodt_length length;
    if (is_listed(TO_SAY("u, unknown"), text))
        return set_error(error, 1, say("not legible? Type diameter and what the tape shows, diameter 8 1/8, or skip"));
    if (strpbrk(text, "/.\"") != NULL && rodt_length_parse_strict(text, &length, NULL) == RODT_OK)
        return set_error(error, 1, say("that is a length and no mark; not legible? Type diameter %.40s"), text);
    return error->status;
}

static rodt_status read_number(const char *text, bool clock, record_value *value, char said[WALK_SAID_SIZE],
                               rodt_error *error)
{
    rodt_ratio number;
    char word[WORD_SIZE];
    if (!read_ratio(text, clock, &number) || number.num == 0)
        return set_error(error, 1, clock ? say("a number such as 38, 31.25 or 2:05 is expected")
                                         : say("a number such as 2848 or 31.25 is expected"));
    snprintf(said, WALK_SAID_SIZE,
             !clock                     ? say("%s cubic inches")
             : number.num == number.den ? say("%s second")
                                        : say("%s seconds"),
             format_ratio(number, word));
    value->text = text;
    return RODT_OK;
}

/* The question asks what was seen; the record says whether the valve held. */
static const char *turn(const walk_item *item, const char *answer)
{
    if (item->id != ASK_ANSWER || item->check != RODT_AIR_CHECK_TRACTOR_PROTECTION || answer == NULL)
        return answer;
    return strcmp(answer, "yes") == 0 ? "no" : "yes";
}

static rodt_status read_value(const inspection_record *record, const walk_item *item, const char *text,
                              record_value *value, char said[WALK_SAID_SIZE], rodt_error *error)
{
    const walk_question *question = &walk_questions[item->id];
    switch (question->kind) {
    case WALK_WORD: return read_word(question->words, text, value, said, error);
    case WALK_CLASS: return read_class(question->words, text, value, said, error);
    case WALK_COUNT: return read_towed(text, value, said, error);
    case WALK_BUILT: return read_built(text, value, said, error);
    case WALK_LENGTH: return read_length(bare_unit(record), is_measured(item), text, value, said, error);
    case WALK_PRESSURE: return read_pressure(text, value, said, error);
    case WALK_CHAMBER: return read_chamber(text, value, said, error);
    case WALK_NUMBER: return read_number(text, false, value, said, error);
    case WALK_CLOCK: return read_number(text, true, value, said, error);
    case WALK_AXLES:
    case WALK_PLATES:
    case WALK_KEPT:
    case WALK_TEXT: break;
    }
    value->text = text;
    snprintf(said, WALK_SAID_SIZE, "%s", text);
    return RODT_OK;
}

bool walk_takes_never(const walk_item *item)
{
    return item->id == ASK_PRESSURE || (item->id == ASK_SECONDS && item->check == RODT_AIR_CHECK_BUILD_UP);
}

/* At a question of what came, "none" is no empty answer. */
static bool says_never(const walk_item *item, const char *text)
{
    return walk_takes_never(item) && (is_listed(WORDS_NEVER, text) || rodt_air_says_never(text, strlen(text)));
}

/* That it never released is beside the answer, which says how it was while the strokes were read. */
static rodt_status set_parking(walk *of, inspection_record *record, const walk_item *item, record_value value,
                               bool never, char said[WALK_SAID_SIZE])
{
    const char *name = walk_questions[item->id].name;
    bool before = walk_parking_failed(record);
    bool good = walk_set(of, record, item, value);
    if (never && item->id == ASK_SPRING)
        good = walk_set_step(of, record, name, STEP_NEVER) && good;
    const char *step = record_step(record, name);
    if (step != NULL && strcmp(step, STEP_NEVER) == 0)
        snprintf(said, WALK_SAID_SIZE, "%s", say("never: a defect of the parking brake"));
    return walk_note_parking(of, record, before) && good ? RODT_OK : RODT_E_MEMORY;
}

rodt_status walk_read_answer(walk *of, inspection_record *record, const walk_item *item, const char *text,
                             char said[WALK_SAID_SIZE], rodt_error *error)
{
    record_value value = {NULL, 0};
    if (says_never(item, text)) {
        snprintf(said, WALK_SAID_SIZE, "%s", say("never: that is a defect"));
        return walk_set_never(record, item) ? RODT_OK : RODT_E_MEMORY;
    }
    if (item->id == ASK_AXLES)
        return set_axles(of, record, text, said, error);
    if (item->id == ASK_PLATES)
        return set_plates(of, record, text, said, error);
    if (item->id == ASK_KEPT)
        return set_kept(of, record, text, said, error);
    rodt_status status = check_field(record, item, text, error);
    if (status == RODT_OK)
        status = read_value(record, item, text, &value, said, error);
    if (status != RODT_OK)
        return item->id == ASK_CHAMBER && status != RODT_E_EMPTY ? hint_diameter(text, error) : status;
    if (value.text != NULL && (value.text = walk_keep(of, turn(item, value.text))) == NULL)
        return RODT_E_MEMORY;
    if (walk_is_parking(item))
        return set_parking(of, record, item, value,
                           is_listed(WORDS_NEVER, text) && !is_listed(WORDS_NO, text), said);
    return walk_set(of, record, item, value) ? RODT_OK : RODT_E_MEMORY;
}

/* --- What Enter does --------------------------------------------------------------------------------- */

/* A pressure as the row has it: whole psi, or the whole kPa that it was made from. */
static void write_row_pressure(rodt_pressure pressure, char text[WALK_ANSWER_MAX])
{
    char word[WORD_SIZE];
    rodt_pressure made;
    snprintf(text, WALK_ANSWER_MAX, "%s", format_pressure(pressure, word));
    for (int64_t kpa = 1; pressure.den != 1 && kpa <= 2000; kpa++) {
        if (rodt_pressure_from_kpa(kpa, 1, &made) == RODT_OK && rodt_pressure_compare(made, pressure) == 0)
            snprintf(text, WALK_ANSWER_MAX, "%lld kPa", (long long)kpa);
    }
}

static bool row_default(const walk *of, const walk_item *item, char text[WALK_ANSWER_MAX])
{
    bool by_row = item->id == ASK_FROM || item->id == ASK_TO || item->id == ASK_SPAN;
    size_t index = 0;
    const rodt_air_limit *row = by_row ? walk_next_row(of, item->check, &index) : NULL;
    if (row == NULL)
        return false;
    if (item->id == ASK_SPAN)
        snprintf(text, WALK_ANSWER_MAX, "%s",
                 row->span != RODT_AIR_SPAN_PRESSURES ? rodt_air_span_name(row->span) : "");
    else
        write_row_pressure(item->id == ASK_FROM ? row->start : row->stop, text);
    return true;
}

/* A minute, if every row for the vehicle times a minute: a test of two must not be judged as one of one. */
bool walk_minute(const walk *of, rodt_air_check check, char text[WALK_ANSWER_MAX])
{
    const rodt_air_limit *row;
    for (size_t i = 0; (row = walk_next_row(of, check, &i)) != NULL;) {
        if (row->setup[0] != '\0' && strstr(row->setup, "one minute") == NULL)
            return false;
    }
    snprintf(text, WALK_ANSWER_MAX, "60");
    return true;
}

/* The suggestion of a neighbour, a row of the table or an earlier answer. */
static bool suggest(const walk *of, const walk_item *item, char text[WALK_ANSWER_MAX])
{
    const inspection_record *record = &of->record;
    int template_end = item->end == WALK_NONE ? WALK_NONE : walk_template_end(record, item->end);
    const char *found = NULL;
    if (item->id == ASK_TIME)
        return walk_clock(record->head[HEAD_DATE].text, text);
    if (walk_questions[item->id].location == WALK_HEAD)
        found = of->offers[walk_questions[item->id].key];
    if (item->id == ASK_LENGTH)
        return walk_minute(of, item->check, text);
    if (item->id == ASK_DIVISION)
        found = bare_unit(record) == RODT_UNIT_IN ? "1/16" : "1 mm";
    if (item->id == ASK_TOWED)
        found = "1";
    if (template_end != WALK_NONE && (item->id == ASK_ADJUSTER || item->id == ASK_ARM))
        found = record->ends[template_end][walk_questions[item->id].key].text;
    if (item->id == ASK_CUT_OUT) {
        int check = walk_find_check(record, RODT_AIR_CHECK_CUT_OUT);
        found = check == WALK_NONE ? NULL : record->checks[check][CHECK_PRESSURE].text;
    }
    if (found != NULL)
        snprintf(text, WALK_ANSWER_MAX, "%s", found);
    return found != NULL || row_default(of, item, text);
}

static void say_value(const inspection_record *record, const walk_item *item, char said[WALK_SAID_SIZE])
{
    record_value value = walk_value(record, item);
    char units[WALK_ANSWER_MAX] = "";
    if (item->id == ASK_AXLES && record->unit_count > 1)
        walk_format_units(record, units, sizeof units);
    if (item->id == ASK_PLATES)
        walk_format_plates(record, units, sizeof units);
    if (walk_skipped(record, item))
        snprintf(said, WALK_SAID_SIZE, "%s", say("skip"));
    else if (item->check != RODT_AIR_CHECK_NONE && value.text == NULL && walk_never_came(record, item->check))
        snprintf(said, WALK_SAID_SIZE, "%s", say("keep never"));
    else if (units[0] != '\0')
        snprintf(said, WALK_SAID_SIZE, say("keep %s"), units);
    else if (value.text != NULL)
        snprintf(said, WALK_SAID_SIZE, say("keep %s"),
                 walk_say_answer(walk_questions[item->id].words, turn(item, value.text)));
    else
        snprintf(said, WALK_SAID_SIZE, say("keep %d"), value.number);
}

walk_default walk_find_default(const walk *of, const walk_item *item, char text[WALK_ANSWER_MAX],
                               char said[WALK_SAID_SIZE])
{
    int template_end = item->end == WALK_NONE ? WALK_NONE : walk_template_end(&of->record, item->end);
    if (walk_answered(&of->record, item)) {
        say_value(&of->record, item, said);
        return WALK_STAY;
    }
    if (item->id == ASK_CHAMBER && template_end != WALK_NONE) {
        size_t used = (size_t)snprintf(said, WALK_SAID_SIZE, say("as %.20s: "),
                                       of->record.ends[template_end][END_POSITION].text);
        (void)walk_describe_end(&of->record, template_end, said + used, WALK_SAID_SIZE - used);
        return WALK_COPY;
    }
    if (suggest(of, item, text)) {
        snprintf(said, WALK_SAID_SIZE, "%s", walk_say_answer(walk_questions[item->id].words, text));
        return WALK_TAKE;
    }
    if (!walk_questions[item->id].optional)
        return WALK_NO_DEFAULT;
    snprintf(said, WALK_SAID_SIZE, "%s", say("skip"));
    return WALK_LEAVE;
}
