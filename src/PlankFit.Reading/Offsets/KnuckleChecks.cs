using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Reading.Drafts;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Offsets;

/// <summary>Planks do not cross a corner: a panel with one is two. Said of lines that the table has; of others it is said that it has not.</summary>
internal static class KnuckleChecks
{
    /// <summary>How a line is known that the job calls a corner.</summary>
    public const string Key = "knuckles";

    public static IEnumerable<Finding> Of(OffsetsReading reading, ImmutableArray<NamedLine> named)
    {
        string Edge(string? line, string word) =>
            line is not null && reading.RowNames.Contains(line)
                ? Quoted.Of(line)
                : $"its {word} edge";

        return named
            .Where(l => l.Key == Key && reading.RowNames.Contains(l.Name))
            .Select(l => new Finding(
                Severity.Error,
                l.At.ToString(),
                $"{l.Table} {Key}: planks do not cross the corner at {Quoted.Of(l.Name)}: make two panels, one from {Edge(l.Edges.Lower, "lower")} to {Quoted.Of(l.Name)} and one from {Quoted.Of(l.Name)} to {Edge(l.Edges.Upper, "upper")}"
            ));
    }
}
