"""Kit and body meet as they do in a room."""

import pytest

from strength_handbook.figures.checks import impossible
from strength_handbook.figures.kit_checks import out_of_place
from strength_handbook.figures.sheet import moments
from strength_handbook.model.figure import Figure, Pose


def slugs(**keys: object) -> list[tuple[int, str]]:
    figure = Figure.model_validate(keys)
    return [(number, wrong.slug) for number, wrong in out_of_place(figure, moments(figure))]


STAND = {"pose": "standing"}


@pytest.mark.parametrize(("at", "found"), [(-40, []), (0, [(0, "inside-thing")])])
def test_feet_beside_a_box_and_in_it(at: int, found: list[tuple[int, str]]) -> None:
    box = {"thing": "box", "height": "40 cm", "at": at}
    assert slugs(things=[box], start=STAND, turn={"pose": "standing", "ahead": "60 cm"}) == found


@pytest.mark.parametrize(("at", "found"), [(-6, [(1, "inside-thing")]), (-24, [])])
def test_the_shin_of_the_far_leg_that_cuts_a_corner_is_found(
    at: int, found: list[tuple[int, str]]
) -> None:
    # Knee and toe are beside the box, and the shin between them goes through its upper corner.
    turn = {"pose": "split-stance", "ground": "20 cm", "knee": 92, "ankle": 64, "lean": 30,
            "far-knee": 178, "far-heel": -20, "far-foot": "0 cm"}  # fmt: skip
    box = {"thing": "box", "height": "20 cm", "width": "45 cm", "at": at}
    start = {"pose": "standing", "ground": "20 cm"}
    assert slugs(things=[box], start=start, turn=turn) == found


@pytest.mark.parametrize(("lean", "found"), [(60, []), (100, ["under-floor"])])
def test_a_trunk_whose_outline_is_under_the_floor_is_found(lean: int, found: list[str]) -> None:
    # Hip and shoulder are both above the floor, and the chest between them is not.
    keys = {"pose": "seated", "ground": "5 cm", "lean": lean, "hip": 60, "knee": 170}
    figure = Figure(start=Pose.model_validate(keys), turn=Pose.model_validate(keys))
    one = moments(figure)[0]
    assert min(one.points[name][1] for name in ("hip", "shoulder")) > 0.03
    told = [wrong for wrong in impossible(figure, one) if wrong.text.startswith("the back is")]
    assert [wrong.slug for wrong in told] == found


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


@pytest.mark.parametrize(
    ("thing", "lean", "found"),
    [("chest-rest", 48, []), ("chest-rest", 5, [(0, "off-pad")]),
     ("adjustable-bench", -60, []), ("adjustable-bench", 20, [(0, "off-pad")])],
)  # fmt: skip
def test_a_trunk_leans_as_its_pad_does(thing: str, lean: int, found: list[object]) -> None:
    keys = {"pose": "seated", "ground": "45 cm", "lean": lean, "knee": 90, "hip": 120}
    assert slugs(things=[{"thing": thing}], start=keys, turn=keys) == found


def test_a_pad_does_not_come_along_with_a_trunk() -> None:
    start, turn = (
        {"pose": "hinge", "knee": 160, "hip": 160, "heel": 35, "lean": lean} for lean in (48, 58)
    )
    assert slugs(things=[{"thing": "chest-rest"}], start=start, turn=turn) == [(1, "off-pad")]


HANGS_BACK = {"pose": "standing", "knee": 178, "hip": 178, "ankle": 130}
ANCHOR = {"thing": "anchor", "height": "215 cm", "at": 45}


@pytest.mark.parametrize(("at", "found"), [(-4, []), (10, [(1, "strap-length")])])
def test_straps_keep_their_length(at: int, found: list[object]) -> None:
    # By Pythagoras: 83 cm ahead and 64 up at the start is 105 long; 49 and 93 as well.
    start = {**HANGS_BACK, "hands": "151 cm", "hands-at": -38}
    turn = {**HANGS_BACK, "ankle": 97, "hands": "122 cm", "hands-at": at}
    assert slugs(holds="strap", things=[ANCHOR], start=start, turn=turn) == found


@pytest.mark.parametrize("holds", ["cable", "strap", "rope", "pivot-bar"])
def test_a_line_that_leads_nowhere_is_found(holds: str) -> None:
    assert slugs(holds=holds, start=STAND, turn=STAND) == [(0, "line-without-end")]
