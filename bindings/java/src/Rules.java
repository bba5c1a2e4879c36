// SPDX-License-Identifier: Apache-2.0
package rodtravel;

import java.util.ArrayList;
import java.util.List;

/** A rule set: a law, or a carrier's own limits on top of one. Immutable; its memory is given back by the collector. */
public final class Rules {
    private final CoreRules core;

    private Rules(CoreRules core) {
        this.core = core;
    }

    /** The law of an id, "us-fmcsr". One that is not known is refused. */
    public static Rules of(String id) {
        return new Rules(new CoreRules(Texts.of("rules", id)));
    }

    /** Every law that is compiled in. */
    public static List<Rules> all() {
        List<Rules> found = new ArrayList<>();
        for (int i = 0; i < Core.rules_count(); i++)
            found.add(of(Core.rules_id(i)));
        return List.copyOf(found);
    }

    CoreRules core() {
        return core;
    }

    /** A carrier's own limits, the text of a table, on top of this law. A limit laxer than the law is refused. */
    public Rules load(String table, String name) {
        return load(table, name, null);
    }

    /** The same, with a law for the table's air checks; null = this one. */
    public Rules load(String table, String name, Rules airLaw) {
        CoreRules air = airLaw == null ? null : airLaw.core;
        return new Rules(core.load(Texts.of("name", name), Texts.of("table", table), air));
    }

    /** Its id, "us-fmcsr". */
    public String id() {
        return core.id();
    }

    /** What it is, as JSON. */
    public String json() {
        return core.json();
    }

    /** Its newest limits, as JSON. */
    public String limits() {
        return limits(null);
    }

    /** The limits that are in force on a day, as JSON. */
    public String limits(Object day) {
        return core.limits_json(Texts.of("date", day));
    }

    /** Its rows of air checks, as JSON each, with the sentences of a language; "" = English. */
    public List<String> airLimits(String language) {
        List<String> found = new ArrayList<>();
        for (int i = 0; i < core.air_limit_count(); i++)
            found.add(core.air_limit_json(i, Texts.of("language", language)));
        return List.copyOf(found);
    }

    /** True for a rule set that says the same. */
    @Override
    public boolean equals(Object other) {
        return this == other || other instanceof Rules && json().equals(((Rules) other).json())
                && limits().equals(((Rules) other).limits()) && airLimits("").equals(((Rules) other).airLimits(""));
    }

    @Override
    public int hashCode() {
        return json().hashCode();
    }

    @Override
    public String toString() {
        return id();
    }
}
