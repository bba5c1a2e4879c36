# SPDX-License-Identifier: Apache-2.0
"""The extension of PostgreSQL in its own server: the case files, the conformance kit, wrong input of every kind."""
import csv
import json
import os
import re
import subprocess
from fractions import Fraction

import engine_cases
import tap
from cluster import ROOT, WHERE, literal, one, refused, rows, run, shell

ARGUMENTS = ("chamber released applied psi date stroke_class rules rated_stroke marked_limit psi_after division unit "
             "engine spring_brake drum").split()
FUNCTIONS = "verdict stroke limit margin reasons defect".split()
AGGREGATES = "outcome defective share count".split()
FLEET = "unit_no kind date position chamber stroke_class rated_stroke released applied psi division remarks".split()
OVER = {"chamber": "30L", "released": "2 3/4", "applied": "5 5/16", "psi": "95"}

run("CREATE EXTENSION rodtravel;")


def listed(texts):
    return ", ".join(literal(texts.get(name)) for name in ARGUMENTS)


def call(function, **texts):
    return one(f"rodt_{function}({listed({**OVER, **texts})})")


def judged(questions):
    """Every question through every way in: functions of texts and of any type, aggregates of one row, the parts."""
    table = f"CREATE TEMP TABLE asked(id integer PRIMARY KEY, {', '.join(name + ' text' for name in ARGUMENTS)});"
    table += "".join(f"INSERT INTO asked VALUES({number}, {listed(texts)});" for number, texts in enumerate(questions))
    names = ", ".join(ARGUMENTS)
    any_type = ", ".join(ARGUMENTS[:-1] + ["NULL::integer"])
    calls = ", ".join([f"rodt_{name}({names}) AS {name.replace('limit', 'stroke_limit')}" for name in FUNCTIONS] +
                      [f"rodt_{name}({names}) AS {name}" for name in AGGREGATES] +
                      [f"rodt_{name}({any_type}) AS any_{name}" for name in FUNCTIONS + AGGREGATES])
    query = f"SELECT id, to_json(rodt_finding({names})) AS parts, {calls} FROM asked GROUP BY id"
    found = json.loads(run(table + f"SELECT json_agg(t ORDER BY id) FROM ({query}) AS t;", "postgres", "-A", "-t"))
    assert len(found) == len(questions)
    for row, texts in zip(found, questions):
        row["limit"] = row.pop("stroke_limit")
        for name in FUNCTIONS[:5]:
            assert row[name] == row["parts"][{"stroke": "applied_stroke"}.get(name, name)], row
        if texts.get("drum") is None:
            assert all(row[name] == row["any_" + name] for name in FUNCTIONS + AGGREGATES), row
    return found


def test_wheel_ends():
    engine_cases.check_wheel_ends(judged)


def test_conformance():
    """No text of PostgreSQL has a zero byte."""
    for answer, error, row in engine_cases.check_conformance(judged, lambda text: "\0" not in text):
        parts = row["parts"]
        assert parts["proof"] == answer["proof"] and parts["probability_over"] == answer["probability_over"], row
        assert (parts["error_status"], parts["error_field"], parts["error_column"]) == \
            (error["status"], error["field"], error["column"]), row


def test_numbers_days_and_nulls():
    assert call("margin") == "-1/16" and call("margin", psi=95) == "-1/16"
    assert one("rodt_stroke('30L', 2, 4.125::numeric, psi => 95::bigint)") == "17/8"
    assert call("stroke", released=2, applied=4) == "2"
    for style in ("ISO, DMY", "SQL, DMY", "German", "Postgres, MDY"):
        found = run(f"SET datestyle = '{style}'; "
                    "SELECT (rodt_finding('36', '2', '4', date => date '2021-10-14')).day = '2021-10-14'::date;",
                    "postgres", "-A", "-t")
        assert found == "t\n", found
    for day in ("'infinity'::date", "'-infinity'::date", "'0044-03-15 BC'::date", "'20000-01-01'::date"):
        assert one(f"rodt_reasons('36', '2', '4', 95, {day})").startswith("within-limit") is False
        assert "date-unreadable" in one(f"rodt_reasons('36', '2', '4', 95, {day})"), day
    for number in ("'NaN'::numeric", "-2::numeric", "1e300::numeric", "2147483647"):
        assert one(f"rodt_verdict('30', {number}, '4', 95)") == "undetermined", number
    nothing = judged([{}])[0]
    assert nothing["verdict"] == "undetermined" and nothing["margin"] is None and nothing["limit"] is None
    assert nothing["outcome"] == "undetermined" and nothing["share"] == "0"
    assert "chamber-missing released-missing applied-missing" in nothing["reasons"]
    assert one("rodt_verdict(NULL, NULL, NULL)") == "undetermined"


