"""Modules as classic scripts do what they do as modules: node's own loader is asked beside."""

import json
import shutil
import subprocess
from pathlib import Path

import pytest

import demo
from strength_handbook.publish.bundle import bundled, linked_script
from strength_handbook.publish.modules import HOLDER, ModuleError, in_order, read_module

ASSETS = demo.PACKAGE / "theme" / "assets" / "strength-handbook"
FILES = {
    "whole": (
        "const one = 1;\nfunction twice(n) { return 2 * n; }\n\nexport { one, twice as double };\n"
    ),
    "tools/sum": (
        "import * as whole from '../whole.js';\nimport { one as unit } from '../whole.js';\n"
        "import { list } from './list.js';\n\n"
        "const sum = list.map(whole.double).reduce((a, b) => a + b, unit);\n\nexport { sum };\n"
    ),
    "tools/list": "// 'import' in a comment\nconst list = [1, 2, 3];\n\nexport { list };\n",
    "said": (
        "import { sum } from './tools/sum.js';\nimport './whole.js';\n\n"
        "const said = `the sum is ${sum}`;\n\nexport { said, sum };\n"
    ),
}


def written(root: Path, files: dict[str, str]) -> Path:
    for name, text in files.items():
        (root / name).parent.mkdir(parents=True, exist_ok=True)
        (root / f"{name}.js").write_text(text, encoding="utf-8")
    return root


def by_node(script: str, *arguments: str) -> str:
    node = shutil.which("node")
    if node is None:
        pytest.skip("no Node.js found; install it (apt-get install nodejs)")
    done = subprocess.run(
        [node, *arguments], input=script, capture_output=True, encoding="utf-8", check=True
    )
    return done.stdout


def test_the_same_values_as_from_node_s_own_modules(tmp_path: Path) -> None:
    written(tmp_path, FILES)
    (tmp_path / "package.json").write_text('{"type": "module"}', encoding="utf-8")
    print_it = (
        f"import * as it from '{tmp_path.as_uri()}/said.js'; console.log(JSON.stringify(it));"
    )
    wanted = json.loads(by_node(print_it, "--input-type=module", "-"))
    script = linked_script(tmp_path, "said")
    found = json.loads(by_node(f"{script}console.log(JSON.stringify({HOLDER}.said));", "-"))
    assert found == wanted == {"said": "the sum is 13", "sum": 13}


def test_what_is_needed_comes_first_and_nothing_else_comes(tmp_path: Path) -> None:
    modules = [read_module(name, text) for name, text in FILES.items()]
    order = [one.name for one in in_order(modules)]
    assert order == ["whole", "tools/list", "tools/sum", "said"]
    assert "said" not in linked_script(written(tmp_path, FILES), "tools/sum")


@pytest.mark.parametrize(
    ("text", "wrong"),
    [
        ("export const a = 1;\n", "export const a = 1;"),
        ("import a from './b.js';\n", "import a from"),
        ("import { a } from 'b';\n", "import { a } from 'b'"),
        ("export default 1;\n", "export default"),
        ("export { a };\nconst a = 1;\n", "export { a }"),
    ],
)
def test_other_imports_and_exports_are_refused(text: str, wrong: str) -> None:
    with pytest.raises(ModuleError) as refused:
        read_module("a", text)
    assert "a.js" in str(refused.value)
    assert wrong in str(refused.value)


def test_a_script_takes_no_data_s_name() -> None:
    with pytest.raises(ModuleError, match="call the script something else"):
        read_module("lists", "")


def test_rings_and_missing_modules_are_refused() -> None:
    ring = {"a": "import { b } from './b.js';\n", "b": "import { a } from './a.js';\n"}
    with pytest.raises(ModuleError, match="a → b → a"):
        in_order(read_module(name, text) for name, text in ring.items())
    with pytest.raises(ModuleError, match=r"a\.js imports b\.js, which is not there"):
        in_order([read_module("a", ring["a"])])


def test_every_page_does_without_the_second_script(tmp_path: Path) -> None:
    files = {
        "a": "import { b } from './tools/b.js';\n",
        "tools/b": "const b = 1;\n\nexport { b };\n",
    }
    with pytest.raises(ModuleError, match=r"a\.js is on every page, and can't import tools/b\.js"):
        bundled(written(tmp_path, files))


def test_our_own_scripts_are_published_whole() -> None:
    """No module's exports are left out, and both scripts can be read."""
    for name, text in bundled(ASSETS, "coach.css").items():
        if name.endswith(".js"):
            by_node(text, "--check", "-")
    texts = "".join(bundled(ASSETS, "coach.css").values())
    for path in ASSETS.rglob("*.js"):
        module = read_module(
            path.relative_to(ASSETS).with_suffix("").as_posix(), path.read_text("utf-8")
        )
        if module.exports:
            assert f"[`{module.name}`]=" in texts or f".{module.name}=" in texts, module.name
