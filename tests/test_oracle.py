"""A missing oracle is told: a skip with its reason, and where it must be there a failure."""

import pytest

from oracle import oracle

MISSING = "strength_handbook_has_no_such_oracle"


def test_it_is_skipped_with_the_line_that_helps(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("STRENGTH_HANDBOOK_ORACLES", raising=False)
    told = rf"no {MISSING}: pip install -e '\.\[oracles\]'"
    with pytest.raises(pytest.skip.Exception, match=told):
        oracle(f"{MISSING}.solvers")


def test_where_it_is_required_it_fails(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("STRENGTH_HANDBOOK_ORACLES", "required")
    with pytest.raises(pytest.fail.Exception, match=f"no {MISSING}"):
        oracle(MISSING)


def test_one_that_is_there_is_the_module() -> None:
    assert oracle("json.decoder").__name__ == "json.decoder"
