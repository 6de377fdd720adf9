"""Every check: where it fires, where it just does not, and with another threshold.

The cases stand in `cases/`, one file for each check. A case that fires is also mended with the
change that the finding itself offers.
"""

from pathlib import Path

import pytest

import desks
from strength_handbook.checked import Checked
from strength_handbook.model.house_rules import RULES
from strength_handbook.model.thresholds import THRESHOLDS
from strength_handbook.reading.problem import Severity
from strength_handbook.review.catalogue import CHECKS

CASES = desks.read_cases()
FIRING = [case for case in CASES if not case.silent]


def name(case: desks.Case) -> str:
    same = [one for one in CASES if (one.slug, one.kind) == (case.slug, case.kind)]
    return f"{case.slug}-{case.kind}-{same.index(case)}"


def errors(checked: Checked) -> set[tuple[str, str]]:
    return {
        (problem.slug, problem.text.partition(". Smallest change")[0])
        for problem in checked.problems
        if problem.severity is Severity.ERROR
    }


def test_the_base_is_clean(tmp_path: Path) -> None:
    assert desks.check(desks.edited({}), tmp_path).problems == ()


@pytest.mark.parametrize("slug", CHECKS)
def test_every_check_has_its_three_kinds_of_case(slug: str) -> None:
    kinds = {case.kind for case in CASES if case.slug == slug}
    assert {"fires", "just-not"} <= kinds
    assert ("threshold" in kinds) == bool(CHECKS[slug].rules)


@pytest.mark.parametrize("case", CASES, ids=name)
def test_it_fires_where_it_should_and_only_there(case: desks.Case, tmp_path: Path) -> None:
    checked = desks.check(desks.edited(case.edits, case.rules), tmp_path, case.today)
    assert checked.desk is not None, checked.problems
    found = desks.findings(checked, case.slug)
    if case.silent:
        assert [finding.text for finding in found] == []
        return
    fitting = [finding for finding in found if finding.at.text == case.at]
    assert fitting, [(finding.at.text, finding.text) for finding in found]
    finding = fitting[0]
    assert case.says in finding.text
    if case.severity:
        assert finding.severity == case.severity
    if case.spot:
        file, path = case.spot.split(" ")
        assert finding.spot.source.file == f"{desks.SHOWN}/{file}"
        assert ".".join(map(str, finding.spot.path)) == path
    others = {(slug, text) for slug, text in errors(checked) if slug != case.slug}
    assert others == set()


@pytest.mark.parametrize("case", FIRING, ids=name)
def test_the_smallest_change_clears_it(case: desks.Case, tmp_path: Path) -> None:
    files = desks.edited(case.edits, case.rules)
    checked = desks.check(files, tmp_path / "before", case.today)
    finding = next(f for f in desks.findings(checked, case.slug) if f.at.text == case.at)
    if not finding.edits:
        return
    mended = desks.with_changes(files, checked, finding.edits)
    after = desks.check(mended, tmp_path / "after", case.today)
    assert after.desk is not None, after.problems
    # Weeks may be taken out of a finding that stood for several.
    left = [f.text for f in desks.findings(after, case.slug) if f.at.what == finding.at.what]
    assert left == []
    assert errors(after) <= errors(checked)


@pytest.mark.parametrize("slug", CHECKS)
def test_what_stands_beside_a_check_is_complete(slug: str) -> None:
    one = CHECKS[slug]
    assert set(one.rules) <= set(RULES)
    for text in (one.what, one.why):
        assert text[0].isupper()
        assert text.endswith(".")
    assert one.source


def test_every_threshold_is_read_by_a_check() -> None:
    read = {rule for one in CHECKS.values() for rule in one.rules}
    assert set(THRESHOLDS) - read == set()
