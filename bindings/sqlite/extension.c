/* SPDX-License-Identifier: Apache-2.0 */
/* A loadable extension of SQLite: its entry. */
#include "extension.h"

SQLITE_EXTENSION_INIT1

/* Functions and tables that a schema may use whoever wrote it (SQLITE_INNOCUOUS). */
#define OLDEST_SQLITE 3031000

#if defined(__GNUC__)
__attribute__((visibility("default")))
#endif
int sqlite3_rodtravel_init(sqlite3 *connection, char **said, const sqlite3_api_routines *api);

int sqlite3_rodtravel_init(sqlite3 *connection, char **said, const sqlite3_api_routines *api)
{
    SQLITE_EXTENSION_INIT2(api)
    if (sqlite3_libversion_number() < OLDEST_SQLITE) {
        *said = sqlite3_mprintf("rodtravel needs SQLite 3.31 or newer, this is %s", sqlite3_libversion());
        return SQLITE_ERROR;
    }
    int status = register_functions(connection);
    if (status == SQLITE_OK)
        status = register_vehicles(connection);
    return status == SQLITE_OK ? register_tables(connection) : status;
}
