#!/usr/bin/env bash
# Looks for answers that break the interface's own description: schemathesis, all checks, loopback only. Twice: as a
# stranger, who is mostly turned away, and as someone who holds a plan's edit link, who reaches what lies behind it.
#
#   tests/schemathesis.sh BINARY FOLDER      FOLDER keeps the Python packages; EXAMPLES sets how long it looks
set -euo pipefail
BINARY=$(realpath "$1")
FOLDER=$(realpath -m "$2")
DATA=$(mktemp -d)
[ -x "$FOLDER/bin/schemathesis" ] || { python3 -m venv "$FOLDER" && "$FOLDER/bin/pip" install --quiet schemathesis==4.32.5; }

# What it remembers between runs is not kept.
cd "$DATA"
STILLGROUND_UNCOUNTED=127.0.0.1 "$BINARY" serve --listen 127.0.0.1:0 --data "$DATA" >"$DATA/address" 2>"$DATA/log" &
SERVICE=$!
trap 'kill "$SERVICE"; wait "$SERVICE" || true; rm -r "$DATA"' EXIT
for _ in $(seq 100); do [ -s "$DATA/address" ] && break; sleep 0.1; done
API=$(head -n 1 "$DATA/address")api/v1

# Answers may each be in range and contradict each other, which no schema says: those are refused with 422. A save without
# If-Match is answered with 428, which RFC 6585 made for it.
stranger() {
  cat <<'SETTINGS'
[checks]
positive_data_acceptance.expected-statuses = ["2xx", "3xx", 401, 403, 404, 409, 412, 422, 428]
missing_required_header.expected-statuses = [400, 401, 403, 404, 406, 415, 422, 428]
SETTINGS
}

# A real plan and its edit link, on top of whatever revision stands; of its links, not that one is replaced. A wrong secret is
# answered as an unknown one is, 404, where the check wants 401: the tests of links hold what it looks for. A possible
# name is replaced with the plan's just before the request leaves; a name that the tool made wrong is sent as it is. A
# [parameters] override would set both right, and the tool would then miss the refusal of what was no longer wrong.
holder() {
  python3 - "$API" "$DATA/fixed.py" <<'PLAN'
import json, sys, urllib.request
plan = json.dumps({"schema_version": 1, "title": "Looked at from all sides", "work": {"start_date": "2026-05-04"}}).encode()
request = urllib.request.Request(sys.argv[1] + "/plans", plan, {"content-type": "application/json"})
made = json.load(urllib.request.urlopen(request))
with open(sys.argv[2], "w") as hooks:
    hooks.write(f"""import re

import schemathesis

FIXED = {{"id": ("[a-z2-7]{{16}}", {made["id"]!r}), "right": ("edit|record|view", "view")}}


@schemathesis.hook
def before_call(context, case, kwargs):
    for name in FIXED.keys() & (case.path_parameters or {{}}).keys():
        possible, real = FIXED[name]
        if re.fullmatch(possible, str(case.path_parameters[name])):
            case.path_parameters[name] = real
""")
print(f'hooks = "{sys.argv[2]}"')
print(f'headers = {{ Authorization = "Bearer {made["links"]["edit"]}" }}')
print("[parameters]")
print('"header.If-Match" = "*"')
PLAN
  stranger
}

look() { # settings, further words…
  local settings=$1
  shift
  "$FOLDER/bin/schemathesis" --config-file "$settings" run "$API/openapi.json" --checks all --max-examples "${EXAMPLES:-50}" \
    --continue-on-failure --request-timeout 40 --max-response-time 30 --no-color "$@"
}

stranger >"$DATA/stranger.toml"
holder >"$DATA/holder.toml"
FOUND=0
look "$DATA/stranger.toml" || FOUND=1
look "$DATA/holder.toml" --exclude-checks ignored_auth || FOUND=1
exit "$FOUND"
