"""The demo as MkDocs builds it: pages, sidebar, breadcrumbs, order, search, tags, data."""

import json
import re
import subprocess
import sys
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

import pytest

import demo
from tiny import MKDOCS, write_tiny

COUNT = demo.ROOT / ".ci" / "count_pages.py"


def read(site: Path, address: str) -> str:
    return (site / address / "index.html").read_text(encoding="utf-8")


def _count(site: Path) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, COUNT, demo.PROGRAMS, site], capture_output=True, text=True, check=False
    )


def test_every_page_that_the_files_ask_for_is_there(demo_site: Path) -> None:
    done = _count(demo_site)
    assert done.returncode == 0, done.stderr
    assert int(done.stdout.split()[0]) > len(demo.EXERCISES) + 10


def test_the_count_fails_for_a_site_without_the_generated_pages(tmp_path: Path) -> None:
    (tmp_path / "index.html").write_text("<p>empty</p>", encoding="utf-8")
    done = _count(tmp_path)
    assert done.returncode == 1
    assert "missing: /exercises/trap-bar-deadlift/" in done.stderr


def test_the_gyms_name_is_in_every_title(demo_site: Path) -> None:
    gym = re.search(r"^gym: (.+)$", (demo.PROGRAMS / "room.yml").read_text("utf-8"), re.MULTILINE)
    assert gym
    for page in demo_site.rglob("*.html"):
        assert re.search(rf"<title>[^<]*{gym[1]}</title>", page.read_text("utf-8")), page


def _sidebar(html: str) -> list[str]:
    part = html.split("md-sidebar--primary", 1)[1].split("md-sidebar--secondary", 1)[0]
    return re.findall(r'<a href="([^"#]+)" class="md-nav__link', part)


def test_the_sidebar_has_the_program_and_its_weeks_but_no_single_session(demo_site: Path) -> None:
    links = _sidebar(read(demo_site, "winter/week-01"))
    assert "../" in links  # the program's overview
    assert "../week-02/" in links
    assert "../../exercises/" in links
    assert not [link for link in links if "a-lift" in link or "exercises/t" in link]


def test_the_menu_of_a_session_leads_to_what_the_member_keeps(demo_site: Path) -> None:
    menu = read(demo_site, "winter/week-01/a-lift").split("id=menu", 1)[1].split("</nav>", 1)[0]
    links = re.findall(r"href=([^\s>]+)", menu)
    for address in ("my-numbers/", "my-log/", "exercises/", "safety/"):
        assert f"../../../{address}" in links, address
    assert "../../missed/" in links
    assert "../../test-day/" in links
    # And one tap leads back to the page.
    assert "#top" in links
    assert 'href="my-log/"' in read(demo_site, ".")


def _crumbs(html: str) -> list[tuple[str, str]]:
    part = re.split(r'class="?md-path\b', html, maxsplit=1)[1].split("</nav>", 1)[0]
    # Packed pages have no quotes that they can do without.
    links = r'href="?([^" >]+).*?md-ellipsis"?>\s*(.*?)\s*</span>'
    return [(link, text) for link, text in re.findall(links, part, re.DOTALL)]


def test_breadcrumbs_lead_from_a_session_over_its_week_to_its_program(demo_site: Path) -> None:
    assert _crumbs(read(demo_site, "winter/week-03/a-lift")) == [
        ("../../..", "Home"),
        ("../../", "Winter on the fell"),
        ("../", "Week 3"),
    ]


def test_breadcrumbs_lead_from_an_exercise_to_the_list(demo_site: Path) -> None:
    crumbs = _crumbs(read(demo_site, "exercises/step-down"))
    assert crumbs == [("../..", "Home"), ("../", "Exercises")]


def _neighbour(site: Path, address: str, which: str) -> str | None:
    tag = re.search(rf'<(?:link|a)\b[^>]*\brel="?{which}\b[^>]*>', read(site, address))
    found = tag and re.search(r'href="?([^" >]+)', tag[0])
    if not found:
        return None
    path = (site / address / found[1]).resolve().relative_to(site.resolve()).as_posix()
    return "" if path == "." else path


