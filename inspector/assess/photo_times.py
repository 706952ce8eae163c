"""When photos were taken, by two clocks: the camera's, which it wrote into the picture, and that of
the device on which the picture was chosen.

A camera that writes no offset from UTC writes the time on its own dial. How far that dial is from
the devices' clocks is the same for all its pictures, so the usual difference is the camera's
offset: time zone and error of its clock together. Our own model.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from statistics import median

# Clocks that are less apart than this are as good as equal.
TOLERANCE = timedelta(minutes=2)


@dataclass(frozen=True)
class CameraClock:
    """What the pictures say of the clocks of cameras.

    Parameters
    ----------
    offset : timedelta or None
        How far a camera's dial is ahead of UTC by the devices' clocks, the usual one of the
        pictures without an offset of their own; None where no picture says it.
    pictures : int
        How many pictures it was found from.
    agree : int
        How many of these agree with it within two minutes.
    """

    offset: timedelta | None
    pictures: int
    agree: int


def camera_clock(photos: Iterable[Mapping[str, str]]) -> CameraClock:
    """Find the offset of the cameras' dials.

    Parameters
    ----------
    photos : iterable of mapping of str to str
        The recorded fields of each photo; "camera_time" and "taken" are read.

    Returns
    -------
    CameraClock

    Notes
    -----
    Our own model: the median of (camera's dial minus device's time), to the minute.
    """
    differences = []
    for fields in photos:
        dial, device = _moment(fields.get("camera_time")), _moment(fields.get("taken"))
        if dial and dial.tzinfo is None and device and device.tzinfo:
            differences.append(dial.replace(tzinfo=UTC) - device)
    if not differences:
        return CameraClock(None, 0, 0)
    seconds = median(each.total_seconds() for each in differences)
    usual = timedelta(minutes=round(seconds / 60))
    agree = sum(abs(each - usual) <= TOLERANCE for each in differences)
    return CameraClock(usual, len(differences), agree)


def in_order(photos: Mapping[str, Mapping[str, str]]) -> list[str]:
    """Put photos in the order in which they were taken.

    Parameters
    ----------
    photos : mapping of str to mapping
        SHA-256 -> the recorded fields, in the order in which they were recorded.

    Returns
    -------
    list of str
        SHA-256 of each; one without any time stays behind the one before it.
    """
    offset = camera_clock(photos.values()).offset or timedelta()
    moments: dict[str, datetime] = {}
    last = datetime.min.replace(tzinfo=UTC)
    for digest, fields in photos.items():
        last = moments[digest] = _taken(fields, offset) or last
    return sorted(photos, key=moments.__getitem__)


def shown_time(fields: Mapping[str, str]) -> str:
    """Return the time of a photo as the register prints it.

    Parameters
    ----------
    fields : mapping of str to str
        Its recorded fields.

    Returns
    -------
    str
        ISO time by the camera, else by the device, else "".
    """
    for name in ("camera_time", "taken"):
        if _moment(fields.get(name)):
            return fields[name]
    return ""


def _taken(fields: Mapping[str, str], offset: timedelta) -> datetime | None:
    """When a photo was taken, in UTC, the camera's word before the device's."""
    dial = _moment(fields.get("camera_time"))
    if dial and dial.tzinfo:
        return dial.astimezone(UTC)
    if dial:
        return dial.replace(tzinfo=UTC) - offset
    device = _moment(fields.get("taken"))
    return device.astimezone(UTC) if device and device.tzinfo else None


def _moment(text: object) -> datetime | None:
    """A recorded time, None for what is none: a device may have written anything."""
    if not isinstance(text, str):
        return None
    try:
        found = datetime.fromisoformat(text)
        # Times at the very ends of the calendar cannot be put into another zone.
        return found if 1 < found.year < 9999 else None
    except ValueError:
        return None


def clock_sentence(clock: CameraClock) -> str:
    """Say how far the cameras' clocks are from those of the devices.

    Parameters
    ----------
    clock : CameraClock

    Returns
    -------
    str
        "" where no picture says it.
    """
    if clock.offset is None:
        return ""
    minutes = round(clock.offset.total_seconds() / 60)
    size = f"{abs(minutes) // 60} h {abs(minutes) % 60:02d} min"
    direction = "ahead of" if minutes >= 0 else "behind"
    others = clock.pictures - clock.agree
    said = (
        f"Cameras that write no time zone were {size} {direction} UTC by the clocks of the devices "
        f"({clock.agree} of {clock.pictures} pictures agree within two minutes)."
    )
    if others:
        said += " The others were chosen later, or are of another camera."
    return said
