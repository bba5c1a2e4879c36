/* SPDX-License-Identifier: Apache-2.0 */
/* Python objects to values of the library and back: exact numbers are fractions, days are dates. */
#include "ext.h"

static struct {
    PyObject *fraction;
    PyObject *coprime; /* makes a Fraction of numbers in lowest terms */
    PyObject *decimal;
    PyObject *date;
} classes;

static PyObject *find_class(const char *module, const char *name)
{
    PyObject *from = PyImport_ImportModule(module);
    PyObject *found = from == NULL ? NULL : PyObject_GetAttrString(from, name);
    Py_XDECREF(from);
    return found;
}

bool py_find_classes(void)
{
    classes.fraction = find_class("fractions", "Fraction");
    classes.coprime = classes.fraction == NULL ? NULL : PyObject_GetAttrString(classes.fraction, "_from_coprime_ints");
    if (classes.coprime == NULL && classes.fraction != NULL) {
        PyErr_Clear();
        Py_INCREF(classes.fraction);
        classes.coprime = classes.fraction;
    }
    classes.decimal = find_class("decimal", "Decimal");
    classes.date = find_class("datetime", "date");
    return classes.fraction != NULL && classes.decimal != NULL && classes.date != NULL;
}

/* --- Errors ------------------------------------------------------------------------------------------ */

rodt_error *py_call_error(void)
{
    static _Thread_local rodt_error error;
    return &error;
}

/* Code and arguments of the sentence. */
static PyObject *error_parts(const rodt_error *error)
{
    PyObject *arguments = PyTuple_New((Py_ssize_t)error->count);
    for (uint32_t i = 0; arguments != NULL && i < error->count; i++) {
        const rodt_error_argument *argument = &error->arguments[i];
        py_tuple_put(&arguments, i, Py_BuildValue("sIs", argument->name, (unsigned)argument->code, argument->word));
    }
    return arguments == NULL ? NULL : Py_BuildValue("IN", (unsigned)error->code, arguments);
}

PyObject *py_from_error(const rodt_error *error)
{
    PyObject *type = find_class("rodtravel._error", "Error");
    if (type == NULL)
        return NULL;
    PyObject *parts = error_parts(error);
    PyObject *made = parts == NULL ? NULL
                                   : PyObject_CallFunction(type, "isIIsN", (int)error->status, error->text,
                                                           error->column, error->line, error->field, parts);
    Py_DECREF(type);
    return made;
}

static void raise_error(const rodt_error *error)
{
    if (error->status == RODT_E_MEMORY) {
        PyErr_NoMemory();
        return;
    }
    PyObject *made = py_from_error(error);
    if (made != NULL)
        PyErr_SetObject((PyObject *)Py_TYPE(made), made);
    Py_XDECREF(made);
}

void py_raise_status(rodt_status status)
{
    rodt_error error = *py_call_error();
    memset(py_call_error(), 0, sizeof error); /* a later call without an error of its own must not report it again */
    if (error.status != status) {
        memset(&error, 0, sizeof error);
        rodt_message message;
        error.status = status;
        error.code = rodt_status_message(status, &message) == RODT_OK ? message.code : RODT_MESSAGE_NONE;
        snprintf(error.text, sizeof error.text, "%s", rodt_status_text(status));
    }
    raise_error(&error);
}

bool py_raise_as(rodt_error *error, const char *field)
{
    snprintf(error->field, sizeof error->field, "%s", field);
    raise_error(error);
    return false;
}

bool py_raise(rodt_status status, const char *field, const char *sentence)
{
    rodt_error error = {.status = status};
    snprintf(error.text, sizeof error.text, "%s", sentence);
    return py_raise_as(&error, field);
}

bool py_raise_type(PyObject *object, const char *field, const char *expected)
{
    PyObject *name = PyObject_GetAttrString((PyObject *)Py_TYPE(object), "__name__");
    if (name != NULL)
        PyErr_Format(PyExc_TypeError, "%s is %s, not %U", field, expected, name);
    Py_XDECREF(name);
    return false;
}

