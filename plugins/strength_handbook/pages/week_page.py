"""The page of one week, and the overview of a whole program."""

from typing import Any

from markupsafe import Markup

from strength_handbook.dose.printing import notation
from strength_handbook.model.printed import count_word
from strength_handbook.pages.member_lines import what_changed
from strength_handbook.pages.page import Heading, Page, link, url_of
from strength_handbook.pages.phone_html import load_data
from strength_handbook.pages.render import render, safe
from strength_handbook.pages.session_page import exercise_link, session_uri, week_uri
from strength_handbook.pages.tools_html import today_values
from strength_handbook.pages.working_html import working_html
from strength_handbook.pictures.bars import week_bars
from strength_handbook.pictures.waves import WaveColumn, WaveRow, wave_chart
from strength_handbook.plan.volume import Volume
from strength_handbook.plan.worked import Worked, WorkedProgram, WorkedWeek
from strength_handbook.record.change import Changes
from strength_handbook.review.emphasis import MEASURES, number_of, wave_emphases
from strength_handbook.workings.minutes import minutes_working
from strength_handbook.workings.volume import week_working

EMPHASIS = {
    "eccentric": "slow lowering",
    "isometric": "staying still under load",
    "speed": "moving fast",
    "strength": "lifting heavy",
    "size": "more work per muscle",
    "endurance": "lasting longer",
    "general": "a bit of everything",
}


def overview_uri(program: WorkedProgram) -> str:
    """Source path of a program's overview."""
    return f"{program.id}/index.md"


def week_page(worked: Worked, program: WorkedProgram, week: WorkedWeek) -> Page:
    """One week page."""
    uri = week_uri(program, week.week)
    url = url_of(uri)
    title = f"Week {week.week}"
    fresh = _new_exercises(program, week)
    html = render(
        "week.html",
        {
            "title": title,
            "wave": week.wave.wave,
            "emphasis": EMPHASIS[week.wave.emphasis],
            "deload": week.deload,
            "test": week.week in week.wave.tests,
            "promise": week.wave.promise,
            "sessions": [
                {
                    "title": session.session.title,
                    "day": (session.session.day or "").capitalize(),
                    "optional": session.session.optional,
                    "minutes": round(session.minutes.total),
                    "purpose": session.session.purpose,
                    "working": safe(
                        working_html(minutes_working(worked.book, program.program, session), url)
                    ),
                    "link": link(url, url_of(session_uri(program, week.week, session.id))),
                    "slots": [
                        (
                            slot.order,
                            slot.exercise.name,
                            notation(slot.dose),
                            load_data(worked, slot),
                        )
                        for slot in session.slots
                    ],
                }
                for session in week.sessions
            ],
            "volume": volume_lines(week.volume),
            "hard_sets": sorted(
                week.volume.hard_sets.items(), key=lambda item: (-item[1], item[0])
            ),
            "working": safe(working_html(week_working(worked.book, week), url)),
            "fresh": [(worked.book.exercises[key].name, exercise_link(url, key)) for key in fresh],
            "overview": link(url, url_of(overview_uri(program))),
            "program": program.program.program,
        },
    )
    return Page(
        uri,
        title,
        html,
        (Heading(2, "volume", "What it adds up to"),),
        description=f"{program.program.program}, week {week.week} of {len(program.weeks)}",
        in_nav=True,
        parent=overview_uri(program),
    )


def volume_lines(volume: Volume) -> list[tuple[str, str]]:
    """The three numbers that show a wave's emphasis, and the usual sums."""
    return [
        ("Lowering", f"{volume.eccentric_s:.0f} s"),
        ("Holding", f"{volume.isometric_s:.0f} s"),
        ("Fast repetitions", f"{volume.fast_reps:.0f}"),
        ("Sets", f"{volume.sets:g}"),
        ("Repetitions", f"{volume.reps:g}"),
    ]


def _new_exercises(program: WorkedProgram, week: WorkedWeek) -> list[str]:
    """Exercises that no earlier week has, in order."""
    earlier = {
        slot.exercise_id
        for other in program.weeks
        if other.week < week.week
        for session in other.sessions
        for slot in session.slots
    }
    fresh: dict[str, None] = {}
    for session in week.sessions:
        for slot in session.slots:
            if slot.exercise_id not in earlier:
                fresh[slot.exercise_id] = None
    return list(fresh)


