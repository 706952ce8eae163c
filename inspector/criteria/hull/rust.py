"""The rust grade of bare steel.

A grade describes a surface; it is no rating unless the sentence says whose rating it is.
"""

from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement, judgement_in_words
from inspector.criteria.core.source import Source
from inspector.values.field import Field

STEEL = Source.seen(
    "ISO 8501-1, preparation of steel substrates, visual assessment", "2007", "rust grades A to D"
)

# grade -> (what it looks like, our own rating of it)
STEEL_GRADES = {
    "A": ("mill scale holds on, hardly any rust", "good"),
    "B": ("rust has begun and mill scale flakes", "good"),
    "C": ("mill scale has rusted away or can be scraped off, slight pitting is visible", "fair"),
    "D": ("mill scale has rusted away, general pitting is visible", "poor"),
}


def judge_steel(grade: str) -> Judgement:
    """Rate bare steel by its rust grade.

    Parameters
    ----------
    grade : str
        Rust grade: A, B, C or D.

    Returns
    -------
    Judgement

    References
    ----------
    ISO 8501-1:2007, rust grades (seen); the rating is our own.
    """
    looks, rating = STEEL_GRADES[grade]
    sentence = f"Bare steel of rust grade {grade}: {looks}."
    notes = (
        "The grade says how steel looks before blasting; good, fair and poor are "
        "our own reading of it.",
    )
    return judgement_in_words(f"rust grade {grade}", rating, sentence, notes)


CRITERIA = (
    Criterion(
        "bare-steel",
        "Rust grade of bare steel",
        (Field("grade", "Rust grade", "choice", choices=tuple(STEEL_GRADES)),),
        STEEL,
        judge_steel,
        "Steel without coating, one grade for the surface looked at.",
        "Each of the four grades against its published wording; the rating is our own.",
    ),
)
