"""What kind of inspection the report is of, who decides, and what its words mean."""

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Paragraph

from inspector.report.client.client_summary import KIND
from inspector.report.document import heading
from inspector.report.issue import Issue
from inspector.report.tables import rows_table
from inspector.report.theme import STYLES

LIMITS = (
    "This report says what could be seen, read and asked at the time and place named on the "
    "cover. Nothing was dismantled, nothing was tested beyond what the record shows, and hidden "
    "parts were not examined. Fresh paint, cargo, linings and insulation hide defects.",
    "It is not a class survey, not a statutory survey, not a valuation and not an approval of "
    "stability, strength or any conversion. It gives no assurance that a vessel, a space or an "
    "installation may be entered, energised or used.",
    "Local codes, the flag, class and port, and persons licensed by them decide. Work on "
    "electrical, pressure, refrigerant, fire-fighting and lifting equipment, and entry into "
    "enclosed spaces, belong to those who are competent and permitted to do it.",
    "Words are opinions for the client named here, for the brief printed here. What was not "
    "seen counts as unknown: each condition is given as a span that shows what the unseen could "
    "still make of it. Cost and weight figures are estimates for comparison.",
)
MEANINGS = (
    ("good", "as it should be: no action beyond normal upkeep"),
    ("fair", "worn but serviceable: plan upkeep"),
    ("poor", "repair before it is relied upon"),
    ("failed", "does not do its job, or must not be used as it is"),
    ("retain", "keep as it is, with normal upkeep"),
    ("retain, with work", "keep it; the work lines or what is to be put right are done on it"),
    ("refurbish", "keep after the work listed"),
    ("remove", "take out; where it is needed, a new one takes its place"),
    ("refurbish or remove", "only prices can say: price the work and a new one"),
    ("firm", "every critical check was seen as deep as it asks, and nothing open turns the word"),
    ("so far", "what was seen points there; what is still open could change it"),
    ("at least", "seeing more cannot undo it; it may become more"),
    ("not looked at", "nobody looked: unknown, not good"),
    ("decides the vessel", "a part of the ship herself: it cannot be removed, only bought or not"),
    ("reported", "by word of the crew or by paper: it counts as seen where papers are the proof"),
    ("sighted", "looked at on board"),
    ("tested", "run, opened or measured on board, with the load or condition written down"),
    ("danger now", "people may be hurt: tell those aboard today"),
    ("before purchase", "settle before money moves"),
    ("in the yard", "plan with the yard period"),
    ("keep watch", "record, and look again"),
)
BESIDE_A_SOURCE = (
    "Beside the number of a source: cp, common practice, which is guidance and no rule; m, from "
    "memory, to be verified before use; own, a limit that the surveyor cites. Without a mark the "
    "text or an extract of it was read."
)
CONDITION = (
    "Condition counts good as 100, fair 60, poor 25 and failed 0, weighted by check. The span runs "
    "from the condition if all that was not seen were failed to the condition if it were good. A "
    "figure is printed only where enough was seen; several units are counted in its place. A "
    "critical check decides the word, not the figure. Papers and services are printed beside the "
    "word with date and cost; they never make it."
)


def scope_and_limits(issue: Issue) -> list[Flowable]:
    """Return the section on scope and limits.

    Parameters
    ----------
    issue : Issue

    Returns
    -------
    list of Flowable
    """
    half = issue.page.column / 2
    middle = (len(MEANINGS) + 1) // 2
    pairs = [*MEANINGS, *([("", "")] * (2 * middle - len(MEANINGS)))]
    # Two abreast: nobody reads a page of words before he meets the first of them.
    rows = [
        [[(first, "b")], meaning, [(second, "b")], other]
        for (first, meaning), (second, other) in zip(pairs[:middle], pairs[middle:], strict=True)
    ]
    widths = (28 * mm, half - 28 * mm) * 2
    words = rows_table(("word", "what it means here", "", ""), rows, widths, tight=True)
    return [
        heading("Scope and limits of the inspection", "limits"),
        Paragraph(KIND, STYLES["lead"]),
        *(Paragraph(limit, STYLES["body"]) for limit in LIMITS),
        heading("What the words mean", "words", 1),
        words,
        Paragraph(BESIDE_A_SOURCE, STYLES["body"]),
        heading("How condition is calculated", "condition", 1),
        Paragraph(CONDITION, STYLES["body"]),
    ]
