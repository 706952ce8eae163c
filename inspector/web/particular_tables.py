"""The tables of particulars from which the conversion is calculated, row by row, as typed.

The chapters are slow to import, so that they are imported when a table is asked for.
"""

from __future__ import annotations

import secrets
from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING, Any

from flask import Blueprint, abort, flash, redirect, render_template, request, url_for

from inspector.record.inspection import Inspection
from inspector.record.typed_values import typed_text
from inspector.services.data_folder import title_of
from inspector.values.units import units_like
from inspector.web.current import open_inspection, surveyor_name
from inspector.web.forms.form_fields import (
    FormField,
    RecordForm,
    TokenForm,
    faults_of,
    make_form,
    typed_value,
)

if TYPE_CHECKING:
    from inspector.conversion.core.particulars import Rows, Table

pages = Blueprint("particulars", __name__)
# A bound, so that the page and the calculations stay quick.
MOST_ROWS = 500
AMOUNTS = ("low", "likely", "high")


@pages.get("/inspection/<inspection_id>/particulars")
def particulars(inspection_id: str):
    """Every table with its rows."""
    from inspector.conversion.contents import TABLES

    inspection = open_inspection(inspection_id)
    return render_template(
        "particulars/particulars.html",
        inspection=inspection,
        read=_shown(inspection, TABLES),
        state=inspection.state,
        step="prepare",
        title=title_of(inspection),
        form=TokenForm(),
        opened=request.args.get("opened"),
    )


def _shown(inspection: Inspection, tables: Iterable[Table]) -> list[Rows]:
    """Return the tables to be shown: all but those that another one took over and nobody filled."""
    read = (recorded_table(inspection, table) for table in tables)
    return [rows for rows in read if rows.rows or rows.faults or not rows.table.superseded_by]


def recorded_table(inspection: Inspection, table: Table) -> Rows:
    """Return the rows that are recorded in a table of particulars.

    Parameters
    ----------
    inspection : Inspection
    table : Table

    Returns
    -------
    Rows
    """
    from inspector.assess.from_state import read_rows as recorded_rows
    from inspector.conversion.core.particulars import read_rows

    return read_rows(table, recorded_rows(inspection.state).get(table.id, {}))


@pages.route("/inspection/<inspection_id>/particulars/<table_id>/<row_id>", methods=["GET", "POST"])
def row(inspection_id: str, table_id: str, row_id: str):
    """One row, "new" for one that is not there yet; with a fault it comes back as it was typed."""
    inspection, table = open_inspection(inspection_id), table_of(table_id)
    if not _exists(inspection, table, row_id):
        abort(404)
    asked = _fields(table)
    subject = table.prefix + row_id
    # What a posted form leaves out was emptied.
    recorded = {} if request.method == "POST" else inspection.state.values(subject)
    form = make_form(asked, recorded, RecordForm)
    form.remember_heads(inspection.state, subject, [each.name for each in asked])
    if request.method != "POST":
        return _row_page(inspection, table, form, asked, [])
    typed = {each.name: typed_value(each, form) for each in asked}
    faults = (
        _nothing_typed(inspection, table, row_id, typed)
        or [*faults_of(form), *_falling_amounts(table, typed)]
        or _bad_certificate(table, typed)
        or _too_many(inspection, table, row_id)
    )
    if faults:
        return _row_page(inspection, table, form, asked, faults), 400
    if row_id == "new":
        # At random and not counted: two devices may each add a row before they meet.
        subject = table.prefix + secrets.token_hex(4)
    _keep(inspection, subject, typed, form)
    return redirect(_list_of(inspection, table))


def _exists(inspection: Inspection, table: Table, row_id: str) -> bool:
    """Whether a row is there or may be begun."""
    # A table of one row has it from the beginning, also empty.
    if table.single and row_id in ("new", "one"):
        return row_id == "one"
    return row_id == "new" or bool(inspection.state.fields(table.prefix + row_id))


def _fields(table: Table) -> tuple[FormField, ...]:
    """The columns as the form of one row asks for them."""
    # What a row cannot do without is asked for only once something of it was typed.
    begun = any(request.form.get(column.name, "").strip() for column in table.columns)
    return tuple(_field(column, begun) for column in table.columns)


def _field(column, begun: bool) -> FormField:
    """Return the form's field of a column; a row not yet begun demands nothing."""
    choices = ("", *column.choices) if column.kind == "choice" else ()
    units = units_like(column.unit) if column.unit else ()
    return FormField.of(column, choices=choices, units=units, optional=column.optional or not begun)


