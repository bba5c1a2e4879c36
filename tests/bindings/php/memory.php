<?php
// SPDX-License-Identifier: Apache-2.0
// A million calls lose nothing, whether they find or refuse. Prints TAP.

declare(strict_types=1);

use Rodtravel\Error;
use Rodtravel\Rodtravel;

require 'rodtravel.php';

function pages(): int
{
    return is_readable('/proc/self/statm') ? (int) explode(' ', file_get_contents('/proc/self/statm'))[1] : 0;
}

function work(int $calls): void
{
    $yard = "family,size,class,limit\nclamp,30,long,2 3/8\n";
    for ($i = 0; $i < $calls; $i += 10) {
        $found = Rodtravel::judge(chamber: '30L', released: '2 3/4', applied: '5 1/4');
        $found->sentences('fr');
        $found->margin->times(2);
        Rodtravel::judgeColumns(chamber: ['30L'], released: ['2 3/4'], applied: ['5 1/4']);
        $rules = Rodtravel::loadRules($yard, 'yard');
        $own = Rodtravel::judgeRow($rules, chamber: '30L', released: '2 3/4', applied: '5 1/4');
        Rodtravel::judgeVehicle([['position' => '1L', 'finding' => $own]])->sentence();
        foreach ([['applied' => '2-Jan'], ['applied' => ''], ['rules' => 'atlantis'], ['colour' => 'red']] as $wrong) {
            try {
                Rodtravel::judge(...$wrong + ['chamber' => '30', 'released' => '2 1/8', 'applied' => '4']);
                echo "not ok 2 - it was not refused\n";
            } catch (Error) {
            }
        }
    }
}

echo "1..1\n";
work(100000);
$before = pages();
work(1000000);
$more = pages() - $before;
echo $more < 500 ? '' : 'not ', "ok 1 - memory after a million calls # $more pages more\n";
