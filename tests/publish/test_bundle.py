"""Scripts and styles as they are published: complete, few, small, and named after their text."""

import gzip
import re
import shutil
import subprocess
from pathlib import Path

import pytest

import demo
from strength_handbook.publish.bundle import bundled, linked

ASSETS = demo.PACKAGE / "theme" / "assets" / "strength-handbook"
MOST_KB = 60
"""All own scripts and styles together, compressed: a phone pays for each of them."""


def folder(root: Path, script: str = "/* why */ globalThis.a = 1;") -> Path:
    for name, text in {
        "a.js": script,
        "b.js": "globalThis.b = `two  words`; // what",
        "a.css": "a { color: red; } /* why */",
        "print.css": "i { color: black; }",
        "z.css": "b { color: blue; }",
        "coach.css": "u { color: pink; }",
        "tools/c.js": "globalThis.c = 3; /* needs the others */",
        "train/screen.js": "import { five } from './walk.js';\n\nglobalThis.v = five;",
        "train/walk.js": "const five = 2 + 3; /* only there */\n\nexport { five };\n",
        "icon.svg": "<svg/>",
    }.items():
        path = root / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return root


def named(published: dict[str, str], kind: str) -> str:
    (name,) = linked(published, kind)
    return name


def tools(published: dict[str, str]) -> str:
    (name,) = (name for name in published if name.startswith("tools."))
    return name


def test_two_scripts_and_one_style_sheet(tmp_path: Path) -> None:
    published = bundled(folder(tmp_path), "coach.css")
    assert len(published) == 3
    first, later = published[named(published, "js")], published[tools(published)]
    for script, kept in (
        (first, ("a=1", "b=`two  words`")),
        (later, ("c=3", "five:5", "v=five")),
    ):
        assert [part for part in kept if part in script] == list(kept)
        assert sorted(kept, key=script.index) == list(kept)
        assert "why" not in script
        assert "only there" not in script
    assert published[named(published, "css")] == "a{color:red}b{color:#00f}i{color:#000}"


def test_a_script_that_fails_leaves_the_others_alone(tmp_path: Path) -> None:
    """As a browser would run it, under node: the error is reported, and the rest is there."""
    node = shutil.which("node")
    if node is None:
        pytest.skip("no Node.js found; install it (apt-get install nodejs)")
    root = folder(tmp_path, script="throw new RangeError('spoilt')")
    (root / "b.js").write_text("globalThis.there = 3; // last", encoding="utf-8")
    published = bundled(root)
    script = tmp_path / "all.js"
    tail = ";process.on('uncaughtException',e=>console.log(e.message,globalThis.there))"
    script.write_text(published[named(published, "js")] + tail, encoding="utf-8")
    found = subprocess.run([node, str(script)], capture_output=True, text=True, check=True)
    assert found.stdout == "spoilt 3\n"


def test_the_first_script_names_the_second(tmp_path: Path) -> None:
    published = bundled(folder(tmp_path, script="globalThis.more = '__TOOLS__';"))
    assert tools(published) in published[named(published, "js")]
    plain = bundled(tmp_path, versions=False)
    assert sorted(plain) == ["handbook.css", "handbook.js", "tools.js"]
    assert "tools.js" in plain["handbook.js"]


def test_the_coach_s_rules_come_before_those_for_paper(tmp_path: Path) -> None:
    published = bundled(folder(tmp_path))
    assert published[named(published, "css")].endswith("u{color:pink}i{color:#000}")


def test_only_the_coach_gets_the_coach_s_styles(demo_site: Path, demo_drafts: Path) -> None:
    def ours(site: Path) -> str:
        files = (site / "assets" / "strength-handbook").glob("*.*s*")
        return "".join(one.read_text(encoding="utf-8") for one in files)

    built, served = ours(demo_site), ours(demo_drafts)
    assert ".sh-sheet" not in built
    assert ".sh-sheet" in served
    assert "serviceWorker" in built
    assert "serviceWorker" not in served


def test_another_text_has_another_name(tmp_path: Path) -> None:
    first, same = bundled(folder(tmp_path / "a")), bundled(folder(tmp_path / "b"))
    other = bundled(folder(tmp_path / "c", script="globalThis.a = 2;"))
    assert first == same
    assert named(first, "js") != named(other, "js")
    assert named(first, "css") == named(other, "css")


def test_a_change_in_the_second_gives_both_new_names(tmp_path: Path) -> None:
    """A page that was kept before asks for what was published with it."""
    first = bundled(folder(tmp_path / "a", script="globalThis.more = '__TOOLS__';"))
    other = folder(tmp_path / "b", script="globalThis.more = '__TOOLS__';")
    (other / "tools" / "c.js").write_text("globalThis.c = 4;", encoding="utf-8")
    second = bundled(other)
    assert tools(first) != tools(second)
    assert named(first, "js") != named(second, "js")


def test_our_own_are_light() -> None:
    sizes = {
        name: len(gzip.compress(text.encode(), 9))
        for name, text in bundled(ASSETS, "coach.css").items()
    }
    assert sum(sizes.values()) < MOST_KB * 1000, sizes


def test_no_template_stands_in_another() -> None:
    """The smaller text would lose the inner one's spaces: rjsmin takes it for code."""
    nested = re.compile(r"`[^`]*\$\{[^}`]*`")
    scripts = list((demo.PACKAGE / "theme").rglob("*.js"))
    assert len(scripts) > 20
    assert [path.name for path in scripts if nested.search(path.read_text(encoding="utf-8"))] == []
