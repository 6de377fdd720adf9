"""Is a sentence of the example left in a new exercise?"""

from collections.abc import Iterator
from functools import cache
from importlib.resources import files

from strength_handbook.reading.problem import Severity
from strength_handbook.reading.source import Plain
from strength_handbook.reading.yaml_source import read_source
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Finding, Mending
from strength_handbook.review.texts import words

_SHORTEST = 7
"""Words of a sentence that nobody writes twice by chance."""


@check(
    "template-left",
    Family.WORDS,
    Severity.ERROR,  # in serve a new file can be looked at all the same
    what="Sentences of an exercise that stand word for word in the file that a new exercise begins "
    "with.",
    why="They describe a squat without a load, and members would read them about another lift.",
    source="the example that 'strength-handbook new exercise' writes",
)
def template_left(this: Check, desk: Desk) -> Iterator[Finding]:
    """Exercises with sentences of the example."""
    example = example_sentences()
    for name, file in desk.written.exercises.items():
        left = [(path, text) for path, text in _texts(file.source.data, ()) if text in example]
        if left:
            path, text = left[0]
            more = f", and {len(left) - 1} more sentences" if len(left) > 1 else ""
            said = f"'{text}'{more} of the example for new exercises"
            change = Mending("write it anew for this exercise, or take it out")
            yield this.finds_in(
                desk.exercise_spot(name, *path), f"exercise {name}", said, change=change
            )


@cache
def example_sentences() -> frozenset[str]:
    """The sentences of the example; what is too short to be told from chance is left out."""
    text = (files("strength_handbook") / "publish" / "starter_exercise.yml").read_text("utf-8")
    # Lines that stand for lists of words are no YAML.
    kept = "\n".join(line for line in text.splitlines() if not line.startswith("$"))
    source, _ = read_source(kept.encode(), "starter_exercise.yml")
    found = _texts(source.data, ()) if source is not None else ()
    return frozenset(text for _, text in found if len(words(text)) >= _SHORTEST)


def _texts(data: Plain, path: tuple[str | int, ...]) -> Iterator[tuple[tuple[str | int, ...], str]]:
    if isinstance(data, str):
        yield path, data
    elif isinstance(data, dict):
        for key, value in data.items():
            if key == "dose":
                continue  # a dose is no sentence
            yield from _texts(value, (*path, key))
    elif isinstance(data, list):
        for index, value in enumerate(data):
            yield from _texts(value, (*path, index))
