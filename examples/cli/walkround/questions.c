/* SPDX-License-Identifier: Apache-2.0 */
/* The questions of a walk-round: their words, their help, and where the answer goes. */
#include "walkround/walkround.h"

static const walk_word only_yes[] = {{"y", "yes"}, {"yes", "yes"}, {NULL, NULL}};
static const walk_word yes_no[] = {{"y", "yes"}, {"yes", "yes"}, {"n", "no"}, {"no", "no"}, {NULL, NULL}};
static const walk_word vehicles[] = {
    {"s", "single"},           {"c", "combination"},             {"b", "bus"},
    {"single", "single"},      {"truck", "single"},              {"straight truck", "single"},
    {"comb", "combination"},   {"combination", "combination"},   {"tractor-trailer", "combination"},
    {"tractor", "combination"}, {"tractor trailer", "combination"}, {"semi", "combination"},
    {"bus", "bus"},            {"coach", "bus"},                 {NULL, NULL}};
static const walk_word springs[] = {{"y", "released"}, {"yes", "released"}, {"released", "released"},
                                    {"n", "on"},       {"no", "on"},        {"on", "on"}, {NULL, NULL}};
static const walk_word engines[] = {{"y", "off"}, {"yes", "off"}, {"off", "off"},
                                    {"n", "on"},  {"no", "on"},   {"on", "on"}, {NULL, NULL}};
static const walk_word drums[] = {{"c", "cold"}, {"cold", "cold"}, {"w", "warm"}, {"warm", "warm"},
                                  {"h", "hot"},  {"hot", "hot"},   {NULL, NULL}};
static const walk_word adjusters[] = {{"a", "automatic"}, {"auto", "automatic"}, {"automatic", "automatic"},
                                      {"m", "manual"},    {"manual", "manual"},  {NULL, NULL}};
static const walk_word spans[] = {{"w", "warning"},      {"warning", "warning"},   {"a", "applications"},
                                  {"applications", "applications"}, {"r", "recovery"}, {"recovery", "recovery"},
                                  {NULL, NULL}};
static const walk_word classes[] = {{"s", "standard"},    {"square", "long"},     {"trapezoid", "long"},
                                    {"u", "unknown"},     {"unknown", "unknown"}, {NULL, NULL}};

#define STEP(step, list, must)                                                                    \
    .name = (step), .kind = WALK_WORD, .location = WALK_STEP, .words = (list), .mandatory = (must)

