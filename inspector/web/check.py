"""Whether an inspection's files are whole, and what was refused and kept aside."""

from flask import Blueprint, flash, redirect, render_template, url_for

from inspector.services.data_folder import title_of
from inspector.services.integrity import check_integrity, take_in_kept_aside
from inspector.web.current import open_inspection
from inspector.web.forms.form_fields import TokenForm

pages = Blueprint("check", __name__)


@pages.get("/inspection/<inspection_id>/check")
def check(inspection_id: str):
    """What `inspector verify` says, and each refused entry with its reason."""
    inspection = open_inspection(inspection_id)
    return render_template(
        "check/check.html",
        title=f"Check of {title_of(inspection)}",
        inspection=inspection,
        found=check_integrity(inspection),
        refused=inspection.refused(),
        form=TokenForm(),
    )


@pages.post("/inspection/<inspection_id>/check")
def take_in(inspection_id: str):
    """Take in what was kept aside, as far as it says anything new."""
    inspection = open_inspection(inspection_id)
    flash(take_in_kept_aside(inspection))
    return redirect(url_for("check.check", inspection_id=inspection.id))
