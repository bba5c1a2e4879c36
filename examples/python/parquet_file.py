# SPDX-License-Identifier: Apache-2.0
"""A Parquet or Arrow file in, the same rows with their answers out. Needs pyarrow.

    python3 parquet_file.py IN OUT [--rules us-fmcsr] [--psi 95] [--unit in] [--division 1/16]

The endings of the names say what the files are: .parquet; .arrow or .feather, an Arrow file; .arrows, an Arrow stream.
One batch of rows is in memory at a time. OUT is there when all of it is written, and not before.
"""
import argparse
import collections
import contextlib
import os
import sys
from pathlib import Path

import pyarrow as pa
import pyarrow.parquet as pq

import rodtravel as rt

ROWS = 16384
READERS = {".parquet": pq.ParquetFile, ".arrow": pa.ipc.open_file, ".feather": pa.ipc.open_file, ".arrows": pa.ipc.open_stream}
WRITERS = {".parquet": pq.ParquetWriter, ".arrow": pa.ipc.new_file, ".feather": pa.ipc.new_file, ".arrows": pa.ipc.new_stream}


def kind_of(path, kinds):
    """What is in `kinds` for the ending of a name."""
    try:
        return kinds[Path(path).suffix.lower()]
    except KeyError:
        raise ValueError(f"{path}: a name ends in {', '.join(kinds)}") from None


def batches_of(file):
    """The batches of an open file."""
    if isinstance(file, pq.ParquetFile):
        return file.iter_batches(ROWS)
    if isinstance(file, pa.ipc.RecordBatchFileReader):
        return map(file.get_batch, range(file.num_record_batches))
    return file


@contextlib.contextmanager
def naming(path):
    """Damaged files are told with their names."""
    try:
        yield
    except (pa.ArrowException, OSError) as error:
        if getattr(error, "filename", None):
            raise
        raise ValueError(f"{path} is not a whole {Path(path).suffix[1:]} file: {error}") from None


def rows_of(path, file):
    """The rows, at most ROWS at a time."""
    with naming(path):
        for batch in batches_of(file):
            yield from (batch.slice(start, ROWS) for start in range(0, len(batch), ROWS))


@contextlib.contextmanager
def reading(path):
    """The columns of a file, and its rows."""
    opened = kind_of(path, READERS)
    with contextlib.ExitStack() as stack:
        with naming(path):
            file = stack.enter_context(opened(stack.enter_context(open(path, "rb"))))
        yield file.schema_arrow if isinstance(file, pq.ParquetFile) else file.schema, rows_of(path, file)


@contextlib.contextmanager
def writing(path, schema):
    """A writer into a file that takes its name at the end."""
    part = f"{path}.{os.getpid()}.part"
    try:
        with open(part, "wb") as bytes_out, kind_of(path, WRITERS)(bytes_out, schema) as writer:
            yield writer
        os.replace(part, path)
    finally:
        with contextlib.suppress(FileNotFoundError):
            os.unlink(part)


def judged(judge, batch):
    """The rows with their answers. Dictionaries differ from batch to batch, and become plain columns."""
    answers = judge.frame(batch).drop_columns(["words"])
    twice = set(batch.schema.names) & set(answers.schema.names)
    if twice:
        raise ValueError(f"there is a column {min(twice)!r} already: was this file judged before?")
    columns = {**dict(zip(batch.schema.names, batch.columns)), **dict(zip(answers.schema.names, answers.columns))}
    return pa.table({name: column.cast(column.type.value_type) if pa.types.is_dictionary(column.type) else column
                     for name, column in columns.items()})


def judge_file(judge, source, target):
    """Judges a file; the number of rows by verdict."""
    counts = collections.Counter()
    kind_of(target, WRITERS)
    with reading(source) as (schema, batches), writing(target, judged(judge, schema.empty_table()).schema) as writer:
        for batch in batches:
            table = judged(judge, batch)
            writer.write_table(table)
            counts.update(table["verdict"].to_pylist())
    return counts


def main(words):
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter,
                                     argument_default=argparse.SUPPRESS)
    parser.add_argument("source", metavar="IN")
    parser.add_argument("target", metavar="OUT")
    for option in ("--rules", "--psi", "--unit", "--division"):
        parser.add_argument(option)
    given = vars(parser.parse_args(words))
    source, target = given.pop("source"), given.pop("target")
    try:
        counts = judge_file(rt.Judge(**given), source, target)
    except (OSError, TypeError, ValueError) as error:
        sys.exit(f"parquet_file: {error}")
    for verdict in rt.Verdict:
        print(f"{verdict:20}{counts[verdict.value]:9}")


if __name__ == "__main__":
    main(sys.argv[1:])
