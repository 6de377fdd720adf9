"""Every check: where it fires, where it just does not, and with another threshold.

The cases stand in `cases/`, one file for each check. A case that fires is also mended with the
change that the finding itself offers.
"""

from pathlib import Path
from typing import Any

import pytest
import yaml

import desks
from strength_handbook.checked import Checked
from strength_handbook.model.dose_part import DosePart
from strength_handbook.model.house_rules import RULES
from strength_handbook.model.thresholds import THRESHOLDS
from strength_handbook.reading.long_form import stored
from strength_handbook.reading.notation import read_house
from strength_handbook.reading.problem import Severity
from strength_handbook.review import catalogue
from strength_handbook.review.catalogue import CHECKS
from strength_handbook.review.check import Family
from strength_handbook.review.checks.load import strips
from strength_handbook.review.finding import Finding
from strength_handbook.review.typed import typed_lines
from told import TOLD, case_name, told

CASES = desks.read_cases()
FIRING = [case for case in CASES if not case.silent]
BY_HAND = {
    case: group["reason"]
    for group in yaml.safe_load((Path(__file__).parent / "by_hand.yml").read_text("utf-8"))
    for case in group["cases"]
}
"""Firing cases whose finding offers words alone, and why."""


TOLD_BEFORE = yaml.safe_load(TOLD.read_text("utf-8"))


def name(case: desks.Case) -> str:
    return case_name(case, CASES)


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
def test_it_fires_where_it_should_only_there_and_its_change_clears_it(
    case: desks.Case, tmp_path: Path
) -> None:
    files = desks.edited(case.edits, case.rules)
    checked = desks.check(files, tmp_path / "before", case.today)
    assert checked.desk is not None, checked.problems
    found = desks.findings(checked, case.slug)
    if case.silent:
        assert [finding.text for finding in found] == []
        return
    fitting = [finding for finding in found if finding.at.text == case.at]
    assert fitting, [(finding.at.text, finding.text) for finding in found]
    finding = fitting[0]
    told_as_asked(case, finding)
    assert told(found) == TOLD_BEFORE.get(name(case)), "see tell_again.py"
    others = {(slug, text) for slug, text in errors(checked) if slug != case.slug}
    assert others == set()
    if name(case) in BY_HAND:
        assert finding.change is not None
        assert finding.change.words
        assert finding.edits == (), "it offers edits: take it out of by_hand.yml"
        return
    assert finding.edits, "it offers no edit: say why in by_hand.yml"
    mended = desks.with_changes(files, checked, finding.edits)
    typed_as_changed(finding, mended)
    after = desks.check(mended, tmp_path / "after", case.today)
    assert after.desk is not None, after.problems
    # Weeks may be taken out of a finding that stood for several.
    left = [f.text for f in desks.findings(after, case.slug) if f.at.what == finding.at.what]
    assert left == []
    assert errors(after) <= errors(checked)


def typed_as_changed(finding: Finding, mended: desks.Files) -> None:
    """The lines to type say what the change would write."""
    name_ = finding.spot.source.file.removeprefix(f"{desks.SHOWN}/")
    weeks = list(dict.fromkeys(edit.path[:6] for edit in finding.edits))
    for path, line in zip(weeks, typed_lines(finding), strict=False):
        number, _, text = line.partition(": ")
        if number != str(path[-1]) or text.startswith("{"):
            continue  # that many more, or a dose in its long form
        written: Any = mended[name_]
        for key in path:
            written = written[key]
        part = DosePart.model_validate(stored(read_house(text)))
        assert part == DosePart.model_validate(written), line


def told_as_asked(case: desks.Case, finding: Finding) -> None:
    """The finding has the words, the severity and the place that the case names."""
    assert case.says in finding.text
    if case.severity:
        assert finding.severity == case.severity
    if case.spot:
        file, path = case.spot.split(" ")
        assert finding.spot.source.file == f"{desks.SHOWN}/{file}"
        assert ".".join(map(str, finding.spot.path)) == path


def test_every_case_by_hand_and_every_case_told_is_a_case() -> None:
    assert set(BY_HAND) <= set(TOLD_BEFORE) == {name(case) for case in FIRING}


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


def test_findings_come_by_family_then_by_place(tmp_path: Path) -> None:
    """A side too many stands below a light set in its file, and is said first."""
    weeks = {
        "sessions.b-squat.slots.1.weeks.3": "3x2 @ 72.5 %, tempo 3-0-1-0, RIR 2",
        "sessions.b-squat.slots.2.weeks.3": "3x8 ES, tempo 4-0-1-0, RIR 2",
    }
    checked = desks.check(desks.edited({"brook/1-slow.yml": weeks}), tmp_path)
    slugs = [one.slug for one in checked.findings]
    assert slugs.index("side-doubled") < slugs.index("reps-few")
    families = [list(Family).index(CHECKS[slug].family) for slug in slugs]
    assert families == sorted(families)


@pytest.mark.parametrize("slug", CHECKS)
def test_the_house_rules_of_a_check_are_named_where_it_is_explained(slug: str) -> None:
    text, rules = catalogue.EXPLAINED[slug].what, CHECKS[slug].rules
    assert ("House rules:" in text) == bool(rules)
    assert all(rule in text for rule in rules)


def test_shares_to_offer_for_strips_are_whole_fives_the_usual_first() -> None:
    assert all(share % 5 == 0 for share in strips.SHARES)
    assert len(set(strips.SHARES)) == len(strips.SHARES)
    assert strips.SHARES[0] == 20
