// SPDX-License-Identifier: Apache-2.0
namespace Rodtravel
{
    /// <summary>The limit of the stroke of a chamber, and what it rests on.</summary>
    public sealed class Limit : Value
    {
        internal Limit(CoreRecord core) : base(core) { }

        // answers of rodt_limit_answer

        /// <summary>Its JSON; no sentence says all of it.</summary>
        public override string Sentence(string language = "")
        {
            return Json(language);
        }
    }
}
