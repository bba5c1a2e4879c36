// SPDX-License-Identifier: Apache-2.0
using System;
using System.Collections.Generic;
using System.Linq;

namespace Rodtravel
{
    /// <summary>
    /// A rule set: a law, or a carrier's own limits on top of one. Immutable; the collector gives its memory back.
    /// </summary>
    public sealed class Rules : IEquatable<Rules>
    {
        internal readonly CoreRules Held;

        private Rules(CoreRules core)
        {
            Held = core;
        }

        /// <summary>The law of an id, "us-fmcsr". One that is not known is refused.</summary>
        public static Rules Of(string id)
        {
            return new Rules(new CoreRules(Texts.Of("rules", id)));
        }

        /// <summary>Every law that is compiled in.</summary>
        public static IReadOnlyList<Rules> All
        {
            get
            {
                var ids = Enumerable.Range(0, Core.rules_count()).Select(Core.rules_id);
                return Array.AsReadOnly(ids.Select(Of).ToArray());
            }
        }

        /// <summary>
        /// A carrier's own limits, the text of a table, on top of this law, with a law for the table's air checks; null
        /// = this one. A limit that is laxer than the law is refused.
        /// </summary>
        public Rules Load(string table, string name, Rules airLaw = null)
        {
            return new Rules(Held.load(Texts.Of("name", name), Texts.Of("table", table), airLaw?.Held));
        }

        /// <summary>Its id, "us-fmcsr".</summary>
        public string Id { get { return Held.id(); } }

        /// <summary>What it is, as JSON.</summary>
        public string Json()
        {
            return Held.json();
        }

        /// <summary>The limits that are in force on a day, as JSON; null = the newest.</summary>
        public string Limits(object date = null)
        {
            return Held.limits_json(Texts.Of("date", date));
        }

        /// <summary>Its rows of air checks, as JSON each, with the sentences of a language.</summary>
        public IReadOnlyList<string> AirLimits(string language = "")
        {
            string tag = Texts.Of("language", language);
            var rows = Enumerable.Range(0, Held.air_limit_count());
            return Array.AsReadOnly(rows.Select(row => Held.air_limit_json(row, tag)).ToArray());
        }

        /// <summary>True for a rule set that says the same.</summary>
        public bool Equals(Rules other)
        {
            return ReferenceEquals(this, other) || other != null && Json() == other.Json() && Limits() == other.Limits()
                && AirLimits().SequenceEqual(other.AirLimits());
        }

        /// <summary>True for a rule set that says the same.</summary>
        public override bool Equals(object other)
        {
            return Equals(other as Rules);
        }

        /// <summary>Of its JSON.</summary>
        public override int GetHashCode()
        {
            return Json().GetHashCode();
        }

        /// <summary>The id.</summary>
        public override string ToString()
        {
            return Id;
        }
    }
}
