#!/usr/bin/env bash
# tools/install.sh GROUP...  installs what is missing of the lists in tools/packages/.
#
# Says what is missing and why; asks apt-get only for that. With everything there it
# needs no apt. Ends with 0 when all is there, 1 when something could not be installed.
set -uo pipefail
cd "$(dirname "$0")/.." || exit 1
. tools/lib.sh

node_is_at_least() {
  command -v node >/dev/null 2>&1 || return 1
  [ "$(node -p 'process.versions.node.split(".")[0]' 2>/dev/null || echo 0)" -ge "$1" ]
}

header_is_there() {
  local root
  for root in /usr/include /usr/local/include "/usr/include/$(uname -m)-linux-gnu"; do
    [ -e "$root/$1" ] && return 0
  done
  return 1
}

is_there() { # probe
  local value=${1#*:}
  case $1 in
    command:*) command -v "$value" >/dev/null 2>&1 ;;
    header:*) header_is_there "$value" ;;
    file:*) compgen -G "$value" >/dev/null ;;
    node:*) node_is_at_least "$value" ;;
    *) stop "tools/packages: '$1' is no probe; expected command:, header:, file: or node:" ;;
  esac
}

# Lines "package<TAB>reason" for what is missing in the groups.
missing_of() {
  local group package probe reason
  for group in "$@"; do
    [ -f "tools/packages/$group" ] || stop "tools/install.sh: no list tools/packages/$group"
    while read -r package probe reason; do
      case $package in '' | '#'*) continue ;; esac
      is_there "$probe" || printf '%s\t%s\n' "$package" "${reason#\# }"
    done <"tools/packages/$group"
  done | LC_ALL=C sort -u -t"$(printf "\t")" -k1,1
}

[ $# -gt 0 ] || stop "usage: tools/install.sh GROUP...   (groups: $(ls tools/packages | tr '\n' ' '))"
missing=$(missing_of "$@") || exit 1
[ -z "$missing" ] && exit 0

say "Missing:"
printf '%s\n' "$missing" | while IFS=$'\t' read -r package reason; do
  printf '  %-26s %s\n' "$package" "$reason"
done
packages=$(printf '%s\n' "$missing" | cut -f1 | tr '\n' ' ')
packages=${packages% }
command_line="apt-get install -y --no-install-recommends $packages"

command -v apt-get >/dev/null 2>&1 || stop "There is no apt-get on this machine. Install by its own means what
these Debian packages hold, then run this again:
  $packages"

if [ "$(id -u)" = 0 ]; then
  as_root=()
elif command -v sudo >/dev/null 2>&1 && { [ -t 0 ] || sudo -n true 2>/dev/null; }; then
  as_root=(sudo)
else
  stop "Installing needs the administrator. Run this, then start again:
  sudo apt-get update && sudo $command_line"
fi

export DEBIAN_FRONTEND=noninteractive
apt() { # apt-get arguments
  ${as_root[@]+"${as_root[@]}"} env DEBIAN_FRONTEND=noninteractive \
    apt-get -o DPkg::Lock::Timeout=300 -q "$@" </dev/null
}
log=$(mktemp) || exit 1
trap 'rm -f "$log"' EXIT
say "Installing with apt-get (this can take some minutes) ..."
# shellcheck disable=SC2086
if ! apt update >"$log" 2>&1 || ! apt install -y --no-install-recommends $packages >>"$log" 2>&1; then
  # One name that this release does not have must not keep the others away.
  for package in $packages; do
    apt install -y --no-install-recommends "$package" >>"$log" 2>&1 ||
      say "  could not install $package"
  done
fi

hash -r
still=$(missing_of "$@") || exit 1
if [ -n "$still" ]; then
  say "--- last lines of apt-get"
  tail -n 15 "$log"
  say "---"
  say "Still missing:"
  printf '%s\n' "$still" | sed 's/\t/  (/; s/$/)/; s/^/  /'
  case $still in
    *nodejs*) command -v node >/dev/null 2>&1 &&
      say "An older Node.js comes first on the path: $(command -v node) $(node --version 2>/dev/null)" ;;
  esac
  stop "Install these by hand, then start again:  $command_line"
fi
say "Installed: $packages"