def test_what_cannot_be_read():
    """A text of too many bytes, controls, what looks like SQL: data, and never a pass."""
    sound = {"chamber": "30L", "released": "2 3/4", "applied": "5", "psi": "95", "date": "2024-05-06",
             "stroke_class": "long", "rated_stroke": "3", "marked_limit": "2 1/2", "psi_after": "94",
             "division": "1/16", "unit": "in", "engine": "off", "spring_brake": "released", "drum": "cold"}
    assert judged([sound])[0]["verdict"] == "in-adjustment"
    names, questions = [], []
    for name, text in sound.items():
        for wrong in (text + "\1", text + "; DROP TABLE asked; --", "'); DROP TABLE asked; --", text + " " * 1000,
                      "$$" + text, "x" * 100000, "\\", "%s%n", "é" * 600):
            names.append((name, wrong))
            questions.append({**sound, name: wrong})
    for (name, wrong), row in zip(names, judged(questions)):
        assert row["verdict"] == "undetermined" and row["parts"]["error_field"] == name, (name, wrong, row)
        assert "unreadable" in row["reasons"] and row["outcome"] == "undetermined", (name, wrong, row)


def test_stored_texts():
    """Cells that are compressed, or kept beside the row."""
    run("CREATE TABLE long_cells(cell text); ALTER TABLE long_cells ALTER cell SET STORAGE EXTERNAL;"
        "INSERT INTO long_cells VALUES (repeat('2 ', 100000)), ('4'), (repeat('4', 5000));"
        "CREATE TABLE packed_cells(cell text); INSERT INTO packed_cells VALUES (repeat(' ', 900) || '4'), "
        "(repeat(' ', 9000) || '4'), (repeat(' ', 990) || '4 1/8 in  ');")
    found = rows("SELECT rodt_reasons('30', '2', cell, '95') AS said FROM long_cells")
    assumed = "assumed-standard assumed-clamp"
    assert [row["said"] for row in found] == [assumed + " applied-unreadable", "at-limit " + assumed,
                                             assumed + " applied-unreadable"], found
    found = rows("SELECT rodt_stroke('30', '2', cell, '95') AS said FROM packed_cells")
    assert [row["said"] for row in found] == ["2", None, "17/8"], found


def test_finest_readings():
    """The finest that can be read have an exact stroke; what is finer is data, too."""
    stroke = Fraction("600.1234567") / Fraction("25.4") - Fraction(1, 10**9)
    assert Fraction(call("stroke", released="0.000000001", applied="600.1234567 mm")) == stroke
    assert call("reasons", released="1", applied="3.1234567891") == "applied-unreadable"


def test_types_that_are_no_readings():
    for name in ARGUMENTS:
        for value, kind in (("2.5::float8", "double precision"), ("2.5::real", "real")):
            texts = ", ".join(value if name == other else literal(OVER.get(other)) for other in ARGUMENTS)
            for function in FUNCTIONS + AGGREGATES + ["finding"]:
                said = refused(f"SELECT rodt_{function}({texts});")
                assert said.startswith(f"{name} is a {kind}, which is only nearly what was read"), (function, said)
    for value in ("'\\x32'::bytea", "'{2}'::text[]", "true", "'2'::json", "row(2)", "now()", "'(1,2)'::point"):
        assert "released is a " in refused(f"SELECT rodt_verdict('30', {value}, '4');"), value
        assert "released is a " in refused(f"SELECT rodt_outcome('30', {value}, '4');"), value


