"""The condition report as a reader of the PDF finds it."""

import dataclasses
import re
from pathlib import Path

import pypdf
import pytest

from inspector.assess.model import Assessment
from inspector.report.condition_report import UnknownUnits, build
from inspector.report.theme import UnknownPaper


def words(reader: pypdf.PdfReader) -> str:
    """All text of the report with every break made one space."""
    return re.sub(r"\s+", " ", " ".join(page.extract_text() for page in reader.pages))


def titles(outline: list) -> list[str]:
    """Outline entries of the first level."""
    return [one.title for one in outline if not isinstance(one, list)]


@pytest.fixture
def text(full: Assessment, write) -> str:
    return words(write(full))


@pytest.mark.parametrize(
    "said",
    [
        "9.6 mm",
        "0,42 %",
        "Resistance: 212 MΩ",
        "Winding temperature: 40 °C",
        "9 mm",
        "0.2 %",
        "The insulation class was not recorded.",
    ],
)
def test_every_reading_and_limit_is_printed(said: str, text: str) -> None:
    """What was measured is printed as it was typed, with its limit."""
    assert said in text


def test_ratings_show_who_rated_and_who_differed(text: str) -> None:
    """Each unit's ratings are printed, the overruled marked, the unseen with its reason."""
    assert text.count("(surveyor's word; overruled: the reading is judged fair)") == 2
    assert text.count("(disputed)") == 2
    assert (
        text.count(
            "Answered differently (rating): good by K. T., 2026-05-02 09:14; "
            "poor by L. M., 2026-05-02 09:20. Not settled."
        )
        == 2
    )
    assert "Not run, 2: Run at full pitch (all: No shore crew)." in text
    assert text.count("Pitted over the lower third.") == 2
    assert text.count("Not fitted: Slewing gear.") == 1


def test_decision_stands_beside_the_proposal(text: str) -> None:
    """Where surveyor and rule differ the report gives both, and what would change it."""
    for said in (
        "Surveyor's decision: remove.",
        "The client plans other propulsion.",
        "Proposed: refurbish, at least.",
        "The brief needs it for station keeping.",
        "seal kit no longer made → remove",
    ):
        assert said in text


def test_what_nobody_looked_at_names_what_would_decide(text: str) -> None:
    """A system of which nothing was seen has no word and says which checks would decide."""
    assert "Not looked at" in text
    assert "Would decide it: Reefer 1: Compressor run." in text


def test_findings_are_all_there_the_dangerous_first(full: Assessment, text: str) -> None:
    """Title, text and action of every finding are printed; the summary begins with danger now."""
    for one in full.findings:
        assert one.title in text
        assert one.text.rstrip(".") in text
        assert one.action in text
    assert text.index("13 danger now Guard missing") < text.index(
        "12 in the yard Water in the hub oil"
    )


def test_each_caption_is_its_line_of_the_register(full: Assessment, text: str) -> None:
    """Every photo has its caption once below it, with place, time and the digest's beginning."""
    for one in full.photos:
        assert text.count(f"P-{one.number:03d} {one.caption}.") == 1
        assert f"{one.taken[:16].replace('T', ' ')} UTC · {one.sha[:12]}" in text


def test_what_was_not_seen_is_grouped_by_reason(text: str) -> None:
    """A system's unseen checks stand by their reason, like units together, with what was noted."""
    assert "Thrusters Not run, 2: Run at full pitch (all: No shore crew)." in text


def test_work_lines_are_summed_with_the_unknown_counted(text: str) -> None:
    """The sums are of priced lines and say how many have no price."""
    assert "Sum of all 1 without a price 90 000 110 000 140 000 −18.3 t" in text.replace(
        "\u00a0", " "
    )


def test_sources_carry_edition_clause_and_mark(text: str) -> None:
    """Each criterion used is listed with its title, edition, clause and mark."""
    assert re.search(
        r"S\d Recommended practice for winding resistance, 2013. table 3: \S.*? seen", text
    )
    assert re.search(r"S\d Oil in gear housings, undated. water limit: \S.*? common practice", text)


def test_a_reading_names_its_source_by_number(text: str) -> None:
    """The number beside a judged reading is that of the list of sources."""
    listed = set(re.findall(r"\bS(\d+) \S", text))
    assert {"1", "2"} <= listed


def test_cautions_the_gravest_first_and_only_those_that_apply(text: str) -> None:
    """Danger precedes warning; a caution that no system of the report names is left out."""
    assert (
        0
        < text.index("DANGER Rust eats oxygen.")
        < text.index("WARNING Shafts start by themselves.")
    )
    assert "Nobody knows where you are." not in text


def test_limits_say_what_kind_of_inspection_this_was(text: str) -> None:
    """The report says what it is not, and who decides."""
    for said in (
        "Visual, non-invasive pre-purchase inspection.",
        "It is not a class survey, not a statutory survey, not a valuation and not an approval",
        "Local codes, the flag, class and port, and persons licensed by them decide.",
    ):
        assert said in text


