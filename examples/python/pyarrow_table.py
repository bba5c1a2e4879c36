# SPDX-License-Identifier: Apache-2.0
"""A pyarrow table in, a pyarrow table out. Needs pyarrow."""
import pyarrow as pa

import rodtravel as rt

table = pa.table({"chamber": pa.array(["30", "24 long", "30"]).dictionary_encode(),
                  "released": ["2 1/8", "2", "54 mm"], "applied": ["4 1/8", "4 1/16", "2-Jan"]})
answers = pa.table(rt.judge_columns(table))
print(answers["verdict"].to_pylist())
