/* SPDX-License-Identifier: Apache-2.0 */
/* Rule sets: what they are, and the limit for a chamber on a day. */
#include <string.h>

#include "core/fault.h"
#include "core/text.h"
#include "message/message.h"
#include "quantity/fault.h"
#include "rules/find_limit.h"
#include "rules/limit_key.h"
#include "rules/rated_stroke.h"
#include "rules/tables.h"

const char *rodt_tables_edition(void) { return rodti_table_edition; }

const rodt_rules *rodt_rules_find(const char *id)
{
    for (size_t i = 0; id != NULL && i < rodti_table_rules_count; i++) {
        if (strcmp(rodti_table_rules[i].id, id) == 0)
            return &rodti_table_rules[i];
    }
    return NULL;
}

size_t rodt_rules_count(void) { return rodti_table_rules_count; }

const rodt_rules *rodt_rules_at(size_t index)
{
    return index < rodti_table_rules_count ? &rodti_table_rules[index] : NULL;
}

/* A rule set that was not found is NULL, and nothing is known of it. */
static const rodt_rules unknown = {.id = "", .title = "", .authority = ""};

static const rodt_rules *known(const rodt_rules *rules) { return rules != NULL ? rules : &unknown; }

const char *rodt_rules_id(const rodt_rules *rules) { return known(rules)->id; }
const char *rodt_rules_title(const rodt_rules *rules) { return known(rules)->title; }
const char *rodt_rules_authority(const rodt_rules *rules) { return known(rules)->authority; }
const rodt_source *rodt_rules_source(const rodt_rules *rules) { return known(rules)->source; }
rodt_evidence rodt_rules_evidence(const rodt_rules *rules) { return (rodt_evidence)known(rules)->evidence; }
rodt_date rodt_rules_from(const rodt_rules *rules) { return known(rules)->from; }
rodt_date rodt_rules_until(const rodt_rules *rules) { return known(rules)->until; }
const rodt_rules *rodt_rules_law(const rodt_rules *rules) { return known(rules)->law; }
bool rodt_rules_at_limit_passes(const rodt_rules *rules) { return known(rules)->at_limit_passes; }
rodt_pressure rodt_rules_pressure_from(const rodt_rules *rules) { return known(rules)->pressure_from; }
rodt_pressure rodt_rules_pressure_until(const rodt_rules *rules) { return known(rules)->pressure_until; }
const rodt_source *rodt_rules_pressure_source(const rodt_rules *rules) { return known(rules)->pressure_source; }
rodt_ratio rodt_rules_rated_share(const rodt_rules *rules) { return known(rules)->rated_share; }
const rodt_source *rodt_rules_major_source(const rodt_rules *rules) { return known(rules)->major_source; }
size_t rodt_rules_limit_count(const rodt_rules *rules) { return known(rules)->limit_count; }

rodt_evidence rodt_rules_pressure_evidence(const rodt_rules *rules)
{
    return (rodt_evidence)known(rules)->pressure_evidence;
}

const rodt_limit *rodt_rules_limit_at(const rodt_rules *rules, size_t index)
{
    return index < known(rules)->limit_count ? &rules->limits[index] : NULL;
}

size_t rodt_chamber_row_count(void) { return rodti_table_chambers_count; }

const rodt_chamber_row *rodt_chamber_row_at(size_t index)
{
    return index < rodti_table_chambers_count ? &rodti_table_chambers[index] : NULL;
}

/* What a row is looked up by, with nothing left unknown but the day. */
typedef struct query {
    uint32_t key; /* of family and size */
    rodt_stroke_class stroke_class;
    rodt_length rated_stroke;
    rodt_date day;
} query;

/* Both dates are inside, and one that is not given is open. */
static bool holds_on(rodt_date from, rodt_date until, rodt_date day)
{
    return rodt_date_compare(from, day) <= 0 && (!rodt_date_given(until) || rodt_date_compare(day, until) <= 0);
}

static bool is_for(const rodt_limit *row, const query *wanted)
{
    return (row->stroke_class == wanted->stroke_class || row->stroke_class == RODT_STROKE_CLASS_ANY) &&
           (!rodt_length_given(row->rated_stroke) ||
            rodti_rated_stroke_is_marked(row->rated_stroke, row->rated_stroke_mm, wanted->rated_stroke)) &&
           (!rodt_date_given(wanted->day) || holds_on(row->from, row->until, wanted->day));
}

static int compare_until(rodt_date a, rodt_date b)
{
    if (rodt_date_given(a) != rodt_date_given(b))
        return rodt_date_given(a) ? -1 : 1;
    return rodt_date_compare(a, b);
}

