/* SPDX-License-Identifier: Apache-2.0 */
/* Columns judged: piece by piece, without the interpreter's lock. */
#ifndef RODTRAVEL_PYTHON_JUDGE_COLUMNS_H
#define RODTRAVEL_PYTHON_JUDGE_COLUMNS_H

#include "answers.h"
#include "arrow_in.h"

#define PLAN_CAPSULE "rodtravel.plan"
#define TEXT_PLAN_CAPSULE "rodtravel.text plan"
#define COLUMNS_MOST RODT_READING_FIELDS

/* Judging reads the plan without the interpreter's lock, so nothing is added to it meanwhile. */
typedef struct number_plan {
    int judging; /* calls that do so now; changed under the lock alone */
    rodt_chamber_reader *reader; /* NULL until chambers come as text */
    rodt_column_plan plan;
} number_plan;

static void drop_plan(number_plan *plan)
{
    if (plan != NULL)
        rodt_chamber_reader_free(plan->reader);
    free(plan);
}

static void free_plan(PyObject *capsule) { drop_plan(PyCapsule_GetPointer(capsule, PLAN_CAPSULE)); }

/* --- Plans ------------------------------------------------------------------------------------------- */

/* Unit, day, pressure, pressure after, engine, spring brake, drum. */
static bool common_of(PyObject *tuple, rodt_reading *out)
{
    int word[4];
    PyObject *day;
    PyObject *pressure;
    PyObject *after;
    memset(out, 0, sizeof *out);
    if (!PyArg_ParseTuple(tuple, "iOOOiii", &word[0], &day, &pressure, &after, &word[1], &word[2], &word[3]))
        return false;
    out->unit = (rodt_unit)word[0];
    out->engine_running = (rodt_recorded)word[1];
    out->spring_brake_applied = (rodt_recorded)word[2];
    out->drum = (rodt_drum)word[3];
    return date_of(day, "day", &out->day) && pressure_of(pressure, "pressure", &out->pressure) &&
           pressure_of(after, "pressure after", &out->pressure_after);
}

static PyObject *plan_start(const rodt_rules *rules, PyObject *common)
{
    rodt_reading shared;
    number_plan *plan = calloc(1, sizeof *plan);
    if (plan == NULL)
        return PyErr_NoMemory();
    if (!common_of(common, &shared)) {
        free(plan);
        return NULL;
    }
    rodt_status status = rodt_column_plan_start(rules, &shared, &plan->plan);
    PyObject *capsule = status == RODT_OK ? PyCapsule_New(plan, PLAN_CAPSULE, free_plan) : NULL;
    if (status != RODT_OK)
        raise_status(status);
    if (capsule == NULL)
        free(plan);
    return capsule;
}

static bool check_space(rodt_status status)
{
    if (status == RODT_OK)
        return true;
    if (status == RODT_E_SPACE)
        return refuse(status, "chamber", "there are more different chambers than a plan holds");
    raise_status(status);
    return false;
}

static PyObject *plan_add(PyObject *capsule, const rodt_chamber *chamber)
{
    number_plan *plan = PyCapsule_GetPointer(capsule, PLAN_CAPSULE);
    uint8_t code;
    if (plan != NULL && plan->judging > 0) {
        PyErr_SetString(PyExc_RuntimeError, "another thread is judging with this plan; add its chambers before that");
        return NULL;
    }
    if (plan == NULL || !check_space(rodt_column_plan_add(&plan->plan, chamber, &code)))
        return NULL;
    return PyLong_FromLong(code);
}

/* --- Pieces ------------------------------------------------------------------------------------------ */

/* Columns that are walked through together. */
typedef struct walk {
    const held_column *column[COLUMNS_MOST]; /* NULL = there is none */
    size_t piece[COLUMNS_MOST];
    size_t at[COLUMNS_MOST]; /* row in the piece */
    size_t rows;
    size_t done;
} walk;

/* The rows up to the nearest end of a piece. */
static size_t stretch(walk *w)
{
    size_t most = w->rows - w->done;
    for (int i = 0; i < COLUMNS_MOST; i++) {
        const held_column *column = w->column[i];
        if (column == NULL)
            continue;
        while (w->piece[i] < column->count && w->at[i] == column->pieces[w->piece[i]].rows) {
            w->piece[i]++;
            w->at[i] = 0;
        }
        size_t left = w->piece[i] < column->count ? column->pieces[w->piece[i]].rows - w->at[i] : 0;
        most = left < most ? left : most;
    }
    return most;
}

static void go_on(walk *w, size_t rows)
{
    for (int i = 0; i < COLUMNS_MOST; i++)
        w->at[i] += rows;
    w->done += rows;
}

static const column_piece *piece_of(const walk *w, int i) { return &w->column[i]->pieces[w->piece[i]]; }

static const void *cells_at(const walk *w, int i, size_t width)
{
    return (const char *)piece_of(w, i)->cells + w->at[i] * width;
}

static rodt_column_bits bits_at(const walk *w, int i)
{
    rodt_column_bits bits = piece_of(w, i)->valid;
    bits.from += w->at[i];
    return bits;
}

