/* SPDX-License-Identifier: Apache-2.0 */
/* Many wheel ends at once, a part of core.i. A column of texts crosses as one text, in and out, so that no language needs
 * a typemap: between two cells is U+001F, the unit separator. */

%{
#define CORE_CELL_END '\x1f'

typedef struct Columns {
  char *texts[RODT_READING_FIELDS]; /* owned; NULL = no such column */
  size_t cells[RODT_READING_FIELDS];
  size_t rows; /* of the answers; each is NULL before judge */
  int64_t *parts; /* the strokes in RODT_COLUMN_PARTS_PER_INCH */
  int32_t *stroke, *limit;
  uint8_t *verdict, *flags;
  uint64_t *reasons;
} Columns;

typedef struct core_text_buffer {
  char *text;
  size_t size, room;
} core_text_buffer;

static void core_columns_forget(Columns *columns) {
  free(columns->parts);
  free(columns->stroke);
  free(columns->limit);
  free(columns->verdict);
  free(columns->flags);
  free(columns->reasons);
  columns->parts = NULL;
  columns->stroke = columns->limit = NULL;
  columns->verdict = columns->flags = NULL;
  columns->reasons = NULL;
  columns->rows = 0;
}

static bool core_columns_room(Columns *columns, size_t rows) {
  core_columns_forget(columns);
  columns->rows = rows;
  columns->parts = (int64_t *)calloc(rows + 1, sizeof *columns->parts);
  columns->stroke = (int32_t *)calloc(rows + 1, sizeof *columns->stroke);
  columns->limit = (int32_t *)calloc(rows + 1, sizeof *columns->limit);
  columns->verdict = (uint8_t *)calloc(rows + 1, sizeof *columns->verdict);
  columns->flags = (uint8_t *)calloc(rows + 1, sizeof *columns->flags);
  columns->reasons = (uint64_t *)calloc(rows + 1, sizeof *columns->reasons);
  return columns->parts != NULL && columns->stroke != NULL && columns->limit != NULL && columns->verdict != NULL &&
         columns->flags != NULL && columns->reasons != NULL;
}

/* False: so many cells are not there, because one has the separator in it. */
static bool core_has_cells(const char *text, size_t count) {
  size_t found = 1;
  for (const char *end = strchr(text, CORE_CELL_END); end != NULL; end = strchr(end + 1, CORE_CELL_END))
    found++;
  return count == 0 ? *text == '\0' : found == count;
}

static void core_split(const char *text, size_t count, rodt_text_span *cells) {
  for (size_t row = 0; row < count; row++) {
    cells[row].text = text;
    cells[row].size = strcspn(text, "\x1f");
    text += cells[row].size + 1;
  }
}

/* The columns that are there, as spans that the caller frees. */
static bool core_columns_in(const Columns *columns, size_t rows, rodt_text_columns *in) {
  for (int field = 0; field < RODT_READING_FIELDS; field++) {
    if (columns->texts[field] == NULL)
      continue;
    rodt_text_span *cells = (rodt_text_span *)calloc(rows + 1, sizeof *cells);
    in->field[field].layout = RODT_TEXT_LAYOUT_SPANS;
    in->field[field].cells = cells;
    if (cells == NULL)
      core_error.status = RODT_E_MEMORY;
    else if (columns->cells[field] != rows)
      core_refuse(RODT_E_ARGUMENT, rodt_field_name((rodt_field)field), "the column has another number of cells than rows");
    if (core_error.status != RODT_OK)
      return false;
    core_split(columns->texts[field], rows, cells);
  }
  return true;
}

static void core_columns_judge(Columns *columns, const rodt_rules *rules, const rodt_form *form, size_t rows) {
  rodt_text_columns in;
  rodt_text_plan *plan = NULL;
  memset(&in, 0, sizeof in);
  if (!core_columns_room(columns, rows))
    core_error.status = RODT_E_MEMORY;
  else if (core_columns_in(columns, rows, &in))
    core_error.status = rodt_text_plan_new(rules, form, &plan, &core_error);
  if (core_error.status == RODT_OK) {
    rodt_column_out out;
    memset(&out, 0, sizeof out);
    out.stroke_parts = columns->parts;
    out.stroke = columns->stroke;
    out.limit = columns->limit;
    out.verdict = columns->verdict;
    out.flags = columns->flags;
    out.reasons = columns->reasons;
    core_error.status = rodt_text_plan_judge(plan, &in, rows, &out, &core_error);
  }
  rodt_text_plan_free(plan);
  for (int field = 0; field < RODT_READING_FIELDS; field++)
    free((void *)in.field[field].cells);
  if (core_error.status != RODT_OK)
    core_columns_forget(columns);
}

static bool core_append(core_text_buffer *to, const char *text, size_t size) {
  if (to->room - to->size <= size) {
    const size_t room = (to->room + size) * 2 + 64;
    char *grown = (char *)realloc(to->text, room);
    if (grown == NULL)
      return false;
    to->text = grown;
    to->room = room;
  }
  memcpy(to->text + to->size, text, size);
  to->size += size;
  to->text[to->size] = '\0';
  return true;
}

/* Words of the bits of a set, with commas. */
static bool core_append_set(core_text_buffer *to, uint64_t set, int end, const char *(*word)(int)) {
  bool first = true, done = true;
  for (int bit = 0; done && bit < end; bit++) {
    if ((set >> bit & 1) == 0)
      continue;
    done = (first || core_append(to, ", ", 2)) && core_append(to, word(bit), strlen(word(bit)));
    first = false;
  }
  return done;
}

static bool core_append_inches(core_text_buffer *to, int64_t count, int64_t per_inch) {
  char text[48] = "";
  rodt_ratio inches;
  if (count >= 0 && rodt_ratio_make(count, per_inch, &inches) == RODT_OK)
    snprintf(text, sizeof text, inches.den == 1 ? "%lld" : "%lld/%lld", (long long)inches.num, (long long)inches.den);
  return core_append(to, text, strlen(text));
}

static const char *core_reason_word(int reason) { return rodt_reason_name((rodt_reason)reason); }
static const char *core_flag_word(int bit) { return rodt_column_flag_name((rodt_column_flag)(1 << bit)); }

/* The cell of an answer; false where there is no memory. */
static bool core_append_cell(const Columns *columns, const char *name, size_t row, core_text_buffer *to) {
  if (name[0] == 'v')
    return core_append(to, rodt_verdict_name((rodt_verdict)columns->verdict[row]),
                       strlen(rodt_verdict_name((rodt_verdict)columns->verdict[row])));
  if (name[0] == 'r')
    return core_append_set(to, columns->reasons[row], RODT_REASON_END, core_reason_word);
  if (name[0] == 'f')
    return core_append_set(to, columns->flags[row], 8, core_flag_word);
  if (name[0] == 's')
    return core_append_inches(to, columns->parts[row], RODT_COLUMN_PARTS_PER_INCH);
  return core_append_inches(to, columns->limit[row], RODT_COLUMN_PER_INCH);
}

static char *core_column(const Columns *columns, const char *name) {
  static const char *const names[] = {"verdict", "reasons", "flags", "stroke", "limit"};
  core_text_buffer made = {NULL, 0, 0};
  bool known = false, done = true;
  for (size_t i = 0; i < sizeof names / sizeof names[0]; i++)
    known = known || (name != NULL && strcmp(name, names[i]) == 0);
  if (!known || columns->stroke == NULL) {
    core_refuse(RODT_E_ARGUMENT, name != NULL ? name : "name",
                known ? "the columns are not judged yet" : "no answer has this name");
    return NULL;
  }
  done = core_append(&made, "", 0);
  for (size_t row = 0; done && row < columns->rows; row++) {
    const char end = CORE_CELL_END;
    done = (row == 0 || core_append(&made, &end, 1)) && core_append_cell(columns, name, row, &made);
  }
  if (done)
    return made.text;
  core_error.status = RODT_E_MEMORY;
  free(made.text);
  return NULL;
}
%}

