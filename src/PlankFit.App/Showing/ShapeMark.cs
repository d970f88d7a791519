using System.Collections.Immutable;
using PlankFit.Planking.Planks;

namespace PlankFit.App.Showing;

/// <summary>By which a plank is known to be the one of a card that somebody still has, whatever was laid since: its sizes, mm, its angle, degrees, and where it lies.</summary>
public static class ShapeMark
{
    /// <summary>Nobody saws closer: mm, and degrees.</summary>
    private const double Near = 0.1;

    public static ImmutableArray<double> Of(Plank plank) =>
        [
            .. new[]
            {
                plank.NetLengthMm,
                plank.CutLengthMm,
                plank.WidestMm,
                plank.NarrowestMm,
                plank.KeelAngleDegrees ?? 0,
                plank.AreaMm2 / Math.Max(1, plank.NetLengthMm),
                plank.Outline[0].X,
                plank.Outline[0].Y,
                plank.Outline[0].Z,
            }.Select(v => Math.Round(v, 3)),
        ];

    public static bool IsOf(Plank plank, ImmutableArray<double> card)
    {
        ImmutableArray<double> now = Of(plank);
        return card.Length == now.Length
            && card.Zip(now, (was, at) => Math.Abs(was - at)).All(by => by <= Near);
    }
}
