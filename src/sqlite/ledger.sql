-- SPDX-License-Identifier: BSL-1.0
-- A stillhouse's ledger of readings, corrected and totalled by SQLite. Run it where load_extension may find aqueth_sqlite:
--   sqlite3 -header -column -cmd ".load aqueth_sqlite" <src/sqlite/ledger.sql

-- [ledger]
-- One row a vessel and day: net weight, and what alcoholometer and thermometer showed. The readings stay as they were
-- written down. The true strength is a generated column, and so is the reason where there is none.
CREATE TABLE ledger (
    day TEXT NOT NULL,
    vessel TEXT NOT NULL,
    kg REAL,
    reading_percent REAL,
    celsius REAL,
    strength REAL AS (aqueth_strength_from_reading(reading_percent / 100, celsius,
                                                   'volume_fraction_at_20_celsius', 25e-6)) STORED,
    refused TEXT AS (aqueth_reason('aqueth_strength_from_reading', reading_percent / 100, celsius,
                                   'volume_fraction_at_20_celsius', 25e-6))
);
CREATE INDEX ledger_by_strength ON ledger (strength);

INSERT INTO ledger (day, vessel, kg, reading_percent, celsius) VALUES
    ('2031-03-03', 'hearts jar', 2.310, 83.4, 29.0),
    ('2031-03-03', 'tails jar', 1.742, 38.5, 29.5),
    ('2031-03-04', 'hearts jar', 2.284, 83.2, 27.0),
    ('2031-03-04', 'tails jar', 1.655, 41.0, 26.0),
    ('2031-03-05', 'hearts jar', 2.295, 83.8, -28.0), -- a slip of the pen: it was 28
    ('2031-03-05', 'tails jar', 1.701, NULL, 24.0);  -- never read
-- [ledger]

-- [corrected]
SELECT day, vessel, reading_percent AS reading, celsius, round(100 * strength, 2) AS true_percent,
       ifnull(refused, iif(strength IS NULL, 'no reading', '')) AS refused
FROM ledger ORDER BY day, vessel;
-- [corrected]

-- [totals]
-- The balance stands in air, so its indication is corrected to a mass.
WITH composition AS (
    SELECT *, aqueth_convert_strength(strength, 'volume_fraction_at_20_celsius', 'mass_fraction') AS mass_fraction
    FROM ledger
), lot AS (
    SELECT *, aqueth_mass_from_balance_kg(kg, aqueth_density_kg_m3(mass_fraction, celsius)) AS mass_kg FROM composition
)
SELECT vessel, count(strength) || ' of ' || count(*) AS readings_used, round(sum(mass_kg), 3) AS kg,
       round(sum(aqueth_volume_litres(mass_kg, mass_fraction, celsius, 20)), 3) AS litres_at_20_celsius,
       round(sum(aqueth_pure_alcohol_litres(mass_kg, mass_fraction, celsius, 20)), 3) AS litres_of_pure_alcohol
FROM lot GROUP BY vessel;
-- [totals]

-- [search]
SELECT day, vessel, round(100 * strength, 2) AS true_percent
FROM ledger WHERE strength > 0.80 ORDER BY strength;
-- [search]
