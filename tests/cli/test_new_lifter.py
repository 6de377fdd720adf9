"""`strength-handbook new lifter`: numbers behind the others, nothing else changed."""

import re
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

import demo
from strength_handbook.cli import main
from strength_handbook.reading.book import read_book
from tiny import write_tiny


def append(*words: str) -> Result:
    result = CliRunner().invoke(main, ["new", "lifter", *words])
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result


@pytest.fixture
def root(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    root = demo.copy_demo(tmp_path)
    monkeypatch.chdir(root)
    return root


def test_it_stands_behind_the_others_as_it_was_given(root: Path) -> None:
    file = root / "programs/lifters.yml"
    before = file.read_text(encoding="utf-8")
    old = set(re.findall(r"^  (P\d+):", before, re.M))
    result = append("--bodyweight", "64 kg", "--base", "trap-bar-1rm=120 kg", "--base",
                    "press-1rm = 40 kg")  # fmt: skip
    assert result.exit_code == 0, result.output
    name = result.stdout.split()[0]
    assert name not in old
    after = file.read_text(encoding="utf-8")
    assert after.startswith(before)
    book = read_book(root / "programs").book
    assert book is not None
    assert set(book.lifters) == old | {name}
    assert book.lifters[name].bodyweight.grams == 64_000
    grams = {key: mass.grams for key, mass in book.lifters[name].bases.items()}
    assert grams == {"trap-bar-1rm": 120_000, "press-1rm": 40_000}


def test_a_handbook_without_lifters_gets_its_first(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write_tiny(tmp_path)
    monkeypatch.chdir(tmp_path)
    assert append("--bodyweight", "150 lb").stdout.startswith("P1 is in programs/lifters.yml now")
    assert append("--bodyweight", "180 lb").stdout.startswith("P2 is in programs/lifters.yml now")
    book = read_book(tmp_path / "programs").book
    assert book is not None
    assert list(book.lifters) == ["P1", "P2"]


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ([], "Missing option '--bodyweight'"),
        (["--bodyweight", "64"], "lifters.yml:"),
        (["--bodyweight", "64 kg", "--base", "press-1rm"], "'press-1rm' can't be read"),
        (["--bodyweight", "64 kg", "--base", "a=1 kg", "--base", "a=2 kg"], "is given twice"),
        (["--bodyweight", "64 kg", "--base", "pres-1rm=40 kg"], "did you mean 'press-1rm'"),
        (["--bodyweight", "64 kg}: x"], "lifters.yml:"),
    ],
)
def test_what_to_write_instead(root: Path, words: list[str], says: str) -> None:
    file = root / "programs/lifters.yml"
    before = file.read_bytes()
    result = append(*words)
    assert result.exit_code == 2
    assert says in re.sub(r"\s+", " ", result.output)
    assert file.read_bytes() == before


def test_a_file_in_another_style_or_broken_is_left_alone(root: Path) -> None:
    file = root / "programs/lifters.yml"
    for text in ("lifters: {P1: {bodyweight: 70 kg}}\n", "lifters: [\n"):
        file.write_text(text, encoding="utf-8")
        assert append("--bodyweight", "64 kg").exit_code == 2
        assert file.read_text(encoding="utf-8") == text
