# shellcheck shell=bash
# Sourced by the commands of this tree: installs what packages.txt lists and is missing.

say() { printf '== %s\n' "$*"; }

# Package names of the groups asked for, one a line.
packagesOf() {
    local list groups=" $* " group package reason
    list="$(dirname "${BASH_SOURCE[0]}")/packages.txt"
    while read -r group package reason; do
        [[ $group == "" || $group == \#* || $reason == "" || $groups != *" $group "* ]] || printf '%s\n' "$package"
    done <"$list"
}

installed() { [[ $(dpkg-query -W -f='${db:Status-Abbrev}' "$1" 2>/dev/null) == ii* ]]; }

# needPackages GROUP...: asks the network for nothing when everything is there.
needPackages() {
    local package missing=() sudo=()
    for package in $(packagesOf "$@"); do
        installed "$package" || missing+=("$package")
    done
    [[ ${#missing[@]} -gt 0 ]] || return 0
    if [[ $(id -u) -ne 0 ]]; then
        command -v sudo >/dev/null || { echo "Missing: ${missing[*]}. Install them as root, or install sudo." >&2; return 1; }
        sudo=(sudo)
    fi
    say "installing ${missing[*]}"
    "${sudo[@]}" env DEBIAN_FRONTEND=noninteractive apt-get -qq update </dev/null
    "${sudo[@]}" env DEBIAN_FRONTEND=noninteractive \
        apt-get -qq -y --no-install-recommends install "${missing[@]}" </dev/null >/dev/null
}
