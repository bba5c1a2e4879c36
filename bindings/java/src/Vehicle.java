// SPDX-License-Identifier: Apache-2.0
package rodtravel;

import java.util.List;
import java.util.Optional;

/** What was found of a whole vehicle, by the roadside criterion. */
public final class Vehicle extends Value {
    private Vehicle(CoreVehicle core) {
        super(core);
    }

    /** Judges a vehicle of which every brake was measured. */
    public static Vehicle judge(List<WheelEnd> ends) {
        return judge(ends, 0);
    }

    /**
     * Judges a vehicle of so many brakes, measured or not; 0 = both ends of every axle. What is refused of a wheel end
     * has its number, from 1, as {@link RodtravelException#line}.
     */
    public static Vehicle judge(List<WheelEnd> ends, int brakes) {
        CoreVehicle made = new CoreVehicle();
        try {
            for (int line = 1; line <= ends.size(); line++)
                add(made, ends.get(line - 1), line);
            made.judge(brakes);
            return new Vehicle(made);
        } catch (RuntimeException error) {
            made.delete();
            throw error;
        }
    }

    private static void add(CoreVehicle vehicle, WheelEnd end, int line) {
        try {
            end.addTo(vehicle);
        } catch (RodtravelException error) {
            throw error.at(error.field(), line);
        }
    }

    // answers of rodt_vehicle_finding

    // answers of rodt_count in count
}
