"""What runs undisturbed leaves the search for garbage as it found it."""

import gc

import pytest

from strength_handbook.publish.collect_later import collect_later


@collect_later
def enabled_inside(fail: str = "") -> bool:
    """Whether garbage is searched for at the moment."""
    if fail:
        raise ValueError(fail)
    return gc.isenabled()


def test_it_is_off_inside_and_on_again_after() -> None:
    assert not enabled_inside()
    assert gc.isenabled()


def test_it_is_on_again_after_an_error() -> None:
    with pytest.raises(ValueError, match="stop"):
        enabled_inside("stop")
    assert gc.isenabled()


def test_who_has_it_off_keeps_it_off() -> None:
    gc.disable()
    try:
        assert not enabled_inside()
        assert not gc.isenabled()
    finally:
        gc.enable()
