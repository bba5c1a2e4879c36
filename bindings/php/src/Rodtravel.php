<?php
// SPDX-License-Identifier: Apache-2.0

declare(strict_types=1);

namespace Rodtravel;

/** Pushrod stroke of air brakes: from a tape reading to a verdict with its reasons and source, exactly. */
final class Rodtravel
{
    public const DEFAULT_RULES = 'us-fmcsr';
    private const OF_WHEEL_END = ['position', 'finding', 'adjuster', 'arm_length'];

    /**
     * One wheel end: chamber, released, applied, and what else rodt_form has; default_unit, decimal_comma, date_order,
     * default_date. A text, an int, a Ratio, a GMP or a day each.
     *
     * @throws Error for the first text that cannot be read
     */
    public static function judge(string|Rules $rules = self::DEFAULT_RULES, mixed ...$texts): Finding
    {
        $form = Core::form($texts);
        return new Finding(Core::call($form->judge(...), self::law($rules)));
    }

    /** The same for a row of a file, which no text stops: the finding's error says what could not be read. */
    public static function judgeRow(string|Rules $rules = self::DEFAULT_RULES, mixed ...$texts): Finding
    {
        $form = Core::form($texts);
        return new Finding(Core::call($form->judge_row(...), self::law($rules)));
    }

    /**
     * Many wheel ends at once, as judgeRow judges them, by the names of judge: chamber, released and applied are
     * arrays of cells; of the rest an array is a column, anything else is that of every row.
     *
     * @return array<string, list<mixed>> verdict, flags and reasons as words with commas, stroke and limit as Ratio in
     *     inches, null where there is none or a stroke is no whole number of 1/127000000000 in (up to nine
     *     decimals are), a limit none of 1/5080000 in
     */
    public static function judgeColumns(string|Rules $rules = self::DEFAULT_RULES, mixed ...$given): array
    {
        $lists = array_filter($given, is_array(...));
        $rows = max([0, ...array_values(array_map(count(...), $lists))]);
        $columns = new \Rodtravel_Core_Columns();
        foreach ($lists as $name => $cells) {
            Core::call($columns->set(...), Core::path($name), Core::cells($name, $cells), count($cells));
        }
        Core::call($columns->judge(...), self::law($rules), Core::form(array_diff_key($given, $lists)), $rows);
        foreach (['verdict', 'flags', 'reasons', 'stroke', 'limit'] as $name) {
            $answers[$name] = Core::column($columns, $name, $rows);
        }
        foreach (['stroke', 'limit'] as $name) {
            $answers[$name] = array_map(Ratio::read(...), $answers[$name]);
        }
        return $answers;
    }

    /**
     * The roadside criterion.
     *
     * @param list<array{position: string, finding: Finding, adjuster?: mixed, arm_length?: mixed}> $ends
     * @param int $brakes of the vehicle, measured or not; 0 = both ends of every axle
     */
    public static function judgeVehicle(array $ends, int $brakes = 0): Vehicle
    {
        if ($ends === []) {
            throw new Error('a vehicle has wheel ends', field: 'ends');
        }
        if ($brakes >= 2 ** 31) {
            throw new Error('the number is too large', 'range', 'brakes');
        }
        $vehicle = new \Rodtravel_Core_Vehicle();
        foreach (array_values($ends) as $i => $end) {
            self::addEnd($vehicle, $end, $i + 1);
        }
        Core::call($vehicle->judge(...), max($brakes, -1));
        return new Vehicle($vehicle);
    }

    private static function addEnd(\Rodtravel_Core_Vehicle $vehicle, mixed $end, int $line): void
    {
        $finding = is_array($end) ? $end['finding'] ?? null : null;
        if (!$finding instanceof Finding) {
            throw new Error('a wheel end needs a finding', field: 'finding', input_line: $line);
        }
        foreach (array_diff(array_keys($end), self::OF_WHEEL_END) as $odd) {
            throw new Error('a wheel end has no such member', field: (string) $odd, input_line: $line);
        }
        $text = fn (string $name) => Core::text($name, $end[$name] ?? null);
        Core::named(null, $line, $vehicle->add(...), $text('position'), $finding->core(), $text('adjuster'),
                    $text('arm_length'));
    }

