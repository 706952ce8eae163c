"""The landing area for helicopters: cautions only. Nothing here can say that anything may land; certificate, flag and operator say that.

A figure that is met therefore carries no rating; one that is not met is poor, and most figures are recalled.
"""


from inspector.criteria.exact import exact
from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.ladder import Ladder, below, beyond, stairs, to
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import difference, show

MODU = Source("MODU Code, mobile offshore drilling units", "2009", "13.3, helidecks", "seen")
OLDER = Source("Landing areas of 0.83 D on older ships", "recalled", "size", "memory")
OFFSHORE = Source("CAP 437, Standards for offshore helicopter landing areas", "8th edition, recalled", "loads, markings and friction", "memory")
FIRE = Source("SOLAS II-2/18, helicopter facilities", "recalled", "foam by D, powder and carbon dioxide", "memory")
PAPERS = Source("Papers of a landing area", "no publisher", "certificate, structure drawing, friction report", "common practice")

OLDER_SHARE = exact(0.83)
LEAST_SECTOR = 210.0                # deg
HEIGHT_LIMIT, NEAR_SHARE = 0.25, exact(0.12)  # m, of D
GRAVITY = exact(9.80665)
EMERGENCY, RESPONSE = exact(2.5), exact(1.3)
# coefficient in %, so that a unit is always shown and a typed 0.65 is refused as out of range
FRICTION = {"touchdown circle and markings": 65, "outside it": 50}
# D below which [m] -> foam [l/min]
FOAM = ((15, 250), (24, 500), (35, 800))
POWDER, CARBON_DIOXIDE = 45, 18     # kg
UNCERTIFIED = "A caution only: without a valid certificate for this deck, this helicopter and this flag there are no operations, whatever this says."
SEEN = ("seen", "not seen")


def _least(unit: str, limit: float, short: str, met: str) -> Ladder:
    return stairs(unit, below(limit, "below the figure", "poor", short), beyond("figure met", None, met))


def judge_papers(certificate: str, structure: str, friction_report: str) -> Judgement:
    """Tell whether the papers of a landing area were seen.

    Parameters
    ----------
    certificate, structure (drawings of the deck's strength), friction_report : seen or not seen.

    References
    ----------
    Without papers a landing area is unverified (common practice); class rules know certified decks, emergency areas and winching areas apart.
    """
    had = {"certificate": certificate, "structure drawing": structure, "friction report": friction_report}
    missing = [name for name, answer in had.items() if answer == "not seen"]
    if missing:
        band, rating, sentence = "unverified", "poor", f"Not seen: {', '.join(missing)}. The landing area is unverified: no operations."
    else:
        band, rating, sentence = "papers seen", None, "Certificate, structure drawing and friction report were seen: write issuer, date and restrictions."
    notes = ("A deck for landing, one for emergencies and a place for winching are three things; hovering on it is none of them.", UNCERTIFIED)
    return Judgement("landing-papers", band, rating, None, None, None, None, sentence, PAPERS, notes)


def circle_ladder(d_value: float) -> Ladder:
    """Bands of the clear circle's diameter [m] for a helicopter of a D-value [m]."""
    return stairs(
        "m",
        below(float(exact(d_value) * OLDER_SHARE), "under 0.83 D", "poor", "too small even by the older figure of 0.83 D"),
        below(d_value, "under D", "poor", "smaller than D, as on some older ships: restrictions are to be asked for"),
        beyond("at least D", None, "not smaller than D"),
    )


def judge_circle(diameter: float, d_value: float) -> Judgement:
    """Hold the clear circle of a landing area against the helicopter's D-value.

    Parameters
    ----------
    diameter [m] of the clear circle, d_value [m] of the helicopter meant.

    References
    ----------
    MODU Code 2009, 13.3 (seen): at least D. 0.83 D on older ships (memory).
    """
    said = f"A clear circle of {show(diameter, 'm')}, against a D-value of {show(d_value, 'm')},"
    return told("landing-circle", circle_ladder(d_value).step(diameter), said, (diameter, "m", d_value), MODU, (f"{OLDER}.", UNCERTIFIED), at_least=True)


def sector_ladder() -> Ladder:
    """Bands of the obstacle-free sector [deg]."""
    return _least("deg", LEAST_SECTOR, "narrower", "not narrower")


def judge_sector(sector: float) -> Judgement:
    """Hold the obstacle-free sector of a landing area against its figure.

    Parameters
    ----------
    sector [deg] free of obstacles above the deck.

    References
    ----------
    MODU Code 2009, 13.3 (seen): 210 degrees, and below the deck a slope of 5 to 1 over 180 degrees.
    """
    said = f"An obstacle-free sector of {show(sector, 'deg')}, against at least {show(LEAST_SECTOR, 'deg')},"
    beneath = "Look below deck level too: a slope of 5 to 1 over 180 degrees is kept free there."
    return told("landing-sector", sector_ladder().step(sector), said, (sector, "deg", LEAST_SECTOR), MODU, (beneath, UNCERTIFIED), at_least=True)


