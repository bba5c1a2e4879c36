// SPDX-License-Identifier: Apache-2.0
using System.Collections.Generic;

namespace Rodtravel
{
    /// <summary>What was found of a whole vehicle, by the roadside criterion.</summary>
    public sealed class Vehicle : Value
    {
        private Vehicle(CoreVehicle core) : base(core) { }

        /// <summary>
        /// Judges a vehicle of so many brakes, measured or not; 0 = both ends of every axle. What is refused of a wheel
        /// end has its number, from 1, as RodtravelException.Line.
        /// </summary>
        public static Vehicle Judge(IEnumerable<WheelEnd> ends, int brakes = 0)
        {
            var made = new CoreVehicle();
            int line = 0;
            foreach (WheelEnd end in ends)
                Add(made, end, ++line);
            made.judge(brakes);
            return new Vehicle(made);
        }

        private static void Add(CoreVehicle vehicle, WheelEnd end, int line)
        {
            try
            {
                end.AddTo(vehicle);
            }
            catch (RodtravelException error)
            {
                throw error.At(error.Field, line);
            }
        }

        // answers of rodt_vehicle_finding

        // answers of rodt_count in count
    }
}
