<?php
// SPDX-License-Identifier: Apache-2.0

declare(strict_types=1);

namespace Rodtravel;

/**
 * Values of PHP as texts of the library, and its answers as values of PHP.
 *
 * @internal
 */
final class Core
{
    /** Arguments that are about a whole form, and what they are called in C. */
    private const FORM_WIDE = ['default_unit' => 'style.unit', 'decimal_comma' => 'style.decimal_comma',
                               'date_order' => 'date_order', 'default_date' => 'default_day'];
    private const CELL_END = "\u{1f}"; // between the cells of a column
    private const MOST_DIGITS = 9; // after the point; a number with more is written as a fraction

    /** Calls the library; throws what it refused. */
    public static function call(callable $of, mixed ...$arguments): mixed
    {
        return self::named(null, null, $of, ...$arguments);
    }

    /** The same: the name is that of the argument, the line that of a wheel end. */
    public static function named(?string $name, ?int $line, callable $of, mixed ...$arguments): mixed
    {
        try {
            return $of(...$arguments);
        } catch (\ValueError | \Exception $refused) {
            $status = rodtravel_core_error_status();
            throw $status === 'ok' ? $refused : self::error($status, $name, $line);
        }
    }

    private static function error(string $status, ?string $name, ?int $line): Error
    {
        $said = [];
        for ($i = 0; $i < rodtravel_core_language_count(); $i++) {
            $language = rodtravel_core_language($i);
            $said[explode('-', $language)[0]] = rodtravel_core_error_say($language);
        }
        return new Error(rodtravel_core_error_text(), $status, $name ?? rodtravel_core_error_field(),
                         rodtravel_core_error_column(), $line ?? rodtravel_core_error_line(), $said);
    }

    public static function odd(string $name, mixed $value, string $wanted): Error
    {
        return new Error(is_float($value)
            ? json_encode($value, JSON_PARTIAL_OUTPUT_ON_ERROR)
              . ' is a binary float, which is only nearly what was read; give it as a text'
            : get_debug_type($value) . " is no $wanted", field: $name);
    }

    public static function text(string $name, mixed $value): string
    {
        return match (true) {
            $value === null => '',
            is_string($value) => self::readable($name, $value),
            is_int($value) => (string) $value,
            is_bool($value) => $value ? 'true' : 'false',
            $value instanceof Ratio => self::number($value),
            $value instanceof \DateTimeInterface => $value->format('Y-m-d'),
            $value instanceof \GMP => gmp_strval($value),
            $value instanceof \Stringable => self::readable($name, (string) $value),
            default => throw self::odd($name, $value, 'text, exact number or day'),
        };
    }

    private static function readable(string $name, string $value): string
    {
        if (preg_match('//u', $value) !== 1) {
            throw new Error('a text of the library is in UTF-8', field: $name);
        }
        if (str_contains($value, "\0")) {
            throw new Error('a text of the library has no zero character', field: $name);
        }
        return $value;
    }

    /** A number is read as its text: as a decimal where it is a short one, so that 33/8 is not taken for 3 3/8. */
    private static function number(Ratio $value): string
    {
        for ($digits = 0; $digits <= self::MOST_DIGITS && 10 ** $digits % $value->den !== 0; $digits++) {
        }
        if ($digits > self::MOST_DIGITS || $value->den === 1 || $value->num === PHP_INT_MIN) {
            return (string) $value;
        }
        $size = abs($value->num);
        $places = $size % $value->den * intdiv(10 ** $digits, $value->den);
        return sprintf('%s%d.%0' . $digits . 'd', $value->num < 0 ? '-' : '', intdiv($size, $value->den), $places);
    }

    /** @param array<string, mixed> $texts */
    public static function record(string $name, array $texts): \Rodtravel_Core_Record
    {
        $made = new \Rodtravel_Core_Record($name);
        foreach ($texts as $path => $value) {
            if ($value !== null) {
                self::call($made->set(...), self::path($path), self::text((string) $path, $value));
            }
        }
        return $made;
    }

    /** @param array<string, mixed> $texts */
    public static function form(array $texts): \Rodtravel_Core_Form
    {
        $made = new \Rodtravel_Core_Form();
        foreach ($texts as $name => $value) {
            if ($value !== null) {
                $path = self::FORM_WIDE[$name] ?? null;
                self::named($path === null ? null : $name, null, $made->set(...), $path ?? self::path($name),
                            self::text((string) $name, $value));
            }
        }
        return $made;
    }

    /** A column as one text. */
    public static function cells(string $name, array $cells): string
    {
        return implode(self::CELL_END, array_map(fn ($cell) => self::text($name, $cell), $cells));
    }

    /** @return list<string> an answer of so many rows */
    public static function column(\Rodtravel_Core_Columns $columns, string $name, int $rows): array
    {
        $text = self::call($columns->column(...), $name);
        return $rows === 0 ? [] : explode(self::CELL_END, $text);
    }

    /** Arguments have names; what is given by its place has none. */
    public static function path(int|string $name): string
    {
        return is_string($name) ? self::readable('name', $name) : throw new Error('give arguments by their names');
    }

    public static function day(string $text): ?\DateTimeImmutable
    {
        return $text === '' ? null : new \DateTimeImmutable($text, new \DateTimeZone('UTC'));
    }
}
