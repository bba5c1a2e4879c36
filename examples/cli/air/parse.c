/* SPDX-License-Identifier: Apache-2.0 */
/* The command line of `rodtravel air` as a reading: exact numbers, volumes by the chambers' marks. */
#include "air/air.h"
#include "input/air_words.h"
#include "input/numbers.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/language.h"
#include "ui/message.h"
#include "ui/options.h"

#include <stdio.h>
#include <string.h>

/* --- Numbers ----------------------------------------------------------------------------------------- */

static int read_number_option(const command_line *from, size_t option, bool clock, rodt_ratio *out)
{
    const char *text = option_value(from, option);
    if (text == NULL)
        return STATUS_CONTINUE;
    if (!read_ratio(text, clock, out))
        return print_error("--%s is a number such as %s, not \"%s\"", from->command->options[option].name,
                           clock ? say("38, 31.25 or 2:05") : say("2848, 31.25 or 3/5"), text);
    return STATUS_CONTINUE;
}

static int read_count_option(const command_line *from, size_t option, int16_t *out)
{
    rodt_ratio count = {0, 0};
    int status = read_number_option(from, option, false, &count);
    const char *text = option_value(from, option);
    /* As the library reads it: no "+2", no 4/2. */
    bool whole = text != NULL && text[strspn(text, " 0123456789")] == '\0';
    if (status == STATUS_CONTINUE && rodt_ratio_given(count) && (!whole || count.num < 1 || count.num > 99))
        return print_error("--%s is a whole number from 1 to 99", from->command->options[option].name);
    if (rodt_ratio_given(count))
        *out = (int16_t)count.num;
    return status;
}

/* A check is spoken of in the unit of its gauge. */
static rodt_status read_gauge(const char *text, rodt_air_reading *to, rodt_pressure *out, rodt_error *error)
{
    RODT_ENUM32(rodt_pressure_unit) written = RODT_PRESSURE_UNIT_PSI;
    rodt_status status = rodt_pressure_parse_n(text, strlen(text), NULL, out, &written, error);
    if (to != NULL && written != RODT_PRESSURE_UNIT_PSI)
        to->pressure_unit = written;
    return status;
}

static int read_pressure_option(const command_line *from, size_t option, rodt_air_reading *to, rodt_pressure *out)
{
    rodt_error error = {.status = RODT_OK};
    const char *text = option_value(from, option);
    if (text == NULL || read_gauge(text, to, out, &error) == RODT_OK)
        return STATUS_CONTINUE;
    return print_option_error(from, option, &error);
}

/* --- The vehicle ------------------------------------------------------------------------------------- */

static int read_built(const command_line *from, rodt_date *out)
{
    const char *text = option_value(from, AIR_BUILT);
    rodt_error error = {.status = RODT_OK};
    if (text == NULL || read_built_day(text, out, &error) == RODT_OK)
        return STATUS_CONTINUE;
    return print_option_error(from, AIR_BUILT, &error);
}

static int read_vehicle(const command_line *from, rodt_air_reading *out)
{
    int vehicle = RODT_VEHICLE_CLASS_ANY;
    int status = choose_option(from, AIR_VEHICLE, vehicle_words, VEHICLE_WORDS, &vehicle);
    if (status == STATUS_CONTINUE)
        status = read_count_option(from, AIR_TOWED, &out->towed_units);
    if (status == STATUS_CONTINUE)
        status = read_built(from, &out->built);
    out->vehicle = (rodt_vehicle_class)vehicle;
    if (status == STATUS_CONTINUE && out->towed_units > 0 &&
        (vehicle == RODT_VEHICLE_CLASS_SINGLE || vehicle == RODT_VEHICLE_CLASS_BUS))
        return print_error("--towed says a combination, but --vehicle does not");
    return status;
}

/* --- Volumes ----------------------------------------------------------------------------------------- */

static int add_chamber(const char *mark, rodt_ratio *sum)
{
    rodt_chamber chamber;
    rodt_ratio volume;
    rodt_error error = {.status = RODT_OK};
    if (rodt_chamber_parse(mark, &chamber, &error) != RODT_OK)
        return print_text_error(say("a chamber of --chambers"), mark, &error);
    if (rodt_chamber_rated_volume(&chamber, &volume) != RODT_OK)
        return print_error("chamber \"%s\" is not in Table V of 49 CFR 571.121: its actual volume counts, which no "
                           "table has", mark);
    rodt_status status = rodt_ratio_add(*sum, volume, sum);
    return status == RODT_OK ? STATUS_CONTINUE : print_status("", status);
}

