// SPDX-License-Identifier: Apache-2.0
using System.Collections.Generic;

namespace Rodtravel
{
    /// <summary>The steps of an inspection as they are said aloud, for a vehicle.</summary>
    public sealed class Steps : Input
    {
        /// <summary>The class of the vehicle, a VehicleClass or its word.</summary>
        public object Vehicle { get { return this["vehicle"]; } set { this["vehicle"] = value; } }

        /// <summary>How many units it tows.</summary>
        public object TowedUnits { get { return this["towed_units"]; } set { this["towed_units"] = value; } }

        /// <summary>The day or the year it was built.</summary>
        public object Built { get { return this["built"]; } set { this["built"] = value; } }

        /// <summary>A text for each row of the law that a step can have, or for the step alone, in a language.</summary>
        public IReadOnlyList<StepText> In(string language = "")
        {
            CoreRules law = Law;
            var found = new List<StepText>();
            using (CoreRecord vehicle = Record("rodt_air_reading"))
                for (int step = 0; step < Core.step_count(law, vehicle); step++)
                {
                    int rows = Core.step_row_count(law, vehicle, step);
                    for (int row = rows > 0 ? 0 : -1; row < rows; row++)
                        found.Add(new StepText(law, vehicle, step, row, Texts.Of("language", language)));
                }
            return found.AsReadOnly();
        }
    }
}
