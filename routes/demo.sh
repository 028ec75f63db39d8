#!/usr/bin/env bash
# Installs what is missing, builds, plans a route on the invented site Marrowfell, prints its card,
# and says where its printed sheet, JSON and GPX lie.
set -euo pipefail
cd "$(dirname "$0")/.."

bash .ci/install build
folder="$(bash .ci/configure)"
cmake --build "$folder" --target rimehaul >&2

out="$folder/demo"
mkdir -p "$out"
"$folder/rimehaul" route routes/marrowfell \
  --rig "Broadfoot with sled" --snow moist --load 40 --towed-load 60 --passengers 1 \
  --visibility 400 --bulletin 2 --wind 18 --now 2026-02-01T17:00:00Z \
  --from "Cable House" --to "Fell Lodge" \
  --card "$out/card.pdf" --json "$out/card.json" --gpx "$out/card.gpx"
echo
echo "The card to print: $out/card.pdf"
echo "The card as JSON: $out/card.json"
echo "The route as GPX: $out/card.gpx"
