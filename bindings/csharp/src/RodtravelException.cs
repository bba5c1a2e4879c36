// SPDX-License-Identifier: Apache-2.0
using System;
using System.Collections.Generic;
using System.Linq;
using System.Runtime.InteropServices;

namespace Rodtravel
{
    /// <summary>What was refused, and where. Its message is the place and the sentence: "applied, column 1: this is a
    /// date".</summary>
    public sealed class RodtravelException : ArgumentException
    {
        private readonly Dictionary<string, string> said;

        /// <summary>Why it was refused.</summary>
        public Status Status { get; }

        /// <summary>Which argument or column was refused, as the library names it; "" where it is none.</summary>
        public string Field { get; }

        /// <summary>The character of the text where reading stopped, from 1; 0 where it is none.</summary>
        public int Column { get; }

        /// <summary>The line of a table or the number of a wheel end, from 1; 0 where it is none.</summary>
        public int Line { get; }

        /// <summary>The sentence without its place, in English.</summary>
        public string Text { get; }

        internal RodtravelException(Status status, string field, string text, int column = 0, int line = 0,
                                    Dictionary<string, string> said = null) : base(Sentence(field, text, column, line))
        {
            this.said = said ?? new Dictionary<string, string>();
            Status = status;
            Field = field;
            Text = text;
            Column = column;
            Line = line;
        }

        private static string Sentence(string field, string text, int column, int line)
        {
            var places = new[] { field, line > 0 ? "line " + line : "", column > 0 ? "column " + column : "" };
            string place = string.Join(", ", places.Where(each => each != ""));
            return place == "" ? text : place + ": " + text;
        }

        /// <summary>The same of an argument of another name, or of a wheel end of this number.</summary>
        internal RodtravelException At(string field, int line)
        {
            return new RodtravelException(Status, field, Text, Column, line, said);
        }

        /// <summary>The sentence in a language, "fr"; in English where it is not the library's, or it does not speak the
        /// language.</summary>
        public string Say(string language)
        {
            string found;
            return said.TryGetValue(Refusals.Spoken(language), out found) ? found : Text;
        }
    }

    internal static class Refusals
    {
        [DllImport("rodtravel_csharp")]
        private static extern int core_refused();

        internal static RodtravelException Of(string field, string text)
        {
            return new RodtravelException(Status.Argument, field, text);
        }

        /// <summary>Raises what the last call on this thread was refused for.</summary>
        internal static void Check()
        {
            if (core_refused() == 0)
                return;
            var said = new Dictionary<string, string>();
            for (int i = 0; i < Core.language_count(); i++)
                said[Spoken(Core.language(i))] = Core.error_say(Core.language(i));
            throw new RodtravelException(Words.Constant<Status>(Core.error_status()), Core.error_field(),
                                         Core.error_text(), Core.error_column(), Core.error_line(), said);
        }

        /// <summary>"fr" of "fr-CA".</summary>
        internal static string Spoken(string tag)
        {
            return new string(tag.ToLowerInvariant().TakeWhile(c => c >= 'a' && c <= 'z').ToArray());
        }
    }
}
