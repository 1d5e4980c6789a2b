# The virtual environment that scripts/test and scripts/demo share. Sourced by them, not run.
# It goes to the project's root, and stands in .venv/, which git ignores.
#
#   environment test    the package with what the tests need
#   environment run     the package alone
#   environment browser what is tried in a browser
#   cairo               true if the cairo library can be loaded; installs it where that is possible
#   no_cairo            says what to install where it was not possible
#   bare                leaves nothing of the machine but the environment, git, bash and what these scripts call

set -euo pipefail
exec </dev/null

cd "$(dirname "${BASH_SOURCE[0]}")/.."
venv="$PWD/.venv"
export PATH="$venv/bin:$PATH" PYTHONUTF8=1
export PIP_DISABLE_PIP_VERSION_CHECK=1 PIP_NO_INPUT=1 PIP_ROOT_USER_ACTION=ignore

heading() { printf '== %s\n' "$*"; }

fail() {
    printf '%s: %s\n' "$0" "$*" >&2
    exit 1
}

# Installs Debian packages, if this is root on a machine that has them.
debian_install() {
    [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null || return 1
    heading "apt-get install $*"
    apt-get -qq -o Acquire::http::Timeout=30 update >/dev/null &&
        DEBIAN_FRONTEND=noninteractive apt-get -qq install -y "$@" >/dev/null
}

make_venv() {
    heading "making .venv with Python $("$python" -c 'import platform; print(platform.python_version())')"
    "$python" -m venv --clear "$venv" >/dev/null 2>&1 && return
    debian_install python3-venv || true
    "$python" -m venv --clear "$venv" || fail "$python cannot make a virtual environment"
}

# A stamp in .venv says for which interpreter, folder and pyproject.toml it was filled; it is filled again only
# when one of these has changed. What the tests need includes what a run needs.
environment() {
    local python base stamp wanted=.
    [ "$1" = run ] || wanted=".[$1]"
    python=$(PATH="${PATH#"$venv/bin:"}" command -v "${PYTHON:-python3}") || fail "no ${PYTHON:-python3} here; set PYTHON"
    "$python" -c 'import sys; sys.exit(sys.version_info < (3, 11))' || fail "$python is older than Python 3.11"
    PYTHON=$("$python" -c 'import sys; print(sys.executable)')
    export PYTHON  # by its place, for scripts that are started where nothing else is found by its name

    base="$("$python" -c 'import sys; print(sys.version)') $PWD"
    stamp="$base $(cksum <pyproject.toml)"
    if [ "$(cat "$venv/base" 2>/dev/null)" != "$base" ] || ! "$venv/bin/python" -c '' 2>/dev/null; then
        make_venv
        printf '%s\n' "$base" >"$venv/base"
    fi

    [ "$1" = run ] && [ "$(cat "$venv/test-stamp" 2>/dev/null)" = "$stamp" ] && return
    [ "$(cat "$venv/$1-stamp" 2>/dev/null)" = "$stamp" ] && return
    heading "installing $wanted into .venv"
    "$venv/bin/python" -m pip -qq install -e "$wanted" || fail "pip could not install $wanted"
    printf '%s\n' "$stamp" >"$venv/$1-stamp"
}

cairo() {
    "$venv/bin/python" -c 'import cairosvg' 2>/dev/null && return
    debian_install libcairo2 fonts-dejavu-core || true
    "$venv/bin/python" -c 'import cairosvg' 2>/dev/null
}

no_cairo() { "$venv/bin/python" -c 'from benchjoin.drafting.writers.cairo import NO_CAIRO; print(NO_CAIRO)'; }

# For tests, so that they cannot come to need a program that happens to be installed. PATH ends with a folder of links;
# what a Python starts by other ways than by its name is refused by the hook of tests/bare.
bare() {
    local name links="$venv/bare"
    mkdir -p "$links"
    for name in bash git cat cksum dirname id ln mkdir; do
        [ -e "$links/$name" ] || ! command -v "$name" >/dev/null || ln -sf "$(command -v "$name")" "$links/$name"
    done
    export PATH="$venv/bin:$links" PYTHONPATH="$PWD/tests/bare"
}
