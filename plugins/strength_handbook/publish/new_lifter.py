"""A further example lifter: numbers at the end of `lifters.yml`, never a name."""

from collections.abc import Mapping
from pathlib import Path

from strength_handbook.publish.command_errors import MisuseError
from strength_handbook.publish.trial import refuse_unreadable
from strength_handbook.reading.raw_text import read_text
from strength_handbook.reading.source import Source
from strength_handbook.reading.yaml_source import read_source

FILE = "lifters.yml"
_MOST = 99
_HEAD = "# Example profiles: numbers only, never a name.\nlifters:\n"
_INDENT = "  "


def new_lifter(bodyweight: str, bases: Mapping[str, str], programs: Path) -> str:
    """Append a profile.

    Args:
        bodyweight: with its unit, such as `72 kg`.
        bases: tested values by the names that programs give them.
        programs: the program folder.

    Returns:
        What it is called, such as `P4`.

    Raises:
        MisuseError: where the file can't be gone on with, or a value can't be read.
    """
    path = programs / FILE
    text, indent, taken = _HEAD, _INDENT, set[str]()
    if path.exists():
        raw = path.read_bytes()
        source, _ = read_source(raw, FILE)
        decoded, _ = read_text(raw, FILE)
        if source is None or decoded is None:
            text = "lifters.yml can't be read; run 'strength-handbook check' and mend it first"
            raise MisuseError(text)
        text, indent, taken = decoded.rstrip() + "\n", *_profiles(source)
    name = next(key for number in range(1, _MOST) if (key := f"P{number}") not in taken)
    tested = ", ".join(f"{key}: {value}" for key, value in bases.items())
    lines = [f"{name}:", f"  bodyweight: {bodyweight}", f"  bases: {{{tested}}}"]
    text += "".join(f"{indent}{line}\n" for line in (lines if bases else lines[:2]))
    refuse_unreadable(programs, FILE, text)
    new = path.with_name(f".{FILE}.new")
    new.write_text(text, encoding="utf-8")
    new.replace(path)  # whole or not at all
    return name


def _profiles(source: Source) -> tuple[str, set[str]]:
    """How far profiles are indented, and which there are."""
    data = source.data
    profiles = data.get("lifters") if isinstance(data, dict) else None
    if not isinstance(profiles, dict):
        return _INDENT, set()
    columns = [source.key_at(("lifters", key)).column for key in profiles]
    return " " * (columns[0] - 1) if columns else _INDENT, set(profiles)
