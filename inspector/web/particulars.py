"""The tables of particulars: tanks, machinery, loads, weights and what else the conversion is computed from, row by row, each value kept as typed."""

import json
import secrets
from typing import Any

from flask import Blueprint, abort, redirect, render_template, request, url_for

from inspector.conversion.contents import TABLES
from inspector.conversion.tables import Table, cells, read_rows
from inspector.record.store import Inspection
from inspector.web.desk import open_inspection, title_of
from inspector.web.forms import PlainForm
from inspector.web.who import who

pages = Blueprint("particulars", __name__)
LONGEST = 200
MOST_ROWS = 500


@pages.get("/inspection/<inspection_id>/particulars")
def particulars(inspection_id: str):
    """Every table with its rows."""
    inspection = open_inspection(inspection_id)
    read = [read_rows(table, inspection.state) for table in TABLES]
    return render_template("particulars/particulars.html", inspection=inspection, read=read, state=inspection.state, step="prepare", title=title_of(inspection),
                           form=PlainForm(), opened=request.args.get("opened"))


@pages.route("/inspection/<inspection_id>/particulars/<table_id>/<row_id>", methods=["GET", "POST"])
def row(inspection_id: str, table_id: str, row_id: str):
    """One row: filled in, kept as typed; a fault is told and nothing typed is lost. "new" begins one."""
    inspection, table = open_inspection(inspection_id), _table(table_id)
    known = row_id == "new" or (table.single and row_id == "one") or bool(inspection.state.fields(table.prefix + row_id))
    if not known or (table.single and row_id == "new"):
        abort(404)
    form = PlainForm()
    if form.validate_on_submit():
        typed = _typed(table)
        faults = cells(table, typed)[1] or _too_many(inspection, table, row_id)
        if not faults:
            subject = table.prefix + (secrets.token_hex(4) if row_id == "new" else row_id)
            inspection.say(who(), [(subject, name, value or None) for name, value in typed.items()], seen=lambda _, field: form.heads_seen(field))
            return redirect(_list_of(inspection, table))
        return _row_page(inspection, table, row_id, form, typed, faults), 400
    subject = table.prefix + row_id
    form.seen.data = json.dumps({one.name: [entry.id for entry in inspection.state.heads(subject, one.name)] for one in table.columns})
    return _row_page(inspection, table, row_id, form, inspection.state.values(subject), [])


@pages.post("/inspection/<inspection_id>/particulars/<table_id>/<row_id>/gone")
def take_out(inspection_id: str, table_id: str, row_id: str):
    """Take a row out; its entries stay in the journal."""
    inspection, table = open_inspection(inspection_id), _table(table_id)
    if not inspection.state.fields(table.prefix + row_id):
        abort(404)
    inspection.say(who(), [(table.prefix + row_id, "gone", True)])
    return redirect(_list_of(inspection, table))


def _row_page(inspection: Inspection, table: Table, row_id: str, form: PlainForm, values: dict[str, Any], faults: list[str]) -> str:
    return render_template("particulars/row.html", inspection=inspection, table=table, row_id=row_id, form=form, values=values, faults=faults,
                           step="prepare", title=table.title, back=_list_of(inspection, table))


def _list_of(inspection: Inspection, table: Table) -> str:
    return url_for("particulars.particulars", inspection_id=inspection.id, opened=table.id) + f"#{table.id}"


def _table(table_id: str) -> Table:
    return next((table for table in TABLES if table.id == table_id), None) or abort(404)


def _typed(table: Table) -> dict[str, Any]:
    """What the form says of each column, as the record keeps it: text, or value and unit where the column has a unit."""
    found: dict[str, Any] = {}
    for column in table.columns:
        text = request.form.get(column.name, "").strip()[:LONGEST]
        unit = request.form.get(f"{column.name}-unit", "").strip()[:20] or column.unit
        found[column.name] = {"value": text, "unit": unit} if text and column.unit else text
    return found


def _too_many(inspection: Inspection, table: Table, row_id: str) -> list[str]:
    if row_id == "new" and len(read_rows(table, inspection.state)) >= MOST_ROWS:
        return [f"{table.title} has {MOST_ROWS} rows already; take one out first."]
    return []
