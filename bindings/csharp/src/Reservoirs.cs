// SPDX-License-Identifier: Apache-2.0
namespace Rodtravel
{
    /// <summary>Volumes of chambers and reservoirs, in cubic inches, and what follows from them.</summary>
    public static class Reservoirs
    {
        /// <summary>The rated volume of a chamber by its mark, "30". One without a published volume is refused.</summary>
        public static Ratio RatedVolume(string mark)
        {
            using (CoreRecord chamber = Core.chamber(Texts.Of("chamber", mark)))
                return Ratio.Parse(Core.chamber_rated_volume(chamber));
        }

        /// <summary>The volume of reservoirs that the law asks for, for chambers of so many in all; a trailer needs less.
        /// </summary>
        public static Ratio RequiredVolume(Ratio chambers, bool trailer = false)
        {
            return Ratio.Parse(Core.reservoir_required_volume(chambers.ToString(), trailer ? 1 : 0));
        }

        /// <summary>Seconds allowed from 85 to 100 psi.</summary>
        public static Ratio BuildUpSeconds(Ratio actual, Ratio required)
        {
            return Ratio.Parse(Core.reservoir_build_up_seconds(actual.ToString(), required.ToString()));
        }

        /// <summary>
        /// An estimate, no figure of law: psi after one full application with the engine off. fill is the share of the
        /// chambers' volume that is filled, 0 to 1; 1 is the worst case.
        /// </summary>
        public static Ratio EstimateApplication(Ratio pressure, Ratio reservoir, Ratio chambers, Ratio fill)
        {
            return Ratio.Parse(Core.reservoir_estimate_application(pressure.ToString(), reservoir.ToString(),
                                                                   chambers.ToString(), fill.ToString()));
        }

        /// <summary>An estimate, as above: how many full applications keep the reservoir at least at so many psi, at most
        /// 99.</summary>
        public static int EstimateApplications(Ratio pressure, Ratio least, Ratio reservoir, Ratio chambers, Ratio fill)
        {
            return Core.reservoir_estimate_applications(pressure.ToString(), least.ToString(), reservoir.ToString(),
                                                        chambers.ToString(), fill.ToString());
        }
    }
}
