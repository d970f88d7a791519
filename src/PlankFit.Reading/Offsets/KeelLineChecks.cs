using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Units;
using PlankFit.Reading.Drafts;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Offsets;

/// <summary>The lines of the table that keel layers take their half-widths from.</summary>
internal static class KeelLineChecks
{
    /// <summary>As many half-breadths as an edge needs to have a run.</summary>
    private const int LeastPoints = 3;

    public static IEnumerable<Finding> Of(
        OffsetsReading reading,
        ImmutableArray<NamedLine> named,
        string file
    )
    {
        foreach (NamedLine line in named)
        {
            if (!reading.RowNames.Contains(line.Name))
            {
                yield return new(
                    Severity.Error,
                    line.At.ToString(),
                    $"{line.Key} = {Quoted.Of(line.Name)}: {LineChecks.NoSuchLine(reading, line.Name, file)}"
                );
                continue;
            }

            if (reading.Table.Find(line.Name) is { } found)
            {
                foreach (Finding finding in Of(reading, line, found, file))
                {
                    yield return finding;
                }
            }
        }
    }

    private static IEnumerable<Finding> Of(
        OffsetsReading reading,
        NamedLine line,
        OffsetLine found,
        string file
    )
    {
        int points = found.HalfBreadthsMm.Count(b => b is not null);
        if (points < LeastPoints)
        {
            yield return new(
                Severity.Error,
                line.At.ToString(),
                FormattableString.Invariant(
                    $"{line.Key} = {Quoted.Of(line.Name)}: {file} gives {NumberText.Count(points, "half-breadth")} of it, and the edge of a keel layer needs {LeastPoints} or more"
                )
            );
        }

        for (int i = 0; i < found.HalfBreadthsMm.Length; i++)
        {
            if (found.HalfBreadthsMm[i] <= 0)
            {
                yield return new(
                    Severity.Error,
                    OffsetRows.Cell(
                        file,
                        reading.FileLines.GetValueOrDefault((line.Name, OffsetRows.HalfBreadth)),
                        reading.Columns[i],
                        reading.Table.Stations[i].Name
                    ),
                    $"{line.Name}, half-breadth: must be greater than 0, since the edge of a keel layer is taken from it ({line.At})"
                );
            }
        }
    }
}
