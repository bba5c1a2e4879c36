# SPDX-License-Identifier: Apache-2.0
# Values of Perl as texts of the library, what the library found as read-only values, and its failures as errors.
package Rodtravel::Values;
use strict;
use warnings;
use B ();
use Hash::Util ();
use JSON::PP ();
use Math::BigRat ();
use Rodtravel::Core ();
use Scalar::Util ();

# Digits after the point that a number is written with; one with more is written as a fraction.
my $MOST_DIGITS = 9;

my @LANGUAGES = map { Rodtravel::Core::language($_) } 0 .. Rodtravel::Core::language_count() - 1;

sub is_a {
    my ($value, $class) = @_;
    return Scalar::Util::blessed($value) && $value->isa($class);
}

sub string_of {
    my ($bytes) = @_;
    utf8::decode($bytes) if defined $bytes && !ref $bytes;
    return $bytes;
}

# Runs a call of the library; dies with what it refused. The line is that of a wheel end.
sub called {
    my ($call, $line) = @_;
    my $found = eval { $call->() };
    my $raised = $@;
    return string_of($found) if $raised eq '';
    die $raised if ref $raised;
    my $status = Rodtravel::Core::error_status();
    # SWIG itself refused an argument.
    Rodtravel::Error->refuse('', $raised =~ s/ at \S+ line \d+\.?\s*\z//r, $line) if $status eq 'ok';
    my %said = map { /^(\w+)/ => string_of(Rodtravel::Core::error_say($_)) } @LANGUAGES;
    die Rodtravel::Error->_new($status, Rodtravel::Core::error_field(), Rodtravel::Core::error_column(),
                               $line || Rodtravel::Core::error_line(), string_of(Rodtravel::Core::error_text()), \%said);
}

# --- In ---------------------------------------------------------------------------------------------------------------

# True for what was made as a binary float; a text that was once used as a number is a text.
sub _is_float {
    my ($value) = @_;
    my $flags = B::svref_2object(\$value)->FLAGS;
    return ($flags & B::SVf_NOK) && !($flags & B::SVf_POK) && !($flags & B::SVf_IOK);
}

sub text_of {
    my ($field, $value) = @_;
    return _text_of_object($field, $value) if ref $value;
    Rodtravel::Error->refuse($field, "$value is a binary float, which is only nearly what was read; give it as a text")
        if _is_float($value);
    my $text = "$value";
    Rodtravel::Error->refuse($field, 'a text of the library has no zero character') if $text =~ /\0/;
    utf8::upgrade($text);
    return $text;
}

sub _text_of_object {
    my ($field, $value) = @_;
    return _text_of_ratio($field, $value) if grep { is_a($value, "Math::$_") } qw(BigRat BigInt BigFloat);
    return $value->ymd('-') if Scalar::Util::blessed($value) && $value->can('ymd');
    Rodtravel::Error->refuse($field, 'a text, a whole number, a Math::BigRat or a day was expected');
}

# A number is read as its text: as a decimal where it is a short one, so that 33/8 is not taken for 3 3/8.
sub _text_of_ratio {
    my ($field, $value) = @_;
    my $ratio = ratio_of($field, $value);
    return $ratio->bstr() if $ratio->is_int();
    for my $digits (1 .. $MOST_DIGITS) {
        my $scaled = $ratio * Math::BigInt->new(10)->bpow($digits);
        next unless $scaled->is_int();
        my $text = sprintf '%0*s', $digits + 1, $scaled->copy->babs->numerator->bstr();
        substr($text, -$digits, 0) = '.';
        return ($ratio->is_negative() ? '-' : '') . $text;
    }
    return $ratio->bstr();
}

# An exact number as a Math::BigRat.
sub ratio_of {
    my ($field, $value) = @_;
    Rodtravel::Error->refuse($field, 'a number was expected') unless defined $value && "$value" ne '';
    my $text = ref $value ? $value : text_of($field, $value);
    my $ratio = is_a($text, 'Math::BigRat') ? $text->copy : Math::BigRat->new($text);
    Rodtravel::Error->refuse($field, 'a number was expected') if $ratio->is_nan() || $ratio->is_inf();
    return $ratio;
}

# A part of an exact number as the machine has it.
sub whole_of {
    my ($field, $value) = @_;
    my $text = $value->bstr();
    die Rodtravel::Error->_new('range', $field, 0, 0, 'the number has more digits than an exact 64-bit fraction holds')
        if abs($value) >= Math::BigInt->new(2)->bpow(63);
    return $text + 0;
}

# --- Out --------------------------------------------------------------------------------------------------------------

sub exact_of {
    my ($text) = @_;
    return defined $text && $text ne '' ? Math::BigRat->new($text) : undef;
}

# What the library found. A subclass names its members: words and texts, exact numbers.
package Rodtravel::Value;
use overload
    '""'     => sub { $_[0]->sentence() },
    'eq'     => \&_equal,
    '=='     => \&_equal,
    'ne'     => sub { !_equal(@_) },
    '!='     => sub { !_equal(@_) },
    'bool'   => sub { 1 },
    fallback => undef;

sub _new {
    my ($class, $core, $rules) = @_;
    my $self = bless {core => $core, of => $rules}, $class;
    Hash::Util::lock_hashref($self);
    return $self;
}

sub _equal {
    my ($one, $other) = @_;
    return Rodtravel::Values::is_a($other, ref $one) && $one->json() eq $other->json();
}

sub get {
    my ($self, $path) = @_;
    my $name = Rodtravel::Values::text_of('path', $path // '');
    return Rodtravel::Values::called(sub { $self->{core}->get($name) });
}

sub exact {
    my ($self, $path) = @_;
    my $name = Rodtravel::Values::text_of('path', $path // '');
    return Rodtravel::Values::exact_of(Rodtravel::Values::called(sub { $self->{core}->exact($name) }));
}

sub _said {
    my ($self, $how, $language) = @_;
    my $tag = Rodtravel::Values::text_of('language', $language // '');
    return Rodtravel::Values::called(sub { $self->{core}->$how($tag) });
}

sub sentence { return _said($_[0], 'say', $_[1]) }
sub json     { return _said($_[0], 'json', $_[1]) }

sub data {
    my ($self, $language) = @_;
    return JSON::PP->new->decode($self->json($language));
}
sub TO_JSON { return $_[0]->data() }

# Methods of members: words as they are, numbers as Math::BigRat, counts as whole numbers.
sub _members {
    my ($class, %of) = @_;
    no strict 'refs';
    while (my ($kind, $names) = each %of) {
        for my $name (keys %$names) {
            my $path = $names->{$name};
            *{"${class}::$name"} =
                  $kind eq 'exact' ? sub { $_[0]->exact($path) }
                : $kind eq 'count' ? sub { 0 + $_[0]->get($path) }
                : $kind eq 'yes'   ? sub { $_[0]->get($path) eq 'true' ? 1 : '' }
                : sub { my $text = $_[0]->get($path); $text eq '' ? undef : $text };
        }
    }
    return;
}

# Names that are their own paths.
sub _own { return {map { $_ => $_ } @_} }

package Rodtravel::Finding;
our @ISA = ('Rodtravel::Value');
__PACKAGE__->_members(
    word  => Rodtravel::Value::_own(qw(verdict proof evidence law_evidence law_basis day other_day unit)),
    exact => Rodtravel::Value::_own(qw(released applied applied_stroke limit law_limit long_limit margin division
        probability_over pressure pressure_after)),
);
sub rules     { return $_[0]{of} }
sub defect    { return $_[0]{core}->defect() }
sub spoken    { return Rodtravel::Value::_said($_[0], 'spoken', $_[1]) }
sub reasons   { return split /, /, $_[0]->get('reasons') }
sub has       { my ($self, $reason) = @_; return scalar grep { $_ eq $reason } $self->reasons() }
sub sentences { return @{$_[0]->data($_[1])->{sentences}} }
sub source    { return $_[0]->data()->{source} }
sub chamber   { return $_[0]->get('chamber') }

package Rodtravel::Vehicle;
our @ISA = ('Rodtravel::Value');
__PACKAGE__->_members(
    word  => {outcome => 'count.outcome'},
    exact => {share => 'count.share', worst_share => 'count.worst_share', defective => 'count.defective'},
    count => {brakes => 'count.brakes', map { $_ => $_ } qw(in_adjustment out_of_adjustment inoperative undetermined
        mismatched_axles)},
);

package Rodtravel::AirFinding;
our @ISA = ('Rodtravel::Value');
__PACKAGE__->_members(word => Rodtravel::Value::_own(qw(result missing)), yes => Rodtravel::Value::_own(qw(at_limit)));

package Rodtravel::Count;
our @ISA = ('Rodtravel::Value');
__PACKAGE__->_members(
    word  => Rodtravel::Value::_own(qw(outcome)),
    exact => Rodtravel::Value::_own(qw(share worst_share known_share defective criterion)),
    count => Rodtravel::Value::_own(qw(brakes whole_needed)),
);

# What has no sentence is its own JSON as a string.
package Rodtravel::Record;
our @ISA = ('Rodtravel::Value');
sub sentence { return $_[0]->json() }

package Rodtravel::Identification;
our @ISA = ('Rodtravel::Record');
__PACKAGE__->_members(word => Rodtravel::Value::_own(qw(next_observation)), exact => Rodtravel::Value::_own(qw(strict_limit)));
sub candidates { return @{$_[0]->data()->{candidates}} }

package Rodtravel::LimitAnswer;
our @ISA = ('Rodtravel::Record');
__PACKAGE__->_members(
    word  => Rodtravel::Value::_own(qw(evidence law_evidence law_basis)),
    exact => Rodtravel::Value::_own(qw(limit law_limit)),
);
sub source {
    my $of = $_[0]->data()->{source} or return undef;
    return join ', ', grep { $_ ne '' } @$of{qw(document section edition)};
}

package Rodtravel::Chamber;
our @ISA = ('Rodtravel::Record');
__PACKAGE__->_members(
    word  => Rodtravel::Value::_own(qw(family size spring_size stroke_class)),
    exact => Rodtravel::Value::_own(qw(rated_stroke marked_limit)),
);
sub sentence { return join ' ', grep { $_ ne 'unknown' } map { $_[0]->get($_) } qw(family size stroke_class) }

package Rodtravel::Rules;
our @ISA = ('Rodtravel::Value');
sub id       { return Rodtravel::Values::string_of($_[0]{core}->id()) }
sub sentence { return $_[0]->id() }
sub json     { my ($self) = @_; return Rodtravel::Values::called(sub { $self->{core}->json() }) }
for my $name (qw(title authority source evidence from until)) {
    no strict 'refs';
    *{"Rodtravel::Rules::$name"} = sub { $_[0]->data()->{$name} };
}

sub limits {
    my ($self, $day) = @_;
    my $on = Rodtravel::Values::text_of('date', $day // '');
    return @{JSON::PP->new->decode(Rodtravel::Values::called(sub { $self->{core}->limits_json($on) }))->{limits}};
}

sub air_limits {
    my ($self, $language) = @_;
    my $tag = Rodtravel::Values::text_of('language', $language // '');
    return map {
        my $row = $_;
        JSON::PP->new->decode(Rodtravel::Values::called(sub { $self->{core}->air_limit_json($row, $tag) }))
    } 0 .. $self->{core}->air_limit_count() - 1;
}

# A thread of Perl copies pointers, which two would then free.
for my $class (qw(Rules Form Finding Record Vehicle)) {
    no strict 'refs';
    *{"Rodtravel::Core::${class}::CLONE_SKIP"} = sub { 1 };
}

1;
