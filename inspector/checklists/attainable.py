"""What can be looked at now, from what a look needs and the state in which the vessel is.

Our own model, from common practice (no source). It proposes an answer and decides nothing: a
surveyor who finds a set running in cold lay-up rates it.
"""

from collections.abc import Mapping

from inspector.checklists.model import Check
from inspector.values.vocabulary import (
    ASKED_OF_CREW,
    BERTHS,
    LOOK_NEEDS,
    NO,
    NO_ACCESS,
    NOT_RUN,
    VESSEL_STATES,
    YES,
)

_IN_SERVICE, _WARM, _COLD, _DEAD = VESSEL_STATES
_ALONGSIDE, _AT_ANCHOR, _SEA_TRIAL, _IN_DOCK = BERTHS
_LIVE = "live-panel"


def reason_against(needs: str, state: str, berth: str) -> str:
    """Return why a look cannot be had now.

    Parameters
    ----------
    needs : str
        What it needs, of LOOK_NEEDS.
    state, berth : str
        Of VESSEL_STATES and BERTHS; "" where it is not known, which rules nothing out.

    Returns
    -------
    str
        One of the reasons for an answer "not seen"; "" where it can be had.

    Examples
    --------
    >>> reason_against("running", "cold lay-up", "alongside")
    'not run'
    >>> reason_against("power", "warm lay-up", "alongside")
    ''
    """
    if needs == "power":
        return NOT_RUN if state in (_COLD, _DEAD) else ""
    if needs == "running":
        # In dock there is no water to cool what runs, and none to work in.
        return NOT_RUN if state in (_WARM, _COLD, _DEAD) or berth == _IN_DOCK else ""
    if needs == "sea":
        # A berth that nobody recorded rules nothing out.
        elsewhere = bool(berth) and berth != _SEA_TRIAL
        return NOT_RUN if elsewhere or state in (_WARM, _COLD, _DEAD) else ""
    if needs == "dock":
        return NO_ACCESS if berth and berth != _IN_DOCK else ""
    # Papers, an eye and a hand need nothing of her; a sample for a laboratory is drawn here and
    # read elsewhere.
    return ""


def reasons_against() -> dict[str, dict[str, dict[str, str]]]:
    """Return every answer of ``reason_against``, as the pages' scripts receive it.

    Returns
    -------
    dict
        State -> berth -> need -> reason; only needs that have one.
    """
    return {
        state: {
            berth: {
                needs: reason
                for needs in LOOK_NEEDS
                if (reason := reason_against(needs, state, berth))
            }
            for berth in ("", *BERTHS)
        }
        for state in ("", *VESSEL_STATES)
    }


def refused_by_crew() -> dict[str, str]:
    """Return each question to the crew with the reason where they say no, for the pages' scripts.

    Returns
    -------
    dict of str to str
    """
    return {asked: reason for asked, (_, reason) in ASKED_OF_CREW.items()}


def asked_of_crew(check: Check) -> str:
    """Return what the crew must do for a check to be had.

    Parameters
    ----------
    check : Check

    Returns
    -------
    str
        One of ASKED_OF_CREW; "" where nothing is asked of them.
    """
    if check.needs == "paper":
        return "papers"
    if check.enclosed:
        return "tanks"
    # A hand at something live is never the surveyor's own: an electrician opens it.
    if check.needs == "hand" and _LIVE in check.cautions:
        return "panels"
    return "running" if check.needs == "running" else ""


def reason_against_check(check: Check, visit: Mapping[str, str]) -> str:
    """Return why a check cannot be had at a visit.

    Parameters
    ----------
    check : Check
    visit : mapping of str to str
        What is recorded of the visit: state, berth, and the answers to ASKED_OF_CREW.

    Returns
    -------
    str
        One of the reasons for an answer "not seen"; "" where it can be had.
    """
    asked = asked_of_crew(check)
    answer = visit.get(asked, "") if asked else ""
    if answer == NO:
        return ASKED_OF_CREW[asked][1]
    # What the crew promises counts more than the state in which such vessels usually are.
    state = "" if answer == YES else visit.get("state", "")
    return reason_against(check.needs, state, visit.get("berth", ""))
