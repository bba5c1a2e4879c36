/* SPDX-License-Identifier: Apache-2.0 */
/* tablec, the table compiler: tables in, one C file of constant arrays out. Runs while the library is built and is no
 * part of it. */
#include <stdlib.h>
#include <string.h>

#include "tablec/steps.h"

#define FILE_SIZE_MAX 1048576

static void read_file(tables *t, int file)
{
    FILE *in = fopen(t->paths[file], "rb");
    char *text = malloc(FILE_SIZE_MAX);
    if (in == NULL || text == NULL) {
        tables_fault(t, file, 0, "the file cannot be read");
    } else {
        size_t size = fread(text, 1, FILE_SIZE_MAX, in);
        if (ferror(in) || size == FILE_SIZE_MAX)
            tables_fault(t, file, 0, "the file cannot be read to its end");
        else
            tables_read(t, file, text, size);
    }
    free(text);
    if (in != NULL)
        fclose(in);
}

/* References mean something only when every row could be read. */
static bool read_and_check(tables *t, char **paths)
{
    for (int file = 0; file < FILE_COUNT; file++) {
        t->paths[file] = paths[file];
        read_file(t, file);
    }
    if (t->faults == 0)
        tables_check(t);
    return t->faults == 0;
}

typedef void table_writer(const tables *t, FILE *out);

static bool write_file(const tables *t, const char *path, table_writer *write)
{
    FILE *out = fopen(path, "wb");
    if (out == NULL)
        return false;
    write(t, out);
    bool written = !ferror(out);
    return fclose(out) == 0 && written;
}

/* `targets` are the three files that are written; NULL = only checked. */
static int run(tables *t, char **targets, char **paths)
{
    static table_writer *const writers[] = {tables_write, tables_write_sentences, tables_write_texts};
    if (!read_and_check(t, paths))
        return EXIT_FAILURE;
    for (size_t i = 0; targets != NULL && i < COUNT_OF(writers); i++) {
        if (write_file(t, targets[i], writers[i]))
            continue;
        fprintf(stderr, "tablec: %s cannot be written\n", targets[i]);
        return EXIT_FAILURE;
    }
    return EXIT_SUCCESS;
}

int main(int argc, char **argv)
{
    bool only_check = argc > 1 && strcmp(argv[1], "--check") == 0;
    int first = only_check ? 2 : 4;
    if (argc != first + FILE_COUNT) {
        fputs("usage: tablec --check|TABLES.c SENTENCES.h TEXTS.h sources.csv chambers.csv limits.csv rulesets.csv "
              "vehicle.csv aircheck.csv volumes.csv steps.csv\n", stderr);
        return 2;
    }
    tables *t = calloc(1, sizeof *t);
    if (t == NULL) {
        fputs("tablec: no memory\n", stderr);
        return EXIT_FAILURE;
    }
    int status = run(t, only_check ? NULL : argv + 1, argv + first);
    free(t);
    return status;
}
