/* SPDX-License-Identifier: Apache-2.0 */
/* No damaged, missing or contradictory entry makes a judgement more favourable: every entry that the library describes,
 * one after the other, is left out, blanked, or replaced by each text of damages.csv. More favourable is: a pass where
 * there was none (lib/README.md, judge). */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <stdio.h>
#include <string.h>

#include "rodtravel/rodtravel.h"
#include "rules/table_parts.h"

#include "support.h"

/* --- What is tried ----------------------------------------------------------------------------------- */

enum { VALUE_OF, NOTHING_FOR, TEXT, DAMAGE_CELLS };
enum { GROUP, ENTRY, KIND, SOUND, CONTRARY, ABSENCE, ENTRY_CELLS };
#define MOST 200

static csv_file damage_file, entry_file;
static char *damages[MOST][DAMAGE_CELLS];
static char *entries[MOST][ENTRY_CELLS];
static size_t damage_count, entry_count;
static bool excused[MOST * ENTRY_CELLS]; /* by the row's place in entries */
static unsigned long tried;

static int open_lists(void **state)
{
    (void)state;
    csv_open(&damage_file, CASES "/damages.csv");
    while (csv_read_case(&damage_file, damages[damage_count], DAMAGE_CELLS, "value_of"))
        damage_count++;
    csv_open(&entry_file, CASES "/entries.csv");
    while (csv_read_case(&entry_file, entries[entry_count], ENTRY_CELLS, "group"))
        entry_count++;
    return damage_count > 50 && entry_count > 20 ? 0 : -1;
}

static int close_lists(void **state)
{
    (void)state;
    csv_close(&damage_file);
    csv_close(&entry_file);
    return 0;
}

static bool has_word(const char *list, const char *word)
{
    size_t size = strlen(word);
    for (const char *at = strstr(list, word); at != NULL; at = strstr(at + 1, word)) {
        if ((at == list || at[-1] == ' ') && (at[size] == ' ' || at[size] == '\0'))
            return true;
    }
    return false;
}

static char **find_entry(const char *group, const char *name)
{
    for (size_t i = 0; i < entry_count; i++) {
        if (strcmp(entries[i][GROUP], group) == 0 && strcmp(entries[i][ENTRY], name) == 0)
            return entries[i];
    }
    fail_msg("tests/cases/entries.csv has no row for the entry \"%s\" of %s", name, group);
    return NULL;
}

/* The texts of a form in the order of its description. */
typedef struct entry_list {
    const rodt_member *member[32];
    char **row[32];
    size_t count;
} entry_list;

static entry_list entries_of(const char *record, const char *group)
{
    const rodt_record *of = rodt_record_find(record);
    entry_list list = {.count = 0};
    for (size_t i = 0; i < rodt_member_count(of); i++) {
        const rodt_member *member = rodt_member_at(of, i);
        if (member->kind != RODT_MEMBER_KIND_TEXT_POINTER)
            continue;
        list.member[list.count] = member;
        list.row[list.count++] = find_entry(group, member->name);
    }
    return list;
}

static void put(void *form, const rodt_member *member, const char *text)
{
    memcpy((char *)form + member->offset, &text, sizeof text);
}

/* What becomes of an entry. */
typedef enum damage_kind { ANOTHER_VALUE, NOTHING, UNREADABLE } damage_kind;

/* Left out, blanked, then each text. False: that was the last one. */
static bool next_damage(size_t number, const char *kind, const char **text, damage_kind *how)
{
    static const char *const blanks[] = {NULL, "", "  \t"};
    if (number >= damage_count + 3)
        return false;
    tried++;
    *text = number < 3 ? blanks[number] : damages[number - 3][TEXT];
    *how = number < 3                                                 ? NOTHING
           : has_word(damages[number - 3][NOTHING_FOR], kind) ? NOTHING
           : has_word(damages[number - 3][VALUE_OF], kind) || strcmp(kind, "free") == 0 ? ANOTHER_VALUE
                                                                                        : UNREADABLE;
    return true;
}

/* The list of exceptions says that the entry may be left out; every exception there must be needed. */
static bool may_be_absent(char **row)
{
    bool may = row[ABSENCE][0] != '\0';
    excused[row - entries[0]] = may || excused[row - entries[0]];
    return may;
}

