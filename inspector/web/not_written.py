"""A disk that takes nothing more, as a page says it; what was typed comes back with it."""

import errno
import shutil

from flask import current_app, jsonify, render_template, request

from inspector.web import security
from inspector.web.forms.form_fields import TokenForm

STATUS = 507
# What a disk says that is full, read-only, broken or not ours to write to.
_DISK = {
    errno.ENOSPC,
    errno.EROFS,
    errno.EIO,
    errno.EACCES,
    errno.EPERM,
    errno.EFBIG,
    getattr(errno, "EDQUOT", errno.ENOSPC),
}


def is_of_disk(problem: OSError) -> bool:
    """Tell whether it is the disk that refused, and not a fault of ours.

    Parameters
    ----------
    problem : OSError

    Returns
    -------
    bool
    """
    return problem.errno in _DISK or isinstance(problem, shutil.Error)


def disk_sentence(problem: OSError) -> str:
    """Return what a person is shown where the disk refused.

    Parameters
    ----------
    problem : OSError

    Returns
    -------
    str
    """
    current_app.logger.error("the disk refused: %s", problem)
    said = (problem.strerror or "it refuses to write").lower()
    return (
        f"The disk of this computer did not take it ({said}); nothing of it is kept. "
        "Free some space, then try again."
    )


def refuse(sentence: str):
    """Return the answer: JSON for a program of ours, else a page with what was typed.

    Parameters
    ----------
    sentence : str

    Returns
    -------
    tuple
        Answer and status.
    """
    if security.wants_json():
        return jsonify(error=sentence), STATUS
    page = render_template(
        "not_written.html",
        sentence=sentence,
        address=request.full_path.rstrip("?"),
        typed=_typed(),
        form=TokenForm(),
    )
    return page, STATUS


def _typed() -> list[tuple[str, str]]:
    """What a form sent, to be sent again; a file cannot be sent again by a page."""
    if request.method != "POST" or request.files:
        return []
    pairs = request.form.items(multi=True)
    # Shown again, so that what was typed can be copied before it is lost.
    return [(name, value) for name, value in pairs if name != "csrf_token"]
