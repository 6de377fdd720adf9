"""The built demo on a local server, and a phone-sized Chromium to read it with."""

import shutil
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Literal

import pytest
from playwright.sync_api import Browser, BrowserContext, expect

import demo
from chromium import chromium
from once import once
from other_gym import write_programs
from phones import PATIENCE, Gym, Opened, Served, serving, watched
from thorough import LONG

PHONE = {"width": 360, "height": 740}
expect.set_options(timeout=PATIENCE)


@pytest.fixture(scope="session")
def browser() -> Browser:
    return chromium()


@pytest.fixture(scope="session")
def served(demo_site: Path) -> Iterator[Served]:
    with serving(demo_site.parent.parent) as port:
        base = f"http://127.0.0.1:{port}/{demo_site.parent.name}/{demo_site.name}/"
        yield Served(base, demo_site)


@pytest.fixture(scope="session")
def served_pounds(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Gym]:
    """The demo in a gym that counts in pounds."""

    def build(to: Path) -> None:
        root = demo.copy_demo(to)
        shutil.rmtree(root / "programs")
        write_programs(root / "programs")
        demo.build_site(root, to / "site")

    folder = once(tmp_path_factory, "pounds", build)
    with serving(folder / "site") as port:
        yield Gym(f"http://127.0.0.1:{port}/", folder / "demo" / "programs")


@pytest.fixture(scope="module", params=["kg", "lb"] if LONG else ["kg"])
def gym(request: pytest.FixtureRequest) -> Gym:
    """The demo, and in the long run the same in pounds."""
    if request.param == "lb":
        pounds: Gym = request.getfixturevalue("served_pounds")
        return pounds
    return Gym(request.getfixturevalue("served").base, demo.PROGRAMS)


@pytest.fixture
def phone(browser: Browser, served: Served) -> Iterator[Callable[..., Opened]]:
    """Opens a phone: ``phone()``, ``phone(scheme="dark")``, ``phone(scripts=False)``, and without
    the worker that keeps pages, ``phone(worker=False)``."""
    contexts: list[BrowserContext] = []

    def open_phone(
        *,
        base: str = served.base,
        scheme: Literal["light", "dark"] = "light",
        scripts: bool = True,
        width: int = PHONE["width"],
        worker: bool = True,
    ) -> Opened:
        context = browser.new_context(
            viewport={"width": width, "height": PHONE["height"]},
            color_scheme=scheme,
            java_script_enabled=scripts,
            has_touch=True,
        )
        contexts.append(context)
        if not worker:  # what it answers from its store, no test can answer in its place
            context.add_init_script("delete Navigator.prototype.serviceWorker")
        return watched(context.new_page(), base)

    yield open_phone
    for context in contexts:
        context.close()
