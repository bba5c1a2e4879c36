# SPDX-License-Identifier: Apache-2.0
# Each line of the README that prints does print what its comment says.
use strict;
use warnings;
use utf8;
use Test::More;
use Rodtravel ();

my $path = $ARGV[0] // 'README.md';
open my $file, '<:encoding(UTF-8)', $path or BAIL_OUT("$path: $!");
my $text = do { local $/; <$file> };
my @runs = $text =~ /```perl\n(.*?)```/gs;
is(scalar @runs, 3, 'three runs');
for my $run (@runs) {
    my @wanted = $run =~ /print .*;\s+# (.*)/g;
    my $said = '';
    {
        open my $out, '>:encoding(UTF-8)', \$said or die $!;
        my $before = select $out;
        eval "use utf8; $run; 1" or diag($@);
        select $before;
    }
    utf8::decode($said);
    is_deeply([split /\n/, $said], \@wanted, 'prints what it says');
}
done_testing();
