"""What a dose hangs on a bar besides its plates, and whether this room can serve it."""

from collections.abc import Mapping

from strength_handbook.calc.bands import BandCurve, BandPair, band_mismatch, band_pull
from strength_handbook.calc.chains import all_off_floor
from strength_handbook.model.dose import Dose
from strength_handbook.model.length import length_text, span_text
from strength_handbook.model.loading import Loading, OnBar
from strength_handbook.model.methods import BandsOn, ChainsOn
from strength_handbook.model.resistance import Band, Chain, Travel
from strength_handbook.model.room import Room
from strength_handbook.plan.variable import (
    LARGEST_MISMATCH,
    OnTop,
    Variable,
    band_curves,
    calc_chain,
    chain_words,
    fitting_pairs,
)


class CannotServeError(ValueError):
    """The room has not what a dose asks for; the message says what is missing."""


def on_top(room: Room, loading: Loading, dose: Dose) -> OnTop | None:
    """What a dose hangs on the bar; None where it asks for neither bands nor chains.

    Raises:
        CannotServeError: where the room or the exercise has not what it takes.
    """
    bands, chains = dose.said.bands, dose.said.chains
    if bands is None and chains is None:
        return None
    what = "bands" if bands is not None else "chains"
    if bands is not None and chains is not None:
        raise CannotServeError("bands and chains on one bar are not worked out; keep one of them")
    if not isinstance(loading, OnBar):
        raise CannotServeError(f"{what} hang on a bar; this exercise is not loaded on one")
    if loading.hands is not None:
        raise CannotServeError(f"{what} hang on a bar, not on handles")
    if loading.travel is None:
        raise CannotServeError(
            f"for {what} the exercise's 'load' needs 'travel': measure how high the bar is at the "
            "bottom and at the top"
        )
    if bands is not None:
        return _bands(room.bands, bands, loading.travel)
    if loading.chains is None:
        named = " or ".join(f"'chains: {key}'" for key in room.chains)
        raise CannotServeError(
            f"the exercise's 'load' does not say which chains hang from it; write {named}"
            if named
            else "the room has no chains; write them in room.yml under 'chains'"
        )
    assert chains is not None  # noqa: S101  # one of the two is there
    return _chains(room.chains[loading.chains], chains, loading.travel)


def served(room: Room, loading: Loading, dose: Dose) -> OnTop | None:
    """The same, and None too where the room cannot serve it; `review.servable` reports that."""
    try:
        return on_top(room, loading, dose)
    except CannotServeError:
        return None


def for_lifters(
    asked: OnTop | None, weights_g: Mapping[str, int | None], bases_g: Mapping[str, int]
) -> dict[str, Variable]:
    """Loads with bands or chains of every lifter for whom they can be known.

    Args:
        asked: what hangs on the bar, if anything.
        weights_g: bar and plates by lifter.
        bases_g: tested value by lifter.
    """
    if asked is None:
        return {}
    found = {
        name: asked.on(grams / 1000, bases_g[name] / 1000 if name in bases_g else None)
        for name, grams in weights_g.items()
        if grams
    }
    return {name: variable for name, variable in found.items() if variable is not None}


def _bands(bands: Mapping[str, Band], asked: BandsOn, travel: Travel) -> OnTop:
    curves = band_curves(bands)
    if asked.pair:
        left, right = asked.pair
        return OnTop(travel, curves, (_pair(bands, curves, left, right, travel),))
    pairs = fitting_pairs(curves, travel)
    if not pairs:
        raise CannotServeError(
            f"no two bands in the room were read from {_cm(travel)}, are taut at the bottom and "
            f"alike within {LARGEST_MISMATCH:g} %"
        )
    return OnTop(travel, curves, pairs, asked.top_share)


def _pair(
    bands: Mapping[str, Band],
    curves: Mapping[str, BandCurve],
    left: str,
    right: str,
    travel: Travel,
) -> BandPair:
    """Two named bands, if they may hang on one bar."""
    if left == right:
        raise CannotServeError(f"band {left} cannot hang on both sides; name another for one side")
    for name in (left, right):
        if name not in bands:
            raise CannotServeError(f"there is no band {name} in the room")
        if name not in curves:
            raise CannotServeError(f"band {name} has no readings; write its 'pulls' in room.yml")
        low, high = curves[name].places[0], curves[name].places[-1]
        if travel.bottom < low or travel.top > high:
            raise CannotServeError(
                f"band {name} was read from {span_text(low, high)}, and the bar goes "
                f"from {_cm(travel)}; nothing is guessed beyond the readings"
            )
        if band_pull(curves[name], travel.bottom) <= 0:
            raise CannotServeError(
                f"band {name} is slack at the bottom, {length_text(travel.bottom, 'cm')}; a slack "
                "band snaps tight"
            )
    mismatch = max(
        band_mismatch(curves[left], curves[right], height) for height in (travel.bottom, travel.top)
    )
    if mismatch > LARGEST_MISMATCH:
        raise CannotServeError(
            f"bands {left} and {right} differ by {mismatch:.0f} %; a pair may differ by "
            f"{LARGEST_MISMATCH:g} %"
        )
    pull = sum(band_pull(curves[name], travel.top) for name in (left, right))
    return BandPair(left, right, pull, mismatch)


def _chains(chain: Chain, asked: ChainsOn, travel: Travel) -> OnTop:
    if asked.pairs is not None and asked.pairs > chain.pairs:
        there = "there is 1" if chain.pairs == 1 else f"there are {chain.pairs}"
        raise CannotServeError(f"{chain_words(chain, asked.pairs)} are asked for; {there}")
    if not chain.pairs:
        raise CannotServeError(f"the room has no pair of {chain.name}")
    if all_off_floor(calc_chain(chain), travel.top):
        raise CannotServeError(
            f"at the top, {length_text(travel.top, 'cm')}, all of the {chain.name} is off the "
            "floor and only weight; a longer leader or a longer chain keeps some of it down"
        )
    return OnTop(travel, {}, chain=chain, chains=asked)


def _cm(travel: Travel) -> str:
    return span_text(travel.bottom, travel.top)
