// SPDX-License-Identifier: Apache-2.0
package rodtravel;

import java.util.Optional;

/** What an air check found. */
public final class AirFinding extends Value {
    AirFinding(CoreRecord core) {
        super(core);
    }

    // answers of rodt_air_finding
}
