"""Scripts and styles as they are published: complete, few, small, and named after their text."""

import gzip
import re
from pathlib import Path

import demo
from strength_handbook.publish.bundle import bundled

ASSETS = demo.PACKAGE / "theme" / "assets" / "strength-handbook"
MOST_KB = 30
"""All own scripts and styles together, compressed: a phone pays for each of them."""


def folder(root: Path, script: str = "/* why */ let a = 1;") -> Path:
    for name, text in {
        "a.js": script,
        "b.js": "let b = `two  words`; // what",
        "a.css": "a { color: red; } /* why */",
        "print.css": "i { color: black; }",
        "z.css": "b { color: blue; }",
        "coach.css": "u { color: pink; }",
        "tools/c.js": "let c = 3; /* needs the others */",
        "train/views.js": "let v = 4;",
        "train/walk.js": "let w = 5; /* only there */",
        "icon.svg": "<svg/>",
    }.items():
        path = root / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return root


def named(published: dict[str, str], kind: str) -> str:
    (name,) = (name for name in published if name.endswith(kind))
    return name


def test_one_script_and_one_style_sheet(tmp_path: Path) -> None:
    published = bundled(folder(tmp_path), "coach.css")
    assert len(published) == 2
    assert published[named(published, "js")] == "let a=1,b=`two  words`,c=3,w=5,v=4;"
    assert published[named(published, "css")] == "a{color:red}b{color:#00f}i{color:#000}"


def test_the_coach_s_rules_come_before_those_for_paper(tmp_path: Path) -> None:
    published = bundled(folder(tmp_path))
    assert published[named(published, "css")].endswith("u{color:pink}i{color:#000}")


def test_only_the_coach_gets_the_coach_s_styles(tmp_path: Path) -> None:
    def ours(site: Path) -> str:
        files = (site / "assets" / "strength-handbook").glob("*.*s*")
        return "".join(one.read_text(encoding="utf-8") for one in files)

    built = ours(demo.build_site(demo.ROOT, tmp_path / "built"))
    served = ours(demo.build_drafts(demo.ROOT, tmp_path / "served"))
    assert ".sh-sheet" not in built
    assert ".sh-sheet" in served
    assert "serviceWorker" in built
    assert "serviceWorker" not in served


def test_another_text_has_another_name(tmp_path: Path) -> None:
    first, same = bundled(folder(tmp_path / "a")), bundled(folder(tmp_path / "b"))
    other = bundled(folder(tmp_path / "c", script="let a = 2;"))
    assert first == same
    assert named(first, "js") != named(other, "js")
    assert named(first, "css") == named(other, "css")


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
