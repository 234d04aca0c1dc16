"""scripts/setup.sh on machines that lack something: Python, pip, apt and Chromium are stand-ins.

That the real ones set up a clone is shown by each run of the tests themselves.
"""

from __future__ import annotations

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from almanac.publish.node import NodeError, fetch_libraries, install_node

SETUP = Path(__file__).resolve().parents[1] / "scripts" / "setup.sh"
TOOLS = [
    "bash",
    "sh",
    "cat",
    "grep",
    "rm",
    "touch",
    "basename",
    "dirname",
    "sha256sum",
    "shasum",
    "tail",
    "mkdir",
    "chmod",
    "sleep",
]
PYTHON = """#!/bin/sh
[ -e "$MACHINE/old-python" ] && exit 1
case "$*" in
  *fcntl*) exec "$REAL_PYTHON" "$@" ;;
  *ensurepip*) [ ! -e "$MACHINE/no-venv" ] ;;
  "-m venv .venv")
    echo venv >> "$MACHINE/log"
    mkdir -p .venv/bin && echo "VIRTUAL_ENV=$PWD/.venv" > .venv/bin/activate
    cat "$MACHINE/pip" > .venv/bin/python && chmod +x .venv/bin/python ;;
esac
"""
PIP = """#!/bin/sh
[ "$1 $3" = "-m --version" ] || [ "$1" = -c ] && exit
echo "pip $*" >> "$MACHINE/log"
[ -e "$MACHINE/slow-pip" ] && sleep 0.7
[ -e "$MACHINE/killed" ] && kill -9 "$PPID"
if [ -e "$MACHINE/pip-says" ]; then cat "$MACHINE/pip-says"; exit 1; fi
exit 0
"""
APT = """#!/bin/sh
echo "apt-get $*" >> "$MACHINE/log"
[ -e "$MACHINE/offline" ] && { echo "E: Unable to fetch some archives" >&2; exit 100; }
case "$*" in
  *install*python3-venv) rm -f "$MACHINE/no-venv" ;;
  *install*chromium-headless-shell) [ ! -e "$MACHINE/old-debian" ] || exit 100
    cat "$MACHINE/id" > "$MACHINE/chromium-headless-shell";
      chmod +x "$MACHINE/chromium-headless-shell" ;;
  *install*chromium) cat "$MACHINE/id" > "$MACHINE/chromium"; chmod +x "$MACHINE/chromium" ;;
esac
"""
OFFLINE = (
    "WARNING: Retrying (Retry(total=2)) after connection broken by 'NewConnectionError'\n" * 40
    + "ERROR: Could not find a version that satisfies the requirement attrs==26.1.0\n"
    + "ERROR: No matching distribution found for attrs==26.1.0\n"
)


class Machine:
    """A clone in one folder, and in another all the programs that its machine has."""

    def __init__(self, folder: Path) -> None:
        self.clone, self.has = folder / "clone", folder / "bin"
        (self.clone / "scripts").mkdir(parents=True)
        self.has.mkdir()
        shutil.copy(SETUP, self.clone / "scripts")
        self.write("requirements.txt", "attrs==26.1.0")
        self.write("requirements-test.txt", "attrs==26.1.0\npytest==9.2.0")
        self.write("pyproject.toml", "")
        for tool in TOOLS:
            if found := shutil.which(tool):
                (self.has / tool).symlink_to(found)
        self.give("python3", PYTHON)
        self.give("pip", PIP)
        self.user(1000)

    def write(self, name: str, text: str) -> None:
        (self.clone / name).write_text(text, encoding="utf-8")

    def give(self, program: str, text: str = "") -> None:
        (self.has / program).write_text(text, encoding="utf-8")
        (self.has / program).chmod(0o755)

    def user(self, number: int) -> None:
        self.give("id", f"#!/bin/sh\necho {number}\n")

    def start(self, call: str, **more: str) -> subprocess.Popen[str]:
        environment = {"PATH": str(self.has), "MACHINE": str(self.has), **more}
        return subprocess.Popen(
            ["bash", "-euo", "pipefail", "-c", f". scripts/setup.sh; {call}"],
            cwd=self.clone,
            env={**environment, "REAL_PYTHON": sys.executable},
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
        )

    def run(self, call: str = "set_up requirements.txt", **more: str) -> tuple[int, str, str]:
        """The exit code, and what stands on standard output and on standard error."""
        process = self.start(call, **more)
        said, complained = process.communicate(timeout=60)
        return process.returncode, said, complained

    def log(self) -> list[str]:
        """What was done to this machine since this was last asked."""
        path = self.has / "log"
        done = path.read_text(encoding="utf-8").splitlines() if path.is_file() else []
        path.unlink(missing_ok=True)
        return done