def test_wrong_calls():
    for function in FUNCTIONS + AGGREGATES + ["finding"]:
        for count in (0, 1, 2):
            said = refused(f"SELECT rodt_{function}({', '.join(['1'] * count)});")
            assert f"function rodt_{function}(" in said and "does not exist" in said, said
        said = refused(f"SELECT rodt_{function}({', '.join(['1'] * 16)});")
        assert "does not exist" in said or "there are 16 arguments, 15 are the most" in said, said
        for rules in ("", "us", 7, "'; --", "é" * 5000):
            said = refused(f"SELECT rodt_{function}({listed({**OVER, 'rules': rules})});")
            assert said.startswith("there is no rule set") and len(said) < 300, said
    for array in ("ARRAY['95']", "'{}'::text[]", "NULL::text[]"):
        assert "an array cannot take the place" in refused(f"SELECT rodt_outcome('30', '2', '4', VARIADIC {array});")
    for part in ("rodt_tally_add(NULL::internal, '30', '2', '4')", "rodt_tally_outcome('x')",
                 "rodt_tally_receive('x', NULL)", "rodt_tally_combine(NULL, NULL)"):
        assert refused(f"SELECT {part};"), part
    assert one("1 + 1") == 2


def test_texts():
    for text, exact in (("2 1/8", "17/8"), ("54 mm", "270/127"), ("2", "2"), ("31/8", None), ("2-Jan", None),
                        (None, None), ("", None), ("x" * 5000, None)):
        assert one(f"rodt_length({literal(text)})") == exact, text
    assert one("rodt_length('54', 'mm')") == "270/127" and one("rodt_length('54', 'miles')") is None
    assert one("rodt_length('54', NULL)") is None
    assert one("rodt_length_format('-1/16')") == "-1/16" and one("rodt_length_format('41/16')") == "2 9/16"
    for text, day in (("13-OCT-21", "2021-10-13"), ("10/14/2021", "2021-10-14"), ("1/2/2024", None), ("", None),
                      (None, None)):
        assert one(f"rodt_date({literal(text)})") == day, text
    assert re.fullmatch(r"\d{4}-\d\d-\d\d", one("rodt_tables_edition()"))


def test_exact_numbers():
    numbers = ["10", "9/1", "-1/16", "0", "1/3", "5/16", "-5/2", "2/4"]
    values = ", ".join(f"({literal(text)}::rodt_exact)" for text in numbers)
    found = [row["t"] for row in rows(f"SELECT t FROM (VALUES {values}) AS v(t) ORDER BY t")]
    assert [Fraction(text) for text in found] == sorted(map(Fraction, numbers)), found
    found = rows(f"SELECT min(t), max(t), count(DISTINCT t) FROM (VALUES {values}, ('1/2')) AS v(t)")[0]
    assert (found["min"], found["max"], found["count"]) == ("-5/2", "10", 8), found
    found = rows(f"SELECT count(*) FROM (VALUES {values}) AS a(t) JOIN (VALUES {values}) AS b(t) ON a.t = b.t")
    assert found[0]["count"] == len(numbers)
    for sign, truth in (("<", True), ("<=", True), ("=", False), ("<>", True), (">=", False), (">", False)):
        assert one(f"'1/3'::rodt_exact {sign} '5/14'") is truth, sign
    assert one("(rodt_exact '-1/16')::numeric") == -0.0625
    for text in ("", "x", "1/", "1/0", "/2", "1 3/4", "1" * 19, "1/2x", "-", "0.5", "1" * 100000):
        said = refused(f"SELECT {literal(text)}::rodt_exact;")
        assert "is no exact number" in said and len(said) < 300, said
    # Binary in and out is the same number, and no other bytes are one.
    run("CREATE TABLE exact_numbers(t rodt_exact); INSERT INTO exact_numbers VALUES ('-1/16'), (NULL), ('7');"
        f"COPY exact_numbers TO '{WHERE}/data/exact.bin' (FORMAT binary);"
        f"COPY exact_numbers FROM '{WHERE}/data/exact.bin' (FORMAT binary);")
    assert one("string_agg(t::text, ' ' ORDER BY t) FROM exact_numbers") == "-1/16 -1/16 7 7"
    with open(os.path.join(WHERE, "data/exact.bin"), "r+b") as file:
        sent = file.read()
        at = sent.index((16).to_bytes(8, "big"))
        file.seek(at)
        file.write(bytes(8))
    assert "this is no exact number" in refused(f"COPY exact_numbers FROM '{WHERE}/data/exact.bin' (FORMAT binary);")


