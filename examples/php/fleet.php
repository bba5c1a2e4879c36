<?php
// SPDX-License-Identifier: Apache-2.0
// From a file of recorded strokes to one line a unit: how many wheel ends have each verdict, and the least to spare.
//
//     php fleet.php [FLEET.csv]
//
// Reads examples/data/fleet.csv, and judges each row by the law of its day. A row that cannot be read stops nothing.

declare(strict_types=1);

use Rodtravel\Ratio;
use Rodtravel\Rodtravel;

require 'rodtravel.php';

const FIELDS = ['chamber', 'stroke_class', 'rated_stroke', 'released', 'applied', 'psi', 'division', 'date'];
const VERDICTS = ['in-adjustment', 'out-of-adjustment', 'inoperative', 'undetermined'];

/** Records that are wheel ends: an empty one, or the heading once more, is none. */
function wheel_ends(string $path): Generator
{
    $file = fopen($path, 'r');
    if (fread($file, 3) !== "\u{FEFF}") {
        rewind($file);
    }
    $headings = array_map('trim', fgetcsv($file, escape: ''));
    while (($cells = fgetcsv($file, escape: '')) !== false) {
        $row = array_combine($headings, array_pad(array_slice($cells, 0, count($headings)), count($headings), ''));
        $heading = in_array($row['chamber'], ['', 'chamber', null], true);
        if (!$heading || trim((string) $row['released'], 'releasd') !== '') {
            yield (string) $row['unit_no'] => array_intersect_key($row, array_flip(FIELDS));
        }
    }
}

$units = [];
foreach (wheel_ends($argv[1] ?? __DIR__ . '/../data/fleet.csv') as $unit => $row) {
    $units[$unit][] = Rodtravel::judgeRow(...$row);
}
ksort($units, SORT_STRING);

printf("%-8s%5s%5s%6s%6s   least to spare\n", 'unit', 'in', 'out', 'dead', 'open');
foreach ($units as $unit => $findings) {
    $counts = array_count_values(array_map(fn ($finding) => $finding->verdict, $findings));
    $margins = array_filter(array_map(fn ($finding) => $finding->margin, $findings));
    usort($margins, fn (Ratio $a, Ratio $b) => $a->compareTo($b));
    printf("%-8s%5d%5d%6d%6d   %s\n", $unit, ...array_map(fn ($verdict) => $counts[$verdict] ?? 0, VERDICTS),
           ...[$margins === [] ? 'not known' : Rodtravel::writeLength($margins[0]) . ' in']);
}
