# SPDX-License-Identifier: Apache-2.0
"""A fleet in Parquet, judged on several processes or machines by Dask. Needs dask[dataframe], distributed and pyarrow.

    python3 dask_fleet.py IN OUT [--by unit_no] [--workers 2] [--scheduler tcp://HOST:8786] [--rules us-fmcsr]
                          [--psi 95]

IN is a directory of Parquet, partitioned by date or not; its columns are texts. OUT gets `verdicts`, the rows with
their answers and partitioned likewise, and `vehicles`, a row for each vehicle and day. The counts of the fleet are
printed. Without --scheduler so many workers are started on this machine. All workers must have the package, and see
IN and OUT.
"""
import argparse
import functools
import operator
from pathlib import Path

import dask
import dask.dataframe as dd
import pandas as pd
import pyarrow as pa
from dask.distributed import Client, LocalCluster

import rodtravel as rt


def judged(rows, judge):
    """The rows with their answers. Categories differ from part to part, and become plain columns."""
    answers = judge.frame(rows).drop(columns="words").astype({"verdict": "str", "reasons": "str"})
    return pd.concat([rows, answers], axis="columns")


def shared(rows, judge, by):
    """The rows with the number by which they are sent to the worker that counts their vehicle."""
    return rows.assign(share=judge.shares(rows, by))


def inspected(rows, judge, by):
    """The vehicles whose rows these are. Sorted, so that the same spelling of a name comes first in every run."""
    rows = rows.drop(columns="share").sort_values(list(by))
    return pa.table(judge.vehicles(rows, by)).to_pandas(types_mapper=pd.ArrowDtype)


def one_summary(rows, judge):
    """What is added up of each part."""
    return judge(rows).summary()


def judge_fleet(judge, source, target, by, day=None):
    """Writes both tables; the Summary of all rows. `day` is the column by which `verdicts` is partitioned."""
    # Without the type of what the directories are named by, one without a day could not be read.
    named = pa.schema([] if day is None else [(day, pa.string())])
    rows = dd.read_parquet(source, dataset={"partitioning": {"flavor": "hive", "schema": named}})
    if day in rows.columns:  # it comes as categories
        rows = rows.astype({day: "string"})
    parts = rows.map_partitions(judged, judge, meta=judged(rows._meta, judge))
    parts.to_parquet(f"{target}/verdicts", partition_on=day if day in rows.columns else None, write_index=False)
    sent = rows.map_partitions(shared, judge, by, meta=shared(rows._meta, judge, by)).shuffle("share")
    found = sent.map_partitions(inspected, judge, by, meta=inspected(sent._meta, judge, by))
    found.to_parquet(f"{target}/vehicles", write_index=False)
    found = dask.compute(*(dask.delayed(one_summary)(part, judge) for part in rows.to_delayed()))
    return functools.reduce(operator.add, found, judge(rows._meta).summary())


def main(words=None):
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("source", metavar="IN", type=Path)
    parser.add_argument("target", metavar="OUT", type=Path)
    parser.add_argument("--by", action="append")
    parser.add_argument("--workers", type=int, default=2)
    parser.add_argument("--scheduler")
    parser.add_argument("--rules", default="us-fmcsr")
    parser.add_argument("--psi")
    given = parser.parse_args(words)
    started = given.scheduler or LocalCluster(n_workers=given.workers, threads_per_worker=1, dashboard_address=None)
    judge = rt.Judge(given.rules, psi=given.psi)
    with Client(started):
        print(judge_fleet(judge, given.source, given.target, given.by or ["unit_no"], "date"))


if __name__ == "__main__":
    main()
