/* SPDX-License-Identifier: Apache-2.0 */
/* Sentences in the language of a catalogue. */
#include "ext.h"

#define CATALOGUE_CAPSULE "rodtravel.catalogue"

/* The texts live as long as the tuple that they are in. */
typedef struct held_catalogue {
    rodt_catalogue catalogue;
    const char *templates[RODT_MESSAGE_END];
    PyObject *texts;
} held_catalogue;

static void free_catalogue(PyObject *capsule)
{
    held_catalogue *held = PyCapsule_GetPointer(capsule, CATALOGUE_CAPSULE);
    Py_DECREF(held->texts);
    free(held);
}

/* A template under the word of its code. */
static bool take_template(held_catalogue *held, PyObject *pair)
{
    const char *word, *text;
    RODT_ENUM32(rodt_message_code) code;
    if (!PyArg_ParseTuple(pair, "ss", &word, &text))
        return false;
    if (rodt_message_code_find(word, &code) != RODT_OK || code == RODT_MESSAGE_NONE)
        return py_raise(RODT_E_ARGUMENT, word, "there is no sentence of this code");
    held->templates[code] = text;
    return true;
}

static bool fill_catalogue(held_catalogue *held, const char *plural)
{
    const char *language, *sign;
    PyObject *pairs;
    size_t missing;
    if (!PyArg_ParseTuple(held->texts, "ssO!", &language, &sign, &PyTuple_Type, &pairs))
        return false;
    held->catalogue = (rodt_catalogue){.language = language, .templates = held->templates,
                                       .count = RODT_MESSAGE_END, .decimal_sign = sign};
    if (rodt_plural_rule_find(plural, &held->catalogue.plural) != RODT_OK)
        return py_raise(RODT_E_ARGUMENT, "plural", "there is no such rule of plurals");
    for (Py_ssize_t i = 0; i < PyTuple_Size(pairs); i++) {
        if (!take_template(held, PyTuple_GetItem(pairs, i)))
            return false;
    }
    rodt_error *error = py_call_error();
    rodt_status status = rodt_catalogue_check(&held->catalogue, &missing, error);
    if (status != RODT_OK)
        py_raise_status(status);
    return status == RODT_OK;
}

PyObject *py_catalogue_new(PyObject *texts, const char *plural)
{
    held_catalogue *held = calloc(1, sizeof *held);
    if (held == NULL)
        return PyErr_NoMemory();
    held->texts = texts;
    PyObject *capsule = fill_catalogue(held, plural) ? PyCapsule_New(held, CATALOGUE_CAPSULE, free_catalogue) : NULL;
    if (capsule == NULL)
        free(held);
    else
        Py_INCREF(texts);
    return capsule;
}

bool py_to_catalogue(PyObject *object, const rodt_catalogue **out)
{
    const held_catalogue *held = object == Py_None ? NULL : PyCapsule_GetPointer(object, CATALOGUE_CAPSULE);
    *out = held == NULL ? NULL : &held->catalogue;
    return object == Py_None || held != NULL;
}

/* Its texts are the library's own. */
PyObject *py_catalogue_find(const char *language)
{
    const rodt_catalogue *found = rodt_catalogue_find(language);
    if (found == NULL)
        return py_none();
    held_catalogue *held = calloc(1, sizeof *held);
    if (held == NULL)
        return PyErr_NoMemory();
    held->catalogue = *found;
    held->texts = PyUnicode_FromString(found->language);
    PyObject *capsule = held->texts != NULL ? PyCapsule_New(held, CATALOGUE_CAPSULE, free_catalogue) : NULL;
    if (capsule == NULL) {
        Py_XDECREF(held->texts);
        free(held);
        return NULL;
    }
    return Py_BuildValue("Ns", capsule, found->language);
}

/* (word, English template) of each code. */
PyObject *py_english_sentences(void)
{
    PyObject *list = PyList_New(0);
    for (int code = 1; list != NULL && code < RODT_MESSAGE_END; code++) {
        const char *word = rodt_message_code_name((rodt_message_code)code);
        if (word[0] == '\0')
            continue;
        PyObject *pair = Py_BuildValue("ss", word, rodt_message_template((rodt_message_code)code));
        if (pair == NULL || PyList_Append(list, pair) != 0)
            Py_CLEAR(list);
        Py_XDECREF(pair);
    }
    return list;
}

/* --- Saying ------------------------------------------------------------------------------------------- */

