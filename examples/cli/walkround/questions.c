/* SPDX-License-Identifier: Apache-2.0 */
/* The questions of a walk-round: their words, their help, and where the answer goes. */
#include "walkround/walkround.h"
#include "ui/compiler.h"

#include <stdio.h>
#include <string.h>

static const walk_word only_yes[] = {{WORDS_YES, "yes"}, {NULL, NULL}};
static const walk_word parked[] = {{WORDS_YES, "yes"}, {WORDS_NO, STEP_NEVER}, {WORDS_NEVER, STEP_NEVER}, {NULL, NULL}};
static const walk_word yes_no[] = {{WORDS_YES, "yes"}, {WORDS_NO, "no"}, {NULL, NULL}};
static const walk_word vehicles[] = {
    {TO_SAY("s, truck, straight truck, single"), "single"},
    {TO_SAY("c, comb, tractor, tractor-trailer, tractor trailer, semi, combination"), "combination"},
    {TO_SAY("b, coach, bus"), "bus"},
    {NULL, NULL}};
static const walk_word springs[] = {
    {TO_SAY("y, yes, released"), "released"}, {TO_SAY("n, no, on"), "on"}, {WORDS_NEVER, "on"}, {NULL, NULL}};
static const walk_word engines[] = {
    {TO_SAY("y, yes, off"), "off"}, {TO_SAY("n, no, running, on"), "on"}, {NULL, NULL}};
static const walk_word drums[] = {
    {TO_SAY("c, cold"), "cold"}, {TO_SAY("w, warm"), "warm"}, {TO_SAY("h, hot"), "hot"}, {NULL, NULL}};
static const walk_word adjusters[] = {
    {TO_SAY("a, auto, automatic"), "automatic"}, {TO_SAY("m, manual"), "manual"}, {NULL, NULL}};
static const walk_word spans[] = {{TO_SAY("w, warning"), "warning"},
                                  {TO_SAY("a, applications"), "applications"},
                                  {TO_SAY("r, recovery"), "recovery"},
                                  {NULL, NULL}};
static const walk_word classes[] = {{TO_SAY("s, standard"), "standard"},
                                    {TO_SAY("l, square, trapezoid, long"), "long"},
                                    {TO_SAY("u, unknown"), "unknown"},
                                    {NULL, NULL}};

#define STEP(step, list, must)                                                                    \
    .name = (step), .kind = WALK_WORD, .location = WALK_STEP, .words = (list), .mandatory = (must)

