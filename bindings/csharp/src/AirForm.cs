// SPDX-License-Identifier: Apache-2.0
namespace Rodtravel
{
    /// <summary>A check of the air system, as it was written down.</summary>
    public sealed class AirForm : Input
    {
        /// <summary>A check, an AirCheck or its word.</summary>
        public AirForm(object check)
        {
            this["check"] = check;
        }

        // inputs of rodt_air_form

        /// <summary>Judges it. The first text that cannot be read is refused.</summary>
        public AirFinding Judge()
        {
            using (CoreRecord form = Record("rodt_air_form"))
                return new AirFinding(Core.judge_air(form, Law));
        }
    }
}
