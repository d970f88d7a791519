using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Reading.Editing;
using PlankFit.Reading.Jobs;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Panels;
using PlankFit.Reading.Tables;
using PlankFit.Reading.Toml;

namespace PlankFit.Reading.Ranges;

/// <summary>One value of a layer as somebody typed it, held to what its key says by the very reader of a job.</summary>
internal static class LayerValue
{
    /// <param name="key">One of a layer's: a length, a number, or which way planks head.</param>
    /// <param name="units">Of the job.</param>
    /// <param name="named">How the value is called where it was typed: "--width 0".</param>
    /// <returns>The figure, lengths in mm, null of a word and where there is none; and what is wrong with it or doubtful, in the words of the job file.</returns>
    public static (double? Figure, ImmutableArray<Finding> Findings) Of(
        JobKey key,
        string typed,
        LengthUnit units,
        string named
    )
    {
        List<Finding> found = [];
        var text = TomlText.Read($"{key.Name} = {JobChange.Value(key, typed.Trim())}\n", "", found);
        var table = new TableReader(
            text.Root,
            JobKeys.Layer.Line,
            "layer.",
            LayerKeys.Table,
            new(found, text.Whole, text.HeadsWhole, new HashSet<string>()) { Shown = units }
        );
        double? figure = key switch
        {
            LengthKey length => table.Length(length, units),
            NumberKey number => table.Number(number),
            ChoiceKey<Heads> choice => table.Choice(choice) is null ? null : 0,
            _ => throw new ArgumentException($"{key.Name} is not varied", nameof(key)),
        };
        return (figure, [.. found.Select(f => f with { About = named })]);
    }
}
