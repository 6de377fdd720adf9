"""Write `told.yml` anew: what each case that fires is told, whole, with the changes offered.

    python tests/review/tell_again.py

Run by hand after words or cases have changed; then read the difference of the file.
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
    lines = {}
    with tempfile.TemporaryDirectory() as folder:
        for place, case in enumerate(cases):
            if case.silent:
                continue
            files = desks.edited(case.edits, case.rules)
            checked = desks.check(files, Path(folder) / str(place), case.today)
            lines[case_name(case, cases)] = told(desks.findings(checked, case.slug))
    text = yaml.safe_dump(lines, allow_unicode=True, sort_keys=True, width=100)
    TOLD.write_text(f"# Written by tell_again.py, then read.\n{text}", encoding="utf-8")


if __name__ == "__main__":
    main()
