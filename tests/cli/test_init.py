"""`strength-handbook init`: a gym's own folder that builds at once, whole or not at all."""

import json
import re
from pathlib import Path

import pytest
import yaml
from click.testing import CliRunner, Result

import demo
from strength_handbook import cli_room
from strength_handbook.checked import check_folder
from strength_handbook.cli import main
from strength_handbook.publish.first_gym import beginning
from strength_handbook.reading.problem import Severity
from strength_handbook.reading.yaml_source import read_source

jsonschema = pytest.importorskip("jsonschema")

SIGN = re.compile(r"Not yet filled in \([^()\n]+\)")
SCHOOL = {
    "gym": "North School: lifting room",
    "units": "lb",
    "bars": "3x45, 2x35",
    "plates": "45/35/25/10/5/2.5 lb",
    "racks": "two",
    "hands": "none",
    "machines": "none",
    "number": "911",
    "place": "12 School Road, gym door",
}
CLUB = {
    "gym": "Brook Street Club",
    "bars": "4x20, trap bar 25",
    "plates": "4x20, 2x15, 4x10, 2x5, 2x2,5, 2x1,25",
    "racks": "3",
    "hands": "dumbbells 4-30 by 2; kettlebells 16, 24x2",
    "machines": "leg press, Rower x2",
    "number": "112",
    "place": "2 Brook Street",
}


PRACTICE = {
    "gym": "Canal Row Physiotherapy",
    "bars": "none",
    "racks": "0",
    "hands": "dumbbells 1-10 by 1",
    "machines": "steps 15 cm, 20 cm; 6 chairs, mats, bands, a wall, "
    "cable column 2.5-50 by 2.5, leg press 1-20",
    "number": "112",
    "place": "9 Canal Row",
}
HALL = {"units": "lb", "racks": "none", "bars": "2x45", "plates": "4x45, 4x10", "hands": "none"}


def init(*words: str, said: str | None = None) -> Result:
    result = CliRunner().invoke(main, ["init", *words], input=said)
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result


def options(answers: dict[str, str]) -> list[str]:
    return [word for key, text in answers.items() for word in (f"--{key}", text)]


def begun(folder: Path, answers: dict[str, str]) -> Path:
    result = init(str(folder), "--yes", *options(answers))
    assert result.exit_code == 0, result.output
    return folder


def filled_in(folder: Path) -> None:
    """What a coach does then: every open place gets an answer."""
    for path in [*folder.rglob("*.yml"), *folder.rglob("*.md")]:
        text = path.read_text(encoding="utf-8")
        path.write_text(SIGN.sub("Beside the door", text), encoding="utf-8")


@pytest.mark.parametrize("answers", [{}, SCHOOL, CLUB, PRACTICE, HALL], ids=str)
def test_a_new_gym_builds_at_once_and_strictly_when_it_is_filled_in(
    tmp_path: Path, answers: dict[str, str]
) -> None:
    root = begun(tmp_path / "gym", answers)
    done = demo.mkdocs(root, "build")
    assert done.returncode == 0, done.stderr
    home = (root / "site/index.html").read_text(encoding="utf-8")
    assert answers.get("gym", "Not yet filled in (the gym&#39;s name)").split("&")[0] in home
    week = root / "site/first-weeks/week-01"
    first = "a-stand-up-and-push" if answers in (PRACTICE, HALL) else "a-squat-and-press"
    assert (week / first / "index.html").is_file()
    safety = (root / "site/safety/index.html").read_text(encoding="utf-8")
    assert "Not yet filled in (which door the ambulance takes, and who opens it)" in safety

    if answers == PRACTICE:
        _speaks_of_no_rack(root / "site")

    refused = demo.mkdocs(root, "build", "--strict")
    assert refused.returncode != 0
    number = sum(
        len(SIGN.findall(path.read_text(encoding="utf-8")))
        for path in [*root.glob("programs/**/*.yml"), *root.glob("handbook/*.md")]
    ) - len(SIGN.findall("".join(comments(root))))
    lines = re.findall(r"^\S+:\d+:\d+: warn (\S+): .*write .*$", refused.stderr, re.MULTILINE)
    assert lines == ["not-filled-in"] * number

    filled_in(root)
    done = demo.mkdocs(root, "build", "--strict")
    assert done.returncode == 0, done.stderr


