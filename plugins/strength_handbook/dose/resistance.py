"""What changes the load on the way: bands and chains on a bar, and help that takes weight off."""

import re
from collections.abc import Iterator
from typing import Any

from strength_handbook.dose.clause import ANOTHER, Found, free, reads, take
from strength_handbook.dose.key import (
    IN_RECIPE,
    NO_SHARE,
    STAYS,
    Board,
    InLine,
    Key,
    KeyUse,
    Lesson,
    OnBoard,
    Said,
    Told,
    taught,
)
from strength_handbook.dose.line_words import FREE, PERCENT
from strength_handbook.dose.texts import OneLineError, free_text, line_number
from strength_handbook.model.dose_part import DosePart
from strength_handbook.model.methods import Assist, BandsOn, ChainsOn
from strength_handbook.model.printed import NBSP, count_word

_BANDS = "write bands as 'bands 20 % at top', or with two numbers, such as 'bands 22-a 22-b'"
_CHAINS = "write chains as 'chains 1 pair' or 'chains 20 % at top'"
_BAND = rf"(?!(?:{ANOTHER})\b|{PERCENT})([\w-]+)"


def _pair(found: re.Match[str]) -> Iterator[Found]:
    for index in (0, 1):
        if found[index + 1] is not None:
            yield Found(("bands", "pair", index), found[index + 1], found.start(index + 1))


def _line_bands(bands: BandsOn, _: DosePart) -> str:
    share = bands.top_share
    return f"bands {' '.join(bands.pair) if share is None else f'{line_number(share)} % at top'}"


def _board_bands(bands: BandsOn, board: Board) -> str:
    pair = " and ".join(bands.pair)
    return f"+ bands {pair or f'{bands.top_share:g}{board.gap}% at the top'}"


def _bands_words(bands: BandsOn, _: Told) -> str:
    if bands.top_share is not None:
        return f"Bands add {bands.top_share:g} % of your best at the top"
    left, right = bands.pair
    return f"Hang band {left} on the left and {right} on the right"


BANDS = Key[BandsOn](
    field="bands",
    read=reads(
        (rf"bands?\s+({PERCENT})\s+at\s+(?:the\s+)?top", take("bands.top-share")),
        (rf"bands?\s+{_BAND}(?:\s+(?:and\s+)?{_BAND})?", _pair),
        advice={"bands": _BANDS},
        also={"band": _BANDS},
    ),
    line=(InLine.WITH, _line_bands),
    board=((OnBoard.ON_TOP, _board_bands),),
    words=((Said.ON_TOP, _bands_words),),
    door=STAYS,
    use=KeyUse(
        Lesson("bands on the bar", "Bands pull harder the higher you are; speed up all the way."),
        IN_RECIPE,
        NO_SHARE,
    ),
)


def _line_chains(chains: ChainsOn, _: DosePart) -> str:
    share, pairs = chains.top_share, chains.pairs
    many = f"{pairs} pair{'s' if pairs != 1 else ''}"
    return f"chains {many if share is None else f'{line_number(share)} % at top'}"


def _board_chains(chains: ChainsOn, board: Board) -> str:
    pairs = chains.pairs
    if pairs is None:
        return f"+ chains {chains.top_share or 0:g}{board.gap}% at the top"
    return f"+ {pairs}{NBSP}{'pair' if pairs == 1 else 'pairs'} of chains"


def _chains_words(chains: ChainsOn, _: Told) -> str:
    if chains.pairs is None:
        return f"Chains make {chains.top_share:g} % of the load at the top"
    pairs = "pair" if chains.pairs == 1 else "pairs"
    return f"Hang {count_word(chains.pairs)} {pairs} of chains on the bar"


CHAINS = Key[ChainsOn](
    field="chains",
    read=reads(
        (rf"chains?\s+({PERCENT})\s+at\s+(?:the\s+)?top", take("chains.top-share")),
        (r"chains?\s+(\d+)\s+pairs?", take("chains.pairs")),
        advice={"chains": _CHAINS},
        also={"chain": _CHAINS},
    ),
    line=(InLine.WITH, _line_chains),
    board=((OnBoard.ON_TOP, _board_chains),),
    words=((Said.ON_TOP, _chains_words),),
    door=STAYS,
    use=KeyUse(
        Lesson("chains on the bar", "Chains come off the floor as you rise; speed up all the way."),
        IN_RECIPE,
        NO_SHARE,
    ),
)


def _line_assist(assist: Assist, _: DosePart) -> Iterator[str]:
    if assist.band is not None:
        yield f"help band {assist.band}"
    if assist.by is not None:
        if assist.by[:1].isdigit():
            raise OneLineError("assist", "after 'help by' a number would be read as a load")
        yield f"help by {free_text('assist', assist.by)}"


def _assist_words(assist: Assist, _: Told) -> str:
    return f"Help: {assist.by}" if assist.band is None else f"Band {assist.band} helps"


ASSIST = Key[Assist](
    field="assist",
    read=reads(
        (r"help\s+band\s+([\w-]+)", take("assist.band")),
        (rf"help\s+by\s+(?!\d)({FREE})", free("assist.by")),
        advice={"help": "write 'help band 22-a', or 'help by' and who or what helps"},
    ),
    line=(InLine.WITH, _line_assist),
    board=((OnBoard.WITH, lambda assist, _: f"help: {assist.by or f'band {assist.band}'}"),),
    words=((Said.SET_UP, _assist_words),),
    door=STAYS,
    use=taught("help", "The help takes weight off; the control stays yours."),
)


KEYS: tuple[Key[Any], ...] = (BANDS, CHAINS, ASSIST)
