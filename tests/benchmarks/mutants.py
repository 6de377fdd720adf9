"""How many small faults, put into modules one at a time, make a test fail.

    python tests/benchmarks/mutants.py plan review [--most 10] [--seed 1] [--seconds 5] [--again]
        [--out mutants.jsonl] [--seen mutants.pickle] [pytest's own arguments]

Run by hand; nothing here is a test. Names are folders or modules of the package. One process has
pytest and everything else loaded; a copy of it (`os.fork`, so not on Windows) tries each fault: it
gives the functions that are there the code with the fault, and runs tests that come by the line,
first those that bear the name of the module or of a check in it, then those that see most of the
module in the least time. A test that fails, or does not end, finds
the fault. Which test comes by where is seen once and kept in ``--seen``: take that file away when
modules have changed; new tests are added by themselves.

``--seconds`` limits the tests of one fault, in CPU seconds. What survives is worth more of them:
``--again`` takes only what survived in ``--out``. A fault that is in ``--out`` is not tried twice.
"""

import argparse
import gc
import json
import os
import pickle
import re
import signal
import sys
import time
from collections import Counter, defaultdict
from collections.abc import Iterator
from functools import partial
from itertools import zip_longest
from pathlib import Path
from typing import Any

import pytest
from _pytest.runner import runtestprotocol

# Run as a script, outside pytest's path.
sys.path.insert(0, str(Path(__file__).parents[1]))

from benchmarks.mutations import Mutation, mutated, sample
from benchmarks.quick_tests import fixtures_of, in_copy, module_of, shorten
from benchmarks.running_code import (
    Lines,
    Looking,
    add,
    all_caches,
    all_functions,
    put_in,
    set_constant,
)

PACKAGE = Path(__file__).parents[2] / "plugins" / "strength_handbook"
OURS = ("dose", "floor", "phone", "plan", "record", "review", "workings")
TESTS = (*(f"tests/{name}" for name in OURS), "tests/methods")
ALIKE = 4
"""Tests tried first of those that see exactly the same lines of a module."""

Seen = dict[str, tuple[Lines, float]]
"""Lines that each test comes by, and its CPU seconds."""


