"""The tables of a checklist folder -> its library, without any file.

A browser makes its library of the same tables, which come to it as JSON.
"""

from collections.abc import Mapping
from typing import Any

from inspector.checklists.criteria_files import KEPT_AS, criteria_in
from inspector.checklists.criterion_needs import Raw
from inspector.checklists.model import (
    Caution,
    Check,
    Glance,
    Layout,
    Library,
    System,
    Trial,
)
from inspector.checklists.schema import cautions_of
from inspector.criteria.core.declared import field_of

SPACES, CAUTIONS = "spaces.toml", "cautions.toml"
TRIALS, LAYOUTS = "trials.toml", "layouts.toml"
NOT_SYSTEMS = {SPACES: "space", CAUTIONS: "caution", TRIALS: "trial", LAYOUTS: "layout"}
_LISTS = ("for", "also", "replaces")


def library_of_tables(tables: Mapping[str, Raw]) -> Library:
    """Make a library of the tables of its files, which were checked before.

    Parameters
    ----------
    tables : mapping of str to dict
        Name of each file -> what it holds; a surveyor's own criteria are ``criteria-x.toml``.

    Returns
    -------
    Library
        With these tables beside it.
    """
    own = {name: data for name, data in tables.items() if name.startswith(KEPT_AS)}
    systems = [
        _system(data)
        for name, data in tables.items()
        if name not in NOT_SYSTEMS and name not in own
    ]
    systems.sort(key=lambda system: (system.order, system.id))
    spaces, cautions = table_in(tables, SPACES), table_in(tables, CAUTIONS)
    in_order = sorted(spaces.items(), key=lambda item: item[1].get("order", 0))
    return Library(
        systems={system.id: system for system in systems},
        spaces={name: table["name"] for name, table in in_order},
        cautions={name: Caution(id=name, **table) for name, table in cautions.items()},
        criteria=criteria_in(own),
        trials=_trials(table_in(tables, TRIALS)),
        layouts=_layouts(table_in(tables, LAYOUTS)),
        tables=tables,
    )


def table_in(tables: Mapping[str, Raw], name: str) -> dict[str, Any]:
    """Return what one of the files beside the systems holds, by ids; empty where it is missing."""
    found = tables.get(name, {}).get(NOT_SYSTEMS[name])
    return found if isinstance(found, dict) else {}


def _system(data: Raw) -> System:
    head = dict(data["system"])
    lists = {name: tuple(head.pop(name, ())) for name in ("units", "cautions")}
    return System(**head, **lists, checks=tuple(map(_check, data["check"])))


def _check(data: Raw) -> Check:
    own = {"readings", "from", "caution", "glance", *_LISTS}
    plain = {key: value for key, value in data.items() if key not in own}
    glance, readings = data.get("glance"), data.get("readings", ())
    return Check(
        **plain,
        taken=data.get("from", {}),
        kinds=tuple(data.get("for", ())),
        also=tuple(data.get("also", ())),
        replaces=tuple(data.get("replaces", ())),
        cautions=tuple(cautions_of(data)),
        glance=Glance(**glance) if glance else None,
        readings=tuple(map(field_of, readings)),
        unjudged={each["id"]: each["unjudged"] for each in readings if "unjudged" in each},
    )


def _trials(tables: Raw) -> dict[str, Trial]:
    return {
        name: Trial(id=name, **{**table, "cautions": tuple(table.get("cautions", ()))})
        for name, table in tables.items()
    }


def _layouts(tables: Raw) -> dict[str, Layout]:
    return {
        name: Layout(
            id=name,
            name=table["name"],
            about=table["about"],
            units={system: tuple(units) for system, units in table["units"].items()},
        )
        for name, table in tables.items()
    }
