// SPDX-License-Identifier: Apache-2.0
namespace Rodtravel
{
    /// <summary>What the roadside criterion says of counted brakes.</summary>
    public sealed class Count : Value
    {
        internal Count(CoreRecord core) : base(core) { }

        // answers of rodt_count
    }
}