def _speaks_of_no_rack(site: Path) -> None:
    """Only what is alike everywhere does: the list of formulas, and how things are measured."""
    texts = {
        path.parent.relative_to(site).as_posix(): re.sub(r"<[^>]*>", " ", path.read_text("utf-8"))
        for path in site.rglob("index.html")
    }
    words = re.compile(r"\b(racks?|hooks|collars|safeties|tip out)\b|bench notch", re.IGNORECASE)
    spoken = {page for page, text in texts.items() if words.search(text)}
    assert {page for page in spoken if not page.startswith("for-coaches/")} <= {"numbers"}
    assert "There is no bar here." in texts["room"]
    form = texts["exercises/sit-to-stand"].split("My set-up numbers")[1].split("Keep")[0]
    assert form.split() == ["Seat", "Stance", "Note"]


def test_check_names_every_open_place_also_in_pages(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    root = begun(tmp_path / "gym", {})
    monkeypatch.chdir(root)
    result = CliRunner().invoke(main, ["check"])
    assert result.exit_code == 0
    for path in (root / "handbook").rglob("*.md"):
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), start=1):
            for sign in SIGN.finditer(line):
                place = f"{path.relative_to(root).as_posix()}:{number}:{sign.start() + 1}"
                assert f"{place}: warn not-filled-in: " in result.output
    assert "handbook/" in result.output
    # Another folder of pages, by its name in mkdocs.yml; none where there is no mkdocs.yml.
    (root / "handbook").rename(root / "pages")
    demo.change(root / "mkdocs.yml", "docs_dir: handbook", "docs_dir: 'pages' # by hand")
    assert "pages/safety.md:" in CliRunner().invoke(main, ["check"]).output
    (root / "mkdocs.yml").unlink()
    assert "pages/" not in CliRunner().invoke(main, ["check"]).output


def poses(path: Path) -> dict[str, object]:
    figure = yaml.safe_load(path.read_text(encoding="utf-8")).get("figure", {})
    return {moment: figure.get(moment) for moment in ("start", "turn", "end")}


def test_exercises_that_the_demo_has_too_are_drawn_as_there(tmp_path: Path) -> None:
    root = begun(tmp_path / "gym", CLUB)
    files = {path.stem: path for path in (root / "programs/exercises").glob("*.yml")}
    both = sorted(files.keys() & set(demo.EXERCISES))
    assert len(both) >= 4
    for name in both:
        assert poses(files[name]) == poses(demo.PROGRAMS / f"exercises/{name}.yml"), name


def comments(root: Path) -> list[str]:
    return [
        line
        for path in root.glob("programs/**/*.yml")
        for line in path.read_text(encoding="utf-8").splitlines()
        if line.lstrip().startswith("#")
    ]


@pytest.mark.parametrize("answers", [
    {},
    SCHOOL,
    CLUB,
    {"plates": "2x20", "racks": "1", "bars": "1x20"},
    {"plates": "8x25, 8x20, 2x15, 4x10, 4x5, 2x2.5, 2x1.25, 2x0.5", "racks": "12", "bars": "12x20"},
    {"units": "lb", "plates": "2x45", "bars": "45", "hands": "5-100 by 5"},
    PRACTICE,
    HALL,
    {"racks": "0"},
    {"bars": "trap bar 25", "racks": "2", "hands": "kettlebells 8-24 by 4"},
    {"bars": "none", "units": "lb", "hands": "kettlebells 15, 25, 35"},
    {"bars": "none", "hands": "dumbbells 10-30 by 5"},
], ids=str)  # fmt: skip
def test_checks_find_nothing_but_what_is_left_to_fill_in(
    tmp_path: Path, answers: dict[str, str]
) -> None:
    root = begun(tmp_path / "gym", answers)
    checked = check_folder(root / "programs")
    assert {problem.slug for problem in checked.problems} == {"not-filled-in"}
    filled_in(root)
    assert check_folder(root / "programs").problems == ()


def test_everything_is_in_pounds_and_inches_where_plates_are(tmp_path: Path) -> None:
    root = begun(tmp_path / "gym", SCHOOL)
    texts = [path.read_text(encoding="utf-8") for path in root.glob("programs/**/*.yml")]
    metric = [
        line for line in "\n".join(texts).splitlines() if re.search(r"\d\s*(kg|g|cm|mm|m)\b", line)
    ]
    assert metric == []
    assert "[[" not in "".join(texts)


def test_answers_stand_in_the_room(tmp_path: Path) -> None:
    root = begun(tmp_path / "gym", SCHOOL)
    room = yaml.safe_load((root / "programs/room.yml").read_text(encoding="utf-8"))
    assert (room["gym"], room["units"]) == (SCHOOL["gym"], "lb")
    plates = [(one["mass"], one["pairs"]) for one in room["plates"]]
    assert plates == [(f"{lb} lb", 1) for lb in ("45", "35", "25", "10", "5", "2.5")]
    assert room["racks"]["rack"]["count"] == 2
    assert room["emergency"]["number"] == "911"
    assert list(room["bars"]) == ["bar-45", "bar-35"]


