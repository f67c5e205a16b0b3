#!/usr/bin/env bash
# tools/check-format.sh [--fix]  compares the tracked C++ files with .clang-format, by one
# version of the formatter, since versions differ. Prints "N passed, N failed" (one a file).
set -u
cd "$(dirname "$0")/.." || exit 1
. tools/lib.sh
formatter=$(command -v clang-format-19) || stop "clang-format-19 is missing: tools/install.sh quality"
list() { git ls-files -z -- '*.cpp' '*.hpp'; }

if [ "${1:-}" = --fix ]; then
  list | xargs -0 -r "$formatter" -i
  exit
fi
passed=0 failed=0
while IFS= read -r -d '' file; do
  [ -f "$file" ] || continue
  if "$formatter" "$file" | cmp -s - "$file"; then
    passed=$((passed + 1))
  else
    failed=$((failed + 1))
    say "$file: not as clang-format-19 sets it (tools/check-format.sh --fix)"
  fi
done < <(list)
say "$passed passed, $failed failed"
[ "$failed" = 0 ]
