// SPDX-License-Identifier: Apache-2.0
using System;
using System.Linq;

namespace Rodtravel
{
    /// <summary>What one says of a step of an inspection, with the figures of a row of the law. Immutable.</summary>
    public sealed class StepText
    {
        private readonly ILookup<StepPart, string> texts;

        /// <summary>Which step it is.</summary>
        public Step Step { get; }

        /// <summary>The row of the law whose figures it says, as JSON; null where it says none.</summary>
        public string Row { get; }

        internal StepText(CoreRules law, CoreRecord vehicle, int index, int row, string language)
        {
            Step = Words.Constant<Step>(Core.step_name(law, vehicle, index));
            Row = row < 0 ? null : Core.step_row_json(law, vehicle, index, row, language);
            texts = Enum.GetValues(typeof(StepPart)).Cast<StepPart>().ToLookup(
                part => part, part => Core.step_text(law, vehicle, index, row, part.Word(), language));
        }

        /// <summary>A part of it: the title, what to do, what to see, what is good and what is defective.</summary>
        public string Text(StepPart part)
        {
            return texts[part].Single();
        }
    }
}