/* Without a day the newest text wins; of rows of the same days, the one that asks for the rated stroke. */
static bool is_better(const rodt_limit *row, const rodt_limit *best, const query *wanted)
{
    if (best == NULL)
        return true;
    int newer = rodt_date_given(wanted->day) ? 0 : compare_until(row->until, best->until);
    return newer != 0 ? newer > 0 : rodt_length_given(row->rated_stroke);
}

static const rodt_limit *find_row(const rodt_rules *rules, const query *wanted)
{
    const rodt_limit *best = NULL;
    const size_t count = rules->limit_count;
    const uint32_t *const keys = rules->limit_keys;
    const uint32_t key = wanted->key;
    for (size_t i = 0; i < count; i++) {
        if (keys[i] != key)
            continue;
        const rodt_limit *row = &rules->limits[i];
        if (is_for(row, wanted) && is_better(row, best, wanted))
            best = row;
    }
    return best;
}

static void store_row(const rodt_limit *row, rodt_limit_answer *answer)
{
    answer->law_basis = RODT_BASIS_TABLE;
    answer->law_limit = row->limit;
    answer->law_row = row;
    answer->law_source = row->source;
    answer->law_evidence = row->evidence;
}

/* An actuator without a row: neither the share of its marked rated stroke nor its marked limit may be
 * exceeded, so the smaller one decides. */
static void apply_marks(const rodt_rules *law, const rodt_chamber *chamber, rodt_limit_answer *answer)
{
    rodt_length share = {0};
    if (!rodt_ratio_given(law->rated_share))
        return;
    if (rodt_length_given(chamber->rated_stroke)) {
        if (rodt_length_scale(chamber->rated_stroke, law->rated_share, &share) != RODT_OK)
            return;
        answer->law_basis = RODT_BASIS_RATED_SHARE;
        answer->law_limit = share;
    }
    rodt_length marked = chamber->marked_limit;
    if (rodt_length_given(marked) && (!rodt_length_given(share) || rodt_length_compare(marked, share) < 0)) {
        answer->law_basis = RODT_BASIS_MARKED_LIMIT;
        answer->law_limit = marked;
    }
    if (answer->law_basis != RODT_BASIS_NONE) {
        answer->law_source = law->rated_share_source;
        answer->law_evidence = law->rated_share_evidence;
    }
}

/* The long row that asks for the marked rated stroke, or NULL. The footnotes of 49 CFR 393.47(e)(1) make the stroke the
 * sign of such a row, so the mark says the class too. */
static const rodt_limit *find_row_by_rated_stroke(const rodt_rules *law, query wanted)
{
    wanted.stroke_class = RODT_STROKE_CLASS_LONG;
    const rodt_limit *row = rodt_length_given(wanted.rated_stroke) ? find_row(law, &wanted) : NULL;
    return row != NULL && rodt_length_given(row->rated_stroke) ? row : NULL;
}

/* The row for the chamber, and whether the marked rated stroke contradicts it. If class and rated stroke contradict
 * each other, the standard row (the strict side) is used. */
static const rodt_limit *find_row_by_marks(const rodt_rules *law, const rodt_chamber *chamber, query *wanted,
                                           bool *conflict)
{
    const rodt_limit *marked = find_row_by_rated_stroke(law, *wanted);
    if (marked != NULL && chamber->stroke_class == RODT_STROKE_CLASS_UNKNOWN)
        wanted->stroke_class = RODT_STROKE_CLASS_LONG;
    const rodt_limit *row = find_row(law, wanted);
    *conflict = row != NULL && (rodti_rated_stroke_contradicts(row, wanted->rated_stroke) ||
                                (marked != NULL && row->stroke_class == RODT_STROKE_CLASS_STANDARD));
    if (!*conflict || row->stroke_class != RODT_STROKE_CLASS_LONG)
        return row;
    wanted->stroke_class = RODT_STROKE_CLASS_STANDARD;
    return find_row(law, wanted);
}

/* No chamber can have a limit that its travel does not exceed. Then the share of the marked travel, which is smaller,
 * is the strict side; a rule set without a share has no limit for such marks. */
static void apply_law(const rodt_rules *law, const rodt_chamber *chamber, query *wanted, rodt_limit_answer *answer)
{
    const rodt_limit *row = find_row_by_marks(law, chamber, wanted, &answer->conflicting_marks);
    if (row == NULL || rodti_rated_stroke_contradicts(row, wanted->rated_stroke))
        apply_marks(law, chamber, answer);
    else
        store_row(row, answer);
}

/* A carrier's own row can only make the limit stricter; where the law publishes none for the chamber, it is the limit.
 * It does not decide between marks that contradict each other. */
