// SPDX-License-Identifier: Apache-2.0
package rodtravel;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/** What one says of a step of an inspection, with the figures of a row of the law. Immutable. */
public final class StepText {
    private final Step step;
    private final String row;
    private final Map<StepPart, String> texts = new EnumMap<>(StepPart.class);

    StepText(CoreRules law, CoreRecord vehicle, int index, int row, String language) {
        step = Step.of(Core.step_name(law, vehicle, index));
        this.row = row < 0 ? null : Core.step_row_json(law, vehicle, index, row, language);
        for (StepPart part : StepPart.values())
            texts.put(part, Core.step_text(law, vehicle, index, row, part.word(), language));
    }

    /** Which step it is. */
    public Step step() {
        return step;
    }

    /** The row of the law whose figures it says, as JSON; empty where it says none. */
    public Optional<String> row() {
        return Optional.ofNullable(row);
    }

    /** A part of it: the title, what to do, what to see, what is good and what is defective. */
    public String text(StepPart part) {
        return texts.get(part);
    }
}