class Runner:
    """A pytest plugin that tries faults instead of running the tests once."""

    def __init__(self, options: argparse.Namespace) -> None:
        self.options = options
        self.fixtures: Seen = {}
        self.looking: Looking | None = None
        self.outer: Lines = {}

    @pytest.hookimpl(wrapper=True)
    def pytest_fixture_setup(
        self, fixturedef: pytest.FixtureDef[Any], request: pytest.FixtureRequest
    ) -> Iterator[None]:
        """What a fixture of a whole file comes by, each of its tests comes by."""
        if self.looking is None or fixturedef.scope != "module":
            return (yield)
        began = time.process_time()
        add(self.outer, self.looking.take())
        try:
            return (yield)
        finally:
            seen = self.looking.take(), time.process_time() - began
            self.fixtures[f"{request.path} {fixturedef.argname}"] = seen

    @pytest.hookimpl(tryfirst=True)
    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        """Look, then try each fault."""
        # A site was built before the fault came, and a browser cannot be copied.
        left_out = {"demo_site", "browser"}
        items = [one for one in session.items if not left_out & {*one.keywords, *fixtures_of(one)}]
        session.config._tmp_path_factory.getbasetemp()  # type: ignore[attr-defined]  # noqa: SLF001
        for item in items:
            shorten(item)
        self.functions = all_functions(tuple(f"{PACKAGE / one}{os.sep}" for one in OURS))
        self.seen = self._all_seen(items)
        wanted = self._wanted()
        gc.collect()
        gc.freeze()
        finders: dict[Path, Counter[str]] = defaultdict(Counter)
        with self.options.out.open("a", encoding="utf-8") as out:
            for mutation in wanted:
                order = self._order(mutation, items, finders[mutation.file])
                end, by = in_copy(partial(self._try, mutation, order)) or ("found", "no end")
                finders[mutation.file][by] += 1
                result = {
                    "key": mutation.key,
                    "module": str(mutation.file.relative_to(PACKAGE)),
                    "line": mutation.line,
                    "says": mutation.says,
                    "end": end,
                    "by": by,
                    "tests": len(order),
                }
                print(json.dumps(result, ensure_ascii=False), file=out, flush=True)
        return True

    def _wanted(self) -> list[Mutation]:
        """The faults to try: not those that an earlier run has tried."""
        ends = {key: one["end"] for key, one in _results(self.options.out).items()}
        files = sorted({file for name in self.options.modules for file in _files(name)})
        samples = [sample(file, self.options.most, self.options.seed) for file in files]
        # One of each module, then the next: a run that is stopped has seen all of them.
        every = [one for several in zip_longest(*samples) for one in several if one is not None]
        if self.options.again:
            return [one for one in every if ends.get(one.key) == "survived"]
        return [one for one in every if one.key not in ends]

    def _all_seen(self, items: list[pytest.Item]) -> Seen:
        """What each test that passes comes by, kept from run to run."""
        kept: Seen = {}
        if self.options.seen.exists():
            kept = pickle.loads(self.options.seen.read_bytes())  # noqa: S301  # our own file
        new = [one for one in items if one.nodeid not in kept]
        if new:
            kept |= in_copy(partial(self._look, new)) or {}
            self.options.seen.write_bytes(pickle.dumps(kept))
        return kept

    def _look(self, items: list[pytest.Item]) -> Seen:
        self.looking = Looking(self.functions)
        caches = all_caches()
        seen: Seen = {}
        shared: dict[str, Lines] = defaultdict(dict)
        for item, later in zip(items, [*items[1:], None], strict=True):
            for cache in caches:
                if cache.__wrapped__.__module__.startswith("strength_handbook."):
                    cache.cache_clear()
            began, self.outer = time.process_time(), {}
            reports = runtestprotocol(item, log=False, nextitem=later)
            lines = self.looking.take()
            seconds = time.process_time() - began
            add(lines, self.outer)
            for name in fixtures_of(item):
                more, setup = self.fixtures.get(f"{item.path} {name}", ({}, 0.0))
                add(lines, more)
                seconds += setup
            for bad in (one for one in reports if one.failed):
                print(f"fails without a fault: {item.nodeid}\n{bad.longrepr}", file=sys.stderr)
            if all(one.passed for one in reports):
                seen[item.nodeid] = lines, seconds
                add(shared[module_of(item)], lines)
        # Where a file's tests share a kept answer, the first alone came by what made it.
        sharing = {one.__wrapped__.__module__ for one in caches} & set(shared)
        for item in items:
            if module_of(item) in sharing and item.nodeid in seen:
                add(seen[item.nodeid][0], shared[module_of(item)])
        return seen

    def _order(
        self, mutation: Mutation, items: list[pytest.Item], finders: Counter[str]
    ) -> list[pytest.Item]:
        """The tests to run: those that come by, as long as time allows."""
        file, bit = str(mutation.file), 1 << mutation.line
        coming = []
        for item in items:
            lines, seconds = self.seen.get(item.nodeid, ({}, 0.0))
            mine = lines.get(file, 0)
            if mine & bit or (mutation.constant and mine):
                value = mine.bit_count() ** 3 * (1 + finders[item.nodeid])
                coming.append(((0.01 + seconds) / value, mine, seconds, item))
        coming.sort(key=lambda one: one[0])
        often: Counter[int] = Counter()
        names = _names(mutation.file)
        ranked = []
        for place, (_, mine, seconds, item) in enumerate(coming):
            often[mine] += 1
            own = names.search(item.nodeid) is not None
            ranked.append((0 if own else 1 + (often[mine] > ALIKE), place, seconds, item))
        order: list[pytest.Item] = []
        left = self.options.seconds
        for _, _, seconds, item in sorted(ranked, key=lambda one: one[:2]):
            if not order or seconds <= left:
                order.append(item)
                left -= seconds
        return order

    def _try(self, mutation: Mutation, order: list[pytest.Item]) -> tuple[str, str]:
        """How it ends, and the test that found the fault."""
        if not order:
            return "survived", "no test comes by"
        tree, file = mutated(mutation), str(mutation.file)
        if mutation.constant:
            done = set_constant(tree, file, mutation.constant, mutation.line)
        else:
            done = put_in(tree, file, self.functions[file])
        if not done:
            return "left out", "cannot be put in while running"
        for item, later in zip(order, [*order[1:], None], strict=True):
            # CPU time: other work on the machine finds nothing.
            signal.setitimer(signal.ITIMER_PROF, 4 + 6 * self.seen[item.nodeid][1])
            if any(one.failed for one in runtestprotocol(item, log=False, nextitem=later)):
                return "found", item.nodeid
        return "survived", ""


def _files(name: str) -> list[Path]:
    path = PACKAGE / name
    found = sorted(path.rglob("*.py")) if path.is_dir() else [path.with_suffix(".py")]
    return [file for file in found if file.name != "__init__.py"]


def _names(file: Path) -> re.Pattern[str]:
    """How the tests of a module are called: by its name, or by a check in it."""
    slugs = re.findall(r'^@check\(\s*"([a-z-]+)"', file.read_text(encoding="utf-8"), re.MULTILINE)
    return re.compile(rf"/test_{file.stem}\.py::|\[(?:{'|'.join(slugs) or '(?!)'})[-\]\d]")


def _results(out: Path) -> dict[str, dict[str, Any]]:
    """The last result of each fault."""
    if not out.exists():
        return {}
    lines = map(json.loads, out.read_text(encoding="utf-8").splitlines())
    return {one["key"]: one for one in lines}


def main() -> None:
    """Try the faults; print what survived, and how many were found in each module."""
    parser = argparse.ArgumentParser()
    parser.add_argument("modules", nargs="+")
    parser.add_argument("--most", type=int, default=10)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--seconds", type=float, default=5.0)
    parser.add_argument("--again", action="store_true")
    parser.add_argument("--out", type=Path, default=Path("mutants.jsonl"))
    parser.add_argument("--seen", type=Path, default=Path("mutants.pickle"))
    options, more = parser.parse_known_args()
    folders = [*TESTS, *(str(PACKAGE / name) for name in OURS)]
    pytest.main(["-s", "-q", "-n0", "-p", "no:cacheprovider", *more, *folders], [Runner(options)])
    ends: dict[str, Counter[str]] = defaultdict(Counter)
    for one in sorted(_results(options.out).values(), key=lambda one: (one["module"], one["line"])):
        ends[one["module"]][one["end"]] += 1
        if one["end"] == "survived":
            print(f"{one['module']}:{one['line']}: {one['says']}  ({one['by'] or one['tests']})")
    for name, count in sorted(ends.items()):
        print(f"{name}: {count['found']} of {count['found'] + count['survived']} found")


if __name__ == "__main__":
    main()