def test_outline_contents_and_page_numbers_agree(full: Assessment, write) -> None:
    """The outline names each section, and the contents gives the page that the outline leads to."""
    reader = write(full)
    expected = [
        "Summary",
        "Contents",
        "Vessel and brief",
        "Findings",
        "Safety: failed or overdue",
        "Scope and limits of the inspection",
        "Thrusters",
        "Not looked at",
        "What was not seen",
        "Photos of no system",
        "Work lines",
        "Rules and settings",
        "Sources",
        "Cautions",
        "Signatures",
    ]
    assert expected == titles(reader.outline)
    listed = re.sub(r"[.\s]+", " ", reader.pages[2].extract_text())
    # the page number is drawn before the words of its line
    for entry in (
        one for one in reader.outline if not isinstance(one, list) and one.title != "Contents"
    ):
        assert f"{reader.get_destination_page_number(entry) + 1} {entry.title}" in listed


def test_every_page_carries_number_revision_digest_and_kind(full: Assessment, write) -> None:
    """Each page's foot says which page it is, of which revision, and where the limits are."""
    reader = write(full)
    limits = next(
        reader.get_destination_page_number(one) + 1
        for one in reader.outline
        if not isinstance(one, list) and one.title.startswith("Scope")
    )
    for number, page in enumerate(reader.pages, 1):
        foot = page.extract_text()
        assert f"revision 1 · 7c1e 90ab · page {number} of {len(reader.pages)}" in foot
        assert f"No class or statutory survey; see Limits, page {limits}." in foot


def test_title_author_and_embedded_fonts(full: Assessment, write) -> None:
    """The file names its title and author, and every font in it is embedded as a subset."""
    signed = dataclasses.replace(full, inspection={**full.inspection, "surveyors": "K. T."})
    reader = write(signed)
    assert (reader.metadata.title, reader.metadata.author) == (
        "Condition report: Candidate B",
        "K. T.",
    )
    assert "Attending: K. T., surveyor" in words(reader)
    fonts = [
        font.get_object()
        for page in reader.pages
        for font in page["/Resources"]["/Font"].get_object().values()
    ]
    assert fonts
    for font in fonts:
        assert "/FontFile2" in font["/FontDescriptor"]
        assert re.match(r"/[A-Z]{6}\+", font["/BaseFont"])


def test_us_letter_converts_and_names_the_typed_units_once_per_table(
    full: Assessment, write
) -> None:
    """A US reader gets inches, long tons and Letter paper, and reads once what was typed."""
    reader = write(full, paper="letter", units="us")
    text = words(reader)
    assert [(612, 792)] == sorted(
        {(float(page.mediabox.width), float(page.mediabox.height)) for page in reader.pages}
    )
    for said in (
        "Thickness: 0.378 in.",
        "limit ≤ 0.354 in",
        "Winding temperature: 104 °F.",
        "234 ft",
        "−18 long ton",
        "0,42 %",
    ):
        assert said in text
    note = "Converted from the units that the values were typed in: "
    assert text.count(f"{note}mm and °C.") == 1
    assert text.count(f"{note}m and m².") == 1
    assert text.count(note) == 2
    assert "typed 9.6" not in text


def test_no_picture_is_finer_than_the_paper_shows(full: Assessment, write) -> None:
    """Each picture has at most 220 pixels an inch as printed, and stays upright."""
    reader = write(full)
    printed = 0
    for page in reader.pages:
        found = re.findall(
            r"([\d.]+) 0 0 ([\d.]+) 0 0 cm\s+/(\S+) Do",
            page.get_contents().get_data().decode("latin1"),
        )
        pictures = page["/Resources"].get("/XObject", {})
        for width, height, name in found:
            picture = pictures[f"/{name}"]
            across, down = picture["/Width"], picture["/Height"]
            assert across / (float(width) / 72) < 221
            assert across / down == pytest.approx(float(width) / float(height), rel=0.02)
            printed += 1
    assert printed >= len(full.photos)


def test_two_builds_are_the_same_bytes(full: Assessment, write, tmp_path: Path) -> None:
    """One record gives one file."""
    write(full, "one.pdf")
    write(full, "two.pdf")
    assert (tmp_path / "one.pdf").read_bytes() == (tmp_path / "two.pdf").read_bytes()


HOSTILE = [
    "<b>bold</i> & <a href='x'>\"quoted\" <para><img src='/etc/passwd'/>",
    "W" * 4_000,
    "word " * 800,
    "\u202etxt.exe\u202c \x00\x07\x1b[31m \ud800",
    "Ωμέγα Жук → ≥ ≤ µ − ² ³ 中文 🚢 עברית",
    "",
    "   \n\n\t",
    "</font></b>" * 60,
    "100% {0} %s &amp; &#0; ]]>",
]


