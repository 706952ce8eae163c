"""A file that is brought in: a bundle, a whole backup, or what a device saved because it could not
hand it over."""

from dataclasses import dataclass
from pathlib import Path

from inspector.record.bundles import bundle, saved_file
from inspector.services import restore
from inspector.services.data_folder import DataFolder

# A page with more sentences than this is not read.
MOST_SHOWN = 50


@dataclass(frozen=True)
class Imported:
    """What a file brought.

    Parameters
    ----------
    sentences : list of str
        On what it brought and what of it was refused.
    refused : int
        How many entries, photos and lines of it were not taken in.
    """

    sentences: list[str]
    refused: int


def import_file(data: DataFolder, path: Path) -> Imported:
    """Take a bundle, a backup or a device's file in, whichever it is by its content.

    Parameters
    ----------
    data : DataFolder
    path : Path

    Returns
    -------
    Imported

    Raises
    ------
    InspectorError
        With one sentence where nothing of the file can be taken in.
    """
    # By its first bytes: the name that came with it proves nothing.
    with open(path, "rb") as file:
        head = file.read(64).lstrip()
    if head.startswith(b"{"):
        brought = saved_file.take_in(path, data.inspections)
        summary = (
            f"{brought.inspection}: new entries {brought.entries}, "
            f"known already {brought.known}, new photos {brought.photos}."
        )
        return Imported([summary, *_refused_sentences(brought.refused)], len(brought.refused))
    # Before bundles: a backup is a zip file as well, and contains some.
    if restore.is_backup(path):
        restored = restore.restore(data, path)
        return Imported([restored.sentence(), *restored.notes[:MOST_SHOWN]], 0)
    inspections, refused, news = data.inspections, [], []
    inspection_id, entries, photos = bundle.take_in(
        path, inspections.folder, data.host, inspections.paused, refused, news
    )
    summary = f"{inspection_id}: new entries {entries}, new photos {photos}."
    return Imported([summary, *news, *_refused_sentences(refused)], len(refused))


def _refused_sentences(refused: list[str]) -> list[str]:
    """A sentence for each of the first refusals, and how many more there are."""
    sentences = [f"Not taken in: {reason}" for reason in refused[:MOST_SHOWN]]
    more = len(refused) - MOST_SHOWN
    if more > 0:
        sentences.append(f"Not taken in: {more} more.")
    return sentences
