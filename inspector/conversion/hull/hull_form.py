"""From what is known of a hull to the hulls that it could be.

What nobody measured is spread over its usual range and listed. The hulls are the corners of the box
of all uncertain values and its middle; the spread over them is taken for that over the box.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import product

from inspector.conversion.core.bounds import BadInput, or_default, plain, within
from inspector.conversion.core.figure import Default, Gap
from inspector.conversion.core.span import Span
from inspector.conversion.hull.hull_geometry import Appendage, Hull, Tunnel
from inspector.conversion.hull.resistance import Water, outside_boxes, resistance

FULL_FORM = "usual for full-form workboats"
MIDSHIP = Default("midship coefficient C_M", Span(0.95, 0.96, 0.97), FULL_FORM)
WATERPLANE = Default(
    "waterplane coefficient C_WP", Span(0.85, 0.87, 0.90), "usual for hulls with a wide transom"
)
CENTRE = Default("lcb, forward of midlength", Span(-2.0, -1.0, 0.0), FULL_FORM, unit="%")
# Of breadth × draught.
TRANSOM_SHARE = Span(0.0, 0.0, 0.04)
BULB = Default("bulb area", 0.0, "no bulb was recorded", unit="m²")
BULB_HEIGHT = Default(
    "middle of the bulb above keel, of the draught forward", 0.4, "its height was not given"
)
STERN = Default("stern shape C_stern", 0.0, "normal sections aft")
TUNNEL = Default(
    "coefficient C_BTO of a thruster tunnel", 0.0075, "0.003 to 0.012 by how fair its openings are"
)
APPENDAGE_FACTOR = Default("appendage factor 1 + k2", 2.0, FULL_FORM)
APPENDAGE_SHARE = Span(0.04, 0.045, 0.05)
WATERLINE_SHARE = 1.02
INSIDE = Default("error of the regression", 0.10, "the hull resembles ships behind the formulas")
OUTSIDE = Default(
    "error of the regression",
    0.25,
    "the hull lies outside the ships behind the formulas: extrapolated",
)
Maybe = float | Span | None


@dataclass(frozen=True)
class Particulars:
    """What is known of a hull; None is not known.

    Parameters
    ----------
    breadth, draught_fore, draught_aft : float or None
        Moulded [m].
    displacement : float or Span or None
        At those draughts [t].
    length_waterline, length_between : float or None
        Of the waterline, and between perpendiculars [m].
    midship, waterplane : float or Span or None
        The coefficients C_M and C_WP.
    lcb : float or Span or None
        Centre of buoyancy forward of midlength [% of length].
    transom_area : float or None
        Immersed at rest [m²].
    appendage_area : float or Span or None
        [m²]
    appendage_factor : float or None
        1 + k2.
    bulb_area : float or None
        [m²]
    bulb_height : float or None
        Of the middle of the bulb above the keel [m].
    stern : float or None
        C_stern.
    tunnels : tuple of Tunnel
    water_density : float
        [kg/m³]
    """

    breadth: float | None = None
    draught_fore: float | None = None
    draught_aft: float | None = None
    displacement: Maybe = None
    length_waterline: float | None = None
    length_between: float | None = None
    midship: Maybe = None
    waterplane: Maybe = None
    lcb: Maybe = None
    transom_area: float | None = None
    appendage_area: Maybe = None
    appendage_factor: float | None = None
    bulb_area: float | None = None
    bulb_height: float | None = None
    stern: float | None = None
    tunnels: tuple[Tunnel, ...] = ()
    water_density: float = 1025.0


@dataclass(frozen=True)
class HullForms:
    """The hulls that the particulars allow.

    Parameters
    ----------
    middle : Hull or None
        None where a gap forbids any.
    corners : tuple of Hull
    defaults : tuple of Default
    gaps : tuple of Gap
    water : Water
    """

    middle: Hull | None
    corners: tuple[Hull, ...] = ()
    defaults: tuple[Default, ...] = ()
    gaps: tuple[Gap, ...] = ()
    water: Water = Water()


def hull_forms(known: Particulars) -> HullForms:
    """Return the hulls that the particulars allow.

    Parameters
    ----------
    known : Particulars

    Returns
    -------
    HullForms

    Raises
    ------
    BadInput
        A value that cannot be meant, or values that do not fit each other, with ``field``.

    References
    ----------
    Model of our own: usual ranges of full-form workboats (common practice).
    """
    # Without its main dimensions no hull can be guessed: what is missing is named, all at once.
    gaps = _gaps(known)
    if gaps:
        return HullForms(None, gaps=gaps)
    length, from_length = _length(known)
    displacement = within("hull: displacement", known.displacement, 10, 500_000, "t")
    mean = (known.draught_fore + known.draught_aft) / 2
    draught = plain("hull: draught", mean, 0.3, 30, "m")
    water = Water(density=known.water_density)
    # Tonnes are masses: in lighter water the same ship displaces more.
    volume = displacement * (1000 / water.density)
    uncertain = {
        "midship": or_default(known.midship, MIDSHIP),
        "waterplane": or_default(known.waterplane, WATERPLANE),
        "lcb": or_default(known.lcb, CENTRE),
        "appendages": or_default(known.appendage_area, _appendages(length, draught, volume)),
        "transom": or_default(known.transom_area, _transom(known.breadth, draught)),
    }
    single, from_single = _single_values(known)
    spans = {"volume": volume, **{name: value for name, (value, _) in uncertain.items()}}
    # An exact value has one end, so that certain inputs do not double the corners.
    ends = [dict.fromkeys((span.low, span.high)) for span in spans.values()]
    # All corners, since nobody can say which end of lcb or C_M is the dear one at this speed.
    corners = [dict(zip(spans, values, strict=True)) for values in product(*ends)]
    middle = {name: span.middle for name, span in spans.items()}
    used = [default for _, defaults in uncertain.values() for default in defaults]
    return HullForms(
        _hull(known, length, single, middle),
        tuple(_hull(known, length, single, values) for values in corners),
        (*from_length, *used, *from_single, *((TUNNEL,) if known.tunnels else ())),
        (),
        water,
    )


def _hull(
    known: Particulars, length: float, single: Mapping[str, float], values: Mapping[str, float]
) -> Hull:
    """The hull of one choice of all uncertain values."""
    area = values["appendages"]
    return Hull(
        length,
        known.breadth,
        known.draught_fore,
        known.draught_aft,
        values["volume"],
        values["lcb"],
        values["midship"],
        values["waterplane"],
        values["transom"],
        (Appendage(area, single["factor"]),) if area else (),
        known.tunnels,
        single["bulb"],
        single["height"],
        single["stern"],
    )


def effective_power(
    forms: HullForms, speed: float, edition: int = 1984
) -> tuple[Span, tuple[Default, ...], tuple[str, ...]]:
    """Return the effective power at a speed over all hulls and the error of the method.

    Parameters
    ----------
    forms : HullForms
    speed : float
        0.5 to 60 [kn].
    edition : int
        1982 or 1984.

    Returns
    -------
    tuple of (Span, tuple of Default, tuple of str)
        The power [kW], the error that was used, and what is outside the ships behind the formulas.

    Raises
    ------
    BadInput
        The forms have no hull, or the speed cannot be meant.

    References
    ----------
    Holtrop 1984, see ``resistance``; its error of 10 %, or 25 % beyond the ships behind the
    formulas (common practice).
    """
    if forms.middle is None:
        problem = "Hull: no hull follows from these particulars, see the gaps."
        raise BadInput(problem, field="hull", value=None)
    point, *powers = (
        resistance(hull, speed, edition, forms.water).effective_power
        for hull in (forms.middle, *forms.corners)
    )
    # Judged on the middle hull: the corners are no vessels, only limits.
    outside = outside_boxes(forms.middle, speed)
    error = OUTSIDE if outside else INSIDE
    spread = Span(min(point, *powers), point, max(point, *powers))
    # The regression's own error on top of the uncertain hull: the two have nothing to do with each
    # other.
    return spread * Span.around(1.0, error.value), (error,), outside


def _gaps(known: Particulars) -> tuple[Gap, ...]:
    """Return the main dimensions that are missing."""
    needed = {
        "breadth": known.breadth,
        "draught forward": known.draught_fore,
        "draught aft": known.draught_aft,
        "displacement": known.displacement,
        "length on the waterline": known.length_waterline or known.length_between,
    }
    return tuple(
        Gap(f"hull: {name}", "no resistance can be calculated without it")
        for name, value in needed.items()
        if value is None
    )


def _length(known: Particulars) -> tuple[float, tuple[Default, ...]]:
    """Return the waterline length [m], and the default where it follows from the perpendiculars."""
    # The waterline is what the formulas mean; a length between perpendiculars is only near it.
    if known.length_waterline is not None:
        length = plain("hull: length on the waterline", known.length_waterline, 10, 450, "m")
        return length, ()
    between = plain("hull: length between perpendiculars", known.length_between, 10, 450, "m")
    length = WATERLINE_SHARE * between
    why = f"{WATERLINE_SHARE} of the length between perpendiculars"
    return length, (Default("length on the waterline", length, why, unit="m"),)


def _appendages(length: float, draught: float, volume: Span) -> Default:
    """Return the usual area of appendages [m²], as a listed default."""
    # The surface by Denny and Mumford is close enough for a share of 4 to 5 %.
    area = (1.7 * length * draught + volume / draught) * APPENDAGE_SHARE
    return Default("appendage area", area, "4 to 5 % of the wetted surface", unit="m²")


def _transom(breadth: float, draught: float) -> Default:
    """Return the immersed area of a transom [m²] where nobody measured it, as a listed default."""
    area = TRANSOM_SHARE * (breadth * draught)
    why = "clear of the water at the design draught as a rule, and immersed where she is laden aft"
    return Default("immersed transom area", area, why, unit="m²")


def _single_values(known: Particulars) -> tuple[dict[str, float], tuple[Default, ...]]:
    """Return what enters as one number, with the defaults of what nobody gave."""
    given = {
        "bulb": (known.bulb_area, BULB),
        "stern": (known.stern, STERN),
        "factor": (known.appendage_factor, APPENDAGE_FACTOR),
    }
    # A height is asked for, and listed as assumed, only where there is a bulb.
    if known.bulb_area:
        given["height"] = (known.bulb_height, BULB_HEIGHT)
    values = {"height": 0.0}
    for name, (value, default) in given.items():
        values[name] = default.value if value is None else value
    if known.bulb_area and known.bulb_height is None:
        # The default is a share of the draught, a given height is in metres.
        values["height"] *= known.draught_fore
    return values, tuple(default for value, default in given.values() if value is None)
