"""Refurbishing against replacing: whether both have a price of like scope, and what is too dear."""

from fractions import Fraction

from inspector.assess.model import Facts
from inspector.assess.verdict.annual_cost import (
    Comparison,
    NoAnnualCost,
    Option,
    annual_cost,
    cheaper,
    compare,
)
from inspector.assess.verdict.settings import Settings


def priced(facts: Facts) -> bool:
    """Return whether refurbishing and replacing both have a price.

    Parameters
    ----------
    facts : Facts

    Returns
    -------
    bool
    """
    return facts.refurbish_cost is not None and facts.replace_cost is not None


def too_dear(facts: Facts, settings: Settings) -> bool:
    """Return whether refurbishing costs too much.

    Parameters
    ----------
    facts : Facts
    settings : Settings

    Returns
    -------
    bool
        Clearly dearer a year than replacing where both lives are known, else over its share of
        the price of replacing. False where not both are priced.
    """
    if not priced(facts):
        return False
    yearly = cheaper_a_year(facts, settings)
    if yearly is not None:
        return yearly == "replace"
    # Exact and without a division, so that a price at the limit is not beyond it.
    return _exact(facts.refurbish_cost) > _exact(settings.cost_share) * _exact(facts.replace_cost)


def cheaper_a_year(facts: Facts, settings: Settings) -> str | None:
    """Return which way is clearly cheaper a year.

    Parameters
    ----------
    facts : Facts
    settings : Settings

    Returns
    -------
    str or None
        "refurbish", "replace" or ""; None where lives or prices are not known.
    """
    options = _options(facts)
    if options is None:
        return None
    # Not by `yearly_comparison`: its break-evens take hundreds of evaluations, and the next look
    # asks for the verdict of every answer that may come.
    try:
        costs = [annual_cost(option, settings.discount_rate) for option in options]
    except NoAnnualCost:
        return None
    return cheaper(*costs, settings.clear_difference)


def yearly_comparison(facts: Facts, settings: Settings) -> Comparison | None:
    """Return both ways a year with their break-evens.

    Parameters
    ----------
    facts : Facts
    settings : Settings

    Returns
    -------
    Comparison or None
        None where a life, a price or the rate cannot be used.
    """
    options = _options(facts)
    if options is None:
        return None
    try:
        return compare(*options, settings.discount_rate, settings.clear_difference)
    except NoAnnualCost:
        return None


def _options(facts: Facts) -> tuple[Option, Option] | None:
    """Refurbishing and replacing, where prices and both lives are known."""
    if not priced(facts) or facts.life_refurbished is None or facts.life_new is None:
        return None
    refurbish = Option(
        facts.refurbish_cost,
        facts.life_refurbished,
        facts.residual_refurbished or 0.0,
        facts.yearly_refurbished or 0.0,
    )
    replace = Option(
        facts.replace_cost,
        facts.life_new,
        facts.residual_new or 0.0,
        facts.yearly_new or 0.0,
    )
    return refurbish, replace


def _exact(number: float | None) -> Fraction:
    # repr, because a typed 0.6 means six tenths and not the binary fraction next to it.
    return Fraction(repr(float(number or 0)))
