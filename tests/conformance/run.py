# SPDX-License-Identifier: Apache-2.0
"""Judges a judge: asks an executable every question of a file of vectors, and compares its answers.

    run.py [--vectors FILE] EXECUTABLE [ARGUMENT...]

The executable reads a question a line from standard input and writes an answer a line to standard output, in their
order, both JSON (README.md). FILE is small.jsonl beside this file if none is named; generate.py makes a large one. The
first differences are named, then the number of answers that are right, then the digest of all answers: equal digests
mean equal answers. Exit status: 0 = every answer is right; 1 = not; 2 = the executable cannot be asked."""
import argparse
import hashlib
import json
import pathlib
import subprocess
import sys
import threading

HERE = pathlib.Path(__file__).resolve().parent
ABSENT, ANY = "(absent)", "(any)"
SHOWN = 5  # differences


def canonical(value):
    return json.dumps(value, ensure_ascii=False, sort_keys=True, separators=(",", ":"))


def digest(lines):
    """SHA-256 of lines, each closed by a line feed."""
    whole = hashlib.sha256()
    for line in lines:
        whole.update(line.encode() + b"\n")
    return whole.hexdigest()


def request(name, question):
    return {"id": name, **question}


def asked(vector):
    return canonical(request(vector["id"], vector["question"]))


def expected(vector):
    return canonical({"id": vector["id"], **vector["answer"]})


def alike(found, wanted):
    """True if they are the same, but for what may be anything."""
    if isinstance(found, dict) and isinstance(wanted, dict):
        return found.keys() == wanted.keys() and all(alike(found[name], wanted[name]) for name in found)
    return wanted == ANY or found == wanted


def read_answer(line):
    try:
        answer = json.loads(line)
    except ValueError:
        return {"line": line}
    return answer if isinstance(answer, dict) else {"line": line}


def write(stream, requests):
    try:
        with stream:
            stream.writelines(json.dumps(one, ensure_ascii=False) + "\n" for one in requests)
    except BrokenPipeError:
        pass  # it ended early: its answers are missing


def ask(command, requests, **where):
    """One answer for each request, {} where none came; and what else was wrong. `where` is Popen's: env, cwd."""
    process = subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, encoding="utf-8", errors="replace",
                               **where)
    writer = threading.Thread(target=write, args=(process.stdin, requests))
    writer.start()
    answers = [read_answer(line) for line in process.stdout]
    writer.join()
    faults = [f"{command[0]} ended with status {process.returncode}"] if process.wait() != 0 else []
    if len(answers) != len(requests):
        faults.append(f"{len(answers)} answers to {len(requests)} questions")
    return answers[:len(requests)] + [{}] * (len(requests) - len(answers)), faults


def difference(vector, answer):
    """The members that differ, in one line."""
    wanted = {"id": vector["id"], **vector["answer"]}
    names = [name for name in sorted({*wanted, *answer}) if wanted.get(name, ABSENT) != answer.get(name, ABSENT)]
    said = "; ".join(f"{name}: {answer.get(name, ABSENT)!r}, right is {wanted.get(name, ABSENT)!r}" for name in names)
    return f"{vector['id']} {vector['question']}: {said}"


def published(questions):
    """The digest of the answers to these questions that digests.txt holds, or none."""
    for line in (HERE / "digests.txt").read_text(encoding="utf-8").splitlines():
        if not line.startswith("#") and line.split()[2] == questions:
            return line.split()[3]
    return None


def opinion(command, vectors, **where):
    """How many answers are right, the digest of all of them, the published digest or None, and what is wrong, a line each."""
    answers, faults = ask(command, [request(vector["id"], vector["question"]) for vector in vectors], **where)
    wrong = [difference(vector, answer) for vector, answer in zip(vectors, answers)
             if answer != {"id": vector["id"], **vector["answer"]}]
    more = [f"... and {len(wrong) - SHOWN} more"] if len(wrong) > SHOWN else []
    return (len(vectors) - len(wrong), digest(map(canonical, answers)), published(digest(map(asked, vectors))),
            faults + wrong[:SHOWN] + more)


def judge(command, vectors):
    """The lines to print; whether something is wrong is in judge.failed then."""
    right, found, wanted, faults = opinion(command, vectors)
    yield from faults
    yield f"{right} of {len(vectors)} answers are right"
    same = {None: "of questions that are not published", found: "as published"}.get(wanted, f"published is {wanted}")
    yield f"digest {found}, {same}"
    judge.failed = bool(faults) or wanted not in (None, found)


def main(arguments):
    parser = argparse.ArgumentParser(description="Asks a judge the questions of the conformance kit.")
    parser.add_argument("--vectors", default=str(HERE / "small.jsonl"), help="a file of vectors (small.jsonl)")
    parser.add_argument("command", nargs=argparse.REMAINDER, metavar="EXECUTABLE [ARGUMENT...]")
    options = parser.parse_args(arguments)
    if not options.command:
        parser.error("which executable?")
    with open(options.vectors, encoding="utf-8") as file:
        vectors = [json.loads(line) for line in file]
    try:
        for line in judge(options.command, vectors):
            print(line)
    except OSError as error:
        parser.error(str(error))
    return 1 if judge.failed or not vectors else 0


if __name__ == "__main__":
    sys.stdout.reconfigure(encoding="utf-8", newline="\n")
    sys.exit(main(sys.argv[1:]))
