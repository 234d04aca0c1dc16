# Sourced by scripts/build and scripts/test: the virtual environment from pinned requirements, and a browser for the tests.

# set_up FILE...: make .venv and install FILE... into it, unless exactly these have been installed already.
set_up() {
  local stamp=.venv/installed-$(basename "${!#}")
  if [ -f "$stamp" ] && cat "$@" pyproject.toml | cmp -s - "$stamp"; then
    return
  fi
  command -v python3 >/dev/null || { echo "python3 is missing: install it (Debian: apt-get install python3 python3-venv)" >&2; exit 1; }
  python3 -c 'import sys; sys.exit(sys.version_info < (3, 11))' || { echo "Python 3.11 or newer is needed" >&2; exit 1; }
  echo "setting up .venv, once ..."
  if [ ! -x .venv/bin/pip ]; then
    rm -rf .venv
    python3 -m venv .venv || {
      [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null || { echo "the venv module is missing: install python3-venv" >&2; exit 1; }
      apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq python3-venv >/dev/null
      rm -rf .venv
      python3 -m venv .venv
    }
  fi
  local files=()
  for file in "$@"; do files+=(-r "$file"); done
  .venv/bin/pip install --quiet --disable-pip-version-check --require-hashes "${files[@]}"
  .venv/bin/pip install --quiet --disable-pip-version-check --no-deps --no-build-isolation --editable .
  cat "$@" pyproject.toml > "$stamp"
}

# find_browser: name a Chromium in ALMANAC_CHROMIUM, installing Debian's where that can be done; else say what is skipped.
find_browser() {
  local name
  for name in "${ALMANAC_CHROMIUM:-}" chromium chromium-browser google-chrome; do
    if [ -n "$name" ] && command -v "$name" >/dev/null; then
      ALMANAC_CHROMIUM=$(command -v "$name")
      export ALMANAC_CHROMIUM
      return
    fi
  done
  if [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null; then
    echo "installing chromium for the browser tests, once ..."
    if apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq chromium >/dev/null; then
      ALMANAC_CHROMIUM=$(command -v chromium)
      export ALMANAC_CHROMIUM
      return
    fi
  fi
  echo "no Chromium: the browser tests are skipped. To run them: sudo apt-get install chromium, or set ALMANAC_CHROMIUM" >&2
}
