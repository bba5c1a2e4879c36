-- SPDX-License-Identifier: Apache-2.0
-- From a CSV file to a verdict for every wheel end and every vehicle:
--     sh bindings/postgresql/cluster.sh build/fleet
--     psql -h "$PWD/build/fleet" -U postgres -f examples/sql/fleet_postgresql.sql
CREATE EXTENSION IF NOT EXISTS rodtravel;
CREATE TEMP TABLE fleet(unit_no text, kind text, date text, position text, chamber text, stroke_class text,
    rated_stroke text, released text, applied text, psi text, division text, remarks text);
\copy fleet FROM 'examples/data/fleet.csv' CSV HEADER
-- A line of headings in the middle, and a line of nothing.
DELETE FROM fleet WHERE unit_no = 'unit_no' OR concat(unit_no, position, chamber, released, applied) = '';

CREATE TEMP VIEW judged AS
SELECT unit_no, rodt_date(date) AS day, position, chamber,
       rodt_verdict(chamber, released, applied, psi, date, stroke_class, rated_stroke => rated_stroke) AS verdict,
       rodt_margin(chamber, released, applied, psi, date, stroke_class, rated_stroke => rated_stroke) AS margin,
       rodt_reasons(chamber, released, applied, psi, date, stroke_class, rated_stroke => rated_stroke) AS reasons
FROM fleet;

\echo Wheel ends that did not pass, the farthest over first
SELECT unit_no, day, position, chamber, verdict, rodt_length_format(margin) AS margin, reasons
FROM judged WHERE verdict <> 'in-adjustment'
ORDER BY judged.margin NULLS LAST;

-- An inspection is a vehicle on a day. A row of no day may be of any: such rows have a line of their own, and
-- no inspection of their vehicle passes. `undated` says how many there are.
CREATE TEMP VIEW inspections AS
SELECT unit_no, day,
       CASE WHEN outcome = 'below-criterion' AND undated > 0 THEN 'undetermined' ELSE outcome END AS outcome,
       count, undated
FROM (SELECT unit_no, rodt_date(date) AS day,
             rodt_outcome(chamber, released, applied, psi, date, stroke_class, NULL, rated_stroke) AS outcome,
             rodt_count(chamber, released, applied, psi, date, stroke_class, NULL, rated_stroke) AS count,
             (SELECT count(*) FROM judged AS j WHERE j.unit_no = fleet.unit_no AND j.day IS NULL) AS undated
      FROM fleet GROUP BY unit_no, rodt_date(date)) AS counted;

\echo Vehicles by the roadside criterion
SELECT * FROM inspections ORDER BY unit_no, day;
