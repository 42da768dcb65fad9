// SPDX-License-Identifier: BSL-1.0
// Loads the extension into SQLite and asks it in SQL, as an application does.
// usage: check_extension <extension> (vectors <vectors.tsv> | use | speed)
#include <aqueth/c.h>

#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <map>
#include <optional>
#include <sqlite3.h>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace {

/// What a query gave in the first column of its first row.
struct cell {
    int type = SQLITE_NULL;
    double number = 0.0;
    std::string text;
};

class database {
public:
    explicit database(std::string const& extension) {
        if (sqlite3_open(":memory:", &handle_) != SQLITE_OK) throw std::runtime_error("cannot open");
        sqlite3_db_config(handle_, SQLITE_DBCONFIG_ENABLE_LOAD_EXTENSION, 1, nullptr);
        char* error = nullptr;
        if (sqlite3_load_extension(handle_, extension.c_str(), nullptr, &error) != SQLITE_OK)
            throw std::runtime_error(error == nullptr ? "cannot load" : error);
    }
    database(database const&) = delete;
    database& operator=(database const&) = delete;
    ~database() {
        for (auto const& [query, statement] : statements_) sqlite3_finalize(statement);
        sqlite3_close(handle_);
    }

    /// @throws std::runtime_error with SQLite's message
    cell ask(std::string const& query, std::vector<double> const& numbers = {}) {
        sqlite3_stmt*& statement = statements_[query];
        if (statement == nullptr &&
            sqlite3_prepare_v2(handle_, query.c_str(), -1, &statement, nullptr) != SQLITE_OK)
            throw std::runtime_error(sqlite3_errmsg(handle_));
        int place = 0;
        for (double const number : numbers) sqlite3_bind_double(statement, ++place, number);
        cell found;
        int const status = sqlite3_step(statement);
        if (status == SQLITE_ROW) {
            found.type = sqlite3_column_type(statement, 0);
            found.number = sqlite3_column_double(statement, 0);
            if (auto const* text = sqlite3_column_text(statement, 0))
                found.text = reinterpret_cast<char const*>(text);
        }
        std::string const message = sqlite3_errmsg(handle_);
        sqlite3_reset(statement);
        if (status != SQLITE_ROW && status != SQLITE_DONE) throw std::runtime_error(message);
        return found;
    }

private:
    sqlite3* handle_ = nullptr;
    std::map<std::string, sqlite3_stmt*> statements_;
};

std::vector<double> numbers_in(std::string const& text) {
    std::vector<double> numbers;
    std::istringstream words(text);
    for (std::string word; words >> word;) numbers.push_back(std::strtod(word.c_str(), nullptr));
    return numbers;
}

bool alike(double found, double expected, double tolerance) {
    if (std::isinf(expected)) return found == expected;
    return std::abs(found - expected) <= tolerance * std::fmax(1.0, std::abs(expected));
}

bool has_nan(std::vector<double> const& numbers) {
    for (double const number : numbers)
        if (std::isnan(number)) return true;
    return false;
}

/// The SQL functions of each function of src/c/functions.tsv, in the order of its results.
std::map<std::string, std::vector<std::string>> read_names(char const* path) {
    std::map<std::string, std::vector<std::string>> names;
    std::ifstream file(path);
    for (std::string line; std::getline(file, line);) {
        std::istringstream cells(line);
        std::string name, results;
        if (line.empty() || line[0] == '#') continue;
        std::getline(cells, name, '\t');
        std::getline(cells, results, '\t');
        std::istringstream words(results);
        std::vector<std::string> list;
        for (std::string word; words >> word;) list.push_back(word.substr(0, word.find('=')));
        for (std::string& result : list)
            result = "aqueth_" + name + (list.size() > 1 ? "_" + result : std::string());
        names[name] = list;
    }
    return names;
}

/// The end of a sentence of refusal, from the range on: it does not depend on how the argument was given.
std::string range_in(std::string const& sentence) {
    auto const at = std::min(sentence.find(" is outside "), sentence.find(" is not a number of at least "));
    return at == std::string::npos ? "no range in: " + sentence : sentence.substr(at);
}

