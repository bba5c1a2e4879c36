// SPDX-License-Identifier: Apache-2.0
package rodtravel;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What was found of many wheel ends: a list for each answer, with an element for each row. Immutable. */
public final class Columns {
    /** Between the cells of a column. */
    private static final String CELL_END = "\u001f";

    private final int rows;
    private final List<Verdict> verdicts;
    private final List<List<Reason>> reasons;
    private final List<List<ColumnFlag>> flags;
    private final List<Optional<Ratio>> strokes;
    private final List<Optional<Ratio>> limits;

    private Columns(CoreColumns core, int rows) {
        this.rows = rows;
        verdicts = answers(core, "verdict", Verdict::of);
        reasons = answers(core, "reasons", text -> words(text, Reason::of));
        flags = answers(core, "flags", text -> words(text, ColumnFlag::of));
        strokes = answers(core, "stroke", Texts::ratio);
        limits = answers(core, "limit", Texts::ratio);
    }

    static Columns judged(CoreForm form, CoreRules law, Map<String, ? extends List<?>> given) {
        int rows = given.values().stream().mapToInt(List::size).max().orElse(0);
        CoreColumns core = new CoreColumns();
        try {
            given.forEach((name, cells) -> core.set(Texts.of("name", name), column(name, cells), cells.size()));
            core.judge(law, form, rows);
            return new Columns(core, rows);
        } finally {
            core.delete();
        }
    }

    private static String column(String name, List<?> cells) {
        return cells.stream().map(cell -> Texts.of(name, cell)).collect(Collectors.joining(CELL_END));
    }

    private static <T> List<T> words(String text, Function<String, T> read) {
        return text.isEmpty() ? List.of()
                              : Stream.of(text.split(", ")).map(read).collect(Collectors.toUnmodifiableList());
    }

    private <T> List<T> answers(CoreColumns core, String name, Function<String, T> read) {
        Stream<String> cells = rows == 0 ? Stream.of() : Stream.of(core.column(name).split(CELL_END, -1));
        Map<String, T> known = new HashMap<>(); // few texts of many rows differ
        return cells.map(cell -> known.computeIfAbsent(cell, read)).collect(Collectors.toUnmodifiableList());
    }

    /** How many rows there are. */
    public int size() {
        return rows;
    }

    /** The verdict of each row. */
    public List<Verdict> verdicts() {
        return verdicts;
    }

    /** Why, of each row. */
    public List<List<Reason>> reasons() {
        return reasons;
    }

    /** Which cells of each row could not be used. */
    public List<List<ColumnFlag>> flags() {
        return flags;
    }

    /**
     * The stroke of each row in inches; empty where there is none, or it is no whole number of 1/127000000000 in (up to
     * nine decimals are).
     */
    public List<Optional<Ratio>> strokes() {
        return strokes;
    }

    /** The limit of each row in inches; empty where there is none, or it is no whole number of 1/5080000 in. */
    public List<Optional<Ratio>> limits() {
        return limits;
    }
}
