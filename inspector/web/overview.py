"""The list of inspections as rows: title, condition, coverage and verdicts of each. Used by the home page and the list command."""

from typing import Any

from inspector.errors import InspectorError
from inspector.web.desk import Desk, title_of


def rows(desk: Desk) -> list[dict[str, Any]]:
    """One row per inspection, newest first; one that cannot be read says why instead of hiding the others."""
    return [_row(desk, inspection_id) for inspection_id in reversed(desk.inspections.ids())]


def _row(desk: Desk, inspection_id: str) -> dict[str, Any]:
    try:
        inspection = desk.inspections.get(inspection_id)
        assessment = desk.assessment_of(inspection)
    except (InspectorError, OSError) as problem:
        return {"id": inspection_id, "title": inspection_id, "wrong": str(problem), "systems": []}
    state = inspection.state
    systems = [
        {"name": part.system.name, "verdict": part.whole.verdict, "condition": part.whole.condition.points, "low": part.whole.condition.low,
         "high": part.whole.condition.high, "coverage": part.whole.condition.coverage}
        for part in assessment.systems
    ]
    seen = sum(part.whole.condition.seen for part in assessment.systems)
    checks = sum(part.whole.condition.applicable for part in assessment.systems)
    return {
        "id": inspection_id, "title": title_of(inspection),
        "date": state.value("inspection", "date", ""), "seen": seen, "checks": checks, "findings": len(assessment.findings),
        "damage": [str(one) for one in inspection.damage], "systems": systems, "wrong": "",
    }
