/* SPDX-License-Identifier: Apache-2.0 */
/* The functions of core.i, a part of it. */

%newobject chamber_rated_volume;
%newobject reservoir_required_volume;
%newobject reservoir_build_up_seconds;
%newobject reservoir_estimate_application;
%newobject step_text;
%newobject step_row_json;

%{
static bool core_estimate(rodt_ratio of[4], const char *pressure, const char *reservoir, const char *chambers,
                          const char *fill) {
  const char *const texts[4] = {pressure, reservoir, chambers, fill};
  for (int i = 0; i < 4 && core_error.status == RODT_OK; i++)
    of[i] = core_ratio(texts[i]);
  return core_error.status == RODT_OK;
}

static void core_estimated(rodt_status status) {
  core_error.status = status;
  if (status != RODT_OK)
    core_refuse(status, "estimate", "the reservoir is above zero, the chambers are not below it, and a fill is 0 to 1");
}

static rodt_step core_step(const Rules *rules, const Record *vehicle, int index) {
  const rodt_air_reading *of = (const rodt_air_reading *)core_value(vehicle, "rodt_air_reading");
  return of != NULL && index >= 0 ? rodt_step_at(core_law(rules), (rodt_vehicle_class)of->vehicle, (size_t)index)
                                  : RODT_STEP_NONE;
}

static const rodt_air_limit *core_step_row(const Rules *rules, const Record *vehicle, int index, int row) {
  const rodt_step step = core_step(rules, vehicle, index);
  return core_error.status == RODT_OK && row >= 0
             ? rodt_step_row_at(step, core_law(rules), (const rodt_air_reading *)vehicle->value, (size_t)row)
             : NULL;
}
%}

/* --- What is done with records ----------------------------------------------------------------------- */

