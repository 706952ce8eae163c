"""Grades of rust by the standards that name them. A grade describes a surface; it is no rating unless the sentence says whose it is."""

from inspector.criteria.judgement import Criterion, Input, Judgement
from inspector.criteria.ladder import Ladder, beyond, stairs, to
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import show

ASTM = Source("ASTM D610, evaluating degree of rusting on painted steel surfaces", "2008, reapproved 2012", "table 1", "seen")
RI = Source("ISO 4628-3, assessment of degree of rusting", "2016, recalled", "table of rusted areas", "memory")
STEEL = Source("ISO 8501-1, preparation of steel substrates, visual assessment", "2007", "rust grades A to D", "seen")

# grade -> greatest share of the surface rusted, %, the bound belonging to the better grade; grade 0 lies above the last
ASTM_GRADES = {10: 0.01, 9: 0.03, 8: 0.1, 7: 0.3, 6: 1, 5: 3, 4: 10, 3: 16, 2: 33, 1: 50}
# degree -> share of the picture, %; Ri 5 is 40 to 50
RI_DEGREES = {0: 0, 1: 0.05, 2: 0.5, 3: 1, 4: 8, 5: 50}
# grade -> (what it looks like, our own rating of it)
STEEL_GRADES = {
    "A": ("mill scale holds on, hardly any rust", "good"),
    "B": ("rust has begun and mill scale flakes", "good"),
    "C": ("mill scale has rusted away or can be scraped off, slight pitting is visible", "fair"),
    "D": ("mill scale has rusted away, general pitting is visible", "poor"),
}
SCOPE = "The grade describes the painted surface looked at; condition and thickness are judged by their own criteria."


def rust_grade(rusted: float) -> int:
    """Return the rust grade, 10 to 0, of a share of the surface rusted [%]. ASTM D610, table 1 (seen).

    Examples
    --------
    >>> rust_grade(0.01), rust_grade(0.0101), rust_grade(50.1)
    (10, 9, 0)
    """
    return next((grade for grade, most in ASTM_GRADES.items() if rusted <= most), 0)


def rust_degree(rusted: float) -> int:
    """Return the degree of rusting, 0 to 5: the first whose picture shows no less than this share [%]. ISO 4628-3 (memory); the rule is our own."""
    return next(degree for degree, share in RI_DEGREES.items() if rusted <= share)


def grade_ladder() -> Ladder:
    """Bands of the share of a surface rusted [%] by ASTM D610."""
    steps = [to(most, f"rust grade {grade}", None, f"rust grade {grade}") for grade, most in ASTM_GRADES.items()]
    return stairs("%", *steps, beyond("rust grade 0", None, "rust grade 0"))


def degree_ladder() -> Ladder:
    """Bands of the share of a surface rusted [%] by ISO 4628-3, to 50 %."""
    steps = [to(share, f"Ri {degree}", None, f"degree Ri {degree}") for degree, share in list(RI_DEGREES.items())[:-1]]
    return stairs("%", *steps, beyond("Ri 5", None, "degree Ri 5"))


def judge_grade(rusted: float) -> Judgement:
    """Tell the rust grade of a painted surface.

    Parameters
    ----------
    rusted [%] of the surface, visible rust.

    References
    ----------
    ASTM D610-08 (2012), table 1 (seen).
    """
    grade = rust_grade(rusted)
    limit = ASTM_GRADES.get(grade, ASTM_GRADES[1])
    said = f"{show(rusted, '%')} rusted, on a scale from 10 (hardly any) to 0 (more than half),"
    notes = ("Add how it is spread: S in spots, G general, P pinpoints, H mixed.", SCOPE)
    return told("rust-grade", grade_ladder().step(rusted), said, (rusted, "%", limit), ASTM, notes)


def judge_degree(rusted: float) -> Judgement:
    """Tell the degree of rusting of a painted surface.

    Parameters
    ----------
    rusted [%] of the surface, 0 to 50.

    References
    ----------
    ISO 4628-3:2016 (memory): its shares belong to pictures, and the first picture that shows no less is taken (own rule).
    """
    limit = RI_DEGREES[rust_degree(rusted)]
    said = f"{show(rusted, '%')} rusted, on a scale from Ri 0 (none) to Ri 5 (40 to 50 %),"
    notes = ("The standard compares with pictures; taking the first picture that shows no less is our own rule.", SCOPE)
    return told("rust-degree", degree_ladder().step(rusted), said, (rusted, "%", limit), RI, notes)


def judge_steel(grade: str) -> Judgement:
    """Rate bare steel by its rust grade.

    Parameters
    ----------
    grade : A, B, C or D.

    References
    ----------
    ISO 8501-1:2007, rust grades (seen); the rating is our own.
    """
    looks, rating = STEEL_GRADES[grade]
    sentence = f"Bare steel of rust grade {grade}: {looks}."
    notes = ("The grade says how steel looks before blasting; good, fair and poor are our own reading of it.",)
    return Judgement("bare-steel", f"rust grade {grade}", rating, None, None, None, None, sentence, STEEL, notes)


CRITERIA = (
    Criterion(
        "rust-grade", "Rust grade of a painted surface", (Input("rusted", "Share of the surface rusted", "number", "%", low=0, high=100),),
        ASTM, judge_grade, "Visible rust on painted steel, 0 to 100 % of the surface.",
        "Every bound of the published table, at it and just above.", ladder=grade_ladder,
    ),
    Criterion(
        "rust-degree", "Degree of rusting of a painted surface", (Input("rusted", "Share of the surface rusted", "number", "%", low=0, high=50),),
        RI, judge_degree, "Visible rust on painted steel, 0 to 50 % of the surface, where the pictures end.",
        "Every share of the recalled table, at it and just above.", ladder=degree_ladder,
    ),
    Criterion(
        "bare-steel", "Rust grade of bare steel", (Input("grade", "Rust grade", "choice", choices=tuple(STEEL_GRADES)),),
        STEEL, judge_steel, "Steel without coating, one grade for the surface looked at.",
        "Each of the four grades against its published wording; the rating is our own.",
    ),
)
