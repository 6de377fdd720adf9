"""Answers that are kept while one handbook is worked on."""

from strength_handbook.plan.remembered import forget_handbook, remembered


def test_an_answer_is_worked_out_once_until_all_are_forgotten() -> None:
    asked: list[int] = []

    @remembered(2)
    def double(number: int) -> int:
        """Twice as much."""
        asked.append(number)
        return 2 * number

    assert [double(3), double(3), double(4)] == [6, 6, 8]
    assert asked == [3, 4]
    forget_handbook()
    assert double(3) == 6
    assert asked == [3, 4, 3]
    # It stays the function that it was for whoever reads about it.
    assert (double.__name__, double.__doc__) == ("double", "Twice as much.")


def test_of_more_answers_than_are_kept_the_oldest_goes() -> None:
    asked: list[int] = []

    @remembered(1)
    def same(number: int) -> int:
        asked.append(number)
        return number

    assert [same(1), same(2), same(1)] == [1, 2, 1]
    assert asked == [1, 2, 1]
