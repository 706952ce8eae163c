"""The time that a camera wrote into a photo, kept as an entry beside the photo's other facts."""

from inspector.record.inspection import Inspection
from inspector.record.photos import KeptPhoto

FIELD = "camera_time"


def keep_camera_time(inspection: Inspection, photo: KeptPhoto) -> None:
    """Record when a photo was taken by its camera's clock.

    Parameters
    ----------
    inspection : Inspection
        With the entries about the photo; a photo that none mentions is not registered.
    photo : KeptPhoto
        As it was taken in.

    Raises
    ------
    durable.NotWritten
        Where the disk does not take it; the photo is kept and may be handed over again.
    """
    subject = f"photo/{photo.sha}"
    # Kept only once the photo is recorded: the entry must not come before what it is about.
    if not photo.taken_at or not inspection.state.fields(subject):
        return
    # Nobody typed it: it is in the name of the person who took the picture.
    heads = inspection.state.heads(subject, "on")
    who = heads[-1].who if heads else ""
    inspection.record(who, [(subject, FIELD, photo.taken_at)])
