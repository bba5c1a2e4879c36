/* SPDX-License-Identifier: Apache-2.0 */
/* The cards as text. */
#include "air/steps.h"
#include "cards/cards.h"
#include "ui/format.h"
#include "ui/wrap.h"

#include <string.h>

const char *cards_describe(const card_deck *deck, char text[CARDS_TEXT_SIZE])
{
    static const char *const vehicles[RODT_VEHICLE_CLASS_END] = {"any vehicle", "single vehicle", "combination", "bus"};
    const rodt_air_reading *vehicle = &deck->vehicle;
    int used = snprintf(text, CARDS_TEXT_SIZE, "%s", vehicles[vehicle->vehicle]);
    if (vehicle->towed_units > 0)
        used += snprintf(text + used, CARDS_TEXT_SIZE - (size_t)used, ", %d towed unit%s", vehicle->towed_units,
                         vehicle->towed_units == 1 ? "" : "s");
    if (rodt_date_given(vehicle->built))
        snprintf(text + used, CARDS_TEXT_SIZE - (size_t)used, ", built %d", vehicle->built.year);
    return text;
}

void cards_print(const card_deck *deck, FILE *to)
{
    char text[CARDS_TEXT_SIZE], source[STEP_TEXT_SIZE];
    rodt_vehicle_class vehicle = (rodt_vehicle_class)deck->vehicle.vehicle;
    size_t count = rodt_step_count(deck->rules, vehicle);
    print_title(to, PAINT_STRONG, rodt_rules_id(deck->rules), cards_describe(deck, text));
    print_wrapped(to, "", 0, rodt_rules_title(deck->rules));
    for (size_t i = 0; i < count; i++) {
        rodt_step step = rodt_step_at(deck->rules, vehicle, i);
        fprintf(to, "\n%zu of %zu\n", i + 1, count);
        print_step(to, step, deck->rules, &deck->vehicle);
        format_step_sources(step, deck->rules, &deck->vehicle, source);
        if (source[0] != '\0')
            print_wrapped(to, "Source", 12, source);
    }
    fputc('\n', to);
    print_wrapped(to, "", 0, "Chock the wheels. The cited law and a licensed inspector decide.");
}
