# SPDX-License-Identifier: Apache-2.0
"""A query in, answers that can be queried again. Needs DuckDB and pyarrow."""
from pathlib import Path

import duckdb

import rodtravel as rt

fleet = Path(__file__).parent.parent / "data" / "fleet.csv"
# Without empty records and repeated headings.
yard = duckdb.sql(f"select * from read_csv('{fleet}', all_varchar = true) where unit_no <> 'unit_no'")
answers = rt.judge_columns(yard)  # the query is run once
print(duckdb.sql("select verdict, count(*) as wheel_ends from answers group by verdict order by verdict"))
