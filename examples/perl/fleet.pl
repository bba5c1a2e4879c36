# SPDX-License-Identifier: Apache-2.0
# From a file of recorded strokes to one line a unit: how many wheel ends have each verdict, and the least to spare.
#
#     perl fleet.pl [FLEET.csv]
#
# Reads examples/data/fleet.csv, and judges each row by the law of its day. A row that cannot be read stops nothing.
use strict;
use warnings;
use FindBin;
use Rodtravel qw(judge_row write_length);

my @FIELDS = qw(chamber stroke_class rated_stroke released applied psi division date);

# The cells of a record: between commas, with quotes around what holds one, a quote doubled inside.
sub cells_of {
    my ($record) = @_;
    return map { s/^"(.*)"$/$1/sr =~ s/""/"/gr } "$record," =~ /((?:"(?:[^"]|"")*"|[^,"])*),/g;
}

# Rows as hashes by their headings; a record that is empty, or the heading once more, is none.
sub read_rows {
    my ($path) = @_;
    open my $file, '<:encoding(UTF-8)', $path or die "$path: $!\n";
    my (@headings, @rows);
    while (my $record = <$file>) {
        $record .= <$file> // '"' while ($record =~ tr/"//) % 2;    # a line break inside of quotes
        $record =~ s/^\x{FEFF}|\s+$//g;
        my @cells = cells_of($record);
        @headings = @cells, next unless @headings;
        my %row;
        @row{@headings} = (@cells, ('') x @headings);
        push @rows, \%row if $row{chamber} ne '' && $row{chamber} ne 'chamber' || $row{released} =~ /[^releasd]/;
    }
    return @rows;
}

my %units;
for my $row (read_rows($ARGV[0] // "$FindBin::Bin/../data/fleet.csv")) {
    my ($finding) = judge_row(map { $_ => $row->{$_} } @FIELDS);
    push @{$units{$row->{unit_no}}}, $finding;
}

printf "%-8s%5s%5s%6s%6s   least to spare\n", qw(unit in out dead open);
for my $unit (sort keys %units) {
    my %counts;
    $counts{$_->verdict}++ for @{$units{$unit}};
    my ($least) = sort { $a <=> $b } grep { defined } map { $_->margin } @{$units{$unit}};
    printf "%-8s%5d%5d%6d%6d   %s\n", $unit,
        (map { $counts{$_} // 0 } qw(in-adjustment out-of-adjustment inoperative undetermined)),
        defined $least ? write_length($least) . ' in' : 'not known';
}
