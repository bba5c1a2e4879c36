// SPDX-License-Identifier: Apache-2.0
package rodtravel;

/** Volumes of chambers and reservoirs, in cubic inches, and what follows from them. */
public final class Reservoirs {
    private Reservoirs() {}

    /** The rated volume of a chamber by its mark, "30". One without a published volume is refused. */
    public static Ratio ratedVolume(String mark) {
        CoreRecord chamber = Core.chamber(Texts.of("chamber", mark));
        try {
            return Ratio.of(Core.chamber_rated_volume(chamber));
        } finally {
            chamber.delete();
        }
    }

    /** The volume of reservoirs that the law asks for, for chambers of so many in all; a trailer needs less. */
    public static Ratio requiredVolume(Ratio chambers, boolean trailer) {
        return Ratio.of(Core.reservoir_required_volume(chambers.toString(), trailer ? 1 : 0));
    }

    /** Seconds allowed from 85 to 100 psi. */
    public static Ratio buildUpSeconds(Ratio actual, Ratio required) {
        return Ratio.of(Core.reservoir_build_up_seconds(actual.toString(), required.toString()));
    }

    /**
     * An estimate, no figure of law: psi after one full application with the engine off. fill is the share of the
     * chambers' volume that is filled, 0 to 1; 1 is the worst case.
     */
    public static Ratio estimateApplication(Ratio pressure, Ratio reservoir, Ratio chambers, Ratio fill) {
        return Ratio.of(Core.reservoir_estimate_application(pressure.toString(), reservoir.toString(),
                                                            chambers.toString(), fill.toString()));
    }

    /** An estimate, as above: how many full applications keep the reservoir at least at so many psi, at most 99. */
    public static int estimateApplications(Ratio pressure, Ratio least, Ratio reservoir, Ratio chambers, Ratio fill) {
        return Core.reservoir_estimate_applications(pressure.toString(), least.toString(), reservoir.toString(),
                                                    chambers.toString(), fill.toString());
    }
}
