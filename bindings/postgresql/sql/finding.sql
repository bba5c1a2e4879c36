-- SPDX-License-Identifier: Apache-2.0
-- Everything about a wheel end in one row: the members of a finding, and the first text that could not be read.
CREATE TYPE rodt_finding AS (
@MEMBERS@,
    sentence text,
    error_status text,
    error_field text,
    error_column integer,
    error_text text
);
CREATE FUNCTION rodt_finding(@ARGUMENTS@) RETURNS rodt_finding LANGUAGE c IMMUTABLE PARALLEL SAFE COST 200
    AS 'MODULE_PATHNAME', 'rodtpg_finding';
