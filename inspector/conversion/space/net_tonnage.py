"""Net tonnage: cargo by the draught that carries it, and passengers by their cabins."""

from inspector.conversion.core.bounds import BadInput, plain, within
from inspector.conversion.space.tonnage import MOST_TONNAGE, MOST_VOLUME, volume_coefficient

# Regulation 4: fewer passengers in all count as none.
LEAST_PASSENGERS = 13


def net_tonnage(
    tonnage: float,
    cargo: float = 0.0,
    draught: float | None = None,
    depth: float | None = None,
    few: int = 0,
    many: int = 0,
) -> float:
    """Return the net tonnage with its decimals.

    Parameters
    ----------
    tonnage : float
        Gross tonnage [-].
    cargo : float
        Volume of cargo spaces [m³].
    draught, depth : float, optional
        Moulded [m]; needed where there is cargo space.
    few : int
        Passengers in cabins of up to 8 berths [-].
    many : int
        The other passengers [-]; fewer than 13 passengers in all count as none.

    Returns
    -------
    float
        Net tonnage [-].

    Raises
    ------
    BadInput
        There is cargo space without draught and depth, or a value is not possible.

    References
    ----------
    ITC 1969, annex I, regulation 4 (seen).
    """
    plain("gross tonnage", tonnage, 1, MOST_TONNAGE)
    within("volume of cargo spaces", cargo, 0, MOST_VOLUME, "m³")
    of_cargo = _cargo_term(cargo, draught, depth) if cargo > 0 else 0.0
    counted = few + many / 10 if few + many >= LEAST_PASSENGERS else 0.0
    # K3 of regulation 4, which grows with the gross tonnage.
    of_passengers = 1.25 * (tonnage + 10_000) / 10_000 * counted
    return max(max(of_cargo, 0.25 * tonnage) + of_passengers, 0.30 * tonnage)


def _cargo_term(cargo: float, draught: float | None, depth: float | None) -> float:
    """K2 Vc (4d / 3D)², in which the square is no more than 1."""
    # Regulation 4 takes the cargo by how deep the ship lies for its depth.
    if draught is None or depth is None:
        raise BadInput(
            "Net tonnage: cargo space counts by draught and depth moulded; give both.",
            field="depth",
            value=depth,
        )
    high = 4 * plain("draught", draught, 0.3, 30, "m")
    ratio = high / (3 * plain("depth", depth, 0.5, 40, "m"))
    return volume_coefficient(cargo) * cargo * min(ratio**2, 1.0)
