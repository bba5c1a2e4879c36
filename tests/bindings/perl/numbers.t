# SPDX-License-Identifier: Apache-2.0
# Numbers in and out are exact, and what is not exact is refused.
use strict;
use warnings;
use utf8;
use Math::BigFloat;
use Math::BigInt;
use Math::BigRat;
use Test::More;
BEGIN { binmode Test::More->builder->$_(), ':encoding(UTF-8)' for qw(output failure_output) }
use Rodtravel qw(judge judge_row read_length read_pressure read_seconds read_date write_length);

my %texts = (chamber => '30', released => '2 1/8', psi => 95);
sub stroke_of { return judge(%texts, applied => $_[0])->applied_stroke }

for my $applied ('4 1/8', '4.125', '4⅛', '4-1/8"', Math::BigRat->new('33/8'), Math::BigFloat->new('4.125')) {
    is(stroke_of($applied), '2', 'applied ' . (ref $applied || $applied));
}
is(stroke_of(4), '15/8', 'a whole number');
is(stroke_of(Math::BigInt->new(4)), '15/8', 'a Math::BigInt');
is(stroke_of(Math::BigRat->new('265/64')), '129/64', 'sixty-fourths');
is(judge(%texts, psi => Math::BigRat->new('179/2'), applied => '4')->pressure, '179/2', 'a pressure');

# --- Binary floats -------------------------------------------------------------------------------------------------

my $sum = 0.1 + 0.2;
for my $float (4.125, 0.5, $sum, 1e300, 9**9**9) {
    eval { stroke_of($float) };
    ok(ref $@ && $@->status eq 'argument' && $@->field eq 'applied' && $@->text =~ /binary float/, "a float is refused: $float");
}
eval { read_length(2.5) };
ok(ref $@ && $@->text =~ /binary float/, 'of a reader, too');
my $text = '4.125';
my $twice = $text + 1;    # a text that was once used as a number
is(stroke_of($text), '2', 'a text is no float');
for my $odd (Math::BigRat->bnan(), Math::BigRat->binf()) {
    eval { stroke_of($odd) };
    ok(ref $@ && $@->status eq 'argument', "refused: $odd");
}
eval { stroke_of(Math::BigRat->new('1/3')) };
ok(ref $@ && $@->field eq 'applied', 'a third is on no tape');
eval { stroke_of(Math::BigRat->new('-1/8')) };
ok(ref $@ && $@->status eq 'negative', 'a length below zero');

# --- Readers -------------------------------------------------------------------------------------------------------

is(read_length('44.45 mm'), '7/4', 'millimetres');
is(read_length('44.45', unit => 'mm'), '7/4', 'by their unit');
is(read_pressure('95'), '95', 'psi');
ok(read_pressure('650 kPa') > 94 && read_pressure('650 kPa')->denominator > 1, 'kPa, exactly');
is(read_seconds('1:30'), '90', 'seconds');
is(read_date('14-OCT-21'), '2021-10-14', 'a day');
is(write_length(read_length('1 3/4')), '1 3/4', 'back to a text');
is(write_length(Math::BigRat->new('-7/4')), '-1 3/4', 'below zero');
is(write_length('7/4'), '1 3/4', 'of a text');

SKIP: {
    skip 'Time::Piece is not there', 1 unless eval { require Time::Piece; 1 };
    my $day = Time::Piece->strptime('2021-10-13', '%Y-%m-%d');
    is(judge(chamber => '36', released => '2', applied => '4 3/8', date => $day)->verdict, 'out-of-adjustment',
        'a day as an object');
}

# --- Memory --------------------------------------------------------------------------------------------------------

sub pages {
    open my $file, '<', '/proc/self/statm' or return;
    return (split ' ', <$file>)[1];
}

SKIP: {
    skip 'this machine does not tell what a process holds', 1 unless defined pages();
    my $work = sub {
        for (1 .. 3000) {
            my $finding = judge_row(%texts, applied => '4 1/4');
            $finding->sentence();
            eval { judge(%texts, applied => '2-Jan') };
        }
    };
    $work->();
    my $before = pages();
    $work->() for 1 .. 3;
    cmp_ok(pages() - $before, '<', 200, 'nothing is lost');
}

done_testing();