def test_next_leads_through_every_page_once_and_previous_leads_back(demo_site: Path) -> None:
    walked = [""]
    while (after := _neighbour(demo_site, walked[-1], "next")) is not None:
        assert after not in walked
        assert _neighbour(demo_site, after, "prev") == walked[-1]
        walked.append(after)
    pages = {
        page.parent.relative_to(demo_site).as_posix().removeprefix(".")
        for page in demo_site.rglob("index.html")
    }
    # A session's page leads to its loads, and these back to it: nobody leafs through them.
    aside = {page for page in pages if page.endswith("/loads")}
    assert set(walked) == pages - aside
    assert len(aside) > 30
    for page in aside:
        assert _neighbour(demo_site, page, "next") is _neighbour(demo_site, page, "prev") is None
        assert re.search(r'href="?loads/[" >]', read(demo_site, page.removesuffix("/loads")))
    at = walked.index("winter/week-01")
    assert walked[at + 1] == "winter/week-01/a-lift"


def test_the_page_lists_its_own_headings(demo_site: Path) -> None:
    html = read(demo_site, "exercises/trap-bar-deadlift")
    contents = html.split("md-sidebar--secondary", 1)[1].split("</nav>", 1)[0]
    links = re.findall(r'href="#([^"]+)"', contents)
    assert "set-up" in links
    assert all(f'id="{link}"' in html for link in links)


def test_landmarks_have_names(demo_site: Path) -> None:
    for page in demo_site.rglob("*.html"):
        html = page.read_text(encoding="utf-8")
        # Lean pages have a link to the search instead of a dialog.
        dialog = re.search(r'<div[^>]*role="dialog"[^>]*aria-label="Search"', html)
        links = [tag for tag in re.findall(r"<a[^>]*>", html) if "?search" in tag]
        assert dialog or re.search(r'aria-label="?Search\b', links[0]), page
        assert all("aria-label" in tag for tag in re.findall(r'<nav class="md-tags"[^>]*>', html))
    assert '<nav class="md-tags" aria-label="Tags"' in read(demo_site, "exercises/step-down")


def _index(site: Path, address: str) -> list[dict[str, Any]]:
    whole = json.loads((site / "search/search_index.json").read_text(encoding="utf-8"))
    return [entry for entry in whole["docs"] if entry["location"].partition("#")[0] == address]


def test_the_search_finds_an_exercises_words_but_not_its_tables(demo_site: Path) -> None:
    entries = _index(demo_site, "exercises/trap-bar-deadlift/")
    text = " ".join(entry["title"] + " " + entry["text"] for entry in entries)
    assert "Push the floor away" in text
    assert entries[0]["boost"] > 1
    assert "hinge" in entries[0]["tags"]
    row = re.compile(r"(?:\d+(?:\.\d+)?\s+){5,}")
    page = re.sub(r"<[^>]+>", " ", read(demo_site, "exercises/trap-bar-deadlift"))
    assert row.search(page)  # the page does have tables of numbers
    assert not row.search(re.sub(r"<[^>]+>", " ", text))


def test_the_list_of_tags_leads_to_the_exercises(demo_site: Path) -> None:
    html = read(demo_site, "tags")
    after = html.split('id="tag:hinge"', 1)[1].split("<h2", 1)[0]
    assert "../exercises/trap-bar-deadlift/" in after


def test_our_styles_come_with_every_page(demo_site: Path) -> None:
    for kind, link in (("css", "href"), ("js", "src")):
        (file,) = (demo_site / "assets/strength-handbook").glob(f"handbook.*.{kind}")
        assert f'{link}="../assets/strength-handbook/{file.name}"' in read(demo_site, "room")


