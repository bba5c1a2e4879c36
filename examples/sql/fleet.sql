-- SPDX-License-Identifier: Apache-2.0
-- From a CSV file to a verdict for every wheel end and every vehicle:
--     sqlite3 -init examples/sql/fleet.sql :memory: .quit
.load build/bindings/sqlite/rodtravel
.import --csv examples/data/fleet.csv fleet
-- A line of headings in the middle, and a line of nothing.
DELETE FROM fleet WHERE unit_no = 'unit_no' OR unit_no || position || chamber || released || applied = '';

CREATE VIEW judged AS
SELECT unit_no, rodt_date(date) AS day, position, chamber,
       rodt_verdict(chamber, released, applied, psi, date, stroke_class, NULL, rated_stroke) AS verdict,
       rodt_margin(chamber, released, applied, psi, date, stroke_class, NULL, rated_stroke) AS margin,
       rodt_reasons(chamber, released, applied, psi, date, stroke_class, NULL, rated_stroke) AS reasons
FROM fleet;

.mode column
.print "Wheel ends that did not pass, the farthest over first"
SELECT unit_no, day, position, chamber, verdict, rodt_length_format(margin) AS margin, reasons
FROM judged WHERE verdict <> 'in-adjustment'
ORDER BY margin IS NULL, margin COLLATE rodt_exact;

-- An inspection is a vehicle on a day. A row of no day may be of any: such rows have a line of their own, and
-- no inspection of their vehicle passes. `undated` says how many there are.
CREATE VIEW inspections AS
SELECT unit_no, day,
       CASE WHEN outcome = 'below-criterion' AND undated > 0 THEN 'undetermined' ELSE outcome END AS outcome,
       count, undated
FROM (SELECT unit_no, rodt_date(date) AS day,
             rodt_outcome(chamber, released, applied, psi, date, stroke_class, NULL, rated_stroke) AS outcome,
             rodt_count(chamber, released, applied, psi, date, stroke_class, NULL, rated_stroke) AS count,
             (SELECT count(*) FROM judged AS j WHERE j.unit_no = fleet.unit_no AND j.day IS NULL) AS undated
      FROM fleet GROUP BY unit_no, day);

.print
.print "Vehicles by the roadside criterion"
SELECT * FROM inspections ORDER BY unit_no, day;
