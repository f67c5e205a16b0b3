#!/usr/bin/env bash
# tools/tidy.sh --all | --changed | FILE...
#
# clang-tidy-19 with our .clang-tidy on the files named, on those that differ from
# origin/main (or from the commit before), or on all of src/. A changed header is read
# through a source that includes it. Needs build/asan/compile_commands.json.
# A file found clean is not read again until it, a header that it includes or the rules change.
# WM_TIDY_MINUTES=N ends the reading after N minutes; what is left then counts as skipped.
# Prints the findings, then "N passed, N failed" (one a source file).
set -u
cd "$(dirname "$0")/.." || exit 1
. tools/lib.sh

tidy=$(command -v clang-tidy-19) || stop "clang-tidy-19 is missing: tools/install.sh quality"
commands=build/asan/compile_commands.json
[ -f "$commands" ] || stop "$commands is missing: cmake --preset asan"

changed_files() {
  local base head
  head=$(git rev-parse HEAD 2>/dev/null) || return 0
  base=$(git merge-base HEAD origin/main 2>/dev/null)
  if [ -z "$base" ] || [ "$base" = "$head" ]; then
    base=$(git rev-parse -q --verify HEAD~1 2>/dev/null)
  fi
  { git diff --name-only --diff-filter=d "${base:-$head}"
    git ls-files --others --exclude-standard; } | grep -E '^(src|tools)/.*\.(cpp|hpp)$'
}

# Sources to read for the files on stdin: a source itself, or one that includes the header.
sources_for() {
  local file stem
  while read -r file; do
    case $file in
      *.cpp) echo "$file" ;;
      *.hpp)
        stem=${file%.hpp}.cpp
        if [ -f "$stem" ]; then echo "$stem"
        else grep -rlF --include='*.cpp' "\"${file#src/}\"" src 2>/dev/null | LC_ALL=C sort | head -n 1
        fi ;;
    esac
  done
}

case ${1:-} in
  --all) wanted=$(find src -name '*.cpp') ;;
  --changed) wanted=$(changed_files | sources_for) ;;
  -* | '') stop "usage: tools/tidy.sh --all | --changed | FILE..." ;;
  *) wanted=$(printf '%s\n' "$@" | sources_for) ;;
esac
known=$(grep -o '"file": "[^"]*"' "$commands" | sed "s|\"file\": \"$PWD/||; s|\"$||")
wanted=$(printf '%s\n' "$wanted" | LC_ALL=C sort -u | grep -Fx "$known")

state=build/tidy
mkdir -p "$state/clean"
# The compile commands without the precompiled headers, which would have a small source read all of
# the library.
mkdir -p "$state/commands"
sed -E 's/ -Xclang -include-pch -Xclang [^ ]+//g; s/ -Xclang -include -Xclang [^ ]+//g; s/ -fpch-instantiate-templates//g; s/ -Xclang -fno-pch-timestamp//g' \
  "$commands" >"$state/commands/compile_commands.json"
# What each source included when it was last built, so that a changed header costs only its users.
rm -rf "$state/includes"
mkdir -p "$state/includes"
ninja -C build/asan -t deps 2>/dev/null | awk -v root="$PWD/" -v out="$state/includes/" '
  /^[^ ].*: #deps / { split($1, at, /\.dir\//); name = at[2]; sub(/\.o:$/, "", name); gsub("/", "__", name)
    keep = name ~ /^src__/; if (keep) { close(file); file = out name }; next }
  keep && $1 ~ /\.hpp$/ { path = $1; sub(/^\.\.\/\.\.\//, "", path); sub("^" root, "", path)
    if (path ~ /^src\//) print path > file }'

# The plugin that keeps the checks to our own declarations. It is used only if the linter still
# finds with it what is wrong with the probe.
scope=$state/own_scope.so
if [ ! "$scope" -nt tools/tidy_scope/own_scope.cpp ]; then
  clang++-19 -std=c++17 -fno-rtti -fPIC -shared -O1 -isystem /usr/lib/llvm-19/include tools/tidy_scope/own_scope.cpp -o "$scope" 2>"$state/own_scope.log" ||
    rm -f "$scope"
fi
load=
if [ -f "$scope" ]; then
  cp tools/tidy_scope/probe.txt "$state/probe.cpp"
  seen=$("$tidy" --load="$scope" --quiet --checks='-*,misc-redundant-expression' "$state/probe.cpp" -- -std=c++20 2>/dev/null)
  case $seen in *misc-redundant-expression*) load=--load=$scope ;; esac
fi
[ -n "$load" ] || say "tools/tidy_scope could not be used: libraries' headers are read as well, which takes ten times as long"

every_header=$({ find src -name '*.hpp'; echo .clang-tidy; } | hash_of_files)
ends=$(($(date +%s) + 60 * ${WM_TIDY_MINUTES:-100000}))
export tidy every_header state ends load
export -f hash_of_files

one() { # source
  local key log name headers=$every_header
  name=$(printf '%s' "$1" | sed 's|/|__|g')
  if [ -s "$state/includes/$name" ]; then
    headers=$({ cat "$state/includes/$name"; echo .clang-tidy; } | hash_of_files 2>/dev/null)
  fi
  key=$(printf '%s %s %s' "$1" "$headers" "$(sha256sum <"$1")" | sha256sum | cut -c1-40)
  if [ -e "$state/clean/$key" ]; then echo "good $1"; return; fi
  if [ "$(date +%s)" -ge "$ends" ]; then echo "left $1"; return; fi
  log=$state/$name.log
  # $load is one option or none; build/tidy has no blanks in its name.
  # shellcheck disable=SC2086
  if "$tidy" $load --quiet -p "$state/commands" --extra-arg=-Wno-enum-constexpr-conversion "$1" >"$log" 2>"$log.err"; then
    : >"$state/clean/$key"
    echo "good $1"
  else
    [ -s "$log" ] || mv "$log.err" "$log"
    echo "bad $1"
  fi
}
export -f one

results=$(printf '%s\n' "$wanted" | sed '/^$/d' | tr '\n' '\0' |
  xargs -0 -r -n 1 -P "$(jobs_for_build)" bash -c 'one "$1"' _)
# A finding in a header shows up through each source that includes it: print it once.
printf '%s\n' "$results" | sed -n 's/^bad //p' | while read -r file; do
  cat "$state/$(printf '%s' "$file" | sed 's|/|__|g').log"
done | sed "s|$PWD/||g" | awk '/: (warning|error):/ {keep = !seen[$0]++} keep' | head -n 400
passed=$(printf '%s\n' "$results" | grep -c '^good')
failed=$(printf '%s\n' "$results" | grep -c '^bad')
left=$(printf '%s\n' "$results" | grep -c '^left')
if [ "$left" -gt 0 ]; then
  say "skipped: $left changed sources, after ${WM_TIDY_MINUTES} minutes; ./check --deep reads them all"
  say "$passed passed, $failed failed, 1 skipped"
else
  say "$passed passed, $failed failed"
fi
[ "$failed" = 0 ]
