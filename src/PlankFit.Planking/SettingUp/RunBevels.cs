using System.Collections.Immutable;
using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>Stringers and the chine log where they pass the stations.</summary>
internal static class RunBevels
{
    public static IEnumerable<RunBevel> Of(
        BottomPlan plan,
        SettingUpSpec spec,
        IReadOnlyList<CornerRow> corners
    )
    {
        Job job = plan.Job;
        double inner =
            job.Hull.OffsetsAreTo == OffsetsAreTo.Outside ? -job.Layers.Sum(l => l.ThicknessMm) : 0;
        foreach (CornerRow corner in corners)
        {
            yield return new(
                "chine log",
                corner.Station,
                corner.PositionMm,
                Along(plan, corner.Station, inner - spec.RibbandMm, 1),
                corner.CornerDegrees - 90
            );
        }

        foreach (BehindSpec stringer in job.Behind.Where(b => b.Kind == BehindKind.Stringer))
        {
            foreach (StationOnHull station in plan.Hull.Stations)
            {
                if (
                    station.PositionMm < stringer.FromMm
                    || station.PositionMm > stringer.ToMm
                    || Part(plan, stringer, station, inner) is not { } part
                )
                {
                    continue;
                }

                yield return new(
                    stringer.Name,
                    station.Name,
                    station.PositionMm,
                    Along(plan, station.Name, inner - spec.RibbandMm, part),
                    Bevel(plan, stringer, station, inner, part)
                );
            }
        }
    }

    /// <summary>Between the skin and a face square to plumb sides: the slope of the skin across the stringer's run, from level.</summary>
    private static double Bevel(
        BottomPlan plan,
        BehindSpec stringer,
        StationOnHull station,
        double inner,
        double part
    )
    {
        SectionCut cut = Cut(plan, station, inner);
        SurfacePoint at = cut.At(part);
        Vec3 run = Run(plan, stringer, station, inner, at);
        Vec3 across = new Vec3(-run.Y, run.X, 0).Unit();
        return Math.Asin(Math.Clamp(at.Normal.Dot(across), -1, 1)) * 180 / Math.PI;
    }

    /// <summary>The stringer's run by its places at two sections close by.</summary>
    private static Vec3 Run(
        BottomPlan plan,
        BehindSpec stringer,
        StationOnHull station,
        double inner,
        SurfacePoint at
    )
    {
        const double near = 5;
        foreach (double step in new[] { near, -near })
        {
            var beside = new StationOnHull("", station.PositionMm + step, station.U + step);
            if (
                beside.U > plan.Hull.Surface.UFrom
                && beside.U < plan.Hull.Surface.UTo
                && Part(plan, stringer, beside, inner) is { } part
            )
            {
                Vec3 other = Cut(plan, beside, inner).At(part).P;
                return step > 0 ? (other - at.P).Unit() : (at.P - other).Unit();
            }
        }

        return Vec3.UnitX;
    }

    /// <summary>The part of the way from keel to chine at which a stringer passes a section; null where it does not.</summary>
    private static double? Part(
        BottomPlan plan,
        BehindSpec stringer,
        StationOnHull station,
        double inner
    )
    {
        SectionCut cut = Cut(plan, station, inner);
        double girth = Length(cut, 0, 1);
        double? along = stringer.Line switch
        {
            BehindLine.FromKeel(var mm) => mm,
            BehindLine.FromChine(var mm) => girth - mm,
            _ => null,
        };
        if (along is { } a)
        {
            return a < 0 || a > girth ? null : PartAt(cut, a);
        }

        return stringer.Line is BehindLine.Offsets(var name)
            ? PartOfLine(plan.Job, name, cut)
            : null;
    }

    /// <summary>Where a line of the offsets lies nearest the section, carried square to the skin.</summary>
    private static double? PartOfLine(Job job, string name, SectionCut cut)
    {
        if (job.Offsets.Find(name) is not { } line)
        {
            return null;
        }

        double x = cut.At(0.5).P.X;
        int[] known =
        [
            .. Enumerable
                .Range(0, job.Offsets.Stations.Length)
                .Where(i => line.HalfBreadthsMm[i] is not null && line.HeightsMm[i] is not null),
        ];
        double[] xs = [.. known.Select(i => OffsetRow.PositionMm(job.Offsets, line, i))];
        if (xs.Length < 3 || x < xs[0] - 1 || x > xs[^1] + 1)
        {
            return null;
        }

        double y = CubicSpline
                .Through(xs, [.. known.Select(i => line.HalfBreadthsMm[i]!.Value)])
                .At(x),
            z = CubicSpline.Through(xs, [.. known.Select(i => line.HeightsMm[i]!.Value)]).At(x);
        double best = 0,
            least = double.PositiveInfinity;
        for (int i = 0; i <= 400; i++)
        {
            Vec3 p = cut.At(i / 400.0).P;
            double d = Math.Pow(p.Y - y, 2) + Math.Pow(p.Z - z, 2);
            (best, least) = d < least ? (i / 400.0, d) : (best, least);
        }

        return best;
    }

    private static double Along(BottomPlan plan, string station, double z, double part) =>
        Length(Cut(plan, plan.Hull.Stations.First(s => s.Name == station), z), 0, part);

    private static SectionCut Cut(BottomPlan plan, StationOnHull station, double z)
    {
        LoftedSurface s = plan.Hull.Surface;
        double keel = s.At(station.U, 0).P.X,
            chine = s.At(station.U, s.ChineV(station.U)).P.X;
        return new(
            new ParallelSurface(s, z),
            s,
            KeelSides.OfTable(plan.Job, plan.Hull),
            station.U,
            part => keel + (part * (chine - keel))
        );
    }

    /// <summary>By secant: length is nearly proportional to the part.</summary>
    private static double PartAt(SectionCut cut, double along)
    {
        double a = 0,
            fa = -along,
            b = along / Length(cut, 0, 1);
        for (int i = 0; i < 20; i++)
        {
            double fb = Length(cut, 0, b) - along;
            if (Math.Abs(fb) < 1e-7 || Math.Abs(fb - fa) < 1e-12)
            {
                break;
            }

            (a, fa, b) = (b, fb, b - (fb * (b - a) / (fb - fa)));
        }

        return b;
    }

    /// <summary>Length of the section, mm, from chords with their shortfall corrected by halving (Richardson).</summary>
    private static double Length(SectionCut cut, double from, double to)
    {
        double fine = Chords(cut, from, to, 24),
            coarse = Chords(cut, from, to, 12);
        return fine + ((fine - coarse) / 3);
    }

    private static double Chords(SectionCut cut, double from, double to, int n)
    {
        double sum = 0;
        Vec3 before = cut.At(from).P;
        for (int i = 1; i <= n; i++)
        {
            Vec3 p = cut.At(from + ((to - from) * i / n)).P;
            sum += before.ChordTo(p);
            before = p;
        }

        return sum;
    }
}
