"""The money on the first two pages: one bar, the budget, and the total line by line."""

from reportlab.lib.units import mm
from reportlab.platypus import Flowable

from inspector.report.cell_runs import PAGE, Cell
from inspector.report.client.all_in_cost import AllIn
from inspector.report.client.blocks import half_of, money_words, text, titled
from inspector.report.client.cost_bar import CostBar, in_millions
from inspector.report.client.decision import Decision
from inspector.report.issue import Issue
from inspector.report.marks import MetMark
from inspector.report.tables import rows_table
from inspector.report.theme import plain
from inspector.values.cell_text import NOT_KNOWN


def cost_block(decision: Decision, width: float) -> list[Flowable]:
    """Return one bar: what she costs until she reaches the brief, against the budget.

    Parameters
    ----------
    decision : Decision
    width : float
        Points.

    Returns
    -------
    list of Flowable
    """
    cost = decision.cost
    head = "To reach the brief"
    if cost.total is not None and cost.currency:
        scale = "million " if in_millions(cost) else ""
        head = f"{head}, {scale}{plain(cost.currency, 12)}"
    body: list[Flowable] = [titled(head)]
    if cost.total is None:
        return [*body, text([(_why_no_total(cost), "")], "point")]
    said = f"Four in five stay below {money_words(cost.planned, cost.currency)}."
    planned = [text([(said, "")], "point")] if cost.planned is not None else []
    return [*body, CostBar(cost, width), *planned, *_open(cost)]


def _open(cost: AllIn) -> list[Flowable]:
    """What is not priced: with it the total is so much at least."""
    if not cost.open:
        return []
    named = "; ".join(plain(name, 60) for name in cost.open[:4])
    more = f" and {len(cost.open) - 4} more" if len(cost.open) > 4 else ""
    words = f"So much at least. Not priced: {named}{more}."
    return [text([(words, "soft"), ("chapter-money", PAGE)], "point")]


def _why_no_total(cost: AllIn) -> str:
    named = [plain(name, 60) for name in cost.open[:3]]
    lacks = f" Not priced: {'; '.join(named)}." if named else ""
    return f"Nothing is priced yet, so there is no total.{lacks}"


def budget_row(cost: AllIn) -> list[Cell]:
    """Return the line of the budget among what is asked and offered.

    Parameters
    ----------
    cost : AllIn

    Returns
    -------
    list of Cell
    """
    total = cost.total
    budget = money_words(cost.budget, cost.currency)
    if total is None:
        return [MetMark(None), "Vessel and work", f"at most {budget}", _why_no_total(cost), "", ""]
    low, high = (money_words(end, cost.currency) for end in (total.low, total.high))
    met = True if total.high <= cost.budget else False if total.low > cost.budget else None
    # A sum that lacks lines may yet pass the budget.
    met = None if met and cost.open else met
    side = "left" if cost.left >= 0 else "over"
    return [
        MetMark(met),
        "Vessel and all of the work",
        f"at most {budget}",
        [(f"{money_words(total.middle, cost.currency)} ({low} to {high})", "")],
        [
            (
                f"{money_words(abs(cost.left), cost.currency)} {side}, by the total to plan with",
                "soft",
            )
        ],
        [("chapter-money", PAGE)],
    ]


def money_block(decision: Decision, issue: Issue) -> list[Flowable]:
    """Return the one total, line by line.

    Parameters
    ----------
    decision : Decision
    issue : Issue

    Returns
    -------
    list of Flowable
    """
    cost = decision.cost
    rows: list[tuple[str, float | None, str]] = [(name, likely, "") for name, likely in cost.heads]
    rows += [
        ("all of it, as likely as not", cost.total.middle if cost.total else None, "b"),
        ("all of it, four in five stay below", cost.planned, "b"),
        ("budget", cost.budget, ""),
        ("left of the budget, by that", cost.left, "b"),
    ]
    made: list[list[Cell]] = [
        [
            [(name, tone)],
            [(NOT_KNOWN if value is None else money_words(value, cost.currency), tone)],
        ]
        for name, value, tone in rows
    ]
    half = half_of(issue)
    body: list[Flowable] = [titled("The money, in one sum")]
    body.append(rows_table(("", ""), made, (half - 40 * mm, 40 * mm), right=(1,), tight=True))
    return [*body, *_open(cost)]
