using System.Globalization;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Building;

/// <summary>Witness ticks: marks at the same points of a seam on both its planks, every 200 mm from the seam's inboard end, lettered outboard.</summary>
internal static class WitnessTicks
{
    private const double EveryMm = 200;
    private const double ClearOfEndMm = 30;

    public static IEnumerable<PlankMark> Along(PlankSide side, int seamNumber, int inward)
    {
        int count = 0;
        for (double d = EveryMm / 2; d < side.Seam.LengthMm - ClearOfEndMm; d += EveryMm)
        {
            double s = side.Seam.In.S + d;
            Vec2 here = side.Track.Flat(s),
                ahead = side.Track.Flat(Math.Min(s + 1, side.Seam.Out.S));
            string label = string.Create(
                CultureInfo.InvariantCulture,
                $"{PlankId.ShortOf(seamNumber)}{Letter(count++)}"
            );
            yield return new("witness", label, here, inward * (ahead - here).Unit().Left());
        }
    }

    private static string Letter(int i) =>
        i < 26 ? ((char)('a' + i)).ToString() : Letter((i / 26) - 1) + Letter(i % 26);
}
