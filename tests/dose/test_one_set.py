"""The seconds of a set are its terms together, whatever the set."""

from typing import Any

import pytest

from dose_examples import EXAMPLES, dose_of
from strength_handbook.dose.key import Because, Key
from strength_handbook.dose.one_set import SIDE_CHANGE_S, one_set
from strength_handbook.dose.share import Lasting, Pace, Paced, Term, Times, Walk
from strength_handbook.dose.table import KEYS
from strength_handbook.model.house_rules import RULES
from strength_handbook.model.span import ends


def rule(slug: str) -> float:
    return RULES[slug].default


def seconds_of(term: Term) -> float:
    match term:
        case Times(count, each):
            return count * each
        case Lasting(seconds):
            return seconds
        case Walk(metres, speed):
            return metres / speed
        case Paced(metres, going):
            return metres / going.per_m * (sum(ends(going.pace)) / 2)


@pytest.mark.parametrize("one", EXAMPLES, ids=lambda one: str(one["line"]))
def test_the_terms_make_the_seconds(one: dict[str, Any]) -> None:
    dose = dose_of(one)
    found = one_set(rule, dose)
    side = sum(map(seconds_of, found.terms))
    whole = 2 * side + SIDE_CHANGE_S if dose.each_side else side
    assert found.terms
    assert found.seconds == pytest.approx(whole)
    asked: set[str] = set()

    def asking(slug: str) -> float:
        asked.add(slug)
        return rule(slug)

    one_set(asking, dose)
    # Of a repetition with a tempo nothing is asked.
    assert found.rules <= asked <= found.rules | {"seconds-per-rep"}


@pytest.mark.parametrize(
    "key",
    [key for key in KEYS if not isinstance(key.use.one_set, Because)],
    ids=lambda key: key.field,
)
def test_what_a_key_adds_is_seen_in_some_example(key: Key[Any]) -> None:
    assert not isinstance(key.use.one_set, Because)
    doses = [dose for one in EXAMPLES if key.value((dose := dose_of(one)).part) is not None]
    shares = [key.use.one_set(key.value(dose.part), Pace(dose, 3.0, rule)) for dose in doses]
    assert any(share.seconds > 0 or share.reps > 0 for share in shares)