const walk_question walk_questions[ASK_IDS] = {
    [ASK_CAUTIONS] = {STEP(STEP_CAUTIONS, only_yes, true), .part = WALK_SAFETY,
                      .title = TO_SAY("Have you read this, and will you do it? Type yes"),
                      .help = TO_SAY("These rules keep people alive; the walk-round begins when you have typed yes.")},
    [ASK_UNIT] = {.name = TO_SAY("unit"), .title = TO_SAY("Unit number"), .optional = true, .part = WALK_VEHICLE,
                  .kind = WALK_TEXT, .location = WALK_HEAD, .key = HEAD_UNIT,
                  .help = TO_SAY("As your firm names the truck and trailers; free text.")},
    [ASK_CARRIER] = {.name = TO_SAY("carrier"), .title = TO_SAY("Carrier"), .optional = true, .part = WALK_VEHICLE,
                     .kind = WALK_TEXT, .location = WALK_HEAD, .key = HEAD_CARRIER,
                     .help = TO_SAY("Who operates the vehicle; a daily report must name it in most places.")},
    [ASK_TIME] = {.name = TO_SAY("time"), .title = TO_SAY("Time"), .optional = true, .part = WALK_VEHICLE,
                  .kind = WALK_TEXT, .location = WALK_HEAD, .key = HEAD_TIME,
                  .help = TO_SAY("Of the inspection, such as 06:40.")},
    [ASK_PLATES] = {.name = TO_SAY("plates"), .title = TO_SAY("Plate or VIN of each unit, commas between"),
                    .single = TO_SAY("Plate or VIN"), .optional = true, .part = WALK_VEHICLE, .kind = WALK_PLATES,
                    .location = WALK_UNITS, .key = UNIT_PLATE,
                    .help = TO_SAY("From the front: AB 1234, R 27. A dolly may have none: AB 1234, R 27, , R 28.")},
    [ASK_REPAIR] = {.name = TO_SAY("repair"), .title = TO_SAY("Repaired by whom, and when"), .optional = true,
                    .part = WALK_FINISH, .kind = WALK_TEXT, .location = WALK_HEAD, .key = HEAD_REPAIR,
                    .help = TO_SAY("Leave it out while nothing is repaired; later: walkround with --back repair.")},
    [ASK_KEPT] = {.name = TO_SAY("kept"),
                  .title = TO_SAY("Is every wheel end still as listed? yes, or those that changed: 2L 3R"),
                  .mandatory = true, .part = WALK_RELEASED, .kind = WALK_KEPT, .location = WALK_STEP,
                  .help = TO_SAY("Look at every chamber and adjuster before you answer. A wheel end that you name "
                                 "is asked for its chamber, adjuster and arm again.")},
    [ASK_INSPECTOR] = {.name = TO_SAY("inspector"), .title = TO_SAY("Who inspects"), .optional = true,
                       .part = WALK_VEHICLE, .kind = WALK_TEXT, .location = WALK_HEAD, .key = HEAD_INSPECTOR,
                       .help = TO_SAY("The name under the report.")},
    [ASK_PLACE] = {.name = TO_SAY("place"), .title = TO_SAY("Place"), .optional = true, .part = WALK_VEHICLE,
                   .kind = WALK_TEXT, .location = WALK_HEAD, .key = HEAD_PLACE,
                   .help = TO_SAY("Where the vehicle is; free text.")},
    [ASK_ODOMETER] = {.name = TO_SAY("odometer"), .title = TO_SAY("Odometer"), .optional = true, .part = WALK_VEHICLE,
                      .kind = WALK_TEXT, .location = WALK_HEAD, .key = HEAD_ODOMETER,
                      .help = TO_SAY("With its unit, such as 412608 km.")},
    [ASK_VEHICLE] = {.name = TO_SAY("vehicle"), .title = TO_SAY("Vehicle: s single truck, c combination, b bus"),
                     .part = WALK_VEHICLE, .kind = WALK_WORD, .location = WALK_HEAD, .key = HEAD_VEHICLE,
                     .words = vehicles,
                     .help = TO_SAY("s or truck: one unit. c or tractor-trailer: a truck or tractor with trailers. "
                                    "b or bus: one unit that carries passengers. Some air checks have other figures "
                                    "for each.")},
    [ASK_TOWED] = {.name = TO_SAY("towed_units"), .title = TO_SAY("Towed units"), .part = WALK_VEHICLE,
                   .kind = WALK_COUNT, .location = WALK_HEAD, .key = HEAD_TOWED,
                   .help = TO_SAY("How many trailers are towed. Does a dolly count as a trailer? Your rule set "
                                  "decides; without one, leave it out: that is the strict side.")},
    [ASK_BUILT] = {.name = TO_SAY("built"), .title = TO_SAY("Year built"), .optional = true, .part = WALK_VEHICLE,
                   .kind = WALK_BUILT, .location = WALK_HEAD, .key = HEAD_BUILT,
                   .help = TO_SAY("A year, or a day such as 1975-03-01: a figure of this rule set goes by the day "
                                  "of build.")},
    [ASK_AXLES] = {.name = TO_SAY("axles"), .title = TO_SAY("How many axles (a combination: unit by unit, 3 2)"),
                   .single = TO_SAY("How many axles"), .mandatory = true, .part = WALK_VEHICLE, .kind = WALK_AXLES,
                   .location = WALK_STEP,
                   .help = TO_SAY("Every axle with brakes, counted from the front through every unit. Each has a "
                                  "left and a right wheel end: 1L, 1R, 2L and so on. 3 2 is a tractor of 3 and a "
                                  "trailer of 2 axles; d1 is a dolly of 1: 3 2 d1 2. A single number leaves the "
                                  "units open: 5.")},
    [ASK_CHOCKS] = {STEP(TO_SAY("chocks"), only_yes, true), .part = WALK_SECURE,
                    .title = TO_SAY("Level ground, wheels chocked front and back, nobody in the way? Type yes"),
                    .help = TO_SAY("Later the parking brake is released while somebody is at the wheels; only the "
                                   "chocks hold the vehicle then. Chock before you type yes.")},
    [ASK_AIR_READY] = {STEP(TO_SAY("air_ready"), only_yes, false), .part = WALK_AIR_OFF,
                       .title = TO_SAY("Chocks in place, parking brake released on every unit? Type yes"),
                       .help = TO_SAY("With a parking brake set, part of the system is empty and a leak in it does "
                                      "not show. If it does not release: skip; the leak tests are then not done.")},
    [ASK_DRAINS_CLOSED] = {STEP(TO_SAY("drains_closed"), only_yes, false), .part = WALK_AIR_ON,
                           .title = TO_SAY("All drain valves closed again? Type yes"),
                           .help = TO_SAY("With an open drain valve the pressure builds up slowly or not at all.")},
    [ASK_SPRING] = {.name = STEP_RELEASED, .title = TO_SAY("Parking brake released on every unit, y or n"),
                    .mandatory = true, .part = WALK_SET_UP, .kind = WALK_WORD, .location = WALK_ALL_ENDS,
                    .key = END_SPRING, .words = springs,
                    .help = TO_SAY("A spring brake that is on pushes the rod out: the first reading would be far "
                                   "too long and the stroke too short. Chocks in place, air up, both knobs pushed "
                                   "in. If it does not release: never, which is a defect.")},
    [ASK_ENGINE] = {.name = TO_SAY("engine"), .title = TO_SAY("Engine off, y or n"), .mandatory = true,
                    .part = WALK_SET_UP, .kind = WALK_WORD, .location = WALK_ALL_ENDS, .key = END_ENGINE,
                    .words = engines,
                    .help = TO_SAY("With the engine running the pressure is not what the gauge said before.")},
    [ASK_DRUM] = {.name = TO_SAY("drum"), .title = TO_SAY("Drums: c cold, w warm, h hot"), .optional = true,
                  .part = WALK_SET_UP, .kind = WALK_WORD, .location = WALK_ALL_ENDS, .key = END_DRUM, .words = drums,
                  .help = TO_SAY("A hot drum has grown and lengthens the stroke. Hold a hand near, do not touch.")},
    [ASK_DIVISION] = {.name = TO_SAY("division"), .title = TO_SAY("Smallest division of the tape"),
                      .part = WALK_SET_UP, .kind = WALK_LENGTH, .location = WALK_ALL_ENDS, .key = END_DIVISION,
                      .help = TO_SAY("The distance between two neighbouring marks: 1/16, 1/8, 1 mm. The report says "
                                     "from it what the tape proves.")},
    [ASK_RESERVOIRS] = {.name = TO_SAY("reservoirs"), .title = TO_SAY("Volume of the reservoirs, cubic inches"),
                        .optional = true, .part = WALK_APPLICATION, .kind = WALK_NUMBER, .location = WALK_STEP,
                        .help = TO_SAY("All reservoirs that feed the brakes together, from their plates. Only for "
                                       "an estimate of the pressure to start from.")},
    [ASK_PSI] = {.name = TO_SAY("psi"), .title = TO_SAY("Reservoir pressure, psi"), .part = WALK_APPLICATION,
                 .kind = WALK_PRESSURE, .location = WALK_ALL_ENDS, .key = END_PSI,
                 .help = TO_SAY("The gauge, engine off, just before the pedal goes down; kPa with the unit: 655 "
                                "kPa. Low air hides a long stroke, high air makes one.")},
    [ASK_HELD] = {STEP(TO_SAY("application"), only_yes, false), .part = WALK_APPLICATION,
                  .title = TO_SAY("Pedal fully down and held? Type yes"),
                  .help = TO_SAY("A helper or a pedal jack holds it until the last reading; the trailer hand valve "
                                 "is no substitute for the axles of the truck. skip, if it cannot be held: then "
                                 "there are no second readings.")},
    [ASK_PSI_AFTER] = {.name = TO_SAY("psi_after"), .title = TO_SAY("Reservoir pressure now, still held, psi"),
                       .optional = true, .part = WALK_APPLIED, .kind = WALK_PRESSURE, .location = WALK_ALL_ENDS,
                       .key = END_PSI_AFTER,
                       .help = TO_SAY("What the gauge shows at the end of the readings: it shows whether the "
                                      "pressure held.")},
    [ASK_PARKED] = {STEP(STEP_PARKED, parked, true), .part = WALK_FINISH,
                    .title = TO_SAY("Nobody at the rods, pedal released, then parking brake set? Type yes"),
                    .help = TO_SAY("The pedal comes up first: a spring brake on top of a full application strains "
                                   "the brakes with both forces. The chocks hold the vehicle meanwhile. A parking "
                                   "brake that does not set: never, which is a defect; the chocks stay in.")},
    [ASK_CHOCKS_AWAY] = {STEP(TO_SAY("chocks_away"), only_yes, false), .part = WALK_FINISH,
                         .title = TO_SAY("Everybody clear, chocks stowed? Type yes"),
                         .help = TO_SAY("Type skip if the vehicle stays chocked, because it will be repaired here. "
                                        "The pull against the parking brake is then not done.")},

    [ASK_CHAMBER] = {.name = TO_SAY("chamber"), .title = TO_SAY("chamber"), .part = WALK_RELEASED,
                     .kind = WALK_CHAMBER, .location = WALK_END, .key = END_CHAMBER,
                     .help = TO_SAY("As stamped on the housing: 20, 30, 24L, 30/30 (the first number is the service "
                                    "chamber), bolt C, roto 30, DD-3. Not legible: type clues and what you see "
                                    "(clues clamp, square ports, diameter 8 1/8), or skip.")},
    [ASK_CLASS] = {.name = TO_SAY("stroke_class"), .title = TO_SAY("stroke class: s standard, l long, u unknown"),
                   .part = WALK_RELEASED, .kind = WALK_CLASS, .location = WALK_END, .key = END_CLASS, .words = classes,
                   .help = TO_SAY("Long: square ports (type square), a trapezoid tag (trapezoid), or L or LS in the "
                                  "mark. Standard: only if something says so; round ports or no tag prove nothing. "
                                  "Unknown is judged as standard, the strict side.")},
    [ASK_RATED] = {.name = TO_SAY("rated_stroke"), .title = TO_SAY("rated stroke marked on it"), .optional = true,
                   .part = WALK_RELEASED, .kind = WALK_LENGTH, .location = WALK_END, .key = END_RATED,
                   .help = TO_SAY("Full travel on the tag or housing, such as 3. It is not the limit, but it "
                                  "decides which one holds for this chamber.")},
    [ASK_MARKED] = {.name = TO_SAY("marked_limit"), .title = TO_SAY("limit marked on it"), .optional = true,
                    .part = WALK_RELEASED, .kind = WALK_LENGTH, .location = WALK_END, .key = END_MARKED,
                    .help = TO_SAY("A readjustment limit on the housing; no table has this chamber.")},
    [ASK_ADJUSTER] = {.name = TO_SAY("adjuster"), .title = TO_SAY("adjuster: a automatic, m manual"),
                      .part = WALK_RELEASED, .kind = WALK_WORD, .location = WALK_END, .key = END_ADJUSTER,
                      .words = adjusters,
                      .help = TO_SAY("An automatic slack adjuster has a second rod or housing to the pushrod. It "
                                     "changes what is to be done, never the verdict.")},
    [ASK_ARM] = {.name = TO_SAY("arm_length"), .title = TO_SAY("slack arm length"), .optional = true,
                 .part = WALK_RELEASED, .kind = WALK_LENGTH, .location = WALK_END, .key = END_ARM,
                 .help = TO_SAY("Centre of the camshaft to centre of the clevis pin. Both ends of an axle must be "
                                "alike (49 CFR 393.47(c)).")},
    [ASK_END_RELEASED] = {.name = TO_SAY("released"), .title = TO_SAY("released"), .part = WALK_RELEASED,
                          .kind = WALK_LENGTH, .location = WALK_END, .key = END_RELEASED,
                          .help = TO_SAY("Chamber face to centre of the clevis pin, brakes released: 2 1/8, 2-1/8, "
                                         "2.125, 54 mm. With a mark at the chamber face it is 0. Both times from "
                                         "the same spot.")},
    [ASK_END_APPLIED] = {.name = TO_SAY("applied"), .title = TO_SAY("applied"), .part = WALK_APPLIED,
                         .kind = WALK_LENGTH, .location = WALK_END, .key = END_APPLIED,
                         .help = TO_SAY("The same distance as before, pedal held down: from the chamber face to the "
                                        "same pin. Not the stroke by itself.")},

    [ASK_PRESSURE] = {.name = TO_SAY("pressure"), .title = TO_SAY("Pressure, psi"), .kind = WALK_PRESSURE,
                      .location = WALK_CHECK, .key = CHECK_PRESSURE,
                      .help = TO_SAY("As the gauge shows it; kPa with the unit: 420 kPa. If it did not happen at "
                                     "all, type never: that is a defect. skip means that the check was not done.")},
    [ASK_CUT_OUT] = {.name = TO_SAY("cut_out"), .title = TO_SAY("Governor cut-out, psi"), .optional = true,
                     .kind = WALK_PRESSURE, .location = WALK_CHECK, .key = CHECK_CUT_OUT,
                     .help = TO_SAY("Where the compressor stops pumping: a figure of this check goes by it.")},
    [ASK_FROM] = {.name = TO_SAY("before"), .title = TO_SAY("Timed from, psi"), .kind = WALK_PRESSURE,
                  .location = WALK_CHECK, .key = CHECK_BEFORE,
                  .help = TO_SAY("The pressure at which you started the clock.")},
    [ASK_TO] = {.name = TO_SAY("after"), .title = TO_SAY("Timed to, psi"), .kind = WALK_PRESSURE,
                .location = WALK_CHECK, .key = CHECK_AFTER, .help = TO_SAY("The pressure at which you stopped it.")},
    [ASK_BEFORE] = {.name = TO_SAY("before"), .title = TO_SAY("Pressure at the start, psi"), .kind = WALK_PRESSURE,
                    .location = WALK_CHECK, .key = CHECK_BEFORE,
                    .help = TO_SAY("As the gauge shows it when the test begins. With the pedal held: when the "
                                   "needle stands still after the first drop.")},
    [ASK_AFTER] = {.name = TO_SAY("after"), .title = TO_SAY("Pressure at the end, psi"), .kind = WALK_PRESSURE,
                   .location = WALK_CHECK, .key = CHECK_AFTER,
                   .help = TO_SAY("As the gauge shows it when the test ends.")},
    [ASK_SECONDS] = {.name = TO_SAY("seconds"), .title = TO_SAY("Seconds it took (or never)"), .kind = WALK_CLOCK,
                     .location = WALK_CHECK, .key = CHECK_SECONDS,
                     .help = TO_SAY("38, 31.5, or minutes and seconds: 2:05. If the pressure did not get there: "
                                    "never.")},
    [ASK_LENGTH] = {.name = TO_SAY("seconds"), .title = TO_SAY("Seconds it lasts"), .kind = WALK_CLOCK,
                    .location = WALK_CHECK, .key = CHECK_SECONDS,
                    .help = TO_SAY("From the first pressure to the second: 60, or 2:00 where the rule asks for two "
                                   "minutes. At a terminal t counts them down, t 120 counts 120.")},
    [ASK_SPAN] = {.name = TO_SAY("span"), .title = TO_SAY("Timed from: w warning, a applications, r recovery"),
                  .kind = WALK_WORD, .location = WALK_CHECK, .key = CHECK_SPAN, .words = spans,
                  .help = TO_SAY("w: from where the warning stops. a: from after five full applications. r: back to "
                                 "the pressure before one full application.")},
    [ASK_ACTUAL] = {.name = TO_SAY("reservoir_volume"), .title = TO_SAY("Volume of the reservoirs, cubic inches"),
                    .kind = WALK_NUMBER, .location = WALK_CHECK, .key = CHECK_ACTUAL,
                    .help = TO_SAY("All reservoirs of the vehicle together, from their plates.")},
    [ASK_REQUIRED] = {.name = TO_SAY("required_volume"), .title = TO_SAY("Volume that is required, cubic inches"),
                      .kind = WALK_NUMBER, .location = WALK_CHECK, .key = CHECK_REQUIRED,
                      .help = TO_SAY("Twelve times the volume of the service chambers of a truck or bus (49 CFR "
                                     "571.121, S5.1.2.1).")},
    [ASK_ANSWER] = {.name = TO_SAY("answer"), .title = TO_SAY("Is it so, y or n"), .kind = WALK_WORD,
                    .location = WALK_CHECK, .key = CHECK_ANSWER, .words = yes_no,
                    .help = TO_SAY("y is yes, n is no.")},
};

