<?php
// SPDX-License-Identifier: Apache-2.0

declare(strict_types=1);

namespace Rodtravel;

/**
 * What was refused, and where: a stable word, which argument or "", characters from 1 or 0, the line of a table or the
 * number of a wheel end or 0, and the sentence.
 */
final class Error extends \InvalidArgumentException
{
    /** @param array<string, string> $said the sentence in other languages */
    public function __construct(
        public readonly string $text,
        public readonly string $status = 'argument',
        public readonly string $field = '',
        public readonly int $column = 0,
        public readonly int $input_line = 0,
        private readonly array $said = [],
    ) {
        $where = array_filter([$field, $input_line > 0 ? "line $input_line" : '', $column > 0 ? "column $column" : '']);
        parent::__construct($where === [] ? $text : implode(', ', $where) . ": $text");
    }

    /** The sentence in a language of the library, where it is the library's. */
    public function say(string $language): string
    {
        return $this->said[strtolower(preg_split('/[^A-Za-z]/', $language)[0])] ?? $this->text;
    }
}
