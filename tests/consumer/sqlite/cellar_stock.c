/* SPDX-License-Identifier: BSL-1.0 */
/* The pure alcohol of a cellar, from a database. usage: cellar_stock <extension> */
#include <sqlite3.h>
#include <stdio.h>

static int show(void* unused, int count, char** values, char** names) {
    int k;
    (void)unused;
    for (k = 0; k < count; ++k) printf("%s: %s\n", names[k], values[k] == NULL ? "none" : values[k]);
    return 0;
}

int main(int count, char** words) {
    sqlite3* cellar;
    char* error = NULL;
    if (count != 2 || sqlite3_open(":memory:", &cellar) != SQLITE_OK) return 2;
    /* The application may load extensions, its SQL may not. */
    sqlite3_db_config(cellar, SQLITE_DBCONFIG_ENABLE_LOAD_EXTENSION, 1, NULL);
    if (sqlite3_load_extension(cellar, words[1], NULL, &error) == SQLITE_OK)
        sqlite3_exec(
            cellar,
            "CREATE TABLE cask (litres REAL, mass_fraction REAL, celsius REAL);"
            "INSERT INTO cask VALUES (212.0, 0.51, 14.0), (198.5, 0.535, 14.5), (205.0, 0.52, 91.0);"
            "SELECT round(sum(aqueth_pure_alcohol_litres(aqueth_mass_of_volume_kg(litres, mass_fraction, "
            "celsius), "
            "mass_fraction, celsius, 20)), 2) AS litres_of_pure_alcohol FROM cask;"
            "SELECT aqueth_reason('aqueth_mass_of_volume_kg', litres, mass_fraction, celsius) AS refused "
            "FROM cask WHERE celsius > 40;",
            show, NULL, &error);
    if (error != NULL) fprintf(stderr, "%s\n", error);
    sqlite3_close(cellar);
    return error == NULL ? 0 : 1;
}
