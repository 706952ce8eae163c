"""What a backup of a whole data folder holds, and what it leaves out.

It is a zip file: a bundle for each inspection, the catalogue's tables, the surveyor's own
checklists and criteria, what was refused, and last the list of all of it with its digests.
"""

import re

FORMAT, VERSION = "vessel inspection backup", 1
MANIFEST, CATALOGUE = "backup.json", "catalogue.json"
TABLES = ("briefs", "surveyors", "rates")
# They say which computer wrote, where it was shared, and a password: nothing that another one may
# take over.
NOT_SETTINGS = ("host", "hosts", "share-origin", "network")
MOST_FILES = 200_000
MOST_MANIFEST = 60_000_000  # bytes
MOST_SMALL = 20_000_000  # bytes, of any file that is not a bundle
HELD = (
    "every inspection, also those put away, with journals, photos and checklists",
    "what was refused and kept aside",
    "briefs, surveyors, the rate book, your levels and limits, and which inspections are put away",
    "your own checklists and criteria",
)
NOT_HELD = (
    "the passes of phones and tablets, the authority that they trust, and the password of their "
    "network: devices join again by a new code, and bring what they still keep",
    "the key that signs this computer's own pages, and its name: the new computer writes under a "
    "name of its own, so that no number is ever given twice",
    "reports, small pictures and the summaries of the list: they are made again",
)
_ID = r"[a-z0-9][a-z0-9-]{0,59}"
_NAMES = re.compile(
    rf"{MANIFEST}|{CATALOGUE}|inspections/{_ID}\.zip"
    rf"|refused/{_ID}/[a-z0-9][a-z0-9-]{{0,39}}\.jsonl"
    r"|checklists/(criteria/)?[a-z0-9]+(-[a-z0-9]+)*\.toml"
)


def is_allowed_name(name: str) -> bool:
    """Tell whether a file of that name may be in a backup.

    Parameters
    ----------
    name : str

    Returns
    -------
    bool
    """
    return bool(_NAMES.fullmatch(name))
