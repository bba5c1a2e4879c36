-- SPDX-License-Identifier: Apache-2.0
-- Exact numbers, -1/16, ordered by value.
CREATE TYPE rodt_exact;
CREATE FUNCTION rodt_exact_in(cstring) RETURNS rodt_exact LANGUAGE c IMMUTABLE STRICT PARALLEL SAFE
    AS 'MODULE_PATHNAME', 'rodtpg_exact_in';
CREATE FUNCTION rodt_exact_out(rodt_exact) RETURNS cstring LANGUAGE c IMMUTABLE STRICT PARALLEL SAFE
    AS 'MODULE_PATHNAME', 'rodtpg_exact_out';
CREATE FUNCTION rodt_exact_recv(internal) RETURNS rodt_exact LANGUAGE c IMMUTABLE STRICT PARALLEL SAFE
    AS 'MODULE_PATHNAME', 'rodtpg_exact_recv';
CREATE FUNCTION rodt_exact_send(rodt_exact) RETURNS bytea LANGUAGE c IMMUTABLE STRICT PARALLEL SAFE
    AS 'MODULE_PATHNAME', 'rodtpg_exact_send';
CREATE TYPE rodt_exact (INPUT = rodt_exact_in, OUTPUT = rodt_exact_out, RECEIVE = rodt_exact_recv,
    SEND = rodt_exact_send, INTERNALLENGTH = 16, ALIGNMENT = double);
COMMENT ON TYPE rodt_exact IS 'a fraction in lowest terms: -1/16';

CREATE FUNCTION rodt_numeric(rodt_exact) RETURNS numeric LANGUAGE c IMMUTABLE STRICT PARALLEL SAFE
    AS 'MODULE_PATHNAME', 'rodtpg_exact_numeric';
COMMENT ON FUNCTION rodt_numeric(rodt_exact) IS 'rounded as numeric divides';
CREATE CAST (rodt_exact AS numeric) WITH FUNCTION rodt_numeric(rodt_exact);

CREATE FUNCTION rodt_exact_lt(rodt_exact, rodt_exact) RETURNS boolean LANGUAGE c IMMUTABLE STRICT PARALLEL SAFE
    AS 'MODULE_PATHNAME', 'rodtpg_exact_lt';
CREATE FUNCTION rodt_exact_le(rodt_exact, rodt_exact) RETURNS boolean LANGUAGE c IMMUTABLE STRICT PARALLEL SAFE
    AS 'MODULE_PATHNAME', 'rodtpg_exact_le';
CREATE FUNCTION rodt_exact_eq(rodt_exact, rodt_exact) RETURNS boolean LANGUAGE c IMMUTABLE STRICT PARALLEL SAFE
    AS 'MODULE_PATHNAME', 'rodtpg_exact_eq';
CREATE FUNCTION rodt_exact_ne(rodt_exact, rodt_exact) RETURNS boolean LANGUAGE c IMMUTABLE STRICT PARALLEL SAFE
    AS 'MODULE_PATHNAME', 'rodtpg_exact_ne';
CREATE FUNCTION rodt_exact_ge(rodt_exact, rodt_exact) RETURNS boolean LANGUAGE c IMMUTABLE STRICT PARALLEL SAFE
    AS 'MODULE_PATHNAME', 'rodtpg_exact_ge';
CREATE FUNCTION rodt_exact_gt(rodt_exact, rodt_exact) RETURNS boolean LANGUAGE c IMMUTABLE STRICT PARALLEL SAFE
    AS 'MODULE_PATHNAME', 'rodtpg_exact_gt';
CREATE FUNCTION rodt_exact_cmp(rodt_exact, rodt_exact) RETURNS integer LANGUAGE c IMMUTABLE STRICT PARALLEL SAFE
    AS 'MODULE_PATHNAME', 'rodtpg_exact_cmp';
CREATE FUNCTION rodt_exact_hash(rodt_exact) RETURNS integer LANGUAGE c IMMUTABLE STRICT PARALLEL SAFE
    AS 'MODULE_PATHNAME', 'rodtpg_exact_hash';

CREATE OPERATOR < (LEFTARG = rodt_exact, RIGHTARG = rodt_exact, FUNCTION = rodt_exact_lt, COMMUTATOR = >,
    NEGATOR = >=, RESTRICT = scalarltsel, JOIN = scalarltjoinsel);
CREATE OPERATOR <= (LEFTARG = rodt_exact, RIGHTARG = rodt_exact, FUNCTION = rodt_exact_le, COMMUTATOR = >=,
    NEGATOR = >, RESTRICT = scalarlesel, JOIN = scalarlejoinsel);
CREATE OPERATOR = (LEFTARG = rodt_exact, RIGHTARG = rodt_exact, FUNCTION = rodt_exact_eq, COMMUTATOR = =,
    NEGATOR = <>, RESTRICT = eqsel, JOIN = eqjoinsel, HASHES, MERGES);
CREATE OPERATOR <> (LEFTARG = rodt_exact, RIGHTARG = rodt_exact, FUNCTION = rodt_exact_ne, COMMUTATOR = <>,
    NEGATOR = =, RESTRICT = neqsel, JOIN = neqjoinsel);
CREATE OPERATOR >= (LEFTARG = rodt_exact, RIGHTARG = rodt_exact, FUNCTION = rodt_exact_ge, COMMUTATOR = <=,
    NEGATOR = <, RESTRICT = scalargesel, JOIN = scalargejoinsel);
CREATE OPERATOR > (LEFTARG = rodt_exact, RIGHTARG = rodt_exact, FUNCTION = rodt_exact_gt, COMMUTATOR = <,
    NEGATOR = <=, RESTRICT = scalargtsel, JOIN = scalargtjoinsel);
CREATE OPERATOR CLASS rodt_exact_order DEFAULT FOR TYPE rodt_exact USING btree AS
    OPERATOR 1 <, OPERATOR 2 <=, OPERATOR 3 =, OPERATOR 4 >=, OPERATOR 5 >,
    FUNCTION 1 rodt_exact_cmp(rodt_exact, rodt_exact);
CREATE OPERATOR CLASS rodt_exact_equality DEFAULT FOR TYPE rodt_exact USING hash AS
    OPERATOR 1 =, FUNCTION 1 rodt_exact_hash(rodt_exact);

CREATE FUNCTION rodt_exact_smaller(rodt_exact, rodt_exact) RETURNS rodt_exact LANGUAGE c IMMUTABLE STRICT PARALLEL SAFE
    AS 'MODULE_PATHNAME', 'rodtpg_exact_smaller';
CREATE FUNCTION rodt_exact_larger(rodt_exact, rodt_exact) RETURNS rodt_exact LANGUAGE c IMMUTABLE STRICT PARALLEL SAFE
    AS 'MODULE_PATHNAME', 'rodtpg_exact_larger';
CREATE AGGREGATE min(rodt_exact) (SFUNC = rodt_exact_smaller, STYPE = rodt_exact, COMBINEFUNC = rodt_exact_smaller,
    SORTOP = <, PARALLEL = SAFE);
CREATE AGGREGATE max(rodt_exact) (SFUNC = rodt_exact_larger, STYPE = rodt_exact, COMBINEFUNC = rodt_exact_larger,
    SORTOP = >, PARALLEL = SAFE);
