"""The commands that help to decide: what the conversion does, the next look, the comparison, and the tables of one inspection."""

import json
from argparse import Namespace
from dataclasses import asdict
from datetime import date

from inspector.errors import InspectorError
from inspector.record import bundle


def convert(options: Namespace) -> None:
    """Print every chapter: the answer, figures with their spans, warnings and what is missing."""
    from inspector.conversion.contents import convert as chapters_of
    from inspector.report.conversion import amount

    desk, inspection = _opened(options)
    chapters = chapters_of(inspection.state, desk.assessment_of(inspection), date.today())
    if options.json:
        print(json.dumps([asdict(chapter) for chapter in chapters], ensure_ascii=False, indent=1, default=str))
        return
    for chapter in chapters:
        print(f"{chapter.title}\n    {chapter.answer}")
        for figure in chapter.figures:
            ends = (figure.span.low, figure.span.point, figure.span.high) if figure.span else ()
            print(f"    {figure.name}: " + (" / ".join(amount(end, figure.unit, "si") for end in ends) or "not known"))
        for sentence in (*chapter.warnings, *chapter.faults, *(f"missing: {gap.name}: {gap.why}" for gap in chapter.gaps), chapter.verify):
            print(f"    {sentence}" if sentence else "", end="\n" if sentence else "")


def next_look(options: Namespace) -> None:
    """Print what is still worth the minutes left on board."""
    from inspector.assess.next_look import next_look as plan

    desk, inspection = _opened(options)
    if not 0 <= options.minutes <= 1440:
        raise InspectorError(f"The minutes left must be 0 to 1440, and not {options.minutes:g}.")
    assessment = desk.assessment_of(inspection)
    spaces = sorted({result.space for system in assessment.systems for unit in system.units for result in unit.results if result.space})
    if options.here and options.here not in spaces:
        raise InspectorError(f"The space {options.here!r} is not known in this inspection; it is one of: {', '.join(spaces) or 'none yet'}.")
    found = plan(assessment, options.minutes, here=options.here or "", settings=assessment.settings)
    for one in found.advice:
        print(f"{one.look.label}\n    {one.sentence}")
    print(found.why or f"{found.minutes:g} of {options.minutes:g} minutes, walks included.")
    if found.joint:
        print(found.joint)


def compare(options: Namespace) -> None:
    """Write the comparison of several inspections as a PDF."""
    from inspector.conversion.compare import WEIGHTS
    from inspector.report.comparison_report import build
    from inspector.web.compare import comparison
    from inspector.web.desk import open_desk

    if len(options.ids) < 2:
        raise InspectorError("A comparison needs at least two inspections; `inspector list` shows their ids.")
    found = comparison(open_desk(_data(options)), options.ids, WEIGHTS)
    build(found, options.out, paper=options.paper, units=options.units, made_at=date.today().isoformat())
    for place in found.ranking.places:
        print(f"{place.rank}. {place.name}: {place.total.point:.1f} of 100, between {place.total.low:.0f} and {place.total.high:.0f}")
    print(f"Written: {options.out}")


def export(options: Namespace) -> None:
    """Write a bundle (.zip), or the tables for those who calculate on (.xlsx, .csv, .json)."""
    from inspector.conversion.contents import convert as chapters_of
    from inspector.report.sheets import sheets, write

    desk, inspection = _opened(options)
    if options.out.suffix.lower() == ".zip":
        bundle.write(inspection.folder, options.out)
    else:
        assessment = desk.assessment_of(inspection)
        write(sheets(assessment, chapters_of(inspection.state, assessment, date.today())), options.out)
    print(f"Written: {options.out}")


def _data(options: Namespace):
    from inspector import places

    return (options.data or places.user_data()).expanduser().resolve()


def _opened(options: Namespace):
    from inspector.web.desk import open_desk

    desk = open_desk(_data(options))
    return desk, desk.inspections.get(options.id)