static int read_chambers(const command_line *from, rodt_ratio *out)
{
    const char *at = option_value(from, AIR_CHAMBERS);
    rodt_ratio sum = {0, 1};
    if (at == NULL)
        return STATUS_CONTINUE;
    for (size_t count = 0; *at != '\0'; count++) {
        char mark[40];
        size_t size = strcspn(at, ",");
        bool more = at[size] == ',';
        if (size >= sizeof mark || count == 64)
            return print_error("--chambers is a list of marks such as 20,20,30,30");
        snprintf(mark, sizeof mark, "%.*s", (int)size, at);
        int status = add_chamber(mark, &sum);
        if (status != STATUS_CONTINUE)
            return status;
        at += size + more;
        if (more && *at == '\0')
            return print_error("a chamber of --chambers is missing: the list ends in a comma");
    }
    if (sum.num == 0)
        return print_error("--chambers is a list of marks such as 20,20,30,30");
    *out = sum;
    return STATUS_CONTINUE;
}

static int read_volumes(const command_line *from, air_volumes *out)
{
    int status = read_number_option(from, AIR_RESERVOIRS, false, &out->reservoirs);
    if (status == STATUS_CONTINUE)
        status = read_chambers(from, &out->chambers);
    if (status != STATUS_CONTINUE)
        return status;
    if (rodt_ratio_given(out->reservoirs) && out->reservoirs.num == 0)
        return print_error("--reservoirs is the volume of all reservoirs in cubic inches, above zero");
    /* Never a trailer's multiple: S5.1.1 times a truck or bus by itself. */
    if (rodt_ratio_given(out->chambers) &&
        rodt_reservoir_required_volume(out->chambers, false, &out->required) != RODT_OK)
        return print_error("the volume of --chambers is larger than this program can take times 12");
    return STATUS_CONTINUE;
}

/* --- One check --------------------------------------------------------------------------------------- */

static const struct answer_words {
    rodt_air_check check;
    const char *yes;
    const char *no;
} answers[] = {{RODT_AIR_CHECK_SPRING_BRAKE, "holds", "moves"},
               {RODT_AIR_CHECK_DRAIN, "free", "stuck"},
               {RODT_AIR_CHECK_AUDIBLE_LEAK, "heard", "none"},
               {RODT_AIR_CHECK_CONTAMINATION, "found", "none"},
               {RODT_AIR_CHECK_TRAILER_BRAKES, "apply", "none"}};

static int read_answer(const struct answer_words *words, const char *text, RODT_ENUM32(rodt_recorded) *out)
{
    if (text != NULL && strcmp(text, words->yes) != 0 && strcmp(text, words->no) != 0)
        return print_error("%s is %s or %s, not \"%s\"", rodt_air_check_name(words->check), words->yes,
                           words->no, text);
    if (text != NULL)
        *out = strcmp(text, words->yes) == 0 ? RODT_RECORDED_YES : RODT_RECORDED_NO;
    return STATUS_CONTINUE;
}

/* Where no pressure is read: does air escape from the service line. */
static bool read_protection(const char *text, RODT_ENUM32(rodt_recorded) *out)
{
    bool holds = strcmp(text, "holds") == 0;
    if (!holds && strcmp(text, "escapes") != 0)
        return false;
    *out = holds ? RODT_RECORDED_YES : RODT_RECORDED_NO;
    return true;
}

/* The operand after the check: a pressure or a word; checks with two readings have options. */
static int read_operand(const char *text, rodt_air_reading *out)
{
    for (size_t i = 0; i < COUNT_OF(answers); i++) {
        if (answers[i].check == out->check)
            return read_answer(&answers[i], text, &out->answer);
    }
    const bool fall = out->check == RODT_AIR_CHECK_LOSS_RELEASED || out->check == RODT_AIR_CHECK_LOSS_APPLIED ||
                      out->check == RODT_AIR_CHECK_RESERVE;
    if (out->check == RODT_AIR_CHECK_TRACTOR_PROTECTION && text != NULL && read_protection(text, &out->answer))
        return STATUS_CONTINUE;
    if (!fall && text != NULL && rodt_air_says_never(text, strlen(text))) {
        out->answer = RODT_RECORDED_NO;
        return STATUS_CONTINUE;
    }
    if (fall || out->check == RODT_AIR_CHECK_BUILD_UP)
        return text == NULL ? STATUS_CONTINUE
                            : print_error("%s takes options and no operand, but \"%s\" is given; see: rodtravel air "
                                          "--help", rodt_air_check_name(out->check), text);
    rodt_error error = {.status = RODT_OK};
    if (text == NULL || read_gauge(text, out, &out->pressure, &error) == RODT_OK)
        return STATUS_CONTINUE;
    return print_text_error(say("the pressure"), text, &error);
}

static int read_seconds(const command_line *from, rodt_air_reading *out)
{
    const char *text = option_value(from, AIR_SECONDS);
    if (out->check != RODT_AIR_CHECK_BUILD_UP || text == NULL || !rodt_air_says_never(text, strlen(text)))
        return read_number_option(from, AIR_SECONDS, true, &out->seconds);
    out->answer = RODT_RECORDED_NO;
    return STATUS_CONTINUE;
}

