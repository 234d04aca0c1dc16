# Sourced by the scripts beside it, from the repository's root: the virtual environment .venv from
# locked requirements, and a browser for the tests. What cannot be done here is told in one sentence
# that says what to install by hand, with exit code 4.

PIP_LOG=.venv/pip.log

# set_up FILE...: make .venv and install FILE... into it, unless exactly these are there already.
set_up() {
  local stamp
  stamp=.venv/installed-$(basename "${!#}")
  is_set_up "$stamp" "$@" && return
  find_python
  [ -w . ] || stop "set-up makes .venv in $PWD, where you may not write: take a clone of your own"
  exec 9<scripts/setup.sh # a lock that needs no file of its own, and ends with whoever holds it
  lock_9
  if ! is_set_up "$stamp" "$@"; then # another set-up may just have done it
    echo "setting up .venv, once ..."
    make_environment
    install_into_it "$@"
    digest "$@" >"$stamp"
  fi
  exec 9<&-
}

stop() {
  echo "$1" >&2
  exit 4
}

# The place counts, because the programs in .venv name it in their first line.
digest() {
  { pwd -P && cat "$@" pyproject.toml; } | { sha256sum 2>/dev/null || shasum -a 256; }
}

is_set_up() {
  local stamp=$1
  shift
  [ -f "$stamp" ] && [ ! -e .venv/unfinished ] && [ "$(digest "$@")" = "$(cat "$stamp")" ] \
    && .venv/bin/python -c 'import pip' 2>/dev/null
}

# Name a Python that is new enough in PYTHON: a Mac's own python3 is not.
find_python() {
  for PYTHON in python3 python3.15 python3.14 python3.13 python3.12 python3.11; do
    "$PYTHON" -c 'import sys; sys.exit(sys.version_info < (3, 11))' 2>/dev/null && return
  done
  stop "Python 3.11 or later is missing: install it (Debian: apt-get install python3 python3-venv)"
}

# Wait for the lock on file descriptor 9. flock(1) is not on every system; Python has it built in.
lock_9() {
  "$PYTHON" -c 'import fcntl; fcntl.flock(9, fcntl.LOCK_EX | fcntl.LOCK_NB)' 2>/dev/null || {
    echo "another set-up is at work here: waiting for it ..."
    "$PYTHON" -c 'import fcntl; fcntl.flock(9, fcntl.LOCK_EX)'
  }
}

# Leave a sound .venv as it is; make a half-made, moved or broken one anew.
make_environment() {
  if [ ! -e .venv/unfinished ] && grep -qsF "$(pwd -P)/.venv" .venv/bin/activate \
    && .venv/bin/python -m pip --version >/dev/null 2>&1; then
    return
  fi
  rm -rf .venv 2>/dev/null || stop "$PWD/.venv is not whole and not yours: have its owner remove it"
  if ! "$PYTHON" -c 'import ensurepip, venv' 2>/dev/null; then
    install_debian python3-venv
    "$PYTHON" -c 'import ensurepip, venv' 2>/dev/null \
      || stop "Python's venv module is missing: install it (Debian: apt-get install python3-venv)"
  fi
  "$PYTHON" -m venv .venv >/dev/null 2>&1 \
    || stop "$PYTHON cannot make $PWD/.venv: see that the disk has room, and run this again"
}

install_into_it() {
  local files=() file
  for file in "$@"; do files+=(-r "$file"); done
  touch .venv/unfinished
  if ! run_pip --require-hashes "${files[@]}" \
    || ! run_pip --no-deps --no-build-isolation --editable .; then
    # Until pip installs, nothing has changed: what was whole before stays of use.
    grep -q "^Installing collected packages" "$PIP_LOG" || rm -f .venv/unfinished
    stop "$(pip_trouble "${!#}")"
  fi
  rm -f .venv/unfinished "$PIP_LOG"
}

run_pip() {
  .venv/bin/python -m pip install --disable-pip-version-check --retries 3 "$@" >"$PIP_LOG" 2>&1
}

# pip_trouble FILE: one sentence for what went wrong, from pip's log.
pip_trouble() {
  local offline='connection broken|NewConnectionError|ConnectionError|Could not fetch URL|timed out'
  if grep -qi "DO NOT MATCH THE HASHES" "$PIP_LOG"; then
    echo "a package is not the one that $1 asks for (another hash): do not install it," \
      "and find out why; pip's words are in $PIP_LOG"
  elif grep -qi "No space left on device" "$PIP_LOG"; then
    echo "the disk is full: make room for some 500 MB in $PWD, and run this again"
  elif grep -qiE "$offline" "$PIP_LOG"; then
    echo "pip could not reach its index: connect and run this again, or fetch the packages elsewhere" \
      "with 'pip download --require-hashes -r $1 -d FOLDER' and run this with PIP_NO_INDEX=1 and" \
      "PIP_FIND_LINKS=FOLDER; pip's words are in $PIP_LOG"
  else
    echo "pip could not install $1 ($(grep -m 1 "^ERROR" "$PIP_LOG" || tail -n 1 "$PIP_LOG")):" \
      "its words are in $PIP_LOG"
  fi
}

# install_debian PACKAGE...: where this is root on Debian; whoever calls looks whether it helped.
install_debian() {
  if [ "$(id -u)" != 0 ] || ! command -v apt-get >/dev/null; then return 0; fi
  echo "installing Debian's $*, once ..."
  apt-get update -qq >/dev/null 2>&1 || true
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq -o DPkg::Lock::Timeout=300 "$@" \
    >/dev/null 2>&1 || true
}

# find_browser [PREFERRED]: name a Chromium in ALMANAC_CHROMIUM, installing Debian's where that can be done: the
# preferred package, which is also the program's name, if it can be had; asked for once in a folder.
# Without one the tests leave some out and say which; never in CI.
find_browser() {
  name_browser "${ALMANAC_CHROMIUM:-}" "$@" && return
  if [ $# != 0 ] && [ ! -e .venv/browser-sought ]; then
    install_debian "$@"
    name_browser "$@" && return
    touch .venv/browser-sought 2>/dev/null || true
  fi
  name_browser chromium chromium-browser google-chrome && return
  install_debian chromium
  name_browser chromium && return
  local hint="install Chromium (Debian: apt-get install chromium), or name one in ALMANAC_CHROMIUM"
  [ -z "${CI:-}" ] || stop "no browser, and CI leaves no test out: $hint"
  echo "no browser, so the tests that need one are left out: to run them, $hint" >&2
}

# name_browser PROGRAM...: the first of them that the machine has.
name_browser() {
  local name
  for name; do
    if [ -n "$name" ] && command -v "$name" >/dev/null; then
      ALMANAC_CHROMIUM=$(command -v "$name")
      export ALMANAC_CHROMIUM
      return
    fi
  done
  return 1
}
