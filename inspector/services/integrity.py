"""Whether an inspection's files are whole, and what devices have not handed over yet."""

from collections.abc import Iterator
from dataclasses import dataclass

from inspector.record import photos
from inspector.record.device_counts import MOST_NAMED
from inspector.record.inspection import Inspection


@dataclass(frozen=True)
class Integrity:
    """What was found in one inspection's folder.

    Parameters
    ----------
    entries : int
        Whole entries.
    faults : tuple of str
        A sentence for each damaged line and photo.
    notes : tuple of str
        What is here of each device, and what is missing and may still come.
    complete : bool
        True where nothing is damaged and no entry is missing or gone.
    """

    entries: int
    faults: tuple[str, ...]
    notes: tuple[str, ...]
    complete: bool


def check_integrity(inspection: Inspection) -> Integrity:
    """Check the journals, the photos and the numbers of the entries.

    Parameters
    ----------
    inspection : Inspection

    Returns
    -------
    Integrity
    """
    faults = [str(damage) for damage in inspection.damage] + photos.verify(inspection.folder)
    return Integrity(
        entries=len(inspection.entries),
        faults=tuple(faults),
        notes=tuple(_notes(inspection)),
        # Nothing damaged is not all: a device may have handed over only part of what it recorded.
        complete=not faults and not inspection.missing() and not inspection.written_and_gone(),
    )


def take_in_kept_aside(inspection: Inspection) -> str:
    """Take in the refused entries that were kept aside, as far as they say anything new.

    Parameters
    ----------
    inspection : Inspection

    Returns
    -------
    str
        The sentence on what was taken and what stays aside.
    """
    taken, left = inspection.take_in_kept_aside(), len(inspection.refused())
    entries = "entry that was" if taken == 1 else "entries that were"
    sentence = f"{taken} {entries} kept aside taken in."
    if not left:
        return sentence
    return f"{sentence} {left} stay aside: no whole entry can be read in them."


def older_than_written(inspection: Inspection) -> Iterator[str]:
    """Yield a sentence for each name of this computer whose last entries are gone.

    Parameters
    ----------
    inspection : Inspection
    """
    for name, (first, last) in inspection.written_and_gone().items():
        numbers = f"entry {first}" if first == last else f"entries {first} to {last}"
        yield (
            f"{name}: this computer wrote {numbers}, which are not here now. An older backup may "
            "have been put back; bring in a bundle from whoever has a newer state."
        )


def _notes(inspection: Inspection) -> Iterator[str]:
    missing = inspection.missing()
    for device, last in inspection.complete_up_to().items():
        if device in missing:
            numbers = ", ".join(_ranges(missing[device]))
            more = " and more" if len(missing[device]) == MOST_NAMED else ""
            yield f"{device}: entries {numbers}{more} are not here; hand over from it again."
        else:
            yield f"{device}: 1 to {last}, nothing missing."
    yield from older_than_written(inspection)
    mentioned = [subject.partition("/")[2] for subject in inspection.state.subjects("photo/")]
    # A photo that is not here yet may still come, so this is no damage.
    yield from photos.missing(inspection.folder, mentioned)
    # The other way round as well: a picture of which no entry tells where it was taken.
    named = {subject.partition("/")[2] for subject in inspection.state.subjects("photo/")}
    for sha in photos.kept(inspection.folder):
        if sha not in named:
            yield (
                f"The photo {sha[:12]}… is here and nothing here says where it belongs; the device "
                "that took it has that, or it is among what was kept aside."
            )


def _ranges(numbers: list[int]) -> Iterator[str]:
    """Rising numbers as text, such as "3", "7 to 9"."""
    first = last = numbers[0]
    # The None behind the last number closes its range.
    for number in [*numbers[1:], None]:
        if number == last + 1:
            last = number
            continue
        yield str(first) if first == last else f"{first} to {last}"
        first = last = number
