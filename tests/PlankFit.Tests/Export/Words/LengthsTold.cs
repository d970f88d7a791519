using System.Text.RegularExpressions;
using PlankFit.Planking.Units;
using PlankFit.Reading.Lengths;

namespace PlankFit.Tests.Export.Words;

/// <summary>
/// Whether the lengths in a text are written in the one way of its job: feet, inches and a fraction, or inches and a fraction, each as the notation's own reader
/// takes it and as it would be written again; and nothing that looks like another way.
/// </summary>
internal static partial class LengthsTold
{
    /// <summary>What is amiss in the text of a job in feet and inches.</summary>
    public static IEnumerable<string> Faults(string text, LengthUnit shown)
    {
        foreach (Match length in Length().Matches(text))
        {
            LengthReading read = LengthNotation.Read(length.Value, LengthUnit.FeetInchesEighths);
            if (!read.Ok)
            {
                yield return $"\"{length.Value}\" {read.Fault} in \"{text}\"";
            }
            else if (LengthText.ForPaper(read.Mm, shown) != length.Value)
            {
                yield return $"\"{length.Value}\" is not as lengths of the job are written ({LengthText.ForPaper(read.Mm, shown)}) in \"{text}\"";
            }
        }

        string rest = Length().Replace(text, "LENGTH");
        foreach (Match other in Other().Matches(rest))
        {
            yield return $"\"{other.Value}\" in \"{text}\"";
        }
    }

    /// <summary>Angles on paper go to the half degree, as a saw's scale does.</summary>
    public static IEnumerable<string> Angles(string text) =>
        FineAngle().Matches(text).Select(m => $"\"{m.Value}\" in \"{text}\"");

    [GeneratedRegex("""\d+\.(?![05]°)\d+°""")]
    private static partial Regex FineAngle();

    [GeneratedRegex("""(?<![\d/.\-'])\u2212?(?:\d+'-)?(?:\d+ \d+/\d+|\d+/\d+|\d+)"(?!\w)""")]
    private static partial Regex Length();

    /// <summary>Marks after figures, three figures with dashes, metric lengths, words for inches and feet after figures, a length followed by "in", an end of a fraction.</summary>
    [GeneratedRegex(
        """\d['"]|\d+-\d+-\d+|\d ?(?:mm|cm|m)\b(?! ?both)|\d (?:in|ft)\b(?! all\b)|LENGTH in\b|(?:round|hollow) 0|[-\u2212]LENGTH|(?<![-\d])\d+/\d+|LENGTHLENGTH"""
    )]
    private static partial Regex Other();
}
