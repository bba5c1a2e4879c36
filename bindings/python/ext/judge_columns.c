/* SPDX-License-Identifier: Apache-2.0 */
/* Judges columns chunk by chunk, without the interpreter's lock. */
#include "ext.h"

#define PLAN_CAPSULE "rodtravel.plan"

/* Judging reads the plan without the interpreter's lock, so nothing is added to it meanwhile. */
typedef struct number_plan {
    int judging;                 /* calls that do so now; changed under the lock alone */
    rodt_chamber_reader *reader; /* NULL until chambers come as text */
    rodt_column_plan *plan;
    kept_rooms rooms; /* the context of the capsule points to them */
} number_plan;

static void free_number_plan(number_plan *plan)
{
    if (plan != NULL) {
        rodt_chamber_reader_free(plan->reader);
        rodt_column_plan_free(plan->plan);
        py_free_rooms(&plan->rooms);
    }
    free(plan);
}

static void free_plan(PyObject *capsule) { free_number_plan(PyCapsule_GetPointer(capsule, PLAN_CAPSULE)); }

/* --- Plans ------------------------------------------------------------------------------------------- */

/* Unit, date, psi, psi_after, engine, spring brake, drum. */
static bool to_shared_reading(PyObject *tuple, rodt_reading *out)
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
    return py_to_date(day, "date", &out->day) && py_to_pressure(pressure, "psi", &out->pressure) &&
           py_to_pressure(after, "psi_after", &out->pressure_after);
}

PyObject *py_plan_start(const rodt_rules *rules, PyObject *shared)
{
    rodt_reading reading;
    number_plan *plan = calloc(1, sizeof *plan);
    if (plan == NULL)
        return PyErr_NoMemory();
    if (!to_shared_reading(shared, &reading)) {
        free(plan);
        return NULL;
    }
    rodt_status status = rodt_column_plan_new(rules, &reading, &plan->plan, py_call_error());
    PyObject *capsule = status == RODT_OK ? PyCapsule_New(plan, PLAN_CAPSULE, free_plan) : NULL;
    if (status != RODT_OK)
        py_raise_status(status);
    if (capsule == NULL)
        free_number_plan(plan);
    else
        PyCapsule_SetContext(capsule, &plan->rooms);
    return capsule;
}

static bool check_space(rodt_status status)
{
    if (status == RODT_OK)
        return true;
    if (status == RODT_E_SPACE)
        return py_raise(status, "chamber", "there are more different chambers than a plan holds");
    py_raise_status(status);
    return false;
}

PyObject *py_plan_add(PyObject *capsule, const rodt_chamber *chamber)
{
    number_plan *plan = PyCapsule_GetPointer(capsule, PLAN_CAPSULE);
    uint32_t code;
    if (plan != NULL && plan->judging > 0) {
        PyErr_SetString(PyExc_RuntimeError, "another thread is judging with this plan; add its chambers before that");
        return NULL;
    }
    if (plan == NULL || !check_space(rodt_column_plan_add(plan->plan, chamber, &code, py_call_error())))
        return NULL;
    return PyLong_FromUnsignedLong(code);
}

/* --- Chunks ------------------------------------------------------------------------------------------ */

/* The rows up to the nearest end of a chunk. */
static size_t chunk_rows(cursor *w)
{
    size_t most = w->rows - w->done;
    if (w->most != 0 && w->most < most)
        most = w->most;
    for (int i = 0; i < CURSOR_COLUMNS; i++) {
        const held_column *column = w->column[i];
        if (column == NULL)
            continue;
        while (w->chunk[i] < column->count && w->at[i] == column->chunks[w->chunk[i]].rows) {
            w->chunk[i]++;
            w->at[i] = 0;
        }
        size_t left = w->chunk[i] < column->count ? column->chunks[w->chunk[i]].rows - w->at[i] : 0;
        most = left < most ? left : most;
    }
    return most;
}

static void advance(cursor *w, size_t rows)
{
    for (int i = 0; i < CURSOR_COLUMNS; i++)
        w->at[i] += rows;
    w->done += rows;
}

static const column_chunk *chunk_at(const cursor *w, int i) { return &w->column[i]->chunks[w->chunk[i]]; }

static const void *cells_at(const cursor *w, int i, size_t width)
{
    return (const char *)chunk_at(w, i)->cells + w->at[i] * width;
}

static rodt_column_bits bits_at(const cursor *w, int i)
{
    rodt_column_bits bits = chunk_at(w, i)->valid;
    bits.from += w->at[i];
    return bits;
}

