// SPDX-License-Identifier: Apache-2.0
package rodtravel;

import java.util.List;
import java.util.Optional;

/** Which chamber it can be; {@link #json} has the candidates. */
public final class Identification extends Value {
    Identification(CoreRecord core) {
        super(core);
    }

    // answers of rodt_identification

    /** Its JSON; no sentence says all of it. */
    @Override
    public String sentence(String language) {
        return json(language);
    }
}
