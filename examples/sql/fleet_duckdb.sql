-- SPDX-License-Identifier: Apache-2.0
-- From a CSV file to a verdict for every wheel end and every vehicle:
--     duckdb -unsigned -f examples/sql/fleet_duckdb.sql
LOAD 'build/bindings/duckdb/rodtravel.duckdb_extension';
-- Without a line of headings in the middle, and a line of nothing.
CREATE TABLE fleet AS FROM read_csv('examples/data/fleet.csv', all_varchar = true, header = true, delim = ',')
WHERE unit_no <> 'unit_no' AND concat(unit_no, position, chamber, released, applied) <> '';

-- Judged once; the struct has every part.
CREATE VIEW judged AS
SELECT unit_no, rodt_date(date) AS day, position, chamber,
       unnest(rodt_finding(chamber, released, applied, psi, date, stroke_class, {rated_stroke: rated_stroke}))
FROM fleet;

-- Wheel ends that did not pass, the farthest over first.
SELECT unit_no, day, position, chamber, verdict, rodt_length_format(margin) AS margin, reasons
FROM judged WHERE verdict <> 'in-adjustment'
ORDER BY rodt_decimal(margin) NULLS LAST, unit_no, position;

-- An inspection is a vehicle on a day. A row of no day may be of any: such rows have a line of their own, and
-- no inspection of their vehicle passes. `undated` says how many there are.
CREATE VIEW inspections AS
SELECT unit_no, day,
       CASE WHEN outcome = 'below-criterion' AND undated > 0 THEN 'undetermined' ELSE outcome END AS outcome,
       count, undated
FROM (SELECT unit_no, rodt_date(date) AS day,
             rodt_outcome(chamber, released, applied, psi, date, stroke_class, {rated_stroke: rated_stroke}) AS outcome,
             rodt_count(chamber, released, applied, psi, date, stroke_class, {rated_stroke: rated_stroke}) AS count
      FROM fleet GROUP BY ALL)
JOIN (SELECT unit_no, count(*) FILTER (day IS NULL) AS undated FROM judged GROUP BY unit_no) USING (unit_no);

-- Vehicles by the roadside criterion.
SELECT * FROM inspections ORDER BY unit_no, day;
