# SPDX-License-Identifier: Apache-2.0
# The compiled module; the functions of the package have the types.
from typing import Any

def __getattr__(name: str) -> Any: ...
