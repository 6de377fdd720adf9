"""The safety page of a gym that has not written one: every other page leads there."""

from strength_handbook.pages.page import Heading, Page
from strength_handbook.pages.render import render, safe
from strength_handbook.pages.session_page import emergency_panel
from strength_handbook.plan.worked import Worked

_LIGHTS = (
    ("now", "Red: call the emergency number", "Stop, and call now.", (
        "Somebody collapses or faints.",
        "Chest pain or pressure. Breathless at rest.",
        "A sudden, very bad headache.",
        "Weakness or numbness on one side.",
        "A blow to the head or eye, with any symptom.",
        "Somebody is trapped or crushed.",
    )),
    ("today", "Red: medical care the same day", "Stop for today.", (
        "Something popped and no longer works.",
        "Pain shoots down an arm or leg, with weakness.",
        "In the days after: urine as dark as tea or cola.",
        "In the days after: muscle pain, swelling or weakness far beyond soreness.",
        "For the last two, say that you trained hard.",
    )),
    ("here", "Amber: stop this exercise", "Take the door “It hurts”, and tell the coach.", (
        "Joint pain that is sharp or grows.",
        "Dizziness after a hold.",
        "Technique lost twice.",
        "Grip that fails with a weight overhead.",
    )),
)  # fmt: skip
"""Common practice, no source: first-aid training says more, and comes first."""

_GREEN = "Green: nothing of what follows. Go on, within your effort limit."

_LAST = (
    "General information for members of this gym. We don't diagnose or treat. Your clinician's "
    "advice, the maker's manuals, local law and the staff's instructions override this page."
)


def safety_page(worked: Worked) -> Page:
    """Where help is, and when to stop; a hand-written `safety.md` takes its place."""
    title = "Safety"
    html = render(
        "safety.html",
        {
            "title": title,
            "emergency": safe(emergency_panel(worked.book.room.emergency)),
            "green": _GREEN,
            "lights": _LIGHTS,
            "last": _LAST,
        },
    )
    lights = (Heading(2, anchor, head) for anchor, head, _, _ in _LIGHTS)
    headings = (Heading(2, "three-lights", "Three lights"), *lights)
    return Page(
        "safety.md", title, html, headings,
        description="When to stop, and when to get help", in_nav=True,
    )  # fmt: skip
