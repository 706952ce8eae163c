"""Draughts, trim, heights and list from the starting condition: estimates, defaults and gaps."""

import pytest

from inspector.conversion.core.bounds import BadInput
from inspector.conversion.core.particulars import Row
from inspector.conversion.core.span import Span
from inspector.conversion.stability import floating_condition as floating
from inspector.conversion.stability.booklet.hydrostatic_table import HydrostaticTable
from inspector.conversion.stability.booklet.hydrostatics import FLOTATION
from inspector.conversion.stability.kg_limit import kg_limit
from inspector.conversion.stability.load_line import (
    BY_TPC,
    deadweight_left,
    draught_amidships,
    draught_left,
)
from inspector.conversion.stability.metacentric_height import (
    ANY_HEIGHT,
    angle_of_list,
    height_of_gravity,
    height_of_metacentre,
    metacentric_height,
)
from inspector.conversion.stability.starting_condition import StartingCondition
from inspector.conversion.stability.weights import Weight

SIZES = {"displacement": 3000.0, "lpp": 60.0, "breadth": 15.0, "cw": 0.8, "draught": 5.0}
LOAD = Weight("load", "on", Span.exact(90), lcg=40, tcg=0.5, vcg=9)
LOOSE = Weight("loose", "on", Span.exact(90))


def start(**values):
    """A starting condition of the sizes and these values; None leaves a size out."""
    cells = {name: value for name, value in {**SIZES, **values}.items() if value is not None}
    return StartingCondition(Row("one", cells))


def condition(weights, **values):
    """Sinkage, trim and draughts at the ends after weights."""
    before = start(**values)
    sunk, trimmed = floating.sinkage(before, weights), floating.trim(before, weights)
    return sunk, trimmed, *floating.draughts(before, sunk, trimmed)


def test_a_missing_immersion_follows_from_the_waterplane():
    """60 × 15 × 0.8 m² of salt water are 7.38 t/cm, as an estimate that says so."""
    tpc = floating.immersion(start())

    assert 60 * 15 * 0.8 * 1.025 / 100 == pytest.approx(tpc.span.point)
    assert "estimated" in tpc.assumptions[0]


def test_the_water_of_a_river_counts():
    """In fresh water a hull sinks further for the same weight."""
    salt, fresh = (floating.immersion(start(density=density)) for density in (None, 1000.0))

    assert 1.025 == pytest.approx(salt.span.point / fresh.span.point)


def test_an_immersion_of_the_booklet_is_taken_as_given():
    """No estimate replaces it."""
    assert (9.0, ()) == (
        floating.immersion(start(tpc=9.0)).span.point,
        floating.immersion(start(tpc=9.0)).assumptions,
    )


def test_an_estimated_trimming_moment_is_listed_with_its_unit():
    """7.31 TPC² / B, with 15 % either way, is a default of the trim."""
    trimmed = floating.trim(start(tpc=9.0, lcf=30.0), [LOAD])
    (default,) = trimmed.defaults

    assert ("MCTC", "t·m/cm") == (default.name, default.unit)
    assert 90 * 10 / (7.31 * 81 / 15) / 100 == pytest.approx(trimmed.span.point)


def test_an_assumed_centre_of_flotation_is_listed():
    """A given one leaves nothing to list."""
    assumed = floating.trim(start(tpc=9.0, mctc=40.0), [LOAD])
    given = floating.trim(start(tpc=9.0, mctc=40.0, lcf=30.0), [LOAD])

    assert ((FLOTATION,), ()) == (assumed.defaults, given.defaults)
    assert assumed.span.contains(given.span)


def test_a_weight_without_a_place_may_be_anywhere_along():
    """The trim spans from after to forward perpendicular, and the weight is named."""
    trimmed = floating.trim(start(tpc=9.0, mctc=40.0, lcf=30.0), [LOOSE])

    assert (-90 * 30 / 40 / 100, 90 * 30 / 40 / 100) == pytest.approx(
        (trimmed.span.low, trimmed.span.high)
    )
    assert ["Centre along the ship of loose"] == [gap.name for gap in trimmed.gaps]


