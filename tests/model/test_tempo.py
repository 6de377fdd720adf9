"""Tempo in four fields: lower, pause, lift, pause."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from strength_handbook.model.tempo import LONGEST_S, Tempo

SECONDS = st.integers(0, LONGEST_S)


@given(SECONDS, SECONDS, SECONDS | st.none(), SECONDS, st.sampled_from("-–/"))
def test_a_tempo_is_read_as_it_is_written(
    lower: int, low_pause: int, lift: int | None, high_pause: int, hyphen: str
) -> None:
    tempo = Tempo(lower, low_pause, lift, high_pause)
    assert Tempo.parse(tempo.text.replace("-", hyphen)) == tempo
    assert Tempo.parse(tempo.text.lower()) == tempo
    assert tempo.fast == (lift is None)
    assert tempo.longest_pause == max(low_pause, high_pause)


def test_the_order_is_lower_pause_lift_pause() -> None:
    assert Tempo.parse("4-1-X-0") == Tempo(lower=4, low_pause=1, lift=None, high_pause=0)
    assert Tempo.parse(" 2 - 0 - 1 - 3 ") == Tempo(2, 0, 1, 3)


@pytest.mark.parametrize(
    ("text", "part"),
    [
        ("3-1-X", "needs four fields"),
        ("3-1-X-0-1", "needs four fields"),
        ("", "needs four fields"),
        ("310", "needs four fields"),
        ("31X0", "needs hyphens: write '3-1-X-0'"),
        ("3010", "needs hyphens: write '3-0-1-0'"),
        ("X-1-3-0", "X (as fast as possible) stands only in the third field"),
        ("3-x-1-0", "X (as fast as possible) stands only in the third field"),
        ("3-1-1-X", "X (as fast as possible) stands only in the third field"),
        ("slow-1-X-0", "'slow' is not a number of whole seconds"),
        ("3-1-X-", "'' is not a number of whole seconds"),
        ("1.5-0-1-0", "'1.5' is not a number of whole seconds"),
        ("31-0-1-0", "31 s is too long; the most is 30 s"),
        ("3-0-999-0", "999 s is too long; the most is 30 s"),
        ("9999-0-1-0", "'9999' is not a number of whole seconds"),
    ],
)
def test_a_refusal_names_the_tempo_and_what_is_wrong(text: str, part: str) -> None:
    with pytest.raises(ValueError, match="tempo") as caught:
        Tempo.parse(text)
    assert str(caught.value).startswith(f"tempo '{text}'")
    assert part in str(caught.value)


@given(st.text(max_size=12))
def test_any_text_is_read_or_refused(text: str) -> None:
    try:
        tempo = Tempo.parse(text)
    except ValueError:
        return
    assert Tempo.parse(tempo.text) == tempo
