// SPDX-License-Identifier: Apache-2.0
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import rodtravel.*;

/** From a file of recorded strokes to one line a unit: how many wheel ends have each verdict, and the least to spare.
 *
 *      java -cp build/bindings/java/rodtravel.jar examples/java/Fleet.java examples/data/fleet.csv
 *
 * Judges each row by the law of its day. A row that cannot be read stops nothing. */
class Fleet {
    static final List<String> FIELDS = List.of("chamber", "stroke_class", "rated_stroke", "released", "applied", "psi",
                                               "division", "date");
    static final List<Verdict> VERDICTS = List.of(Verdict.IN_ADJUSTMENT, Verdict.OUT_OF_ADJUSTMENT, Verdict.INOPERATIVE,
                                                  Verdict.UNDETERMINED);

    /** The cells of a file of CSV. A quote inside of a quoted cell is doubled. */
    static List<List<String>> table(String text) {
        List<List<String>> rows = new ArrayList<>(List.of(new ArrayList<>()));
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        for (char c : text.toCharArray()) {
            if (c == '"') {
                quoted = !quoted;
                if (quoted && cell.length() > 0)
                    cell.append(c);
            } else if (!quoted && (c == ',' || c == '\n')) {
                rows.get(rows.size() - 1).add(cell.toString());
                cell.setLength(0);
                if (c == '\n')
                    rows.add(new ArrayList<>());
            } else if (c != '\r' && c != '\ufeff') {
                cell.append(c);
            }
        }
        rows.get(rows.size() - 1).add(cell.toString());
        return rows;
    }

    /** What a wheel end must have; an empty record, or the heading once more, is none. */
    static boolean isWheelEnd(Map<String, String> row) {
        String chamber = row.getOrDefault("chamber", "");
        String released = row.getOrDefault("released", "");
        return !(chamber.isEmpty() && released.isEmpty()) && !chamber.equals("chamber");
    }

    static Finding judge(Map<String, String> row) {
        Form form = new Form();
        FIELDS.forEach(field -> form.set(field, row.get(field)));
        return form.judgeRow();
    }

    static String line(String unit, List<Finding> findings) {
        StringBuilder line = new StringBuilder(String.format("%-8s", unit));
        for (Verdict verdict : VERDICTS)
            line.append(String.format(VERDICTS.indexOf(verdict) < 2 ? "%5d" : "%6d",
                                      findings.stream().filter(found -> found.verdict() == verdict).count()));
        Optional<Ratio> least = findings.stream().map(Finding::margin).flatMap(Optional::stream).min(Ratio::compareTo);
        return line + "   " + least.map(margin -> Rodtravel.writeLength(margin) + " in").orElse("not known");
    }

    public static void main(String[] arguments) throws Exception {
        List<List<String>> rows = table(Files.readString(Path.of(arguments[0])));
        Map<String, List<Finding>> units = new TreeMap<>();
        for (List<String> cells : rows.subList(1, rows.size())) {
            Map<String, String> row = new TreeMap<>();
            for (int i = 0; i < cells.size() && i < rows.get(0).size(); i++)
                row.put(rows.get(0).get(i), cells.get(i));
            if (isWheelEnd(row))
                units.computeIfAbsent(row.getOrDefault("unit_no", ""), unit -> new ArrayList<>()).add(judge(row));
        }
        System.out.println(String.format("%-8s%5s%5s%6s%6s   least to spare", "unit", "in", "out", "dead", "open"));
        units.forEach((unit, findings) -> System.out.println(line(unit, findings)));
    }
}
