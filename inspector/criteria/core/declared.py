"""A criterion that only compares, declared as data: from a table of a TOML file to a ``Criterion``.

The files are in ``checklists/criteria/``; a surveyor's own are in his data folder, in
``checklists/criteria/`` as well, and have the same form. A file holds sources and criteria. This is
the whole form, with every key::

    [source.bearing]                     # a source that the criteria below name
    title = "Clearance of rudder bearings"
    edition = "no publisher"
    clause = "5 mm and 0.2 % of the diameter"
    mark = "common practice"             # or seen, or memory; a surveyor's own has none

    [[criterion]]
    id = "rudder-bearing"                # its name in checklists and commands
    title = "Clearance of a rudder bearing"
    source = "bearing"
    range = "Metal bushes of stocks of 50 to 800 mm."
    checked = "Both limits from both sides; no published example exists."
    inputs = [                           # the first one is the number that is compared
      { id = "clearance", label = "Clearance", unit = "mm", low = 0, high = 40 },
      { id = "diameter", label = "Diameter of the stock", unit = "mm", low = 50, high = 800 },
      { id = "bush", label = "Bush", choices = ["metal", "synthetic"] },
      { id = "wet", label = "Measured afloat", choices = ["no", "yes"], optional = true },
    ]
    limits_title = "Usual clearances"    # the limits themselves are below
    value = { difference = ["clearance", "film"], unit = "mm" }
    at_most = "most"
    sentence = "A clearance of {clearance} on {diameter} {place}, against {most}, is {meaning}."
    notes = ["The drawing goes first.", { text = "Afloat it reads low.", when = { wet = "yes" } }]
    bands = [
      { upto = "most", band = "within the limit", rating = "good", meaning = "within it" },
      { band = "over the limit", rating = "poor", meaning = "over it" },
    ]
    [criterion.figures]                  # fixed figures, and figures from inputs and limits
    film = 0
    part = { share = ["act", "diameter"], unit = "mm" }
    most = { sum = ["base", "part"], unit = "mm" }
    [criterion.words]                    # words that depend on a choice
    place = { by = "wet", rows = { yes = "afloat" }, rest = "in dock" }
    [[criterion.limits]]                 # what a surveyor may set, and from where to where
    id = "base"
    label = "for any size"
    unit = "mm"
    value = 5
    low = 0.5
    high = 15
    [[criterion.limits]]
    id = "act"
    label = "act above"
    unit = "%"
    low = 0
    high = 2
    by = "bush"
    values = { metal = 0.2, synthetic = 0.3 }
    [[criterion.refused]]
    input = "clearance"
    when = { clearance = { above = "diameter" } }
    why = "no play is wider than its stock"
    [[criterion.orders]]
    input = "clearance"
    at_most = "diameter"
    times = 0.5
    why = "no play is half as wide as its stock"
    [[criterion.examples]]
    given = { clearance = 6, diameter = 500, bush = "metal" }
    band = "within the limit"
    rating = "good"
    margin = 0
    from = "our own arithmetic: 5 mm + 0.2 % of 500 mm"

A list of tables may be written either way, in brackets as ``inputs`` or one after the other as
``limits``; what follows the first ``[criterion.…]`` belongs to it, so such tables come last.

Inputs
    ``kind`` is number, whole, choice, date or text; without it, choice where ``choices`` are listed
    and number otherwise. A number has a unit ("" for a plain one), and a number and a whole have
    ``low`` and ``high``.
Limits
    Each becomes a limit that a surveyor may set, from ``low`` to ``high``. With ``by`` (one of the
    choices) there is one limit for each row of ``values``, called ``<choice>_<id>``; the id alone
    means the one of the choice in hand.
Names
    An input, a limit or a figure may be named wherever a number may be: in figures, in the ends of
    bands, in conditions, and in texts as ``{name}``. A figure may use those above it only.
    Conditions and texts may also name ``value``.
Figures
    A number; a name; a table or one operation, in which terms are numbers or names. A table is by a
    choice, ``{ by = "ship", rows = { cargo = 18, passenger = 36 }, rest = 18 }``, by two of them,
    ``{ by = ["group", "support"], rows = { 1 = { rigid = 2.3, flexible = 3.5 } } }``, or by a
    number, ``{ by = "diameter", upto = [230, 305], cells = [4.8, 5.6, 6.35] }`` (``below`` where
    an end belongs to the next row; one cell more than ends; ``rest`` is the cell where the number
    was not given). The operations are sum, difference, product, ratio, percent_of (the first in
    percent of the second), share (the first in percent, of the second), least and greatest. The
    ``unit`` of a table or an operation is that of the value where it is not written.
Value
    What is compared, where it is not the first input itself: one operation, with its unit. The ends
    of the bands are ends of the value; with ``bands_on`` = the first input they are ends of that
    one, and the value is only shown with its margin.
Bands
    By rising value. ``upto`` includes its end, ``below`` does not; the last band has neither. One
    with ``when`` is there only where its conditions hold, and the first one without end closes the
    row, so that a band for a choice, ahead of the others, overrides them. An end that depends on
    what was not given leaves its band out. Where a surveyor set limits in an unusual order, the
    stricter one counts. A band may have its own ``sentence``, ``notes``, ``source`` and limit, and
    ``without = ["limit"]`` or ``["value", "limit"]`` where there is none. Without ``rating`` it
    says nothing of condition.
Conditions
    ``{ store = "frozen" }``, ``{ salt = ["no", ""] }`` ("" where it was not given), ``{ volume =
    { from = 0.6 } }``; the comparisons are from, above, upto, below and unlike, each with a number,
    a date or a name. All of them must hold.
The limit of the judgement
    ``at_most = name`` or ``at_least = name`` (the margin is positive on the good side), ``between
    = [name, name]`` (the nearer end), or none of them; a band may have its own.
Texts
    ``{name}`` is a value with its unit, ``{name:2}`` the same with two decimals, ``{name:~2}`` with
    two at most, ``{name:+2}`` with two at least, ``{name:ppm}`` converted. A sentence also has
    ``{meaning}`` and ``{band}`` of its band. Words may be used in texts like values, and may hold
    values themselves.
Refused
    What cannot be judged: the input to blame, the conditions, and why, without a full stop.
Orders
    Two inputs of one quantity of which the first cannot be beyond the other: ``at_most``,
    ``below``, ``at_least`` or ``above`` (dates: not after, before, not before, after), if need be
    by so many ``times``, and why. The sentence of the refusal names both.
Examples
    What is given, the band and rating that follow, the margin where there is one, and where the
    example comes from. A rating is that of the judgement: what is not published is held at poor.
    ``refused = "words"`` instead of a band: the criterion must refuse with these words. A test runs
    every example and asks for one in each band.

The ends of the bands are known before a reading where they depend on other inputs only, and the
value is the first input, or it less, plus, divided by or in percent of another.
"""