def test_a_mean_draught_alone_is_an_even_keel():
    """Both ends start from it, and the figures say what was assumed."""
    _, _, fore, aft = condition([LOAD], tpc=9.0, mctc=40.0, lcf=30.0)

    assert 5.0 + 0.10 + 90 * 10 / 40 / 100 / 2 == pytest.approx(fore.span.point)
    assert floating.EVEN_KEEL in aft.assumptions


def test_without_any_draught_the_gap_is_named():
    """Sinkage and trim are known, the draughts are not."""
    sunk, trimmed, fore, _ = condition([LOAD], tpc=9.0, mctc=40.0, lcf=30.0, draught=None)

    assert (True, True, False) == (sunk.known, trimmed.known, fore.known)
    assert "Draughts of the starting condition" in [gap.name for gap in fore.gaps]


def test_more_off_than_the_vessel_displaces_is_a_gap():
    """The list or the displacement is wrong; no figure comes from both."""
    mass = floating.displacement(start(), [Weight("all", "off", Span.exact(3000))])

    assert not mass.known
    assert "check both" in mass.gaps[0].why


ROWS = (
    Row("a", {"draught": 4.6, "displacement": 2800.0, "km": 7.30, "limit_kg": 6.3}),
    Row("b", {"draught": 5.0, "displacement": 3000.0, "km": 7.00, "limit_kg": 6.2}),
    Row("c", {"draught": 5.4, "displacement": 3240.0, "km": 6.90}),
)
TABLE = HydrostaticTable(ROWS)
HEAVY = Weight("heavy", "on", Span.exact(300))


def metacentre(weights, table=TABLE, **values):
    """KM after weights."""
    before = start(**values)
    return height_of_metacentre(before, table, floating.displacement(before, weights))


def test_km_stays_where_the_displacement_does():
    """Without a change KM is that of the booklet, with no assumption and no table."""
    found = metacentre([], None, km=7.0)

    assert (7.0, ()) == (found.span.point, found.assumptions)


def test_km_is_read_between_the_rows_of_the_booklet():
    """90 t of the 240 t between two rows: 7.00 m less 90/240 of 0.10 m, whatever was typed."""
    found = metacentre([LOAD], km=7.0, km_after=9.0)

    assert 7.00 - 0.10 * 90 / 240 == pytest.approx(found.span.point)


def test_km_is_not_carried_beyond_the_rows():
    """3,300 t are outside; the range typed is named, and no slope is guessed."""
    found = metacentre([HEAVY], km=7.0)

    assert not found.known
    assert "typed for 2800 t to 3240 t" in found.gaps[0].why


def test_without_a_table_km_is_not_carried_at_all():
    """A changed displacement has no KM, unless somebody read it for that draught."""
    assert not metacentre([LOAD], None, km=7.0).known
    assert 6.95 == metacentre([LOAD], None, km=7.0, km_after=6.95).span.point


def test_a_span_of_displacement_spans_every_row_in_it():
    """KM falls and rises again between the ends: the row in between is counted."""
    table = HydrostaticTable((ROWS[0], ROWS[1], Row("c", {**ROWS[2].values, "km": 7.2})))
    found = table.at_displacement("km", Span(2900, None, 3240))

    assert (7.0, 7.2) == pytest.approx((found.low, found.high))


@pytest.mark.parametrize("swapped", [(0, 2, 1), (0, 0, 1)])
def test_draught_and_displacement_must_rise_together(swapped):
    """Rows that contradict each other are refused, not sorted right."""
    with pytest.raises(BadInput) as refused:
        HydrostaticTable(tuple(ROWS[at] for at in swapped))

    assert "hydrostatics by draught" == refused.value.field


def test_a_limit_is_read_only_where_it_is_typed():
    """The limit has rows to 3,000 t: beyond them there is none, but one read for this draught."""
    before = start()
    light, heavy = (
        floating.displacement(before, [Weight("w", act, Span.exact(100))]) for act in ("off", "on")
    )

    assert 6.25 == pytest.approx(kg_limit(before, TABLE, light).span.point)
    assert not kg_limit(before, TABLE, heavy).known
    assert 6.4 == kg_limit(start(limit_kg=6.4), TABLE, heavy).span.point
    assert kg_limit(before, None, light) is None


