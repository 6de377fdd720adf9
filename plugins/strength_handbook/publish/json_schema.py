"""JSON Schema for each kind of program file, made from the model, for completion in editors."""

import json
import re
from pathlib import Path
from typing import Any

from pydantic import BaseModel
from pydantic.json_schema import GenerateJsonSchema, JsonSchemaValue
from pydantic_core.core_schema import ModelSchema

from strength_handbook.model.field_words import field_words
from strength_handbook.reading.book import MODELS
from strength_handbook.reading.notation import EXAMPLE

SCHEMAS = tuple(str(kind) for kind in MODELS)
"""The kinds of files, which are the names of the schema files too."""

_ONE_LINE = {
    "DosePart": [
        EXAMPLE.strip("'"),
        "3x8-12, RIR 2",
        "ISO 3x30 s ES @ 12 kg, at front knee 90°",
        "4 -> 40 m @ 25 % BM",
        "3x(2+2+2)/20 s @ 85 % system",
        "strip 3 loads -20 % to 36 reps within 3 min @ 70 %",
        "ramp to 5RM, 2x5 @ 90 % of top",
        "deload of 3, sets 60 %, load 85 %",
    ],
    "Progress": ["linear +2.5 kg", "double +2 kg", "hold +5 s to 60 s", "listed"],
}
"""Blocks that may be written in one line, each with examples."""


def schema_text(kind: str) -> str:
    """The schema of a kind of file as text.

    Raises:
        KeyError: where there is no such kind.
    """
    return json.dumps(json_schema(kind), ensure_ascii=False, indent=1) + "\n"


def json_schema(kind: str) -> dict[str, Any]:
    """The schema of a kind of file: draft 2020-12.

    Raises:
        KeyError: where there is no such kind.
    """
    model = {str(key): model for key, model in MODELS.items()}[kind]
    schema: dict[str, Any] = _as_written(
        model.model_json_schema(by_alias=True, schema_generator=_WithWords)
    )
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", **schema}


class _WithWords(GenerateJsonSchema):
    """Each field with what its docstring says, which an editor shows beside the key."""

    def model_schema(self, schema: ModelSchema) -> JsonSchemaValue:
        made = super().model_schema(schema)
        model: type[BaseModel] = schema["cls"]
        for name, said in field_words(model).items():
            made["properties"][model.model_fields[name].alias or name]["description"] = said
        return made


def _as_written(part: Any) -> Any:
    """The model's schema with what the reader allows before the model sees it.

    A dose or a rule may be one line, true may be ``yes``, and where text is wanted YAML may have
    read a number, as in ``version: 2026``.
    """
    if isinstance(part, dict):
        block = str(part.get("$ref", "")).rpartition("/")[2]
        if block in _ONE_LINE:
            beside = {key: value for key, value in part.items() if key != "$ref"}
            line = {"type": "string", "examples": _ONE_LINE[block]}
            return {"anyOf": [{"$ref": part["$ref"]}, line], **beside}
        inner = {key: _as_written(value) for key, value in part.items()}
        if part.get("type") == "boolean":  # YAML 1.2 leaves yes and no as they were typed
            inner["enum"] = [True, False, "yes", "no"]
            del inner["type"]
        return {**inner, "type": ["string", "number"]} if _may_be_number(part) else inner
    if isinstance(part, list):
        return [_as_written(value) for value in part]
    return part


def _may_be_number(part: dict[str, Any]) -> bool:
    """Whether a bare number is as good as text: not where a unit or a word from a list is due."""
    if part.get("type") != "string" or part.keys() & {"enum", "const", "format"}:
        return False
    if "pattern" in part:
        return re.search(part["pattern"], "1") is not None
    return "examples" not in part


def schema_head(programs: Path, address: str) -> str:
    """The first line of a new program file; empty where the gym's folder has no schemas.

    Args:
        programs: the program folder.
        address: of the file in it, such as `exercises/plank.yml`.
    """
    has_schemas = (programs.parent / ".schema").is_dir() and programs.name == "programs"
    return f"{schema_line(f'programs/{address}')}\n" if has_schemas else ""


def schema_line(address: str) -> str:
    """What tells an editor the kind of a program file.

    >>> schema_line("programs/winter/1-brakes.yml")
    '# yaml-language-server: $schema=../../.schema/wave.json'
    """
    *folders, name = address.split("/")
    kind = name.removesuffix(".yml")
    if len(folders) > 1:
        kind = (
            "exercise" if folders[1] == "exercises" else "program" if kind == "program" else "wave"
        )
    return f"# yaml-language-server: $schema={'../' * len(folders)}.schema/{kind}.json"
