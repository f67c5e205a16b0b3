#!/usr/bin/env bash
# tools/fuzz.sh            replays every corpus once, with the programs of the asan preset
# tools/fuzz.sh SECONDS    replays, then lets each fuzzer look for new inputs that long, with
#                          the programs of the fuzz preset (clang's libFuzzer)
#
# What a fuzzer finds is left in build/fuzz-found/. Prints "N passed, N failed" (one a fuzzer).
set -u
cd "$(dirname "$0")/.." || exit 1
. tools/lib.sh
seconds=${1:-0}
case $seconds in *[!0-9]*) stop "usage: tools/fuzz.sh [SECONDS]" ;; esac

found=build/fuzz-found
mkdir -p "$found" build/fuzz-corpus
passed=0 failed=0
built=build/asan
[ "$seconds" -gt 0 ] && built=build/fuzz
fuzzers=$(find $built -maxdepth 4 -type f -perm -u+x \( -name 'fuzz_*' -o -name '*_fuzz' \) \
  -not -path '*/CMakeFiles/*' 2>/dev/null | LC_ALL=C sort)
for fuzzer in $fuzzers; do
  name=$(basename "$fuzzer")
  name=${name#fuzz_}
  name=${name%_fuzz}
  corpus=tests/fuzz/corpus/$name
  log=$found/$name.log
  good=yes
  if [ "$seconds" = 0 ]; then
    timeout 300 "$fuzzer" "$corpus" >"$log" 2>&1 || good=no
  elif [ -d "$corpus" ]; then
    timeout 300 "$fuzzer" -runs=0 -artifact_prefix="$found/$name-" "$corpus" >"$log" 2>&1 || good=no
  else
    say "$name: no corpus at $corpus"
    timeout 60 "$fuzzer" -runs=100 -seed=1 -artifact_prefix="$found/$name-" >"$log" 2>&1 || good=no
  fi
  if [ "$good" = yes ] && [ "$seconds" -gt 0 ]; then
    grown=build/fuzz-corpus/$name
    mkdir -p "$grown"
    timeout $((seconds + 120)) "$fuzzer" -max_total_time="$seconds" -print_final_stats=1 -timeout=20 \
      -artifact_prefix="$found/$name-" "$grown" ${corpus:+$([ -d "$corpus" ] && echo "$corpus")} \
      >"$log" 2>&1 || good=no
    say "$name: $(sed -n 's/^stat::number_of_executed_units: *//p' "$log") runs in $seconds s"
  fi
  if [ "$good" = yes ]; then
    passed=$((passed + 1))
  else
    failed=$((failed + 1))
    say "$name: failed; the last lines of $log:"
    tail -n 25 "$log"
  fi
done
[ -n "$fuzzers" ] || say "No fuzzer yet."
say "$passed passed, $failed failed"
[ "$failed" = 0 ]
