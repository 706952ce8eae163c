"""Certificates and surveys: what is due, in its window, overdue or postponed on the day, on a timeline; and what a change of purpose opens again."""

from collections.abc import Iterator
from datetime import timedelta

from inspector.assess.assessment import day_of_visit
from inspector.assess.certificates import DATES, Timeline, due_list, timelines
from inspector.conversion.book import Case
from inspector.conversion.chapters import Chapter, Lines, Period
from inspector.conversion.chapters import Timeline as Drawing
from inspector.conversion.shapes import Gap
from inspector.conversion.tables import Column, Table
from inspector.criteria.certificates import KINDS

CERTIFICATES = Table("certificates", "Certificates", "From the ship's file: one row per paper, with the dates endorsed on it.", (
    Column("kind", "Kind", kind="choice", choices=tuple(KINDS), needed=True),
    Column("number", "Number", kind="text"), Column("on_board", "On board", kind="choice", choices=("yes", "no")),
    *(Column(name, label, kind="date") for name, label in DATES.items()),
), subject="certificate")
TABLES = (CERTIFICATES,)
LAST_SHOWN = 40
SERVICED = ("service-due", "printed-expiry")   # criteria whose value is the days left on the day of the visit
SOON = 90
PERSONS = 12


def chapter(case: Case) -> Chapter:
    """The chapter on papers and surveys."""
    lines = timelines(case.state, case.today)
    due = due_list(case.state, case.today)
    services = _services(case)
    if not lines:
        gap = Gap("Certificates", "None is recorded; enter those of the ship's file with their dates.")
        return Chapter("papers", "Certificates and surveys", "No certificate is recorded, so nothing is known of the next surveys.", gaps=(gap,),
                       lines=tuple(_service_lines(services)), warnings=tuple(_warnings(case)), faults=case.faults(*TABLES), tables=("certificates",))
    rows = tuple((one.certificate.kind, one.certificate.number or "–", one.survey.name, _window(one.survey), one.survey.state, str(one.survey.left))
                 for one in due if one.survey)
    table = Lines("What comes due", ("certificate", "number", "survey", "window", "state", "days left"), rows, (5,),
                  f"As of {case.today.isoformat()}. Windows by the harmonised system of survey; flag and class decide, and may shorten them.")
    return Chapter(
        "papers", "Certificates and surveys", _answer(due), lines=(table, *_service_lines(services)), drawings=tuple(_drawings(case, lines, services)),
        warnings=tuple(_warnings(case)),
        gaps=tuple(Gap(one.certificate.kind, one.sentence) for one in due if one.survey is None), faults=case.faults(*TABLES), tables=("certificates",),
        verify="Only the survey status printed by class and flag on the day counts; ask for it before you rely on these dates.",
    )


def _services(case: Case) -> list[Period]:
    """Every service and printed date that was read on board, the first due first: due on the day of the visit plus the days then left."""
    visit = day_of_visit(case.state)
    if visit is None:
        return []
    found = []
    for system in case.assessment.systems:
        for unit in system.units:
            for result in unit.results:
                judged = result.judgement
                if judged and judged.criterion in SERVICED and judged.value is not None and result.applicable:
                    on = visit + timedelta(days=round(judged.value))
                    left = (on - case.today).days
                    state = "overdue" if left < 0 else "due" if left <= SOON else "not yet"
                    found.append(Period(f"{unit.name}: {result.check.title}", on, on, state))
    return sorted(found, key=lambda one: (one.end, one.label))


def _service_lines(services: list[Period]) -> Iterator[Lines]:
    if services:
        yield Lines("Safety equipment and other services read on board", ("what", "due", "state"),
                    tuple((one.label, one.end.isoformat(), one.state) for one in services), (),
                    "Intervals with their sources stand with each reading; flag, class and maker may shorten them.")


def _window(survey) -> str:
    return f"by {survey.closes.isoformat()}" if survey.opens is None else f"{survey.opens.isoformat()} to {survey.closes.isoformat()}"


def _answer(due) -> str:
    known = [one for one in due if one.survey]
    late = [one for one in known if one.survey.state == "overdue"]
    blind = sum(1 for one in known if one.survey.state == "no evidence")
    unproved = f" Nothing on board proves that {'a past survey was' if blind == 1 else f'{blind} past surveys were'} held." if blind else ""
    soon = [one for one in known if one.survey.state in ("due", "in window")]
    if late:
        return f"{len(late)} overdue, first {late[0].certificate.kind} ({late[0].survey.name}); {len(soon)} in the window now.{unproved}"
    ahead = [one for one in known if one.survey.left >= 0]
    if ahead:
        first = min(ahead, key=lambda one: one.survey.closes)
        count = f"{len(soon)} in the window now; the" if soon else "Nothing is overdue; the"
        named = f"{first.certificate.kind} ({first.survey.name}), by {first.survey.closes.isoformat()}, {first.survey.left} days left"
        return f"{count} next to close is {named}.{unproved}"
    return f"No survey with a date is ahead.{unproved}"


def _warnings(case: Case):
    persons = case.assessment.brief.get("persons", "").strip()
    if persons.isdigit() and int(persons) > PERSONS:
        yield (f"The brief asks for {persons} persons. More than 12 passengers make a passenger ship under SOLAS; who counts as crew, special personnel or "
               "passenger is for the flag to say, before a contract is signed.")


def _drawings(case: Case, lines: tuple[Timeline, ...], services: list[Period]) -> Iterator[Drawing]:
    periods = [Period(f"{one.certificate.kind}, {survey.name}"[:LAST_SHOWN], survey.opens or survey.closes, survey.closes, survey.state)
               for one in lines for survey in one.surveys if survey.state not in ("done", "past", "not needed", "done late")]
    periods.sort(key=lambda period: period.end)
    if periods:
        told = "; ".join(f"{one.label} {one.state}, by {one.end.isoformat()}" for one in periods[:4])
        yield Drawing("Survey windows ahead", case.today, tuple(periods[:24]), told)
    if services:
        told = "; ".join(f"{one.label} {one.state}, {one.end.isoformat()}" for one in services[:4])
        yield Drawing("Services ahead", case.today, tuple(services[:24]), told)
