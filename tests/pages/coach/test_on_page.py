"""What the checks find stands on a page that there is, at the slot where it is about one."""

import re
from pathlib import Path

import pytest

import desks
from strength_handbook.checked import Checked
from strength_handbook.pages.coach.on_page import HOME, noted
from strength_handbook.pages.session_page import session_uri, week_uri
from strength_handbook.pages.site import write_pages
from strength_handbook.pages.week_page import overview_uri
from strength_handbook.reading.problem import Severity
from strength_handbook.review.catalogue import reported

FIRST = {case.slug: case for case in reversed(desks.read_cases()) if case.kind == "fires"}


def addresses(checked: Checked) -> set[str]:
    """Pages of the site that a finding may stand on."""
    assert checked.desk is not None
    desk = checked.desk
    return {
        HOME,
        "room.md",
        *(f"exercises/{key}.md" for key in desk.book.exercises),
        *(overview_uri(program) for program in desk.worked.programs),
        *(week_uri(week.program, week.number) for week in desk.weeks),
        *(session_uri(one.program, one.number, one.session.id) for one in desk.sessions),
    }


@pytest.mark.parametrize("slug", FIRST)
def test_each_finding_is_on_a_page_and_at_its_slot(slug: str, tmp_path: Path) -> None:
    case = FIRST[slug]
    checked = desks.check(desks.edited(case.edits, case.rules), tmp_path, case.today)
    desk = checked.desk
    assert desk is not None
    notes = noted(checked, checked.problems, {})
    assert set(notes) <= addresses(checked)
    slots = {(one.program.id, one.at.what, one.number): one for one in desk.slots}
    for finding in checked.findings:
        line = reported(finding)
        here = [(uri, at) for uri in notes for at, all_ in notes.of(uri).items() if line in all_]
        assert bool(here) == (finding.severity is not Severity.NOTE), finding
        about = [slots.get((finding.program, finding.at.what, one)) for one in finding.at.weeks]
        if here and all(about) and about:
            uris = [session_uri(one.program, one.number, one.session.id) for one in about if one]
            at = finding.at.what.split()[1].lower()
            assert set(here) == {(uri, f"slot-{at}") for uri in uris}


def test_it_stands_under_the_name_of_its_slot(tmp_path: Path) -> None:
    edit = {"brook/1-slow.yml": {"sessions.a-lift.slots.0.rest": "0:20"}}
    checked = desks.check(desks.edited(edit), tmp_path)
    assert checked.shown is not None
    (finding,) = [one for one in checked.findings if one.slug == "rest-short"]
    notes = noted(checked, checked.problems, {})
    pages = {page.uri: page for page in write_pages(checked.shown).pages}
    week = finding.at.weeks[0]
    uri = f"brook/week-{week:02d}/a-lift.md"
    html = notes.on(uri, pages[uri].html)
    order = re.search(r"a-lift (\w+)", finding.at.what)
    assert order
    slot = html.split(f'<h2 id="slot-{order[1].lower()}">', 1)[1].split("</article>", 1)[0]
    assert f"<b>{'Warning' if finding.severity is Severity.WARN else 'Error'}.</b>" in slot
    assert "{}:{}:{}".format(*finding.spot.place) in slot
    # Nothing else has changed, and a page without a finding is as it was.
    assert re.sub(r'\n<div class="sh-finding".*?</div>\n', "", html) == pages[uri].html
    assert notes.on("words.md", pages["words.md"].html) == pages["words.md"].html


def test_what_stands_in_no_week_is_on_its_own_page(tmp_path: Path) -> None:
    files = desks.edited({"brook/program.yml": {"accepted": [
        {"finding": "rest-short", "at": "week 1, a-lift", "reason": "Nothing is found there."},
    ]}})  # fmt: skip
    checked = desks.check(files, tmp_path)
    notes = noted(checked, checked.problems, {})
    (said,) = notes.of("brook/index.md")[""]
    assert said.slug == "accepted-nothing"
