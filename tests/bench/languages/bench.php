<?php
// SPDX-License-Identifier: Apache-2.0
// bench.php call|lists|column COUNT (../languages.py)

declare(strict_types=1);

use Rodtravel\Rodtravel;

require 'rodtravel.php';

ini_set('memory_limit', '-1');
[, $what, $count] = $argv;
$count = (int) $count;
if ($what === 'call') {
    for ($i = 0; $i < $count; $i++) {
        Rodtravel::judge(chamber: '30L', released: '2 3/4', applied: '5 5/16', psi: '95')->verdict;
    }
    exit;
}
$applied = [];
for ($i = 0; $i < $count; $i++) {
    $applied[] = 4 + $i % 2 . ' ' . (1 + 2 * ($i % 8)) . '/16';
}
$columns = ['chamber' => array_fill(0, $count, '30L'), 'released' => array_fill(0, $count, '2 3/4'),
            'applied' => $applied, 'psi' => array_fill(0, $count, '95')];
if ($what === 'column') {
    Rodtravel::judgeColumns(...$columns);
}