const char *walk_part_title(walk_part part)
{
    static const char *const titles[WALK_PARTS] = {
        [WALK_SAFETY] = TO_SAY("Safety first"),           [WALK_VEHICLE] = TO_SAY("The vehicle"),
        [WALK_SECURE] = TO_SAY("Secure it"),              [WALK_AIR_OFF] = TO_SAY("Air, from full to empty"),
        [WALK_AIR_ON] = TO_SAY("Air, engine running"),    [WALK_SET_UP] = TO_SAY("Set up for the strokes"),
        [WALK_RELEASED] = TO_SAY("Wheel ends, released"), [WALK_APPLICATION] = TO_SAY("The full application"),
        [WALK_APPLIED] = TO_SAY("Wheel ends, applied"),   [WALK_FINISH] = TO_SAY("Finish")};
    return say(titles[part]);
}

const char *walk_title(const inspection_record *record, const walk_item *item)
{
    static const char *const where[RODT_AIR_CHECK_END] = {
        [RODT_AIR_CHECK_WARNING] = TO_SAY("Warning came on at, psi (or never)"),
        [RODT_AIR_CHECK_CUT_OUT] = TO_SAY("Compressor stopped pumping at, psi (or never)"),
        [RODT_AIR_CHECK_CUT_IN] = TO_SAY("Compressor started again at, psi (or never)"),
        [RODT_AIR_CHECK_TRACTOR_PROTECTION] = TO_SAY("Pressure kept in the tractor, psi (or never)"),
        [RODT_AIR_CHECK_SUPPLY_VALVE] = TO_SAY("Supply valve closed at, psi (or never)"),
        [RODT_AIR_CHECK_PARKING_VALVE] = TO_SAY("Parking valve popped out at, psi (or never)")};
    static const char *const answers[RODT_AIR_CHECK_END] = {
        [RODT_AIR_CHECK_SPRING_BRAKE] = TO_SAY("Did the parking brake hold, y or n"),
        [RODT_AIR_CHECK_DRAIN] = TO_SAY("Drain valves free, reservoirs emptied, y or n"),
        [RODT_AIR_CHECK_AUDIBLE_LEAK] = TO_SAY("Is a leak heard, y or n"),
        [RODT_AIR_CHECK_CONTAMINATION] = TO_SAY("Did oil, sludge or much moisture come out, y or n"),
        [RODT_AIR_CHECK_TRACTOR_PROTECTION] = TO_SAY("Did air come out of the service line, y or n"),
        [RODT_AIR_CHECK_TRAILER_BRAKES] = TO_SAY("Did the trailer's spring brakes apply, y or n")};
    const char *title = item->id == ASK_PRESSURE ? where[item->check]
                        : item->id == ASK_ANSWER ? answers[item->check] : NULL;
    if (item->id == ASK_BEFORE && item->check == RODT_AIR_CHECK_LOSS_APPLIED)
        title = TO_SAY("Pressure at the start, pedal held, after the first drop, psi");
    const walk_question *question = &walk_questions[item->id];
    if (title == NULL)
        title = question->single != NULL && !record_may_tow(record) ? question->single : question->title;
    return say(title);
}

