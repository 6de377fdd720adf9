"""What stands on the card of one exercise: words and figures, before they are laid out."""

from collections.abc import Iterator
from dataclasses import dataclass

from strength_handbook.dose.printing import notation, partial_notation, pieces
from strength_handbook.model.book import Book
from strength_handbook.model.exercise import Cues, Exercise
from strength_handbook.model.printed import NBSP, clock
from strength_handbook.model.room import Room
from strength_handbook.pages.cards.pace_strips import pace_strips_of
from strength_handbook.pages.cards.strips import CardStrip, has_strip, strips_of
from strength_handbook.pages.cards.weeks import remove_after, week_words, weeks_apart, window
from strength_handbook.pages.lookup import slot_lookup
from strength_handbook.pages.variable_html import bands_by_best
from strength_handbook.plan.alone import ANSWERS, Alone, alone_today
from strength_handbook.plan.doors import DoorPlan, doors_of
from strength_handbook.plan.dose_hazards import cautions_of, set_up_steps
from strength_handbook.plan.worked import Use, Worked, WorkedProgram, WorkedWeek

CUES = 3
BLANKS = ("load today",)
ON_BAR = ("load today", "plates each side")
BY_PACE, BY_LEVEL = ("pace today",), ("level today",)
"""What everybody writes on a card with a dry-wipe pen."""


@dataclass(frozen=True, eq=False)
class CardPart:
    """The weeks of one wave of one program."""

    program: WorkedProgram
    weeks: tuple[WorkedWeek, ...]

    @property
    def wave(self) -> str:
        """The wave's id."""
        return self.weeks[0].wave_id

    @property
    def url(self) -> str:
        """Address of the page with its cards."""
        return f"cards/{self.program.id}/{self.wave}/"

    def uses(self, worked: Worked) -> Iterator[tuple[str, tuple[Use, ...]]]:
        """Each exercise of the wave, by name, with its uses in order of time."""
        for key in sorted(worked.uses, key=lambda key: worked.book.exercises[key].name):
            found = tuple(use for use in worked.uses[key] if use.week in self.weeks)
            if found:
                yield key, found


@dataclass(frozen=True, slots=True)
class DoseRow:
    """One dose: when it is done, the work itself, and what else is said about it."""

    when: str
    core: str
    details: str


@dataclass(frozen=True, slots=True)
class Card:
    """The content of one card.

    Attributes:
        key: the exercise.
        name: its name.
        place: program, wave and weeks.
        doses: the doses, each different one once.
        always: what is the same in all of them.
        strips: look-up strips.
        asked: what the next line answers.
        how: how to find the load, or the pace.
        set_up: steps until the first repetition.
        blanks: what is written on the card by hand.
        cues: what to say.
        stop: when to end.
        spotting: who stands where, and the safeties.
        alone: whether it is done alone.
        taken: where to go when the station is taken.
        caution: the first caution, and how many there are besides.
        version: of the program.
        until: the last day of the card, if it is known.
        shortened: some words are left out, because there are too many for one side.
    """

    key: str
    name: str
    place: str
    doses: tuple[DoseRow, ...]
    always: str
    strips: tuple[CardStrip, ...]
    asked: str
    how: str
    set_up: tuple[str, ...]
    blanks: tuple[str, ...]
    cues: tuple[str, ...]
    stop: str
    spotting: str
    alone: str
    taken: str
    caution: str
    version: str
    until: str | None
    shortened: bool = False


def parts_of(worked: Worked) -> Iterator[CardPart]:
    """Every wave of every program."""
    for program in worked.programs:
        for wave in dict.fromkeys(week.wave_id for week in program.weeks):
            yield CardPart(program, tuple(w for w in program.weeks if w.wave_id == wave))


