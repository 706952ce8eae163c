"""The table of the ship's certificates."""

from inspector.assess.papers.certificates import DATES
from inspector.conversion.core.particulars import Table, column
from inspector.criteria.papers.survey_dates import KINDS

CERTIFICATES = Table(
    "certificates",
    "Certificates",
    "From the ship's file: one row per paper, with the dates endorsed on it.",
    (
        column("kind", "Kind", kind="choice", choices=tuple(KINDS), needed=True),
        column("number", "Number", kind="text"),
        column("on_board", "On board", kind="choice", choices=("yes", "no")),
        *(column(name, label, kind="date") for name, label in DATES.items()),
    ),
    subject="certificate",
)
TABLES = (CERTIFICATES,)
