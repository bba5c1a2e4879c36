/* SPDX-License-Identifier: Apache-2.0 */
/* The cards as text. */
#include "air/steps.h"
#include "cards/cards.h"
#include "ui/format.h"
#include "ui/language.h"
#include "ui/wrap.h"

#include <string.h>

const char *cards_describe(const card_deck *deck, char text[CARDS_TEXT_SIZE])
{
    static const char *const vehicles[RODT_VEHICLE_CLASS_END] = {TO_SAY("any vehicle"), TO_SAY("single vehicle"),
                                                                 TO_SAY("combination"), TO_SAY("bus")};
    const rodt_air_reading *vehicle = &deck->vehicle;
    int used = snprintf(text, CARDS_TEXT_SIZE, "%s", say(vehicles[vehicle->vehicle]));
    if (vehicle->towed_units > 0)
        used += snprintf(text + used, CARDS_TEXT_SIZE - (size_t)used,
                         say_number(", %d towed unit", ", %d towed units", (unsigned long)vehicle->towed_units),
                         vehicle->towed_units);
    if (rodt_date_given(vehicle->built))
        snprintf(text + used, CARDS_TEXT_SIZE - (size_t)used, say(", built %d"), vehicle->built.year);
    return text;
}

void cards_print(const card_deck *deck, FILE *to)
{
    char text[CARDS_TEXT_SIZE], source[STEP_TEXT_SIZE];
    rodt_vehicle_class vehicle = (rodt_vehicle_class)deck->vehicle.vehicle;
    size_t count = rodt_step_count(deck->rules, vehicle);
    print_title(to, PAINT_STRONG, rodt_rules_id(deck->rules), cards_describe(deck, text));
    print_wrapped(to, "", 0, say(rodt_rules_title(deck->rules)));
    for (size_t i = 0; i < count; i++) {
        rodt_step step = rodt_step_at(deck->rules, vehicle, i);
        fputc('\n', to);
        fprintf(to, say("%zu of %zu"), i + 1, count);
        fputc('\n', to);
        print_step(to, step, deck->rules, &deck->vehicle);
        format_step_sources(step, deck->rules, &deck->vehicle, source);
        if (source[0] != '\0')
            print_wrapped(to, say("Source"), 12, source);
    }
    fputc('\n', to);
    print_wrapped(to, "", 0, say("Chock the wheels. The cited law and a licensed inspector decide."));
}
