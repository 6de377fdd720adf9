"""What to write instead of a word in a dose that can't be read."""

import re

from strength_handbook.dose.clause import NotationError
from strength_handbook.dose.line_words import COUNT, END, LOAD
from strength_handbook.dose.table import ADVICE, BEGINS
from strength_handbook.model.load import bare_load
from strength_handbook.model.quantities import as_clock
from strength_handbook.model.samples import sample
from strength_handbook.model.shape import quoted
from strength_handbook.reading.suggest import did_you_mean


def unreadable(line: str, position: int, example: str) -> NotationError:
    """What to write instead of the word that begins here.

    Args:
        line: the whole line.
        position: where the word begins.
        example: a dose that fits here, in quotes.
    """
    found = re.match(r"@|[^\s,;@]+", line[position:])
    word = found[0] if found else line[position:]
    after = re.split(r",(?!\d)", line[position + len(word) :], maxsplit=1)[0].strip()
    if load := re.match(rf"({LOAD}){END}", line[position:], re.IGNORECASE):
        return NotationError(position, f"a load has '@' before it: write '@ {load[0]}'")
    if inner := re.match(rf"(?:{COUNT}\s*[x×]\s*)?(\(|(?:strip|drop)\b)", line[position:], re.I):
        advice = ADVICE["cluster" if inner[1] == "(" else "strip"]
        return NotationError(position + inner.start(1), advice)
    if bare := _bare(word, after):
        return NotationError(position, bare)
    if advice := ADVICE.get(word.lower(), ""):
        return NotationError(position, sample(advice))
    if re.fullmatch(r"\d+(?:[.,]\d+)?", word):
        text = f"can't tell what {quoted(word)} counts; write the dose like {example}"
        return NotationError(position, text)
    if inside := re.search(r"(/(?:side|leg|arm|hand))|(amrap|max|failure)", word, re.IGNORECASE):
        advice = ADVICE["side" if inside[1] else "amrap"]
        return NotationError(position, f"can't read {quoted(word)} in a dose; {advice}")
    hint = did_you_mean(word, BEGINS) or f"; write it like {example}"
    return NotationError(position, f"can't read {quoted(word)} in a dose{hint}")


def _bare(word: str, after: str) -> str | None:
    """Advice where a number stands without its unit, or an effort lacks its number."""
    number = re.match(r"\d+(?:[.,]\d+)?(?=$|;|\s+[^\s%])", after)
    if word == "@" and number:
        return f"{quoted(number[0])} has no unit; write {bare_load(number[0], '@ ')}"
    if word == "@" and (effort := re.match(r"RPE|RIR", after, re.IGNORECASE)):
        return sample(ADVICE[effort[0].lower()])
    if word.lower() in ("rest", "every") and number:
        example = f"{word.lower()} {number[0]}"
        clock = as_clock(number[0])
        first = f"'{word.lower()} {clock}', " if clock else ""
        return f"{quoted(number[0])} has no unit; write {first}'{example} s' or '{example} min'"
    return None
