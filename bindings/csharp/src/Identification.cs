// SPDX-License-Identifier: Apache-2.0
namespace Rodtravel
{
    /// <summary>Which chamber it can be; its JSON has the candidates.</summary>
    public sealed class Identification : Value
    {
        internal Identification(CoreRecord core) : base(core) { }

        // answers of rodt_identification

        /// <summary>Its JSON; no sentence says all of it.</summary>
        public override string Sentence(string language = "")
        {
            return Json(language);
        }
    }
}
