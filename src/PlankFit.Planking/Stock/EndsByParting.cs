using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Stock;

/// <summary>
/// What a cut that parts two pieces leaves on their ends: as good as nothing, and then it is the cut that makes them; less than a saw can take, and then a plane
/// does.
/// </summary>
internal static class EndsByParting
{
    /// <summary>The cut, named for the ends that it makes, and what is left to be made.</summary>
    public static (LaneEnd Cut, ImmutableArray<LaneEnd> Left) Of(
        LaneEnd parting,
        ImmutableArray<LaneEnd> left,
        LaneAtSaw lane
    )
    {
        if (parting.Cut is not { Kind: CutKind.Parting, EndOf: { } ends, BeginOf: { } begins })
        {
            return (parting, left);
        }

        Vec2 way = -1 * (parting.Across.To - parting.Across.From).Unit().Left();
        LaneEnd? far = Only(left, e => e.EndOf == ends && e.BeginOf is null),
            near = Only(left, e => e.BeginOf == begins && e.EndOf is null);
        double farMm = Most(far, parting.Across.From, way),
            nearMm = Most(near, parting.Across.From + (lane.KerfMm * way), -1 * way);
        bool makesFar = farMm <= lane.Tolerances.EdgeMm,
            makesNear = makesFar && nearMm <= lane.Tolerances.EdgeMm;
        SawCut Named(SawCut cut) =>
            makesFar
                ? cut with
                {
                    Kind = CutKind.Crosscut,
                    BeginOf = makesNear ? begins : null,
                    OffMm = Math.Max(far!.Cut.OffMm, makesNear ? near!.Cut.OffMm : 0),
                }
                : cut;
        LaneEnd made = parting with { Cut = Named(parting.Cut), Across = Named(parting.Across) };
        double planed = lane.KerfMm - lane.Tolerances.SharedMm;
        LaneEnd Rest(LaneEnd end) =>
            end == far && farMm < planed ? Planed(end, farMm)
            : end == near && nearMm < planed ? Planed(end, nearMm)
            : end;
        return (
            made,
            [.. left.Where(e => !(makesFar && e == far) && !(makesNear && e == near)).Select(Rest)]
        );
    }

    private static LaneEnd? Only(ImmutableArray<LaneEnd> left, Func<SawCut, bool> which)
    {
        LaneEnd[] those = [.. left.Where(e => which(e.Cut))];
        return those.Length == 1 ? those[0] : null;
    }

    /// <summary>The most wood that is left on an end up to a line, mm, what its line leaves the straight among it; more than anything where its end goes beyond that line or is not straight.</summary>
    /// <param name="away">Square to the line, away from the piece.</param>
    private static double Most(LaneEnd? end, Vec2 on, Vec2 away)
    {
        if (end is null || end.Cut.ToTheLine)
        {
            return double.PositiveInfinity;
        }

        double[] wood = [.. end.Cut.Line.Select(p => (on - p).Dot(away))];
        return wood.Min() < -end.Cut.OffMm - HairMm
            ? double.PositiveInfinity
            : Math.Max(0, wood.Max()) + end.Cut.OffMm;
    }

    /// <summary>A hair over a line is on it, mm.</summary>
    private const double HairMm = 0.1;

    private static LaneEnd Planed(LaneEnd end, double mm)
    {
        SawCut Of(SawCut cut) =>
            cut with
            {
                IsPlaned = true,
                KerfMm = Math.CopySign(mm, cut.KerfMm),
            };
        return end with { Cut = Of(end.Cut), Across = Of(end.Across) };
    }
}
