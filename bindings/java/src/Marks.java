// SPDX-License-Identifier: Apache-2.0
package rodtravel;

/** All marks of a chamber, to find its limit. */
public final class Marks extends Input<Marks> {
    private Object day;

    /** The marks of a chamber, "30LS"; more may be set. */
    public Marks(String mark) {
        try (Chamber chamber = Chamber.of(mark)) {
            for (String name : new String[] {"family", "size", "spring_size", "stroke_class"})
                set(name, chamber.get(name));
        }
    }

    // inputs of rodt_chamber

    /** The day whose limits count; otherwise the newest. */
    public Marks date(Object day) {
        this.day = day;
        return this;
    }

    /** The limit of the stroke of this chamber. */
    public Limit findLimit() {
        CoreRules law = law();
        String on = Texts.of("date", day);
        CoreRecord chamber = record("rodt_chamber");
        try {
            return new Limit(Core.find_limit(chamber, law, on));
        } finally {
            chamber.delete();
        }
    }
}
