"""The JSON Schema of the exported tables, so that a program can check what it reads.

``python3 -m inspector.report.data_files.json_schema`` writes it to ``static/``, where the pages
serve it.
"""

import json
from collections.abc import Sequence
from typing import Any

from inspector import places
from inspector.report.data_files.table_sheets import Sheet

DIALECT = "https://json-schema.org/draft/2020-12/schema"
FILE = "inspection-tables.schema.json"


def schema_of(found: Sequence[Sheet]) -> dict[str, Any]:
    """Return the schema of the JSON that holds these tables.

    Parameters
    ----------
    found : sequence of Sheet
        Only their names and columns count, not their rows.

    Returns
    -------
    dict
        JSON Schema, draft 2020-12.
    """
    tables = {sheet.name: {"type": "array", "items": _row_schema(sheet)} for sheet in found}
    return {
        "$schema": DIALECT,
        "title": "Tables of an inspection",
        "description": (
            "Every table is a list of rows, every row an object with the table's headings. A "
            "number that is not known is null, a text that was not recorded is empty."
        ),
        "type": "object",
        "properties": tables,
        "required": list(tables),
        "additionalProperties": False,
    }


def _row_schema(sheet: Sheet) -> dict[str, Any]:
    return {
        "type": "object",
        "properties": {head: _cell_schema(sheet, head) for head in sheet.heads},
        "required": list(sheet.heads),
        "additionalProperties": False,
    }


def _cell_schema(sheet: Sheet, head: str) -> dict[str, Any]:
    if head in sheet.numbers:
        return {"type": ["number", "null"]}
    if head in sheet.dates:
        return {"type": "string", "pattern": "^([0-9]{4}-[0-9]{2}-[0-9]{2})?$"}
    return {"type": "string"}


def schema_text() -> str:
    """Return the schema as it is kept in ``static/``."""
    from inspector.assess.model import Assessment
    from inspector.report.data_files.spreadsheets import sheets

    return json.dumps(schema_of(sheets(Assessment())), ensure_ascii=False, indent=1) + "\n"


if __name__ == "__main__":
    (places.shipped("static") / FILE).write_text(schema_text(), encoding="utf-8")
