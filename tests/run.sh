#!/usr/bin/env bash
# Installs what is missing, builds, runs every test, and closes with "N passed, N failed".
set -euo pipefail
cd "$(dirname "$0")/.."

bash .ci/install test
folder="$(bash .ci/configure)"
cmake --build "$folder" >&2
RIMEHAUL_GPX11_XSD="$(bash .ci/gpx_schema)" ||
  echo "the schema of GPX 1.1 could not be fetched: its test is skipped" >&2
export RIMEHAUL_GPX11_XSD
export LSAN_OPTIONS="suppressions=$PWD/.ci/leaks:print_suppressions=0"

passed=0
failed=0
for program in "$folder"/tests/test_*; do
  [ -x "$program" ] || continue
  name="$(basename "$program")"
  summary="$folder/$name.txt"
  if "$program" --no-colors=true >"$summary" 2>&1; then ended=0; else ended=$?; fi
  counts="$(sed -n 's/.*test cases: *[0-9]* | *\([0-9]*\) passed | *\([0-9]*\) failed.*/\1 \2/p' "$summary" | tail -n 1)"
  read -r good bad <<<"${counts:-0 0}"
  if [ "$ended" -ne 0 ] && [ "$bad" -eq 0 ]; then
    bad=1 # it ended before it could count: a crash or a sanitizer's finding
  fi
  if [ "$good" -eq 0 ] && [ "$bad" -eq 0 ]; then
    bad=1 # a test program that runs no test proves nothing
  fi
  [ "$bad" -ne 0 ] && cat "$summary"
  echo "$name: $good passed, $bad failed"
  passed=$((passed + good))
  failed=$((failed + bad))
done
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ] && [ "$passed" -gt 0 ]
