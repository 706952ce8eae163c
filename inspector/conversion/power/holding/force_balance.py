"""How far a load can grow until surge, sway and yaw can no longer be balanced together.

The attainable wrenches are a convex body, known only by its furthest point in any direction. A ray
leaves it through a triangle of such points, which is refined until no point lies beyond it: what
is found is always a wrench that can be given, so it is never too much.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from inspector.conversion.power.holding.attainable_thrust import (
    Group,
    Most,
    Unit,
    Wrench,
    most_in,
)

# Refinements of one ray; each brings the triangle closer, and twenty are seldom needed.
MOST_STEPS = 80
# How close the found end is to the true one, as a share.
CLOSE = 1e-6
# A stand-in for points that are missing lies so far out that no true thrust reaches it.
FAR = 1e3
DEEP = 1e5
# The share of a square below which a triangle has no area.
FLAT = 1e-13


@dataclass(frozen=True)
class Limit:
    """The end of a ray.

    Parameters
    ----------
    reach : float
        How many times the load can be balanced; below 0 where not even what is there without it.
    most : Most or None
        The most in the direction that gives way first; None where nothing balances.
    direction : tuple of float
        That direction.
    shares : dict of str to float
        Unit -> its share of full thrust at the end of the ray.
    """

    reach: float
    most: Most | None
    direction: Wrench
    shares: dict[str, float]


@dataclass(frozen=True)
class _Corner:
    """A point of the body, seen along the ray: two coordinates across it, and one along it."""

    u: float
    v: float
    along: float
    most: Most | None


def furthest(
    groups: Sequence[Group], start: Wrench, load: Wrench, enough: float = float("inf")
) -> Limit:
    """Return how many times a load can be balanced on top of what is there.

    Parameters
    ----------
    groups : sequence of Group
        The units, each going one way.
    start : tuple of float
        The wrench that is asked for without the load.
    load : tuple of float
        The wrench that is asked for by the load, once.
    enough : float
        The search ends early where the reach is so much at least.

    Returns
    -------
    Limit

    References
    ----------
    Duality of convex bodies and their support functions (plain mathematics): the ray from the
    start along the load ends where a plane through attainable points supports the body.
    """
    size = load[0] ** 2 + load[1] ** 2 + load[2] ** 2
    first, second = _across(load)

    def seen(point: Wrench) -> tuple[float, float, float]:
        off = tuple(part - begun for part, begun in zip(point, start, strict=True))
        return _dot(off, first), _dot(off, second), _dot(off, load) / size

    def corner(direction: Wrench) -> _Corner:
        most = most_in(groups, direction)
        return _Corner(*seen(most.wrench), most)

    far = FAR * _extent(groups, start) * max(1.0, size**-0.5)
    corners = [
        _Corner(far, -far, -DEEP * far, None),
        _Corner(-far, -far, -DEEP * far, None),
        _Corner(0.0, far, -DEEP * far, None),
    ]

    def direction_of(slope_u: float, slope_v: float) -> Wrench:
        return tuple(
            along / size + slope_u * one + slope_v * other
            for along, one, other in zip(load, first, second, strict=True)
        )

    return _refined(corners, corner, direction_of, enough)


def _extent(groups: Sequence[Group], start: Wrench) -> float:
    """Return a size that no coordinate of any attainable wrench exceeds, seen from the start."""
    thrusts = (
        (unit.ahead + unit.astern + unit.side) * (1 + abs(unit.x) + abs(unit.y))
        for group in groups
        for unit in group.units
    )
    return 1.0 + sum(thrusts) + sum(abs(part) for part in start)


def _refined(
    corners: list[_Corner],
    corner: Callable[[Wrench], _Corner],
    direction_of: Callable[[float, float], Wrench],
    enough: float,
) -> Limit:
    """Return the end of the ray from a triangle that it passes through."""
    for _ in range(MOST_STEPS):
        slope_u, slope_v, height = _plane(corners)
        direction = direction_of(slope_u, slope_v)
        found = corner(direction)
        beyond = found.along + slope_u * found.u + slope_v * found.v - height
        scale = max(abs(height), abs(slope_u * found.u), abs(slope_v * found.v), 1e-12)
        # With stand-ins the height is far below nothing, so that it never counts as enough.
        if beyond <= CLOSE * scale or height >= enough:
            break
        narrowed = _narrowed(corners, found)
        # What is left between two planes is finer than the numbers are.
        if narrowed is None:
            break
        corners = narrowed
    weights = _weights(corners)
    # Any weight on a stand-in means that the ray misses what can be given.
    missed = (weight for weight, each in zip(weights, corners, strict=True) if each.most is None)
    if any(weight > 1e-9 for weight in missed):
        return Limit(-1.0, found.most, direction, {})
    reach = sum(
        weight * each.along
        for weight, each in zip(weights, corners, strict=True)
        if each.most is not None
    )
    return Limit(reach, found.most, direction, _mixed(weights, corners))


def _mixed(weights: Sequence[float], corners: Sequence[_Corner]) -> dict[str, float]:
    """Return the share of full thrust of each unit where points are mixed by these weights."""
    forces: dict[str, tuple[Unit, float, float]] = {}
    for weight, each in zip(weights, corners, strict=True):
        for push in each.most.pushes if each.most is not None else ():
            unit = push.unit
            _, ahead, starboard = forces.get(unit.name, (unit, 0.0, 0.0))
            mixed = (ahead + weight * push.ahead, starboard + weight * push.starboard)
            forces[unit.name] = (unit, *mixed)
    return {name: unit.share_of(*both) for name, (unit, *both) in forces.items()}


def _across(load: Wrench) -> tuple[Wrench, Wrench]:
    """Return two unit vectors that stand across a load."""
    # From the axis that is least along it, so that the product is never near nothing.
    axis = min(range(3), key=lambda at: abs(load[at]))
    helper = tuple(1.0 if at == axis else 0.0 for at in range(3))
    first = _unit(_cross(load, helper))
    return first, _unit(_cross(load, first))


def _unit(vector: Wrench) -> Wrench:
    length = _dot(vector, vector) ** 0.5
    return tuple(part / length for part in vector)


def _cross(a: Wrench, b: Wrench) -> Wrench:
    return a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]


def _dot(a: Wrench, b: Wrench) -> float:
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def _plane(corners: Sequence[_Corner]) -> tuple[float, float, float]:
    """Return slopes and height of the plane: along + slope_u × u + slope_v × v = height."""
    a, b, c = corners
    u1, v1, w1 = b.u - a.u, b.v - a.v, b.along - a.along
    u2, v2, w2 = c.u - a.u, c.v - a.v, c.along - a.along
    area = u1 * v2 - u2 * v1
    slope_u = -(w1 * v2 - w2 * v1) / area
    slope_v = -(u1 * w2 - u2 * w1) / area
    return slope_u, slope_v, a.along + slope_u * a.u + slope_v * a.v


def _weights(corners: Sequence[_Corner]) -> tuple[float, float, float] | None:
    """Return the weights of the corners at the ray; None for a triangle without area."""
    a, b, c = corners
    parts = (b.u * c.v - c.u * b.v, c.u * a.v - a.u * c.v, a.u * b.v - b.u * a.v)
    total = sum(parts)
    size = max(abs(each.u) + abs(each.v) for each in corners)
    if abs(total) <= FLAT * size**2:
        return None
    return tuple(part / total for part in parts)


def _narrowed(corners: list[_Corner], found: _Corner) -> list[_Corner] | None:
    """Return the triangle with a new corner through which the ray passes; None without any."""
    best, least = None, -1e-9
    for at in range(3):
        triangle = [*corners[:at], found, *corners[at + 1 :]]
        weights = _weights(triangle)
        # A triangle without area has no plane; it is never chosen.
        if weights is not None and min(weights) > least:
            best, least = triangle, min(weights)
    return best
