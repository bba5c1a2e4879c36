/* SPDX-License-Identifier: Apache-2.0 */
/* Rows of text one by one: what columns of answers do not hold, such as sentences and what counts of a vehicle. */
#include "ext.h"

#include "batch/vehicle_groups.h"
#include "io/system_random.h"

_Static_assert(CURSOR_NAMES_MAX == NAME_CELLS_MAX, "a vehicle is named by as many columns as in the command");

/* A longer cell is unreadable, as in columns of texts. */
#define CELL_SIZE 256

/* --- One row ------------------------------------------------------------------------------------------- */

typedef struct row_text {
    rodt_form form;
    char room[RODT_READING_FIELDS][CELL_SIZE];
} row_text;

/* A copy closed by a zero byte; one that cannot be made is a text that no reader takes, unless it is blank. */
static const char *close_cell(rodt_text_span cell, char *room)
{
    size_t blank = 0;
    while (blank < cell.size && strchr(" \t\r\n\v\f", cell.text[blank]) != NULL && cell.text[blank] != '\0')
        blank++;
    if (cell.text == NULL || blank == cell.size)
        return "";
    if (cell.size >= CELL_SIZE || memchr(cell.text, '\0', cell.size) != NULL)
        return "?";
    memcpy(room, cell.text, cell.size);
    room[cell.size] = '\0';
    return room;
}

/* Cells of a row by column of the cursor: those of its fields come first, as the library has them. */
#define ROW_CELLS (CURSOR_COLUMNS > RODT_FIELD_ROOM ? CURSOR_COLUMNS : RODT_FIELD_ROOM)

/* The columns of a chunk that are there. */
typedef struct chunk_columns {
    int number[CURSOR_COLUMNS]; /* in the cursor */
    rodt_text_cells cells[CURSOR_COLUMNS];
    int count;
} chunk_columns;

static void take_columns(const cursor *w, chunk_columns *columns)
{
    columns->count = 0;
    for (int i = 0; i < CURSOR_COLUMNS; i++) {
        if (w->column[i] == NULL)
            continue;
        columns->number[columns->count] = i;
        columns->cells[columns->count++] = py_text_at(w, i);
    }
}

/* Those without a column stay nothing. */
static void take_cells(const chunk_columns *columns, size_t row, rodt_text_span cells[ROW_CELLS])
{
    for (int i = 0; i < columns->count; i++)
        cells[columns->number[i]] = rodt_text_cells_at(&columns->cells[i], row);
}

/* What the cells say, and what all rows share where they say nothing. */
static void take_text(const text_plan *plan, const rodt_text_span cells[ROW_CELLS], row_text *text)
{
    text->form = plan->form;
    for (int i = 0; i < RODT_READING_FIELDS; i++) {
        const char *cell = close_cell(cells[i], text->room[i]);
        if (cell[0] != '\0')
            rodt_form_set(&text->form, (rodt_field)i, cell);
    }
}

static PyObject *to_bytes(const output *from)
{
    return PyBytes_FromStringAndSize(from->buffer, (Py_ssize_t)from->used);
}

/* Walks through the rows without the interpreter's lock. NULL has been raised. */
static bool walk(cursor *w, chunk_worker *worker, const void *job)
{
    rodt_status status;
    Py_BEGIN_ALLOW_THREADS
    status = py_each_chunk(w, worker, job);
    Py_END_ALLOW_THREADS
    if (status != RODT_OK)
        py_raise_status(status);
    return status == RODT_OK;
}

static bool open_rows(PyObject *capsule, PyObject *columns, const text_plan **plan, cursor *w)
{
    *plan = PyCapsule_GetPointer(capsule, TEXT_PLAN_CAPSULE);
    memset(py_call_error(), 0, sizeof(rodt_error));
    return *plan != NULL && py_open_cursor(columns, w) && py_check_texts(w);
}

/* --- Sentences ----------------------------------------------------------------------------------------- */

typedef struct say_job {
    const text_plan *plan;
    const rodt_catalogue *catalogue;
    output *offsets, *bytes;
} say_job;

