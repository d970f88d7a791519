using PlankFit.Planking.Hulls;

namespace PlankFit.Reading.Offsets;

/// <summary>How the two edges of a panel lie to each other at a station at which both have a point.</summary>
/// <param name="OutboardMm">By how much the upper edge is further outboard, and <paramref name="AboveMm"/> higher.</param>
/// <param name="Meet">They are one point.</param>
internal readonly record struct EdgePair(int Station, double OutboardMm, double AboveMm, bool Meet)
{
    /// <summary>Edges nearer than this meet in a point: half of what a table in sixteenths can tell apart, mm (our own, no source).</summary>
    private const double MeetMm = 0.5;

    public const string MeetAbaft = "meet in a point: they may do so only at the foremost station";

    /// <summary>All, but the foremost where they meet there, as they may.</summary>
    public static IEnumerable<EdgePair> Of(OffsetLine lower, OffsetLine upper)
    {
        int[] both = [.. lower.Known.Where(upper.Has)];
        foreach (int i in both)
        {
            double outboard = upper.HalfBreadthsMm[i]!.Value - lower.HalfBreadthsMm[i]!.Value,
                above = upper.HeightsMm[i]!.Value - lower.HeightsMm[i]!.Value;
            bool meet = Math.Max(Math.Abs(outboard), Math.Abs(above)) < MeetMm;
            if (!meet || i != both[0])
            {
                yield return new(i, outboard, above, meet);
            }
        }
    }

    /// <summary>What is told of the two at this station.</summary>
    public static string Told(OffsetLine lower, OffsetLine upper, string fault) =>
        $"{lower.Name} and {upper.Name} {fault}; see both lines at this station";
}
