# SPDX-License-Identifier: Apache-2.0
# bench.pl call|lists|column COUNT (../languages.py)
use strict;
use warnings;
use Rodtravel qw(judge judge_columns);

my ($what, $count) = @ARGV;
if ($what eq 'call') {
    judge(chamber => '30L', released => '2 3/4', applied => '5 5/16', psi => '95')->verdict() for 1 .. $count;
    exit;
}
my @applied = map { 4 + $_ % 2 . ' ' . (1 + 2 * ($_ % 8)) . '/16' } 1 .. $count;
my @columns = (chamber => [('30L') x $count], released => [('2 3/4') x $count], applied => \@applied, psi => [('95') x $count]);
judge_columns(@columns) if $what eq 'column';