static rodt_text_cells text_at(const walk *w, int i)
{
    rodt_text_cells cells = piece_of(w, i)->text;
    if (cells.index != NULL) {
        cells.index_from += w->at[i];
        cells.index_valid.from += w->at[i];
    } else {
        cells.from += w->at[i];
        cells.valid.from += w->at[i];
    }
    return cells;
}

/* --- Numbers ----------------------------------------------------------------------------------------- */

static bool check_apart(const walk *w, const held_answers *answers)
{
    for (int i = 0; i < COLUMNS_MOST; i++) {
        const held_column *column = w->column[i];
        for (size_t k = 0; column != NULL && column->kind != COLUMN_TEXT && k < column->count; k++) {
            if (overlaps(answers, column->pieces[k].cells, column->pieces[k].rows * kind_width[column->kind])) {
                PyErr_SetString(PyExc_ValueError, OVERLAP);
                return false;
            }
        }
    }
    return true;
}

enum { NUMBER_RELEASED, NUMBER_APPLIED, NUMBER_CHAMBER, NUMBER_PRESSURE, NUMBER_DAY };

static void take_reading(const walk *w, int i, const int32_t **out32, const int64_t **out64, rodt_column_bits *valid)
{
    if (w->column[i]->kind == COLUMN_INT64)
        *out64 = cells_at(w, i, 8);
    else
        *out32 = cells_at(w, i, 4);
    *valid = bits_at(w, i);
}

static rodt_status judge_numbers(const number_plan *plan, walk *w, const uint8_t *codes, const rodt_column_out *out)
{
    while (w->done < w->rows) {
        rodt_column_in in;
        size_t rows = stretch(w);
        rodt_column_out part = answers_at(out, w->done);
        memset(&in, 0, sizeof in);
        take_reading(w, NUMBER_RELEASED, &in.released, &in.released64, &in.released_valid);
        take_reading(w, NUMBER_APPLIED, &in.applied, &in.applied64, &in.applied_valid);
        in.chamber = codes != NULL ? codes + w->done : cells_at(w, NUMBER_CHAMBER, 1);
        if (codes == NULL)
            in.chamber_valid = bits_at(w, NUMBER_CHAMBER);
        if (w->column[NUMBER_PRESSURE] != NULL) {
            in.pressure = cells_at(w, NUMBER_PRESSURE, 4);
            in.pressure_valid = bits_at(w, NUMBER_PRESSURE);
        }
        if (w->column[NUMBER_DAY] != NULL) {
            in.day = cells_at(w, NUMBER_DAY, 4);
            in.day_valid = bits_at(w, NUMBER_DAY);
        }
        rodt_status status = rodt_column_judge(&plan->plan, &in, rows, &part);
        if (status != RODT_OK)
            return status;
        go_on(w, rows);
    }
    return RODT_OK;
}

/* Marks that are text become codes first. */
static rodt_status read_marks(number_plan *plan, const held_column *marks, uint8_t *codes)
{
    walk w = {.column = {marks}, .rows = marks->rows};
    rodt_status made = plan->reader != NULL ? RODT_OK : rodt_chamber_reader_new(&plan->plan, &plan->reader);
    if (made != RODT_OK)
        return made;
    while (w.done < w.rows) {
        size_t rows = stretch(&w);
        rodt_text_cells cells = text_at(&w, 0);
        rodt_status status = rodt_chamber_reader_read(plan->reader, &cells, rows, codes + w.done);
        if (status != RODT_OK)
            return status;
        go_on(&w, rows);
    }
    return RODT_OK;
}

static bool open_walk(PyObject *tuple, const char *const *fields, int most, walk *w)
{
    memset(w, 0, sizeof *w);
    for (int i = 0; i < most; i++) {
        PyObject *object = PyTuple_GetItem(tuple, i);
        if (object == NULL)
            return false;
        if (object == Py_None)
            continue;
        w->column[i] = PyCapsule_GetPointer(object, COLUMN_CAPSULE);
        if (w->column[i] == NULL)
            return false;
        if (w->rows != w->column[i]->rows && (w->column[0] != w->column[i])) {
            PyErr_Format(PyExc_ValueError, "%s has %zu rows and %s has %zu", fields[i], w->column[i]->rows, fields[0],
                         w->rows);
            return false;
        }
        w->rows = w->column[i]->rows;
    }
    return true;
}

static bool check_numbers(const walk *w)
{
    static const char *const fields[] = {"released", "applied"};
    for (int i = NUMBER_RELEASED; i <= NUMBER_APPLIED; i++) {
        column_kind kind = w->column[i]->kind;
        if (kind != COLUMN_INT32 && kind != COLUMN_INT64)
            return refuse_column(fields[i], "readings are int32 or int64, both columns numbers or both text");
    }
    if (w->column[NUMBER_CHAMBER]->kind != COLUMN_CODE && w->column[NUMBER_CHAMBER]->kind != COLUMN_TEXT)
        return refuse_column("chamber", "chambers are uint8 codes of the plan, or text");
    if (w->column[NUMBER_PRESSURE] != NULL && w->column[NUMBER_PRESSURE]->kind != COLUMN_INT32)
        return refuse_column("pressure", "a column of pressures is int32, thousandths of a psi");
    if (w->column[NUMBER_DAY] != NULL && w->column[NUMBER_DAY]->kind != COLUMN_INT32 &&
        w->column[NUMBER_DAY]->kind != COLUMN_DAY)
        return refuse_column("day", "a column of days is int32 or date32, days since 1970-01-01");
    return true;
}

