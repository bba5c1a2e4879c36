// SPDX-License-Identifier: Apache-2.0
package rodtravel;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What a person wrote down, to be judged. A value is a text, a whole number (Integer, Long, BigInteger), an exact number
 * ({@link Ratio}, BigDecimal), a day (LocalDate), a Boolean or a word of the library ({@link Word}); null is not given.
 * A Double or a Float is refused: 0.1 is not a tenth there, and at a limit such a difference decides. Texts are read
 * when it is judged, and refused then. For one thread at a time.
 *
 * @param <T> the class itself
 */
public abstract class Input<T extends Input<T>> {
    private final Map<String, String> texts = new LinkedHashMap<>();
    private Rules law;

    Input() {}

    @SuppressWarnings("unchecked")
    private T self() {
        return (T) this;
    }

    /** Sets a member by its name in the C interface, "released". The last one counts. */
    public final T set(String name, Object value) {
        texts.put(Texts.of("name", name), Texts.of(name, value));
        return self();
    }

    /** The law that judges, by its id, "us-cdl"; otherwise it is {@value Rodtravel#DEFAULT_RULES}. */
    public final T rules(String id) {
        return rules(Rules.of(id));
    }

    /** The law that judges. */
    public final T rules(Rules rules) {
        law = rules;
        return self();
    }

    final CoreRules law() {
        return (law != null ? law : Rules.of(Rodtravel.DEFAULT_RULES)).core();
    }

    final Map<String, String> texts() {
        return texts;
    }

    /** A record of that name with the texts in it; the caller deletes it. */
    final CoreRecord record(String name) {
        CoreRecord made = new CoreRecord(name);
        try {
            texts.forEach(made::set);
            return made;
        } catch (RodtravelException error) {
            made.delete();
            throw error;
        }
    }
}
