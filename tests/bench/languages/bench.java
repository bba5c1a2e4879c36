// SPDX-License-Identifier: Apache-2.0
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import rodtravel.*;

/** What languages.py asks of Java: bench call|lists|column COUNT. */
class Bench {
    static final String[] APPLIED = IntStream.range(0, 8).mapToObj(i -> 4 + i % 2 + " " + (1 + 2 * i) + "/16")
            .toArray(String[]::new);

    static List<String> column(int rows, String... cells) {
        return IntStream.range(0, rows).mapToObj(row -> cells[row % cells.length]).collect(Collectors.toList());
    }

    public static void main(String[] arguments) {
        int count = Integer.parseInt(arguments[1]);
        if (arguments[0].equals("call")) {
            for (int i = 0; i < count; i++)
                new Form().chamber("30L").released("2 3/4").applied("5 5/16").psi("95").judge().verdict();
            return;
        }
        Map<String, List<String>> columns = Map.of("chamber", column(count, "30L"),
            "released", column(count, "2 3/4"), "applied", column(count, APPLIED), "psi", column(count, "95"));
        if (arguments[0].equals("column"))
            new Form().judgeColumns(columns).verdicts();
    }
}
