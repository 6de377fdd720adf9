import random

from hypothesis import given, settings
from hypothesis import strategies as st

from strength_handbook.reading.problem import Problem, Severity, sorted_problems

PROBLEMS = st.builds(
    Problem,
    file=st.sampled_from(["a.yml", "b.yml"]),
    line=st.integers(1, 12),
    column=st.integers(1, 3),
    slug=st.sampled_from(["tab", "tag"]),
    text=st.sampled_from(["one", "two"]),
    severity=st.sampled_from(Severity),
)


def test_a_problem_reads_as_file_line_column_kind_and_words() -> None:
    words = "unknown key 'rep'; did you mean 'reps'?"
    problem = Problem("programs/a.yml", 14, 9, "unknown-key", words)
    assert str(problem) == (
        "programs/a.yml:14:9: error unknown-key: unknown key 'rep'; did you mean 'reps'?"
    )


def test_the_severity_is_part_of_the_line() -> None:
    lines = [str(Problem("a.yml", 1, 1, "x", "y", severity)) for severity in Severity]
    assert lines == ["a.yml:1:1: error x: y", "a.yml:1:1: warn x: y", "a.yml:1:1: note x: y"]


def test_lines_are_sorted_as_numbers_and_files_as_text() -> None:
    places = [("b.yml", 1, 1), ("a.yml", 10, 1), ("a.yml", 9, 20), ("a.yml", 9, 3)]
    ordered = sorted_problems(Problem(*place, "x", "y") for place in places)
    assert [(p.file, p.line, p.column) for p in ordered] == sorted(places)


def test_at_one_place_kind_and_words_decide() -> None:
    first = Problem("a.yml", 1, 1, "alias", "z")
    second = Problem("a.yml", 1, 1, "tag", "a")
    third = Problem("a.yml", 1, 1, "tag", "b")
    assert sorted_problems([third, second, first]) == [first, second, third]


def test_only_exact_duplicates_are_dropped() -> None:
    error = Problem("a.yml", 1, 1, "x", "y")
    note = Problem("a.yml", 1, 1, "x", "y", Severity.NOTE)
    assert sorted_problems([note, error, error]) == [error, note]


@given(st.lists(PROBLEMS), st.randoms(use_true_random=False))
@settings(deadline=None)
def test_the_order_found_does_not_matter(problems: list[Problem], shuffler: random.Random) -> None:
    shuffled = problems.copy()
    shuffler.shuffle(shuffled)
    assert sorted_problems(shuffled) == sorted_problems(problems)
    assert set(sorted_problems(problems)) == set(problems)
