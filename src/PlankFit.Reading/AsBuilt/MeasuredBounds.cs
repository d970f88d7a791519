using System.Collections.Immutable;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Units;

namespace PlankFit.Reading.AsBuilt;

/// <summary>
/// Between what a tape can read on this hull at all, by the table as it is drawn: what lies beyond is a slip of the pen, and nothing is bent to it. The bounds are our own,
/// no source; what is odd within them is told once the hull is laid.
/// </summary>
internal sealed class MeasuredBounds(OffsetTable table, Panel? bottom)
{
    /// <summary>No frame is set up so far from the drawing: a part of the girth, and no less than so many mm.</summary>
    private const double Part = 0.3;
    private const double LeastMm = 60;

    /// <summary>Of the hull's length, by which a seam may be measured past its ends.</summary>
    private const double PastEnds = 0.1;

    /// <summary>As many times the hull's length no keel or chine is long, though it rises and closes in.</summary>
    private const double Longest = 1.2;

    /// <summary>What is wrong with a girth; null where nothing is, or the table has no section there.</summary>
    public string? Girth(string station, double mm, LengthUnit units)
    {
        if (bottom is null || Points([.. bottom.Lines], station) is not { Length: > 1 } section)
        {
            return null;
        }

        double drawn = section.Zip(section.Skip(1)).Sum(p => Apart(p.First, p.Second));
        return Math.Abs(mm - drawn) <= Math.Max(LeastMm, Part * drawn)
            ? null
            : $"the table has about {LengthText.ForPaper(drawn, units)} from {bottom.Lower} to {bottom.Upper} there: nothing is bent to this; read the tape again and write what it says";
    }

    /// <summary>What is wrong with a keel's half-width: no keel reaches half way to the chine, unless it is drawn so.</summary>
    public string? HalfWidth(string station, double mm, LengthUnit units)
    {
        if (
            bottom is null
            || Points([bottom.Lower, bottom.Upper], station) is not [var keel, var chine]
        )
        {
            return null;
        }

        double most = Math.Max(keel.Y + LeastMm, (keel.Y + chine.Y) / 2);
        return mm <= most
            ? null
            : $"half way to the {bottom.Upper} is {LengthText.ForPaper(most, units)} there: read the tape again and write what it says";
    }

    /// <summary>What is wrong with a place along keel or chine, measured from any station.</summary>
    public string? Along(double mm, LengthUnit units)
    {
        if (bottom is null)
        {
            return null;
        }

        double length =
                table.Stations.Max(s => s.PositionMm) - table.Stations.Min(s => s.PositionMm),
            most = (1 + PastEnds) * Longest * length;
        return Math.Abs(mm) <= most
            ? null
            : $"the whole hull is {LengthText.ForPaper(length, units)} long: read the tape again and write what it says";
    }

    private (double X, double Y, double Z)[]? Points(ImmutableArray<string> lines, string station)
    {
        int at = table.Stations.ToList().FindIndex(s => s.Name == station);
        if (at < 0)
        {
            return null;
        }

        OffsetLine?[] known =
        [
            .. lines.Select(n =>
                table.Lines.FirstOrDefault(l =>
                    l.Name == n && l.HeightsMm[at] is not null && l.HalfBreadthsMm[at] is not null
                )
            ),
        ];
        // Without keel or chine it is no section.
        return known[0] is null || known[^1] is null
            ? null
            :
            [
                .. known
                    .OfType<OffsetLine>()
                    .Select(l =>
                        (
                            OffsetRow.PositionMm(table, l, at),
                            l.HalfBreadthsMm[at]!.Value,
                            l.HeightsMm[at]!.Value
                        )
                    ),
            ];
    }

    private static double Apart(
        (double X, double Y, double Z) a,
        (double X, double Y, double Z) b
    ) =>
        Math.Sqrt(
            ((a.X - b.X) * (a.X - b.X)) + ((a.Y - b.Y) * (a.Y - b.Y)) + ((a.Z - b.Z) * (a.Z - b.Z))
        );
}
