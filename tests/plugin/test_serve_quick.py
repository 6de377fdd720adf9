"""After a save `mkdocs serve` builds what changed; the site is as a whole build leaves it."""

import gc
import html
import random
import re
from collections.abc import Iterator
from pathlib import Path
from threading import Thread
from typing import Any

import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.livereload import LiveReloadServer

import demo
from strength_handbook import plugin_serve
from strength_handbook.plan.worked import Worked
from strength_handbook.plugin import HandbookPlugin
from thorough import tries
from tiny import write_tiny

ADDRESS = "http://127.0.0.1:8000/"


class Serving:
    """`mkdocs serve` without its socket: a start, saves, and what a browser gets."""

    def __init__(self, root: Path, site: Path) -> None:
        self.root, self.site, self.whole = root, site, 0
        config = self.config()
        config.plugins.on_startup(command="serve", dirty=False)
        self.builder(config)
        self.whole = 0
        self.plugin: Any = next(
            one for one in config.plugins.values() if isinstance(one, HandbookPlugin)
        )
        server = LiveReloadServer(self.builder, "127.0.0.1", 8000, str(site))
        server.watch(config.docs_dir)
        server.watch(config.config_file_path)
        config.plugins.on_serve(server, config=config, builder=self.builder)
        self.server = server

    def __enter__(self) -> "Serving":
        return self

    def __exit__(self, *_: object) -> None:
        self.server.server_close()

    def config(self) -> Any:
        config = load_config(str(self.root / "mkdocs.yml"), site_dir=str(self.site))
        config.site_url = ADDRESS
        return config

    def builder(self, config: Any = None) -> None:
        self.whole += 1
        build(config or self.config(), serve_url=ADDRESS)

    def save(self) -> None:
        """What the server does when it has seen a change."""
        self.server.builder()

    def get(self, address: str) -> str:
        """What a browser gets."""
        said: list[str] = []
        application: Any = self.server.get_app()
        parts = application(
            {"PATH_INFO": f"/{address}", "REQUEST_METHOD": "GET"},
            lambda status, _: said.append(status),
        )
        assert said == ["200 OK"], (address, said)
        try:
            return b"".join(parts).decode()
        finally:
            parts.close()  # as a server does in the end

    def settle(self) -> None:
        """Everything of the last save is made, a whole build too where it needs one."""
        preview = self.server.builder.__self__  # type: ignore[attr-defined]
        preview.finish()
        self.save()  # a whole build, where one is due


def files(site: Path) -> dict[str, bytes]:
    return {
        path.relative_to(site).as_posix(): path.read_bytes()
        for path in site.rglob("*")
        if path.is_file()
    }


def differences(serving: Serving, fresh: Path) -> list[str]:
    """Files of the served site that are not as a new start makes them."""
    with Serving(serving.root, fresh) as started:
        whole = files(started.site)
    mine = files(serving.site)
    return sorted(one for one in mine.keys() | whole.keys() if mine.get(one) != whole.get(one))


class NoThread:
    """In its place nothing goes on in the background: `settle` does it."""

    def __init__(self, **_: object) -> None:
        pass

    def start(self) -> None:
        pass