# Key and kind of value, as published for other tools; free keys beside them are allowed.
NUMBER = (int, float)
SHAPES: dict[str, dict[str, Any]] = {
    "program": {"schema": int, "program": str, "units": str, "lifters": list, "weeks": list},
    "lifter": {"id": str, "bodyweight_kg": NUMBER, "bases": dict},
    "week": {"week": int, "wave": str, "deload": bool, "volume": dict, "sessions": list},
    "volume": {"hard_sets": dict, "eccentric_s": NUMBER, "isometric_s": NUMBER,
               "fast_reps": NUMBER},
    "session": {"id": str, "minutes": NUMBER, "slots": list},
    "slot": {"order": str, "exercise": str, "sets": int, "reps": (int, type(None)),
             "each_side": bool, "tempo": (str, type(None)), "rest_s": (*NUMBER, type(None)),
             "method": str, "by_lifter": dict},
    "load": {"planned_kg": NUMBER, "load_kg": (*NUMBER, type(None)),
             "percent": (*NUMBER, type(None))},
}  # fmt: skip


def _has_shape(name: str, value: dict[str, Any]) -> None:
    for key, kind in SHAPES[name].items():
        assert key in value, f"{name} has no {key}"
        assert isinstance(value[key], kind), f"{name}.{key} is {value[key]!r}"


def test_the_data_file_has_every_published_key(demo_site: Path) -> None:
    data = json.loads((demo_site / "data/winter.json").read_text(encoding="utf-8"))
    assert data["schema"] == 1
    assert data["program"] == "winter"
    _has_shape("program", data)
    for lifter in data["lifters"]:
        _has_shape("lifter", lifter)
    assert [week["week"] for week in data["weeks"]] == list(range(1, len(data["weeks"]) + 1))
    slots = []
    for week in data["weeks"]:
        _has_shape("week", week)
        _has_shape("volume", week["volume"])
        for session in week["sessions"]:
            _has_shape("session", session)
            slots += session["slots"]
    on_bars = 0
    for slot in slots:
        _has_shape("slot", slot)
        for load in slot["by_lifter"].values():
            _has_shape("load", load)
            if "bar_kg" in load and load["load_kg"] is not None:
                on_bars += 1
                plates = sum(load["plates_per_side_kg"])
                assert load["bar_kg"] + 2 * plates == load["load_kg"], (slot["exercise"], load)
    assert on_bars > 0


def test_the_first_lift_of_the_first_week_is_the_one_in_the_file(demo_site: Path) -> None:
    data = json.loads((demo_site / "data/winter.json").read_text(encoding="utf-8"))
    slot = data["weeks"][0]["sessions"][0]["slots"][0]
    # From programs/winter/1-brakes.yml and lifters.yml: 70 % of 140 kg; nearest below with a
    # 25 kg bar and pairs from 1.25 kg up is 97.5 kg = 25 + 2 · (25 + 10 + 1.25).
    assert slot["exercise"] == "trap-bar-deadlift"
    assert (slot["sets"], slot["reps"], slot["tempo"], slot["rest_s"]) == (3, 5, "3-1-X-0", 150)
    load = slot["by_lifter"]["P1"]
    assert (load["planned_kg"], load["load_kg"], load["percent"]) == (98, 97.5, 69.6)
    assert load["plates_per_side_kg"] == [25, 10, 1.25]


@pytest.mark.parametrize("root", ["https://example.org/", "https://example.org/club/strength/"])
def test_the_page_for_wrong_addresses_leads_into_the_handbook(tmp_path: Path, root: str) -> None:
    """It may be shown at any depth, so that its links begin at the server's root."""
    folder = write_tiny(tmp_path / "gym", f"site_url: {root}\n{MKDOCS}")
    html = (demo.build_site(folder, tmp_path / "site") / "404.html").read_text(encoding="utf-8")
    path = urlsplit(root).path
    found = re.findall(r'(?:href|src)="(/[^"]*)"', html)
    assert f"{path}spring/" in found
    assert all(one.startswith(path) for one in found)
