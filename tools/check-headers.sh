#!/usr/bin/env bash
# tools/check-headers.sh  compiles each header of src/ by itself, so that no header leans
# on what another file happened to include before it. Through ccache, two at a time.
# Prints the compiler's words for each that fails, then "N passed, N failed".
set -u
cd "$(dirname "$0")/.." || exit 1
. tools/lib.sh

out=build/headers
mkdir -p "$out"
# Include roots of a room beside src/, as its own sources are built with: generated tables,
# and the libraries that a private header may name.
commands=build/asan/compile_commands.json
roots_of() { # room
  [ -f "$commands" ] || return 0
  grep -E "\"command\": .*/src/$1/" "$commands" | grep -oE -- '(-I|-isystem )[^ "]+' | sort -u | tr '\n' ' '
}
for room in src/*/; do
  room=$(basename "$room")
  roots_of "$room" >"$out/$room.roots"
done
export out

one() { # header, relative to the project
  local header=${1#src/} name
  name=$(printf '%s' "$header" | tr '/.' '__')
  printf '#include "%s"\n' "$header" >"$out/$name.cpp.new"
  # Left alone when the same, so that ccache sees an old file.
  cmp -s "$out/$name.cpp.new" "$out/$name.cpp" || cp "$out/$name.cpp.new" "$out/$name.cpp"
  rm -f "$out/$name.cpp.new"
  if $compiler -std=c++23 -O0 -Wall -Wextra -Wpedantic -Wconversion -Wshadow -Werror \
    -Isrc $(cat "$out/${header%%/*}.roots") -c "$out/$name.cpp" -o "$out/$name.o" >"$out/$name.log" 2>&1; then
    echo "good"
  else
    echo "bad $1"
  fi
}
export -f one
compiler="$(command -v ccache) g++"
compiler=${compiler# }
export compiler

results=$(find src -name '*.hpp' -not -path '*/.*' 2>/dev/null | LC_ALL=C sort | tr '\n' '\0' |
  xargs -0 -r -n 1 -P "$(jobs_for_build)" bash -c 'one "$1"' _)
passed=$(printf '%s\n' "$results" | grep -c '^good')
failed=$(printf '%s\n' "$results" | grep -c '^bad')
printf '%s\n' "$results" | sed -n 's/^bad //p' | while read -r header; do
  say "$header does not compile by itself:"
  head -n 12 "$out/$(printf '%s' "${header#src/}" | tr '/.' '__').log"
done
say "$passed passed, $failed failed"
[ "$failed" = 0 ]