from collections.abc import Iterator, Mapping
from itertools import groupby

from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.declared_rule import DeclaredRule
from inspector.criteria.core.declared_terms import Raw
from inspector.criteria.core.limit_sets import Limit, LimitSet, limit_prefix, settable_limit
from inspector.criteria.core.orders import order_of
from inspector.criteria.core.source import CITED, Source
from inspector.values.field import Field


def declared_criterion(raw: Raw, sources: Mapping[str, Source]) -> Criterion:
    """Return the criterion of one table without faults.

    Parameters
    ----------
    raw : mapping
        The table ``[[criterion]]``.
    sources : mapping of str to Source
        The sources of its file, by id.

    Returns
    -------
    Criterion
    """
    inputs = tuple(field_of(each) for each in raw["inputs"])
    rule = DeclaredRule(raw, inputs, sources)
    source = sources[raw["source"]]
    return Criterion(
        raw["id"],
        raw["title"],
        inputs,
        source,
        rule.judge,
        raw["range"],
        raw["checked"],
        limit_set=_limit_set(raw, source) if "limits" in raw else None,
        bands=rule.bands if rule.for_phone else None,
        orders=tuple(map(order_of, raw.get("orders", ()))),
    )


def declared_sources(sources: Raw, own: bool = False) -> dict[str, Source]:
    """Return the sources of a file by their ids; each of a surveyor's own file is cited by him.

    Parameters
    ----------
    sources : mapping
        The tables ``[source.<id>]``, without faults.
    own : bool
        Whether the file is a surveyor's own.

    Returns
    -------
    dict of str to Source
    """
    return {
        name: Source(raw["title"], raw["edition"], raw["clause"], CITED if own else raw["mark"])
        for name, raw in sources.items()
    }


def field_of(raw: Raw) -> Field:
    """Return the field of the table of an input, or of a reading in a checklist."""
    choices = tuple(str(choice) for choice in raw.get("choices", ()))
    return Field(
        raw["id"],
        raw["label"],
        raw.get("kind", "choice" if choices else "number"),
        raw.get("unit", ""),
        choices,
        raw.get("optional", False),
        raw.get("low"),
        raw.get("high"),
    )


def _limit_set(raw: Raw, source: Source) -> LimitSet:
    """Return the limits of a criterion, those by choice row by row."""
    limits: list[Limit] = []
    # Neighbours only, so that the form keeps the order of the file.
    for by, neighbours in groupby(raw["limits"], key=lambda limit: limit.get("by")):
        group = list(neighbours)
        limits += _by_choice(group) if by else map(_settable, group)
    return LimitSet(raw["limits_title"], tuple(limits), source)


def _settable(raw: Raw) -> Limit:
    value = float(raw["value"])
    return settable_limit(raw["id"], raw["label"], raw["unit"], value, raw["low"], raw["high"])


def _by_choice(group: list[Raw]) -> Iterator[Limit]:
    """The limits of each choice together, so that a form shows them row by row."""
    for choice in group[0]["values"]:
        for raw in group:
            name, label = f"{limit_prefix(choice)}_{raw['id']}", f"{choice}, {raw['label']}"
            value = float(raw["values"][choice])
            yield settable_limit(name, label, raw["unit"], value, raw["low"], raw["high"])
