/* SPDX-License-Identifier: Apache-2.0 */
/* A loadable extension of DuckDB: its entry. */
#include "extension.h"

#include <string.h>

duckdb_ext_api_v1 duckdb_ext_api;

/* Where the interface in C became stable: every later DuckDB has it. Also in the footer of the file (footer.py). */
#define OLDEST_INTERFACE "v1.2.0"

#if defined(__GNUC__)
__attribute__((visibility("default")))
#endif
bool rodtravel_init_c_api(duckdb_extension_info info, struct duckdb_extension_access *access);

static bool register_all(duckdb_connection connection)
{
    return register_functions(connection) && register_texts(connection) && register_vehicles(connection) &&
           register_tables(connection);
}

bool rodtravel_init_c_api(duckdb_extension_info info, struct duckdb_extension_access *access)
{
    const void *interface = access->get_api(info, OLDEST_INTERFACE);
    duckdb_connection connection;
    if (interface == NULL)
        return false; /* DuckDB has said why */
    memcpy(&duckdb_ext_api, interface, sizeof duckdb_ext_api);
    if (duckdb_vector_size() > ROWS) {
        access->set_error(info, "rodtravel needs a DuckDB whose vectors have 2048 rows at most");
        return false;
    }
    if (duckdb_connect(*access->get_database(info), &connection) != DuckDBSuccess) {
        access->set_error(info, "rodtravel cannot connect to the database");
        return false;
    }
    const bool done = register_all(connection);
    if (!done)
        access->set_error(info, "rodtravel cannot register its functions");
    duckdb_disconnect(&connection);
    return done;
}
