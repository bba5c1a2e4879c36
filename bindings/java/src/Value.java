// SPDX-License-Identifier: Apache-2.0
package rodtravel;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What the library found: immutable, and equal where its JSON is. What is not given is an empty text or Optional.
 *
 * <p>Its memory is given back when nobody has it any more, or at once by {@link #close}; whatever is asked of it after
 * that is refused. All may be called from several threads at once.
 */
public abstract class Value implements AutoCloseable {
    private final Held core;
    private boolean closed;

    Value(Held core) {
        this.core = core;
    }

    /** Asks the library; nobody closes the value meanwhile. */
    final <T> T ask(Function<Held, T> question) {
        synchronized (core) {
            if (closed)
                throw Texts.refusal("", "this was closed");
            return question.apply(core);
        }
    }

    /** A member as a text, by its path in the C interface: "margin", "law_row.source.document". */
    public final String get(String path) {
        return ask(held -> held.get(Texts.of("path", path)));
    }

    /** A length in inches, a pressure in psi or another exact number, by its path. */
    public final Optional<Ratio> exact(String path) {
        return Texts.ratio(ask(held -> held.exact(Texts.of("path", path))));
    }

    /** All of it as JSON, with English sentences. */
    public final String json() {
        return json("");
    }

    /** All of it as JSON, with the sentences of a language, "fr". A language that the library lacks is refused. */
    public String json(String language) {
        return ask(held -> held.json(Texts.of("language", language)));
    }

    /** What was found in one line, in English. */
    public final String sentence() {
        return sentence("");
    }

    /** What was found in one line, in a language. */
    public String sentence(String language) {
        return ask(held -> held.say(Texts.of("language", language)));
    }

    final <T> List<T> words(String path, Function<String, T> read) {
        String text = get(path);
        return text.isEmpty() ? List.of()
                              : Stream.of(text.split(", ")).map(read).collect(Collectors.toUnmodifiableList());
    }

    final Optional<LocalDate> day(String path) {
        return Texts.day(get(path));
    }

    /** Gives the memory back. Once more does nothing. */
    @Override
    public final void close() {
        synchronized (core) {
            closed = true;
            core.delete();
        }
    }

    /** True for a value of the same class with the same JSON. */
    @Override
    public final boolean equals(Object other) {
        return this == other
                || other != null && getClass() == other.getClass() && json().equals(((Value) other).json());
    }

    @Override
    public final int hashCode() {
        return json().hashCode();
    }

    /** The sentence, or what stands for it where there is none. */
    @Override
    public String toString() {
        return sentence();
    }
}
