// SPDX-License-Identifier: Apache-2.0
package rodtravel;

import java.util.Optional;

/** What the roadside criterion says of counted brakes. */
public final class Count extends Value {
    Count(CoreRecord core) {
        super(core);
    }

    // answers of rodt_count
}
