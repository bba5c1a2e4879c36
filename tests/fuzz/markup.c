/* SPDX-License-Identifier: Apache-2.0 */
/* Whether a page or a drawing is well-formed, as far as what the command writes goes: every attribute is in double
 * quotes, and elements are closed in order. */
#include "command.h"

#include <string.h>

/* An element that is open. */
typedef struct element {
    const char *name;
    size_t size;
} element;

#define ELEMENTS_MAX 64

typedef struct markup {
    const char *at, *end;
    element open[ELEMENTS_MAX];
    size_t depth;
    bool is_svg; /* of a file of its own: XML, where every element is closed */
} markup;

static bool is_name(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' || c == ':'; }

static bool skip_entity(markup *of)
{
    static const char *const entities[] = {"&amp;", "&lt;", "&gt;", "&quot;", "&#39;", "&nbsp;"};
    for (size_t i = 0; i < sizeof entities / sizeof entities[0]; i++) {
        size_t size = strlen(entities[i]);
        if ((size_t)(of->end - of->at) >= size && memcmp(of->at, entities[i], size) == 0) {
            of->at += size;
            return true;
        }
    }
    return false;
}

/* Text, or the value of an attribute, up to one of two bytes. */
static bool skip_text(markup *of, char stop)
{
    while (of->at < of->end && *of->at != stop && *of->at != '<') {
        if (*of->at == '&' ? !skip_entity(of) : *of->at++ == '\0')
            return false;
    }
    return true;
}

static bool skip_attributes(markup *of)
{
    for (;;) {
        while (of->at < of->end && (*of->at == ' ' || *of->at == '\n'))
            of->at++;
        const char *name = of->at;
        while (of->at < of->end && is_name(*of->at))
            of->at++;
        if (of->at == name)
            return of->at < of->end;
        if (of->at == of->end || *of->at != '=')
            continue; /* of HTML, without a value */
        if (of->end - of->at < 2 || of->at[1] != '"')
            return false;
        of->at += 2;
        if (!skip_text(of, '"') || of->at == of->end || *of->at != '"')
            return false;
        of->at++;
    }
}

static bool is_void(const element *of)
{
    static const char *const names[] = {"meta", "link", "br", "img", "col", "hr", "input", "wbr"};
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
        if (strlen(names[i]) == of->size && memcmp(names[i], of->name, of->size) == 0)
            return true;
    }
    return false;
}

static bool skip_after(markup *of, const char *end)
{
    size_t size = strlen(end);
    for (; (size_t)(of->end - of->at) >= size; of->at++) {
        if (memcmp(of->at, end, size) == 0) {
            of->at += size;
            return true;
        }
    }
    return false;
}

static bool close_element(markup *of, const element *found)
{
    const element *last = of->depth > 0 ? &of->open[--of->depth] : NULL;
    return last != NULL && last->size == found->size && memcmp(last->name, found->name, found->size) == 0 &&
           of->at < of->end && *of->at++ == '>';
}

static bool open_element(markup *of, const element *found)
{
    if (!skip_attributes(of))
        return false;
    bool empty = *of->at == '/';
    of->at += empty;
    if (of->at == of->end || *of->at++ != '>')
        return false;
    if (empty || (!of->is_svg && is_void(found)))
        return true;
    if (of->depth == ELEMENTS_MAX)
        return false;
    of->open[of->depth++] = *found;
    if (found->size == 5 && memcmp(found->name, "style", 5) == 0) {
        of->depth--;
        return skip_after(of, "</style>");
    }
    return true;
}

static bool skip_tag(markup *of)
{
    of->at++;
    if (of->at < of->end && (*of->at == '!' || *of->at == '?'))
        return skip_after(of, ">");
    bool closes = of->at < of->end && *of->at == '/';
    of->at += closes;
    element found = {.name = of->at};
    while (of->at < of->end && is_name(*of->at))
        of->at++;
    found.size = (size_t)(of->at - found.name);
    return found.size > 0 && (closes ? close_element(of, &found) : open_element(of, &found));
}

/* In a page a tabulator is a blank. */
static bool has_no_controls(const char *text, size_t size)
{
    for (size_t i = 0; i < size; i++) {
        if ((unsigned char)text[i] < 0x20 && text[i] != '\n')
            return false;
    }
    return true;
}

bool is_markup(const char *text, size_t size)
{
    markup of = {.at = text, .end = text + size, .is_svg = size > 5 && memcmp(text, "<?xml", 5) == 0};
    while (of.at < of.end) {
        if (!(*of.at == '<' ? skip_tag(&of) : skip_text(&of, '<')))
            return false;
    }
    return of.depth == 0 && size > 0 && has_no_controls(text, size);
}
