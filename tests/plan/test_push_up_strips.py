"""What the body counts beside the plates on a back, where loads of a push-up are taken off."""

import pytest

from strength_handbook.model.loading import PushUp
from strength_handbook.plan.strips import counts_beside


def test_hands_on_the_floor_unless_a_height_is_written() -> None:
    """A plate on the shoulder blades counts 81 % of its mass, so the body that moves 1 / 0.81.

    1.26 times the 64.1 % of the body that hands on the floor bear: statics with the masses of de
    Leva 1996 (J Biomech 29:1223–1230), and Ebben 2011 (J Strength Cond Res 25:2891–2894).
    """
    floor = PushUp.model_validate({"kind": "push-up", "plate-limit": "20 kg"})
    assert counts_beside(floor) == pytest.approx(100 / (1.26 * 0.641), rel=0.005)
    assert counts_beside(floor) == counts_beside(floor, 0.0)
