/* SPDX-License-Identifier: Apache-2.0 */
/* The options of `rodtravel batch`, and its help. */
#include "batch/options.h"
#include "ui/compiler.h"
#include "ui/language.h"
#include "ui/options.h"

const option_spec batch_option_specs[BATCH_OPTIONS] = {
    [BATCH_OPTION_RULES] = {"rules", "ID", "rule set; " RODT_DEFAULT_RULES " if none is given", false},
    [BATCH_OPTION_LIMITS] = {"limits", "FILE", "a carrier's own, stricter limits on top of the law", false},
    [BATCH_OPTION_AS_OF] = {"as-of", "DATE", "day for rows without a date; today if none is given", false},
    [BATCH_OPTION_COLUMN] = {"column", "FIELD=HEADING",
                             "the column with this heading holds FIELD; FIELD= alone: do not read such a column. "
                             "May be given once for each field",
                             true},
    [BATCH_OPTION_SEPARATOR] = {"separator", "C", "one character, or the word tab; a comma if none is given", false},
    [BATCH_OPTION_DECIMAL_COMMA] = {"decimal-comma", NULL, "2,125 is 2 1/8", false},
    [BATCH_OPTION_ENCODING] = {"encoding", "NAME",
                               "encoding of the input, such as windows-1252; the output is UTF-8", false},
    [BATCH_OPTION_UNIT] = {"unit", "UNIT", "in, mm or cm, for numbers without a unit; in if none is given",
                           false},
    [BATCH_OPTION_DATE_ORDER] = {"date-order", "ORDER",
                                 "dmy, mdy or ymd (day, month or year first), for dates such as 06/05/2024 or 21/10/14",
                                 false},
    [BATCH_OPTION_BY] = {"by", "HEADING",
                         "write one line an inspection in place of the rows: of one vehicle on one day. The column "
                         "with this heading names the vehicle; give it once for each column that does. Brakes are "
                         "counted by the roadside criterion",
                         true},
    [BATCH_OPTION_POOL] = {"pool", NULL, "with --by: rows of all days of a vehicle are one inspection", false},
    [BATCH_OPTION_JOBS] = {"jobs", "N",
                           "number of threads; as many as there are processors if none is given. The output is the "
                           "same for any number",
                           false},
    [BATCH_OPTION_NO_CACHE] = {"no-cache", NULL, "do not reuse cached results (slower, same output)", false},
    [BATCH_OPTION_FORMAT] = {"format", "FORMAT",
                             "csv, ndjson: one JSON object a line, or xlsx: CSV in, a workbook out; csv if none is "
                             "given",
                             false},
    [BATCH_OPTION_DECIMALS] = {"decimals", "N",
                               "add the stroke, limit, margin and used share of the limit as decimal numbers with N "
                               "digits (0 to 6), in the unit of --unit; rounded to the strict side",
                               false},
    [BATCH_OPTION_SUMMARY] = {"summary", NULL,
                              "counts by verdict, reason and chamber, and how much of their limits the strokes use, "
                              "on standard error",
                              false},
    [BATCH_OPTION_JSON] = {"json", NULL,
                           "with --summary: one JSON object of the counts on standard output, in place of the rows",
                           false},
    [BATCH_OPTION_AFRESH] = {"afresh", NULL, NULL, false}};

const char batch_help[] = TO_SAY_LINES(
    "Judges every row of a CSV file of pushrod measurements. The input columns are kept, and five columns are "
    "added: applied_stroke, limit, margin, verdict, reasons. A row that cannot be read keeps its place; it is "
    "undetermined, with the reason. Without FILE, or with -, the input is standard input.\n"
    "\n"
    "Columns, in any order and by these headings (capitals, blanks, underscores, hyphens and "
    "points make no difference); every other column passes through:\n"
    "  chamber, released, applied                needed\n"
    "  stroke_class, rated_stroke, marked_limit  marks on the housing\n"
    "  psi, psi_after                            reservoirs, before and after\n"
    "  division                                  of the tape, such as 1/16\n"
    "  date                                      each row by the law of its day\n"
    "  unit                                      of bare numbers: in, mm or cm; a vehicle in the first row "
    "(T-104) makes it a column like any other\n"
    "  engine                                    off, on\n"
    "  spring_brake                              released, on\n"
    "  drum                                      cold, warm, hot\n"
    "\n"
    "A compressed file (gzip, Zstandard) is read as it is. A line \"sep=;\" at its start names the separator; titles "
    "before the headings are passed over and named.\n"
    "\n"
    "A column that looks meant but is not read is named, and so is a first cell that does not fit its column. A "
    "date that contradicts --date-order is not read.\n"
    "\n"
    "Repeated header lines and empty records are passed through and counted. A row with too few cells gets "
    "empty ones (reason short-record). A row with too many (long-record), or with a quote that is "
    "not closed or not at the end of its cell (bad-quotes), is not judged: its cells may have slipped. A "
    "record may have 16 MiB and 65536 cells. Write the output to another file than the input.\n"
    "\n"
    "A spreadsheet makes a date of 1/8: import the result columns as text, use the numbers of --decimals, or write a "
    "workbook with --format xlsx > judged.xlsx. There cells of the input are text, and strokes, limits and margins "
    "are numbers shown as fractions.\n"
    "\n"
    "With --format ndjson each line is one JSON object, with the columns as its members; the five results become "
    "its last members. A line that is no object (bad-object) becomes one that holds it as \"line\". An object with "
    "two members of one name (member-twice) is not judged.\n"
    "\n"
    "With --by the lines have the columns brakes, in_adjustment, out_of_adjustment, inoperative, "
    "undetermined, defective, percent, verdict, whole_needed, remarks after the name, and after the day if the file "
    "has a column of dates. The rows may be in any order; what does not fit in memory waits in temporary files "
    "(TMPDIR). Names that differ only in capitals and blanks are one vehicle, and a note says so. Rows whose date "
    "cannot be read get a line without a day; as any of them may be of any inspection of their vehicle, they count "
    "there as brakes in unknown state (remark undated-rows).\n"
    "\n"
    "Example:\n"
    "  rodtravel batch yard.csv --separator ';' --decimal-comma \\\n"
    "      --encoding windows-1252 --column chamber=Cylinder \\\n"
    "      --column released=\"Rod at rest\" --summary > judged.csv\n"
    "\n"
    "Exit status:\n"
    "  0  every wheel end is in adjustment, or there is none\n"
    "  1  some wheel end is out of adjustment or inoperative\n"
    "  2  wrong usage, not a CSV file, or reading or writing failed; the rows written before are complete. "
    "Without a message if the reader of a pipe has gone\n"
    "  3  nothing is out, but something is undetermined\n");
