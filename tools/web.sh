#!/usr/bin/env bash
# tools/web.sh modules   web/node_modules as the lock file says
# tools/web.sh build     web/dist, only when the sources have changed since
set -u
cd "$(dirname "$0")/.." || exit 1
. tools/lib.sh
[ -f web/package.json ] || { say "web: none yet"; exit 0; }

modules() {
  local want stamp=web/node_modules/.made-from
  [ -f web/package-lock.json ] || stop "web/package-lock.json is missing: 'npm ci' needs it."
  want=$(printf '%s\n' web/package.json web/package-lock.json | hash_of_files)
  [ "$(cat "$stamp" 2>/dev/null)" = "$want" ] && return 0
  say "web: npm ci"
  (cd web && npm ci --no-audit --no-fund --loglevel=error </dev/null) ||
    stop "web: npm ci failed. It fetches from the npm registry: is there a connection?"
  printf '%s\n' "$want" >"$stamp"
}

sources() {
  find web \( -path web/node_modules -o -path web/dist -o -path web/dist.making \) -prune -o -type f -print
}

build() {
  local want stamp=build/web-dist.made-from
  mkdir -p build
  want=$(sources | hash_of_files)
  if [ -f web/dist/index.html ] && [ "$(cat "$stamp" 2>/dev/null)" = "$want" ]; then
    return 0
  fi
  modules
  say "web: npm run build"
  rm -f "$stamp"
  (cd web && npm run --silent build </dev/null) || stop "web: the build of the page failed (see above)."
  printf '%s\n' "$want" >"$stamp"
}

case ${1:-} in
  modules) modules ;;
  build) build ;;
  *) stop "usage: tools/web.sh modules | build" ;;
esac
