"""The command `strength-handbook copy`: what it writes, what it refuses, how it ends."""

import zipfile
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

import demo
from strength_handbook.cli import main
from tiny import write_tiny


@pytest.fixture
def root(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The smallest handbook, in the current folder."""
    monkeypatch.chdir(tmp_path)
    return write_tiny(tmp_path)


def run(*words: str) -> Result:
    result = CliRunner().invoke(main, ["copy", *words])
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result


def state(folder: Path) -> dict[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file()
    }


def test_a_folder_and_an_archive_of_the_same(root: Path) -> None:
    result = run("out/copy")
    assert result.exit_code == 0, result.output
    files = state(root / "out/copy")
    assert result.stdout.startswith(f"{len(files)} files written to out/copy; open index.html\n")
    assert "in out/the-shed-1.zip\n" in result.stdout
    assert b"A copy: Spring, version 1. It does not update itself." in files["index.html"]
    with zipfile.ZipFile(root / "out/the-shed-1.zip") as packed:
        assert {name: packed.read(f"the-shed/{name}") for name in files} == files
    assert not (root / "site").exists()
    assert sorted(path.name for path in (root / "out").iterdir()) == ["copy", "the-shed-1.zip"]


def test_the_same_files_give_the_same_bytes(root: Path) -> None:
    assert run("one/copy").exit_code == run("two/copy").exit_code == 0
    assert state(root / "one") == state(root / "two")


def test_a_newer_copy_takes_the_place_of_an_earlier_one(root: Path) -> None:
    run("copy")
    demo.change(root / "programs/spring/program.yml", 'version: "1"', 'version: "2"')
    assert run("copy").exit_code == 0
    assert "version 2." in (root / "copy/index.html").read_text(encoding="utf-8")
    assert (root / "the-shed-1.zip").is_file()
    assert (root / "the-shed-2.zip").is_file()


def test_errors_are_refused_as_in_a_build_and_nothing_is_written(root: Path) -> None:
    run("copy")
    before = state(root / "copy"), (root / "the-shed-1.zip").read_bytes()
    demo.change(root / "programs/room.yml", "gym:", "colour: red\ngym:")
    for folder in ("copy", "other"):
        result = run(folder)
        assert result.exit_code == 1
        assert "programs/room.yml:1:1: error unknown-key: " in result.stderr
        assert "nothing was built" in result.stderr
        assert "Traceback" not in result.output
    assert (state(root / "copy"), (root / "the-shed-1.zip").read_bytes()) == before
    assert not (root / "other").exists()


def test_with_strict_warnings_are_refused_too(root: Path) -> None:
    program = root / "programs/spring/program.yml"
    demo.change(program, "valid-until: 2030-12-31\n", "")
    result = run("copy", "--strict")
    assert result.exit_code == 1
    assert "warn end-date: " in result.stderr
    assert not (root / "copy").exists()
    result = run("copy")
    assert result.exit_code == 0
    assert "warn end-date: " in result.stderr


@pytest.mark.parametrize("folder", ["programs", "handbook", "."])
def test_other_folders_are_left_alone(root: Path, folder: str) -> None:
    before = state(root)
    result = run(folder)
    assert result.exit_code == 2
    assert "holds files that no copy wrote" in result.output
    assert state(root) == before


def test_another_file_of_the_archives_name_is_left_alone(root: Path) -> None:
    (root / "the-shed-1.zip").write_text("something else")
    result = run("copy")
    assert result.exit_code == 2
    assert "is no copy of a handbook" in result.output
    assert not (root / "copy").exists()


def test_links_to_nothing_are_listed(root: Path) -> None:
    (root / "handbook/note.md").write_text("# A note\n\n[Old](/wiki/)\n", encoding="utf-8")
    result = run("copy")
    assert "note/index.html: '/wiki/' leads to nothing in the copy\n" in result.stderr


def test_outside_a_handbook_it_says_where_to_go(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    result = run("copy")
    assert result.exit_code == 2
    assert "there is no 'mkdocs.yml' here; go to the handbook's folder" in result.output


def test_the_handbook_may_be_elsewhere(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (root / "desk").mkdir()
    monkeypatch.chdir(root / "desk")
    assert run("copy", "-f", "../mkdocs.yml").exit_code == 0
    assert (root / "desk/copy/index.html").is_file()