static void expect_needed_exceptions(const entry_list *list)
{
    for (size_t i = 0; i < list->count; i++) {
        if (list->row[i][ABSENCE][0] != '\0' && !excused[list->row[i] - entries[0]])
            fail_msg("entries.csv: nothing needs the exception of %s", list->row[i][ENTRY]);
    }
}

static const char *shown(const char *text) { return text != NULL ? text : "(left out)"; }

/* --- Wheel ends -------------------------------------------------------------------------------------- */

#define COLUMNS (MOST + 3)

typedef struct wheel_end_case {
    const rodt_rules *rules;
    const entry_list *list;
    rodt_form form;
    rodt_finding finding;
    char room[2][RODT_LENGTH_TEXT_SIZE];
    unsigned contradicted[RODT_READING_FIELDS]; /* how often the contrary value of the entry took a pass away */
} wheel_end_case;

static bool passes(const rodt_finding *finding) { return finding->verdict == RODT_VERDICT_IN_ADJUSTMENT; }

static void expect_excuse(const wheel_end_case *of, size_t entry, damage_kind how, const char *text,
                          const rodt_finding *after)
{
    if (how == UNREADABLE || !may_be_absent(of->list->row[entry]))
        fail_msg("%s, chamber %s, %s to %s: %s \"%s\" made %s of %s", rodt_rules_id(of->rules), of->form.chamber,
                 of->form.released, of->form.applied, of->list->member[entry]->name, shown(text),
                 rodt_verdict_name(after->verdict), rodt_verdict_name(of->finding.verdict));
}

static bool is_needed(size_t entry) { return entry < RODT_FIELD_NEEDED; }

/* Nothing but the texts is damaged, so the one who judges rows and the one who refuses say the same. */
static void expect_same_reader(const wheel_end_case *of, const rodt_form *form, size_t entry, damage_kind how,
                               const rodt_finding *row, const rodt_error *row_error)
{
    rodt_finding finding;
    rodt_error error;
    rodt_status status = rodt_form_judge(form, of->rules, &finding, &error);
    if ((status == RODT_OK) != (row_error->status == RODT_OK) && status != RODT_E_AMBIGUOUS)
        fail_msg("%s: %s, %s", of->list->member[entry]->name, error.text, row_error->text);
    if (how == UNREADABLE)
        assert_int_not_equal(status, RODT_OK);
    if (how == NOTHING && !is_needed(entry) && of->list->member[entry]->offset != offsetof(rodt_form, unit))
        assert_int_equal(status, RODT_OK);
    if (status == RODT_OK)
        assert_true(finding.verdict == row->verdict && finding.reasons == row->reasons);
}

/* The columns of texts judge all damages of one entry at once. */
static void expect_same_columns(const wheel_end_case *of, size_t entry, const char *const texts[], size_t rows,
                                const rodt_finding findings[])
{
    static rodt_text_span cells[RODT_READING_FIELDS][COLUMNS];
    static int32_t stroke[COLUMNS];
    static uint8_t verdict[COLUMNS], flags[COLUMNS];
    static uint64_t reasons[COLUMNS];
    rodt_text_columns in = {0};
    const rodt_form defaults = {.style = of->form.style};
    const rodt_column_out out = {.stroke = stroke, .verdict = verdict, .reasons = reasons, .flags = flags};
    rodt_text_plan *plan = NULL;
    for (size_t e = 0; e < of->list->count; e++) {
        RODT_ENUM32(rodt_field) field = RODT_FIELD_NONE;
        assert_int_equal(rodt_field_find(of->list->member[e]->name, &field), RODT_OK);
        for (size_t row = 0; row < rows; row++) {
            const char *text = e == entry ? texts[row] : rodt_form_get(&of->form, (rodt_field)field);
            cells[field][row] = (rodt_text_span){text, text != NULL ? strlen(text) : 0};
        }
        in.field[field] = (rodt_text_cells){.layout = RODT_TEXT_LAYOUT_SPANS, .cells = cells[field]};
    }
    assert_int_equal(rodt_text_plan_new(of->rules, &defaults, &plan, NULL), RODT_OK);
    assert_int_equal(rodt_text_plan_judge(plan, &in, rows, &out, NULL), RODT_OK);
    rodt_text_plan_free(plan);
    for (size_t row = 0; row < rows; row++) {
        if (verdict[row] != findings[row].verdict || reasons[row] != findings[row].reasons)
            fail_msg("columns: %s \"%s\" is %s, and a row by itself %s", of->list->member[entry]->name,
                     shown(texts[row]), rodt_verdict_name((rodt_verdict)verdict[row]),
                     rodt_verdict_name(findings[row].verdict));
    }
}

