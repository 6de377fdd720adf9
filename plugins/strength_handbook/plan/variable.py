"""Bands and chains on a bar: load at the bottom, half-way and at the top, for this room's own."""

from dataclasses import dataclass

from strength_handbook.calc.bands import BandCurve, banded_load, choose_band_pair
from strength_handbook.calc.chains import Chain as CalcChain
from strength_handbook.calc.chains import chain_pairs_for_share, chained_load
from strength_handbook.calc.registry import OutOfRangeError
from strength_handbook.calc.variable_load import VariableLoad
from strength_handbook.model.methods import BandsOn, ChainsOn
from strength_handbook.model.resistance import Band, Chain, Travel

LARGEST_MISMATCH = 10.0
"""Bands of a pair differ by no more than this, in percent. Common practice, no source."""


class CannotServeError(ValueError):
    """The room has not what a dose asks for; the message says what is missing."""


@dataclass(frozen=True, slots=True)
class Variable:
    """What bands or chains make of a bar.

    Attributes:
        what: the bands' numbers, or the number of chain pairs, in words.
        load: kg in all at bottom, middle and top, and the share of the extra at the top.
        mismatch: percent between the two bands, 0 for chains.
    """

    what: str
    load: VariableLoad
    mismatch: float = 0.0


def band_curves(bands: dict[str, Band]) -> dict[str, BandCurve]:
    """Readings of every band that has been read, by its number."""
    return {
        key: BandCurve(tuple(band.pulls), tuple(mass.kg for mass in band.pulls.values()))
        for key, band in bands.items()
        if band.pulls is not None
    }


def with_bands(
    bands: dict[str, Band], asked: BandsOn, travel: Travel, weight_kg: float, base_kg: float | None
) -> Variable:
    """Bar and plates with a pair of bands.

    Args:
        bands: the room's bands.
        asked: a pair by number, or a share of the base at the top.
        travel: heights of the bar.
        weight_kg: bar and plates.
        base_kg: the tested value; needed for a share.

    Raises:
        CannotServeError: where no pair fits, or one was not read at these heights.
    """
    curves = band_curves(bands)
    if asked.pair:
        left, right = asked.pair
        unread = [name for name in (left, right) if name not in curves]
        if unread:
            raise CannotServeError(
                f"band {unread[0]} has no readings; measure it and write its 'pulls'"
            )
    else:
        if base_kg is None or asked.top_share is None:
            raise CannotServeError("a share of the base needs a tested value")
        wanted = base_kg * asked.top_share / 100
        pair = choose_band_pair(curves, wanted, travel.bottom, travel.top, LARGEST_MISMATCH)
        if pair is None:
            raise CannotServeError(
                f"no two bands were read from {travel.bottom * 100:g} to {travel.top * 100:g} cm, "
                f"are taut at the bottom and alike within {LARGEST_MISMATCH:g} %"
            )
        left, right = pair.left, pair.right
    try:
        load = banded_load(weight_kg, curves[left], curves[right], travel.bottom, travel.top)
    except OutOfRangeError:
        raise CannotServeError(
            f"bands {left} and {right} were not read from {travel.bottom * 100:g} to "
            f"{travel.top * 100:g} cm; nothing is guessed beyond the readings"
        ) from None
    return Variable(f"bands {left} and {right}", load, _mismatch(curves, left, right, travel))


def _mismatch(curves: dict[str, BandCurve], left: str, right: str, travel: Travel) -> float:
    pair = choose_band_pair(
        {left: curves[left], right: curves[right]}, 0, travel.bottom, travel.top, 1000
    )
    return pair.mismatch if pair else 0.0


def with_chains(chain: Chain, asked: ChainsOn, travel: Travel, weight_kg: float) -> Variable:
    """Bar and plates with chains on both sides.

    Raises:
        CannotServeError: where the room has too few, or all of a chain leaves the floor.
    """
    one = CalcChain(chain.mass_per_metre.kg, chain.length, chain.leader)
    pairs = asked.pairs
    if pairs is None:
        share = asked.top_share or 0.0
        pairs = chain_pairs_for_share(weight_kg, one, travel.top, share, chain.pairs)
    if pairs > chain.pairs:
        raise CannotServeError(
            f"{pairs} pairs of {chain.name} are asked for; there are {chain.pairs}"
        )
    if travel.top - chain.leader >= chain.length:
        raise CannotServeError(
            f"at the top all of the {chain.name} is off the floor and is only weight; lengthen the "
            "leader or the chain"
        )
    load = chained_load(weight_kg, one, travel.bottom, travel.top, pairs)
    return Variable(f"{pairs} {'pair' if pairs == 1 else 'pairs'} of {chain.name}", load)
