# SPDX-License-Identifier: Apache-2.0
# A million calls lose nothing, whether they find or refuse.
use strict;
use warnings;
use Test::More tests => 1;
use Rodtravel qw(judge judge_columns judge_row judge_vehicle load_rules);

sub pages {
    open my $file, '<', '/proc/self/statm' or return 0;
    return (split ' ', <$file>)[1];
}

sub work {
    my ($calls) = @_;
    for (my $i = 0; $i < $calls; $i += 10) {
        my $found = judge(chamber => '30L', released => '2 3/4', applied => '5 1/4');
        $found->sentences('fr');
        $found->margin;
        my $yard = load_rules("family,size,class,limit\nclamp,30,long,2 3/8\n", 'yard');
        my $own = judge_row(chamber => '30L', released => '2 3/4', applied => '5 1/4', rules => $yard);
        judge_vehicle([['1L', $own]])->sentence();
        judge_columns(chamber => ['30', 'x'], released => ['1', '1'], applied => ['2', '2'], rules => $yard);
        for my $wrong ([applied => '2-Jan'], [applied => ''], [rules => 'atlantis'], [colour => 'red']) {
            eval { judge(chamber => '30', released => '2 1/8', applied => '4', @$wrong) };
            die 'it was not refused' unless ref $@;
        }
    }
}

work(100_000);
my $before = pages();
work(1_000_000);
cmp_ok(pages() - $before, '<', 500, 'memory after a million calls');
