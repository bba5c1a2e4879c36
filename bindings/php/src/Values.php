<?php
// SPDX-License-Identifier: Apache-2.0

declare(strict_types=1);

namespace Rodtravel;

/** What the library found: not changed, and == where its JSON is the same. A member is read by its name. */
abstract class Value implements \JsonSerializable, \Stringable
{
    /** Members that are no texts; PATHS has those whose path is not their name. */
    protected const EXACT = [];
    protected const WHOLE = [];
    protected const YES = [];
    protected const PATHS = [];
    private readonly string $json; // == compares it

    /** @internal */
    final public function __construct(private readonly object $core)
    {
        $this->json = Core::call($core->json(...));
    }

    /** A member as a text, by its path: "law_row.published". */
    final public function get(string $path): string
    {
        return Core::call($this->core->get(...), Core::text('path', $path));
    }

    /** A member as an exact number, or null. */
    final public function exact(string $path): ?Ratio
    {
        return Ratio::read(Core::call($this->core->exact(...), Core::text('path', $path)));
    }

    /** The report, as a text of JSON. */
    public function json(string $language = ''): string
    {
        return $language === '' ? $this->json : Core::call($this->core->json(...), Core::text('language', $language));
    }

    /** @return array<string, mixed> */
    final public function toArray(string $language = ''): array
    {
        return json_decode($this->json($language), true, flags: JSON_THROW_ON_ERROR);
    }

    final public function jsonSerialize(): mixed
    {
        return json_decode($this->json, flags: JSON_THROW_ON_ERROR);
    }

    /** What was found in one line, in a language of the library. */
    public function sentence(string $language = ''): string
    {
        return Core::call($this->core->say(...), Core::text('language', $language));
    }

    public function __toString(): string
    {
        return $this->sentence();
    }

    public function __get(string $name): mixed
    {
        $path = static::PATHS[$name] ?? $name;
        return match (true) {
            in_array($name, static::EXACT, true) => $this->exact($path),
            in_array($name, static::WHOLE, true) => (int) $this->get($path),
            in_array($name, static::YES, true) => $this->get($path) === 'true',
            $name === 'day' => Core::day($this->get($path)),
            default => ($text = $this->get($path)) === '' ? null : $text,
        };
    }

    final public function __isset(string $name): bool
    {
        try {
            return $this->__get($name) !== null;
        } catch (Error) {
            return false;
        }
    }

    final public function __set(string $name, mixed $value): void
    {
        throw new Error('what was found is not changed', field: $name);
    }

    final public function __unset(string $name): void
    {
        $this->__set($name, null);
    }

    final public function __serialize(): array
    {
        throw new Error('what was found is kept as JSON', field: static::class);
    }

    /** @internal */
    final public function core(): object
    {
        return $this->core;
    }
}

/**
 * @property-read string $verdict
 * @property-read list<string> $reasons
 * @property-read ?Ratio $margin limit less stroke, in inches; also released, applied, applied_stroke, limit, law_limit,
 *     long_limit, division, probability_over, and in psi pressure, pressure_after
 * @property-read ?string $proof also evidence, law_evidence, law_basis, unit, chamber, rules
 * @property-read ?\DateTimeImmutable $day
 * @property-read string $defect none, half, full or unknown
 * @property-read ?string $source where the limit is published
 * @property-read ?Error $error of judgeRow: the first text that could not be read
 */
final class Finding extends Value
{
    protected const EXACT = ['released', 'applied', 'applied_stroke', 'limit', 'law_limit', 'long_limit', 'margin',
                             'division', 'probability_over', 'pressure', 'pressure_after'];

    public function __get(string $name): mixed
    {
        $core = $this->core();
        return match ($name) {
            'reasons' => ($all = $this->get('reasons')) === '' ? [] : explode(', ', $all),
            'defect' => $core->defect(),
            'source' => Core::call($core->source(...)),
            'error' => $core->row_status() === 'ok' ? null
                : new Error($core->row_text(), $core->row_status(), $core->row_field(), $core->row_column()),
            default => parent::__get($name),
        };
    }

