"""Does a text name a member?

No list holds all names of the world, so names are told by how they are written: with a capital
letter in the middle of a sentence, and used nowhere by the handbook itself. At the start of a
sentence, where every word has one, by doing what people do, or by being a common given name.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace

from strength_handbook.model.words import CAUTIONS
from strength_handbook.plan.remembered import remembered
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import At, Finding, Mending
from strength_handbook.review.known_words import ALSO_WORDS, CAPITALS, FIRST_WORDS, GIVEN
from strength_handbook.review.texts import WrittenText, all_texts

_CAPITAL = re.compile(r"[A-ZÀ-ÖØ-Þ][\w'’]*")
_SMALL = re.compile(r"(?<![\w'’])[a-zß-öø-ÿ][\w'’]*")
_WORD = re.compile(r"[^\W\d_][\w'’]*")
_STARTS = frozenset(".!?:;…“”\"'‘(–—/|·•>*[")
"""What stands before the first word of a sentence, a quotation or a label."""
_DOES = (
    r"(?:is|isn['’]t|was|has|hasn['’]t|had|does|doesn['’]t|can|can['’]t|cannot|could|may|might|"
    r"must|should|will|won['’]t|needs|wants|uses|takes|goes|gets|stays|starts|skips|trains|"
    r"lifts|carries|prefers|says|likes|comes|and [A-Z])"
)
_AT_START = re.compile(
    r"(?:^|[.!?;:]\s+|[“\"(])([^\W\d_]+)"
    rf"(?:(?P<does>['’]s\s+\w+|\s+{_DOES}\b)|(?=\W|$))"
)
_WHOSE = re.compile(r"\b([A-ZÀ-ÖØ-Þ][\w-]+)['’]s\b|\b[Ff]or ([A-ZÀ-ÖØ-Þ][\w-]+)")
"""Somebody to whom something belongs, or for whom it is meant."""
_CITED = re.compile(r"(?:\band others\b|\bet al\b|\b(?:19|20)\d\d\b)")
_MOST_CAPITALS = 0.08
"""Share of words inside sentences with a capital letter from which it tells nothing: a language,
or a house style, that writes nouns so."""


@dataclass(frozen=True, slots=True)
class Known:
    """Words that are no member's name.

    Attributes:
        own: words of the handbook's own names.
        small: words that the files write with a small letter somewhere.
        telling: a capital letter inside a sentence tells a name here.
    """

    own: frozenset[str]
    small: frozenset[str]
    telling: bool

    def names(self, word: str) -> bool:
        """True where a word with a capital letter can only be a name."""
        plain = word.casefold().replace("’", "'").removesuffix("'s").rstrip("'")
        if plain in CAPITALS or plain in FIRST_WORDS or plain in self.own:
            return False
        return plain in ALSO_WORDS or not _forms(plain) & self.small


def _forms(word: str) -> set[str]:
    """A word and what it may come from: plural and singular."""
    return {word, f"{word}s", f"{word}es", word.removesuffix("s"), word.removesuffix("es")}


@check(
    "member-name",
    Family.WORDS,
    Severity.ERROR,
    what="Words with a capital letter inside a sentence, or people's verbs after an unknown first "
    "word, in notes, purposes, reasons and all other sentences. In names of exercises, sessions "
    "and things, where every word may have a capital letter, common given names; that is a "
    "warning. Places are left out.",
    why="Program files are printed, passed on and kept for years, and nobody agreed to be in them.",
)
def member_name(this: Check, desk: Desk) -> Iterator[Finding]:
    """Texts that seem to name somebody."""
    known = known_words(desk)
    for one in all_texts(desk):
        if one.words is None:
            continue
        name = given_name(one) if one.words.names else name_in(one.text, known)
        if name:
            text = f"'{name}' in '{one.key}' looks like somebody's name"
            change = Mending(
                "write the role instead, such as 'the session leader', or take it out; a place or "
                "a thing is named in 'need' or in room.yml once, or written small"
            )
            finding = this.finds_in(
                one.spot, one.what, text, change=change, program=one.program,
                severity=Severity.WARN if one.words.names else None,
            )  # fmt: skip
            yield replace(finding, at=At(one.what, one.weeks))


@remembered(1)
def known_words(desk: Desk) -> Known:
    """What the files, the handbook's cautions and the trade call things."""
    own: set[str] = set()
    prose = {one.text for one in all_texts(desk) if one.sentences}
    small = {word for text in (*CAUTIONS.values(), *prose) for word in _small(text)}
    for one in all_texts(desk):
        if one.words is not None and one.words.names:
            own |= {word.casefold() for word in _WORD.findall(one.text)}
    inside = sum(len(text.split()) for text in prose)
    capitals = sum(1 for text in prose for _ in _inside(text))
    return Known(frozenset(own), frozenset(small), capitals <= _MOST_CAPITALS * inside)


def name_in(text: str, known: Known) -> str:
    """The first word of a text that looks like a name, or an empty text.

    >>> known = Known(frozenset({"orrabeck"}), frozenset({"bar", "low"}), True)
    >>> name_in("Same load as last week for Xanthe.", known)
    'Xanthe'
    >>> name_in("Xanthe takes the low bar.", known), name_in("Anna on the low bar.", known)
    ('Xanthe', 'Anna')
    >>> name_in("Bar goes up. Orrabeck is far.", known)
    ''
    """
    if _CITED.search(text):
        return ""
    if known.telling:
        for word in _inside(text):
            if known.names(word):
                return re.sub(r"['’]s$", "", word)
    for match in _AT_START.finditer(text):
        word = match[1]
        if not _name_like(word) or not known.names(word):
            continue
        if match["does"] or word.casefold() in GIVEN - ALSO_WORDS:
            return word
    return ""


def given_name(one: WrittenText) -> str:
    """The first common given name of a text that has names of its own; empty for places."""
    return "" if one.words is not None and one.words.place else _given_in(one.text)


def somebody_in(one: WrittenText, known: Known) -> str:
    """Who is named in a text that speaks of health: more is taken for a name there."""
    if one.words is None:
        return ""
    if not one.words.names:
        return name_in(one.text, known) or _given_in(one.text)
    whose = (match[1] or match[2] for match in _WHOSE.finditer(one.text))
    telling = (word for word in whose if word.casefold() not in CAPITALS | FIRST_WORDS)
    return given_name(one) or next(telling, "")


def _given_in(text: str) -> str:
    return next((word for word in _WORD.findall(text) if _is_given(word)), "")


def _is_given(word: str) -> bool:
    plain = word.casefold().replace("’", "'").removesuffix("'s")
    return _name_like(word) and plain in GIVEN - ALSO_WORDS - CAPITALS


def _inside(text: str) -> Iterator[str]:
    """Words with a capital letter that begin no sentence, quotation or label."""
    for match in _CAPITAL.finditer(text):
        before = text[: match.start()].rstrip()
        if not before or before[-1] in _STARTS:
            continue
        if text[match.start() - 1] in "-–'’" or text[match.start() - 1].isalnum():
            continue
        if _name_like(match[0]):
            yield match[0]


def _name_like(word: str) -> bool:
    """A capital letter, then small ones; `BM`, `RIR` and `X` are no names."""
    plain = word.replace("’", "'").removesuffix("'s")
    return len(plain) > 1 and plain[0].isupper() and any(letter.islower() for letter in plain[1:])


def _small(text: str) -> list[str]:
    return [word.replace("’", "'").removesuffix("'s") for word in _SMALL.findall(text)]