def _check_near(distance: float, d_value: float) -> None:
    near = float(exact(d_value) * NEAR_SHARE)
    if distance > near:
        refuse("landing-obstacle", "distance", distance, f"the figure holds to {show(near, 'm')} (0.12 D) from the circle; beyond it a slope begins")


def obstacle_ladder(distance: float, d_value: float) -> Ladder:
    """Bands of an obstacle's height [m] near the circle, in the limited sector."""
    _check_near(distance, d_value)
    return stairs("m", to(HEIGHT_LIMIT, "figure met", None, "not higher"), beyond("above the figure", "poor", "higher: an obstacle"))


def judge_obstacle(height: float, distance: float, d_value: float) -> Judgement:
    """Hold the height of an obstacle in the limited sector against its figure.

    Parameters
    ----------
    height [m] above the deck, distance [m] from the circle's edge, d_value [m] of the helicopter meant.

    References
    ----------
    MODU Code 2009, 13.3 (seen): in the 150 degree limited sector 0.25 m out to 0.12 D, then a slope to 0.33 D.
    """
    ladder = obstacle_ladder(distance, d_value)
    said = f"An obstacle {show(height, 'm')} high, {show(distance, 'm')} from the circle, against at most {show(HEIGHT_LIMIT, 'm')},"
    return told("landing-obstacle", ladder.step(height), said, (height, "m", HEIGHT_LIMIT), MODU, (UNCERTIFIED,))


def mass_ladder(marked: float) -> Ladder:
    """Bands of a helicopter's greatest mass [t] against the mark on the deck [t]."""
    return stairs("t", to(marked, "figure met", None, "not above the mark"), beyond("above the mark", "poor", "above the mark"))


def judge_mass(mass: float, marked: float) -> Judgement:
    """Hold a helicopter's greatest mass against the t-value marked on the deck.

    Parameters
    ----------
    mass [t], marked [t] as painted.

    References
    ----------
    CAP 437 (memory): the deck is marked with the mass it was made for. Paint proves nothing.
    """
    said = f"A greatest mass of {show(mass, 't')}, against {show(marked, 't')} marked on the deck,"
    notes = ("Paint proves nothing: the drawing and the certificate do.", UNCERTIFIED)
    return told("landing-mass", mass_ladder(marked).step(mass), said, (mass, "t", marked), OFFSHORE, notes)


def emergency_load(mass: float) -> float:
    """Return the load [kN] of an emergency landing of a mass [t]: 2.5 times its weight, times 1.3 for the structure. CAP 437 (memory).

    Examples
    --------
    >>> round(emergency_load(3.2), 1)
    102.0
    """
    return float(exact(mass) * GRAVITY * EMERGENCY * RESPONSE)


def capacity_ladder(mass: float) -> Ladder:
    """Bands of a deck's capacity [kN] for a helicopter's greatest mass [t]."""
    return _least("kN", emergency_load(mass), "less than an emergency landing asks for", "not less than an emergency landing asks for")


def judge_capacity(capacity: float, mass: float) -> Judgement:
    """Hold the landing load on the structure drawing against that of an emergency landing.

    Parameters
    ----------
    capacity [kN] by the drawing, mass [t] of the helicopter, greatest.

    References
    ----------
    CAP 437 (memory): 2.5 times greatest mass, structural response 1.3; area load, wind and motion come on top.
    """
    limit = emergency_load(mass)
    said = f"A landing load of {show(capacity, 'kN')} on the drawing, against {show(limit, 'kN')} for {show(mass, 't')},"
    notes = ("Lateral load, 0.5 kN/m² over the area, dead load, wind and motion come on top: a structural engineer adds them.", UNCERTIFIED)
    return told("landing-load", capacity_ladder(mass).step(capacity), said, (capacity, "kN", limit), OFFSHORE, notes, at_least=True)


def friction_ladder(place: str) -> Ladder:
    """Bands of a friction coefficient [%]."""
    return _least("%", FRICTION[place], "lower: slippery for a moving deck", "not lower")


def judge_friction(friction: float, place: str) -> Judgement:
    """Hold the friction of a landing area on a moving deck against its figure.

    Parameters
    ----------
    friction [%] : coefficient times 100, by a continuous tester; place : one of FRICTION.

    References
    ----------
    CAP 437, 8th edition (memory): 0.65 (65 %) inside the touchdown circle and on markings, 0.5 outside.
    """
    limit = FRICTION[place]
    said = f"A friction coefficient of {show(friction, '%')} ({place}), against at least {show(limit, '%')},"
    notes = ("Taken from a report; a shoe tells nothing.", UNCERTIFIED)
    return told("landing-friction", friction_ladder(place).step(friction), said, (friction, "%", limit), OFFSHORE, notes, at_least=True)