def make_card(worked: Worked, part: CardPart, key: str, uses: tuple[Use, ...]) -> Card:
    """The card of an exercise for some of its uses in a wave."""
    book = worked.book
    exercise = book.exercises[key]
    program = part.program.program
    weeks = [use.week.week for use in uses]
    doses, always = _doses(uses)
    return Card(
        key=key,
        name=exercise.name,
        place=f"{program.program} · {part.weeks[0].wave.wave} · {window(part.program, weeks)}",
        doses=doses,
        always=always,
        strips=(*strips_of(uses, book.room.units), *pace_strips_of(uses)),
        asked="How heavy" if exercise.going is None else "How fast",
        how=" ".join(_how(uses, book.room.units)),
        set_up=tuple(exercise.set_up),
        blanks=(*_holes(book, exercise), *_blanks(exercise, uses)),
        cues=_cues(exercise.cues),
        stop=" ".join(filter(None, (*exercise.stop, exercise.doors.hurts.stop))),
        spotting=_spotting(exercise),
        alone=" ".join(_alone(uses, book.room)),
        taken=" ".join(_taken(worked, part.program, uses)),
        caution=_caution(exercise, uses),
        version=program.version,
        until=remove_after(part.program, weeks),
    )


def _doses(uses: tuple[Use, ...]) -> tuple[tuple[DoseRow, ...], str]:
    """Each different dose with its weeks, and what is the same in all of them."""
    sessions = {use.session.id for use in uses}
    twice = len({(use.week.week, use.session.id) for use in uses}) < len(uses)
    weeks: dict[tuple[str, str, tuple[str, ...]], list[int]] = {}
    rests: dict[float, list[str]] = {}
    for use in uses:
        dose = use.slot.dose
        printed = pieces(dose)
        core = " · ".join(one.text for one in printed if one.core)
        place = f", {use.session.session.title}" if len(sessions) > 1 else ""
        place += f", {use.slot.order}" if twice else ""
        when = f"week {use.week.week}{place}"
        if dose.rest is not None:
            rests.setdefault(dose.rest, []).append(when)
        kept = tuple(one.text for one in printed if not one.core and one.field != "rest")
        weeks.setdefault((place, core, kept), []).append(use.week.week)
    every = [details for _, _, details in weeks]
    same = [piece for piece in every[0] if all(piece in details for details in every)]
    same = same if len(weeks) > 1 else []
    rows = (
        DoseRow(
            week_words(found) + place,
            core,
            " · ".join(piece for piece in details if piece not in same),
        )
        for (place, core, details), found in weeks.items()
    )
    return tuple(rows), " · ".join((*same, *_rests(rests)))


def _rests(rests: dict[float, list[str]]) -> Iterator[str]:
    """The rest that most doses have, and in which weeks it is another."""
    if rests:
        usual = max(rests, key=lambda rest: len(rests[rest]))
        others = [
            f"{', '.join(when)}: {clock(rest)}" for rest, when in rests.items() if rest != usual
        ]
        yield f"rest{NBSP}{clock(usual)}" + (f" ({'; '.join(others)})" if others else "")


def _cues(cues: Cues) -> tuple[str, ...]:
    """The cues said aloud, then others in the order of the lift, to make three."""
    return tuple(dict.fromkeys((*cues.voice, *cues.spoken())))[:CUES]


def _holes(book: Book, exercise: Exercise) -> tuple[str, ...]:
    """What a rack's holes are written into, where the exercise is done in one."""
    needs = {*exercise.stations, *exercise.uses, getattr(exercise.load, "rack", None)}
    if not needs & book.room.racks.keys():
        return ()
    return ("rack hole", "safeties hole") if exercise.spotting.safeties else ("rack hole",)


def _blanks(exercise: Exercise, uses: tuple[Use, ...]) -> tuple[str, ...]:
    if exercise.going is not None:
        return BY_PACE if exercise.going.per else BY_LEVEL
    return ON_BAR if _on_bar(uses) else BLANKS


def _on_bar(uses: tuple[Use, ...]) -> bool:
    """True where plates go on both ends of a bar."""
    return any(use.slot.scale is not None and use.slot.scale.kind == "bar" for use in uses)


