<?php
// SPDX-License-Identifier: Apache-2.0
// Loads the package; Composer does so by itself. README.md shows what it does.

namespace Rodtravel;

if (!extension_loaded('rodtravel_core')) {
    throw new \RuntimeException('the extension rodtravel_core is not loaded: php -d extension=rodtravel_core');
}
foreach (['Error', 'Ratio', 'Core', 'Values', 'Rodtravel'] as $name) {
    require_once __DIR__ . "/src/$name.php";
}
