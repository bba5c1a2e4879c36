// SPDX-License-Identifier: Apache-2.0
package rodtravel;

/** A check of the air system, as it was written down. */
public final class AirForm extends Input<AirForm> {
    /** A check, an {@link AirCheck} or its word. */
    public AirForm(Object check) {
        set("check", check);
    }

    // inputs of rodt_air_form

    /** Judges it. The first text that cannot be read is refused. */
    public AirFinding judge() {
        CoreRules law = law();
        CoreRecord form = record("rodt_air_form");
        try {
            return new AirFinding(Core.judge_air(form, law));
        } finally {
            form.delete();
        }
    }
}
