"""How far a load can grow until surge, sway and yaw can no longer be balanced together.

The attainable wrenches are a convex body, known only by its furthest point in any direction. A ray
leaves it through a triangle of such points, which is refined until no point lies beyond it: what
is found is always a wrench that can be given, so it is never too much.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cached_property

from inspector.conversion.power.holding.attainable_thrust import (
    Group,
    Most,
    Unit,
    Wrench,
    compiled,
    furthest_in,
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
    """The end of a ray. What each unit gives there is calculated where somebody asks.

    Parameters
    ----------
    reach : float
        How many times the load can be balanced; below 0 where not even what is there without it.
    direction : tuple of float
        The direction that gives way first.
    groups : tuple of Group
        The units, each going one way.
    corners : tuple of (float, tuple of float)
        The attainable points that are mixed there: weight and direction of each; empty where
        nothing balances.
    """

    reach: float
    direction: Wrench
    groups: tuple[Group, ...]
    corners: tuple[tuple[float, Wrench], ...]

    @cached_property
    def most(self) -> Most:
        """The most in the direction that gives way first."""
        return most_in(self.groups, self.direction)

    @cached_property
    def shares(self) -> dict[str, float]:
        """Unit -> its share of full thrust at the end of the ray."""
        forces: dict[str, tuple[Unit, float, float]] = {}
        for weight, direction in self.corners:
            for push in most_in(self.groups, direction).pushes:
                unit = push.unit
                _, ahead, starboard = forces.get(unit.name, (unit, 0.0, 0.0))
                mixed = (ahead + weight * push.ahead, starboard + weight * push.starboard)
                forces[unit.name] = (unit, *mixed)
        return {name: unit.share_of(*both) for name, (unit, *both) in forces.items()}


# A point of the body, seen along the ray: two coordinates across it, one along it, and the
# direction in which it is the furthest; None for a stand-in.
_Corner = tuple[float, float, float, Wrench | None]
_Triangle = tuple[_Corner, _Corner, _Corner]


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
    numbers = compiled(groups)
    per_size = tuple(part / size for part in load)

    def corner(slope_u: float, slope_v: float) -> _Corner:
        """The furthest point in the direction of a plane with these slopes."""
        direction = (
            per_size[0] + slope_u * first[0] + slope_v * second[0],
            per_size[1] + slope_u * first[1] + slope_v * second[1],
            per_size[2] + slope_u * first[2] + slope_v * second[2],
        )
        ahead, starboard, moment = furthest_in(numbers, direction)
        off = (ahead - start[0], starboard - start[1], moment - start[2])
        return _dot(off, first), _dot(off, second), _dot(off, load) / size, direction

    far = FAR * _extent(groups, start) * max(1.0, size**-0.5)
    triangle = (
        (far, -far, -DEEP * far, None),
        (-far, -far, -DEEP * far, None),
        (0.0, far, -DEEP * far, None),
    )
    return _limit(groups, *_refined(triangle, corner, enough))


def _extent(groups: Sequence[Group], start: Wrench) -> float:
    """Return a size that no coordinate of any attainable wrench exceeds, seen from the start."""
    thrusts = (
        (unit.ahead + unit.astern + unit.side) * (1 + abs(unit.x) + abs(unit.y))
        for group in groups
        for unit in group.units
    )
    return 1.0 + sum(thrusts) + sum(abs(part) for part in start)


def _refined(
    triangle: _Triangle, corner: Callable[[float, float], _Corner], enough: float
) -> tuple[_Triangle, Wrench]:
    """Return the triangle through which the ray leaves, and the direction that gives way there."""
    for _ in range(MOST_STEPS):
        slope_u, slope_v, height = _plane(triangle)
        found = corner(slope_u, slope_v)
        u, v, along, direction = found
        beyond = along + slope_u * u + slope_v * v - height
        scale = max(abs(height), abs(slope_u * u), abs(slope_v * v), 1e-12)
        # With stand-ins the height is far below nothing, so that it never counts as enough.
        if beyond <= CLOSE * scale or height >= enough:
            break
        narrowed = _narrowed(triangle, found)
        # What is left between two planes is finer than the numbers are.
        if narrowed is None:
            break
        triangle = narrowed
    return triangle, direction


def _limit(groups: Sequence[Group], triangle: _Triangle, direction: Wrench) -> Limit:
    """Return the end of the ray."""
    weights = _weights(triangle)
    # Any weight on a stand-in means that the ray misses what can be given.
    if any(weight > 1e-9 for weight, (*_, at) in zip(weights, triangle, strict=True) if at is None):
        return Limit(-1.0, direction, tuple(groups), ())
    real = [
        (weight, along, at)
        for weight, (_, _, along, at) in zip(weights, triangle, strict=True)
        if at is not None
    ]
    reach = sum(weight * along for weight, along, _ in real)
    corners = tuple((weight, at) for weight, _, at in real)
    return Limit(reach, direction, tuple(groups), corners)


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


def _plane(triangle: _Triangle) -> tuple[float, float, float]:
    """Return slopes and height of the plane: along + slope_u × u + slope_v × v = height."""
    (u, v, along, _), (u1, v1, w1, _), (u2, v2, w2, _) = triangle
    u1, v1, w1 = u1 - u, v1 - v, w1 - along
    u2, v2, w2 = u2 - u, v2 - v, w2 - along
    area = u1 * v2 - u2 * v1
    slope_u = -(w1 * v2 - w2 * v1) / area
    slope_v = -(u1 * w2 - u2 * w1) / area
    return slope_u, slope_v, along + slope_u * u + slope_v * v


def _weights(triangle: _Triangle) -> tuple[float, float, float] | None:
    """Return the weights of the corners at the ray; None for a triangle without area."""
    (u0, v0, *_), (u1, v1, *_), (u2, v2, *_) = triangle
    parts = (u1 * v2 - u2 * v1, u2 * v0 - u0 * v2, u0 * v1 - u1 * v0)
    total = parts[0] + parts[1] + parts[2]
    size = max(abs(u0) + abs(v0), abs(u1) + abs(v1), abs(u2) + abs(v2))
    if abs(total) <= FLAT * size * size:
        return None
    return parts[0] / total, parts[1] / total, parts[2] / total


def _narrowed(triangle: _Triangle, found: _Corner) -> _Triangle | None:
    """Return the triangle with a new corner through which the ray passes; None without any."""
    first, second, third = triangle
    (u0, v0, *_), (u1, v1, *_), (u2, v2, *_), (u, v, *_) = (*triangle, found)
    sizes = abs(u0) + abs(v0), abs(u1) + abs(v1), abs(u2) + abs(v2)
    # Twice the areas between the ray and each side, old sides and those to the new corner.
    opposite = u1 * v2 - u2 * v1, u2 * v0 - u0 * v2, u0 * v1 - u1 * v0
    of_first, of_second, of_third = u * v0 - u0 * v, u * v1 - u1 * v, u * v2 - u2 * v
    tried = (
        ((found, second, third), opposite[0], -of_third, of_second, max(sizes[1], sizes[2])),
        ((first, found, third), of_third, opposite[1], -of_first, max(sizes[0], sizes[2])),
        ((first, second, found), -of_second, of_first, opposite[2], max(sizes[0], sizes[1])),
    )
    own = abs(u) + abs(v)
    best, least = None, -1e-9
    for narrower, a, b, c, size in tried:
        total, size = a + b + c, max(size, own)
        # A triangle without area has no plane; it is never chosen.
        if abs(total) <= FLAT * size * size:
            continue
        weight = (min(a, b, c) if total > 0 else max(a, b, c)) / total
        if weight > least:
            best, least = narrower, weight
    return best
