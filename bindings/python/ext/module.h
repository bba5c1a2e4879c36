/* SPDX-License-Identifier: Apache-2.0 */
/* What the package calls beside the functions of the library; SWIG reads this file too, and drops "py_". */
#ifndef RODTRAVEL_PYTHON_MODULE_H
#define RODTRAVEL_PYTHON_MODULE_H

/* The id of the law that a carrier's own limits are based on, or None. */
PyObject *py_law_id(const rodt_rules *rules);
PyObject *py_air_law_id(const rodt_rules *rules);

/* A chamber that was put together by hand, checked. */
PyObject *py_chamber_check(const rodt_chamber *chamber);

/* The members that py_from_record gives of a record of that name: (name, kind, enumeration or
 * record, array or bits). */
PyObject *py_record_layout(const char *name);

/* A length in inches as it would be read; numerator and denominator of a number. */
PyObject *py_length(PyObject *inches, const char *field);
PyObject *py_rational(PyObject *number, const char *field);

/* A capsule with the finding of a row, and the first text that could not be read, not raised; or None. */
PyObject *py_judge_row(const rodt_form *text, const rodt_rules *rules);

/* Findings of the package: its class and all verdicts, told once; one of a capsule and its Rules; and its verdict. */
PyObject *py_finding_class(PyObject *type, PyObject *verdicts);
PyObject *py_finding(PyObject *kept, PyObject *rules);
PyObject *py_verdict_of(PyObject *finding);

PyObject *py_finding_json(const rodt_finding *finding);

/* A finding as a tuple of its record, and back: rows are numbers, so the rule set and the tables must be the same. */
PyObject *py_finding_values(const rodt_finding *finding);
PyObject *py_finding_value(const rodt_finding *finding, int item); /* one item of the tuple */
PyObject *py_finding_from_values(PyObject *values, int row, int own_row, const rodt_rules *rules);

/* The report of rodt_clues_identify as JSON. */
PyObject *py_identification_json(const rodt_clues *clues, const rodt_rules *rules, rodt_date day);

/* `ends` is a tuple of pairs: a rodt_wheel_end without a reading, and the capsule of its finding. Behind the members of
 * the record are advice and the report as JSON. */
PyObject *py_vehicle_combine(PyObject *ends, unsigned brakes);

/* Capsules of columns. table_names and column_of_table are for a table that can be read only once; column_first is the
 * first cell of a column of texts, None if it is missing or there is no row, False of a column of numbers. */
PyObject *py_column_from_buffer(PyObject *object, const char *field);
PyObject *py_column_from_texts(PyObject *texts, const char *field);
PyObject *py_column_from_array(PyObject *schema, PyObject *array, const char *name, const char *field);
PyObject *py_column_from_stream(PyObject *capsule, const char *name, const char *field);
PyObject *py_table_from_stream(PyObject *capsule);
PyObject *py_table_next(PyObject *capsule); /* the next batch of a stream as a table; None = there is none */
PyObject *py_table_names(PyObject *capsule);
PyObject *py_column_of_table(PyObject *capsule, int number, const char *field);
PyObject *py_column_rows(PyObject *capsule);
PyObject *py_column_first(PyObject *capsule);

/* The capsule itself; TypeError if the column holds binary floats, which nothing is judged by. */
PyObject *py_column_exact(PyObject *capsule, const char *field);

/* Whether a column is text; the numbers of one that is not, a tuple of int, float and None; whether they are days. */
PyObject *py_column_is_text(PyObject *capsule);
PyObject *py_column_numbers(PyObject *capsule);
PyObject *py_column_is_days(PyObject *capsule);

/* The text of a cell that is text, an exact number or a day, as judge would read it. */
PyObject *py_cell_text(PyObject *cell, int field, int decimal_comma);

PyObject *py_plan_start(const rodt_rules *rules, PyObject *shared);
PyObject *py_plan_add(PyObject *capsule, const rodt_chamber *chamber);
PyObject *py_columns_judge_numbers(PyObject *capsule, PyObject *columns, PyObject *answers);

/* A plan for texts is used by one call at a time. `defaults` is a tuple as py_to_reading_text reads it. */
PyObject *py_text_plan_new(PyObject *defaults, const rodt_rules *rules);