const walk_question walk_questions[ASK_IDS] = {
    [ASK_CAUTIONS] = {STEP(STEP_CAUTIONS, only_yes, true), .part = WALK_SAFETY,
                      .title = "Have you read this, and will you do it? Type yes",
                      .help = "These rules keep people alive; the walk-round begins when you have typed yes."},
    [ASK_UNIT] = {.name = "unit", .title = "Unit number", .optional = true, .part = WALK_VEHICLE, .kind = WALK_TEXT,
                  .location = WALK_HEAD, .key = HEAD_UNIT,
                  .help = "As your firm names the truck and trailers; free text."},
    [ASK_CARRIER] = {.name = "carrier", .title = "Carrier", .optional = true, .part = WALK_VEHICLE, .kind = WALK_TEXT,
                     .location = WALK_HEAD, .key = HEAD_CARRIER,
                     .help = "Who operates the vehicle; a daily report must name it in most places."},
    [ASK_TIME] = {.name = "time", .title = "Time", .optional = true, .part = WALK_VEHICLE, .kind = WALK_TEXT,
                  .location = WALK_HEAD, .key = HEAD_TIME, .help = "Of the inspection, such as 06:40."},
    [ASK_PLATES] = {.name = "plates", .title = "Plate or VIN of each unit, commas between", .optional = true,
                    .part = WALK_VEHICLE, .kind = WALK_PLATES, .location = WALK_UNITS, .key = UNIT_PLATE,
                    .help = "From the front: AB 1234, R 27. A dolly may have none: AB 1234, R 27, , R 28."},
    [ASK_REPAIR] = {.name = "repair", .title = "Repaired by whom, and when", .optional = true, .part = WALK_FINISH,
                    .kind = WALK_TEXT, .location = WALK_HEAD, .key = HEAD_REPAIR,
                    .help = "Leave it out while nothing is repaired; later: walkround with --back repair."},
    [ASK_KEPT] = {.name = "kept", .title = "Is every wheel end still as listed? yes, or those that changed: 2L 3R",
                  .mandatory = true, .part = WALK_RELEASED, .kind = WALK_KEPT, .location = WALK_STEP,
                  .help = "Look at every chamber and adjuster before you answer. A wheel end that you name is asked "
                          "for its chamber, adjuster and arm again."},
    [ASK_INSPECTOR] = {.name = "inspector", .title = "Who inspects", .optional = true, .part = WALK_VEHICLE,
                       .kind = WALK_TEXT, .location = WALK_HEAD, .key = HEAD_INSPECTOR,
                       .help = "The name under the report."},
    [ASK_PLACE] = {.name = "place", .title = "Place", .optional = true, .part = WALK_VEHICLE, .kind = WALK_TEXT,
                   .location = WALK_HEAD, .key = HEAD_PLACE, .help = "Where the vehicle is; free text."},
    [ASK_ODOMETER] = {.name = "odometer", .title = "Odometer", .optional = true, .part = WALK_VEHICLE,
                      .kind = WALK_TEXT,
                      .location = WALK_HEAD, .key = HEAD_ODOMETER, .help = "With its unit, such as 412608 km."},
    [ASK_VEHICLE] = {.name = "vehicle", .title = "Vehicle: s single truck, c combination, b bus", .part = WALK_VEHICLE,
                     .kind = WALK_WORD, .location = WALK_HEAD, .key = HEAD_VEHICLE, .words = vehicles,
                     .help = "s or truck: one unit. c or tractor-trailer: a truck or tractor with trailers. b or bus: "
                             "one unit that carries passengers. Some air checks have other figures for each."},
    [ASK_TOWED] = {.name = "towed_units", .title = "Towed units", .part = WALK_VEHICLE, .kind = WALK_COUNT,
                   .location = WALK_HEAD, .key = HEAD_TOWED,
                   .help = "How many trailers are towed. Does a dolly count as a trailer? Your rule set decides; "
                           "without one, leave it out: that is the strict side."},
    [ASK_BUILT] = {.name = "built", .title = "Year built", .optional = true, .part = WALK_VEHICLE, .kind = WALK_BUILT,
                   .location = WALK_HEAD, .key = HEAD_BUILT,
                   .help = "A year, or a day such as 1975-03-01: a figure of this rule set goes by the day of build."},
    [ASK_AXLES] = {.name = "axles", .title = "How many axles (a combination: unit by unit, 3 2)", .mandatory = true,
                   .part = WALK_VEHICLE,
                   .kind = WALK_AXLES, .location = WALK_STEP,
                   .help = "Every axle with brakes, counted from the front through every unit. Each has a left and a "
                           "right wheel end: 1L, 1R, 2L and so on. 3 2 is a tractor of 3 and a trailer of 2 axles; "
                           "d1 is a dolly of 1: 3 2 d1 2. A single number leaves the units open: 5."},
    [ASK_CHOCKS] = {STEP("chocks", only_yes, true), .part = WALK_SECURE,
                    .title = "Level ground, wheels chocked front and back, nobody in the way? Type yes",
                    .help = "Later the parking brake is released while somebody is at the wheels; only the chocks "
                            "hold the vehicle then. Chock before you type yes."},
    [ASK_AIR_READY] = {STEP("air_ready", only_yes, false), .part = WALK_AIR_OFF,
                       .title = "Chocks in place, parking brake released on every unit? Type yes",
                       .help = "With a parking brake set, part of the system is empty and a leak in it does not show. "
                               "If it does not release: skip; the leak tests are then not done."},
    [ASK_DRAINS_CLOSED] = {STEP("drains_closed", only_yes, false), .part = WALK_AIR_ON,
                           .title = "All drain valves closed again? Type yes",
                           .help = "With an open drain valve the pressure builds up slowly or not at all."},
    [ASK_SPRING] = {.name = "spring_brake", .title = "Parking brake released on every unit, y or n",
                    .mandatory = true, .part = WALK_SET_UP, .kind = WALK_WORD, .location = WALK_ALL_ENDS,
                    .key = END_SPRING,
                    .words = springs,
                    .help = "A spring brake that is on pushes the rod out: the first reading would be far too long and "
                            "the stroke too short. Chocks in place, air up, both knobs pushed in."},
    [ASK_ENGINE] = {.name = "engine", .title = "Engine off, y or n", .mandatory = true, .part = WALK_SET_UP,
                    .kind = WALK_WORD, .location = WALK_ALL_ENDS, .key = END_ENGINE, .words = engines,
                    .help = "With the engine running the pressure is not what the gauge said before."},
    [ASK_DRUM] = {.name = "drum", .title = "Drums: c cold, w warm, h hot", .optional = true, .part = WALK_SET_UP,
                  .kind = WALK_WORD, .location = WALK_ALL_ENDS, .key = END_DRUM, .words = drums,
                  .help = "A hot drum has grown and lengthens the stroke. Hold a hand near, do not touch."},
    [ASK_DIVISION] = {.name = "division", .title = "Smallest division of the tape", .part = WALK_SET_UP,
                      .kind = WALK_LENGTH, .location = WALK_ALL_ENDS, .key = END_DIVISION,
                      .help = "The distance between two neighbouring marks: 1/16, 1/8, 1 mm. The report says from it "
                              "what the tape proves."},
    [ASK_RESERVOIRS] = {.name = "reservoirs", .title = "Volume of the reservoirs, cubic inches", .optional = true,
                        .part = WALK_APPLICATION, .kind = WALK_NUMBER, .location = WALK_STEP,
                        .help = "All reservoirs that feed the brakes together, from their plates. Only for an estimate "
                                "of the pressure to start from."},
    [ASK_PSI] = {.name = "psi", .title = "Reservoir pressure, psi", .part = WALK_APPLICATION, .kind = WALK_PRESSURE,
                 .location = WALK_ALL_ENDS, .key = END_PSI,
                 .help = "The gauge, engine off, just before the pedal goes down; kPa with the unit: 655 kPa. Low air "
                         "hides a long stroke, high air makes one."},
    [ASK_HELD] = {STEP("application", only_yes, false), .part = WALK_APPLICATION,
                  .title = "Pedal fully down and held? Type yes",
                  .help = "A helper or a pedal jack holds it until the last reading; the trailer hand valve is no "
                          "substitute for the axles of the truck. skip, if it cannot be held: then there are no "
                          "second readings."},
    [ASK_PSI_AFTER] = {.name = "psi_after", .title = "Reservoir pressure now, still held, psi", .optional = true,
                       .part = WALK_APPLIED, .kind = WALK_PRESSURE, .location = WALK_ALL_ENDS, .key = END_PSI_AFTER,
                       .help = "What the gauge shows at the end of the readings: it shows whether the pressure held."},
    [ASK_PARKED] = {STEP("parked", only_yes, true), .part = WALK_FINISH,
                    .title = "Nobody at the rods, pedal released, then parking brake set? Type yes",
                    .help = "The pedal comes up first: a spring brake on top of a full application strains the "
                            "brakes with both forces. The chocks hold the vehicle meanwhile. A parking brake that "
                            "does not set: write it as a note, leave the chocks in, and quit here."},
    [ASK_CHOCKS_AWAY] = {STEP("chocks_away", only_yes, false), .part = WALK_FINISH,
                         .title = "Everybody clear, chocks stowed? Type yes",
                         .help = "Type skip if the vehicle stays chocked, because it will be repaired here. The pull "
                                 "against the parking brake is then not done."},

    [ASK_CHAMBER] = {.name = "chamber", .title = "chamber", .part = WALK_RELEASED, .kind = WALK_CHAMBER,
                     .location = WALK_END, .key = END_CHAMBER,
                       .help = "As stamped on the housing: 20, 30, 24L, 30/30 (the first number is the service "
                             "chamber), bolt C, roto 30, DD-3. Not legible: type diameter and what the tape says "
                             "across it (diameter 8 1/8), or skip."},
    [ASK_CLASS] = {.name = "stroke_class", .title = "stroke class: s standard, l long, u unknown",
                   .part = WALK_RELEASED, .kind = WALK_CLASS, .location = WALK_END, .key = END_CLASS, .words = classes,
                   .help = "Long: square ports (type square), a trapezoid tag (trapezoid), or L or LS in the mark. "
                           "Standard: only if something says so; round ports or no tag prove nothing. Unknown is "
                           "judged as standard, the strict side."},
    [ASK_RATED] = {.name = "rated_stroke", .title = "rated stroke marked on it", .optional = true,
                   .part = WALK_RELEASED,
                   .kind = WALK_LENGTH, .location = WALK_END, .key = END_RATED,
                   .help = "Full travel on the tag or housing, such as 3. It is not the limit, but it decides which "
                           "one holds for this chamber."},
    [ASK_MARKED] = {.name = "marked_limit", .title = "limit marked on it", .optional = true, .part = WALK_RELEASED,
                    .kind = WALK_LENGTH, .location = WALK_END, .key = END_MARKED,
                    .help = "A readjustment limit on the housing; no table has this chamber."},
    [ASK_ADJUSTER] = {.name = "adjuster", .title = "adjuster: a automatic, m manual", .part = WALK_RELEASED,
                      .kind = WALK_WORD, .location = WALK_END, .key = END_ADJUSTER, .words = adjusters,
                      .help = "An automatic slack adjuster has a second rod or housing to the pushrod. It changes what "
                              "is to be done, never the verdict."},
    [ASK_ARM] = {.name = "arm_length", .title = "slack arm length", .optional = true, .part = WALK_RELEASED,
                 .kind = WALK_LENGTH, .location = WALK_END, .key = END_ARM,
                 .help = "Centre of the camshaft to centre of the clevis pin. Both ends of an axle must be alike "
                         "(49 CFR 393.47(c))."},
    [ASK_END_RELEASED] = {.name = "released", .title = "released", .part = WALK_RELEASED, .kind = WALK_LENGTH,
                          .location = WALK_END, .key = END_RELEASED,
                          .help = "Chamber face to centre of the clevis pin, brakes released: 2 1/8, 2-1/8, 2.125, "
                                  "54 mm. With a mark at the chamber face it is 0. Both times from the same spot."},
    [ASK_END_APPLIED] = {.name = "applied", .title = "applied", .part = WALK_APPLIED, .kind = WALK_LENGTH,
                         .location = WALK_END, .key = END_APPLIED,
                         .help = "The same distance as before, pedal held down: from the chamber face to the same pin. "
                                 "Not the stroke by itself."},

    [ASK_PRESSURE] = {.name = "pressure", .title = "Pressure, psi", .kind = WALK_PRESSURE, .location = WALK_CHECK,
                      .key = CHECK_PRESSURE,
                      .help = "As the gauge shows it; kPa with the unit: 420 kPa. If it did not happen at all, type "
                              "never: that is a defect. skip means that the check was not done."},
    [ASK_CUT_OUT] = {.name = "cut_out", .title = "Governor cut-out, psi", .optional = true, .kind = WALK_PRESSURE,
                     .location = WALK_CHECK, .key = CHECK_CUT_OUT,
                     .help = "Where the compressor stops pumping: a figure of this check goes by it."},
    [ASK_FROM] = {.name = "before", .title = "Timed from, psi", .kind = WALK_PRESSURE, .location = WALK_CHECK,
                  .key = CHECK_BEFORE, .help = "The pressure at which you started the clock."},
    [ASK_TO] = {.name = "after", .title = "Timed to, psi", .kind = WALK_PRESSURE, .location = WALK_CHECK,
                .key = CHECK_AFTER, .help = "The pressure at which you stopped it."},
    [ASK_BEFORE] = {.name = "before", .title = "Pressure at the start, psi", .kind = WALK_PRESSURE,
                    .location = WALK_CHECK,
                    .key = CHECK_BEFORE, .help = "As the gauge shows it when the test begins. With the pedal held: "
                                                 "when the needle stands still after the first drop."},
    [ASK_AFTER] = {.name = "after", .title = "Pressure at the end, psi", .kind = WALK_PRESSURE, .location = WALK_CHECK,
                   .key = CHECK_AFTER, .help = "As the gauge shows it when the test ends."},
    [ASK_SECONDS] = {.name = "seconds", .title = "Seconds it took (or never)", .kind = WALK_CLOCK,
                     .location = WALK_CHECK, .key = CHECK_SECONDS,
                     .help = "38, 31.5, or minutes and seconds: 2:05. If the pressure did not get there: never."},
    [ASK_LENGTH] = {.name = "seconds", .title = "Seconds it lasts", .kind = WALK_CLOCK, .location = WALK_CHECK,
                    .key = CHECK_SECONDS,
                    .help = "From the first pressure to the second: 60, or 2:00 where the rule asks for two minutes. "
                            "At a terminal t counts them down, t 120 counts 120."},
    [ASK_SPAN] = {.name = "span", .title = "Timed from: w warning, a applications, r recovery",
                  .kind = WALK_WORD, .location = WALK_CHECK, .key = CHECK_SPAN, .words = spans,
                  .help = "w: from where the warning stops. a: from after five full applications. r: back to the "
                          "pressure before one full application."},
    [ASK_ACTUAL] = {.name = "reservoir_volume", .title = "Volume of the reservoirs, cubic inches",
                    .kind = WALK_NUMBER, .location = WALK_CHECK, .key = CHECK_ACTUAL,
                    .help = "All reservoirs of the vehicle together, from their plates."},
    [ASK_REQUIRED] = {.name = "required_volume", .title = "Volume that is required, cubic inches",
                      .kind = WALK_NUMBER, .location = WALK_CHECK, .key = CHECK_REQUIRED,
                      .help = "Twelve times the volume of the service chambers of a truck or bus "
                              "(49 CFR 571.121, S5.1.2.1)."},
    [ASK_ANSWER] = {.name = "answer", .title = "Is it so, y or n", .kind = WALK_WORD, .location = WALK_CHECK,
                    .key = CHECK_ANSWER, .words = yes_no, .help = "y is yes, n is no."},
};