def test_domain():
    assert rows("SELECT '2 1/8'::rodt_reading AS t")[0]["t"] == "2 1/8"
    assert one("NULL::rodt_reading") is None
    for text in ("31/8", "2-Jan", "", "x", "2 1/8; --", "9" * 5000):
        assert "violates check constraint \"rodt_reading_is_a_length\"" in refused(
            f"SELECT {literal(text)}::rodt_reading;"), text
    run("CREATE TABLE typed(chamber text, released rodt_reading, applied rodt_reading);"
        "INSERT INTO typed VALUES ('30', '2', '4 1/8');")
    assert one("rodt_verdict(chamber, released, applied) FROM typed") == "out-of-adjustment"


def test_schema():
    """A generated column, a constraint and an index."""
    run("""CREATE TABLE ends(chamber text, released text, applied text, psi integer, day date,
            verdict text GENERATED ALWAYS AS (rodt_verdict(chamber, released, applied, psi, day)) STORED,
            CHECK (rodt_date('2024-05-06') IS NOT NULL));
        CREATE INDEX margins ON ends(rodt_margin(chamber, released, applied, psi));
        INSERT INTO ends VALUES ('30L', '2 3/4', '5 5/16', 95), ('30L', '2 3/4', '5', 95), (NULL, 'x', '5', 95);""")
    assert [row["verdict"] for row in rows("SELECT verdict FROM ends")] == ["out-of-adjustment", "in-adjustment",
                                                                            "undetermined"]
    over = "FROM ends WHERE rodt_margin(chamber, released, applied, psi) < '0'"
    assert rows(f"SELECT applied {over}") == [{"applied": "5 5/16"}]
    assert "Index Scan using margins" in run(f"SET enable_seqscan = off; SET enable_bitmapscan = off; "
                                             f"EXPLAIN SELECT applied {over};")


def test_tables():
    with open(os.path.join(ROOT, "tables/limits.csv"), encoding="utf-8", newline="") as file:
        lines = (line for line in file if not line.startswith("#"))
        wanted = [row for row in csv.DictReader(lines) if row["rules"] == "us-fmcsr"]
    found = rows("SELECT * FROM rodt_limits WHERE rules = 'us-fmcsr'")
    assert len(found) == len(wanted) > 20
    for row, typed in zip(found, wanted):
        assert (row["family"], row["size"], row["stroke_class"]) == (typed["family"], typed["size"], typed["class"])
        assert Fraction(row["stroke_limit"]) == sum(map(Fraction, typed["limit"].split())), row
        assert row["source"] and row["from_day"] == (typed["from"] or None), row
        assert row["until_day"] == (typed["until"] or None) and row["evidence"] == typed["evidence"], row


def test_drivers():
    """Parameters without a type, as drivers send them, are texts; a plan that is kept gives the same."""
    found = run("PREPARE asked AS SELECT rodt_verdict($1, $2, $3, $4); SET plan_cache_mode = force_generic_plan;"
                "EXECUTE asked('30L', '2 3/4', '5 5/16', '95'); EXECUTE asked('30L', '2 3/4', '5', NULL);",
                "postgres", "-A", "-t")
    assert found.split() == ["out-of-adjustment", "in-adjustment"], found


def test_encodings():
    """A database in another encoding reads and says the same."""
    for encoding in ("LATIN1", "SQL_ASCII", "WIN1252"):
        run(f"CREATE DATABASE other ENCODING '{encoding}' LOCALE 'C' TEMPLATE template0;")
        run("SET client_encoding = 'UTF8'; CREATE EXTENSION rodtravel;", "other")
        half = "chr(189)" if encoding != "SQL_ASCII" else "'½'"
        assert one(f"rodt_stroke('30', '1' || {half}, '3')", "other") == "3/2", encoding
        assert one("rodt_verdict('30', E'1\\xe9', '3')", "other") == "undetermined", encoding
        run("DROP DATABASE other;")


PARALLEL = "SET max_parallel_workers_per_gather = 2; SET parallel_setup_cost = 0; SET parallel_tuple_cost = 0; " \
           "SET min_parallel_table_scan_size = 0; "


