"""The rows of the program on one page: for each session, names and doses by week."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import groupby, zip_longest

from strength_handbook.pages.coach.short import common_and_own
from strength_handbook.plan.worked import WorkedSession, WorkedSlot, WorkedWeek


@dataclass(frozen=True)
class Name:
    """What stands above the doses of some neighbouring weeks.

    Attributes:
        order: A, B1, B2 …; empty where there is nothing.
        name: the exercise; empty where there is none.
        common: what all these weeks have in common.
        weeks: over how many columns it stands.
    """

    order: str
    name: str
    common: str
    weeks: int

    @property
    def text(self) -> str:
        """All of it."""
        return f"{self.order} {self.name} {self.common}".strip()


@dataclass(frozen=True)
class SlotRow:
    """One row: names, and a dose for each week, empty where there is none."""

    names: tuple[Name, ...] = ()
    doses: tuple[str, ...] = ()


@dataclass(frozen=True)
class SessionRows:
    """One session with its rows."""

    title: str
    rows: tuple[SlotRow, ...]


@dataclass(frozen=True)
class Sheet:
    """What stands on one sheet.

    Attributes:
        weeks: its columns.
        waves: name of each wave and over how many weeks it stands.
        sessions: its rows.
    """

    weeks: tuple[WorkedWeek, ...]
    waves: tuple[tuple[str, int], ...]
    sessions: tuple[SessionRows, ...]


def sheet_of(weeks: Sequence[WorkedWeek]) -> Sheet:
    """The sheet of some weeks."""
    waves = by_wave(weeks)
    groups = dict.fromkeys(_group(one, weeks) for week in weeks for one in week.sessions)
    return Sheet(
        tuple(weeks),
        tuple((same[0].wave.wave, len(same)) for same in waves),
        tuple(_session(waves, weeks, key) for key in groups),
    )


def by_wave(weeks: Sequence[WorkedWeek]) -> list[list[WorkedWeek]]:
    """Neighbouring weeks of one wave together."""
    return [list(group) for _, group in groupby(weeks, key=lambda week: week.wave_id)]


def _group(session: WorkedSession, weeks: Sequence[WorkedWeek]) -> str:
    """What stands in the same rows: a weekday, where no week has two sessions on it."""
    day = session.session.day
    days = [[one.session.day for one in week.sessions] for week in weeks]
    return session.id if day is None or any(one.count(day) > 1 for one in days) else day


def _session(
    waves: Sequence[Sequence[WorkedWeek]], weeks: Sequence[WorkedWeek], key: str
) -> SessionRows:
    """A session in all waves: the first row has the first letter of each, and so on."""
    found = [
        [next((one for one in week.sessions if _group(one, weeks) == key), None) for week in wave]
        for wave in waves
    ]
    there = [one for wave in found for one in wave if one is not None]
    columns = [_rows(wave) for wave in found]
    rows = [
        SlotRow(
            tuple(
                name
                for wave, row in zip(found, line, strict=True)
                for name in (row.names or (Name("", "", "", len(wave)),))
            ),
            tuple(
                dose
                for wave, row in zip(found, line, strict=True)
                for dose in (row.doses or ("",) * len(wave))
            ),
        )
        for line in zip_longest(*columns, fillvalue=SlotRow())
    ]
    return SessionRows(_title(there), tuple(rows))


def _title(sessions: Sequence[WorkedSession]) -> str:
    days = dict.fromkeys((one.session.day or "").capitalize() for one in sessions)
    titles = dict.fromkeys(one.session.title for one in sessions)
    words = [" / ".join(titles), *(day for day in days if day not in "".join(titles))]
    optional = any(one.session.optional for one in sessions)
    return ", ".join(words + ["optional"] * optional)


def _rows(sessions: Sequence[WorkedSession | None]) -> list[SlotRow]:
    """One session in the weeks of one wave, a row for each letter."""
    slots = [{slot.order: slot for slot in one.slots} if one else {} for one in sessions]
    orders = sorted({order for week in slots for order in week})
    return [_row([week.get(order) for week in slots]) for order in orders]


def _row(slots: Sequence[WorkedSlot | None]) -> SlotRow:
    """One letter; neighbouring weeks with the same exercise share its name."""
    names: list[Name] = []
    doses: list[str] = []
    for _, group in groupby(slots, key=lambda slot: slot.exercise_id if slot else ""):
        same = list(group)
        several = [slot for slot in same if slot is not None]
        if not several:
            names.append(Name("", "", "", len(same)))
            doses += [""] * len(same)
            continue
        common, own = common_and_own([slot.dose for slot in several])
        first = several[0]
        names.append(Name(first.order, first.exercise.name, " · ".join(common), len(same)))
        doses += [" ".join(one) for one in own]
    return SlotRow(tuple(names), tuple(doses))
