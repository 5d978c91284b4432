# One virtual environment, made once, and again when what it is made of changes.
ensure_environment() {
  local folder=$1 what=$2 python stamp
  python=$(command -v python3.13 || command -v python3.12 || command -v python3.11 || command -v python3)
  "$python" -c 'import sys; sys.exit(sys.version_info < (3, 11))' ||
    { echo "Evenrow needs Python 3.11 or newer; this is $("$python" --version)." >&2; exit 1; }
  stamp=$(cksum < pyproject.toml)
  if [ "$(cat "$folder/made-of" 2>/dev/null)" != "$stamp $what" ]; then
    [ -x "$folder/bin/python" ] || "$python" -m venv "$folder"
    "$folder/bin/pip" install --quiet --disable-pip-version-check --editable "$what"
    echo "$stamp $what" > "$folder/made-of"
  fi
}
