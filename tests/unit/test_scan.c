/* SPDX-License-Identifier: Apache-2.0 */
/* The command's search for separators and line feeds: every way of it, also those that this processor does not need,
 * against a loop that looks at one byte after the other. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "../../examples/cli/scan.c"
#include "support.h"

static scan_index index_of;

static void check(scan_function *scan, const char *bytes, size_t size, char separator)
{
    size_t signs = 1;
    size_t feeds = 0;
    scan(bytes, size, separator, &index_of);
    assert_true(index_of.signs[0] == UINT32_MAX);
    for (size_t i = 0; i < size; i++) {
        if (bytes[i] == '\n')
            assert_int_equal(index_of.feeds[feeds++], i);
        if (bytes[i] == separator || bytes[i] == '\n')
            assert_int_equal(index_of.signs[signs++], i);
    }
    assert_int_equal(index_of.sign_count, signs);
    assert_int_equal(index_of.feed_count, feeds);
}

static void check_all(const char *bytes, size_t size, char separator)
{
    check(scan_plainly, bytes, size, separator);
    check(scan_choose(), bytes, size, separator);
#ifdef SCAN_X86
    check(scan_16, bytes, size, separator);
#endif
}

/* Few signs, many, and nothing else; the bytes next to a sign in the alphabet, and those with the high bit. */
static void test_random_bytes(void **unused)
{
    static const char signs[] = {',', '\n', ',' + 1, '\n' - 1, (char)(',' | 0x80), (char)('\n' | 0x80), 0, 'x', '\t', '\t' + 2};
    static char bytes[SCAN_MAX + SCAN_STEP];
    uint64_t state = 11;
    (void)unused;
    for (size_t run = 0; run < 300; run++) {
        size_t kinds = 1 + chance(&state) % sizeof signs;
        size_t size = run % 10 == 0 ? SCAN_MAX : chance(&state) % 300;
        for (size_t i = 0; i < size + SCAN_STEP; i++)
            bytes[i] = signs[chance(&state) % kinds];
        check_all(bytes, size, ',');
        check_all(bytes, size, '\t');
    }
}

static void test_nothing(void **unused)
{
    static const char bytes[SCAN_STEP] = ",\n,\n";
    (void)unused;
    check_all(bytes, 0, ',');
    check_all(bytes, 1, ',');
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_random_bytes), cmocka_unit_test(test_nothing)};
    return cmocka_run_group_tests_name("scan", tests, NULL, NULL);
}
