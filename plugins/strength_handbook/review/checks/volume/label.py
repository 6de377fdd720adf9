"""Does a wave do what it says: more lowering, more holding or more speed than the others?"""

from collections.abc import Iterator

from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, WeekAt
from strength_handbook.review.emphasis import MEASURES, WaveEmphasis, amount, times, wave_emphases
from strength_handbook.review.finding import At, Edit, Finding, Mending, Spot
from strength_handbook.review.slips import slipped_weeks
from strength_handbook.review.weeks import EPSILON, by_program, waves
from strength_handbook.review.words import number

_NAMED = {
    "eccentric": ("eccentric", "lowering", "lower", "brake", "brakes", "braking", "negatives"),
    "isometric": ("isometric", "isometrics", "hold", "holds", "holding", "statics"),
    "speed": ("speed", "fast", "quick", "power", "explosive"),
}
"""Words in a wave's name that promise an emphasis."""
_NAME_WORDS = 3
"""A longer name is a sentence, in which one word promises nothing."""


@check(
    "wave-label",
    Family.VOLUME,
    Severity.WARN,
    what="Seconds of lowering, seconds of holding or fast repetitions a week, whichever a wave's "
    "emphasis or name promises, against the mean of the other waves.",
    why="A name without the work behind it trains nothing, and members notice.",
    rules=("label-share",),
)
def wave_label(this: Check, desk: Desk) -> Iterator[Finding]:
    """Waves whose name or emphasis is not what they do."""
    least = desk.rule("label-share")
    for program, weeks in by_program(desk):
        found = {one.id: one for one in wave_emphases(program)}
        wrong = {week for name, week in slipped_weeks(desk) if name == program.id}
        for wave in waves(weeks):
            one = found.get(wave[0].week.wave_id)
            if wrong & {at.number for at in wave}:
                continue
            for promise in () if one is None else _promises(one):
                assert one is not None  # noqa: S101  # no promises without it
                if _kept(one, promise, least):
                    continue
                spoken = promise == one.emphasis
                yield this.finds(
                    wave[0],
                    f"{_said(one, promise, spoken=spoken)} {number(least)} times",
                    spot=Spot(wave[0].wave, ("emphasis" if spoken else "wave",)),
                    at=At(f"{wave[0].wave_at.what} {promise}"),
                    change=_change(wave[0], one, promise, least, spoken=spoken),
                )


def _promises(wave: WaveEmphasis) -> list[str]:
    """What emphasis and name say that the wave does more of."""
    own = [wave.emphasis] if wave.emphasis in MEASURES else []
    return list(dict.fromkeys([*own, *_named(wave)]))


def _named(wave: WaveEmphasis) -> list[str]:
    words = wave.name.lower().replace("-", " ").split()
    if len(words) > _NAME_WORDS:  # a sentence tells of several things
        return []
    return [one for one, several in _NAMED.items() if set(several) & set(words)]


def _kept(wave: WaveEmphasis, promise: str, least: float) -> bool:
    """True where the wave has so many times the others' mean; alone, where it has any at all."""
    share = wave.shares.get(promise)
    if share is None:
        return wave.means[promise] > 0
    return share >= least - EPSILON


def _said(wave: WaveEmphasis, promise: str, *, spoken: bool) -> str:
    what = f"emphasis is {promise}" if spoken else f"the name '{wave.name}' promises {promise}"
    had = amount(promise, wave.means[promise])
    share = wave.shares.get(promise)
    against = "" if share is None else f", {times(share)} times the other waves"
    return f"{what}, but a week has {had}{against}; at least"


def _change(at: WeekAt, wave: WaveEmphasis, promise: str, least: float, *, spoken: bool) -> Mending:
    """Another emphasis, where the wave does something else; else another name or other work."""
    _, what = MEASURES[promise]
    more = what.removeprefix("of ")
    if not spoken:
        return Mending(f"give the wave another name, or more {more}")
    if promise in _named(wave):
        return Mending(f"add {more}, or give the wave another name and emphasis")
    does = [one for one in MEASURES if one != promise and _kept(wave, one, least)]
    other = "general" if not does or not wave.shares else does[0]
    # A wave newly called eccentric has to start small: then a person must look.
    edits = (
        () if other == "eccentric" else (Edit(at.wave.file, ("emphasis",), other),)
    )  # fmt: skip
    return Mending(f"write 'emphasis: {other}', or add {more}", edits)
