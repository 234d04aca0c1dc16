# Sourced by scripts/build and scripts/test: the scripts of the pages, bundled anew where something of them has changed.
# Node comes from PyPI where the machine has none. `check` and `review` need none of it.

# make_bundles [--for-tests]: with what checks the scripts, too.
make_bundles() {
  .venv/bin/python -m almanac.publish.bundles "$@"
}