static bool raise_inexact(PyObject *object, const char *field)
{
    PyObject *name = PyObject_GetAttrString((PyObject *)Py_TYPE(object), "__name__");
    if (name == NULL)
        return false;
    if (PyFloat_Check(object) || strncmp(PyUnicode_AsUTF8AndSize(name, NULL), "float", 5) == 0)
        PyErr_Format(PyExc_TypeError,
                     "%s is a binary float (%R), which is seldom the number that was read; give text, an int, a "
                     "fractions.Fraction or a decimal.Decimal",
                     field, object);
    else
        PyErr_Format(PyExc_TypeError,
                     "%s cannot be of type %U; give text, an int, a fractions.Fraction or a "
                     "decimal.Decimal",
                     field, name);
    Py_DECREF(name);
    return false;
}

/* --- Texts ------------------------------------------------------------------------------------------- */

const char *py_to_text(PyObject *object, const char *field)
{
    Py_ssize_t size;
    const char *text = PyUnicode_AsUTF8AndSize(object, &size);
    if (text == NULL) {
        PyErr_Clear(); /* half of a surrogate pair */
        py_raise(RODT_E_SYNTAX, field, "half of a character (a lone surrogate) is in the text");
        return NULL;
    }
    if (strlen(text) != (size_t)size) {
        py_raise(RODT_E_SYNTAX, field, "a zero byte is in the text");
        return NULL;
    }
    return text;
}

PyObject *py_from_text(const char *text)
{
    if (text == NULL || text[0] == '\0')
        return py_none();
    return PyUnicode_FromString(text);
}

void py_tuple_put(PyObject **tuple, size_t i, PyObject *item)
{
    if (item == NULL)
        Py_CLEAR(*tuple);
    else
        PyTuple_SetItem(*tuple, (Py_ssize_t)i, item);
}

PyObject *py_from_each(size_t count, PyObject *(*make)(const void *all, size_t i), const void *all)
{
    PyObject *tuple = PyTuple_New((Py_ssize_t)count);
    for (size_t i = 0; tuple != NULL && i < count; i++)
        py_tuple_put(&tuple, i, make(all, i));
    return tuple;
}

/* --- Numbers ----------------------------------------------------------------------------------------- */

bool py_to_int64(PyObject *object, const char *field, int64_t *out)
{
    PyObject *index = PyNumber_Index(object);
    int overflow = 0;
    if (index == NULL)
        return false;
    long long value = PyLong_AsLongLongAndOverflow(index, &overflow);
    Py_DECREF(index);
    if (overflow != 0)
        return py_raise(RODT_E_RANGE, field, "the number has more digits than an exact 64-bit fraction holds");
    *out = value;
    return value != -1 || !PyErr_Occurred();
}

static bool parts_of(PyObject *num, PyObject *den, const char *field, int64_t *out_num, int64_t *out_den)
{
    bool read = num != NULL && den != NULL && py_to_int64(num, field, out_num) && py_to_int64(den, field, out_den);
    Py_XDECREF(num);
    Py_XDECREF(den);
    return read;
}

static bool decimal_of(PyObject *object, const char *field, int64_t *num, int64_t *den)
{
    PyObject *parts = PyObject_CallMethod(object, "as_integer_ratio", NULL);
    PyObject *a;
    PyObject *b;
    if (parts == NULL) {
        PyErr_Clear();
        return py_raise(RODT_E_ARGUMENT, field, "this decimal is not a number");
    }
    bool read = PyArg_ParseTuple(parts, "OO", &a, &b) && py_to_int64(a, field, num) && py_to_int64(b, field, den);
    Py_DECREF(parts);
    return read;
}

bool py_to_number(PyObject *object, const char *field, int64_t *num, int64_t *den)
{
    *den = 1;
    if (PyLong_CheckExact(object))
        return py_to_int64(object, field, num);
    if (PyBool_Check(object) || PyFloat_Check(object))
        return raise_inexact(object, field);
    if (PyObject_IsInstance(object, classes.decimal) == 1)
        return decimal_of(object, field, num, den);
    if (!PyObject_HasAttrString(object, "numerator") || !PyObject_HasAttrString(object, "denominator"))
        return raise_inexact(object, field);
    return parts_of(PyObject_GetAttrString(object, "numerator"), PyObject_GetAttrString(object, "denominator"), field,
                    num, den);
}

static bool check(rodt_status status, const char *field)
{
    return status == RODT_OK || py_raise(status, field, rodt_status_text(status));
}

