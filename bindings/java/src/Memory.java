// SPDX-License-Identifier: Apache-2.0
package rodtravel;

import java.lang.ref.Cleaner;

/** Gives memory of the library back once nobody has its object any more. */
final class Memory {
    static final Cleaner CLEANER = Cleaner.create();

    private Memory() {}
}
