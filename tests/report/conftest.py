"""A hand-made assessment with generated photos, a builder, and a reader of the finished PDF."""

from hashlib import sha256
from pathlib import Path

import pypdf
import pytest
from PIL import Image

from inspector.assess.checked import CheckResult, Condition, Typed
from inspector.assess.model import Assessment, Facts, Part, SystemPart
from inspector.assess.recorded import Answered
from inspector.assess.registers import Finding, Photo, WorkLine
from inspector.assess.verdict.word import Change, Proposal
from inspector.checklists.model import Caution, Check, System
from inspector.criteria.core.judgement import Judgement
from inspector.criteria.core.source import Source
from inspector.report.condition_report import build
from inspector.values.field import Field

SEEN = Source.seen("Recommended practice for winding resistance", "2013", "table 3")
COMMON = Source.common_practice("Oil in gear housings", "water limit", edition="undated")
CAUTIONS = {
    "turning-parts": Caution(
        "turning-parts",
        "warning",
        "Shafts start by themselves.",
        "Guards stay on.",
        "The chief engineer by lock-out rules.",
    ),
    "enclosed-space": Caution(
        "enclosed-space",
        "danger",
        "Rust eats oxygen.",
        "Look from outside.",
        "The master by written permit.",
    ),
    "alone": Caution(
        "alone",
        "caution",
        "Nobody knows where you are.",
        "Say where you go.",
        "The officer on watch.",
    ),
}


def check(number: int, title: str, *readings: Field) -> Check:
    return Check(
        f"check-{number}", title, "Ask.", "Look.", "Bad.", "thruster-room", 4, 3, readings=readings
    )


def system(key: str, name: str, *checks: Check) -> System:
    return System(
        key,
        name,
        30,
        "thruster",
        ("Bow 1",),
        f"{name}: each unit with its drive, starter, hydraulics and controls.",
        "Stays.",
        "Works.",
        "Goes.",
        ("turning-parts", "enclosed-space"),
        checks,
    )


def judged(
    rating: str, value: float, unit: str, limit: float, source: Source, band: str
) -> Judgement:
    return Judgement(
        band,
        rating,
        value,
        unit,
        limit,
        limit - value,
        f"{band}: {value} {unit} against {limit} {unit}.",
        source=source,
        criterion="oil-water",
    )


PLATE = check(1, "Plate thickness of the tunnel", Field("t", "Thickness", unit="mm"))
OIL = check(2, "Water in the hub oil", Field("w", "Water content", unit="%"))
COIL = check(
    3,
    "Insulation of the motor",
    Field("r", "Resistance", unit="MΩ"),
    Field("a", "Winding temperature", unit="°C"),
)
RUN = check(4, "Run at full pitch")
AZIMUTH = check(5, "Slewing gear")
UNPRICED = Condition(None, 0, 100, 0, 0, 4)


DIFFERING = (
    Answered("rating", "good", "K. T.", "2026-05-02T09:14:07.512Z"),
    Answered("rating", "poor", "L. M.", "2026-05-02T09:20:00.000Z"),
)


def results(unit: str, name: str, shas: list[str]) -> tuple[CheckResult, ...]:
    at = f"sheet/thrusters/{unit}"
    return (
        CheckResult(
            f"{at}/check-1",
            PLATE,
            unit,
            name,
            "poor",
            "poor",
            (Typed("t", "Thickness", "9.6 mm", "mm"),),
            judged("fair", 9.6, "mm", 9.0, SEEN, "zone C"),
            note="Pitted over the lower third.",
            photos=tuple(shas[:2]),
        ),
        CheckResult(
            f"{at}/check-2",
            OIL,
            unit,
            name,
            "",
            "poor",
            (Typed("w", "Water content", "0,42 %", "%"),),
            judged("poor", 0.42, "%", 0.2, COMMON, "above limit"),
            disputed=True,
            answers=DIFFERING,
        ),
        CheckResult(
            f"{at}/check-3",
            COIL,
            unit,
            name,
            "good",
            "good",
            (
                Typed("r", "Resistance", "212 MΩ", "MΩ"),
                Typed("a", "Winding temperature", "40 °C", "°C"),
            ),
            cannot_judge="The insulation class was not recorded.",
        ),
        CheckResult(
            f"{at}/check-4", RUN, unit, name, "not seen: not run", None, note="No shore crew."
        ),
        CheckResult(f"{at}/check-5", AZIMUTH, unit, name, "not fitted"),
    )


