<?php
// SPDX-License-Identifier: Apache-2.0
// What the package finds and refuses. Prints TAP.

declare(strict_types=1);

use Rodtravel\Error;
use Rodtravel\Ratio;
use Rodtravel\Rodtravel as R;

require 'rodtravel.php';

const TEXTS = ['chamber' => '30L', 'released' => '2 3/4', 'applied' => '5 5/16', 'psi' => 95];
$count = $failed = 0;

function ok(bool $right, string $what, string $note = ''): void
{
    global $count, $failed;
    $count++;
    $failed += $right ? 0 : 1;
    echo $right ? '' : 'not ', "ok $count - $what\n", $right || $note === '' ? '' : "# $note\n";
}

function is(mixed $found, mixed $wanted, string $what): void
{
    ok($found === $wanted || is_object($wanted) && $found == $wanted, $what,
       'found ' . json_encode($found) . ', wanted ' . json_encode($wanted));
}

/** Status, field, column and line of what a call must refuse. */
function refused(string $wanted, callable $call): void
{
    try {
        $call();
        $found = 'nothing';
    } catch (Error $error) {
        $field = $error->field === '' ? '-' : $error->field;
        $found = "$error->status $field $error->column $error->input_line";
    }
    is($found, $wanted, "refused: $wanted");
}

function judged(mixed ...$other): Rodtravel\Finding
{
    return R::judge(...$other + TEXTS);
}

// --- A wheel end ----------------------------------------------------------------------------------------------------

$over = judged();
is($over->verdict, 'out-of-adjustment', 'the verdict');
is((string) $over->margin, '-1/16', 'the margin is exact');
is([(string) $over->applied_stroke, (string) $over->limit], ['41/16', '5/2'], 'stroke and limit');
is($over->reasons, ['over-limit'], 'reasons');
is((string) $over, '2 3/4 to 5 5/16 is 2 9/16; limit 2 1/2; over by 1/16', 'a finding as a text');
is($over->long_limit, null, 'what is not given is null');
ok(isset($over->margin) && !isset($over->long_limit) && !isset($over->colour), 'isset');
is($over->defect, 'half', 'the defect');
ok(str_starts_with($over->source, '49 CFR Part 393, 393.47'), 'the source');
is($over->get('law_row.published'), '2 1/2', 'a member by its path');
ok(str_contains($over->sentences('fr')[0], 'dépasse la limite'), 'a reason in French');
ok(str_contains($over->sentence('es'), 'límite'), 'the finding in Spanish');
ok(str_starts_with($over->spoken(), 'Released 2 3/4'), 'what is said aloud');
is($over->toArray()['limit'], '2 1/2', 'as an array');
is(json_decode(json_encode([$over]), true)[0], $over->toArray(), 'in JSON of other things');
ok($over == judged() && $over != judged(applied: '5'), 'equal by value');
is(judged(division: '1/8')->proof, 'not-resolved', 'what the division proves');
is(judged(date: new DateTime('2024-05-06 23:59', new DateTimeZone('Asia/Tokyo')))->day?->format('Y-m-d'), '2024-05-06',
   'a day in and out');

$row = R::judgeRow(...['applied' => '2-Jan'] + TEXTS);
is([$row->verdict, $row->error->status, $row->error->field, $row->error->column],
   ['undetermined', 'date-cell', 'applied', 1], 'a row');
is(R::judgeRow(...TEXTS)->error, null, 'a sound row');
is(R::judgeRow(...TEXTS), $over, 'is judged as by judge');
is(R::judge(chamber: '30', released: '50,8', applied: '104,8', default_unit: 'mm', decimal_comma: true)->verdict,
   'out-of-adjustment', 'a form in millimetres with decimal commas');

// --- The rest of the job --------------------------------------------------------------------------------------------

$ends = [['position' => '1L', 'finding' => $over, 'adjuster' => 'automatic', 'arm_length' => 6],
         ['position' => '1R', 'finding' => judged(applied: '5')]];
