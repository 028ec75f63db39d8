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

# Prints "NAME: N passed, N failed" and what was skipped for want of a machine that can; before it all that a program said that failed.
run_program() {
  local program="$1" name summary ended=0 counts good bad skipped said
  name="$(basename "$program")"
  summary="$program.txt"
  "$program" --no-colors=true >"$summary" 2>&1 || ended=$?
  counts="$(sed -n 's/.*test cases: *[0-9]* | *\([0-9]*\) passed | *\([0-9]*\) failed | *\([0-9]*\) skipped.*/\1 \2 \3/p' "$summary" | tail -n 1)"
  read -r good bad skipped <<<"${counts:-0 0 0}"
  if [ "$ended" -ne 0 ] && [ "$bad" -eq 0 ]; then
    bad=1 # it ended before it could count
  fi
  if [ "$good" -eq 0 ] && [ "$bad" -eq 0 ]; then
    bad=1 # a test program that runs no test proves nothing
  fi
  if [ "$bad" -ne 0 ]; then cat "$summary"; fi
  [ "${skipped:-0}" -eq 0 ] || said=", $skipped skipped"
  echo "$name: $good passed, $bad failed${said:-}" | tee "$program.count"
}
export -f run_program
rm -f "$folder"/tests/test_*.count
find "$folder/tests" -maxdepth 1 -name 'test_*' -perm -u+x | sort |
  xargs -P "$(nproc)" -I{} bash -c 'run_program "$1"' _ {}

cat "$folder"/tests/test_*.count | awk -F'[ ,]+' '{ passed += $2; failed += $4 }
  END { print passed + 0 " passed, " failed + 0 " failed"; exit failed != 0 || passed == 0 }'
