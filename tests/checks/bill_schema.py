# SPDX-License-Identifier: Apache-2.0
"""The bill of materials is valid by the published schema of CycloneDX: python3 bill_schema.py BILL"""
import sys

from cyclonedx.schema import SchemaVersion
from cyclonedx.validation.json import JsonStrictValidator

with open(sys.argv[1], encoding="utf-8") as file:
    error = JsonStrictValidator(SchemaVersion.V1_6).validate_str(file.read())
sys.exit(f"{sys.argv[1]}: {str(error).splitlines()[0]}" if error else 0)
