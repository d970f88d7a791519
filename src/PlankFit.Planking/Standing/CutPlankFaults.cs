using System.Collections.Immutable;
using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>What a recorded plank has that no sawn plank can have: figures that are none or beyond all reason, shapes that do not agree with one another.</summary>
public static class CutPlankFaults
{
    /// <summary>No bottom reaches so far, mm.</summary>
    private const double FarMm = 100_000;

    /// <summary>A corner of the outline and the end of an edge are one point, mm.</summary>
    private const double SameMm = 0.05;

    /// <summary>A plank is never pressed flat by more than this, part of a length.</summary>
    private const double MostStrain = 0.02;

    /// <summary>The first thing that is amiss, in words; null where nothing is.</summary>
    public static string? Of(CutPlank plank) =>
        Figures(plank)
        ?? Counts(plank)
        ?? plank.Ends.Select(End).FirstOrDefault(f => f is not null)
        ?? Agreement(plank);

    private static string? Figures(CutPlank plank)
    {
        CutSizes s = plank.Sizes;
        (string Name, double? Value, double Least, double Most)[] figures =
        [
            ("its length", s.NetLengthMm, 1e-6, FarMm),
            ("its length to saw", s.CutLengthMm, 1e-6, FarMm),
            ("its greatest width", s.WidestMm, 1e-6, FarMm),
            ("its least width", s.NarrowestMm, 0, FarMm),
            ("its widest gap", s.WidestGapMm, 0, FarMm),
            ("its widest overlap", s.WidestOverlapMm, 0, FarMm),
            ("its angle at the keel", s.KeelAngleDegrees, 0, 180),
            ("its area", s.AreaMm2, 1e-6, FarMm * FarMm),
            ("its strain", s.StrainMm, 0, FarMm),
            ("its least radius", s.Bend.LeastRadiusMm, 0, double.MaxValue / 1e10),
            ("its strain in the bend", s.Bend.StrainPercent, 0, 100),
            ("its twist", s.Bend.TwistDegreesPerMetre, 0, 1e5),
            ("its strain at the edges", s.Bend.EdgeStrainPercent, 0, 100),
            ("the place where it is bent hardest", s.Bend.WorstAtMm, -FarMm, FarMm),
            ("its strain along the grain", s.Bend.GrainStrainPercent, 0, 200),
            ("its curvature", s.Bend.MostGaussPerMm2, 0, 1),
            ("the thickness of its layer", plank.SawnFor?.ThicknessMm, 1e-9, FarMm),
            .. new[] { s.Forward, s.After }
                .OfType<CutEdge>()
                .SelectMany(e =>
                    new (string, double?, double, double)[]
                    {
                        ("the length of an edge", e.SeamLengthMm, 1e-6, FarMm),
                        ("the round of an edge", e.RoundMm, 0, FarMm),
                        ("the hollow of an edge", e.HollowMm, 0, FarMm),
                    }
                ),
        ];
        foreach ((string name, double? value, double least, double most) in figures)
        {
            if (value is { } v && !(v >= least && v <= most))
            {
                return FormattableString.Invariant(
                    $"{name} is given as {v:G6}, which no plank has"
                );
            }
        }

        bool far =
            plank
                .Outline.Concat(plank.ForwardSeam)
                .Concat(plank.AfterSeam)
                .Any(p => !(Math.Abs(p.X) + Math.Abs(p.Y) + Math.Abs(p.Z) < 3 * FarMm))
            || plank
                .FlatNet.Concat(plank.FlatCut)
                .Concat(plank.ForwardFlat)
                .Concat(plank.AfterFlat)
                .Concat(s.Marks.SelectMany(m => new[] { m.At, m.Inward }))
                .Any(Far);
        return far ? "a point of its shapes lies beyond any boat" : null;
    }

    private static string? Counts(CutPlank plank)
    {
        (ImmutableArray<Vec3> Seam, ImmutableArray<Vec2> Flat, CutEdge? Edge)[] edges =
        [
            (plank.ForwardSeam, plank.ForwardFlat, plank.Sizes.Forward),
            (plank.AfterSeam, plank.AfterFlat, plank.Sizes.After),
        ];
        return plank.Outline.Length < 3 || plank.FlatCut.Length < 3
                ? "an outline of it has fewer than three corners"
            : plank.Outline.Length != plank.FlatNet.Length
                ? "its outline on the hull and laid flat have different numbers of points"
            : edges.Any(e =>
                e.Seam.Length != e.Flat.Length
                || e.Seam.Length == 1
                || e.Seam.IsEmpty != (e.Edge is null)
            )
                ? "an edge of it is not whole"
            : edges.All(e => e.Edge is null) ? "it has no edge at all"
            : plank.Ends.IsEmpty ? "it has no ends"
            : null;
    }

