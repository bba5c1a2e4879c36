// SPDX-License-Identifier: Apache-2.0
package rodtravel;

import java.util.List;
import java.util.Map;
import java.util.function.BiFunction;

/** One wheel end, as it was written down. */
public final class Form extends Input<Form> {
    /** Arguments that are about the whole form, and their paths in the C interface. */
    private static final Map<String, String> WIDE = Map.of("default_unit", "style.unit", "decimal_comma",
            "style.decimal_comma", "default_date", "default_day");

    /** A form that is empty. */
    public Form() {}

    // inputs of rodt_form

    /** The unit of lengths without one: a {@link Unit} or its word. Otherwise it is inches. */
    public Form defaultUnit(Object unit) {
        return set("default_unit", unit);
    }

    /** Whether a comma is a decimal point, as in French. */
    public Form decimalComma(boolean comma) {
        return set("decimal_comma", comma);
    }

    /** The order of a day that is written in numbers: a {@link DateOrder} or its word. */
    public Form dateOrder(Object order) {
        return set("date_order", order);
    }

    /** The day of a form without one. */
    public Form defaultDate(Object day) {
        return set("default_date", day);
    }

    /** Judges it. The first text that cannot be read is refused. */
    public Finding judge() {
        return new Finding(judged(CoreForm::judge));
    }

    /** Judges it as a row of a file, which no text stops: {@link Finding#error} is what could not be read. */
    public Finding judgeRow() {
        return new Finding(judged(CoreForm::judge_row));
    }

    /**
     * Judges many wheel ends as {@link #judgeRow} would each. A list is a column, by its name or heading, with a cell
     * for each row; what the form has is that of every row.
     */
    public Columns judgeColumns(Map<String, ? extends List<?>> columns) {
        return judged((form, law) -> Columns.judged(form, law, columns));
    }

    private <T> T judged(BiFunction<CoreForm, CoreRules, T> judge) {
        CoreRules law = law();
        CoreForm form = new CoreForm();
        try {
            texts().forEach((name, text) -> set(form, name, text));
            return judge.apply(form, law);
        } finally {
            form.delete();
        }
    }

    private static void set(CoreForm form, String name, String text) {
        try {
            form.set(WIDE.getOrDefault(name, name), text);
        } catch (RodtravelException error) {
            throw WIDE.containsKey(name) ? error.at(name, 0) : error;
        }
    }
}
