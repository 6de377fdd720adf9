"""What is got ready, and words of the coach's own: settings, heights, ways, breathing."""

import re
from collections.abc import Iterator
from typing import Any

from strength_handbook.dose.clause import Found, free, reads, take
from strength_handbook.dose.key import (
    NO_SHARE,
    ON_PAGE,
    SAID_ONLY,
    STAYS,
    AtDoor,
    Because,
    Board,
    InLine,
    Key,
    KeyUse,
    OnBoard,
    Said,
    Told,
    taught,
)
from strength_handbook.dose.line_words import FREE, HEIGHT, WORD
from strength_handbook.dose.texts import (
    OneLineError,
    free_text,
    line_length,
)
from strength_handbook.model.dose_part import DosePart
from strength_handbook.model.printed import NBSP, height
from strength_handbook.model.words import Pattern

_SETTING = "a word and a value belong after 'setting', such as 'setting seat 4'"
_INTENT = {
    "fast": "Lift as fast as you can",
    "controlled": "Keep it under control all the way",
    "slow": "Move slowly and evenly",
}
_FAST = {
    Pattern.JUMP: "Leave the floor as fast as you can",
    Pattern.CARRY: "Walk as fast as you can, without running",
}
"""What as fast as possible means where nothing is lifted."""


def _intent_words(intent: str, told: Told) -> str:
    if told.dose.fast:
        return _FAST.get(told.exercise.pattern, _INTENT["fast"])
    return _INTENT[intent]


INTENT = Key[str](
    field="intent",
    read=reads(
        (rf"intent\s+({WORD})", take("intent")),
        advice={"intent": "write 'intent fast', 'intent controlled' or 'intent slow'"},
    ),
    line=(InLine.WORDS, lambda intent, _: f"intent {intent}"),
    board=((OnBoard.WORDS, lambda intent, _: f"intent {intent}"),),
    words=((Said.MOVE, _intent_words),),
    door=AtDoor.OF_REPS,
    use=taught(
        "lifting fast",
        "Every repetition as quick as the first, and under control.",
        when=lambda dose: dose.fast,
    ),
)


RANGE = Key[str](
    field="range_",
    read=reads(
        (rf"range\s+({FREE})", free("range")),
        advice={"range": "say how far, such as 'range to a 40 cm box'"},
    ),
    line=(InLine.WORDS, lambda how_far, _: f"range {free_text('range', how_far)}"),
    board=((OnBoard.WORDS, lambda how_far, _: f"range {how_far}"),),
    words=((Said.WHERE, lambda how_far, _: f"How far: {how_far}"),),
    door=AtDoor.OF_REPS,
    use=SAID_ONLY,
)


BREATHE = Key[str](
    field="breathe",
    read=reads(
        (rf"breathe\s+({FREE})", free("breathe")),
        advice={"breathe": "say when, such as 'breathe out on the way up'"},
    ),
    line=(InLine.WORDS, lambda when, _: f"breathe {free_text('breathe', when)}"),
    board=((OnBoard.WORDS, lambda when, _: f"breathe {when}"),),
    words=((Said.BREATH, lambda when, _: f"Breathe {when}"),),
    step=Because("the notation tells it where nothing else is different"),
    door=STAYS,
    use=KeyUse(Because("the exercise has its breathing"), ON_PAGE, NO_SHARE),
)


RETURN_BY = Key[str](
    field="return_by",
    read=reads(
        (rf"return\s+by\s+({FREE})", free("return-by")),
        advice={"return": "say how it gets back up, such as 'return by the arms'"},
    ),
    line=(InLine.WORDS, lambda way, _: f"return by {free_text('return-by', way)}"),
    board=((OnBoard.WITH, lambda way, _: f"back up by {way}"),),
    words=((Said.READY, lambda way, _: f"Lower only, and come back up by {way}"),),
    door=STAYS,
    use=taught("lowering only", "Only the lowering counts; the weight comes back up another way."),
)


BOX = Key[float](
    field="height",
    read=reads(
        (rf"box\s+({HEIGHT})", take("height")),
        advice={"box": "a height belongs after 'box', such as 'box 45 cm'"},
    ),
    line=(InLine.WITH, lambda high, _: f"box {line_length(high, 'cm')}"),
    board=((OnBoard.WITH, lambda high, _: f"height{NBSP}{height(high)}"),),
    words=((Said.WHERE, lambda high, _: f"Height: {height(high)}"),),
    door=STAYS,
    use=SAID_ONLY,
)


def _found_setting(found: re.Match[str]) -> Iterator[Found]:
    yield Found(("settings", found[1]), found[2], found.start(2))


def _line_settings(settings: dict[str, str], _: DosePart) -> Iterator[str]:
    for name, value in settings.items():
        if not re.fullmatch(WORD, name) or not re.fullmatch(WORD, value):
            raise OneLineError("settings", "a setting in one line is one word and one value")
        yield f"setting {name} {value}"


def _board_settings(settings: dict[str, str], _: Board) -> Iterator[str]:
    yield from (f"{name}{NBSP}{value}" for name, value in settings.items())


def _settings_words(settings: dict[str, str], _: Told) -> str:
    return "Settings: " + ", ".join(f"{name} {value}" for name, value in settings.items())


SETTINGS = Key[dict[str, str]](
    field="settings",
    read=reads(
        (rf"setting\s+({WORD})\s+({WORD})", _found_setting),
        advice={"setting": _SETTING},
        also={"settings": _SETTING},
        in_parts=True,
    ),
    line=(InLine.WITH, _line_settings),
    board=((OnBoard.WITH, _board_settings),),
    words=((Said.SET_UP, _settings_words),),
    door=STAYS,
    use=SAID_ONLY,
)


REMARK = Key[str](
    field="remark",
    read=reads(
        (rf"remark\s+({FREE})", free("remark")),
        advice={"remark": "a few words belong after 'remark', such as 'remark heavy'"},
    ),
    line=(InLine.WORDS, lambda remark, _: f"remark {free_text('remark', remark)}"),
    board=((OnBoard.WORDS, lambda remark, _: remark),),
    words=Because("it stands beside the numbers as the coach would write it on the board"),
    step=Because("the notation tells it where nothing else is different"),
    door=STAYS,
    use=SAID_ONLY,
)


def _line_note(_: str, __: DosePart) -> str:
    raise OneLineError("note", "a note has no place in one line")


NOTE = Key[str](
    field="note",
    read=Because("a sentence with commas has no place in one line"),
    line=(InLine.LESS, _line_note),
    board=Because("the week says it beside the dose"),
    words=Because("it is a sentence already, and the week says it beside the dose"),
    step=Because("it is a sentence for one week"),
    door=STAYS,
    use=SAID_ONLY,
)


KEYS: tuple[Key[Any], ...] = (INTENT, RANGE, BREATHE, RETURN_BY, BOX, SETTINGS, REMARK, NOTE)
