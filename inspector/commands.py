"""What each command does, once its arguments are read."""

import json
from argparse import Namespace
from dataclasses import asdict
from pathlib import Path

from inspector import places
from inspector.checklists import read_library
from inspector.criteria.registry import CRITERIA, criterion, mark_table
from inspector.errors import InspectorError


def _data(options: Namespace) -> Path:
    return (options.data or places.user_data()).expanduser().resolve()


def _desk(options: Namespace):
    from inspector.web.desk import open_desk

    return open_desk(_data(options))


def serve(options: Namespace) -> None:
    """Start on the user's own data."""
    from inspector.serving import serve as run

    run(_data(options), options.port, open_browser=not options.no_browser, share=_share(options))


def _share(options: Namespace):
    from inspector.serving import ShareAsked

    if options.share:
        return ShareAsked(options.address, options.mode)
    if options.address or options.mode:
        raise InspectorError("--address and --mode say how to share; add --share, or leave them out.")
    return None


def demo(options: Namespace) -> None:
    """Start on the invented portfolio, made anew where it is not there yet."""
    from inspector.demo.portfolio import prepare_in
    from inspector.serving import serve as run

    folder = (options.data or places.user_data().with_name("vessel-inspections-demo")).expanduser().resolve()
    run(folder, options.port, open_browser=not options.no_browser, first=prepare_in, share=_share(options))


def list_all(options: Namespace) -> None:
    """Print the inspections."""
    from inspector.web.overview import rows

    found = rows(_desk(options))
    if options.json:
        print(json.dumps(found, ensure_ascii=False, indent=1))
        return
    for row in found:
        print(f"{row['id']}  {row['title']}" + (f"  cannot be read: {row['wrong']}" if row["wrong"] else f"  {row['seen']} of {row['checks']} checks seen"))
        for system in row["systems"]:
            points = "not assessed" if system["condition"] is None else f"{system['condition']:.0f} ({system['low']:.0f} to {system['high']:.0f})"
            print(f"    {system['name']:<32} {system['verdict']:<10} {points}, {system['coverage']:.0%} seen")
    if not found:
        print("No inspections yet. `inspector serve` begins one.")


def report(options: Namespace) -> None:
    """Write the PDF."""
    from inspector.web.making import make_report

    desk = _desk(options)
    make_report(desk, desk.inspections.get(options.id), options.out, paper=options.paper, units=options.units, whole=not options.short)
    print(f"Written: {options.out}")


def take_in(options: Namespace) -> None:
    """Take in a bundle or what a device saved."""
    from inspector.record import holding
    from inspector.web.imports import take_file

    if not options.file.is_file():
        raise InspectorError(f"There is no file {options.file}.")
    with holding.hold(_data(options)):
        print("\n".join(take_file(_desk(options), options.file)))


def judge(options: Namespace) -> None:
    """Judge one reading."""
    pairs = [one.partition("=") for one in options.values]
    wrong = next(("".join(pair) for pair in pairs if not pair[0] or not pair[1]), None)
    if wrong is not None:
        raise InspectorError(f"{wrong!r} is not name=value; an example is temperature=-18.")
    judgement = criterion(options.criterion).apply({name: value for name, _, value in pairs})
    if options.json:
        print(json.dumps(asdict(judgement), ensure_ascii=False, indent=1, default=str))
        return
    source = judgement.source
    print(f"{(judgement.rating or 'no rating').capitalize()}: {judgement.sentence}")
    if judgement.limit is not None:
        margin = "" if judgement.margin is None else f", margin {judgement.margin:g}"
        print(f"Limit {judgement.limit:g} {judgement.unit or ''}".rstrip() + margin)
    print("Source: " + ", ".join(part for part in (source.title, source.edition, source.clause, source.mark) if part))
    for note in judgement.notes:
        print(f"- {note}")


def criteria(options: Namespace) -> None:
    """Print every criterion."""
    table = [
        {"name": one.name, "title": one.title, "inputs": [{"name": i.name, "unit": i.unit or i.kind, "choices": list(i.choices), "optional": i.optional}
                                                          for i in one.inputs],
         "source": one.source.title, "edition": one.source.edition, "clause": one.source.clause, "mark": one.source.mark, "range": one.range_text,
         "checked": one.checked}
        for one in CRITERIA.values()
    ]
    if options.json:
        print(json.dumps(table, ensure_ascii=False, indent=1))
        return
    for row in table:
        inputs = ", ".join(f"{i['name']} [{i['unit']}]" + (" optional" if i["optional"] else "") for i in row["inputs"])
        print(f"{row['name']}: {row['title']}\n    inputs: {inputs}\n    source: {row['source']}, {row['edition']}, {row['clause']} ({row['mark']})")
        print(f"    range: {row['range']}\n    checked: {row['checked']}")
    print(f"\n{mark_table()}")


def checklists(options: Namespace) -> None:
    """Check checklist folders (the shipped one by default)."""
    from inspector.web.desk import known_inputs

    for folder in options.folder or [places.shipped("checklists")]:
        library = read_library(folder, known_inputs())
        systems = library.systems.values()
        for system in systems:
            print(f"{system.name}: {len(system.checks)} checks, {system.minutes():g} min {'with one unit of each kind' if system.kinds else 'a unit'}")
        minutes = sum(system.minutes() for system in systems)
        print(f"{folder}: {sum(len(system.checks) for system in systems)} checks, {minutes:g} min for one unit of each, no mistakes.")


def verify(options: Namespace) -> int:
    """Check journals, photos and numbers; 1 where anything is damaged or an entry is missing."""
    desk, wrong = _desk(options), 0
    for inspection_id in [options.id] if options.id else desk.inspections.ids():
        inspection = desk.inspections.get(inspection_id)
        faults, notes = _faults(inspection), _notes(inspection)
        wrong += len(faults)
        print(f"{inspection_id}: {len(inspection.entries)} whole entries, " + (f"{len(faults)} damaged:" if faults else "nothing damaged."))
        for line in faults + notes:
            print(f"    {line}")
        wrong += bool(inspection.missing())
    return 1 if wrong else 0


def _faults(inspection) -> list[str]:
    from inspector.record import photos

    return [str(one) for one in inspection.damage] + photos.verify(inspection.folder)


def _notes(inspection) -> list[str]:
    # What is not here yet may still come; it is told, with what would be right.
    from inspector.record import photos

    missing = inspection.missing()
    held = [f"{device}: " + (f"entries {', '.join(map(str, missing[device]))} are not here; hand over from that device again." if device in missing
                             else f"1 to {last}, nothing missing.") for device, last in inspection.held().items()]
    spoken_of = [subject.partition("/")[2] for subject in inspection.state.subjects("photo/")]
    refused = inspection.refused()
    return held + photos.missing(inspection.folder, spoken_of) + ([f"{len(refused)} refused entries are kept aside."] if refused else [])
