/* SPDX-License-Identifier: Apache-2.0 */
/* Rows as a worksheet. The library writes the workbook to a file without a name, which is copied to the output when it
 * is complete. */
#include "batch/workbook.h"
#include "batch/results.h"
#include "batch/xlsx.h"
#include "io/temporary_file.h"
#include "ui/compiler.h"
#include "ui/language.h"
#include "ui/message.h"
#include "ui/utf8.h"

#include <errno.h>
#include <locale.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* A cell holds 32,767 characters of up to four bytes. */
#define CELL_SIZE ((size_t)32767 * 4 + 1)

typedef enum cell_style {
    STYLE_HEADING,
    STYLE_FRACTION,
    STYLE_NUMBER,
    STYLE_GOOD,
    STYLE_BAD,
    STYLE_OPEN,
    STYLES
} cell_style;

struct batch_workbook {
    FILE *file; /* what the library writes to */
    locale_t point; /* numbers are written with a decimal point, whatever the locale is */
    locale_t before;
    lxw_workbook *book;
    lxw_worksheet *sheet;
    lxw_format *style[STYLES];
    lxw_row_t row;    /* the next one */
    lxw_row_t header; /* the row of the headings */
    char text[CELL_SIZE];
    char clean[CELL_SIZE];
};

int batch_workbook_prepare(void) { return xlsx_load(); }

static bool stop(batch_chunk *chunk, uint64_t line, lxw_error error)
{
    if (error == LXW_ERROR_MEMORY_MALLOC_FAILED)
        return batch_chunk_stop(chunk, 0, "no memory");
    if (error == LXW_ERROR_WORKSHEET_INDEX_OUT_OF_RANGE)
        return batch_chunk_stop(chunk, line, "a worksheet ends here: it has 1048576 rows of 16384 cells");
    return batch_chunk_stop(chunk, line, "a cell of a worksheet holds 32767 characters, and here are more");
}

/* --- Opening ------------------------------------------------------------------------------------------- */

static bool add_styles(batch_workbook *to, int decimals)
{
    static const struct {
        lxw_color_t ink, paper;
    } colors[] = {[STYLE_GOOD] = {0x0B5A2A, 0xD9F2E0},
                  [STYLE_BAD] = {0x8A0F0F, 0xFADCDC},
                  [STYLE_OPEN] = {0x6B4A00, 0xFCEFC9}};
    char digits[20] = "0";
    for (int i = 0; i < STYLES; i++) {
        to->style[i] = xlsx.workbook_add_format(to->book);
        if (to->style[i] == NULL)
            return false;
    }
    for (int i = STYLE_GOOD; i <= STYLE_OPEN; i++) {
        xlsx.format_set_font_color(to->style[i], colors[i].ink);
        xlsx.format_set_bg_color(to->style[i], colors[i].paper);
        xlsx.format_set_bold(to->style[i]);
    }
    xlsx.format_set_bold(to->style[STYLE_HEADING]);
    xlsx.format_set_bottom(to->style[STYLE_HEADING], LXW_BORDER_THIN);
    xlsx.format_set_num_format(to->style[STYLE_FRACTION], "# ?\?\?/?\?\?" /* no trigraph */);
    if (decimals > 0)
        snprintf(digits, sizeof digits, "0.%.*s", decimals, "000000");
    xlsx.format_set_num_format(to->style[STYLE_NUMBER], digits);
    return true;
}

/* Two runs of one day write the same bytes. */
static bool set_day(lxw_workbook *book, rodt_date day)
{
    struct tm date = {.tm_year = day.year - 1900, .tm_mon = day.month - 1, .tm_mday = day.day, .tm_hour = 12};
    lxw_doc_properties properties = {.created = mktime(&date)};
    return xlsx.workbook_set_properties(book, &properties) == LXW_NO_ERROR;
}

static bool open_book(batch_workbook *to, const batch_run *run)
{
    char path[40];
    lxw_workbook_options options = {.constant_memory = LXW_TRUE, .tmpdir = getenv("TMPDIR"), .use_zip64 = LXW_TRUE};
    to->point = newlocale(LC_ALL_MASK, "C", (locale_t)0);
    if (to->point == (locale_t)0)
        return false;
    to->before = uselocale(to->point);
    to->file = temporary_file();
    if (to->file == NULL)
        return false;
    snprintf(path, sizeof path, "/dev/fd/%d", fileno(to->file));
    to->book = xlsx.workbook_new_opt(path, &options);
    to->sheet = to->book != NULL ? xlsx.workbook_add_worksheet(to->book, NULL) : NULL;
    return to->sheet != NULL && add_styles(to, run->options->decimals) && set_day(to->book, run->context.day);
}

bool batch_workbook_open(batch_chunk *chunk)
{
    batch_run *run = chunk->run;
    run->workbook = calloc(1, sizeof *run->workbook);
    if (run->workbook == NULL)
        return batch_chunk_stop(chunk, 0, "no memory");
    errno = 0;
    if (open_book(run->workbook, run))
        return true;
    if (errno == 0 || errno == ENOMEM)
        return batch_chunk_stop(chunk, 0, "no memory");
    return batch_chunk_stop(chunk, 0, "a temporary file cannot be written: %s", say_system_error(errno));
}

