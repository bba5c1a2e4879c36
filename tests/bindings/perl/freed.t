# SPDX-License-Identifier: Apache-2.0
# What was deleted is refused, deleted twice or not, and what is found outlives what it was made of; run.sh exhaustive runs
# it under valgrind.
use strict;
use warnings;
use Test::More;
use Rodtravel qw(judge judge_columns load_rules);

my %texts = (chamber => '30L', released => '2 3/4', applied => '5 1/4', psi => 95);
my %call  = (Form => 'error_count', Vehicle => 'judge', Columns => 'column', Record => 'json', Rules => 'json');
for my $name (sort keys %call) {
    my $made = "Rodtravel::Core::$name";
    my $object = $made->new($name eq 'Record' ? 'rodt_clues' : $name eq 'Rules' ? 'us-fmcsr' : ());
    $object->DESTROY() for 1 .. 2;
    my $how = $call{$name};
    eval { $object->$how($name eq 'Columns' ? 'verdict' : ()) };
    like($@, qr/the object was deleted/, "a deleted $name");
}
my $gone = judge(%texts);
$gone->{core}->DESTROY();
eval { $gone->verdict() };
ok(ref $@ && $@->status eq 'argument', 'a deleted finding');
eval { Rodtravel::judge_vehicle([['1L', $gone]]) };
ok(ref $@ && $@->status eq 'argument', 'as an argument');
eval { Rodtravel::Core::Form::judge(undef, undef) };
ok($@, 'no object');
eval { Rodtravel::Core::Form::judge(Rodtravel::Core::Rules->new('us-fmcsr'), undef) };
ok($@, 'an object of another kind');

my @kept;
for my $i (1 .. 50) {
    my $yard = load_rules("family,size,class,limit\nclamp,30,long,2 3/8\n", 'yard');
    push @kept, judge(%texts, rules => $yard);
    eval { judge(%texts, released => '2-Jan', rules => $yard) };
    judge_columns(chamber => ['30'], released => ['1'], applied => ['2'], rules => $yard);
    shift @kept if $i % 2;
}
is(scalar(grep { $_->has('over-own-limit') && $_->rules->id eq 'yard' } @kept), 25, 'findings outlive their rule set');
done_testing();
