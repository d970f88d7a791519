using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Units;
using PlankFit.Reading.Drafts;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Offsets;

/// <summary>What each line of the table must have for the job.</summary>
internal static class LineChecks
{
    private const int MostNamesShown = 20;

    private static readonly string[] Measures =
    [
        OffsetRows.Height,
        OffsetRows.HalfBreadth,
        OffsetRows.Position,
    ];

    /// <summary>Lines that the job names and the table has not.</summary>
    public static IEnumerable<Finding> Names(
        OffsetsReading reading,
        ImmutableArray<NamedLine> named,
        string file
    )
    {
        foreach (NamedLine line in named.Where(l => !reading.RowNames.Contains(l.Name)))
        {
            yield return new(
                Severity.Error,
                line.At.ToString(),
                $"{line.Table} {line.Key} = {Quoted.Of(line.Name)}: {NoSuchLine(reading, line.Name, file)}"
            );
        }
    }

    /// <summary>What the file has instead of a line that was named.</summary>
    public static string NoSuchLine(OffsetsReading reading, string name, string file)
    {
        string? near = NearestName.Of(name, reading.RowNames.Order());
        return $"{file} has no such line"
            + (near is null ? "." : $"; did you mean {Quoted.Of(near)}?")
            + (
                reading.RowNames.IsEmpty
                    ? ""
                    : $" It has: {string.Join(", ", reading.RowNames.Order().Take(MostNamesShown))}"
            );
    }

    /// <summary>Each named line has heights and half-breadths, at two stations or more, and does not run back on itself.</summary>
    /// <param name="elsewhere">Lines that the job uses for something else than its bottom: nothing is said of what they lack.</param>
    public static IEnumerable<Finding> Whole(
        OffsetsReading reading,
        ImmutableArray<NamedLine> named,
        ImmutableArray<NamedLine> elsewhere,
        string file
    )
    {
        foreach (OffsetLine line in reading.Table.Lines)
        {
            NamedLine? used = named.FirstOrDefault(n => n.Name == line.Name);
            if (used is null && elsewhere.Any(n => n.Name == line.Name))
            {
                continue;
            }

            foreach (Finding finding in Whole(reading, line, used, file))
            {
                yield return finding;
            }
        }
    }

    private static IEnumerable<Finding> Whole(
        OffsetsReading reading,
        OffsetLine line,
        NamedLine? used,
        string file
    )
    {
        bool heights = line.HeightsMm.Any(h => h is not null);
        bool breadths = line.HalfBreadthsMm.Any(b => b is not null);
        string where = FormattableString.Invariant($"{file}, line {FirstLine(reading, line)}");
        if (!heights || !breadths)
        {
            string has =
                heights ? "heights but no half-breadths"
                : breadths ? "half-breadths but no heights"
                : "neither heights nor half-breadths";
            yield return used is not null
                ? new(
                    Severity.Error,
                    where,
                    $"{line.Name} has {has}: a line of the {used.Panel ?? Panel.BottomName} needs both"
                )
                : new(Severity.Note, where, $"{line.Name} has {has}; the bottom does not use it");
            yield break;
        }

        if (used is null)
        {
            yield break;
        }

        int points = line.Known.Length;
        if (points < 2)
        {
            yield return new(
                Severity.Error,
                where,
                FormattableString.Invariant(
                    $"{line.Name} has {NumberText.Count(points, "point")} with both height and half-breadth: a line needs two or more"
                )
            );
        }

        double? before = null;
        for (int i = 0; i < reading.Table.Stations.Length; i++)
        {
            if (line.HeightsMm[i] is null && line.HalfBreadthsMm[i] is null)
            {
                continue;
            }

            double x = line.PositionsMm[i] ?? reading.Table.Stations[i].PositionMm;
            if (x <= before)
            {
                yield return new(
                    Severity.Error,
                    OffsetRows.Cell(
                        file,
                        reading.FileLines.GetValueOrDefault((line.Name, OffsetRows.Position)),
                        reading.Columns[i],
                        reading.Table.Stations[i].Name
                    ),
                    $"{line.Name}, position: the line runs back on itself here; its own positions must follow one another as the stations do"
                );
            }

            before = x;
        }
    }

    private static int FirstLine(OffsetsReading reading, OffsetLine line) =>
        Measures
            .Select(m => reading.FileLines.GetValueOrDefault((line.Name, m), int.MaxValue))
            .Min();
}