@pytest.mark.parametrize("answers", [{}, SCHOOL, CLUB, PRACTICE, HALL], ids=str)
def test_every_example_of_the_room_may_be_taken_in(tmp_path: Path, answers: dict[str, str]) -> None:
    root = begun(tmp_path / "gym", answers)
    room = root / "programs/room.yml"
    text, number = re.subn(
        r"^( *)# ((?: *[a-z-]+:(?: [{A-Z].*)?)| +- \{.*)$",
        r"\1\2",
        room.read_text("utf-8"),
        flags=re.M,
    )
    assert number > 20
    room.write_text(text, encoding="utf-8")
    problems = check_folder(root / "programs").problems
    assert [str(one) for one in problems if one.severity is Severity.ERROR] == []


@pytest.mark.parametrize(
    ("answers", "there", "first"),
    [
        (PRACTICE, "kit hand-weights", "goblet-squat"),
        (HALL, "kit bars plates", "squat-without-weight"),
        ({"bars": "none", "hands": "kettlebells 8-24 by 4"}, "kit hand-weights",
         "suitcase-deadlift"),
        ({"bars": "none", "racks": "2"}, "kit hand-weights racks", "goblet-squat"),
    ],
    ids=str,
)  # fmt: skip
def test_a_room_without_racks_has_what_was_said_and_begins_with_it(
    tmp_path: Path, answers: dict[str, str], there: str, first: str
) -> None:
    root = begun(tmp_path / "gym", answers)
    room = yaml.safe_load((root / "programs/room.yml").read_text(encoding="utf-8"))
    sections = {"bars", "plates", "racks", "hand-weights", "kit"}
    assert room.keys() & sections == set(there.split())
    if answers == PRACTICE:
        assert room["machines"] == {
            "leg-press": {"name": "leg press", "count": 1, "unit": "units", "from": 1, "to": 20,
                          "by": 1}
        }  # fmt: skip
        pins = {"from": "2.5 kg", "to": "50 kg", "by": "2.5 kg"}
        assert room["stacks"]["cable-column"]["pins"] == pins
        assert set(room["kit"]) == {
            "floor", "mat", "chair", "15-cm-step", "20-cm-step", "band", "wall"
        }  # fmt: skip
        assert room["kit"]["chair"] == {"name": "chair", "count": 6}
        assert room["kit"]["20-cm-step"]["height"] == "20 cm"
    wave = yaml.safe_load((root / "programs/first-weeks/1-learn.yml").read_text(encoding="utf-8"))
    done = [slot["exercise"] for one in wave["sessions"].values() for slot in one["slots"]]
    assert (len(done), len(set(done))) == (8, 8)
    assert first in done
    files = {path.stem: path.read_text("utf-8") for path in root.glob("programs/exercises/*.yml")}
    assert set(done) <= set(files)
    assert [key for key, text in files.items() if re.search(r"\brack\b|barbell", text)] == []


def test_every_program_file_names_a_schema_that_it_keeps(tmp_path: Path) -> None:
    root = begun(tmp_path / "gym", CLUB)
    files = sorted(root.glob("programs/**/*.yml"))
    assert len(files) == 13
    for path in files:
        first = path.read_text(encoding="utf-8").splitlines()[0]
        schema = path.parent / first.removeprefix("# yaml-language-server: $schema=")
        data = read_source(path.read_bytes(), path.name)[0]
        assert data is not None
        jsonschema.validate(data.data, json.loads(schema.read_text(encoding="utf-8")))


def test_what_is_there_is_named_and_kept(tmp_path: Path) -> None:
    begun(tmp_path / "gym", SCHOOL)
    room = tmp_path / "gym/programs/room.yml"
    room.write_text("mine", encoding="utf-8")
    before = sorted(tmp_path.rglob("*"))
    result = init(str(tmp_path / "gym"), "--yes")
    assert result.exit_code == 2
    assert "gym/handbook/before.md" in result.output
    assert "nothing was written" in result.output
    assert room.read_text(encoding="utf-8") == "mine"
    assert sorted(tmp_path.rglob("*")) == before


def test_other_files_in_the_folder_stay(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "notes.txt").write_text("mine", encoding="utf-8")
    assert init(".", "--yes").exit_code == 0
    assert (tmp_path / "notes.txt").read_text(encoding="utf-8") == "mine"
    names = {path.name for path in tmp_path.iterdir()}
    assert names == {"notes.txt", "mkdocs.yml", "handbook", "programs", ".schema"}