REFURBISH = Proposal(
    "refurbish",
    "repairable",
    "Required and repairable: it is refurbished.",
    ("The brief needs it for station keeping.", "Condition 37 is below 60."),
    (Change("seal kit no longer made", "remove"),),
    firmness="at least",
    open_words=("refurbish", "remove"),
    sentence="Required and repairable.",
)
UNKNOWN = Proposal(
    "not looked at",
    "too-little-seen",
    "Too little was seen to say.",
    (),
    (),
    ("Reefer 1: Compressor run",),
)
VISIT = {
    "title": "First visit",
    "place": "Alongside",
    "date": "2026-05-02",
    "attending": "K. T., surveyor",
    "weather": "rain",
}
VESSEL = {
    "name": "Candidate B",
    "imo": "0001236",
    "length": "71.4",
    "deck_area": "540",
    "flag": "not stated",
}
BRIEF = {"client": "The client", "speed": "12", "range": "6000"}
WHOLE = Part(
    "all",
    "Thrusters",
    Condition(37, 22, 54, 0.64, 6, 8),
    Facts(
        "required",
        ("The tunnel grid may not stay as it is.",),
        12,
        15,
        "hard to get",
        110_000,
        355_000,
        18.5,
        62,
    ),
    REFURBISH,
    "remove",
    "The client plans other propulsion.",
)
LINES = (
    WorkLine(
        "1",
        "thrusters",
        "bow-1",
        "refurbish",
        "New seals and bearings, in dock",
        90000,
        110000,
        140000,
        0.2,
    ),
    WorkLine(
        "2", "thrusters", "all", "remove", "Fair and plate the tunnels", 20000, None, 45000, -18.5
    ),
)


def thruster(key: str, name: str, shas: list[str]) -> Part:
    state = Condition(37, 22, 54, 0.64, 3, 4)
    return Part(key, name, state, Facts("required"), REFURBISH, results=results(key, name, shas))


def photo(number: int, sha: str, caption: str) -> Photo:
    """The first three are filed under a check."""
    filed = number < 4
    return Photo(
        number,
        sha,
        f"{caption} {number}",
        "sheet/thrusters/bow-1/check-2" if filed else "",
        f"2026-05-02T10:{number:02d}:00Z",
        "KT",
        "jpeg",
        "Bow thruster 1: Water in the hub oil" if filed else "",
    )


def findings(shas: list[str]) -> tuple[Finding, ...]:
    hub_oil = Finding(
        "a",
        12,
        "Water in the hub oil",
        "Milky sample after ten minutes.",
        "in the yard",
        "Pull and renew the hub seals.",
        "thrusters",
        "bow-1",
        "Bow thruster 1",
        tuple(shas[:1]),
    )
    guard = Finding(
        "b",
        13,
        "Guard missing at the coupling",
        "Turning shaft reachable.",
        "danger now",
        "Fit a guard.",
        "thrusters",
        "stern",
        "Stern thruster",
    )
    return hub_oil, guard, Finding("c", 14, "Gangway net torn", "Two metres.", "keep watch")


def make(
    shas: list[str], visit: dict[str, str] | None = None, caption: str = "Hub oil sample"
) -> Assessment:
    """An inspection of two thrusters, with photos of these digests, and of reefers not seen."""
    units = (
        thruster("bow-1", "Bow thruster 1", shas),
        thruster("stern", "Stern thruster", shas),
    )
    thrusters = system("thrusters", "Thrusters", PLATE, OIL, COIL, RUN, AZIMUTH)
    reefers = Part("all", "Reefers", UNPRICED, Facts("neutral"), UNKNOWN)
    return Assessment(
        VESSEL,
        BRIEF,
        visit or VISIT,
        (
            SystemPart(thrusters, WHOLE, units, LINES),
            SystemPart(system("reefers", "Reefers"), reefers, ()),
        ),
        findings(shas),
        tuple(photo(number, sha, caption) for number, sha in enumerate(shas, 1)),
        2,
    )


@pytest.fixture
def shots(tmp_path: Path) -> dict[str, Path]:
    """Five photos with grain, so that they do not shrink to nothing; digest -> file."""
    made = {}
    for number in range(5):
        size = (1200, 900) if number % 2 == 0 else (900, 1200)
        path = tmp_path / f"{number}.jpg"
        Image.effect_noise(size, 60 + number * 10).convert("RGB").save(path, quality=78)
        made[sha256(path.read_bytes()).hexdigest()] = path
    return made


@pytest.fixture
def full(shots: dict[str, Path]) -> Assessment:
    """The assessment with everything in it."""
    return make(list(shots))


@pytest.fixture
def write(tmp_path: Path, shots: dict[str, Path]):
    """Build a report and open it: `write(assessment, paper=..., units=...)`."""

    def written(assessment: Assessment, name: str = "report.pdf", **how: object) -> pypdf.PdfReader:
        given = {
            "photo_file": shots.get,
            "cautions": CAUTIONS,
            "made_at": "2026-05-02 19:40",
            "revision": "1",
            "digest": "7c1e90ab" * 8,
        } | how
        build(assessment, tmp_path / name, **given)
        return pypdf.PdfReader(tmp_path / name)

    return written
