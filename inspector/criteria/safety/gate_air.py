"""The readings of the air that the gate of an enclosed space asks for."""

from typing import Any

from inspector.criteria.safety.tank_atmosphere import BELOW, LABELS, OXYGEN_BELOW, OXYGEN_LEAST

# The order of testing at a gate, after oxygen.
GASES = ("flammable", "toxic", "carbon_dioxide")

# What the display of a meter shows -> what one of it is in the unit of the recommendation. Parts
# per million of a flammable or toxic gas say nothing without the limit of that gas.
METER_UNITS = {
    "oxygen": {"%": 1.0},
    "flammable": {"% LEL": 1.0, "ppm": None, "% vol": None},
    "toxic": {"% of limit": 1.0, "ppm": None},
    "carbon_dioxide": {"%": 1.0, "ppm": 0.0001},
}


def air_asked() -> list[dict[str, Any]]:
    """Return the readings of the air that a gate asks for, in the order of testing.

    Returns
    -------
    list of dict
        Name, label, what it is in, the recommended figures [%] below and above which it must be
        (None for no such end), and the units that a meter may show, the recommendation's first,
        each with its factor to that one (None where the meter's own limit would have to be known).
    """
    oxygen = {
        "name": "oxygen",
        "label": LABELS["oxygen"],
        "of": "% by volume",
        "below": OXYGEN_BELOW,
        "least": OXYGEN_LEAST,
        "units": METER_UNITS["oxygen"],
    }
    asked = [oxygen]
    for name in GASES:
        _, below, basis = BELOW[name]
        asked.append(
            {
                "name": name,
                "label": LABELS[name],
                "of": f"% {basis}",
                "below": below,
                "least": None,
                "units": METER_UNITS[name],
            }
        )
    return asked