/* Returns the strokes in parts, int64 as bytes, or None where all are whole units. */
PyObject *py_columns_judge_texts(PyObject *capsule, PyObject *columns, PyObject *answers);

/* A bytearray of that size or more for the answers of a plan, whose bytes are anything. */
PyObject *py_plan_room(PyObject *capsule, long long size);

/* What a frame has, as memoryviews of bytes: verdicts as uint8, the number of each row's set of reasons as int32, then
 * doubles and the bits of those that are there of each name of answer_numbers; how many of each name are missing; the
 * sets as answer_sets gives them. */
PyObject *py_columns_frame(PyObject *capsule, PyObject *columns, int per_unit);

/* The sentences of the reasons of each row, "; " between them, as (offsets of 64 bits, UTF-8) of an Arrow column. */
PyObject *py_columns_say(PyObject *capsule, PyObject *columns, PyObject *catalogue);

/* The CSV of `rodtravel batch --by`: the line of headings, the others, and where each of them ends, as int64 after a 0;
 * all as bytes. `columns` are those of a reading, of positions, and those that name the vehicle; `headings` are those
 * of the names, and then that of the day if inspections are told apart by it. */
PyObject *py_columns_inspect(PyObject *capsule, PyObject *columns, PyObject *headings);

/* A number for each row, int32 as bytes, the same for all spellings of a vehicle; `columns` is as long as above and has
 * no others than those that name it. */
PyObject *py_columns_share(PyObject *columns);

/* Of answers, as int32 that are negative where missing, and what columns_judge_texts returned: limit less stroke, where
 * it is whole units; the strokes in parts, as int64; how many use so many half percents of the limit, 0 to 1000, as
 * uint64, with the least margin in parts or None; and doubles, NAN where missing: "stroke", "limit", "margin" or
 * "used", a part of the limit in percent, a unit of the doubles being so many of the columns. */
PyObject *py_answer_margins(PyObject *strokes, PyObject *limits, int none);
PyObject *py_answer_parts(PyObject *strokes);
PyObject *py_answer_steps(PyObject *strokes, PyObject *parts, PyObject *limits);
PyObject *py_answer_numbers(PyObject *strokes, PyObject *parts, PyObject *limits, const char *name, int per_unit);

/* Of a column of reasons: the number of the set of each row, as int32, and a pair for each different set, in the order
 * of their first rows: its bits, and how many rows have it. */
PyObject *py_answer_sets(PyObject *reasons);

/* Lists of a frame: of doubles, None for NAN; and the text of each number, uint8 or int32, out of a list of texts. */
PyObject *py_list_of_numbers(PyObject *cells);
PyObject *py_list_of_codes(PyObject *codes, PyObject *texts);

/* A capsule of a catalogue: texts is (language, decimal sign, pairs of a code's word and its template), and kept. Then
 * what is said in its language; parts are code and arguments of an Error. */
PyObject *py_catalogue_new(PyObject *texts, const char *plural);
PyObject *py_catalogue_find(const char *language); /* one that is compiled in: (capsule, its language), or None */
PyObject *py_english_sentences(void);
PyObject *py_say_message(PyObject *catalogue, PyObject *parts); /* of py_from_message; "" of None */
PyObject *py_say_spoken(PyObject *catalogue, const rodt_finding *finding);
PyObject *py_say_finding(PyObject *catalogue, const rodt_finding *finding);
PyObject *py_say_proof(PyObject *catalogue, const rodt_finding *finding);
PyObject *py_say_reason(PyObject *catalogue, const rodt_finding *finding, int reason);
PyObject *py_say_count(PyObject *catalogue, const rodt_count *count);
PyObject *py_say_error(PyObject *catalogue, PyObject *parts, const char *text);

/* Capsules for Arrow of what a tuple describes (arrow_out.c). given_bits: of int32 or int64 cells, bits that are 0
 * where a cell is `none`, and how many are. */
PyObject *py_arrow_schema(PyObject *part);
PyObject *py_arrow_array(PyObject *part);
PyObject *py_arrow_stream(PyObject *part);
PyObject *py_given_bits(PyObject *cells, int none);

#endif
