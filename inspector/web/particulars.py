"""The tables of particulars: tanks, machinery, loads, weights and what else the conversion is computed from, row by row, each value kept as typed."""

import json
import secrets
from typing import Any

from flask import Blueprint, abort, flash, redirect, render_template, request, url_for

from inspector.assess.certificates import BadCertificate, read_certificate
from inspector.assess.gather import gone
from inspector.assess.judging import typed_text
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
        faults = _nothing(inspection, table, row_id, typed) or _faults(table, typed) or _too_many(inspection, table, row_id)
        if not faults:
            _keep(inspection, table.prefix + (secrets.token_hex(4) if row_id == "new" else row_id), typed, form)
            return redirect(_list_of(inspection, table))
        return _row_page(inspection, table, row_id, form, typed, faults), 400
    subject = table.prefix + row_id
    form.seen.data = json.dumps({one.name: [entry.id for entry in inspection.state.heads(subject, one.name)] for one in table.columns})
    return _row_page(inspection, table, row_id, form, inspection.state.values(subject), [])


def _keep(inspection: Inspection, subject: str, typed: dict[str, Any], form: PlainForm) -> None:
    """Keep a row as typed; one that another page took out meanwhile comes back, and that is said."""
    changes: list[tuple[str, str, Any]] = [(subject, name, value or None) for name, value in typed.items()]
    if gone(inspection.state, subject):
        changes.append((subject, "gone", None))
        flash("The row had been taken out; it was kept again, so it is back.")
    now = [entry.id for entry in inspection.state.heads(subject, "gone")]
    inspection.say(who(), changes, seen=lambda _, field: now if field == "gone" else form.heads_seen(field))


def _nothing(inspection: Inspection, table: Table, row_id: str, typed: dict[str, Any]) -> list[str]:
    """The sentence for a form in which nothing was typed; emptying what stands is a change of a single table only."""
    if any(typed.values()):
        return []
    if row_id == "new" or not any(inspection.state.value(table.prefix + row_id, column.name) for column in table.columns):
        return ["Nothing was typed, so nothing was kept."]
    return [] if table.single else ["Every field is empty, so nothing was kept. To be rid of the row, go back and take it out."]


def _faults(table: Table, typed: dict[str, Any]) -> list[str]:
    """Every fault of a row: of its cells, then of cells that contradict each other."""
    values, faults = cells(table, typed)
    known = [(column, values[column.name]) for name in ("low", "likely", "high") if (column := table.column(name)) and name in values]
    if [amount for _, amount in known] != sorted(amount for _, amount in known):
        faults.append("The amounts must rise: " + ", ".join(column.label for column, _ in known) + " in that order.")
    if table.subject == "certificate" and not faults:
        try:
            read_certificate("", {name: typed_text(value) for name, value in typed.items()})
        except BadCertificate as problem:
            faults.append(str(problem))
    return faults


@pages.get("/inspection/<inspection_id>/particulars/<table_id>/<row_id>/gone")
def list_again(inspection_id: str, table_id: str, row_id: str):
    """The address of a button, loaded again, leads back to the table."""
    return redirect(_list_of(open_inspection(inspection_id), _table(table_id)))


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
