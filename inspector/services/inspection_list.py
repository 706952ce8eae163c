"""The list of inspections: which of them are shown, by page, search and state, and put away."""

import threading
from collections.abc import Iterable
from dataclasses import dataclass

from inspector.record.catalogue import Catalogue
from inspector.services.summary import Row

PER_PAGE = 25
AWAY = "put away"
# Two requests at once must not undo each other's change of the ids that are put away.
_CHANGING = threading.Lock()
_SEARCHED = ("title", "imo", "client", "year", "date", "place", "state")


@dataclass(frozen=True)
class Wanted:
    """What of the list is asked for.

    Parameters
    ----------
    words : str
        Each of them must be in the name, IMO number, client, year, date, place or state, or begin
        the id.
    state : str
        One of ``summary.STATES``, AWAY for those put away, "" for all that are not put away.
    page : int
        From 1; beyond the last one is the last one.
    """

    words: str = ""
    state: str = ""
    page: int = 1


@dataclass(frozen=True)
class ListPage:
    """One page of the list.

    Parameters
    ----------
    rows : list of dict
        As ``summary.summary_of`` makes them.
    page, pages : int
        This page's number from 1, and the number of the last one.
    found : int
        How many inspections the search found, on all pages.
    there : int
        How many inspections there are, without those put away.
    away : int
        How many are put away.
    """

    rows: list[Row]
    page: int
    pages: int
    found: int
    there: int
    away: int


def list_page(rows: Iterable[Row], away: set[str], wanted: Wanted) -> ListPage:
    """Return one page of the list.

    Parameters
    ----------
    rows : iterable of dict
        All inspections, in the order to be shown.
    away : set of str
        Ids of those that are put away.
    wanted : Wanted

    Returns
    -------
    ListPage
    """
    rows = list(rows)
    put_away = [row for row in rows if row["id"] in away]
    in_list = [row for row in rows if row["id"] not in away]
    chosen = put_away if wanted.state == AWAY else in_list
    if wanted.state not in ("", AWAY):
        chosen = [row for row in chosen if row["state"] == wanted.state]
    words = wanted.words.casefold().split()
    found = [row for row in chosen if _matches(row, words)]
    # Rounded up, and one page even of nothing.
    pages = max(1, -(-len(found) // PER_PAGE))
    page = min(max(wanted.page, 1), pages)
    shown = found[(page - 1) * PER_PAGE : page * PER_PAGE]
    return ListPage(shown, page, pages, len(found), len(in_list), len(put_away))


def _matches(row: Row, words: list[str]) -> bool:
    text = "\n".join(str(row[name]) for name in _SEARCHED).casefold()
    # An id ends in random signs, which short words would find by chance.
    return all(word in text or row["id"].startswith(word) for word in words)


def put_away(catalogue: Catalogue, inspection_ids: Iterable[str]) -> None:
    """Leave inspections out of the list; they stay where they are and can be searched and opened.

    Parameters
    ----------
    catalogue : Catalogue
    inspection_ids : iterable of str
    """
    with _CHANGING:
        catalogue.set(AWAY, sorted(ids_put_away(catalogue) | set(inspection_ids)))


def take_back(catalogue: Catalogue, inspection_ids: Iterable[str]) -> None:
    """Show inspections in the list again.

    Parameters
    ----------
    catalogue : Catalogue
    inspection_ids : iterable of str
    """
    with _CHANGING:
        catalogue.set(AWAY, sorted(ids_put_away(catalogue) - set(inspection_ids)))


def ids_put_away(catalogue: Catalogue) -> set[str]:
    """Return the ids of the inspections that are put away.

    Parameters
    ----------
    catalogue : Catalogue

    Returns
    -------
    set of str
    """
    # Kept beside the inspections and not in them: putting away is a matter of this computer.
    return set(catalogue.setting(AWAY, ()))
