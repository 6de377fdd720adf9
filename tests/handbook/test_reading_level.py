"""How easily the texts read, by word and sentence length.

Reading ease: Flesch 1948, A new readability yardstick, J Appl Psychol 32(3):221-233:
206.835 - 84.6 × syllables per word - 1.015 × words per sentence. 60 to 70 is plain English, 80 and
more is easy. It measures length only, so it is a floor against drift and no proof of clarity.
"""

import re
from pathlib import Path

import pytest

import prose

FLOORS = {"member": 75.0, "coach": 80.0, "exercise": 80.0, "standards": 50.0}
"""By kind of text, some points below the hardest of its kind; standards are a list of titles."""


def syllables(word: str) -> int:
    """Roughly: groups of vowels, without a silent e at the end.

    A number counts as one, as a reader takes it in at a glance.
    """
    letters = re.sub(r"[^a-z]", "", word.lower())
    if not letters:
        return 1
    silent = (
        re.search(r"[^aeiouy]e$", letters) is not None
        or re.search(r"[^aeiouycghsxz]es$", letters) is not None
    ) and not re.search(r"[^aeiouy]les?$", letters)
    past = re.search(r"[^aeioudty]ed$", letters) is not None
    groups = len(re.findall(r"[aeiouy]+", letters))
    return max(1, groups - (silent or past))


def reading_ease(sentences: list[str]) -> float:
    words = [word for one in sentences for word in prose.words(one)]
    per_word = sum(syllables(word) for word in words) / len(words)
    return 206.835 - 84.6 * per_word - 1.015 * len(words) / len(sentences)


def kind_of(path: Path) -> str:
    if path.stem == "standards":
        return "standards"
    return "coach" if path.parent.name == "for-coaches" else "member"


def test_reading_ease_of_a_sentence_counted_by_hand() -> None:
    # 6 words of one syllable, one sentence: 206.835 - 84.6 - 6.09 = 116.145, by the formula.
    assert reading_ease(["The cat sat on the mat."]) == pytest.approx(116.145)


@pytest.mark.parametrize(
    ("word", "number"),
    # Counted by ear, no source.
    [("plate", 1), ("handle", 2), ("lower", 2), ("dropped", 1), ("loaded", 2), ("repetition", 4),
     ("kilograms", 3), ("handles", 2), ("plates", 1), ("boxes", 2), ("scale", 1),
     ("degrees", 2), ("benches", 2), ("60", 1)],
)  # fmt: skip
def test_syllables(word: str, number: int) -> None:
    assert syllables(word) == number


@pytest.mark.parametrize("path", prose.HANDBOOK, ids=prose.name_of)
def test_pages_read_easily(path: Path) -> None:
    sentences = prose.markdown_sentences(path.read_text(encoding="utf-8"))
    assert reading_ease(sentences) >= FLOORS[kind_of(path)]


READ = ("set-up", "cues", "stop", "spotting", "doors", "faults", "cautions", "breathing", "why")


@pytest.mark.parametrize("path", prose.EXERCISE_FILES, ids=prose.name_of)
def test_exercises_read_easily(path: Path) -> None:
    texts = [text for place, text in prose.yaml_texts(path) if place.split(".")[0] in READ]
    # Short names, doses and single words are no sentences.
    sentences = [one for text in texts for one in prose.sentences(text) if " " in one]
    assert reading_ease(sentences) >= FLOORS["exercise"]


def test_a_hard_text_is_below_every_floor_but_that_of_titles() -> None:
    hard = ["Proprioceptive neuromuscular facilitation methodologies necessitate supervision."]
    assert reading_ease(hard) < min(FLOORS.values())
