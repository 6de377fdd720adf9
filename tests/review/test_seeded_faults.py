"""Mistakes of a late evening in the whole demo: each brings its finding, at the right line."""

import re
import shutil
from datetime import date
from pathlib import Path
from typing import Any

import pytest
import yaml

from demo import PROGRAMS, change
from strength_handbook.checked import Checked, check_folder
from strength_handbook.reading.problem import Severity

TODAY = date(2026, 12, 1)
FAULTS: list[dict[str, Any]] = yaml.safe_load(
    (Path(__file__).parent / "seeded_faults.yml").read_text(encoding="utf-8")
)


def check(folder: Path) -> Checked:
    return check_folder(folder, "programs", TODAY)


def damage(folder: Path, fault: dict[str, Any]) -> None:
    file = folder / fault["file"]
    if "move" in fault:
        text = file.read_text(encoding="utf-8")
        start = text.index(fault["move"]["from"])
        end = text.index(fault["move"]["to"], start)
        target = text.index(fault["move"]["before"], end)
        moved = text[:start] + text[end:target] + text[start:end] + text[target:]
        file.write_text(moved, encoding="utf-8")
    for one in fault.get("replace", ()):
        change(file, one["from"], one["to"])
    text = file.read_text(encoding="utf-8")
    if "drop" in fault:
        text = re.sub(rf"\n +{re.escape(fault['drop'])}.*", "", text)
    if "why" in fault:
        text = re.sub(r"\nwhy: .*", f"\nwhy: {fault['why']}", text)
    if "cue" in fault:
        text = re.sub(r"(\n  during:\n    - ).*", rf"\g<1>{fault['cue']}", text)
    if "slot" in fault:
        text += (
            "      - order: Z\n        exercise: {exercise}\n        base: {base}\n"
            "        rest: 3:00\n        weeks:\n          {weeks}\n".format(**fault["slot"])
        )
    file.write_text(text, encoding="utf-8")


def test_the_demo_has_no_error_and_few_warnings_which_are_all_accepted() -> None:
    checked = check(PROGRAMS)
    assert [str(one) for one in checked.problems if one.severity is not Severity.NOTE] == []
    assert len(checked.accepted) < 10


@pytest.mark.parametrize("fault", FAULTS, ids=lambda fault: str(fault["slug"]))
def test_a_fault_is_found_where_it_is(fault: dict[str, Any], tmp_path: Path) -> None:
    folder = Path(shutil.copytree(PROGRAMS, tmp_path / "programs"))
    damage(folder, fault)
    checked = check(folder)
    found = [one for one in checked.problems if one.slug == fault["slug"]]
    assert found, [str(one) for one in checked.problems]
    assert {str(one.severity) for one in found} == {fault["severity"]}
    assert {one.file for one in found} == {
        f"programs/{fault['at'] if 'at' in fault else fault['file']}"
    }
    if "line" in fault:
        lines = (folder / fault.get("at", fault["file"])).read_text(encoding="utf-8").splitlines()
        assert any(fault["line"] in lines[one.line - 1] for one in found), found
    if "also" in fault:
        assert fault["also"] in {one.slug for one in checked.problems}
    errors = {one.slug for one in checked.problems if one.severity is Severity.ERROR}
    assert errors <= {fault["slug"], fault.get("besides")}