int check_vectors(database& base, char const* path, char const* list) {
    auto const names = read_names(list);
    std::ifstream file(path);
    int asked = 0, refused = 0, without_number = 0, failed = 0;
    for (std::string line; std::getline(file, line);) {
        if (line.empty() || line[0] == '#' || line.starts_with("function\t")) continue;
        std::istringstream row(line);
        std::string cells[5];
        for (std::string& text : cells) std::getline(row, text, '\t');
        auto const arguments = numbers_in(cells[1]), expected = numbers_in(cells[3]),
                   tail = numbers_in(cells[4]);
        std::string places = "?";
        for (std::size_t k = 1; k < arguments.size(); ++k) places += ", ?";
        bool good = names.contains(cells[0]);
        std::size_t result = 0;
        ++asked;
        bool const is_null = has_nan(arguments);  // SQLite has no NaN: it is a NULL
        if (cells[2] != "ok") ++(is_null ? without_number : refused);
        for (std::string const& name : good ? names.at(cells[0]) : std::vector<std::string>()) {
            cell const answer = base.ask("SELECT " + name + "(" + places + ")", arguments);
            cell const why = base.ask("SELECT aqueth_reason('" + name + "', " + places + ")", arguments);
            if (cells[2] == "ok") {
                bool const none = std::isnan(expected[result]);
                good = good && why.type == SQLITE_NULL &&
                       answer.type == (none ? SQLITE_NULL : SQLITE_FLOAT) &&
                       (none || alike(answer.number, expected[result], tail[0]));
            } else if (is_null) {
                good = good && answer.type == SQLITE_NULL && why.type == SQLITE_NULL;
            } else {
                aqueth_refusal const expected_why = {sizeof(aqueth_refusal),
                                                     static_cast<int>(expected[0]),
                                                     static_cast<int>(expected[1]),
                                                     0.0,
                                                     tail[0],
                                                     tail[1]};
                char sentence[400];
                aqueth_refusal_text(&expected_why, sentence, sizeof sentence);
                std::string const argument = aqueth_argument_name(expected_why.argument);
                good = good && answer.type == SQLITE_NULL && why.text.starts_with(argument + " ") &&
                       range_in(why.text) == range_in(sentence);
            }
            ++result;
        }
        if (!good) {
            ++failed;
            std::fprintf(stderr, "%s(%s): not as in the vectors\n", cells[0].c_str(), cells[1].c_str());
        }
    }
    std::printf("%d questions, %d of them refused, %d with NaN, which is NULL, %d answered wrongly\n", asked,
                refused, without_number, failed);
    return failed != 0 || asked == 0;
}

int failures = 0;

void expect(bool good, std::string const& what) {
    if (good) return;
    ++failures;
    std::fprintf(stderr, "fails: %s\n", what.c_str());
}

void expect_number(database& base, std::string const& query, double expected, double tolerance) {
    cell const found = base.ask(query);
    expect(found.type == SQLITE_FLOAT && std::abs(found.number - expected) <= tolerance,
           query + " gives '" + found.text + "'");
}

void expect_null(database& base, std::string const& query) {
    expect(base.ask(query).type == SQLITE_NULL, query + " is not NULL");
}

void expect_text(database& base, std::string const& query, std::string const& expected) {
    cell const found = base.ask(query);
    expect(found.text == expected, query + " gives '" + found.text + "'");
}

void expect_error(database& base, std::string const& query, std::string const& expected) {
    try {
        base.ask(query);
        expect(false, query + " is no error");
    } catch (std::runtime_error const& error) {
        expect(std::string(error.what()).find(expected) != std::string::npos, query + ": " + error.what());
    }
}