%exception Columns::~Columns "$action";
%newobject column;

typedef struct Columns {} Columns;

%extend Columns {
  Columns() { return (Columns *)core_new(sizeof(Columns)); }
  ~Columns() {
    if (!core_dies($self))
      return;
    core_columns_forget($self);
    for (int field = 0; field < RODT_READING_FIELDS; field++)
      free($self->texts[field]);
    free($self);
  }
  /* A column of so many cells by its heading ("Released", "PSI"); a cell without a text is missing. */
  void set(const char *heading, const char *cells, int count) {
    RODT_ENUM32(rodt_field) field = RODT_FIELD_NONE;
    char *copy = NULL;
    if (heading == NULL || rodt_field_find(heading, &field) != RODT_OK || field >= RODT_READING_FIELDS)
      core_refuse(RODT_E_ARGUMENT, heading != NULL ? heading : "heading", "a reading has no such column");
    else if (cells == NULL || count < 0 || !core_has_cells(cells, (size_t)count))
      core_refuse(RODT_E_ARGUMENT, heading, "a cell holds a unit separator, U+001F");
    else if ((copy = (char *)malloc(strlen(cells) + 1)) == NULL)
      core_error.status = RODT_E_MEMORY;
    if (core_error.status != RODT_OK)
      return;
    free($self->texts[field]);
    $self->texts[field] = strcpy(copy, cells);
    $self->cells[field] = (size_t)count;
  }
  /* Judges so many rows as judge_row would; form is what all of them share and how they are written. */
  void judge(Rules *rules, Form *form, int rows) {
    if (rows < 0 || form == NULL)
      core_refuse(RODT_E_ARGUMENT, rows < 0 ? "rows" : "form", "a form and a number of rows were expected");
    else
      core_columns_judge($self, core_law(rules), &form->form, (size_t)rows);
  }
  /* An answer: "verdict" and "flags", "reasons" with commas, "stroke" and "limit" in inches; nothing = there is none, or
   * a stroke is no whole number of 1/127000000000 in, a limit none of 1/5080000 in. */
  char *column(const char *name) { return core_column($self, name); }
}
