-- SPDX-License-Identifier: Apache-2.0
-- The tables of law inside. Another build can have others.
CREATE FUNCTION rodt_tables_edition() RETURNS text LANGUAGE c STABLE PARALLEL SAFE
    AS 'MODULE_PATHNAME', 'rodtpg_tables_edition';
CREATE FUNCTION rodt_limits(OUT rules text, OUT family text, OUT size text, OUT stroke_class text,
    OUT rated_stroke rodt_exact, OUT stroke_limit rodt_exact, OUT from_day date, OUT until_day date, OUT source text,
    OUT evidence text) RETURNS SETOF record LANGUAGE c STABLE PARALLEL SAFE ROWS 200
    AS 'MODULE_PATHNAME', 'rodtpg_limits';
CREATE VIEW rodt_limits AS SELECT * FROM rodt_limits();
GRANT SELECT ON rodt_limits TO PUBLIC;
