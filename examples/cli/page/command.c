/* SPDX-License-Identifier: Apache-2.0 */
/* rodtravel page: the guided inspection as one file for a phone, which carries this command. */
#include "commands.h"
#include "io/atomic_file.h"
#include "page/page.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/language.h"
#include "ui/message.h"

#include <stdio.h>
#include <string.h>
#include <unistd.h>

enum { PAGE_HTML, PAGE_WORKER };

static const option_spec options[] = {
    [PAGE_HTML] = {"html", "FILE", "write the page to FILE; it is there whole or not at all", false},
    [PAGE_WORKER] = {"service-worker", "FILE", "also write a script to serve beside the page over https, so that it "
                                               "opens without a network the next time", false},
};

static const char *base_of(const char *name)
{
    const char *slash = strrchr(name, '/');
    return slash != NULL ? slash + 1 : name;
}

/* It stands in an address and in a script as it is. */
static bool is_plain(const char *base)
{
    static const char plain[] = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz._-";
    return base[0] != '\0' && base[strspn(base, plain)] == '\0';
}

static int check_worker(const char *worker, const char *page)
{
    if (worker == NULL)
        return STATUS_CONTINUE;
    if (strcmp(page, "-") == 0 || strcmp(worker, "-") == 0)
        return print_error("the service worker is a file beside the page; name both: rodtravel page --html brakes.html "
                           "--service-worker worker.js");
    const char *base = base_of(worker), *beside = base_of(page);
    if (base - worker != beside - page || memcmp(worker, page, (size_t)(base - worker)) != 0)
        return print_error("the service worker and the page belong into one folder");
    if (!is_plain(base) || !is_plain(beside))
        return print_error("a server's name has letters without accents, digits, points, hyphens and underlines");
    return STATUS_CONTINUE;
}

static int write_page(const char *name, const char *worker)
{
    atomic_file file;
    int status = atomic_file_open(name, &file);
    if (status != STATUS_CONTINUE)
        return status;
    fprintf(file.to, "<!DOCTYPE html>\n<!-- SPDX-License-Identifier: Apache-2.0 -->\n<html lang=\"%s\"",
            chosen_language());
    if (worker != NULL)
        fprintf(file.to, " data-worker=\"%s\"", base_of(worker));
    fputc('>', file.to);
    fwrite(page_text, 1, page_size, file.to);
    return atomic_file_close(&file, true);
}

static int write_worker(const char *name, const char *page)
{
    atomic_file file;
    int status = atomic_file_open(name, &file);
    if (status != STATUS_CONTINUE)
        return status;
    fprintf(file.to, "const PAGE = \"%s\", EDITION = \"%s %s\";\n", base_of(page), page_digest, chosen_language());
    fputs(worker_text, file.to);
    return atomic_file_close(&file, true);
}

static int run(int argc, char **argv)
{
    command_line from;
    int status = parse_arguments(&page_command, argc, argv, 0, 0, &from);
    if (status != STATUS_CONTINUE)
        return status;
    if (page_size == 0)
        return print_error("this rodtravel was built without the page; building it needs clang for WebAssembly");
    const char *name = option_value(&from, PAGE_HTML), *worker = option_value(&from, PAGE_WORKER);
    if (name == NULL && worker == NULL && isatty(STDOUT_FILENO) == 1)
        return print_error("the page is a file for a browser; name it: rodtravel page --html brakes.html");
    const char *page = name != NULL ? name : "-";
    status = check_worker(worker, page);
    if (status == STATUS_CONTINUE)
        status = write_page(page, worker);
    if (status == STATUS_CONTINUE && worker != NULL)
        status = write_worker(worker, page);
    return status == STATUS_CONTINUE ? STATUS_GOOD : status;
}

static const file_argument files[] = {{PAGE_HTML, true}, {PAGE_WORKER, true}};

const command_spec page_command = {
    .name = "page",
    .operands = "",
    .summary = "write the guided inspection as one page for a phone",
    .help = "Writes one HTML file that carries this command: the guided inspection with its tape and clocks, records "
            "that it keeps and gives out, reports, practice. It needs no network and asks for no other file; send it "
            "to a phone and open it there.\n"
            "\n"
            "  rodtravel page > brakes.html\n"
            "  rodtravel page --language fr --html freins.html\n"
            "  rodtravel page --html brakes.html --service-worker worker.js\n"
            "\n"
            "A record of the page is a record of rodtravel walkround and report, and the other way round; the page "
            "judges it by the same program. It begins in the language of the command, and can be switched.\n",
    .options = options,
    .option_count = COUNT_OF(options),
    .files = files,
    .file_count = COUNT_OF(files),
    .run = run,
};