bool py_to_length(PyObject *object, const char *field, rodt_length *out)
{
    rodt_error error = {.status = RODT_OK};
    int64_t num;
    int64_t den;
    memset(out, 0, sizeof *out);
    if (object == Py_None)
        return true;
    if (PyUnicode_Check(object)) {
        const char *text = py_to_text(object, field);
        return text != NULL && (rodt_length_parse_strict(text, out, &error) == RODT_OK ||
                                py_raise_as(&error, field));
    }
    return py_to_number(object, field, &num, &den) && check(rodt_length_from_inches(num, den, out), field);
}

bool py_to_pressure(PyObject *object, const char *field, rodt_pressure *out)
{
    rodt_error error = {.status = RODT_OK};
    int64_t num;
    int64_t den;
    memset(out, 0, sizeof *out);
    if (object == Py_None)
        return true;
    if (PyUnicode_Check(object)) {
        const char *text = py_to_text(object, field);
        return text != NULL && (rodt_pressure_parse(text, out, &error) == RODT_OK ||
                                py_raise_as(&error, field));
    }
    return py_to_number(object, field, &num, &den) && check(rodt_pressure_from_psi(num, den, out), field);
}

bool py_to_ratio(PyObject *object, const char *field, rodt_ratio *out)
{
    rodt_length length;
    if (PyUnicode_Check(object))
        return py_raise_type(object, field, PLAIN_NUMBER);
    bool read = py_to_length(object, field, &length);
    *out = (rodt_ratio){length.num, length.den};
    return read;
}

/* Newer Pythons make a Fraction of numbers in lowest terms without looking for a divisor. */
PyObject *py_from_parts(int64_t num, int64_t den)
{
    if (den == 0)
        return py_none();
    return PyObject_CallFunction(classes.coprime, "LL", (long long)num, (long long)den);
}

/* --- Days -------------------------------------------------------------------------------------------- */

static bool int_attribute(PyObject *object, const char *name, int *out)
{
    PyObject *found = PyObject_GetAttrString(object, name);
    long value = found == NULL ? -1 : PyLong_AsLong(found);
    Py_XDECREF(found);
    *out = (int)value;
    return value != -1 || !PyErr_Occurred();
}

bool py_to_date(PyObject *object, const char *field, rodt_date *out)
{
    memset(out, 0, sizeof *out);
    if (object == Py_None)
        return true;
    if (PyUnicode_Check(object)) {
        rodt_error error = {.status = RODT_OK};
        const char *text = py_to_text(object, field);
        return text != NULL &&
               (rodt_date_parse(text, out, &error) == RODT_OK ||
                py_raise_as(&error, field));
    }
    int day[3];
    if (PyObject_IsInstance(object, classes.date) != 1) {
        PyErr_Format(PyExc_TypeError, "%s is a datetime.date or text such as '2021-10-14'", field);
        return false;
    }
    if (!int_attribute(object, "year", &day[0]) || !int_attribute(object, "month", &day[1]) ||
        !int_attribute(object, "day", &day[2])) {
        PyErr_Clear(); /* what pandas calls NaT is a date whose year is no number */
        PyErr_Format(PyExc_TypeError, "%s is %R, which is no day; give None where there is none", field, object);
        return false;
    }
    return rodt_date_make(day[0], day[1], day[2], out) == RODT_OK ||
           py_raise(RODT_E_ARGUMENT, field, "the year is not between 1900 and 2199");
}

PyObject *py_from_date(rodt_date date)
{
    if (!rodt_date_given(date))
        return py_none();
    return PyObject_CallFunction(classes.date, "iii", date.year, date.month, date.day);
}

/* --- Called by the package --------------------------------------------------------------------------- */

PyObject *py_length(PyObject *inches, const char *field)
{
    rodt_length read;
    return py_to_length(inches, field, &read) ? FROM_EXACT(read) : NULL;
}

PyObject *py_rational(PyObject *number, const char *field)
{
    int64_t num;
    int64_t den;
    if (number == Py_None || PyUnicode_Check(number))
        return py_raise_type(number, field, PLAIN_NUMBER), NULL;
    return py_to_number(number, field, &num, &den) ? Py_BuildValue("LL", (long long)num, (long long)den) : NULL;
}
