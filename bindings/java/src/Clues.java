// SPDX-License-Identifier: Apache-2.0
package rodtravel;

/** What was seen of a chamber that has no mark which says what it is. */
public final class Clues extends Input<Clues> {
    private Object day;

    /** No clue yet. */
    public Clues() {}

    // inputs of rodt_clues

    /** The day whose limits count; otherwise the newest. */
    public Clues date(Object day) {
        this.day = day;
        return this;
    }

    /** Which chamber it can be. */
    public Identification identify() {
        CoreRules law = law();
        String on = Texts.of("date", day);
        CoreRecord clues = record("rodt_clues");
        try {
            return new Identification(Core.identify(clues, law, on));
        } finally {
            clues.delete();
        }
    }
}