    /** What a person says aloud. */
    public function spoken(string $language = ''): string
    {
        return Core::call($this->core()->spoken(...), Core::text('language', $language));
    }

    /** @return list<string> a sentence for each reason */
    public function sentences(string $language = ''): array
    {
        $all = Core::call($this->core()->sentences(...), Core::text('language', $language));
        return $all === null || $all === '' ? [] : explode("\n", $all);
    }
}

/**
 * @property-read string $outcome
 * @property-read ?Ratio $share also worst_share, defective
 * @property-read int $brakes also in_adjustment, out_of_adjustment, inoperative, undetermined, mismatched_axles
 */
final class Vehicle extends Value
{
    protected const PATHS = ['outcome' => 'count.outcome', 'share' => 'count.share',
                             'worst_share' => 'count.worst_share', 'defective' => 'count.defective',
                             'brakes' => 'count.brakes'];
    protected const EXACT = ['share', 'worst_share', 'defective'];
    protected const WHOLE = ['brakes', 'in_adjustment', 'out_of_adjustment', 'inoperative', 'undetermined',
                             'mismatched_axles'];
}

/**
 * @property-read string $result
 * @property-read ?string $missing
 * @property-read bool $at_limit
 */
final class AirFinding extends Value
{
    protected const YES = ['at_limit'];
}

/**
 * @property-read string $outcome
 * @property-read ?Ratio $share also worst_share, known_share, defective, criterion
 * @property-read int $brakes also whole_needed
 */
final class Count extends Value
{
    protected const EXACT = ['share', 'worst_share', 'known_share', 'defective', 'criterion'];
    protected const WHOLE = ['brakes', 'whole_needed'];
}

/**
 * @property-read ?string $next_observation
 * @property-read ?Ratio $strict_limit
 * @property-read list<array<string, mixed>> $candidates
 */
final class Identification extends Value
{
    protected const EXACT = ['strict_limit'];

    public function __get(string $name): mixed
    {
        return $name === 'candidates' ? $this->toArray()['candidates'] : parent::__get($name);
    }

    public function __toString(): string
    {
        return $this->json();
    }
}

/**
 * @property-read ?Ratio $limit also law_limit
 * @property-read ?string $evidence also law_evidence, law_basis
 */
final class Limit extends Value
{
    protected const EXACT = ['limit', 'law_limit'];

    public function __toString(): string
    {
        return $this->json();
    }
}

/**
 * @property-read ?string $family also size, spring_size, stroke_class
 * @property-read ?Ratio $rated_stroke also marked_limit
 */
final class Chamber extends Value
{
    protected const EXACT = ['rated_stroke', 'marked_limit'];

    public function __toString(): string
    {
        return implode(' ', array_diff(array_filter([$this->family, $this->size, $this->stroke_class]), ['unknown']));
    }
}

/** A law, or a carrier's own limits on top of one. */
final class Rules extends Value
{
    public function id(): string
    {
        return $this->core()->id();
    }

    public function __toString(): string
    {
        return $this->id();
    }

    public function json(string $language = ''): string
    {
        return parent::json();
    }

    /** @return list<array<string, mixed>> the rows of limits in force on a day, without one the newest */
    public function limits(string|\DateTimeInterface|null $day = null): array
    {
        return json_decode(Core::call($this->core()->limits_json(...), Core::text('date', $day)), true)['limits'];
    }

    /** @return list<array<string, mixed>> */
    public function airLimits(string $language = ''): array
    {
        $rows = [];
        for ($row = 0; $row < $this->core()->air_limit_count(); $row++) {
            $text = Core::call($this->core()->air_limit_json(...), $row, Core::text('language', $language));
            $rows[] = json_decode($text, true);
        }
        return $rows;
    }
}
