// SPDX-License-Identifier: Apache-2.0
using System;
using System.Collections.Generic;

namespace Rodtravel
{
    /// <summary>What was found of one wheel end. Lengths are inches, pressures psi.</summary>
    public sealed class Finding : Value
    {
        internal Finding(CoreFinding core) : base(core) { }

        // answers of rodt_finding

        /// <summary>How it counts among the defective brakes.</summary>
        public Defect Defect { get { return Words.Constant<Defect>(Ask(held => ((CoreFinding)held).defect())); } }

        /// <summary>Where the limit is published, in one line; null without one.</summary>
        public string Source { get { return Ask(held => ((CoreFinding)held).source()); } }

        /// <summary>What a person says aloud of it, in a language.</summary>
        public string Spoken(string language = "")
        {
            return Ask(held => ((CoreFinding)held).spoken(Texts.Of("language", language)));
        }

        /// <summary>A sentence for each reason, in the order of Reasons, in a language.</summary>
        public IReadOnlyList<string> Sentences(string language = "")
        {
            string said = Ask(held => ((CoreFinding)held).sentences(Texts.Of("language", language)));
            return Array.AsReadOnly(said == null ? new string[0] : said.Split('\n'));
        }

        /// <summary>Of Form.JudgeRow: the first text that could not be read, or null.</summary>
        public RodtravelException Error
        {
            get
            {
                return Ask(held =>
                {
                    var row = (CoreFinding)held;
                    return row.row_status() == "ok" ? null : new RodtravelException(
                        Words.Constant<Status>(row.row_status()), row.row_field(), row.row_text(), row.row_column());
                });
            }
        }
    }
}
