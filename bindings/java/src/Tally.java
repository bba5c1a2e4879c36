// SPDX-License-Identifier: Apache-2.0
package rodtravel;

/** How many brakes of a vehicle are how defective. */
public final class Tally extends Input<Tally> {
    /** A tally of no brakes. */
    public Tally() {}

    // inputs of rodt_tally

    /** Counts a vehicle of so many brakes as were counted. */
    public Count judge() {
        return judge(0);
    }

    /** Counts a vehicle of so many brakes, measured or not; 0 = as many as were counted. */
    public Count judge(int brakes) {
        CoreRecord tally = record("rodt_tally");
        try {
            return new Count(Core.judge_tally(tally, brakes));
        } finally {
            tally.delete();
        }
    }
}
