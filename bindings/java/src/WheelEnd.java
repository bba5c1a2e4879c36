// SPDX-License-Identifier: Apache-2.0
package rodtravel;

/** One wheel end of a vehicle: where it is, and what was found there. Immutable. */
public final class WheelEnd {
    private final Object position;
    private final Finding finding;
    private final Object adjuster;
    private final Object armLength;

    private WheelEnd(Object position, Finding finding, Object adjuster, Object armLength) {
        this.position = position;
        this.finding = finding;
        this.adjuster = adjuster;
        this.armLength = armLength;
    }

    /** A wheel end by its position, "1L": the axle from the front, and the side. */
    public static WheelEnd of(String position, Finding finding) {
        return new WheelEnd(position, finding, null, null);
    }

    /** The same with its kind of adjuster, an {@link Adjuster} or its word. */
    public WheelEnd adjuster(Object kind) {
        return new WheelEnd(position, finding, kind, armLength);
    }

    /** The same with the length of its arm, in inches. */
    public WheelEnd armLength(Object length) {
        return new WheelEnd(position, finding, adjuster, length);
    }

    void addTo(CoreVehicle vehicle) {
        if (finding == null)
            throw Texts.refusal("finding", "a wheel end needs a finding");
        finding.ask(held -> {
            vehicle.add(Texts.of("position", position), (CoreFinding) held, Texts.of("adjuster", adjuster),
                        Texts.of("arm_length", armLength));
            return null;
        });
    }
}