$vehicle = R::judgeVehicle($ends);
is([$vehicle->outcome, (string) $vehicle->share], ['ambiguous', '1/4'], 'half a brake of two');
is($vehicle->out_of_adjustment + $vehicle->in_adjustment, 2, 'counts are numbers');
is($vehicle->toArray()['wheel_ends'][0]['advice_code'], 'find-fault', 'what to do next');
is(R::judgeVehicle([$ends[0]], brakes: 10)->outcome, 'undetermined', 'brakes that were not measured');
is(R::judgeAir('warning', pressure: 62, rules: 'us-cdl')->result, 'good', 'the low-pressure warning');
is(R::judgeAir('warning', pressure: '60', rules: 'us-newvehicle')->at_limit, true, 'at the edge');
is(R::count(brakes: 6, full: 1, half: 1)->outcome, 'ambiguous', 'the chart of whole brakes');
$which = R::identify(stamp: '24');
is([(string) $which->strict_limit, $which->next_observation], ['7/4', 'long-sign'], 'which chamber it can be');
ok(count($which->candidates) > 2, 'candidates');
is([R::readChamber('30LS')->size, R::readChamber('30LS')->stroke_class], ['30', 'long'], 'a mark');
is((string) R::readChamber('30LS'), 'clamp 30 long', 'as a text');
is((string) R::findLimit('36', date: new DateTimeImmutable('2021-10-13'))->limit, '9/4', 'a limit on a day');
is((string) R::findLimit('24', rated_stroke: 3)->limit, '5/2', 'with a mark more');
ok(count(R::ruleSets()) > 5 && count(R::ruleSet('us-fmcsr')->limits()) > 30
   && count(R::ruleSet('us-cdl')->airLimits('fr')) > 3, 'rules');
$yard = R::loadRules("family,size,class,limit\nclamp,30,long,2 3/8\n", 'yard');
$kept = judged(rules: $yard, applied: '5 1/4');
unset($yard);
gc_collect_cycles();
ok(in_array('over-own-limit', $kept->reasons, true) && $kept->limit->compareTo($kept->law_limit) < 0
   && $kept->rules === 'yard', "a carrier's own limit");

// --- Columns, steps, reservoirs -------------------------------------------------------------------------------------

$rows = ['chamber' => ['30L', '30', null, '30L', '30'], 'released' => ['2 3/4', '2 1/8', '1', '2-Jan', '2.750001'],
         'applied' => ['5 5/16', Ratio::of(33, 8), '2', '5', '4.612345']];
$answers = R::judgeColumns(...$rows, psi: 95);
foreach (array_keys($rows['chamber']) as $i) {
    $one = R::judgeRow(...array_map(fn ($cells) => $cells[$i], $rows), psi: 95);
    is([$answers['verdict'][$i], $answers['reasons'][$i]], [$one->verdict, implode(', ', $one->reasons)], "row $i");
    ok($answers['stroke'][$i] == $one->applied_stroke && $answers['limit'][$i] == $one->limit, "its numbers");
}
is([$answers['stroke'][0]->num, $answers['limit'][0]->den, $answers['limit'][2]], [41, 2, null], 'exact, or not there');
is($answers['flags'], ['', '', 'missing', 'invalid', ''], 'flags of cells');
is(R::judgeColumns(chamber: [], released: [], applied: []),
   ['verdict' => [], 'flags' => [], 'reasons' => [], 'stroke' => [], 'limit' => []], 'no rows');
is(R::judgeColumns(chamber: [''], released: [null], applied: [''])['verdict'], ['undetermined'], 'one blank row');
is(R::judgeColumns('us-fmcsr', chamber: [5 => '30L', 2 => '30L'], released: ['1', '1'], applied: ['2', '4'])['verdict'],
   ['in-adjustment', 'out-of-adjustment'], 'cells in the order of the array');
refused('argument released 0 0', fn () => R::judgeColumns(chamber: ['30', '30'], released: ['1'], applied: ['2', '2']));
refused('argument released 0 0',
        fn () => R::judgeColumns(chamber: ['30', '30'], released: ["1\u{1f}1"], applied: ["2\u{1f}2"]));
refused('argument colour 0 0',
        fn () => R::judgeColumns(chamber: ['30'], released: ['1'], applied: ['2'], colour: ['red']));
