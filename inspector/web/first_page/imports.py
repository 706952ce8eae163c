"""What is brought in from a file: a bundle, a backup, or what a device saved. And the backup."""

import tempfile
from contextlib import AbstractContextManager
from pathlib import Path

from flask import (
    Blueprint,
    Response,
    abort,
    flash,
    redirect,
    render_template,
    request,
    url_for,
)

from inspector.services import backup
from inspector.services.backup_contents import HELD, NOT_HELD
from inspector.services.import_file import import_file
from inspector.web.current import data_folder
from inspector.web.forms.form_fields import TokenForm

pages = Blueprint("imports", __name__)


@pages.get("/import")
def form():
    """Choose the file."""
    return render_template("sharing/import.html", title="Bring in", form=TokenForm())


@pages.post("/import")
def take_in():
    """Take the file in by union, and show what it brought."""
    uploaded = request.files.get("file")
    if uploaded is None or not uploaded.filename:
        abort(
            400,
            "Choose a file first: a bundle or a backup (zip), or what a device saved (json).",
        )
    # On the disk of the data folder: a backup may be larger than the system's own folder for
    # temporary files.
    with _quarantine() as folder:
        path = Path(folder) / "brought"  # never the name that came with it
        uploaded.save(path)
        for sentence in import_file(data_folder(), path).sentences:
            flash(sentence)
    return redirect(url_for("home.home"))


@pages.get("/backup")
def backup_page():
    """What a backup holds and what it leaves out, with the button that makes it."""
    return render_template(
        "home/backup.html", title="Backup", form=TokenForm(), held=HELD, not_held=NOT_HELD
    )


@pages.post("/backup")
def make_backup():
    """Everything as one file, made while it is sent, so that it needs no room twice."""
    headers = {"Content-Disposition": f'attachment; filename="{backup.file_name()}"'}
    return Response(backup.pieces(data_folder()), mimetype="application/zip", headers=headers)


def _quarantine() -> AbstractContextManager[str]:
    """Return a folder for files that nobody has looked at yet, removed at the end."""
    folder = data_folder().path / "quarantine"
    folder.mkdir(mode=0o700, exist_ok=True)
    return tempfile.TemporaryDirectory(dir=folder)
