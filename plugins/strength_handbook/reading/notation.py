"""A dose in one line, as on a whiteboard, taken apart into the keys of the long form.

    4x5 @ 74 %, tempo 4-1-X-0, RIR 2, rest 2:30

Clauses stand in any order after the first; commas between them are welcome and not needed, except
after words of the coach's own. The reader does not judge values, it only finds them and remembers
their columns, so that whatever is wrong later is reported at the word that is wrong.
"""

import re
from collections.abc import Iterator

from strength_handbook.model.line_words import COUNT, END, LOAD, LONGEST
from strength_handbook.model.quantities import as_clock
from strength_handbook.reading.clauses import CLAUSES, WORDS, Found, NotationError
from strength_handbook.reading.suggest import did_you_mean, quoted

__all__ = ["EXAMPLE", "Found", "NotationError", "read_dose"]

EXAMPLE = "'4x5 @ 74 %, tempo 4-1-X-0, RIR 2, rest 2:30'"

_EACH_SIDE = "write 'each side' or 'ES' for one side after the other"
_OPEN = "write an open set as '3x5+', or '3x5, last set 5+ cap 10 RIR 1'"
_CLUSTER = "write a set in parts with its pause, such as '3x(2+2+2)/20 s'"
_STRIP = "write a strip set like 'strip 3 loads -20 % to 36 reps within 3 min'"
_BANDS = "write bands as 'bands 20 % at top', or with two numbers, such as 'bands 22-a 22-b'"
_CHAINS = "write chains as 'chains 1 pair' or 'chains 20 % at top'"
_RAMP = "an RM belongs after 'ramp to', such as 'ramp to 5RM'"
_PACE = "a number belongs after 'pace', such as 'pace 8/min'"
_SETTING = "a word and a value belong after 'setting', such as 'setting seat 4'"
_NEEDS = {
    "rest": "a time belongs after 'rest', such as 'rest 2:30' or 'rest 90 s'",
    "every": "a time belongs after 'every', such as 'every 60 s'",
    "top": "an RM belongs after 'top', such as 'top 5RM', or 'none'",
    "ramp": _RAMP,
    "test": "an RM belongs after 'test', such as 'test 3RM in 4 attempts'",
    "last": "write the last set like 'last set 5+ cap 10 RIR 1'",
    "iso": "sets and seconds belong after 'ISO', such as 'ISO 3x30 s'",
    "rir": "a number belongs after 'RIR', such as 'RIR 2'",
    "rpe": "a number belongs after 'RPE', such as 'RPE 8'",
    "tempo": "four fields belong after 'tempo', such as 'tempo 3-1-X-0'",
    "@": "a load belongs after '@', such as '@ 74 %', '@ 60 kg', '@ 25 % BM' or '@ BW+10 kg'",
    "at": "write '@' for 'at', such as '@ 74 %'",
    "load": "write '@' for 'load', such as '@ 74 %' or '@ 60 kg'",
    "each": _EACH_SIDE, "per": _EACH_SIDE, "side": _EACH_SIDE, "sides": _EACH_SIDE,
    "leg": _EACH_SIDE, "arm": _EACH_SIDE,
    "amrap": _OPEN, "max": _OPEN, "failure": _OPEN, "last-set": _OPEN,
    "cap": "a number of repetitions belongs after 'cap', such as 'cap 12'",
    "pace": _PACE,
    "shared": "write how many share the work, such as 'shared by 2'",
    "push": "say where after 'push at', such as 'push at pin 9 ramp 1 s'",
    "pause": "a time and a place belong after 'pause', such as 'pause 2 s at the bottom'",
    "return": "say how it gets back up, such as 'return by the arms'",
    "help": "write 'help band 22-a', or 'help by' and who or what helps",
    "bands": _BANDS, "band": _BANDS, "chains": _CHAINS, "chain": _CHAINS,
    "box": "a height belongs after 'box', such as 'box 45 cm'",
    "team": "write a team like 'team 6 x 100 kg turn 60 s'",
    "setting": _SETTING, "settings": _SETTING,
    "tm": "a percentage belongs after 'TM', such as 'TM 90 %'",
    "strip": _STRIP, "drop": _STRIP, "cluster": _CLUSTER,
    "deload": "say of which week, such as 'deload of 3'",
    "sets": "a number belongs after 'sets', such as 'sets 3', or a share, such as 'sets 60 %'",
    "reps": "a number belongs after 'reps', such as 'reps 5'",
    "hold": "a time belongs after 'hold', such as 'hold 30 s', or a share, such as 'hold 60 %'",
    "time": "a time belongs after it, such as 'time 40 s'",
    "distance": "metres belong after 'distance', such as 'distance 40 m'",
    "breathe": "say when, such as 'breathe out on the way up'",
    "range": "say how far, such as 'range to a 40 cm box'",
    "intent": "write 'intent fast', 'intent controlled' or 'intent slow'",
}  # fmt: skip
"""Advice for words that are known but not followed, or not preceded, by what they need."""


