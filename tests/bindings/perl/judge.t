# SPDX-License-Identifier: Apache-2.0
# What is found, and that it is a value.
use strict;
use warnings;
use utf8;
use Config ();
use JSON::PP ();
use Math::BigRat;
use Test::More;
use Rodtravel qw(judge judge_row judge_columns judge_vehicle judge_air count identify find_limit read_chamber rule_set rule_sets load_rules
    tables_edition steps rated_volume required_volume build_up_seconds estimate_application estimate_applications);

my %texts = (chamber => '30L', released => '2 3/4', applied => '5 5/16', psi => 95);
my $over = judge(%texts);

# --- A wheel end ---------------------------------------------------------------------------------------------------

is($over->verdict, 'out-of-adjustment', 'the verdict');
isa_ok($over->margin, 'Math::BigRat');
ok($over->margin == Math::BigRat->new('-1/16'), 'the margin is exact');
ok($over->applied_stroke == Math::BigRat->new('41/16') && $over->limit == Math::BigRat->new('5/2'), 'stroke and limit');
is_deeply([$over->reasons], ['over-limit'], 'reasons');
ok($over->has('over-limit') && !$over->has('at-limit'), 'a reason is there or not');
is("$over", '2 3/4 to 5 5/16 is 2 9/16; limit 2 1/2; over by 1/16', 'a finding as a string');
is($over->long_limit, undef, 'what is not given is undef');
is($over->division, undef, 'so is a number');
is($over->defect, 'half', 'the defect');
like($over->source, qr/^49 CFR Part 393, 393\.47/, 'the source');
is($over->get('law_row.published'), '2 1/2', 'a member by its path');
is($over->rules->id, 'us-fmcsr', 'the rule set');
like(($over->sentences('fr'))[0], qr/dépasse la limite/, 'a reason in French');
like($over->sentence('es'), qr/límite/, 'the finding in Spanish');
like($over->spoken, qr/^Released 2 3\/4/, 'what is said aloud');
is($over->data->{limit}, '2 1/2', 'as plain Perl');
is(JSON::PP->new->canonical->convert_blessed->encode([$over]), JSON::PP->new->canonical->encode([$over->data]), 'in JSON of other things');

my $proven = judge(%texts, division => '1/8');
ok($proven->probability_over > 0 && $proven->proof eq 'not-resolved', 'what the division proves');

# --- A value -------------------------------------------------------------------------------------------------------

ok($over eq judge(%texts) && $over == judge(%texts), 'equal readings give equal findings');
ok($over ne judge(%texts, applied => '5 1/4') && $over != $proven, 'others do not');
ok(!($over eq 'out-of-adjustment'), 'a finding is no text');
is($over->json, judge(reverse %{{reverse %texts}})->json, 'the same bytes');
eval { $over->{core} = 1 };
like($@, qr/read-only|Modification/, 'a finding is not changed');
eval { $over->{verdict} = 'in-adjustment' };
ok($@, 'and gets no members');

# --- Rows of files -------------------------------------------------------------------------------------------------

my ($row, $error) = judge_row(%texts, applied => '2-Jan');
is($row->verdict, 'undetermined', 'a row that cannot be read');
is($error->status . ' ' . $error->field . ' ' . $error->column, 'date-cell applied 1', 'and why');
($row, $error) = judge_row(%texts);
ok($row eq $over && !defined $error, 'a sound row');
ok(scalar(judge_row(%texts)) eq $over, 'without its error');
is(judge_row(chamber => '30', released => '50.8', applied => '104,8', default_unit => 'mm', decimal_comma => 1, psi => 95)->verdict,
    'out-of-adjustment', 'a form in millimetres with decimal commas');

# --- The vehicle ---------------------------------------------------------------------------------------------------

my $good = judge(%texts, applied => '5');
my $vehicle = judge_vehicle([['1L', $over, adjuster => 'automatic', arm_length => '6'], ['1R', $good]]);
is($vehicle->outcome, 'ambiguous', 'half a brake of two');
ok($vehicle->share == Math::BigRat->new('1/4'), 'the share is exact');
is($vehicle->out_of_adjustment + $vehicle->in_adjustment, 2, 'counts are numbers');
is(judge_vehicle([['1L', $over]], brakes => 10)->outcome, 'undetermined', 'brakes that were not measured');
like($vehicle->sentence('fr'), qr/frein/, 'in French');
is($vehicle->data->{wheel_ends}[0]{advice_code}, 'find-fault', 'what to do next');
ok(judge_vehicle([['1L', $over]]) ne $vehicle, 'another vehicle');

# --- Air, counts, chambers, rules ----------------------------------------------------------------------------------