@pytest.mark.parametrize("there", [True, False], ids=["folder is there", "no folder"])
def test_a_disk_that_gives_way_leaves_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, *, there: bool
) -> None:
    if there:
        (tmp_path / "gym").mkdir()
    rename, left = Path.rename, [2 if there else 0]

    def giving_way(path: Path, target: Path) -> Path:
        if not left[0]:
            raise OSError(28, "No space left on device", str(target))
        left[0] -= 1
        return rename(path, target)

    monkeypatch.setattr(Path, "rename", giving_way)
    before = sorted(tmp_path.rglob("*"))
    result = init(str(tmp_path / "gym"), "--yes")
    assert result.exit_code == 1
    assert "No space left on device" in result.output
    assert sorted(tmp_path.rglob("*")) == before


def test_answers_that_do_not_go_together_write_nothing(tmp_path: Path) -> None:
    # A machine may not have the short name of something else in the room.
    result = init(str(tmp_path / "gym"), "--yes", "--machines", "x" * 61)
    assert result.exit_code == 2
    assert "too long for an address" in result.output
    assert list(tmp_path.iterdir()) == []


def test_wrong_answers_are_told_all_at_once(tmp_path: Path) -> None:
    wrong = {"units": "stone", "bars": "trap bar", "racks": "many", "plates": "3x10",
             "hands": "5-50", "machines": "3", "number": "ring the bell"}  # fmt: skip
    result = init(str(tmp_path / "gym"), "--yes", *options(wrong))
    assert result.exit_code == 2
    assert re.findall(r"^(?:Error: )?--(\w+): ", result.output, re.MULTILINE) == list(wrong)
    assert list(tmp_path.iterdir()) == []


def test_where_nobody_can_be_asked_it_says_which_options_are_missing(tmp_path: Path) -> None:
    result = init(str(tmp_path / "gym"), "--gym", "Club")
    assert result.exit_code == 2
    assert "add --yes, or these too: --units, --bars, --racks, --plates" in result.output
    assert list(tmp_path.iterdir()) == []


def test_on_a_terminal_it_asks_until_an_answer_can_be_read(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(cli_room, "somebody_there", lambda: True)
    said = ["North School", "lb", "2x45", "", "3x10", "4x45, 2x10"]
    said += ["dumbbells 10-60 by 5, two of each", "", "911", ""]
    result = init(str(tmp_path / "gym"), said="\n".join([*said, ""]))
    assert result.exit_code == 0, result.output
    assert "a bar takes plates two by two; write '2 x 10 lb' or '4 x 10 lb'" in result.output
    assert "That is 2 pairs of 45 lb, 1 pair of 10 lb." in result.output
    assert "That is dumbbells 10 to 60 lb by 5, 2 of each." in result.output
    room = (tmp_path / "gym/programs/room.yml").read_text(encoding="utf-8")
    assert "Not yet filled in (the hook-spacing as measured, how many racks)" in room
    assert 'number: "911"' in room


def test_what_was_read_of_the_options_is_told_too(tmp_path: Path) -> None:
    hands = "10-20 by 5, a pair of each; kettlebells 12"
    result = init(str(tmp_path / "gym"), "--yes", "--hands", hands, "--machines", "4 chairs")
    read = "dumbbells 10 to 20 kg by 5, 2 of each; 1 kettlebell of 12 kg"
    assert f"--hands: that is {read}." in result.output
    assert "--machines: that is everything else: 4 × chair." in result.output


def test_without_a_bar_nobody_is_asked_for_racks_and_plates(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(cli_room, "somebody_there", lambda: True)
    said = ["Canal Row", "kg", "none", "none", "none", "112", ""]
    result = init(str(tmp_path / "gym"), said="\n".join([*said, ""]))
    assert result.exit_code == 0, result.output
    assert "Racks" not in result.output
    assert "Single plates" not in result.output
    assert "a room, pages, 9 exercises, a program of two weeks" in result.output


def test_help_names_every_answer_and_what_happens_to_files() -> None:
    said = " ".join(init("--help").output.split())
    for option in ("--gym", "--units", "--bars", "--plates", "--racks", "--hands", "--machines",
                   "--number", "--place", "--yes"):  # fmt: skip
        assert option in said
    assert "An existing file is never touched." in said


def test_its_parts_are_those_that_are_written(tmp_path: Path) -> None:
    root = begun(tmp_path / "gym", {})
    assert {path.name for path in root.iterdir()} == set(beginning.PARTS)
