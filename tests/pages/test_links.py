"""Relative links: from any page they resolve to their target, under any address of the site."""

from urllib.parse import urljoin

import pytest
from hypothesis import given
from hypothesis import strategies as st

from strength_handbook.pages.page import link, url_of

SITES = ("https://gym.example/", "http://gym.example/a/b/", "http://127.0.0.1:8000/handbook/")

part = st.text(alphabet="az09-", min_size=1, max_size=6)
page = st.lists(part, max_size=4).map(lambda parts: "".join(f"{one}/" for one in parts))
file = st.tuples(page, part).map(lambda two: f"{two[0]}{two[1]}.json")
fragment = st.one_of(st.just(""), part.map(lambda text: f"#{text}"))


@given(page, st.one_of(page, file), fragment, st.sampled_from(SITES))
def test_a_link_resolves_to_its_target(start: str, target: str, mark: str, site: str) -> None:
    found = link(start, target + mark)
    # RFC 3986 reference resolution, as a browser does it.
    assert urljoin(site + start, found) == site + target + mark
    assert not found.startswith("/")
    assert "://" not in found


@given(page, part)
def test_a_link_within_a_page_is_only_the_mark(address: str, mark: str) -> None:
    assert link(address, f"{address}#{mark}") == f"#{mark}"


@given(st.lists(part, max_size=4), st.booleans())
def test_addresses_of_sources(parts: list[str], index: bool) -> None:  # noqa: FBT001  # drawn
    folder = "".join(f"{one}/" for one in parts)
    if index:
        assert url_of(f"{folder}index.md") == folder
    elif parts and parts[-1] != "index":
        assert url_of(f"{folder[:-1]}.md") == folder


@pytest.mark.parametrize(
    ("start", "target", "expected"),
    [
        (
            "winter/week-03/a-lift/",
            "exercises/step-down/#week-3",
            "../../../exercises/step-down/#week-3",
        ),
        ("winter/week-03/a-lift/", "winter/week-03/", "../"),
        ("winter/week-03/", "winter/week-03/a-lift/", "a-lift/"),
        ("winter/", "", "../"),
        ("", "", "./"),
        ("", "data/winter.json", "data/winter.json"),
        ("winter/", "data/winter.json", "../data/winter.json"),
    ],
)
def test_examples(start: str, target: str, expected: str) -> None:
    assert link(start, target) == expected