def with_text_in_results(unit, text):
    """A unit whose every text that a person may type is the same."""
    results = tuple(
        dataclasses.replace(
            result,
            note=text,
            unit_name=text,
            answer=f"not seen: {text}" if result.rating is None else result.answer,
            readings=tuple(dataclasses.replace(typed, text=text) for typed in result.readings),
        )
        for result in unit.results
    )
    return dataclasses.replace(unit, name=text, reason=text, decision="remove", results=results)


def with_text_everywhere(full, text):
    """An inspection whose every text that a person may type is the same."""
    systems = [
        dataclasses.replace(
            part,
            units=tuple(with_text_in_results(unit, text) for unit in part.units),
            lines=tuple(
                dataclasses.replace(line, text=text, act=text, unit=text) for line in part.lines
            ),
            whole=dataclasses.replace(part.whole, reason=text),
        )
        for part in full.systems
    ]
    findings = tuple(
        dataclasses.replace(each, title=text, text=text, action=text, unit_name=text, urgency=text)
        for each in full.findings
    )
    photos = tuple(
        dataclasses.replace(each, caption=text, place=text, taken=text) for each in full.photos
    )
    facts = dict.fromkeys(TYPED_FACTS, text)
    return Assessment(facts, facts, facts, tuple(systems), findings, photos, 1)


TYPED_FACTS = (
    "name",
    "client",
    "title",
    "place",
    "date",
    "attending",
    "weather",
    "particulars",
    "length",
    "flag",
)


@pytest.mark.parametrize("text", HOSTILE, ids=range(len(HOSTILE)))
def test_no_text_breaks_the_report(text: str, full: Assessment, write) -> None:
    """Whatever was typed anywhere, the report is written and prints it; it never obeys it."""
    hostile = with_text_everywhere(full, text)
    read = words(write(hostile, revision=text, digest=text, made_at=text))

    assert "Signatures" in read
    if text.isascii() and text.strip():
        assert re.sub(r"\s", "", text)[:15] in re.sub(r"\s", "", read)


def test_marks_that_turn_the_writing_are_left_out(full: Assessment, write) -> None:
    """Direction marks and control characters, by which a caption could deceive, are not printed."""
    photo = dataclasses.replace(full.photos[0], caption="gnp\u202e.exe \x07end")
    read = words(write(dataclasses.replace(full, photos=(photo,))))
    assert "gnp.exe end" in read
    assert "\u202e" not in read


def test_an_empty_inspection_still_makes_a_report(write) -> None:
    """With nothing seen, nothing found and no photos the report says so in words."""
    read = words(write(Assessment()))
    for said in (
        "Vessel not named",
        "No system was recorded in this inspection.",
        "No findings were recorded.",
        "No photos were taken.",
        "No work lines were recorded.",
        "No reading was judged by a criterion.",
    ):
        assert said in read


def test_a_photo_that_is_not_here_leaves_a_frame_and_its_caption(
    full: Assessment, write, tmp_path: Path
) -> None:
    """A missing or broken picture is said, not hidden, and its caption stays."""
    broken = tmp_path / "broken.jpg"
    broken.write_bytes(b"no picture")
    files = {full.photos[0].sha: broken}
    read = words(write(full, photo_file=files.get))
    # Once on the first page as well, which shows the first photo.
    assert read.count("The picture itself is not on this computer.") == len(full.photos) + 1
    assert "P-001 Hub oil sample 1" in read


def test_unknown_paper_is_refused(full: Assessment, tmp_path: Path) -> None:
    """A paper that is neither A4 nor Letter is refused in one sentence, and no file is left."""
    with pytest.raises(UnknownPaper, match="'a4' or 'letter'"):
        build(
            full,
            tmp_path / "x.pdf",
            photo_file=lambda _: None,
            cautions={},
            paper="a3",
            made_at="",
            revision="1",
            digest="",
        )
    assert [] == list(tmp_path.glob("x.pdf*"))


def test_unknown_units_are_refused(full: Assessment, tmp_path: Path) -> None:
    """Units that are neither SI nor US are refused in one sentence."""
    with pytest.raises(UnknownUnits, match="'si' or 'us'"):
        build(
            full,
            tmp_path / "x.pdf",
            photo_file=lambda _: None,
            cautions={},
            units="imperial",
            made_at="",
            revision="1",
            digest="",
        )


def test_a_failing_build_leaves_the_old_report_whole(full: Assessment, tmp_path: Path) -> None:
    """If anything fails midway the report that was there stays, and no half file is left."""
    old = tmp_path / "x.pdf"
    old.write_bytes(b"the old one")

    def fails(_sha: str) -> Path:
        raise OSError("disk failed")

    with pytest.raises(OSError, match="disk failed"):
        build(full, old, photo_file=fails, cautions={}, made_at="", revision="1", digest="")
    assert b"the old one" == old.read_bytes()
    assert [old] == list(tmp_path.glob("x.pdf*"))