def overview_page(program: WorkedProgram, changes: Changes | None = None) -> Page:
    """The program on one page, with what changed since the last publication."""
    uri = overview_uri(program)
    url = url_of(uri)
    written = program.program
    changed = what_changed(changes)
    html = render(
        "program.html",
        {
            "p": written,
            "changed": changed,
            "length": "one week"
            if len(program.weeks) == 1
            else f"{count_word(len(program.weeks))} weeks",
            "waves": _waves(program),
            "waves_list": week_links(program, url),
            "wave_chart": waves_html(program),
            "today": today_values(program, url),
            "goals": [
                {
                    "goal": goal.goal,
                    "test": goal.test,
                    "link": _goal_link(program, goal.base, goal.exercise, url),
                }
                for goal in written.goals
            ],
            "proofs": _proofs(program),
            "charts": [
                safe(chart)
                for chart in (
                    week_bars(counts, _series(program, key), unit) for _, counts, key, unit in ROWS
                )
            ],
            "safety": link(url, "safety/"),
            "missed": link(url, f"{program.id}/missed/"),
            "test_day": link(url, f"{program.id}/test-day/"),
        },
    )
    return Page(
        uri,
        written.program,
        html,
        (
            *([Heading(2, "changed", "What changed")] if changed else []),
            Heading(2, "weeks", "Weeks"),
            Heading(2, "need", "What it is for"),
            Heading(2, "goals", "Goals and tests"),
            Heading(2, "waves", "Waves"),
            Heading(2, "curves", "Three numbers a week"),
        ),
        description=" ".join(written.need[:1]),
        in_nav=True,
        boost=1.2,
    )


ROWS = (
    ("lower", "Seconds of lowering", "eccentric_s", "s"),
    ("hold", "Seconds of holding", "isometric_s", "s"),
    ("fast", "Fast repetitions", "fast_reps", ""),
)
"""What the charts of weeks show: its word, what is counted, which sum of the week, its unit."""


def waves_html(program: WorkedProgram) -> Markup:
    """The chart of the waves; what its three rows are stands below it."""
    chart = wave_chart(
        [
            WaveColumn(week.week, week.wave.wave, week.deload or week.week in week.wave.tests)
            for week in program.weeks
        ],
        [
            WaveRow(name, counts, [value for _, value in _series(program, key)])
            for name, counts, key, _ in ROWS
        ],
    )
    return safe(chart)


def week_links(program: WorkedProgram, url: str) -> list[dict[str, Any]]:
    """Every week with its sessions, linked, under the name of its wave."""
    waves: list[dict[str, Any]] = []
    for week in program.weeks:
        if not waves or waves[-1]["id"] != week.wave_id:
            emphasis = EMPHASIS[week.wave.emphasis]
            waves.append(
                {"id": week.wave_id, "wave": week.wave.wave, "emphasis": emphasis, "weeks": []}
            )
        waves[-1]["weeks"].append(_week_link(program, week, url))
    return waves


def _week_link(program: WorkedProgram, week: WorkedWeek, url: str) -> dict[str, Any]:
    return {
        "week": week.week,
        "deload": week.deload,
        "test": week.week in week.wave.tests,
        "link": link(url, url_of(week_uri(program, week.week))),
        "sessions": [
            {
                "title": session.session.title,
                "day": (session.session.day or "").capitalize()[:3],
                "link": link(url, url_of(session_uri(program, week.week, session.id))),
            }
            for session in week.sessions
        ],
    }


def _waves(program: WorkedProgram) -> list[dict[str, str]]:
    seen: dict[str, dict[str, str]] = {}
    for week in program.weeks:
        if week.wave_id not in seen:
            numbers = week.wave.weeks
            first, last = numbers[0], numbers[-1]
            run = f"week {first}" if first == last else f"weeks {first} to {last}"
            seen[week.wave_id] = {
                "name": week.wave.wave,
                "weeks": run,
                "emphasis": EMPHASIS[week.wave.emphasis],
                "promise": week.wave.promise,
            }
    return list(seen.values())


def _proofs(program: WorkedProgram) -> list[dict[str, Any]]:
    """What each wave comes to in a usual week, and one sentence on it."""
    return [
        {
            "name": wave.name,
            "sentence": wave.sentence,
            "numbers": [
                {"text": number_of(measure, wave.means[measure]), "own": measure == wave.shown}
                for measure in MEASURES
            ],
        }
        for wave in wave_emphases(program)
    ]


def _series(program: WorkedProgram, name: str) -> list[tuple[str, float]]:
    return [(str(week.week), float(getattr(week.volume, name))) for week in program.weeks]


def _goal_link(program: WorkedProgram, base: str | None, exercise: str | None, url: str) -> str:
    key = exercise or (program.program.bases[base].exercise if base else None)
    return exercise_link(url, key) if key else ""