static bool is_length(char **row)
{
    return strcmp(row[KIND], "length") == 0 || strcmp(row[KIND], "mark") == 0 || strcmp(row[KIND], "division") == 0;
}

static void damage_wheel_end(const wheel_end_case *of, size_t entry)
{
    static rodt_finding findings[COLUMNS];
    const char *texts[COLUMNS];
    char **row = of->list->row[entry];
    size_t count = 0;
    damage_kind how;
    char kind[32];
    snprintf(kind, sizeof kind, "%s%s", row[KIND], is_length(row) && strcmp(of->form.unit, "mm") == 0 ? "_mm" : "");
    for (; next_damage(count, kind, &texts[count], &how); count++) {
        rodt_form form = of->form;
        rodt_error error;
        put(&form, of->list->member[entry], texts[count]);
        assert_int_equal(rodt_form_judge_row(&form, of->rules, &findings[count], &error), RODT_OK);
        if (how == UNREADABLE && error.status == RODT_OK)
            fail_msg("%s \"%s\" is read", row[ENTRY], texts[count]);
        if (how == UNREADABLE && strcmp(row[KIND], "date") != 0)
            assert_int_not_equal(findings[count].verdict, RODT_VERDICT_IN_ADJUSTMENT);
        if (how != ANOTHER_VALUE && passes(&findings[count]) && !passes(&of->finding))
            expect_excuse(of, entry, how, texts[count], &findings[count]);
        if (how == NOTHING)
            assert_true(findings[count].verdict == findings[0].verdict && findings[count].reasons == findings[0].reasons);
        expect_same_reader(of, &form, entry, how, &findings[count], &error);
    }
    expect_same_columns(of, entry, texts, count, findings);
}

static void damage_each(wheel_end_case *of)
{
    assert_int_equal(rodt_form_judge_row(&of->form, of->rules, &of->finding, NULL), RODT_OK);
    for (size_t entry = 0; entry < of->list->count; entry++)
        damage_wheel_end(of, entry);
}

/* Each entry once with the value that takes a pass away, and then damaged: the pass must not come back, unless the
 * entry may be left out. */
static void contradict_each(wheel_end_case *of)
{
    const rodt_form sound = of->form;
    for (size_t entry = 0; entry < of->list->count; entry++) {
        char **row = of->list->row[entry];
        of->form = sound;
        if (row[CONTRARY][0] == '\0')
            continue;
        put(&of->form, of->list->member[entry], row[CONTRARY]);
        damage_each(of);
        of->contradicted[entry] += !passes(&of->finding);
    }
    of->form = sound;
}

static rodt_length inches(int64_t num, int64_t den)
{
    rodt_length length;
    assert_int_equal(rodt_length_from_inches(num, den, &length), RODT_OK);
    return length;
}

static void fill_sound(wheel_end_case *of)
{
    for (size_t i = 0; i < of->list->count; i++)
        put(&of->form, of->list->member[i], of->list->row[i][SOUND]);
    (void)rodt_pressure_format(rodt_rules_pressure_from(of->rules), of->room[0], RODT_LENGTH_TEXT_SIZE, NULL);
    of->form.psi = of->form.psi_after = of->room[0];
    if (!rodt_pressure_given(rodt_rules_pressure_from(of->rules)))
        of->form.psi = of->form.psi_after = "95";
}

/* The same reading off a metric tape. */
static void damage_in_mm(wheel_end_case *of, rodt_length applied)
{
    const rodt_form sound = of->form;
    assert_int_equal(rodt_length_format_decimal(applied, RODT_UNIT_MM, 7, RODT_ROUNDING_HALF_EVEN, of->room[1],
                                                RODT_LENGTH_TEXT_SIZE, NULL), RODT_OK);
    of->form.unit = "mm";
    of->form.released = "50.8";
    damage_each(of);
    of->form = sound;
}

