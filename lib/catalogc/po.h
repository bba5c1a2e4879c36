/* SPDX-License-Identifier: Apache-2.0 */
/* Inside catalogc: a file of translations of GNU gettext (.po), and what is said of it. */
#ifndef RODT_CATALOGC_PO_H
#define RODT_CATALOGC_PO_H

#include <stdio.h>

#include "core/common.h"
#include "rodtravel/message.h"

#define PO_FORMS 3 /* of a plural, at most */
#define LANGUAGES 16

/* One sentence. Texts are NULL where the file has none. */
typedef struct po_entry {
    char *context;         /* msgctxt */
    char *id;              /* msgid: the English */
    char *id_plural;       /* msgid_plural */
    char *texts[PO_FORMS]; /* msgstr, or msgstr[0] and so on */
    unsigned line;         /* from 1 */
    bool fuzzy;            /* the English has changed since: not to be used */
} po_entry;

typedef struct po_file {
    const char *path;
    char *source, *texts; /* the bytes of the file; the texts of the entries */
    po_entry *entries;    /* the header is not among them */
    size_t count;
    char language[24];                    /* "fr-CA" */
    char decimal_sign[4];                 /* "." or "," */
    RODT_ENUM32(rodt_plural_rule) plural; /* which form of a word stands beside a number */
    size_t faults;
} po_file;

/* False: a fault was printed. The file must be freed in both cases. */
bool po_read(po_file *po, const char *path);
void po_free(po_file *po);

/* Prints PATH:LINE: what is wrong, and counts it; without a line if that is 0. */
void po_fault(po_file *po, unsigned line, const char *what, const char *name);

/* True if the sentence can be used: translated in every form, and not fuzzy. */
bool po_is_translated(const po_entry *entry, size_t forms);

/* The files as C: the sentences of the library by their codes, or those of a program by their English. */
void po_write_library(FILE *out, po_file *files, size_t count);
void po_write_program(FILE *out, po_file *files, size_t count);
/* The sentences of the library as the file that a translation begins with. */
void po_write_start(FILE *out);

/* Reports what a catalogue of the library has wrong or lacks. */
void po_check_library(po_file *po);

#endif
