"""Any dose comes back from its line, and any line means the same after it was printed."""

from typing import Any

import pytest
from hypothesis import assume, example, given
from hypothesis import strategies as st

from strength_handbook.dose.printing import dose_line
from strength_handbook.dose.texts import OneLineError
from strength_handbook.model.dose_part import DosePart
from strength_handbook.reading.long_form import store
from strength_handbook.reading.notation import NotationError, read_dose


def part_of(line: str) -> DosePart:
    long: dict[str, Any] = {}
    for value in read_dose(line):
        store(long, value)
    return DosePart.model_validate(long)


def number(low: float, high: float, digits: int = 2) -> st.SearchStrategy[str]:
    """A number as written, with a point or a comma."""
    scale = 10**digits
    values = st.integers(round(low * scale), round(high * scale)).map(lambda n: f"{n / scale:g}")
    return st.builds(lambda text, sign: text.replace(".", sign), values, st.sampled_from(".,"))


def whole(low: int, high: int) -> st.SearchStrategy[str]:
    return st.integers(low, high).map(str)


def joined(*parts: st.SearchStrategy[str] | str) -> st.SearchStrategy[str]:
    """Texts one after the other."""
    given = [st.just(part) if isinstance(part, str) else part for part in parts]
    return st.tuples(*given).map("".join)


def percent(low: float, high: float) -> st.SearchStrategy[str]:
    return joined(number(low, high), st.sampled_from([" %", "%"]))


def rising(one: st.SearchStrategy[str]) -> st.SearchStrategy[str]:
    """A range of numbers at most three apart, as written in several ways."""
    both = st.tuples(one, one).map(lambda two: sorted(two, key=float))
    return st.builds(
        lambda two, between: between.join(two),
        both.filter(lambda two: 0 < float(two[1]) - float(two[0]) <= 3),
        st.sampled_from(["-", "–", " - "]),
    )


def seconds(low: int, high: int) -> st.SearchStrategy[str]:
    clocks = st.integers(low, min(high, 5999)).map(lambda s: f"{s // 60}:{s % 60:02d}")
    return st.one_of(
        joined(number(low, min(high, 600)), st.sampled_from([" s", "s", " sec"])),
        clocks if high >= 60 else st.nothing(),
        joined(number(max(1, low / 60), high / 60), " min") if high >= 60 else st.nothing(),
    )


def time_span(low: int, more: int, way: int) -> str:
    """A range of time, at most four times as long at its end."""
    high = low + more % (3 * low) + 1
    return (f"{low}-{high} s", f"{low} s–{high} s", f"{low}-{high} min")[way]


spans = st.builds(time_span, st.integers(10, 14), st.integers(0, 25), st.integers(0, 2))
"""Times that may be shorter or longer."""
efforts = number(1, 10).map(lambda text: text.replace(",", "."))


share_spans = st.builds(
    lambda low, more, unit: f"{low / 2:g}-{(low + more) / 2:g} %{unit}",
    st.integers(80, 180),
    st.integers(1, 40),
    st.sampled_from(["", " TM", " BM", " system", " of 8RM"]),
)


def count(most: int) -> st.SearchStrategy[str]:
    pairs = st.tuples(st.integers(1, most), st.integers(1, most)).map(sorted)
    return st.one_of(
        whole(1, most), whole(1, most).map("{}+".format), pairs.map(lambda p: f"{p[0]}-{p[1]}")
    )


mass = st.one_of(joined(number(0.1, 400), st.sampled_from([" kg", "kg", " lb", " lbs"])))
load = st.one_of(
    share_spans,
    joined(percent(0.1, 150), st.sampled_from(["", " system", " TM", " BM", " of top"])),
    mass,
    st.just("BW"),
    joined("BW", st.sampled_from("+-−"), mass),
    joined(whole(1, 20), "RM"),
    joined(number(0, 9999), " units"),
    st.just("pace"),
    joined("pace ", st.sampled_from("+-−"), whole(1, 60), " s"),
    joined("pace ", st.sampled_from("+-"), rising(whole(1, 60)), " s"),
)
tempo = joined(*(whole(0, 30), "-") * 2, st.one_of(whole(0, 30), st.just("X")), "-", whole(0, 30))
Keys = st.SearchStrategy[dict[str, Any]]

words = st.text(
    alphabet=st.sampled_from("abcdeEiORSTX0123459°'/+-.,;:%()@ÄßЖ 	"), min_size=1, max_size=24
).filter(lambda text: bool(text.strip()))
plain_words = st.sampled_from(
    ["front knee 90°", "pin 9", "the bottom", "just off the floor", "a hand above the 40 cm box",
     "12,5 cm", "rest and breathe", "knee 90° ramp 2 s"]
)  # fmt: skip
free = plain_words | words
band = st.from_regex(r"[a-z0-9]{1,4}(-[a-z0-9]{1,3})?", fullmatch=True)
word = st.from_regex(r"[A-Za-z0-9.%-]{1,6}", fullmatch=True)
share = percent(1, 60)

