"""The surveyor's settings of the rules, each with its meaning and the range it may have; kept as
typed.

None of them is a published limit: they are our own choice (common practice at best), a firm may set
its own, and the report prints those used.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from inspector.values.field import Field, FieldRefused


@dataclass(frozen=True)
class Settings:
    """The levels of the rules, as the rules use them; SETTINGS explains each one that may be set.

    Parameters
    ----------
    coverage : float
        Share of a unit's weight that must be found good for a firm word, 0 to 1.
    retain_from : float
        Condition, of 100.
    cost_share : float
        Share of the price of replacing, 0 to 1.
    discount_rate : float
        A year, 0.08 for 8 %.
    clear_difference : float
        Share of the dearer yearly cost, 0 to 1.
    horizon : float or None
        Years.
    prior_sound : float
        Chance that a unit of which nothing is known is sound, 0 to 1.
    critical_factor : float
        How many times a critical check counts, against another one of its weight.
    sister_share : float
        How much an answer on a like unit says of this one, 0 to 1.
    prior_strength : float
        What is assumed before a look counts like so many heavy checks that were seen.
    sighted_share : float
        What a critical check tells without the test that proves it, 0 to 1.
    most_stake : float
        How many times more a look is worth at the dearest unit than at the middle one; at the
        cheapest it is so many times less.
    glance_share : float
        What a look in passing tells of what the whole look would, 0 to 1.
    entering_minutes : float
        What it takes to come to the next stop of a round.
    need_useful, need_neutral : float
        Worth of a look at what is useful, or neutral, against one at what is required, 0 to 1.
    pricing_minutes : float
        What it takes to price a repair and a new one.
    late_factor : float
        How many times dearer a fault is that is found after the purchase.
    buying_worth : float or None
        In the currency of the work lines.
    """

    coverage: float = 0.45
    retain_from: float = 70.0
    cost_share: float = 0.60
    discount_rate: float = 0.08
    clear_difference: float = 0.05
    horizon: float | None = None
    prior_sound: float = 0.60
    critical_factor: float = 4.0
    sister_share: float = 0.50
    prior_strength: float = 2.0
    sighted_share: float = 0.50
    most_stake: float = 2.0
    # A glance finds most of what is bad, and never proves a thing good.
    glance_share: float = 0.75
    entering_minutes: float = 1.0
    need_useful: float = 0.50
    need_neutral: float = 0.10
    pricing_minutes: float = 15.0
    late_factor: float = 1.5
    buying_worth: float | None = None


# Shares are fractions here and typed in %: `scale` in SETTINGS is between the two.
DEFAULTS = Settings()


@dataclass(frozen=True)
class Setting:
    """One setting as a person types it.

    Parameters
    ----------
    field : Field
        The field in which it is typed.
    scale : float
        How many of the field's unit are 1 of the rule's own figure: 100 for a share typed in %.
    """

    field: Field
    scale: float = 1.0

    @property
    def default(self) -> str:
        """The default as a person would type it, "" where there is none."""
        value = getattr(DEFAULTS, self.field.name)
        return "" if value is None else f"{value * self.scale:g}"

    def read(self, text: str) -> float | None:
        """Read the setting as typed.

        Parameters
        ----------
        text : str
            In the unit of the field.

        Returns
        -------
        float or None
            As the rules use it; None where nothing was typed.

        Raises
        ------
        FieldRefused
            With one sentence.
        """
        value = self.field.parse(text)
        return None if value is None else value / self.scale

    def formatted(self, settings: Settings) -> str:
        """Return the value that is used, as text with its unit.

        Parameters
        ----------
        settings : Settings
            The settings used.

        Returns
        -------
        str
            "not set" where there is no value.
        """
        value = getattr(settings, self.field.name)
        # Rounded, so that a share of 0.07 does not read 7.000000000000001 %.
        return "not set" if value is None else self.field.formatted(round(value * self.scale, 6))


def _setting(
    name: str, label: str, unit: str, low: float, high: float, help: str, scale: float = 1.0
) -> Setting:
    return Setting(Field(name, label, "number", unit, (), True, low, high, help=help), scale)


SETTINGS = (
    _setting(
        "coverage",
        "Enough seen",
        "%",
        0,
        100,
        "Share of a unit's weight to be found good, beside every critical check, for a firm word.",
        100,
    ),
    _setting(
        "retain_from",
        "Retain from",
        "",
        1,
        100,
        "Condition, of 100, from which a unit stays as it is.",
    ),
    _setting(
        "cost_share",
        "Repair to replace",
        "%",
        1,
        100,
        "Refurbishing may cost at most this share of replacing.",
        100,
    ),
    _setting(
        "discount_rate",
        "Discount rate",
        "%",
        0,
        50,
        "A year, for the comparison of yearly costs; real with today's prices.",
        100,
    ),
    _setting(
        "clear_difference",
        "Clear difference",
        "%",
        0,
        50,
        "Yearly costs nearer than this are no clear difference.",
        100,
    ),
    _setting(
        "horizon",
        "Horizon",
        "years",
        0,
        60,
        "Used where the brief names none; empty: no horizon is assumed.",
    ),
    _setting(
        "prior_sound",
        "Sound before a look",
        "%",
        1,
        99,
        "Chance that a unit of which nothing is known is sound; ranks the next look.",
        100,
    ),
    _setting(
        "critical_factor",
        "Weight of a critical check",
        "",
        1,
        20,
        "How many times it counts, against another check of its weight; ranks the next look.",
    ),
    _setting(
        "sister_share",
        "Answer on a sister unit",
        "%",
        0,
        100,
        "How much an answer on a like unit says of this one; ranks the next look.",
        100,
    ),
    _setting(
        "prior_strength",
        "Before a look weighs",
        "",
        0.1,
        20,
        "What is assumed counts like so many heavy checks that were seen; ranks the next look.",
    ),
    _setting(
        "sighted_share",
        "Sighted only tells",
        "%",
        0,
        100,
        "What a critical check tells without the test that proves it; ranks the next look.",
        100,
    ),
    _setting(
        "most_stake",
        "The dearest counts",
        "",
        1,
        10,
        "So many times the middle one, and the cheapest so many times less; ranks the next look.",
    ),
    _setting(
        "glance_share",
        "A glance tells",
        "%",
        0,
        100,
        "Of what the whole look would tell; chooses the looks of a round.",
        100,
    ),
    _setting(
        "entering_minutes",
        "Coming to a stop",
        "min",
        0,
        30,
        "With finding one's bearings there; chooses the looks of a round.",
    ),
    _setting(
        "need_useful",
        "Look at the useful",
        "%",
        0,
        100,
        "Worth of a look at what is useful, against what is required.",
        100,
    ),
    _setting(
        "need_neutral",
        "Look at the neutral",
        "%",
        0,
        100,
        "Worth of a look at what is neutral, against what is required.",
        100,
    ),
    _setting(
        "pricing_minutes",
        "Minutes to price both",
        "min",
        1,
        480,
        "What it takes to price a repair and a new one; ranks the next look.",
    ),
    _setting(
        "late_factor",
        "Found too late",
        "",
        1,
        10,
        "How many times dearer a fault is when found after the purchase; ranks the next look.",
    ),
    _setting(
        "buying_worth",
        "Worth of a sound vessel",
        "",
        0,
        1e12,
        "What buying wins if nothing is wrong, in the work lines' currency; may stay empty.",
    ),
)


def read_settings(typed: Mapping[str, str]) -> tuple[Settings, tuple[str, ...]]:
    """Read all settings as typed.

    Parameters
    ----------
    typed : mapping of str to str
        Name -> text; a setting that is not there has its default.

    Returns
    -------
    tuple of (Settings, tuple of str)
        The settings to use, and a sentence for each that cannot be used and so has its default.
    """
    values, faults = {}, []
    for setting in SETTINGS:
        name = setting.field.name
        try:
            value = setting.read(typed.get(name, ""))
        except FieldRefused as refusal:
            faults.append(str(refusal))
            # The default counts then, and the fault is shown beside it.
            continue
        if value is not None:
            values[name] = value
    return Settings(**values), tuple(faults)


def settings_used(settings: Settings) -> tuple[tuple[str, str, bool], ...]:
    """List the settings used.

    Parameters
    ----------
    settings : Settings
        The settings used.

    Returns
    -------
    tuple of (str, str, bool)
        Label, value as text, and whether it is the default.
    """
    return tuple(
        (setting.field.label, setting.formatted(settings), _is_default(setting, settings))
        for setting in SETTINGS
    )


def _is_default(setting: Setting, settings: Settings) -> bool:
    name = setting.field.name
    return getattr(settings, name) == getattr(DEFAULTS, name)