my $warning = judge_air('warning', pressure => 62, rules => 'us-cdl');
is($warning->result, 'good', 'the low-pressure warning');
ok(judge_air('warning', pressure => '60', rules => 'us-newvehicle')->at_limit, 'at the edge');
like($warning->sentence('fr'), qr/62/, 'in French');
is(count(brakes => 6, full => 1, half => 1)->outcome, 'ambiguous', 'the chart of whole brakes');
my $which = identify(stamp => '24');
ok($which->strict_limit == Math::BigRat->new('7/4'), 'the strict limit of what it can be');
cmp_ok(scalar $which->candidates, '>', 2, 'candidates');
is($which->next_observation, 'long-sign', 'what to look at next');
my $chamber = read_chamber('30LS');
is($chamber->size . $chamber->stroke_class, '30long', 'a mark');
ok(!defined $chamber->rated_stroke, 'marks that it does not bear');
is("$chamber", 'clamp 30 long', 'a chamber as a string');
ok(find_limit($chamber)->limit == Math::BigRat->new('5/2'), 'its limit');
ok(find_limit('36', date => '2021-10-13')->limit == Math::BigRat->new('9/4'), 'on a day');
is($chamber->rated_stroke, undef, 'and it stays as it was');
is(find_limit('24', rated_stroke => '3')->get('law_row.published'), '2 1/2', 'with a mark more');

cmp_ok(scalar(my @sets = rule_sets()), '>', 5, 'rule sets');
my $law = rule_set('us-fmcsr');
like($law->title, qr/United States/, 'a title');
cmp_ok(scalar(my @limits = $law->limits), '>', 30, 'limits');
cmp_ok(scalar(my @air = rule_set('us-cdl')->air_limits('fr')), '>', 3, 'air checks');
my $yard = load_rules("family,size,class,limit\nclamp,30,long,2 3/8\n", 'yard', law => $law);
my $kept = judge(%texts, applied => '5 1/4', rules => $yard);
undef $yard;
ok($kept->has('over-own-limit') && $kept->limit < $kept->law_limit, "a carrier's own limit");
is($kept->rules->id, 'yard', 'the set lives as long as its findings');
is($Rodtravel::VERSION, Rodtravel::Core::version(), 'the version of the library');
like(tables_edition(), qr/^\d{4}-\d\d-\d\d$/, 'the day of the tables');

# --- Columns, steps, reservoirs -------------------------------------------------------------------------------------

my %rows = (chamber => ['30L', '30', undef, '30L', '30'], released => ['2 3/4', '2 1/8', '1', '2-Jan', '2.750001'],
    applied => ['5 5/16', Math::BigRat->new('33/8'), '2', '5', '4.612345']);
my $answers = judge_columns(%rows, psi => 95);
for my $i (0 .. 4) {
    my $one = judge_row((map { $_ => $rows{$_}[$i] } keys %rows), psi => 95);
    is_deeply([map { $answers->{$_}[$i] } qw(verdict reasons stroke limit)],
        [$one->verdict, join(', ', $one->reasons), map { defined $_ ? "$_" : undef } $one->applied_stroke, $one->limit],
        "row $i of columns");
}
is_deeply($answers->{flags}, ['', '', 'missing', 'invalid', ''], 'flags of cells');
is_deeply(judge_columns(chamber => [], released => [], applied => [])->{verdict}, [], 'no rows');
is_deeply(judge_columns(chamber => [''], released => [''], applied => [''])->{verdict}, ['undetermined'], 'one blank row');
my @steps = steps(rules => 'ca-on', vehicle => 'single');
is($steps[3]{step}, 'warning', 'a step');
like($steps[3]{defective}, qr/below 55 psi/, 'its figures');
is($steps[3]{row}{check}, 'warning', 'its row');
isnt((steps(rules => 'ca-on', language => 'fr'))[0]{title}, $steps[0]{title}, 'in French');
cmp_ok(scalar(my @more = steps(rules => 'ca-on', vehicle => 'combination')), '>', @steps, 'a combination has more steps');
is(rated_volume('30'), 89, 'the volume of a chamber');
is(required_volume(89 * 4 + 54 * 2), 5568, 'of its reservoirs');
is(required_volume('464', trailer => 1), 3712, "of a trailer's");
is(build_up_seconds(11136, 5568), 50, 'seconds');
is(estimate_application(pressure => 105, reservoir => 5568, chambers => 464), '12453/130', 'an estimate');
is(estimate_applications(pressure => 105, least => 60, reservoir => 5568, chambers => 464), 5, 'another');

# --- Threads -------------------------------------------------------------------------------------------------------

SKIP: {
    skip 'this Perl has no threads', 2 unless $Config::Config{useithreads} && eval { require threads; 1 };
    is(threads->create(sub { judge(%texts)->verdict })->join, 'out-of-adjustment', 'a thread judges');
    is(threads->create(sub { defined ${$over->{core}} ? 'there' : 'not there' })->join, 'not there',
        'objects stay where they were made');
}
is($over->verdict, 'out-of-adjustment', 'and live on there');

done_testing();
