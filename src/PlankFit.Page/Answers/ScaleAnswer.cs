using System.Collections.Immutable;
using PlankFit.Export.Lists;
using PlankFit.Planking.Units;

namespace PlankFit.Pages.Answers;

/// <summary>The steps of a colour by lengths, in the units that are shown.</summary>
/// <param name="StepMm">What each colour stands for, from nought.</param>
/// <param name="Words">Of each step, from the first.</param>
internal sealed record ScaleAnswer(double StepMm, ImmutableArray<string> Words)
{
    /// <param name="steps">So many colours there are.</param>
    /// <param name="mostMm">The last of them must take.</param>
    public static ScaleAnswer Of(double mostMm, LengthUnit unit, int steps)
    {
        double step = ScaleSteps.Of(mostMm / steps, unit);
        string Text(int i) => ScaleSteps.Text(i * step, step, unit);
        return new(
            step,
            [.. Enumerable.Range(0, steps).Select(i => $"{Text(i)} to {Text(i + 1)}")]
        );
    }
}