def foam_rate(d_value: float) -> int:
    """Return the foam rate [l/min] for a D-value [m] under 35. SOLAS II-2/18 (memory)."""
    return next((rate for below, rate in FOAM if d_value < below), None) or refuse(
        "landing-fire", "d_value", d_value, f"the rule names no foam rate for a D-value of {show(d_value, 'm')}; it ends below {FOAM[-1][0]} m")


def judge_fire(foam: float, powder: float, carbon_dioxide: float, d_value: float) -> Judgement:
    """Hold the fire kit of a landing area against its figures.

    Parameters
    ----------
    foam [l/min], powder [kg], carbon_dioxide [kg], d_value [m] of the helicopter meant, under 35.

    References
    ----------
    SOLAS II-2/18 (memory): 250, 500 or 800 l/min of foam by D, 45 kg of dry powder, 18 kg of carbon dioxide.
    """
    limit = foam_rate(d_value)
    asked = {"foam": (foam, limit, "l/min"), "dry powder": (powder, POWDER, "kg"), "carbon dioxide": (carbon_dioxide, CARBON_DIOXIDE, "kg")}
    short = [f"{name} {show(had, unit)} of {show(least, unit)}" for name, (had, least, unit) in asked.items() if had < least]
    band, rating = ("below the figure", "poor") if short else ("figure met", None)
    sentence = f"Short for a D-value of {show(d_value, 'm')}: {', '.join(short)}." if short else \
        f"Foam, dry powder and carbon dioxide are not below the figures for a D-value of {show(d_value, 'm')}."
    notes = ("Newer ships follow the fire safety systems code, chapter 17.", "Fuel stored aboard is a hazard of its own.", UNCERTIFIED)
    return Judgement("landing-fire", band, rating, foam, "l/min", limit, difference(foam, limit), sentence, FIRE, notes)


_D = Input("d_value", "D-value of the helicopter meant", "number", "m", low=5, high=40)
_MASS = Input("mass", "Greatest mass of the helicopter", "number", "t", low=0.5, high=20)
_OWN = "The figure from both sides by our own arithmetic; no published example exists."

CRITERIA = (
    Criterion("landing-papers", "Papers of the landing area",
              tuple(Input(name, label, "choice", choices=SEEN) for name, label in (
                  ("certificate", "Certificate"), ("structure", "Structure drawings"), ("friction_report", "Friction report"))),
              PAPERS, judge_papers, "Any place marked for helicopters.", "Each paper by its absence, by our own count."),
    Criterion("landing-circle", "Clear circle against the D-value", (Input("diameter", "Diameter of the clear circle", "number", "m", low=1, high=60), _D),
              MODU, judge_circle, "D-values of 5 to 40 m.", "D and 0.83 D from both sides by our own arithmetic.", ladder=circle_ladder),
    Criterion("landing-sector", "Obstacle-free sector", (Input("sector", "Obstacle-free sector", "number", "deg", low=0, high=360),),
              MODU, judge_sector, "Sectors of 0 to 360 degrees, above deck level.", "The published figure, at it and just below.", ladder=sector_ladder),
    Criterion("landing-obstacle", "Height of an obstacle near the circle",
              (Input("height", "Height above the deck", "number", "m", low=0, high=20), Input("distance", "Distance from the circle", "number", "m", low=0,
                                                                                              high=20), _D),
              MODU, judge_obstacle, "The limited sector, to 0.12 D from the circle; the slope beyond is not judged.",
              "The published figure, at it and just above, and the end of its reach.", ladder=obstacle_ladder),
    Criterion("landing-mass", "Mass of the helicopter against the mark", (_MASS, Input("marked", "Mark on the deck", "number", "t", low=0.5, high=20)),
              OFFSHORE, judge_mass, "Helicopters of 0.5 to 20 t.", _OWN, ladder=mass_ladder),
    Criterion("landing-load", "Landing load on the structure drawing", (Input("capacity", "Landing load on the drawing", "number", "kN", low=0, high=2000),
                                                                        _MASS),
              OFFSHORE, judge_capacity, "Helicopters of 0.5 to 20 t, one concentrated load.", _OWN, ladder=capacity_ladder),
    Criterion("landing-friction", "Friction of the landing area",
              (Input("friction", "Friction coefficient in per cent (0.65 is 65 %)", "number", "%", low=5, high=150),
               Input("place", "Where it was tested", "choice", choices=tuple(FRICTION))),
              OFFSHORE, judge_friction, "Moving decks, coefficients of a continuous tester.", _OWN, ladder=friction_ladder),
    Criterion("landing-fire", "Fire kit of the landing area",
              (Input("foam", "Foam rate", "number", "l/min", low=0, high=5000), Input("powder", "Dry powder", "number", "kg", low=0, high=500),
               Input("carbon_dioxide", "Carbon dioxide", "number", "kg", low=0, high=500), _D),
              FIRE, judge_fire, "Landing areas of older ships, D-values under 35 m.", "Each figure and each D-value from both sides, by our own arithmetic."),
)
