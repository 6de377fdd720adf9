"""Names, claims and sentences, whatever stands in the files; and hazards that can be added back."""

import tempfile
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import desks
from strength_handbook.model.words import CAUTIONS, Hazard
from strength_handbook.review.checks.safety.claims import claim_in
from strength_handbook.review.checks.words.names import Known, name_in
from strength_handbook.review.checks.words.plain import grade, syllables
from strength_handbook.review.known_words import CAPITALS, FIRST_WORDS
from strength_handbook.review.texts import sentences, words

SMALL = frozenset({"low", "bar", "for", "the", "same", "load", "as", "week"})
KNOWN = Known(own=frozenset({"orrabeck"}), small=SMALL, telling=True)
LETTERS = "abcdefghijklmnopqrstuvwxyzäöüéñ"
names = st.text(LETTERS, min_size=3, max_size=10).filter(
    lambda word: KNOWN.names(word.title()) and word not in CAPITALS | FIRST_WORDS
)


@given(names, st.sampled_from(["Same load for {}.", "The low bar is {}'s", "Week 2 as {} had it"]))
def test_an_unknown_word_with_a_capital_inside_a_sentence_is_a_name(word: str, text: str) -> None:
    assert name_in(text.format(word.capitalize()), KNOWN) == word.capitalize()


@given(st.lists(st.text(LETTERS, min_size=1, max_size=12), max_size=20))
def test_no_text_in_small_letters_names_anybody(found: list[str]) -> None:
    assert name_in(" ".join(found), KNOWN) == ""


@given(st.lists(st.sampled_from(["BM", "RIR", "AMRAP", "X", "A1", "70 %", "low", "bar", "ES"])))
def test_short_words_in_capitals_are_no_names(found: list[str]) -> None:
    assert name_in(f"The {' '.join(found)}", KNOWN) == ""


@pytest.mark.parametrize(
    "text",
    [
        "Prevents knee pain.", "It cures sciatica!", "High handles are safe for everybody.",
        "A bulletproof back.", "Injury-proof your shoulders.", "It is injury prevention.",
        "Fixes your back.", "It fixes bad knees.", "Relieves low back pain.", "Rehab for runners.",
        "Doctor-approved.", "Clinically proven to work.", "Lowers your blood pressure.",
        "Good for bad knees.", "This corrects your posture.", "You are cleared to lift.",
        "It is completely safe.", "A risk-free jump.", "Squats heal your knees.",
        "This treats tendon pain.", "Therapeutic holds.", "This ends hip pain.",
        "It reduces the risk of injury.", "It helps with back pain.", "Helps against knee pain.",
        "It lowers your injury risk.", "It protects the knee ligaments.", "Cuts injury rates.",
        "Fewer falls: it reduces the risk of falls.", "Spares your back.", "Great for bad knees.",
    ],
)  # fmt: skip
def test_a_promise_of_health_is_found(text: str) -> None:
    assert claim_in(text) is not None


@pytest.mark.parametrize(
    "text",
    [
        "Set the bar down where it is safe.", "The safest place is beside the lane.",
        "Fix your eyes on the wall.", "Fixed to the floor with bolts.",
        "A strap prevents the box from sliding.", "This page can't cure anything.",
        "It does not prevent injuries; ask first.", "Not safe for two at once.",
        "End the exercise for pain in the back.", "Stop for pain down a leg.",
        "Clear the lane.", "The lane is cleared for the sled.", "Keep the accurate count.",
        "Treat the bar like glass.", "A secure grip.", "Stops at the tape, ends at the box.",
        "Pain that eases in the warm-up is common.", "It may help your balance.",
        "Reduce the load by ten per cent.", "Soreness eases after a walk.", "Prehab for ankles.",
        "Ask your physio after an operation.", "Lower the bar for a count of three.",
        "Less weight helps with the balance.", "Cut the sets when you are late.",
        "A pad protects the floor.", "Works with any bar.", "The best box for your height.",
    ],
)  # fmt: skip
def test_words_of_the_trade_are_no_promise(text: str) -> None:
    assert claim_in(text) is None


@given(st.text('ab .!?:AB"“”\n', max_size=60))
def test_sentences_lose_no_word(text: str) -> None:
    # A closing quotation mark at the end of a sentence goes with it; no word does.
    kept = [word.strip('"”') for one in sentences(text) for word in words(one)]
    assert kept == [word.strip('"”') for word in words(text)]


@given(st.lists(st.text(LETTERS, min_size=1, max_size=14), min_size=1, max_size=12))
def test_a_longer_sentence_is_never_easier_to_read(found: list[str]) -> None:
    assert all(syllables(word) >= 1 for word in found)
    assert grade([" ".join(found)] * 2) == pytest.approx(grade([" ".join(found)]))
    assert grade([" ".join((*found, *found))]) >= grade([" ".join(found)])


def test_every_hazard_has_a_caution() -> None:
    assert set(CAUTIONS) == set(Hazard)


@settings(max_examples=12, deadline=None)
@given(st.data())
def test_hazards_that_are_taken_out_are_asked_for_until_the_page_has_its_cautions(
    data: st.DataObject,
) -> None:
    files = desks.edited({})
    exercises = sorted(name for name in files if name.startswith("exercises/"))
    for name in data.draw(st.lists(st.sampled_from(exercises), unique=True, max_size=5)):
        hazards = files[name].get("hazards", [])
        files[name]["hazards"] = data.draw(st.lists(st.sampled_from(hazards), unique=True))
    with tempfile.TemporaryDirectory() as folder:
        before = desks.check(files, Path(folder, "before"))
        found = desks.findings(before, "hazard-missing")
        for one in found:
            files = desks.with_changes(files, before, one.edits)
        after = desks.check(files, Path(folder, "after"))
        assert desks.findings(after, "hazard-missing") == []
