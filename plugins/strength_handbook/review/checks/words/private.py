"""Does a file hold what belongs to nobody but the member: contacts, health?"""

import re
from collections.abc import Iterator
from dataclasses import replace

from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.checks.words.names import known_words, somebody_in
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import At, Finding, Mending
from strength_handbook.review.texts import WrittenText, all_texts

_CONTACTS = (
    ("an e-mail address", re.compile(r"[\w.+-]+@[\w-]+(?:\.[\w-]+)+")),
    ("a name on a network", re.compile(r"(?<![\w@])@[A-Za-z]\w{2,}")),
    (
        "a phone number",
        re.compile(
            r"(?<![\w.:/-])(?:\+\d|00[1-9]|\(?0[1-9])[\d ()/.-]{6,}\d(?![\w:])"
            r"|(?<![\w.:/-])\(?[2-9]\d{2}\)?[-. ]\d{3}[-. ]\d{4}(?![\w:])"
        ),
    ),
)
_FEWEST_DIGITS = 7
_ILLNESS = (
    r"(?:operations?|operated|surgery|surgeon|diagnos\w+|asthma\w*|inhaler|diabet\w+|insulin|"
    r"epilep\w+|seizures?|pregnan\w+|medication|medicines?|tablets|pills|hernia\w*|"
    r"slipped discs?|arthritis|stroke|cancer|chemo\w*|fractures?|broken|torn|sprained|"
    r"concussion|depress\w+|anxiety|blood pressure|heart (?:attack|condition|trouble|disease)|"
    r"pacemaker|replacement|new (?:hip|knee)|injur\w+|rehab\w*|physio\w*|therap\w+|"
    r"(?:bad|sore|dodgy|painful|stiff|weak) (?:back|knee|hip|shoulder|neck|ankle|elbow|wrist|heart)"
    r"|(?:back|knee|hip|shoulder|neck|ankle|elbow|wrist) (?:pain|trouble|problems?))"
)
_ILL = re.compile(rf"\b{_ILLNESS}\b", re.IGNORECASE)
_PERSON = (
    r"(?:\b(?:his|her|hers|he|she|him)\b|\b(?:this|that|our|one|the (?:old|young|new|tall)\w*)"
    r" (?:member|lifter|athlete|client|pupil|player|volunteer|colleague|team-?mate)(?:['’]s)?\b)"
)
_SOMEBODY = re.compile(_PERSON, re.IGNORECASE)
_HEALTH = re.compile(
    rf"{_PERSON}[^.;!?]{{0,60}}?\b{_ILLNESS}\b|\b{_ILLNESS}\b[^.;!?]{{0,25}}?{_PERSON}",
    re.IGNORECASE,
)


@check(
    "contact-data",
    Family.WORDS,
    Severity.ERROR,
    what="E-mail addresses, phone numbers and names on networks in any file; the emergency panel "
    "of the room is left out.",
    why="Program files are printed, passed on and kept for years.",
)
def contact_data(this: Check, desk: Desk) -> Iterator[Finding]:
    """Texts with a contact."""
    for one in all_texts(desk):
        if one.path[:1] == ("emergency",):
            continue
        if "@" not in one.text and sum(map(str.isdecimal, one.text)) < _FEWEST_DIGITS:
            continue
        for kind, pattern in _CONTACTS:
            match = pattern.search(one.text)
            if match:
                text = f"{kind} in '{one.key}'"
                change = Mending(f"take out '{match[0].strip()}'; write 'ask the session leader'")
                yield _finding(this, one, text, change)
                break


@check(
    "health-data",
    Family.WORDS,
    Severity.ERROR,
    what="Words of illness beside one person (her, his, this member, a name) in any text, names of "
    "sessions, exercises and things among them.",
    why="What somebody has told the coach about their body is nobody else's to read.",
    source="common practice, no source; data protection law names health data as specially "
    "protected in many countries",
)
def health_data(this: Check, desk: Desk) -> Iterator[Finding]:
    """Texts about one person's health."""
    for one in all_texts(desk):
        said = _health_in(one, desk)
        if said:
            text = f"'{said}' in '{one.key}' is about one person's health"
            change = Mending(
                "take it out, and write for everybody: 'after an operation: ask your clinician "
                "first', or what the 'hurts' door does"
            )
            yield _finding(this, one, text, change)


def _health_in(one: WrittenText, desk: Desk) -> str:
    """The words of a text that are about one person's health; empty where there are none."""
    if one.words is None:
        return ""
    if _SOMEBODY.search(one.text) and (match := _HEALTH.search(one.text)):
        return match[0].strip()
    ill = _ILL.search(one.text)
    name = somebody_in(one, known_words(desk)) if ill else ""
    return f"{name}: {ill[0]}" if ill and name else ""


def _finding(this: Check, one: WrittenText, text: str, change: Mending) -> Finding:
    finding = this.finds_in(one.spot, one.what, text, change=change, program=one.program)
    return replace(finding, at=At(one.what, one.weeks))
