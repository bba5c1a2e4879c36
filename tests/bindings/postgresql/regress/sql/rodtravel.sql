-- SPDX-License-Identifier: Apache-2.0
-- What somebody sees in psql, without blanks to align it.
\pset format unaligned
\pset null NULL
SELECT rodt_verdict('30L', '2 3/4', '5 5/16', 95), rodt_stroke('30L', '2 3/4', '5 5/16'),
       rodt_limit('30L', '2 3/4', '5 5/16'), rodt_margin('30L', '2 3/4', '5 5/16', psi => 95);
SELECT rodt_reasons('30', '2 3/4', '4', '95'), rodt_defect('30', '2', '4 1/8', '95');
-- NULL is not written, and what cannot be read is data.
SELECT rodt_verdict(NULL, NULL, NULL), rodt_reasons(NULL, NULL, NULL), rodt_margin(NULL, NULL, NULL);
SELECT f.verdict, f.reasons, f.error_status, f.error_field, f.error_column, f.error_text
FROM rodt_finding('30', '2', '4 3/0') AS f;
-- Types that are no readings, and a rule set that does not exist, are errors.
SELECT rodt_verdict('30', '2', 4.5::float8);
SELECT rodt_verdict('30', '2', true);
SELECT rodt_verdict('30', '2', '4', rules => 'us-fmcsr''; --');
SELECT rodt_verdict('30', '2', '4', speed => 55);
-- A vehicle.
SELECT rodt_outcome(c, r, a, 95), rodt_defective(c, r, a, 95), rodt_share(c, r, a, 95), rodt_count(c, r, a, 95)
FROM (VALUES ('30', '2', '4 1/8'), ('30', '2', '4'), ('24', '2', '2'), ('24', '2', NULL)) AS v(c, r, a);
SELECT rodt_count(c, r, a) FROM (VALUES ('30', '2', '4 1/8')) AS v(c, r, a) WHERE false;
-- Exact numbers and single texts.
SELECT rodt_exact '4/64', rodt_exact '-1/3' < '1/3', (rodt_exact '-1/16')::numeric(8, 4);
SELECT rodt_exact '0.5';
SELECT rodt_length('54 mm'), rodt_length('54', 'mm'), rodt_length('31/8'), rodt_length_format('41/16'),
       rodt_date('13-OCT-21') = '2021-10-13';
CREATE TEMP TABLE readings(released rodt_reading);
INSERT INTO readings VALUES ('2 1/8'), (NULL), ('54 mm');
INSERT INTO readings VALUES ('2-Jan');
\dT rodt_*
