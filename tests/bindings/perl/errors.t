# SPDX-License-Identifier: Apache-2.0
# What is refused, and where: one family of errors.
use strict;
use warnings;
use utf8;
use Test::More;
use Rodtravel qw(judge judge_row judge_columns judge_vehicle judge_air count identify find_limit read_chamber read_length read_pressure
    read_seconds read_date write_length rule_set load_rules steps rated_volume required_volume build_up_seconds estimate_application);

my %texts = (chamber => '30', released => '2 1/8', applied => '4 1/8');
my $sound = judge(%texts);

# What a call dies with.
sub refusal {
    my ($call) = @_;
    eval { $call->(); 1 } and return;
    return $@;
}

# Status, field, column and line of what a call must refuse.
sub refused {
    my ($call, $wanted, $what) = @_;
    my $error = refusal($call);
    my $found = !defined $error ? 'nothing' : !ref $error ? $error
        : join ' ', $error->status, $error->field || '-', $error->column, $error->line;
    is($found, $wanted, $what);
    return;
}

refused(sub { judge(%texts, applied => '2-Jan') }, 'date-cell applied 1 0', 'a date in place of a reading');
refused(sub { judge(%texts, applied => '4 1/') }, 'syntax applied 5 0', 'half a fraction');
refused(sub { judge(%texts, applied => undef) }, 'empty applied 0 0', 'a reading that is missing');
refused(sub { judge(%texts, chamber => 'Q') }, 'unknown-chamber chamber 1 0', 'no chamber');
refused(sub { judge(%texts, psi => '-5') }, 'negative psi 1 0', 'a pressure below zero');
refused(sub { judge(%texts, date => '03/04/2024') }, 'ambiguous date 0 0', 'a day that can be two');
refused(sub { judge(%texts, colour => 'red') }, 'argument colour 0 0', 'no such argument');
refused(sub { judge('chamber') }, 'argument judge 0 0', 'a name without a value');
refused(sub { judge(%texts, rules => 'atlantis') }, 'unknown-rules - 0 0', 'no such rule set');
refused(sub { judge(%texts, default_unit => 'ells') }, 'syntax default_unit 1 0', 'no such unit');
refused(sub { judge(%texts, applied => "4\0") }, 'argument applied 0 0', 'a zero character');
refused(sub { judge(%texts, applied => [4]) }, 'argument applied 0 0', 'a reference');
refused(sub { judge(%texts, applied => $sound) }, 'argument applied 0 0', 'another object');
refused(sub { read_length('4½¼') }, 'syntax - 3 0', 'columns count characters');
refused(sub { read_length('3', unit => 'ells') }, 'argument unit 0 0', 'a unit that is none');
refused(sub { read_pressure('much') }, 'syntax - 1 0', 'a pressure');
refused(sub { read_seconds('1:75') }, 'syntax - 3 0', 'a time');
refused(sub { read_date('31/02/2024') }, 'syntax - 0 0', 'a day');
refused(sub { read_chamber('') }, 'empty - 0 0', 'no mark at all');
refused(sub { write_length('1e400') }, 'range length 0 0', 'a length that does not fit');
refused(sub { write_length('long') }, 'argument length 0 0', 'a length that is none');
refused(sub { write_length(undef) }, 'argument length 0 0', 'no length');
refused(sub { rule_set(undef) }, 'unknown-rules - 0 0', 'no rule set');
refused(sub { load_rules("family,size,class,limit\nclamp,30,standard,3\n", 'yard') }, 'laxer limit 19 2', 'a laxer limit');
refused(sub { load_rules('nonsense', 'yard') }, 'table - 1 1', 'no table');
refused(sub { load_rules("family,size,class,limit\n", 'us-fmcsr') }, 'argument name 0 0', 'the name of a law');
refused(sub { load_rules('', 'yard', colour => 1) }, 'argument colour 0 0', 'no such argument of load_rules');
refused(sub { judge_vehicle('1L') }, 'argument ends 0 0', 'no wheel ends');
refused(sub { judge_vehicle([]) }, 'argument ends 0 0', 'no wheel end');
refused(sub { judge_vehicle([['1L', $sound], ['1L', $sound]]) }, 'argument position 0 2', 'a position twice');
refused(sub { judge_vehicle([['1L', $sound], ['left', $sound]]) }, 'syntax position 1 2', 'no position');
refused(sub { judge_vehicle([['1L', 'good']]) }, 'argument finding 0 1', 'no finding');
refused(sub { judge_vehicle(['1L']) }, 'argument finding 0 1', 'a wheel end that is a text');
refused(sub { judge_vehicle([['1L', $sound, colour => 1]]) }, 'argument colour 0 1', 'no such member of a wheel end');
refused(sub { judge_vehicle([['1L', $sound]], colour => 1) }, 'argument colour 0 0', 'no such argument of judge_vehicle');
refused(sub { judge_vehicle([['1L', $sound]], brakes => -1) }, 'argument brakes 0 0', 'fewer than no brakes');
refused(sub { judge_vehicle([['1L', $sound], ['1R', $sound]], brakes => 1) }, 'argument brakes 0 0', 'fewer brakes than ends');
my %columns = (chamber => ['30', '30'], released => ['1', '1'], applied => ['2', '2']);
refused(sub { judge_columns(%columns, released => ['1']) }, 'argument released 0 0', 'a short column');
refused(sub { judge_columns(%columns, released => ["1\x1f1"], applied => ["2\x1f2"]) }, 'argument applied 0 0', 'a separator');
refused(sub { judge_columns(%columns, colour => ['red']) }, 'argument colour 0 0', 'no such column');
refused(sub { judge_columns(%columns, applied => [2.5, '2']) }, 'argument applied 0 0', 'a float in a column');
refused(sub { judge_columns(chamber => ['30'], released => ['1']) }, 'argument applied 0 0', 'a column that is needed');
refused(sub { judge_columns(%columns, psi => 'high') }, 'syntax psi 1 0', 'a pressure of every row');
refused(sub { steps(vehicle => 'sledge') }, 'syntax vehicle 1 0', 'no such vehicle');
refused(sub { rated_volume('bolt A') }, 'unknown-chamber chamber 0 0', 'no published volume');
refused(sub { required_volume(-1) }, 'argument chambers 0 0', 'a volume below zero');
refused(sub { required_volume(1.5) }, 'argument chambers 0 0', 'a volume that is a float');
refused(sub { build_up_seconds(1, 0) }, 'argument volumes 0 0', 'no volume');
refused(sub { estimate_application(pressure => 1, reservoir => 1, chambers => 1, fill => 2) }, 'argument estimate 0 0', 'a fill');
refused(sub { judge_air('sound') }, 'syntax check 1 0', 'no such check');
refused(sub { judge_air('warning', pressure => 'high') }, 'syntax pressure 1 0', 'no pressure of an air check');
refused(sub { count(brakes => 1, full => 2) }, 'argument tally 0 0', 'more defects than brakes');
refused(sub { count(brakes => 'many') }, 'syntax brakes 1 0', 'no count');
refused(sub { identify(port => 'oval') }, 'syntax port 1 0', 'no such port');
refused(sub { find_limit('30', date => 'soon') }, 'syntax date 1 0', 'no day');
refused(sub { $sound->get('colour') }, 'argument colour 0 0', 'no such member');
refused(sub { $sound->exact('verdict') }, 'argument verdict 0 0', 'no number');
refused(sub { $sound->json('xx') }, 'argument language 0 0', 'no such language');
refused(sub { $sound->sentence('xx') }, 'argument language 0 0', 'nor of a sentence');

# --- The error -----------------------------------------------------------------------------------------------------

my $error = refusal(sub { judge(%texts, applied => '2-Jan') });
isa_ok($error, 'Rodtravel::Error');
is("$error", "applied, column 1: this is a date; a spreadsheet makes dates of fractions\n", 'as a string');
like($error->text, qr/^this is a date/, 'its sentence');
like($error->say('fr'), qr/date/, 'in French');
isnt($error->say('fr-CA'), $error->text, 'is another sentence');
is($error->say('xx'), $error->text, 'English where there is no other');
is(refusal(sub { judge(%texts) }), undef, 'after an error all is well');
my ($finding) = judge_row(%texts, released => "\x{1F600}");
is($finding->verdict, 'undetermined', 'a row with any character is judged');

my $rules = Rodtravel::Core::Rules->new('us-fmcsr');
eval { Rodtravel::Core::read_length('2-Jan', '') };
undef $rules;
is(Rodtravel::Core::error_status(), 'date-cell', 'what is deleted after a call leaves its error alone');

done_testing();
