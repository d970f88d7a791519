using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Stock;

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
        ImmutableArray<SawCut>.Builder rips = ImmutableArray.CreateBuilder<SawCut>();
        // A saw wants wood on both sides of it: what is less than a kerf is planed off.
        void Add(double y, int side, double widthMm)
        {
            bool planed = widthMm < kerf - tolerances.SharedMm;
            double kerfMm = side * (planed ? widthMm : kerf);
            Vec2 from = new(0, y),
                to = new(frame.LengthMm, y);
            rips.Add(SawCut.Straight(CutKind.Rip, from, to, kerfMm) with { IsPlaned = planed });
        }

        SawnLane[] sorted = [.. lanes.OrderBy(l => l.LowMm)];
        if (sorted[0].LowMm > tolerances.StraightMm)
        {
            Add(sorted[0].LowMm, -1, sorted[0].LowMm);
        }

        for (int i = 0; i + 1 < sorted.Length; i++)
        {
            Add(sorted[i].HighMm, 1, kerf);
            if (sorted[i + 1].LowMm - sorted[i].HighMm > kerf + tolerances.SharedMm)
            {
                Add(sorted[i + 1].LowMm, -1, sorted[i + 1].LowMm - sorted[i].HighMm - kerf);
            }
        }

        if (frame.WidthMm - sorted[^1].HighMm > tolerances.StraightMm)
        {
            Add(sorted[^1].HighMm, 1, frame.WidthMm - sorted[^1].HighMm);
        }

        return rips.ToImmutable();
    }
}
