/* SPDX-License-Identifier: Apache-2.0 */
/* Options that say how a file of wheel ends is written. */
#include "input/file_options.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/message.h"

#include <string.h>

int read_unit_option(const command_line *from, size_t option, RODT_ENUM32(rodt_unit) *out)
{
    const char *text = option_value(from, option);
    if (text == NULL || rodt_unit_parse_n(text, strlen(text), out, NULL) == RODT_OK)
        return STATUS_CONTINUE;
    return print_error("--%s is %s, %s or %s, not \"%s\"", from->command->options[option].name,
                       rodt_unit_name(RODT_UNIT_IN), rodt_unit_name(RODT_UNIT_MM), rodt_unit_name(RODT_UNIT_CM),
                       text);
}

int read_date_order_option(const command_line *from, size_t option, rodt_date_order *out)
{
    static const choice orders[] = {{"dmy", RODT_DATE_ORDER_DAY_FIRST},
                                    {"mdy", RODT_DATE_ORDER_MONTH_FIRST},
                                    {"ymd", RODT_DATE_ORDER_YEAR_FIRST}};
    int order = (int)*out;
    int status = choose_option(from, option, orders, COUNT_OF(orders), &order);
    *out = (rodt_date_order)order;
    return status;
}

int read_separator_option(const command_line *from, size_t option, char *out)
{
    const char *text = option_value(from, option);
    if (text == NULL)
        return STATUS_CONTINUE;
    bool tab = strcmp(text, "tab") == 0 || strcmp(text, "\\t") == 0;
    if (!tab && (strlen(text) != 1 || strchr(SEPARATORS, text[0]) == NULL))
        return print_error("--separator is one character such as , ; | or the word tab, not \"%s\"", text);
    *out = tab ? '\t' : text[0];
    return STATUS_CONTINUE;
}