    private static string? End(CutEnd end) =>
        !(end.CutDegrees > 0 && end.CutDegrees < 180)
        || !(Math.Abs(end.BevelDegrees) < 90)
        || !(Math.Abs(end.BevelAtLeastN) < 90)
        || !(Math.Abs(end.BevelAtGreatestN) < 90)
            ? $"the angle or a bevel of its end at the {end.At.ToString().ToLowerInvariant()} is none"
        : !(end.AllowanceMm >= 0 && end.AllowanceMm < FarMm)
        || end.OverhangMm is { } by && !(by >= 0 && by < FarMm)
        || end.Cut == EndCut.LeftLong && end.OverhangMm is null
            ? $"what its end at the {end.At.ToString().ToLowerInvariant()} was left long by is none"
        : end.NetLine.Length < 2
        || end.Outline.Length != end.NetLine.Length
        || end.OuterLine.Length < 2
        || end.InnerLine.Length < 2
            ? $"a line of its end at the {end.At.ToString().ToLowerInvariant()} is not whole"
        : end.NetLine.Concat(end.OuterLine).Concat(end.InnerLine).Any(Far)
        || end.Outline.Any(p => !(Math.Abs(p.X) + Math.Abs(p.Y) + Math.Abs(p.Z) < 3 * FarMm))
            ? "a point of its ends lies beyond any boat"
        : null;

    /// <summary>Edges and ends are stretches of the outline, and the flat outline is as long from point to point as that on the hull.</summary>
    private static string? Agreement(CutPlank plank)
    {
        bool On(Vec3 p) => plank.Outline.Min(q => q.ChordTo(p)) < SameMm;
        bool OnFlat(Vec2 p) => plank.FlatNet.Min(q => q.ChordTo(p)) < SameMm;
        IEnumerable<Vec3> ends = new[] { plank.ForwardSeam, plank.AfterSeam }
            .Concat(plank.Ends.Select(e => e.Outline))
            .Where(l => !l.IsEmpty)
            .SelectMany(l => new[] { l[0], l[^1] });
        IEnumerable<Vec2> flatEnds = new[] { plank.ForwardFlat, plank.AfterFlat }
            .Concat(plank.Ends.Select(e => e.NetLine))
            .Where(l => !l.IsEmpty)
            .SelectMany(l => new[] { l[0], l[^1] });
        if (!ends.All(On) || !flatEnds.All(OnFlat))
        {
            return "its outline, its edges and its ends do not meet";
        }

        int n = plank.Outline.Length;
        for (int i = 0; i < n; i++)
        {
            double hull = plank.Outline[i].ChordTo(plank.Outline[(i + 1) % n]),
                flat = plank.FlatNet[i].ChordTo(plank.FlatNet[(i + 1) % n]);
            if (Math.Abs(hull - flat) > SameMm + (MostStrain * hull))
            {
                return FormattableString.Invariant(
                    $"a side of its outline is {hull:0.0} mm long on the hull and {flat:0.0} mm laid flat"
                );
            }
        }

        double area = FlatPolygon.Area([.. plank.FlatNet]);
        return !(Math.Abs(area - plank.Sizes.AreaMm2) <= 1 + (1e-4 * area))
                ? "its area is not that of its outline"
            : !(
                Math.Abs(
                    plank.FlatCut.Max(p => p.X)
                        - plank.FlatCut.Min(p => p.X)
                        - plank.Sizes.CutLengthMm
                ) < SameMm
            )
                ? "its length to saw is not that of its shape to saw"
            : !PlanarShapes.IsSimple(plank.FlatNet) || !PlanarShapes.IsSimple(plank.FlatCut)
                ? "an outline of it crosses itself"
            : null;
    }

    private static bool Far(Vec2 p) => !(Math.Abs(p.X) + Math.Abs(p.Y) < 3 * FarMm);
}
