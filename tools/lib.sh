# shellcheck shell=bash
# What ./start and ./check share. Sourced from the top of the project.

say() { printf '%s\n' "$*"; }

# Ends the script with a message on stderr.
stop() {
  printf '%s\n' "$*" >&2
  exit 1
}

# Parallel compile jobs: one a core, but never more than there are 2 GiB of memory for.
jobs_for_build() {
  local cores memory_kib by_memory
  cores=$(nproc 2>/dev/null || echo 1)
  memory_kib=$(awk '/^MemAvailable:/ {print $2}' /proc/meminfo 2>/dev/null)
  by_memory=$(( ${memory_kib:-4194304} / 2000000 ))
  [ "$by_memory" -lt 1 ] && by_memory=1
  [ "$cores" -gt "$by_memory" ] && cores=$by_memory
  [ -n "${WM_JOBS:-}" ] && cores=$WM_JOBS
  echo "$cores"
}

# One hash over the names and contents of the files listed on stdin (newline-separated).
hash_of_files() {
  LC_ALL=C sort | tr '\n' '\0' | xargs -0 -r sha256sum | sha256sum | cut -d' ' -f1
}

# Configures a preset only when its build folder is missing or the presets have changed;
# ninja itself notices a changed CMakeLists.txt.
configure() { # preset
  local preset=$1 stamp="build/$1/.presets" now
  now=$(cksum <CMakePresets.json)
  if [ -f "build/$preset/build.ninja" ] && [ "$(cat "$stamp" 2>/dev/null)" = "$now" ]; then
    return 0
  fi
  cmake --preset "$preset" || return 1
  printf '%s\n' "$now" >"$stamp"
}
