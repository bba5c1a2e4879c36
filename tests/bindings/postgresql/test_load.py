# SPDX-License-Identifier: Apache-2.0
"""Eight clients judge and write for so many seconds, while clients are killed and server processes are terminated: no
answer is wrong, and what was committed is there, whole.

    test_load.py SECONDS"""
import os
import random
import re
import signal
import subprocess
import sys
import tempfile
import time

import tap
from cluster import PSQL, WHERE, one, run

SECONDS = float(sys.argv[1])
CLIENTS = 8
ENDS = 5000

run(f"""CREATE EXTENSION rodtravel;
    CREATE TABLE ends AS SELECT n, (ARRAY['30', '24L', 'clamp 36', 'nonsense', NULL])[1 + n % 5] AS chamber,
        (1 + n % 17 / 16.0)::text AS released, (2 + n % 53 / 16.0)::text AS applied,
        CASE n % 3 WHEN 0 THEN '95' WHEN 1 THEN '2-Jan' END AS psi FROM generate_series(1, {ENDS}) AS n;
    CREATE UNIQUE INDEX ON ends(n);
    CREATE TABLE wanted AS SELECT n, rodt_verdict(chamber, released, applied, psi) AS verdict,
        rodt_margin(chamber, released, applied, psi) AS margin FROM ends;
    CREATE TABLE answers(run integer, n integer, verdict text, margin rodt_exact, outcome text);
    CREATE TABLE counts(run integer PRIMARY KEY, answers integer NOT NULL);""")

# A transaction writes an answer and counts it; an error in it is undone alone, as a bad query between good ones is.
SCRIPT = f"""\\set n random(1, {ENDS})
BEGIN;
INSERT INTO answers SELECT :run, n, rodt_verdict(chamber, released, applied, psi),
    rodt_margin(chamber, released, applied, psi),
    (SELECT rodt_outcome(e.chamber, e.released, e.applied, e.psi) FROM ends AS e WHERE e.n = ends.n)
    FROM ends WHERE n = :n;
SAVEPOINT bad;
DO $$ BEGIN PERFORM rodt_verdict('30', '2', '4', rules => 'none'); EXCEPTION WHEN OTHERS THEN NULL; END $$;
ROLLBACK TO bad;
UPDATE counts SET answers = answers + 1 WHERE run = :run;
COMMIT;
"""


class Client:
    """A pgbench with a run of its own; its script is in `path`."""
    runs = 0

    def __init__(self, path, seconds):
        Client.runs += 1
        self.run = Client.runs
        run(f"INSERT INTO counts VALUES ({self.run}, 0);")
        self.process = subprocess.Popen(
            ["pgbench", "-n", "-c", "1", "-T", str(max(1, round(seconds))), "-D", f"run={self.run}", "-f", path, "-h",
             WHERE, "-U", "postgres", "postgres"], stdout=subprocess.PIPE, stderr=subprocess.STDOUT, encoding="utf-8")

    def reported(self):
        """How many transactions it says were processed; None = it was killed, or lost its connection."""
        said = self.process.communicate()[0]
        found = re.search(r"actually processed: (\d+)", said)
        return int(found.group(1)) if found and self.process.returncode == 0 else None


def harm(clients, chance):
    """One fault."""
    if chance.random() < 0.5:
        chance.choice(clients).process.send_signal(signal.SIGKILL)
    else:
        subprocess.run([*PSQL, "-c", "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE pid <> "
                        "pg_backend_pid() AND application_name = 'pgbench' ORDER BY random() LIMIT 1"],
                       stdout=subprocess.DEVNULL, check=True, timeout=60)


def test_load():
    chance, faults, ended = random.Random(1), 0, {}
    until = time.monotonic() + SECONDS
    with tempfile.NamedTemporaryFile("w", suffix=".sql") as script:
        script.write(SCRIPT)
        script.flush()
        clients = [Client(script.name, SECONDS) for _ in range(CLIENTS)]
        while time.monotonic() < until or faults < 4:  # on a busy machine, too
            time.sleep(0.4)
            harm(clients, chance)
            faults += 1
            for place, client in enumerate(clients):
                if client.process.poll() is not None:
                    ended[client.run] = client.reported()
                    clients[place] = Client(script.name, until - time.monotonic())
        ended.update((client.run, client.reported()) for client in clients)
    time.sleep(0.5)  # a process whose client is gone ends its transaction
    written = one("count(*) FROM answers")
    assert written > CLIENTS, (written, faults, ended)
    for wrong in ("answers JOIN wanted USING (n) WHERE answers.verdict IS DISTINCT FROM wanted.verdict",
                  "answers JOIN wanted USING (n) WHERE answers.margin IS DISTINCT FROM wanted.margin",
                  "answers WHERE (verdict = 'in-adjustment') <> (outcome = 'below-criterion')",
                  "counts WHERE answers <> (SELECT count(*) FROM answers AS a WHERE a.run = counts.run)"):
        assert one(f"count(*) FROM {wrong}") == 0, wrong
    # A run that ended by itself has as many as it says.
    for number, said in ended.items():
        assert said is None or one(f"answers FROM counts WHERE run = {number}") == said, (number, said)
    print(f"# {written} answers, {faults} faults, {len(ended)} clients, "
          f"{sum(said is None for said in ended.values())} of them ended early")


def test_no_process_broke():
    with open(os.path.join(WHERE, "data/log"), encoding="utf-8", errors="replace") as file:
        log = file.read()
    assert "terminated by signal" not in log and "PANIC" not in log and "database system was interrupted" not in log


tap.run(globals())
