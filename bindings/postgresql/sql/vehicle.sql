-- SPDX-License-Identifier: Apache-2.0
-- A vehicle: aggregates with a row a brake. The four share one state, which workers count each for themselves.
CREATE FUNCTION rodt_tally_add(internal, "any", "any", "any") RETURNS internal LANGUAGE c IMMUTABLE PARALLEL SAFE
    COST 30 AS 'MODULE_PATHNAME', 'rodtpg_tally_add';
CREATE FUNCTION rodt_tally_add(internal, "any", "any", "any", VARIADIC "any") RETURNS internal LANGUAGE c IMMUTABLE
    PARALLEL SAFE COST 30 AS 'MODULE_PATHNAME', 'rodtpg_tally_add';
CREATE FUNCTION rodt_tally_combine(internal, internal) RETURNS internal LANGUAGE c IMMUTABLE PARALLEL SAFE
    AS 'MODULE_PATHNAME', 'rodtpg_tally_combine';
CREATE FUNCTION rodt_tally_send(internal) RETURNS bytea LANGUAGE c IMMUTABLE STRICT PARALLEL SAFE
    AS 'MODULE_PATHNAME', 'rodtpg_tally_send';
CREATE FUNCTION rodt_tally_receive(bytea, internal) RETURNS internal LANGUAGE c IMMUTABLE STRICT PARALLEL SAFE
    AS 'MODULE_PATHNAME', 'rodtpg_tally_receive';
CREATE FUNCTION rodt_tally_outcome(internal) RETURNS text LANGUAGE c IMMUTABLE PARALLEL SAFE
    AS 'MODULE_PATHNAME', 'rodtpg_outcome';
CREATE FUNCTION rodt_tally_defective(internal) RETURNS rodt_exact LANGUAGE c IMMUTABLE PARALLEL SAFE
    AS 'MODULE_PATHNAME', 'rodtpg_defective';
CREATE FUNCTION rodt_tally_share(internal) RETURNS rodt_exact LANGUAGE c IMMUTABLE PARALLEL SAFE
    AS 'MODULE_PATHNAME', 'rodtpg_share';
CREATE FUNCTION rodt_tally_count(internal) RETURNS text LANGUAGE c IMMUTABLE PARALLEL SAFE
    AS 'MODULE_PATHNAME', 'rodtpg_count';

CREATE AGGREGATE rodt_outcome(chamber "any", released "any", applied "any") (
    SFUNC = rodt_tally_add, STYPE = internal, SSPACE = 32, FINALFUNC = rodt_tally_outcome,
    COMBINEFUNC = rodt_tally_combine, SERIALFUNC = rodt_tally_send, DESERIALFUNC = rodt_tally_receive, PARALLEL = SAFE);

CREATE AGGREGATE rodt_outcome(chamber "any", released "any", applied "any", VARIADIC more "any") (
    SFUNC = rodt_tally_add, STYPE = internal, SSPACE = 32, FINALFUNC = rodt_tally_outcome,
    COMBINEFUNC = rodt_tally_combine, SERIALFUNC = rodt_tally_send, DESERIALFUNC = rodt_tally_receive, PARALLEL = SAFE);

CREATE AGGREGATE rodt_defective(chamber "any", released "any", applied "any") (
    SFUNC = rodt_tally_add, STYPE = internal, SSPACE = 32, FINALFUNC = rodt_tally_defective,
    COMBINEFUNC = rodt_tally_combine, SERIALFUNC = rodt_tally_send, DESERIALFUNC = rodt_tally_receive, PARALLEL = SAFE);

CREATE AGGREGATE rodt_defective(chamber "any", released "any", applied "any", VARIADIC more "any") (
    SFUNC = rodt_tally_add, STYPE = internal, SSPACE = 32, FINALFUNC = rodt_tally_defective,
    COMBINEFUNC = rodt_tally_combine, SERIALFUNC = rodt_tally_send, DESERIALFUNC = rodt_tally_receive, PARALLEL = SAFE);

CREATE AGGREGATE rodt_share(chamber "any", released "any", applied "any") (
    SFUNC = rodt_tally_add, STYPE = internal, SSPACE = 32, FINALFUNC = rodt_tally_share,
    COMBINEFUNC = rodt_tally_combine, SERIALFUNC = rodt_tally_send, DESERIALFUNC = rodt_tally_receive, PARALLEL = SAFE);

CREATE AGGREGATE rodt_share(chamber "any", released "any", applied "any", VARIADIC more "any") (
    SFUNC = rodt_tally_add, STYPE = internal, SSPACE = 32, FINALFUNC = rodt_tally_share,
    COMBINEFUNC = rodt_tally_combine, SERIALFUNC = rodt_tally_send, DESERIALFUNC = rodt_tally_receive, PARALLEL = SAFE);

CREATE AGGREGATE rodt_count(chamber "any", released "any", applied "any") (
    SFUNC = rodt_tally_add, STYPE = internal, SSPACE = 32, FINALFUNC = rodt_tally_count,
    COMBINEFUNC = rodt_tally_combine, SERIALFUNC = rodt_tally_send, DESERIALFUNC = rodt_tally_receive, PARALLEL = SAFE);

CREATE AGGREGATE rodt_count(chamber "any", released "any", applied "any", VARIADIC more "any") (
    SFUNC = rodt_tally_add, STYPE = internal, SSPACE = 32, FINALFUNC = rodt_tally_count,
    COMBINEFUNC = rodt_tally_combine, SERIALFUNC = rodt_tally_send, DESERIALFUNC = rodt_tally_receive, PARALLEL = SAFE);