work: Keys = st.one_of(
    st.fixed_dictionaries({"reps": count(200)}),
    st.fixed_dictionaries({"hold": seconds(1, 2400) | spans}),
    st.fixed_dictionaries({"time": seconds(1, 14_400) | spans}),
    st.fixed_dictionaries({
        "distance": joined(number(1, 300), " m")
        | joined(whole(4, 900), "ft")
        | joined(number(0.1, 100), st.sampled_from([" km", "km"]))
        | joined(number(0.1, 60), st.sampled_from([" mi", " miles", "mile"]))
    }),
    st.fixed_dictionaries({
        "cluster": st.fixed_dictionaries(
            {"parts": st.lists(whole(1, 30), min_size=2, max_size=8), "pause": seconds(1, 59)}
        )
    }),
    st.fixed_dictionaries({
        "strip": st.fixed_dictionaries(
            {"loads": whole(2, 6)},
            # At least one with each of the loads.
            optional={
                "drop": percent(5, 50), "total": whole(6, 200), "within": seconds(10, 600)
            },
        )
    }),
    st.just({}),
)  # fmt: skip
effort: Keys = st.one_of(
    st.just({}),
    st.fixed_dictionaries({"rir": whole(0, 9) | rising(whole(0, 9))}),
    st.fixed_dictionaries({"rpe": efforts | rising(efforts)}),
)
pace: Keys = st.one_of(
    st.just({}),
    st.fixed_dictionaries({"rest": seconds(0, 1800)}),
    st.fixed_dictionaries({"every": seconds(1, 1800)}),
)
less: Keys = st.one_of(
    st.just({}),
    st.fixed_dictionaries(
        {"deload-of": whole(1, 60)},
        optional={f"keep-{what}": percent(10, 150) for what in ("sets", "load", "hold")},
    ),
)
last_set = st.builds(
    lambda floor, more, rir: {"floor": floor, "cap": floor + more, "rir": rir},
    st.integers(1, 50), st.integers(0, 50), st.integers(0, 5),
)  # fmt: skip


def one_of_two(one: str, other: str, *values: st.SearchStrategy[Any]) -> st.SearchStrategy[Any]:
    first, second = values
    return st.fixed_dictionaries({one: first}) | st.fixed_dictionaries({other: second})


KEYS: dict[str, st.SearchStrategy[Any]] = {
    "sets": count(50),
    "load": load,
    "top": st.sampled_from(["1RM", "5 RM", "20rm", "none", "5 @ RPE 8", "3 @ rir 1"]),
    "last-set": last_set,
    "tempo": tempo,
    "each-side": st.just(True),  # noqa: FBT003  # a value of the data
    "cap": whole(1, 200),
    "position": free,
    "pause": st.fixed_dictionaries({"time": seconds(1, 60), "at": free}),
    "push": st.fixed_dictionaries({"at": free}, optional={"ramp": seconds(1, 5)}),
    "return-by": free,
    "bands": one_of_two("top-share", "pair", share, st.lists(band, min_size=2, max_size=2)),
    "chains": one_of_two("top-share", "pairs", share, whole(1, 6)),
    "assist": one_of_two("band", "by", band, free),
    "density": st.fixed_dictionaries({"pace": whole(1, 60)}, optional={"sharing": whole(1, 4)}),
    "team": st.fixed_dictionaries(
        {"bearers": whole(2, 12), "mass": mass}, optional={"turn-every": seconds(10, 1800)}
    ),
    "test": st.fixed_dictionaries({"rm": whole(1, 10)}, optional={"attempts": whole(1, 6)}),
    "height": joined(number(5, 150), " cm") | joined(number(2, 4), "ft"),
    "settings": st.dictionaries(word, word, max_size=3),
    "training-max": percent(70, 100),
    "breathe": free,
    "range": free,
    "intent": st.sampled_from(["fast", "controlled", "slow"]),
    "rate": joined(whole(5, 250) | rising(whole(5, 250)), st.sampled_from([" spm", " rpm", ""])),
    "talk": st.sampled_from(["can", "just", "cannot"]),
}


def some(keys: set[str]) -> st.SearchStrategy[dict[str, Any]]:
    return st.fixed_dictionaries({key: KEYS[key] for key in sorted(keys)})


# A line has room for 200 characters, so only a few keys at once.
others = st.sets(st.sampled_from(sorted(KEYS)), max_size=6).flatmap(some)
parts = st.builds(lambda *some: {k: v for one in some for k, v in one.items()},
                  others, work, effort, pace, less)  # fmt: skip


