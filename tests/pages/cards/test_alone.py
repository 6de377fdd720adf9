"""A card on the wall and the session's page say the same about training alone."""

import re
from html import unescape
from pathlib import Path

import demo
from books import base, exercise, slot, work
from strength_handbook.pages.cards.card import make_card, parts_of
from strength_handbook.pages.cards.page import cards_of
from strength_handbook.pages.session_page import session_page
from strength_handbook.plan.work_out import work_out
from strength_handbook.reading.book import read_book

ANSWER = r"(Fine|With a change|No)\."
SAID = re.compile(rf"(?:(Weeks? [^:]*): )?{ANSWER} (.*?)(?= Weeks? [^:]*: {ANSWER}|$)")
WEEKS = re.compile(r"[Ww]eeks? (\d+(?:–\d+)?(?:, \d+(?:–\d+)?)*)(?:,? (.*))?")

Said = tuple[str, str]
"""Answer and words."""


def on_card(card: str, week: int, session: str) -> set[Said]:
    """What a card says of a week's session; nothing where it is not among its doses."""
    if not any(covers(when, week, session) for when in re.findall("<li><span>(.*?)</span>", card)):
        return set()
    line = re.search(r"<p><b>Alone\?</b> (.*?)</p>", card)
    assert line is not None
    return {
        (one[2], one[3])
        for one in SAID.finditer(unescape(line[1]))
        if not one[1] or covers(one[1], week, session)
    }


def covers(when: str, week: int, session: str) -> bool:
    """True where words such as "Weeks 9–11 Lift; week 10 Descend" hold for a week's session."""
    for part in when.split("; "):
        found = WEEKS.fullmatch(unescape(part))
        assert found is not None, when
        runs = [run.split("–") for run in found[1].split(", ")]
        in_time = any(int(run[0]) <= week <= int(run[-1]) for run in runs)
        if in_time and (not found[2] or session in found[2]):
            return True
    return False


def in_session(html: str, name: str) -> set[Said]:
    """What a session's page says of an exercise; nothing where it is in "the rest is fine"."""
    box = html[html.index('<h2 id="alone">') : html.index('<h2 id="rules">')]
    found = set()
    for answer, head in {"No": "Not alone", "With a change": "Only with a change"}.items():
        part = re.search(f"<b>{head}:</b></p><ul>(.*?)</ul>", box)
        lines = re.findall(r"<li><b>(.*?):</b> (.*?)</li>", part[1]) if part else []
        found |= {(answer, unescape(how)) for own, how in lines if unescape(own) == name}
    return found


def test_in_every_week_and_session_of_the_demo() -> None:
    book = read_book(demo.PROGRAMS).book
    assert book is not None
    worked = work_out(book)
    asked = {"No": 0, "With a change": 0, "Fine": 0}
    for part in parts_of(worked):
        cards = cards_of(worked, part)
        for key, uses in part.uses(worked):
            own = [card.html for card in cards if card.key == key]
            for use in uses:
                html = session_page(worked, use.program, use.week, use.session).html
                fine = ("Fine", use.slot.exercise.spotting.alone_how)
                said = in_session(html, use.slot.exercise.name) or {fine}
                week, session = use.week.week, use.session.session.title
                assert set().union(*(on_card(card, week, session) for card in own)) == said, (
                    key,
                    week,
                )
                for answer, _ in said:
                    asked[answer] += 1
    # Four lifts are tested, and partners are needed in many weeks.
    assert min(asked.values()) > 10, asked


def test_a_test_and_other_sets_in_one_session_are_told_apart(tmp_path: Path) -> None:
    made = work(
        tmp_path,
        exercises={"lift": exercise()},
        sessions={
            "a": [
                slot("A", "lift", {"2": "test 1RM in 3 attempts"}, base="best"),
                slot("B", "lift", {"1": "3x5 @70%", "2": "3x5 @70%"}, base="best"),
            ]
        },
        bases={"best": base()},
    )
    (part,) = parts_of(made)
    ((key, uses),) = part.uses(made)
    card = make_card(made, part, key, uses)
    assert card.alone == (
        "Week 2 A A: No. A test is never done alone. Come when the coach is here. "
        "Weeks 1, 2 A B: Fine. As it is."
    )
    assert card.taken == (
        "Weeks 1, 2 A B: As it is. Week 2 A A: Wait for it: on other equipment it is another test."
    )