/* Below the limit, at it, above it, and not at all; strokes in 64ths from the limit. */
static void check_chamber(wheel_end_case *of, const char *mark, const char *rated)
{
    static const int from_limit[] = {-4, 0, 4, 16, -1000};
    rodt_limit_answer answer;
    rodt_chamber chamber;
    fill_sound(of);
    of->form.chamber = mark;
    of->form.rated_stroke = rated;
    assert_int_equal(rodt_chamber_parse(mark, &chamber, NULL), RODT_OK);
    if (rated[0] != '\0')
        assert_int_equal(rodt_length_parse(rated, &chamber.rated_stroke, NULL), RODT_OK);
    if (rodt_rules_find_limit(of->rules, &chamber, (rodt_date){2024, 5, 6}, &answer, NULL) != RODT_OK ||
        !rodt_length_given(answer.limit))
        return;
    for (size_t i = 0; i < sizeof from_limit / sizeof from_limit[0]; i++) {
        rodt_length applied = inches(2, 1), stroke;
        if (from_limit[i] != -1000) {
            assert_int_equal(rodt_length_add(answer.limit, inches(2, 1), &applied), RODT_OK);
            stroke = inches(from_limit[i] < 0 ? -from_limit[i] : from_limit[i], 64);
            assert_int_equal((from_limit[i] < 0 ? rodt_length_subtract : rodt_length_add)(applied, stroke, &applied),
                             RODT_OK);
        }
        assert_int_equal(rodt_length_format(applied, of->room[1], RODT_LENGTH_TEXT_SIZE, NULL), RODT_OK);
        of->form.applied = of->room[1];
        damage_each(of);
        if (i == 0 && passes(&of->finding))
            contradict_each(of);
        damage_in_mm(of, applied);
    }
}

static void wheel_ends(void **state)
{
    (void)state;
    static const char *const marks[][2] = {{"30", "2 1/2 in"}, {"24 long", "3 in"}, {"36", ""}, {"bolt C", ""}, {"dd3", ""}};
    entry_list list = entries_of("rodt_form", "reading");
    wheel_end_case of = {.list = &list};
    assert_int_equal(list.count, RODT_READING_FIELDS);
    for (size_t i = 0; i < rodt_rules_count(); i++) {
        of.rules = rodt_rules_at(i);
        for (size_t k = 0; k < sizeof marks / sizeof marks[0]; k++)
            check_chamber(&of, marks[k][0], marks[k][1]);
    }
    for (size_t entry = 0; entry < list.count; entry++) {
        if (list.row[entry][CONTRARY][0] != '\0' && of.contradicted[entry] < 4)
            fail_msg("%s \"%s\" takes no pass away", list.row[entry][ENTRY], list.row[entry][CONTRARY]);
    }
    expect_needed_exceptions(&list);
    print_message("# %lu damages of wheel ends\n", tried);
}

/* --- Vehicles ---------------------------------------------------------------------------------------- */

#define ENDS 6

typedef struct vehicle_case {
    const rodt_rules *rules;
    const entry_list *list;
    rodt_form forms[ENDS];
    rodt_finding findings[ENDS];
    rodt_wheel_end ends[ENDS];
    rodt_vehicle_finding vehicle;
} vehicle_case;

static void combine(const vehicle_case *of, const rodt_finding findings[ENDS], rodt_vehicle_finding *out)
{
    assert_int_equal(rodt_vehicle_combine(of->ends, ENDS, 0, findings, NULL, out, NULL), RODT_OK);
}

static bool is_less(rodt_ratio a, rodt_ratio b) { return a.num * b.den < b.num * a.den; }

/* No brake more is good, the count can come to as much as before, and what was not below the criterion is not. */
static bool is_better_vehicle(const rodt_vehicle_finding *after, const rodt_vehicle_finding *before)
{
    bool below = after->count.outcome == RODT_OUTCOME_BELOW_CRITERION;
    return after->in_adjustment > before->in_adjustment || is_less(after->count.worst_share, before->count.worst_share) ||
           (below && before->count.outcome != RODT_OUTCOME_BELOW_CRITERION);
}

