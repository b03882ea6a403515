"""The documents, and their console blocks: `$ command`, then what it prints."""
import re
import shlex
import subprocess

from project import ROOT, project_files, read

DOCUMENTS = tuple(path.as_posix() for path in project_files(".md"))
PICTURES = {"data/pictures/bow-36v.svg": "bankwright draw data/examples/bow-36v.toml"}


def blocks(document, language):
    """(line, text) of each fenced block in that language."""
    text = read(document)
    for found in re.finditer(rf"^```{language}\n(.*?)^```$", text, re.M | re.S):
        yield text.count("\n", 0, found.start()) + 1, found.group(1)


def shown(block):
    """(command line, output) of each `$ command` in a console block."""
    for part in re.split(r"^\$ ", block, flags=re.M)[1:]:
        typed, _, output = part.partition("\n")
        yield typed, output.rstrip("\n")


def printed(command, typed):
    """What the command line prints when it is run in the project's folder by the command given."""
    words = shlex.split(typed)
    assert words[0] == "bankwright", "console blocks show the command; put other command lines into sh blocks"
    done = subprocess.run([command, *words[1:]], cwd=ROOT, capture_output=True, text=True)
    return done.stdout.rstrip("\n")
