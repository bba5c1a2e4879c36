<?php
// SPDX-License-Identifier: Apache-2.0
// PHP's judge of the conformance kit (tests/conformance): a question a line on standard input, an answer a line on
// standard output.

declare(strict_types=1);

use Rodtravel\Error;
use Rodtravel\Rodtravel;

require 'rodtravel.php';

function error_of(?Error $error): ?array
{
    return $error === null ? null : ['status' => $error->status, 'field' => $error->field, 'column' => $error->column];
}

function wheel_end(array $of): array
{
    $found = Rodtravel::judgeRow(...$of);
    return ['verdict' => $found->verdict, 'stroke' => $found->applied_stroke, 'limit' => $found->limit,
            'margin' => $found->margin, 'proof' => $found->proof, 'probability_over' => $found->probability_over,
            'reasons' => $found->reasons, 'error' => error_of($found->error)];
}

function chamber(array $of): array
{
    $read = Rodtravel::readChamber($of['text']);
    foreach (['family', 'size', 'spring_size', 'stroke_class'] as $name) {
        $answer[$name] = (string) $read->$name;
    }
    return $answer;
}

function counted(array $of): array
{
    $found = Rodtravel::count(...$of);
    return ['outcome' => $found->outcome, 'share' => $found->share];
}

function air(array $of): array
{
    $found = Rodtravel::judgeAir(...$of);
    return ['result' => $found->result, 'at_limit' => $found->at_limit ? 'yes' : 'no'];
}

while (($line = fgets(STDIN)) !== false) {
    $question = json_decode($line, true, flags: JSON_THROW_ON_ERROR);
    $of = array_diff_key($question, ['id' => 0, 'ask' => 0]);
    try {
        $answer = match ($question['ask']) {
            'wheel-end' => wheel_end($of),
            'length' => ['value' => Rodtravel::readLength($of['text'])],
            'chamber' => chamber($of),
            'count' => counted($of),
            'air' => air($of),
        } + ['error' => null];
    } catch (Error $error) {
        $answer = ['error' => error_of($error)];
    }
    echo json_encode(['id' => $question['id']] + $answer, JSON_THROW_ON_ERROR), "\n";
}
