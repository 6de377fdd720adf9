"""A public name means one thing."""

import ast
from collections import defaultdict

import demo


def test_a_class_has_a_name_of_its_own() -> None:
    places: dict[str, list[str]] = defaultdict(list)
    for path in sorted(demo.PACKAGE.rglob("*.py")):
        for node in ast.parse(path.read_text(encoding="utf-8")).body:
            if isinstance(node, ast.ClassDef) and not node.name.startswith("_"):
                places[node.name].append(path.relative_to(demo.PACKAGE).as_posix())
    assert len(places) > 200
    assert {name: where for name, where in places.items() if len(where) > 1} == {}
