"""What is still worth the minutes left on board."""

from inspector.record.inspection import Inspection
from inspector.services.data_folder import DataFolder
from inspector.values.errors import InspectorError

LONGEST = 24 * 60  # minutes


def looks_left(data: DataFolder, inspection: Inspection, minutes: float, here: str):
    """Return the looks that are worth the minutes left, in walking order.

    Parameters
    ----------
    data : DataFolder
    inspection : Inspection
    minutes : float
        What is left, walks included [min].
    here : str
        Id of the space where the surveyor is, "" where that is not known.

    Returns
    -------
    Plan
        As ``assess.next_look`` makes it.

    Raises
    ------
    InspectorError
        Where the minutes are less than none or more than a day.
    """
    # Slow to import, and asked for only on board.
    from inspector.assess.next_look.advice import next_look

    # The plan's table grows with the minutes, and nobody is given more than a day.
    if not 0 <= minutes <= LONGEST:
        sentence = f"The minutes left must be 0 to {LONGEST}, and not {minutes:g}."
        raise InspectorError(sentence)
    assessment = data.assessment_of(inspection)
    return next_look(assessment, minutes, here=here, settings=assessment.settings)
