#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# sources.sh LANGUAGE ARCHIVE FOLDER: builds a package of sources (bindings/dist.py) in a folder of its own as people do,
# without a network, tests it, installs it, and asks it from there.
set -eu
language=$1
archive=$2
folder=$3
rm -rf "$folder"
mkdir -p "$folder"
tar -xzf "$archive" -C "$folder" --strip-components=1
cd "$folder"
unset PERL5LIB RUBYLIB LUA_PATH LUA_CPATH TCLLIBPATH
jobs=${JOBS:-2}
there=$folder/installed

perl_package() {
    perl Makefile.PL INSTALL_BASE="$there" && make -j "$jobs" && make test && make install
}
perl_asked() {
    PERL5LIB=$there/lib/perl5 perl -MRodtravel=judge -e \
        'print judge(chamber => "30", released => "2 1/8", applied => "4 1/8", psi => 95)->verdict'
}

ruby_package() {
    export GEM_HOME="$there" GEM_PATH="$there"
    gem build rodtravel.gemspec && MAKEFLAGS=-j$jobs gem install --local --no-document ./rodtravel-*.gem &&
        ruby -rrubygems -e 'gem "rodtravel"; load ARGV.shift' test/test.rb README.md
}
ruby_asked() {
    ruby -rrodtravel -e 'print Rodtravel.judge(chamber: "30", released: "2 1/8", applied: "4 1/8", psi: 95).verdict'
}

lua_package() {
    version=$(lua5.4 -e 'print(_VERSION:match("[%d.]+"))')
    luarocks --lua-version "$version" --tree "$there" make ./*.rockspec &&
        eval "$(luarocks --lua-version "$version" --tree "$there" path)" && rm rodtravel.lua && lua5.4 test.lua README.md
}
lua_asked() {
    lua5.4 -e 'io.write(require "rodtravel".judge {chamber = "30", released = "2 1/8", applied = "4 1/8", psi = 95}.verdict)'
}

tcl_package() {
    make -j "$jobs" && make test && make install PREFIX="$there"
}
tcl_asked() {
    echo 'package require rodtravel
    puts [dict get [rodtravel judge chamber 30 released "2 1/8" applied "4 1/8" psi 95] verdict]' | TCLLIBPATH=$there/lib tclsh
}

"${language}_package" >log 2>&1 || { tail -n 30 log; exit 1; }
said=$(cd / && "${language}_asked")
[ "$said" = in-adjustment ] || { echo "said: $said"; exit 1; }
! grep -n 'warning:\|^not ok' log