def _spotting(exercise: Exercise) -> str:
    spotting = exercise.spotting
    word = f"The word is “{spotting.word}”." if spotting.word else ""
    return " ".join(filter(None, (spotting.where, word, spotting.safeties)))


def _caution(exercise: Exercise, uses: tuple[Use, ...]) -> str:
    """The first caution whole, of what these weeks bring; a card with six is read by nobody."""
    cautions = cautions_of(exercise, (use.slot.dose for use in uses))
    if not cautions:
        return ""
    more = len(cautions) - 1
    rest = f" {more} more {'is' if more == 1 else 'are'} on the exercise's page." if more else ""
    return cautions[0] + rest


def _taken(worked: Worked, program: WorkedProgram, uses: tuple[Use, ...]) -> list[str]:
    """Where to go when the station is taken, in words of the slots, the day or the exercise."""
    found: dict[str, list[tuple[Use, DoorPlan]]] = {}
    for use in uses:
        plan = next(one for one in doors_of(worked, program, use.slot) if one.key == "taken")
        target = f"{plan.exercise.name}: " if plan.to else ""
        found.setdefault(f"{target}{plan.how}", []).append((use, plan))
    lines = {
        words: " ".join(filter(None, (words, _instead(same)))) for words, same in found.items()
    }
    weeks = weeks_apart([[use for use, _ in same] for same in found.values()])
    return _by_weeks(list(lines.values()), weeks)


def _alone(uses: tuple[Use, ...], room: Room) -> list[str]:
    """Whether it is done alone, as the session pages say it: what is never done alone first."""
    found: dict[Alone, list[Use]] = {}
    for use in uses:
        found.setdefault(alone_today(use.slot, room), []).append(use)
    strictest = list(ANSWERS)
    several = sorted(found.items(), key=lambda one: strictest.index(one[0].answer))
    lines = [alone.words for alone, _ in several]
    return _by_weeks(lines, weeks_apart([same for _, same in several]))


def _by_weeks(lines: list[str], weeks: list[str]) -> list[str]:
    """Lines with the weeks for which they hold; a single one holds for all."""
    if len(lines) == 1:
        return lines
    return [f"{when}: {line}" for when, line in zip(weeks, lines, strict=True)]


def _instead(same: list[tuple[Use, DoorPlan]]) -> str:
    """The dose of a door as written; by week where some weeks ask less of it."""
    if not any(plan.lowered for _, plan in same):
        own = same[0][1].own
        return partial_notation(own) if own else ""
    weeks: dict[str, list[int]] = {}
    for use, plan in same:
        if plan.dose is not None:
            weeks.setdefault(notation(plan.dose), []).append(use.week.week)
    usual = max(weeks, key=lambda dose: len(weeks[dose]))
    others = (f"{week_words(several)}: {dose}" for dose, several in weeks.items() if dose != usual)
    rest = "; ".join(others)
    return f"{usual} ({rest})" if rest else usual


def _how(uses: tuple[Use, ...], units: str) -> list[str]:
    """How to find the load, as the session pages say it."""
    lines: list[str] = []
    for use in uses:
        found = slot_lookup(use.slot, units)
        elsewhere = bool(found.table) and not has_strip(use) and use.slot.aims is None
        lines += (*found.parts, "The table is on the exercise's page." if elsewhere else "")
    if any(has_strip(use) for use in uses):
        lines.append("Between two rows take the lighter one.")
    if any(use.slot.aims is not None for use in uses):
        lines.append("Between two rows take the slower one, or the fewer watts.")
    steps = (step for use in uses for step in set_up_steps(use.slot.dose))
    lines += (*steps, *(bands_by_best(use.slot, units) for use in uses))
    said = list(dict.fromkeys(filter(None, lines)))
    by_feel = [line for line in said if line.startswith(("Choose a load ", "Choose a first load "))]
    if len(by_feel) > 1:
        said = [line for line in said if line not in by_feel]
        said.insert(0, "Choose each week's load by the effort beside its dose. Write it down.")
    return said
