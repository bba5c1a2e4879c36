# SPDX-License-Identifier: Apache-2.0
"""Prints "passed failed" for one run of `meson test`, each case of a test program counted by itself.

Argument: how the paths of the run's logs begin."""
import glob
import json
import sys
import xml.etree.ElementTree as xml


def cases(path):
    for case in xml.parse(path).iter("testcase"):
        if case.find("skipped") is None:
            yield case.find("failure") is None and case.find("error") is None


def programs(path):
    """False for every program that failed, also one that broke down between two cases."""
    with open(path, encoding="utf-8") as file:
        return [json.loads(line)["result"] in ("OK", "EXPECTEDFAIL", "SKIP") for line in file]


def main(logs):
    each = [ok for path in glob.glob(logs + "*.junit.xml") for ok in cases(path)]
    whole = [ok for path in glob.glob(logs + "*.json") for ok in programs(path)]
    failed = max(each.count(False), whole.count(False))
    print(each.count(True), failed)


if __name__ == "__main__":
    main(sys.argv[1])
