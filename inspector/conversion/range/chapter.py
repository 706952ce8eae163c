"""The chapter on range and endurance: it reads, calculates and presents."""

from inspector.conversion.core.case import Case
from inspector.conversion.core.chapter import Chapter, FigureTable
from inspector.conversion.core.claims import CLAIMS
from inspector.conversion.core.span import ConversionError
from inspector.conversion.range import presentation
from inspector.conversion.range.calculation import Results, calculate, gaps_of, requirements_of
from inspector.conversion.range.compared.claimed import claims_of_range
from inspector.conversion.range.particulars import read_inputs
from inspector.conversion.range.range_tables import READ

ID, TITLE = "range", "Range and endurance"
VERIFY = (
    "At the displacement after the changes, as far as weights are typed. "
    "Verify before you rely on it: a range is proved by consumption measured on her own passages "
    "at the displacement she will have."
)


def chapter(case: Case) -> Chapter:
    """Return the chapter on range and endurance.

    Parameters
    ----------
    case : Case

    Returns
    -------
    Chapter
        What cannot be used is reported in it.
    """
    inputs = read_inputs(case)
    faults = (*case.faults(*READ, CLAIMS), *inputs.faults)
    particulars = tuple(table.id for table in (*READ, CLAIMS))
    try:
        results = calculate(inputs)
    # A refusal by the formulas is shown as what was typed wrongly; a page never fails by it.
    except ConversionError as problem:
        return Chapter(
            ID,
            TITLE,
            "Range cannot be calculated from what was typed.",
            gaps=gaps_of(inputs),
            faults=(*faults, str(problem)),
            particulars=particulars,
        )
    return Chapter(
        ID,
        TITLE,
        presentation.answer_of(results),
        presentation.figures_of(results),
        (*presentation.tables_of(inputs, results), *_claims(case, results)),
        presentation.drawings_of(inputs, results),
        warnings=inputs.told,
        gaps=gaps_of(inputs),
        faults=faults,
        verify=VERIFY,
        particulars=particulars,
        requirements=requirements_of(inputs, results),
    )


def _claims(case: Case, results: Results) -> tuple[FigureTable, ...]:
    """Return the claims beside what was found, where there are any."""
    table = claims_of_range(case, results.ship)
    return () if table is None else (table,)
