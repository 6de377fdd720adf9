"""One mistake at a time in a small folder, and exactly the lines that a coach reads about it."""

from pathlib import Path

import pytest

import base_folder
from base_folder import Case
from strength_handbook.reading.raw_text import MAX_BYTES

FILES = sorted(base_folder.CASES.glob("*.yml"))


def lines(folder: Path) -> list[str]:
    return sorted(str(problem) for problem in base_folder.read(folder).problems)


def test_the_folder_without_edit_has_no_problem(tmp_path: Path) -> None:
    reading = base_folder.read(base_folder.copy_base(tmp_path))
    assert reading.problems == []
    assert reading.book is not None


@pytest.mark.parametrize("path", FILES, ids=[path.stem for path in FILES])
def test_case(path: Path, tmp_path: Path) -> None:
    case = base_folder.read_case(path)
    folder = base_folder.copy_base(tmp_path)
    base_folder.apply(case, folder)
    assert lines(folder) == sorted(case.expect)


def test_there_is_a_case_with_no_problem_and_many_with_one() -> None:
    expected = [base_folder.read_case(path).expect for path in FILES]
    assert () in expected
    assert len(expected) > 200


def test_a_book_comes_out_only_of_a_folder_without_problems(tmp_path: Path) -> None:
    for name in ("no-house-rules", "week-not-in-wave"):
        case = base_folder.read_case(base_folder.CASES / f"{name}.yml")
        folder = base_folder.copy_base(tmp_path / name)
        base_folder.apply(case, folder)
        assert (base_folder.read(folder).book is None) == bool(case.expect)


def test_a_file_above_one_megabyte(tmp_path: Path) -> None:
    folder = base_folder.copy_base(tmp_path)
    edit = {"content": "#" * MAX_BYTES + "\n"}
    base_folder.apply(
        Case("large", "A file that is far too large.", "lifters.yml", edit, ()), folder
    )
    (line,) = lines(folder)
    assert line == (
        "gym/lifters.yml:1:1: error too-large: the file has 1,000,001 bytes, "
        "the limit is 1,000,000: split it"
    )


def test_of_many_problems_in_a_file_the_first_hundred_are_shown(tmp_path: Path) -> None:
    folder = base_folder.copy_base(tmp_path)
    kit = "".join(f"  thing-{number}: {{}}\n" for number in range(150))
    replace = {"from": "kit:\n", "to": f"kit:\n{kit}"}
    base_folder.apply(Case("many", "A long list.", "room.yml", {"replace": replace}, ()), folder)
    found = lines(folder)
    assert len(found) == 101
    assert (
        "gym/room.yml:2:1: error too-many: there are 50 more problems in this file; "
        "fix the others first" in found
    )


def test_of_many_lines_that_cannot_be_read_the_first_hundred_are_shown(tmp_path: Path) -> None:
    folder = base_folder.copy_base(tmp_path)
    edit = {"content": "lifters:\n" + "\tP1: {}\n" * 250}
    base_folder.apply(Case("tabs", "Tabs all over.", "lifters.yml", edit, ()), folder)
    found = lines(folder)
    assert len(found) == 101
    assert (
        "gym/lifters.yml:1:1: error too-many: there are 150 more problems in this file; "
        "fix the others first" in found
    )


def test_a_missing_folder(tmp_path: Path) -> None:
    assert lines(tmp_path / "gym") == [
        "gym:1:1: error no-folder: there is no such folder; create it, or name another"
    ]


def test_files_of_editors_and_other_kinds_are_left_alone(tmp_path: Path) -> None:
    folder = base_folder.copy_base(tmp_path)
    for name in (".room.yml.swp", "room.yml~", "_drafts.yml", "notes.md", "exercises/.hidden.yml"):
        (folder / name).write_text("no: [yaml", encoding="utf-8")
    (folder / "folder.yml").mkdir()
    (folder / "_drafts").mkdir()
    (folder / "_drafts" / "room.yml").write_text("no: [yaml", encoding="utf-8")
    assert lines(folder) == []


def test_a_file_name_that_is_no_text_is_shown_as_far_as_it_goes(tmp_path: Path) -> None:
    folder = base_folder.copy_base(tmp_path)
    name = b"st\xe9p.yml".decode(errors="surrogateescape")
    try:
        (folder / "exercises" / name).write_text("name: Step\n", encoding="utf-8")
    except OSError:
        pytest.skip("this file system has text names only")
    (line,) = lines(folder)
    assert line == (
        "gym/exercises/st?p.yml:1:1: error file-name: write an exercise's file name like "
        "'box-squat.yml': small letters, digits, hyphens"
    )


def test_a_file_that_cannot_be_opened(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    folder = base_folder.copy_base(tmp_path)
    read_bytes = Path.read_bytes

    def locked(path: Path) -> bytes:
        if path.name == "room.yml":
            raise PermissionError(13, "Permission denied")
        return read_bytes(path)

    monkeypatch.setattr(Path, "read_bytes", locked)
    assert lines(folder) == [
        "gym/room.yml:1:1: error no-file: the file can't be read: Permission denied"
    ]