%inline %{
/* An air check: form is a rodt_air_form, the result a rodt_air_finding. */
Record *judge_air(Record *form, Rules *rules) {
  const rodt_air_form *given = (const rodt_air_form *)core_value(form, "rodt_air_form");
  Record *made = given != NULL ? core_record("rodt_air_finding", core_law(rules)) : NULL;
  if (made != NULL)
    core_error.status = rodt_air_form_judge(given, core_law(rules), (rodt_air_finding *)made->value, &core_error);
  return core_kept(made);
}

/* The roadside criterion: tally is a rodt_tally, the result a rodt_count; brakes 0 = as many as are counted. */
Record *judge_tally(Record *tally, int brakes) {
  const rodt_tally *given = (const rodt_tally *)core_value(tally, "rodt_tally");
  Record *made = given != NULL ? core_record("rodt_count", NULL) : NULL;
  if (brakes < 0)
    core_refuse(RODT_E_ARGUMENT, "brakes", "a vehicle has no fewer than no brakes");
  else if (made != NULL)
    core_error.status = rodt_tally_judge(given, (uint32_t)brakes, (rodt_count *)made->value, &core_error);
  return core_kept(made);
}

/* Counts a finding in. */
void add_to_tally(Record *tally, Finding *finding) {
  rodt_tally *given = (rodt_tally *)core_value(tally, "rodt_tally");
  if (given != NULL)
    core_error.status = rodt_tally_add(given, finding != NULL ? &finding->finding : NULL, &core_error);
}

/* Which chamber it can be: clues are rodt_clues, the result a rodt_identification. */
Record *identify(Record *clues, Rules *rules, const char *day) {
  const rodt_clues *given = (const rodt_clues *)core_value(clues, "rodt_clues");
  const rodt_date on = core_day(day);
  Record *made = core_error.status == RODT_OK ? core_record("rodt_identification", core_law(rules)) : NULL;
  if (made != NULL)
    core_error.status = rodt_clues_identify(given, core_law(rules), on, (rodt_identification *)made->value, &core_error);
  if (made != NULL)
    made->day = on;
  return core_kept(made);
}

/* The limit for a rodt_chamber on a day, as a rodt_limit_answer. */
Record *find_limit(Record *chamber, Rules *rules, const char *day) {
  const rodt_chamber *given = (const rodt_chamber *)core_value(chamber, "rodt_chamber");
  const rodt_date on = core_day(day);
  Record *made = core_error.status == RODT_OK ? core_record("rodt_limit_answer", core_law(rules)) : NULL;
  if (made != NULL)
    core_error.status = rodt_rules_find_limit(core_law(rules), given, on, (rodt_limit_answer *)made->value, &core_error);
  return core_kept(made);
}

/* A rodt_chamber of the mark on its housing. */
Record *chamber(const char *mark) {
  Record *made = core_record("rodt_chamber", NULL);
  if (made != NULL)
    core_error.status = rodt_chamber_parse(mark, (rodt_chamber *)made->value, &core_error);
  return core_kept(made);
}

/* --- Single texts: an exact number as "7/4", a day as "2024-05-06" ------------------------------------ */

/* unit: "in", "mm", "cm", "" = inches. */
char *read_length(const char *text, const char *unit) {
  rodt_style style;
  RODT_ENUM32(rodt_unit) written;
  rodt_length length = {0, 0};
  memset(&style, 0, sizeof style);
  if (unit != NULL && unit[0] != '\0' && rodt_unit_find(unit, &style.unit) != RODT_OK)
    core_refuse(RODT_E_ARGUMENT, "unit", "a unit of lengths is in, mm or cm");
  else
    core_error.status = rodt_length_parse_n(text, text != NULL ? strlen(text) : 0, &style, &length, &written, &core_error);
  rodt_reading holder;
  memset(&holder, 0, sizeof holder);
  holder.released = length;
  return core_error.status == RODT_OK ? core_exact(rodt_record_find("rodt_reading"), &holder, "released") : NULL;
}

/* In psi, whatever unit it is written in. */
char *read_pressure(const char *text) {
  rodt_reading holder;
  memset(&holder, 0, sizeof holder);
  core_error.status = rodt_pressure_parse(text, &holder.pressure, &core_error);
  return core_error.status == RODT_OK ? core_exact(rodt_record_find("rodt_reading"), &holder, "pressure") : NULL;
}

char *read_seconds(const char *text) {
  rodt_air_reading holder;
  memset(&holder, 0, sizeof holder);
  core_error.status = rodt_seconds_parse(text, &holder.seconds, &core_error);
  return core_error.status == RODT_OK ? core_exact(rodt_record_find("rodt_air_reading"), &holder, "seconds") : NULL;
}

char *read_date(const char *text) {
  rodt_date day;
  core_error.status = rodt_date_parse(text, &day, &core_error);
  if (core_error.status != RODT_OK)
    return NULL;
  CORE_TEXT(made, rodt_date_format, day);
  return made;
}

/* Inches as a mixed fraction, of a numerator and a denominator: "1 3/4". */
char *write_length(long long num, long long den) {
  rodt_length length = {0, 0};
  core_error.status = rodt_length_from_inches(num, den, &length);
  if (core_error.status != RODT_OK)
    return NULL;
  CORE_TEXT(made, rodt_length_format, length);
  return made;
}

/* --- Reservoirs: exact texts, cubic inches and psi --------------------------------------------------- */

/* The rated volume of a rodt_chamber. */
char *chamber_rated_volume(Record *chamber) {
  const rodt_chamber *given = (const rodt_chamber *)core_value(chamber, "rodt_chamber");
  rodt_ratio made;
  if (given != NULL && (core_error.status = rodt_chamber_rated_volume(given, &made)) != RODT_OK)
    core_refuse((rodt_status)core_error.status, "chamber", "no volume is published for this chamber; its actual one counts");
  return core_error.status == RODT_OK ? core_number(made) : NULL;
}

/* For chambers of so many cubic inches in all: x 12, or x 8 for a trailer. */
char *reservoir_required_volume(const char *chambers, int trailer) {
  const rodt_ratio of = core_ratio(chambers);
  rodt_ratio made;
  if (core_error.status == RODT_OK && (core_error.status = rodt_reservoir_required_volume(of, trailer != 0, &made)) != RODT_OK)
    core_refuse((rodt_status)core_error.status, "chambers", "a volume is above zero, and its twelvefold fits 64 bits");
  return core_error.status == RODT_OK ? core_number(made) : NULL;
}

/* Seconds allowed from 85 to 100 psi. */
char *reservoir_build_up_seconds(const char *actual, const char *required) {
  char *made = core_arithmetic(actual, required, rodt_reservoir_build_up_seconds);
  if (made == NULL && core_error.text[0] == '\0')
    core_refuse((rodt_status)core_error.status, "volumes", "volumes are above zero, and their quotient fits 64 bits");
  return made;
}

/* An ESTIMATE, no figure of law: psi after one full application, engine off; fill 1 = the worst case. */
char *reservoir_estimate_application(const char *pressure, const char *reservoir, const char *chambers, const char *fill) {
  rodt_ratio of[4];
  if (!core_estimate(of, pressure, reservoir, chambers, fill))
    return NULL;
  const rodt_pressure before = {of[0].num, of[0].den};
  rodt_pressure after = {0, 0};
  core_estimated(rodt_reservoir_estimate_application(before, of[1], of[2], of[3], &after));
  const rodt_ratio made = {after.num, after.den};
  return core_error.status == RODT_OK ? core_number(made) : NULL;
}

/* An ESTIMATE: how many full applications keep the reservoir at `least`, at most 99. */
int reservoir_estimate_applications(const char *pressure, const char *least, const char *reservoir, const char *chambers,
                                    const char *fill) {
  rodt_ratio of[4];
  unsigned count = 0;
  const rodt_ratio kept = core_ratio(least);
  if (core_error.status != RODT_OK || !core_estimate(of, pressure, reservoir, chambers, fill))
    return 0;
  const rodt_pressure before = {of[0].num, of[0].den}, floor = {kept.num, kept.den};
  core_estimated(rodt_reservoir_estimate_applications(before, floor, of[1], of[2], of[3], &count));
  return (int)count;
}

/* --- Steps: what one says aloud; vehicle is a rodt_air_reading, of which vehicle, towed_units and built count -------- */

int step_count(Rules *rules, Record *vehicle) {
  const rodt_air_reading *of = (const rodt_air_reading *)core_value(vehicle, "rodt_air_reading");
  if (core_law(rules) == NULL)
    core_error.status = RODT_E_UNKNOWN_RULES;
  return core_error.status == RODT_OK ? (int)rodt_step_count(core_law(rules), (rodt_vehicle_class)of->vehicle) : 0;
}

/* The word of a step, "build-up"; "none" beyond the count. */
const char *step_name(Rules *rules, Record *vehicle, int index) {
  return rodt_step_name(core_step(rules, vehicle, index));
}

/* How many rows of the rule set the step can have on the vehicle. */
int step_row_count(Rules *rules, Record *vehicle, int index) {
  int count = 0;
  while (core_step_row(rules, vehicle, index, count) != NULL)
    count++;
  return count;
}

/* One text, part by its word ("title", "do", "see", "good", "defective"), with the figures of a row; row -1 = without. */
char *step_text(Rules *rules, Record *vehicle, int index, int row, const char *part, const char *language) {
  RODT_ENUM32(rodt_step_part) of = RODT_STEP_PART_TITLE;
  const rodt_step step = core_step(rules, vehicle, index);
  const rodt_air_limit *figures = row < 0 ? NULL : core_step_row(rules, vehicle, index, row);
  rodt_message message;
  if (core_error.status == RODT_OK && (part == NULL || rodt_step_part_find(part, &of) != RODT_OK))
    core_refuse(RODT_E_ARGUMENT, "part", "a step has no such text");
  if (core_error.status == RODT_OK && row >= 0 && figures == NULL)
    core_refuse(RODT_E_ARGUMENT, "row", "the step has no such row");
  if (core_error.status == RODT_OK)
    core_error.status = rodt_step_message(step, (rodt_step_part)of, core_law(rules), figures, &message);
  return core_error.status == RODT_OK ? core_say(&message, language) : NULL;
}

/* A row of the step, as air_limit_json writes it. */
char *step_row_json(Rules *rules, Record *vehicle, int index, int row, const char *language) {
  const rodt_catalogue *catalogue = core_catalogue(language);
  const rodt_air_limit *figures = core_step_row(rules, vehicle, index, row);
  if (core_error.status == RODT_OK && figures == NULL)
    core_refuse(RODT_E_ARGUMENT, "row", "the step has no such row");
  if (core_error.status != RODT_OK)
    return NULL;
  CORE_TEXT(made, rodt_air_limit_json_format, figures, catalogue, 0);
  return made;
}

/* --- Arithmetic, for languages without exact numbers: texts such as "-1/16" --------------------------- */

/* -1, 0 or 1. */
int ratio_compare(const char *a, const char *b) {
  const rodt_ratio first = core_ratio(a), second = core_error.status == RODT_OK ? core_ratio(b) : first;
  return core_error.status == RODT_OK ? rodt_ratio_compare(first, second) : 0;
}
char *ratio_sum(const char *a, const char *b) { return core_arithmetic(a, b, rodt_ratio_add); }
char *ratio_difference(const char *a, const char *b) { return core_arithmetic(a, b, rodt_ratio_subtract); }
char *ratio_product(const char *a, const char *b) { return core_arithmetic(a, b, rodt_ratio_multiply); }
char *ratio_quotient(const char *a, const char *b) { return core_arithmetic(a, b, rodt_ratio_divide); }

/* What is compiled in. */
int rules_count(void) { return (int)rodt_rules_count(); }
const char *rules_id(int index) { return rodt_rules_id(rodt_rules_at((size_t)index)); }
const char *tables_edition(void) { return rodt_tables_edition(); }
const char *version(void) { return rodt_version(); }
%}