static void say_reason(const say_job *job, const rodt_finding *finding, rodt_reason reason, const char *before)
{
    rodt_message message;
    char text[2 * RODT_SENTENCE_SIZE]; /* other languages are longer */
    if (rodt_finding_reason_message(finding, reason, &message) != RODT_OK ||
        rodt_message_format(&message, job->catalogue, text, sizeof text, NULL) != RODT_OK || text[0] == '\0')
        return;
    output_text(job->bytes, before);
    output_text(job->bytes, text);
}

static rodt_status say_rows(const void *of, const cursor *w, size_t rows)
{
    const say_job *job = of;
    row_text text;
    rodt_finding finding;
    rodt_text_span cells[ROW_CELLS] = {{NULL, 0}};
    chunk_columns columns;
    take_columns(w, &columns);
    for (size_t row = 0; row < rows; row++) {
        take_cells(&columns, row, cells);
        take_text(job->plan, cells, &text);
        rodt_status status = rodt_form_judge_row(&text.form, job->plan->rules, &finding, NULL);
        if (status != RODT_OK)
            return status;
        size_t start = job->bytes->used;
        for (int reason = 0; reason < RODT_REASON_END; reason++) {
            if (rodt_finding_has(&finding, (rodt_reason)reason))
                say_reason(job, &finding, (rodt_reason)reason, job->bytes->used > start ? "; " : "");
        }
        int64_t end = (int64_t)job->bytes->used;
        output_bytes(job->offsets, (const char *)&end, sizeof end);
    }
    return job->bytes->failure != 0 || job->offsets->failure != 0 ? RODT_E_MEMORY : RODT_OK;
}

PyObject *py_columns_say(PyObject *capsule, PyObject *columns, PyObject *catalogue)
{
    say_job job = {.catalogue = NULL};
    cursor w;
    output offsets = {.descriptor = -1}, bytes = {.descriptor = -1};
    PyObject *made = NULL;
    const int64_t first = 0;
    if (!py_to_catalogue(catalogue, &job.catalogue) || !open_rows(capsule, columns, &job.plan, &w))
        return NULL;
    job.offsets = &offsets;
    job.bytes = &bytes;
    bool open = output_open(&offsets, -1) && output_open(&bytes, -1);
    if (!open)
        PyErr_NoMemory();
    else
        output_bytes(&offsets, (const char *)&first, sizeof first);
    if (open && walk(&w, say_rows, &job))
        made = Py_BuildValue("NN", to_bytes(&offsets), to_bytes(&bytes));
    output_close(&offsets);
    output_close(&bytes);
    return made;
}

/* --- Inspections --------------------------------------------------------------------------------------- */

/* Results that are kept: as many as the command keeps. */
#define RESULTS_KEPT 16384u

typedef struct inspect_job {
    const text_plan *plan;
    rodt_row_cache *cache;
    vehicle_groups *groups;
    size_t names;
    group_status *status;
} inspect_job;

/* What counts of the row, but for its own day and position; from the cache where an equal row was judged before. */
static rodt_status judge_brake(const inspect_job *job, const rodt_text_span cells[ROW_CELLS], group_brake *brake)
{
    row_text text;
    rodt_finding finding;
    void *kept = rodt_row_cache_find_cells(job->cache, cells);
    if (kept == NULL) {
        take_text(job->plan, cells, &text);
        kept = rodt_row_cache_read(job->cache, cells, &text.form);
    }
    if (kept != NULL) {
        memcpy(brake, kept, sizeof *brake);
        return RODT_OK;
    }
    rodt_status status = rodt_form_judge_row(&text.form, job->plan->rules, &finding, NULL);
    if (status != RODT_OK)
        return status;
    *brake = group_brake_of(&finding, (rodt_position){0});
    kept = rodt_row_cache_keep(job->cache);
    if (kept != NULL)
        memcpy(kept, brake, sizeof *brake);
    return RODT_OK;
}

