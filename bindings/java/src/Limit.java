// SPDX-License-Identifier: Apache-2.0
package rodtravel;

import java.util.Optional;

/** The limit of the stroke of a chamber, and what it rests on. */
public final class Limit extends Value {
    Limit(CoreRecord core) {
        super(core);
    }

    // answers of rodt_limit_answer

    /** Its JSON; no sentence says all of it. */
    @Override
    public String sentence(String language) {
        return json(language);
    }
}
