# SPDX-License-Identifier: Apache-2.0
# What was refused, and where.
package Rodtravel::Error;
use strict;
use warnings;
use overload '""' => \&as_string, 'bool' => sub { 1 }, fallback => 1;

sub _new {
    my ($class, $status, $field, $column, $line, $text, $said) = @_;
    return bless {status => $status, field => $field, column => $column, line => $line, text => $text,
                  said => $said // {}}, $class;
}

# What Perl gave, and no text of a person, is wrong.
sub refuse {
    my ($class, $field, $text, $line) = @_;
    die $class->_new('argument', $field, 0, $line // 0, $text);
}

sub status { return $_[0]{status} }
sub field  { return $_[0]{field} }
sub column { return $_[0]{column} }
sub line   { return $_[0]{line} }
sub text   { return $_[0]{text} }

# In another language, where the sentence is the library's.
sub say {
    my ($self, $language) = @_;
    my ($tag) = ($language // '') =~ /^([A-Za-z]+)/;
    return $self->{said}{lc($tag // '')} // $self->{text};
}

sub as_string {
    my ($self) = @_;
    my @where = $self->{field} ne '' ? $self->{field} : ();
    push @where, "line $self->{line}" if $self->{line};
    push @where, "column $self->{column}" if $self->{column};
    return (@where ? join(', ', @where) . ': ' : '') . $self->{text} . "\n";
}

1;
