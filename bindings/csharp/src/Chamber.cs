// SPDX-License-Identifier: Apache-2.0
using System.Linq;

namespace Rodtravel
{
    /// <summary>A chamber, by the mark on its housing.</summary>
    public sealed class Chamber : Value
    {
        private Chamber(CoreRecord core) : base(core) { }

        /// <summary>Reads a mark, "30LS". One that is not known is refused.</summary>
        public static Chamber Of(string mark)
        {
            return new Chamber(Core.chamber(Texts.Of("chamber", mark)));
        }

        // answers of rodt_chamber

        /// <summary>Its family, size and class, as far as they are known: "clamp 30 long".</summary>
        public override string Sentence(string language = "")
        {
            var words = new[] { "family", "size", "stroke_class" }.Select(Get);
            return string.Join(" ", words.Where(word => word != "" && word != "unknown"));
        }
    }
}