def _keep(inspection: Inspection, subject: str, typed: Mapping[str, Any], form: RecordForm) -> None:
    """Keep a row as typed; one that another page took out meanwhile comes back, which is shown."""
    changes: list[tuple[str, str, Any]] = [
        (subject, name, value or None) for name, value in typed.items()
    ]
    if inspection.state.removed(subject):
        changes.append((subject, "gone", None))
        flash("The row had been taken out; it was kept again, so it is back.")
    # The row may have been taken out since the form was made: keeping it replaces that entry too.
    removal = [entry.id for entry in inspection.state.heads(subject, "gone")]

    def seen(_: str, name: str) -> list[str]:
        return removal if name == "gone" else form.heads_seen(name)

    inspection.record(surveyor_name(), changes, seen=seen)


def _nothing_typed(
    inspection: Inspection, table: Table, row_id: str, typed: Mapping[str, Any]
) -> list[str]:
    """The sentence for an empty form; to empty a row is a change in a table of one row only."""
    if any(typed.values()):
        return []
    recorded = inspection.state.values(table.prefix + row_id)
    if row_id == "new" or not any(recorded.get(column.name) for column in table.columns):
        return ["Nothing was typed, so nothing was kept."]
    # Its one row is emptied, since it cannot be taken out.
    if table.single:
        return []
    return [
        "Every field is empty, so nothing was kept. To be rid of the row, go back and take it out."
    ]


def _falling_amounts(table: Table, typed: Mapping[str, Any]) -> list[str]:
    """The sentence for a low end above the likely one, or that above the high end."""
    from inspector.conversion.core.particulars import cells

    values, _ = cells(table, typed)
    amounts = [name for name in AMOUNTS if table.column(name) and name in values]
    if [values[name] for name in amounts] != sorted(values[name] for name in amounts):
        labels = ", ".join(table.column(name).label for name in amounts)
        return [f"The amounts must rise: {labels} in that order."]
    return []


def _bad_certificate(table: Table, typed: Mapping[str, Any]) -> list[str]:
    """What is wrong with a certificate whose fields are good each by itself."""
    from inspector.assess.papers.certificates import BadCertificate, read_certificate

    if table.subject == "certificate":
        try:
            read_certificate("", {name: typed_text(value) for name, value in typed.items()})
        except BadCertificate as problem:
            return [str(problem)]
    return []


def _too_many(inspection: Inspection, table: Table, row_id: str) -> list[str]:
    """Return the refusal of a row beyond the most that a table takes."""
    if row_id == "new" and len(recorded_table(inspection, table)) >= MOST_ROWS:
        return [f"{table.title} has {MOST_ROWS} rows already; take one out first."]
    return []


@pages.get("/inspection/<inspection_id>/particulars/<table_id>/<row_id>/gone")
def list_again(inspection_id: str, table_id: str, row_id: str):
    """The address of a button, loaded again, leads back to the table."""
    return redirect(_list_of(open_inspection(inspection_id), table_of(table_id)))


@pages.post("/inspection/<inspection_id>/particulars/<table_id>/<row_id>/gone")
def take_out(inspection_id: str, table_id: str, row_id: str):
    """Take a row out; its entries stay in the journal."""
    inspection, table = open_inspection(inspection_id), table_of(table_id)
    if not inspection.state.fields(table.prefix + row_id):
        abort(404)
    inspection.record(surveyor_name(), [(table.prefix + row_id, "gone", True)])
    return redirect(_list_of(inspection, table))


def _row_page(
    inspection: Inspection,
    table: Table,
    form: RecordForm,
    asked: tuple[FormField, ...],
    faults: list[str],
) -> str:
    """Return the page of one row, with what is wrong in it."""
    return render_template(
        "particulars/row.html",
        inspection=inspection,
        table=table,
        groups=_grouped(table, asked),
        needed={column.name for column in table.columns if not column.optional},
        form=form,
        filled_in={each.name for each in asked if form[each.name].data or form[each.name].errors},
        faults=faults,
        step="prepare",
        title=table.title,
        back=_list_of(inspection, table),
    )


def _grouped(table: Table, asked: tuple[FormField, ...]) -> list[tuple[str, list[FormField]]]:
    """Return the fields of a row by their headings; those without one come first, under ""."""
    heading_of = {name: heading for heading, names in table.groups for name in names}
    headings = ["", *(heading for heading, _ in table.groups)]
    return [
        (heading, [each for each in asked if heading_of.get(each.name, "") == heading])
        for heading in headings
    ]


def _list_of(inspection: Inspection, table: Table) -> str:
    """The address of a table on the page of all."""
    page = url_for("particulars.particulars", inspection_id=inspection.id, opened=table.id)
    return f"{page}#{table.id}"


def table_of(table_id: str) -> Table:
    """Return the table of an id, or answer 404.

    Parameters
    ----------
    table_id : str

    Returns
    -------
    Table
    """
    from inspector.conversion.contents import TABLES

    for table in TABLES:
        if table.id == table_id:
            return table
    abort(404)