@pytest.fixture
def machine(tmp_path: Path) -> Machine:
    return Machine(tmp_path)


def _stops(machine: Machine, *words: str, call: str = "set_up requirements.txt") -> None:
    """It ends with code 4 and one line that holds ``words``."""
    code, _, complained = machine.run(call)
    assert code == 4
    assert complained.count("\n") == 1, complained
    assert [word for word in words if word not in complained] == [], complained


def test_once_then_silent(machine: Machine) -> None:
    assert machine.run() == (0, "setting up .venv, once ...\n", "")
    made, locked, program = machine.log()
    assert made == "venv"
    assert locked.endswith("--require-hashes -r requirements.txt")
    assert program.endswith("--no-deps --no-build-isolation --editable .")
    assert machine.run() == (0, "", "")
    assert machine.log() == []


@pytest.mark.parametrize("name", ["requirements.txt", "pyproject.toml"])
def test_a_change_is_installed(machine: Machine, name: str) -> None:
    machine.run()
    machine.log()
    machine.write(name, "changed")
    assert machine.run() == (0, "setting up .venv, once ...\n", "")
    assert [line[:3] for line in machine.log()] == ["pip", "pip"]  # into the same .venv


def test_each_list_has_its_stamp(machine: Machine) -> None:
    machine.run()
    machine.run("set_up requirements-test.txt")
    machine.log()
    for name in ("requirements.txt", "requirements-test.txt"):
        assert machine.run(f"set_up {name}") == (0, "", "")
    assert machine.log() == []


def test_no_python(machine: Machine) -> None:
    (machine.has / "python3").unlink()
    _stops(machine, "Python 3.11", "apt-get install python3 python3-venv")


def test_old_python(machine: Machine) -> None:
    machine.give("old-python")
    _stops(machine, "Python 3.11 or later")


def test_another_name_for_python(machine: Machine) -> None:
    machine.give("python3.12", PYTHON.replace("old-python", "no-such-file"))
    machine.give("old-python")
    assert machine.run()[0] == 0


def test_no_venv_module(machine: Machine) -> None:
    machine.give("no-venv")
    _stops(machine, "apt-get install python3-venv")
    machine.give("apt-get", APT)
    _stops(machine, "apt-get install python3-venv")  # there, but this user is not root
    machine.user(0)
    machine.give("offline")
    _stops(machine, "apt-get install python3-venv")
    (machine.has / "offline").unlink()
    assert machine.run()[0] == 0


@pytest.mark.parametrize(
    "pip_says, words",
    [
        (OFFLINE, ["pip download --require-hashes -r requirements.txt", "PIP_FIND_LINKS"]),
        ("ERROR: THESE PACKAGES DO NOT MATCH THE HASHES FROM ...\n", ["another hash"]),
        ("ERROR: [Errno 28] No space left on device\n", ["disk is full"]),
        ("a\nERROR: something new\n", ["ERROR: something new", "requirements.txt", "pip.log"]),
        ("something new\n", ["something new", "pip.log"]),
        ("", ["pip.log"]),
    ],
)
def test_pip_fails(machine: Machine, pip_says: str, words: list[str]) -> None:
    machine.give("pip-says", pip_says)
    _stops(machine, *words)
    (machine.has / "pip-says").unlink()
    machine.log()
    assert machine.run()[0] == 0
    assert [line[:3] for line in machine.log()] == ["pip", "pip"]


def test_a_failure_leaves_what_is_whole(machine: Machine) -> None:
    """Without a network the tests cannot be set up, but the site can still be built."""
    machine.run()
    machine.give("pip-says", OFFLINE)
    _stops(machine, "PIP_NO_INDEX", call="set_up requirements-test.txt")
    assert machine.run() == (0, "", "")


@pytest.mark.parametrize("how", ["no python", "no pip", "moved", "failed halfway", "killed"])
def test_a_half_made_environment_is_mended(machine: Machine, how: str) -> None:
    machine.run()
    if how == "no python":
        (machine.clone / ".venv" / "bin" / "python").unlink()
    elif how == "no pip":
        machine.write(".venv/bin/python", "#!/bin/sh\nexit 1\n")
    elif how == "moved":
        machine.clone = machine.clone.rename(machine.clone.parent / "elsewhere")
    else:
        trouble = "pip-says" if how == "failed halfway" else "killed"
        machine.give(trouble, "Installing collected packages: attrs\nOperation cancelled\n")
        assert machine.run("set_up requirements-test.txt")[0] != 0
        (machine.has / trouble).unlink()
    machine.log()
    assert machine.run() == (0, "setting up .venv, once ...\n", "")
    assert [line[:3] for line in machine.log()] == ["ven", "pip", "pip"]
    assert machine.run() == (0, "", "")


