"""The package as a gym installs it: a wheel in an empty environment, a new folder, a sub-path.

Everything else runs from the repository, where no file can be missing from the package and no
dependency from its list.
"""

import os
import subprocess
import venv
from collections.abc import Callable, Iterator
from importlib.metadata import Distribution, distribution
from pathlib import Path

import pytest
from packaging.requirements import Requirement

import demo
from once import once
from phones import Opened, serving

pytestmark = pytest.mark.browser

PLACE = Path("gym") / "handbook"


def needed(name: str, extras: frozenset[str], found: dict[str, Distribution]) -> None:
    """Add what a package needs, and all that those need, as their own lists say."""
    for line in distribution(name).requires or ():
        one = Requirement(line)
        wanted = one.marker is None or any(
            one.marker.evaluate({"extra": extra}) for extra in {"", *extras}
        )
        if wanted and one.name not in found:
            found[one.name] = distribution(one.name)
            needed(one.name, frozenset(one.extras), found)


def link_needed(to: Path) -> None:
    """Links to what the package needs, and to nothing else that is installed here."""
    found: dict[str, Distribution] = {}
    needed("strength-handbook", frozenset(), found)
    for one in found.values():
        tops = {Path(str(file)).parts[0] for file in one.files or ()} - {"..", "__pycache__"}
        for top in tops:
            link = to / top
            if not link.exists():
                link.symlink_to(Path(str(one.locate_file(top))))


def run(folder: Path, *words: str | Path) -> str:
    """What a command in a folder prints; it has to go well."""
    own = {key: text for key, text in os.environ.items() if not key.startswith("PYTHON")}
    done = subprocess.run(
        words,
        cwd=folder,
        env=own | {"NO_MKDOCS_2_WARNING": "1"},
        stdin=subprocess.DEVNULL,
        capture_output=True,
        encoding="utf-8",
        check=False,
    )
    said = done.stdout + done.stderr
    assert done.returncode == 0, said
    return said


def install(to: Path) -> None:
    """The wheel, and links to what it needs, in an environment that had nothing but pip."""
    empty = to / "empty"
    venv.create(empty, with_pip=True, symlinks=True)
    python = empty / "bin" / "python"
    run(to, python, "-m", "pip", "wheel", "-q", "--no-deps", "-w", "wheel", demo.ROOT)
    (wheel,) = (to / "wheel").glob("*.whl")
    run(to, python, "-m", "pip", "install", "-q", "--no-deps", "--no-index", wheel)
    links = to / "needed"
    links.mkdir()
    link_needed(links)
    (packages,) = empty.glob("lib/python*/site-packages")
    (packages / "needed.pth").write_text(f"{links}\n", encoding="utf-8")


def make(to: Path) -> None:
    """A new gym's site by the installed commands, in a folder that had nothing in it."""
    install(to)
    commands, gym = to / "empty" / "bin", to / "gym"
    run(to, commands / "strength-handbook", "init", "gym", "--yes")
    demo.change(gym / "mkdocs.yml", "docs_dir:", "site_url: https://example.org/a/b/\ndocs_dir:")
    python = commands / "python"
    run(gym, python, "-m", "mkdocs", "build", "--site-dir", to / "served" / PLACE)


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return once(tmp_path_factory, "wheel", make)


@pytest.fixture
def base(made: Path) -> Iterator[str]:
    with serving(made / "served") as port:
        yield f"http://127.0.0.1:{port}/{PLACE.as_posix()}/"


def test_nothing_but_the_wheel_is_used(made: Path) -> None:
    python = made / "empty" / "bin" / "python"
    code = "import strength_handbook as it; print(it.__file__)"
    assert run(made, python, "-c", code).startswith(str(made / "empty"))


def test_the_wheel_says_its_licence_and_brings_it_along(made: Path) -> None:
    # The keys are those of the core metadata, version 2.4 (packaging.python.org).
    (about,) = (made / "empty").glob("lib/python*/site-packages/strength_handbook-*.dist-info")
    lines = (about / "METADATA").read_text(encoding="utf-8").splitlines()
    assert "License-Expression: MIT" in lines
    (named,) = [line.removeprefix("License-File: ") for line in lines if "License-File" in line]
    licence = (about / "licenses" / named).read_text(encoding="utf-8")
    assert licence == (demo.PACKAGE / "LICENSE").read_text(encoding="utf-8")


def test_a_new_gyms_pages_below_a_path_are_whole_on_a_phone(
    phone: Callable[..., Opened], base: str, made: Path
) -> None:
    opened = phone(base=base)
    failed: list[str] = []
    # The page's own icon may still be on its way when the next page is asked for.
    left = "net::ERR_ABORTED"
    opened.page.on(
        "requestfailed", lambda one: failed.append(one.url) if one.failure != left else None
    )
    opened.page.on("response", lambda one: failed.append(one.url) if one.status >= 400 else None)
    folder = made / "served" / PLACE
    pages = sorted(path.parent.relative_to(folder) for path in folder.rglob("index.html"))
    assert len(pages) > 20
    wide = []
    for address in pages:
        page = opened.go("" if address == Path() else f"{address.as_posix()}/")
        page.evaluate("document.querySelectorAll('details').forEach(d => { d.open = true })")
        if page.evaluate("document.documentElement.scrollWidth > window.innerWidth"):
            wide.append(str(address))
    assert wide == []
    assert failed == []
    assert opened.complaints == []
    assert [url for url in opened.requests if not url.startswith((base, "data:"))] == []
