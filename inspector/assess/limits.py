"""Limits that the surveyor set for this inspection: `profile/<criterion>` entries -> profiles, each with the text he takes them from."""

from inspector.assess.judging import typed_text
from inspector.criteria.profiles import BadProfile, Profile
from inspector.criteria.registry import CRITERIA
from inspector.record.state import State

PREFIX = "profile/"


def profiles_of(state: State) -> tuple[dict[str, Profile], tuple[str, ...]]:
    """Criterion name -> the profile as set, and a sentence for each that cannot be used (the limits as shipped stand then)."""
    found, faults = {}, []
    for subject in state.subjects(PREFIX):
        name = subject.removeprefix(PREFIX)
        shipped = CRITERIA[name].profile if name in CRITERIA else None
        typed = {field: typed_text(value) for field, value in state.values(subject).items()}
        cited = typed.pop("source", "")
        if shipped is None:
            faults.append(f"Limits were set for {name}, which has none that can be set.")
            continue
        try:
            profile = shipped.with_limits(typed, cited)
        except BadProfile as problem:
            faults.append(f"{CRITERIA[name].title}: {problem}")
            continue
        if profile.edited:
            found[name] = profile
    return found, tuple(faults)
