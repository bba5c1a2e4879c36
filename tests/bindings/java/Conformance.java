// SPDX-License-Identifier: Apache-2.0
import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import rodtravel.*;

/** Java's judge of the conformance kit (tests/conformance): a question a line on standard input, an answer a line on
 * standard output. */
class Conformance {
    private static final Pattern TEXT = Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*)\"");
    private static final Pattern ESCAPE = Pattern.compile("\\\\(?:u([0-9a-fA-F]{4})|(.))");

    /** A question is an object of texts. */
    static Map<String, String> read(String line) {
        Map<String, String> found = new LinkedHashMap<>();
        for (Matcher name = TEXT.matcher(line); name.find();) {
            String key = plain(name.group(1));
            if (name.find())
                found.put(key, plain(name.group(1)));
        }
        return found;
    }

    static String plain(String text) {
        return ESCAPE.matcher(text).replaceAll(match -> Matcher.quoteReplacement(
                match.group(1) != null ? String.valueOf((char) Integer.parseInt(match.group(1), 16)) : escaped(match.group(2))));
    }

    static String escaped(String letter) {
        int known = "nrtbf".indexOf(letter);
        return known < 0 ? letter : "\n\r\t\b\f".substring(known, known + 1);
    }

    static String text(Object value) {
        StringBuilder made = new StringBuilder("\"");
        value.toString().chars().forEach(c -> made.append(c < ' ' || c == '"' || c == '\\' ? String.format("\\u%04x", c)
                                                                                          : String.valueOf((char) c)));
        return made.append('"').toString();
    }

    static String number(Optional<Ratio> value) {
        return value.map(Conformance::text).orElse("null");
    }

    static String error(RodtravelException error) {
        return String.format("{\"status\": %s, \"field\": %s, \"column\": %d}", text(error.status()), text(error.field()),
                             error.column());
    }

    static void fill(Input<?> input, Map<String, String> texts) {
        if (texts.containsKey("rules"))
            input.rules(texts.remove("rules"));
        texts.forEach(input::set);
    }

    static String wheelEnd(Map<String, String> of) {
        Form form = new Form();
        fill(form, of);
        try (Finding found = form.judgeRow()) {
            return String.format("\"verdict\": %s, \"stroke\": %s, \"limit\": %s, \"margin\": %s, \"proof\": %s, "
                    + "\"probability_over\": %s, \"reasons\": [%s], \"error\": %s", text(found.verdict()),
                    number(found.appliedStroke()), number(found.limit()), number(found.margin()), text(found.proof()),
                    number(found.probabilityOver()), found.reasons().stream().map(Conformance::text)
                            .collect(Collectors.joining(", ")), found.error().map(Conformance::error).orElse("null"));
        }
    }

    static String chamber(String mark) {
        Chamber read = Chamber.of(mark);
        return String.format("\"family\": %s, \"size\": %s, \"spring_size\": %s, \"stroke_class\": %s, \"error\": null",
                             text(read.family()), text(read.size()), text(read.springSize()), text(read.strokeClass()));
    }

    static String count(Map<String, String> of) {
        Tally tally = new Tally();
        fill(tally, of);
        Count found = tally.judge();
        return String.format("\"outcome\": %s, \"share\": %s, \"error\": null", text(found.outcome()), number(found.share()));
    }

    static String air(Map<String, String> of) {
        AirForm form = new AirForm(of.remove("check"));
        fill(form, of);
        AirFinding found = form.judge();
        return String.format("\"result\": %s, \"at_limit\": \"%s\", \"error\": null", text(found.result()),
                             found.atLimit() ? "yes" : "no");
    }

    static String answer(String ask, Map<String, String> of) {
        switch (ask) {
            case "wheel-end": return wheelEnd(of);
            case "length": return "\"value\": " + text(Rodtravel.readLength(of.get("text"))) + ", \"error\": null";
            case "chamber": return chamber(of.get("text"));
            case "count": return count(of);
            case "air": return air(of);
            default: throw new AssertionError(ask);
        }
    }

    public static void main(String[] arguments) throws Exception {
        PrintStream out = new PrintStream(System.out, false, StandardCharsets.UTF_8);
        BufferedReader in = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
        for (String line = in.readLine(); line != null; line = in.readLine()) {
            Map<String, String> question = read(line);
            String id = question.remove("id"), ask = question.remove("ask"), said;
            try {
                said = answer(ask, question);
            } catch (RodtravelException error) {
                said = "\"error\": " + error(error);
            }
            out.printf("{\"id\": %s, %s}\n", text(id), said);
            out.flush();
        }
    }
}
