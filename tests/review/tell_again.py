"""Write `told.yml` anew: what each case that fires is told, whole, with the changes offered.

    python tests/review/tell_again.py [CHECK ...]

Run by hand after words or cases have changed; then read the difference of the file. With names of
checks only their cases are looked at, and the others stay as they are written.
"""

import sys
import tempfile
from pathlib import Path

import yaml

# Run as a script, outside pytest's path.
sys.path.insert(0, str(Path(__file__).parents[1]))

import desks
from told import TOLD, case_name, told


def main() -> None:
    """Check every case that fires, and write what was found."""
    cases = desks.read_cases()
    only = set(sys.argv[1:])
    lines = yaml.safe_load(TOLD.read_text("utf-8")) if only else {}
    firing = {case_name(case, cases) for case in cases if not case.silent}
    lines = {name: line for name, line in lines.items() if name in firing}
    with tempfile.TemporaryDirectory() as folder:
        for place, case in enumerate(cases):
            if case.silent or (only and case.slug not in only):
                continue
            files = desks.edited(case.edits, case.rules)
            checked = desks.check(files, Path(folder) / str(place), case.today)
            lines[case_name(case, cases)] = told(desks.findings(checked, case.slug))
    text = yaml.safe_dump(lines, allow_unicode=True, sort_keys=True, width=100)
    TOLD.write_text(f"# Written by tell_again.py, then read.\n{text}", encoding="utf-8")


if __name__ == "__main__":
    main()