refused('argument applied 0 0', fn () => R::judgeColumns(chamber: ['30'], released: ['1'], applied: [2.5]));
refused('argument applied 0 0', fn () => R::judgeColumns(chamber: ['30'], released: ['1'], applied: [['2']]));
refused('argument applied 0 0', fn () => R::judgeColumns(chamber: ['30'], released: ['1'], applied: ["2\xFF"]));
refused('argument applied 0 0', fn () => R::judgeColumns(chamber: ['30'], released: ['1']));
refused('argument - 0 0', fn () => R::judgeColumns('us-fmcsr', ['30'], ['1'], ['2']));
refused('syntax psi 1 0', fn () => R::judgeColumns(chamber: ['30'], released: ['1'], applied: ['2'], psi: 'high'));
refused('unknown-rules - 0 0', fn () => R::judgeColumns('atlantis', chamber: ['30'], released: ['1'], applied: ['2']));
$steps = R::steps('ca-on', vehicle: 'single');
is($steps[3]['step'], 'warning', 'a step');
ok(str_contains($steps[3]['defective'], 'below 55 psi') && $steps[3]['row']['check'] === 'warning', 'its figures');
ok(R::steps('ca-on', language: 'fr')[0]['title'] !== $steps[0]['title'], 'in French');
ok(count(R::steps('ca-on', vehicle: 'combination')) > count($steps), 'a combination has more steps');
is(array_keys($steps[0]), ['step', 'row', 'title', 'do', 'see', 'good', 'defective'], 'what a step has');
refused('syntax vehicle 1 0', fn () => R::steps(vehicle: 'sledge'));
refused('argument colour 0 0', fn () => R::steps(colour: 'red'));
refused('argument language 0 0', fn () => R::steps(language: 'xx'));
is((string) R::ratedVolume('30'), '89', 'the volume of a chamber');
is((string) R::requiredVolume(89 * 4 + 54 * 2), '5568', 'of its reservoirs');
is((string) R::requiredVolume(464, trailer: true), '3712', "of a trailer's");
is((string) R::buildUpSeconds(11136, Ratio::of(5568)), '50', 'seconds');
is((string) R::estimateApplication(pressure: 105, reservoir: 5568, chambers: '464'), '12453/130', 'an estimate');
is(R::estimateApplications(pressure: 105, least: 60, reservoir: 5568, chambers: 464), 5, 'another');
refused('argument chambers 0 0', fn () => R::requiredVolume(-1));
refused('argument chambers 0 0', fn () => R::requiredVolume(1.5));
refused('argument fill 0 0', fn () => R::estimateApplication(pressure: 1, reservoir: 1, chambers: 1, fill: null));
refused('argument volumes 0 0', fn () => R::buildUpSeconds(1, 0));
refused('syntax number 0 0', fn () => R::buildUpSeconds('1.5', 1));
refused('argument estimate 0 0', fn () => R::estimateApplication(pressure: 1, reservoir: 1, chambers: 1, fill: 2));
refused('unknown-chamber chamber 0 0', fn () => R::ratedVolume('bolt A'));

// --- Numbers --------------------------------------------------------------------------------------------------------

foreach (['4 1/8', '4.125', '4⅛', Ratio::of(33, 8), Ratio::of('33/8')] as $applied) {
    is((string) R::judge(chamber: '30', released: '2 1/8', applied: $applied)->applied_stroke, '2', "$applied");
}
is((string) R::judge(chamber: '30', released: '2 1/8', applied: 4)->applied_stroke, '15/8', 'an int');
is((string) R::readLength('44.45 mm'), '7/4', 'millimetres');
is((string) R::readLength('44.45', unit: 'mm'), '7/4', 'by their unit');
is((string) R::readLength(Ratio::of(1, 512)), '1/512', 'a number with nine decimal digits');
is([(string) R::readPressure('95'), (string) R::readSeconds('1:30'), R::readDate('14-OCT-21')->format('c')],
   ['95', '90', '2021-10-14T00:00:00+00:00'], 'readers');
is(R::writeLength(Ratio::of(-7, 4)), '-1 3/4', 'back to a text');
$half = Ratio::of(2, -4);
is([$half->num, $half->den, (string) $half, json_encode([$half])], [-1, 2, '-1/2', '["-1\/2"]'], 'lowest terms');
is((string) $half->plus('1/3')->minus(2)->times($half)->dividedBy(5), '13/60', 'arithmetic');
ok($half == Ratio::of(-1, 2) && $half != Ratio::of(1, 2) && $half->compareTo('-1/3') === -1, 'comparison');
is($half->toFloat(), -0.5, 'as a float');
refused('range - 0 0', fn () => Ratio::of(PHP_INT_MAX)->times(2));
refused('argument - 0 0', fn () => $half->dividedBy(0));
refused('argument number 0 0', fn () => $half->plus(0.5));
refused('syntax number 0 0', fn () => Ratio::of('1.5'));
if (extension_loaded('gmp')) {
    is(gmp_strval(Ratio::of(gmp_init(3), 4)->toGmp()[1]), '4', 'GMP');
    refused('syntax number 0 0', fn () => Ratio::of(gmp_pow(10, 30)));
}

// --- What is refused ------------------------------------------------------------------------------------------------