def test_parallel():
    """Workers judge and count, and the result is that of one process."""
    run("CREATE TABLE fleet_rows AS SELECT (n % 7)::text AS unit, "
        "CASE n % 5 WHEN 0 THEN '30' ELSE '24L' END AS chamber, '2' AS released, "
        "(3 + n % 29 / 16.0)::text AS applied FROM generate_series(1, 20000) AS n;"
        "ANALYZE fleet_rows;")
    counted = ", ".join(f"rodt_{name}(chamber, released, applied, '95')" for name in AGGREGATES)
    over = "SELECT count(*) FROM fleet_rows WHERE rodt_margin(chamber, released, applied, 95) < '0'"
    for query in (over, f"SELECT {counted} FROM fleet_rows",
                  f"SELECT unit, {counted} FROM fleet_rows GROUP BY unit ORDER BY unit"):
        plan = run(PARALLEL + f"EXPLAIN (ANALYZE, COSTS OFF, TIMING OFF) {query};")
        assert "Workers Launched: 2" in plan and "Parallel Seq Scan" in plan, plan
        assert query == over or "Partial" in plan and "Finalize" in plan, plan
        alone = run(f"SET max_parallel_workers_per_gather = 0; {query};")
        assert alone == run(PARALLEL + f"{query};") and len(alone.splitlines()) > 3, alone
    assert one("rodt_count(chamber, released, applied) FROM fleet_rows WHERE false") == run(
        PARALLEL + "SELECT rodt_count(chamber, released, applied) FROM fleet_rows WHERE unit = 'x';", "postgres", "-A",
        "-t").rstrip("\n")


def test_volatility():
    """The planner may fold and share every call; what takes NULL as a value is not STRICT."""
    found = rows("SELECT proname, provolatile, proisstrict, proparallel FROM pg_proc p "
                 "JOIN pg_depend d ON d.objid = p.oid AND d.classid = 'pg_proc'::regclass "
                 "JOIN pg_extension e ON e.oid = d.refobjid AND d.deptype = 'e' "
                 "WHERE extname = 'rodtravel' AND prokind = 'f'")
    assert len(found) > 40
    for row in found:
        name = row["proname"][len("rodt_"):]
        assert row["proparallel"] == "s", row
        assert row["provolatile"] == ("s" if name in ("limits", "tables_edition") else "i"), row
        assert row["proisstrict"] == (name.startswith("exact") or name in (
            "numeric", "length", "length_format", "date", "tally_send", "tally_receive")), row
    assert run("EXPLAIN (VERBOSE, COSTS OFF) SELECT rodt_verdict('30', '2', '4');", "postgres", "-A", "-t") == \
        "Result\n  Output: 'in-adjustment'::text\n"


# Every object, and what makes it what it is.
CATALOGUE = """
    SELECT pg_describe_object(d.classid, d.objid, 0) AS what,
           coalesce(pg_get_functiondef(CASE WHEN p.prokind = 'f' THEN p.oid END), '') || coalesce(a::text, '') AS body
    FROM pg_depend d JOIN pg_extension e ON e.oid = d.refobjid AND d.deptype = 'e' AND extname = 'rodtravel'
    LEFT JOIN pg_proc p ON d.classid = 'pg_proc'::regclass AND p.oid = d.objid
    LEFT JOIN (SELECT aggfnoid::oid AS called, aggtransfn::text, aggfinalfn::text, aggcombinefn::text,
               aggserialfn::text, aggdeserialfn::text, aggtransspace FROM pg_aggregate) AS a ON a.called = p.oid
    UNION ALL SELECT attrelid::regclass::text || '.' || attname,
           format_type(atttypid, atttypmod) || coalesce(relacl::text, '')
    FROM pg_attribute JOIN pg_class ON pg_class.oid = attrelid WHERE relname LIKE 'rodt%'
    UNION ALL SELECT conname, pg_get_constraintdef(oid) FROM pg_constraint WHERE conname LIKE 'rodt%'
    UNION ALL SELECT description, objsubid::text FROM pg_description WHERE description LIKE '%tape%'
    ORDER BY 1, 2"""


def catalogue(database):
    found = rows(CATALOGUE, database)
    for row in found: # the numbers of objects differ
        row["body"] = re.sub(r"^\(\d+,", "(", row["body"])
    return found


