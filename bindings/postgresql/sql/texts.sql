-- SPDX-License-Identifier: Apache-2.0
-- Single texts: NULL where a text is no length or day, or may be two.
CREATE FUNCTION rodt_length(reading text) RETURNS rodt_exact LANGUAGE c IMMUTABLE STRICT PARALLEL SAFE COST 5
    AS 'MODULE_PATHNAME', 'rodtpg_length';
CREATE FUNCTION rodt_length(reading text, unit text) RETURNS rodt_exact LANGUAGE c IMMUTABLE STRICT PARALLEL SAFE
    COST 5 AS 'MODULE_PATHNAME', 'rodtpg_length';
CREATE FUNCTION rodt_length_format(inches rodt_exact) RETURNS text LANGUAGE c IMMUTABLE STRICT PARALLEL SAFE COST 5
    AS 'MODULE_PATHNAME', 'rodtpg_length_format';
CREATE FUNCTION rodt_date(day text) RETURNS date LANGUAGE c IMMUTABLE STRICT PARALLEL SAFE COST 5
    AS 'MODULE_PATHNAME', 'rodtpg_date';