@given(parts)
@example({"position": "pin 9", "tempo": "0-0-0-0"})  # of a rack, not of a stack
@example({"team": {"bearers": "2", "mass": "60 kg"}, "top": "5 @ RPE 8", "reps": "1"})
@example({"bands": {"pair": ["0", "x0"]}, "top": "5 @ RPE 8", "reps": "1"})
@example({"density": {"pace": "8"}, "time": "10-12 min"})
@example({"density": {"pace": "8"}, "time": "10-11 s"})
def test_any_dose_comes_back_from_its_line(long: dict[str, Any]) -> None:
    assume(long)
    part = DosePart.model_validate(long)
    try:
        line = dose_line(part)
    except OneLineError:
        assume(False)  # noqa: FBT003
    assume(line)  # settings may be empty
    assert part_of(line) == part


def test_what_a_line_can_say_it_does_not_refuse() -> None:
    # The property above would hold for a printer that refuses everything.
    refused: tuple[dict[str, Any], ...] = (
        {"bands": {"pair": ["0", "tm"]}},
        {"position": "front knee 90°, back knee off"},
        {"position": "90° rest 60 s"},
        {"position": "10 kg"},
        {"note": "Slowly."},
        {"each-side": "no"},
        {"settings": {"back rest": "3"}},
        {"settings": {"seat": "4 up"}},
        {"keep-sets": "60 %"},
        {"breathe": "b" * 120, "range": "r" * 90},
    )
    for long in refused:
        with pytest.raises(OneLineError, match="long form"):
            dose_line(DosePart.model_validate(long))
    for own in ("front knee 90°", "12,5 cm off the floor", "the restful side"):
        long = {"hold": "5 s", "position": own, "push": {"at": own}, "breathe": own, "range": own}
        assert part_of(dose_line(DosePart.model_validate(long))).range_ == own


sets = joined(count(50), st.sampled_from(["x", " x ", "×"]))
clauses = st.one_of(
    joined(sets, count(200), st.sampled_from(["", " reps"])),
    joined("ISO ", sets, seconds(1, 2400)),
    joined(sets, seconds(1, 2400)), joined(sets, spans), joined("ISO ", sets, spans),
    joined(count(50), st.sampled_from([" -> ", "→"]), whole(4, 300), " m"),
    joined(sets, "(", st.lists(whole(1, 30), min_size=2, max_size=8).map("+".join), ")/",
           st.one_of(whole(1, 60), seconds(1, 59))),
    joined("(2+2+2)/20 x", whole(1, 50)),
    joined(sets, "strip ", whole(2, 6), " loads, -", percent(5, 50), " to ", whole(4, 200),
           " reps, within ", seconds(10, 600)),
    joined(seconds(1, 2400), " AMRAP pace ", whole(1, 60), "/min shared by ", whole(1, 4)),
    joined(whole(1, 9), "xAMRAP floor ", whole(1, 99), " cap 120"),
    joined("@ ", load), joined("@", load), joined("tempo ", tempo), tempo,
    joined(st.sampled_from(["RIR ", "@ RIR ", "rir"]), whole(0, 9) | rising(whole(0, 9))),
    joined("RPE ", whole(1, 10) | rising(efforts)), joined("rest ", seconds(0, 1800)),
    joined("every ", seconds(1, 1800)), st.sampled_from(["ES", "each side", "intent slow"]),
    st.sampled_from(["ramp to 5RM", "top 3RM", "top none", "ramp to 3 @ RPE 8.5"]),
    st.sampled_from(["test 3RM in 4 attempts", "test 1RM"]),
    joined("cap ", whole(1, 200)), joined("TM ", percent(70, 100)),
    joined("bands ", share, " at top"), joined("bands ", band, " and ", band),
    joined("chains ", whole(1, 6), " pairs"), joined("help band ", band),
    joined("team ", whole(2, 12), " x ", mass, " turn every ", seconds(10, 1800)),
    joined("box ", whole(5, 150), " cm"), joined("setting ", word, " ", word),
    joined("deload of week ", whole(1, 60), " sets ", percent(10, 150)),
    joined("last set 5+, cap ", whole(5, 100), ", RIR ", whole(0, 5)),
    joined("at ", plain_words, ","), joined("push at ", plain_words, " ramp 2 s,"),
    joined("pause 2 s at ", plain_words, ","), joined("help by ", plain_words, ","),
    joined("breathe ", plain_words, ","), joined("range ", plain_words, ";"),
    joined("return by ", plain_words, ";"),
    joined("sets ", count(50)), joined("reps ", count(200)), joined("hold ", seconds(1, 2400)),
    joined("time ", seconds(1, 2400)), joined("distance ", whole(4, 300), " m"),
)  # fmt: skip
lines = st.lists(clauses, min_size=1, max_size=4).map(", ".join)


@given(lines)
def test_a_line_means_the_same_after_it_was_printed(line: str) -> None:
    assume(len(line) < 150)  # printed it may be a little longer
    try:
        part = part_of(line)
    except (NotationError, ValueError):  # said twice, too long, or two kinds of work
        assume(False)  # noqa: FBT003
    assert part_of(dose_line(part)) == part
