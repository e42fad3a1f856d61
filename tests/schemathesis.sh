#!/usr/bin/env bash
# Looks for answers that break the interface's own description: schemathesis, all checks, loopback only.
#
#   tests/schemathesis.sh BINARY FOLDER      FOLDER keeps the Python packages
set -euo pipefail
BINARY=$1
FOLDER=$2
DATA=$(mktemp -d)
[ -x "$FOLDER/bin/schemathesis" ] || { python3 -m venv "$FOLDER" && "$FOLDER/bin/pip" install --quiet schemathesis==4.32.5; }

"$BINARY" serve --listen 127.0.0.1:0 --data "$DATA" >"$DATA/address" 2>"$DATA/log" &
SERVICE=$!
trap 'kill "$SERVICE"; wait "$SERVICE" || true; rm -r "$DATA"' EXIT
for _ in $(seq 100); do [ -s "$DATA/address" ] && break; sleep 0.1; done
# Answers may each be in range and contradict each other, which no schema says: those are refused with 422.
cat >"$DATA/settings.toml" <<'SETTINGS'
[checks]
positive_data_acceptance.expected-statuses = ["2xx", "3xx", 401, 403, 404, 409, 422]
SETTINGS
"$FOLDER/bin/schemathesis" --config-file "$DATA/settings.toml" run "$(head -n 1 "$DATA/address")api/v1/openapi.json" \
  --checks all --max-examples ${EXAMPLES:-50} --continue-on-failure --request-timeout 30 --no-color
