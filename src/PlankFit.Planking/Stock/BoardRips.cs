using System.Collections.Immutable;
using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>The rips that part a board into its lanes.</summary>
internal static class BoardRips
{
    public static ImmutableArray<SawCut> Of(
        BoardFrame frame,
        ImmutableArray<SawnLane> lanes,
        double kerf,
        SawTolerances tolerances
    )
    {
        var rips = ImmutableArray.CreateBuilder<SawCut>();
        void Add(double y, double kerfMm)
        {
            Vec2 from = new(0, y),
                to = new(frame.LengthMm, y);
            rips.Add(new(0, CutKind.Rip, null, null, null, from, to, false, 0, kerfMm, [from, to]));
        }

        SawnLane[] sorted = [.. lanes.OrderBy(l => l.LowMm)];
        if (sorted[0].LowMm > tolerances.StraightMm)
        {
            Add(sorted[0].LowMm, -kerf);
        }

        for (int i = 0; i + 1 < sorted.Length; i++)
        {
            Add(sorted[i].HighMm, kerf);
            if (sorted[i + 1].LowMm - sorted[i].HighMm > kerf + tolerances.SharedMm)
            {
                Add(sorted[i + 1].LowMm, -kerf);
            }
        }

        if (frame.WidthMm - sorted[^1].HighMm > tolerances.StraightMm)
        {
            Add(sorted[^1].HighMm, kerf);
        }

        return rips.ToImmutable();
    }
}