static PyObject *finish(rodt_status status)
{
    if (status == RODT_E_ARGUMENT) {
        PyErr_SetString(PyExc_ValueError, OVERLAP);
        return NULL;
    }
    return check_space(status) ? Py_BuildValue("") : NULL;
}

/* New marks cannot be added to a plan that is in use; they go into one that is thrown away. */
static number_plan *copy_plan(const number_plan *plan)
{
    number_plan *copy = malloc(sizeof *copy);
    if (copy != NULL) {
        memcpy(copy, plan, sizeof *copy);
        copy->judging = 0;
        copy->reader = NULL;
    }
    return copy;
}

static PyObject *columns_judge_numbers(PyObject *capsule, PyObject *columns, PyObject *answers)
{
    static const char *const fields[] = {"released", "applied", "chamber", "pressure", "day"};
    number_plan *plan = PyCapsule_GetPointer(capsule, PLAN_CAPSULE);
    walk w;
    held_answers held;
    rodt_column_out out;
    rodt_status status = RODT_OK;
    if (plan == NULL || !open_walk(columns, fields, 5, &w) || !check_numbers(&w))
        return NULL;
    uint8_t *codes = NULL;
    number_plan *copy = NULL;
    if (w.column[NUMBER_CHAMBER]->kind == COLUMN_TEXT) {
        codes = malloc(w.rows + 1);
        copy = plan->judging > 0 ? copy_plan(plan) : NULL;
        if (codes == NULL || (copy == NULL && plan->judging > 0)) {
            free(codes);
            drop_plan(copy);
            return PyErr_NoMemory();
        }
        plan = copy != NULL ? copy : plan;
        status = read_marks(plan, w.column[NUMBER_CHAMBER], codes);
    }
    held.count = 0;
    bool ready = status != RODT_OK || (take_answers(answers, w.rows, &held, &out) && check_apart(&w, &held));
    if (ready && status == RODT_OK) {
        plan->judging++;
        Py_BEGIN_ALLOW_THREADS
        status = judge_numbers(plan, &w, codes, &out);
        Py_END_ALLOW_THREADS
        plan->judging--;
    }
    release_answers(&held);
    free(codes);
    drop_plan(copy);
    return ready ? finish(status) : NULL;
}

/* --- Texts ------------------------------------------------------------------------------------------- */

static rodt_status judge_texts(rodt_text_plan *plan, walk *w, const rodt_column_out *out)
{
    while (w->done < w->rows) {
        rodt_text_columns in;
        size_t rows = stretch(w);
        rodt_column_out part = answers_at(out, w->done);
        memset(&in, 0, sizeof in);
        for (int i = 0; i < COLUMNS_MOST; i++) {
            if (w->column[i] != NULL)
                in.field[i] = text_at(w, i);
        }
        rodt_status status = rodt_text_plan_judge(plan, &in, rows, &part);
        if (status != RODT_OK)
            return status;
        go_on(w, rows);
    }
    return RODT_OK;
}

static bool check_texts(const walk *w, const char *const *fields)
{
    for (int i = 0; i < COLUMNS_MOST; i++) {
        if (w->column[i] != NULL && w->column[i]->kind == COLUMN_DAY)
            return refuse_column(fields[i], "with readings that are text, days are text too, such as 2021-10-14");
        if (w->column[i] != NULL && w->column[i]->kind != COLUMN_TEXT)
            return refuse_column(fields[i], "with readings that are text, this column is text too; whole numbers go "
                                            "into Plan.judge");
    }
    return true;
}

/* The form is that of a reading: its texts hold for every row. */
static PyObject *columns_judge_texts(const rodt_reading_text *form, const rodt_rules *rules, PyObject *columns,
                                     PyObject *answers)
{
    walk w;
    held_answers held;
    rodt_column_out out;
    rodt_error error = {.status = RODT_OK};
    if (!open_walk(columns, form_fields, COLUMNS_MOST, &w) || !check_texts(&w, form_fields))
        return NULL;
    rodt_text_plan *plan;
    rodt_status status = rodt_text_plan_new(rules, form, &plan, &error);
    if (status != RODT_OK) {
        binding_error = error;
        raise_status(status);
        return NULL;
    }
    bool ready = take_answers(answers, w.rows, &held, &out);
    if (ready) {
        Py_BEGIN_ALLOW_THREADS
        status = judge_texts(plan, &w, &out);
        Py_END_ALLOW_THREADS
    }
    release_answers(&held);
    rodt_text_plan_free(plan);
    return ready ? finish(status) : NULL;
}

#endif
