#!/usr/bin/env bash
# tools/compare-docs.sh DIR [--update]
#
# DIR holds freshly made documents as they lie under docs/. Says which of those under
# docs/ differ or are missing, and which made page has no maker any more; --update
# copies them over instead.
set -u
cd "$(dirname "$0")/.." || exit 1
. tools/lib.sh
dir=${1:-}
[ -d "$dir" ] || stop "usage: tools/compare-docs.sh DIR [--update]   (after ./check: build/check-docs)"

differs=0
while read -r file; do
  if [ "${2:-}" = --update ]; then
    mkdir -p "docs/$(dirname "$file")"
    cmp -s "$dir/$file" "docs/$file" || { cp "$dir/$file" "docs/$file" && say "docs/$file: updated"; }
  elif [ ! -f "docs/$file" ]; then
    say "docs/$file: missing"
    differs=1
  elif ! cmp -s "$dir/$file" "docs/$file"; then
    say "docs/$file: differs from what is made now:"
    diff -u "docs/$file" "$dir/$file" | head -n 30
    differs=1
  fi
done < <(cd "$dir" && find . -type f | sed 's|^\./||' | LC_ALL=C sort)
if [ -d "$dir/manual" ] && [ -d docs/manual ]; then
  # Pages written by hand may lie beside the made ones; a made one says so in its first line.
  for page in docs/manual/*.md; do
    [ -f "$page" ] || continue
    if [ ! -f "$dir/manual/$(basename "$page")" ] && head -n 1 "$page" | grep -q '^<!-- Made by'; then
      say "$page: nothing makes it any more"
      if [ "${2:-}" = --update ]; then rm "$page"; else differs=1; fi
    fi
  done
fi
[ "$differs" = 0 ] || stop "Bring them up to date with: tools/compare-docs.sh build/check-docs --update"
