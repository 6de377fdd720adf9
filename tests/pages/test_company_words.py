"""Who is together at a station is called what it is: a pair is two."""

from pathlib import Path

import pytest

import demo
from strength_handbook.model.book import Book
from strength_handbook.pages.session_page import session_page
from strength_handbook.plan.work_out import work_out
from strength_handbook.reading.book import read_book


@pytest.mark.parametrize(("sharing", "company"), [(2, "pair"), (3, "group of three")])
def test_those_in_turn(tmp_path: Path, sharing: int, company: str) -> None:
    root = demo.copy_demo(tmp_path)
    program = root / "programs" / "winter" / "program.yml"
    demo.change(program, "sharing: 2", f"sharing: {sharing}")
    result = read_book(root / "programs")
    assert isinstance(result.book, Book)
    worked = work_out(result.book)
    week = worked.programs[0].week(5)
    rotating = next(one for one in week.sessions if one.session.rotate)
    html = session_page(worked, worked.programs[0], week, rotating).html
    assert f"each {company} begins at another letter" in html
    assert f"those of a {company} that begins" in html
    assert ("each pair" in html) == (company == "pair")
