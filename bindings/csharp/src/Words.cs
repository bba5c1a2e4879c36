// SPDX-License-Identifier: Apache-2.0
using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;

namespace Rodtravel
{
    /// <summary>The stable word of the library for a constant, and what it means.</summary>
    [AttributeUsage(AttributeTargets.Field)]
    internal sealed class WordAttribute : Attribute
    {
        internal readonly string Word;
        internal readonly string Text;

        public WordAttribute(string word, string text)
        {
            Word = word;
            Text = text;
        }
    }

    internal static class Known<T>
    {
        internal static readonly Dictionary<string, T> Constants = new Dictionary<string, T>();
        internal static readonly Dictionary<T, WordAttribute> Words = new Dictionary<T, WordAttribute>();

        static Known()
        {
            foreach (FieldInfo field in typeof(T).GetFields(BindingFlags.Public | BindingFlags.Static))
            {
                var word = field.GetCustomAttribute<WordAttribute>();
                Constants[word.Word] = (T)field.GetValue(null);
                Words[(T)field.GetValue(null)] = word;
            }
        }
    }

    /// <summary>Words of the library, such as "in-adjustment". They are never renamed.</summary>
    public static class Words
    {
        /// <summary>The word of a constant of this library.</summary>
        public static string Word(this Enum constant)
        {
            return Of(constant)?.Word ?? throw Refusals.Of("word", constant + " is no word of the library");
        }

        /// <summary>What it means, in English.</summary>
        public static string Meaning(this Enum constant)
        {
            return Of(constant)?.Text ?? throw Refusals.Of("word", constant + " is no word of the library");
        }

        /// <summary>The constant of a word; one that is none is refused.</summary>
        public static T Constant<T>(string word) where T : struct
        {
            T found;
            bool ours = word != null && typeof(T).Assembly == typeof(Words).Assembly;
            if (ours && Known<T>.Constants.TryGetValue(word, out found))
                return found;
            throw Refusals.Of("word", "there is no such word");
        }

        /// <summary>The constants of words with ", " between them.</summary>
        internal static IReadOnlyList<T> Set<T>(string words) where T : struct
        {
            var each = words.Split(new[] { ", " }, StringSplitOptions.RemoveEmptyEntries);
            return Array.AsReadOnly(each.Select(Constant<T>).ToArray());
        }

        internal static WordAttribute Of(Enum constant)
        {
            return constant.GetType().GetField(constant.ToString())?.GetCustomAttribute<WordAttribute>();
        }
    }
}
