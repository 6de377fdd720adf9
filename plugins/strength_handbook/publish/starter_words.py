"""The explanations in a new exercise file that follow from the model, so that none is forgotten."""

import textwrap
from collections.abc import Iterable, Iterator
from typing import Any, get_args

from pydantic import BaseModel

from strength_handbook.model.dose import DosePart
from strength_handbook.model.field_words import field_words
from strength_handbook.model.figure import Arms, BasePose, Figure, Held, Pose, ThingKind
from strength_handbook.model.loading import Loading

_WIDTH = 98
_UNSAID = {"bearers": "How many carry it.", "time": "How long."}


def word_list(words: Iterable[str]) -> str:
    """Words to choose from, as lines of a comment."""
    return _comment(f"{', '.join(words)}.", "# ", hanging="")


def loading_keys() -> str:
    """All kinds of loading with their keys, as lines of a comment; then the keys they share."""
    kinds: tuple[type[BaseModel], ...] = get_args(get_args(Loading)[0])
    fields = [kind.model_fields for kind in kinds]
    shared = [name for name in fields[0] if all(name in other for other in fields)]
    also = _descriptions(kinds)
    lines = []
    for kind in kinds:
        (word,) = get_args(kind.model_fields["kind"].annotation)
        lines.append(_comment(f"{word}: {_first_line(kind)}", "#   "))
        own = [name for name in kind.model_fields if name not in shared]
        lines += _keys(kind, own, "#     ", also)
    lines.append("# Keys that every kind may have:")
    common = [name for name in shared if name != "kind"]
    return "\n".join([*lines, *_keys(kinds[0], common, "#   ", also)])


def dose_keys() -> str:
    """All keys of a dose, as lines of a comment."""
    return "\n".join(_keys(DosePart, DosePart.model_fields, "#   ", _UNSAID))


def figure_keys() -> str:
    """All keys of a figure and of a pose, as lines of a comment, with the words to choose from."""
    moments = ("start", "turn", "end")
    own = [name for name in Figure.model_fields if name not in moments]
    lines = [*_keys(Figure, own, "#   ", {}), _comment("start, turn, end: a pose each:", "#   ")]
    lines += _keys(Pose, Pose.model_fields, "#     ", {})
    for key, words in (("pose", BasePose), ("arms", Arms), ("holds", Held), ("thing", ThingKind)):
        lines.append(_comment(f"Words for {key}: {', '.join(get_args(words))}.", "#   "))
    return "\n".join(lines)


def _keys(
    model: type[BaseModel], names: Iterable[str], indent: str, also: dict[str, str]
) -> Iterator[str]:
    """One line for each key; the keys of a block stand under it."""
    for name in names:
        field = model.model_fields[name]
        key = field.alias or name
        blocks = list(_blocks(field.annotation))
        what = field_words(model).get(name) or also.get(key) or next(map(_first_line, blocks), "")
        yield _comment(f"{key}: {what}".rstrip(": ").replace("``", "'"), indent)
        for block in blocks:
            if block is Pose:  # its keys stand once, under the moments
                continue
            yield from _keys(block, block.model_fields, f"{indent}  ", also)


def _blocks(annotation: Any) -> Iterator[type[BaseModel]]:
    """The models inside an annotation."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        yield annotation
    for inner in get_args(annotation):
        yield from _blocks(inner)


def _descriptions(kinds: Iterable[type[BaseModel]]) -> dict[str, str]:
    """What a key means where it is said first, for the kinds that leave it unsaid."""
    said: dict[str, str] = {}
    for kind in kinds:
        for name, words in field_words(kind).items():
            said.setdefault(kind.model_fields[name].alias or name, words)
    return said


def _first_line(model: type[BaseModel]) -> str:
    return (model.__doc__ or "").split("\n", 1)[0]


def _comment(text: str, indent: str, hanging: str = "  ") -> str:
    """A comment of any length, broken into lines that hang together."""
    return textwrap.fill(
        text,
        _WIDTH,
        initial_indent=indent,
        subsequent_indent=indent + hanging,
        break_long_words=False,
        break_on_hyphens=False,
    )
