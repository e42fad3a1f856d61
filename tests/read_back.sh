#!/usr/bin/env bash
# Files that a plan is carried away in, read back by libraries that share nothing with those that wrote them.
#   tests/read_back.sh BINARY FOLDER     the service's binary, and a folder for the Python environment
set -euo pipefail

BINARY="$1"
FOLDER="$2"
[ -x "$FOLDER/bin/python" ] || python3 -m venv "$FOLDER"
"$FOLDER/bin/python" -c "import ezdxf, icalendar" 2>/dev/null || "$FOLDER/bin/pip" install --quiet ezdxf==1.4.5 icalendar==7.3.2
"$FOLDER/bin/python" "$(dirname "$0")/read_back.py" "$BINARY"
