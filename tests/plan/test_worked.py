"""The order of a week."""

from pathlib import Path

from books import EFFORT, exercise, slot, work


def test_sessions_stand_in_the_order_of_their_days(tmp_path: Path) -> None:
    lift = {"lift": exercise(load=EFFORT)}
    sessions = {
        name: {"title": name, "purpose": "A reason", "slots": [slot("A", "lift", "1x5")]}
        | ({"day": day} if day else {})
        for name, day in (("any", None), ("late", "saturday"), ("first", "monday"))
    }
    worked = work(tmp_path, exercises=lift, sessions=sessions)
    week = worked.programs[0].weeks[0]
    assert [session.id for session in week.sessions] == ["first", "late", "any"]