def afloat(weights, **values):
    """Draught amidships, draught left and deadweight left after weights."""
    before = start(tpc=9.0, mctc=40.0, **values)
    mid = draught_amidships(
        before, floating.sinkage(before, weights), floating.trim(before, weights)
    )
    left = draught_left(before, mid)
    mass = floating.displacement(before, weights)
    return mid, left, deadweight_left(before, TABLE, mass, left)


def test_the_mark_amidships_is_between_the_ends():
    """Half of the trim at each end leaves the mean; flotation aft of amidships adds its share."""
    mid, _, _ = afloat([LOAD], lcf=27.0, draught_fore=4.8, draught_aft=5.0)
    trim = 90 * (40 - 27) / 40 / 100

    assert 4.9 + 90 / 9 / 100 + trim * (0.5 - 27 / 60) == pytest.approx(mid.span.point)


def test_what_is_left_to_the_load_line_is_read_from_the_table():
    """5.2 m are 3,120 t: 30 t are left of them, and 0.10 m of draught."""
    _, left, deadweight = afloat([LOAD], lcf=30.0, greatest_draught=5.2)

    assert (0.10, 30.0) == pytest.approx((left.span.point, deadweight.span.point))


def test_beyond_the_table_what_is_left_follows_from_tpc():
    """5.6 m are outside the rows: 0.50 m at 9 t/cm, and the figure says so."""
    _, left, deadweight = afloat([LOAD], lcf=30.0, greatest_draught=5.6)

    assert 450.0 == pytest.approx(deadweight.span.point)
    assert BY_TPC in deadweight.assumptions


def test_without_a_greatest_draught_nothing_is_left():
    """The certificate is named as what is missing."""
    _, left, deadweight = afloat([LOAD], lcf=30.0)

    assert (False, False) == (left.known, deadweight.known)
    assert "Greatest draught by the load line" == left.gaps[0].name


def test_kg_follows_from_km_and_gm():
    """6.0 m are 7.0 less 1.0; with a free surface of 300 t·m on 3000 t, 5.9 m."""
    assert 6.0 == height_of_gravity(start(km=7.0, gm=1.0), []).span.point
    with_surface = height_of_gravity(start(km=7.0, gm=1.0, free_surface=300.0), [])
    assert 5.9 == pytest.approx(with_surface.span.point)


def test_a_weight_without_a_height_is_listed_and_named():
    """It may be anywhere to 30 m above the keel."""
    gravity = height_of_gravity(start(kg=6.0), [LOOSE])

    assert (ANY_HEIGHT,) == gravity.defaults
    assert (3000 * 6 / 3090, (3000 * 6 + 90 * 30) / 3090) == pytest.approx(
        (gravity.span.low, gravity.span.high)
    )


def test_more_off_than_there_is_leaves_no_height():
    """The refusal of the common centre is the gap of KG."""
    gravity = height_of_gravity(start(kg=6.0), [Weight("all", "off", Span.exact(3000), vcg=1)])

    assert not gravity.known
    assert "leaves nothing" in gravity.gaps[0].why


def figures(gm, surfaces=0.0):
    """Metacentre, gravity, free surfaces and displacement that leave a GM."""
    before = start(kg=7.0 - gm, km_after=7.0)
    moment = floating.Figure("Free-surface moment", Span.exact(surfaces), "t·m", "given")
    return (
        height_of_metacentre(before, None, floating.displacement(before, [])),
        height_of_gravity(before, []),
        moment,
        floating.displacement(before, []),
    )


def test_free_surfaces_take_from_the_metacentric_height():
    """300 t·m on 3000 t are 0.10 m of 1.00 m."""
    assert 0.9 == pytest.approx(metacentric_height(*figures(1.0, 300.0)).span.point)


def test_no_list_follows_from_a_negative_height():
    """A vessel that does not float upright has no angle of this kind; the gap says why."""
    *_, mass = parts = figures(-0.2)
    angle = angle_of_list([LOAD], mass, metacentric_height(*parts))

    assert not angle.known
    assert "GM above 0" in angle.gaps[0].why


def test_weights_on_the_centreline_list_nothing():
    """Then there is no figure at all, rather than one of zero."""
    *_, mass = parts = figures(1.0)
    centred = Weight("centred", "on", Span.exact(90), tcg=0)

    assert angle_of_list([centred], mass, metacentric_height(*parts)) is None
