/* SPDX-License-Identifier: Apache-2.0 */
/* What the library says of a record in sentences: members of its tuple after those that it has. */
#include "ext.h"

#define SENTENCE(name, type, format)                                                                                   \
    static PyObject *name(const void *value)                                                                           \
    {                                                                                                                  \
        char text[RODT_SENTENCE_SIZE];                                                                                 \
        return PyUnicode_FromString(format((const type *)value, text, sizeof text, NULL) == RODT_OK ? text : "");      \
    }

SENTENCE(count_sentence, rodt_count, rodt_count_format)
SENTENCE(air_limit_edge, rodt_air_limit, rodt_air_limit_edge_format)
SENTENCE(air_finding_sentence, rodt_air_finding, rodt_air_finding_format)
SENTENCE(air_finding_edge, rodt_air_finding, rodt_air_finding_edge_format)
SENTENCE(air_finding_spoken, rodt_air_finding, rodt_air_finding_spoken_format)
SENTENCE(air_finding_note, rodt_air_finding, rodt_air_finding_note_format)

#define AS_DATA(name, type, make)                                                                                      \
    static PyObject *name(const void *value)                                                                           \
    {                                                                                                                  \
        rodt_message message;                                                                                          \
        return py_from_message(make((const type *)value, &message), &message);                                         \
    }

AS_DATA(air_finding_message, rodt_air_finding, rodt_air_finding_message)
AS_DATA(air_edge_message, rodt_air_finding, rodt_air_finding_edge_message)
AS_DATA(air_spoken_message, rodt_air_finding, rodt_air_finding_spoken_message)
AS_DATA(air_note_message, rodt_air_finding, rodt_air_finding_note_message)

/* Its report as JSON; the library writes it twice, to count and to fill. */
static PyObject *air_finding_json(const void *value)
{
    const rodt_air_finding *finding = value;
    PY_JSON(made, rodt_air_finding_json_format, finding, NULL, 0);
    return made;
}

/* Bit, sentence, source, evidence and the sentence as data of each mismatch. */
static PyObject *axle_remarks(const void *value)
{
    const rodt_axle_finding *axle = value;
    PyObject *list = PyList_New(0);
    char text[RODT_SENTENCE_SIZE];
    for (uint32_t bit = 1; list != NULL && bit <= RODT_AXLE_MISMATCH_STEERING_DEAD; bit <<= 1) {
        RODT_ENUM32(rodt_evidence) evidence = RODT_EVIDENCE_NONE;
        if ((axle->mismatches & bit) == 0 || rodt_axle_mismatch_format(axle, bit, text, sizeof text, NULL) != RODT_OK)
            continue;
        const rodt_source *source = rodt_axle_mismatch_source(bit, &evidence);
        rodt_message message;
        rodt_status made = rodt_axle_mismatch_message(axle, bit, &message);
        PyObject *remark = Py_BuildValue("IsNiN", bit, text, FROM_RECORD(rodt_source, source), (int)evidence,
                                         py_from_message(made, &message));
        if (remark == NULL || PyList_Append(list, remark) != 0)
            Py_CLEAR(list);
        Py_XDECREF(remark);
    }
    PyObject *tuple = list == NULL ? NULL : PyList_AsTuple(list);
    Py_XDECREF(list);
    return tuple;
}

static const struct {
    const char *record;
    PyObject *(*make)(const void *value);
} sentences[] = {{"rodt_count", count_sentence},
                 {"rodt_air_limit", air_limit_edge},
                 {"rodt_air_finding", air_finding_sentence},
                 {"rodt_air_finding", air_finding_edge},
                 {"rodt_air_finding", air_finding_spoken},
                 {"rodt_air_finding", air_finding_note},
                 {"rodt_air_finding", air_finding_json},
                 {"rodt_air_finding", air_finding_message},
                 {"rodt_air_finding", air_edge_message},
                 {"rodt_air_finding", air_spoken_message},
                 {"rodt_air_finding", air_note_message},
                 {"rodt_axle_finding", axle_remarks}};

#define TOTAL (sizeof sentences / sizeof *sentences)

/* The rows of a record are together. */
static size_t first_of(const rodt_record *record)
{
    size_t row = 0;
    while (row < TOTAL && strcmp(sentences[row].record, rodt_record_name(record)) != 0)
        row++;
    return row;
}

size_t py_sentence_count(const rodt_record *record)
{
    size_t first = first_of(record);
    size_t end = first;
    while (end < TOTAL && strcmp(sentences[end].record, sentences[first].record) == 0)
        end++;
    return end - first;
}

PyObject *py_sentence_at(const rodt_record *record, size_t i, const void *value)
{
    return sentences[first_of(record) + i].make(value);
}