@pytest.fixture(autouse=True)
def _same_day(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1790000000")
    monkeypatch.setattr(plugin_serve, "Thread", NoThread)


@pytest.fixture
def place(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The smallest handbook, in the current folder."""
    root = write_tiny(tmp_path / "tiny")
    monkeypatch.chdir(root)
    return root


@pytest.fixture
def tiny(place: Path, tmp_path: Path) -> Iterator[Serving]:
    with Serving(place, tmp_path / "site") as started:
        yield started


@pytest.fixture
def serving(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Serving]:
    root = demo.copy_demo(tmp_path)
    monkeypatch.chdir(root)
    with Serving(root, tmp_path / "site") as started:
        yield started


EXERCISE = "programs/exercises/chair-squat.yml"
WAVE = "programs/spring/1-start.yml"
SESSION = "spring/week-01/a-squat/"


def numbers(path: Path) -> list[re.Match[str]]:
    """Repetitions, percentages and rests that may be another number."""
    return list(re.finditer(r"(?<=[x ])(\d{1,2})(?=(?: %|, RIR|, rest))", path.read_text("utf-8")))


def edit(root: Path, chance: random.Random) -> str:
    """One save of somebody who writes: a number, a sentence, a thing of the room."""
    kind = chance.choice(("wave", "wave", "exercise", "room"))
    if kind == "wave":
        path = chance.choice(sorted((root / "programs").glob("*/[0-9]-*.yml")))
        found = chance.choice(numbers(path))
        text = path.read_text("utf-8")
        number = max(1, int(found[0]) + chance.choice((-1, 1)))
        new = f"{text[: found.start()]}{number}{text[found.end() :]}"
    else:
        names = sorted((root / "programs/exercises").glob("*.yml"))
        path = chance.choice(names) if kind == "exercise" else root / "programs/room.yml"
        text = path.read_text("utf-8")
        key = "why" if kind == "exercise" else "note"
        lines = list(re.finditer(rf"^ *{key}: [A-Z].*\.$", text, re.MULTILINE))
        if not lines:
            return ""
        found = chance.choice(lines)
        new = (
            f"{text[: found.end()]} Take time{' now' * chance.randint(0, 3)}.{text[found.end() :]}"
        )
    path.write_text(new, "utf-8")
    return f"{path.name}: {found[0]}"


def test_random_edits_leave_the_site_of_a_whole_build(serving: Serving, tmp_path: Path) -> None:
    """A few every day, two hundred in the long run."""
    chance = random.Random(7)
    done = []
    for _ in range(tries(6, 200)):
        done.append(edit(serving.root, chance))
        serving.save()
        if chance.random() < 0.5:
            serving.get("winter/week-03/a-lift/")
        if chance.random() < 0.5:
            serving.settle()
    serving.settle()
    assert differences(serving, tmp_path / "fresh") == [], done


def test_a_save_builds_the_pages_that_it_changes_and_no_others(tiny: Serving) -> None:
    before = files(tiny.site)
    demo.change(tiny.root / EXERCISE, "why: ", "why: Slowly is well. ")
    tiny.save()
    assert "Slowly is well." in tiny.get("exercises/chair-squat/")
    changed = {one for one, content in files(tiny.site).items() if content != before[one]}
    assert changed == {"exercises/chair-squat/index.html"}
    times = {path: path.stat().st_mtime_ns for path in tiny.site.rglob("index.html")}
    tiny.settle()
    written = {path for path in times if path.stat().st_mtime_ns != times[path]}
    addresses = {path.parent.relative_to(tiny.site).as_posix() for path in written}
    assert not addresses & {"room", "spring/week-01", "spring/week-02", "note", "words"}
    assert "Slowly is well." in (tiny.site / "search/search_index.json").read_text("utf-8")
    assert tiny.whole == 0


def test_an_error_gives_the_banner_and_its_end_the_site_again(tiny: Serving) -> None:
    good = files(tiny.site)
    demo.change(tiny.root / WAVE, "2x8", "2x")
    tiny.save()
    assert re.search(r'role="?alert\b', tiny.get(SESSION))
    demo.change(tiny.root / WAVE, "2x", "2x8")
    tiny.save()
    tiny.settle()
    assert files(tiny.site) == good


def test_what_only_the_checks_refuse_follows_on_the_page_itself(
    tiny: Serving, tmp_path: Path
) -> None:
    demo.change(tiny.root / EXERCISE, "why: ", "why: Ask Xanthe about it. ")
    tiny.save()
    assert "Ask Xanthe" in tiny.get("exercises/chair-squat/")
    assert tiny.whole == 0
    tiny.settle()
    page = tiny.get("exercises/chair-squat/")
    assert "looks like somebody's name" in html.unescape(page)
    assert "Ask Xanthe" in page
    assert "alert" not in page
    assert tiny.whole == 0
    demo.change(tiny.root / EXERCISE, "Ask Xanthe about it. ", "Ask about it. ")
    tiny.save()
    tiny.settle()
    page = tiny.get("exercises/chair-squat/")
    assert "Ask about it." in page
    assert "sh-finding" not in page
    demo.change(tiny.root / EXERCISE, "Ask about it. ", "Ask Xanthe about it. ")
    tiny.save()
    tiny.settle()
    assert tiny.whole == 0
    assert differences(tiny, tmp_path / "fresh") == []


@pytest.mark.parametrize(
    ("file", "old", "new"),
    [
        ("programs/exercises/chair-squat.yml", "name: ", "name: New "),
        ("programs/spring/program.yml", "program: ", "program: New "),
        ("programs/room.yml", "gym: ", "gym: New "),
        ("programs/room.yml", "gym: ", "paper: letter\ngym: "),
        ("handbook/note.md", "# ", "# New "),
        ("mkdocs.yml", "site_name: ", "site_name: New "),
    ],
)
def test_what_other_pages_show_takes_a_whole_build(
    tiny: Serving, tmp_path: Path, file: str, old: str, new: str
) -> None:
    demo.change(tiny.root / file, old, new)
    tiny.save()
    tiny.settle()
    assert tiny.whole == 1
    assert differences(tiny, tmp_path / "fresh") == []


def test_a_new_exercise_is_there(tiny: Serving, tmp_path: Path) -> None:
    text = (tiny.root / EXERCISE).read_text("utf-8")
    other = re.sub("(?m)^name: .*$", "name: Bench squat", text)
    (tiny.root / "programs/exercises/bench-squat.yml").write_text(other, "utf-8")
    tiny.save()
    tiny.settle()
    assert "Bench squat" in tiny.get("exercises/bench-squat/")
    assert differences(tiny, tmp_path / "fresh") == []


def test_what_a_handwritten_page_takes_in_is_renewed(tiny: Serving) -> None:
    assert "1 Mill Lane" in tiny.get("note/")
    demo.change(tiny.root / "programs/room.yml", "1 Mill Lane", "2 Mill Lane")
    tiny.save()
    assert "2 Mill Lane" in tiny.get("note/")
    assert tiny.whole == 0


def test_coachs_drafts_and_what_changed_since_follow_a_save(place: Path, tmp_path: Path) -> None:
    demo.build_site(place, tmp_path / "first")
    demo.change(
        place / "mkdocs.yml", "- strength-handbook",
        f"- strength-handbook:\n      since: {tmp_path / 'first/data'}",
    )  # fmt: skip
    with Serving(place, tmp_path / "site") as serving:
        demo.change(place / WAVE, "2x8", "2x9")
        serving.save()
        serving.settle()
        pages = list(serving.site.rglob("coach/**/index.html"))
        assert any("2\u00a0×\u00a09" in path.read_text("utf-8") for path in pages)
        assert differences(serving, tmp_path / "fresh") == []


def test_a_newer_save_ends_what_the_last_one_began(tiny: Serving, tmp_path: Path) -> None:
    for repeat in range(3):
        demo.change(tiny.root / EXERCISE, "why: ", f"why: Again {repeat}. ")
        tiny.save()
        tiny.get("exercises/" if repeat else "exercises/chair-squat/")
    tiny.settle()
    assert "Again 2. Again 1. Again 0." in tiny.get("exercises/chair-squat/")
    assert differences(tiny, tmp_path / "fresh") == []


def test_the_search_index_waits_for_all_pages(tiny: Serving) -> None:
    demo.change(tiny.root / EXERCISE, "why: ", "why: Slowly is well. ")
    tiny.save()
    assert "Slowly is well." in tiny.get("search/search_index.json")


def test_the_other_pages_follow_by_themselves(
    tiny: Serving, monkeypatch: pytest.MonkeyPatch
) -> None:
    begun: list[Thread] = []

    def begin(**more: Any) -> Thread:
        begun.append(Thread(**more))
        return begun[-1]

    monkeypatch.setattr(plugin_serve, "FIRST_S", 0)
    monkeypatch.setattr(plugin_serve, "Thread", begin)
    demo.change(tiny.root / EXERCISE, "why: ", "why: Slowly is well. ")
    tiny.save()
    begun[0].join()
    page = tiny.site / "exercises/chair-squat/index.html"
    assert "Slowly is well." in page.read_text("utf-8")
    assert "Slowly is well." in (tiny.site / "search/search_index.json").read_text("utf-8")


def test_twenty_saves_leave_one_handbook_in_memory(tiny: Serving) -> None:
    # Other tests of this process keep handbooks of their own.
    before = {id(one): one for one in gc.get_objects() if isinstance(one, Worked)}
    for repeat in range(20):
        demo.change(tiny.root / EXERCISE, "why: ", f"why: Again {repeat}. ")
        tiny.save()
        tiny.get("exercises/chair-squat/")
        if repeat % 3 == 0:
            tiny.settle()
    tiny.settle()
    gc.collect()
    now = [one for one in gc.get_objects() if isinstance(one, Worked) and id(one) not in before]
    assert len(now) <= 1