int check_use(std::string const& extension) {
    database base(extension);

    // tables/crc_ethanol_20c.csv: 40 % mass has the specific gravity 0.9352 at 20/4 °C
    expect_number(base, "SELECT aqueth_density_kg_m3(0.40, 20)", 935.2, 0.07);
    // tables/worked_examples.csv, 27 CFR 30.61: a hydrometer that shows 193 proof at 75 °F floats in 189.5
    // proof
    expect_number(base, "SELECT aqueth_strength_from_reading(193, (75 - 32) / 1.8, 'us_proof', 25e-6)", 189.5,
                  0.05);
    // the same, 27 CFR 30.64: 1000 lb of 200 proof and 82.03 lb of water make 190 proof, as in
    // tests/published/worked_examples_test.cpp: figures that differ by 1e-4
    expect_number(base,
                  "SELECT aqueth_dilute_added_kg(1000, 1, 20, aqueth_convert_strength(190, 'us_proof', "
                  "'mass_fraction'), 0, 20, 20)",
                  82.03, 0.065);
    expect(base.ask("SELECT aqueth_version()").text.find('.') != std::string::npos, "aqueth_version()");

    // numbers are what SQLite takes for numbers
    expect_number(base, "SELECT aqueth_density_kg_m3('0.40', 20)", 935.2, 0.07);
    expect_number(base, "SELECT aqueth_density_kg_m3(1, 20) - aqueth_density_kg_m3(1.0, 20.0)", 0.0, 0.0);
    expect_null(base, "SELECT aqueth_density_kg_m3('strong', 20)");
    expect_null(base, "SELECT aqueth_density_kg_m3(x'30', 20)");
    expect_text(base, "SELECT aqueth_reason('aqueth_density_kg_m3', 'strong', 20)",
                "mass_fraction 'strong' is not a number");
    expect_text(base, "SELECT aqueth_reason('aqueth_density_kg_m3', x'30', 20)",
                "mass_fraction is a blob, not a number");

    // NULL
    expect_null(base, "SELECT aqueth_density_kg_m3(NULL, 20)");
    expect_null(base, "SELECT aqueth_density_kg_m3(0.4, NULL)");
    expect_null(base, "SELECT aqueth_convert_strength(0.4, NULL, 'mass_fraction')");
    expect_null(base, "SELECT aqueth_reason('aqueth_density_kg_m3', NULL, 99)");

    // refusals
    expect_null(base, "SELECT aqueth_density_kg_m3(0.4, 99)");
    expect_null(base, "SELECT aqueth_density_kg_m3(0.4, 9e999)");
    expect_text(base, "SELECT aqueth_reason('aqueth_density_kg_m3', 0.4, 99)",
                "temperature 99 is outside -20 to 82.84463 (liquid, up to its boiling point at 101.325 kPa)");
    expect_null(base, "SELECT aqueth_reason('aqueth_density_kg_m3', 0.4, 20)");

    // scales by name and by number; a wrong one is an error with the names that there are
    expect_number(base,
                  "SELECT aqueth_convert_strength(0.4, 'mass_fraction', 'volume_fraction_at_20_celsius') - "
                  "aqueth_convert_strength(0.4, 0, 2)",
                  0.0, 0.0);
    expect_number(base, "SELECT aqueth_convert_strength(0.4, 0.0, '2') - aqueth_convert_strength(0.4, 0, 2)",
                  0.0, 0.0);
    std::string const wrong = "is no strength_scale; accepted: mass_fraction, mole_fraction, ";
    expect_error(base, "SELECT aqueth_convert_strength(0.4, 'mass', 'mole_fraction')",
                 "from 'mass' " + wrong);
    expect_error(base, "SELECT aqueth_convert_strength(0.4, 'mass_fraction', 99)", "to '99' " + wrong);
    expect_error(base, "SELECT aqueth_convert_strength(0.4, 'mass_fraction', 1.5)", "to '1.5' " + wrong);
    expect_error(base, "SELECT aqueth_convert_strength(0.4, 'mass_fraction', x'30')", wrong);
    expect_error(base, "SELECT aqueth_reason('aqueth_convert_strength', 0.4, 'mass', 0)", wrong);

    // wrong calls
    expect_error(base, "SELECT aqueth_density_kg_m3(0.4)", "wrong number of arguments");
    expect_error(base, "SELECT aqueth_reason()", "give the name of a function");
    expect_error(base, "SELECT aqueth_reason('aqueth_nothing', 1)", "there is no function 'aqueth_nothing'");
    expect_error(base, "SELECT aqueth_reason('aqueth_density_kg_m3', 0.4)", "takes 2 arguments, not 1");

    // a generated column, a check, an index, a partial index; the planner uses the index
    base.ask("PRAGMA trusted_schema = OFF");  // only functions marked as innocuous may stand in a schema then
    base.ask("CREATE TABLE reading (mass_fraction, celsius, "
             "kg_m3 AS (aqueth_density_kg_m3(mass_fraction, celsius)) STORED, "
             "why AS (aqueth_reason('aqueth_density_kg_m3', mass_fraction, celsius)))");
    base.ask("INSERT INTO reading VALUES (0.4, 20), (0.4, 99), (NULL, 20), ('?', 20), (0, 20)");
    base.ask("CREATE INDEX by_density ON reading (aqueth_density_kg_m3(mass_fraction, celsius))");
    base.ask("CREATE INDEX refused ON reading (celsius) WHERE "
             "aqueth_reason('aqueth_density_kg_m3', mass_fraction, celsius) IS NOT NULL");
    expect_number(base, "SELECT kg_m3 FROM reading WHERE aqueth_density_kg_m3(mass_fraction, celsius) < 990",
                  935.2, 0.07);
    expect_number(base, "SELECT sum(kg_m3) FROM reading", 935.2 + 998.2, 0.1);
    expect_text(base, "SELECT count(why) || ' of ' || count(*) FROM reading", "2 of 5");
    expect_text(base, "SELECT group_concat(why, '; ') FROM reading",
                "temperature 99 is outside -20 to 82.84463 (liquid, up to its boiling point at 101.325 kPa); "
                "mass_fraction '?' is not a number");
    base.ask("UPDATE reading SET celsius = 30 WHERE celsius = 99");
    expect_null(base, "SELECT max(why) FROM reading WHERE celsius = 30");
    expect_text(base, "PRAGMA integrity_check", "ok");

    // two connections share nothing
    database other(extension);
    expect_null(other, "SELECT aqueth_density_kg_m3(0.4, 99)");
    expect_null(base, "SELECT aqueth_reason('aqueth_density_kg_m3', 0.4, 20)");

    std::printf("%d failures\n", failures);
    return failures != 0;
}

