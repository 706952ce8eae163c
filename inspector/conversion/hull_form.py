"""From what a surveyor has of a hull to the hulls that it could be: what nobody measured is spread over its usual range and listed.

The hulls are the corners of the box of all uncertain values and its middle; the spread of a result over them stands for
the spread over the whole box.
"""

from dataclasses import dataclass
from itertools import product

from inspector.conversion.hull import Appendage, Hull, Tunnel
from inspector.conversion.inputs import PRACTICE, BadInput, or_default, within
from inspector.conversion.resistance import Water, outside_boxes, resistance
from inspector.conversion.shapes import Default, Gap, Span, span

FULL_FORM = "usual for full-form workboats"
MIDSHIP = Default("midship coefficient C_M", Span(0.95, 0.96, 0.97), "", FULL_FORM, PRACTICE)
WATERPLANE = Default("waterplane coefficient C_WP", Span(0.85, 0.87, 0.90), "", "usual for hulls with a wide transom", PRACTICE)
CENTRE = Default("lcb, forward of midlength", Span(-2.0, -1.0, 0.0), "%", FULL_FORM, PRACTICE)
TRANSOM = Default("immersed transom area", 0.0, "m²", "a transom is usually clear of the water at the design draught", PRACTICE)
BULB = Default("bulb area", 0.0, "m²", "no bulb was recorded", PRACTICE)
BULB_HEIGHT = Default("middle of the bulb above keel, of the draught forward", 0.4, "", "its height was not given", PRACTICE)
STERN = Default("stern shape C_stern", 0.0, "", "normal sections aft", PRACTICE)
APPENDAGE_FACTOR = Default("appendage factor 1 + k2", 2.0, "", FULL_FORM, PRACTICE)
APPENDAGE_SHARE = Span(0.04, 0.045, 0.05)
WATERLINE_SHARE = 1.02
INSIDE = Default("error of the regression", 0.10, "", "the hull resembles ships behind the formulas", PRACTICE)
OUTSIDE = Default("error of the regression", 0.25, "", "the hull lies outside the ships behind the formulas: extrapolated", PRACTICE)
Maybe = float | Span | None


@dataclass(frozen=True)
class Particulars:
    """What is known of a hull; None is not known.

    breadth, draught_fore, draught_aft, length_waterline, length_between [m]; displacement [t] at those draughts; midship,
    waterplane (coefficients); lcb [% of length forward of its middle]; transom_area, appendage_area, bulb_area [m²];
    appendage_factor (1 + k2); bulb_height [m] above keel; stern (C_stern); tunnels; water_density [kg/m³].
    displacement, midship, waterplane, lcb and appendage_area may be spans.
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
    """The hulls that the particulars allow: ``middle`` (None where a gap forbids any) and ``corners``."""

    middle: Hull | None
    corners: tuple[Hull, ...] = ()
    defaults: tuple[Default, ...] = ()
    gaps: tuple[Gap, ...] = ()
    water: Water = Water()


def hull_forms(known: Particulars) -> HullForms:
    """Spread the particulars over the hulls that they allow.

    Errors
    ------
    BadInput : a value that cannot be meant, or values that do not fit each other, with ``field``.
    """
    gaps = _gaps(known)
    if gaps:
        return HullForms(None, gaps=gaps)
    length, from_length = _length(known)
    displacement = within("hull: displacement", known.displacement, 10, 500_000, "t")
    draught = within("hull: draught", (known.draught_fore + known.draught_aft) / 2, 0.3, 30, "m").low
    water = Water(density=known.water_density)
    volume = displacement * (1000 / water.density)
    midship, d_midship = or_default(known.midship, MIDSHIP)
    waterplane, d_waterplane = or_default(known.waterplane, WATERPLANE)
    lcb, d_lcb = or_default(known.lcb, CENTRE)
    area, d_area = or_default(known.appendage_area, _appendages(length, draught, volume))
    single, from_single = _single_values(known)
    spans = (_pointed(volume), _pointed(midship), _pointed(waterplane), _pointed(lcb), _pointed(area))

    def hull(values: tuple[float, ...]) -> Hull:
        parts = (Appendage(values[4], single["factor"]),) if values[4] else ()
        return Hull(length, known.breadth, known.draught_fore, known.draught_aft, values[0], values[3], values[1], values[2], single["transom"], parts,
                    known.tunnels, single["bulb"], single["height"], single["stern"])

    corners = tuple(hull(values) for values in product(*({s.low: 0, s.high: 0} for s in spans)))
    return HullForms(hull(tuple(s.point for s in spans)), corners, (*from_length, *d_midship, *d_waterplane, *d_lcb, *d_area, *from_single), (), water)


def effective_power(forms: HullForms, speed: float, edition: int = 1984) -> tuple[Span, tuple[Default, ...], tuple[str, ...]]:
    """Effective power [kW] at a speed [kn] over all hulls and the error of the method; the default error used; what lies outside the boxes.

    Errors
    ------
    BadInput : the forms hold no hull, or the speed cannot be meant.
    """
    if forms.middle is None:
        raise BadInput("Hull: no hull can be told from these particulars, see the gaps.", field="hull", value=None)
    point = resistance(forms.middle, speed, edition, forms.water).effective_power
    powers = [resistance(hull, speed, edition, forms.water).effective_power for hull in forms.corners]
    outside = outside_boxes(forms.middle, speed)
    error = OUTSIDE if outside else INSIDE
    spread = Span(min(point, *powers), point, max(point, *powers))
    return spread * Span.around(1.0, error.value), (error,), outside


def _gaps(known: Particulars) -> tuple[Gap, ...]:
    needed = {"breadth": known.breadth, "draught forward": known.draught_fore, "draught aft": known.draught_aft, "displacement": known.displacement,
              "length on the waterline": known.length_waterline or known.length_between}
    return tuple(Gap(f"hull: {name}", "no resistance can be reckoned without it") for name, value in needed.items() if value is None)


def _length(known: Particulars) -> tuple[float, tuple[Default, ...]]:
    if known.length_waterline is not None:
        return within("hull: length on the waterline", known.length_waterline, 10, 450, "m").low, ()
    length = WATERLINE_SHARE * within("hull: length between perpendiculars", known.length_between, 10, 450, "m").low
    return length, (Default("length on the waterline", length, "m", f"{WATERLINE_SHARE} of the length between perpendiculars", PRACTICE),)


def _appendages(length: float, draught: float, volume: Span) -> Default:
    # the Denny-Mumford surface does for a share of 4 to 5 %
    area = (1.7 * length * draught + volume / draught) * APPENDAGE_SHARE
    return Default("appendage area", area, "m²", "4 to 5 % of the wetted surface", PRACTICE)


def _single_values(known: Particulars) -> tuple[dict[str, float], tuple[Default, ...]]:
    given = {"transom": (known.transom_area, TRANSOM), "bulb": (known.bulb_area, BULB), "stern": (known.stern, STERN),
             "factor": (known.appendage_factor, APPENDAGE_FACTOR)}
    if known.bulb_area:
        given["height"] = (known.bulb_height, BULB_HEIGHT)
    values = {"height": 0.0, **{name: default.value if value is None else value for name, (value, default) in given.items()}}
    if known.bulb_area and known.bulb_height is None:
        values["height"] *= known.draught_fore
    return values, tuple(default for value, default in given.values() if value is None)


def _pointed(value: Span) -> Span:
    # a span without a point still has to show a middle hull
    return value if value.point is not None else span(Span(value.low, (value.low + value.high) / 2, value.high))
