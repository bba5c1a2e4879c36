// SPDX-License-Identifier: Apache-2.0
using System.Collections.Generic;

namespace Rodtravel
{
    /// <summary>
    /// What a person wrote down, to be judged. A value is a text, a whole number (int, long, BigInteger), an exact
    /// number (Ratio, decimal), a day (DateTime), a bool or a word of the library; null is not given. A double or a float
    /// is refused: 0.1 is not a tenth there, and at a limit such a difference decides. Texts are read when it is judged,
    /// and refused then. For one thread at a time.
    /// </summary>
    public abstract class Input
    {
        private readonly Dictionary<string, string> texts = new Dictionary<string, string>();
        private readonly List<string> names = new List<string>();

        internal Input() { }

        /// <summary>The law that judges; otherwise it is Library.DefaultRules.</summary>
        public Rules Rules { get; set; }

        /// <summary>A member by its name in the C interface, "released". What is read is the text.</summary>
        public object this[string name]
        {
            get
            {
                string found;
                return texts.TryGetValue(name, out found) ? found : null;
            }
            set
            {
                if (!texts.ContainsKey(Texts.Of("name", name)))
                    names.Add(name);
                texts[name] = Texts.Of(name, value);
            }
        }

        internal CoreRules Law { get { return (Rules ?? Rules.Of(Library.DefaultRules)).Held; } }

        /// <summary>Names and texts in the order in which they were set.</summary>
        internal IEnumerable<KeyValuePair<string, string>> Given
        {
            get
            {
                foreach (string name in names)
                    yield return new KeyValuePair<string, string>(name, texts[name]);
            }
        }

        /// <summary>A record of that name with the texts in it; the caller gives it back.</summary>
        internal CoreRecord Record(string name)
        {
            var made = new CoreRecord(name);
            foreach (var text in Given)
                made.set(text.Key, text.Value);
            return made;
        }
    }
}