static rodt_position position_of(rodt_text_span cell)
{
    rodt_position position = {0};
    if (cell.text == NULL || rodt_position_parse_n(cell.text, cell.size, &position, NULL) != RODT_OK)
        return (rodt_position){0};
    return position;
}

/* The day of the row's own cell; without a column, that of all rows. */
static rodt_date day_of(const text_plan *plan, const cursor *w, rodt_text_span cell)
{
    rodt_date day;
    char room[CELL_SIZE];
    if (w->column[RODT_FIELD_DATE] == NULL)
        return plan->form.default_day;
    const char *text = close_cell(cell, room);
    return rodt_date_parse_n(text, strlen(text), plan->form.date_order, &day, NULL) == RODT_OK ? day : (rodt_date){0};
}

static void take_names(const inspect_job *job, const rodt_text_span cells[ROW_CELLS], name_cell names[NAME_CELLS_MAX])
{
    for (size_t i = 0; i < job->names; i++) {
        rodt_text_span cell = cells[CURSOR_NAMES + i];
        names[i] = cell.text == NULL ? (name_cell){"", 0} : (name_cell){cell.text, cell.size};
    }
}

static rodt_status inspect_rows(const void *of, const cursor *w, size_t rows)
{
    const inspect_job *job = of;
    name_cell names[NAME_CELLS_MAX];
    group_brake brake;
    rodt_text_span cells[ROW_CELLS] = {{NULL, 0}};
    chunk_columns columns;
    take_columns(w, &columns);
    for (size_t row = 0; row < rows; row++) {
        take_cells(&columns, row, cells);
        rodt_status status = judge_brake(job, cells, &brake);
        if (status != RODT_OK)
            return status;
        brake.position = position_of(cells[CURSOR_POSITION]);
        if (brake.day.year != 0)
            brake.day = day_of(job->plan, w, cells[RODT_FIELD_DATE]);
        take_names(job, cells, names);
        *job->status = vehicle_groups_count(job->groups, names, &brake);
        if (*job->status != GROUP_OK)
            return RODT_E_MEMORY;
    }
    return RODT_OK;
}

/* Lines, and where each ends. */
typedef struct kept_lines {
    output bytes, ends;
} kept_lines;

static void keep_end(kept_lines *to, int64_t end) { output_bytes(&to->ends, (const char *)&end, sizeof end); }

/* Whole lines come, several at a time. A name in quotes may have line ends of its own. */
static bool keep_lines(void *context, const char *bytes, size_t size)
{
    kept_lines *to = context;
    int64_t end = (int64_t)to->bytes.used;
    bool is_quoted = false;
    output_bytes(&to->bytes, bytes, size);
    for (size_t i = 0; i < size; i++) {
        end++;
        is_quoted ^= bytes[i] == '"';
        if (bytes[i] == '\n' && !is_quoted)
            keep_end(to, end);
    }
    return to->bytes.failure == 0 && to->ends.failure == 0;
}

static size_t count_names(const cursor *w)
{
    size_t names = 0;
    while (names < NAME_CELLS_MAX && w->column[CURSOR_NAMES + names] != NULL)
        names++;
    return names;
}

/* The headings of the columns that name the vehicle; behind them that of the day. */
static bool to_layout(PyObject *headings, const cursor *w, line_layout *layout)
{
    Py_ssize_t count = PyTuple_Size(headings);
    layout->separator = ',';
    layout->names = count_names(w);
    for (Py_ssize_t i = 0; i < count && i <= (Py_ssize_t)layout->names; i++) {
        const char *heading = py_to_text(PyTuple_GetItem(headings, i), "by");
        if (heading == NULL)
            return false;
        if (i < (Py_ssize_t)layout->names)
            layout->heading[i] = heading;
        else
            layout->day_heading = heading;
    }
    return true;
}

