// SPDX-License-Identifier: Apache-2.0
namespace Rodtravel
{
    /// <summary>One wheel end of a vehicle: where it is, and what was found there.</summary>
    public sealed class WheelEnd
    {
        private readonly string position;
        private readonly Finding finding;

        /// <summary>A wheel end by its position, "1L": the axle from the front, and the side.</summary>
        public WheelEnd(string position, Finding finding)
        {
            this.position = position;
            this.finding = finding;
        }

        /// <summary>Its kind of adjuster, an Adjuster or its word.</summary>
        public object Adjuster { get; set; }

        /// <summary>The length of its arm, in inches.</summary>
        public object ArmLength { get; set; }

        internal void AddTo(CoreVehicle vehicle)
        {
            if (finding == null)
                throw Refusals.Of("finding", "a wheel end needs a finding");
            finding.Ask(held =>
            {
                vehicle.add(Texts.Of("position", position), (CoreFinding)held, Texts.Of("adjuster", Adjuster),
                            Texts.Of("arm_length", ArmLength));
                return true;
            });
        }
    }
}
