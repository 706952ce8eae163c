"""What is brought in from a file: a bundle of another computer, or what a device saved because it could not hand it over."""

import tempfile
from contextlib import AbstractContextManager
from pathlib import Path

from flask import Blueprint, abort, flash, redirect, render_template, request, url_for

from inspector.record import bundle, waiting
from inspector.web.desk import Desk, desk
from inspector.web.forms import TokenForm

pages = Blueprint("imports", __name__)


@pages.get("/import")
def form():
    """Choose the file."""
    return render_template("sharing/import.html", title="Bring in", form=TokenForm())


@pages.post("/import")
def take_in():
    """Take the file in by union, and say what it brought."""
    uploaded = request.files.get("file")
    if uploaded is None or not uploaded.filename:
        abort(400, "Choose a file first: a bundle (zip), or what a device saved (json).")
    with _quarantine(desk()) as folder:
        path = Path(folder) / "brought"  # never the name that came with it
        uploaded.save(path)
        for sentence in take_file(desk(), path):
            flash(sentence)
    return redirect(url_for("prepare.home"))


def _quarantine(the_desk: Desk) -> AbstractContextManager[str]:
    folder = the_desk.data / "quarantine"
    folder.mkdir(mode=0o700, exist_ok=True)
    return tempfile.TemporaryDirectory(dir=folder)


def take_file(the_desk: Desk, path: Path) -> list[str]:
    """Take a bundle or a device's file in, whichever it is by its first bytes; returns sentences on what it brought. Errors are InspectorError."""
    with open(path, "rb") as file:
        head = file.read(64).lstrip()
    if head.startswith(b"{"):
        brought = waiting.take_in(path, the_desk.inspections)
        told = f"{brought.inspection}: new entries {brought.entries}, known already {brought.known}, new photos {brought.photos}."
        return [told, *(f"Not taken in: {one}" for one in brought.refused[:50])]
    inspection_id, entries, pictures = bundle.take_in(path, the_desk.inspections.folder, the_desk.host, the_desk.inspections.paused)
    return [f"{inspection_id}: new entries {entries}, new photos {pictures}."]