def read_dose(line: str) -> list[Found]:
    """Take one line apart.

    >>> [(f.key[0], f.value) for f in read_dose("3x5 @ 70 %, RIR 3")]
    [('sets', '3'), ('reps', '5'), ('load', '70 %'), ('rir', '3')]

    Raises:
        NotationError: at the first word that cannot be read, with what to write instead.
    """
    if len(line) > LONGEST:
        raise NotationError(0, f"a dose has at most {LONGEST} characters; write it like {EXAMPLE}")
    values: list[Found] = []
    seen: set[tuple[str | int, ...]] = set()
    position = 0
    while True:
        position = _skip(line, position)
        if position >= len(line):
            break
        end, clause = _clause(line, position)
        own = list(clause)
        keys = [value.key for value in own]
        for index, value in enumerate(own):
            block = _block(value)
            if block in seen or value.key in keys[:index]:
                raise NotationError(
                    value.start, f"'{block[-1]}' is given twice in this line; write it once"
                )
        seen |= {_block(value) for value in own}
        values += own
        position = end
    if not values:
        raise NotationError(0, f"the dose is empty; write it like {EXAMPLE}")
    return values


def _block(value: Found) -> tuple[str | int, ...]:
    """The key a clause fills: two clauses may fill different settings, and pace and sharing."""
    return value.key if value.key[0] in ("settings", "density") else value.key[:1]


def _clause(line: str, position: int) -> tuple[int, Iterator[Found]]:
    """The clause that starts here: where it ends, and its values."""
    for pattern, handle in CLAUSES:
        found = pattern.match(line, position)
        if found:
            return found.end(), handle(found)
    raise _unreadable(line, position)


def _skip(line: str, position: int) -> int:
    while position < len(line) and (line[position].isspace() or line[position] in ",;"):
        position += 1
    return position


def _unreadable(line: str, position: int) -> NotationError:
    """What to write instead of the word that begins here."""
    found = re.match(r"@|[^\s,;@]+", line[position:])
    word = found[0] if found else line[position:]
    after = re.split(r",(?!\d)", line[position + len(word) :], maxsplit=1)[0].strip()
    best = re.match(r"(?:of\s+)?(?:the\s+)?1\s*RM\b", line[position:], re.IGNORECASE)
    if best and line[:position].rstrip().endswith("%"):
        text = f"leave out {quoted(best[0])}: a percentage is of the slot's 'base'"
        return NotationError(position, text)
    if load := re.match(rf"({LOAD}){END}", line[position:], re.IGNORECASE):
        return NotationError(position, f"a load has '@' before it: write '@ {load[0]}'")
    if inner := re.match(rf"(?:{COUNT}\s*[x×]\s*)?(\(|(?:strip|drop)\b)", line[position:], re.I):
        advice = _CLUSTER if inner[1] == "(" else _STRIP
        return NotationError(position + inner.start(1), advice)
    if bare := _bare(word, after):
        return NotationError(position, bare)
    if advice := _NEEDS.get(word.lower(), ""):
        return NotationError(position, advice)
    if re.fullmatch(r"\d+(?:[.,]\d+)?", word):
        text = f"can't tell what {quoted(word)} counts; write the dose like {EXAMPLE}"
        return NotationError(position, text)
    if inside := re.search(r"(/(?:side|leg|arm|hand))|(amrap|max|failure)", word, re.IGNORECASE):
        advice = _EACH_SIDE if inside[1] else _OPEN
        return NotationError(position, f"can't read {quoted(word)} in a dose; {advice}")
    hint = did_you_mean(word, WORDS) or f"; write it like {EXAMPLE}"
    return NotationError(position, f"can't read {quoted(word)} in a dose{hint}")


def _bare(word: str, after: str) -> str | None:
    """Advice where a number stands without its unit, or an effort lacks its number."""
    number = re.match(r"\d+(?:[.,]\d+)?(?=$|\s+[^\s%])", after)
    if word == "@" and number:
        return f"{quoted(number[0])} has no unit; write '@ {number[0]} %' or '@ {number[0]} kg'"
    if word == "@" and (effort := re.match(r"RPE|RIR", after, re.IGNORECASE)):
        return _NEEDS[effort[0].lower()]
    if word.lower() in ("rest", "every") and number:
        example = f"{word.lower()} {number[0]}"
        clock = as_clock(number[0])
        first = f"'{word.lower()} {clock}', " if clock else ""
        return f"{quoted(number[0])} has no unit; write {first}'{example} s' or '{example} min'"
    return None