    /** A check of the air system, by the names of rodt_air_form: "warning", pressure: 62. */
    public static function judgeAir(
        string $check,
        string|Rules $rules = self::DEFAULT_RULES,
        mixed ...$texts,
    ): AirFinding {
        if (is_bool($texts['answer'] ?? null)) {
            $texts['answer'] = $texts['answer'] ? 'yes' : 'no';
        }
        $form = Core::record('rodt_air_form', ['check' => $check] + $texts);
        return new AirFinding(Core::call(rodtravel_core_judge_air(...), $form, self::law($rules)));
    }

    /** Counts of brakes: brakes, full, half, unknown, inoperative. */
    public static function count(mixed ...$counts): Count
    {
        return new Count(Core::call(rodtravel_core_judge_tally(...), Core::record('rodt_tally', $counts), 0));
    }

    /** Which chamber it can be, by what was seen: stamp, family, port, tag, rated_stroke, diameter. */
    public static function identify(
        string|Rules $rules = self::DEFAULT_RULES,
        string|\DateTimeInterface|null $date = null,
        mixed ...$clues,
    ): Identification {
        return new Identification(Core::call(rodtravel_core_identify(...), Core::record('rodt_clues', $clues),
                                             self::law($rules), Core::text('date', $date)));
    }

    /** The limit for a chamber's mark on a day: stroke_class, rated_stroke, marked_limit. */
    public static function findLimit(
        string $mark,
        string|Rules $rules = self::DEFAULT_RULES,
        string|\DateTimeInterface|null $date = null,
        mixed ...$marks,
    ): Limit {
        $chamber = self::readChamber($mark);
        foreach (['family', 'size', 'spring_size', 'stroke_class'] as $name) {
            $marks += [$name => $chamber->get($name)];
        }
        return new Limit(Core::call(rodtravel_core_find_limit(...), Core::record('rodt_chamber', $marks),
                                    self::law($rules), Core::text('date', $date)));
    }

    public static function readChamber(string $mark): Chamber
    {
        return new Chamber(Core::call(rodtravel_core_chamber(...), Core::text('chamber', $mark)));
    }

    /**
     * The steps of an inspection as they are said aloud, for a vehicle, by the names of rodt_air_reading: one for each
     * row of the rule set that a step can have.
     *
     * @return list<array{step: string, row: ?array<string, mixed>, title: string, do: string, see: string,
     *     good: string, defective: string}>
     */
    public static function steps(
        string|Rules $rules = self::DEFAULT_RULES,
        string $language = '',
        mixed ...$vehicle,
    ): array {
        $on = [self::law($rules), Core::record('rodt_air_reading', $vehicle)];
        $language = Core::text('language', $language);
        $steps = [];
        for ($index = 0; $index < Core::call(rodtravel_core_step_count(...), ...$on); $index++) {
            $rows = Core::call(rodtravel_core_step_row_count(...), ...$on, ...[$index]);
            foreach ($rows > 0 ? range(0, $rows - 1) : [-1] as $row) {
                $steps[] = self::step([...$on, $index], $row, $language);
            }
        }
        return $steps;
    }

    /** @return array<string, mixed> */
    private static function step(array $of, int $row, string $language): array
    {
        $json = $row < 0 ? 'null' : Core::call(rodtravel_core_step_row_json(...), ...[...$of, $row, $language]);
        $step = ['step' => Core::call(rodtravel_core_step_name(...), ...$of), 'row' => json_decode($json, true)];
        foreach (['title', 'do', 'see', 'good', 'defective'] as $part) {
            $step[$part] = Core::call(rodtravel_core_step_text(...), ...[...$of, $row, $part, $language]);
        }
        return $step;
    }

    /** The rated volume of a chamber's mark, in cubic inches. */
    public static function ratedVolume(string $mark): Ratio
    {
        $chamber = Core::call(rodtravel_core_chamber(...), Core::text('chamber', $mark));
        return Ratio::read(Core::call(rodtravel_core_chamber_rated_volume(...), $chamber));
    }

    /** The volume that reservoirs need for chambers of so many cubic inches in all. */
    public static function requiredVolume(mixed $chambers, bool $trailer = false): Ratio
    {
        return Ratio::read(Core::call(rodtravel_core_reservoir_required_volume(...),
                                      Ratio::text($chambers, 'chambers'), (int) $trailer));
    }

