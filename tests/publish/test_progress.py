"""The line that says what a long command is doing."""

from io import StringIO

from strength_handbook.publish.progress import told


class Terminal(StringIO):
    """A stream with a person before it."""

    def isatty(self) -> bool:
        return True


def shown(text: str) -> str:
    """What stands on a terminal's line in the end: a return begins it anew, and writes over it."""
    line: list[str] = []
    for part in text.split("\r"):
        line[: len(part)] = part
    return "".join(line).rstrip()


def test_a_pipe_gets_nothing() -> None:
    pipe = StringIO()
    with told(pipe) as tell:
        tell("reading room.yml")
    assert pipe.getvalue() == ""


def test_a_terminal_is_told_what_is_done_and_is_clean_afterwards() -> None:
    screen, seconds = Terminal(), iter((0.0, 1.0, 2.0))
    with told(screen, lambda: next(seconds)) as tell:
        tell("reading exercises/step-down.yml")
        assert shown(screen.getvalue()) == "reading exercises/step-down.yml…"
        tell("reading room.yml")
        assert shown(screen.getvalue()) == "reading room.yml…"
        tell("working out the programs")
        assert shown(screen.getvalue()) == "working out the programs…"
    assert shown(screen.getvalue()) == ""


def test_the_same_kind_of_work_is_not_told_a_thousand_times_a_second() -> None:
    screen, seconds = Terminal(), iter((0.0, 0.01, 0.02, 0.03, 0.2))
    with told(screen, lambda: next(seconds)) as tell:
        tell("reading a.yml")
        tell("reading b.yml")
        assert shown(screen.getvalue()) == "reading a.yml…"
        tell("checking bar-each")  # another kind of work is told at once
        assert shown(screen.getvalue()) == "checking bar-each…"
        tell("checking rest-short")
        assert shown(screen.getvalue()) == "checking bar-each…"
        tell("checking sets-jump")
        assert shown(screen.getvalue()) == "checking sets-jump…"


def test_a_long_line_is_cut() -> None:
    screen = Terminal()
    with told(screen) as tell:
        tell("reading " + "x" * 200)
        assert len(shown(screen.getvalue())) < 80


def test_the_line_goes_when_the_work_fails() -> None:
    screen = Terminal()
    try:
        with told(screen) as tell:
            tell("building the site")
            raise ValueError
    except ValueError:
        pass
    assert shown(screen.getvalue()) == ""
