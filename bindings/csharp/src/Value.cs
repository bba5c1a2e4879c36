// SPDX-License-Identifier: Apache-2.0
using System;
using System.Collections.Generic;

namespace Rodtravel
{
    /// <summary>
    /// What the library found: immutable, and equal where its JSON is. What is not given is an empty text or null. Its
    /// memory is given back when nobody has it any more, or at once by Dispose; whatever is asked of it after that is
    /// refused. All may be called from several threads at once.
    /// </summary>
    public abstract class Value : IDisposable, IEquatable<Value>
    {
        private readonly Held core;
        private bool closed;

        internal Value(Held core)
        {
            this.core = core;
        }

        /// <summary>Asks the library; nobody gives the value back meanwhile.</summary>
        internal T Ask<T>(Func<Held, T> question)
        {
            lock (core)
            {
                if (closed)
                    throw Refusals.Of("", "this was disposed of");
                return question(core);
            }
        }

        /// <summary>A member as a text, by its path in the C interface: "margin", "law_row.source.document".</summary>
        public string Get(string path)
        {
            return Ask(held => held.get(Texts.Of("path", path)));
        }

        /// <summary>A length in inches, a pressure in psi or another exact number, by its path.</summary>
        public Ratio? Exact(string path)
        {
            return Texts.Number(Ask(held => held.exact(Texts.Of("path", path))));
        }

        /// <summary>All of it as JSON, with the sentences of a language, "fr". A language that the library lacks is
        /// refused.</summary>
        public virtual string Json(string language = "")
        {
            return Ask(held => held.json(Texts.Of("language", language)));
        }

        /// <summary>What was found in one line, in a language.</summary>
        public virtual string Sentence(string language = "")
        {
            return Ask(held => held.say(Texts.Of("language", language)));
        }

        internal T WordAt<T>(string path) where T : struct
        {
            return Words.Constant<T>(Get(path));
        }

        internal IReadOnlyList<T> SetAt<T>(string path) where T : struct
        {
            return Words.Set<T>(Get(path));
        }

        internal DateTime? DayAt(string path)
        {
            return Texts.Day(Get(path));
        }

        internal long WholeAt(string path)
        {
            return long.Parse(Get(path), System.Globalization.CultureInfo.InvariantCulture);
        }

        /// <summary>Gives the memory back. Once more does nothing.</summary>
        public void Dispose()
        {
            lock (core)
            {
                closed = true;
                core.Dispose();
            }
        }

        /// <summary>True for a value of the same class with the same JSON.</summary>
        public bool Equals(Value other)
        {
            return ReferenceEquals(this, other)
                || !ReferenceEquals(other, null) && GetType() == other.GetType() && Json() == other.Json();
        }

        /// <summary>True for a value of the same class with the same JSON.</summary>
        public override bool Equals(object other)
        {
            return Equals(other as Value);
        }

        /// <summary>Of the JSON.</summary>
        public override int GetHashCode()
        {
            return Json().GetHashCode();
        }

        /// <summary>True for equal values.</summary>
        public static bool operator ==(Value a, Value b)
        {
            return ReferenceEquals(a, null) ? ReferenceEquals(b, null) : a.Equals(b);
        }

        /// <summary>True for other values.</summary>
        public static bool operator !=(Value a, Value b)
        {
            return !(a == b);
        }

        /// <summary>The sentence, or what stands for it where there is none.</summary>
        public override string ToString()
        {
            return Sentence();
        }
    }
}
