// SPDX-License-Identifier: Apache-2.0
namespace Rodtravel
{
    /// <summary>What was seen of a chamber that has no mark which says what it is.</summary>
    public sealed class Clues : Input
    {
        // inputs of rodt_clues

        /// <summary>Which chamber it can be, by the limits of a day; null = the newest.</summary>
        public Identification Identify(object date = null)
        {
            string on = Texts.Of("date", date);
            using (CoreRecord clues = Record("rodt_clues"))
                return new Identification(Core.identify(clues, Law, on));
        }
    }
}
