<?php
// SPDX-License-Identifier: Apache-2.0

declare(strict_types=1);

namespace Rodtravel;

/**
 * A fraction of two integers in lowest terms, its denominator positive; == compares by value. Its arithmetic is the
 * library's: exact, or refused with status "range" where 64 bits do not hold the answer.
 */
final class Ratio implements \JsonSerializable, \Stringable
{
    private function __construct(public readonly int $num, public readonly int $den)
    {
    }

    /** The number of a whole number, a fraction of two, or a text such as "-1/16". */
    public static function of(mixed $num, mixed $den = 1): self
    {
        return self::arithmetic('quotient', $num, $den);
    }

    /** @internal the text that the library writes */
    public static function read(string $text): ?self
    {
        if ($text === '') {
            return null;
        }
        [$num, $den] = explode('/', "$text/1");
        return new self((int) $num, (int) $den);
    }

    public function plus(mixed $other): self
    {
        return self::arithmetic('sum', $this, $other);
    }

    public function minus(mixed $other): self
    {
        return self::arithmetic('difference', $this, $other);
    }

    public function times(mixed $other): self
    {
        return self::arithmetic('product', $this, $other);
    }

    public function dividedBy(mixed $other): self
    {
        return self::arithmetic('quotient', $this, $other);
    }

    /** -1, 0 or 1; < and > of PHP compare numerators first. */
    public function compareTo(mixed $other): int
    {
        return Core::call(rodtravel_core_ratio_compare(...), (string) $this, self::text($other));
    }

    /** The nearest binary float, which is no longer exact. */
    public function toFloat(): float
    {
        return $this->num / $this->den;
    }

    /** @return array{\GMP, \GMP} numerator and denominator; needs the extension gmp */
    public function toGmp(): array
    {
        return [gmp_init($this->num), gmp_init($this->den)];
    }

    public function __toString(): string
    {
        return $this->den === 1 ? "$this->num" : "$this->num/$this->den";
    }

    public function jsonSerialize(): string
    {
        return (string) $this;
    }

    private static function arithmetic(string $name, mixed $first, mixed $second): self
    {
        $call = "rodtravel_core_ratio_$name";
        return self::read(Core::call($call(...), self::text($first), self::text($second)));
    }

    /** @internal the text of an exact number, refused by the name of its argument */
    public static function text(mixed $value, string $name = 'number'): string
    {
        return match (true) {
            $value instanceof self => (string) $value,
            is_int($value), is_string($value), $value instanceof \GMP => Core::text($name, $value),
            default => throw Core::odd($name, $value, 'exact number'),
        };
    }
}