/* --- Cells --------------------------------------------------------------------------------------------- */

/* What is no character of UTF-8 becomes U+FFFD; a worksheet may hold characters only. */
static const char *clean(batch_workbook *to, const char *text, size_t size)
{
    size_t used = 0;
    while (size > 0) {
        size_t bytes = *text != '\0' ? utf8_bytes(text, size) : 0, count = bytes > 0 ? bytes : 3;
        if (used + count >= sizeof to->clean)
            return NULL;
        memcpy(to->clean + used, bytes > 0 ? text : "\xEF\xBF\xBD", count);
        used += count;
        text += bytes > 0 ? bytes : 1;
        size -= bytes > 0 ? bytes : 1;
    }
    to->clean[used] = '\0';
    return to->clean;
}

static bool put_text(batch_chunk *chunk, uint64_t line, size_t column, const char *text, size_t size, lxw_format *style)
{
    batch_workbook *to = chunk->run->workbook;
    const char *shown = clean(to, text, size);
    lxw_error error = LXW_ERROR_MAX_STRING_LENGTH_EXCEEDED;
    if (column >= LXW_COL_MAX || to->row >= LXW_ROW_MAX)
        error = LXW_ERROR_WORKSHEET_INDEX_OUT_OF_RANGE;
    else if (shown != NULL && shown[0] == '\0')
        return true;
    else if (shown != NULL)
        error = xlsx.worksheet_write_string(to->sheet, to->row, (lxw_col_t)column, shown, style);
    return error == LXW_NO_ERROR || stop(chunk, line, error);
}

static bool put_number(batch_chunk *chunk, uint64_t line, size_t column, double number, lxw_format *style)
{
    batch_workbook *to = chunk->run->workbook;
    lxw_error error = column < LXW_COL_MAX && to->row < LXW_ROW_MAX
                          ? xlsx.worksheet_write_number(to->sheet, to->row, (lxw_col_t)column, number, style)
                          : LXW_ERROR_WORKSHEET_INDEX_OUT_OF_RANGE;
    return error == LXW_NO_ERROR || stop(chunk, line, error);
}

static bool put_input(batch_chunk *chunk, const csv_record *record, lxw_format *style)
{
    batch_workbook *to = chunk->run->workbook;
    for (size_t i = 0; i < record->count; i++) {
        size_t size = csv_text(record, i, to->text, sizeof to->text);
        if (size == CSV_NO_FIT)
            return stop(chunk, record->line, LXW_ERROR_MAX_STRING_LENGTH_EXCEEDED);
        if (!put_text(chunk, record->line, i, to->text, size, style))
            return false;
    }
    return true;
}

/* --- Rows ---------------------------------------------------------------------------------------------- */

static bool put_titles(batch_chunk *chunk, const title_lines *titles)
{
    const char *text = titles->bytes;
    size_t left = titles->count > 0 ? titles->size : 0;
    while (left > 0) {
        const char *end = memchr(text, '\n', left);
        size_t size = end != NULL ? (size_t)(end - text) + 1 : left;
        size_t shown = size - (end != NULL) - (size > 1 && end != NULL && end[-1] == '\r');
        if (!put_text(chunk, 0, 0, text, shown, NULL))
            return false;
        chunk->run->workbook->row++;
        text += size;
        left -= size;
    }
    return true;
}

/* Each column has one width: a file in which two hold for one is taken for a damaged one. */
static void set_widths(lxw_worksheet *sheet, size_t inputs, size_t results)
{
    for (size_t i = 0; i < inputs + results && i < LXW_COL_MAX; i++) {
        double width = i == inputs + RESULT_VERDICT ? 20 : i == inputs + RESULT_REASONS ? 50 : 14;
        xlsx.worksheet_set_column(sheet, (lxw_col_t)i, (lxw_col_t)i, width, NULL);
    }
}

/* The headings stay in sight. */
bool batch_workbook_header(batch_chunk *chunk, const title_lines *titles, const csv_record *record)
{
    batch_workbook *to = chunk->run->workbook;
    const batch_options *options = chunk->run->options;
    if (!put_titles(chunk, titles) || !put_input(chunk, record, to->style[STYLE_HEADING]))
        return false;
    for (size_t i = 0; i < batch_result_count(options); i++) {
        const char *name = batch_result_name(options, i);
        if (!put_text(chunk, record->line, record->count + i, name, strlen(name), to->style[STYLE_HEADING]))
            return false;
    }
    set_widths(to->sheet, record->count, batch_result_count(options));
    to->header = to->row++;
    xlsx.worksheet_freeze_panes(to->sheet, to->row, 0);
    return true;
}