static PyObject *say(PyObject *capsule, rodt_status made, const rodt_message *message)
{
    held_catalogue *held = PyCapsule_GetPointer(capsule, CATALOGUE_CAPSULE);
    size_t needed = 0;
    if (held == NULL)
        return NULL;
    if (made == RODT_OK)
        made = rodt_message_format(message, &held->catalogue, NULL, 0, &needed);
    char *text = made == RODT_E_SPACE ? malloc(needed) : NULL;
    if (made == RODT_E_SPACE)
        made = text != NULL ? rodt_message_format(message, &held->catalogue, text, needed, NULL) : RODT_E_MEMORY;
    PyObject *said = made == RODT_OK ? PyUnicode_FromString(text) : NULL;
    if (made != RODT_OK)
        py_raise_status(made);
    free(text);
    return said;
}

PyObject *py_say_finding(PyObject *catalogue, const rodt_finding *finding)
{
    rodt_message message;
    return say(catalogue, rodt_finding_message(finding, &message), &message);
}

PyObject *py_say_spoken(PyObject *catalogue, const rodt_finding *finding)
{
    rodt_message message;
    return say(catalogue, rodt_finding_spoken_message(finding, &message), &message);
}

PyObject *py_say_proof(PyObject *catalogue, const rodt_finding *finding)
{
    rodt_message message;
    return say(catalogue, rodt_finding_proof_message(finding, &message), &message);
}

PyObject *py_say_reason(PyObject *catalogue, const rodt_finding *finding, int reason)
{
    rodt_message message;
    return say(catalogue, rodt_finding_reason_message(finding, (rodt_reason)reason, &message), &message);
}

PyObject *py_say_count(PyObject *catalogue, const rodt_count *count)
{
    rodt_message message;
    return say(catalogue, rodt_count_message(count, &message), &message);
}

/* --- Messages that were kept --------------------------------------------------------------------------- */

static PyObject *from_argument(const void *all, size_t i)
{
    const rodt_argument *of = &((const rodt_argument *)all)[i];
    return Py_BuildValue("sIILLiiiiz", of->name, (unsigned)of->kind, (unsigned)of->code, (long long)of->number.num,
                         (long long)of->number.den, (int)of->date.year, (int)of->date.month, (int)of->date.day,
                         (int)of->digits, of->text);
}

PyObject *py_from_message(rodt_status made, const rodt_message *message)
{
    if (made != RODT_OK)
        return py_none();
    PyObject *arguments = py_from_each(message->count, from_argument, message->arguments);
    return arguments == NULL ? NULL : Py_BuildValue("IN", (unsigned)message->code, arguments);
}

static bool to_argument(PyObject *tuple, rodt_argument *out)
{
    unsigned kind, code;
    long long num, den;
    int year, month, day, digits;
    if (!PyArg_ParseTuple(tuple, "sIILLiiiiz", &out->name, &kind, &code, &num, &den, &year, &month, &day, &digits,
                          &out->text))
        return false;
    out->kind = (rodt_argument_kind)kind;
    out->code = (rodt_message_code)code;
    out->number = (rodt_ratio){num, den};
    out->date = (rodt_date){(int16_t)year, (int8_t)month, (int8_t)day};
    out->digits = (int16_t)digits;
    return true;
}

PyObject *py_say_message(PyObject *catalogue, PyObject *parts)
{
    rodt_message message = {.count = 0};
    PyObject *arguments;
    unsigned code;
    if (parts == Py_None)
        return PyUnicode_FromString("");
    if (!PyArg_ParseTuple(parts, "IO!", &code, &PyTuple_Type, &arguments))
        return NULL;
    message.code = (rodt_message_code)code;
    for (Py_ssize_t i = 0; i < PyTuple_Size(arguments) && i < RODT_MESSAGE_ARGUMENTS; i++) {
        if (!to_argument(PyTuple_GetItem(arguments, i), &message.arguments[message.count++]))
            return NULL;
    }
    return say(catalogue, RODT_OK, &message);
}

/* --- Errors ------------------------------------------------------------------------------------------- */

static bool take_argument(PyObject *tuple, rodt_error_argument *out)
{
    const char *word;
    unsigned code;
    if (!PyArg_ParseTuple(tuple, "sIs", &out->name, &code, &word))
        return false;
    out->code = (rodt_message_code)code;
    snprintf(out->word, sizeof out->word, "%s", word);
    return true;
}

PyObject *py_say_error(PyObject *catalogue, PyObject *parts, const char *text)
{
    rodt_error error = {.count = 0};
    rodt_message message;
    PyObject *arguments;
    unsigned code;
    if (!PyArg_ParseTuple(parts, "IO!", &code, &PyTuple_Type, &arguments))
        return NULL;
    error.code = (rodt_message_code)code;
    snprintf(error.text, sizeof error.text, "%s", text);
    for (Py_ssize_t i = 0; i < PyTuple_Size(arguments) && i < RODT_ERROR_ARGUMENTS; i++) {
        if (!take_argument(PyTuple_GetItem(arguments, i), &error.arguments[error.count++]))
            return NULL;
    }
    return say(catalogue, rodt_error_message(&error, &message), &message);
}
