"""Is every public name documented, typed and in the stub; are the builder's methods those of the table of keys?"""
import ast
import importlib
import inspect
import pkgutil
import subprocess
import sys

import bankwright
import pytest

MODULES = [name for _, name, _ in pkgutil.iter_modules(bankwright.__path__) if not name.startswith("_")]


def public_of(owner):
    for name, value in vars(owner).items():
        if not name.startswith("_") and (inspect.isfunction(value) or isinstance(value, (property, classmethod))):
            yield name, value


@pytest.mark.parametrize("name", MODULES)
def test_every_public_name_is_documented(name):
    try:
        module = importlib.import_module(f"bankwright.{name}")
    except ImportError as missing:
        pytest.fail(str(missing))
    assert module.__doc__, f"{name} says nothing of itself"
    for word in module.__all__:
        value = getattr(module, word)
        if not (inspect.isclass(value) or inspect.isfunction(value)):  # an alias of a type, a table
            continue
        assert inspect.getdoc(value), f"{name}.{word} has no docstring"
        if inspect.isclass(value) and value.__module__ == module.__name__:
            for member, function in public_of(value):
                assert inspect.getdoc(function), f"{name}.{word}.{member} has no docstring"


def test_all_names_every_public_class_and_function():
    for word in bankwright.__all__:
        assert hasattr(bankwright, word)


def test_part_methods_are_fresh(root):
    made = subprocess.run([sys.executable, root / "tests/structure/make_python_parts.py", "--print"], capture_output=True,
                          text=True, check=True).stdout
    written = (root / "bindings/bankwright/part_methods.py").read_text(encoding="utf-8")
    assert written == made, "run tests/structure/make_python_parts.py"


def test_types_hold(root):
    checked = subprocess.run(["/usr/bin/mypy", "--config-file", "bindings/pyproject.toml", "--cache-dir", root / "build/mypy",
                              "bindings/bankwright"], cwd=root, capture_output=True, text=True)
    assert checked.returncode == 0, checked.stdout + checked.stderr


def test_the_stub_is_the_compiled_half(root):
    """Every function of the module is in the stub with as many arguments, and nothing else is."""
    from bankwright import _core

    tree = ast.parse((root / "bindings/bankwright/_core.pyi").read_text(encoding="utf-8"))

    def arguments(function, own):
        described = function.__doc__.splitlines()[0]
        return [word.split(":")[0].strip() for word in described[described.index("(") + 1:].split(", ") if ":" in word][own:]

    stubs = {node.name: node for node in tree.body if isinstance(node, ast.FunctionDef)}
    classes = {node.name: node for node in tree.body if isinstance(node, ast.ClassDef)}
    real = {name for name, value in vars(_core).items() if callable(value) and not inspect.isclass(value) and name[0] != "_"}
    assert real == set(stubs)
    assert {name for name, value in vars(_core).items() if inspect.isclass(value)} == set(classes)
    for name, node in classes.items():
        members = {one for one in vars(getattr(_core, name)) if one[0] != "_" or one == "__init__"}
        assert members == {one.name for one in node.body if isinstance(one, ast.FunctionDef)}
        for one in node.body:
            if isinstance(one, ast.FunctionDef) and not one.decorator_list:
                assert arguments(getattr(getattr(_core, name), one.name), 1) == [a.arg for a in one.args.args][1:], one.name
