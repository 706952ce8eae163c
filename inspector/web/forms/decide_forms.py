"""The forms of Decide: the verdict, the facts, a work line and a finding."""

from collections.abc import Mapping
from textwrap import shorten
from typing import TYPE_CHECKING

from inspector.values.vocabulary import (
    ACTS,
    NEEDS,
    NO,
    PARTS,
    PLACES_OF_WORK,
    SUPPLIERS,
    URGENCIES,
    YES,
)
from inspector.web.forms.form_fields import FormField, TokenForm, make_form

if TYPE_CHECKING:
    from inspector.assess.assessment import Assessment
    from inspector.assess.model import SystemPart


# A number beyond this is a slip of the finger.
LARGEST = 1e12
LONGEST_TEXT, LONGEST_LINE = 4000, 1000
COSTS = ("low", "likely", "high")
LINE_FIGURES = (*COSTS, "weight", "sequence", "weeks")


def _figure(
    name: str, label: str, unit: str = "", low: float = -LARGEST, high: float = LARGEST, **more
) -> FormField:
    """Return a field for a sum of money, or for a figure with a unit."""
    return FormField(name, label, "number", unit, low=low, high=high, **more)


def _years(name: str, label: str) -> FormField:
    return _figure(name, label, "years", 0, 200)


def _cost(name: str, label: str) -> FormField:
    return _figure(name, label, low=0)


REASON = FormField("reason", "Reason", "text", longest=LONGEST_TEXT, lines=2)
FACTS = (
    _years("life_years", "Remaining life"),
    FormField("parts", "Parts", "choice", choices=("", *PARTS), names={"": "not known"}),
    _figure("weight_won", "Weight won by removal", "t"),
    _figure("space_won", "Space won by removal", "m³"),
    FormField(
        "law",
        "May not stay by law",
        "text",
        longest=LONGEST_LINE,
        help="Which rule, and since when.",
    ),
    FormField(
        "beyond_repair",
        "Beyond repair, because",
        "text",
        longest=LONGEST_LINE,
        help="What you saw that nobody can mend.",
    ),
)
# What can be said of the whole system only, and of one unit only.
WHOLE_FACTS = (_cost("services_cost", "Papers and services, cost"),)
UNIT_FACTS = (
    FormField(
        "need",
        "Need of this unit",
        "choice",
        choices=("", *NEEDS),
        names={"": "as the system"},
    ),
)
YEARLY_FACTS = (
    _years("life_refurbished", "Life after refurbishing"),
    _years("life_new", "Life of a new one"),
    _figure("yearly_refurbished", "Yearly cost, refurbished"),
    _figure("yearly_new", "Yearly cost, new"),
    _figure("residual_refurbished", "Worth after its life, refurbished"),
    _figure("residual_new", "Worth after its life, new"),
)
# The check that a line follows from, where one was offered.
OF_CHECK = FormField("check", "Check", "text", longest=80)
LINE = (
    FormField("text", "What the yard would do", "text", longest=LONGEST_LINE),
    FormField("act", "Act", "choice", choices=ACTS),
    _cost("low", "Cost, low"),
    _cost("likely", "Cost, likely"),
    _cost("high", "Cost, high"),
    FormField("quantity", "Quantity", "text", longest=40),
    _figure("weight", "Weight", "t", help="Plus is added, minus is removed."),
    _figure("sequence", "Place in the sequence", low=1, high=9999),
    _figure("weeks", "Weeks in the yard", low=0, high=520),
)
# What the yard's list needs beside: where, how much of it, and who does and supplies what.
_NOT_SAID = {"": "not said"}
FOR_THE_YARD = (
    FormField("quantity_unit", "Unit of the quantity", "text", longest=20),
    FormField("place", "Frame or place", "text", longest=120),
    FormField("done", "Done", "choice", choices=("", *PLACES_OF_WORK), names=_NOT_SAID),
    FormField("supplied_by", "Supplied by", "choice", choices=("", *SUPPLIERS), names=_NOT_SAID),
    FormField("class_attends", "Class attends", "choice", choices=("", YES, NO), names=_NOT_SAID),
)
# The fields of a line that only the yard's list prints, in the order of the form.
LINE_LINKS = (*(each.name for each in FOR_THE_YARD), "after", "finding")
FINDING = (
    FormField("title", "Title", "text"),
    FormField("urgency", "Urgency", "choice", choices=URGENCIES),
    FormField("text", "What was found", "text", longest=LONGEST_TEXT, lines=3),
    FormField("action", "What to do", "text", longest=LONGEST_TEXT, lines=2),
)