static void damage_in_vehicle(const vehicle_case *of, size_t end, size_t entry)
{
    const char *text;
    damage_kind how;
    char **row = of->list->row[entry];
    for (size_t number = 0; next_damage(number, row[KIND], &text, &how); number++) {
        rodt_finding findings[ENDS];
        rodt_vehicle_finding after;
        rodt_form form = of->forms[end];
        if (how == ANOTHER_VALUE)
            continue;
        memcpy(findings, of->findings, sizeof findings);
        put(&form, of->list->member[entry], text);
        assert_int_equal(rodt_form_judge_row(&form, of->rules, &findings[end], NULL), RODT_OK);
        combine(of, findings, &after);
        if (is_better_vehicle(&after, &of->vehicle) && (how == UNREADABLE || !may_be_absent(row)))
            fail_msg("%s of %zu: \"%s\" makes %s of %s", row[ENTRY], end, shown(text),
                     rodt_outcome_name(after.count.outcome), rodt_outcome_name(of->vehicle.count.outcome));
    }
}

static void judge_vehicle(vehicle_case *of, const char *const applied[ENDS])
{
    for (size_t end = 0; end < ENDS; end++) {
        for (size_t i = 0; i < of->list->count; i++)
            put(&of->forms[end], of->list->member[i], of->list->row[i][SOUND]);
        of->forms[end].applied = applied[end];
        of->ends[end].position = (rodt_position){(int16_t)(end / 2 + 1), end % 2 == 0 ? RODT_SIDE_LEFT : RODT_SIDE_RIGHT};
        assert_int_equal(rodt_form_judge_row(&of->forms[end], of->rules, &of->findings[end], NULL), RODT_OK);
    }
    combine(of, of->findings, &of->vehicle);
}

static void vehicles(void **state)
{
    (void)state;
    /* Limit 2 in from 2: none, a half, one, one and a half, two defective of six, and what nobody knows beside them. */
    static const char *const applied[][ENDS] = {
        {"4", "4", "3", "3 1/2", "3", "3"},     {"4 1/16", "4", "3", "3 1/2", "3", "3"},
        {"4 1/4", "4", "3", "3 1/2", "3", "3"}, {"4 1/4", "4 1/8", "3", "3 1/2", "3", "3"},
        {"2", "4 1/4", "3", "3 1/2", "3", "3"}, {"4 1/16", "?", "3", "3 1/2", "3", NULL}};
    entry_list list = entries_of("rodt_form", "reading");
    unsigned outcomes[RODT_OUTCOME_END] = {0};
    for (size_t i = 0; i < sizeof applied / sizeof applied[0]; i++) {
        vehicle_case of = {.rules = rodt_rules_find("us-fmcsr"), .list = &list};
        judge_vehicle(&of, applied[i]);
        outcomes[of.vehicle.count.outcome]++;
        for (size_t end = 0; end < ENDS; end++) {
            for (size_t entry = 0; entry < list.count; entry++)
                damage_in_vehicle(&of, end, entry);
        }
    }
    for (size_t i = 0; i < RODT_OUTCOME_END; i++)
        assert_true(outcomes[i] > 0);
}

/* --- Air checks -------------------------------------------------------------------------------------- */

typedef struct air_case {
    const rodt_rules *rules;
    rodt_air_form form;
    rodt_air_finding finding;
    unsigned record; /* of air_edges.csv */
} air_case;

static bool air_passes(const rodt_air_finding *finding)
{
    return finding->result == RODT_AIR_RESULT_GOOD || finding->result == RODT_AIR_RESULT_NOTED;
}

/* A form of an air check is refused completely where one text cannot be read. */
static void damage_air_entry(const air_case *of, const rodt_member *member, char **row)
{
    const char *text;
    damage_kind how;
    for (size_t number = 0; next_damage(number, row[KIND], &text, &how); number++) {
        rodt_air_form form = of->form;
        rodt_air_finding after;
        rodt_error error = {.status = RODT_OK};
        put(&form, member, text);
        rodt_status status = rodt_air_form_judge(&form, of->rules, &after, &error);
        if (how == UNREADABLE && (status == RODT_OK || strcmp(error.field, member->name) != 0))
            fail_msg("%s \"%s\" is read, or the error is at \"%s\"", member->name, text, error.field);
        if (how == NOTHING && status == RODT_OK && air_passes(&after) && !air_passes(&of->finding) && !may_be_absent(row))
            fail_msg("air_edges.csv record %u: %s \"%s\" made %s of %s", of->record, member->name, shown(text),
                     rodt_air_result_name(after.result), rodt_air_result_name(of->finding.result));
    }
}

