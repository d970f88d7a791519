using System.Collections.Immutable;
using PlankFit.Geometry;

namespace PlankFit.Planking;

internal static class SettingUpPlanner
{
    public static SettingUpPlan? Of(BottomPlan plan, CancellationToken stop)
    {
        Job job = plan.Job;
        if (job.SettingUp is not { } spec)
        {
            return null;
        }

        HullSurface hull = plan.Hull;
        var frames = ImmutableArray.CreateBuilder<FrameSection>();
        var rabbet = ImmutableArray.CreateBuilder<RabbetRow>();
        var corners = ImmutableArray.CreateBuilder<CornerRow>();
        foreach (StationOnHull station in hull.Stations)
        {
            stop.ThrowIfCancellationRequested();
            if (Girth(hull, station.U) < 1)
            {
                // Keel and chine meet in a point: there is no section.
                continue;
            }

            Func<double, double> planeX = PlaneOf(hull, station.U);
            frames.Add(FrameSections.Of(job, hull, spec, station.Name, station.U, planeX));
            rabbet.Add(Rabbet(job, hull, station, planeX));
            if (
                spec.Topside is { } topside
                && ChineCorner.Of(job, hull, spec, topside, station.Name, station.U) is { } corner
            )
            {
                corners.Add(corner);
            }
        }

        foreach (double x in FramePositions(job, spec))
        {
            if (UAt(hull, x) is { } u)
            {
                string name = $"x {LengthText.ForPaper(x, job.Units)}";
                frames.Add(FrameSections.Of(job, hull, spec, name, u, _ => x));
            }
        }

        FrameSection[] inOrder = [.. frames.OrderBy(f => f.PositionMm)];
        var done = new SettingUpPlan(
            [.. inOrder],
            rabbet.ToImmutable(),
            [.. RunBevels.Of(plan, spec, corners)],
            corners.ToImmutable(),
            [.. Transom(job, hull, spec)],
            []
        );
        return done with { Findings = [.. Findings(job, spec, done)] };
    }

    /// <summary>Frames by position, and those that lie behind the planks.</summary>
    private static IEnumerable<double> FramePositions(Job job, SettingUpSpec spec) =>
        spec
            .FramesAtMm.Concat(
                job.Behind.Where(b => b.Kind == BehindKind.Frame)
                    .Select(b => b.Line)
                    .OfType<BehindLine.AtPosition>()
                    .Select(a => a.XMm)
            )
            .Where(x => job.Offsets.Stations.All(s => Math.Abs(s.PositionMm - x) > 0.5))
            .Distinct()
            .Order();

    /// <summary>x by part of the way from keel to chine: a plane across, or one raked through both where the table says so.</summary>
    private static Func<double, double> PlaneOf(HullSurface hull, double u)
    {
        LoftedSurface s = hull.Surface;
        double keel = s.At(u, 0).P.X,
            chine = s.At(u, s.ChineV(u)).P.X;
        return part => keel + (part * (chine - keel));
    }

    private static double Girth(HullSurface hull, double u) =>
        hull.Surface.At(u, 0).P.ChordTo(hull.Surface.At(u, hull.Surface.ChineV(u)).P);

    /// <summary>The u at which the middle of the bottom stands at x; null off the bottom.</summary>
    private static double? UAt(HullSurface hull, double x)
    {
        LoftedSurface s = hull.Surface;
        double X(double u) => s.At(u, s.ChineV(u) / 2).P.X - x;
        return X(s.UFrom) * X(s.UTo) > 0
            ? null
            : MathNet.Numerics.RootFinding.Brent.FindRoot(X, s.UFrom, s.UTo, 1e-9, 200);
    }