static void apply_own_limits(const rodt_rules *rules, const query *wanted, rodt_limit_answer *answer)
{
    bool is_open = answer->conflicting_marks && answer->law_basis == RODT_BASIS_NONE;
    answer->own_row = rules->law == NULL || is_open ? NULL : find_row(rules, wanted);
    const rodt_limit *own = answer->own_row;
    bool is_stricter = own != NULL && (!rodt_length_given(answer->law_limit) ||
                                       rodt_length_compare(own->limit, answer->law_limit) < 0);
    answer->limit = is_stricter ? own->limit : answer->law_limit;
    answer->source = is_stricter ? own->source : answer->law_source;
    answer->evidence = is_stricter ? own->evidence : answer->law_evidence;
}

static bool is_standard_row(const rodt_limit *row)
{
    return row != NULL && row->stroke_class == RODT_STROKE_CLASS_STANDARD;
}

static query make_query(const rodt_chamber *chamber, rodt_date day)
{
    const rodt_family family = chamber->family == RODT_FAMILY_UNKNOWN ? RODT_FAMILY_CLAMP : chamber->family;
    query wanted = {limit_key(family, chamber->size), chamber->stroke_class, chamber->rated_stroke, day};
    if (wanted.stroke_class == RODT_STROKE_CLASS_UNKNOWN)
        wanted.stroke_class = RODT_STROKE_CLASS_STANDARD;
    return wanted;
}

void rodti_rules_find_limit(const rodt_rules *rules, const rodt_chamber *chamber, rodt_date day, rodt_limit_answer *out)
{
    const rodt_rules *law = rules->law != NULL ? rules->law : rules;
    rodt_limit_answer answer = {.law_basis = RODT_BASIS_NONE};
    if (rodt_date_given(day) && !holds_on(law->from, law->until, day)) {
        answer.law_basis = RODT_BASIS_NOT_IN_FORCE;
        *out = answer;
        return;
    }
    query wanted = make_query(chamber, day);
    apply_law(law, chamber, &wanted, &answer);
    apply_own_limits(rules, &wanted, &answer);
    /* Where no row was looked up or found, nothing depends on what was assumed of the class. */
    answer.assumed_clamp = chamber->family == RODT_FAMILY_UNKNOWN && law->limit_count + rules->limit_count > 0;
    answer.assumed_standard = chamber->stroke_class == RODT_STROKE_CLASS_UNKNOWN &&
                              (is_standard_row(answer.law_row) || is_standard_row(answer.own_row));
    *out = answer;
}

static rodt_status check_query(const rodt_chamber *chamber, rodt_date day, rodt_error *error)
{
    rodt_status status = rodt_chamber_check(chamber, error);
    if (status == RODT_OK && chamber->size[0] == '\0')
        return rodti_field_error(error, "chamber", "a chamber without a size has no limit");
    if (status == RODT_OK && rodti_date_fault(day) != NULL)
        return rodti_field_error(error, "date", rodti_date_fault(day));
    return status;
}

rodt_status rodt_rules_find_limit(const rodt_rules *rules, const rodt_chamber *chamber, rodt_date day,
                                  rodt_limit_answer *out, rodt_error *error)
{
    if (out == NULL)
        return rodti_field_error(error, "", "room for an answer is needed");
    if (rules == NULL)
        return rodti_rules_error(error);
    rodt_status status = check_query(chamber, day, error);
    if (status == RODT_OK)
        rodti_rules_find_limit(rules, chamber, day, out);
    return status;
}

static void put_part(text_writer *writer, const char *part)
{
    if (part[0] == '\0')
        return;
    if (writer->used > 0)
        rodti_text_put(writer, ", ");
    rodti_text_put(writer, part);
}

rodt_status rodt_source_format(const rodt_source *source, char *text, size_t size, size_t *needed)
{
    if (source == NULL)
        return RODT_E_ARGUMENT;
    text_writer writer;
    rodti_text_begin(&writer);
    put_part(&writer, source->document);
    put_part(&writer, source->section);
    put_part(&writer, source->edition);
    return rodti_text_copy_out(&writer, text, size, needed);
}

/* What is no enumerator is never shown as law. */
rodt_message_code rodti_evidence_code(rodt_evidence evidence)
{
    switch (evidence) {
    case RODT_EVIDENCE_NONE: return RODT_MESSAGE_EVIDENCE_NONE;
    case RODT_EVIDENCE_CHECKED: return RODT_MESSAGE_EVIDENCE_CHECKED;
    case RODT_EVIDENCE_SECOND_HAND: return RODT_MESSAGE_EVIDENCE_SECOND_HAND;
    case RODT_EVIDENCE_COMMON_PRACTICE: return RODT_MESSAGE_EVIDENCE_COMMON_PRACTICE;
    case RODT_EVIDENCE_FROM_MEMORY: break;
    }
    return RODT_MESSAGE_EVIDENCE_FROM_MEMORY;
}

rodt_status rodt_evidence_message(rodt_evidence evidence, rodt_message *out)
{
    return rodti_message_sentence(rodti_evidence_code(evidence), out);
}