static void put_air_case(air_case *of, const entry_list *list, char *cells[])
{
    static const char *const names[] = {"check",        "vehicle", "towed_units", "built",         "pressure",
                                        "before",       "after",   "seconds",     "cut_out",       "span",
                                        "applications", "actual_volume", "required_volume", "answer"};
    of->rules = rodt_rules_find(cells[0]);
    of->form = (rodt_air_form){.check = NULL};
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
        for (size_t k = 0; k < list->count; k++) {
            if (strcmp(list->member[k]->name, names[i]) == 0 && cells[i + 1][0] != '\0')
                put(&of->form, list->member[k], cells[i + 1]);
        }
    }
    assert_int_equal(rodt_air_form_judge(&of->form, of->rules, &of->finding, NULL), RODT_OK);
}

/* A governor that cannot be, a check that came and did not come, and a loss in ten seconds take a pass away. */
static void contradict_air(const air_case *of, const entry_list *list)
{
    const char *const pressure = of->form.pressure;
    const char *const contraries[][2] = {{"cut_out", pressure}, {"cut_in", pressure}, {"answer", pressure ? "no" : NULL},
                                         {"seconds", of->form.before ? "10" : NULL}};
    for (size_t i = 0; i < sizeof contraries / sizeof contraries[0] && air_passes(&of->finding); i++) {
        if (contraries[i][1] == NULL)
            continue;
        const rodt_member *member = rodt_member_find(rodt_record_find("rodt_air_form"), contraries[i][0]);
        air_case contrary = *of;
        put(&contrary.form, member, contraries[i][1]);
        assert_int_equal(rodt_air_form_judge(&contrary.form, of->rules, &contrary.finding, NULL), RODT_OK);
        for (size_t entry = 0; entry < list->count; entry++)
            damage_air_entry(&contrary, list->member[entry], list->row[entry]);
    }
}

static void air_checks(void **state)
{
    (void)state;
    entry_list list = entries_of("rodt_air_form", "air");
    csv_file file;
    char *cells[18];
    unsigned long before = tried;
    csv_open(&file, CASES "/air_edges.csv");
    while (csv_read_case(&file, cells, 18, "rules")) {
        air_case of = {.record = file.record};
        put_air_case(&of, &list, cells);
        for (size_t entry = 0; entry < list.count; entry++)
            damage_air_entry(&of, list.member[entry], list.row[entry]);
        contradict_air(&of, &list);
    }
    csv_close(&file);
    expect_needed_exceptions(&list);
    print_message("# %lu damages of air checks\n", tried - before);
}

/* --- Tables of a carrier ----------------------------------------------------------------------------- */

typedef struct table_case {
    const char *group, *law;
    const table_kind *kind;
    const char *names[32], *cells[32]; /* of the line of names and of the one row */
    char **row[32];
} table_case;

static size_t put_cell(char *text, size_t used, size_t size, const char *cell)
{
    text[used++] = '"';
    for (; *cell != '\0' && used + 4 < size; cell++) {
        if (*cell == '"')
            text[used++] = '"';
        text[used++] = *cell;
    }
    text[used++] = '"';
    return used;
}

static rodt_rules *load_table(const table_case *of)
{
    char text[2000];
    size_t used = 0;
    for (int line = 0; line < 2; line++) {
        for (size_t i = 0; i < of->kind->count; i++) {
            used = put_cell(text, used, sizeof text, line == 0 ? of->names[i] : of->cells[i]);
            text[used++] = i + 1 < of->kind->count ? ',' : '\n';
        }
    }
    rodt_rules *rules = NULL;
    return rodt_rules_load(rodt_rules_find(of->law), "own", text, used, &rules, NULL) == RODT_OK ? rules : NULL;
}

/* Whether each of many wheel ends or losses passes. */
#define ANSWERS 4096
typedef struct pass_list {
    bool passes[ANSWERS];
    size_t count;
} pass_list;

static void judge_strokes(const rodt_rules *rules, pass_list *out)
{
    static const char *const marks[] = {"30", "30L", "24", "clamp 30 standard", "30 unknown"};
    static const char *const days[] = {"2019-12-31", "2020-01-01", "2024-05-06", "2030-12-31", "2031-01-01", NULL};
    for (size_t m = 0; m < sizeof marks / sizeof marks[0]; m++) {
        for (size_t d = 0; d < sizeof days / sizeof days[0]; d++) {
            for (int stroke = 8; stroke < 50; stroke++) {
                char applied[RODT_LENGTH_TEXT_SIZE];
                rodt_finding finding;
                snprintf(applied, sizeof applied, "%d/16", 32 + stroke);
                assert_int_equal(rodt_length_format(inches(32 + stroke, 16), applied, sizeof applied, NULL), RODT_OK);
                const rodt_form form = {.chamber = marks[m], .released = "2", .applied = applied, .date = days[d], .psi = "95"};
                assert_int_equal(rodt_form_judge_row(&form, rules, &finding, NULL), RODT_OK);
                out->passes[out->count++] = passes(&finding);
            }
        }
    }
}