foreach ([4.125, 4.0, 1e300, NAN] as $float) {
    try {
        judged(applied: $float);
        ok(false, "a float: $float");
    } catch (Error $error) {
        ok($error->status === 'argument' && $error->field === 'applied' && str_contains($error->text, 'binary float'),
           "a float: $float");
    }
}
refused('date-cell applied 1 0', fn () => judged(applied: '2-Jan'));
refused('syntax applied 5 0', fn () => judged(applied: '4 1/'));
refused('negative applied 1 0', fn () => judged(applied: Ratio::of(-1, 8)));
refused('empty applied 0 0', fn () => judged(applied: null));
refused('argument colour 0 0', fn () => judged(colour: 'red'));
refused('argument applied 0 0', fn () => judged(applied: "4\0"));
refused('argument applied 0 0', fn () => judged(applied: "4\xFF"));
refused('argument applied 0 0', fn () => judged(applied: [4]));
refused('argument - 0 0', fn () => R::judge('us-fmcsr', '30L', '2 3/4'));
refused('syntax default_unit 1 0', fn () => judged(default_unit: 'ells'));
refused('unknown-rules - 0 0', fn () => judged(rules: 'atlantis'));
refused('unknown-rules - 0 0', fn () => R::ruleSet(''));
refused('argument unit 0 0', fn () => R::readLength('3', unit: 'ells'));
refused('syntax - 3 0', fn () => R::readLength('4½¼'));
refused('argument text 0 0', fn () => R::readLength(1.75));
refused('laxer limit 19 2', fn () => R::loadRules("family,size,class,limit\nclamp,30,standard,3\n", 'yard'));
refused('argument ends 0 0', fn () => R::judgeVehicle([]));
refused('argument finding 0 1', fn () => R::judgeVehicle([['position' => '1L']]));
refused('argument finding 0 1', fn () => R::judgeVehicle(['1L']));
refused('argument colour 0 1', fn () => R::judgeVehicle([$ends[0] + ['colour' => 'red']]));
refused('syntax position 1 2', fn () => R::judgeVehicle([$ends[0], ['position' => 'left'] + $ends[0]]));
refused('argument brakes 0 0', fn () => R::judgeVehicle([$ends[0]], brakes: PHP_INT_MIN));
refused('range brakes 0 0', fn () => R::judgeVehicle([$ends[0]], brakes: 2 ** 32 + 2));
refused('syntax pressure 1 0', fn () => R::judgeAir('warning', pressure: 'high'));
refused('argument tally 0 0', fn () => R::count(brakes: 1, full: 2));
refused('argument language 0 0', fn () => $over->json('xx'));
refused('argument colour 0 0', fn () => $over->colour);
refused('argument verdict 0 0', fn () => $over->exact('verdict'));
refused('argument verdict 0 0', fn () => $over->verdict = 'in-adjustment');
refused('argument Rodtravel\Finding 0 0', fn () => serialize($over));
try {
    judged(applied: '2-Jan');
} catch (InvalidArgumentException $error) {
    is($error->getMessage(), 'applied, column 1: this is a date; a spreadsheet makes dates of fractions', 'an error');
    ok($error->say('fr-CA') !== $error->text && $error->say('xx') === $error->text, 'in another language');
}
is(judged(), $over, 'after an error all is well');

// --- Objects of the extension that nobody made ----------------------------------------------------------------------

/** PHP itself must refuse it. */
function barred(string $what, callable $call): void
{
    try {
        $call();
        ok(false, $what);
    } catch (Throwable $thrown) {
        ok(true, "$what: {$thrown->getMessage()}");
    }
}

foreach (['Rules', 'Form', 'Finding', 'Record', 'Vehicle', 'Columns'] as $name) {
    $class = "Rodtravel_Core_$name";
    barred("read back: $name", fn () => unserialize('O:' . strlen($class) . ":\"$class\":0:{}"));
    barred("made without: $name", fn () => (new ReflectionClass($class))->newInstanceWithoutConstructor());
    ok((new ReflectionClass($class))->isFinal(), "derived from: $name");
}
barred('an object of another kind', fn () => (new Rodtravel_Core_Form())->judge(new Rodtravel_Core_Vehicle()));
barred('a finding that is none', fn () => (new Rodtravel_Core_Vehicle())->add('1L', new Rodtravel_Core_Form()));
barred('a copy', fn () => clone new Rodtravel_Core_Form());
barred('a finding that is not there', fn () => (new Rodtravel_Core_Finding())->verdict());

// --- The README -----------------------------------------------------------------------------------------------------

preg_match_all('/```php\n(.*?)```/s', file_get_contents($argv[1]), $runs);
is(count($runs[1]), 3, 'three runs');
foreach ($runs[1] as $run) {
    ob_start();
    (static fn () => eval($run))();
    $said = explode("\n", trim(ob_get_clean()));
    preg_match_all('!^ *echo .*?;\s+// (.*)$!m', $run, $wanted);
    is($said, $wanted[1], 'a run of the README');
}

echo "1..$count\n";
exit($failed === 0 ? 0 : 1);
