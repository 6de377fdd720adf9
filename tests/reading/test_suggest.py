import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from strength_handbook.model.shape import quoted
from strength_handbook.reading.suggest import did_you_mean, one_of

KEYS = ["sets", "reps", "rest", "tempo", "load", "rir"]


@pytest.mark.parametrize(
    ("word", "meant"),
    [
        ("rep", "reps"),
        ("Reps", "reps"),
        ("TEMPO", "tempo"),
        ("laod", "load"),
        ("sest", "sets"),
        ("rset", "rest"),
    ],
)
def test_a_slip_finds_its_word(word: str, meant: str) -> None:
    assert did_you_mean(word, KEYS) == f"; did you mean '{meant}'?"


def test_the_option_is_shown_in_its_own_spelling() -> None:
    assert did_you_mean("rir", ["RIR", "RPE"]) == "; did you mean 'RIR'?"


@pytest.mark.parametrize("word", ["colour", "", "x", "§"])
def test_nothing_similar_gives_nothing(word: str) -> None:
    assert did_you_mean(word, KEYS) == ""


def test_a_right_word_needs_no_suggestion() -> None:
    assert did_you_mean("reps", ["Reps", "reps"]) == ""


def test_no_options_give_nothing() -> None:
    assert did_you_mean("reps", []) == ""


def test_the_word_is_found_among_thousands() -> None:
    many = [f"exercise-{number}" for number in range(2000)] + ["goblet-squat"]
    assert did_you_mean("goblet-sqaut", many) == "; did you mean 'goblet-squat'?"


def test_of_two_spellings_the_choice_is_always_the_same() -> None:
    assert did_you_mean("repz", ["REPS", "reps"]) == did_you_mean("repz", ["reps", "REPS"])


@given(st.text("aAbB"), st.sets(st.text("aAbB")))
@settings(deadline=None)
def test_the_suggestion_does_not_depend_on_order(word: str, options: set[str]) -> None:
    listed = sorted(options)
    assert did_you_mean(word, listed) == did_you_mean(word, reversed(listed))


@given(st.text(), st.lists(st.text()))
@settings(deadline=None)
def test_a_suggestion_stays_on_one_line(word: str, options: list[str]) -> None:
    assert len(did_you_mean(word, options).splitlines()) <= 1


@pytest.mark.parametrize(
    ("options", "words"),
    [
        ([], ""),
        (["kg"], "'kg'"),
        (["kg", "lb"], "'kg' or 'lb'"),
        (["monday", "friday", "sunday"], "'monday', 'friday' or 'sunday'"),
        (list("abcdefgh"), "'a', 'b', 'c', 'd', 'e', 'f', 'g' or 'h'"),
        (list("abcdefghi"), "'a', 'b', 'c', 'd', 'e', 'f', 'g', 'h' … (9 in all)"),
    ],
)
def test_options_are_listed_in_their_order(options: list[str], words: str) -> None:
    assert one_of(options) == words


def test_the_limit_can_be_set() -> None:
    assert one_of(["a", "b", "c"], limit=2) == "'a', 'b' … (3 in all)"
    assert one_of(list("abcdefghi"), limit=9).endswith("'h' or 'i'")


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("reps", "'reps'"),
        ("", "''"),
        ("two\nlines", "'two lines'"),
        ("x" * 60, "'" + "x" * 60 + "'"),
        ("x" * 61, "'" + "x" * 60 + "…'"),
    ],
)
def test_a_quoted_text_is_one_short_line(text: str, shown: str) -> None:
    assert quoted(text) == shown