def test_upgrade():
    """A database that was upgraded has what a new one has, and keeps its data."""
    run("CREATE DATABASE fresh; CREATE DATABASE upgraded;")
    run("CREATE EXTENSION rodtravel;", "fresh")
    run("CREATE EXTENSION rodtravel VERSION '0.1'; CREATE TABLE kept(margin rodt_exact);"
        "INSERT INTO kept SELECT rodt_margin('30L', '2 3/4', '5 5/16');", "upgraded")
    assert "does not exist" in refused("SELECT rodt_outcome('30', '2', '4');", "upgraded")
    assert catalogue("upgraded") != catalogue("fresh")
    run("ALTER EXTENSION rodtravel UPDATE;", "upgraded")
    fresh, upgraded = catalogue("fresh"), catalogue("upgraded")
    assert len(fresh) > 100 and upgraded == fresh, (len(fresh), [row for row in fresh + upgraded
                                                                if (row in fresh) != (row in upgraded)])
    assert one("margin FROM kept", "upgraded") == "-1/16"
    assert one("extversion FROM pg_extension WHERE extname = 'rodtravel'", "upgraded") == one(
        "default_version FROM pg_available_extensions WHERE name = 'rodtravel'")
    run("CREATE SCHEMA elsewhere; ALTER EXTENSION rodtravel SET SCHEMA elsewhere;", "upgraded")
    assert one("elsewhere.rodt_verdict('30', '2', '4')", "upgraded") == "in-adjustment"
    assert rows("SELECT count(*) FROM elsewhere.rodt_limits", "upgraded")[0]["count"] > 20
    run("DROP TABLE kept; DROP EXTENSION rodtravel;", "upgraded")
    run("DROP DATABASE fresh; DROP DATABASE upgraded;")


def test_ordinary_user():
    """Who owns a database may create the extension; who may only read may call it."""
    run("CREATE ROLE owner LOGIN; CREATE ROLE reader LOGIN; CREATE DATABASE owned OWNER owner;")
    run("CREATE EXTENSION rodtravel;", "owned", "-U", "owner")
    found = run("SELECT rodt_verdict('30', '2', '4'), count(*) > 20 FROM rodt_limits;", "owned", "-U", "reader", "-A",
                "-t")
    assert found == "in-adjustment|t\n", found
    run("DROP DATABASE owned; DROP ROLE owner; DROP ROLE reader;")


def test_vehicles():
    """As `rodtravel batch --by` counts them."""
    read = "chamber, released, applied, psi, date, stroke_class, NULL, rated_stroke, NULL, NULL, division"
    run("CREATE DATABASE vehicles;")
    run(f"CREATE EXTENSION rodtravel; CREATE TABLE fleet({', '.join(name + ' text' for name in FLEET)});\n"
        f"\\copy fleet FROM '{ROOT}/examples/data/fleet.csv' CSV HEADER\n"
        "DELETE FROM fleet WHERE unit_no = 'unit_no' OR position IS NULL;", "vehicles")
    found = rows(f"SELECT unit_no, coalesce(rodt_date(date)::text, '') AS day, count(*), rodt_outcome({read}), "
                 f"rodt_length_format(rodt_defective({read})) FROM fleet GROUP BY unit_no, rodt_date(date)", "vehicles")
    run("DROP DATABASE vehicles;")
    if os.environ["COMMAND"]:
        ran = subprocess.run([os.environ["COMMAND"], "batch", "--by", "unit_no", f"{ROOT}/examples/data/fleet.csv"],
                             stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, encoding="utf-8", timeout=60,
                             check=False)
        wanted = [[line["unit_no"], line["date"], int(line["brakes"]), line["verdict"], line["defective"]]
                  for line in csv.DictReader(ran.stdout.splitlines())]
        assert len(wanted) > 10 and sorted(list(row.values()) for row in found) == sorted(wanted), found


def in_new_database(function):
    """A client that starts at the top of the tree, as the documents say."""
    run("CREATE DATABASE documents;")
    try:
        return function(["psql", "-X", "-q", "-h", WHERE, "-U", "postgres", "-d", "documents"])
    finally:
        run("DROP DATABASE documents;")