rodt_text_cells py_text_at(const cursor *w, int i)
{
    rodt_text_cells cells = chunk_at(w, i)->text;
    if (cells.index != NULL) {
        cells.index_from += w->at[i];
        cells.index_valid.from += w->at[i];
    } else {
        cells.from += w->at[i];
        cells.valid.from += w->at[i];
    }
    return cells;
}

#define BLOCK 4096

/* Strokes in parts are written a block at a time into the processor's cache, until one is no whole number of units. */
typedef struct parts_of_strokes {
    PyObject *room; /* of the parts of all rows */
    int64_t *row;
    bool wanted;
    int64_t block[BLOCK];
} parts_of_strokes;

/* What is done with the chunks of a cursor. */
typedef struct chunk_job {
    const rodt_column_plan *numbers;
    rodt_text_plan *texts;
    rodt_chamber_reader *reader;
    uint8_t *codes; /* of chambers that are text; NULL = they are codes */
    const rodt_column_out *out;
    parts_of_strokes *parts; /* of texts */
} chunk_job;

rodt_status py_each_chunk(cursor *w, chunk_worker *worker, const void *job)
{
    while (w->done < w->rows) {
        size_t rows = chunk_rows(w);
        rodt_status status = worker(job, w, rows);
        if (status != RODT_OK)
            return status;
        advance(w, rows);
    }
    return RODT_OK;
}

/* --- Numbers ----------------------------------------------------------------------------------------- */

static bool check_apart(const cursor *w, const held_answers *answers)
{
    for (int i = 0; i < RODT_READING_FIELDS; i++) {
        const held_column *column = w->column[i];
        for (size_t k = 0; column != NULL && column->kind != COLUMN_TEXT && k < column->count; k++) {
            if (py_overlaps(answers, column->chunks[k].cells, column->chunks[k].rows * py_kind_width[column->kind])) {
                PyErr_SetString(PyExc_ValueError, OVERLAP);
                return false;
            }
        }
    }
    return true;
}

static void take_reading(const cursor *w, int i, const int32_t **out32, const int64_t **out64, rodt_column_bits *valid)
{
    if (w->column[i]->kind == COLUMN_INT64)
        *out64 = cells_at(w, i, 8);
    else
        *out32 = cells_at(w, i, 4);
    *valid = bits_at(w, i);
}

static rodt_status judge_numbers(const void *of, const cursor *w, size_t rows)
{
    const chunk_job *job = of;
    rodt_column_in in;
    rodt_column_out part = py_answers_at(job->out, w->done);
    memset(&in, 0, sizeof in);
    take_reading(w, RODT_FIELD_RELEASED, &in.released, &in.released64, &in.released_valid);
    take_reading(w, RODT_FIELD_APPLIED, &in.applied, &in.applied64, &in.applied_valid);
    in.chamber = job->codes != NULL ? job->codes + w->done : cells_at(w, RODT_FIELD_CHAMBER, 1);
    if (job->codes == NULL)
        in.chamber_valid = bits_at(w, RODT_FIELD_CHAMBER);
    if (w->column[RODT_FIELD_PSI] != NULL) {
        in.psi = cells_at(w, RODT_FIELD_PSI, 4);
        in.psi_valid = bits_at(w, RODT_FIELD_PSI);
    }
    if (w->column[RODT_FIELD_DATE] != NULL) {
        in.date = cells_at(w, RODT_FIELD_DATE, 4);
        in.date_valid = bits_at(w, RODT_FIELD_DATE);
    }
    return rodt_column_plan_judge(job->numbers, &in, rows, &part, NULL);
}

static rodt_status read_chunk(const void *of, const cursor *w, size_t rows)
{
    const chunk_job *job = of;
    rodt_text_cells cells = py_text_at(w, 0);
    return rodt_chamber_reader_read(job->reader, &cells, rows, job->codes + w->done, NULL);
}

/* Chamber marks that are text become codes first. */
static rodt_status read_marks(number_plan *plan, const held_column *marks, uint8_t *codes)
{
    cursor w = {.column = {marks}, .rows = marks->rows};
    rodt_status made = plan->reader != NULL ? RODT_OK : rodt_chamber_reader_new(plan->plan, &plan->reader);
    const chunk_job job = {.reader = plan->reader, .codes = codes};
    return made == RODT_OK ? py_each_chunk(&w, read_chunk, &job) : made;
}

