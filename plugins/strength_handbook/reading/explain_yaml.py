"""Explanations of problems with the form of a file, before its words are looked at."""

from strength_handbook.reading.explanation import Explanation as E  # noqa: N817  # a table

YAML = {
    "alias": E(
        "YAML can repeat a marked part with '*name'. Here every value is written out, so that a "
        "reader sees it where it counts. Text that begins with * needs quotes.",
        "rest: &long 2:30\nother: *long\n",
        "rest: 2:30\nother: 2:30\n",
    ),
    "anchor": E(
        "A value that begins with & would be a mark to be repeated elsewhere. Write each value "
        "where it belongs, or put quotes around text that really begins with &.",
        "rest: &long 2:30\n",
        "rest: 2:30\n",
    ),
    "control-character": E(
        "The line holds a character that no keyboard writes, usually left over from copying out of "
        "a PDF or a chat. Delete it, or type the line again.",
        "name: Standing press\u2028\n",
        "name: Standing press\n",
    ),
    "duplicate-key": E(
        "A key stands twice in one block. Only one of the two can count, and it would be a guess "
        "which; delete one.",
        "reps: 5\nreps: 6\n",
        "reps: 5\n",
    ),
    "empty-file": E(
        "The file holds nothing, or only comments. Delete it or write it.",
        "# to do\n",
        "name: Standing press\n",
    ),
    "empty-key": E(
        "A colon stands where a line begins, without a key before it.",
        ": 5\n",
        "reps: 5\n",
    ),
    "escape": E(
        "In double quotes a backslash begins a special sign. Use single quotes where a backslash "
        "is meant as such.",
        'note: "left\\side"\n',
        "note: 'left\\side'\n",
    ),
    "indentation": E(
        "Lines that belong together begin in the same column; what belongs to a line stands two "
        "spaces deeper. This line fits neither.",
        "sets: 3\n  reps: 5\n",
        "sets: 3\nreps: 5\n",
    ),
    "invisible-character": E(
        "A space here is not a plain one. It came with copied text and would become part of the "
        "word. Delete it and press the space bar.",
        "sets: 3\nreps:\u00a05\n",
        "sets: 3\nreps: 5\n",
    ),
    "key-not-text": E(
        "Something in brackets stands where a key belongs. A text with brackets needs quotes.",
        "[left, right]: 5\n",
        '"[left, right]": 5\n',
    ),
    "merge-key": E(
        "'<<' would copy another block in. Write the keys out, so that the file can be read by "
        "itself.",
        "<<: {reps: 5}\n",
        "reps: 5\n",
    ),
    "missing-colon": E(
        "Every line is 'key: value', or '- ' and an entry of a list. Here the colon is missing.",
        "sets: 3\nreps 5\n",
        "sets: 3\nreps: 5\n",
    ),
    "missing-comma": E(
        "Between two entries in brackets stands a comma.",
        'stations: ["rack" "bench"]\n',
        'stations: ["rack", "bench"]\n',
    ),
    "missing-space": E(
        "After the colon stands a space; without it the whole line is one word.",
        "sets: 3\nreps:5\n",
        "sets: 3\nreps: 5\n",
    ),
    "missing-value": E(
        "A comma in brackets with nothing before it.",
        "stations: [, bench]\n",
        "stations: [rack, bench]\n",
    ),
    "needs-quotes": E(
        "The value holds a sign that YAML would take for its own: a colon, a percent sign or an @ "
        "at the beginning, a quote in the middle. Quotes around the whole value make it plain "
        "text.",
        "name: Press: standing\n",
        'name: "Press: standing"\n',
    ),
    "not-a-mapping": E(
        "A file is a block of 'key: value' lines. This one is a list from its first line.",
        "- rack\n- bench\n",
        "stations:\n  - rack\n  - bench\n",
    ),
    "not-utf-8": E(
        "The file is saved in an old encoding, so letters such as ä or é can't be read. In the "
        "editor choose 'save with encoding' and take UTF-8."
    ),
    "several-documents": E(
        "A line of three hyphens would begin a second document. A file holds one.",
        "sets: 3\n---\nreps: 5\n",
        "sets: 3\nreps: 5\n",
    ),
    "syntax": E(
        "The file can't be taken apart here, and the reason is a rare one; the message is the YAML "
        "parser's own. Usually a bracket, a quote or the indentation just above is wrong."
    ),
    "tab": E(
        "Lines are indented with spaces. A tab looks the same and means nothing to YAML. Most "
        "editors can be told to write spaces.",
        "weeks:\n\t1: 3x5\n",
        "weeks:\n  1: 3x5\n",
    ),
    "tag": E(
        "A word that begins with ! would choose a data type. Nothing here needs one; text that "
        "really begins with ! needs quotes.",
        "name: !best Press\n",
        'name: "!best Press"\n',
    ),
    "too-deep": E(
        "Blocks stand in blocks more than twenty deep. No program file needs that; a bracket is "
        "probably repeated by mistake.",
        "deep: " + "[" * 25 + "]" * 25 + "\n",
        "deep: []\n",
    ),
    "unclosed-bracket": E(
        "A bracket is opened and never closed, or closed with the other kind.",
        "stations: [rack, bench\n",
        "stations: [rack, bench]\n",
    ),
    "unclosed-quote": E(
        "A quote is opened and never closed, or closed only lines later.",
        'name: "Standing press\n',
        'name: "Standing press"\n',
    ),
    "utf-16": E(
        "The file is saved as UTF-16, with two bytes a letter. In the editor choose 'save with "
        "encoding' and take UTF-8."
    ),
}