static void judge_losses(const rodt_rules *rules, pass_list *out)
{
    static const char *const vehicles[] = {"single", "combination", "bus", NULL};
    static const char *const towed[] = {NULL, "1", "2", "3"};
    static const char *const built[] = {"1970", "1990", "2015", NULL};
    for (size_t i = 0; i < 64; i++) {
        for (int loss = 0; loss < 14; loss++) {
            char after[20];
            rodt_air_finding finding;
            snprintf(after, sizeof after, "%d.%d", 99 - loss / 2, loss % 2 * 5);
            const rodt_air_form form = {.check = "loss-applied", .vehicle = vehicles[i % 4], .towed_units = towed[i / 4 % 4],
                                        .built = built[i / 16], .before = "100", .after = after};
            rodt_status status = rodt_air_form_judge(&form, rules, &finding, NULL);
            out->passes[out->count++] = status == RODT_OK && air_passes(&finding);
        }
    }
}

static void judge_table(const table_case *of, const rodt_rules *rules, pass_list *out)
{
    out->count = 0;
    (strcmp(of->group, "limits") == 0 ? judge_strokes : judge_losses)(rules, out);
}

/* What still loads judges as strictly as the sound table, and never laxer than the law by itself. */
static void expect_as_strict(const table_case *of, size_t column, const char *text, const pass_list *sound)
{
    static pass_list damaged;
    rodt_rules *rules = load_table(of);
    if (rules == NULL)
        return;
    judge_table(of, rules, &damaged);
    rodt_rules_unref(rules);
    assert_int_equal(damaged.count, sound->count);
    for (size_t i = 0; i < damaged.count; i++) {
        if (damaged.passes[i] && !sound->passes[i] && !may_be_absent(of->row[column]))
            fail_msg("%s without %s (\"%s\") passes more", of->group, of->names[column], text);
    }
}

static void damage_table(table_case *of)
{
    static pass_list sound;
    rodt_rules *rules = load_table(of);
    assert_non_null(rules);
    judge_table(of, rules, &sound);
    rodt_rules_unref(rules);
    for (size_t column = 0; column < of->kind->count; column++) {
        const char *text, *cell = of->cells[column], *name = of->names[column];
        damage_kind how;
        for (size_t number = 1; next_damage(number, of->row[column][KIND], &text, &how); number++) {
            of->cells[column] = text;
            if (how == NOTHING)
                expect_as_strict(of, column, text, &sound);
            else if (how == UNREADABLE && (rules = load_table(of)) != NULL) {
                rodt_rules_unref(rules);
                fail_msg("%s: %s \"%s\" is read", of->group, name, text);
            }
            of->cells[column] = cell;
            of->names[column] = text;
            if ((rules = load_table(of)) != NULL) {
                rodt_rules_unref(rules);
                fail_msg("%s: the heading \"%s\" in place of %s is read", of->group, text, name);
            }
            of->names[column] = name;
        }
    }
}

static void tables(void **state)
{
    (void)state;
    static const char *const groups[PARTS][2] = {[PART_LIMITS] = {"limits", "us-fmcsr"}, [PART_AIR] = {"air-limits", "us-inuse"}};
    for (size_t part = 0; part < PARTS; part++) {
        table_case of = {.group = groups[part][0], .law = groups[part][1], .kind = &rodti_part_kinds[part]};
        for (size_t i = 0; i < of.kind->count; i++) {
            of.names[i] = of.kind->columns[i].name;
            of.row[i] = find_entry(of.group, of.names[i]);
            of.cells[i] = of.row[i][SOUND];
        }
        damage_table(&of);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(wheel_ends),
        cmocka_unit_test(vehicles),
        cmocka_unit_test(air_checks),
        cmocka_unit_test(tables),
    };
    return cmocka_run_group_tests(tests, open_lists, close_lists);
}