static int read_readings(const command_line *from, rodt_air_reading *out)
{
    bool build_up = out->check == RODT_AIR_CHECK_BUILD_UP;
    int span = RODT_AIR_SPAN_PRESSURES;
    int status = read_pressure_option(from, build_up ? AIR_FROM : AIR_BEFORE, out, &out->before);
    if (status == STATUS_CONTINUE)
        status = read_pressure_option(from, build_up ? AIR_TO : AIR_AFTER, out, &out->after);
    if (status == STATUS_CONTINUE)
        status = read_pressure_option(from, AIR_CUT_OUT, out, &out->cut_out);
    if (status == STATUS_CONTINUE)
        status = read_pressure_option(from, AIR_CUT_IN, out, &out->cut_in);
    if (status == STATUS_CONTINUE)
        status = read_seconds(from, out);
    if (status == STATUS_CONTINUE)
        status = read_count_option(from, AIR_APPLICATIONS, &out->applications);
    if (status == STATUS_CONTINUE)
        status = choose_option(from, AIR_START, span_words, SPAN_WORDS, &span);
    out->span = (rodt_air_span)span;
    return status;
}

/* An option that the check does not take would be dropped in silence. */
static int check_options(const command_line *from, rodt_air_check check)
{
    const bool build_up = check == RODT_AIR_CHECK_BUILD_UP, reserve = check == RODT_AIR_CHECK_RESERVE;
    const bool loss = check == RODT_AIR_CHECK_LOSS_RELEASED || check == RODT_AIR_CHECK_LOSS_APPLIED;
    const bool taken[AIR_OPTIONS] = {[AIR_SECONDS] = build_up || loss,
                                     [AIR_FROM] = build_up,
                                     [AIR_TO] = build_up,
                                     [AIR_START] = build_up,
                                     [AIR_RESERVOIRS] = build_up,
                                     [AIR_CHAMBERS] = build_up,
                                     [AIR_BEFORE] = loss || reserve,
                                     [AIR_AFTER] = loss || reserve,
                                     [AIR_APPLICATIONS] = reserve,
                                     [AIR_CUT_OUT] = check == RODT_AIR_CHECK_WARNING || check == RODT_AIR_CHECK_CUT_IN,
                                     [AIR_CUT_IN] = check == RODT_AIR_CHECK_WARNING || check == RODT_AIR_CHECK_CUT_OUT,
                                     [AIR_VEHICLE] = true,
                                     [AIR_TOWED] = true,
                                     [AIR_BUILT] = true,
                                     [AIR_RULES] = true,
                                     [AIR_LIMITS] = true,
                                     [AIR_SPEAK] = true,
                                     [AIR_JSON] = true};
    for (size_t i = 0; i < AIR_OPTIONS; i++) {
        if (option_given(from, i) && !taken[i])
            return print_error("%s does not take --%s", rodt_air_check_name(check), from->command->options[i].name);
    }
    return STATUS_CONTINUE;
}

int read_air_check(const command_line *from, rodt_air_check check, rodt_air_reading *out)
{
    air_volumes volumes = {0};
    *out = (rodt_air_reading){.check = check};
    int status = check_options(from, check);
    if (status == STATUS_CONTINUE)
        status = read_operand(from->operand_count > 1 ? from->operands[1] : NULL, out);
    if (status == STATUS_CONTINUE)
        status = read_vehicle(from, out);
    if (status == STATUS_CONTINUE)
        status = read_readings(from, out);
    if (status == STATUS_CONTINUE)
        status = read_volumes(from, &volumes);
    out->actual_volume = volumes.reservoirs;
    out->required_volume = volumes.required;
    return status;
}

/* --- The estimate ------------------------------------------------------------------------------------ */

int read_air_estimate(const command_line *from, const rodt_rules *rules, air_estimate *out)
{
    *out = (air_estimate){.fill = {1, 1}, .floor = rodt_rules_pressure_from(rules)};
    int status = read_pressure_option(from, AIR_PSI, NULL, &out->pressure);
    if (status == STATUS_CONTINUE)
        status = read_pressure_option(from, AIR_FLOOR, NULL, &out->floor);
    if (status == STATUS_CONTINUE)
        status = read_number_option(from, AIR_FILL, false, &out->fill);
    if (status == STATUS_CONTINUE)
        status = read_volumes(from, &out->volumes);
    if (status != STATUS_CONTINUE)
        return status;
    if (from->operand_count > 1)
        return print_error("estimate takes options and no operand, but \"%s\" is given", from->operands[1]);
    if (!rodt_pressure_given(out->pressure) || !rodt_ratio_given(out->volumes.reservoirs) ||
        !rodt_ratio_given(out->volumes.chambers))
        return print_error("estimate needs --psi, --reservoirs and --chambers");
    if (!rodt_pressure_given(out->floor))
        return print_error("%s has no pressure window; say the least pressure with --floor", rodt_rules_id(rules));
    if (out->fill.num > out->fill.den)
        return print_error("--fill is a part of the volume, from 0 to 1");
    return STATUS_CONTINUE;
}
