"""An easy week as less of another one: so much of its sets, its load, its seconds."""

from typing import Any

from strength_handbook.dose.clause import Handler, beside, reads, take
from strength_handbook.dose.key import NO_LESSON, STAYS, Because, InLine, Key, KeyUse, OnBoard
from strength_handbook.dose.line_words import PERCENT
from strength_handbook.dose.texts import OneLineError, line_number
from strength_handbook.model.dose_part import DosePart

_COMES_TO = Because("it stands there as what it comes to")
_WORDS = Because("the dose of an easy week is said as what it comes to")

DELOAD_OF = Key[int](
    field="deload_of",
    read=reads(
        (r"deload\s+of\s+(?:week\s+)?(\d+)", take("deload-of")),
        advice={"deload": "say of which week, such as 'deload of 3'"},
    ),
    line=(InLine.LESS, lambda week, _: f"deload of {week}"),
    board=((OnBoard.LESS, lambda week, _: f"as week {week}, but less"),),
    words=_WORDS,
    step=_COMES_TO,
    data=_COMES_TO,
    door=STAYS,
    use=KeyUse(NO_LESSON, _COMES_TO, _COMES_TO),
)


def _share(word: str) -> Handler:
    text = f"a share of the {word} belongs behind 'deload of', such as 'deload of 3, {word} 60 %'"
    if word == "load":
        text += "; for the load itself write '@ 60 %'"
    return beside(r"\bdeload\s+of\s+(?:week\s+)?\d", text, take(f"keep-{word}"))


def _keep(word: str, what: str) -> Key[float]:
    """A share that is kept of one thing."""

    def line(share: float, part: DosePart) -> str:
        if part.deload_of is None:
            raise OneLineError(f"keep-{word}", f"'keep-{word}' stands beside 'deload-of' only")
        return f"{word} {line_number(share)} %"

    return Key[float](
        field=f"keep_{word}",
        read=reads((rf"{word}\s+({PERCENT})", _share(word))),
        line=(InLine.LESS, line),
        board=((OnBoard.LESS, lambda share, board: f"{share:g}{board.gap}% of the {what}"),),
        words=_WORDS,
        step=_COMES_TO,
        data=_COMES_TO,
        door=STAYS,
        use=KeyUse(NO_LESSON, _COMES_TO, _COMES_TO),
    )


KEEP_SETS = _keep("sets", "sets")
KEEP_LOAD = _keep("load", "load")
KEEP_HOLD = _keep("hold", "seconds")


KEYS: tuple[Key[Any], ...] = (DELOAD_OF, KEEP_SETS, KEEP_LOAD, KEEP_HOLD)
