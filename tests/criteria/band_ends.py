"""Where a criterion changes its judgement, asked of the criterion itself as a phone would."""

from inspector.checklists.registry import criterion


def band_ends(name: str, **others: object) -> list[float]:
    """Return the ends of the bands of a criterion's first input, without the last band, which
    has none."""
    return [band.upto for band in criterion(name).bands_for(others).bands[:-1]]
