# SPDX-License-Identifier: Apache-2.0
"""The bill of materials names every published document that a table cites, and no other: with its title, its part, the
day it was read, and how many figures of which table rest on it, checked or not.

Arguments: root, the bill."""
import collections
import csv
import json

import tree
from tree import Finding

TABLES = "tables/"
SOURCES = TABLES + "sources.csv"


def rows(root, path):
    lines = tree.read(root, path).splitlines()
    numbers = [i for i, line in enumerate(lines, 1) if line and not line.startswith("#")]
    yield from zip(numbers[1:], csv.DictReader(lines[i - 1] for i in numbers))


def cited(root):
    """{id of a source: Counter of (table, evidence)}; a column of sources has one of evidence beside it, or none."""
    found = collections.defaultdict(collections.Counter)
    for path in tree.files(root, TABLES, ".csv"):
        for _, row in rows(root, path):
            for column, source in row.items():
                if path != SOURCES and column.endswith("source") and source:
                    evidence = row.get(column.removesuffix("source") + "evidence") or "checked"
                    found[source][path.removeprefix(TABLES), evidence] += 1
    return found


def documents(bill):
    """{id of a source: its entry} of the bill."""
    return {part["bom-ref"].removeprefix("source "): part for part in bill["components"]
            if part["bom-ref"].startswith("source ")}


def expected(row, figures):
    entry = {"type": "data", "bom-ref": f"source {row['id']}", "name": row["document"], "version": row["edition"],
             "publisher": row["body"]}
    if row["address"]:
        entry["externalReferences"] = [{"type": "documentation", "url": row["address"]}]
    facts = [("section", row["section"])] + [("read_on", row["read_on"])] * bool(row["read_on"])
    facts += [("figures", f"{table}, {count} {evidence}") for (table, evidence), count in figures.items()]
    entry["properties"] = sorted(({"name": f"rodtravel:{name}", "value": value} for name, value in facts), key=str)
    return entry


def references(bill, figures):
    """What the bill's references lead to: no name twice, and each table to the sources that it cites."""
    names = [part["bom-ref"] for part in bill["components"]]
    yield from (f"{name} is there twice" for name in {name for name in names if names.count(name) > 1})
    for entry in bill["dependencies"]:
        yield from (f"{entry['ref']} rests on {ref}, which is not there" for ref in set(entry["dependsOn"]) - set(names))
        if entry["ref"].startswith("table "):
            table = entry["ref"].removeprefix("table ")
            cites = {f"source {name}" for name, rows_of in figures.items() if any(where == table for where, _ in rows_of)}
            yield from (f"{table} and {ref}: only one of table and bill has it" for ref in cites ^ set(entry["dependsOn"]))


def check(root, path):
    with open(path, encoding="utf-8") as file:
        bill = json.load(file)
    figures, there = cited(root), documents(bill)
    sources = {row["id"]: (line, row) for line, row in rows(root, SOURCES)}
    findings = [Finding(path, 0, f"{name} is in no table") for name in sorted(there.keys() - sources.keys())]
    for name, (line, row) in sources.items():
        entry = there.get(name, {})
        entry.get("properties", []).sort(key=str)
        if entry != expected(row, figures[name]):
            findings.append(Finding(SOURCES, line, f"{name} is not in the bill as it is here: {entry}"))
    return findings + [Finding(path, 0, text) for text in references(bill, figures)]


if __name__ == "__main__":
    tree.main(check)
