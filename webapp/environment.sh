# One virtual environment, made once, and again when what it is made of changes.

find_python() {
  local name
  for name in python3 python3.14 python3.13 python3.12 python3.11 python; do
    "$name" -c 'import sys, venv, ensurepip; sys.exit(sys.version_info < (3, 11))' 2>/dev/null && { echo "$name"; return; }
  done
  echo "Evenrow needs Python 3.11 or newer, with its venv module (on Debian: apt install python3-venv)." >&2
  return 1
}

ensure_environment() {
  local folder=$1 what=$2 python stamp
  stamp="$(cksum < pyproject.toml) $what"
  [ "$(cat "$folder/made-of" 2>/dev/null)" = "$stamp" ] && return
  if [ ! -x "$folder/bin/pip" ]; then
    python=$(find_python)
    "$python" -m venv "$folder"
  fi
  "$folder/bin/pip" install --quiet --disable-pip-version-check --editable "$what"
  echo "$stamp" > "$folder/made-of"
}