const char *walk_part_title(walk_part part)
{
    static const char *const titles[WALK_PARTS] = {
        [WALK_SAFETY] = "Safety first",           [WALK_VEHICLE] = "The vehicle",
        [WALK_SECURE] = "Secure it",              [WALK_AIR_OFF] = "Air, from full to empty",
        [WALK_AIR_ON] = "Air, engine running",    [WALK_SET_UP] = "Set up for the strokes",
        [WALK_RELEASED] = "Wheel ends, released", [WALK_APPLICATION] = "The full application",
        [WALK_APPLIED] = "Wheel ends, applied",   [WALK_FINISH] = "Finish"};
    return titles[part];
}

const char *walk_title(const walk_item *item)
{
    static const char *const where[RODT_AIR_CHECK_END] = {
        [RODT_AIR_CHECK_WARNING] = "Warning came on at, psi (or never)",
        [RODT_AIR_CHECK_CUT_OUT] = "Compressor stopped pumping at, psi (or never)",
        [RODT_AIR_CHECK_CUT_IN] = "Compressor started again at, psi (or never)",
        [RODT_AIR_CHECK_TRACTOR_PROTECTION] = "Pressure kept in the tractor, psi (or never)",
        [RODT_AIR_CHECK_SUPPLY_VALVE] = "Supply valve closed at, psi (or never)",
        [RODT_AIR_CHECK_PARKING_VALVE] = "Parking valve popped out at, psi (or never)"};
    static const char *const answers[RODT_AIR_CHECK_END] = {
        [RODT_AIR_CHECK_SPRING_BRAKE] = "Did the parking brake hold, y or n",
        [RODT_AIR_CHECK_DRAIN] = "Drain valves free, reservoirs emptied, y or n",
        [RODT_AIR_CHECK_AUDIBLE_LEAK] = "Is a leak heard, y or n",
        [RODT_AIR_CHECK_CONTAMINATION] = "Did oil, sludge or much moisture come out, y or n",
        [RODT_AIR_CHECK_TRACTOR_PROTECTION] = "Did air come out of the service line, y or n",
        [RODT_AIR_CHECK_TRAILER_BRAKES] = "Did the trailer's spring brakes apply, y or n"};
    const char *title = item->id == ASK_PRESSURE ? where[item->check]
                        : item->id == ASK_ANSWER ? answers[item->check] : NULL;
    if (item->id == ASK_BEFORE && item->check == RODT_AIR_CHECK_LOSS_APPLIED)
        title = "Pressure at the start, pedal held, after the first drop, psi";
    return title != NULL ? title : walk_questions[item->id].title;
}
