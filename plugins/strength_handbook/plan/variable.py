"""Bands and chains on a bar: load at the bottom, half-way and at the top, with this room's own.

The plates are for the straight part, the percentage; bands and chains come on top of it.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import combinations

from strength_handbook.calc.bands import BandCurve, BandPair, banded_load, choose_band_pair
from strength_handbook.calc.chains import ChainShape as CalcChain
from strength_handbook.calc.chains import chain_pairs_for_share, chained_load
from strength_handbook.calc.variable_load import VariableLoad
from strength_handbook.model.methods import ChainsOn
from strength_handbook.model.resistance import Band, Chain, Travel
from strength_handbook.plan.remembered import remembered

LARGEST_MISMATCH = 10.0
"""Bands of a pair differ by no more than this, in percent. Common practice, no source."""


@dataclass(frozen=True, slots=True)
class Variable:
    """What bands or chains make of a bar.

    Attributes:
        what: the bands' numbers, or the number of chain pairs, in words.
        load: kg in all at bottom, middle and top, and the share of the extra at the top.
        mismatch: percent between the two bands, the larger of bottom and top; 0 for chains.
    """

    what: str
    load: VariableLoad
    mismatch: float = 0.0


@dataclass(frozen=True, slots=True)
class OnTop:
    """What a dose hangs on a bar besides its plates, checked against the room.

    Attributes:
        travel: heights of the bar.
        curves: readings of the room's bands.
        pairs: pairs of bands to choose from; empty for chains.
        top_share: percent of the base that the bands should add at the top; None for a given pair.
        chain: the chain, or None for bands.
        chains: what is asked of the chain.
    """

    travel: Travel
    curves: Mapping[str, BandCurve]
    pairs: tuple[BandPair, ...] = ()
    top_share: float | None = None
    chain: Chain | None = None
    chains: ChainsOn | None = None

    @property
    def needs_base(self) -> bool:
        """True where it cannot be worked out without a tested value."""
        return self.top_share is not None

    def on(self, weight_kg: float, base_kg: float | None = None) -> Variable | None:
        """Load on a bar of so many kilograms, plates included.

        Args:
            weight_kg: bar and plates.
            base_kg: the tested value, for a share of it.

        Returns:
            The load; None where it takes a tested value and there is none.
        """
        if self.chain is not None and self.chains is not None:
            return self._with_chains(self.chain, weight_kg)
        if self.needs_base and base_kg is None:
            return None
        pair = self.nearest_pair(base_kg or 0.0)
        left, right = self.curves[pair.left], self.curves[pair.right]
        load = banded_load(weight_kg, left, right, self.travel.bottom, self.travel.top)
        return Variable(f"bands {pair.left} and {pair.right}", load, pair.mismatch)

    def nearest_pair(self, base_kg: float) -> BandPair:
        """The bands whose pull at the top is nearest to the share of a tested value."""
        wanted = base_kg * (self.top_share or 0.0) / 100
        return min(
            self.pairs,
            key=lambda p: (round(abs(p.top_pull - wanted), 9), p.mismatch, p.left, p.right),
        )

    def _with_chains(self, chain: Chain, weight_kg: float) -> Variable:
        pairs = self.chain_pairs(weight_kg)
        load = chained_load(
            weight_kg, calc_chain(chain), self.travel.bottom, self.travel.top, pairs
        )  # fmt: skip
        return Variable(chain_words(chain, pairs), load)

    def chain_pairs(self, weight_kg: float) -> int:
        """How many pairs of chains hang on a bar of so many kilograms; 0 for bands."""
        if self.chain is None or self.chains is None:
            return 0
        if self.chains.pairs is not None:
            return self.chains.pairs
        share = self.chains.top_share or 0.0
        one = calc_chain(self.chain)
        return chain_pairs_for_share(weight_kg, one, self.travel.top, share, self.chain.pairs)


def band_curves(bands: Mapping[str, Band]) -> dict[str, BandCurve]:
    """Readings of every band that has been read, by its number."""
    return {
        key: BandCurve(tuple(band.pulls), tuple(mass.kg for mass in band.pulls.values()))
        for key, band in bands.items()
        if band.pulls is not None
    }


def fitting_pairs(curves: Mapping[str, BandCurve], travel: Travel) -> tuple[BandPair, ...]:
    """Every two bands that were read at both heights, are taut at the bottom and alike enough."""
    return _fitting(tuple(sorted(curves.items())), travel.bottom, travel.top)


@remembered(64)
def _fitting(
    curves: tuple[tuple[str, BandCurve], ...], bottom: float, top: float
) -> tuple[BandPair, ...]:
    pairs = (
        choose_band_pair(dict(two), 0, bottom, top, LARGEST_MISMATCH)
        for two in combinations(curves, 2)
    )
    return tuple(pair for pair in pairs if pair is not None)


def calc_chain(chain: Chain) -> CalcChain:
    """A room's chain as the formulas take it."""
    return CalcChain(chain.mass_per_metre.kg, chain.length, chain.leader)


def chain_words(chain: Chain, pairs: int) -> str:
    """How many of the chains: ``2 pairs of 16 mm chain``."""
    if not pairs:
        return f"no {chain.name}"
    return f"{pairs} {'pair' if pairs == 1 else 'pairs'} of {chain.name}"
