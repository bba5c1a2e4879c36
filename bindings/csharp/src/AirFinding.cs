// SPDX-License-Identifier: Apache-2.0
namespace Rodtravel
{
    /// <summary>What an air check found.</summary>
    public sealed class AirFinding : Value
    {
        internal AirFinding(CoreRecord core) : base(core) { }

        // answers of rodt_air_finding
    }
}
