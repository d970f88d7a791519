using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Laying;

/// <summary>A plank that is sawn, against the place that it has on the hull as it stands: the place's size less the plank's, mm. Null where there is no such edge or end.</summary>
/// <param name="ForwardMm">Along its forward seam, between the net ends: positive where the plank has become too short.</param>
/// <param name="AfterMm">The same along its after seam.</param>
/// <param name="AtKeelMm">Across, where its inboard end begins: positive where a seam opens, negative where the plank does not go in.</param>
/// <param name="AtChineMm">The same at its outboard end.</param>
/// <param name="SpareMm">The most by which it may be too short and still reach, for what was left long and allowed for scribing.</param>
public sealed record SawnFit(
    string Revision,
    double? ForwardMm,
    double? AfterMm,
    double? AtKeelMm,
    double? AtChineMm,
    double SpareMm
)
{
    /// <summary>The most by which it is too short; 0 where it is nowhere.</summary>
    public double ShortMm => Math.Max(0, Math.Max(ForwardMm ?? 0, AfterMm ?? 0));

    public double LongMm => Math.Max(0, -Math.Min(ForwardMm ?? 0, AfterMm ?? 0));

    public double OpenMm => Math.Max(0, Math.Max(AtKeelMm ?? 0, AtChineMm ?? 0));

    public double TightMm => Math.Max(0, -Math.Min(AtKeelMm ?? 0, AtChineMm ?? 0));

    /// <summary>It does not reach at one of its ends, whatever was left long at the other.</summary>
    public bool ShortAtAnEnd { get; init; }

    /// <summary>The layer's thickness less the plank's; nought where the record does not say how thick it was sawn.</summary>
    public double ThinnerMm { get; init; }

    /// <param name="sawn">As sawn.</param>
    /// <param name="place">As it would be sawn now, of the same side.</param>
    /// <param name="layer">Its layer as it now is.</param>
    public static SawnFit Of(SawnPlank sawn, Plank place, PlankLayerSpec layer)
    {
        (double Keel, double Chine)? had = Across(sawn.Shape.Forward.Flat, sawn.Shape.After.Flat),
            has = Across(place.ForwardEdge.Flat, place.AfterEdge.Flat);
        return new(
            sawn.Revision,
            Longer(sawn.Shape.Forward, place.ForwardEdge),
            Longer(sawn.Shape.After, place.AfterEdge),
            has?.Keel - had?.Keel,
            has?.Chine - had?.Chine,
            sawn.Form.Ends.Sum(e => e.At is PanelEdge.Lower or PanelEdge.Upper ? Spare(e) : 0)
        )
        {
            ThinnerMm = sawn.SawnFor is { } was ? layer.ThicknessMm - was.ThicknessMm : 0,
        };
    }

    private static double? Longer(PlankEdge had, PlankEdge has) =>
        had.Exists && has.Exists ? has.SeamLengthMm - had.SeamLengthMm : null;

    /// <summary>What is left long square to the edge is longer along the plank by the slant of its end.</summary>
    private static double Spare(PlankEnd end) =>
        end.Cut == EndCut.LeftLong
            ? (end.OverhangMm ?? 0) / Math.Sin(end.CutDegrees * Math.PI / 180)
            : end.AllowanceMm;

    /// <summary>The width square across the plank's own line at the innermost and the outermost place where both edges are.</summary>
    private static (double Keel, double Chine)? Across(
        ImmutableArray<Vec2> forward,
        ImmutableArray<Vec2> after
    )
    {
        if (forward.IsEmpty || after.IsEmpty)
        {
            return null;
        }

        double from = Math.Max(forward[0].X, after[0].X),
            to = Math.Min(forward[^1].X, after[^1].X);
        double Width(double s) => Math.Abs(At(after, s) - At(forward, s));
        return to > from ? (Width(from), Width(to)) : null;
    }

    private static double At(ImmutableArray<Vec2> edge, double s)
    {
        for (int i = 1; i < edge.Length; i++)
        {
            if (s <= edge[i].X)
            {
                (Vec2 p, Vec2 q) = (edge[i - 1], edge[i]);
                return p.Y + ((q.Y - p.Y) * (s - p.X) / (q.X - p.X));
            }
        }

        return edge[^1].Y;
    }
}
