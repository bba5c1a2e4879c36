// SPDX-License-Identifier: Apache-2.0
package rodtravel;

import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What was refused, and where. Its message is the place and the sentence: "applied, column 1: this is a date". */
public final class RodtravelException extends IllegalArgumentException {
    private static final long serialVersionUID = 1;

    private final Status status;
    private final String field;
    private final String text;
    private final int column;
    private final int line;
    private final String[] said;

    RodtravelException(Status status, String field, String text, int line) {
        this(status, field, text, 0, line, new String[0]);
    }

    /** Of the library: status, field, text, and then the sentence in each language, as bytes of UTF-8. */
    RodtravelException(byte[][] said, int column, int line) {
        this(Status.of(Texts.string(said[0])), Texts.string(said[1]), Texts.string(said[2]), column, line,
             Stream.of(said).skip(3).map(Texts::string).toArray(String[]::new));
    }

    RodtravelException(Status status, String field, String text, int column, int line, String[] said) {
        super(Stream.of(field, line > 0 ? "line " + line : "", column > 0 ? "column " + column : "")
                      .filter(part -> !part.isEmpty()).collect(Collectors.joining(", ", "", ": "))
                      .replaceFirst("^: $", "") + text);
        this.status = status;
        this.field = field;
        this.text = text;
        this.column = column;
        this.line = line;
        this.said = said;
    }

    /** The same of an argument of another name, or of a wheel end of this number. */
    RodtravelException at(String field, int line) {
        RodtravelException made = new RodtravelException(status, field, text, column, line, said);
        made.setStackTrace(getStackTrace());
        return made;
    }

    /** Why it was refused. */
    public Status status() {
        return status;
    }

    /** Which argument or column was refused, as the library names it; "" where it is none. */
    public String field() {
        return field;
    }

    /** The character of the text where reading stopped, from 1; 0 where it is none. */
    public int column() {
        return column;
    }

    /** The line of a table or the number of a wheel end, from 1; 0 where it is none. */
    public int line() {
        return line;
    }

    /** The sentence without its place, in English. */
    public String text() {
        return text;
    }

    /** The sentence in a language, "fr"; in English where the library has no other, or does not speak the language. */
    public String say(String language) {
        for (int i = 0; i < said.length; i++)
            if (spoken(Core.language(i)).equals(spoken(language)))
                return said[i];
        return text;
    }

    /** "fr" of "fr-CA". */
    private static String spoken(String tag) {
        return tag.toLowerCase(Locale.ROOT).replaceFirst("[^a-z].*", "");
    }
}