    private static RabbetRow Rabbet(
        Job job,
        HullSurface hull,
        StationOnHull station,
        Func<double, double> planeX
    )
    {
        double whole = job.Layers.Sum(l => l.ThicknessMm),
            inner = job.Hull.OffsetsAreTo == OffsetsAreTo.Outside ? -whole : 0;
        KeelSideFace keel = KeelSides.OfTable(job, hull);
        SurfacePoint On(double z) =>
            new SectionCut(
                new ParallelSurface(hull.Surface, z),
                hull.Surface,
                keel,
                station.U,
                planeX
            ).At(0);
        SurfacePoint outer = On(inner + whole),
            beard = On(inner);
        Vec3 bottom = outer.P - (whole * outer.Normal);
        return new(
            station.Name,
            outer.P.X,
            new(outer.P.Y, outer.P.Z),
            new(bottom.Y, bottom.Z),
            new(beard.P.Y, beard.P.Z)
        );
    }

    /// <summary>The bottom's edge of the transom, at the last station: between the planking's inner face and the transom's plane.</summary>
    private static IEnumerable<TransomRow> Transom(Job job, HullSurface hull, SettingUpSpec spec)
    {
        StationOnHull last = hull.Stations[^1];
        double inner =
            job.Hull.OffsetsAreTo == OffsetsAreTo.Outside ? -job.Layers.Sum(l => l.ThicknessMm) : 0;
        LoftedSurface s = hull.Surface;
        Vec3 keel = s.At(last.U, 0).P,
            chine = s.At(last.U, s.ChineV(last.U)).P;

        // The plane through keel and chine that is level athwart: its normal points aft.
        double rake = (chine.X - keel.X) / (chine.Z - keel.Z);
        Vec3 aft = Math.Abs(chine.Z - keel.Z) < 1 ? Vec3.UnitX : new Vec3(1, 0, -rake).Unit();
        var cut = new SectionCut(
            new ParallelSurface(s, inner - spec.RibbandMm),
            s,
            KeelSides.OfTable(job, hull),
            last.U,
            PlaneOf(hull, last.U)
        );
        foreach (
            (string word, double part) in new[] { ("keel", 0.0), ("middle", 0.5), ("chine", 1.0) }
        )
        {
            yield return new(
                word,
                Math.Asin(Math.Clamp(cut.At(part).Normal.Dot(aft), -1, 1)) * 180 / Math.PI
            );
        }
    }

    private static IEnumerable<Finding> Findings(Job job, SettingUpSpec spec, SettingUpPlan plan)
    {
        string[] standing =
        [
            .. plan.Frames.Where(f => f.Places.Any(p => p.FallMm > 0.5)).Select(f => f.Name),
        ];
        if (standing.Length > 0)
        {
            yield return new(
                Severity.Note,
                "setting up",
                $"with the {(spec.Face == FrameFace.Forward ? "forward" : "after")} face on the line {standing.Length} of {plan.Frames.Length} frames have a standing bevel (the other face is the larger): {string.Join(", ", standing)}; saw those with the other face on the line, or leave the wood on"
            );
        }

        if (spec.Topside is { } topside && plan.Corners.Length < plan.Rabbet.Length)
        {
            yield return new(
                Severity.Note,
                "setting up",
                topside.Sheer is { } line
                    ? $"the corner at the chine is worked out at {plan.Corners.Length} of {plan.Rabbet.Length} stations: at the others '{line}' has no place, or the two faces run on in one another"
                    : "at some stations bottom and topside run on in one another: there is no corner there"
            );
        }

        foreach (CornerRow row in plan.Corners)
        {
            double thinnest = row.Trims.Min(t => t.OuterFaceMm);
            if (row.TangentMm > 3 * spec.CornerRadiusMm)
            {
                yield return new(
                    Severity.Warning,
                    $"chine, station {row.Station}",
                    $"the corner is sharp, {row.CornerDegrees:0} degrees: rounding it begins {LengthText.ForPaper(row.TangentMm, job.Units)} from the edge and takes {LengthText.ForPaper(row.OffCornerMm, job.Units)} off it; see that enough of the skins is left"
                );
            }
        }
    }
}
