"""Kit and body meet as they do in a room."""

import pytest

from strength_handbook.figures.kit_checks import out_of_place
from strength_handbook.figures.sheet import moments
from strength_handbook.model.figure import Figure


def slugs(**keys: object) -> list[tuple[int, str]]:
    figure = Figure.model_validate(keys)
    return [(number, wrong.slug) for number, wrong in out_of_place(figure, moments(figure))]


STAND = {"pose": "standing"}


@pytest.mark.parametrize(("at", "found"), [(-40, []), (0, [(0, "inside-thing")])])
def test_feet_beside_a_box_and_in_it(at: int, found: list[tuple[int, str]]) -> None:
    box = {"thing": "box", "height": "40 cm", "at": at}
    assert slugs(things=[box], start=STAND, turn={"pose": "standing", "ahead": "60 cm"}) == found


@pytest.mark.parametrize(("hands", "met"), [(50, "met"), (51, "met"), (47, "not"), (53, "not")])
def test_a_push_touches_a_pin_from_below(hands: int, met: str) -> None:
    # Half a bar and half a pin are 5.1 cm as drawn, and the sleeve is 10 cm below the hands.
    turn = {"pose": "hinge", "knee": 125, "hands": f"{hands} cm", "hands-at": 8}
    pins = [{"thing": "pins", "height": "45 cm"}]
    found = slugs(holds="empty-trap-bar", moves="push", things=pins, start=turn, turn=turn)
    assert found == ([] if met == "met" else [(1, "pins-not-met")])


@pytest.mark.parametrize(("knee", "found"), [(110, []), (125, [(1, "heels-slide")])])
def test_heels_stay_on_their_place(knee: int, found: list[tuple[int, str]]) -> None:
    start = {"pose": "on-back", "knee": 100, "ankle": 95, "feet": "30 cm"}
    turn = {"pose": "bridge", "knee": knee, "ankle": 95, "feet": "30 cm"}
    assert slugs(start=start, turn=turn) == found
