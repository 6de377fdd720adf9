"""The JSON Schemas, checked by another library: files that read well are valid, wrong ones not."""

from typing import Any

import pytest

import demo
from strength_handbook.publish.json_schema import SCHEMAS, json_schema
from strength_handbook.reading.files import FileKind, FoundFile, list_folder
from strength_handbook.reading.notation import read_dose
from strength_handbook.reading.yaml_source import read_source

# Oracle: the reference implementation of JSON Schema for Python.
jsonschema = pytest.importorskip("jsonschema")

FILES = list_folder(demo.PROGRAMS).files


def _validator(kind: str) -> Any:
    return jsonschema.Draft202012Validator(json_schema(kind))


def _data(found: FoundFile) -> Any:
    source, problems = read_source(found.path.read_bytes(), found.shown)
    assert source is not None, problems
    return source.data


@pytest.mark.parametrize("kind", SCHEMAS)
def test_each_is_a_schema_of_its_draft(kind: str) -> None:
    jsonschema.Draft202012Validator.check_schema(json_schema(kind))


@pytest.mark.parametrize("kind", SCHEMAS)
def test_the_demos_files_are_valid(kind: str) -> None:
    files = [found for found in FILES if found.kind == kind]
    assert files
    for found in files:
        errors = list(_validator(kind).iter_errors(_data(found)))
        assert not errors, f"{found.shown}: {[error.message for error in errors][:3]}"


@pytest.fixture
def wave() -> Any:
    """The first wave of the demo, to be spoilt."""
    return _data(next(found for found in FILES if found.kind is FileKind.WAVE))


def _slot(wave: Any) -> Any:
    return next(iter(wave["sessions"].values()))["slots"][0]


@pytest.mark.parametrize(
    "dose",
    [
        "3x5 @ 70 %, RIR 3",
        "3x(2+2+2)/20 s @ 85 % system",
        {"sets": 3, "reps": "8-12"},
        {"hold": "30 s", "each-side": "yes", "bands": {"pair": ["a-1", "a-2"]}},
        {"hold": "30 s", "each-side": True},
        None,
    ],
)
def test_a_dose_is_one_line_or_a_block(wave: Any, dose: Any) -> None:
    _slot(wave)["weeks"]["1"] = dose
    assert _validator("wave").is_valid(wave)


@pytest.mark.parametrize("dose", [5, ["3x5"], {"sats": 3}, {"sets": "three"}, {"each-side": 1}])
def test_anything_else_is_no_dose(wave: Any, dose: Any) -> None:
    _slot(wave)["weeks"]["1"] = dose
    assert not _validator("wave").is_valid(wave)


@pytest.mark.parametrize("rule", ["linear +2.5 kg", {"rule": "double", "step": "2 kg"}])
def test_a_rule_for_going_on_is_one_line_or_a_block(wave: Any, rule: Any) -> None:
    _slot(wave)["progress"] = rule
    assert _validator("wave").is_valid(wave)
    _slot(wave)["progress"] = 5
    assert not _validator("wave").is_valid(wave)


def test_what_reads_as_a_number_is_text_where_text_is_wanted(wave: Any) -> None:
    program = _data(next(found for found in FILES if found.kind is FileKind.PROGRAM))
    assert _validator("program").is_valid({**program, "version": 2027.1})
    assert not _validator("program").is_valid({**program, "time-cap": 75})
    assert _validator("wave").is_valid({**wave, "weeks": 1})
    assert not _validator("wave").is_valid({**wave, "weeks": "one"})


def test_an_unknown_key_is_refused(wave: Any) -> None:
    _slot(wave)["rezt"] = "90 s"
    assert not _validator("wave").is_valid(wave)


def test_examples_of_one_line_can_be_read() -> None:
    lines = json_schema("exercise")["properties"]["dose"]["anyOf"][1]["examples"]
    assert all(read_dose(line) for line in lines)


def test_fields_carry_their_help() -> None:
    exercise = json_schema("exercise")
    for name, field in exercise["properties"].items():
        # A field that says the same as the block it refers to leaves it to the block.
        block = exercise["$defs"].get(field.get("$ref", "").rpartition("/")[2], {})
        assert "description" in field or "description" in block, name
    assert "anyOf" in exercise["properties"]["dose"]
