# SPDX-License-Identifier: Apache-2.0
# Perl's judge of the conformance kit (tests/conformance): a question a line on standard input, an answer a line on
# standard output.
use strict;
use warnings;
use JSON::PP ();
use Rodtravel qw(judge_row judge_air count read_chamber read_length);

my $json = JSON::PP->new->utf8->canonical;

sub exact { return defined $_[0] ? $_[0]->bstr() : undef }
sub word  { return $_[0] // '' }

sub error_of {
    my ($error) = @_;
    return defined $error ? {status => $error->status, field => $error->field, column => 0 + $error->column} : undef;
}

sub wheel_end {
    my ($finding, $error) = judge_row(@_);
    return (verdict => $finding->verdict, stroke => exact($finding->applied_stroke), limit => exact($finding->limit),
            margin => exact($finding->margin), proof => $finding->proof,
            probability_over => exact($finding->probability_over), reasons => [$finding->reasons],
            error => error_of($error));
}

sub length_of {
    my (%of) = @_;
    return (value => exact(read_length($of{text})));
}

sub chamber_of {
    my (%of) = @_;
    my $read = read_chamber($of{text});
    return map { $_ => word($read->$_()) } qw(family size spring_size stroke_class);
}

sub count_of {
    my $found = count(@_);
    return (outcome => $found->outcome, share => exact($found->share));
}

sub air_of {
    my (%of) = @_;
    my $finding = judge_air(delete $of{check}, %of);
    return (result => $finding->result, at_limit => $finding->at_limit ? 'yes' : 'no');
}

my %asked = ('wheel-end' => \&wheel_end, length => \&length_of, chamber => \&chamber_of, count => \&count_of, air => \&air_of);
while (my $line = <STDIN>) {
    my $question = $json->decode($line);
    my ($id, $ask) = (delete $question->{id}, delete $question->{ask});
    my %answer = eval { $asked{$ask}->(%$question) };
    if (my $raised = $@) {
        die $raised unless ref $raised;
        %answer = (error => error_of($raised));
    }
    print $json->encode({id => $id, error => undef, %answer}), "\n";
}