    /** Seconds allowed from 85 to 100 psi, for an actual and a required volume. */
    public static function buildUpSeconds(mixed $actual, mixed $required): Ratio
    {
        return Ratio::read(Core::call(rodtravel_core_reservoir_build_up_seconds(...), Ratio::text($actual, 'actual'),
                                      Ratio::text($required, 'required')));
    }

    /** An estimate, no figure of law: psi after one full application, engine off; fill 1 = the worst case. */
    public static function estimateApplication(
        mixed $pressure,
        mixed $reservoir,
        mixed $chambers,
        mixed $fill = 1,
    ): Ratio {
        return Ratio::read(Core::call(
            rodtravel_core_reservoir_estimate_application(...),
            Ratio::text($pressure, 'pressure'),
            Ratio::text($reservoir, 'reservoir'),
            Ratio::text($chambers, 'chambers'),
            Ratio::text($fill, 'fill'),
        ));
    }

    /** An estimate: how many full applications keep at least so many psi, at most 99. */
    public static function estimateApplications(
        mixed $pressure,
        mixed $least,
        mixed $reservoir,
        mixed $chambers,
        mixed $fill = 1,
    ): int {
        return Core::call(
            rodtravel_core_reservoir_estimate_applications(...),
            Ratio::text($pressure, 'pressure'),
            Ratio::text($least, 'least'),
            Ratio::text($reservoir, 'reservoir'),
            Ratio::text($chambers, 'chambers'),
            Ratio::text($fill, 'fill'),
        );
    }

    /** In inches; unit is "in", "mm" or "cm" where the text has none. */
    public static function readLength(mixed $text, string $unit = ''): Ratio
    {
        return Ratio::read(Core::call(rodtravel_core_read_length(...), Core::text('text', $text),
                                      Core::text('unit', $unit)));
    }

    /** In psi, whatever unit it is written in. */
    public static function readPressure(mixed $text): Ratio
    {
        return Ratio::read(Core::call(rodtravel_core_read_pressure(...), Core::text('text', $text)));
    }

    public static function readSeconds(mixed $text): Ratio
    {
        return Ratio::read(Core::call(rodtravel_core_read_seconds(...), Core::text('text', $text)));
    }

    public static function readDate(mixed $text): \DateTimeImmutable
    {
        return Core::day(Core::call(rodtravel_core_read_date(...), Core::text('text', $text)));
    }

    /** Inches as a mixed fraction, "1 3/4". */
    public static function writeLength(int|Ratio $length): string
    {
        $length = Ratio::of($length);
        return Core::call(rodtravel_core_write_length(...), $length->num, $length->den);
    }

    /** A law that is compiled in, by its id. */
    public static function ruleSet(string|Rules $id): Rules
    {
        return $id instanceof Rules ? $id : new Rules(self::law($id));
    }

    /** Those that were asked for by an id are kept: there are few. */
    private static function law(string|Rules $id): \Rodtravel_Core_Rules
    {
        static $kept = [];
        return $id instanceof Rules ? $id->core()
            : $kept[$id] ??= Core::call(fn ($text) => new \Rodtravel_Core_Rules($text), Core::text('rules', $id));
    }

    /** @return list<Rules> */
    public static function ruleSets(): array
    {
        $all = [];
        for ($i = 0; $i < rodtravel_core_rules_count(); $i++) {
            $all[] = self::ruleSet(rodtravel_core_rules_id($i));
        }
        return $all;
    }

    /** A carrier's own limits, the text of a table, on top of a law; its air checks may have another law. */
    public static function loadRules(
        string $table,
        string $name,
        string|Rules $law = self::DEFAULT_RULES,
        string|Rules|null $air_law = null,
    ): Rules {
        $air = $air_law === null ? [] : [self::law($air_law)];
        $load = self::law($law)->load(...);
        return new Rules(Core::call($load, Core::text('name', $name), Core::text('table', $table), ...$air));
    }

    public static function tablesEdition(): string
    {
        return rodtravel_core_tables_edition();
    }

    public static function version(): string
    {
        return rodtravel_core_version();
    }
}
