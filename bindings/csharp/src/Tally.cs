// SPDX-License-Identifier: Apache-2.0
namespace Rodtravel
{
    /// <summary>How many brakes of a vehicle are how defective.</summary>
    public sealed class Tally : Input
    {
        // inputs of rodt_tally

        /// <summary>Counts a vehicle of so many brakes, measured or not; 0 = as many as were counted.</summary>
        public Count Judge(int brakes = 0)
        {
            using (CoreRecord tally = Record("rodt_tally"))
                return new Count(Core.judge_tally(tally, brakes));
        }
    }
}