bool batch_workbook_pass(batch_chunk *chunk, const csv_record *record)
{
    bool good = put_input(chunk, record, NULL);
    chunk->run->workbook->row++;
    return good;
}

/* Numbers of a spreadsheet are binary: a half, a sixteenth and all that a tape shows are exact, and nothing is judged
 * by them. */
static bool put_length(batch_chunk *chunk, uint64_t line, size_t column, rodt_length length)
{
    if (!rodt_length_given(length))
        return true;
    return put_number(chunk, line, column, (double)length.num / (double)length.den,
                      chunk->run->workbook->style[STYLE_FRACTION]);
}

static lxw_format *verdict_style(const batch_workbook *to, rodt_verdict verdict)
{
    static const cell_style styles[] = {[RODT_VERDICT_UNDETERMINED] = STYLE_OPEN,
                                        [RODT_VERDICT_IN_ADJUSTMENT] = STYLE_GOOD,
                                        [RODT_VERDICT_OUT_OF_ADJUSTMENT] = STYLE_BAD,
                                        [RODT_VERDICT_INOPERATIVE] = STYLE_BAD};
    return to->style[styles[verdict]];
}

/* A decimal of at most 15 digits, which a double holds. */
static double read_decimal(const char *text)
{
    double number = 0, scale = 1;
    bool after = false;
    for (const char *at = text; *at != '\0'; at++) {
        if (*at == '.')
            after = true;
        if (*at < '0' || *at > '9')
            continue;
        number = number * 10 + (*at - '0');
        scale *= after ? 10 : 1;
    }
    return (text[0] == '-' ? -number : number) / scale;
}

static bool put_decimals(batch_chunk *chunk, uint64_t line, size_t column, const rodt_finding *finding)
{
    char text[NUMBER_TEXT_SIZE];
    const batch_options *options = chunk->run->options;
    for (int i = 0; i < NUMBERS && options->decimals >= 0; i++) {
        if (batch_number(options, finding, i, text) > 0 &&
            !put_number(chunk, line, column + (size_t)i, read_decimal(text), chunk->run->workbook->style[STYLE_NUMBER]))
            return false;
    }
    return true;
}

bool batch_workbook_row(batch_chunk *chunk, const csv_record *record, const rodt_finding *finding, const char *error)
{
    const batch_workbook *to = chunk->run->workbook;
    const size_t headings = chunk->run->header.count, width = record->count > headings ? record->count : headings;
    const char *verdict = rodt_verdict_name(finding->verdict);
    char reasons[REASONS_TEXT_SIZE];
    size_t listed = batch_reasons(finding->reasons, error, reasons);
    bool good = put_input(chunk, record, NULL) &&
                put_length(chunk, record->line, width + RESULT_STROKE, finding->applied_stroke) &&
                put_length(chunk, record->line, width + RESULT_LIMIT, finding->limit) &&
                put_length(chunk, record->line, width + RESULT_MARGIN, finding->margin) &&
                put_text(chunk, record->line, width + RESULT_VERDICT, verdict, strlen(verdict),
                         verdict_style(to, finding->verdict)) &&
                put_text(chunk, record->line, width + RESULT_REASONS, reasons, listed, NULL) &&
                put_decimals(chunk, record->line, width + RESULTS, finding);
    chunk->run->workbook->row++;
    return good;
}

/* --- Closing ------------------------------------------------------------------------------------------- */

static bool copy(batch_chunk *chunk, FILE *from)
{
    batch_workbook *to = chunk->run->workbook;
    size_t size;
    rewind(from);
    while ((size = fread(to->text, 1, sizeof to->text, from)) > 0) {
        output_bytes(&chunk->out, to->text, size);
        if (chunk->out.used >= OUTPUT_BLOCK && !output_flush(&chunk->out))
            return true; /* the delivery says why */
    }
    return !ferror(from) || batch_chunk_stop(chunk, 0, "a temporary file cannot be read: %s", say_system_error(errno));
}

bool batch_workbook_finish(batch_chunk *chunk)
{
    batch_workbook *to = chunk->run->workbook;
    size_t width = chunk->run->header.count + batch_result_count(chunk->run->options);
    xlsx.worksheet_autofilter(to->sheet, to->header, 0, to->row - 1, (lxw_col_t)(width - 1));
    lxw_error error = xlsx.workbook_close(to->book);
    to->book = NULL;
    if (error != LXW_NO_ERROR)
        return batch_chunk_stop(chunk, 0, "the workbook cannot be written: %s",
                                errno != 0 ? say_system_error(errno) : xlsx.lxw_strerror(error));
    return copy(chunk, to->file);
}

void batch_workbook_free(batch_run *run)
{
    if (run->workbook == NULL)
        return;
    if (run->workbook->book != NULL)
        xlsx.lxw_workbook_free(run->workbook->book);
    if (run->workbook->file != NULL)
        fclose(run->workbook->file);
    if (run->workbook->point != (locale_t)0) {
        uselocale(run->workbook->before);
        freelocale(run->workbook->point);
    }
    free(run->workbook);
}
