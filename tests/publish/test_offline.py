"""The worker lists what a reader needs, and changes only when the site does."""

import json
import re
from pathlib import Path

from strength_handbook.publish.offline import worker_text


def site(root: Path, room: str = "room") -> Path:
    for name, text in {
        "index.html": "home",
        "room/index.html": room,
        "404.html": "none",
        "sw.js": "old worker",
        "sitemap.xml.gz": "dated",
        "assets/a.js": "1",
        "assets/a.js.map": "2",
        "data/winter.json": "{}",
        "data/scales.js": "3",
        "assets/javascripts/lunr/min/lunr.de.min.js": "4",
    }.items():
        path = root / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text)
    return root


def files(text: str) -> dict[str, str]:
    found = re.search(r"FILES = (\{.*?\});", text)
    assert found
    return dict(json.loads(found[1]))


def test_it_lists_what_a_reader_needs_by_address(tmp_path: Path) -> None:
    listed = files(worker_text(site(tmp_path)))
    assert sorted(listed) == ["./", "404.html", "assets/a.js", "data/scales.js", "room/"]


def test_the_same_site_gives_the_same_worker_and_another_page_another(tmp_path: Path) -> None:
    first = worker_text(site(tmp_path / "a"))
    assert worker_text(site(tmp_path / "b")) == first
    second = worker_text(site(tmp_path / "c", room="new room"))
    changed = {key for key, one in files(second).items() if one != files(first)[key]}
    assert changed == {"room/"}
    assert second != first
    assert "__VERSION__" not in second
