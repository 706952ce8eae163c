"""Rows of a table of particulars pasted from a spreadsheet, looked at and then taken."""

from __future__ import annotations

import secrets

from flask import Blueprint, abort, flash, redirect, render_template, request, url_for

from inspector.web.current import open_inspection, surveyor_name
from inspector.web.forms.form_fields import TokenForm
from inspector.web.particular_tables import MOST_ROWS, recorded_table, table_of

pages = Blueprint("pasted_table", __name__)


@pages.route("/inspection/<inspection_id>/particulars/<table_id>/paste", methods=["GET", "POST"])
def paste(inspection_id: str, table_id: str):
    """Ask for a text, show what was understood of it, and take it at a second word."""
    from inspector.conversion.core.pasted_rows import understood

    inspection, table = open_inspection(inspection_id), table_of(table_id)
    if table.single:
        abort(404)
    # Shown again as it was pasted, also where it is too long.
    text = request.form.get("text", "")
    found, faults = None, []
    if request.method == "POST":
        found = understood(table, text)
        faults = list(found.faults)
        there = len(recorded_table(inspection, table))
        if there + len(found.rows) > MOST_ROWS:
            faults.append(f"{table.title} has {there} rows, and takes {MOST_ROWS} in all.")
        if request.form.get("take") and not faults and found.rows:
            entries = []
            for row in found.rows:
                # At random and not counted: two devices may each add rows before they meet.
                subject = table.prefix + secrets.token_hex(4)
                entries += [(subject, name, value) for name, value in row.items()]
            inspection.record(surveyor_name(), entries)
            flash(f"{len(found.rows)} rows were taken into {table.title}.")
            page = url_for("particulars.particulars", inspection_id=inspection.id, opened=table.id)
            return redirect(f"{page}#{table.id}")
    return render_template(
        "particulars/paste.html",
        inspection=inspection,
        table=table,
        text=text,
        found=found,
        faults=faults,
        there=len(recorded_table(inspection, table)),
        form=TokenForm(),
        step="prepare",
        title=table.title,
        back=url_for("particulars.particulars", inspection_id=inspection.id, opened=table.id)
        + f"#{table.id}",
    ), (400 if faults else 200)
