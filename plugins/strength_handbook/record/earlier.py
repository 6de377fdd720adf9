"""The data of an earlier publication, read back: anything may stand in such a file by now."""

import json
import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any, NoReturn

from strength_handbook.record.data import SCHEMA

Data = Mapping[str, Any]


class EarlierError(ValueError):
    """A file that is no data file of this handbook; the message says what to do.

    Attributes:
        line: line of the mistake, 1-based.
        column: its column, 1-based.
    """

    def __init__(self, text: str, line: int = 1, column: int = 1) -> None:
        super().__init__(text)
        self.line = line
        self.column = column


@dataclass(frozen=True)
class Earlier:
    """A data file that can be compared.

    Attributes:
        program: the program it is about.
        data: all of it.
    """

    program: str
    data: Data


def read_earlier(raw: bytes) -> Earlier:
    """A data file as the handbook publishes it.

    Raises:
        EarlierError: where it is something else.
    """
    data = _json(raw)
    if not isinstance(data, dict) or "schema" not in data:
        raise EarlierError(
            "this is not a data file of the handbook; take data/<program>.json from the site"
        )
    schema, program = data["schema"], data.get("program")
    if isinstance(schema, bool) or schema != SCHEMA:
        shown = json.dumps(schema, ensure_ascii=False)[:20]
        raise EarlierError(
            f"its schema is {shown}, and {SCHEMA} can be compared; take a data file that this "
            "version of the handbook has written"
        )
    if not isinstance(program, str) or not isinstance(data.get("weeks"), list):
        raise EarlierError("it names no program or has no weeks; take another copy of the file")
    return Earlier(program, data)


def _json(raw: bytes) -> Any:
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise EarlierError("the file is not UTF-8 text; take another copy of it") from None
    try:
        return json.loads(text, parse_constant=_refuse)
    except json.JSONDecodeError as error:
        wrong = f"the file is not whole JSON ({error.msg}); take another copy of it"
        raise EarlierError(wrong, error.lineno, error.colno) from None
    except (ValueError, RecursionError):
        raise EarlierError("the file is not plain JSON; take another copy of it") from None


def _refuse(word: str) -> NoReturn:
    raise ValueError(word)


def part(data: Data, key: str) -> Data:
    """A mapping inside; an empty one where there is something else."""
    value = data.get(key)
    return value if isinstance(value, dict) else {}


def parts(data: Data, key: str, name: str) -> dict[str, Data]:
    """The mappings of a list, by one of their texts; what has none is left out.

    >>> parts({"lifters": [{"id": "P2"}, {"id": "P1"}, 7]}, "lifters", "id")
    {'P2': {'id': 'P2'}, 'P1': {'id': 'P1'}}
    """
    return {one[name]: one for one in _mappings(data, key) if isinstance(one.get(name), str)}


def pairs_of(data: Data, key: str, first: str, second: str) -> dict[tuple[str, str], Data]:
    """The mappings of a list, by two of their texts."""
    return {
        (one[first], one[second]): one
        for one in _mappings(data, key)
        if isinstance(one.get(first), str) and isinstance(one.get(second), str)
    }


def weeks_of(data: Data) -> dict[int, Data]:
    """The weeks, by number."""
    return {
        one["week"]: one
        for one in _mappings(data, "weeks")
        if isinstance(one.get("week"), int) and not isinstance(one["week"], bool)
    }


def _mappings(data: Data, key: str) -> Iterator[Data]:
    several = data.get(key)
    yield from (one for one in (several if isinstance(several, list) else ())
                if isinstance(one, dict))  # fmt: skip


def number(value: Any) -> float | None:
    """A finite number, else None."""
    if isinstance(value, bool) or not isinstance(value, int | float):
        return None
    try:
        return float(value) if math.isfinite(value) else None
    except OverflowError:
        return None