static bool open_cache(const cursor *w, inspect_job *job)
{
    size_t column[RODT_FIELD_ROOM];
    for (size_t i = 0; i < RODT_FIELD_ROOM; i++)
        column[i] = i < RODT_READING_FIELDS && w->column[i] != NULL ? i : RODT_NO_COLUMN;
    return rodt_row_cache_new(job->plan->rules, &job->plan->form, column, sizeof(group_brake), RESULTS_KEPT,
                              &job->cache) == RODT_OK;
}

/* The line of headings. */
static PyObject *take_header(const inspect_job *job, kept_lines *lines)
{
    *job->status = vehicle_groups_write_header(job->groups);
    if (*job->status != GROUP_OK)
        return PyErr_NoMemory();
    PyObject *made = to_bytes(&lines->bytes);
    lines->bytes.used = lines->ends.used = 0;
    keep_end(lines, 0);
    return made;
}

static bool inspect(cursor *w, const inspect_job *job)
{
    if (!walk(w, inspect_rows, job) && *job->status == GROUP_OK)
        return false;
    if (PyErr_Occurred())
        PyErr_Clear();
    if (*job->status == GROUP_OK)
        *job->status = vehicle_groups_finish(job->groups);
    return *job->status == GROUP_OK || py_raise(RODT_E_MEMORY, "by", group_sentence(*job->status));
}

static bool open_inspect(inspect_job *job, const cursor *w, const line_layout *layout, kept_lines *lines)
{
    const uint64_t seed[2] = {system_random(), system_random()};
    if (output_open(&lines->bytes, -1) && output_open(&lines->ends, -1))
        job->groups = vehicle_groups_open((line_sink){keep_lines, lines}, layout, seed);
    if (job->groups != NULL && open_cache(w, job))
        return true;
    PyErr_NoMemory();
    return false;
}

PyObject *py_columns_inspect(PyObject *capsule, PyObject *columns, PyObject *headings)
{
    group_status status = GROUP_OK;
    inspect_job job = {.status = &status};
    line_layout layout = {.names = 0};
    kept_lines lines = {{.descriptor = -1}, {.descriptor = -1}};
    cursor w;
    PyObject *made = NULL;
    if (!open_rows(capsule, columns, &job.plan, &w) || !to_layout(headings, &w, &layout))
        return NULL;
    job.names = layout.names;
    PyObject *header = open_inspect(&job, &w, &layout, &lines) ? take_header(&job, &lines) : NULL;
    if (header != NULL && inspect(&w, &job))
        made = Py_BuildValue("ONN", header, to_bytes(&lines.bytes), to_bytes(&lines.ends));
    Py_XDECREF(header);
    rodt_row_cache_free(job.cache);
    vehicle_groups_close(job.groups);
    output_close(&lines.bytes);
    output_close(&lines.ends);
    return made;
}

/* --- Shares of the rows, for those who count vehicles on several machines -------------------------------- */

typedef struct share_job {
    inspect_job names;
    output *numbers;
} share_job;

static rodt_status share_rows(const void *of, const cursor *w, size_t rows)
{
    const share_job *job = of;
    name_cell names[NAME_CELLS_MAX];
    rodt_text_span cells[ROW_CELLS] = {{NULL, 0}};
    chunk_columns columns;
    take_columns(w, &columns);
    for (size_t row = 0; row < rows; row++) {
        take_cells(&columns, row, cells);
        take_names(&job->names, cells, names);
        uint32_t number = vehicle_groups_share(names, job->names.names);
        output_bytes(job->numbers, (const char *)&number, sizeof number);
    }
    return job->numbers->failure != 0 ? RODT_E_MEMORY : RODT_OK;
}

PyObject *py_columns_share(PyObject *columns)
{
    output numbers = {.descriptor = -1};
    share_job job = {.numbers = &numbers};
    cursor w;
    PyObject *made = NULL;
    if (!py_open_cursor(columns, &w) || !py_check_texts(&w))
        return NULL;
    job.names.names = count_names(&w);
    if (!output_open(&numbers, -1))
        return PyErr_NoMemory();
    if (walk(&w, share_rows, &job))
        made = to_bytes(&numbers);
    output_close(&numbers);
    return made;
}
