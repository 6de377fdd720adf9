"""The smallest change as lines that a coach can type: the whole dose of a week, changed."""

import copy
from collections.abc import Iterator

from pydantic import ValidationError

from strength_handbook.dose.printing import dose_line
from strength_handbook.dose.texts import OneLineError
from strength_handbook.model.dose_part import DosePart
from strength_handbook.reading.source import Path, Plain, Source
from strength_handbook.review.finding import Edit, Finding

MOST_LINES = 4
"""Lines shown of a finding that stands for many weeks."""


def typed_lines(finding: Finding) -> list[str]:
    """Lines such as ``3: 4x5 @ 75 %, RIR 1``, where the doses to change are written in one line.

    Empty where the change is somewhere else, or where a line can't say it.
    """
    source = finding.spot.source
    weeks: dict[Path, list[Edit]] = {}
    for edit in finding.edits:
        path = _week(edit.path)
        if edit.file != source.file or path is None:
            return []
        weeks.setdefault(path, []).append(edit)
    lines = [line for path, edits in weeks.items() for line in _line(source, path, edits)]
    if len(lines) < len(weeks):
        return []
    more = len(lines) - MOST_LINES
    return lines if more <= 0 else [*lines[:MOST_LINES], f"and {more} more"]


def _week(path: Path) -> Path | None:
    """The dose of one week that a path leads into."""
    inside = len(path) > 6 and path[0] == "sessions" and path[2] == "slots" and path[4] == "weeks"
    return path[:6] if inside else None


def _line(source: Source, path: Path, edits: list[Edit]) -> Iterator[str]:
    mark = source.marks.get(path)
    if mark is None:
        return
    if mark.text_column is None:  # written in its long form
        if all(len(edit.path) == 7 and not isinstance(edit.value, dict | list) for edit in edits):
            said = (f"{edit.path[6]}: {edit.value}" for edit in edits if not edit.remove)
            yield f"{path[5]}: {{…, {', '.join(said)}}}"
        return
    dose = copy.deepcopy(_at(source.data, path))
    for edit in edits:
        _write(dose, edit.path[6:], edit)
    try:
        yield f"{path[5]}: {dose_line(DosePart.model_validate(dose))}"
    except (ValidationError, OneLineError):
        return


def _at(data: Plain, path: Path) -> Plain:
    for key in path:
        if isinstance(data, dict):
            data = data.get(str(key))
        elif isinstance(data, list) and isinstance(key, int):
            data = data[key]
    return data


def _write(data: Plain, path: Path, edit: Edit) -> None:
    """Make one edit in the long form of a dose."""
    *way, last = path
    for key in way:
        if not isinstance(data, dict):
            return
        data = data.setdefault(str(key), {})
    if isinstance(data, dict):
        if edit.remove:
            data.pop(str(last), None)
        else:
            data[str(last)] = edit.value
