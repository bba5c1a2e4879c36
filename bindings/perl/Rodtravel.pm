# SPDX-License-Identifier: Apache-2.0
package Rodtravel;
use strict;
use warnings;
use Exporter 'import';
use Rodtravel::Core ();
use Rodtravel::Error ();
use Rodtravel::Values ();

our $VERSION   = '0.1.0';
our @EXPORT_OK = qw(judge judge_row judge_columns judge_vehicle judge_air count identify find_limit read_chamber read_length
    read_pressure read_seconds read_date write_length rule_set rule_sets load_rules tables_edition steps rated_volume
    required_volume build_up_seconds estimate_application estimate_applications);

my $DEFAULT_RULES = 'us-fmcsr';
my $CELL_END      = "\x1f";         # between the cells of a column

# Arguments that are about a whole form, and what they are called in C.
my %FORM_WIDE = (
    default_unit  => 'style.unit',
    decimal_comma => 'style.decimal_comma',
    date_order    => 'date_order',
    default_date  => 'default_day',
);

*called     = \&Rodtravel::Values::called;
*text_of    = \&Rodtravel::Values::text_of;
*exact_of   = \&Rodtravel::Values::exact_of;
*string_of  = \&Rodtravel::Values::string_of;

# Named arguments as texts; `rules` apart, as an object.
sub _arguments {
    my ($what, @given) = @_;
    Rodtravel::Error->refuse($what, 'arguments are pairs of a name and a value') if @given % 2;
    my %texts = @given;
    my $rules = rule_set(delete $texts{rules} // $DEFAULT_RULES);
    return ($rules, \%texts);
}

sub _form {
    my ($texts) = @_;
    my $form = Rodtravel::Core::Form->new();
    for my $name (sort keys %$texts) {
        next unless defined $texts->{$name};
        my $text = $name eq 'decimal_comma' ? ($texts->{$name} ? 'true' : 'false') : text_of($name, $texts->{$name});
        eval { called(sub { $form->set($FORM_WIDE{$name} // $name, $text) }); 1 } or _raise_as($@, $name);
    }
    return $form;
}

# A field is called as its argument is.
sub _raise_as {
    my ($error, $name) = @_;
    $error->{field} = $name if ref $error && $FORM_WIDE{$name};
    die $error;
}

# A struct that the library takes, filled from arguments.
sub _record {
    my ($name, $texts) = @_;
    my $record = Rodtravel::Core::Record->new($name);
    for my $path (sort keys %$texts) {
        next unless defined $texts->{$path};
        called(sub { $record->set($path, text_of($path, $texts->{$path})) });
    }
    return $record;
}

sub judge {
    my ($rules, $texts) = _arguments('judge', @_);
    my $form = _form($texts);
    return Rodtravel::Finding->_new(called(sub { $form->judge($rules->{core}) }), $rules);
}

sub judge_row {
    my ($rules, $texts) = _arguments('judge_row', @_);
    my $form    = _form($texts);
    my $core    = called(sub { $form->judge_row($rules->{core}) });
    my $finding = Rodtravel::Finding->_new($core, $rules);
    return $finding unless wantarray;
    my $error = $core->row_status() eq 'ok' ? undef
        : Rodtravel::Error->_new($core->row_status(), $core->row_field(), $core->row_column(), 0,
                                 string_of($core->row_text()));
    return ($finding, $error);
}

# An array is a column; anything else is that of every row.
sub judge_columns {
    my ($rules, $given) = _arguments('judge_columns', @_);
    my %cells = map { $_ => delete $given->{$_} } grep { ref $given->{$_} eq 'ARRAY' } keys %$given;
    my ($form, $columns, $rows) = (_form($given), Rodtravel::Core::Columns->new(), 0);
    for my $name (sort keys %cells) {
        my $text = join $CELL_END, map { text_of($name, $_ // '') } @{$cells{$name}};
        my $count = @{$cells{$name}};
        called(sub { $columns->set($name, $text, $count) });
        $rows = $count if $count > $rows;
    }
    called(sub { $columns->judge($rules->{core}, $form, $rows) });
    my %found = map { $_ => _column($columns, $_, $rows) } qw(verdict flags reasons stroke limit);
    for my $name (qw(stroke limit)) { $_ eq '' and $_ = undef for @{$found{$name}} }
    return \%found;
}

sub _column {
    my ($columns, $name, $rows) = @_;
    my $text = called(sub { $columns->column($name) });
    return $rows > 1 ? [split /$CELL_END/, $text, -1] : [($text) x $rows];
}

sub judge_vehicle {
    my ($ends, %more) = @_;
    my $brakes  = delete $more{brakes} // 0;
    my $vehicle = Rodtravel::Core::Vehicle->new();
    Rodtravel::Error->refuse('ends', 'wheel ends are an array of arrays: position, finding, and names with values')
        unless ref $ends eq 'ARRAY';
    Rodtravel::Error->refuse((sort keys %more)[0], 'judge_vehicle has no such argument') if %more;
    my $line = 0;
    for my $end (@$ends) {
        $line++;
        my ($position, $finding, %of) = ref $end eq 'ARRAY' ? @$end : ();
        Rodtravel::Error->refuse('finding', 'a wheel end needs a Rodtravel::Finding', $line)
            unless Rodtravel::Values::is_a($finding, 'Rodtravel::Finding');
        my @texts = map { text_of($_, delete $of{$_} // '') } qw(adjuster arm_length);
        Rodtravel::Error->refuse((sort keys %of)[0], 'a wheel end has no such argument', $line) if %of;
        called(sub { $vehicle->add(text_of('position', $position // ''), $finding->{core}, @texts) }, $line);
    }
    called(sub { $vehicle->judge(text_of('brakes', $brakes)) });
    return Rodtravel::Vehicle->_new($vehicle);
}

sub judge_air {
    my ($check, @given) = @_;
    my ($rules, $texts) = _arguments('judge_air', @given);
    my $answer = $texts->{answer};
    $texts->{answer} = $answer ? 'yes' : 'no' if defined $answer && $answer =~ /^[01]?$/;
    my $form = _record('rodt_air_form', {%$texts, check => $check});
    return Rodtravel::AirFinding->_new(called(sub { Rodtravel::Core::judge_air($form, $rules->{core}) }), $rules);
}

sub count {
    my (%given) = @_;
    my $tally = _record('rodt_tally', \%given);
    return Rodtravel::Count->_new(called(sub { Rodtravel::Core::judge_tally($tally, 0) }));
}

sub identify {
    my ($rules, $texts) = _arguments('identify', @_);
    my $day   = text_of('date', delete $texts->{date} // '');
    my $clues = _record('rodt_clues', $texts);
    return Rodtravel::Identification->_new(called(sub { Rodtravel::Core::identify($clues, $rules->{core}, $day) }), $rules);
}

sub find_limit {
    my ($chamber, @given) = @_;
    my ($rules, $texts) = _arguments('find_limit', @given);
    my $day = text_of('date', delete $texts->{date} // '');
    $chamber = read_chamber($chamber) unless Rodtravel::Values::is_a($chamber, 'Rodtravel::Chamber');
    # A copy: a chamber is a value.
    my %marks = map { $_ => $chamber->get($_) } qw(family stroke_class size spring_size rated_stroke marked_limit);
    my $record = _record('rodt_chamber', {%marks, %$texts});
    return Rodtravel::LimitAnswer->_new(called(sub { Rodtravel::Core::find_limit($record, $rules->{core}, $day) }), $rules);
}

sub read_chamber {
    my ($mark) = @_;
    my $text = text_of('chamber', $mark // '');
    return Rodtravel::Chamber->_new(called(sub { Rodtravel::Core::chamber($text) }));
}

sub steps {
    my ($rules, $given) = _arguments('steps', @_);
    my $language = text_of('language', delete $given->{language} // '');
    my @on       = ($rules->{core}, _record('rodt_air_reading', $given));
    my @found;
    for my $index (0 .. called(sub { Rodtravel::Core::step_count(@on) }) - 1) {
        my $rows = called(sub { Rodtravel::Core::step_row_count(@on, $index) });
        push @found, map { _step(\@on, $index, $_, $language) } $rows ? 0 .. $rows - 1 : -1;
    }
    return @found;
}

sub _step {
    my ($on, $index, $row, $language) = @_;
    my %step = map { my $part = $_; $part => called(sub { Rodtravel::Core::step_text(@$on, $index, $row, $part, $language) }) }
        qw(title do see good defective);
    my $json = $row < 0 ? 'null' : called(sub { Rodtravel::Core::step_row_json(@$on, $index, $row, $language) });
    return {%step, step => Rodtravel::Core::step_name(@$on, $index), row => JSON::PP->new->allow_nonref->decode($json)};
}

# Calls with exact numbers, by the names of its arguments.
sub _of_numbers {
    my ($call, $given, @names) = @_;
    my @texts = map { Rodtravel::Values::ratio_of($_, $given->{$_})->bstr() } @names;
    return called(sub { $call->(@texts) });
}

sub rated_volume {
    my ($chamber) = @_;
    $chamber = read_chamber($chamber) unless Rodtravel::Values::is_a($chamber, 'Rodtravel::Chamber');
    return exact_of(called(sub { Rodtravel::Core::chamber_rated_volume($chamber->{core}) }));
}

sub required_volume {
    my ($chambers, %more) = @_;
    my $trailer = $more{trailer} ? 1 : 0;
    return exact_of(_of_numbers(sub { Rodtravel::Core::reservoir_required_volume(@_, $trailer) }, {chambers => $chambers},
                                'chambers'));
}

sub build_up_seconds {
    my ($actual, $required) = @_;
    return exact_of(_of_numbers(\&Rodtravel::Core::reservoir_build_up_seconds, {actual => $actual, required => $required},
                                qw(actual required)));
}

sub estimate_application {
    my %given = (fill => 1, @_);
    return exact_of(_of_numbers(\&Rodtravel::Core::reservoir_estimate_application, \%given, qw(pressure reservoir chambers fill)));
}

sub estimate_applications {
    my %given = (fill => 1, @_);
    return _of_numbers(\&Rodtravel::Core::reservoir_estimate_applications, \%given,
                       qw(pressure least reservoir chambers fill));
}

sub read_length {
    my ($text, %more) = @_;
    my ($read, $unit) = (text_of('text', $text // ''), text_of('unit', $more{unit} // ''));
    return exact_of(called(sub { Rodtravel::Core::read_length($read, $unit) }));
}

sub read_pressure {
    my $text = text_of('text', $_[0] // '');
    return exact_of(called(sub { Rodtravel::Core::read_pressure($text) }));
}

sub read_seconds {
    my $text = text_of('text', $_[0] // '');
    return exact_of(called(sub { Rodtravel::Core::read_seconds($text) }));
}

sub read_date {
    my $text = text_of('text', $_[0] // '');
    return called(sub { Rodtravel::Core::read_date($text) });
}

sub write_length {
    my $length = Rodtravel::Values::ratio_of('length', $_[0]);
    my @parts = map { Rodtravel::Values::whole_of('length', $_) } $length->numerator, $length->denominator;
    return called(sub { Rodtravel::Core::write_length(@parts) });
}

sub rule_set {
    my ($id) = @_;
    return $id if Rodtravel::Values::is_a($id, 'Rodtravel::Rules');
    my $text = text_of('rules', $id // '');
    return Rodtravel::Rules->_new(called(sub { Rodtravel::Core::Rules->new($text) }));
}

sub rule_sets { return map { rule_set(Rodtravel::Core::rules_id($_)) } 0 .. Rodtravel::Core::rules_count() - 1 }

sub load_rules {
    my ($table, $name, %more) = @_;
    my $law = rule_set(delete $more{law} // $DEFAULT_RULES);
    my @air = defined $more{air_law} ? rule_set(delete $more{air_law})->{core} : ();
    Rodtravel::Error->refuse((sort keys %more)[0], 'load_rules has no such argument') if %more;
    my ($text, $id) = (text_of('table', $table // ''), text_of('name', $name // ''));
    return Rodtravel::Rules->_new(called(sub { $law->{core}->load($id, $text, @air) }));
}

sub tables_edition { return Rodtravel::Core::tables_edition() }

1;

__END__

=encoding utf8

=head1 NAME

Rodtravel - pushrod stroke of air brakes: from a tape reading to a verdict with its reasons and source, exactly

=head1 SYNOPSIS

    use Rodtravel qw(judge);

    my $finding = judge(chamber => '30L', released => '2 3/4', applied => '5 5/16', psi => 95);
    print $finding->verdict, "\n";    # out-of-adjustment
    print "$finding\n";               # 2 3/4 to 5 5/16 is 2 9/16; limit 2 1/2; over by 1/16
    print $finding->margin, "\n";     # -1/16, a Math::BigRat

=head1 DESCRIPTION

Exact numbers are L<Math::BigRat>, in inches, psi and seconds; undef is what is not given. Texts, whole numbers,
Math::BigRat, Math::BigInt and Math::BigFloat are accepted. Binary floats are refused: 0.1 is not a tenth there, and at a
limit such a difference decides. Write C<'0.1'>. Texts are strings of characters, not of bytes: decode what was read.
Days are texts, or objects that have C<ymd>, such as L<Time::Piece>.

Whatever is refused dies with a L</Rodtravel::Error>. What was found is a read-only value: it compares by C<eq> and C<==>,
C<json> writes it, C<data> is a copy of it as plain Perl.

Chock the wheels. Never get under a vehicle that can roll. The cited law and a licensed inspector decide.

=head1 FUNCTIONS

Each is exported on request.

=over

=item judge(chamber => ..., released => ..., applied => ..., ...)

Judges one wheel end and gives a L</Rodtravel::Finding>. More names: stroke_class, rated_stroke, marked_limit, psi,
psi_after, division, date, unit, engine, spring_brake, drum; C<rules>, an id or a L</Rodtravel::Rules> (us-fmcsr); of the
whole form C<default_unit> (in, mm, cm), C<decimal_comma>, C<date_order>, C<default_date>. Dies for the first text that
cannot be read.

=item judge_row(...)

The same for rows of files, which never dies for a text: a list of the finding and an error or undef. What cannot be read
makes the verdict undetermined, its reason says which.

=item judge_columns(chamber => [...], released => [...], applied => [...], ...)

Many wheel ends at once, as judge_row judges them: an array is a column, anything else is that of every row; the names of
judge. Gives a hash of arrays: C<verdict>, C<flags> and C<reasons>, words with commas; C<stroke> and C<limit>, exact texts in
inches that Math::BigRat reads, undef where there is none or a stroke is no whole number of
1/127000000000 in (up to nine decimals are), a limit none of 1/5080000 in.

=item judge_vehicle([[$position, $finding, adjuster => ..., arm_length => ...], ...], brakes => ...)

Counts the brakes of a vehicle by the roadside criterion and gives a L</Rodtravel::Vehicle>.

=item judge_air($check, pressure => ..., before => ..., after => ..., seconds => ..., answer => ..., rules => ...)

Judges a check of the air system and gives a Rodtravel::AirFinding: C<result>, C<at_limit>, C<sentence>. The names are
those of rodt_air_form.

=item count(brakes => ..., full => ..., half => ..., unknown => ..., inoperative => ...)

Judges counts of brakes and gives a Rodtravel::Count: C<outcome>, C<share>, C<defective>, C<sentence>.

=item identify(stamp => ..., family => ..., port => ..., tag => ..., rated_stroke => ..., diameter => ..., rules => ..., date => ...)

Which chamber it can be, as a Rodtravel::Identification: C<candidates>, C<strict_limit>, C<next_observation>.

=item find_limit($chamber, rules => ..., date => ..., stroke_class => ..., rated_stroke => ..., marked_limit => ...)

The limit for a chamber on a day, as a Rodtravel::LimitAnswer: C<limit>, C<law_limit>, C<source>, C<evidence>.

=item read_chamber($mark)

A Rodtravel::Chamber: C<family>, C<size>, C<spring_size>, C<stroke_class>, C<rated_stroke>, C<marked_limit>.

=item read_length($text, unit => ...), read_pressure($text), read_seconds($text), read_date($text)

The exact number; a day as YYYY-MM-DD.

=item write_length($number)

Inches as a mixed fraction, "1 3/4".

=item steps(rules => ..., vehicle => ..., towed_units => ..., built => ..., language => ...)

The steps of an inspection as they are said aloud, a list of hashes: C<step>, C<row>, C<title>, C<do>, C<see>, C<good>,
C<defective>; one for each row of the rule set that a step can have.

=item rated_volume($chamber), required_volume($cubic_inches, trailer => ...), build_up_seconds($actual, $required)

Cubic inches of a chamber, and of the reservoirs for chambers of so many in all; seconds allowed from 85 to 100 psi.

=item estimate_application(pressure => ..., reservoir => ..., chambers => ..., fill => 1), estimate_applications(..., least => ...)

Estimates, no figures of law: psi after one full application with the engine off, and how many keep at least so many psi, up
to 99.

=item rule_set($id), rule_sets(), load_rules($table, $name, law => ..., air_law => ...)

A L</Rodtravel::Rules>: one by its id, all that are compiled in, or a carrier's own limits, the text of a table, on top of
a law.

=item tables_edition()

The day of the tables that are compiled in.

=back

=head1 Rodtravel::Finding

C<verdict>, C<proof>, C<reasons> (a list of words), C<released>, C<applied>, C<applied_stroke>, C<limit>, C<law_limit>,
C<long_limit>, C<margin>, C<division>, C<probability_over>, C<pressure>, C<pressure_after>, C<evidence>, C<law_evidence>,
C<law_basis>, C<day>, C<defect>, C<rules>; C<source>, one line; C<has($reason)>; C<sentence($language)>, C<spoken($language)>,
C<sentences($language)>, a list, one for each reason; C<get($path)>, any member as text, C<exact($path)>, as a number;
C<json($language)>, C<data($language)>. Languages are en, fr and es.

=head1 Rodtravel::Vehicle

C<outcome>, C<share>, C<defective>, C<in_adjustment>, C<out_of_adjustment>, C<inoperative>, C<undetermined>, C<sentence>,
C<get>, C<exact>, C<json>, C<data>.

=head1 Rodtravel::Rules

C<id>, C<title>, C<authority>, C<source>, C<evidence>, C<limits($day)>, a list of hashes, C<air_limits($language)>, C<data>.

=head1 Rodtravel::Error

C<status>, a stable word such as C<date-cell>; C<field>, which argument, or ''; C<column>, characters counted from 1, or 0;
C<line>, of a table or the number of a wheel end, or 0; C<text>, a sentence; C<say($language)>, the same in French or
Spanish. As a string it is all of them.

=head1 THREADS

Objects stay in the interpreter that made them: in a new thread of Perl they are undef.

=cut
