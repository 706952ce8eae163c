"""The tables and drawings of the chapter on papers."""

from collections.abc import Iterator, Sequence
from datetime import date
from textwrap import shorten

from inspector.assess.papers.certificates import Survey, Timeline
from inspector.assess.papers.surveys_due import Due
from inspector.conversion.core.chapter import FigureTable, table_columns
from inspector.conversion.core.drawing import Period
from inspector.conversion.core.drawing import Timeline as TimelineDrawing
from inspector.conversion.papers.calculation import Service
from inspector.values.quantity import Quantity, Sentence, joined, sentence

# Surveys of these states ask nothing of a buyer any more.
SETTLED = ("done", "past", "not needed", "done late")
# More do not fit a page.
MOST_PERIODS = 24
# How many of them the sentence below a drawing names.
NAMED_PERIODS = 4
# Characters of a label beside a timeline.
LABEL_WIDTH = 40


def due_table(due: Sequence[Due], today: date) -> FigureTable:
    """Return what comes due.

    Parameters
    ----------
    due : sequence of Due
    today : date

    Returns
    -------
    FigureTable
    """
    columns = table_columns("certificate", "number", "survey", "window", "state", ("left", "days"))
    rows = tuple(
        (
            entry.certificate.kind,
            entry.certificate.number or None,
            entry.survey.name,
            window(entry.survey),
            entry.survey.state,
            Quantity.exact(entry.survey.left, "days", 0),
        )
        for entry in due
        if entry.survey
    )
    note = sentence(
        "As of {today}. Windows by the harmonised system of survey; flag and class decide, and may "
        "shorten them.",
        today=today,
    )
    return FigureTable("What comes due", columns, rows, note)


def window(survey: Survey) -> Sentence:
    """Return the window of a survey.

    Parameters
    ----------
    survey : Survey

    Returns
    -------
    Sentence
    """
    # A last day only: earlier is always allowed.
    if survey.opens is None:
        return sentence("by {closes}", closes=survey.closes)
    return sentence("{opens} to {closes}", opens=survey.opens, closes=survey.closes)


def services_table(services: Sequence[Service]) -> FigureTable:
    """Return the services and printed dates that were read on board.

    Parameters
    ----------
    services : sequence of Service

    Returns
    -------
    FigureTable
    """
    return FigureTable(
        "Safety equipment and other services read on board",
        table_columns("what", "due", "state"),
        tuple((service.name, service.due, service.state) for service in services),
        "Intervals with their sources are printed with each reading; flag, class and maker may "
        "shorten them.",
    )


def survey_drawing(timelines: Sequence[Timeline], today: date) -> Iterator[TimelineDrawing]:
    """Yield the survey windows that are ahead, where there are any.

    Parameters
    ----------
    timelines : sequence of Timeline
    today : date

    Yields
    ------
    inspector.conversion.core.drawing.Timeline
    """
    periods = [
        _survey_period(timeline.certificate.kind, survey)
        for timeline in timelines
        for survey in timeline.surveys
        if survey.state not in SETTLED
    ]
    periods.sort(key=lambda period: period.end)
    if periods:
        described = joined(
            [
                sentence("{label} {state}, by {end}", label=it.label, state=it.state, end=it.end)
                for it in periods[:NAMED_PERIODS]
            ],
            "; ",
        )
        shown = tuple(periods[:MOST_PERIODS])
        yield TimelineDrawing("Survey windows ahead", today, shown, described)


def _survey_period(kind: str, survey: Survey) -> Period:
    """Return a survey's window as a stretch of the timeline."""
    label = shorten(f"{kind}, {survey.name}", LABEL_WIDTH, placeholder=" …")
    # A survey without a window is a day, drawn as a stroke.
    return Period(label, survey.opens or survey.closes, survey.closes, survey.state)


def service_drawing(services: Sequence[Service], today: date) -> Iterator[TimelineDrawing]:
    """Yield the services that are ahead, where there are any.

    Parameters
    ----------
    services : sequence of Service
    today : date

    Yields
    ------
    inspector.conversion.core.drawing.Timeline
    """
    if not services:
        return
    periods = tuple(
        Period(service.name, service.due, service.due, service.state)
        for service in services[:MOST_PERIODS]
    )
    described = joined(
        [
            sentence("{name} {state}, {due}", name=it.name, state=it.state, due=it.due)
            for it in services[:NAMED_PERIODS]
        ],
        "; ",
    )
    yield TimelineDrawing("Services ahead", today, periods, described)
