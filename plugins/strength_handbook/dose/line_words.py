"""What words in a one-line dose look like, for reading such lines and for printing them."""

NUMBER = r"\d+(?:[.,]\d+)?"
PLAIN = r"(?:1[2-9]\d|[2-9]\d\d)(?:[.,]\d)?"
"""A number without a unit that is more than a share can be: a mass in the unit of the room."""
MASS = rf"{NUMBER}\s*(?:kgs?|lbs?|g)"
PERCENT = rf"{NUMBER}\s*%"
TIME = rf"(?:\d{{1,2}}:\d{{2}}|{NUMBER}\s*(?:s|sec|min))"
TIMES = rf"(?:(?:{TIME}|{NUMBER})\s*[-–]\s*)?{TIME}"
"""A time, or a range of one."""
METRES = rf"{NUMBER}\s*(?:mi?|ft|yd)"
"""How far to walk."""
HEIGHT = rf"{NUMBER}\s*(?:mm?|cm|ft|in)"
COUNT = r"\d+(?:\s*[-–]\s*\d+(?![\d.,]*\s*(?:kg|kilo|lb|pound|\#|%))|\+)?"
"""One number, a range or a floor; what a mass or a share ends is no range of repetitions."""
SETS = rf"({COUNT})\s*[x×]\s*"
TEMPO = r"[\dXx]+(?:(?:[-–][\dXx]+){2,}|(?:/[\dXx]+){3})"
END = r"(?=$|[\s,;()@]|/\s*[a-z]|\.(?:\s|$)|(?:each|ea|es|e/s)\b)"
"""What may follow a clause: nothing, a gap, or a word for each side without one."""
LATER = r"\s*,?\s*"
"""Between the values of one clause."""
# A word with a number after it begins a clause of its own: '65 % top 5RM', '80 % TM 90 %'.
_TM = r"TM(?!\s+\d)"
_TOP = r"(?:the\s+)?top(?!\s+(?:\d+\s*RM|none)\b)"
LOAD = (
    rf"{PERCENT}(?:\s*(?:of\s+)?(?:system|{_TM}|BM(?:\s*/\s*hand)?|{_TOP}|(?!1\s*RM)\d+\s*RM))?"
    rf"|BW(?:\s*[+\-−–]\s*{MASS})?|\d+\s*RM|{NUMBER}\s*units?|{MASS}"
)
FREE = r"[^\s,;](?:[^,;]|(?<=\d),(?=\d))*"
"""Words of the coach's own: to the next comma that is not inside a number, or to the end."""
WORD = r"[^\s,;@]+"

NO_PLACE = rf"(?:{LOAD}){END}|RIR\b|RPE\b|{NUMBER}\s*(?:$|[,;](?!\d))"
"""What after 'at' is no position of a hold, but a load or an effort."""

LONGEST = 200
"""Most characters in a line; keeps the search for clauses short, whatever stands there."""