static const char *column_name(int i)
{
    return i < RODT_READING_FIELDS ? rodt_field_name((rodt_field)i) : i == CURSOR_POSITION ? "position" : "by";
}

bool py_open_cursor(PyObject *tuple, cursor *w)
{
    int first = -1;
    memset(w, 0, sizeof *w);
    for (int i = 0; i < PyTuple_Size(tuple) && i < CURSOR_COLUMNS; i++) {
        PyObject *object = PyTuple_GetItem(tuple, i);
        if (object == NULL)
            return false;
        if (object == Py_None)
            continue;
        w->column[i] = PyCapsule_GetPointer(object, COLUMN_CAPSULE);
        if (w->column[i] == NULL)
            return false;
        if (first >= 0 && w->rows != w->column[i]->rows) {
            PyErr_Format(PyExc_ValueError, "%s has %zu rows and %s has %zu", column_name(i), w->column[i]->rows,
                         column_name(first), w->rows);
            return false;
        }
        first = first < 0 ? i : first;
        w->rows = w->column[i]->rows;
    }
    return true;
}

static bool check_numbers(const cursor *w)
{
    for (int i = RODT_FIELD_RELEASED; i <= RODT_FIELD_APPLIED; i++) {
        column_kind kind = w->column[i]->kind;
        if (kind != COLUMN_INT32 && kind != COLUMN_INT64)
            return py_raise_column(rodt_field_name((rodt_field)i),
                                   "readings are int32 or int64, both columns numbers or both text");
    }
    if (w->column[RODT_FIELD_CHAMBER]->kind != COLUMN_CODE && w->column[RODT_FIELD_CHAMBER]->kind != COLUMN_TEXT)
        return py_raise_column("chamber", "chambers are uint8 codes of the plan, or text");
    if (w->column[RODT_FIELD_PSI] != NULL && w->column[RODT_FIELD_PSI]->kind != COLUMN_INT32)
        return py_raise_column("psi", "a column of pressures is int32, thousandths of a psi");
    if (w->column[RODT_FIELD_DATE] != NULL && w->column[RODT_FIELD_DATE]->kind != COLUMN_INT32 &&
        w->column[RODT_FIELD_DATE]->kind != COLUMN_DAY)
        return py_raise_column("date", "a column of days is int32 or date32, days since 1970-01-01");
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

/* New marks cannot be added to a plan that is in use; they go into a copy for this call. */
static number_plan *copy_plan(const number_plan *plan)
{
    number_plan *copy = calloc(1, sizeof *copy);
    if (copy != NULL && rodt_column_plan_copy(plan->plan, &copy->plan) != RODT_OK) {
        free(copy);
        return NULL;
    }
    return copy;
}

PyObject *py_columns_judge_numbers(PyObject *capsule, PyObject *columns, PyObject *answers)
{
    number_plan *plan = PyCapsule_GetPointer(capsule, PLAN_CAPSULE);
    cursor w;
    held_answers held;
    rodt_column_out out;
    rodt_status status = RODT_OK;
    if (plan == NULL || !py_open_cursor(columns, &w) || !check_numbers(&w))
        return NULL;
    uint8_t *codes = NULL;
    number_plan *copy = NULL;
    if (w.column[RODT_FIELD_CHAMBER]->kind == COLUMN_TEXT) {
        codes = malloc(w.rows + 1);
        copy = plan->judging > 0 ? copy_plan(plan) : NULL;
        if (codes == NULL || (copy == NULL && plan->judging > 0)) {
            free(codes);
            free_number_plan(copy);
            return PyErr_NoMemory();
        }
        plan = copy != NULL ? copy : plan;
        status = read_marks(plan, w.column[RODT_FIELD_CHAMBER], codes);
    }
    held.count = 0;
    bool ready = status != RODT_OK || (py_to_answers(answers, w.rows, &held, &out) && check_apart(&w, &held));
    if (ready && status == RODT_OK) {
        const chunk_job job = {.numbers = plan->plan, .codes = codes, .out = &out};
        plan->judging++;
        Py_BEGIN_ALLOW_THREADS
        status = py_each_chunk(&w, judge_numbers, &job);
        Py_END_ALLOW_THREADS plan->judging--;
    }
    py_release_answers(&held);
    free(codes);
    free_number_plan(copy);
    return ready ? finish(status) : NULL;
}

/* --- Texts ------------------------------------------------------------------------------------------- */

rodt_status py_judge_chunk(rodt_text_plan *plan, const cursor *w, size_t rows, const rodt_column_out *out)
{
    rodt_text_columns in = {0};
    for (int i = 0; i < RODT_READING_FIELDS; i++) {
        if (w->column[i] != NULL)
            in.field[i] = py_text_at(w, i);
    }
    return rodt_text_plan_judge(plan, &in, rows, out, NULL);
}

static rodt_status judge_texts(const void *of, const cursor *w, size_t rows)
{
    const chunk_job *job = of;
    parts_of_strokes *parts = job->parts;
    rodt_column_out part = py_answers_at(job->out, w->done);
    part.stroke_parts = parts->wanted ? parts->row + w->done : parts->block;
    const rodt_status status = py_judge_chunk(job->texts, w, rows, &part);
    if (status == RODT_OK && !parts->wanted && py_has_finer(part.stroke, parts->block, rows)) {
        py_fill_parts(job->out->stroke, w->done, parts->row);
        memcpy(parts->row + w->done, parts->block, rows * sizeof *parts->row);
        parts->wanted = true;
    }
    return status;
}

bool py_check_texts(const cursor *w)
{
    for (int i = 0; i < CURSOR_COLUMNS; i++) {
        if (w->column[i] != NULL && w->column[i]->kind == COLUMN_DAY)
            return py_raise_column(column_name(i),
                                   "with readings that are text, dates are text too, such as 2021-10-14");
        if (w->column[i] != NULL && w->column[i]->kind != COLUMN_TEXT)
            return py_raise_column(column_name(i), "with readings that are text, this column is text too; whole "
                                                   "numbers go into Plan.judge");
    }
    return true;
}

static void free_text_plan(PyObject *capsule)
{
    text_plan *plan = PyCapsule_GetPointer(capsule, TEXT_PLAN_CAPSULE);
    rodt_text_plan_free(plan->plan);
    rodt_rules_unref(plan->rules);
    Py_DECREF(plan->defaults);
    py_free_rooms(&plan->rooms);
    py_free_rooms(&plan->parts);
    free(plan);
}

PyObject *py_text_plan_new(PyObject *defaults, const rodt_rules *rules)
{
    text_plan *plan = calloc(1, sizeof *plan);
    PyObject *capsule = plan == NULL ? PyErr_NoMemory() : PyCapsule_New(plan, TEXT_PLAN_CAPSULE, free_text_plan);
    if (capsule == NULL) {
        free(plan);
        return NULL;
    }
    PyCapsule_SetContext(capsule, &plan->rooms);
    Py_INCREF(defaults);
    plan->defaults = defaults;
    plan->rules = rodt_rules_ref(rules);
    memset(py_call_error(), 0, sizeof(rodt_error));
    rodt_status status = RODT_OK;
    bool read = py_to_reading_text(defaults, &plan->numbers, &plan->form);
    if (read)
        status = rodt_text_plan_new(rules, &plan->form, &plan->plan, py_call_error());
    if (status != RODT_OK)
        py_raise_status(status);
    if (read && status == RODT_OK)
        return capsule;
    Py_DECREF(capsule);
    return NULL;
}

PyObject *py_columns_judge_texts(PyObject *capsule, PyObject *columns, PyObject *answers)
{
    text_plan *plan = PyCapsule_GetPointer(capsule, TEXT_PLAN_CAPSULE);
    cursor w;
    held_answers held;
    rodt_column_out out;
    rodt_status status = RODT_OK;
    if (plan == NULL || !py_open_cursor(columns, &w) || !py_check_texts(&w))
        return NULL;
    w.most = BLOCK;
    const size_t size = w.rows * sizeof(int64_t);
    parts_of_strokes parts = {.room = py_take_room(&plan->parts, size), .wanted = false};
    bool ready = py_to_answers(answers, w.rows, &held, &out) && parts.room != NULL;
    if (ready) {
        const chunk_job job = {.texts = plan->plan, .out = &out, .parts = &parts};
        parts.row = (int64_t *)(void *)PyByteArray_AsString(parts.room);
        Py_BEGIN_ALLOW_THREADS
        status = py_each_chunk(&w, judge_texts, &job);
        Py_END_ALLOW_THREADS
    }
    py_release_answers(&held);
    PyObject *made = ready ? finish(status) : NULL;
    if (made != NULL && parts.wanted) {
        Py_DECREF(made);
        made = py_view_room(parts.room, 0, size);
    }
    Py_XDECREF(parts.room);
    return made;
}