def test_readme():
    """Each statement says what the comments below it say."""
    with open(os.path.join(ROOT, "bindings/postgresql/README.md"), encoding="utf-8") as file:
        text = "".join(re.findall(r"```sql\n(.*?)```", file.read(), re.DOTALL))
    script = "\n".join(line for line in text.splitlines() if not line.startswith("-- "))
    ran = in_new_database(lambda psql: subprocess.run(
        psql + ["-A", "-t"], input=script, stdout=subprocess.PIPE, stderr=subprocess.PIPE, encoding="utf-8", timeout=60,
        check=False, cwd=ROOT))
    wanted = [line[3:] for line in text.splitlines() if line.startswith("-- ")]
    assert len(wanted) > 6 and ran.stdout.splitlines() == wanted, ran.stdout + ran.stderr


def test_example():
    undated = ("INSERT INTO fleet(unit_no, date) VALUES ('B-7', '1/2/2024');"
               "SELECT string_agg(outcome, ',') FROM inspections WHERE unit_no = 'B-7';")
    ran = in_new_database(lambda psql: subprocess.run(
        psql + ["-A", "-f", "examples/sql/fleet_postgresql.sql", "-c", undated], stdout=subprocess.PIPE,
        stderr=subprocess.PIPE, encoding="utf-8", timeout=60, check=True, cwd=ROOT))
    for line in ("D-4|2024-06-11|out-of-service|2 of 5 brakes defective, 40 %: 20 % is reached",
                 "D-4|2024-06-11|3L|3030|out-of-adjustment|-1/127|over-limit assumed-standard",
                 "B-7|2024-06-10|below-criterion", "\nundetermined,undetermined"):
        assert line in ran.stdout, ran.stdout + ran.stderr


def test_memory():
    """A query that ends in an error after many rows gives its cache back; the rules of a row are its own."""
    resident = "SELECT split_part(pg_read_file('/proc/self/statm'), ' ', 2)::integer"
    query = ("PERFORM count(rodt_verdict('30', '2', n::text || '/16', rules => CASE n WHEN {0} THEN 'none' WHEN 7 THEN "
             "'ca-on' ELSE 'us-fmcsr' END)) FROM generate_series(1, 400) AS n;")
    script = "".join(f"DO $$ BEGIN FOR i IN 1..{count} LOOP BEGIN {query.format(300)} EXCEPTION WHEN "
                     f"invalid_parameter_value THEN NULL; END; {query.format(-1)} END LOOP; END $$; {resident};"
                     for count in (50, 300))
    before, after = map(int, run(script, "postgres", "-A", "-t").split())
    assert after - before < 500, (before, after)  # pages of 4 kB
    found = rows("SELECT (SELECT string_agg(rodt_limit('36', '2', n::text, NULL, '2021-10-13', rules => CASE n % 3 "
                 "WHEN 0 THEN 'ca-nsc' ELSE 'us-fmcsr' END)::text, ' ') FROM generate_series(1, 300) AS n) AS many, "
                 "rodt_limit('36', '2', '3', NULL, '2021-10-13', rules => 'ca-nsc') AS canada, "
                 "rodt_limit('36', '2', '3', NULL, '2021-10-13') AS states")[0]
    many = found["many"].split()
    assert many == [found["canada"] if n % 3 == 0 else found["states"] for n in range(1, 301)], found


def test_symbols():
    """The library inside is nobody else's, and GNU MP is not in it."""
    module = os.path.join(os.environ["BUILD"], "bindings/postgresql/rodtravel.so")
    said = subprocess.run(["nm", "-D", module], stdout=subprocess.PIPE, encoding="utf-8", check=True, timeout=60).stdout
    names = [line.split()[-1] for line in said.splitlines() if line.split()[-2] == "T"]
    assert names and all(re.match("Pg_magic_func$|(pg_finfo_)?rodtpg_", name) for name in names), names
    assert "gmp" not in said


def test_server_lives():
    """Nothing before this took the server, or one of its processes, down."""
    with open(os.path.join(WHERE, "data/log"), encoding="utf-8", errors="replace") as file:
        log = file.read()
    assert "terminated by signal" not in log and "PANIC" not in log, log[-2000:]
    assert shell("SELECT 1;").returncode == 0


if __name__ == "__main__":
    tap.run(globals())
