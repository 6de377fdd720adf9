"""Does a text promise what only licensed practice may promise?"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import lru_cache

from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import At, Finding, Mending
from strength_handbook.review.texts import all_texts

_BODY = (
    r"(?:backs?|knees?|hips?|shoulders?|necks?|spines?|joints?|ankles?|elbows?|wrists?|discs?|"
    r"tendons?|hearts?|pelvi[cs]\w*)"
)
_TROUBLE = (
    r"(?:pains?|aches?|injur(?:y|ies)|sprains?|strains?|arthritis|sciatica|hernias?|osteoporosis|"
    r"tendinitis|tendonitis|tendinopathy|diabetes|disease|depression|scoliosis|damage)"
)
_NEARBY = rf"(?:[\w'’-]+ ){{0,3}}(?:{_TROUBLE}|{_BODY} {_TROUBLE}|(?:bad|sore|weak|stiff) {_BODY})"
_DENIED = re.compile(
    r"(?:\b(?:not|never|no|nor|cannot|nothing|nobody|neither|without)|n[’']t)\s+(?:[\w’'-]+\s+){0,2}$",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Claim:
    """Words that say more than a gym may say.

    Attributes:
        pattern: the words.
        promise: what they promise.
        instead: what may be written.
    """

    pattern: re.Pattern[str]
    promise: str
    instead: str


def _claim(pattern: str, promise: str, instead: str) -> Claim:
    return Claim(re.compile(pattern, re.IGNORECASE), promise, instead)


_MEANT = "say what it is meant for: 'is meant to …', 'may help to …'"
_ASK = "say whom to ask: 'ask the coach first', 'ask your clinician first'"
_DOOR = "write 'take the easier door' or 'ask first'"

CLAIMS: tuple[Claim, ...] = (
    _claim(r"\bcur(?:e|es|ed|ing)\b", "a cure", _MEANT),
    _claim(r"\bheals\b|\bheal(?:ing)? (?:your|the|a|an|any|old) [\w -]+", "healing", _MEANT),
    _claim(rf"\bsafe(?:r|st)? (?:for|on|with) (?:[\w'’-]+ ){{0,2}}{_BODY}\b",
           "that it can do no harm", _DOOR),
    _claim(r"\bsafe for\b", "that it can do no harm", _DOOR),
    _claim(r"\b(?:completely|totally|perfectly|absolutely|100 ?%) safe\b",
           "that it can do no harm", _DOOR),
    _claim(rf"\bprevent(?:s|ing|ed)? {_NEARBY}|\b(?:injury|pain) prevention\b"
           rf"|\bprevention of {_NEARBY}", "that nobody gets hurt", _MEANT),
    _claim(r"\b(?:injury|bullet|pain)[- ]?proof\w*", "that nobody gets hurt", _MEANT),
    _claim(r"\b(?:risk[- ]free|no risk of|zero risk|harmless)\b", "that nobody gets hurt", _DOOR),
    _claim(rf"\bfix(?:es|ing)? {_NEARBY}|\bfixes (?:your|the|bad|sore) {_BODY}",
           "a repair", _MEANT),
    _claim(rf"\b(?:treats|treatment (?:for|of)|treating|therapy for) {_NEARBY}",
           "a treatment", _ASK),
    _claim(r"\btherapeutic\b", "a treatment", _ASK),
    _claim(r"\brehab\w* (?:for|of|your|the|after)\b|\b(?:is|as|good|great) rehab\b",
           "a treatment", _ASK),
    _claim(rf"\b(?:stops|ends|kills|removes|eliminates|relieves|relieving|eases|reduces|lessens|"
           rf"gets rid of|takes away|reverses) (?:(?:your|the|all|any|chronic|low|lower) )*"
           rf"(?:{_BODY} )?{_TROUBLE}", "that it takes pain or illness away", _MEANT),
    _claim(rf"\b(?:reduces?|reducing|lowers?|lowering|cuts?|cutting|decreases?|minimi[sz]es?|"
           rf"less) (?:your |the |any |all )*(?:{_BODY} )?(?:injury )?(?:risks?|chances?|"
           rf"likelihood|rates?) of (?:{_NEARBY}|getting hurt|falls?|falling)"
           rf"|\b(?:reduces?|reducing|lowers?|lowering|cuts?|cutting|decreases?) "
           rf"(?:your |the |any )*(?:injury|fall|pain) (?:risks?|chances?|rates?)",
           "that nobody gets hurt", _MEANT),
    _claim(rf"\b(?:helps?|helping|works?|ideal|best|great) (?:with|against|for) {_NEARBY}",
           "that it helps a sore part", _ASK),
    _claim(rf"\b(?:protects?|protecting|shields?|saves?|spares?) (?:your |the |both |old )*"
           rf"(?:[\w-]+ )?(?:{_BODY}|ligaments?|cartilage|menisc\w+)\b",
           "that nobody gets hurt", _MEANT),
    _claim(rf"\bgood for (?:(?:your|the|a|any|bad|sore|weak|painful|stiff) )+{_BODY}",
           "that it helps a sore part", _MEANT),
    _claim(r"\b(?:lowers|normali[sz]es|controls) (?:your |the |high )*"
           r"(?:blood pressure|blood sugar|cholesterol)", "a medical effect", _ASK),
    _claim(r"\b(?:corrects|realigns|straightens) (?:your |the |bad )*"
           r"(?:posture|spine|pelvis|imbalances?|scoliosis)", "a repair", _MEANT),
    _claim(r"\b(?:medically|clinically|scientifically) (?:approved|proven|tested|cleared)\b"
           r"|\b(?:doctor|physio|clinician)s?[- ](?:approved|tested|recommended)\b",
           "that a clinician stands behind it", _ASK),
    _claim(r"\bcleared (?:for|to) (?:train|training|lift|lifting|exercise|sport|heavy|return)\b"
           r"|\bclears you\b", "that somebody was cleared", _ASK),
)  # fmt: skip
"""Words that no text may say, each with what it promises and what to write instead."""

_STEMS = (
    "cure", "curing", "reduc", "lower", "cut", "decreas", "minimi", "less", "help", "work", "ideal",
    "best", "great", "protect", "shield", "save", "spare",
    "heal", "safe", "prevent", "proof", "risk", "harmless", "fix", "treat",
    "therap", "rehab", "stops", "ends", "kills", "removes", "eliminates", "reliev", "eases",
    "reduces", "lessens", "rid of", "takes away", "reverses", "good for", "lowers", "normali",
    "controls", "corrects", "realigns", "straightens", "medical", "clinical", "scientific",
    "approved", "tested", "recommended", "clear",
)  # fmt: skip
"""One of these is in every claim: most texts need no closer look."""


@check(
    "claim-words",
    Family.SAFETY,
    Severity.ERROR,
    what="Every text that members read, against words that promise a cure, a treatment or that "
    "nobody gets hurt.",
    why="A page that promises health keeps somebody from asking a clinician.",
    source="common practice, no source; what a gym may promise is a matter of local law",
)
def claim_words(this: Check, desk: Desk) -> Iterator[Finding]:
    """Texts that promise too much."""
    for one in all_texts(desk):
        if " " not in one.text or not one.for_members:
            continue
        found = claim_in(one.text)
        if found is not None:
            claim, said = found
            text = f"'{said}' in '{one.key}' promises {claim.promise}"
            finding = this.finds_in(
                one.spot, one.what, text, change=Mending(claim.instead), program=one.program
            )
            yield replace(finding, at=At(one.what, one.weeks))


@lru_cache(maxsize=8192)  # after a save most texts are as they were
def claim_in(text: str) -> tuple[Claim, str] | None:
    """The first claim of a text with its words, save where it is denied.

    >>> claim_in("Strong thighs, and it cures knee pain.")[1]
    'cures knee pain'
    >>> claim_in("This does not cure anything; put the bar down where it is safe.")
    """
    small = text.casefold()
    if not any(stem in small for stem in _STEMS):
        return None
    for claim in CLAIMS:
        for match in claim.pattern.finditer(text):
            if not _DENIED.search(text[: match.start()]):
                following = text[match.end() :].split(".", maxsplit=1)[0].split()[:2]
                return claim, " ".join([match[0], *following]).rstrip(",;")
    return None
