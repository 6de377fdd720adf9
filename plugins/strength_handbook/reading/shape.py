"""Plain data to typed model, with every refusal put at its place.

pydantic finds what is wrong and where in the data; the source's marks tell where in the file;
`wording` has the words.
"""

from collections.abc import Iterator, Sequence
from typing import TypeVar

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from strength_handbook.model.shape import quoted
from strength_handbook.reading.keys import Place, belongs, place_of, write_what
from strength_handbook.reading.problem import Problem
from strength_handbook.reading.source import Path, Source, value_at
from strength_handbook.reading.split_texts import cut_off
from strength_handbook.reading.suggest import did_you_mean, one_of
from strength_handbook.reading.wording import words_for

Model = TypeVar("Model", bound=BaseModel)

MOST_SHOWN = 100
"""Problems of one file that are shown; nobody reads more at once."""


def shape(model: type[Model], source: Source) -> tuple[Model | None, list[Problem]]:
    """A file's data as a typed model, or the list of everything that is wrong with it."""
    try:
        return model.model_validate(source.data), []
    except ValidationError as error:
        details = error.errors(include_url=False)
    problems = list(_problems(model, source, details[:MOST_SHOWN]))
    if len(details) > MOST_SHOWN:
        more = len(details) - MOST_SHOWN
        text = f"there are {more} more problems in this file; fix the others first"
        problems.append(source.problem((), "too-many", text))
    return None, problems


def _problems(
    model: type[BaseModel], source: Source, details: Sequence[ErrorDetails]
) -> Iterator[Problem]:
    meant: set[Path] = set()
    """Missing keys that are there under a misspelt name."""
    cut: set[str] = set()
    for detail in details:
        if detail["type"] == "extra_forbidden":
            *around, key = detail["loc"]
            place = place_of(model, around)
            text, right = cut_off(source, place.path, str(key)), ""
            if text and text in cut:  # one text with several commas
                continue
            cut.add(text)
            if not text:
                text, right = _unknown_key(str(key), place, belongs(model, around, str(key)))
            meant.add((*place.path, right))
            yield source.problem((*place.path, str(key)), "unknown-key", text, key=True)
    for detail in details:
        if detail["type"] == "extra_forbidden":
            continue
        if detail["type"] == "missing":
            *around, key = detail["loc"]
            place = place_of(model, around)
            if (*place.path, key) not in meant:
                yield source.problem(place.path, "missing-key", _missing(str(key), place))
            continue
        yield _refused(place_of(model, detail["loc"]), source, detail)


def _refused(place: Place, source: Source, detail: ErrorDetails) -> Problem:
    value = detail["input"] if place.on_key else value_at(source.data, place.path)
    context = detail.get("ctx") or {}
    slug, text = words_for(detail["type"], detail["msg"], value, place, context)
    path = place.path
    if detail["type"] == "union_tag_invalid":
        path = (*path, "kind")
    return source.problem(path, slug, text, key=place.on_key)


def _unknown_key(key: str, place: Place, elsewhere: str) -> tuple[str, str]:
    """What to say about an unknown key, and the key that was probably meant."""
    options = place.known_keys()
    if elsewhere:
        return f"{quoted(key)} does not stand here; {elsewhere}", ""
    hint = did_you_mean(key, options)
    right = next((option for option in options if hint.endswith(f"{quoted(option)}?")), "")
    chosen = f" where kind is {quoted(place.chosen)}" if place.chosen else ""
    known = f"; known here: {one_of(options, limit=len(options))}"
    return f"unknown key {quoted(key)}{chosen}{hint or known}", right


def _missing(key: str, place: Place) -> str:
    field = place.field(key)
    if field is None:
        return f"missing key {quoted(key)}"
    what = place.says(key).strip().rstrip(".,").split("\n")[0].replace("`", "'")
    if what[1:2].islower():
        what = what[0].lower() + what[1:]
    write = write_what(field.annotation, field.metadata)
    text = f"missing key {quoted(key)}"
    return text + (f": {what}" if what else "") + (f"; write {write}" if write else "")