/* How titles name what a person types. */
static const char *const typed[] = {
    TO_SAY(" Type yes"), TO_SAY(", y or n"), TO_SAY(" (or never)"), TO_SAY(" yes, or those that changed: 2L 3R"),
    TO_SAY(" (a combination: unit by unit, 3 2)")};

/* "Drums: c cold, w warm, h hot": the words are behind the colon, before which some languages have a hard blank. */
static size_t size_before_words(const char *title)
{
    static const char hard_blank[] = "\xC2\xA0";
    const char *colon = strstr(title, ": ");
    size_t size = colon != NULL ? (size_t)(colon - title) : strlen(title), blank = strlen(hard_blank);
    return colon != NULL && size > blank && memcmp(colon - blank, hard_blank, blank) == 0 ? size - blank : size;
}

void walk_short_title(const inspection_record *record, const walk_item *item, char text[SAID_SIZE])
{
    const char *title = walk_title(record, item);
    size_t size = strlen(title);
    for (size_t i = 0; i < COUNT_OF(typed); i++) {
        const char *end = say(typed[i]);
        size_t length = strlen(end);
        if (size > length && strcmp(title + size - length, end) == 0)
            size -= length;
    }
    if (size == strlen(title) && walk_questions[item->id].words != NULL)
        size = size_before_words(title);
    snprintf(text, SAID_SIZE, "%.*s", (int)size, title);
}
