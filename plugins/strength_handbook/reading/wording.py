"""Refusals of the typed model in words for the coach.

One entry for each kind of refusal that pydantic can give here; those of our own types bring their
words. `is_worded` lets a test ask for every kind that the models can produce.
"""

import re
from collections.abc import Callable, Mapping
from typing import Any

from strength_handbook.model.shape import quoted, shown
from strength_handbook.reading.keys import Place, write_what
from strength_handbook.reading.notation import EXAMPLE
from strength_handbook.reading.suggest import did_you_mean, one_of

Context = Mapping[str, Any]
Words = tuple[str, str]
"""Slug and text."""


def is_worded(kind: str, context: Context) -> bool:
    """True for a refusal that has words, here or with it."""
    own = {"text", "least", "most"} & set(context)
    return bool(own) or kind in _WORDS or kind in ("missing", "extra_forbidden")


def words_for(kind: str, message: str, value: object, place: Place, context: Context) -> Words:
    """Slug and text of a refusal.

    Args:
        kind: pydantic's name of it, or the slug of one of our own.
        message: its text, the coach's already where it is our own.
        value: what stands in the file.
        place: where it stands, and what may stand there.
        context: further facts, by pydantic's names.
    """
    if value is None and not place.on_key:
        return _nothing(place)
    if "least" in context or "most" in context:
        return _limit_with_unit(value, context)
    if "text" in context:
        return kind, message
    if kind in _WORDS:
        return _WORDS[kind](value, place, context)
    return "shape", f"{shown(value)} does not belong here"


def _nothing(place: Place) -> Words:
    write = write_what(place.kind) or "it"
    key = place.path[-1] if place.path else ""
    if isinstance(key, int):
        return "missing-value", f"this list entry is empty; write {write} or delete the line"
    return "missing-value", f"nothing stands after {quoted(key)}; write {write} or delete the line"


def _needs_block(value: object, place: Place, _: Context) -> Words:
    names = [model.__name__ for model in place.models]
    if names == ["DosePart"]:
        return "shape", f"{shown(value)} is not a dose; write it like {EXAMPLE}"
    write = write_what(place.kind)
    return "shape", f"{shown(value)} stands where keys with values belong; write {write}"


def _needs_list(value: object, _: Place, __: Context) -> Words:
    text = str(value)
    if isinstance(value, str | int | float) and re.fullmatch(r"[\w.%-]+(?: [\w.%-]+)?", text):
        write = f"write '[{text}]'" if len(text) <= 40 else "begin its line with '- '"
    elif isinstance(value, dict):
        write = "begin each entry with '- '"
    else:
        write = "write it below the key, with '- ' before each entry"
    return "shape", f"{shown(value)} stands where a list belongs; {write}"


def _needs_text(value: object, _: Place, __: Context) -> Words:
    if isinstance(value, dict):
        advice = "put quotes around a text with a colon in it"
    elif isinstance(value, list):
        advice = "write one text, without '- ' or brackets"
    else:
        advice = "put quotes around it"
    return "text", f"{shown(value)} stands where text belongs; {advice}"


def _length(value: object, place: Place, context: Context) -> Words:
    """Too long or too short: a text, a list or a mapping."""
    least, most = context.get("min_length"), context.get("max_length")
    size = len(value) if isinstance(value, str | list | dict) else len(str(value))
    if place.on_key or isinstance(value, str | int | float):
        if most is not None:
            return "length", f"this text has {size} characters; the most is {most}"
        if not size:
            return "missing-value", "the text is empty; write something between the quotes"
        return "length", f"{shown(value)} is too short; write at least {least} characters"
    if most is not None:
        return "too-many", f"there are {size} entries here; the most is {most}"
    few = "there is nothing here" if not size else f"there are too few entries here, {size}"
    return "length", f"{few}; write at least {'one' if least == 1 else least}"


