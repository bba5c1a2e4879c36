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

static bool write_file(const tables *t, const char *path)
{
    FILE *out = fopen(path, "wb");
    if (out == NULL)
        return false;
    tables_write(t, out);
    bool written = !ferror(out);
    return fclose(out) == 0 && written;
}

static int run(tables *t, const char *target, char **paths)
{
    if (!read_and_check(t, paths))
        return EXIT_FAILURE;
    if (strcmp(target, "--check") == 0 || write_file(t, target))
        return EXIT_SUCCESS;
    fprintf(stderr, "tablec: %s cannot be written\n", target);
    return EXIT_FAILURE;
}

int main(int argc, char **argv)
{
    if (argc != 2 + FILE_COUNT) {
        fputs("usage: tablec OUT|--check sources.csv chambers.csv limits.csv rulesets.csv vehicle.csv aircheck.csv "
              "volumes.csv\n", stderr);
        return 2;
    }
    tables *t = calloc(1, sizeof *t);
    if (t == NULL) {
        fputs("tablec: no memory\n", stderr);
        return EXIT_FAILURE;
    }
    int status = run(t, argv[1], argv + 2);
    free(t);
    return status;
}
