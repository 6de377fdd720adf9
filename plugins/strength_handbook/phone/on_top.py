"""Bands and chains as a phone has them: what each pair adds at three heights of the bar."""

from typing import Any

from strength_handbook.calc.bands import band_pull
from strength_handbook.calc.chains import chain_load
from strength_handbook.plan.scale import Scale
from strength_handbook.plan.variable import OnTop, calc_chain, chain_words

Data = dict[str, Any]

MICROGRAMS_PER_KG = 1e9


def on_top_data(asked: OnTop, scale: Scale) -> Data:
    """What bands or chains add at the bottom, half-way and at the top, in micrograms of pull.

    Pairs of bands stand in the order in which equally good ones are taken, with the pull by which
    they are chosen; pairs of chains by their number, with the number for each load.
    """
    travel = asked.travel
    heights = (travel.bottom, (travel.bottom + travel.top) / 2, travel.top)
    if asked.chain is None or asked.chains is None:
        pairs = sorted(asked.pairs, key=lambda pair: (pair.mismatch, pair.left, pair.right))
        return {
            "bands": [
                [
                    f"bands {pair.left} and {pair.right}",
                    _micrograms(pair.top_pull),
                    *(
                        _micrograms(
                            sum(band_pull(asked.curves[one], h) for one in (pair.left, pair.right))
                        )
                        for h in heights
                    ),
                ]
                for pair in pairs
            ]
        }
    chain = calc_chain(asked.chain)
    loads = [step.grams for step in scale.steps if step.grams]
    numbers = [asked.chain_pairs(grams / 1000) for grams in loads]
    pulls = [2 * chain_load(chain, height) for height in heights]
    return {
        "chains": [
            [chain_words(asked.chain, number), *(_micrograms(number * one) for one in pulls)]
            for number in range(max(numbers, default=0) + 1)
        ],
        "pairs": numbers,
    }


def _micrograms(kg: float) -> int:
    return round(kg * MICROGRAMS_PER_KG)
