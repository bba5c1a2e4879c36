// SPDX-License-Identifier: Apache-2.0
package rodtravel;

import java.util.ArrayList;
import java.util.List;

/** The steps of an inspection as they are said aloud, for a vehicle. */
public final class Steps extends Input<Steps> {
    /** Of a vehicle of which nothing is known. */
    public Steps() {}

    /** The class of the vehicle, a {@link VehicleClass} or its word. */
    public Steps vehicle(Object value) {
        return set("vehicle", value);
    }

    /** How many units it tows. */
    public Steps towedUnits(Object value) {
        return set("towed_units", value);
    }

    /** The day or the year it was built. */
    public Steps built(Object value) {
        return set("built", value);
    }

    /** A text for each row of the law that a step can have, or for the step alone; in a language, "" = English. */
    public List<StepText> in(String language) {
        CoreRules law = law();
        CoreRecord vehicle = record("rodt_air_reading");
        List<StepText> found = new ArrayList<>();
        try {
            for (int step = 0; step < Core.step_count(law, vehicle); step++) {
                int rows = Core.step_row_count(law, vehicle, step);
                for (int row = rows > 0 ? 0 : -1; row < rows; row++)
                    found.add(new StepText(law, vehicle, step, row, Texts.of("language", language)));
            }
            return List.copyOf(found);
        } finally {
            vehicle.delete();
        }
    }
}