def test_two_at_once(machine: Machine) -> None:
    machine.give("slow-pip")
    started = [machine.start("set_up requirements.txt") for _ in range(2)]
    said = [process.communicate(timeout=60) for process in started]
    assert [process.returncode for process in started] == [0, 0]
    assert [line[:3] for line in machine.log()] == ["ven", "pip", "pip"]
    waited = "another set-up is at work here: waiting for it ...\n"
    assert sorted(said) == [(waited, ""), ("setting up .venv, once ...\n", "")]


def test_browser(machine: Machine) -> None:
    call = 'find_browser; echo "${ALMANAC_CHROMIUM:-none}"'
    code, said, complained = machine.run(call)
    assert (code, said) == (0, "none\n")
    assert complained.count("\n") == 1
    assert "left out" in complained and "apt-get install chromium" in complained
    code, _, complained = machine.run(call, CI="true")
    assert code == 4
    assert complained.count("\n") == 1
    assert "CI leaves no test out" in complained
    machine.give("apt-get", APT)
    assert machine.log() == []
    machine.user(0)
    code, said, complained = machine.run(call, CI="true")
    assert (code, said.splitlines()[-1], complained) == (0, str(machine.has / "chromium"), "")
    machine.log()
    machine.give("my-browser", "#!/bin/sh\n")
    own = str(machine.has / "my-browser")
    assert machine.run(call, ALMANAC_CHROMIUM=own) == (0, f"{own}\n", "")
    assert machine.log() == []


def test_preferred_browser(machine: Machine) -> None:
    """It is installed beside another one; where it cannot be had, it is sought once and the other
    serves.
    """
    shell = "chromium-headless-shell"
    call = f'find_browser {shell}; echo "${{ALMANAC_CHROMIUM:-none}}"'
    machine.run()  # makes .venv
    machine.give("chromium", "#!/bin/sh\n")
    machine.give("apt-get", APT)
    plain = str(machine.has / "chromium")
    assert machine.run(call, ALMANAC_CHROMIUM=plain) == (0, f"{plain}\n", "")
    machine.user(0)
    machine.give("old-debian")
    machine.log()
    for asked in (True, False):
        code, said, complained = machine.run(call)
        assert (code, said.splitlines()[-1], complained) == (0, plain, "")
        assert bool(machine.log()) == asked
    (machine.has / "old-debian").unlink()
    (machine.clone / ".venv/browser-sought").unlink()
    for asked in (True, False):
        code, said, complained = machine.run(call)
        assert (code, said.splitlines()[-1], complained) == (0, str(machine.has / shell), "")
        assert bool(machine.log()) == asked
    assert machine.run('find_browser; echo "$ALMANAC_CHROMIUM"')[1] == f"{plain}\n"


@pytest.mark.parametrize(
    "npm_says, words",
    [
        ("npm error code ENOTFOUND\n" * 30, ["npm could not fetch", "no network reached"]),
        ("npm error code EINTEGRITY\n", ["npm could not fetch", "EINTEGRITY"]),
    ],
)
def test_npm_fails(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, npm_says: str, words: list[str]
) -> None:
    for program, body in [("node", "echo v24.0.0"), ("npm", f"printf '{npm_says}'; exit 1")]:
        (tmp_path / program).write_text(f"#!/bin/sh\n{body}\n", encoding="utf-8")
        (tmp_path / program).chmod(0o755)
    monkeypatch.setenv("PATH", str(tmp_path))
    (tmp_path / "package-lock.json").write_text("{}", encoding="utf-8")
    with pytest.raises(NodeError) as raised:
        fetch_libraries(tmp_path)
    assert [word for word in words if word not in str(raised.value)] == []
    assert str(raised.value).count("\n") <= 1


def test_no_node_and_no_network(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "said").write_text(OFFLINE, encoding="utf-8")
    python = tmp_path / "python"
    python.write_text(
        f"#!/bin/sh\nwhile read -r line; do echo $line; done < {tmp_path}/said; exit 1\n"
    )
    python.chmod(0o755)
    monkeypatch.setattr(sys, "executable", str(python))
    monkeypatch.setenv("PATH", str(tmp_path))
    with pytest.raises(NodeError) as raised:
        install_node(tmp_path)
    assert "install nodejs (20 or later) and npm" in str(raised.value)
    assert "\n" not in str(raised.value)