def _word(value: object, place: Place, context: Context) -> Words:
    options = [word.strip().strip("'") for word in re.split(r",| or ", str(context["expected"]))]
    word = place.path[-1] if place.on_key else value
    if isinstance(word, dict | list):
        return "shape", f"{shown(word)} stands where one word belongs: {one_of(options, limit=30)}"
    if isinstance(word, str) and word in options:
        return "unknown-word", f"{shown(word)} is a number here; write {word} without quotes"
    hint = did_you_mean(str(word), options)
    if hint and len(options) > 8:
        return "unknown-word", f"{shown(word)} is not known here{hint}"
    return "unknown-word", f"{shown(word)} is not one of {one_of(options, limit=30)}{hint}"


def _kind_of_loading(value: object, _: Place, context: Context) -> Words:
    tags = [tag.strip().strip("'") for tag in str(context["expected_tags"]).split(",")]
    tag = value.get("kind") if isinstance(value, dict) else value
    text = f"{shown(tag)} is not a kind of loading; write one of {one_of(tags, limit=20)}"
    return "unknown-word", text + did_you_mean(str(tag), tags)


def _no_kind(_: object, place: Place, __: Context) -> Words:
    kinds = [str(m.model_fields["kind"].annotation) for m in place.models]
    words = [found[1] for kind in kinds if (found := re.search(r"'(.+)'", kind))]
    text = "missing key 'kind': how it is loaded; write one of "
    return "missing-key", text + one_of(words, limit=20)


def _form(value: object, place: Place, context: Context) -> Words:
    word = str(place.path[-1] if place.on_key else value)
    pattern = str(context["pattern"])
    if pattern == ID:
        better = re.sub(r"[^a-z0-9]+", "-", word.lower()).strip("-")
        write = f"write {quoted(better)}" if better else "write it like 'trap-bar'"
        return "form", f"a short name has small letters, digits and hyphens only; {write}"
    if pattern == ORDER and re.fullmatch(pattern, word.upper()):
        return "form", f"an order has a capital letter; write {quoted(word.upper())}"
    return "form", f"{shown(word)} does not fit here; {FORMS[pattern]}"


ID = r"^[a-z0-9]+(-[a-z0-9]+)*$"
ORDER = r"^[A-Z][1-9]?$"
FORMS = {
    ID: "",
    ORDER: "an order is a capital letter, with a digit when paired: A, B1, B2",
    r"^[A-Z]$": "letters are capital, without a digit: [C, D, E]",
    r"^P[1-9][0-9]?$": "profiles are called P1, P2 and so on: numbers only, never a name",
    r"^[^\n]*$": "write it on one line",
}
"""What each pattern of the models asks for."""


def _limit(comparison: str, word: str, key: str) -> Callable[[object, Place, Context], Words]:
    """Wording for a limit of a plain number."""

    def words(value: object, _: Place, context: Context) -> Words:
        return "range", f"{shown(value)} is too {comparison}; {word} {context[key]:g}"

    return words


def _limit_with_unit(value: object, context: Context) -> Words:
    """Wording for a limit of a quantity, which comes with its unit."""
    if "least" in context:
        return "range", f"{shown(value)} is too small; the least is {context['least']}"
    return "range", f"{shown(value)} is too large; the most is {context['most']}"


def _true_false(value: object, _: Place, __: Context) -> Words:
    return "true-false", f"{shown(value)} is neither true nor false; write one of the two"


_WORDS: dict[str, Callable[[object, Place, Context], Words]] = {
    "bool_parsing": _true_false,
    "bool_type": _true_false,
    "dict_type": _needs_block,
    "enum": _word,
    "greater_than": _limit("small", "it must be more than", "gt"),
    "greater_than_equal": _limit("small", "the least is", "ge"),
    "less_than_equal": _limit("large", "the most is", "le"),
    "list_type": _needs_list,
    "literal_error": _word,
    "model_attributes_type": _needs_block,
    "model_type": _needs_block,
    "string_pattern_mismatch": _form,
    "string_too_long": _length,
    "string_too_short": _length,
    "string_type": _needs_text,
    "too_long": _length,
    "too_short": _length,
    "union_tag_invalid": _kind_of_loading,
    "union_tag_not_found": _no_kind,
}
