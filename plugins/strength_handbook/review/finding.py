"""A finding of a check: where it is, what was computed, and the smallest change that clears it."""

from dataclasses import dataclass, replace

from strength_handbook.reading.problem import Problem, Severity
from strength_handbook.reading.source import Path, Plain, Source


@dataclass(frozen=True)
class Spot:
    """A place in a file: the value at a path, or its key.

    Attributes:
        source: the file.
        path: keys and indexes from the top of the file.
        key: point at the key instead of the value.
    """

    source: Source
    path: Path
    key: bool = False

    @property
    def place(self) -> tuple[str, int, int]:
        """File, line and column."""
        mark = self.source.key_at(self.path) if self.key else self.source.at(self.path)
        return self.source.file, mark.line, mark.column


@dataclass(frozen=True, slots=True)
class At:
    """What a finding is about, in words that stay the same while the file is edited.

    Attributes:
        what: the thing: ``a-lift A trap-bar-deadlift``, ``a-lift``, ``wave brakes``,
            ``exercise step-down``, ``room 29-b``, ``program``.
        weeks: the weeks it holds for; empty where it is about no week.
    """

    what: str = ""
    weeks: tuple[int, ...] = ()

    @property
    def text(self) -> str:
        """For a message, and for `accepted` in a program.

        >>> At("a-lift A trap-bar-deadlift", (1, 2, 3, 5)).text
        'weeks 1-3 and 5, a-lift A trap-bar-deadlift'
        >>> At("program").text, At(weeks=(3,)).text
        ('program', 'week 3')
        """
        return ", ".join(part for part in (week_words(self.weeks), self.what) if part)


def week_words(weeks: tuple[int, ...]) -> str:
    """Weeks as runs: ``weeks 1-3 and 5``; empty for none."""
    if not weeks:
        return ""
    runs: list[list[int]] = []
    for week in sorted(set(weeks)):
        if runs and week == runs[-1][-1] + 1:
            runs[-1].append(week)
        else:
            runs.append([week])
    parts = [str(run[0]) if len(run) == 1 else f"{run[0]}-{run[-1]}" for run in runs]
    joined = parts[0] if len(parts) == 1 else f"{', '.join(parts[:-1])} and {parts[-1]}"
    return f"{'week' if len(set(weeks)) == 1 else 'weeks'} {joined}"


@dataclass(frozen=True)
class Edit:
    """One value of a file made different.

    Attributes:
        file: as in messages.
        path: keys and indexes in the file, with one-line doses in their long form.
        value: what to write there, as a coach writes it.
        remove: take the key or entry out instead.
    """

    file: str
    path: Path
    value: Plain = None
    remove: bool = False


@dataclass(frozen=True, slots=True)
class Mending:
    """The smallest change that clears a finding.

    Attributes:
        words: what to write, in one clause without a full stop: ``write 'rest 2:30'``.
        edits: the same as edits of the files; empty where only a person can choose.
    """

    words: str
    edits: tuple[Edit, ...] = ()


@dataclass(frozen=True)
class Finding:
    """One thing that a check found.

    Attributes:
        slug: the check.
        severity: error, warn or note.
        spot: the value to change.
        at: what it is about, in words.
        text: what was computed and the limit, in one clause or two.
        change: the smallest change that clears it, or None where none can be named.
        more: further changes, where one finding stands for several weeks.
        program: the program it is about; empty for exercises, room and rules.
    """

    slug: str
    severity: Severity
    spot: Spot
    at: At
    text: str
    change: Mending | None = None
    more: tuple[Mending, ...] = ()
    program: str = ""

    @property
    def edits(self) -> tuple[Edit, ...]:
        """All edits that clear it."""
        changes = (self.change, *self.more) if self.change else ()
        edits: list[Edit] = []
        for one in changes:
            edits += (edit for edit in one.edits if edit not in edits)
        return tuple(edits)

    def and_also(self, other: "Finding") -> "Finding":
        """The same finding for the weeks of both; the first one's words are kept.

        Where the second one's words differ, the first ones say for which week they hold.
        """
        weeks = tuple(sorted({*self.at.weeks, *other.at.weeks}))
        further = (other.change, *other.more) if other.change else ()
        text = self.text
        if other.text != text and len(self.at.weeks) == 1:
            text = f"{text} (in week {self.at.weeks[0]})"
        at = replace(self.at, weeks=weeks)
        return replace(self, at=at, text=text, more=(*self.more, *further))


@dataclass(frozen=True, slots=True)
class Reported(Problem):
    """A finding as a line for the coach, with what is behind it.

    Attributes:
        family: title of its family.
        at: what it is about.
        change: the smallest change, in words; empty where there is none.
        why: why it matters, in one sentence.
        source: where the limit comes from.
    """

    family: str = ""
    at: str = ""
    change: str = ""
    why: str = ""
    source: str = ""