int measure(std::string const& extension) {
    using clock = std::chrono::steady_clock;
    database base(extension);
    base.ask("CREATE TABLE reading (reading REAL, celsius REAL)");
    base.ask("INSERT INTO reading WITH RECURSIVE row(k) AS (SELECT 0 UNION ALL SELECT k + 1 FROM row LIMIT "
             "1000000) "
             "SELECT 0.3 + 0.6 * (k % 1009) / 1009, 10 + 20.0 * (k % 997) / 997 FROM row");
    auto const time = [&](char const* title, std::string const& query) {
        double best = 1e9, sum = 0.0;
        for (int k = 0; k < 3; ++k) {
            auto const start = clock::now();
            sum = base.ask(query).number;
            best = std::min(best, std::chrono::duration<double>(clock::now() - start).count());
        }
        std::printf("%-60s %.3f s (sum %.6f)\n", title, best, sum);
        return sum;
    };
    time("a million rows, SQLite's sum alone", "SELECT sum(reading + celsius) FROM reading");
    time("a million densities", "SELECT sum(aqueth_density_kg_m3(reading, celsius)) FROM reading");
    double const by_name =
        time("a million corrected readings", "SELECT sum(aqueth_strength_from_reading(reading, celsius, "
                                             "'volume_fraction_at_20_celsius', 25e-6)) FROM reading");
    double const by_number =
        time("the same, the scale by its number",
             "SELECT sum(aqueth_strength_from_reading(reading, celsius, 2, 25e-6)) FROM reading");
    return by_name == by_number ? 0 : 1;
}

}  // namespace

int main(int count, char** words) try {
    std::string const what = count > 2 ? words[2] : "";
    if (what == "vectors" && count == 5) {
        database base(words[1]);
        return check_vectors(base, words[3], words[4]);
    }
    if (what == "use") return check_use(words[1]);
    if (what == "speed") return measure(words[1]);
    std::fputs("usage: check_extension <extension> (vectors <vectors.tsv> <functions.tsv> | use | speed)\n",
               stderr);
    return 2;
} catch (std::exception const& error) {
    std::fprintf(stderr, "%s\n", error.what());
    return 1;
}
