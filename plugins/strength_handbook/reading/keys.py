"""What may stand at a place: the types of a model, found by walking it along a location.

A location is what pydantic gives with an error. It holds more than the data's own keys: the chosen
kind of a union, and ``[key]`` where a key itself is wrong.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum
from types import UnionType
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from pydantic import BaseModel, WithJsonSchema
from pydantic.fields import FieldInfo

from strength_handbook.model.field_words import field_words
from strength_handbook.model.samples import sample
from strength_handbook.model.shape import kebab, quoted
from strength_handbook.reading.source import Path
from strength_handbook.reading.suggest import one_of


@dataclass(frozen=True)
class Place:
    """One place in the data.

    Attributes:
        path: its path.
        kind: its type as annotated, or None where the model has nothing there.
        chosen: kind that was chosen here where the models are a union, or "".
        on_key: the key itself is meant, not its value.
    """

    path: Path
    kind: Any
    chosen: str = ""
    on_key: bool = False

    @property
    def models(self) -> list[type[BaseModel]]:
        """The models that may stand here."""
        return _models(self.kind)

    def known_keys(self) -> list[str]:
        """The keys that may be written here."""
        return list(dict.fromkeys(key for model in self.models for key in _fields(model)))

    def field(self, key: str) -> FieldInfo | None:
        """The field behind a key."""
        return next((f[key] for model in self.models if key in (f := _fields(model))), None)

    def says(self, key: str) -> str:
        """What the field behind a key says of itself; "" where it says nothing."""
        return next(
            (
                field_words(model).get(name, "")
                for model in self.models
                for name, field in model.model_fields.items()
                if key == (field.alias or kebab(name))
            ),
            "",
        )


def place_of(model: type[BaseModel], location: Sequence[str | int]) -> Place:
    """Walk a model along an error's location."""
    path: Path = ()
    kind: Any = model
    chosen = ""
    for part in location:
        if part == "[key]":
            return Place(path, kind, chosen, on_key=True)
        models = _models(kind)
        if len(models) > 1:
            chosen = str(part)
            kind = next((m for m in models if part in _literals(m.model_fields["kind"])), None)
            continue
        chosen = ""
        path = (*path, part if get_origin(_bare(kind)) is list else str(part))
        kind = _inner(kind, part)
    return Place(path, kind, chosen)


def belongs(model: type[BaseModel], location: Sequence[str | int], key: str) -> str:
    """Where a key belongs that is not known at a location, from nearby outwards; "" if nowhere."""
    fields = [item for m in place_of(model, location).models for item in _fields(m).items()]
    for outer, field in sorted(fields, key=lambda item: not item[1].is_required()):
        inner = _bare(field.annotation)
        inside = get_args(inner)[-1] if get_origin(inner) in (list, dict) else inner
        if any(key in _fields(found) for found in _models(inside)):
            return f"it belongs in {quoted(outer)}"
    for length in range(len(location) - 1, -1, -1):
        place = place_of(model, location[:length])
        if len(place.models) == 1 and key in place.known_keys():
            return f"it belongs further out, beside {quoted(str(location[length]))}"
    return ""


def write_what(kind: Any, metadata: Sequence[Any] = ()) -> str:
    """What to write where a type is expected, to follow the word "write"; "" for any text."""
    if get_origin(kind) is Annotated:
        kind, *inner = get_args(kind)
        metadata = (*inner, *metadata)
    kind = _bare(kind, metadata := list(metadata))
    for item in metadata:
        schema = item.json_schema if isinstance(item, WithJsonSchema) else None
        examples = [text for text in (schema or {}).get("examples", ()) if isinstance(text, str)]
        if examples:
            return sample(f"it like {one_of(examples[:2])}")
    if models := _models(kind):
        return _block(models)
    origin = get_origin(kind)
    if origin is Literal:
        return f"one of {one_of([str(word) for word in get_args(kind)], limit=12)}"
    if isinstance(kind, type) and issubclass(kind, Enum):
        return f"one of {one_of([str(word.value) for word in kind], limit=30)}"
    if origin is dict:
        return "a line 'short name: …' for each, indented"
    return {list: "a list", int: "a whole number", float: "a number"}.get(origin or kind, "")


def _block(models: Sequence[type[BaseModel]]) -> str:
    """The keys that a block must have."""
    if len(models) > 1:
        return "a block that begins with 'kind'"
    fields = _fields(models[0])
    wanted = [quoted(key) for key, field in fields.items() if field.is_required()]
    if len(wanted) < 2:
        return f"a block with {wanted[0] if wanted else one_of(list(fields))}"
    return f"a block with {', '.join(wanted[:-1])} and {wanted[-1]}"


def _fields(model: type[BaseModel]) -> dict[str, FieldInfo]:
    return {field.alias or kebab(name): field for name, field in model.model_fields.items()}


def _literals(field: FieldInfo) -> tuple[Any, ...]:
    return get_args(field.annotation)


def _bare(kind: Any, metadata: list[Any] | None = None) -> Any:
    """A type without its annotations and without None; annotations are added to `metadata`."""
    while True:
        origin = get_origin(kind)
        if origin is Annotated:
            kind, *inner = get_args(kind)
            if metadata is not None:
                metadata += inner
        elif origin in (Union, UnionType):
            some = [inner for inner in get_args(kind) if inner is not type(None)]
            if len(some) != 1:
                return kind
            kind = some[0]
        else:
            return kind


def _models(kind: Any) -> list[type[BaseModel]]:
    """The models in a type: itself, or the members of a union."""
    kind = _bare(kind)
    if isinstance(kind, type) and issubclass(kind, BaseModel):
        return [kind]
    if get_origin(kind) in (Union, UnionType):
        return [model for inner in get_args(kind) for model in _models(inner)]
    return []


def _inner(kind: Any, part: str | int) -> Any:
    """The type one step further in; None where there is none."""
    kind = _bare(kind)
    if isinstance(kind, type) and issubclass(kind, BaseModel):
        field = _fields(kind).get(str(part))
        # The annotations of a field are kept beside its type; () is there for fields without.
        return Annotated[field.annotation, *field.metadata, ()] if field else None
    origin, inner = get_origin(kind), get_args(kind)
    if origin in (list, dict):
        return inner[-1]
    return None
