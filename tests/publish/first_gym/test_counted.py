"""Bars and plates in one line: as people write it, or with what to write instead."""

from collections.abc import Callable
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from strength_handbook.publish.first_gym.counted import BARS, PLATES, Counted, plain, read_counted

Plates = list[tuple[Decimal, int]]


def spelled(line: str, unit: str = "kg") -> str:
    """What was read, one way; what is wrong, where something is."""
    found, wrong = read_counted(line, unit, PLATES)
    assert bool(found) != bool(wrong)
    return "; ".join(wrong) or " ".join(
        f"{one.number}x{one.label}".replace(" ", "") for one in found
    )


@pytest.mark.parametrize(
    ("line", "meant"),
    [
        ("2x20, 4x10, 2x5", "2x20kg 4x10kg 2x5kg"),
        ("2x20,4x10,2x5", "2x20kg 4x10kg 2x5kg"),
        ("2x20 4x10 2x5", "2x20kg 4x10kg 2x5kg"),
        ("20x2, 10x4, 5x2", "2x20kg 4x10kg 2x5kg"),
        ("20 kg x 2; 10 kg x 4", "2x20kg 4x10kg"),
        ("2 × 2,5 and 2 × 1,25", "2x2.5kg 2x1.25kg"),
        ("four 20s and a pair of 10s", "4x20kg 2x10kg"),
        ("2 pairs of 20 kg plates, 1 pair 10", "4x20kg 2x10kg"),
        ("1x20, 2x10 a side", "2x20kg 4x10kg"),
        ("25, 20, 15, 10, 5, 2.5, 1.25", "2x25kg 2x20kg 2x15kg 2x10kg 2x5kg 2x2.5kg 2x1.25kg"),
        ("10x2", "2x10kg"),
        ("4 x 45 lb, 2x20 kg", "4x45lb 2x20kg"),
        ("2 x 12 kg", "2x12kg"),
        ("20, 10, 5, two of each", "2x20kg 2x10kg 2x5kg"),
        ("20, 10, 2 pairs of each", "4x20kg 4x10kg"),
    ],
)
def test_lines_in_kilograms(line: str, meant: str) -> None:
    assert spelled(line) == meant


@pytest.mark.parametrize(
    ("line", "meant"),
    [
        ("45/35/25/10/5/2.5 lb", "2x45lb 2x35lb 2x25lb 2x10lb 2x5lb 2x2.5lb"),
        ("45 lbs x 4, 10 x 2", "4x45lb 2x10lb"),
        ("six 45s, 2 pairs of 10s", "6x45lb 4x10lb"),
        ("45# x 2", "2x45lb"),
        ("45, 10: 2 pairs", "2x45lb 4x10lb"),
    ],
)
def test_lines_in_pounds(line: str, meant: str) -> None:
    assert spelled(line, "lb") == meant


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("3x10", "'3x10': a bar takes plates two by two; write '2 x 10 kg' or '4 x 10 kg'"),
        ("2x12", "12 kg is no usual plate; if it is right, write '2 x 12 kg'"),
        ("4x20, 4x20", "20 kg stands twice, in '4x20' and '4x20'; write it once"),
        ("2x20 foo", "can't read 'foo' in '2x20 foo'; write it like '4 x 20 kg, 2 x 10 kg'"),
        ("100x20", "'100x20': from 1 to 40 of a mass, not 100"),
        ("20 kg x 10 kg", "can't tell what '20 kg x 10 kg' counts; write it like"),
        ("0x20", "from 1 to 40 of a mass, not 0"),
        ("pairs", "'pairs' says no mass"),
        ("20, 4 each", "'4 each' says no mass"),
        ("two of each", "'two of each' says no mass"),
        ("20, 10, three of each", "a bar takes plates two by two"),
        (" ", "write how many of which, such as '4 x 20 kg, 2 x 10 kg'"),
        ("10x20", "'10x20' may mean '10 x 20 kg' or '20 x 10 kg'; write one"),
    ],
)
def test_what_cannot_be_read_says_what_to_write(line: str, says: str) -> None:
    assert says in spelled(line)


def test_everything_wrong_is_told_at_once() -> None:
    assert len(read_counted("3x10, 2x12, 2x20 foo", "kg", PLATES)[1]) == 1
    assert len(read_counted("3x10, 2x12, 7x25", "kg", PLATES)[1]) == 3


def test_bars_may_have_a_name() -> None:
    found, wrong = read_counted("two 20 kg bars, trap bar 25", "kg", BARS)
    assert wrong == ()
    assert [(one.number, one.label, one.name) for one in found] == [
        (2, "20 kg", ""),
        (1, "25 kg", "trap"),
    ]


USUAL = {
    unit: st.lists(
        st.tuples(
            st.sampled_from([Decimal(size) for size in sizes]),
            st.integers(1, 4).map(lambda pairs: 2 * pairs),
        ),
        min_size=1, max_size=8, unique_by=lambda one: one[0],
    )
    for unit, sizes in PLATES.sizes.items()
}  # fmt: skip
ONES: list[Callable[[str, int, str], str]] = [
    lambda mass, number, unit: f"{number} x {mass} {unit}",
    lambda mass, number, unit: f"{number}x{mass}{unit}",
    lambda mass, number, unit: f"{mass} {unit} × {number}",
    lambda mass, number, unit: f"{mass}{unit}s x{number}",
    lambda mass, number, unit: f"{number // 2} pairs of {mass} {unit} plates",
    lambda mass, number, unit: f"{mass} {unit}: {number // 2} pairs",
]


@given(st.data(), st.sampled_from(["kg", "lb"]), st.sampled_from([", ", "; ", ",", " and ", "\n"]))
def test_every_spelling_with_units_is_read_back(data: st.DataObject, unit: str, cut: str) -> None:
    plates: Plates = data.draw(USUAL[unit])
    spell = [data.draw(st.sampled_from(ONES)) for _ in plates]
    line = cut.join(
        write(plain(mass), number, unit)
        for (mass, number), write in zip(plates, spell, strict=True)
    )
    found, wrong = read_counted(line, data.draw(st.sampled_from(["kg", "lb"])), PLATES)
    assert wrong == ()
    assert found == tuple(Counted(mass, unit, number) for mass, number in plates)


@given(st.data(), st.sampled_from(["kg", "lb"]), st.booleans())
def test_without_units_nothing_else_is_ever_read(
    data: st.DataObject,
    unit: str,
    mass_first: bool,  # noqa: FBT001  # drawn
) -> None:
    """A bare line is read as it was meant, or refused; never as other plates."""
    plates: Plates = data.draw(USUAL[unit])
    line = ", ".join(
        f"{plain(mass)}x{number}" if mass_first else f"{number}x{plain(mass)}"
        for mass, number in plates
    )
    found, wrong = read_counted(line, unit, PLATES)
    assert wrong or found == tuple(Counted(mass, unit, number) for mass, number in plates)


@given(st.text(alphabet="0123456789x×, ./;kglbpairsof#-½\n", max_size=60) | st.text(max_size=40))
def test_any_text_is_read_or_refused_in_words(line: str) -> None:
    for sort in (PLATES, BARS):
        found, wrong = read_counted(line, "kg", sort)
        assert bool(found) != bool(wrong)
        assert all(0 < one.number <= sort.most and one.mass > 0 for one in found)
        assert not sort.paired or all(one.number % 2 == 0 for one in found)
