// SPDX-License-Identifier: Apache-2.0
namespace Rodtravel
{
    /// <summary>All marks of a chamber, to find its limit.</summary>
    public sealed class Marks : Input
    {
        /// <summary>The marks of a chamber, "30LS"; more may be set.</summary>
        public Marks(string mark)
        {
            using (Chamber chamber = Chamber.Of(mark))
                foreach (string name in new[] { "family", "size", "spring_size", "stroke_class" })
                    this[name] = chamber.Get(name);
        }

        // inputs of rodt_chamber

        /// <summary>The limit of the stroke of this chamber on a day; null = the newest.</summary>
        public Limit FindLimit(object date = null)
        {
            string on = Texts.Of("date", date);
            using (CoreRecord chamber = Record("rodt_chamber"))
                return new Limit(Core.find_limit(chamber, Law, on));
        }
    }
}
