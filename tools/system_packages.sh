#!/bin/sh
# Installs the named Debian packages that are missing, or says what to do.
missing=
for package in "$@"; do
  dpkg-query -W -f '${Status}' "$package" 2>/dev/null | grep -q 'install ok installed' ||
    missing="$missing $package"
done
[ -z "$missing" ] && exit 0

printf '\n== Debian packages missing:%s\n' "$missing"
as_root=
[ "$(id -u)" -eq 0 ] || as_root="sudo -n"
if command -v apt-get >/dev/null && $as_root true 2>/dev/null; then
  # shellcheck disable=SC2086 # words on purpose
  $as_root apt-get update -qq && $as_root apt-get install -y -qq $missing >/dev/null && exit 0
fi
echo "They could not be installed here. Install them by hand:  apt-get install$missing" >&2
exit 1
