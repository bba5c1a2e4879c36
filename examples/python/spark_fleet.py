# SPDX-License-Identifier: Apache-2.0
"""A fleet in Parquet, judged by a cluster of Apache Spark. Needs pyspark, pyarrow and Java 17.

    python3 spark_fleet.py IN OUT [--by unit_no] [--master local-cluster[2,1,1024]] [--rules us-fmcsr] [--psi 95]

IN is a directory of Parquet, partitioned by date or not; its columns are texts. OUT gets `verdicts`, the rows with
their answers and partitioned likewise, and `vehicles`, a row for each vehicle and day. The counts of the fleet are
printed. All workers must have the package: installed, or by PYTHONPATH.
"""
import argparse
import functools
import operator
import os
import pickle
import sys

import pyarrow as pa
import pyspark
from pyspark.sql import SparkSession
from pyspark.sql.pandas.types import from_arrow_schema

import rodtravel as rt


def with_columns(batch, table):
    """A batch with the columns of a table. Dictionaries differ from batch to batch, and become plain columns."""
    columns = [column.combine_chunks() for column in table.columns]
    columns = [column.dictionary_decode() if pa.types.is_dictionary(column.type) else column for column in columns]
    return pa.RecordBatch.from_arrays([*batch.columns, *columns], [*batch.schema.names, *table.schema.names])


def judging(judge):
    """For mapInArrow: the rows with their answers."""
    def judged(batches):
        for batch in batches:
            yield with_columns(batch, judge.frame(batch).drop_columns(["words"]))
    return judged


def sharing(judge, by):
    """For mapInArrow: the rows with the number by which they are sent to the worker that counts their vehicle."""
    def shared(batches):
        for batch in batches:
            yield with_columns(batch, pa.table({"share": pa.array(judge.shares(batch, by))}))
    return shared


def inspecting(judge, by):
    """For mapInArrow: the vehicles of a partition, which is held as a whole."""
    def inspected(batches):
        held = list(batches)
        if held:
            rows = pa.Table.from_batches(held).drop_columns(["share"])
            yield from pa.table(judge.vehicles(rows, by)).to_batches()
    return inspected


def adding(judge):
    """For mapInArrow: one Summary of a partition."""
    def added(batches):
        found = [judge(batch).summary() for batch in batches]
        if found:
            yield pa.record_batch({"summary": pa.array([pickle.dumps(functools.reduce(operator.add, found))])})
    return added


def mapped(rows, function, columns):
    """The rows through a function of batches; what it gives has these columns, a schema of pyarrow or of Spark."""
    return rows.mapInArrow(function, from_arrow_schema(columns) if isinstance(columns, pa.Schema) else columns)


def empty_table(rows):
    """A table of pyarrow with the columns of the rows, all texts."""
    return pa.Table.from_pylist([], pa.schema([(name, pa.string()) for name in rows.columns]))


def judged_rows(rows, judge):
    """The rows with their answers."""
    none = empty_table(rows)
    answers = pa.table(judge.frame(none)).drop_columns(["words"]).schema
    plain = [(field.name, getattr(field.type, "value_type", field.type)) for field in answers]
    return mapped(rows, judging(judge), pa.schema([*none.schema, *plain]))


def judge_fleet(rows, judge, target, by, day=None):
    """Writes both tables; the Summary of all rows. `day` is the column by which `verdicts` is partitioned."""
    none = empty_table(rows)
    parts = judged_rows(rows, judge)
    parts.write.partitionBy(*[day] if day in rows.columns else []).parquet(f"{target}/verdicts")
    sent = mapped(rows, sharing(judge, by), pa.schema([*none.schema, ("share", pa.int32())]))
    # Sorted, so that the same spelling of a name comes first in every run.
    sent = sent.repartition("share").sortWithinPartitions(*by)
    vehicles = pa.table(judge.vehicles(none, by)).schema
    mapped(sent, inspecting(judge, by), vehicles).write.parquet(f"{target}/vehicles")
    found = mapped(rows, adding(judge), "summary binary").collect()
    return functools.reduce(operator.add, (pickle.loads(row.summary) for row in found), judge(none).summary())


def open_session(master):
    """A session whose workers run this Python. Days in names of directories stay texts, as the rows have them."""
    os.environ.setdefault("PYSPARK_PYTHON", sys.executable)
    os.environ.setdefault("SPARK_HOME", os.path.dirname(pyspark.__file__))
    return (SparkSession.builder.appName("rodtravel").master(master).config("spark.ui.enabled", "false")
            .config("spark.executorEnv.PYTHONPATH", os.environ.get("PYTHONPATH", ""))
            .config("spark.sql.sources.partitionColumnTypeInference.enabled", "false").getOrCreate())


def main(words=None):
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("source", metavar="IN")
    parser.add_argument("target", metavar="OUT")
    parser.add_argument("--by", action="append")
    parser.add_argument("--master", default="local-cluster[2,1,1024]")
    parser.add_argument("--rules", default="us-fmcsr")
    parser.add_argument("--psi")
    given = parser.parse_args(words)
    session = open_session(given.master)
    try:
        print(judge_fleet(session.read.parquet(given.source), rt.Judge(given.rules, psi=given.psi), given.target,
                          given.by or ["unit_no"], "date"))
    finally:
        session.stop()


if __name__ == "__main__":
    main()