def verdict_form(part: "SystemPart", *, posted: bool) -> TokenForm:
    """Return the form of the decision for a system or one of its units, with its reason."""
    decision = FormField("decision", "Decision", "text")
    values = {"unit": "all", "reason": part.whole.reason}
    return make_form([_units_of(part), REASON, decision], values, posted=posted)


def facts_of(unit: str) -> tuple[FormField, ...]:
    """Return the facts that the rules need beside the condition, of a unit or the whole ("all")."""
    return (*(WHOLE_FACTS if unit == "all" else UNIT_FACTS), *FACTS)


def facts_form(unit: str, recorded: Mapping[str, object], *, posted: bool) -> TokenForm:
    """Return the form of the facts of a unit, or of the whole system ("all")."""
    return make_form((*facts_of(unit), *YEARLY_FACTS), recorded, posted=posted)


def line_form(
    part: "SystemPart",
    assessment: "Assessment",
    rates: list[dict[str, str]],
    *,
    posted: bool,
) -> TokenForm:
    """Return the form of one work line, with its costs or a rate and a quantity."""
    names = {"": ""}
    for rate in rates:
        names[rate["id"]] = f"{rate['name']}, {rate['likely']} {rate['currency']}/{rate['unit']}"
    # A rate that is not in the book any more is refused where the line is priced.
    rate = FormField("rate", "or at the rate", "choice", choices=tuple(names), names=names)
    links = (_after_line(assessment), _of_finding(assessment))
    fields = [*LINE, *FOR_THE_YARD, *links, OF_CHECK, _units_of(part), rate]
    return make_form(fields, {"unit": "all"}, posted=posted)


def _after_line(assessment: "Assessment") -> FormField:
    """The choice of the line that must be done before."""
    lines = [line for part in assessment.systems for line in part.lines]
    names = {"": "none"} | {line.id: _short(f"{line.number}: {line.text}") for line in lines}
    return FormField("after", "After line", "choice", choices=tuple(names), names=names)


def _of_finding(assessment: "Assessment") -> FormField:
    """The choice of the finding that asks for the line."""
    found = assessment.findings
    names = {"": "none"} | {one.id: _short(f"{one.number}: {one.title}") for one in found}
    return FormField("finding", "Asked by finding", "choice", choices=tuple(names), names=names)


def _short(text: str) -> str:
    """The name of a choice, which is a label only and keeps nothing."""
    return shorten(text, 60, placeholder=" …")


def finding_form(assessment: "Assessment", *, posted: bool) -> TokenForm:
    """Return the form of a finding that is made on the laptop rather than on the walk."""
    names = {"": "the vessel"}
    for part in assessment.systems:
        names |= {f"{part.system.id}/{unit.id}": unit.name for unit in part.units}
    place = FormField("on", "On", "choice", choices=tuple(names), names=names)
    return make_form([*FINDING, place], posted=posted)


def _units_of(part: "SystemPart") -> FormField:
    """The choice of the system as a whole or one of its units."""
    names = {"all": "the whole system"} | {unit.id: unit.name for unit in part.units}
    return FormField("unit", "For", "choice", choices=tuple(names), names=names)


def figures_of(form: TokenForm, names: tuple[str, ...]) -> dict[str, str | None]:
    """Return the figures of these names as typed; None where a field is empty or has a fault."""
    return {name: None if form[name].errors else form[name].data or None for name in names}
